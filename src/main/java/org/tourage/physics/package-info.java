/** Floor 1: physical properties of food and water. Nothing here knows what a pastry is. */
@NullMarked
package org.tourage.physics;

import org.jspecify.annotations.NullMarked;
