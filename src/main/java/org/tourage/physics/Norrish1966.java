package org.tourage.physics;

import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Numbers;

/**
 * Water activity of solutions of sugars: ln a_w = ln x_w − (Σ √K_i·x_i)², x the mole fractions
 * (R.S. Norrish, "An equation for the activity coefficients and equilibrium relative humidities of
 * water in confectionery syrups", J. Food Technol. 1 (1966) 25; K of sucrose 6.47 and of glucose
 * 2.25, from memory). Checked in the tests against 1 molal sucrose, 0.98. Meant for 25 °C; some
 * kelvin more or less matter little.
 */
public final class Norrish1966 {
  private static final double SUCROSE = 6.47;
  private static final double GLUCOSE = 2.25;

  /** About 77 % sucrose, beyond saturation; a thicker syrup is a glass or crystals. */
  private static final double THICKEST = 0.15;

  private Norrish1966() {}

  /**
   * The water activity of a solution of sugars.
   *
   * @param water moles of water, above 0
   * @param sucrose moles of sucrose, not negative
   * @param glucose moles of glucose, not negative
   * @return the water activity, above 0.7, at most 1
   * @throws BakeryException if an amount can't be, or if more than 15 of 100 molecules are sugar
   */
  public static double waterActivity(double water, double sucrose, double glucose) {
    double all = water + sucrose + glucose;
    double sugars = (sucrose + glucose) / all;
    boolean known = water > 0 && sucrose >= 0 && glucose >= 0 && sugars <= THICKEST;
    if (!known) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "the equation of syrups does not hold here",
          Numbers.significant(100 * sugars, 4) + " % of the molecules are sugar",
          "give water, and at most 15 % sugar by molecules; measure what is thicker");
    }
    double sum = Math.sqrt(SUCROSE) * sucrose / all + Math.sqrt(GLUCOSE) * glucose / all;
    return water / all * StrictMath.exp(-sum * sum);
  }
}
