/** Floor 2: formulas in baker's percent, their stages, scaling and weighed recipes. */
@NullMarked
package org.tourage.formula;

import org.jspecify.annotations.NullMarked;
