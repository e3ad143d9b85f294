package org.tourage.substitution;

import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import javax.measure.quantity.Dimensionless;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.ingredient.Allergen;
import org.tourage.ingredient.Component;
import org.tourage.ingredient.FlourSpecification;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Provenance;
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

  /** Wheat alone, spelt and khorasan with it; a malted flour with a trace of barley too. */
  static boolean isWheat(Ingredient flour) {
    return flour.allergens().contains(Allergen.WHEAT)
        && !flour.allergens().contains(Allergen.RYE)
        && !flour.allergens().contains(Allergen.OAT);
  }

  /** Refuses a flour of another plant, with the reason. */
  static void requireWheat(Ingredient flour) {
    specification(flour);
    if (isWheat(flour)) {
      return;
    }
    String reason =
        flour.allergens().contains(Allergen.RYE)
            ? "rye takes its water by its pentosans"
            : flour.allergens().contains(Allergen.OAT)
                    || flour.allergens().contains(Allergen.BARLEY)
                ? "it takes its water by bran and beta-glucan"
                : "its starch and fibre take the water, and it has no gluten";
    throw new BakeryException(
        Reason.MEANINGLESS,
        "there is no figure for the water of this flour: the models by protein are of wheat, and "
            + reason,
        flour.name(),
        "give both flours their measured absorption with FlourSpecification.withAbsorption(…), or an"
            + " AbsorptionModel of your own; or exchange a little of it and add the water by feel; if it is wheat, say so with the"
            + " allergen wheat");
  }

  /** Whether the moisture is the average of a table, not that of a bag. */
  static boolean isAverage(Ingredient flour) {
    double table = flour.composition().fraction(Component.WATER);
    return specification(flour).moisture().isCloseTo(FRACTION.amount(table), 1e-9)
        && flour
            .composition()
            .source(Component.WATER)
            .filter(s -> s.provenance() != Provenance.USER)
            .isPresent();
  }

  static boolean isWholeGrain(Ingredient flour) {
    return flour.composition().fraction(Component.FIBRE) > WHOLE_GRAIN_FIBRE;
  }
}
