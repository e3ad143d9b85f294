package org.tourage.schedule;

import java.io.Serializable;
import java.time.Duration;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/** What a scheduler found, and how good it is known to be. */
public final class SchedulerAnswer implements Serializable {
  private static final long serialVersionUID = 1L;

  /** What is known. */
  public enum Status {
    /** The schedule is the best there is, by the first measure of its goal. */
    BEST,
    /** A schedule was found; a better one may exist. */
    FOUND,
    /** It is proved that there is no schedule. */
    IMPOSSIBLE,
    /** None was found; there may be one. */
    NOT_FOUND
  }

  private final Status status;
  private final Goal goal;
  private final @Nullable Schedule schedule;
  private final Duration bound;
  private final int generated;

  SchedulerAnswer(
      Status status, Goal goal, @Nullable Schedule schedule, Duration bound, int generated) {
    this.status = status;
    this.goal = goal;
    this.schedule = schedule;
    this.bound = bound;
    this.generated = generated;
  }

  /**
   * What is known.
   *
   * @return the status
   */
  public Status status() {
    return status;
  }

  /**
   * What it was to be good for.
   *
   * @return the goal
   */
  public Goal goal() {
    return goal;
  }

  /**
   * The schedule.
   *
   * @return the schedule, if one was found
   */
  public Optional<Schedule> schedule() {
    return Optional.ofNullable(schedule);
  }

  /**
   * The schedule, where there has to be one.
   *
   * @return the schedule
   * @throws BakeryException if none was found
   */
  public Schedule require() {
    if (schedule == null) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          status == Status.IMPOSSIBLE
              ? "waits, windows and resources contradict each other"
              : "no schedule was found",
          generated + " schedules tried",
          "loosen a greatest wait or a deadline, or add capacity");
    }
    return schedule;
  }

  /**
   * What no schedule can be below, by the first measure of the goal: the end, or the lateness.
   *
   * @return the bound
   */
  public Duration bound() {
    return bound;
  }

  /**
   * The first measure of the goal: the end, or the lateness.
   *
   * @return the measure, if there is a schedule
   */
  public Optional<Duration> measure() {
    return schedule().map(s -> goal == Goal.EARLIEST_END ? s.end() : s.lateness());
  }

  /**
   * How far the schedule may be from the best.
   *
   * @return measure less bound, if there is a schedule; zero where it is the best
   */
  public Optional<Duration> gap() {
    return measure().map(m -> m.minus(bound));
  }

  /**
   * How many schedules were generated to find this one.
   *
   * @return the count
   */
  public int generated() {
    return generated;
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof SchedulerAnswer that
        && status == that.status
        && goal == that.goal
        && Objects.equals(schedule, that.schedule)
        && bound.equals(that.bound)
        && generated == that.generated;
  }

  @Override
  public int hashCode() {
    return Objects.hash(status, goal, schedule, bound, generated);
  }

  /** The status with measure and bound. */
  @Override
  public String toString() {
    String measure = goal == Goal.EARLIEST_END ? "end" : "lateness";
    return switch (status) {
      case IMPOSSIBLE -> "no schedule is possible";
      case NOT_FOUND -> "no schedule was found";
      case BEST, FOUND ->
          measure
              + " "
              + measure().map(ClockText::length).orElse("")
              + ", no less than "
              + ClockText.length(bound)
              + " is possible";
    };
  }
}
