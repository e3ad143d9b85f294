/**
 * Tasks that share hands, machines and space: links with least and greatest waits, capacities over
 * time, settings that take time to change, and schedules that keep them. The room knows no dough.
 *
 * <p>Start with {@link org.tourage.schedule.SchedulingProblem#builder()}; {@link
 * org.tourage.schedule.ListScheduler} gives a schedule, {@link org.tourage.schedule.ScheduleCheck}
 * says of any schedule whether it keeps the problem.
 *
 * @serial exclude the serial form travels between machines of one version only
 */
@NullMarked
package org.tourage.schedule;

import org.jspecify.annotations.NullMarked;
