package org.tourage.schedule;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.tourage.schedule.ScheduleCheck.Span;

/** One check of a schedule. */
final class CheckRun {
  private final SchedulingProblem problem;
  private final Map<String, Duration> starts;
  private final List<Violation> found = new ArrayList<>();

  CheckRun(SchedulingProblem problem, Map<String, Duration> starts) {
    this.problem = problem;
    this.starts = starts;
  }

  List<Violation> violations() {
    if (tasks()) {
      windows();
      links();
      for (Resource resource : problem.resources()) {
        List<Span> spans = ScheduleCheck.spans(problem, starts, resource);
        capacity(resource, spans);
        settings(resource, spans);
      }
    }
    return List.copyOf(found);
  }

  private void say(Violation.Kind kind, String text) {
    found.add(new Violation(kind, text));
  }

  private boolean tasks() {
    TreeSet<String> unknown = new TreeSet<>(starts.keySet());
    for (Task task : problem.tasks()) {
      if (starts.get(task.name()) == null) {
        say(Violation.Kind.TASKS, "\"" + task.name() + "\" has no start");
      }
      unknown.remove(task.name());
    }
    unknown.forEach(n -> say(Violation.Kind.TASKS, "the problem has no task \"" + n + "\""));
    return found.isEmpty();
  }

  private void windows() {
    for (Task task : problem.tasks()) {
      Duration start = ScheduleCheck.start(starts, task.name());
      Duration release = task.release().orElse(Duration.ZERO);
      if (start.compareTo(release) < 0) {
        say(
            Violation.Kind.WINDOW,
            "\""
                + task.name()
                + "\" begins at "
                + ClockText.at(start)
                + ", before "
                + ClockText.at(release));
      }
      Duration end = start.plus(task.least());
      task.deadline()
          .filter(by -> end.compareTo(by) > 0)
          .ifPresent(
              by ->
                  say(
                      Violation.Kind.WINDOW,
                      "\""
                          + task.name()
                          + "\" ends at "
                          + ClockText.at(end)
                          + ", after "
                          + ClockText.at(by)));
    }
  }

  private void links() {
    for (Task task : problem.tasks()) {
      Duration time =
          ScheduleCheck.end(problem, starts, task).minus(ScheduleCheck.start(starts, task.name()));
      if (time.compareTo(task.greatest()) > 0) {
        say(
            Violation.Kind.LINK,
            "\""
                + task.name()
                + "\" takes "
                + ClockText.length(time)
                + ", at most "
                + ClockText.length(task.greatest()));
      }
    }
    for (Link link : problem.links()) {
      Duration begin = ScheduleCheck.start(starts, link.first());
      Task first = problem.first(link);
      Duration base = link.from() == Link.From.START ? begin : begin.plus(first.least());
      Duration wait = ScheduleCheck.start(starts, link.then()).minus(base);
      boolean short0 = wait.compareTo(link.least()) < 0;
      boolean long0 = link.most().filter(most -> wait.compareTo(most) > 0).isPresent();
      if (short0 || long0) {
        say(Violation.Kind.LINK, link + ": waits " + ClockText.length(wait));
      }
    }
  }

  private void capacity(Resource resource, List<Span> spans) {
    TreeSet<Duration> times = new TreeSet<>();
    spans.forEach(s -> times.add(s.from()));
    resource.openings().forEach(o -> times.add(o.from()));
    resource.openings().forEach(o -> times.add(o.to()));
    List<Span> coming = new ArrayList<>(spans);
    coming.sort(Comparator.comparing(Span::from));
    List<Span> active = new ArrayList<>();
    int next = 0;
    for (Duration time : times) {
      while (next < coming.size() && coming.get(next).from().compareTo(time) <= 0) {
        active.add(coming.get(next++));
      }
      active.removeIf(s -> !s.covers(time));
      int sum = active.stream().mapToInt(Span::amount).sum();
      int there = resource.capacityAt(time);
      if (sum > there) {
        say(
            Violation.Kind.CAPACITY,
            "at "
                + ClockText.at(time)
                + " "
                + sum
                + " of "
                + resource.name()
                + " are taken of "
                + there
                + ": "
                + active.stream().map(Span::who).toList());
      }
    }
  }

  private void settings(Resource resource, List<Span> spans) {
    if (!resource.hasSettings()) {
      return;
    }
    for (int i = 0; i < spans.size(); i++) {
      for (int j = i + 1; j < spans.size(); j++) {
        Span a = spans.get(i);
        Span b = spans.get(j);
        if (a.from().equals(a.to()) || b.from().equals(b.to())) {
          continue;
        }
        boolean one = a.enter().equals(b.enter()) && a.leave().equals(b.leave());
        boolean share =
            one
                && (a.enter().equals(a.leave())
                    || a.from().equals(b.from()) && a.to().equals(b.to()));
        if (!share && !before(resource, a, b) && !before(resource, b, a)) {
          say(
              Violation.Kind.SETTING,
              "\""
                  + a.who()
                  + "\" and \""
                  + b.who()
                  + "\" want "
                  + resource.name()
                  + " at other settings at "
                  + ClockText.at(a.from())
                  + " and "
                  + ClockText.at(b.from()));
        }
      }
    }
  }

  private static boolean before(Resource resource, Span a, Span b) {
    Duration change = resource.change(a.leave(), b.enter()).orElse(Duration.ZERO);
    return a.to().plus(change).compareTo(b.from()) <= 0;
  }
}
