/** Floor 3: the water temperature and the ice for a wanted dough temperature. */
@NullMarked
package org.tourage.doughtemperature;

import org.jspecify.annotations.NullMarked;
