package org.tourage.physics;

import static org.tourage.quantity.BakeryUnits.METRE;

import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Temperature;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Given;

/**
 * The pressure of the air by altitude: International Standard Atmosphere (ISO 2533:1975), lowest
 * layer, p = 101 325·(1 − 2.25577·10⁻⁵·h)^5.25588 Pa. The weather moves it by up to about 3 %.
 */
public final class Atmosphere {
  /** Pressure at sea level, Pa. */
  public static final double SEA_LEVEL_PASCAL = 101_325;

  private static final double LAPSE_PER_METRE = 2.25577e-5;
  private static final double EXPONENT = 5.25588;
  private static final double LOWEST_METRES = -430;
  private static final double HIGHEST_METRES = 11_000;

  private Atmosphere() {}

  /**
   * The pressure at an altitude.
   *
   * @param altitude above the sea, −430 m to 11 000 m
   * @return pascals
   * @throws BakeryException if the altitude is out of range
   */
  public static double pressure(Quantity<Length> altitude) {
    double metres = METRE.measure("the altitude", altitude);
    if (metres < LOWEST_METRES || metres > HIGHEST_METRES) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "nobody bakes at this altitude",
          Given.length("the altitude", altitude).toString(),
          "give -430 m to 11000 m above the sea");
    }
    return SEA_LEVEL_PASCAL * StrictMath.pow(1 - LAPSE_PER_METRE * metres, EXPONENT);
  }

  /**
   * The temperature at which water boils at an altitude.
   *
   * @param altitude above the sea, −430 m to 11 000 m
   * @return the temperature in °C
   */
  public static Amount<Temperature> boiling(Quantity<Length> altitude) {
    return IapwsIf97Saturation.boiling(pressure(altitude));
  }
}
