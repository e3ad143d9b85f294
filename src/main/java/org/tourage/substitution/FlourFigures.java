package org.tourage.substitution;

import static org.tourage.quantity.BakeryUnits.PERCENT;

import javax.measure.quantity.Dimensionless;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.ingredient.Component;
import org.tourage.ingredient.FlourSpecification;
import org.tourage.ingredient.Ingredient;
import org.tourage.quantity.Amount;

/** Figures of a flour on the basis of 14 % moisture. */
final class FlourFigures {
  static final Amount<Dimensionless> REFERENCE_MOISTURE = PERCENT.amount(14);
  private static final double WHOLE_GRAIN_FIBRE = 0.08;

  private FlourFigures() {}

  static FlourSpecification specification(Ingredient flour) {
    return flour
        .flour()
        .orElseThrow(
            () ->
                new BakeryException(
                    Reason.MISSING,
                    "the protein of this flour is not known",
                    flour.name(),
                    "use a flour, or build one with Ingredient.builder(…).flour(…)"));
  }

  /** Protein at 14 % moisture, in percent. */
  static double protein(Ingredient flour) {
    FlourSpecification figures = specification(flour);
    return MoistureBasis.shareAt(figures.protein(), figures.moisture(), REFERENCE_MOISTURE)
        .in(PERCENT);
  }

  /** Damaged starch at 14 % moisture, in percent. */
  static double damagedStarch(Ingredient flour) {
    FlourSpecification figures = specification(flour);
    Amount<Dimensionless> share =
        figures
            .damagedStarch()
            .orElseThrow(
                () ->
                    new BakeryException(
                        Reason.MISSING,
                        "the model needs the damaged starch of the flour",
                        flour.name(),
                        "give it with FlourSpecification.withDamagedStarch(…), from the mill's sheet"));
    return MoistureBasis.shareAt(share, figures.moisture(), REFERENCE_MOISTURE).in(PERCENT);
  }

  static boolean isWholeGrain(Ingredient flour) {
    return flour.composition().fraction(Component.FIBRE) > WHOLE_GRAIN_FIBRE;
  }
}
