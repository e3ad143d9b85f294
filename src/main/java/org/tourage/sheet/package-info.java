/**
 * Floor 5: the bench sheet as text. No calculation happens here.
 *
 * @serial exclude the serial form travels between machines of one version only
 */
@NullMarked
package org.tourage.sheet;

import org.jspecify.annotations.NullMarked;
