package org.tourage.oven;

import static org.tourage.quantity.BakeryUnits.JOULE;
import static org.tourage.quantity.BakeryUnits.KILOGRAM;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;
import org.tourage.quantity.BakeryUnits;

/**
 * How an order goes into an oven: pieces on trays, trays at once, loads one after another.
 *
 * @param pieces how many pieces in all, at least 1
 * @param perTray how many on a tray, at least 1
 * @param trays how many trays the oven takes at once, at least 1
 */
public record OvenLoad(int pieces, int perTray, int trays) implements Serializable {
  /**
   * Checks the numbers.
   *
   * @param pieces how many pieces in all, at least 1
   * @param perTray how many on a tray, at least 1
   * @param trays how many trays the oven takes at once, at least 1
   */
  public OvenLoad {
    if (pieces < 1 || perTray < 1 || trays < 1) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no oven is loaded so",
          pieces + " pieces, " + perTray + " on a tray, " + trays + " trays",
          "give whole numbers from 1 on");
    }
  }

  /**
   * How often the oven is filled.
   *
   * @return the loads, the last may be smaller
   */
  public int loads() {
    return (int) ((pieces - 1L) / ((long) perTray * trays) + 1);
  }

  /**
   * How many pieces are in the oven at once.
   *
   * @return the pieces of a full load, or all of them where they fit
   */
  public int atOnce() {
    return (int) Math.min(pieces, (long) perTray * trays);
  }

  /**
   * How long the oven bakes, without reloading and reheating.
   *
   * @param bake the bake of a piece
   * @return loads times the time of a bake
   */
  public Amount<Time> baking(Bake bake) {
    return MINUTE.amount(loads() * bake.end().time().in(MINUTE));
  }

  /**
   * What the pieces take.
   *
   * @param bake the bake of a piece
   * @param piece the mass of a raw piece
   * @return the energy of all pieces
   */
  public Amount<Energy> taken(Bake bake, Quantity<Mass> piece) {
    return JOULE
        .amount(bake.heatTaken() * KILOGRAM.measure("the piece", piece) * pieces)
        .to(BakeryUnits.KILOJOULE);
  }

  /**
   * The energy of the whole order: heating up once, what the oven loses during all loads, and what
   * the pieces take.
   *
   * @param bake the bake of a piece
   * @param room the temperature of the room
   * @param piece the mass of a raw piece
   * @return the energy
   */
  public Amount<Energy> energy(Bake bake, Quantity<Temperature> room, Quantity<Mass> piece) {
    Amount<Energy> none = JOULE.amount(0);
    double once = bake.oven().energy(bake.profile(), room, none).in(JOULE);
    double heating = bake.oven().heatingUp(bake.profile(), room).in(JOULE);
    return JOULE
        .amount(heating + loads() * (once - heating) + taken(bake, piece).in(JOULE))
        .to(BakeryUnits.KILOJOULE);
  }

  /**
   * The mean power that the pieces of a full load ask of the oven; above its own power it can't
   * keep its set point.
   *
   * @param bake the bake of a piece
   * @param piece the mass of a raw piece
   * @return watts
   */
  public double watts(Bake bake, Quantity<Mass> piece) {
    return bake.heatTaken()
        * KILOGRAM.measure("the piece", piece)
        * atOnce()
        / (60 * bake.end().time().in(MINUTE));
  }

  /** {@code 24 pieces, 6 on a tray, 2 trays at once: 2 loads}. */
  @Override
  public String toString() {
    return pieces
        + " pieces, "
        + perTray
        + " on a tray, "
        + trays
        + " trays at once: "
        + loads()
        + " loads";
  }
}
