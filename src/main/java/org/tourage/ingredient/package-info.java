/** Floor 1: what an ingredient is made of, how it is measured, and the catalogue. */
@NullMarked
package org.tourage.ingredient;

import org.jspecify.annotations.NullMarked;
