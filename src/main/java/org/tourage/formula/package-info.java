/**
 * Floor 2: formulas in baker's percent, their stages, scaling and weighed recipes.
 *
 * @serial exclude the serial form travels between machines of one version only
 */
@NullMarked
package org.tourage.formula;

import org.jspecify.annotations.NullMarked;
