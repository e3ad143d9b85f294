package org.tourage.oven;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.FRACTION;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Numbers;

/**
 * What a piece sits on or in, and what stands beside it. The face that is covered gets its heat
 * through a sheet, a stone or the wall of a tin, and gives no vapour; the rest is open. Neighbours
 * shade the sides: the heated side is smaller by a stated share.
 *
 * <p>All coefficients are usual figures (common practice): a baking sheet or a tin takes heat from
 * the oven by convection and by radiation with the emissivity of its metal (bright tin 0.1 to 0.3,
 * used steel 0.6 to 0.8, dark 0.9) and gives it on through a thin gap of air, fat or paper. A stone
 * gives heat from its store, √(λ·ρ·c/(π·t)) W/(m²·K) after the time t (H.S. Carslaw and J.C.
 * Jaeger, Conduction of Heat in Solids, 1959, the half-space, from memory), and is heated from
 * below.
 *
 * @param kind what it is
 * @param contact between what covers the face and the piece, W/(m²·K), positive
 * @param emissivity of the metal, 0 to 1; not read for a stone
 * @param neighbours the share of the sides that neighbours shade, 0 to 1
 */
public record Seat(Kind kind, double contact, double emissivity, double neighbours)
    implements Serializable {
  /** What it is. */
  public enum Kind {
    /** Nothing: all faces are open, as on a thin grid. */
    GRID("on a grid"),
    /** A sheet of metal below. */
    SHEET("on a baking sheet"),
    /** A hot stone or hearth below. */
    STONE("on stone"),
    /** A tin: below and around. */
    TIN("in a tin");

    private final String words;

    Kind(String words) {
      this.words = words;
    }
  }

  /** On a thin grid: open on all sides. */
  public static final Seat GRID = new Seat(Kind.GRID, 100, 0, 0);

  /** On a sheet of used steel or aluminium. */
  public static final Seat SHEET = new Seat(Kind.SHEET, 100, 0.5, 0);

  /** On the stone of a hearth, heated through. */
  public static final Seat STONE = new Seat(Kind.STONE, 80, 0, 0);

  /** In a tin of bright or little used metal, standing free. */
  public static final Seat TIN = new Seat(Kind.TIN, 80, 0.4, 0);

  /** √(λ·ρ·c) of a hearth stone, W·√s/(m²·K): λ 1, ρ 1700, c 840 (handbook values, from memory). */
  static final double STONE_EFFUSIVITY = 1200;

  /** λ/thickness of a stone of 25 mm that is heated from below, W/(m²·K). */
  static final double STONE_THROUGH = 15;

  /**
   * Checks the figures.
   *
   * @param kind what it is
   * @param contact between what covers the face and the piece, W/(m²·K), positive
   * @param emissivity of the metal, 0 to 1; not read for a stone
   * @param neighbours the share of the sides that neighbours shade, 0 to 1
   */
  public Seat {
    requireNonNull(kind, "kind");
    boolean fits =
        contact > 0
            && contact <= 2000
            && emissivity >= 0
            && emissivity <= 1
            && neighbours >= 0
            && neighbours <= 1;
    if (!fits) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no piece sits so",
          contact + " W/(m²·K), emissivity " + emissivity + ", neighbours " + neighbours,
          "give a contact above 0 and up to 2000 W/(m²·K), shares from 0 to 1");
    }
  }

  /**
   * The same with neighbours.
   *
   * @param share how much of the sides they shade: about 30 % on a full sheet, all where they touch
   * @return the seat
   */
  public Seat withNeighbours(Quantity<Dimensionless> share) {
    return new Seat(kind, contact, emissivity, FRACTION.measure("the share", share));
  }

  /**
   * The same of another metal.
   *
   * @param value its emissivity, 0 to 1
   * @return the seat
   */
  public Seat withEmissivity(double value) {
    return new Seat(kind, contact, value, neighbours);
  }

  /**
   * The same with another contact.
   *
   * @param value W/(m²·K)
   * @return the seat
   */
  public Seat withContact(double value) {
    return new Seat(kind, value, emissivity, neighbours);
  }

  /** The share of the surface that is covered. */
  double covered(double bottom, double sides) {
    return switch (kind) {
      case GRID -> 0;
      case SHEET, STONE -> bottom;
      case TIN -> bottom + sides;
    };
  }

  /** How much of the open face is heated. */
  double openShare(double top, double sides, double bottom) {
    return switch (kind) {
      case GRID -> 1 - neighbours * sides / (top + sides + bottom);
      case SHEET, STONE -> 1 - neighbours * sides / (top + sides);
      case TIN -> 1;
    };
  }

  /** How much of the covered face is heated. */
  double coveredShare(double sides, double bottom) {
    return kind == Kind.TIN ? 1 - neighbours * sides / (bottom + sides) : 1;
  }

  /** {@code on a baking sheet, neighbours shade 30 % of the sides}. */
  @Override
  public String toString() {
    return kind.words
        + (neighbours > 0
            ? ", neighbours shade " + Numbers.decimals(100 * neighbours, 0) + " % of the sides"
            : "");
  }
}
