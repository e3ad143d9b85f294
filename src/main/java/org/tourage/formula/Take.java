package org.tourage.formula;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import javax.measure.quantity.Dimensionless;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;

/**
 * That a stage takes another, whole or in part.
 *
 * @param stage the name of the stage that is taken
 * @param share what of it is taken, above 0 % up to 100 %; of a stage of which some is kept back,
 *     the part that goes into the product is the whole
 */
public record Take(String stage, Amount<Dimensionless> share) implements Serializable {

  /**
   * Checks the share.
   *
   * @param stage the name of the stage that is taken
   * @param share what of it is taken, above 0 % up to 100 %
   */
  public Take {
    requireNonNull(stage, "stage");
    double part = share.in(FRACTION);
    if (!(part > 0 && part <= 1 + 1e-9)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "that much of \"" + stage + "\" can't be taken",
          share.to(PERCENT).toString(),
          "give more than 0 % and at most 100 %");
    }
  }

  /** Whether the stage goes in whole. */
  boolean isWhole() {
    return share.in(FRACTION) > 1 - 1e-9;
  }

  /** {@code all of Poolish} or {@code 40 % of Poolish}. */
  @Override
  public String toString() {
    return (isWhole() ? "all" : share.to(PERCENT)) + " of " + stage;
  }
}
