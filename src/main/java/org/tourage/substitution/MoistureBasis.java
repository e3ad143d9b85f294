package org.tourage.substitution;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Given;

/**
 * Flour figures moved from one moisture to another. Two rules that must not be mixed: a component
 * (protein, ash) is diluted by moisture alone, while an absorption counts the flour's own moisture
 * with the water added. Both follow from conserving dry matter (and, for absorption, total water);
 * AACC Method 54-21 uses the same idea (from memory).
 */
public final class MoistureBasis {
  private MoistureBasis() {}

  /**
   * A component on another moisture basis: x · (100 − M_new) / (100 − M_old).
   *
   * @param share its share of the flour at the old moisture
   * @param moisture the old moisture, 0 % or more, below 100 %
   * @param wanted the new moisture, 0 % or more, below 100 %; 0 % is the dry basis
   * @return its share at the new moisture, in percent
   * @throws BakeryException if a moisture can't be
   */
  public static Amount<Dimensionless> shareAt(
      Quantity<Dimensionless> share,
      Quantity<Dimensionless> moisture,
      Quantity<Dimensionless> wanted) {
    return PERCENT.amount(
        PERCENT.measure("the share", requireNonNull(share, "share")) * dry(wanted) / dry(moisture));
  }

  /**
   * An absorption on another moisture basis, the water that gives the same dough with flour of the
   * new moisture: (A + M_old) · (100 − M_new) / (100 − M_old) − M_new.
   *
   * @param absorption water by flour at the old moisture
   * @param moisture the old moisture, 0 % or more, below 100 %
   * @param wanted the new moisture, 0 % or more, below 100 %
   * @return water by flour at the new moisture, in percent
   * @throws BakeryException if a moisture can't be
   */
  public static Amount<Dimensionless> absorptionAt(
      Quantity<Dimensionless> absorption,
      Quantity<Dimensionless> moisture,
      Quantity<Dimensionless> wanted) {
    double total =
        PERCENT.measure("the absorption", requireNonNull(absorption, "absorption"))
            + PERCENT.measure("the moisture", requireNonNull(moisture, "moisture"));
    return PERCENT.amount(
        total * dry(wanted) / dry(moisture)
            - PERCENT.measure("the wanted", requireNonNull(wanted, "wanted")));
  }

  private static double dry(Quantity<Dimensionless> moisture) {
    double percent = PERCENT.measure("the moisture", requireNonNull(moisture, "moisture"));
    if (percent < 0 || percent >= 100) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no flour has this moisture",
          Given.ratio("the moisture", moisture).to(PERCENT).toString(),
          "give 0 % or more, below 100 %");
    }
    return 100 - percent;
  }
}
