/**
 * Floor 3: cutting the sheet into pieces.
 *
 * @serial exclude the serial form travels between machines of one version only
 */
@NullMarked
package org.tourage.makeup;

import org.jspecify.annotations.NullMarked;
