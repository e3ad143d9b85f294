/**
 * Floor 4: what must be told to the person who eats, and what it costs.
 *
 * @serial exclude the serial form travels between machines of one version only
 */
@NullMarked
package org.tourage.label;

import org.jspecify.annotations.NullMarked;
