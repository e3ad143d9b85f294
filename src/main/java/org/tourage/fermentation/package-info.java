/**
 * Floor 3: how fast a dough ferments at a temperature, how it rises over a temperature history, and
 * how a piece cools in a retarder and warms on the bench while it does.
 *
 * @serial exclude the serial form travels between machines of one version only
 */
@NullMarked
package org.tourage.fermentation;

import org.jspecify.annotations.NullMarked;
