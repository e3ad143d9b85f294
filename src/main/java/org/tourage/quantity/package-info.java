/**
 * Floor 0: typed quantities, bakery units, parsing, formatting and rounding. No bakery knowledge.
 *
 * @serial exclude the serial form travels between machines of one version only
 */
@NullMarked
package org.tourage.quantity;

import org.jspecify.annotations.NullMarked;
