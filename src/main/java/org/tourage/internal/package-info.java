/** Helpers shared by the rooms: text tables, CSV reading, numbers as text. Not exported. */
@NullMarked
package org.tourage.internal;

import org.jspecify.annotations.NullMarked;
