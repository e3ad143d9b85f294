package org.tourage.fermentation;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;

import java.io.Serializable;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.physics.SolidConduction;
import org.tourage.quantity.AmountRange;

/**
 * How fast something grows or ferments, by temperature. Only ratios of rates have a meaning; a rate
 * of 1 is the best one, or the one at the reference temperature.
 */
public interface RateModel extends SolidConduction.LocalProcess, Serializable {

  /**
   * What it is the rate of.
   *
   * @return for example {@code baker's yeast, growth}
   */
  String name();

  /**
   * Where its figures come from.
   *
   * @return the publication, or {@code common practice}
   */
  String source();

  /**
   * Where the model can be trusted. Outside it still gives an answer, with advice.
   *
   * @return the range
   */
  AmountRange<Temperature> range();

  /**
   * Temperatures at which the curve has a corner, so that integrals stop there.
   *
   * @return °C, rising; empty for a smooth curve
   */
  List<Double> corners();

  /**
   * The relative rate.
   *
   * @param temperature the temperature
   * @return the rate, not negative
   */
  default double rate(Quantity<Temperature> temperature) {
    return rate(CELSIUS.measure("the temperature", requireNonNull(temperature, "temperature")));
  }

  /**
   * A temperature that is a number.
   *
   * @param celsius the temperature in °C
   * @return the same
   * @throws BakeryException if it is not a number
   */
  static double known(double celsius) {
    if (Double.isNaN(celsius)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE, "there is no such temperature", "not a number", "give it in °C");
    }
    return celsius;
  }
}
