package org.tourage.makeup;

import static org.tourage.quantity.BakeryUnits.MILLIMETRE;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Extent;

/**
 * How many pieces go on a tray with room to grow. A piece that grows to so many times its volume is
 * taken to grow alike in all directions, by the cube root; the gap is what is left between grown
 * pieces and to the rim.
 *
 * @param tray the inside of the tray
 * @param piece the piece when it is set on the tray
 * @param growth its volume after proof and bake by its volume now, at least 1
 * @param gap the gap between grown pieces, 0 or more
 */
public record TrayPlan(Extent tray, Extent piece, double growth, Amount<Length> gap)
    implements Serializable {

  /**
   * Checks the growth and the gap.
   *
   * @param tray the inside of the tray
   * @param piece the piece when it is set on the tray
   * @param growth its volume after proof and bake by its volume now, at least 1
   * @param gap the gap between grown pieces, 0 or more
   */
  public TrayPlan {
    if (!(growth >= 1) || Double.isInfinite(growth) || gap.value() < 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "pieces can't grow so",
          growth + " times the volume, gap " + gap,
          "give a growth from 1 up and a gap from 0 mm up");
    }
  }

  /**
   * A plan.
   *
   * @param tray the inside of the tray
   * @param piece the piece when it is set on the tray
   * @param growth its volume after proof and bake by its volume now, at least 1
   * @param gap the gap between grown pieces, 0 or more
   * @return the plan
   */
  public static TrayPlan of(Extent tray, Extent piece, double growth, Quantity<Length> gap) {
    return new TrayPlan(tray, piece, growth, Amount.from(gap));
  }

  private int along(Amount<Length> side, Amount<Length> piece) {
    double g = gap.in(MILLIMETRE);
    double grown = piece.in(MILLIMETRE) * Math.cbrt(growth);
    return Math.max(0, Shape.fit((side.in(MILLIMETRE) - g) / (grown + g)));
  }

  private int straight() {
    return along(tray.length(), piece.length()) * along(tray.width(), piece.width());
  }

  private int turned() {
    return along(tray.length(), piece.width()) * along(tray.width(), piece.length());
  }

  /**
   * How many pieces go on a tray, set the better way.
   *
   * @return the number, 0 if not one fits
   */
  public int perTray() {
    return Math.max(straight(), turned());
  }

  /**
   * How many trays so many pieces need.
   *
   * @param pieces how many pieces, 0 or more
   * @return the trays
   * @throws BakeryException if not one piece fits a tray
   */
  public int trays(int pieces) {
    if (perTray() == 0) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "not one piece fits the tray",
          piece + " on " + tray,
          "use a larger tray");
    }
    return (pieces + perTray() - 1) / perTray();
  }

  /** {@code 6 on a tray, 3 by 2 …}. */
  @Override
  public String toString() {
    boolean better = turned() > straight();
    int rows = along(tray.length(), better ? piece.width() : piece.length());
    int columns = along(tray.width(), better ? piece.length() : piece.width());
    return perTray()
        + " on a tray, "
        + rows
        + " by "
        + columns
        + ", "
        + AmountFormat.metric().length(gap)
        + " apart when grown";
  }
}
