package org.tourage.makeup;

import static org.tourage.quantity.BakeryUnits.MILLIMETRE;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Extent;

/**
 * Rectangles of one size by straight cuts from edge to edge: the trimmed sheet is parted once, and
 * each part is cut in one direction, lengthwise or turned. Every such plan is tried, and the most
 * pieces are kept; {@link #upperBound()} tells whether any cutting at all could give more.
 *
 * @param parts one or two parts with their cuts
 * @param sheet the whole sheet
 * @param trim what is cut off each edge
 */
public record MixedPlan(List<Part> parts, Extent sheet, Amount<Length> trim)
    implements Serializable {

  /**
   * A part of the trimmed sheet and how it is cut.
   *
   * @param corner its corner nearest to the corner of the sheet
   * @param alongLength pieces along the length
   * @param alongWidth pieces along the width
   * @param piece the piece, as it lies
   */
  public record Part(CuttingPlan.Point corner, int alongLength, int alongWidth, Extent piece)
      implements Serializable {
    int pieces() {
      return alongLength * alongWidth;
    }
  }

  /**
   * Copies the list.
   *
   * @param parts one or two parts with their cuts
   * @param sheet the whole sheet
   * @param trim what is cut off each edge
   */
  public MixedPlan {
    parts = List.copyOf(parts);
  }

  /**
   * The most pieces that one parting gives.
   *
   * @param sheet the whole sheet
   * @param trim what is cut off each edge
   * @param piece the piece
   * @return the plan
   * @throws BakeryException if not one piece fits
   */
  public static MixedPlan of(Extent sheet, Quantity<Length> trim, Extent piece) {
    double edge = MILLIMETRE.measure(trim);
    double length = sheet.length().in(MILLIMETRE) - 2 * edge;
    double width = sheet.width().in(MILLIMETRE) - 2 * edge;
    double a = piece.length().in(MILLIMETRE);
    double b = piece.width().in(MILLIMETRE);
    List<Part> best = List.of();
    int most = 0;
    for (boolean turned : new boolean[] {false, true}) {
      double x = turned ? b : a;
      double y = turned ? a : b;
      int columns = Shape.fit(length / x);
      int rows = Shape.fit(width / y);
      for (int k = 0; edge >= 0 && k <= columns; k++) {
        // part across the length after k columns; the rest is cut the other way
        List<Part> parts = new ArrayList<>();
        add(parts, edge, edge, k, rows, x, y);
        add(parts, edge + k * x, edge, Shape.fit((length - k * x) / y), Shape.fit(width / x), y, x);
        if (count(parts) > most) {
          most = count(parts);
          best = parts;
        }
      }
      for (int k = 0; edge >= 0 && k <= rows; k++) {
        List<Part> parts = new ArrayList<>();
        add(parts, edge, edge, columns, k, x, y);
        add(parts, edge, edge + k * y, Shape.fit(length / y), Shape.fit((width - k * y) / x), y, x);
        if (count(parts) > most) {
          most = count(parts);
          best = parts;
        }
      }
    }
    if (most == 0) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "not one piece fits the sheet",
          piece + " on " + sheet + " with trim " + Amount.from(trim),
          "make the piece smaller or the sheet larger");
    }
    return new MixedPlan(best, sheet, Amount.from(trim));
  }

  private static void add(
      List<Part> parts, double left, double low, int columns, int rows, double x, double y) {
    if (columns > 0 && rows > 0) {
      parts.add(
          new Part(
              new CuttingPlan.Point(MILLIMETRE.amount(left), MILLIMETRE.amount(low)),
              columns,
              rows,
              Extent.of(MILLIMETRE.amount(x), MILLIMETRE.amount(y))));
    }
  }

  private static int count(List<Part> parts) {
    return parts.stream().mapToInt(Part::pieces).sum();
  }

  /**
   * How many pieces.
   *
   * @return the number
   */
  public int pieces() {
    return count(parts);
  }

  /**
   * The most pieces of this size that any cutting could give: the trimmed area over the area of a
   * piece.
   *
   * @return the bound; where {@link #pieces()} reaches it the plan is proved best
   */
  public int upperBound() {
    double edge = 2 * trim.in(MILLIMETRE);
    Extent piece = parts.get(0).piece();
    return Shape.fit(
        (sheet.length().in(MILLIMETRE) - edge)
            * (sheet.width().in(MILLIMETRE) - edge)
            / (piece.length().in(MILLIMETRE) * piece.width().in(MILLIMETRE)));
  }

  /** {@code 13 pieces: 3 x 4 lengthwise, then …}. */
  @Override
  public String toString() {
    return pieces()
        + " pieces: "
        + parts.stream()
            .map(
                p ->
                    p.alongLength()
                        + " by "
                        + p.alongWidth()
                        + " of "
                        + p.piece()
                        + " from "
                        + p.corner())
            .collect(Collectors.joining(", then "));
  }
}
