package org.tourage.schedule;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Accepts or refuses any schedule. It goes back to what the problem says and shares nothing with
 * the schedulers: a sum over all spans at each time at which one begins.
 */
public final class ScheduleCheck {
  /** What is taken of a resource, by whom, and from when to when. */
  record Span(String who, int amount, Duration from, Duration to, String enter, String leave) {
    boolean covers(Duration time) {
      return from.compareTo(time) <= 0 && time.compareTo(to) < 0;
    }
  }

  private ScheduleCheck() {}

  /**
   * What a schedule breaks.
   *
   * @param problem the problem
   * @param starts the start of each task by name, since the origin; the order has no meaning
   * @return what is broken; empty if the schedule keeps the problem
   * @throws org.tourage.advice.BakeryException if a start is no whole number of seconds, or beyond
   *     every plan
   */
  public static List<Violation> violations(
      SchedulingProblem problem, Map<String, Duration> starts) {
    Objects.requireNonNull(problem, "problem");
    Objects.requireNonNull(starts, "starts")
        .forEach(
            (task, start) -> {
              Objects.requireNonNull(task, "the name of a task");
              if (start != null) {
                Seconds.of("the start of a task", start);
              }
            });
    return new CheckRun(problem, starts).violations();
  }

  static Duration start(Map<String, Duration> starts, String task) {
    return Objects.requireNonNull(starts.get(task), task);
  }

  /** When a task ends: a stretching one at the start of its follower. */
  static Duration end(SchedulingProblem problem, Map<String, Duration> starts, Task task) {
    Link ending = problem.ending(task);
    return ending == null
        ? start(starts, task.name()).plus(task.least())
        : start(starts, ending.then());
  }

  static List<Span> spans(
      SchedulingProblem problem, Map<String, Duration> starts, Resource resource) {
    List<Span> spans = new ArrayList<>();
    for (Task task : problem.tasks()) {
      Duration begin = start(starts, task.name());
      Duration least = begin.plus(task.least());
      for (Need need : task.needs()) {
        if (need.resource().equals(resource.name())) {
          Duration from = need.part() == Need.Part.END ? least.minus(need.length()) : begin;
          Duration to =
              switch (need.part()) {
                case START -> begin.plus(need.length());
                case END -> least;
                case WHOLE -> end(problem, starts, task);
              };
          spans.add(new Span(task.name(), need.amount(), from, to, need.enter(), need.leave()));
        }
      }
    }
    for (Link link : problem.links()) {
      for (Need need : link.kept()) {
        if (need.resource().equals(resource.name())) {
          Task first = problem.first(link);
          spans.add(
              new Span(
                  link.first() + " (waiting)",
                  need.amount(),
                  end(problem, starts, first),
                  start(starts, link.then()),
                  "",
                  ""));
        }
      }
    }
    return spans;
  }
}
