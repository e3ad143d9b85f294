/**
 * Floor 4: the timetable.
 *
 * @serial exclude the serial form travels between machines of one version only
 */
@NullMarked
package org.tourage.plan;

import org.jspecify.annotations.NullMarked;
