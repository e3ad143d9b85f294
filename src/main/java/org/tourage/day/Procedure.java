package org.tourage.day;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Lists;
import org.tourage.lamination.Fold;
import org.tourage.lamination.FoldSequence;
import org.tourage.oven.OvenProfile;

/**
 * The steps of one product, in order.
 *
 * @param steps the steps, at least one
 */
public record Procedure(List<Step> steps) implements Serializable {
  /**
   * Checks that the order makes sense: one mix of the final dough, folds after the lock-in, one
   * boil and one bake, nothing rises after them.
   *
   * @param steps the steps, at least one
   */
  public Procedure {
    steps = Lists.copy(steps, "steps");
    if (steps.isEmpty()) {
      throw new BakeryException(
          Reason.MISSING, "a procedure needs steps", "none", "give at least one");
    }
    StepOrder.check(steps);
  }

  /**
   * A procedure of these steps.
   *
   * @param steps the steps in order
   * @return the procedure
   * @throws BakeryException if there are none or their order makes no sense
   */
  public static Procedure of(Step... steps) {
    return new Procedure(Lists.copy(steps, "steps"));
  }

  /**
   * Lock-in and folds in their order.
   *
   * @return the sequence, empty if nothing is locked in
   */
  public Optional<FoldSequence> folds() {
    FoldSequence sequence = null;
    for (Step step : steps) {
      if (step.action() instanceof Action.Enclose enclose) {
        sequence = FoldSequence.lockIn(enclose.lockIn());
      } else if (sequence != null && step.action() instanceof Action.Turn turn) {
        for (Fold fold : turn.folds()) {
          sequence = sequence.fold(fold);
        }
      }
    }
    return Optional.ofNullable(sequence);
  }

  /**
   * The oven.
   *
   * @return the profile of the bake, empty if nothing is baked
   */
  public Optional<OvenProfile> oven() {
    for (Step step : steps) {
      if (step.action() instanceof Action.BakeOff bake) {
        return Optional.of(bake.profile());
      }
    }
    return Optional.empty();
  }

  /**
   * The step that mixes the final dough.
   *
   * @return its place in the list, or −1 if no step mixes it
   */
  int mixing() {
    for (int i = 0; i < steps.size(); i++) {
      if (steps.get(i).action() instanceof Action.Mix mix && mix.stage() == null) {
        return i;
      }
    }
    return -1;
  }

  /**
   * Where the rise ends: at the boil or at the oven, whichever comes first.
   *
   * @return its place in the list, or the number of steps if there is neither
   */
  int rising() {
    for (int i = 0; i < steps.size(); i++) {
      Action action = steps.get(i).action();
      if (action instanceof Action.BakeOff || action instanceof Action.Boil) {
        return i;
      }
    }
    return steps.size();
  }

  /** The boil before the oven, if there is one. */
  Optional<Step> boil() {
    return steps.stream().filter(s -> s.action() instanceof Action.Boil).findFirst();
  }

  /**
   * The bake.
   *
   * @return its place in the list, or the number of steps if nothing is baked
   */
  int baking() {
    for (int i = 0; i < steps.size(); i++) {
      if (steps.get(i).action() instanceof Action.BakeOff) {
        return i;
      }
    }
    return steps.size();
  }

  /** One line a step. */
  @Override
  public String toString() {
    return steps.stream().map(Step::toString).collect(Collectors.joining("\n"));
  }

  /**
   * The procedure with more steps at its end.
   *
   * @param more the steps
   * @return the longer procedure
   * @throws BakeryException if their order makes no sense
   */
  public Procedure then(Step... more) {
    List<Step> all = new ArrayList<>(steps);
    all.addAll(Lists.copy(more, "more"));
    return new Procedure(all);
  }
}
