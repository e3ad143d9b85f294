package org.tourage.lamination;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.MILLIMETRE;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Given;

/**
 * What dough is rolled with: a {@link Sheeter}, which opens so far and closes so far, or a {@link
 * Pin}. Figures of the trade are common practice: a sheeter for pastry opens to 40 to 50 mm and
 * takes a quarter to a third at a pass, at most a half.
 */
public sealed interface Rollers extends Serializable permits Rollers.Sheeter, Rollers.Pin {

  /**
   * A reversible sheeter for pastry: opens to 45 mm, closes to 1 mm, belt 600 mm wide, at most a
   * half at a pass (common practice).
   */
  Sheeter PASTRY_SHEETER =
      new Sheeter(
          MILLIMETRE.amount(45), MILLIMETRE.amount(1), MILLIMETRE.amount(600), PERCENT.amount(50));

  /**
   * A pin with a barrel of 450 mm: even down to about 2 mm, at most a half between two looks at the
   * thickness (common practice).
   */
  Pin PIN = new Pin(MILLIMETRE.amount(450), MILLIMETRE.amount(2), PERCENT.amount(50));

  /**
   * The widest sheet that is rolled at once.
   *
   * @return the width of the belt, or of the barrel of a pin, which rolls wider sheets in two
   *     tracks
   */
  Amount<Length> width();

  /**
   * The thinnest sheet.
   *
   * @return the least gap, or what a hand can still roll evenly
   */
  Amount<Length> leastGap();

  /**
   * What a pass may take off at most.
   *
   * @return the share of the thickness, above 0 % and below 100 %
   */
  Amount<Dimensionless> largestReduction();

  /**
   * The greatest reduction of a pass.
   *
   * @return thickness before by thickness after, above 1
   */
  default double limit() {
    return 1 / (1 - largestReduction().in(FRACTION));
  }

  /**
   * A sheeter.
   *
   * @param opening the largest opening, greater than the least gap
   * @param leastGap the least gap, positive
   * @param width the width of the belt, positive
   * @param largestReduction the share that a pass takes off at most
   */
  record Sheeter(
      Amount<Length> opening,
      Amount<Length> leastGap,
      Amount<Length> width,
      Amount<Dimensionless> largestReduction)
      implements Rollers {

    /**
     * Checks the figures.
     *
     * @param opening the largest opening, greater than the least gap
     * @param leastGap the least gap, positive
     * @param width the width of the belt, positive
     * @param largestReduction the share that a pass takes off at most
     */
    public Sheeter {
      requireNonNull(leastGap, "leastGap");
      requireNonNull(width, "width");
      requireNonNull(largestReduction, "largestReduction");
      requireNonNull(opening, "opening");
      check(width, leastGap, largestReduction);
      if (opening.compareTo(leastGap) <= 0) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            "a sheeter opens further than it closes",
            "opening " + opening + ", least gap " + leastGap,
            "a sheeter for pastry opens to 40 to 50 mm");
      }
    }

    /**
     * A sheeter.
     *
     * @param opening the largest opening, greater than the least gap
     * @param leastGap the least gap, positive
     * @param width the width of the belt, positive
     * @param largestReduction the share that a pass takes off at most
     * @return the sheeter
     * @throws BakeryException if a figure makes no sense
     */
    public static Sheeter of(
        Quantity<Length> opening,
        Quantity<Length> leastGap,
        Quantity<Length> width,
        Quantity<Dimensionless> largestReduction) {
      requireNonNull(opening, "opening");
      requireNonNull(leastGap, "leastGap");
      requireNonNull(width, "width");
      requireNonNull(largestReduction, "largestReduction");
      return new Sheeter(
          Given.length("the opening", opening),
          Given.length("the least gap", leastGap),
          Given.length("the width", width),
          Given.ratio("the largest reduction", largestReduction));
    }

    /** {@code sheeter, 1 mm to 45 mm, belt 600 mm}. */
    @Override
    public String toString() {
      AmountFormat format = AmountFormat.metric();
      return "sheeter, "
          + format.length(leastGap)
          + " to "
          + format.length(opening)
          + ", belt "
          + format.length(width);
    }
  }

  /**
   * A rolling pin.
   *
   * @param width the width of the barrel, positive
   * @param leastGap the thickness down to which it is even, positive
   * @param largestReduction the share that is taken off between two looks at the thickness, at most
   */
  record Pin(Amount<Length> width, Amount<Length> leastGap, Amount<Dimensionless> largestReduction)
      implements Rollers {

    /**
     * Checks the figures.
     *
     * @param width the width of the barrel, positive
     * @param leastGap the thickness down to which it is even, positive
     * @param largestReduction the share that is taken off between two looks at the thickness, at
     *     most
     */
    public Pin {
      requireNonNull(width, "width");
      requireNonNull(leastGap, "leastGap");
      requireNonNull(largestReduction, "largestReduction");
      check(width, leastGap, largestReduction);
    }

    /**
     * A pin.
     *
     * @param width the width of the barrel, positive
     * @param leastGap the thickness down to which it is even, positive
     * @param largestReduction the share that is taken off between two looks at the thickness, at
     *     most
     * @return the pin
     * @throws BakeryException if a figure makes no sense
     */
    public static Pin of(
        Quantity<Length> width,
        Quantity<Length> leastGap,
        Quantity<Dimensionless> largestReduction) {
      requireNonNull(width, "width");
      requireNonNull(leastGap, "leastGap");
      requireNonNull(largestReduction, "largestReduction");
      return new Pin(
          Given.length("the width", width),
          Given.length("the least gap", leastGap),
          Given.ratio("the largest reduction", largestReduction));
    }

    /** {@code pin of 450 mm}. */
    @Override
    public String toString() {
      return "pin of " + AmountFormat.metric().length(width);
    }
  }

  private static void check(
      Amount<Length> width, Amount<Length> leastGap, Amount<Dimensionless> reduction) {
    double share = reduction.in(FRACTION);
    if (width.value() <= 0 || leastGap.value() <= 0 || !(share > 0 && share < 1)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "nothing can be rolled with this",
          "width " + width + ", least gap " + leastGap + ", reduction " + reduction,
          "give positive lengths and a reduction above 0 % and below 100 %, commonly 25 % to 50 %");
    }
  }
}
