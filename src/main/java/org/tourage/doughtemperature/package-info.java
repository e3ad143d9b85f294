/**
 * Floor 3: the water temperature and the ice for a wanted dough temperature.
 *
 * @serial exclude the serial form travels between machines of one version only
 */
@NullMarked
package org.tourage.doughtemperature;

import org.jspecify.annotations.NullMarked;
