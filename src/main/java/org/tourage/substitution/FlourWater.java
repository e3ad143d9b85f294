package org.tourage.substitution;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.formula.Formula;
import org.tourage.ingredient.Ingredient;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Given;

/**
 * How much more water one flour takes than another.
 *
 * @param points points of water, if all of the flour is exchanged
 * @param spread how far they may be off either way
 * @param source where the model comes from
 */
record FlourWater(double points, double spread, String source) implements Serializable {
  /**
   * Points of water for a point of moisture in the bag, (A + 100)/(100 − M) at 60 % water and 14 %
   * moisture; 1.7 to 2.0 from 50 % to 70 % water.
   */
  private static final double WATER_OF_MOISTURE = 160.0 / 86;

  static FlourWater of(
      Formula formula,
      Ingredient from,
      Ingredient to,
      AbsorptionModel model,
      Quantity<Dimensionless> moisture) {
    double bag = PERCENT.measure("the moisture", requireNonNull(moisture, "moisture"));
    if (!(bag >= 0) || bag > 10) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "the moisture of a bag can't be off by this",
          Given.ratio("the moisture", moisture).toString(),
          "give 0 % to 10 %, usually 1 %");
    }
    double bags = Math.sqrt(2) * WATER_OF_MOISTURE * bag;
    double flours = model.uncertaintyOfDifference(from, to).in(PERCENT);
    return new FlourWater(
        points(formula, from, to, model), Math.hypot(bags, flours), model.estimate(to).source());
  }

  private static double points(
      Formula formula, Ingredient from, Ingredient to, AbsorptionModel model) {
    double atReference =
        model.estimate(to).absorption().in(PERCENT) - model.estimate(from).absorption().in(PERCENT);
    if (FlourFigures.isAverage(from) && FlourFigures.isAverage(to)) {
      // two averages of a table say nothing of the two bags
      return atReference;
    }
    Amount<Dimensionless> oldWater = formula.hydration().trueHydration();
    Amount<Dimensionless> oldAtReference =
        MoistureBasis.absorptionAt(
            oldWater, FlourFigures.specification(from).moisture(), FlourFigures.REFERENCE_MOISTURE);
    Amount<Dimensionless> newWater =
        MoistureBasis.absorptionAt(
            oldAtReference.add(PERCENT.amount(atReference)),
            FlourFigures.REFERENCE_MOISTURE,
            FlourFigures.specification(to).moisture());
    return newWater.subtract(oldWater).in(PERCENT);
  }
}
