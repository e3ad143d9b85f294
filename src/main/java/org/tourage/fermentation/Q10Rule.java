package org.tourage.fermentation;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;

import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountRange;
import org.tourage.quantity.Given;

/**
 * The simple rule: each 10 K multiply the rate by the same factor. Usual factors are 2 to 3: a rise
 * of 8 to 10 K about halves the time (common practice). It knows no optimum, so its range ends
 * where yeast slows down.
 *
 * @param factor by how much 10 K multiply the rate, above 1
 * @param reference where the rate is 1
 * @param range where the rule is used
 */
public record Q10Rule(double factor, Amount<Temperature> reference, AmountRange<Temperature> range)
    implements RateModel {
  private static final double MOST = 10;
  private static final double MOST_TENS = 100;

  /**
   * Checks the factor.
   *
   * @param factor by how much 10 K multiply the rate, above 1
   * @param reference where the rate is 1
   * @param range where the rule is used
   */
  public Q10Rule {
    requireNonNull(reference, "reference");
    requireNonNull(range, "range");
    if (!(factor > 1) || factor > MOST) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "10 K can't multiply the rate by this",
          String.valueOf(factor),
          "give a factor above 1 and up to 10, usually 2 to 3");
    }
  }

  /**
   * A rule for dough between 10 °C and 32 °C.
   *
   * @param factor by how much 10 K multiply the rate, usually 2 to 3
   * @param reference where the rate is 1
   * @return the rule
   */
  public static Q10Rule of(double factor, Quantity<Temperature> reference) {
    return new Q10Rule(
        factor,
        Given.temperature("the reference", requireNonNull(reference, "reference")),
        new AmountRange<>(CELSIUS.amount(10), CELSIUS.amount(32)));
  }

  /**
   * The factor from two times that the same dough took to the same volume.
   *
   * @param cold the lower temperature
   * @param warm the higher temperature
   * @param ratio the time in the cold over the time in the warm, above 1
   * @return the rule, with 1 at the lower temperature
   */
  public static Q10Rule observed(
      Quantity<Temperature> cold, Quantity<Temperature> warm, double ratio) {
    TwoTimes times = TwoTimes.of(cold, warm, ratio);
    return of(StrictMath.pow(ratio, 10 / (times.high() - times.low())), cold);
  }

  @Override
  public String name() {
    return "rate times " + factor + " for each 10 K";
  }

  @Override
  public String source() {
    return Advice.COMMON_PRACTICE;
  }

  @Override
  public double rate(double celsius) {
    double tens = (RateModel.known(celsius) - reference.in(CELSIUS)) / 10;
    // beyond a thousand kelvin the number would not be one any more
    return StrictMath.pow(factor, Math.max(-MOST_TENS, Math.min(MOST_TENS, tens)));
  }

  @Override
  public List<Double> corners() {
    return List.of();
  }

  /** {@code rate times 2.5 for each 10 K}. */
  @Override
  public String toString() {
    return name();
  }
}
