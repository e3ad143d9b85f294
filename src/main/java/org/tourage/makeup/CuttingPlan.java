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
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Density;
import org.tourage.quantity.Extent;
import org.tourage.quantity.Given;

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
 * @param heightToBase the height by base that was wanted; that of the pieces where none was
 */
public record CuttingPlan(
    Shape shape,
    Extent sheet,
    Amount<Length> trim,
    int strips,
    int perStrip,
    Amount<Length> base,
    Amount<Length> height,
    double heightToBase)
    implements Cutting {

  /** Forgives the rounding of sizes that fit exactly. */
  private static final double FIT = 1e-9;

  /** A height by base that is further off than this factor is said: common practice. */
  private static final double SLENDERNESS_OFF = 1.1;

  /** A plan of more pieces than this is refused. */
  static final int MOST_PIECES = 100_000;

  /**
   * A point on the sheet.
   *
   * @param x along the length
   * @param y across
   */
  public record Point(Amount<Length> x, Amount<Length> y) implements Serializable {
    /**
     * Checks that nothing is missing.
     *
     * @param x along the length
     * @param y across
     */
    public Point {
      requireNonNull(x, "x");
      requireNonNull(y, "y");
    }

    static Point of(double xMillimetres, double yMillimetres) {
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
   * @param heightToBase the height by base that was wanted; that of the pieces where none was
   */
  public CuttingPlan {
    requireNonNull(sheet, "sheet");
    requireNonNull(trim, "trim");
    requireNonNull(base, "base");
    requireNonNull(height, "height");
    requireNonNull(shape, "shape");
    checkOrder(Math.max(1, strips) * (long) Math.max(1, perStrip), heightToBase);
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

  /**
   * A plan whose pieces have the slenderness that is wanted.
   *
   * @param shape the outline of a piece
   * @param sheet the whole sheet
   * @param trim what is cut off each edge
   * @param strips how many strips
   * @param perStrip how many pieces in each strip
   * @param base the side of a piece along the length (the base of a triangle)
   * @param height the side of a piece across (the height of a triangle)
   */
  public CuttingPlan(
      Shape shape,
      Extent sheet,
      Amount<Length> trim,
      int strips,
      int perStrip,
      Amount<Length> base,
      Amount<Length> height) {
    this(
        shape,
        sheet,
        trim,
        strips,
        perStrip,
        requireNonNull(base, "base"),
        requireNonNull(height, "height"),
        slenderness(base, height));
  }

  /** Sides that are not positive are refused later. */
  private static double slenderness(Amount<Length> base, Amount<Length> height) {
    return base.value() > 0 && height.value() > 0 ? height.ratioTo(base) : 1;
  }

  static void checkOrder(long pieces, double heightToBase) {
    if (pieces < 1 || !(heightToBase > 0) || Double.isInfinite(heightToBase)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no such pieces",
          pieces + " pieces, height " + heightToBase + " times the base",
          "give at least 1 piece and a positive ratio");
    }
    if (pieces > MOST_PIECES) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "too many pieces for one sheet",
          pieces + " pieces",
          "give up to " + MOST_PIECES);
    }
  }

  static double inner(Amount<Length> side, Amount<Length> trim) {
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
    requireNonNull(shape, "shape");
    requireNonNull(sheet, "sheet");
    requireNonNull(trim, "trim");
    requireNonNull(base, "base");
    requireNonNull(height, "height");
    Amount<Length> edge = Given.length("the trim", trim);
    Amount<Length> along = Given.length("the base", base);
    Amount<Length> across = Given.length("the height", height);
    Extent turned = new Extent(/* length= */ sheet.width(), /* width= */ sheet.length());
    checkSize(along, across);
    long straightCount = count(shape, sheet, edge, along, across);
    long turnedCount = count(shape, turned, edge, along, across);
    Extent better = turnedCount > straightCount ? turned : sheet;
    checkOrder(Math.max(1, Math.max(straightCount, turnedCount)), 1);
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

  static void checkSize(Amount<Length> base, Amount<Length> height) {
    if (base.value() <= 0 || height.value() <= 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a piece has two sides",
          base + " x " + height,
          "give positive lengths in mm or in");
    }
  }

  private static long count(
      Shape shape, Extent sheet, Amount<Length> trim, Amount<Length> base, Amount<Length> height) {
    return (long) Shape.fit(inner(sheet.width(), trim) / height.in(MILLIMETRE))
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
    requireNonNull(shape, "shape");
    requireNonNull(sheet, "sheet");
    requireNonNull(trim, "trim");
    checkOrder(pieces, heightToBase);
    Amount<Length> edge = Given.length("the trim", trim);
    double length = inner(sheet.length(), edge);
    double width = inner(sheet.width(), edge);
    int best =
        nearestStrips(
            pieces,
            strips -> width / strips / shape.baseFor(pieces / strips, length),
            heightToBase);
    return inStrips(shape, sheet, edge, best, pieces / best, heightToBase);
  }

  /** Pieces that use the whole sheet in a number of strips that is given. */
  static CuttingPlan inStrips(
      Shape shape,
      Extent sheet,
      Amount<Length> trim,
      int strips,
      int perStrip,
      double heightToBase) {
    return new CuttingPlan(
        shape,
        sheet,
        trim,
        strips,
        perStrip,
        MILLIMETRE.amount(shape.baseFor(perStrip, inner(sheet.length(), trim))),
        MILLIMETRE.amount(inner(sheet.width(), trim) / strips),
        heightToBase);
  }

  /** All numbers of equal strips that share the pieces out, rising. */
  static List<Integer> equalStrips(int pieces) {
    List<Integer> numbers = new ArrayList<>();
    for (int strips = 1; strips <= pieces; strips++) {
      if (pieces % strips == 0) {
        numbers.add(strips);
      }
    }
    return numbers;
  }

  /** The number of equal strips whose pieces come nearest to the wanted height by base. */
  private static int nearestStrips(int pieces, IntToDoubleFunction heightToBase, double wanted) {
    int best = 1;
    double bestMiss = Double.POSITIVE_INFINITY;
    for (int strips : equalStrips(pieces)) {
      double miss = Math.abs(StrictMath.log(heightToBase.applyAsDouble(strips) / wanted));
      if (miss < bestMiss) {
        bestMiss = miss;
        best = strips;
      }
    }
    return best;
  }

  /** How far the height by base is from the one wanted, as a logarithm. */
  double slendernessMiss() {
    return Math.abs(StrictMath.log(height.ratioTo(base) / heightToBase));
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
    requireNonNull(sheet, "sheet");
    requireNonNull(trim, "trim");
    requireNonNull(width, "width");
    Amount<Length> edge = Given.length("the trim", trim);
    Amount<Length> base = MILLIMETRE.amount(inner(sheet.length(), edge));
    int strips = Shape.fit(inner(sheet.width(), edge) / MILLIMETRE.measure("the width", width));
    return new CuttingPlan(
        Shape.RECTANGLE, sheet, edge, strips, 1, base, Given.length("the width", width));
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
    requireNonNull(shape, "shape");
    requireNonNull(sheet, "sheet");
    requireNonNull(trim, "trim");
    requireNonNull(pieces, "pieces");
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
    double mass = KILOGRAM.measure("the piece mass", pieceMass);
    double layer =
        METRE.measure("the thickness", thickness)
            * KILOGRAM_PER_CUBIC_METRE.measure("the density", density);
    checkOrder(pieces, heightToBase);
    if (!(mass > 0) || !(layer > 0)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no such pieces",
          pieces
              + " pieces of "
              + Given.mass("the piece mass", pieceMass)
              + ", "
              + Given.length("the thickness", thickness)
              + " thick",
          "give positive figures");
    }
    // mm² of one piece
    double area = mass / layer * 1e6;
    Amount<Length> edge = Given.length("the trim", trim);
    double across = inner(Given.length("the width", width), edge);
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
        MILLIMETRE.amount(height),
        heightToBase);
  }

  @Override
  public int upperBound() {
    double area = inner(sheet.length(), trim) * inner(sheet.width(), trim);
    return Shape.fit(area / pieceArea());
  }

  @Override
  public int pieces() {
    return strips * perStrip;
  }

  private double pieceArea() {
    return base.in(MILLIMETRE) * height.in(MILLIMETRE) * shape.fill();
  }

  /** The width at which a sheet of the same area and strips gives the wanted height by base. */
  Amount<Length> widthFor(double wanted) {
    double edge = 2 * trim.in(MILLIMETRE);
    double low = edge;
    double high = sheetArea() / edge;
    if (edge == 0) {
      return MILLIMETRE.amount(
          sheet.width().in(MILLIMETRE) * Math.sqrt(wanted * base.ratioTo(height)));
    }
    // the slenderness rises with the width: halve, on a scale of ratios
    for (int i = 0; i < 60; i++) {
      double middle = Math.sqrt(low * high);
      double here = (middle - edge) / strips / shape.baseFor(perStrip, sheetArea() / middle - edge);
      low = here < wanted ? middle : low;
      high = here < wanted ? high : middle;
    }
    return MILLIMETRE.amount(high);
  }

  private double sheetArea() {
    return sheet.length().in(MILLIMETRE) * sheet.width().in(MILLIMETRE);
  }

  @Override
  public Amount<Dimensionless> sheetYield() {
    return PERCENT.amount(100 * pieces() * pieceArea() / sheetArea());
  }

  @Override
  public Amount<Mass> pieceMass(Quantity<Mass> sheetMass) {
    requireNonNull(sheetMass, "sheetMass");
    return GRAM.amount(GRAM.measure("the sheet mass", sheetMass) * pieceArea() / sheetArea());
  }

  @Override
  public Amount<Mass> trimMass(Quantity<Mass> sheetMass) {
    requireNonNull(sheetMass, "sheetMass");
    return GRAM.amount(
        GRAM.measure("the sheet mass", sheetMass) * (1 - pieces() * pieceArea() / sheetArea()));
  }

  /**
   * The corners of every piece.
   *
   * @return for each piece its corners in order, strip by strip
   */
  public List<List<Point>> outlines() {
    return new StripGeometry(this).outlines();
  }

  /**
   * A straight cut.
   *
   * @param from where the knife starts
   * @param to where it ends
   */
  public record Cut(Point from, Point to) implements Serializable {
    /**
     * Checks that nothing is missing.
     *
     * @param from where the knife starts
     * @param to where it ends
     */
    public Cut {
      requireNonNull(from, "from");
      requireNonNull(to, "to");
    }

    static Cut of(double x1, double y1, double x2, double y2) {
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
    return new StripGeometry(this).cutLines();
  }

  @Override
  public List<String> cuts(AmountFormat format) {
    requireNonNull(format, "format");
    return new StripGeometry(this).inWords(format);
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>();
    advice.addAll(Waste.of(this));
    if (slendernessMiss() > StrictMath.log(SLENDERNESS_OFF)) {
      advice.add(
          Advice.of(
              "SLENDERNESS_MISSED",
              "a piece is "
                  + Numbers.significant(height.ratioTo(base), 3)
                  + " times as high as its base, and "
                  + Numbers.significant(heightToBase, 3)
                  + " was wanted",
              "No equal strips come nearer on this sheet; the same dough rolled about "
                  + AmountFormat.sideBySide().length(widthFor(heightToBase))
                  + " wide does, in as many strips"));
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

  @Override
  public String describe(AmountFormat format) {
    requireNonNull(format, "format");
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
