/**
 * Floor 3: another flour, fat, liquid, sugar or yeast in place of the one that the formula names,
 * and blends of flours.
 *
 * @serial exclude the serial form travels between machines of one version only
 */
@NullMarked
package org.tourage.substitution;

import org.jspecify.annotations.NullMarked;
