package org.tourage.fermentation;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.KELVIN;

import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Given;

/**
 * Two times that the same dough took to the same volume, from which a rate by temperature is found.
 *
 * @param low the lower temperature in kelvin
 * @param high the higher temperature in kelvin
 * @param ratio the time in the cold over the time in the warm, above 1
 */
record TwoTimes(double low, double high, double ratio) {

  /** Refuses a warmer dough that was not the quicker one. */
  static TwoTimes of(Quantity<Temperature> cold, Quantity<Temperature> warm, double ratio) {
    double low = KELVIN.measure("the cold", requireNonNull(cold, "cold"));
    double high = KELVIN.measure("the warm", requireNonNull(warm, "warm"));
    if (!(low < high) || !(ratio > 1) || Double.isInfinite(ratio)) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "the warmer dough must have been the quicker one",
          Given.temperature("the cold", cold)
              + ", "
              + Given.temperature("the warm", warm)
              + ", ratio of times "
              + ratio,
          "give the lower temperature first, and a ratio above 1");
    }
    return new TwoTimes(low, high, ratio);
  }
}
