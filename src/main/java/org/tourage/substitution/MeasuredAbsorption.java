package org.tourage.substitution;

import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.List;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.ingredient.Ingredient;

/**
 * The absorption that the mill measured, on the basis of 14 % moisture at 500 units of the
 * farinograph. Its repeatability is a coefficient of variation of 0.55 % (B.L. D'Appolonia and W.H.
 * Kunerth, The Farinograph Handbook, 1990, as cited in Food Sci. Technol. Res. 22 (2016) 841).
 */
public record MeasuredAbsorption() implements AbsorptionModel {
  private static final double VARIATION = 0.0055;

  @Override
  public Estimate estimate(Ingredient flour) {
    double absorption =
        FlourFigures.specification(flour)
            .absorption()
            .orElseThrow(
                () ->
                    new BakeryException(
                        Reason.MISSING,
                        "no absorption was measured of this flour",
                        flour.name(),
                        "give it with FlourSpecification.withAbsorption(…), or use another model"))
            .in(PERCENT);
    return new Estimate(
        PERCENT.amount(absorption),
        PERCENT.amount(VARIATION * absorption),
        "measured; repeatability by D'Appolonia and Kunerth 1990",
        List.of());
  }
}
