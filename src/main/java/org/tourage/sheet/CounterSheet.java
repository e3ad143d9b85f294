package org.tourage.sheet;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.GRAM;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.day.BakeDay;
import org.tourage.formula.Stage;
import org.tourage.ingredient.Ingredient;
import org.tourage.label.Cost;
import org.tourage.label.IngredientList;
import org.tourage.label.LabelScheme;
import org.tourage.label.Money;
import org.tourage.label.Nutrition;
import org.tourage.label.PriceList;
import org.tourage.label.ScalingSheet;
import org.tourage.label.ShoppingList;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Given;

/**
 * What a day needs beside the bench: the label, the cost, the shopping list, the recipe at five
 * sizes. It prints what the rooms have worked of the day's batch, after its exchanges.
 *
 * <pre>{@code
 * System.out.print(CounterSheet.of(day, AmountFormat.metric()).priced(prices).text(SheetView.COST));
 * }</pre>
 *
 * <p>The water that the product loses is the loss of the bake as it is worked; what goes off in
 * cooling is not in it. Without a bake all is as weighed. Immutable and serialisable.
 */
public final class CounterSheet implements Serializable {
  private static final long serialVersionUID = 1L;

  /** The share of the batch from which on what does not reach a piece is spoken of. */
  private static final double ASIDE = 0.001;

  private static final double[] SIZES = {0.5, 1, 2, 3, 5};

  /** The day. */
  private final BakeDay day;

  /** How amounts are written. */
  private final AmountFormat format;

  /** Prices, if there are any. */
  private final @Nullable PriceList prices;

  /** What is on hand. */
  private final LinkedHashMap<Ingredient, Amount<Mass>> onHand;

  /** What a kilowatt hour costs. */
  private final @Nullable Money kilowattHour;

  /** Minutes of work. */
  private final @Nullable Work work;

  /** What a piece sells for. */
  private final @Nullable Money sellsFor;

  /** Work and what an hour of it costs. */
  private record Work(Amount<Time> time, Money hour) implements Serializable {}

  private CounterSheet(
      BakeDay day,
      AmountFormat format,
      @Nullable PriceList prices,
      Map<Ingredient, Amount<Mass>> onHand,
      @Nullable Money kilowattHour,
      @Nullable Work work,
      @Nullable Money sellsFor) {
    this.day = day;
    this.format = format;
    this.prices = prices;
    this.onHand = new LinkedHashMap<>(onHand);
    this.kilowattHour = kilowattHour;
    this.work = work;
    this.sellsFor = sellsFor;
  }

  /**
   * The sheets of a day, without prices.
   *
   * @param day the day
   * @param format how amounts are written
   * @return the sheets
   */
  public static CounterSheet of(BakeDay day, AmountFormat format) {
    return new CounterSheet(
        requireNonNull(day, "day"),
        requireNonNull(format, "format"),
        null,
        Map.of(),
        null,
        null,
        null);
  }

  /**
   * The same with prices.
   *
   * @param list the prices
   * @return the sheets
   */
  public CounterSheet priced(PriceList list) {
    return new CounterSheet(
        day, format, requireNonNull(list, "list"), onHand, kilowattHour, work, sellsFor);
  }

