package org.tourage.formula;

import static org.tourage.quantity.BakeryUnits.FRACTION;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Numbers;

/**
 * One feeding of a levain, by parts of mass: seed : fresh flour : fresh water.
 *
 * @param seed parts of the seed, positive
 * @param flour parts of fresh flour, positive
 * @param water parts of fresh water, not negative
 */
public record Feeding(double seed, double flour, double water) implements Serializable {

  /**
   * Checks the parts.
   *
   * @param seed parts of the seed, positive
   * @param flour parts of fresh flour, positive
   * @param water parts of fresh water, not negative
   */
  public Feeding {
    boolean fits = seed > 0 && flour > 0 && water >= 0 && Double.isFinite(seed + flour + water);
    if (!fits) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a feeding needs seed and flour",
          seed + ":" + flour + ":" + water,
          "give parts of seed, flour and water, for example 1, 4, 4");
    }
  }

  /**
   * A feeding by parts.
   *
   * @param seed parts of seed
   * @param flour parts of fresh flour
   * @param water parts of fresh water
   * @return the feeding
   */
  public static Feeding parts(double seed, double flour, double water) {
    return new Feeding(seed, flour, water);
  }

  /**
   * A feeding by inoculation, which is the mass of the seed by the mass of the fresh flour of the
   * build.
   *
   * @param inoculation seed by fresh flour, above 0 %
   * @param water fresh water by fresh flour, 0 % or more
   * @return the feeding
   */
  public static Feeding inoculation(
      Quantity<Dimensionless> inoculation, Quantity<Dimensionless> water) {
    return new Feeding(
        FRACTION.measure("the inoculation", inoculation), 1, FRACTION.measure("the water", water));
  }

  /** {@code 1 : 4 : 4}, seed to flour to water. */
  @Override
  public String toString() {
    return Numbers.significant(seed, 4)
        + " : "
        + Numbers.significant(flour, 4)
        + " : "
        + Numbers.significant(water, 4);
  }
}
