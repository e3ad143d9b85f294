package org.tourage.physics;

import java.io.Serializable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * The gas cells of a crumb and what they do to heat and vapour. In a cell water evaporates at the
 * warm side and condenses at the cold side, which carries more heat than the gas itself: λ = λ_gas
 * + f·D·L·M/(R·T)·P/(P − p)·dp/dT, with f what the cells let through, D of vapour in air, L the
 * heat of evaporation, p the pressure of vapour and P that of the air (D.A. de Vries's enhancement,
 * from memory; for crumb see M.J. Wagner and others, J. Food Eng. 78 (2007) 1167, and Zhang and
 * others, Foods 14 (2025) 1649: about 60 % of the heat in closed pores flows so). The water runs
 * back along the walls, so the crumb keeps its moisture (B. Zanoni and others, J. Food Eng. 19
 * (1993) 389). Cells in dough are mixed by J.C. Maxwell's formula for a gas dispersed in a
 * continuous body (A Treatise on Electricity and Magnetism, 1873, article 314, from memory).
 *
 * @param share the share of gas by volume at the start, 0 to below 1
 * @param pressure of the air, Pa
 * @param waterActivity of the moist crumb, above 0 to 1
 * @param crustDiffusion how fast vapour diffuses through dry crust, m²/s, positive
 */
public record Pores(double share, double pressure, double waterActivity, double crustDiffusion)
    implements Serializable {
  /**
   * Vapour through dry crust, m²/s: about a tenth of that in free air at 120 °C. Found by us from
   * the core temperatures of breads at the end of their bake (docs/models.md): the looser the
   * crust, the farther below boiling the front stays. Models of baking use 1e-7 to 1e-5 (from
   * memory).
   */
  public static final double USUAL_CRUST_DIFFUSION = 4.2e-6;

  /** Conductivity of air at 60 °C, W/(m·K): handbook value, from memory. */
  private static final double GAS = 0.028;

  /** D = 2.56e-5·(T/298.15)^1.81 m²/s: vapour in air (from memory). */
  private static final double DIFFUSION = 2.56e-5;

  private static final double DIFFUSION_KELVIN = 298.15;
  private static final double DIFFUSION_POWER = 1.81;

  /**
   * Of that the cells of a crumb let through: their gas is mostly carbon dioxide, in which vapour
   * diffuses at 0.62 of its speed in air (from memory of handbook values), and walls and water
   * films stand in the way. Found by us from the time at which the middle of a pan loaf reaches 93
   * °C.
   */
  private static final double CELLS_LET_THROUGH = 0.33;

  /** P/(P − p) is held here: above about 80 °C cells open, and their vapour leaves outward. */
  private static final double MOST_ENHANCEMENT = 2;

  private static final double KELVIN = 273.15;

  /**
   * Checks the figures.
   *
   * @param share the share of gas by volume at the start, 0 to below 1
   * @param pressure of the air, Pa
   * @param waterActivity of the moist crumb, above 0 to 1
   * @param crustDiffusion how fast vapour diffuses through dry crust, m²/s, positive
   */
  public Pores {
    boolean fits =
        share >= 0
            && share < 1
            && pressure > 0
            && waterActivity > 0
            && waterActivity <= 1
            && crustDiffusion > 0;
    if (!fits || Double.isInfinite(pressure + crustDiffusion)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no crumb has such cells",
          share
              + " gas, "
              + pressure
              + " Pa, water activity "
              + waterActivity
              + ", crust "
              + crustDiffusion
              + " m²/s",
          "give a share of gas from 0 to below 1 and a water activity above 0 and up to 1");
    }
  }

  /**
   * The conductivity of a moist gas cell.
   *
   * @param celsius its temperature, 0 to 150
   * @return W/(m·K)
   */
  public double cell(double celsius) {
    double kelvin = celsius + KELVIN;
    double low = waterActivity * IapwsIf97Saturation.pressureAt(kelvin - 0.05);
    double high = waterActivity * IapwsIf97Saturation.pressureAt(kelvin + 0.05);
    double part = Math.min(1 - 1 / MOST_ENHANCEMENT, (low + high) / 2 / pressure);
    double diffusion = DIFFUSION * StrictMath.pow(kelvin / DIFFUSION_KELVIN, DIFFUSION_POWER);
    return GAS
        + CELLS_LET_THROUGH
            * diffusion
            * Atmosphere.SEA_LEVEL_PASCAL
            / pressure
            * DryingBody.latent(celsius)
            * DryingBody.WATER_GAS
            / kelvin
            / (1 - part)
            * (high - low)
            / 0.1;
  }

  /**
   * Gas cells in dough, by Maxwell.
   *
   * @param solid the conductivity of the dough between the cells, W/(m·K)
   * @param cell that of the cells, W/(m·K)
   * @param gas the share of the cells by volume
   * @return W/(m·K)
   */
  public static double mixed(double solid, double cell, double gas) {
    double apart = gas * (solid - cell);
    double sum = 2 * solid + cell;
    return solid * (sum - 2 * apart) / (sum + apart);
  }

  /**
   * The share of gas when the body has grown.
   *
   * @param volume how many times the volume at the start
   * @return the share by volume
   */
  public double grown(double volume) {
    return 1 - (1 - share) / volume;
  }
}
