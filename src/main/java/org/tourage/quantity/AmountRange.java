package org.tourage.quantity;

import java.io.Serializable;
import javax.measure.Quantity;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * A range of amounts, both ends included.
 *
 * @param low the lower end
 * @param high the upper end, not below the lower
 * @param <Q> the kind of quantity
 */
public record AmountRange<Q extends Quantity<Q>>(Amount<Q> low, Amount<Q> high)
    implements Serializable {

  /**
   * Checks that the ends are in order.
   *
   * @param low the lower end
   * @param high the upper end, not below the lower
   */
  public AmountRange {
    if (low.compareTo(high) > 0) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "a range must go up",
          low + " to " + high,
          "put the smaller end first");
    }
  }

  /**
   * Whether an amount lies in the range.
   *
   * @param amount the amount
   * @return true if it does
   */
  public boolean contains(Quantity<Q> amount) {
    Amount<Q> value = Amount.from(amount);
    return low.compareTo(value) <= 0 && high.compareTo(value) >= 0;
  }

  /** {@code 1 h to 2 h}, or one amount where both ends are the same. */
  @Override
  public String toString() {
    return low.equals(high) ? low.toString() : low + " to " + high;
  }
}
