/**
 * Floor 1: physical properties of food and water. Nothing here knows what a pastry is.
 *
 * @serial exclude the serial form travels between machines of one version only
 */
@NullMarked
package org.tourage.physics;

import org.jspecify.annotations.NullMarked;
