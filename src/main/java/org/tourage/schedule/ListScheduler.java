package org.tourage.schedule;

import java.io.Serializable;
import java.time.Duration;
import java.util.Objects;

/**
 * The built-in method: tasks are placed one after another by many orders, backward from the due
 * times and forward, and the best schedule is improved within a fixed count of tries; small
 * problems are then searched through. It needs nothing but this library, and gives the same answer
 * everywhere.
 */
public record ListScheduler() implements Scheduler, Serializable {
  private static final int MOST_PASSES = 120;
  private static final int WORK = 12_000;
  private static final int SEARCHED_THROUGH = 20;
  private static final int NODES = 2_000;

  /**
   * The method.
   *
   * @return a scheduler
   */
  public static ListScheduler create() {
    return new ListScheduler();
  }

  @Override
  public SchedulerAnswer schedule(SchedulingProblem problem, Goal goal) {
    Objects.requireNonNull(problem, "problem");
    Objects.requireNonNull(goal, "goal");
    Core core = problem.core();
    int passes = Math.max(3, Math.min(MOST_PASSES, WORK / core.size));
    int nodes = core.size <= SEARCHED_THROUGH ? NODES : 0;
    Search search = new Search(core);
    Search.Found found =
        goal == Goal.EARLIEST_END ? search.earliest(passes, nodes) : search.justInTime(passes);
    int[] starts = found.starts();
    Duration bound = Duration.ofSeconds(found.bound());
    if (starts == null) {
      SchedulerAnswer.Status none =
          found.proven() ? SchedulerAnswer.Status.IMPOSSIBLE : SchedulerAnswer.Status.NOT_FOUND;
      return new SchedulerAnswer(none, goal, null, Duration.ZERO, found.generated());
    }
    return new SchedulerAnswer(
        found.proven() ? SchedulerAnswer.Status.BEST : SchedulerAnswer.Status.FOUND,
        goal,
        Schedule.of(problem, starts),
        bound,
        found.generated());
  }
}
