package org.tourage.substitution;

import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.ArrayList;
import java.util.List;
import javax.measure.quantity.Dimensionless;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.ingredient.Ingredient;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;

/**
 * Absorption by protein: 1.25 points of water for each point of protein at 14 % moisture, between 1
 * and 1.5, and 7.5 points more for whole grain, between 5 and 10 (common practice). The line runs
 * through the middle of 44 wheat flours of 10.6 to 14.8 % protein that took 55.7 to 63.2 % (T.
 * Sedláček and I. Švec, Croat. J. Food Sci. Technol. 15 (2023), doi 10.17508/CJFST.2023.15.2.04:
 * the ranges; their means are not used).
 */
public record ProteinSlope() implements AbsorptionModel {
  /** Points of water for each point of protein. */
  private static final double PER_POINT = 1.25;

  /** How far that slope may be off either way. */
  private static final double PER_POINT_SPREAD = 0.25;

  /** Points of water for whole grain. */
  private static final double WHOLE_GRAIN = 7.5;

  /** How far that may be off either way. */
  private static final double WHOLE_GRAIN_SPREAD = 2.5;

  private static final double LEAST_PROTEIN = 10.6;
  private static final double MOST_PROTEIN = 14.8;
  private static final double MIDDLE_PROTEIN = (LEAST_PROTEIN + MOST_PROTEIN) / 2;
  private static final double MIDDLE_ABSORPTION = (55.7 + 63.2) / 2;

  /** Flours of one protein differ by about so much either way; a quarter of the range seen. */
  private static final double BETWEEN_FLOURS = (63.2 - 55.7) / 4;

  /** Where the line comes from. */
  static final String SOURCE = "common practice; anchored in the ranges of Sedláček and Švec 2023";

  /**
   * How far the difference of two flours may be off either way: both flours' scatter about the
   * line, a quarter point for each point of protein, and 2.5 points where only one is whole grain.
   *
   * @param from one wheat flour
   * @param to the other
   * @return points of water at 14 % moisture
   * @throws BakeryException if one is no wheat or its protein is not known
   */
  @Override
  public Amount<Dimensionless> uncertaintyOfDifference(Ingredient from, Ingredient to) {
    FlourFigures.requireWheat(from);
    FlourFigures.requireWheat(to);
    boolean grain = FlourFigures.isWholeGrain(from) != FlourFigures.isWholeGrain(to);
    double slope = PER_POINT_SPREAD * (FlourFigures.protein(to) - FlourFigures.protein(from));
    double bran = grain ? WHOLE_GRAIN_SPREAD : 0;
    return PERCENT.amount(
        Math.sqrt(2 * BETWEEN_FLOURS * BETWEEN_FLOURS + slope * slope + bran * bran));
  }

  @Override
  public Estimate estimate(Ingredient flour) {
    FlourFigures.requireWheat(flour);
    double protein = FlourFigures.protein(flour);
    boolean whole = FlourFigures.isWholeGrain(flour);
    double away = protein - MIDDLE_PROTEIN;
    double absorption = MIDDLE_ABSORPTION + PER_POINT * away + (whole ? WHOLE_GRAIN : 0);
    double slope = PER_POINT_SPREAD / Math.sqrt(3) * away;
    double grain = whole ? WHOLE_GRAIN_SPREAD / Math.sqrt(3) : 0;
    double uncertainty = Math.sqrt(BETWEEN_FLOURS * BETWEEN_FLOURS + slope * slope + grain * grain);
    List<Advice> advice = new ArrayList<>();
    if (protein < LEAST_PROTEIN || protein > MOST_PROTEIN) {
      advice.add(
          Advice.of(
              "OUTSIDE_RANGE",
              flour.name()
                  + " has "
                  + Numbers.decimals(protein, 1)
                  + " % protein at 14 % moisture, outside the 10.6 % to 14.8 % of the flours seen",
              "Trust the difference of two flours more than the figure"));
    }
    return new Estimate(PERCENT.amount(absorption), PERCENT.amount(uncertainty), SOURCE, advice);
  }
}
