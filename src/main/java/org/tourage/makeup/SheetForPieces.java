package org.tourage.makeup;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.GRAM;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.DoubleFunction;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Given;

/**
 * How much dough a sheet needs so that the pieces that are cut from it weigh what is wanted, trim
 * and ends taken off. The caller tells how large and how heavy the sheet is when the recipe is
 * taken so many times; the scale is found.
 *
 * <p>Each way to share the pieces out to equal strips is solved for itself, with the strips held
 * fixed: only then does the mass of a piece rise steadily with the dough. (To choose the strips
 * anew for every trial sheet can go to and fro between two layouts for ever.) Of the layouts that
 * come out right, the one whose pieces come nearest to the wanted slenderness is taken. Where the
 * sheet jumps, so that none comes out right, {@link #settled()} is false and the advice has both
 * figures.
 *
 * <pre>{@code
 * SheetForPieces.find(Shape.TRIANGLE, 12, grams(70), millimetres(5), 2.2,
 *     scale -> sheet(batch.times(scale)));
 * }</pre>
 *
 * <p>Immutable and serialisable.
 */
public final class SheetForPieces implements Explained, Serializable {
  private static final long serialVersionUID = 1L;

  /** Grams by which wanted and cut piece may differ, and never more than a hundredth. */
  private static final double SETTLED_GRAMS = 1;

  private static final double SETTLED_SHARE = 0.01;

  /** The search stops here, far below what a balance shows. */
  private static final double EXACT = 1e-10;

  private static final double NARROW = 1e-13;
  private static final int MOST_DOUBLINGS = 40;
  private static final int MOST_STEPS = 200;

  /** How many times the recipe. */
  private final double scale;

  /** The sheet at that scale. */
  private final WeighedSheet sheet;

  /** How it is cut. */
  private final CuttingPlan plan;

  /** The mass of a piece that is wanted. */
  private final Amount<Mass> wanted;

  private SheetForPieces(double scale, WeighedSheet sheet, CuttingPlan plan, Amount<Mass> wanted) {
    this.scale = scale;
    this.sheet = sheet;
    this.plan = plan;
    this.wanted = wanted;
  }

