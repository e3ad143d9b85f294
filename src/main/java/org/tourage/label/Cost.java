package org.tourage.label;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.HOUR;
import static org.tourage.quantity.BakeryUnits.KILOJOULE;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.formula.Batch;
import org.tourage.formula.Line;
import org.tourage.ingredient.Ingredient;
import org.tourage.internal.TextTable;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Given;

/**
 * What a batch costs: its ingredients with their trim, the energy of the oven and minutes of work
 * where they are given. A price that is missing is named, never taken as 0.
 *
 * @param items the ingredients in the order of the formula, each once
 * @param others energy and work, if given
 * @param known the sum of what has a price
 */
public record Cost(List<Item> items, List<Other> others, Money known) implements Serializable {
  private static final double KILOJOULES_IN_KILOWATT_HOUR = 3600;

  /**
   * An ingredient of the batch.
   *
   * @param ingredient the ingredient
   * @param used its mass in the bowl
   * @param bought its mass with trim
   * @param cost what it costs; empty if it has no price
   */
  public record Item(
      Ingredient ingredient, Amount<Mass> used, Amount<Mass> bought, List<Money> cost)
      implements Serializable {
    /**
     * The cost.
     *
     * @return the cost; empty if it has no price
     */
    public Optional<Money> price() {
      return cost.stream().findFirst();
    }
  }

  /**
   * Something else that costs.
   *
   * @param name what it is, for example {@code work}
   * @param cost what it costs
   */
  public record Other(String name, Money cost) implements Serializable {}

  /**
   * Copies the lists.
   *
   * @param items the ingredients
   * @param others energy and work
   * @param known the sum of what has a price
   */
  public Cost {
    items = List.copyOf(items);
    others = List.copyOf(others);
    requireNonNull(known, "known");
  }

  /**
   * The cost of the ingredients of a batch, the finish included.
   *
   * @param batch the batch
   * @param prices the prices
   * @return the cost
   */
  public static Cost of(Batch batch, PriceList prices) {
    Map<Ingredient, Double> masses = new LinkedHashMap<>();
    List<Line> lines = batch.formula().lines();
    for (int i = 0; i < lines.size(); i++) {
      masses.merge(lines.get(i).ingredient(), batch.weight(i).in(GRAM), Double::sum);
    }
    List<Item> items = new ArrayList<>();
    Money known = Money.zero(prices.currency());
    for (Map.Entry<Ingredient, Double> entry : masses.entrySet()) {
      Amount<Mass> used = GRAM.amount(entry.getValue());
      Optional<Money> cost = prices.cost(entry.getKey(), used);
      known = cost.isPresent() ? known.plus(cost.get()) : known;
      items.add(
          new Item(
              entry.getKey(),
              used,
              prices.gross(entry.getKey(), used),
              cost.map(List::of).orElse(List.of())));
    }
    return new Cost(items, List.of(), known);
  }

  /**
   * The same cost with the energy of the oven.
   *
   * @param energy the energy of the bake
   * @param kilowattHour the price of a kilowatt hour
   * @return the cost
   */
  public Cost withEnergy(Quantity<Energy> energy, Money kilowattHour) {
    double hours = KILOJOULE.measure("the energy", energy) / KILOJOULES_IN_KILOWATT_HOUR;
    return with(
        "energy", requireNotNegative(hours, Given.energy("the energy", energy)), kilowattHour);
  }

  /**
   * The same cost with work.
   *
   * @param time the time of hands, not of waiting
   * @param hour what an hour costs
   * @return the cost
   */
  public Cost withWork(Quantity<Time> time, Money hour) {
    return with(
        "work",
        requireNotNegative(HOUR.measure("the time", time), Given.time("the time", time)),
        hour);
  }

  private static double requireNotNegative(double value, Amount<?> given) {
    if (value < 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE, "a cost can't be earned", given.toString(), "give 0 or more");
    }
    return value;
  }

  private Cost with(String name, double units, Money unit) {
    Money cost = unit.times(units);
    List<Other> more = new ArrayList<>(others);
    more.add(new Other(name, cost));
    return new Cost(items, more, known.plus(cost));
  }

  /**
   * The ingredients that have no price.
   *
   * @return the ingredients, none if the cost is whole
   */
  public List<Ingredient> missing() {
    return items.stream().filter(i -> i.cost.isEmpty()).map(Item::ingredient).toList();
  }

  /**
   * The cost of the batch.
   *
   * @return the cost; empty if a price is missing
   */
  public Optional<Money> total() {
    return missing().isEmpty() ? Optional.of(known) : Optional.empty();
  }

  /**
   * The cost of a piece.
   *
   * @param pieces how many pieces the batch makes, positive
   * @return the cost; empty if a price is missing
   */
  public Optional<Money> perPiece(int pieces) {
    Money part = known.dividedBy(pieces);
    return missing().isEmpty() ? Optional.of(part) : Optional.empty();
  }

  /**
   * The share of a selling price that the batch costs.
   *
   * @param takings what the whole batch sells for, positive
   * @return the share in percent; empty if a price is missing
   */
  public Optional<Amount<Dimensionless>> shareOf(Money takings) {
    if (takings.amount().signum() <= 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE, "nothing is sold", takings.toString(), "give a positive price");
    }
    return total()
        .map(
            cost -> {
              takings.compareTo(cost); // refuses another currency
              return PERCENT.amount(
                  100
                      * cost.amount()
                          .divide(takings.amount(), MathContext.DECIMAL64)
                          .doubleValue());
            });
  }

  /**
   * What is missing.
   *
   * @return a warning that names the ingredients without a price, if there are any
   */
  public List<Advice> advice() {
    List<Ingredient> missing = missing();
    return missing.isEmpty()
        ? List.of()
        : List.of(
            Advice.of(
                "PRICE_MISSING",
                "no price of "
                    + missing.stream().map(Ingredient::name).collect(Collectors.joining(", ")),
                "Give it; the sum is of what has a price"));
  }

  /**
   * What each costs and the sum, with masses in the units of a format.
   *
   * @param format the units of the masses
   * @return a table
   */
  public String table(AmountFormat format) {
    requireNonNull(format, "format");
    TextTable table = new TextTable(1);
    table.row("ingredient", "used", "bought", "cost");
    for (Item item : items) {
      table.row(
          item.ingredient.name(),
          format.mass(item.used),
          format.mass(item.bought),
          item.price().map(Money::toString).orElse("no price"));
    }
    for (Other other : others) {
      table.row(other.name, "", "", other.cost.toString());
    }
    table.row(
        missing().isEmpty() ? "total" : "total without " + missing(), "", "", known.toString());
    return table.toString();
  }

  /** A table of what each costs, and the sum; masses are metric. */
  @Override
  public String toString() {
    return table(AmountFormat.metric());
  }
}
