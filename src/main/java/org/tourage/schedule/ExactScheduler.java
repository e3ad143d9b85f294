package org.tourage.schedule;

import java.io.Serializable;
import java.time.Duration;
import java.util.Objects;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * The exact method: a constraint solver that proves that nothing better exists, or says how far it
 * came within its time. It starts from what {@link ListScheduler} finds and never gives less. It
 * needs the optional library {@code org.choco-solver:choco-solver}. Where the time runs out, how
 * good the answer is depends on the machine. Where the times add up to more than the solver's
 * numbers hold (about 248 days), it gives what the built-in method gives.
 *
 * @param limit how long it may search
 */
public record ExactScheduler(Duration limit) implements Scheduler, Serializable {
  /**
   * Checks the time, and that the solver is there.
   *
   * @param limit how long it may search, more than zero
   * @throws BakeryException if the time is not positive, or the solver is not on the path
   */
  public ExactScheduler {
    Objects.requireNonNull(limit, "limit");
    if (limit.isZero() || limit.isNegative()) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE, "no time to search", limit.toString(), "give more than zero");
    }
    try {
      Class.forName("org.chocosolver.solver.Model", false, ExactScheduler.class.getClassLoader());
    } catch (ClassNotFoundException missing) {
      throw new BakeryException(
          Reason.MISSING,
          "the exact method needs a constraint solver",
          "none on the path",
          "add the library org.choco-solver:choco-solver, or take ListScheduler");
    }
  }

  /**
   * The method.
   *
   * @param limit how long it may search, more than zero
   * @return a scheduler
   * @throws BakeryException if the time is not positive, or the solver is not on the path
   */
  public static ExactScheduler of(Duration limit) {
    return new ExactScheduler(limit);
  }

  @Override
  public SchedulerAnswer schedule(SchedulingProblem problem, Goal goal) {
    SchedulerAnswer first = ListScheduler.create().schedule(problem, goal);
    boolean settled =
        first.status() == SchedulerAnswer.Status.BEST
            || first.status() == SchedulerAnswer.Status.IMPOSSIBLE;
    if (settled) {
      return first;
    }
    Core core = problem.core();
    int[] known = first.schedule().map(s -> starts(problem, s)).orElse(null);
    if (!ConstraintModel.isWideEnough(core, goal, known)) {
      return first;
    }
    ConstraintModel.Found found = new ConstraintModel(core, goal, known).solve(limit);
    int[] starts = found.starts() == null ? known : found.starts();
    if (starts == null) {
      SchedulerAnswer.Status none =
          found.complete() ? SchedulerAnswer.Status.IMPOSSIBLE : SchedulerAnswer.Status.NOT_FOUND;
      return new SchedulerAnswer(none, goal, null, Duration.ZERO, first.generated());
    }
    Schedule schedule = Schedule.of(problem, starts);
    Duration measure = goal == Goal.EARLIEST_END ? schedule.end() : schedule.lateness();
    return new SchedulerAnswer(
        found.complete() ? SchedulerAnswer.Status.BEST : SchedulerAnswer.Status.FOUND,
        goal,
        schedule,
        found.complete() ? measure : first.bound(),
        first.generated());
  }

  private static int[] starts(SchedulingProblem problem, Schedule schedule) {
    return problem.tasks().stream()
        .mapToInt(t -> (int) schedule.entry(t.name()).start().toSeconds())
        .toArray();
  }
}
