/**
 * Floor 3: lock-ins, folds, layer counts and the geometry of the laminated sheet.
 *
 * @serial exclude the serial form travels between machines of one version only
 */
@NullMarked
package org.tourage.lamination;

import org.jspecify.annotations.NullMarked;
