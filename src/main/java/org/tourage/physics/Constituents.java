package org.tourage.physics;

import java.io.Serializable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * What a food is made of, as mass fractions from 0 to 1. Carbohydrate is without fibre. The
 * fractions need not sum to 1; models scale them to their sum.
 *
 * @param water mass fraction of water
 * @param protein mass fraction of protein
 * @param fat mass fraction of fat
 * @param carbohydrate mass fraction of carbohydrate other than fibre
 * @param fibre mass fraction of fibre
 * @param ash mass fraction of ash
 */
public record Constituents(
    double water, double protein, double fat, double carbohydrate, double fibre, double ash)
    implements Serializable {

  /**
   * Checks that no fraction is negative and that there is something.
   *
   * @param water mass fraction of water
   * @param protein mass fraction of protein
   * @param fat mass fraction of fat
   * @param carbohydrate mass fraction of carbohydrate other than fibre
   * @param fibre mass fraction of fibre
   * @param ash mass fraction of ash
   */
  public Constituents {
    double sum = water + protein + fat + carbohydrate + fibre + ash;
    boolean negative =
        Math.min(
                Math.min(Math.min(water, protein), Math.min(fat, carbohydrate)),
                Math.min(fibre, ash))
            < 0;
    if (negative || !(sum > 0) || Double.isInfinite(sum)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a food can't be made of this",
          "water "
              + water
              + ", protein "
              + protein
              + ", fat "
              + fat
              + ", carbohydrate "
              + carbohydrate
              + ", fibre "
              + fibre
              + ", ash "
              + ash,
          "give mass fractions from 0 to 1, at least one above 0");
    }
  }

  /**
   * The sum of the fractions.
   *
   * @return the sum, positive
   */
  public double sum() {
    return water + protein + fat + carbohydrate + fibre + ash;
  }
}
