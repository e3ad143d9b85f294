package org.tourage.quantity;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Iterator;
import java.util.List;
import java.util.PriorityQueue;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.internal.Numbers;

/**
 * A set of masses rounded to the resolution of a balance so that their total is kept: the method of
 * the largest remainder. Each mass is first cut down to a whole number of steps; the steps that the
 * total still lacks go, one each, to the masses with the largest remainders, the earlier line first
 * among equals. The total itself is rounded to the nearest step, half up, which changes nothing
 * where it is a whole number of steps.
 *
 * <p>A mass that is present never becomes nothing: it gets at least one step, taken from the lines
 * that can best spare it, and the result carries advice. Otherwise each mass moves by less than one
 * step.
 *
 * @param exact the masses before rounding
 * @param rounded the masses after rounding, in grams, in the same order
 * @param resolution the step of the balance; of the coarser one where there are two
 * @param steps the step of the balance that each mass is weighed on
 */
public record BalanceRounding(
    List<Amount<Mass>> exact,
    List<Amount<Mass>> rounded,
    Amount<Mass> resolution,
    List<Amount<Mass>> steps)
    implements Explained, Serializable {

  /** A greatest relative error above this share brings advice: common practice. */
  private static final double WIDE_ERROR = 0.05;

  /** Half a step is 2.5 percent of twenty steps; common practice. */
  private static final double SMALL_STEPS = 20;

  /** As many steps as a double counts one by one. */
  private static final double MOST_STEPS = 9e15;

  /** Remainders that differ by less than this share of a step count as equal. */
  private static final double TIE = 1e-9;

  /**
   * Copies the lists.
   *
   * @param exact the masses before rounding
   * @param rounded the masses after rounding, in grams, in the same order
   * @param resolution the step of the balance; of the coarser one where there are two
   * @param steps the step of the balance that each mass is weighed on
   */
  public BalanceRounding {
    exact = List.copyOf(exact);
    rounded = List.copyOf(rounded);
    steps = List.copyOf(steps);
    requireNonNull(resolution, "resolution");
  }

  static double positiveGrams(Quantity<Mass> resolution) {
    double grams = BakeryUnits.GRAM.measure("the resolution", resolution);
    if (grams <= 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "the resolution of a balance must be positive",
          Given.mass("the resolution", resolution).toString(),
          "give its least step, for example 1 g or 0.1 g");
    }
    return grams;
  }

  /**
   * Rounds a set of masses.
   *
   * @param masses the masses, none negative
   * @param resolution the step of the balance, positive
   * @return the rounded masses
   * @throws BakeryException if a mass is negative, or the total has fewer steps than there are
   *     ingredients present
   */
  public static BalanceRounding of(
      List<? extends Quantity<Mass>> masses, Quantity<Mass> resolution) {
    double step = positiveGrams(resolution);
    int n = masses.size();
    List<Amount<Mass>> exact = new ArrayList<>(n);
    double[] steps = new double[n];
    double totalSteps = 0;
    int present = 0;
    for (int i = 0; i < n; i++) {
      Amount<Mass> mass = Amount.from(masses.get(i));
      exact.add(mass);
      steps[i] = mass.in(BakeryUnits.GRAM) / step;
      totalSteps += steps[i];
      present += steps[i] > 0 ? 1 : 0;
      if (steps[i] < 0) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "a mass to be weighed can't be negative",
            mass.toString(),
            "give masses from 0 g up");
      }
    }
    if (totalSteps > MOST_STEPS) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "this balance has too many steps for such a mass",
          Numbers.significant(totalSteps, 3)
              + " steps of "
              + Given.mass("the resolution", resolution),
          "use a coarser balance or make less dough");
    }
    long total = (long) Math.floor(totalSteps + 0.5 + TIE);
    if (total < present) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "this balance can't weigh so small a set of ingredients",
          Numbers.significant(totalSteps * step, 4)
              + " g of "
              + present
              + " ingredients with steps of "
              + Given.mass("the resolution", resolution),
          "use a finer balance or make more dough");
    }
    long[] whole = apportion(steps, total);
    List<Amount<Mass>> rounded = new ArrayList<>(n);
    for (long count : whole) {
      rounded.add(BakeryUnits.GRAM.amount(Numbers.cleanProduct(count, step)));
    }
    Amount<Mass> own = Given.mass("the resolution", resolution);
    return new BalanceRounding(exact, rounded, own, Collections.nCopies(n, own));
  }

  /**
   * Rounds a set of masses that are weighed on two balances. A mass goes on the fine balance if the
   * coarse one could change it by more than 2.5 percent and the fine one can carry it. The total is
   * kept to the step of the coarse balance.
   *
   * @param masses the masses, none negative
   * @param coarse the step of the balance for most of them, positive
   * @param fine the step of the balance for small ones, positive
   * @param mostOnFine what the fine balance can carry
   * @return the rounded masses
   * @throws BakeryException if a mass is negative, or too small for the balances
   */
  public static BalanceRounding of(
      List<? extends Quantity<Mass>> masses,
      Quantity<Mass> coarse,
      Quantity<Mass> fine,
      Quantity<Mass> mostOnFine) {
    double limit =
        Math.min(
            SMALL_STEPS * positiveGrams(coarse),
            BakeryUnits.GRAM.measure("the most on fine", mostOnFine));
    if (positiveGrams(fine) >= positiveGrams(coarse)) {
      return of(masses, coarse);
    }
    List<Quantity<Mass>> small = new ArrayList<>();
    List<Quantity<Mass>> large = new ArrayList<>();
    for (Quantity<Mass> mass : masses) {
      (BakeryUnits.GRAM.measure("the mass", mass) < limit ? small : large).add(mass);
    }
    Iterator<Amount<Mass>> onFine = of(small, fine).rounded.iterator();
    Iterator<Amount<Mass>> onCoarse = of(large, coarse).rounded.iterator();
    List<Amount<Mass>> exact = new ArrayList<>();
    List<Amount<Mass>> rounded = new ArrayList<>();
    List<Amount<Mass>> steps = new ArrayList<>();
    for (Quantity<Mass> mass : masses) {
      boolean isSmall = BakeryUnits.GRAM.measure("the mass", mass) < limit;
      exact.add(Given.mass("the mass", mass));
      rounded.add((isSmall ? onFine : onCoarse).next());
      steps.add(Amount.from(isSmall ? fine : coarse));
    }
    return new BalanceRounding(exact, rounded, Given.mass("the coarse", coarse), steps);
  }

  private static long[] apportion(double[] steps, long total) {
    int n = steps.length;
    long[] whole = new long[n];
    long given = 0;
    for (int i = 0; i < n; i++) {
      double near = Math.rint(steps[i]);
      // 3 g is three steps of 1 g even where the division says 2.9999999999999996
      whole[i] = (long) (Math.abs(steps[i] - near) < TIE ? near : Math.floor(steps[i]));
      if (steps[i] > 0 && whole[i] == 0) {
        whole[i] = 1;
      }
      given += whole[i];
    }
    if (given < total) {
      PriorityQueue<Integer> byRemainder =
          new PriorityQueue<>((a, b) -> compareRemainders(steps, whole, b, a, a - b));
      for (int i = 0; i < n; i++) {
        if (steps[i] > 0) {
          byRemainder.add(i);
        }
      }
      for (; given < total; given++) {
        int i = requireNonNull(byRemainder.poll());
        whole[i]++;
        byRemainder.add(i);
      }
    }
    if (given > total) {
      PriorityQueue<Integer> byLoss =
          new PriorityQueue<>(
              (a, b) -> {
                int order =
                    Double.compare(relativeLoss(steps, whole, a), relativeLoss(steps, whole, b));
                return order == 0 ? a - b : order;
              });
      for (int i = 0; i < n; i++) {
        if (whole[i] > 1) {
          byLoss.add(i);
        }
      }
      for (; given > total; given--) {
        int i = requireNonNull(byLoss.poll());
        whole[i]--;
        if (whole[i] > 1) {
          byLoss.add(i);
        }
      }
    }
    return whole;
  }

  private static int compareRemainders(double[] steps, long[] whole, int a, int b, int tie) {
    double difference = (steps[a] - whole[a]) - (steps[b] - whole[b]);
    return Math.abs(difference) < TIE ? tie : Double.compare(difference, 0);
  }

  private static double relativeLoss(double[] steps, long[] whole, int i) {
    return (steps[i] - (whole[i] - 1)) / steps[i];
  }

  /**
   * The total after rounding.
   *
   * @return the total in grams
   */
  public Amount<Mass> total() {
    double sum = 0;
    for (Amount<Mass> mass : rounded) {
      sum += mass.value();
    }
    return BakeryUnits.GRAM.amount(sum);
  }

  /**
   * The greatest relative error that the rounding made in any line.
   *
   * @return the error, in percent of the line
   */
  public Amount<Dimensionless> greatestError() {
    double greatest = 0;
    for (int i = 0; i < exact.size(); i++) {
      double before = exact.get(i).in(BakeryUnits.GRAM);
      if (before > 0) {
        greatest = Math.max(greatest, Math.abs(rounded.get(i).value() - before) / before);
      }
    }
    return BakeryUnits.PERCENT.amount(greatest * 100);
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>();
    for (int i = 0; i < exact.size(); i++) {
      double before = exact.get(i).in(BakeryUnits.GRAM);
      double after = rounded.get(i).value();
      if (before > 0 && Math.abs(after - before) / before > WIDE_ERROR) {
        advice.add(
            Advice.of(
                "BALANCE_TOO_COARSE",
                "line "
                    + (i + 1)
                    + ": "
                    + Numbers.significant(before, 3)
                    + " g becomes "
                    + Numbers.significant(after, 3)
                    + " g on a balance with steps of "
                    + steps.get(i),
                "Weigh it on a finer balance, or dissolve ten times as much and use a tenth"));
      }
    }
    return advice;
  }

  @Override
  public Working working() {
    double before = 0;
    for (Amount<Mass> mass : exact) {
      before += mass.in(BakeryUnits.GRAM);
    }
    return Working.of(
        new WorkedLine(
            "total",
            "Σ rounded masses, steps of " + resolution,
            Numbers.significant(before, 6)
                + " g → "
                + Numbers.significant(total().value(), 6)
                + " g",
            "largest-remainder method"));
  }

  /** The rounded masses, their total and the greatest error. */
  @Override
  public String toString() {
    return rounded
        + ", total "
        + total()
        + ", greatest error "
        + AmountFormat.metric().percent(greatestError());
  }
}
