/**
 * Floor 6: the main command: a recipe file in, a bench sheet out.
 *
 * @serial exclude the serial form travels between machines of one version only
 */
@NullMarked
package org.tourage.command;

import org.jspecify.annotations.NullMarked;
