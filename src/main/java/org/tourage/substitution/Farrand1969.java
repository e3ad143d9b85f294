package org.tourage.substitution;

import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.List;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.ingredient.Ingredient;

/**
 * Absorption by protein, damaged starch and moisture: A = 57.3 + 1.4·P + 0.38·D − 1.6·M, with D in
 * Farrand's units (E.A. Farrand, "Starch damage and alpha-amylase as bases for mathematical models
 * relating to flour water-absorption", Cereal Chem. 46 (1969) 103). The coefficients are from
 * memory and were searched for without success; other retellings have a product of P and D. To be
 * used for comparison only; the estimate says so. It takes the flour at 14 % moisture, and wheat
 * flours only.
 *
 * @param damage damaged starch in Farrand's units, which are not percent; usual 15 to 40
 */
public record Farrand1969(double damage) implements AbsorptionModel {
  private static final double CONSTANT = 57.3;
  private static final double PROTEIN = 1.4;
  private static final double DAMAGE = 0.38;
  private static final double MOISTURE = 1.6;
  private static final double HIGHEST_DAMAGE = 80;

  /** How far it may be off: a guess by us, since the source could not be seen. */
  private static final double UNCERTAINTY = 3;

  /**
   * Checks the damage.
   *
   * @param damage damaged starch in Farrand's units, 0 to 80
   */
  public Farrand1969 {
    if (!(damage >= 0) || damage > HIGHEST_DAMAGE) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no flour has this starch damage",
          damage + " Farrand units",
          "give 0 to 80, usually 15 to 40");
    }
  }

  @Override
  public Estimate estimate(Ingredient flour) {
    FlourFigures.requireWheat(flour);
    double moisture = FlourFigures.REFERENCE_MOISTURE.in(PERCENT);
    double absorption =
        CONSTANT + PROTEIN * FlourFigures.protein(flour) + DAMAGE * damage - MOISTURE * moisture;
    return new Estimate(
        PERCENT.amount(absorption),
        PERCENT.amount(UNCERTAINTY),
        "E.A. Farrand 1969 (from memory, not confirmed)",
        List.of(
            Advice.of(
                "NOT_CONFIRMED",
                "the equation was recalled and could not be confirmed",
                "Compare flours with it; do not weigh water by it")));
  }
}
