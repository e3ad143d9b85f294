package org.tourage.substitution;

import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.util.List;
import javax.measure.quantity.Dimensionless;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.ingredient.Ingredient;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;

/**
 * How much water a flour takes up to a stated consistency. One class for each source; the caller
 * chooses. Differences between two flours by one model are surer than its absolute figures.
 */
public interface AbsorptionModel extends Serializable {

  /**
   * What a model says of a flour.
   *
   * @param absorption water by flour at 14 % moisture, at the consistency of the farinograph (500
   *     units)
   * @param uncertainty its standard uncertainty, in points
   * @param source where the model comes from
   * @param advice what is unsure
   */
  record Estimate(
      Amount<Dimensionless> absorption,
      Amount<Dimensionless> uncertainty,
      String source,
      List<Advice> advice)
      implements Serializable {
    /**
     * Copies the list.
     *
     * @param absorption water by flour at 14 % moisture
     * @param uncertainty its standard uncertainty, in points
     * @param source where the model comes from
     * @param advice what is unsure
     */
    public Estimate {
      advice = List.copyOf(advice);
    }

    /** {@code 60.2 % ± 2 %}. */
    @Override
    public String toString() {
      AmountFormat format = AmountFormat.metric();
      return format.percent(absorption) + " ± " + format.percent(uncertainty);
    }
  }

  /**
   * Estimates the absorption.
   *
   * @param flour a flour with what the model needs
   * @return the estimate, on the basis of 14 % moisture
   * @throws BakeryException if the flour lacks a figure that the model needs
   */
  Estimate estimate(Ingredient flour);

  /**
   * How far the difference of two flours by this model may be off either way. As it stands, the two
   * estimates are taken to be independent; a model whose errors cancel says so itself.
   *
   * @param from one flour
   * @param to the other
   * @return points of water at 14 % moisture
   * @throws BakeryException if a flour lacks a figure that the model needs
   */
  default Amount<Dimensionless> uncertaintyOfDifference(Ingredient from, Ingredient to) {
    return PERCENT.amount(
        Math.hypot(
            estimate(from).uncertainty().in(PERCENT), estimate(to).uncertainty().in(PERCENT)));
  }
}
