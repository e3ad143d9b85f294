package org.tourage.physics;

import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;
import org.tourage.quantity.BakeryUnits;
import org.tourage.quantity.Density;

/**
 * Density of a food from its composition and temperature: Y. Choi and M.R. Okos, "Effects of
 * temperature and composition on the thermal properties of foods", in Food Engineering and Process
 * Applications vol. 1, Elsevier, 1986, as tabulated in the ASHRAE Handbook: Refrigeration, "Thermal
 * Properties of Foods". Valid from −40 to 150 °C; with water, from 0 °C. Gas is not counted: a
 * freshly mixed dough holds some, and is lighter.
 *
 * <p>The coefficients were taken from memory of the table and are checked in the tests against the
 * density of water and against measured densities.
 */
public final class ChoiOkos1986 {
  private static final double LOWEST_CELSIUS = 0;
  private static final double HIGHEST_CELSIUS = 150;

  private ChoiOkos1986() {}

  /**
   * The density of a food without gas: the masses of its components over the sum of their volumes.
   *
   * @param food what it is made of
   * @param temperature its temperature, 0 to 150 °C
   * @return the density in kg/m³
   * @throws BakeryException if the temperature is out of range
   */
  public static Amount<Density> density(Constituents food, Quantity<Temperature> temperature) {
    double t = BakeryUnits.CELSIUS.measure(temperature);
    if (t < LOWEST_CELSIUS || t > HIGHEST_CELSIUS) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "the density model does not reach this temperature",
          Amount.from(temperature).toString(),
          "give a temperature from 0 °C to 150 °C (32 °F to 302 °F)");
    }
    double volume =
        food.water() / (997.18 + 3.1439e-3 * t - 3.7574e-3 * t * t)
            + food.protein() / (1329.9 - 0.5184 * t)
            + food.fat() / (925.59 - 0.41757 * t)
            + food.carbohydrate() / (1599.1 - 0.31046 * t)
            + food.fibre() / (1311.5 - 0.36589 * t)
            + food.ash() / (2423.8 - 0.28063 * t);
    return BakeryUnits.KILOGRAM_PER_CUBIC_METRE.amount(food.sum() / volume);
  }
}
