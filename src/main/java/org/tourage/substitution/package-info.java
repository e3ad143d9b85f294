/** Floor 3: another flour in place of the one the formula names. */
@NullMarked
package org.tourage.substitution;

import org.jspecify.annotations.NullMarked;
