package org.tourage.doughtemperature;

import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.FAHRENHEIT;

import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Given;
import org.tourage.quantity.TemperatureDifference;

/** Checks of what was read off a thermometer or typed in. */
final class Readings {
  /** The warmest liquid that is poured into a dough, °C: hotter scalds it and kills the yeast. */
  static final double WARMEST_LIQUID = 55;

  /** The coldest liquid, °C: colder is ice. */
  static final double COLDEST_LIQUID = 0;

  /** The greatest rise of a dough in the mixer, K: twice what intensive mixing gives. */
  static final double GREATEST_RISE = 25;

  /** The greatest friction of a factor rule, K: three factors of the greatest rise. */
  static final double GREATEST_FRICTION = 75;

  /** What a dough can lose in the mixer more than it gains, K: warm water, cold bowl and room. */
  static final double GREATEST_LOSS = 10;

  private Readings() {}

  static Amount<Temperature> within(
      String what, Quantity<Temperature> reading, double low, double high) {
    Amount<Temperature> amount = Given.temperature("the reading", reading);
    double celsius = amount.in(CELSIUS);
    if (!(celsius >= low && celsius <= high)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "this can't be the temperature of " + what,
          amount.toString(),
          "give " + degrees(low, high));
    }
    return amount;
  }

  static Amount<Temperature> liquid(String what, Quantity<Temperature> reading) {
    return within(what, reading, COLDEST_LIQUID, WARMEST_LIQUID);
  }

  /** Ice colder than −40 °C is none of a bakery. */
  static Amount<Temperature> ice(Quantity<Temperature> reading) {
    return within("the ice", reading, -40, 0);
  }

  static TemperatureDifference difference(
      String what, TemperatureDifference given, double low, double high) {
    double kelvins = given.celsiusDegrees();
    if (!(kelvins >= low && kelvins <= high)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "this can't be " + what,
          given.toString(),
          "give a difference of "
              + Numbers.decimals(low, 1)
              + " °C to "
              + Numbers.decimals(high, 1)
              + " °C ("
              + Numbers.decimals(low * 1.8, 1)
              + " °F to "
              + Numbers.decimals(high * 1.8, 1)
              + " °F)");
    }
    return given;
  }

  static TemperatureDifference rise(TemperatureDifference given) {
    return difference("the rise of a dough in the mixer", given, 0, GREATEST_RISE);
  }

  static TemperatureDifference friction(TemperatureDifference given) {
    return difference("the friction of a factor rule", given, 0, GREATEST_FRICTION);
  }

  private static String degrees(double low, double high) {
    return Numbers.decimals(low, 0)
        + " °C to "
        + Numbers.decimals(high, 0)
        + " °C ("
        + Numbers.decimals(CELSIUS.amount(low).in(FAHRENHEIT), 0)
        + " °F to "
        + Numbers.decimals(CELSIUS.amount(high).in(FAHRENHEIT), 0)
        + " °F)";
  }
}
