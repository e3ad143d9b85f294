/** Floor 0: advice, worked solutions and the one exception type of the library. */
@NullMarked
package org.tourage.advice;

import org.jspecify.annotations.NullMarked;
