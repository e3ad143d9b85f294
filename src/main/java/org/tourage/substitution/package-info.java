/**
 * Floor 3: another flour in place of the one the formula names.
 *
 * @serial exclude the serial form travels between machines of one version only
 */
@NullMarked
package org.tourage.substitution;

import org.jspecify.annotations.NullMarked;
