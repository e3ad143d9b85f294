package org.tourage.label;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.GRAM;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.ingredient.Ingredient;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Given;

/**
 * What packages of ingredients weigh and cost, and how much of them gets into the bowl. Immutable
 * and serialisable.
 *
 * <pre>{@code
 * PriceList prices = PriceList.in(Currency.getInstance("EUR"))
 *     .with(flour, Money.of("19.80", "EUR"), kilograms(25))
 *     .withYield(apples, percent(78));
 * }</pre>
 */
public final class PriceList implements Serializable {
  private static final long serialVersionUID = 1L;

  /** The currency of all prices. */
  private final Currency currency;

  /** The packages of each ingredient. */
  private final Map<Ingredient, List<Pack>> packs;

  /** What part of what is bought is used. */
  private final Map<Ingredient, Double> yields;

  private PriceList(
      Currency currency, Map<Ingredient, List<Pack>> packs, Map<Ingredient, Double> yields) {
    this.currency = currency;
    this.packs = packs;
    this.yields = yields;
  }

  /**
   * A package.
   *
   * @param price what it costs
   * @param mass what it holds
   */
  public record Pack(Money price, Amount<Mass> mass) implements Serializable {
    /**
     * Checks that it holds something and is not dearer than nothing by less.
     *
     * @param price what it costs, not negative
     * @param mass what it holds, positive
     */
    public Pack {
      requireNonNull(price, "price");
      if (!(mass.value() > 0) || price.amount().signum() < 0) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "no such package",
            price + " for " + mass,
            "give a price of 0 or more and a positive mass");
      }
    }

    Money ofGram() {
      return price.times(1 / mass.in(GRAM));
    }

    /** {@code 25 kg for 19.80 EUR}. */
    @Override
    public String toString() {
      return mass + " for " + price;
    }
  }

  /**
   * An empty list.
   *
   * @param currency the currency of all its prices
   * @return the list
   */
  public static PriceList in(Currency currency) {
    return new PriceList(requireNonNull(currency, "currency"), Map.of(), Map.of());
  }

  /**
   * This list with one more package.
   *
   * @param ingredient the ingredient
   * @param price what the package costs
   * @param mass what it holds
   * @return a new list
   * @throws BakeryException if the currency is another one, or the package holds nothing
   */
  public PriceList with(Ingredient ingredient, Money price, Quantity<Mass> mass) {
    requireNonNull(ingredient, "ingredient");
    Money.zero(currency).plus(price);
    Map<Ingredient, List<Pack>> more = new LinkedHashMap<>(packs);
    List<Pack> all = new ArrayList<>(packs.getOrDefault(ingredient, List.of()));
    all.add(new Pack(price, Given.mass("the mass", mass)));
    more.put(ingredient, List.copyOf(all));
    return new PriceList(currency, more, yields);
  }

  /**
   * This list with the yield of an ingredient: what is left of it after peeling, stoning and other
   * trim.
   *
   * @param ingredient the ingredient
   * @param yield above 0 %, at most 100 %
   * @return a new list
   */
  public PriceList withYield(Ingredient ingredient, Quantity<Dimensionless> yield) {
    double value = FRACTION.measure("the yield", yield);
    if (!(value > 0) || value > 1) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no such yield of " + ingredient,
          Given.ratio("the yield", yield).toString(),
          "give more than 0 % and at most 100 %");
    }
    Map<Ingredient, Double> more = new LinkedHashMap<>(yields);
    more.put(ingredient, value);
    return new PriceList(currency, packs, more);
  }

  /**
   * The currency of all prices.
   *
   * @return the currency
   */
  public Currency currency() {
    return currency;
  }

  /**
   * The packages of an ingredient.
   *
   * @param ingredient the ingredient
   * @return its packages, none if it has no price
   */
  public List<Pack> packs(Ingredient ingredient) {
    return packs.getOrDefault(ingredient, List.of());
  }

  /**
   * What must be bought for a mass in the bowl.
   *
   * @param ingredient the ingredient
   * @param mass the mass that is used
   * @return the mass that is bought, trim included
   */
  public Amount<Mass> gross(Ingredient ingredient, Quantity<Mass> mass) {
    return GRAM.amount(GRAM.measure("the mass", mass) / yields.getOrDefault(ingredient, 1.0));
  }

  /**
   * The cost of a mass in the bowl, by the package that is cheapest for its mass.
   *
   * @param ingredient the ingredient
   * @param mass the mass that is used
   * @return the cost; empty, never 0, if there is no price
   */
  public Optional<Money> cost(Ingredient ingredient, Quantity<Mass> mass) {
    Pack cheapest = null;
    for (Pack pack : packs(ingredient)) {
      boolean better = cheapest == null || pack.ofGram().compareTo(cheapest.ofGram()) < 0;
      cheapest = better ? pack : cheapest;
    }
    return cheapest == null
        ? Optional.empty()
        : Optional.of(cheapest.price().times(gross(ingredient, mass).ratioTo(cheapest.mass())));
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof PriceList that
        && currency.equals(that.currency)
        && packs.equals(that.packs)
        && yields.equals(that.yields);
  }

  @Override
  public int hashCode() {
    return 31 * packs.hashCode() + yields.hashCode();
  }

  /** The packages. */
  @Override
  public String toString() {
    return packs.toString();
  }
}
