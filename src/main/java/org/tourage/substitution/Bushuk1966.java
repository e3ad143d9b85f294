package org.tourage.substitution;

import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.List;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.ingredient.Component;
import org.tourage.ingredient.Ingredient;

/**
 * Where the water of a dough sits: 0.44 g for each gram of native starch, 2.00 of damaged starch,
 * 2.15 of protein, 15.0 of pentosans, all dry (W. Bushuk, "Distribution of water in dough and
 * bread", Baker's Digest 40 (1966) 38, from memory). Summed it exceeds what a farinograph measures,
 * so it is of use for differences between flours; the estimate says so. A model of wheat dough:
 * other flours are refused.
 *
 * @param pentosans pentosans of the flour at 14 % moisture in percent, usual 1.3 to 2 for white
 *     flour, 5 to 8 for whole grain
 */
public record Bushuk1966(double pentosans) implements AbsorptionModel {
  private static final double NATIVE = 0.44;
  private static final double DAMAGED = 2.00;
  private static final double PROTEIN = 2.15;
  private static final double PENTOSANS = 15.0;
  private static final double HIGHEST_PENTOSANS = 15;

  /** How far it may be off: a guess by us, since the sum is known to run high. */
  private static final double UNCERTAINTY = 5;

  /**
   * Checks the pentosans.
   *
   * @param pentosans pentosans of the flour at 14 % moisture in percent
   */
  public Bushuk1966 {
    if (!(pentosans >= 0) || pentosans > HIGHEST_PENTOSANS) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no flour has these pentosans",
          pentosans + " %",
          "give 0 % to 15 %");
    }
  }

  /**
   * The water that the parts hold.
   *
   * @param nativeStarch dry, g
   * @param damagedStarch dry, g
   * @param protein dry, g
   * @param pentosans dry, g
   * @return g of water
   */
  public static double water(
      double nativeStarch, double damagedStarch, double protein, double pentosans) {
    return NATIVE * nativeStarch
        + DAMAGED * damagedStarch
        + PROTEIN * protein
        + PENTOSANS * pentosans;
  }

  @Override
  public Estimate estimate(Ingredient flour) {
    FlourFigures.requireWheat(flour);
    double damaged = FlourFigures.damagedStarch(flour);
    double protein = FlourFigures.protein(flour);
    double moisture = FlourFigures.specification(flour).moisture().in(PERCENT);
    double dry = (100 - FlourFigures.REFERENCE_MOISTURE.in(PERCENT)) / (100 - moisture);
    double carbohydrate =
        100
            * dry
            * (flour.composition().fraction(Component.CARBOHYDRATE)
                - flour.composition().fraction(Component.FIBRE)
                - flour.composition().fraction(Component.SUGARS));
    double nativeStarch = Math.max(0, carbohydrate - damaged);
    double water = water(nativeStarch, damaged, protein, pentosans);
    // the water that the flour of 14 % moisture brings is part of it
    double absorption = water - FlourFigures.REFERENCE_MOISTURE.in(PERCENT);
    return new Estimate(
        PERCENT.amount(absorption),
        PERCENT.amount(UNCERTAINTY),
        "W. Bushuk 1966 (from memory)",
        List.of(
            Advice.of(
                "DIFFERENCES_ONLY",
                "the sum of what the parts hold lies above what a farinograph measures",
                "Use the difference of two flours by this model")));
  }
}
