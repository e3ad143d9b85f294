/**
 * Floor 0: advice, worked solutions and the one exception type of the library.
 *
 * @serial exclude the serial form travels between machines of one version only
 */
@NullMarked
package org.tourage.advice;

import org.jspecify.annotations.NullMarked;
