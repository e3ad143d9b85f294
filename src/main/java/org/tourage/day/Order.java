package org.tourage.day;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.formula.PieceOrder;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Amounts;
import org.tourage.quantity.Given;

/**
 * How much of a product, and when.
 *
 * <pre>{@code
 * Order.pieces(product, 24, grams(80)).readyAt(DayTime.parse("day 2 09:00"));
 * }</pre>
 *
 * @param product what is made
 * @param size how much of it
 * @param processLoss the share of the dough that stays on bench and tools, from 0 up to below 1
 * @param start when the first step starts, null if the end decides
 * @param ready when the last step ends, null if the start decides
 */
public record Order(
    Product product,
    Size size,
    Amount<Dimensionless> processLoss,
    @Nullable DayTime start,
    @Nullable DayTime ready)
    implements Serializable {
  /** When a day starts where nobody says otherwise. */
  static final DayTime USUAL_START = new DayTime(1, java.time.LocalTime.of(8, 0));

  /** How much is made. */
  public sealed interface Size extends Serializable {}

  /** The size that the recipe gives, in one piece or batch. */
  public record AsGiven() implements Size {}

  /**
   * The size that the recipe gives, in so many pieces.
   *
   * @param pieces how many, at least 1
   */
  public record Parted(int pieces) implements Size {
    /**
     * Checks the number.
     *
     * @param pieces how many, at least 1
     */
    public Parted {
      PieceOrder.raw(pieces, Amounts.grams(1));
    }
  }

  /**
   * So many pieces of a mass.
   *
   * @param pieces how many and of what mass, raw or baked
   */
  public record Pieces(PieceOrder pieces) implements Size {
    /**
     * Checks that there is one.
     *
     * @param pieces how many and of what mass, raw or baked
     */
    public Pieces {
      requireNonNull(pieces, "pieces");
    }
  }

  /**
   * As much as this flour gives.
   *
   * @param flour the flour of all stages
   * @param pieces in how many pieces, 0 if not parted
   */
  public record OfFlour(Amount<Mass> flour, int pieces) implements Size {
    /**
     * Checks the mass.
     *
     * @param flour the flour of all stages
     * @param pieces in how many pieces, 0 if not parted
     */
    public OfFlour {
      requireNonNull(flour, "flour");
      if (!(flour.value() > 0) || pieces < 0 || pieces > PieceOrder.MOST) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "there must be flour",
            flour + ", " + pieces + " pieces",
            "give a positive mass, and 0 to " + PieceOrder.MOST + " pieces");
      }
    }
  }

  /**
   * Checks that the losses make sense and that only one end of the day is fixed.
   *
   * @param product what is made
   * @param size how much of it
   * @param processLoss the share of the dough that stays on bench and tools, from 0 up to below 1
   * @param start when the first step starts, null if the end decides
   * @param ready when the last step ends, null if the start decides
   */
  public Order {
    requireNonNull(processLoss, "processLoss");
    requireNonNull(product, "product");
    requireNonNull(size, "size");
    PieceOrder.raw(1, Amounts.grams(1)).withProcessLoss(processLoss);
    if (start != null && ready != null) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "a day starts or ends at a time",
          start + " and " + ready,
          "give one of both");
    }
  }

  private static Order of(Product product, Size size) {
    return new Order(product, size, Amounts.percent(0), null, null);
  }

  /**
   * The recipe at the size that it gives.
   *
   * @param product what is made
   * @return the order
   */
  public static Order asGiven(Product product) {
    return of(product, new AsGiven());
  }

  /**
   * The recipe at the size that it gives, in so many pieces.
   *
   * @param product what is made
   * @param pieces how many, at least 1
   * @return the order
   */
  public static Order parted(Product product, int pieces) {
    return of(product, new Parted(pieces));
  }

  /**
   * Pieces of a raw mass.
   *
   * @param product what is made
   * @param pieces how many, at least 1
   * @param each the raw mass of one
   * @return the order
   */
  public static Order pieces(Product product, int pieces, Quantity<Mass> each) {
    requireNonNull(each, "each");
    return of(product, new Pieces(PieceOrder.raw(pieces, each)));
  }

  /**
   * Pieces of a mass, raw or baked.
   *
   * @param product what is made
   * @param pieces how many of what mass
   * @return the order, with the process loss of the pieces
   */
  public static Order pieces(Product product, PieceOrder pieces) {
    return new Order(product, new Pieces(pieces), pieces.processLoss(), null, null);
  }

  /**
   * As much as this flour gives.
   *
   * @param product what is made
   * @param flour the flour of all stages
   * @return the order
   */
  public static Order ofFlour(Product product, Quantity<Mass> flour) {
    requireNonNull(flour, "flour");
    return of(product, new OfFlour(Given.mass("the flour", flour), 0));
  }

  /**
   * The order with a loss on bench and tools.
   *
   * @param share from 0 % up to below 100 %; trim is not counted
   * @return the changed order
   */
  public Order losing(Quantity<Dimensionless> share) {
    requireNonNull(share, "share");
    return new Order(product, size, Given.ratio("the share", share), start, ready);
  }

  /**
   * The order ready at a time.
   *
   * @param time the end of the last step
   * @return the changed order
   */
  public Order readyAt(DayTime time) {
    requireNonNull(time, "time");
    return new Order(product, size, processLoss, null, time);
  }

  /**
   * The order started at a time.
   *
   * @param time the start of the first step
   * @return the changed order
   */
  public Order startingAt(DayTime time) {
    requireNonNull(time, "time");
    return new Order(product, size, processLoss, time, null);
  }

  /** How many pieces, 0 if it is not parted. */
  int count() {
    if (size instanceof Pieces order) {
      return order.pieces().pieces();
    }
    if (size instanceof Parted parted) {
      return parted.pieces();
    }
    return size instanceof OfFlour flour ? flour.pieces() : 0;
  }

  /** The raw mass of a piece that was ordered. */
  Optional<Amount<Mass>> rawPiece() {
    if (size instanceof Pieces order) {
      PieceOrder one = order.pieces();
      return Optional.of(
          new PieceOrder(1, one.pieceMass(), one.bakeLoss(), Amounts.percent(0)).dough());
    }
    return Optional.empty();
  }
}
