package org.tourage.label;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.MILLILITRE;

import java.io.Serializable;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.formula.Batch;
import org.tourage.formula.Line;
import org.tourage.ingredient.Component;
import org.tourage.ingredient.Filling;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Portion;
import org.tourage.ingredient.Role;
import org.tourage.internal.Numbers;
import org.tourage.internal.TextTable;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.BakeryUnits;
import org.tourage.quantity.CupStandard;
import org.tourage.quantity.Given;
import org.tourage.quantity.Kind;
import org.tourage.quantity.KitchenMeasure;

/**
 * What must be bought for the batches of a day or a week: needed, less what is on hand, in whole
 * packages. Sorted by kind, then by name. Water from the tap is not on it.
 *
 * @param items the items in order
 */
public record ShoppingList(List<Item> items) implements Serializable {
  private static final double PURE_WATER = 0.995;

  /** The shelves in the order of the list; an ingredient stands with the first of its roles. */
  private static final List<Role> SHELVES =
      List.of(
          Role.FLOUR,
          Role.GRAIN,
          Role.MALT,
          Role.PROTEIN,
          Role.STARCH,
          Role.SUGAR,
          Role.FAT,
          Role.EGG,
          Role.LIQUID,
          Role.DAIRY,
          Role.DAIRY_SOLIDS,
          Role.YEAST,
          Role.SALT,
          Role.LEAVENING,
          Role.THICKENER,
          Role.CHOCOLATE,
          Role.NUT,
          Role.SEED,
          Role.FRUIT,
          Role.VEGETABLE,
          Role.SPICE,
          Role.FLAVOUR,
          Role.INCLUSION);

  /** A measure of volume stands for its mass within this share. */
  private static final double HOUSEHOLD_PERCENT = 5;

  /** The size in which eggs are counted. */
  private static final String EGG_SIZE = "large";

  private static final double NOTHING = 1e-6;

  /**
   * One thing to buy.
   *
   * @param ingredient the ingredient
   * @param kind where it stands on the list
   * @param needed what the batches take, trim included
   * @param onHand what is there
   * @param toBuy what is missing, 0 g if there is enough
   * @param packs whole packages that hold it; empty if no package is known or nothing is missing
   */
  public record Item(
      Ingredient ingredient,
      Role kind,
      Amount<Mass> needed,
      Amount<Mass> onHand,
      Amount<Mass> toBuy,
      List<Packs> packs)
      implements Serializable {
    /**
     * Copies the list.
     *
     * @param ingredient the ingredient
     * @param kind where it stands on the list
     * @param needed what the batches take, trim included
     * @param onHand what is there
     * @param toBuy what is missing, 0 g if there is enough
     * @param packs whole packages that hold it
     */
    public Item {
      packs = List.copyOf(packs);
    }

    /**
     * The packages to buy.
     *
     * @return the packages, if one is known and something is missing
     */
    public Optional<Packs> toCarry() {
      return packs.stream().findFirst();
    }

    /**
     * What is to be bought in cups and spoons, whole eggs in eggs.
     *
     * @return for example {@code 2 1/2 cups}, {@code 6 3/4 cups, spooned} or {@code 2 large}; empty
     *     where no volume of it is on record or no kitchen measure is near
     */
    public Optional<String> household() {
      for (Portion portion : ingredient.portions()) {
        if (ingredient.is(Role.EGG) && portion.word().equals(EGG_SIZE)) {
          double eggs = Math.ceil(toBuy.in(GRAM) / portion.mass().in(GRAM) - NOTHING);
          return Optional.of(Numbers.decimals(eggs, 0) + " " + EGG_SIZE);
        }
      }
      for (Portion portion : ingredient.portions()) {
        if (portion.measure().kind() == Kind.VOLUME && portion.word().isEmpty()) {
          double gramsPerMillilitre =
              ingredient.weigh(portion.measure()).mass().in(GRAM)
                  / portion.measure().to(MILLILITRE).value();
          return new KitchenMeasure(
                  CupStandard.US_CUSTOMARY, BakeryUnits.PERCENT.amount(HOUSEHOLD_PERCENT))
              .describe(MILLILITRE.amount(toBuy.in(GRAM) / gramsPerMillilitre))
              .map(
                  text ->
                      portion.filling() == Filling.AS_IS
                          ? text
                          : text + ", " + portion.filling().word());
        }
      }
      return Optional.empty();
    }
  }

  /**
   * Whole packages of one size.
   *
   * @param count how many
   * @param pack the package
   * @param over what is over when all is used
   */
  public record Packs(int count, PriceList.Pack pack, Amount<Mass> over) implements Serializable {
    /**
     * What they cost.
     *
     * @return the price of all of them
     */
    public Money price() {
      return pack.price().times(BigDecimal.valueOf(count));
    }
  }

