package org.tourage.physics;

import java.io.Serializable;

/** How much heat a material holds, by temperature. */
public interface HeatContent extends Serializable {

  /**
   * The heat held, above any fixed level.
   *
   * @param celsius the temperature in °C
   * @return joules per kilogram, growing with the temperature
   */
  double heat(double celsius);

  /**
   * The slope of the heat held: the specific heat with any melting.
   *
   * @param celsius the temperature in °C
   * @return joules per kilogram and kelvin, positive
   */
  double slope(double celsius);

  /**
   * A material of constant specific heat.
   *
   * @param specificHeat joules per kilogram and kelvin, positive
   * @return its heat content
   */
  static HeatContent constant(double specificHeat) {
    return new Constant(specificHeat);
  }

  /**
   * A material of constant specific heat.
   *
   * @param specificHeat joules per kilogram and kelvin
   */
  record Constant(double specificHeat) implements HeatContent {
    @Override
    public double heat(double celsius) {
      return specificHeat * celsius;
    }

    @Override
    public double slope(double celsius) {
      return specificHeat;
    }
  }
}
