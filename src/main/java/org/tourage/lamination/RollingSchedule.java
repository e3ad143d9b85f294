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
import org.tourage.quantity.Given;

/**
 * The gaps of a reversible sheeter, or the heights for a pin, from one thickness to another, in
 * equal reductions: h_k = h_0 · (h_n / h_0)^(k/n) with the fewest passes n that keep each reduction
 * within the limit. Common practice: a pass at most halves the sheet, after the last fold it takes
 * at most a third (1 : 1.5). The passes go to and fro along the length; the width stays.
 *
 * <p>What is thicker than the sheeter opens is first brought to its opening with the pin, and what
 * is to be thinner than its least gap is finished with the pin.
 *
 * @param from the thickness before
 * @param to the thickness after
 * @param limit the greatest reduction of a pass, gap in by gap out, above 1
 * @param length the length of the sheet before the first pass
 * @param rollers what it is rolled with
 */
public record RollingSchedule(
    Amount<Length> from, Amount<Length> to, double limit, Amount<Length> length, Rollers rollers)
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
   * @param by what it is made with: the rollers of the schedule, or a pin where they can't
   */
  public record Pass(
      int number, Amount<Length> gap, Amount<Length> length, boolean forth, Rollers by)
      implements Serializable {
    /**
     * Checks that nothing is missing.
     *
     * @param number from 1
     * @param gap the gap, which is the thickness afterwards
     * @param length the length afterwards
     * @param forth whether it goes forth; every other pass comes back
     * @param by what it is made with: the rollers of the schedule, or a pin where they can't
     */
    public Pass {
      requireNonNull(gap, "gap");
      requireNonNull(length, "length");
      requireNonNull(by, "by");
    }

    /** {@code pass 1 forth: gap 20 mm}. */
    @Override
    public String toString() {
      return "pass "
          + number
          + (forth ? " forth" : " back")
          + (by instanceof Rollers.Pin ? ": pin to " : ": gap ")
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
   * @param rollers what it is rolled with
   */
  public RollingSchedule {
    requireNonNull(from, "from");
    requireNonNull(to, "to");
    requireNonNull(length, "length");
    requireNonNull(rollers, "rollers");
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
   * A schedule of gaps that a sheeter of any opening has.
   *
   * @param from the thickness before
   * @param to the thickness after
   * @param limit the greatest reduction of a pass, gap in by gap out, above 1
   * @param length the length of the sheet before the first pass
   * @return the schedule
   */
  public static RollingSchedule of(
      Quantity<Length> from, Quantity<Length> to, double limit, Quantity<Length> length) {
    requireNonNull(from, "from");
    requireNonNull(to, "to");
    requireNonNull(length, "length");
    Amount<Length> thick = Given.length("the from", from);
    Amount<Length> thin = Given.length("the to", to);
    Rollers.Sheeter any = Rollers.PASTRY_SHEETER;
    boolean open = thick.compareTo(any.opening()) > 0;
    boolean close = thin.value() > 0 && thin.compareTo(any.leastGap()) < 0;
    Rollers wide =
        new Rollers.Sheeter(
            open ? thick : any.opening(),
            close ? thin : any.leastGap(),
            any.width(),
            any.largestReduction());
    return new RollingSchedule(thick, thin, limit, Given.length("the length", length), wide);
  }

  /**
   * A schedule for rollers, each pass as far as they and the common limit of a half allow.
   *
   * @param from the thickness before
   * @param to the thickness after
   * @param length the length of the sheet before the first pass
   * @param rollers what it is rolled with
   * @return the schedule
   * @throws BakeryException if the sheet would become thicker
   */
  public static RollingSchedule by(
      Rollers rollers, Quantity<Length> from, Quantity<Length> to, Quantity<Length> length) {
    requireNonNull(rollers, "rollers");
    requireNonNull(from, "from");
    requireNonNull(to, "to");
    requireNonNull(length, "length");
    return new RollingSchedule(
        Given.length("the from", from),
        Given.length("the to", to),
        Math.min(USUAL_LIMIT, rollers.limit()),
        Given.length("the length", length),
        rollers);
  }

  /**
   * The same with gentler passes, as after the last fold: at most a third is taken off.
   *
   * @return the schedule
   */
  public RollingSchedule gentle() {
    return new RollingSchedule(from, to, Math.min(limit, GENTLE_LIMIT), length, rollers);
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
    return StrictMath.log(reduction());
  }

  /**
   * The passes.
   *
   * @return in order; none if the thickness stays
   */
  public List<Pass> passes() {
    List<Pass> passes = new ArrayList<>();
    double thick = from.in(METRE);
    double thin = to.in(METRE);
    if (rollers instanceof Rollers.Sheeter sheeter) {
      double opening = Math.max(thin, Math.min(thick, sheeter.opening().in(METRE)));
      double least = Math.min(opening, Math.max(thin, sheeter.leastGap().in(METRE)));
      add(passes, thick, opening, Rollers.PIN);
      add(passes, opening, least, sheeter);
      add(passes, least, thin, Rollers.PIN);
    } else {
      add(passes, thick, thin, rollers);
    }
    return passes;
  }

  /** Equal reductions from one thickness in metres to another. */
  private void add(List<Pass> passes, double thick, double thin, Rollers by) {
    double total = thick / thin;
    // forgives the rounding of a reduction that is a whole power of the limit
    int n = (int) Math.ceil(StrictMath.log(total) / StrictMath.log(limit) - 1e-9);
    for (int k = 1; k <= n; k++) {
      double gap = k == n ? thin : thick / StrictMath.pow(total, (double) k / n);
      passes.add(
          new Pass(
              passes.size() + 1,
              METRE.amount(gap).to(MILLIMETRE),
              METRE.amount(length.in(METRE) * from.in(METRE) / gap).to(MILLIMETRE),
              passes.size() % 2 == 0,
              by));
    }
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>();
    AmountFormat format = AmountFormat.sideBySide();
    if (rollers instanceof Rollers.Sheeter sheeter && from.compareTo(sheeter.opening()) > 0) {
      advice.add(
          Advice.of(
              "PACKET_OVER_OPENING",
              "the packet is "
                  + format.length(from)
                  + " thick and the sheeter opens to "
                  + format.length(sheeter.opening()),
              "Bring it to the opening with the pin first, or roll thinner before the fold"));
    }
    if (to.compareTo(rollers.leastGap()) < 0) {
      advice.add(
          Advice.of(
              "SHEET_UNDER_GAP",
              "the sheet is to be "
                  + format.length(to)
                  + " thin, and "
                  + (rollers instanceof Rollers.Pin ? "a pin is even" : "the sheeter closes")
                  + " down to "
                  + format.length(rollers.leastGap()),
              "Leave it thicker, or expect uneven pieces"));
    }
    if (reduction() > REST_STRETCH * (1 + 1e-9)) {
      advice.add(
          Advice.of(
              "REST_BETWEEN",
              "the sheet is stretched "
                  + Numbers.significant(reduction(), 2)
                  + " times in one direction",
              "Rest it cold for "
                  + REST_MINUTES_LOW
                  + " to "
                  + REST_MINUTES_HIGH
                  + " min half-way if it springs back"));
    }
    return advice;
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
            "equal reductions, counted for pin and sheeter apart; limit by common practice"));
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
