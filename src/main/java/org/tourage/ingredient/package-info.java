/**
 * Floor 1: what an ingredient is made of, how it is measured, and the catalogue.
 *
 * @serial exclude the serial form travels between machines of one version only
 */
@NullMarked
package org.tourage.ingredient;

import org.jspecify.annotations.NullMarked;
