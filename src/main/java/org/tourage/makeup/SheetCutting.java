package org.tourage.makeup;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Extent;
import org.tourage.quantity.Given;

/**
 * A sheet before the knife, and every way to cut it: so many triangles, right triangles or
 * rectangles that use the whole of it, as many of a given size as it gives, strips, rounds, and
 * rectangles laid in two directions.
 *
 * <pre>{@code
 * SheetCutting sheet = SheetCutting.of(extent("600 x 250 mm"), millimetres(5));
 * sheet.into(Shape.TRIANGLE, 12, 2.2);
 * sheet.sized(Shape.RECTANGLE, millimetres(80), millimetres(120));
 * sheet.rounds(inches(3));
 * }</pre>
 *
 * <p>Immutable and serialisable.
 *
 * @param sheet the whole sheet
 * @param trim what is cut off each edge
 */
public record SheetCutting(Extent sheet, Amount<Length> trim) implements Serializable {

  /**
   * Checks that the trim leaves something.
   *
   * @param sheet the whole sheet
   * @param trim what is cut off each edge
   */
  public SheetCutting {
    requireNonNull(trim, "trim");
    requireNonNull(sheet, "sheet");
    CuttingPlan.inner(sheet.length(), trim);
    CuttingPlan.inner(sheet.width(), trim);
  }

  /**
   * A sheet.
   *
   * @param sheet the whole sheet
   * @param trim what is cut off each edge, 0 or more
   * @return the sheet
   * @throws org.tourage.advice.BakeryException if the trim leaves nothing
   */
  public static SheetCutting of(Extent sheet, Quantity<Length> trim) {
    requireNonNull(trim, "trim");
    return new SheetCutting(sheet, Given.length("the trim", trim));
  }

  /**
   * Equal pieces that use the whole sheet, in strips of equal number, as near to a slenderness as
   * they come.
   *
   * @param shape the outline
   * @param pieces how many, 1 to 100,000
   * @param heightToBase the wanted height by base; crescents are commonly cut about 2 to 2.7
   * @return the plan; its advice says by how much the slenderness is missed
   * @throws org.tourage.advice.BakeryException if the number or the slenderness makes no sense
   */
  public CuttingPlan into(Shape shape, int pieces, double heightToBase) {
    requireNonNull(shape, "shape");
    return CuttingPlan.forPieces(shape, pieces, sheet, trim, heightToBase);
  }

  /**
   * As many pieces of a size as the sheet gives, all one way.
   *
   * @param shape the outline
   * @param base the side along the strip (the base of a triangle)
   * @param height the side across the strip (the height of a triangle)
   * @return the plan
   * @throws org.tourage.advice.BakeryException if not one piece fits
   */
  public CuttingPlan sized(Shape shape, Quantity<Length> base, Quantity<Length> height) {
    requireNonNull(shape, "shape");
    requireNonNull(base, "base");
    requireNonNull(height, "height");
    return CuttingPlan.ofSize(shape, sheet, trim, base, height);
  }

  /**
   * Strips over the whole length.
   *
   * @param width the width of a strip
   * @return the plan, one piece to a strip
   * @throws org.tourage.advice.BakeryException if not one strip fits
   */
  public CuttingPlan strips(Quantity<Length> width) {
    requireNonNull(width, "width");
    return CuttingPlan.strips(sheet, trim, width);
  }

  /**
   * Rectangles of a size, laid lengthwise in one part of the sheet and across in the other where
   * that gives more.
   *
   * @param piece the piece
   * @return the plan
   * @throws org.tourage.advice.BakeryException if not one piece fits
   */
  public MixedPlan mixed(Extent piece) {
    requireNonNull(piece, "piece");
    return MixedPlan.of(sheet, trim, piece);
  }

  /**
   * Rounds, in square or nested rows, whatever gives more.
   *
   * @param diameter the diameter of a round
   * @return the plan
   * @throws org.tourage.advice.BakeryException if not one round fits
   */
  public RoundPlan rounds(Quantity<Length> diameter) {
    requireNonNull(diameter, "diameter");
    return RoundPlan.of(sheet, trim, diameter);
  }

  /** {@code sheet 600 mm x 250 mm, trim 5 mm}. */
  @Override
  public String toString() {
    AmountFormat format = AmountFormat.metric();
    return "sheet "
        + format.length(sheet.length())
        + " x "
        + format.length(sheet.width())
        + ", trim "
        + format.length(trim);
  }
}
