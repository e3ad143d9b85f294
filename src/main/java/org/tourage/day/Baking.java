package org.tourage.day;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.Advice;
import org.tourage.advice.Explained;
import org.tourage.advice.Working;
import org.tourage.oven.Bake;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;

/**
 * The oven of the day: what happens in a piece, how many loads there are, when to heat up, and what
 * energy it takes.
 *
 * @param bake the bake of one piece
 * @param kitchenOven the oven
 * @param perTray how many pieces lie on a tray
 * @param loads how many pieces go in with each load, first to last
 * @param preheating how long the oven takes to heat up, null if it never gets there
 * @param energy heating up and all loads
 */
public record Baking(
    Bake bake,
    KitchenOven kitchenOven,
    int perTray,
    List<Integer> loads,
    @Nullable Amount<Time> preheating,
    Amount<Energy> energy)
    implements Explained, Serializable {

  /**
   * Copies the loads.
   *
   * @param bake the bake of one piece
   * @param kitchenOven the oven
   * @param perTray how many pieces lie on a tray
   * @param loads how many pieces go in with each load, first to last
   * @param preheating how long the oven takes to heat up, null if it never gets there
   * @param energy heating up and all loads
   */
  public Baking {
    requireNonNull(bake, "bake");
    requireNonNull(kitchenOven, "kitchenOven");
    requireNonNull(energy, "energy");
    loads = List.copyOf(loads);
  }

  /**
   * How long the oven takes to heat up.
   *
   * @return the time, empty if its power is not enough
   */
  public Optional<Amount<Time>> heatingUp() {
    return Optional.ofNullable(preheating);
  }

  /**
   * How long one load is in the oven.
   *
   * @return the time of the bake
   */
  public Amount<Time> time() {
    return bake.end().time().to(MINUTE);
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>(bake.advice());
    double highest = kitchenOven.highest().value();
    bake.profile().steps().stream()
        .map(step -> step.setPoint().to(kitchenOven.highest().bakeryUnit()))
        .filter(point -> point.value() > highest)
        .findFirst()
        .ifPresent(
            point ->
                advice.add(
                    Advice.of(
                        "OVEN_LIMIT",
                        "the bake wants "
                            + AmountFormat.sideBySide().temperature(point)
                            + ", the oven goes up to "
                            + AmountFormat.sideBySide().temperature(kitchenOven.highest()),
                        "Bake cooler and longer, or in another oven")));
    if (loads.size() > 1) {
      advice.add(
          Advice.of(
              "LOADS",
              loads.size()
                  + " loads of at most "
                  + loads.get(0)
                  + (loads.get(0) == 1 ? " piece" : " pieces")
                  + ", so the last goes in "
                  + AmountFormat.metric().time(time().multiply(loads.size() - 1.0))
                  + " after the first",
              "Keep the later loads colder, or shape them later"));
    }
    return advice;
  }

  @Override
  public Working working() {
    return bake.working();
  }

  @Override
  public String toString() {
    return bake.toString();
  }
}
