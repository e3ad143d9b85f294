/** Floor 6: the main command: a recipe file in, a bench sheet out. */
@NullMarked
package org.tourage.command;

import org.jspecify.annotations.NullMarked;
