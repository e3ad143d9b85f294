package org.tourage.formula;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.GRAM;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.measure.quantity.Mass;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Filling;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Weighed;
import org.tourage.internal.TextTable;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.CupStandard;
import org.tourage.quantity.HouseholdAmount;
import org.tourage.quantity.Kind;

/**
 * A household recipe, weighed. Each line is an amount and an ingredient: {@code 3 1/2 cups bread
 * flour}, {@code 2 sticks unsalted butter}, {@code 2 large eggs}, {@code 1 packet instant yeast}.
 * What follows a comma is a note, unless it says how the cup is filled ({@code , sifted}). A mass
 * in brackets, as in {@code 2 sticks (226 g) butter}, wins over the measure before it.
 *
 * <p>Headings in square brackets start a stage: {@code [dough]}, {@code [preferment Poolish]},
 * {@code [soaker Seeds]}, {@code [roll-in]}, {@code [finish]}. Lines before the first belong to the
 * dough; empty lines and lines that start with {@code #} are passed over.
 *
 * @param name the name
 * @param items the lines in order
 */
public record HouseholdRecipe(String name, List<Item> items) implements Explained, Serializable {
  private static final Pattern HEADING = Pattern.compile("\\[\\s*([\\w-]+)\\s*(.*?)\\s*]");
  private static final Pattern BRACKETS = Pattern.compile("\\(([^)]*)\\)");
  private static final Map<String, StageKind> STAGES =
      Map.of(
          "dough", StageKind.FINAL_DOUGH,
          "preferment", StageKind.PREFERMENT,
          "soaker", StageKind.SOAKER,
          "roll-in", StageKind.ROLL_IN,
          "filling", StageKind.FILLING,
          "finish", StageKind.FINISH);

  /**
   * One line of the recipe.
   *
   * @param text the line as written
   * @param kind the kind of its stage
   * @param stage the name of its stage
   * @param weighed what it weighs
   * @param note what followed the comma, empty if nothing did
   */
  public record Item(String text, StageKind kind, String stage, Weighed weighed, String note)
      implements Serializable {}

