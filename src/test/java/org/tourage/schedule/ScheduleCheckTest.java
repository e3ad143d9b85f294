package org.tourage.schedule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.tourage.advice.BakeryException;

class ScheduleCheckTest {
  private static Duration min(long minutes) {
    return Duration.ofMinutes(minutes);
  }

  private static SchedulingProblem.Builder two() {
    return SchedulingProblem.builder()
        .resource(Resource.of("oven", 2).changing(min(10)))
        .task(Task.of("a", min(20)).needing(Need.of("oven", 1).at("200 °C")))
        .task(Task.of("b", min(20)).needing(Need.of("oven", 1).at("220 °C")));
  }

  @Test
  void loadsOfOtherSettingsNeedTheTimeOfTheChangeBetween() {
    SchedulingProblem problem = two().build();
    assertThat(ScheduleCheck.violations(problem, Map.of("a", min(0), "b", min(30)))).isEmpty();
    assertThat(ScheduleCheck.violations(problem, Map.of("a", min(30), "b", min(0)))).isEmpty();
    assertThat(ScheduleCheck.violations(problem, Map.of("a", min(0), "b", min(29))))
        .extracting(Violation::kind)
        .containsExactly(Violation.Kind.SETTING);
  }

  @Test
  void loadsOfOneSettingShareAsFarAsThereIsRoom() {
    SchedulingProblem problem =
        SchedulingProblem.builder()
            .resource(Resource.of("oven", 2).changing(min(10)))
            .task(Task.of("a", min(20)).needing(Need.of("oven", 1).at("200 °C")))
            .task(Task.of("b", min(20)).needing(Need.of("oven", 2).at("200 °C")))
            .task(Task.of("c", min(20)).needing(Need.of("oven", 1).at("200 °C")))
            .build();
    assertThat(ScheduleCheck.violations(problem, Map.of("a", min(0), "c", min(7), "b", min(27))))
        .isEmpty();
    assertThat(ScheduleCheck.violations(problem, Map.of("a", min(0), "c", min(7), "b", min(26))))
        .extracting(Violation::text)
        .containsExactly("at day 1 00:26 3 of oven are taken of 2: [c, b]");
  }

  @Test
  void aSteppedSettingIsSharedFromOneStartOnly() {
    SchedulingProblem problem =
        SchedulingProblem.builder()
            .resource(Resource.of("oven", 2).changing(min(10)))
            .task(Task.of("a", min(20)).needing(Need.of("oven", 1).stepping("240", "210")))
            .task(Task.of("b", min(20)).needing(Need.of("oven", 1).stepping("240", "210")))
            .build();
    assertThat(ScheduleCheck.violations(problem, Map.of("a", min(0), "b", min(0)))).isEmpty();
    assertThat(ScheduleCheck.violations(problem, Map.of("a", min(0), "b", min(5)))).hasSize(1);
    assertThat(ScheduleCheck.violations(problem, Map.of("a", min(0), "b", min(30)))).isEmpty();
  }

  @Test
  void aStretchingTaskKeepsWhatItNeedsUntilItsFollowerBegins() {
    SchedulingProblem problem =
        SchedulingProblem.builder()
            .resource(Resource.of("shelf", 1))
            .task(Task.of("retard", min(60), min(100)).needing(Need.of("shelf", 1)))
            .task(Task.of("bake", min(20)))
            .task(Task.of("other", min(30)).needing(Need.of("shelf", 1)))
            .link(Link.endToStart("retard", "bake"))
            .build();
    Map<String, Duration> fits = Map.of("retard", min(0), "bake", min(100), "other", min(100));
    assertThat(ScheduleCheck.violations(problem, fits)).isEmpty();
    assertThat(Schedule.of(problem, fits).entry("retard").end()).isEqualTo(min(100));
    assertThat(
            ScheduleCheck.violations(
                problem, Map.of("retard", min(0), "bake", min(100), "other", min(99))))
        .extracting(Violation::kind)
        .containsExactly(Violation.Kind.CAPACITY);
    assertThat(
            ScheduleCheck.violations(
                problem, Map.of("retard", min(0), "bake", min(101), "other", min(101))))
        .extracting(Violation::text)
        .containsExactly("\"retard\" takes 1 h 41 min, at most 1 h 40 min");
  }

  @Test
  void windowsAndWaitsHoldToTheSecond() {
    SchedulingProblem problem =
        SchedulingProblem.builder()
            .task(Task.of("a", min(20)).notBefore(min(5)).endingBy(min(25)))
            .task(Task.of("b", min(1)))
            .link(Link.endToStart("a", "b").atLeast(min(2)).atMost(min(4)))
            .build();
    assertThat(ScheduleCheck.violations(problem, Map.of("a", min(5), "b", min(27)))).isEmpty();
    assertThat(ScheduleCheck.violations(problem, Map.of("a", min(5), "b", min(29)))).isEmpty();
    for (Duration early : new Duration[] {min(27).minusSeconds(1), min(29).plusSeconds(1)}) {
      assertThat(ScheduleCheck.violations(problem, Map.of("a", min(5), "b", early)))
          .extracting(Violation::kind)
          .containsExactly(Violation.Kind.LINK);
    }
    assertThat(ScheduleCheck.violations(problem, Map.of("a", min(5).plusSeconds(1), "b", min(28))))
        .extracting(Violation::text)
        .containsExactly("\"a\" ends at day 1 00:25:01, after day 1 00:25");
    assertThat(ScheduleCheck.violations(problem, Map.of("a", min(5).minusSeconds(1), "b", min(28))))
        .extracting(Violation::kind)
        .containsExactly(Violation.Kind.WINDOW);
  }

  @Test
  void tasksThatAreMissingOrUnknownAreNamed() {
    assertThat(ScheduleCheck.violations(two().build(), Map.of("a", min(0), "c", min(0))))
        .extracting(Violation::text)
        .containsExactly("\"b\" has no start", "the problem has no task \"c\"");
    assertThatThrownBy(() -> Schedule.of(two().build(), Map.of("a", min(0))))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("\"b\" has no start");
  }

  @Test
  void shiftsAddUpAndNothingHappensOutsideThem() {
    SchedulingProblem problem =
        SchedulingProblem.builder()
            .resource(
                Resource.of("hands", 1).open(min(60), min(180), 1).open(min(120), min(240), 1))
            .task(Task.of("a", min(90)).needing(Need.of("hands", 2).first(min(30))))
            .task(Task.of("b", min(60)).needing(Need.of("hands", 1)))
            .build();
    Schedule schedule = ListScheduler.create().schedule(problem, Goal.EARLIEST_END).require();
    assertThat(schedule.entry("a").start()).isEqualTo(min(120));
    assertThat(schedule.entry("b").start()).isEqualTo(min(60));
    assertThat(schedule.profile("hands"))
        .containsExactly(
            new Schedule.Level(min(60), min(120), 1, 1),
            new Schedule.Level(min(120), min(150), 2, 2));
    assertThat(ScheduleCheck.violations(problem, Map.of("a", min(120), "b", min(59))))
        .extracting(Violation::kind)
        .containsExactly(Violation.Kind.CAPACITY);
  }
}
