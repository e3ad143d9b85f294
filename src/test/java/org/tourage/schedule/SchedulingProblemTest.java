package org.tourage.schedule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.tourage.advice.BakeryException;

class SchedulingProblemTest {
  private static Duration min(long minutes) {
    return Duration.ofMinutes(minutes);
  }

  private static void refused(ThrowingCallable call, String text) {
    assertThatThrownBy(call).isInstanceOf(BakeryException.class).hasMessageContaining(text);
  }

  @Test
  void whatMakesNoSenseIsRefusedByName() {
    refused(() -> Task.of(" ", min(1)), "task has no name");
    refused(() -> Task.of("a\nb", min(1)), "task has no name on one line");
    refused(() -> Task.of("a", min(-1)), "the duration of a task is negative");
    refused(() -> Task.of("a", Duration.ofMillis(1500)), "whole seconds");
    refused(() -> Task.of("a", Duration.ofDays(Long.MAX_VALUE / 86400)), "beyond every plan");
    refused(() -> Task.of("a", min(9), min(8)), "8 min and 9 min");
    refused(() -> Task.of("a", min(1)).needing(Need.of("x", 1).last(min(2))), "shorter");
    refused(() -> Need.of("x", 0), "so much of \"x\" can't be needed: 0");
    refused(() -> Need.of("x", 1).first(Duration.ZERO), "has a length");
    refused(() -> Resource.of("x", 0), "a resource needs some capacity: 0");
    refused(() -> Resource.of("x", 1).open(min(2), min(2), 1), "ends before it begins");
    refused(() -> Link.endToStart("a", "a"), "can't follow itself");
    refused(() -> Link.endToStart("a", "b").atLeast(min(3)).atMost(min(2)), "2 min and 3 min");
    refused(() -> Link.startToStart("a", "b").keeping("x", 1), "counts from a start");
  }

  @Test
  void aProblemKnowsItsNames() {
    refused(() -> SchedulingProblem.builder().build(), "a problem without tasks");
    refused(
        () -> SchedulingProblem.builder().task(Task.of("a", min(1))).task(Task.of("a", min(2))),
        "task \"a\"");
    refused(
        () ->
            SchedulingProblem.builder()
                .task(Task.of("a", min(1)))
                .link(Link.endToStart("a", "b"))
                .build(),
        "no such task: \"b\"");
    refused(
        () ->
            SchedulingProblem.builder()
                .task(Task.of("a", min(1)).needing(Need.of("oven", 1)))
                .build(),
        "no such resource for \"a\": \"oven\"");
    refused(
        () ->
            SchedulingProblem.builder()
                .resource(Resource.of("oven", 1))
                .task(Task.of("a", min(1)).needing(Need.of("oven", 2)))
                .build(),
        "2 of 1");
    refused(
        () ->
            SchedulingProblem.builder()
                .resource(Resource.of("oven", 1))
                .task(Task.of("a", min(1)).needing(Need.of("oven", 1).at("hot")))
                .build(),
        "has none");
    refused(
        () ->
            SchedulingProblem.builder()
                .resource(Resource.of("oven", 1).changing(min(1)))
                .task(Task.of("a", min(1)).needing(Need.of("oven", 1)))
                .build(),
        "names no setting");
    refused(
        () -> SchedulingProblem.builder().task(Task.of("a", min(1), min(2))).build(),
        "the one task that follows it");
  }

  @Test
  void aBuilderIsUsedOnce() {
    SchedulingProblem.Builder builder = SchedulingProblem.builder().task(Task.of("a", min(1)));
    assertThat(builder.build().find("a")).contains(Task.of("a", min(1)));
    refused(builder::build, "this builder was used");
    refused(() -> builder.task(Task.of("b", min(1))), "this builder was used");
  }

  @Test
  void contradictionsAreProvedImpossible() {
    SchedulingProblem problem =
        SchedulingProblem.builder()
            .resource(Resource.of("hands", 1))
            .task(Task.of("a", min(10)).needing(Need.of("hands", 1)))
            .task(Task.of("b", min(10)).needing(Need.of("hands", 1)))
            .link(Link.startToStart("a", "b").atLeast(min(-5)).atMost(min(5)))
            .build();
    SchedulerAnswer answer = ListScheduler.create().schedule(problem, Goal.EARLIEST_END);
    assertThat(answer.status()).isEqualTo(SchedulerAnswer.Status.IMPOSSIBLE);
    assertThat(answer).hasToString("no schedule is possible");
    refused(answer::require, "contradict each other");
    assertThat(ListScheduler.create().schedule(problem, Goal.JUST_IN_TIME).schedule()).isEmpty();
  }

  @Test
  void aProductIsReadyAtItsHourAndWhatCannotBeIsAsLittleLateAsCanBe() {
    SchedulingProblem.Builder easy =
        SchedulingProblem.builder()
            .task(Task.of("mix", min(10)))
            .task(Task.of("bake", min(20)).due(min(420)))
            .link(Link.endToStart("mix", "bake").atLeast(min(60)));
    SchedulerAnswer answer = ListScheduler.create().schedule(easy.build(), Goal.JUST_IN_TIME);
    assertThat(answer.status()).isEqualTo(SchedulerAnswer.Status.BEST);
    assertThat(answer.require())
        .hasToString("day 1 05:30 to day 1 05:40  mix\nday 1 06:40 to day 1 07:00  bake");
    SchedulingProblem late =
        SchedulingProblem.builder()
            .task(Task.of("mix", min(10)).notBefore(min(360)))
            .task(Task.of("bake", min(20)).due(min(420)))
            .link(Link.endToStart("mix", "bake").atLeast(min(60)))
            .build();
    SchedulerAnswer forced = ListScheduler.create().schedule(late, Goal.JUST_IN_TIME);
    assertThat(forced.require().lateness()).isEqualTo(min(30));
    assertThat(forced).hasToString("lateness 30 min, no less than 30 min is possible");
    assertThat(forced.gap()).contains(Duration.ZERO);
  }
}
