package org.tourage.makeup;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.MILLIMETRE;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Extent;
import org.tourage.quantity.Given;

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
    requireNonNull(tray, "tray");
    requireNonNull(piece, "piece");
    requireNonNull(gap, "gap");
    if (!(growth >= 1) || Double.isInfinite(growth) || gap.value() < 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "pieces can't grow so",
          growth + " times the volume, gap " + gap,
          "give a growth from 1 up and a gap from 0 mm up");
    }
    double area = tray.length().in(MILLIMETRE) * tray.width().in(MILLIMETRE);
    double each = piece.length().in(MILLIMETRE) * piece.width().in(MILLIMETRE);
    CuttingPlan.checkOrder((long) Math.max(1, area / each), 1);
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
    requireNonNull(tray, "tray");
    requireNonNull(piece, "piece");
    requireNonNull(gap, "gap");
    return new TrayPlan(tray, piece, growth, Given.length("the gap", gap));
  }

  /**
   * A plan for pieces that were rolled up, lying side by side.
   *
   * @param tray the inside of the tray
   * @param coil the piece
   * @param growth its volume after proof and bake by its volume now, at least 1
   * @param gap the gap between grown pieces, 0 or more
   * @return the plan
   */
  public static TrayPlan of(Extent tray, Coil coil, double growth, Quantity<Length> gap) {
    requireNonNull(tray, "tray");
    requireNonNull(coil, "coil");
    requireNonNull(gap, "gap");
    return of(tray, new Extent(coil.width(), coil.diameter()), growth, gap);
  }

  /**
   * How the pieces stand on a tray, spread evenly.
   *
   * @param alongLength pieces along the length of the tray
   * @param alongWidth pieces along its width
   * @param piece the piece as it is set, turned where that gives more
   * @param apartLengthwise the bare tray between two neighbours along the length when they are set
   * @param apartCrosswise the same along the width
   * @param grownApart what is left of the lesser of the two between grown neighbours, and to the
   *     rim
   */
  public record Layout(
      int alongLength,
      int alongWidth,
      Extent piece,
      Amount<Length> apartLengthwise,
      Amount<Length> apartCrosswise,
      Amount<Length> grownApart)
      implements Serializable {
    /**
     * Checks that nothing is missing.
     *
     * @param alongLength pieces along the length of the tray
     * @param alongWidth pieces along its width
     * @param piece the piece as it is set, turned where that gives more
     * @param apartLengthwise the bare tray between two neighbours along the length when they are
     *     set
     * @param apartCrosswise the same along the width
     * @param grownApart what is left of the lesser of the two between grown neighbours, and to the
     *     rim
     */
    public Layout {
      requireNonNull(piece, "piece");
      requireNonNull(apartLengthwise, "apartLengthwise");
      requireNonNull(apartCrosswise, "apartCrosswise");
      requireNonNull(grownApart, "grownApart");
    }

    /** {@code 8 by 2, 20 mm apart when grown}. */
    @Override
    public String toString() {
      AmountFormat format = AmountFormat.metric();
      return alongLength
          + " by "
          + alongWidth
          + ", set "
          + format.length(apartLengthwise)
          + " and "
          + format.length(apartCrosswise)
          + " apart, "
          + format.length(grownApart)
          + " when grown";
    }
  }

  private double stretch() {
    return Math.cbrt(growth);
  }

  private int along(Amount<Length> side, Amount<Length> piece) {
    double g = gap.in(MILLIMETRE);
    double grown = piece.in(MILLIMETRE) * stretch();
    return Math.max(0, Shape.fit((side.in(MILLIMETRE) - g) / (grown + g)));
  }

  private long count(Extent way) {
    return (long) along(tray.length(), way.length()) * along(tray.width(), way.width());
  }

  private Extent turned() {
    return new Extent(/* length= */ piece.width(), /* width= */ piece.length());
  }

  private Extent better() {
    return count(turned()) > count(piece) ? turned() : piece;
  }

  /**
   * How many pieces go on a tray, set the better way.
   *
   * @return the number, 0 if not one fits
   */
  public int perTray() {
    return Math.toIntExact(count(better()));
  }

  /**
   * How the pieces of a full tray stand.
   *
   * @return rows, columns and the distances between neighbours
   * @throws BakeryException if not one piece fits a tray
   */
  public Layout layout() {
    checkFits();
    Extent way = better();
    int columns = along(tray.length(), way.length());
    int rows = along(tray.width(), way.width());
    double lengthwise = bare(tray.length(), way.length(), columns);
    double crosswise = bare(tray.width(), way.width(), rows);
    double grown =
        Math.min(
            lengthwise - (stretch() - 1) * way.length().in(MILLIMETRE),
            crosswise - (stretch() - 1) * way.width().in(MILLIMETRE));
    return new Layout(
        columns,
        rows,
        way,
        MILLIMETRE.amount(lengthwise),
        MILLIMETRE.amount(crosswise),
        MILLIMETRE.amount(grown));
  }

  /**
   * The bare tray between two pieces that grow to gaps all alike, those to the rim among them: what
   * a grown gap is, and what a piece grows.
   */
  private double bare(Amount<Length> side, Amount<Length> piece, int pieces) {
    double set = piece.in(MILLIMETRE);
    double grown = set * stretch();
    return (side.in(MILLIMETRE) - pieces * grown) / (pieces + 1) + grown - set;
  }

  private void checkFits() {
    if (perTray() == 0) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "not one piece fits the tray",
          piece + " on " + tray,
          "use a larger tray");
    }
  }

  /**
   * How many trays so many pieces need.
   *
   * @param pieces how many pieces, 0 or more
   * @return the trays
   * @throws BakeryException if not one piece fits a tray
   */
  public int trays(int pieces) {
    checkFits();
    return shared(pieces, perTray());
  }

  /**
   * How often the oven is filled for so many pieces.
   *
   * @param pieces how many pieces, 0 or more
   * @param traysAtOnce how many trays the oven takes, 1 or more
   * @return the loads: pieces by what all trays of a load take, rounded up
   * @throws BakeryException if not one piece fits a tray, or the oven takes no tray
   */
  public int loads(int pieces, int traysAtOnce) {
    if (traysAtOnce < 1) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "the oven must take a tray",
          traysAtOnce + " trays at once",
          "give 1 or more");
    }
    checkFits();
    return shared(pieces, (long) perTray() * traysAtOnce);
  }

  /**
   * How many pieces are in the fullest load.
   *
   * @param pieces how many pieces, 0 or more
   * @param traysAtOnce how many trays the oven takes, 1 or more
   * @return the pieces when all loads are as alike as can be
   * @throws BakeryException if not one piece fits a tray, or the oven takes no tray
   */
  public int perLoad(int pieces, int traysAtOnce) {
    int loads = loads(pieces, traysAtOnce);
    return loads == 0 ? 0 : shared(pieces, loads);
  }

  private static int shared(int pieces, long each) {
    if (pieces < 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "there are no fewer pieces than none",
          pieces + " pieces",
          "give 0 or more");
    }
    return (int) ((pieces + each - 1) / each);
  }

  /** {@code 16 on a tray, 8 by 2, 20 mm apart when grown}. */
  @Override
  public String toString() {
    Extent way = better();
    return perTray()
        + " on a tray, "
        + along(tray.length(), way.length())
        + " by "
        + along(tray.width(), way.width())
        + ", "
        + AmountFormat.metric().length(gap)
        + " apart when grown";
  }
}
