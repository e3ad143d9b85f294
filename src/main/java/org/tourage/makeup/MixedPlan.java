package org.tourage.makeup;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.MILLIMETRE;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.internal.Lists;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Extent;
import org.tourage.quantity.Given;

/**
 * Rectangles of one size by straight cuts from edge to edge: the trimmed sheet is parted once, and
 * each part is cut in one direction, lengthwise or turned. Every such plan is tried, and the most
 * pieces are kept; {@link #upperBound()} tells whether any cutting at all could give more.
 *
 * @param parts one or two parts with their cuts
 * @param sheet the whole sheet
 * @param trim what is cut off each edge
 */
public record MixedPlan(List<Part> parts, Extent sheet, Amount<Length> trim) implements Cutting {

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
    /**
     * Checks that nothing is missing.
     *
     * @param corner its corner nearest to the corner of the sheet
     * @param alongLength pieces along the length
     * @param alongWidth pieces along the width
     * @param piece the piece, as it lies
     */
    public Part {
      requireNonNull(corner, "corner");
      requireNonNull(piece, "piece");
    }

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
    requireNonNull(sheet, "sheet");
    requireNonNull(trim, "trim");
    parts = Lists.copy(parts, "parts");
    if (parts.isEmpty()) {
      throw new BakeryException(
          Reason.MISSING, "a plan has parts", parts.toString(), "use MixedPlan.of");
    }
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
    requireNonNull(sheet, "sheet");
    requireNonNull(trim, "trim");
    requireNonNull(piece, "piece");
    double edge = MILLIMETRE.measure("the trim", trim);
    double length = sheet.length().in(MILLIMETRE) - 2 * edge;
    double width = sheet.width().in(MILLIMETRE) - 2 * edge;
    double a = piece.length().in(MILLIMETRE);
    double b = piece.width().in(MILLIMETRE);
    CuttingPlan.checkOrder(
        (long)
            Math.ceil(
                Math.max(
                    Math.max(1, length * width / (a * b)),
                    longest(length, width) / Math.min(a, b))),
        1);
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
          piece + " on " + sheet + " with trim " + Given.length("the trim", trim),
          "make the piece smaller or the sheet larger");
    }
    return new MixedPlan(best, sheet, Given.length("the trim", trim));
  }

  private static double longest(double length, double width) {
    return Math.max(length, width);
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

  @Override
  public int pieces() {
    return count(parts);
  }

  @Override
  public int upperBound() {
    double edge = 2 * trim.in(MILLIMETRE);
    return Shape.fit(
        (sheet.length().in(MILLIMETRE) - edge)
            * (sheet.width().in(MILLIMETRE) - edge)
            / pieceArea());
  }

  private double pieceArea() {
    Extent piece = parts.get(0).piece();
    return piece.length().in(MILLIMETRE) * piece.width().in(MILLIMETRE);
  }

  private double share() {
    return pieceArea() / (sheet.length().in(MILLIMETRE) * sheet.width().in(MILLIMETRE));
  }

  @Override
  public Amount<Dimensionless> sheetYield() {
    return PERCENT.amount(100 * pieces() * share());
  }

  @Override
  public Amount<Mass> pieceMass(Quantity<Mass> sheetMass) {
    requireNonNull(sheetMass, "sheetMass");
    return GRAM.amount(GRAM.measure("the sheet mass", sheetMass) * share());
  }

  @Override
  public Amount<Mass> trimMass(Quantity<Mass> sheetMass) {
    requireNonNull(sheetMass, "sheetMass");
    return GRAM.amount(GRAM.measure("the sheet mass", sheetMass) * (1 - pieces() * share()));
  }

  @Override
  public List<String> cuts(AmountFormat format) {
    requireNonNull(format, "format");
    List<String> cuts = new ArrayList<>();
    if (trim.value() > 0) {
      cuts.add("trim " + format.length(trim) + " off each edge");
    }
    if (parts.size() > 1) {
      CuttingPlan.Point corner = parts.get(1).corner();
      boolean along = corner.x().compareTo(parts.get(0).corner().x()) > 0;
      cuts.add(
          along
              ? "part the sheet across at x = " + format.length(corner.x())
              : "part the sheet along at y = " + format.length(corner.y()));
    }
    for (Part part : parts) {
      cuts.add(
          "from "
              + part.corner()
              + " cut "
              + part.alongLength()
              + " every "
              + format.length(part.piece().length())
              + " along by "
              + part.alongWidth()
              + " every "
              + format.length(part.piece().width())
              + " across");
    }
    return cuts;
  }

  @Override
  public List<Advice> advice() {
    return Waste.of(this);
  }

  @Override
  public Working working() {
    return Working.of(
        new WorkedLine(
            "pieces",
            "along × across, part by part",
            parts.stream()
                    .map(p -> p.alongLength() + " × " + p.alongWidth())
                    .collect(Collectors.joining(" + "))
                + " = "
                + pieces()
                + ", at most "
                + upperBound(),
            "geometry"));
  }

  @Override
  public String describe(AmountFormat format) {
    requireNonNull(format, "format");
    Extent piece = parts.get(0).piece();
    return pieces()
        + " rectangles, "
        + format.length(piece.length())
        + " x "
        + format.length(piece.width())
        + (parts.size() > 1 ? ", part of them turned" : "");
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
