package org.tourage.lamination;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.METRE;
import static org.tourage.quantity.BakeryUnits.MILLIMETRE;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;

/**
 * The gaps of a reversible sheeter, or the heights for a pin, from one thickness to another, in
 * equal reductions: h_k = h_0 · (h_n / h_0)^(k/n) with the fewest passes n that keep each reduction
 * within the limit. Common practice: a pass at most halves the sheet, after the last fold it takes
 * at most a third (1 : 1.5). The passes go to and fro along the length; the width stays.
 *
 * @param from the thickness before
 * @param to the thickness after
 * @param limit the greatest reduction of a pass, gap in by gap out, above 1
 * @param length the length of the sheet before the first pass
 */
public record RollingSchedule(
    Amount<Length> from, Amount<Length> to, double limit, Amount<Length> length)
    implements Explained, Serializable {

  /** At most halve the sheet in a pass (common practice). */
  public static final double USUAL_LIMIT = 2;

  /** After the last fold (common practice). */
  public static final double GENTLE_LIMIT = 1.5;

  /** The dough wants a rest after so much stretch in one direction (common practice). */
  private static final double REST_STRETCH = 6;

  private static final int REST_MINUTES_LOW = 20;
  private static final int REST_MINUTES_HIGH = 30;

  /**
   * One pass.
   *
   * @param number from 1
   * @param gap the gap, which is the thickness afterwards
   * @param length the length afterwards
   * @param forth whether it goes forth; every other pass comes back
   */
  public record Pass(int number, Amount<Length> gap, Amount<Length> length, boolean forth)
      implements Serializable {
    /** {@code pass 1 forth: gap 20 mm}. */
    @Override
    public String toString() {
      return "pass "
          + number
          + (forth ? " forth" : " back")
          + ": gap "
          + AmountFormat.metric().length(gap);
    }
  }

  /**
   * Checks the thicknesses and the limit.
   *
   * @param from the thickness before
   * @param to the thickness after
   * @param limit the greatest reduction of a pass, gap in by gap out, above 1
   * @param length the length of the sheet before the first pass
   */
  public RollingSchedule {
    requireNonNull(length, "length");
    if (to.value() <= 0 || from.compareTo(to) < 0 || length.value() <= 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "rolling makes a sheet thinner",
          from + " to " + to + ", " + length + " long",
          "give positive lengths, the greater thickness first");
    }
    if (!(limit > 1) || Double.isInfinite(limit)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a pass must take something off",
          "limit " + limit,
          "give a reduction above 1, for example 2 to halve the sheet at most");
    }
  }

  /**
   * A schedule.
   *
   * @param from the thickness before
   * @param to the thickness after
   * @param limit the greatest reduction of a pass, gap in by gap out, above 1
   * @param length the length of the sheet before the first pass
   * @return the schedule
   */
  public static RollingSchedule of(
      Quantity<Length> from, Quantity<Length> to, double limit, Quantity<Length> length) {
    return new RollingSchedule(Amount.from(from), Amount.from(to), limit, Amount.from(length));
  }

  /**
   * How often the sheet is stretched in all.
   *
   * @return thickness before by thickness after, 1 or more
   */
  public double reduction() {
    return from.ratioTo(to);
  }

  /**
   * The true strain along the length.
   *
   * @return ln(h_0 / h_n); across the sheet it is 0
   */
  public double strain() {
    return Math.log(reduction());
  }

  /**
   * The passes.
   *
   * @return in order; none if the thickness stays
   */
  public List<Pass> passes() {
    double total = reduction();
    // forgives the rounding of a reduction that is a whole power of the limit
    int n = (int) Math.ceil(Math.log(total) / Math.log(limit) - 1e-9);
    List<Pass> passes = new ArrayList<>();
    for (int k = 1; k <= n; k++) {
      double part = Math.pow(total, (double) k / n);
      passes.add(
          new Pass(
              k,
              METRE.amount(from.in(METRE) / part).to(MILLIMETRE),
              METRE.amount(length.in(METRE) * part).to(MILLIMETRE),
              k % 2 == 1));
    }
    return passes;
  }

  @Override
  public List<Advice> advice() {
    return reduction() <= REST_STRETCH
        ? List.of()
        : List.of(
            Advice.note(
                "REST_BETWEEN",
                "the sheet is stretched "
                    + Numbers.significant(reduction(), 2)
                    + " times in one direction",
                "Rest it cold for "
                    + REST_MINUTES_LOW
                    + " to "
                    + REST_MINUTES_HIGH
                    + " min half-way if it springs back",
                Advice.COMMON_PRACTICE));
  }

  @Override
  public Working working() {
    return Working.of(
        new WorkedLine(
            "n",
            "ceil(ln(h_0/h_n) / ln r)",
            "ceil(ln("
                + Numbers.significant(reduction(), 4)
                + ") / ln("
                + Numbers.significant(limit, 3)
                + ")) = "
                + passes().size(),
            "equal reductions; limit by common practice"));
  }

  /** {@code 24 mm → 16 → 10.7 … 4 mm}. */
  @Override
  public String toString() {
    AmountFormat format = AmountFormat.metric();
    StringBuilder out = new StringBuilder(format.length(from));
    passes().forEach(p -> out.append(" → ").append(format.length(p.gap())));
    return out.toString();
  }
}
