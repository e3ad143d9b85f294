package org.tourage.makeup;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.KILOGRAM;
import static org.tourage.quantity.BakeryUnits.KILOGRAM_PER_CUBIC_METRE;
import static org.tourage.quantity.BakeryUnits.METRE;
import static org.tourage.quantity.BakeryUnits.MILLIMETRE;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Density;
import org.tourage.quantity.Extent;

/**
 * How a sheet is cut into equal pieces by straight cuts: strips along the length, each cut across
 * into rectangles or into triangles point up and point down in turn. The trim is cut off all four
 * edges first. Coordinates start at the corner of the untrimmed sheet, x along its length, y
 * across.
 *
 * <p>Masses are by area: the sheet is of one thickness. Immutable and serialisable.
 *
 * @param shape the outline of a piece
 * @param sheet the whole sheet
 * @param trim what is cut off each edge
 * @param strips how many strips
 * @param perStrip how many pieces in each strip
 * @param base the side of a piece along the length (the base of a triangle)
 * @param height the side of a piece across (the height of a triangle)
 */
public record CuttingPlan(
    Shape shape,
    Extent sheet,
    Amount<Length> trim,
    int strips,
    int perStrip,
    Amount<Length> base,
    Amount<Length> height)
    implements Explained, Serializable {

  /** Forgives the rounding of sizes that fit exactly. */
  private static final double FIT = 1e-9;

  /** More trim than this share of the sheet brings advice: common practice, in percent. */
  private static final double WASTE_HIGH = 15;

  /**
   * A point on the sheet.
   *
   * @param x along the length
   * @param y across
   */
  public record Point(Amount<Length> x, Amount<Length> y) implements Serializable {
    private static Point of(double xMillimetres, double yMillimetres) {
      return new Point(MILLIMETRE.amount(xMillimetres), MILLIMETRE.amount(yMillimetres));
    }

    /** {@code (10 mm, 250 mm)}. */
    @Override
    public String toString() {
      AmountFormat format = AmountFormat.metric();
      return "(" + format.length(x) + ", " + format.length(y) + ")";
    }
  }

  /**
   * Checks that all pieces lie on the sheet.
   *
   * @param shape the outline of a piece
   * @param sheet the whole sheet
   * @param trim what is cut off each edge
   * @param strips how many strips
   * @param perStrip how many pieces in each strip
   * @param base the side of a piece along the length (the base of a triangle)
   * @param height the side of a piece across (the height of a triangle)
   */
  public CuttingPlan {
    requireNonNull(shape, "shape");
    double length = inner(sheet.length(), trim);
    double width = inner(sheet.width(), trim);
    double used = shape.usedLength(perStrip, base.in(MILLIMETRE));
    boolean fits =
        strips >= 1
            && perStrip >= 1
            && base.value() > 0
            && height.value() > 0
            && used <= length * (1 + FIT)
            && strips * height.in(MILLIMETRE) <= width * (1 + FIT);
    if (!fits) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "the pieces do not fit the sheet",
          strips
              + " strips of "
              + perStrip
              + " pieces of "
              + base
              + " x "
              + height
              + " on "
              + sheet
              + " with trim "
              + trim,
          "make the pieces smaller or the sheet larger");
    }
  }

  private static double inner(Amount<Length> side, Amount<Length> trim) {
    double inside = side.in(MILLIMETRE) - 2 * trim.in(MILLIMETRE);
    if (trim.value() < 0 || inside <= 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "the trim leaves no sheet",
          trim + " off both edges of " + side,
          "give a trim from 0 mm to less than half the sheet");
    }
    return inside;
  }

  /**
   * As many pieces of a given size as the sheet gives, in the better of the two orientations.
   *
   * @param shape the outline
   * @param sheet the whole sheet
   * @param trim what is cut off each edge
   * @param base the side along the strip (the base of a triangle)
   * @param height the side across the strip (the height of a triangle)
   * @return the plan; its strips run along the length of the sheet it names, which is turned where
   *     that gives more pieces
   * @throws BakeryException if not one piece fits
   */
  public static CuttingPlan ofSize(
      Shape shape,
      Extent sheet,
      Quantity<Length> trim,
      Quantity<Length> base,
      Quantity<Length> height) {
    Amount<Length> edge = Amount.from(trim);
    Amount<Length> along = Amount.from(base);
    Amount<Length> across = Amount.from(height);
    Extent turned = new Extent(/* length= */ sheet.width(), /* width= */ sheet.length());
    int straightCount = count(shape, sheet, edge, along, across);
    int turnedCount = count(shape, turned, edge, along, across);
    Extent better = turnedCount > straightCount ? turned : sheet;
    int strips = Shape.fit(inner(better.width(), edge) / across.in(MILLIMETRE));
    int perStrip = shape.perStrip(inner(better.length(), edge), along.in(MILLIMETRE));
    if (strips * perStrip < 1) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "not one piece fits the sheet",
          along + " x " + across + " on " + sheet + " with trim " + edge,
          "make the piece smaller or the sheet larger");
    }
    return new CuttingPlan(shape, better, edge, strips, perStrip, along, across);
  }

  private static int count(
      Shape shape, Extent sheet, Amount<Length> trim, Amount<Length> base, Amount<Length> height) {
    return Shape.fit(inner(sheet.width(), trim) / height.in(MILLIMETRE))
        * shape.perStrip(inner(sheet.length(), trim), base.in(MILLIMETRE));
  }

  /**
   * A number of equal pieces that use the whole sheet, in strips of equal number. Of all ways to
   * share the number out to strips, the one whose pieces come nearest to the wanted slenderness is
   * taken.
   *
   * @param shape the outline
   * @param pieces how many
   * @param sheet the whole sheet
   * @param trim what is cut off each edge
   * @param heightToBase the wanted height by base; crescents are commonly cut about 2 to 2.5
   * @return the plan
   * @throws BakeryException if the number or the slenderness is not positive
   */
  public static CuttingPlan forPieces(
      Shape shape, int pieces, Extent sheet, Quantity<Length> trim, double heightToBase) {
    if (pieces < 1 || !(heightToBase > 0)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no such pieces",
          pieces + " pieces, height " + heightToBase + " times the base",
          "give at least 1 piece and a positive ratio");
    }
    Amount<Length> edge = Amount.from(trim);
    double length = inner(sheet.length(), edge);
    double width = inner(sheet.width(), edge);
    int best =
        nearestStrips(
            pieces,
            strips -> width / strips / shape.baseFor(pieces / strips, length),
            heightToBase);
    int perStrip = pieces / best;
    return new CuttingPlan(
        shape,
        sheet,
        edge,
        best,
        perStrip,
        MILLIMETRE.amount(shape.baseFor(perStrip, length)),
        MILLIMETRE.amount(width / best));
  }

  /** The number of equal strips whose pieces come nearest to the wanted height by base. */
  private static int nearestStrips(int pieces, IntToDoubleFunction heightToBase, double wanted) {
    int best = 1;
    double bestMiss = Double.POSITIVE_INFINITY;
    for (int strips = 1; strips <= pieces; strips++) {
      if (pieces % strips == 0) {
        double miss = Math.abs(Math.log(heightToBase.applyAsDouble(strips) / wanted));
        if (miss < bestMiss) {
          bestMiss = miss;
          best = strips;
        }
      }
    }
    return best;
  }

  private static double square(double value) {
    return value * value;
  }

  /**
   * Strips over the whole length of the sheet.
   *
   * @param sheet the whole sheet
   * @param trim what is cut off each edge
   * @param width the width of a strip
   * @return the plan, one piece to a strip
   * @throws BakeryException if not one strip fits
   */
  public static CuttingPlan strips(Extent sheet, Quantity<Length> trim, Quantity<Length> width) {
    Amount<Length> edge = Amount.from(trim);
    Amount<Length> base = MILLIMETRE.amount(inner(sheet.length(), edge));
    int strips = Shape.fit(inner(sheet.width(), edge) / MILLIMETRE.measure(width));
    return new CuttingPlan(Shape.RECTANGLE, sheet, edge, strips, 1, base, Amount.from(width));
  }

  /**
   * What several numbers of pieces would give on one sheet.
   *
   * @param shape the outline
   * @param sheet the whole sheet
   * @param trim what is cut off each edge
   * @param heightToBase the wanted height by base
   * @param pieces the numbers, for example 6, 8, 12
   * @return a plan for each number
   */
  public static List<CuttingPlan> options(
      Shape shape, Extent sheet, Quantity<Length> trim, double heightToBase, int... pieces) {
    List<CuttingPlan> plans = new ArrayList<>();
    for (int number : pieces) {
      plans.add(forPieces(shape, number, sheet, trim, heightToBase));
    }
    return plans;
  }

  /**
   * The sheet for so many pieces of a given mass: its width and thickness are given, its length
   * follows.
   *
   * @param shape the outline
   * @param pieces how many, at least 1
   * @param pieceMass the mass of one
   * @param thickness the thickness of the sheet
   * @param density the density of the sheet
   * @param width the width of the sheet
   * @param trim what is cut off each edge
   * @param heightToBase the wanted height by base
   * @return the plan on the sheet that is needed
   * @throws BakeryException if a figure is not positive or the trim leaves nothing
   */
  public static CuttingPlan sheetFor(
      Shape shape,
      int pieces,
      Quantity<Mass> pieceMass,
      Quantity<Length> thickness,
      Quantity<Density> density,
      Quantity<Length> width,
      Quantity<Length> trim,
      double heightToBase) {
    double mass = KILOGRAM.measure(pieceMass);
    double layer = METRE.measure(thickness) * KILOGRAM_PER_CUBIC_METRE.measure(density);
    if (pieces < 1 || !(mass > 0) || !(layer > 0) || !(heightToBase > 0)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no such pieces",
          pieces
              + " pieces of "
              + Amount.from(pieceMass)
              + ", "
              + Amount.from(thickness)
              + " thick",
          "give positive figures");
    }
    // mm² of one piece
    double area = mass / layer * 1e6;
    Amount<Length> edge = Amount.from(trim);
    double across = inner(Amount.from(width), edge);
    int best =
        nearestStrips(
            pieces, strips -> square(across / strips) * shape.fill() / area, heightToBase);
    double height = across / best;
    double base = area / (height * shape.fill());
    double length = shape.usedLength(pieces / best, base) + 2 * edge.in(MILLIMETRE);
    return new CuttingPlan(
        shape,
        Extent.of(MILLIMETRE.amount(length), width),
        edge,
        best,
        pieces / best,
        MILLIMETRE.amount(base),
        MILLIMETRE.amount(height));
  }

  /**
   * The most pieces of this size that any cutting could give: the trimmed area over the area of a
   * piece.
   *
   * @return the bound; where {@link #pieces()} reaches it the plan is proved best
   */
  public int upperBound() {
    double area = inner(sheet.length(), trim) * inner(sheet.width(), trim);
    return Shape.fit(area / pieceArea());
  }

  /**
   * How many pieces.
   *
   * @return the number
   */
  public int pieces() {
    return strips * perStrip;
  }

  private double pieceArea() {
    return base.in(MILLIMETRE) * height.in(MILLIMETRE) * shape.fill();
  }

  private double sheetArea() {
    return sheet.length().in(MILLIMETRE) * sheet.width().in(MILLIMETRE);
  }

  /**
   * The part of the sheet that goes into pieces.
   *
   * @return the yield by area
   */
  public Amount<Dimensionless> sheetYield() {
    return PERCENT.amount(100 * pieces() * pieceArea() / sheetArea());
  }

  /**
   * The mass of one piece.
   *
   * @param sheetMass the mass of the whole sheet
   * @return the mass in grams
   */
  public Amount<Mass> pieceMass(Quantity<Mass> sheetMass) {
    return GRAM.amount(GRAM.measure(sheetMass) * pieceArea() / sheetArea());
  }

  /**
   * The mass of the trim and the ends.
   *
   * @param sheetMass the mass of the whole sheet
   * @return what is left after all pieces, in grams
   */
  public Amount<Mass> trimMass(Quantity<Mass> sheetMass) {
    return GRAM.amount(GRAM.measure(sheetMass) * (1 - pieces() * pieceArea() / sheetArea()));
  }

  /**
   * The corners of every piece.
   *
   * @return for each piece its corners in order, strip by strip
   */
  public List<List<Point>> outlines() {
    List<List<Point>> outlines = new ArrayList<>();
    double edge = trim.in(MILLIMETRE);
    double b = base.in(MILLIMETRE);
    double h = height.in(MILLIMETRE);
    for (int strip = 0; strip < strips; strip++) {
      double low = edge + strip * h;
      double high = low + h;
      for (int i = 0; i < perStrip; i++) {
        outlines.add(outline(i, edge, b, low, high));
      }
    }
    return outlines;
  }

  private List<Point> outline(int i, double edge, double b, double low, double high) {
    double left = edge + shape.usedLength(i, b) - (shape == Shape.TRIANGLE ? b / 2 : 0);
    if (shape == Shape.RECTANGLE) {
      return List.of(
          Point.of(left, low),
          Point.of(left + b, low),
          Point.of(left + b, high),
          Point.of(left, high));
    } else if (shape == Shape.TRIANGLE) {
      boolean pointUp = i % 2 == 0;
      double baseY = pointUp ? low : high;
      double tipY = pointUp ? high : low;
      return List.of(
          Point.of(left, baseY), Point.of(left + b, baseY), Point.of(left + b / 2, tipY));
    }
    int pair = i / 2;
    double start = edge + pair * b;
    return i % 2 == 0
        ? List.of(Point.of(start, low), Point.of(start + b, low), Point.of(start, high))
        : List.of(Point.of(start + b, low), Point.of(start + b, high), Point.of(start, high));
  }

  /**
   * A straight cut.
   *
   * @param from where the knife starts
   * @param to where it ends
   */
  public record Cut(Point from, Point to) implements Serializable {
    private static Cut of(double x1, double y1, double x2, double y2) {
      return new Cut(Point.of(x1, y1), Point.of(x2, y2));
    }

    /** {@code (5 mm, 5 mm) to (134 mm, 5 mm)}. */
    @Override
    public String toString() {
      return from + " to " + to;
    }
  }

  /**
   * Every straight cut in the order of work: the trim (if there is any), the strips, then across
   * each strip.
   *
   * @return the cuts with their coordinates
   */
  public List<Cut> cutLines() {
    List<Cut> lines = new ArrayList<>();
    double edge = trim.in(MILLIMETRE);
    double length = sheet.length().in(MILLIMETRE);
    double width = sheet.width().in(MILLIMETRE);
    double h = height.in(MILLIMETRE);
    double b = base.in(MILLIMETRE);
    if (edge > 0) {
      lines.add(Cut.of(0, edge, length, edge));
      lines.add(Cut.of(0, width - edge, length, width - edge));
      lines.add(Cut.of(edge, edge, edge, width - edge));
      lines.add(Cut.of(length - edge, edge, length - edge, width - edge));
    }
    for (int strip = 1; strip <= strips; strip++) {
      double y = edge + strip * h;
      if (y < (width - edge) * (1 - FIT)) {
        lines.add(Cut.of(edge, y, length - edge, y));
      }
    }
    double end = (length - edge) * (1 - FIT);
    for (int strip = 0; strip < strips; strip++) {
      double low = edge + strip * h;
      double high = low + h;
      for (int i = 0; i <= perStrip; i++) {
        switch (shape) {
          case RECTANGLE -> {
            double x = edge + i * b;
            if (i > 0 && x < end) {
              lines.add(Cut.of(x, low, x, high));
            }
          }
          case TRIANGLE -> {
            // slant i runs between the mark i on one edge and the mark half a base further on the
            // other
            double x = edge + i * b / 2;
            lines.add(
                i % 2 == 0 ? Cut.of(x, low, x + b / 2, high) : Cut.of(x, high, x + b / 2, low));
          }
          case RIGHT_TRIANGLE -> {
            int pair = i / 2;
            double x = edge + pair * b;
            if (i % 2 == 1) {
              lines.add(Cut.of(x + b, low, x, high));
            } else if (i > 0 && x < end) {
              lines.add(Cut.of(x, low, x, high));
            }
          }
        }
      }
    }
    return lines;
  }

  /**
   * The marks along both edges of a strip at which the knife starts and ends.
   *
   * @param format how lengths are written
   * @return in words, with coordinates along the length
   */
  public List<String> cuts(AmountFormat format) {
    List<String> cuts = new ArrayList<>();
    double edge = trim.in(MILLIMETRE);
    double h = height.in(MILLIMETRE);
    double b = base.in(MILLIMETRE);
    if (edge > 0) {
      cuts.add("trim " + format.length(trim) + " off each edge");
    }
    for (int strip = 1; strip < strips; strip++) {
      cuts.add("cut along at y = " + format.length(MILLIMETRE.amount(edge + strip * h)));
    }
    String every = format.length(base);
    String first = format.length(trim);
    switch (shape) {
      case RECTANGLE -> cuts.add("cut across every " + every + ", from x = " + first);
      case TRIANGLE -> {
        cuts.add(
            "mark one edge of each strip every "
                + every
                + " from x = "
                + first
                + ", the other edge every "
                + every
                + " from x = "
                + format.length(MILLIMETRE.amount(edge + b / 2)));
        cuts.add("cut from mark to mark, to and fro");
      }
      case RIGHT_TRIANGLE -> {
        cuts.add("cut across every " + every + ", from x = " + first);
        cuts.add("cut each rectangle from its lower right to its upper left corner");
      }
    }
    return cuts;
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>();
    double waste = 100 - sheetYield().value();
    if (waste > WASTE_HIGH) {
      advice.add(
          Advice.note(
              "TRIM_HIGH",
              Numbers.decimals(waste, 0) + " % of the sheet is trim and ends",
              "Press the trim into the next dough or bake it as sticks; a longer, narrower sheet wastes less",
              Advice.COMMON_PRACTICE));
    }
    return advice;
  }

  @Override
  public Working working() {
    String area = shape.fill() == 1 ? "base × height" : "base × height / 2";
    return Working.of(
        new WorkedLine(
            "yield",
            "pieces × " + area + " / (length × width)",
            pieces()
                + " × "
                + Numbers.significant(pieceArea() / 100, 4)
                + " cm² / "
                + Numbers.significant(sheetArea() / 100, 4)
                + " cm² = "
                + AmountFormat.metric().percent(sheetYield()),
            "geometry"));
  }

  /** {@code 12 triangles, base 100 mm, height 250 mm, in 1 strip of 12}. */
  @Override
  public String toString() {
    return describe(AmountFormat.metric());
  }

  /**
   * The same in other units.
   *
   * @param format how lengths are written
   * @return one line
   */
  public String describe(AmountFormat format) {
    return pieces()
        + (shape == Shape.RECTANGLE
            ? " rectangles, "
            : shape == Shape.TRIANGLE ? " triangles, base " : " right triangles, base ")
        + format.length(base)
        + (shape == Shape.RECTANGLE ? " x " : ", height ")
        + format.length(height)
        + ", in "
        + strips
        + (strips == 1 ? " strip of " : " strips of ")
        + perStrip;
  }
}
