/** Floor 4: what must be told to the person who eats. */
@NullMarked
package org.tourage.label;

import org.jspecify.annotations.NullMarked;
