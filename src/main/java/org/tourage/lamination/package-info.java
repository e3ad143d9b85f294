/** Floor 3: lock-ins, folds, layer counts and the geometry of the laminated sheet. */
@NullMarked
package org.tourage.lamination;

import org.jspecify.annotations.NullMarked;
