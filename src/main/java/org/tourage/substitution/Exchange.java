package org.tourage.substitution;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Given;

/**
 * What is wanted in place of what; {@link Exchanges} works several of them at once. Immutable.
 *
 * @param from what goes
 * @param to what comes
 * @param share the part that is exchanged, 0 % to 100 %
 */
public record Exchange(Ingredient from, Ingredient to, Amount<Dimensionless> share)
    implements Serializable {

  /**
   * Checks the share.
   *
   * @param from what goes
   * @param to what comes
   * @param share the part that is exchanged, 0 % to 100 %
   * @throws BakeryException if the share lies outside
   */
  public Exchange {
    requireNonNull(from, "from");
    requireNonNull(to, "to");
    double part = requireNonNull(share, "share").in(FRACTION);
    if (!(part >= 0) || part > 1) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "this part of "
              + (isFlour(from, to) ? "a flour" : "an ingredient")
              + " can't be exchanged",
          share.to(PERCENT).toString(),
          "give 0 % to 100 %");
    }
  }

  /**
   * All of an ingredient.
   *
   * @param from what goes
   * @param to what comes
   * @return the wish
   */
  public static Exchange of(Ingredient from, Ingredient to) {
    return new Exchange(from, to, PERCENT.amount(100));
  }

  /**
   * A part of an ingredient.
   *
   * @param from what goes
   * @param to what comes
   * @param share the part that is exchanged, 0 % to 100 %
   * @return the wish
   * @throws BakeryException if the share lies outside
   */
  public static Exchange of(Ingredient from, Ingredient to, Quantity<Dimensionless> share) {
    return new Exchange(from, to, Given.ratio("the share", share));
  }

  double part() {
    return share.in(FRACTION);
  }

  boolean isFlour() {
    return isFlour(from, to);
  }

  private static boolean isFlour(Ingredient from, Ingredient to) {
    return from.is(Role.FLOUR) || to.is(Role.FLOUR);
  }

  /** {@code whole milk becomes oat drink}. */
  @Override
  public String toString() {
    return (part() == 1 ? "" : share.to(PERCENT) + " of the ")
        + from.name()
        + " becomes "
        + to.name();
  }
}
