package org.tourage.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.tourage.advice.BakeryException;

/**
 * Against published best makespans: R. Kolisch, A. Sprecher, PSPLIB, European Journal of
 * Operational Research 96 (1997) 205-216, set j30, 48 instances; R. Kolisch, C. Schwindt, A.
 * Sprecher, in Project Scheduling, Kluwer 1999 (ProGen/max), set sm_j10, 90 instances.
 */
@Tag("reference")
class ListSchedulerReferenceTest {
  private static final Scheduler BUILT_IN = ListScheduler.create();

  private static double gap(SchedulerAnswer answer, int published) {
    double end = answer.require().end().toSeconds();
    return (end - published) / published;
  }

  private static List<Violation> broken(Schedule schedule) {
    Map<String, java.time.Duration> starts = new TreeMap<>();
    schedule.entries().forEach(e -> starts.put(e.task().name(), e.start()));
    return ScheduleCheck.violations(schedule.problem(), starts);
  }

  @Test
  void theMeanGapToThePublishedMakespansOfJ30IsAtMostTwoPercent() {
    List<Double> gaps = new ArrayList<>();
    for (TestSets.Instance instance : TestSets.successors()) {
      SchedulerAnswer answer = BUILT_IN.schedule(instance.problem(), Goal.EARLIEST_END);
      assertThat(broken(answer.require())).as(instance.name()).isEmpty();
      double gap = gap(answer, instance.published().orElseThrow());
      assertThat(gap).as(instance.name()).isNotNegative();
      if (answer.status() == SchedulerAnswer.Status.BEST) {
        assertThat(gap).as(instance.name()).isZero();
      }
      assertThat(answer.bound().toSeconds())
          .as(instance.name())
          .isLessThanOrEqualTo(instance.published().orElseThrow());
      gaps.add(gap);
    }
    assertThat(gaps).hasSize(48);
    assertThat(gaps.stream().mapToDouble(g -> g).average().orElseThrow()).isLessThan(0.02);
  }

  @Test
  void problemsWithGreatestLagsAreSolvedAndTheImpossibleOnesNeverAnswered() {
    int solved = 0;
    int solvable = 0;
    double sum = 0;
    for (TestSets.Instance instance : TestSets.greatestLags()) {
      SchedulingProblem problem;
      try {
        problem = instance.problem();
      } catch (BakeryException refused) {
        // more is needed than there ever is: such a problem can't be made
        assertThat(instance.published()).as(instance.name()).isEmpty();
        continue;
      }
      SchedulerAnswer answer = BUILT_IN.schedule(problem, Goal.EARLIEST_END);
      if (instance.published().isEmpty()) {
        assertThat(answer.schedule()).as(instance.name()).isEmpty();
        continue;
      }
      solvable++;
      assertThat(answer.status())
          .as(instance.name())
          .isNotEqualTo(SchedulerAnswer.Status.IMPOSSIBLE);
      if (answer.schedule().isPresent()) {
        assertThat(broken(answer.require())).as(instance.name()).isEmpty();
        double gap = gap(answer, instance.published().orElseThrow());
        assertThat(gap).as(instance.name()).isNotNegative();
        sum += gap;
        solved++;
      }
    }
    assertThat(solvable).isEqualTo(62);
    assertThat(solved / (double) solvable).isGreaterThanOrEqualTo(0.95);
    assertThat(sum / solved).isLessThan(0.05);
  }
}
