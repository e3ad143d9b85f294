/**
 * Floor 3: oven profiles in steps.
 *
 * @serial exclude the serial form travels between machines of one version only
 */
@NullMarked
package org.tourage.oven;

import org.jspecify.annotations.NullMarked;
