package org.tourage.physics;

import static org.tourage.quantity.BakeryUnits.KELVIN;

import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;
import org.tourage.quantity.BakeryUnits;
import org.tourage.quantity.Given;

/**
 * Where water and steam are in balance: IAPWS Industrial Formulation 1997 (IAPWS R7-97(2012)),
 * region 4, equations 29 to 31, from 273.15 K to 647.096 K. The coefficients n1 to n10 are from
 * memory of its table 34 and are checked against the values printed in its tables 35 and 36.
 */
public final class IapwsIf97Saturation {
  private static final double[] N = {
    0,
    0.11670521452767e4,
    -0.72421316703206e6,
    -0.17073846940092e2,
    0.12020824702470e5,
    -0.32325550322333e7,
    0.14915108613530e2,
    -0.48232657361591e4,
    0.40511340542057e6,
    -0.23855557567849,
    0.65017534844798e3
  };
  private static final double LOWEST_KELVIN = 273.15;
  private static final double HIGHEST_KELVIN = 647.096;
  private static final double LOWEST_PASCAL = 611.213;
  private static final double HIGHEST_PASCAL = 22.064e6;
  private static final double PASCAL_PER_MEGAPASCAL = 1e6;

  private IapwsIf97Saturation() {}

  /**
   * The pressure of steam above water.
   *
   * @param temperature from 0 °C to 373.9 °C
   * @return pascals
   * @throws BakeryException if the temperature is out of range
   */
  public static double pressure(Quantity<Temperature> temperature) {
    double kelvin = KELVIN.measure("the temperature", temperature);
    // a microkelvin forgives the rounding of 0 °C
    if (kelvin < LOWEST_KELVIN - 1e-6 || kelvin > HIGHEST_KELVIN) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "water has no vapour pressure here",
          Given.temperature("the temperature", temperature).toString(),
          "give 0 °C to 373 °C (32 °F to 703 °F)");
    }
    return pressureAt(kelvin);
  }

  static double pressureAt(double kelvin) {
    double v = kelvin + N[9] / (kelvin - N[10]);
    double a = v * v + N[1] * v + N[2];
    double b = N[3] * v * v + N[4] * v + N[5];
    double c = N[6] * v * v + N[7] * v + N[8];
    double root = 2 * c / (-b + Math.sqrt(b * b - 4 * a * c));
    return PASCAL_PER_MEGAPASCAL * root * root * root * root;
  }

  /**
   * The temperature at which water boils.
   *
   * @param pascal the pressure, 611.213 Pa to 22.064 MPa
   * @return the temperature in °C
   * @throws BakeryException if the pressure is out of range
   */
  public static Amount<Temperature> boiling(double pascal) {
    if (!(pascal >= LOWEST_PASCAL) || pascal > HIGHEST_PASCAL) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "water does not boil at this pressure",
          pascal + " Pa",
          "give 611.213 Pa to 22.064 MPa");
    }
    double beta = Math.sqrt(Math.sqrt(pascal / PASCAL_PER_MEGAPASCAL));
    double e = beta * beta + N[3] * beta + N[6];
    double f = N[1] * beta * beta + N[4] * beta + N[7];
    double g = N[2] * beta * beta + N[5] * beta + N[8];
    double d = 2 * g / (-f - Math.sqrt(f * f - 4 * e * g));
    double sum = N[10] + d;
    double kelvin = (sum - Math.sqrt(sum * sum - 4 * (N[9] + N[10] * d))) / 2;
    return KELVIN.amount(kelvin).to(BakeryUnits.CELSIUS);
  }
}
