/** Floor 3: oven profiles in steps. */
@NullMarked
package org.tourage.oven;

import org.jspecify.annotations.NullMarked;
