package org.tourage.day;

import static org.tourage.quantity.BakeryUnits.MINUTE;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.tourage.formula.Formula;
import org.tourage.formula.Stage;

/**
 * Which stages are made beside one another: those of one stretch of the procedure that do not take
 * each other. Each ends as late as it may; the longest way through them is the chain of the day.
 */
final class SideBySide {
  private final List<Step> steps;
  private final Formula formula;

  /** Minutes from the end of a step to the end of its stretch. */
  private final double[] lead;

  /** The first step after the stretch; −1 for a step of the chain. */
  private final int[] anchor;

  private SideBySide(List<Step> steps, Formula formula) {
    this.steps = steps;
    this.formula = formula;
    this.lead = new double[steps.size()];
    this.anchor = new int[steps.size()];
    Arrays.fill(anchor, -1);
  }

  static SideBySide of(Procedure procedure, Formula formula) {
    SideBySide found = new SideBySide(procedure.steps(), formula);
    int from = 0;
    while (from < found.steps.size()) {
      int to = from;
      while (to < found.steps.size() && StepOrder.stageOf(found.steps.get(to).action()) != null) {
        to++;
      }
      if (to > from + 1) {
        found.stretch(from, to);
      }
      from = Math.max(to, from + 1);
    }
    return found;
  }

  private void stretch(int from, int to) {
    for (int i = to - 1; i >= from; i--) {
      for (int after : after(i, to)) {
        lead[i] = Math.max(lead[i], lead[after] + minutes(after));
      }
    }
    int first = from;
    for (int i = from; i < to; i++) {
      anchor[i] = to;
      first = lead[i] + minutes(i) > lead[first] + minutes(first) ? i : first;
    }
    for (int i = first; i >= 0; i = next(i, to)) {
      anchor[i] = -1;
    }
  }

  /** The step on the longest way that follows this one, −1 at the end. */
  private int next(int i, int to) {
    for (int after : after(i, to)) {
      if (lead[after] + minutes(after) == lead[i]) {
        return after;
      }
    }
    return -1;
  }

  /** The steps of the same stretch that wait for this one. */
  private List<Integer> after(int i, int to) {
    String name = stage(i);
    List<Integer> waiting = new ArrayList<>();
    for (int j = i + 1; j < to; j++) {
      Stage later = formula.stage(stage(j));
      boolean takes = later.takes().stream().anyMatch(name::equalsIgnoreCase);
      if (takes || name.equalsIgnoreCase(stage(j))) {
        waiting.add(j);
      }
    }
    return waiting;
  }

  private String stage(int i) {
    return java.util.Objects.requireNonNull(StepOrder.stageOf(steps.get(i).action()));
  }

  private double minutes(int i) {
    return steps.get(i).time().high().in(MINUTE);
  }

  boolean inChain(int step) {
    return anchor[step] < 0;
  }

  /** The step at whose start the stretch has ended; the number of steps for the end of the day. */
  int anchor(int step) {
    return anchor[step];
  }

  /** How long before the end of the stretch a step beside the chain ends. */
  long leadMinutes(int step) {
    return Math.round(lead[step]);
  }
}
