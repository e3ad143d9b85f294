package org.tourage.oven;

import static org.tourage.quantity.BakeryUnits.FRACTION;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Numbers;

/**
 * How far a piece springs in the oven: by a figure of one's own, or from the balance of its gas
 * ({@link org.tourage.physics.GasBalance}): what leaves solution, the vapour in the cells, and what
 * yeast still makes until it dies.
 *
 * @param times how many times its volume, 1 to 12 (puff pastry); 0 to take the balance
 * @param saturation how much carbon dioxide is dissolved, as a share of what the water holds, 0 to
 *     1
 * @param perHour gas that the dough makes in an hour at its start, as a share of its volume, 0 to 5
 */
public record OvenRise(double times, double saturation, double perHour) implements Serializable {
  private static final double MOST_TIMES = 12;
  private static final double MOST_PER_HOUR = 5;

  /** A dough that has proofed: its water is full of gas, and it makes its volume in an hour. */
  public static final OvenRise PROOFED = new OvenRise(0, 1, 1);

  /**
   * Checks the figures.
   *
   * @param times how many times its volume, 1 to 12; 0 to take the balance
   * @param saturation how much carbon dioxide is dissolved, 0 to 1
   * @param perHour gas in an hour at its start, as a share of its volume, 0 to 5
   */
  public OvenRise {
    boolean fits =
        (times == 0 || times >= 1 && times <= MOST_TIMES)
            && saturation >= 0
            && saturation <= 1
            && perHour >= 0
            && perHour <= MOST_PER_HOUR;
    if (!fits) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no piece springs so",
          "spring " + times + ", saturation " + saturation + ", " + perHour + " volumes an hour",
          "give a spring from 1 to 12, a saturation from 0 to 1 and 0 to 5 volumes an hour");
    }
  }

  /**
   * By a figure of one's own.
   *
   * @param times how many times its volume, 1 to 12
   * @return the rise
   */
  public static OvenRise fixed(double times) {
    return new OvenRise(times == 0 ? -1 : times, 0, 0);
  }

  /**
   * From the balance of its gas.
   *
   * @param saturation how much carbon dioxide is dissolved, of what the water holds, 0 to 100 %
   * @param perHour gas that it makes in an hour at its start, of its volume, 0 to 500 %
   * @return the rise
   */
  public static OvenRise gas(Quantity<Dimensionless> saturation, Quantity<Dimensionless> perHour) {
    return new OvenRise(
        0,
        FRACTION.measure("the saturation", saturation),
        FRACTION.measure("the per hour", perHour));
  }

  /** Whether the balance decides. */
  boolean balanced() {
    return times == 0;
  }

  /** {@code springs by its gas: 100 % saturated, 1 volumes an hour}. */
  @Override
  public String toString() {
    return balanced()
        ? "springs by its gas: "
            + Numbers.decimals(100 * saturation, 0)
            + " % saturated, "
            + Numbers.significant(perHour, 2)
            + " volumes an hour"
        : "springs × " + Numbers.significant(times, 3);
  }
}
