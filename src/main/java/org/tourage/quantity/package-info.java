/**
 * Floor 0: typed quantities, bakery units, parsing, formatting and rounding. No bakery knowledge.
 */
@NullMarked
package org.tourage.quantity;

import org.jspecify.annotations.NullMarked;
