package org.tourage.substitution;

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
}
