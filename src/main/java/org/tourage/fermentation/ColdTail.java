package org.tourage.fermentation;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;

import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Numbers;
import org.tourage.physics.SolidConduction.LocalProcess;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.AmountRange;
import org.tourage.quantity.Given;

/**
 * A model of growth with another cold end: below a joint the rate falls by a factor for each 10 K
 * instead of ending at the least temperature of growth, since yeast that does not grow any more
 * still gives gas. The trade has a factor of 2 to 3 for each 10 K; no measured gas rate of dough
 * below 10 °C was found, so joint and factor stay a choice until a night of one's own dough sets
 * them ({@link ColdNight}). The usual tail takes the middle of both ranges, 9 °C and 2.5: at 4 °C
 * 23 % of the rate at 15 °C are left, where the model of growth alone leaves 5 %.
 *
 * @param model the model above the joint
 * @param joint where the tail begins
 * @param factor by how much 10 K divide the rate below the joint
 * @param seen whether a night of this dough set the factor
 */
public record ColdTail(RateModel model, Amount<Temperature> joint, double factor, boolean seen)
    implements RateModel {
  /** Below this, in °C, the gas of a dough is not known by measurement. */
  static final double UNKNOWN_BELOW = 10;

  private static final double USUAL_JOINT = 9;
  private static final double USUAL_FACTOR = 2.5;
  private static final double COLD_JOINT = 8;
  private static final double QUICK_FACTOR = 2;
  private static final double SLOW_FACTOR = 3;

  /** The model of the library for dough with baker's yeast. */
  private static final String YEAST = "baker's yeast, gas in dough";

  /**
   * Checks that there is a rate at the joint.
   *
   * @param model the model above the joint
   * @param joint where the tail begins
   * @param factor by how much 10 K divide the rate below the joint
   * @param seen whether a night of this dough set the factor
   */
  public ColdTail {
    requireNonNull(joint, "joint");
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
   * @param joint where the tail begins, usually 8 °C to 10 °C (46 °F to 50 °F)
   * @param factor by how much 10 K divide the rate below it, usually 2 to 3
   * @return the model
   */
  public static ColdTail below(RateModel model, Quantity<Temperature> joint, double factor) {
    return new ColdTail(
        model, Given.temperature("the joint", requireNonNull(joint, "joint")), factor, false);
  }

  /**
   * A model with the usual tail: 2.5 for each 10 K below 9 °C.
   *
   * @param model the model above the joint; a tail that it has itself is taken off
   * @return the model
   */
  public static ColdTail usual(RateModel model) {
    return below(withoutTail(model), CELSIUS.amount(USUAL_JOINT), USUAL_FACTOR);
  }

  /**
   * Baker's yeast in dough with the usual tail, the model that is taken where none is named.
   *
   * @return the model
   */
  public static ColdTail bakersYeast() {
    return usual(Rosso1993.named(YEAST));
  }

  /** The least that a tail within the usual ranges gives. */
  static RateModel slowest(RateModel model) {
    return belowIfAny(withoutTail(model), COLD_JOINT, SLOW_FACTOR);
  }

  /** The most that a tail within the usual ranges gives. */
  static RateModel quickest(RateModel model) {
    return belowIfAny(withoutTail(model), UNKNOWN_BELOW, QUICK_FACTOR);
  }

  /** Some models end above the joint, and a tail of nothing is nothing. */
  private static RateModel belowIfAny(RateModel model, double joint, double factor) {
    return model.rate(joint) > 0 ? below(model, CELSIUS.amount(joint), factor) : model;
  }

  static RateModel withoutTail(RateModel model) {
    return model instanceof ColdTail tail ? withoutTail(tail.model) : model;
  }

  @Override
  public String name() {
    return model.name()
        + ", below "
        + AmountFormat.metric().temperature(joint)
        + " by "
        + Numbers.significant(factor, 3)
        + " for each 10 K";
  }

  @Override
  public String source() {
    return model.source()
        + (seen ? "; cold end: a night of this dough" : "; cold end: a modelling choice");
  }

  @Override
  public double rate(double celsius) {
    double from = joint.in(CELSIUS);
    return RateModel.known(celsius) >= from
        ? model.rate(celsius)
        : tail(celsius, from, model.rate(from), factor);
  }

  @Override
  public LocalProcess prepared() {
    LocalProcess warm = model.prepared();
    double from = joint.in(CELSIUS);
    double there = model.rate(from);
    double by = factor;
    return celsius -> celsius >= from ? warm.rate(celsius) : tail(celsius, from, there, by);
  }

  private static double tail(double celsius, double from, double there, double factor) {
    return there * StrictMath.pow(factor, (celsius - from) / 10);
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

  /** Where no rate is published, the cold is a guess. */
  static Advice unsure(String text, String remedy, String source) {
    return Advice.of("COLD_UNSURE", text, remedy, source);
  }
}
