package org.tourage.command;

import java.util.Optional;
import java.util.function.Supplier;
import javax.measure.quantity.Mass;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.day.Order;
import org.tourage.day.Product;
import org.tourage.formula.PieceOrder;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Amounts;

/** Makes the order of what a file sets. */
final class OrderReader {
  private final GivenValues given;

  OrderReader(GivenValues given) {
    this.given = given;
  }

  Order order(Product product) {
    Order order = sized(product);
    Optional<org.tourage.day.DayTime> start = given.get(Settings.START);
    Optional<org.tourage.day.DayTime> ready = given.get(Settings.READY);
    if (start.isPresent() && ready.isPresent()) {
      given.complain(
          given.origin(Settings.READY),
          new BakeryException(
              Reason.INCONSISTENT,
              "a day starts or ends at a time",
              "start and ready are both set",
              "keep one of both"));
    }
    order = start.map(order::startingAt).orElse(order);
    return ready.map(order::readyAt).orElse(order);
  }

  private Order sized(Product product) {
    Optional<Integer> pieces = given.get(Settings.PIECES);
    Optional<Amount<Mass>> mass = given.get(Settings.PIECE_MASS);
    Optional<Amount<Mass>> flour = given.get(Settings.FLOUR);
    if (mass.isPresent() && pieces.isEmpty()) {
      given.complain(
          given.origin(Settings.PIECE_MASS),
          new BakeryException(
              Reason.MISSING,
              "the number of pieces is missing",
              "piece-mass " + mass.get(),
              "set pieces too, for example pieces: 12"));
    }
    if (mass.isPresent() && flour.isPresent()) {
      given.complain(
          given.origin(Settings.FLOUR),
          new BakeryException(
              Reason.INCONSISTENT,
              "the size is given twice",
              "flour and piece-mass",
              "keep one of both"));
    }
    given.refuse();
    Supplier<Order> order =
        () -> {
          if (flour.isPresent()) {
            return new Order(
                product,
                new Order.OfFlour(flour.get(), pieces.orElse(0)),
                Amounts.percent(0),
                null,
                null);
          }
          if (mass.isPresent()) {
            PieceOrder one =
                given
                    .get(Settings.BAKE_LOSS)
                    .map(loss -> PieceOrder.baked(pieces.orElseThrow(), mass.get(), loss))
                    .orElseGet(() -> PieceOrder.raw(pieces.orElseThrow(), mass.get()));
            return Order.pieces(product, one);
          }
          return pieces.map(n -> Order.parted(product, n)).orElseGet(() -> Order.asGiven(product));
        };
    try {
      return order.get().losing(given.get(Settings.PROCESS_LOSS).orElseThrow());
    } catch (BakeryException wrong) {
      given.complain(
          given.origin(given.isSet(Settings.PIECE_MASS) ? Settings.PIECE_MASS : Settings.FLOUR),
          wrong);
      given.refuse();
      throw wrong;
    }
  }
}
