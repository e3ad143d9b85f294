package org.tourage.plan;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.BakeryUnits;

/**
 * Tasks one after another, from a start or back from an end. Times are kept to the minute; a task's
 * minutes are rounded to the nearest one.
 *
 * @param entries the tasks with their times, in order
 */
public record Timetable(List<Entry> entries) implements Serializable {

  /**
   * A task.
   *
   * @param name what is done
   * @param duration for how long, at least half a minute
   * @param cue how to tell that it is done, empty if the clock tells
   */
  public record Task(String name, Amount<Time> duration, String cue) implements Serializable {
    /**
     * Checks the duration.
     *
     * @param name what is done
     * @param duration for how long, at least half a minute
     * @param cue how to tell that it is done, empty if the clock tells
     */
    public Task {
      requireNonNull(name, "name");
      requireNonNull(cue, "cue");
      if (duration.in(BakeryUnits.MINUTE) < 0.5) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "a task takes time",
            name + " for " + duration,
            "give at least half a minute");
      }
    }

    /**
     * A task that the clock ends.
     *
     * @param name what is done
     * @param duration for how long
     * @return the task
     */
    public static Task of(String name, Quantity<Time> duration) {
      return new Task(name, Amount.from(duration), "");
    }

    /**
     * The same with a cue.
     *
     * @param text how to tell that it is done
     * @return the task
     */
    public Task until(String text) {
      return new Task(name, duration, text);
    }

    long minutes() {
      return Math.round(duration.in(BakeryUnits.MINUTE));
    }
  }

  /**
   * A task at its time.
   *
   * @param start when it starts
   * @param end when it ends
   * @param task the task
   */
  public record Entry(DayTime start, DayTime end, Task task) implements Serializable {
    /** {@code day 1 14:30 mix (10 min)}. */
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
   * Copies the list and checks that no task overlaps the next.
   *
   * @param entries the tasks with their times, in order
   */
  public Timetable {
    entries = List.copyOf(entries);
    if (entries.isEmpty()) {
      throw new BakeryException(
          Reason.MISSING, "a timetable needs tasks", "none", "give at least one");
    }
    for (int i = 1; i < entries.size(); i++) {
      if (entries.get(i).start().compareTo(entries.get(i - 1).end()) < 0) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            "two tasks overlap",
            entries.get(i - 1) + "; " + entries.get(i),
            "start a task when the one before has ended");
      }
    }
  }

  /**
   * Tasks from a start on.
   *
   * @param start when the first starts
   * @param tasks the tasks in order
   * @return the timetable
   */
  public static Timetable startingAt(DayTime start, List<Task> tasks) {
    List<Entry> entries = new ArrayList<>();
    DayTime at = start;
    for (Task task : tasks) {
      DayTime end = at.plusMinutes(task.minutes());
      entries.add(new Entry(at, end, task));
      at = end;
    }
    return new Timetable(entries);
  }

  /**
   * Tasks back from an end, such as the time of serving.
   *
   * @param end when the last ends
   * @param tasks the tasks in order
   * @return the timetable
   */
  public static Timetable endingAt(DayTime end, List<Task> tasks) {
    long total = tasks.stream().mapToLong(Task::minutes).sum();
    return startingAt(end.plusMinutes(-total), tasks);
  }

  /**
   * When the first task starts.
   *
   * @return the time
   */
  public DayTime start() {
    return entries.get(0).start();
  }

  /**
   * When the last task ends.
   *
   * @return the time
   */
  public DayTime end() {
    return entries.get(entries.size() - 1).end();
  }

  /** One line a task, and the end. */
  @Override
  public String toString() {
    return entries.stream().map(Entry::toString).collect(Collectors.joining("\n"))
        + "\n"
        + end()
        + "  done";
  }
}
