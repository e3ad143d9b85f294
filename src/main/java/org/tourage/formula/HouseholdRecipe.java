package org.tourage.formula;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.GRAM;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javax.measure.quantity.Mass;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Weighed;
import org.tourage.internal.TextTable;
import org.tourage.internal.VisibleText;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.CupStandard;

/**
 * A household recipe, weighed. Each line is an amount and an ingredient: {@code 3 1/2 cups bread
 * flour}, {@code 2 sticks unsalted butter}, {@code 2 large eggs}, {@code 1 packet instant yeast}. A
 * mass in brackets, as in {@code 2 large eggs (100 g)}, wins over the measure before it; a measure
 * and a size together ({@code 300 g large eggs}) are refused.
 *
 * <p>What follows a comma is a note, unless it says how the cup is filled ({@code , sifted}), or
 * that the line belongs to the base of 100 % though it is no flour: {@code 150 g cornstarch, as
 * flour}. Where a recipe does not say how its cups are filled, all its flours are spooned by one
 * hand (common practice).
 *
 * <p>Headings in square brackets start a stage: {@code [dough]}, {@code [preferment Poolish]},
 * {@code [soaker Seeds]}, {@code [roll-in]}, {@code [filling]}, {@code [finish]}. Lines before the
 * first belong to the dough; empty lines and lines that start with {@code #} are passed over. A
 * stage takes another with {@code all of First}, {@code 100 g of First} or {@code 40 % of First}; a
 * preferment or soaker that no stage takes goes into the dough whole.
 *
 * <pre>{@code
 * [preferment First]
 * 50 g rye flour
 * 50 g water
 * [preferment Second]
 * 80 g of First
 * 200 g rye flour
 * 160 g water
 * }</pre>
 *
 * @param name the name
 * @param items the lines in order
 * @param draws what stages take of other stages, in order
 */
