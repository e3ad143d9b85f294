package org.tourage.physics;

import static org.tourage.quantity.BakeryUnits.CELSIUS;

import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Numbers;

/**
 * How much carbon dioxide dissolves in water: ln(H/MPa) = −6.8346 + 1.2817·10⁴/T − 3.7668·10⁶/T² +
 * 2.997·10⁸/T³ with T in kelvins and H the partial pressure over the mole fraction in the water
 * (J.J. Carroll, J.D. Slupsky and A.E. Mather, J. Phys. Chem. Ref. Data 20 (1991) 1201: the
 * equation was seen), for 0 °C to 160 °C and low pressures. It lies within 0.7 % of the table of
 * the CRC Handbook of Chemistry and Physics, p. 8-90, from 0 °C to 40 °C.
 *
 * <p>Salt drives gas out of the water by Setschenow's law, log₁₀(pure/salt) = K·c with c in mol/L;
 * for sodium chloride K = 0.1461 + 2·(−0.0172 − 0.000338·(T − 298.15 K)) L/mol (S. Weisenberger and
 * A. Schumpe, AIChE J. 42 (1996) 298, from memory): 2 % salt in a dough of 60 % water leave about
 * 88 %. Sugar lowers it further, and water that is bound to flour dissolves none; neither has a
 * figure here.
 */
public final class Carroll1991 {
  private static final double WARMEST_CELSIUS = 160;

  /** Moles of water in a kilogram: CODATA molar mass 18.01528 g/mol. */
  private static final double MOLES_OF_WATER = 1000 / 18.01528;

  private static final double LN_10 = 2.302585092994046;

  private Carroll1991() {}

  /**
   * Carbon dioxide that a kilogram of pure water holds at balance.
   *
   * @param temperature of the water, 0 °C to 160 °C
   * @return mol for each kg of water and each pascal of its partial pressure
   * @throws BakeryException if the temperature is out of range
   */
  public static double dissolved(Quantity<Temperature> temperature) {
    double celsius = CELSIUS.measure("the temperature", temperature);
    if (!(celsius >= 0) || celsius > WARMEST_CELSIUS) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no equation says how much carbon dioxide dissolves here",
          Numbers.significant(celsius, 6) + " °C",
          "give 0 °C to 160 °C (32 °F to 320 °F)");
    }
    return dissolved(celsius + 273.15, 0);
  }

  /**
   * The same in water with salt, for loops over many points.
   *
   * @param kelvin the temperature in K; taken as 273.15 K below it
   * @param salt mol of sodium chloride for each litre of the water, not negative
   * @return mol for each kg of water and each pascal of partial pressure
   */
  public static double dissolved(double kelvin, double salt) {
    double inverse = 1 / Math.max(273.15, kelvin);
    double logarithm = -6.8346 + inverse * (1.2817e4 + inverse * (-3.7668e6 + inverse * 2.997e8));
    double setschenow = salt == 0 ? 0 : 0.1461 + 2 * (-0.0172 - 0.000338 * (kelvin - 298.15));
    return MOLES_OF_WATER * 1e-6 * StrictMath.exp(-logarithm - LN_10 * setschenow * salt);
  }
}
