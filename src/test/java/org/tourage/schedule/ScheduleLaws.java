package org.tourage.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

class ScheduleLaws {
  private static final Scheduler BUILT_IN = ListScheduler.create();

  private static Duration min(long minutes) {
    return Duration.ofMinutes(minutes);
  }

  /** An invented day of a small pastry school: doughs that prove, wait a little and are baked. */
  private static SchedulingProblem day(int products, long seed, long shift, int trays) {
    Random random = new Random(seed);
    SchedulingProblem.Builder builder =
        SchedulingProblem.builder()
            .resource(Resource.of("hands", 2).attending())
            .resource(Resource.of("mixer", 1))
            .resource(Resource.of("proofer", 12))
            .resource(
                Resource.of("oven", trays).changing(min(15)).changing("200 °C", "180 °C", min(25)));
    String[] settings = {"200 °C", "220 °C", "180 °C"};
    for (int p = 0; p < products; p++) {
      String name = "product " + p + " ";
      int load = 1 + random.nextInt(2);
      String setting = settings[random.nextInt(3)];
      Need oven = Need.of("oven", load);
      builder
          .task(
              Task.of(name + "mix", min(10 + random.nextInt(10)))
                  .needing(Need.of("mixer", 1))
                  .needing(Need.of("hands", 1).first(min(4))))
          .task(Task.of(name + "bulk", min(60 + random.nextInt(30)), min(180)))
          .task(
              Task.of(name + "shape", min(10 + random.nextInt(20)))
                  .needing(Need.of("hands", 1 + random.nextInt(2))))
          .task(
              Task.of(name + "prove", min(45 + random.nextInt(45)))
                  .needing(Need.of("proofer", load)))
          .task(
              Task.of(name + "bake", min(15 + random.nextInt(25)))
                  .needing(
                      random.nextInt(4) == 0 ? oven.stepping("220 °C", "200 °C") : oven.at(setting))
                  .needing(Need.of("hands", 1).first(min(2)))
                  .needing(Need.of("hands", 1).last(min(2)))
                  .due(min(24 * 60 + shift + 30L * random.nextInt(6))))
          .link(Link.endToStart(name + "mix", name + "bulk").atMost(Duration.ZERO))
          .link(Link.endToStart(name + "bulk", name + "shape"))
          .link(Link.endToStart(name + "shape", name + "prove").atMost(min(5)))
          .link(
              Link.endToStart(name + "prove", name + "bake")
                  .atMost(min(15))
                  .keeping("proofer", load));
    }
    return builder.build();
  }

  private static Map<String, Duration> starts(Schedule schedule) {
    Map<String, Duration> starts = new LinkedHashMap<>();
    schedule.entries().forEach(e -> starts.put(e.task().name(), e.start()));
    return starts;
  }

  @Property(tries = 25)
  void everyScheduleKeepsTheProblemAndReadsBack(
      @ForAll @IntRange(min = 1, max = 8) int products, @ForAll long seed) {
    for (Goal goal : Goal.values()) {
      SchedulingProblem problem = day(products, seed, 0, 4);
      Schedule schedule = BUILT_IN.schedule(problem, goal).require();
      assertThat(ScheduleCheck.violations(problem, starts(schedule))).isEmpty();
      assertThat(Schedule.of(problem, starts(schedule))).isEqualTo(schedule);
    }
  }

  @Property(tries = 15)
  void shiftingAllDueTimesShiftsTheSchedule(
      @ForAll @IntRange(min = 1, max = 6) int products,
      @ForAll long seed,
      @ForAll @IntRange(min = 0, max = 3) int days) {
    Schedule one = BUILT_IN.schedule(day(products, seed, 0, 4), Goal.JUST_IN_TIME).require();
    long shift = days * 24L * 60;
    Schedule two = BUILT_IN.schedule(day(products, seed, shift, 4), Goal.JUST_IN_TIME).require();
    Map<String, Duration> moved = new LinkedHashMap<>();
    starts(one).forEach((task, start) -> moved.put(task, start.plus(min(shift))));
    if (one.lateness().isZero()) {
      assertThat(starts(two)).isEqualTo(moved);
    }
  }

  @Property(tries = 25)
  void anAnswerIsTheSameWheneverItIsAskedFor(
      @ForAll @IntRange(min = 1, max = 6) int products, @ForAll long seed) {
    SchedulingProblem problem = day(products, seed, 0, 3);
    assertThat(BUILT_IN.schedule(problem, Goal.JUST_IN_TIME))
        .isEqualTo(BUILT_IN.schedule(problem, Goal.JUST_IN_TIME));
  }

  @Property(tries = 25)
  void aTaskMovesByItsSlackAndNotASecondMore(
      @ForAll @IntRange(min = 1, max = 5) int products, @ForAll long seed) {
    SchedulingProblem problem = day(products, seed, 0, 4);
    Schedule schedule = BUILT_IN.schedule(problem, Goal.EARLIEST_END).require();
    for (Schedule.Entry entry : schedule.entries()) {
      Duration slack = schedule.slack(entry.task().name());
      assertThat(after(schedule, entry, slack)).as(entry + " by " + slack).isEmpty();
      if (slack.compareTo(Duration.ofDays(1000)) < 0) {
        boolean misses =
            entry
                .task()
                .due()
                .filter(d -> !entry.end().plus(slack).minus(d).isNegative())
                .isPresent();
        assertThat(misses || !after(schedule, entry, slack.plusSeconds(1)).isEmpty())
            .as(entry + " by " + slack)
            .isTrue();
      }
    }
  }

  private static List<Violation> after(Schedule schedule, Schedule.Entry entry, Duration delay) {
    Map<String, Duration> moved = starts(schedule);
    moved.merge(entry.task().name(), delay, Duration::plus);
    return ScheduleCheck.violations(schedule.problem(), moved);
  }

  @Property(tries = 25)
  void noTaskOfTheCriticalChainCouldBeginEarlierAlone(
      @ForAll @IntRange(min = 1, max = 5) int products, @ForAll long seed) {
    SchedulingProblem problem = day(products, seed, 0, 4);
    Schedule schedule = BUILT_IN.schedule(problem, Goal.EARLIEST_END).require();
    List<Schedule.Entry> chain = schedule.criticalChain();
    assertThat(chain.get(chain.size() - 1).end()).isEqualTo(schedule.end());
    List<Duration> starts = new ArrayList<>(chain.stream().map(Schedule.Entry::start).toList());
    assertThat(starts).isSorted();
  }

  @Property(tries = 25)
  void theProfileOfAResourceAddsUpToTheWork(
      @ForAll @IntRange(min = 1, max = 6) int products, @ForAll long seed) {
    SchedulingProblem problem = day(products, seed, 0, 4);
    Schedule schedule = BUILT_IN.schedule(problem, Goal.JUST_IN_TIME).require();
    long taken = 0;
    for (Schedule.Level level : schedule.profile("mixer")) {
      assertThat(level.taken()).isBetween(0, level.there());
      taken += level.taken() * level.to().minus(level.from()).toMinutes();
    }
    long work =
        problem.tasks().stream()
            .filter(t -> t.name().endsWith("mix"))
            .mapToLong(t -> t.least().toMinutes())
            .sum();
    assertThat(taken).isEqualTo(work);
  }
}