  /**
   * The same with what is on hand of an ingredient, for the shopping list.
   *
   * @param ingredient the ingredient
   * @param mass what is there
   * @return the sheets
   */
  public CounterSheet onHand(Ingredient ingredient, Quantity<Mass> mass) {
    requireNonNull(ingredient, "ingredient");
    Amount<Mass> there = Given.mass("the mass", requireNonNull(mass, "mass"));
    if (there.value() < 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "less than nothing can't be on hand",
          there + " of " + ingredient.name(),
          "give 0 g or more");
    }
    Map<Ingredient, Amount<Mass>> more = new LinkedHashMap<>(onHand);
    more.put(ingredient, there);
    return new CounterSheet(day, format, prices, more, kilowattHour, work, sellsFor);
  }

  /**
   * The same with the energy of the oven in the cost, as the bake of the day takes it.
   *
   * @param price what a kilowatt hour costs
   * @return the sheets
   */
  public CounterSheet withEnergy(Money price) {
    return new CounterSheet(
        day, format, prices, onHand, requireNonNull(price, "price"), work, sellsFor);
  }

  /**
   * The same with work in the cost.
   *
   * @param time the time of hands
   * @param hour what an hour costs
   * @return the sheets
   */
  public CounterSheet withWork(Quantity<Time> time, Money hour) {
    Work given =
        new Work(
            Given.time("the time", requireNonNull(time, "time")), requireNonNull(hour, "hour"));
    return new CounterSheet(day, format, prices, onHand, kilowattHour, given, sellsFor);
  }

  /**
   * The same with what a piece sells for.
   *
   * @param piece the price of a piece
   * @return the sheets
   */
  public CounterSheet sellingFor(Money piece) {
    return new CounterSheet(
        day, format, prices, onHand, kilowattHour, work, requireNonNull(piece, "piece"));
  }

  /**
   * The text of one view.
   *
   * @param view the view
   * @return the text
   * @throws BakeryException if the cost is asked for and there are no prices
   */
  public String text(SheetView view) {
    return switch (requireNonNull(view, "view")) {
      case BENCH -> BenchSheet.of(day, format).toString();
      case LABEL -> label();
      case COST -> cost();
      case SHOPPING -> shopping();
      case SCALING -> scaling();
    };
  }

  private SheetText titled(String view) {
    return new SheetText(day.plan().order().product().name() + ": " + view);
  }

  private Amount<Mass> lost() {
    return day.bake()
        .found()
        .map(baking -> GRAM.amount(baked().in(GRAM) * baking.bake().end().loss().in(FRACTION)))
        .orElse(GRAM.amount(0));
  }

  /** What goes into the oven of the batch, fillings as well; what is put on afterwards does not. */
  private Amount<Mass> baked() {
    Amount<Mass> sum = day.batch().total();
    for (Stage stage : day.batch().formula().stages()) {
      sum = stage.kind().isBaked() ? sum : sum.subtract(day.batch().weightOf(stage));
    }
    return sum;
  }

  /** A piece as it comes out: what was scaled and filled, less its loss, and its finish. */
  private Amount<Mass> piece(Amount<Mass> lost) {
    double kept = 1 - lost.in(GRAM) / baked().in(GRAM);
    double raw = day.scalingWeight().in(GRAM) + day.fillingWeight().in(GRAM);
    double after = day.batch().total().subtract(baked()).in(GRAM) / day.pieces();
    return GRAM.amount(raw * kept + after);
  }

  private String label() {
    Amount<Mass> lost = lost();
    Nutrition nutrition = Nutrition.of(day.batch()).withWaterLost(lost);
    SheetText text = titled("label, " + Nutrition.DRAFT);
    text.section(
        "What it is of",
        List.of(
            product(nutrition, lost)
                + " from "
                + format.mass(day.batch().total())
                + " weighed; "
                + (day.bake().found().isPresent()
                    ? format.mass(lost) + " of water lost in the oven, none counted for cooling"
                    : "no bake is worked: nothing lost")));
    text.section(
        "Nutrition, European Union",
        nutrition.per100Grams().table(LabelScheme.EU).lines().toList());
    text.section(
        "Nutrition, United States",
        (day.pieces() > 0 ? nutrition.perPiece(piece(lost)) : nutrition.per100Grams())
            .table(LabelScheme.US)
            .lines()
            .toList());
    List<Advice> advice = new ArrayList<>(nutrition.advice());
    for (LabelScheme scheme : LabelScheme.values()) {
      IngredientList list = IngredientList.of(day.batch(), scheme).withWaterLost(lost);
      List<String> lines = new ArrayList<>();
      list.toString().lines().forEach(line -> SheetText.wrap(lines, line));
      text.section(
          "Ingredients, " + (scheme == LabelScheme.EU ? "European Union" : "United States"), lines);
      list.advice().stream().filter(a -> !advice.contains(a)).forEach(advice::add);
    }
    text.advice("Still to be looked at", advice);
    return text.toString();
  }

  private String product(Nutrition nutrition, Amount<Mass> lost) {
    if (day.pieces() == 0) {
      return format.mass(nutrition.mass()) + " of product";
    }
    Amount<Mass> all = piece(lost).multiply(day.pieces());
    double aside = nutrition.mass().subtract(all).in(GRAM);
    return format.mass(all)
        + " of product, "
        + day.pieces()
        + " pieces of "
        + format.mass(piece(lost))
        + (aside > ASIDE * all.in(GRAM)
            ? " (trim and what stays on bench and tools are not in it)"
            : "")
        + ",";
  }

  private String cost() {
    if (prices == null) {
      throw new BakeryException(
          Reason.MISSING,
          "a cost needs prices",
          "none given",
          "write them under [prices], for example bread flour: 25 kg for 20.00 EUR");
    }
    Cost cost = Cost.of(day.batch(), prices);
    if (kilowattHour != null && day.bake().found().isPresent()) {
      cost = cost.withEnergy(day.bake().get().energy(), kilowattHour);
    }
    if (work != null) {
      cost = cost.withWork(work.time, work.hour);
    }
    SheetText text = titled("cost");
    text.section("Cost", cost.table(format).lines().toList());
    List<String> each = new ArrayList<>();
    if (day.pieces() > 0) {
      each.add(
          "a piece: "
              + cost.perPiece(day.pieces())
                  .map(Money::toString)
                  .orElse("unknown, a price is missing"));
      if (sellsFor != null) {
        each.add(
            "of "
                + sellsFor
                + " that it sells for: "
                + cost.shareOf(sellsFor.times(new java.math.BigDecimal(day.pieces())))
                    .map(AmountFormat.metric()::percent)
                    .orElse("unknown, a price is missing"));
      }
    }
    text.section("Each", each);
    text.advice("Missing", cost.advice());
    return text.toString();
  }

  private String shopping() {
    PriceList list = prices == null ? PriceList.in(java.util.Currency.getInstance("XXX")) : prices;
    ShoppingList shopping = ShoppingList.of(List.of(day.batch()), list, onHand);
    SheetText text = titled("shopping list");
    text.section("To buy", shopping.table(format).lines().toList());
    Optional<Money> price = prices == null ? Optional.empty() : shopping.price();
    text.section(
        "Whole packages",
        price
            .map(p -> List.of(p.toString()))
            .orElse(
                prices == null ? List.of() : List.of("not all has a package: the sum is unknown")));
    return text.toString();
  }

  private String scaling() {
    List<Amount<Mass>> doughs = new ArrayList<>();
    for (double size : SIZES) {
      doughs.add(GRAM.amount(day.batch().dough().in(GRAM) * size));
    }
    SheetText text = titled("five sizes");
    text.section(
        "Sizes: a half, one, two, three and five times",
        ScalingSheet.of(day.batch().formula(), doughs).table(format).lines().toList());
    return text.toString();
  }

  /** The label. */
  @Override
  public String toString() {
    return text(SheetView.LABEL);
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof CounterSheet that
        && day.equals(that.day)
        && format.equals(that.format)
        && Objects.equals(prices, that.prices)
        && onHand.equals(that.onHand)
        && Objects.equals(kilowattHour, that.kilowattHour)
        && Objects.equals(work, that.work)
        && Objects.equals(sellsFor, that.sellsFor);
  }

  @Override
  public int hashCode() {
    return Objects.hash(day, format, prices, onHand, kilowattHour, work, sellsFor);
  }
}
