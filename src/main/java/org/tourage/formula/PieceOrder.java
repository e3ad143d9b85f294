package org.tourage.formula;

import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Given;

/**
 * How many pieces are wanted and what each weighs, raw or baked, with what is lost on the way: m =
 * n · b / ((1 − L)(1 − q)), common practice.
 *
 * @param pieces how many, 1 to 1,000,000
 * @param pieceMass the mass of one piece
 * @param bakeLoss L, the share of the raw mass that the oven takes; 0 for a raw piece mass
 * @param processLoss q, the share of the dough that stays on bench, tools and as trim
 */
public record PieceOrder(
    int pieces,
    Amount<Mass> pieceMass,
    Amount<Dimensionless> bakeLoss,
    Amount<Dimensionless> processLoss)
    implements Serializable {

  /** More than any bakery makes of one product in a day (common practice). */
  public static final int MOST = 1_000_000;

  /**
   * Checks the ranges.
   *
   * @param pieces how many, 1 to 1,000,000
   * @param pieceMass the mass of one piece
   * @param bakeLoss L, the share of the raw mass that the oven takes; 0 for a raw piece mass
   * @param processLoss q, the share of the dough that stays on bench, tools and as trim
   */
  public PieceOrder {
    if (pieces < 1 || pieces > MOST) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          pieces < 1 ? "no pieces" : "too many pieces",
          pieces + " pieces",
          "give a number from 1 to " + MOST);
    }
    if (pieceMass.value() <= 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a piece must weigh something",
          pieceMass.toString(),
          "give the mass of one piece, for example 80 g");
    }
    checkLoss("bake loss", bakeLoss);
    checkLoss("process loss", processLoss);
  }

  private static void checkLoss(String name, Amount<Dimensionless> loss) {
    double share = loss.in(FRACTION);
    if (share < 0 || share >= 1) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "the " + name + " can't be",
          loss.to(PERCENT).toString(),
          "give 0 % or more, below 100 %");
    }
  }

  /**
   * Pieces by their mass before baking.
   *
   * @param pieces how many
   * @param pieceMass the raw mass of one
   * @return the order, without losses
   */
  public static PieceOrder raw(int pieces, Quantity<Mass> pieceMass) {
    return new PieceOrder(
        pieces, Given.mass("the piece mass", pieceMass), PERCENT.amount(0), PERCENT.amount(0));
  }

  /**
   * Pieces by their mass after baking.
   *
   * @param pieces how many
   * @param pieceMass the baked mass of one
   * @param bakeLoss the share of the raw mass that the oven takes
   * @return the order, without process loss
   */
  public static PieceOrder baked(
      int pieces, Quantity<Mass> pieceMass, Quantity<Dimensionless> bakeLoss) {
    return new PieceOrder(
        pieces,
        Given.mass("the piece mass", pieceMass),
        Given.ratio("the bake loss", bakeLoss),
        PERCENT.amount(0));
  }

  /**
   * The same with process loss.
   *
   * @param loss the share of the dough that does not get into pieces
   * @return the order
   */
  public PieceOrder withProcessLoss(Quantity<Dimensionless> loss) {
    return new PieceOrder(pieces, pieceMass, bakeLoss, Given.ratio("the loss", loss));
  }

  /**
   * The dough to make.
   *
   * @return n · b / ((1 − L)(1 − q)) in grams
   */
  public Amount<Mass> dough() {
    return GRAM.amount(
        pieces
            * pieceMass.in(GRAM)
            / ((1 - bakeLoss.in(FRACTION)) * (1 - processLoss.in(FRACTION))));
  }

  /**
   * How the dough is worked out.
   *
   * @return the worked solution
   */
  public Working working() {
    return Working.of(
        new WorkedLine(
            "m",
            "n · b / ((1 − L)(1 − q))",
            pieces
                + " × "
                + pieceMass
                + " / ((1 − "
                + bakeLoss
                + ")(1 − "
                + processLoss
                + ")) = "
                + dough(),
            "common practice"));
  }

  /** {@code 24 pieces of 80 g, bake loss 12 %, process loss 2 %}. */
  @Override
  public String toString() {
    return pieces
        + " pieces of "
        + pieceMass
        + ", bake loss "
        + bakeLoss
        + ", process loss "
        + processLoss;
  }
}
