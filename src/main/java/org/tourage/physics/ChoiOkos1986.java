package org.tourage.physics;

import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;
import org.tourage.quantity.BakeryUnits;
import org.tourage.quantity.Density;
import org.tourage.quantity.Given;

/**
 * Density, specific heat and conductivity of a food from its composition and temperature: Y. Choi
 * and M.R. Okos, "Effects of temperature and composition on the thermal properties of foods", in
 * Food Engineering and Process Applications vol. 1, Elsevier, 1986, as tabulated in the ASHRAE
 * Handbook: Refrigeration, "Thermal Properties of Foods". Valid from −40 to 150 °C; with water,
 * from 0 °C. Gas is not counted: a freshly mixed dough holds some, and is lighter.
 *
 * <p>The coefficients of water, protein, fat, carbohydrate, fibre and ash, in this order, were
 * taken from memory of the table and are checked in the tests against water and against measured
 * foods.
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
    double volume = 0;
    for (double part : volumes(food, celsiusInRange(temperature))) {
      volume += part;
    }
    return BakeryUnits.KILOGRAM_PER_CUBIC_METRE.amount(food.sum() / volume);
  }

  /**
   * The specific heat of a food: the mass-weighted mean of its components. No melting is counted.
   * For flour the model runs about a tenth above measured values.
   *
   * @param food what it is made of
   * @param temperature its temperature, 0 to 150 °C
   * @return joules per kilogram and kelvin
   * @throws BakeryException if the temperature is out of range
   */
  public static double specificHeat(Constituents food, Quantity<Temperature> temperature) {
    double t = celsiusInRange(temperature);
    double sum =
        food.water() * (4176.2 - 0.090864 * t + 5.4731e-3 * t * t)
            + food.protein() * (2008.2 + 1.2089 * t - 1.3129e-3 * t * t)
            + food.fat() * (1984.2 + 1.4733 * t - 4.8008e-3 * t * t)
            + food.carbohydrate() * (1548.8 + 1.9625 * t - 5.9399e-3 * t * t)
            + food.fibre() * (1845.9 + 1.8306 * t - 4.6509e-3 * t * t)
            + food.ash() * (1092.6 + 1.8896 * t - 3.6817e-3 * t * t);
    return sum / food.sum();
  }

  /**
   * The specific heat of ice: 2062.3 + 6.0769·T.
   *
   * @param celsius the temperature in °C, −40 to 0
   * @return joules per kilogram and kelvin
   */
  public static double iceSpecificHeat(double celsius) {
    return 2062.3 + 6.0769 * celsius;
  }

  /**
   * The thermal conductivity of a food without gas: the volume-weighted mean of its components (the
   * parallel model).
   *
   * @param food what it is made of
   * @param temperature its temperature, 0 to 150 °C
   * @return watts per metre and kelvin
   * @throws BakeryException if the temperature is out of range
   */
  public static double conductivity(Constituents food, Quantity<Temperature> temperature) {
    double t = celsiusInRange(temperature);
    double[] volumes = volumes(food, t);
    double[] conductivities = {
      0.57109 + 1.7625e-3 * t - 6.7036e-6 * t * t,
      0.17881 + 1.1958e-3 * t - 2.7178e-6 * t * t,
      0.18071 - 2.7604e-4 * t - 1.7749e-7 * t * t,
      0.20141 + 1.3874e-3 * t - 4.3312e-6 * t * t,
      0.18331 + 1.2497e-3 * t - 3.1683e-6 * t * t,
      0.32962 + 1.4011e-3 * t - 2.9069e-6 * t * t
    };
    double sum = 0;
    double volume = 0;
    for (int i = 0; i < volumes.length; i++) {
      sum += volumes[i] * conductivities[i];
      volume += volumes[i];
    }
    return sum / volume;
  }

  /** Cubic metres of each component in so much food as the fractions say. */
  private static double[] volumes(Constituents food, double t) {
    return new double[] {
      food.water() / (997.18 + 3.1439e-3 * t - 3.7574e-3 * t * t),
      food.protein() / (1329.9 - 0.5184 * t),
      food.fat() / (925.59 - 0.41757 * t),
      food.carbohydrate() / (1599.1 - 0.31046 * t),
      food.fibre() / (1311.5 - 0.36589 * t),
      food.ash() / (2423.8 - 0.28063 * t)
    };
  }

  private static double celsiusInRange(Quantity<Temperature> temperature) {
    double t = BakeryUnits.CELSIUS.measure("the temperature", temperature);
    if (t < LOWEST_CELSIUS || t > HIGHEST_CELSIUS) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "the model of thermal properties does not reach this temperature",
          Given.temperature("the temperature", temperature).toString(),
          "give a temperature from 0 °C to 150 °C (32 °F to 302 °F)");
    }
    return t;
  }
}