  /**
   * Finds the sheet.
   *
   * @param shape the outline of a piece
   * @param pieces how many, 1 to 100,000
   * @param pieceMass the raw mass of one, positive
   * @param trim what is cut off each edge of the sheet
   * @param heightToBase the wanted height by base, positive
   * @param sheetAt the sheet when the recipe is taken so many times; it may refuse a scale with a
   *     {@link BakeryException}
   * @return the sheet, the scale and the cutting plan
   * @throws BakeryException if a figure makes no sense, or the sheet is refused at every scale
   */
  public static SheetForPieces find(
      Shape shape,
      int pieces,
      Quantity<Mass> pieceMass,
      Quantity<Length> trim,
      double heightToBase,
      DoubleFunction<WeighedSheet> sheetAt) {
    requireNonNull(shape, "shape");
    requireNonNull(pieceMass, "pieceMass");
    requireNonNull(trim, "trim");
    requireNonNull(sheetAt, "sheetAt");
    CuttingPlan.checkOrder(pieces, heightToBase);
    Amount<Mass> wanted = Given.mass("the piece mass", pieceMass);
    if (wanted.value() <= 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE, "a piece weighs something", wanted.toString(), "give a mass in g");
    }
    Amount<Length> edge = Given.length("the trim", trim);
    SheetForPieces best = null;
    double start = 1;
    BakeryException refused = null;
    for (int strips : CuttingPlan.equalStrips(pieces)) {
      Search search =
          new Search(
              (scale, sheet) ->
                  CuttingPlan.inStrips(
                      shape, sheet.extent(), edge, strips, pieces / strips, heightToBase),
              sheetAt,
              wanted);
      SheetForPieces found = search.from(start);
      if (found == null) {
        refused = refused == null ? search.refused : refused;
      } else {
        start = found.scale;
        best = best == null || found.beats(best) ? found : best;
      }
    }
    if (best == null) {
      throw requireNonNull(refused);
    }
    return best;
  }

  /** Right before wrong, then the nearer slenderness; of two wrong ones the nearer mass. */
  private boolean beats(SheetForPieces other) {
    if (settled() != other.settled()) {
      return settled();
    }
    return settled()
        ? plan.slendernessMiss() < other.plan.slendernessMiss()
        : miss() < other.miss();
  }

  private double miss() {
    return Math.abs(cut().in(GRAM) - wanted.in(GRAM));
  }

  private interface Layout {
    CuttingPlan plan(double scale, WeighedSheet sheet);
  }

  /** The root of (mass cut − mass wanted) in a bracket, by regula falsi (Illinois) and halving. */
  private static final class Search {
    private final Layout layout;
    private final DoubleFunction<WeighedSheet> sheetAt;
    private final Amount<Mass> wanted;
    private final double grams;
    private @Nullable SheetForPieces nearest;
    private @Nullable BakeryException refused;
    private double feasible = Double.NaN;

    Search(Layout layout, DoubleFunction<WeighedSheet> sheetAt, Amount<Mass> wanted) {
      this.layout = layout;
      this.sheetAt = sheetAt;
      this.wanted = wanted;
      this.grams = wanted.in(GRAM);
    }

    /** Grams too much; a scale that is refused counts as an empty or as a twofold piece. */
    private double excess(double scale) {
      SheetForPieces here;
      try {
        WeighedSheet sheet = requireNonNull(sheetAt.apply(scale), "sheetAt gives no sheet");
        here = new SheetForPieces(scale, sheet, layout.plan(scale, sheet), wanted);
      } catch (BakeryException e) {
        refused = refused == null ? e : refused;
        return scale > feasible ? grams : -grams;
      }
      feasible = Double.isNaN(feasible) ? scale : feasible;
      nearest = nearest == null || here.miss() < nearest.miss() ? here : nearest;
      return here.cut().in(GRAM) - grams;
    }

    @Nullable SheetForPieces from(double start) {
      double low = start;
      double below = excess(low);
      for (int i = 0; i < MOST_DOUBLINGS && Double.isNaN(feasible); i++) {
        low *= 2;
        below = excess(low);
      }
      if (Double.isNaN(feasible)) {
        return null;
      }
      double high = low;
      double above = below;
      for (int i = 0; i < MOST_DOUBLINGS && above < 0; i++) {
        low = high;
        below = above;
        high *= 2;
        above = excess(high);
      }
      for (int i = 0; i < MOST_DOUBLINGS && below > 0; i++) {
        high = low;
        above = below;
        low /= 2;
        below = excess(low);
      }
      if (below <= 0 && above >= 0) {
        close(low, below, high, above);
      }
      return nearest;
    }

    private void close(double lowStart, double belowStart, double highStart, double aboveStart) {
      double low = lowStart;
      double below = belowStart;
      double high = highStart;
      double above = aboveStart;
      int side = 0;
      for (int i = 0; i < MOST_STEPS && high - low > NARROW * high; i++) {
        double part = i % 3 == 2 ? 0.5 : -below / (above - below);
        double middle = low + part * (high - low);
        double value = excess(middle);
        if (Math.abs(value) <= EXACT * grams) {
          return;
        }
        // an end that stays twice counts half, or it would stay for ever
        if (value < 0) {
          low = middle;
          below = value;
          above = side < 0 ? above / 2 : above;
          side = -1;
        } else {
          high = middle;
          above = value;
          below = side > 0 ? below / 2 : below;
          side = 1;
        }
      }
    }
  }

  /**
   * How many times the recipe is to be taken.
   *
   * @return the scale, above 0
   */
  public double scale() {
    return scale;
  }

  /**
   * The sheet at that scale.
   *
   * @return extent and mass
   */
  public WeighedSheet sheet() {
    return sheet;
  }

  /**
   * How the sheet is cut.
   *
   * @return the plan, with the strips that were chosen
   */
  public CuttingPlan plan() {
    return plan;
  }

  /**
   * The mass of a piece that was wanted.
   *
   * @return the raw mass
   */
  public Amount<Mass> promised() {
    return wanted;
  }

  /**
   * The mass of a piece that this sheet gives.
   *
   * @return the raw mass in grams
   */
  public Amount<Mass> cut() {
    return plan.pieceMass(sheet.mass());
  }

  /**
   * Whether wanted and cut piece agree, within 1 g and within a hundredth.
   *
   * @return false where the sheet jumps over the mass that is wanted
   */
  public boolean settled() {
    double grams = wanted.in(GRAM);
    return miss() <= Math.min(SETTLED_GRAMS, SETTLED_SHARE * grams);
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>(plan.advice());
    if (!settled()) {
      AmountFormat format = AmountFormat.sideBySide();
      advice.add(
          Advice.of(
              "SHEET_NOT_SETTLED",
              "pieces of "
                  + format.mass(wanted)
                  + " are wanted, and the nearest sheet gives pieces of "
                  + format.mass(cut()),
              "Change the width of the sheet or the number of pieces, or be content with the"
                  + " nearest"));
    }
    return advice;
  }

  @Override
  public Working working() {
    AmountFormat format = AmountFormat.metric();
    List<WorkedLine> lines = new ArrayList<>(plan.working().lines());
    lines.add(
        new WorkedLine(
            "piece",
            "sheet × yield / pieces",
            format.mass(sheet.mass())
                + " × "
                + format.percent(plan.sheetYield())
                + " / "
                + plan.pieces()
                + " = "
                + format.mass(cut()),
            "one thickness everywhere"));
    return new Working(lines);
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof SheetForPieces that
        && Double.compare(scale, that.scale) == 0
        && sheet.equals(that.sheet)
        && plan.equals(that.plan)
        && wanted.equals(that.wanted);
  }

  @Override
  public int hashCode() {
    return Objects.hash(scale, sheet, plan, wanted);
  }

  /** {@code 1.07 times the recipe: 12 triangles, …, 50 g each}. */
  @Override
  public String toString() {
    AmountFormat format = AmountFormat.metric();
    return Numbers.significant(scale, 4)
        + " times the recipe: "
        + plan
        + ", "
        + format.mass(cut())
        + " each"
        + (settled() ? "" : " where " + format.mass(wanted) + " are wanted");
  }
}
