package org.tourage.schedule;

/** A method that finds schedules. */
public interface Scheduler {

  /**
   * Looks for a schedule.
   *
   * @param problem the problem
   * @param goal what it is to be good for
   * @return what was found
   */
  SchedulerAnswer schedule(SchedulingProblem problem, Goal goal);
}
