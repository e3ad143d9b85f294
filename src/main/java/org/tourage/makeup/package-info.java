/** Floor 3: cutting the sheet into pieces. */
@NullMarked
package org.tourage.makeup;

import org.jspecify.annotations.NullMarked;
