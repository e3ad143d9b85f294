/** Floor 5: the bench sheet as text. No calculation happens here. */
@NullMarked
package org.tourage.sheet;

import org.jspecify.annotations.NullMarked;