public record HouseholdRecipe(String name, List<Item> items, List<Draw> draws)
    implements Explained, Serializable {

  /**
   * One line of the recipe.
   *
   * @param line its number in the text, from 1
   * @param text the line as written
   * @param kind the kind of its stage
   * @param stage the name of its stage
   * @param weighed what it weighs
   * @param flour whether it counts as flour
   * @param note what followed the comma, empty if nothing did
   */
  public record Item(
      int line,
      String text,
      StageKind kind,
      String stage,
      Weighed weighed,
      boolean flour,
      String note)
      implements Serializable {

    /** The same text at another place. */
    Item at(int otherLine, StageKind otherKind, String otherStage) {
      return new Item(otherLine, text, otherKind, otherStage, weighed, flour, note);
    }
  }

  /**
   * A line by which a stage takes another.
   *
   * @param line its number in the text, from 1
   * @param text the line as written
   * @param kind the kind of the stage that takes
   * @param stage the name of the stage that takes
   * @param draw what it takes
   */
  public record Draw(
      int line, String text, StageKind kind, String stage, StageDraft.Draw<Mass> draw)
      implements Serializable {}

  /**
   * A line of a text with its number, for a recipe that stands in a larger text.
   *
   * @param number the number that messages name, from 1
   * @param text the line
   */
  public record Row(int number, String text) implements Serializable {}

  /**
   * Copies the lists and checks that there is a line.
   *
   * @param name the name
   * @param items the lines in order
   * @param draws what stages take of other stages, in order
   */
  public HouseholdRecipe {
    for (int i = 0; i < name.length(); i++) {
      if (VisibleText.isHidden(name.charAt(i))) {
        throw new BakeryException(
            Reason.UNREADABLE_TEXT,
            "a character that can't be seen in the name of a recipe",
            "\"" + VisibleText.of(name) + "\"",
            "take it out");
      }
    }
    items = List.copyOf(items);
    draws = List.copyOf(draws);
    if (items.isEmpty()) {
      throw new BakeryException(
          Reason.MISSING,
          "a recipe needs lines",
          "\"" + name + "\" has none",
          "write one like 500 g bread flour");
    }
  }

  /**
   * Reads a recipe with the built-in catalogue and US customary cups.
   *
   * @param name the name
   * @param lines the lines
   * @return the recipe
   * @throws BakeryException if lines can't be read; it names each with its number, see {@link
   *     BakeryException#problems}
   */
  public static HouseholdRecipe of(String name, String... lines) {
    return parse(name, List.of(lines), Catalogue.builtIn(), CupStandard.US_CUSTOMARY);
  }

  /**
   * Reads a recipe. A byte-order mark before the first line is passed over.
   *
   * @param name the name
   * @param lines the lines
   * @param catalogue where names are looked up; {@link Catalogue#with} adds ingredients of one's
   *     own
   * @param cups which kitchen's cups and spoons are meant
   * @return the recipe
   * @throws BakeryException if lines can't be read; it names each with its number, see {@link
   *     BakeryException#problems}
   */
  public static HouseholdRecipe parse(
      String name, List<String> lines, Catalogue catalogue, CupStandard cups) {
    List<Row> rows = new ArrayList<>(lines.size());
    for (String line : lines) {
      boolean marked = rows.isEmpty() && line.startsWith("\ufeff");
      rows.add(new Row(rows.size() + 1, marked ? line.substring(1) : line));
    }
    return read(name, rows, catalogue, cups);
  }

  /**
   * Reads a recipe that stands in a larger text.
   *
   * @param name the name
   * @param rows the lines with their numbers in that text
   * @param catalogue where names are looked up; {@link Catalogue#with} adds ingredients of one's
   *     own
   * @param cups which kitchen's cups and spoons are meant
   * @return the recipe
   * @throws BakeryException if lines can't be read; it names each with its number, see {@link
   *     BakeryException#problems}. After 50 such lines the reading stops
   */
  public static HouseholdRecipe read(
      String name, List<Row> rows, Catalogue catalogue, CupStandard cups) {
    return new RecipeReader(catalogue, cups, false).read(requireNonNull(name, "name"), rows);
  }

  /**
   * Reads a recipe as {@link #read} does, but a name that is not known does not stop it where the
   * line gives a mass: the ingredient is {@link Ingredient#unknown}, its mass counts, and {@link
   * #advice()} says which figures lack it. One that is measured by cup or piece is refused.
   *
   * @param name the name
   * @param rows the lines with their numbers in that text
   * @param catalogue where names are looked up
   * @param cups which kitchen's cups and spoons are meant
   * @return the recipe
   * @throws BakeryException as {@link #read}
   */
  public static HouseholdRecipe readKeepingUnknown(
      String name, List<Row> rows, Catalogue catalogue, CupStandard cups) {
    return new RecipeReader(catalogue, cups, true).read(requireNonNull(name, "name"), rows);
  }

  static String usualName(StageKind kind) {
    return switch (kind) {
      case PREFERMENT -> "Preferment";
      case SOAKER -> "Soaker";
      case FINAL_DOUGH -> "Final dough";
      case ROLL_IN -> "Roll-in";
      case FILLING -> "Filling";
      case FINISH -> "Finish";
    };
  }

  /**
   * The recipe as a batch at its own size; its formula is in baker's percent.
   *
   * @return the batch
   * @throws BakeryException if the recipe has no flour
   */
  public Batch batch() {
    return batch(items.stream().map(i -> i.weighed.mass()).toList());
  }

  /** The batch with other masses for its items. */
  Batch batch(List<Amount<Mass>> masses) {
    // the parts and draws of each stage, in the order of the text
    Map<String, StageKind> kinds = new LinkedHashMap<>();
    Map<String, List<StageDraft.Part<Mass>>> parts = new HashMap<>();
    Map<String, List<StageDraft.Draw<Mass>>> taken = new HashMap<>();
    for (int i = 0; i < items.size(); i++) {
      Item item = items.get(i);
      String stage = nameInFormula(item.kind, item.stage);
      kinds.putIfAbsent(stage, item.kind);
      parts
          .computeIfAbsent(stage, s -> new ArrayList<>())
          .add(new StageDraft.Part<>(item.weighed.ingredient(), masses.get(i), item.flour));
    }
    for (Draw draw : draws) {
      String stage = nameInFormula(draw.kind, draw.stage);
      kinds.putIfAbsent(stage, draw.kind);
      taken.computeIfAbsent(stage, s -> new ArrayList<>()).add(draw.draw);
    }
    return Formula.byWeight(
        name,
        f ->
            kinds.forEach(
                (stage, kind) ->
                    f.stage(
                        new StageDraft<>(
                            stage,
                            kind,
                            parts.getOrDefault(stage, List.of()),
                            taken.getOrDefault(stage, List.of())))));
  }

  /** All dough is one stage, as are all roll-in and all finish. */
  private static String nameInFormula(StageKind kind, String stage) {
    boolean named = kind == StageKind.PREFERMENT || kind == StageKind.SOAKER;
    return named ? stage : usualName(kind);
  }

  /**
   * How far a result of this recipe can be off, from how far each of its measures can be off.
   *
   * @param result the name of the result, for example {@code true hydration}
   * @param unit its unit, for example {@code %}
   * @param model works the result out for a batch
   * @return the propagation; each measure lies evenly within its range
   */
  public Propagation propagation(
      String result, String unit, Propagation.Model<? super Batch> model) {
    List<Propagation.Input> inputs = new ArrayList<>();
    for (Item item : items) {
      inputs.add(
          Propagation.Input.between(
              item.text,
              item.weighed.mass().in(GRAM),
              item.weighed.range().low().in(GRAM),
              item.weighed.range().high().in(GRAM)));
    }
    return new Propagation(
        result,
        unit,
        inputs,
        values -> {
          List<Amount<Mass>> masses = new ArrayList<>();
          for (double value : values) {
            masses.add(GRAM.amount(value));
          }
          return model.of(batch(masses));
        });
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>();
    for (Item item : items) {
      advice.addAll(item.weighed.advice());
      Ingredient ingredient = item.weighed.ingredient();
      if (ingredient.composition().isUnknown()) {
        advice.add(
            Advice.of(
                "UNKNOWN_INGREDIENT",
                "nothing is known of \"" + ingredient.name() + "\" but its mass",
                "Its water, nutrients and allergens are missing, not nought, in hydration, water"
                    + " temperature, rise, bake, nutrition and label"
                    + (item.flour ? "; it is counted as flour" : "; it is not counted as flour")
                    + ". "
                    + capital(Catalogue.builtIn().hint(ingredient.name()))));
      }
    }
    return advice;
  }

  private static String capital(String text) {
    return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  @Override
  public Working working() {
    List<WorkedLine> lines = new ArrayList<>();
    for (Item item : items) {
      lines.addAll(item.weighed.working().lines());
    }
    return new Working(lines);
  }

  /** Each line with its mass and range. */
  @Override
  public String toString() {
    AmountFormat format = AmountFormat.metric();
    TextTable table = new TextTable(1);
    table.heading(name);
    int next = 0;
    for (Item item : items) {
      for (; next < draws.size() && draws.get(next).line < item.line; next++) {
        table.row("  " + draws.get(next).text, "", "");
      }
      Weighed weighed = item.weighed;
      String range =
          weighed.range().low().equals(weighed.range().high())
              ? ""
              : format.mass(weighed.range().low()) + " to " + format.mass(weighed.range().high());
      table.row("  " + item.text, format.mass(weighed.mass()), range);
    }
    for (; next < draws.size(); next++) {
      table.row("  " + draws.get(next).text, "", "");
    }
    return table.toString();
  }
}
