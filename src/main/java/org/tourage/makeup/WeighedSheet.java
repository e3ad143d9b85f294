package org.tourage.makeup;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Extent;
import org.tourage.quantity.Given;

/**
 * A sheet as it lies before the knife: how large it is and what it weighs.
 *
 * @param extent length and width
 * @param mass the mass of the whole sheet, positive
 */
public record WeighedSheet(Extent extent, Amount<Mass> mass) implements Serializable {

  /**
   * Checks the mass.
   *
   * @param extent length and width
   * @param mass the mass of the whole sheet, positive
   */
  public WeighedSheet {
    requireNonNull(mass, "mass");
    requireNonNull(extent, "extent");
    if (mass.value() <= 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE, "a sheet weighs something", mass.toString(), "give a positive mass");
    }
  }

  /**
   * A sheet.
   *
   * @param extent length and width
   * @param mass the mass of the whole sheet, positive
   * @return the sheet
   * @throws BakeryException if the mass is not positive
   */
  public static WeighedSheet of(Extent extent, Quantity<Mass> mass) {
    requireNonNull(mass, "mass");
    return new WeighedSheet(extent, Given.mass("the mass", mass));
  }

  /** {@code 600 mm x 250 mm, 900 g}. */
  @Override
  public String toString() {
    return extent + ", " + mass;
  }
}
