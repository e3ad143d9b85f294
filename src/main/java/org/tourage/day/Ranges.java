package org.tourage.day;

import static org.tourage.quantity.BakeryUnits.CELSIUS;

import javax.measure.quantity.Temperature;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Amounts;

/** The ranges of temperatures that a day takes. */
final class Ranges {
  private Ranges() {}

  static void within(String what, Amount<Temperature> reading, double low, double high) {
    double celsius = reading.in(CELSIUS);
    if (!(celsius >= low && celsius <= high)) {
      AmountFormat format = AmountFormat.sideBySide();
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "there is no " + what.replaceFirst("^an? ", ""),
          format.temperature(reading),
          "give "
              + format.temperature(Amounts.celsius(low))
              + " to "
              + format.temperature(Amounts.celsius(high)));
    }
  }
}