  /**
   * Copies the list and checks that there is a line.
   *
   * @param name the name
   * @param items the lines in order
   */
  public HouseholdRecipe {
    requireNonNull(name, "name");
    items = List.copyOf(items);
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
   * @throws BakeryException if a line can't be read; the message names the line
   */
  public static HouseholdRecipe of(String name, String... lines) {
    return parse(name, List.of(lines), Catalogue.builtIn(), CupStandard.US_CUSTOMARY);
  }

  /**
   * Reads a recipe.
   *
   * @param name the name
   * @param lines the lines
   * @param catalogue where names are looked up
   * @param cups which kitchen's cups and spoons are meant
   * @return the recipe
   * @throws BakeryException if a line can't be read; the message names the line
   */
  public static HouseholdRecipe parse(
      String name, List<String> lines, Catalogue catalogue, CupStandard cups) {
    List<Item> items = new ArrayList<>();
    StageKind kind = StageKind.FINAL_DOUGH;
    String stage = "Final dough";
    for (String line : lines) {
      String text = line.strip();
      Matcher heading = HEADING.matcher(text);
      boolean passedOver = text.isEmpty() || text.startsWith("#");
      if (heading.matches()) {
        kind = stageKind(heading.group(1), text);
        stage = stageName(kind, heading.group(2));
      } else if (!passedOver) {
        items.add(item(text, kind, stage, catalogue, cups));
      }
    }
    return new HouseholdRecipe(name, items);
  }

  private static StageKind stageKind(String word, String text) {
    StageKind kind = STAGES.get(word.toLowerCase(Locale.ROOT));
    if (kind == null) {
      throw new BakeryException(
          Reason.UNKNOWN_NAME,
          "no such stage",
          "\"" + text + "\"",
          "use [dough], [preferment Name], [soaker Name], [roll-in], [filling] or [finish]");
    }
    return kind;
  }

  private static String stageName(StageKind kind, String given) {
    if (!given.isEmpty()) {
      return given;
    }
    return switch (kind) {
      case PREFERMENT -> "Preferment";
      case SOAKER -> "Soaker";
      case FINAL_DOUGH -> "Final dough";
      case ROLL_IN -> "Roll-in";
      case FILLING -> "Filling";
      case FINISH -> "Finish";
    };
  }

  private static Item item(
      String text, StageKind kind, String stage, Catalogue catalogue, CupStandard cups) {
    HouseholdAmount measure = HouseholdAmount.parseFront(text, cups);
    String rest = measure.rest();
    String note = "";
    Matcher brackets = BRACKETS.matcher(rest);
    if (brackets.find()) {
      Optional<HouseholdAmount> mass = massOf(brackets.group(1), cups);
      if (mass.isPresent()) {
        measure = mass.get();
      } else {
        note = brackets.group(1);
      }
      rest =
          (rest.substring(0, brackets.start()) + rest.substring(brackets.end()))
              .replaceAll("\\s+", " ")
              .strip();
    }
    if (rest.startsWith("of ")) {
      rest = rest.substring(3).strip();
    }
    if (rest.isEmpty()) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT,
          "an ingredient is missing",
          "\"" + text + "\"",
          "write it like 500 g bread flour");
    }
    Found found = find(rest, catalogue, text);
    String wholeNote =
        note.isEmpty() ? found.note : found.note.isEmpty() ? note : note + ", " + found.note;
    return new Item(text, kind, stage, weigh(measure, found), wholeNote);
  }

  private static Optional<HouseholdAmount> massOf(String text, CupStandard cups) {
    try {
      HouseholdAmount amount = HouseholdAmount.parse(text, cups);
      return amount.kind() == Kind.MASS ? Optional.of(amount) : Optional.empty();
    } catch (BakeryException noAmount) {
      return Optional.empty();
    }
  }

  private record Found(
      Ingredient ingredient, @Nullable Filling filling, @Nullable String piece, String note) {}

  /** Looks up the longest name; what is left is a filling, a size or a note. */
  private static Found find(String rest, Catalogue catalogue, String line) {
    String name = rest;
    String note = "";
    Optional<Ingredient> ingredient = catalogue.find(name);
    while (ingredient.isEmpty() && name.lastIndexOf(',') > 0) {
      int comma = name.lastIndexOf(',');
      String tail = name.substring(comma + 1).strip();
      note = note.isEmpty() ? tail : tail + ", " + note;
      name = name.substring(0, comma).strip();
      ingredient = catalogue.find(name);
    }
    Filling filling = filling(note).orElse(null);
    if (ingredient.isPresent()) {
      return new Found(ingredient.get(), filling, null, filling == null ? note : "");
    }
    int space = name.indexOf(' ');
    if (space > 0) {
      String first = name.substring(0, space);
      String second = name.substring(space + 1);
      Optional<Filling> word = filling(first);
      ingredient = catalogue.find(second);
      if (ingredient.isPresent() && word.isPresent()) {
        return new Found(ingredient.get(), word.get(), null, note);
      }
      if (ingredient.isPresent() && ingredient.get().hasPiece(first)) {
        return new Found(ingredient.get(), filling, first, note);
      }
    }
    throw new BakeryException(
        Reason.UNKNOWN_NAME,
        "no such ingredient in \"" + line + "\"",
        "\"" + name + "\"",
        catalogue.hint(name));
  }

  private static Optional<Filling> filling(String word) {
    for (Filling filling : Filling.values()) {
      if (filling.word().equalsIgnoreCase(word)) {
        return Optional.of(filling);
      }
    }
    return Optional.empty();
  }

  private static Weighed weigh(HouseholdAmount measure, Found found) {
    if (found.piece != null) {
      return found.ingredient.weighPieces(measure, found.piece);
    }
    return found.filling != null
        ? found.ingredient.weigh(measure, found.filling)
        : found.ingredient.weigh(measure);
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
    return Formula.byWeight(
        name,
        f -> {
          Map<String, List<Integer>> before = new LinkedHashMap<>();
          for (int i = 0; i < items.size(); i++) {
            Item item = items.get(i);
            Amount<Mass> mass = masses.get(i);
            Ingredient ingredient = item.weighed.ingredient();
            switch (item.kind) {
              case FINAL_DOUGH -> f.line(ingredient, mass);
              case ROLL_IN -> f.rollIn(ingredient, mass);
              case FINISH -> f.finish(ingredient, mass);
              default -> before.computeIfAbsent(item.stage, s -> new ArrayList<>()).add(i);
            }
          }
          before.forEach(
              (stage, list) ->
                  f.stage(
                      items.get(list.get(0)).kind,
                      stage,
                      s ->
                          list.forEach(
                              i -> s.line(items.get(i).weighed.ingredient(), masses.get(i)))));
        });
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
    }
    return advice;
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
    for (Item item : items) {
      Weighed weighed = item.weighed;
      String range =
          weighed.range().low().equals(weighed.range().high())
              ? ""
              : format.mass(weighed.range().low()) + " to " + format.mass(weighed.range().high());
      table.row("  " + item.text, format.mass(weighed.mass()), range);
    }
    return table.toString();
  }
}
