package org.tourage.schedule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.OptionalInt;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.tourage.advice.BakeryException;

class ExactSchedulerTest {
  private static final Scheduler EXACT = ExactScheduler.of(Duration.ofSeconds(2));

  private static Duration min(long minutes) {
    return Duration.ofMinutes(minutes);
  }

  /** The published makespans of the sets that {@link ListSchedulerReferenceTest} names. */
  @Tag("reference")
  @Test
  void whatIsProvedIsThePublishedMakespan() {
    int proved = 0;
    for (TestSets.Instance instance : TestSets.successors().subList(0, 4)) {
      SchedulerAnswer answer = EXACT.schedule(instance.problem(), Goal.EARLIEST_END);
      int published = instance.published().orElseThrow();
      if (answer.status() == SchedulerAnswer.Status.BEST) {
        assertThat(answer.require().end().toSeconds()).as(instance.name()).isEqualTo(published);
        proved++;
      } else {
        assertThat(answer.require().end().toSeconds())
            .as(instance.name())
            .isGreaterThanOrEqualTo(published);
      }
    }
    assertThat(proved).isGreaterThanOrEqualTo(2);
  }

  @Test
  void itIsNeverWorseThanTheBuiltInMethodAndProvesWhatThatCannot() {
    SchedulingProblem.Builder builder =
        SchedulingProblem.builder()
            .resource(Resource.of("oven", 2).changing(min(12)))
            .resource(Resource.of("hands", 1).open(min(0), min(600), 1));
    for (int k = 0; k < 5; k++) {
      builder
          .task(Task.of("shape " + k, min(15 + 3 * k)).needing(Need.of("hands", 1)))
          .task(
              Task.of("bake " + k, min(20 + k))
                  .needing(Need.of("oven", 1 + k % 2).at(k % 2 == 0 ? "200 °C" : "230 °C"))
                  .due(min(300 + 10 * k)))
          .link(Link.endToStart("shape " + k, "bake " + k).atLeast(min(60)).atMost(min(75)));
    }
    SchedulingProblem problem = builder.build();
    SchedulerAnswer quick = ListScheduler.create().schedule(problem, Goal.JUST_IN_TIME);
    SchedulerAnswer exact = EXACT.schedule(problem, Goal.JUST_IN_TIME);
    assertThat(exact.require().lateness()).isLessThanOrEqualTo(quick.require().lateness());
    assertThat(exact.require().earliness()).isLessThanOrEqualTo(quick.require().earliness());
    assertThat(exact.gap()).contains(exact.require().lateness().minus(exact.bound()));
  }

  @Test
  void aProblemWithoutAScheduleIsProvedImpossible() {
    for (TestSets.Instance instance : TestSets.greatestLags().subList(0, 8)) {
      SchedulingProblem problem;
      try {
        problem = instance.problem();
      } catch (BakeryException refused) {
        assertThat(instance.published()).isEqualTo(OptionalInt.empty());
        continue;
      }
      SchedulerAnswer answer = EXACT.schedule(problem, Goal.EARLIEST_END);
      if (instance.published().isPresent()) {
        assertThat(answer.status()).as(instance.name()).isEqualTo(SchedulerAnswer.Status.BEST);
        assertThat(answer.require().end().toSeconds()).isEqualTo(instance.published().getAsInt());
      } else {
        assertThat(answer.status())
            .as(instance.name())
            .isEqualTo(SchedulerAnswer.Status.IMPOSSIBLE);
      }
    }
  }

  @Test
  void noTimeIsRefused() {
    assertThatThrownBy(() -> ExactScheduler.of(Duration.ZERO))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("no time to search");
  }
}
