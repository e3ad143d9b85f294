package org.tourage.fermentation;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;

import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.AmountRange;

/**
 * A model of growth with another cold end: below a temperature the rate falls by a factor for each
 * 10 K instead of ending at the least temperature of growth, since yeast that does not grow any
 * more still gives gas. A modelling choice, not a published one.
 *
 * @param model the model above the joint
 * @param joint where the tail begins
 * @param factor by how much 10 K divide the rate below the joint
 */
public record ColdTail(RateModel model, Amount<Temperature> joint, double factor)
    implements RateModel {

  /**
   * Checks that there is a rate at the joint.
   *
   * @param model the model above the joint
   * @param joint where the tail begins
   * @param factor by how much 10 K divide the rate below the joint
   */
  public ColdTail {
    requireNonNull(model, "model");
    if (!(model.rate(joint) > 0) || !(factor > 1) || Double.isInfinite(factor)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no tail can begin here",
          joint + ", factor " + factor,
          "begin where the model has a rate, with a factor above 1, for example at 8 °C with 3");
    }
  }

  /**
   * A model with a tail.
   *
   * @param model the model above the joint
   * @param joint where the tail begins, usually about 8 °C (46 °F)
   * @param factor by how much 10 K divide the rate below it
   * @return the model
   */
  public static ColdTail below(RateModel model, Quantity<Temperature> joint, double factor) {
    return new ColdTail(model, Amount.from(joint), factor);
  }

  @Override
  public String name() {
    return model.name()
        + ", below "
        + AmountFormat.metric().temperature(joint)
        + " by "
        + factor
        + " for each 10 K";
  }

  @Override
  public String source() {
    return model.source() + "; cold end: a modelling choice";
  }

  @Override
  public double rate(double celsius) {
    double from = joint.in(CELSIUS);
    return celsius >= from
        ? model.rate(celsius)
        : model.rate(from) * Math.pow(factor, (celsius - from) / 10);
  }

  @Override
  public AmountRange<Temperature> range() {
    Amount<Temperature> high = model.range().high();
    return new AmountRange<>(joint.compareTo(high) < 0 ? joint : high, high);
  }

  @Override
  public List<Double> corners() {
    List<Double> corners = new ArrayList<>();
    corners.add(joint.in(CELSIUS));
    model.corners().stream().filter(c -> c > joint.in(CELSIUS)).forEach(corners::add);
    return corners;
  }

  /** The name. */
  @Override
  public String toString() {
    return name();
  }
}
