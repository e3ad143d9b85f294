package org.tourage.day;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Lists;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.BakeryUnits;
import org.tourage.quantity.Given;

/**
 * When each task starts and ends. Tasks of the dough follow one another; a task beside them, such
 * as heating the oven, runs while they go on. Starts are rounded to the minute from the exact sum,
 * so that short tasks do not add up to an error.
 *
 * @param entries the tasks with their times, in the order of their start
 */
public record Timetable(List<Entry> entries) implements Serializable {
  private static final double LEAST_MINUTES = 0.5;

  /**
   * A task.
   *
   * @param name what is done
   * @param duration how long it takes, at least half a minute
   * @param cue what to look for at its end, empty if nothing
   */
  public record Task(String name, Amount<Time> duration, String cue) implements Serializable {
    /**
     * Checks the duration.
     *
     * @param name what is done
     * @param duration how long it takes, at least half a minute
     * @param cue what to look for at its end, empty if nothing
     */
    public Task {
      requireNonNull(duration, "duration");
      Names.check("a task", "name", name);
      requireNonNull(cue, "cue");
      double minutes = duration.in(BakeryUnits.MINUTE);
      if (!(minutes >= LEAST_MINUTES && minutes <= Step.LONGEST_MINUTES)) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "a task takes time",
            name + " for " + duration,
            "give half a minute up to 60 days");
      }
    }

    /**
     * A task without a cue.
     *
     * @param name what is done
     * @param duration how long it takes, at least half a minute
     * @return the task
     */
    public static Task of(String name, Quantity<Time> duration) {
      requireNonNull(duration, "duration");
      return new Task(name, Given.time("the duration", duration), "");
    }

    /**
     * The task with a cue.
     *
     * @param text what to look for at its end
     * @return the changed task
     */
    public Task until(String text) {
      requireNonNull(text, "text");
      return new Task(name, duration, text);
    }

    double minutes() {
      return duration.in(BakeryUnits.MINUTE);
    }
  }

  /**
   * A task with its times.
   *
   * @param start when it starts
   * @param end when it ends
   * @param task the task
   * @param beside whether it runs beside the others
   */
  public record Entry(DayTime start, DayTime end, Task task, boolean beside)
      implements Serializable {
    /**
     * Checks that nothing is missing.
     *
     * @param start when it starts
     * @param end when it ends
     * @param task the task
     * @param beside whether it runs beside the others
     */
    public Entry {
      requireNonNull(start, "start");
      requireNonNull(end, "end");
      requireNonNull(task, "task");
    }

    /** {@code day 1 14:00 mix (20 min): smooth}. */
    @Override
    public String toString() {
      String cue = task.cue().isEmpty() ? "" : ": " + task.cue();
      return start
          + "  "
          + task.name()
          + " ("
          + AmountFormat.metric().time(task.duration())
          + ")"
          + cue;
    }
  }

  /**
   * An entry on the calendar.
   *
   * @param start when it starts
   * @param end when it ends
   * @param entry the entry
   */
  public record Dated(ZonedDateTime start, ZonedDateTime end, Entry entry) implements Serializable {
    /**
     * Checks that nothing is missing.
     *
     * @param start when it starts
     * @param end when it ends
     * @param entry the entry
     */
    public Dated {
      requireNonNull(start, "start");
      requireNonNull(end, "end");
      requireNonNull(entry, "entry");
    }

    /**
     * How long it takes on the clock of the timetable.
     *
     * @return whole minutes
     */
    public Duration duration() {
      return Duration.between(start, end);
    }

    /** {@code 2026-03-27T08:00Z mix (20 min)}. */
    @Override
    public String toString() {
      return start + "  " + entry.task().name();
    }
  }

  /**
   * Checks that tasks of the dough don't overlap.
   *
   * @param entries the tasks with their times, in the order of their start
   */
  public Timetable {
    entries = Lists.copy(entries, "entries");
    List<Entry> chain = entries.stream().filter(e -> !e.beside).toList();
    if (chain.isEmpty()) {
      throw new BakeryException(
          Reason.MISSING, "a timetable needs tasks", "none", "give at least one");
    }
    for (int i = 1; i < chain.size(); i++) {
      if (chain.get(i).start().compareTo(chain.get(i - 1).end()) < 0) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            "two tasks overlap",
            chain.get(i - 1) + "; " + chain.get(i),
            "start a task when the one before has ended");
      }
    }
  }

  /**
   * One task after another from a start.
   *
   * @param start the start of the first
   * @param tasks the tasks, at least one
   * @return the timetable
   * @throws BakeryException if there is no task
   */
  public static Timetable startingAt(DayTime start, List<Task> tasks) {
    requireNonNull(start, "start");
    Lists.copy(tasks, "tasks");
    List<Entry> entries = new ArrayList<>();
    double minutes = 0;
    for (Task task : tasks) {
      DayTime from = start.plusMinutes(Math.round(minutes));
      minutes += task.minutes();
      entries.add(new Entry(from, start.plusMinutes(Math.round(minutes)), task, false));
    }
    return new Timetable(entries);
  }

  /**
   * One task after another up to an end.
   *
   * @param end the end of the last
   * @param tasks the tasks, at least one
   * @return the timetable
   * @throws BakeryException if there is no task
   */
  public static Timetable endingAt(DayTime end, List<Task> tasks) {
    requireNonNull(end, "end");
    Lists.copy(tasks, "tasks");
    double total = tasks.stream().mapToDouble(Task::minutes).sum();
    return startingAt(end.plusMinutes(-Math.round(total)), tasks);
  }

  /**
   * The timetable with a task beside the others.
   *
   * @param task the task
   * @param end when it has to be done
   * @return the longer timetable
   */
  public Timetable beside(Task task, DayTime end) {
    requireNonNull(task, "task");
    requireNonNull(end, "end");
    List<Entry> more = new ArrayList<>(entries);
    more.add(new Entry(end.plusMinutes(-Math.round(task.minutes())), end, task, true));
    // a stable sort: of two that start together, the one beside comes last
    more.sort(Comparator.comparing(Entry::start));
    return new Timetable(more);
  }

  /**
   * The start of the first task.
   *
   * @return the time
   */
  public DayTime start() {
    return entries.get(0).start();
  }

  /**
   * The end of the last task.
   *
   * @return the time
   */
  public DayTime end() {
    return entries.stream().map(Entry::end).max(Comparator.naturalOrder()).orElseThrow();
  }

  /**
   * The timetable on the calendar. The first entry starts at its time of day there; all others
   * follow by their durations, so that a night in which the clocks are changed makes no step longer
   * or shorter.
   *
   * @param date the date of day 1
   * @param zone where the kitchen is
   * @return the entries in their order
   */
  public List<Dated> on(LocalDate date, ZoneId zone) {
    return dated(start(), requireNonNull(date, "date"), requireNonNull(zone, "zone"));
  }

  /**
   * The timetable on the calendar, with the last entry ending at its time of day there; all others
   * go before it by their durations.
   *
   * @param date the date of day 1
   * @param zone where the kitchen is
   * @return the entries in their order
   */
  public List<Dated> endingOn(LocalDate date, ZoneId zone) {
    return dated(end(), requireNonNull(date, "date"), requireNonNull(zone, "zone"));
  }

  private List<Dated> dated(DayTime kept, LocalDate date, ZoneId zone) {
    ZonedDateTime anchor = date.plusDays(kept.day() - 1L).atTime(kept.time()).atZone(zone);
    return entries.stream()
        .map(
            e ->
                new Dated(
                    anchor.plus(Duration.ofMinutes(e.start().minutes() - kept.minutes())),
                    anchor.plus(Duration.ofMinutes(e.end().minutes() - kept.minutes())),
                    e))
        .toList();
  }

  /** A line a task, then the end. */
  @Override
  public String toString() {
    return entries.stream().map(Entry::toString).collect(Collectors.joining("\n"))
        + "\n"
        + end()
        + "  done";
  }
}
