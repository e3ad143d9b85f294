package org.tourage.schedule;

import java.io.Serializable;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/** When each task begins and ends, in a way that keeps the problem. */
public final class Schedule implements Serializable {
  private static final long serialVersionUID = 1L;

  /**
   * One task in its place.
   *
   * @param task the task
   * @param start when it begins, since the origin
   * @param end when it ends
   */
  public record Entry(Task task, Duration start, Duration end) implements Serializable {
    /**
     * Checks the order of the times.
     *
     * @param task the task
     * @param start when it begins, since the origin
     * @param end when it ends
     */
    public Entry {
      Objects.requireNonNull(task, "task");
      Objects.requireNonNull(start, "start");
      Objects.requireNonNull(end, "end");
      if (end.compareTo(start) < 0) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            "an entry ends before it begins",
            ClockText.at(start) + " to " + ClockText.at(end),
            "give the start first");
      }
    }

    /** {@code day 1 06:30 to day 1 06:48 bake}. */
    @Override
    public String toString() {
      return ClockText.at(start) + " to " + ClockText.at(end) + "  " + task.name();
    }
  }

  /**
   * How much of a resource is taken from one time to the next.
   *
   * @param from when this begins
   * @param to when the next begins
   * @param taken how much is taken
   * @param there how much there is
   */
  public record Level(Duration from, Duration to, int taken, int there) implements Serializable {
    /**
     * Checks that nothing is null.
     *
     * @param from when this begins
     * @param to when the next begins
     * @param taken how much is taken
     * @param there how much there is
     */
    public Level {
      Objects.requireNonNull(from, "from");
      Objects.requireNonNull(to, "to");
    }
  }

  private final SchedulingProblem problem;
  private final LinkedHashMap<String, Duration> starts;
  private final List<Entry> entries;

  private Schedule(SchedulingProblem problem, LinkedHashMap<String, Duration> starts) {
    this.problem = problem;
    this.starts = starts;
    List<Entry> all = new ArrayList<>();
    for (Task task : problem.tasks()) {
      Duration start = Objects.requireNonNull(starts.get(task.name()), task.name());
      all.add(new Entry(task, start, ScheduleCheck.end(problem, starts, task)));
    }
    all.sort(Comparator.comparing(Entry::start).thenComparing(Entry::end));
    entries = List.copyOf(all);
  }

  /**
   * A schedule from the starts of the tasks, from wherever they come.
   *
   * @param problem the problem
   * @param starts the start of each task by name, since the origin; the order has no meaning
   * @return the schedule
   * @throws BakeryException if it breaks anything; the message has the first five
   */
  public static Schedule of(SchedulingProblem problem, Map<String, Duration> starts) {
    List<Violation> broken = ScheduleCheck.violations(problem, starts);
    if (!broken.isEmpty()) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "these starts break " + broken.size() + " rules of the problem",
          broken.stream().limit(5).map(Violation::text).collect(Collectors.joining("; ")),
          "let a scheduler find them");
    }
    LinkedHashMap<String, Duration> copy = new LinkedHashMap<>();
    problem.tasks().forEach(t -> copy.put(t.name(), Objects.requireNonNull(starts.get(t.name()))));
    return new Schedule(problem, copy);
  }

  static Schedule of(SchedulingProblem problem, int[] starts) {
    Map<String, Duration> byName = new LinkedHashMap<>();
    List<Task> tasks = problem.tasks();
    for (int i = 0; i < starts.length; i++) {
      byName.put(tasks.get(i).name(), Duration.ofSeconds(starts[i]));
    }
    return of(problem, byName);
  }

  /**
   * The problem.
   *
   * @return the problem
   */
  public SchedulingProblem problem() {
    return problem;
  }

  /**
   * The tasks in their places.
   *
   * @return the entries by start
   */
  public List<Entry> entries() {
    return entries;
  }

  /**
   * One task in its place.
   *
   * @param task its name
   * @return the entry
   * @throws BakeryException if there is no such task
   */
  public Entry entry(String task) {
    Objects.requireNonNull(task, "task");
    return entries.stream()
        .filter(e -> e.task().name().equals(task))
        .findFirst()
        .orElseThrow(() -> BakeryException.unknownName("no such task", task, starts.keySet()));
  }

  /**
   * When the first task begins.
   *
   * @return the time since the origin
   */
  public Duration start() {
    return entries.get(0).start();
  }

  /**
   * When the last task ends.
   *
   * @return the time since the origin
   */
  public Duration end() {
    return entries.stream().map(Entry::end).max(Comparator.naturalOrder()).orElseThrow();
  }

  /**
   * How much of a resource is taken over time.
   *
   * @param resource its name
   * @return the levels from the first to the last use, without gaps
   * @throws BakeryException if there is no such resource
   */
  public List<Level> profile(String resource) {
    Resource one = resource(resource);
    List<ScheduleCheck.Span> spans = ScheduleCheck.spans(problem, starts, one);
    TreeSet<Duration> times = new TreeSet<>();
    spans.forEach(s -> times.addAll(List.of(s.from(), s.to())));
    if (!times.isEmpty()) {
      TreeSet<Duration> all = new TreeSet<>();
      one.openings().forEach(o -> all.addAll(List.of(o.from(), o.to())));
      times.addAll(all.subSet(times.first(), times.last()));
    }
    List<Level> levels = new ArrayList<>();
    Duration from = null;
    for (Duration to : times) {
      if (from != null) {
        Duration at = from;
        int taken = spans.stream().filter(s -> s.covers(at)).mapToInt(s -> s.amount()).sum();
        levels.add(new Level(from, to, taken, one.capacityAt(from)));
      }
      from = to;
    }
    return levels;
  }

  private Resource resource(String name) {
    Objects.requireNonNull(name, "resource");
    return problem.resources().stream()
        .filter(r -> r.name().equals(name))
        .findFirst()
        .orElseThrow(
            () ->
                BakeryException.unknownName(
                    "no such resource",
                    name,
                    problem.resources().stream().map(Resource::name).toList()));
  }

  /**
   * How much later one task alone could begin, everything else as it is, before something breaks or
   * a due time is missed.
   *
   * @param task its name
   * @return the slack, 0 or more
   */
  public Duration slack(String task) {
    return Duration.ofSeconds(tightness().slack(problem.tasks().indexOf(entry(task).task())));
  }

  /**
   * The tasks that follow each other without a gap up to the one that ends last: by a link that is
   * tight, or because one takes what the other gives back. To end earlier, shorten one of them.
   *
   * @return the entries, first to last
   */
  public List<Entry> criticalChain() {
    List<Task> tasks = problem.tasks();
    return tightness().chain().stream().map(i -> entry(tasks.get(i).name())).toList();
  }

  private Tightness tightness() {
    return new Tightness(
        problem.core(),
        problem.tasks().stream()
            .mapToInt(t -> (int) Objects.requireNonNull(starts.get(t.name())).toSeconds())
            .toArray());
  }

  /**
   * How late things are, added up.
   *
   * @return the sum over the tasks with a due time
   */
  public Duration lateness() {
    return sum(1);
  }

  /**
   * How early things are, added up: what lies and waits.
   *
   * @return the sum over the tasks with a due time
   */
  public Duration earliness() {
    return sum(-1);
  }

  private Duration sum(int sign) {
    Duration sum = Duration.ZERO;
    for (Entry entry : entries) {
      Duration over =
          entry
              .task()
              .due()
              .map(due -> entry.start().plus(entry.task().least()).minus(due).multipliedBy(sign))
              .orElse(Duration.ZERO);
      sum = over.isNegative() ? sum : sum.plus(over);
    }
    return sum;
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Schedule that
        && problem.equals(that.problem)
        && starts.equals(that.starts);
  }

  @Override
  public int hashCode() {
    return Objects.hash(problem, starts);
  }

  /** One line a task, by start. */
  @Override
  public String toString() {
    return entries.stream().map(Entry::toString).collect(Collectors.joining("\n"));
  }
}