  /**
   * Copies the list.
   *
   * @param items the items in order
   */
  public ShoppingList {
    items = List.copyOf(items);
  }

  /**
   * The list for batches.
   *
   * @param batches every batch of the time, at least one
   * @param prices packages and trim
   * @param onHand what is there, by ingredient
   * @return the list; what is there in full stays on it with nothing to buy
   */
  public static ShoppingList of(
      List<Batch> batches, PriceList prices, Map<Ingredient, ? extends Quantity<Mass>> onHand) {
    requireNonNull(prices, "prices");
    if (batches.isEmpty()) {
      throw new BakeryException(
          Reason.MISSING, "a shopping list needs batches", "none given", "give at least one");
    }
    Map<Ingredient, Double> needs = new LinkedHashMap<>();
    for (Batch batch : batches) {
      List<Line> lines = batch.formula().lines();
      for (int i = 0; i < lines.size(); i++) {
        Ingredient ingredient = lines.get(i).ingredient();
        if (!fromTheTap(ingredient)) {
          double gross = prices.gross(ingredient, batch.weight(i)).in(GRAM);
          needs.merge(ingredient, gross, Double::sum);
        }
      }
    }
    List<Item> items = new ArrayList<>();
    for (Map.Entry<Ingredient, Double> need : needs.entrySet()) {
      Quantity<Mass> there = onHand.get(need.getKey());
      items.add(item(need.getKey(), need.getValue(), there == null ? 0 : grams(there), prices));
    }
    items.sort(
        Comparator.comparingInt((Item i) -> SHELVES.indexOf(i.kind))
            .thenComparing(i -> i.ingredient.name()));
    return new ShoppingList(items);
  }

  private static double grams(Quantity<Mass> there) {
    double grams = GRAM.measure("the there", there);
    if (grams < 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "less than nothing is on hand",
          Given.mass("the there", there).toString(),
          "give 0 g or more");
    }
    return grams;
  }

  private static boolean fromTheTap(Ingredient ingredient) {
    return ingredient.is(Role.LIQUID)
        && ingredient.composition().fraction(Component.WATER) > PURE_WATER;
  }

  private static Item item(Ingredient ingredient, double need, double there, PriceList prices) {
    double missing = Math.max(0, need - there);
    List<Packs> packs = new ArrayList<>();
    if (missing > 0) {
      prices.packs(ingredient).stream()
          .map(pack -> whole(pack, missing))
          .min(
              Comparator.comparing(Packs::price)
                  .thenComparingDouble(p -> p.over.in(GRAM))
                  .thenComparingInt(Packs::count))
          .ifPresent(packs::add);
    }
    return new Item(
        ingredient,
        SHELVES.stream().filter(ingredient::is).findFirst().orElse(Role.INCLUSION),
        GRAM.amount(need),
        GRAM.amount(there),
        GRAM.amount(missing),
        packs);
  }

  /** Forgives the rounding of a batch that was scaled to a whole package. */
  private static Packs whole(PriceList.Pack pack, double missing) {
    double size = pack.mass().in(GRAM);
    int count = (int) Math.ceil(missing / size * (1 - 1e-9));
    return new Packs(count, pack, GRAM.amount(Math.max(0, count * size - missing)));
  }

  /**
   * What the whole packages cost.
   *
   * @return the sum; empty if something that is to be bought has no package
   */
  public Optional<Money> price() {
    Money sum = null;
    for (Item item : items) {
      if (item.toBuy.value() > 0) {
        if (item.packs.isEmpty()) {
          return Optional.empty();
        }
        Money price = item.packs.get(0).price();
        sum = sum == null ? price : sum.plus(price);
      }
    }
    return Optional.ofNullable(sum);
  }

  /**
   * The list by kind, as a mass and by household measure, with masses in the units of a format.
   *
   * @param format the units of the masses
   * @return a table
   */
  public String table(AmountFormat format) {
    requireNonNull(format, "format");
    TextTable table = new TextTable(1);
    table.row("to buy", "mass", "household", "packages");
    Role shelf = null;
    for (Item item : items) {
      if (item.toBuy.value() > 0) {
        if (item.kind != shelf) {
          table.heading(item.kind.name().toLowerCase(Locale.ROOT).replace('_', ' ') + ":");
          shelf = item.kind;
        }
        table.row(
            "  " + item.ingredient.name(),
            format.mass(item.toBuy),
            item.household().orElse(""),
            item.toCarry().map(p -> p.count + " x " + format.mass(p.pack.mass())).orElse(""));
      }
    }
    return table.toString();
  }

  /** The list by kind, metric and household. */
  @Override
  public String toString() {
    return table(AmountFormat.metric());
  }
}
