package org.tourage.makeup;

import java.io.Serializable;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.tourage.advice.Explained;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Extent;

/**
 * A sheet cut into equal pieces: in strips ({@link CuttingPlan}), in two directions ({@link
 * MixedPlan}) or in rounds ({@link RoundPlan}). Masses are by area: the sheet is of one thickness.
 * Make one with {@link SheetCutting}.
 */
public sealed interface Cutting extends Explained, Serializable
    permits CuttingPlan, MixedPlan, RoundPlan {

  /**
   * The whole sheet.
   *
   * @return length and width, turned where that gives more pieces
   */
  Extent sheet();

  /**
   * What is cut off each edge first.
   *
   * @return the trim, 0 or more
   */
  Amount<Length> trim();

  /**
   * How many pieces.
   *
   * @return the number, at least 1
   */
  int pieces();

  /**
   * The most pieces of this size that any cutting could give.
   *
   * @return the bound; where {@link #pieces()} reaches it the plan is proved best
   */
  int upperBound();

  /**
   * The part of the sheet that goes into pieces.
   *
   * @return the yield by area
   */
  Amount<Dimensionless> sheetYield();

  /**
   * The mass of one piece.
   *
   * @param sheetMass the mass of the whole sheet
   * @return the mass in grams
   */
  Amount<Mass> pieceMass(Quantity<Mass> sheetMass);

  /**
   * The mass of the trim and of what else is left over.
   *
   * @param sheetMass the mass of the whole sheet
   * @return what is left after all pieces, in grams
   */
  Amount<Mass> trimMass(Quantity<Mass> sheetMass);

  /**
   * What the knife or the cutter does.
   *
   * @param format how lengths are written
   * @return in words, in the order of work
   */
  List<String> cuts(AmountFormat format);

  /**
   * The pieces in one line.
   *
   * @param format how lengths are written
   * @return for example {@code 12 triangles, base 100 mm, height 250 mm, in 1 strip of 12}
   */
  String describe(AmountFormat format);
}
