package org.tourage.physics;

import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Numbers;

/**
 * Water activity of solutions of one salt at 25 °C: ln a_w = −0.018015·ν·m·φ with the osmotic
 * coefficient φ = 1 − A√m/(1 + 1.2√m) + m·(β0 + β1·e^(−2√m)) + m²·C (K.S. Pitzer and G. Mayorga, J.
 * Phys. Chem. 77 (1973) 2300; parameters from memory). Checked in the tests against 1 molal sodium
 * chloride, 0.9669, and the saturated solutions of both salts.
 */
public final class Pitzer1973 {
  /** Debye and Hückel's slope for φ at 25 °C, the one that the parameters were fitted with. */
  private static final double SLOPE = 0.392;

  private static final double KILOGRAMS_PER_MOLE = 0.018015;
  private static final double IONS = 2;

  private Pitzer1973() {}

  /**
   * The water activity of a solution of sodium chloride.
   *
   * @param molality moles in a kilogram of water, 0 to 6.15 (saturated at 25 °C)
   * @return the water activity
   * @throws BakeryException if it is negative or beyond saturation
   */
  public static double sodiumChloride(double molality) {
    return waterActivity("sodium chloride", molality, 6.15, 0.0765, 0.2664, 0.00127);
  }

  /**
   * The water activity of a solution of potassium chloride.
   *
   * @param molality moles in a kilogram of water, 0 to 4.81 (saturated at 25 °C)
   * @return the water activity
   * @throws BakeryException if it is negative or beyond saturation
   */
  public static double potassiumChloride(double molality) {
    return waterActivity("potassium chloride", molality, 4.81, 0.04835, 0.2122, -0.00084);
  }

  private static double waterActivity(
      String salt, double molality, double saturated, double b0, double b1, double c) {
    if (!(molality >= 0) || molality > saturated) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no more than " + saturated + " mol of " + salt + " dissolve in a kilogram of water",
          Numbers.significant(molality, 4) + " mol/kg",
          "give 0 to " + saturated + " mol/kg; measure what is thicker");
    }
    double root = Math.sqrt(molality);
    double osmotic =
        1
            - SLOPE * root / (1 + 1.2 * root)
            + molality * (b0 + b1 * StrictMath.exp(-2 * root))
            + molality * molality * c;
    return StrictMath.exp(-KILOGRAMS_PER_MOLE * IONS * molality * osmotic);
  }
}
