package org.tourage.schedule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.tourage.advice.BakeryException;

/** What a schedule promises where the doors are held in unusual ways. */
class ScheduleDoorsTest {
  private static final Scheduler BUILT_IN = ListScheduler.create();
  private static final Scheduler EXACT = ExactScheduler.of(Duration.ofSeconds(5));

  private static Duration min(long minutes) {
    return Duration.ofMinutes(minutes);
  }

  @Test
  void theBestIsNotMissedBecauseWhatHasNoDueTimeEndsLater() {
    SchedulingProblem problem =
        SchedulingProblem.builder()
            .resource(Resource.of("hands", 1).open(min(240), min(720), 1))
            .resource(Resource.of("oven", 2).changing(min(10)))
            .task(
                Task.of("early", min(20))
                    .needing(Need.of("hands", 1).last(min(10)))
                    .needing(Need.of("oven", 1).at("200")))
            .task(
                Task.of("late", min(20))
                    .needing(Need.of("hands", 1))
                    .needing(Need.of("oven", 1).at("230"))
                    .due(min(265)))
            .build();
    assertThat(ScheduleCheck.violations(problem, Map.of("late", min(240), "early", min(270))))
        .isEmpty();
    SchedulerAnswer answer = EXACT.schedule(problem, Goal.JUST_IN_TIME);
    assertThat(answer.require().lateness()).isEqualTo(Duration.ZERO);
  }

  @Test
  void whatIsKeptMayWaitForAnOpening() {
    SchedulingProblem problem =
        SchedulingProblem.builder()
            .resource(Resource.of("proofer", 1).open(min(20), min(110), 1))
            .task(Task.of("shape", min(10)))
            .task(Task.of("load", min(10)).needing(Need.of("proofer", 1)))
            .link(Link.endToStart("shape", "load").atLeast(min(20)).keeping("proofer", 1))
            .build();
    for (Scheduler scheduler : new Scheduler[] {BUILT_IN, EXACT}) {
      SchedulerAnswer answer = scheduler.schedule(problem, Goal.EARLIEST_END);
      assertThat(answer.require().end()).isEqualTo(min(50));
      assertThat(answer.status()).isEqualTo(SchedulerAnswer.Status.BEST);
    }
  }

  @Test
  void aStretchingTaskHasTheSlackOfItsFollower() {
    SchedulingProblem retard =
        SchedulingProblem.builder()
            .resource(Resource.of("shelf", 1))
            .task(Task.of("retard", min(60), min(120)).needing(Need.of("shelf", 1)))
            .task(Task.of("bake", min(20)))
            .link(Link.endToStart("retard", "bake"))
            .build();
    Schedule kept = Schedule.of(retard, Map.of("retard", min(0), "bake", min(100)));
    assertThat(kept.slack("retard")).isEqualTo(min(40));
    SchedulingProblem waiting =
        SchedulingProblem.builder()
            .resource(Resource.of("hands", 1))
            .task(Task.of("a", min(2)).needing(Need.of("hands", 1)))
            .task(Task.of("b", min(2)).needing(Need.of("hands", 1)))
            .link(Link.endToStart("a", "b").atMost(min(1)).keeping("hands", 1))
            .build();
    assertThat(Schedule.of(waiting, Map.of("a", min(3), "b", min(5))).slack("b")).isEqualTo(min(1));
  }

  @Test
  void aGreatLatenessKeepsItsBound() {
    SchedulingProblem.Builder builder = SchedulingProblem.builder();
    for (int k = 0; k < 200; k++) {
      builder.task(Task.of("t" + k, Duration.ofDays(300)).due(Duration.ZERO));
    }
    SchedulerAnswer answer = BUILT_IN.schedule(builder.build(), Goal.JUST_IN_TIME);
    assertThat(answer.status()).isEqualTo(SchedulerAnswer.Status.BEST);
    assertThat(answer.bound()).isEqualTo(Duration.ofDays(60_000));
    assertThat(answer.gap()).contains(Duration.ZERO);
  }

  @Test
  void whatNoScheduleCouldKeepIsRefusedWhenTheProblemIsMade() {
    assertThatThrownBy(
            () -> Task.of("a", min(10)).needing(Need.of("h", 1)).needing(Need.of("h", 1)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("two needs of h at one time in \"a\"");
    assertThatThrownBy(
            () ->
                Task.of("a", min(10))
                    .needing(Need.of("h", 1).first(min(6)))
                    .needing(Need.of("h", 1).last(min(6))))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("two needs of h at one time in \"a\"");
    assertThat(
            Task.of("a", min(10))
                .needing(Need.of("h", 1).first(min(5)))
                .needing(Need.of("h", 1).last(min(5)))
                .needs())
        .hasSize(2);
    assertThatThrownBy(
            () ->
                SchedulingProblem.builder()
                    .resource(Resource.of("fridge", 2).changing(min(10)))
                    .task(
                        Task.of("retard", min(20), min(40))
                            .needing(Need.of("fridge", 2).at("cold")))
                    .task(Task.of("warm", min(10)).needing(Need.of("fridge", 1).at("mild")))
                    .link(Link.endToStart("retard", "warm"))
                    .build())
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("a task that stretches can't hold a setting");
    Resource hands = Resource.of("hands", 1);
    assertThatThrownBy(
            () -> {
              Resource many = hands;
              for (int k = 0; k < 1001; k++) {
                many = many.open(min(k), min(k + 5), 1);
              }
            })
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("so many openings");
  }

  @Test
  @SuppressWarnings("NullAway") // nulls are what is tested
  void startsThatAreNoneAreRefusedInWords() {
    SchedulingProblem problem =
        SchedulingProblem.builder().task(Task.of("a", min(5)).endingBy(min(6))).build();
    for (Duration wrong :
        new Duration[] {
          Duration.ofSeconds(Long.MAX_VALUE), Duration.ofMillis(5900), Duration.ofDays(24_000)
        }) {
      assertThatThrownBy(() -> Schedule.of(problem, Map.of("a", wrong)))
          .isInstanceOf(BakeryException.class)
          .hasMessageContaining("the start of a task");
    }
    Map<String, Duration> nameless = new HashMap<>(Map.of("a", min(0)));
    nameless.put(null, min(0));
    assertThatThrownBy(() -> Schedule.of(problem, nameless))
        .isInstanceOf(NullPointerException.class)
        .hasMessage("the name of a task");
  }

  @Test
  void severalThingsThatAreKeptAtOnceAddUp() {
    SchedulingProblem problem =
        SchedulingProblem.builder()
            .resource(Resource.of("shelf", 2))
            .task(Task.of("mix", min(10)))
            .task(Task.of("a", min(10)))
            .task(Task.of("b", min(10)))
            .task(Task.of("c", min(10)))
            .link(Link.endToStart("mix", "a").atLeast(min(5)).keeping("shelf", 1))
            .link(Link.endToStart("mix", "b").atLeast(min(5)).keeping("shelf", 1))
            .link(Link.endToStart("mix", "c").atLeast(min(5)).keeping("shelf", 1))
            .build();
    for (Goal goal : Goal.values()) {
      assertThat(BUILT_IN.schedule(problem, goal).status())
          .isEqualTo(SchedulerAnswer.Status.IMPOSSIBLE);
    }
  }
}
