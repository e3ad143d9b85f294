package org.tourage.schedule;

import java.io.Serializable;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * Something that has to be done: how long it takes, what it needs, and the times that bind it. All
 * times count from the origin of the plan, the midnight before its first day.
 *
 * <pre>{@code
 * Task bake = Task.of("bake the buns", Duration.ofMinutes(18))
 *     .needing(Need.of("oven", 2).at("200 °C"))
 *     .needing(Need.of("hands", 1).first(Duration.ofMinutes(2)))
 *     .due(Duration.ofHours(7));
 * }</pre>
 */
public final class Task implements Serializable {
  private static final long serialVersionUID = 1L;

  private final String name;
  private final int least;
  private final int greatest;
  private final List<Need> needs;
  private final @Nullable Duration release;
  private final @Nullable Duration deadline;
  private final @Nullable Duration due;

  private Task(
      String name,
      int least,
      int greatest,
      List<Need> needs,
      @Nullable Duration release,
      @Nullable Duration deadline,
      @Nullable Duration due) {
    this.name = name;
    this.least = least;
    this.greatest = greatest;
    this.needs = List.copyOf(needs);
    this.release = release;
    this.deadline = deadline;
    this.due = due;
  }

  /**
   * A task of one duration.
   *
   * @param name its name, unlike every other of the problem
   * @param duration how long it takes, whole seconds, 0 or more
   * @return the task
   * @throws BakeryException if the name is blank or the duration negative
   */
  public static Task of(String name, Duration duration) {
    int seconds = Seconds.atLeastZero("the duration of a task", duration);
    return new Task(Seconds.name("task", name), seconds, seconds, List.of(), null, null, null);
  }

  /**
   * A task that may last longer: it goes on, and keeps what it needs, until the one task that
   * follows it begins. A retard is one.
   *
   * @param name its name
   * @param least the least duration
   * @param greatest the greatest duration
   * @return the task
   * @throws BakeryException if the greatest is below the least
   */
  public static Task of(String name, Duration least, Duration greatest) {
    int from = Seconds.atLeastZero("the least duration of a task", least);
    int to = Seconds.atLeastZero("the greatest duration of a task", greatest);
    if (to < from) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "the greatest duration of \"" + name + "\" is below its least",
          ClockText.length(greatest) + " and " + ClockText.length(least),
          "give the least first");
    }
    return new Task(Seconds.name("task", name), from, to, List.of(), null, null, null);
  }

  /**
   * The same with one more need.
   *
   * @param need what it needs
   * @return the task
   * @throws BakeryException if the need is longer than the task
   */
  public Task needing(Need need) {
    Objects.requireNonNull(need, "need");
    if (need.length().toSeconds() > least) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "\"" + name + "\" is shorter than what it needs",
          need.toString(),
          "the task takes " + ClockText.length(Duration.ofSeconds(least)));
    }
    if (needs.stream().anyMatch(other -> overlap(other, need))) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "two needs of " + need.resource() + " at one time in \"" + name + "\"",
          need.toString(),
          "give one need with the whole amount");
    }
    List<Need> more = new ArrayList<>(needs);
    more.add(need);
    return new Task(name, least, greatest, more, release, deadline, due);
  }

  /** Settings of one resource can't follow each other in a task; parts of its time can. */
  private boolean overlap(Need one, Need other) {
    if (!one.resource().equals(other.resource())) {
      return false;
    }
    boolean apart =
        one.part() != other.part()
            && one.part() != Need.Part.WHOLE
            && other.part() != Need.Part.WHOLE
            && one.enter().isEmpty()
            && other.enter().isEmpty()
            && one.length().plus(other.length()).toSeconds() <= least;
    return !apart;
  }

  /** Whether it lasts until its follower begins. */
  boolean stretches() {
    return greatest > least;
  }

  /**
   * The same, not to begin before a time.
   *
   * @param time the time since the origin
   * @return the task
   */
  public Task notBefore(Duration time) {
    Seconds.of("the release of a task", time);
    return new Task(name, least, greatest, needs, time, deadline, due);
  }

  /**
   * The same, to have ended by a time, without exception: no schedule is given that breaks it.
   *
   * @param time the time since the origin
   * @return the task
   */
  public Task endingBy(Duration time) {
    Seconds.of("the deadline of a task", time);
    return new Task(name, least, greatest, needs, release, time, due);
  }

  /**
   * The same, wanted to end at a time: not later, and as little earlier as can be.
   *
   * @param time the time since the origin
   * @return the task
   */
  public Task due(Duration time) {
    Seconds.of("the due time of a task", time);
    return new Task(name, least, greatest, needs, release, deadline, time);
  }

  /**
   * The name.
   *
   * @return the name
   */
  public String name() {
    return name;
  }

  /**
   * The least duration.
   *
   * @return the duration
   */
  public Duration least() {
    return Duration.ofSeconds(least);
  }

  /**
   * The greatest duration.
   *
   * @return the duration, equal to the least where it can't stretch
   */
  public Duration greatest() {
    return Duration.ofSeconds(greatest);
  }

  /**
   * What it needs.
   *
   * @return the needs in the order in which they were named
   */
  public List<Need> needs() {
    return needs;
  }

  /**
   * The time before which it can't begin.
   *
   * @return the time since the origin, if there is one
   */
  public Optional<Duration> release() {
    return Optional.ofNullable(release);
  }

  /**
   * The time by which it has to have ended.
   *
   * @return the time since the origin, if there is one
   */
  public Optional<Duration> deadline() {
    return Optional.ofNullable(deadline);
  }

  /**
   * The time at which it is wanted to end.
   *
   * @return the time since the origin, if there is one
   */
  public Optional<Duration> due() {
    return Optional.ofNullable(due);
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Task that
        && name.equals(that.name)
        && least == that.least
        && greatest == that.greatest
        && needs.equals(that.needs)
        && Objects.equals(release, that.release)
        && Objects.equals(deadline, that.deadline)
        && Objects.equals(due, that.due);
  }

  @Override
  public int hashCode() {
    return Objects.hash(name, least, greatest, needs, release, deadline, due);
  }

  /** {@code bake the buns, 18 min: 2 of oven at 200 °C; due day 1 07:00}. */
  @Override
  public String toString() {
    StringBuilder text = new StringBuilder(name).append(", ").append(ClockText.length(least()));
    if (greatest > least) {
      text.append(" to ").append(ClockText.length(greatest()));
    }
    for (int k = 0; k < needs.size(); k++) {
      text.append(k == 0 ? ": " : ", ").append(needs.get(k));
    }
    release().ifPresent(t -> text.append("; not before ").append(ClockText.at(t)));
    deadline().ifPresent(t -> text.append("; by ").append(ClockText.at(t)));
    due().ifPresent(t -> text.append("; due ").append(ClockText.at(t)));
    return text.toString();
  }
}
