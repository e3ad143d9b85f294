package org.tourage.makeup;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.MILLIMETRE;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Extent;
import org.tourage.quantity.Given;

/**
 * Rounds cut from a sheet, in square rows or in rows that nest (hexagonal). {@link #of} tries
 * square rows and nested rows in both directions and keeps the most.
 *
 * @param sheet the whole sheet; its length is the direction of the rows
 * @param trim what is cut off each edge
 * @param diameter the diameter of a round
 * @param nested whether each row lies in the hollows of the one before
 */
public record RoundPlan(Extent sheet, Amount<Length> trim, Amount<Length> diameter, boolean nested)
    implements Cutting {
  private static final double NESTED_ROW = Math.sqrt(3) / 2;

  /**
   * Checks that at least one round fits.
   *
   * @param sheet the whole sheet; its length is the direction of the rows
   * @param trim what is cut off each edge
   * @param diameter the diameter of a round
   * @param nested whether each row lies in the hollows of the one before
   */
  public RoundPlan {
    requireNonNull(trim, "trim");
    requireNonNull(diameter, "diameter");
    requireNonNull(sheet, "sheet");
    double d = diameter.in(MILLIMETRE);
    double t = trim.in(MILLIMETRE);
    double shorter = Math.min(sheet.length().in(MILLIMETRE), sheet.width().in(MILLIMETRE)) - 2 * t;
    if (!(d > 0) || t < 0 || Shape.fit(shorter / d) < 1) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "not one round fits the sheet",
          diameter + " on " + sheet + " with trim " + trim,
          "make the round smaller or the sheet larger");
    }
    // nested rows hold at most 2/√3 times as many as square ones
    CuttingPlan.checkOrder(
        (long)
            Math.max(1, inner(sheet.length(), t) / d * (inner(sheet.width(), t) / d) / NESTED_ROW),
        1);
  }

  /**
   * As many rounds as square or nested rows give, rows along either side.
   *
   * @param sheet the whole sheet
   * @param trim what is cut off each edge
   * @param diameter the diameter of a round
   * @return the best of the four plans
   * @throws BakeryException if not one round fits
   */
  public static RoundPlan of(Extent sheet, Quantity<Length> trim, Quantity<Length> diameter) {
    requireNonNull(sheet, "sheet");
    requireNonNull(trim, "trim");
    requireNonNull(diameter, "diameter");
    Extent turned = new Extent(/* length= */ sheet.width(), /* width= */ sheet.length());
    RoundPlan best = null;
    for (Extent way : new Extent[] {sheet, turned}) {
      for (boolean nested : new boolean[] {false, true}) {
        RoundPlan plan =
            new RoundPlan(
                way,
                Given.length("the trim", trim),
                Given.length("the diameter", diameter),
                nested);
        if (best == null || plan.pieces() > best.pieces()) {
          best = plan;
        }
      }
    }
    return requireNonNull(best);
  }

  private static double inner(Amount<Length> side, double edge) {
    return side.in(MILLIMETRE) - 2 * edge;
  }

  private double inner(Amount<Length> side) {
    return inner(side, trim.in(MILLIMETRE));
  }

  private int rows() {
    double d = diameter.in(MILLIMETRE);
    double width = inner(sheet.width());
    return nested ? 1 + Shape.fit((width / d - 1) / NESTED_ROW + 1e-12) : Shape.fit(width / d);
  }

  private int inRow(int row) {
    double columns = inner(sheet.length()) / diameter.in(MILLIMETRE);
    return Shape.fit(nested && row % 2 == 1 ? columns - 0.5 : columns);
  }

  @Override
  public int pieces() {
    int sum = 0;
    for (int row = 0; row < rows(); row++) {
      sum += inRow(row);
    }
    return sum;
  }

  /**
   * The centres of the rounds.
   *
   * @return row by row, from the corner of the untrimmed sheet
   */
  public List<CuttingPlan.Point> centres() {
    List<CuttingPlan.Point> centres = new ArrayList<>();
    double d = diameter.in(MILLIMETRE);
    double start = trim.in(MILLIMETRE) + d / 2;
    for (int row = 0; row < rows(); row++) {
      double y = start + row * d * (nested ? NESTED_ROW : 1);
      double shift = nested && row % 2 == 1 ? d / 2 : 0;
      for (int i = 0; i < inRow(row); i++) {
        centres.add(
            new CuttingPlan.Point(MILLIMETRE.amount(start + shift + i * d), MILLIMETRE.amount(y)));
      }
    }
    return centres;
  }

  /**
   * The most rounds that any arrangement could give: H. Groemer, "Über die Einlagerung von Kreisen
   * in einen konvexen Bereich", Math. Z. 73 (1960), from memory: N ≤ 2/√3·A + P/2 + 1, with A and P
   * the area and the perimeter of the region of the centres, in diameters.
   *
   * @return the bound
   */
  @Override
  public int upperBound() {
    double d = diameter.in(MILLIMETRE);
    double l = inner(sheet.length()) / d - 1;
    double w = inner(sheet.width()) / d - 1;
    return (int) Math.floor(2 / Math.sqrt(3) * l * w + (l + w) + 1 + 1e-9);
  }

  private double share() {
    double d = diameter.in(MILLIMETRE);
    return Math.PI * d * d / 4 / (sheet.length().in(MILLIMETRE) * sheet.width().in(MILLIMETRE));
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
    String first = format.length(MILLIMETRE.amount(trim.in(MILLIMETRE) + radius()));
    cuts.add("set the cutter from x = " + first + " every " + format.length(diameter));
    if (rows() > 1) {
      cuts.add(
          "next rows every "
              + format.length(diameter.multiply(nested ? NESTED_ROW : 1))
              + " from y = "
              + first
              + (nested
                  ? ", every second row shifted by " + format.length(MILLIMETRE.amount(radius()))
                  : ""));
    }
    return cuts;
  }

  private double radius() {
    return diameter.in(MILLIMETRE) / 2;
  }

  @Override
  public List<Advice> advice() {
    return Waste.of(this);
  }

  @Override
  public Working working() {
    return Working.of(
        new WorkedLine(
            "rounds",
            "row by row",
            rows() + " rows = " + pieces() + " rounds, at most " + upperBound(),
            "geometry"));
  }

  @Override
  public String describe(AmountFormat format) {
    requireNonNull(format, "format");
    return pieces()
        + " rounds of "
        + format.length(diameter)
        + (nested ? ", nested rows" : ", square rows");
  }

  /** {@code 23 rounds of 80 mm, nested rows}. */
  @Override
  public String toString() {
    return describe(AmountFormat.metric());
  }
}
