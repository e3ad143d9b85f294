package org.tourage.makeup;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.MILLIMETRE;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Given;

/**
 * A piece rolled up: a spiral whose pitch is the thickness. Its cross-section keeps its area, so
 * length · thickness = π(r₁² − r₀²), and the turns are (r₁ − r₀)/thickness (geometry). A triangle
 * is rolled from its base: at the middle of the coil lies its whole height, and the coil is as wide
 * as the base.
 *
 * @param length the length that is rolled up; of a triangle, its height
 * @param thickness the thickness of the piece
 * @param core the diameter of the hole or filling in the middle, 0 for none
 * @param width the width of the coil
 */
public record Coil(
    Amount<Length> length, Amount<Length> thickness, Amount<Length> core, Amount<Length> width)
    implements Serializable {

  /**
   * Checks the lengths.
   *
   * @param length the length that is rolled up; of a triangle, its height
   * @param thickness the thickness of the piece
   * @param core the diameter of the hole or filling in the middle, 0 for none
   * @param width the width of the coil
   */
  public Coil {
    requireNonNull(length, "length");
    requireNonNull(thickness, "thickness");
    requireNonNull(core, "core");
    requireNonNull(width, "width");
    if (length.value() <= 0 || thickness.value() <= 0 || core.value() < 0 || width.value() <= 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "this can't be rolled up",
          length + " long, " + thickness + " thick, core " + core + ", " + width + " wide",
          "give positive lengths");
    }
  }

  /**
   * A coil without a core.
   *
   * @param length the length that is rolled up; of a triangle, its height
   * @param thickness the thickness of the piece
   * @param width the width of the coil; of a triangle, its base
   * @return the coil
   */
  public static Coil of(
      Quantity<Length> length, Quantity<Length> thickness, Quantity<Length> width) {
    requireNonNull(length, "length");
    requireNonNull(thickness, "thickness");
    requireNonNull(width, "width");
    return new Coil(
        Given.length("the length", length),
        Given.length("the thickness", thickness),
        MILLIMETRE.amount(0),
        Given.length("the width", width));
  }

  /**
   * The same around a core.
   *
   * @param diameter the diameter of the core
   * @return the coil
   */
  public Coil around(Quantity<Length> diameter) {
    requireNonNull(diameter, "diameter");
    return new Coil(length, thickness, Given.length("the diameter", diameter), width);
  }

  private double outerRadius() {
    double r0 = core.in(MILLIMETRE) / 2;
    return Math.sqrt(r0 * r0 + length.in(MILLIMETRE) * thickness.in(MILLIMETRE) / Math.PI);
  }

  /**
   * The diameter of the coil at its thickest.
   *
   * @return the diameter
   */
  public Amount<Length> diameter() {
    return MILLIMETRE.amount(2 * outerRadius());
  }

  /**
   * How many turns the spiral makes.
   *
   * @return the turns
   */
  public double turns() {
    return (outerRadius() - core.in(MILLIMETRE) / 2) / thickness.in(MILLIMETRE);
  }

  /**
   * How the diameter is worked out.
   *
   * @return the worked solution
   */
  public Working working() {
    AmountFormat format = AmountFormat.metric();
    return Working.of(
        new WorkedLine(
            "d",
            "2·√(r₀² + L·t/π)",
            format.length(length)
                + " long, "
                + format.length(thickness)
                + " thick = "
                + format.length(diameter()),
            "spiral geometry"));
  }

  /** {@code coil of 3.2 turns, 36.6 mm thick, 100 mm wide}. */
  @Override
  public String toString() {
    AmountFormat format = AmountFormat.metric();
    return "coil of "
        + Numbers.decimals(turns(), 1)
        + " turns, "
        + format.length(diameter())
        + " thick, "
        + format.length(width)
        + " wide";
  }
}
