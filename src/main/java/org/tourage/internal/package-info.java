/**
 * Helpers shared by the rooms: text tables, CSV reading, numbers as text. Not exported.
 *
 * @serial exclude the serial form travels between machines of one version only
 */
@NullMarked
package org.tourage.internal;

import org.jspecify.annotations.NullMarked;
