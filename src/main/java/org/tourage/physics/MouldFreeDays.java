package org.tourage.physics;

import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.DAY;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountRange;
import org.tourage.quantity.Given;

/**
 * After how many days mould is seen on cake without preservatives, by its equilibrium relative
 * humidity ERH, which is its water activity in percent: log₁₀ days = 7.91 − 0.081·ERH at 21 °C for
 * ERH 74 % to 90 % (S.P. Cauvain and D.A.L. Seiler 1992, as quoted), and 6.42 − 0.065·ERH at 27 °C
 * (from memory, taken for the same ERH). Between the two temperatures log days lies on a straight
 * line, a choice of ours. An estimate for cake as wrapped in the bakeries of its time, no promise.
 */
public final class MouldFreeDays {
  /** The water activities for which the lines hold. */
  public static final AmountRange<Dimensionless> RANGE =
      new AmountRange<>(PERCENT.amount(74), PERCENT.amount(90));

  private static final double COOL = 21;
  private static final double WARM = 27;

  private MouldFreeDays() {}

  /**
   * The days until mould is seen.
   *
   * @param waterActivity 74 % to 90 %
   * @param temperature where it is kept, 21 °C to 27 °C
   * @return the days
   * @throws BakeryException if one lies outside of what was observed
   */
  public static Amount<Time> at(
      Quantity<Dimensionless> waterActivity, Quantity<Temperature> temperature) {
    double celsius = CELSIUS.measure("the temperature", temperature);
    double erh = 100 * FRACTION.measure("the water activity", waterActivity);
    if (!RANGE.contains(waterActivity) || !(celsius >= COOL - 1e-9 && celsius <= WARM + 1e-9)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "nothing was observed of mould here",
          "water activity "
              + Given.ratio("the water activity", waterActivity).to(PERCENT)
              + " at "
              + Given.temperature("the temperature", temperature),
          "give 74 % to 90 % and 21 °C to 27 °C");
    }
    double cool = 7.91 - 0.081 * erh;
    double warm = 6.42 - 0.065 * erh;
    double part = (celsius - COOL) / (WARM - COOL);
    return DAY.amount(StrictMath.pow(10, cool + part * (warm - cool)));
  }
}
