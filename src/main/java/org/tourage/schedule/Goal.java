package org.tourage.schedule;

/** What a schedule is to be good for. What has to hold, holds for both. */
public enum Goal {
  /** Everything done as early as can be. */
  EARLIEST_END,
  /**
   * Least lateness against the due times; then as late as can be, so that things are fresh; then
   * the least presence of the resources; then the fewest changes of setting.
   */
  JUST_IN_TIME
}
