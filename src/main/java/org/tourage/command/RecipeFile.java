package org.tourage.command;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.command.FileParts.Holds;
import org.tourage.command.FileParts.Numbered;
import org.tourage.command.FileParts.OwnIngredient;
import org.tourage.command.FileParts.Priced;
import org.tourage.command.FileParts.Value;
import org.tourage.day.DayPlan;
import org.tourage.day.Step;
import org.tourage.quantity.AmountFormat;

/**
 * A recipe file: settings ({@code pieces: 12}), recipe lines under their headings ({@code [dough]},
 * {@code [preferment Poolish]}, {@code [soaker NAME]}, {@code [roll-in]}, {@code [finish]}),
 * ingredients of one's own ({@code [ingredient NAME]}) and under {@code [steps]} the steps in
 * order. A kitchen file has settings only. What can't be read is collected, so that all complaints
 * come at once.
 *
 * <pre>{@code
 * DayPlan plan = RecipeFile.parse("rolls.txt", text).with("pieces", "24").plan();
 * }</pre>
 */
public final class RecipeFile {
  private static final int MOST_LINES = 200_000;
  static final int MOST_COMPLAINTS = 50;

  private final String name;
  private final Map<String, Value> values = new LinkedHashMap<>();
  private final Map<String, Value> options = new LinkedHashMap<>();
  private final Map<String, Value> kitchen = new LinkedHashMap<>();
  private final List<Numbered> recipe = new ArrayList<>();
  private final List<Step> steps = new ArrayList<>();
  private final List<Numbered> stepLines = new ArrayList<>();
  private final List<OwnIngredient> ingredients = new ArrayList<>();
  private final List<Priced> prices = new ArrayList<>();
  private final List<Complaint> complaints = new ArrayList<>();

  private RecipeFile(String name) {
    this.name = requireNonNull(name, "name");
  }

  private RecipeFile(RecipeFile from) {
    this(from.name);
    values.putAll(from.values);
    options.putAll(from.options);
    kitchen.putAll(from.kitchen);
    recipe.addAll(from.recipe);
    steps.addAll(from.steps);
    stepLines.addAll(from.stepLines);
    ingredients.addAll(from.ingredients);
    prices.addAll(from.prices);
    complaints.addAll(from.complaints);
  }

  /**
   * Reads a recipe file. Complaints are kept until {@link #plan()}.
   *
   * @param name its name, for the messages
   * @param text its text
   * @return the file
   */
  public static RecipeFile parse(String name, String text) {
    RecipeFile file = new RecipeFile(name);
    file.read(name, requireNonNull(text, "text"), file.values, Holds.RECIPE);
    return file;
  }

  /**
   * The file with a kitchen file beneath it: what the recipe sets itself wins.
   *
   * @param kitchenName the name of the kitchen file, for the messages
   * @param text its text
   * @return the changed file
   */
  public RecipeFile withKitchen(String kitchenName, String text) {
    requireNonNull(kitchenName, "kitchenName");
    RecipeFile file = new RecipeFile(this);
    file.read(kitchenName, requireNonNull(text, "text"), file.kitchen, Holds.KITCHEN);
    return file;
  }

  /**
   * The file with a catalogue file beneath it: ingredients of one's own and prices.
   *
   * @param catalogueName the name of the catalogue file, for the messages
   * @param text its text
   * @return the changed file
   */
  public RecipeFile withCatalogue(String catalogueName, String text) {
    requireNonNull(catalogueName, "catalogueName");
    RecipeFile file = new RecipeFile(this);
    file.read(catalogueName, requireNonNull(text, "text"), file.kitchen, Holds.CATALOGUE);
    return file;
  }

  /**
   * The file with another setting, as an option of the command line gives it.
   *
   * @param key the setting's word, for example {@code pieces}
   * @param value its value
   * @return the changed file
   */
  public RecipeFile with(String key, String value) {
    requireNonNull(key, "key");
    requireNonNull(value, "value");
    RecipeFile file = new RecipeFile(this);
    Origin origin = Origin.option(key);
    file.attempt(
        origin,
        () -> {
          LineText.check(value);
          file.put(file.options, Settings.of(key), new Value(value.strip(), origin));
        });
    return file;
  }

  private void read(String file, String text, Map<String, Value> into, Holds holds) {
    // a byte-order mark is no part of the first line
    String plain = text.startsWith("\uFEFF") ? text.substring(1) : text;
    String[] section = {""};
    Numbered[] heading = {new Numbered(0, "")};
    int number = 0;
    for (String raw : (Iterable<String>) plain.lines()::iterator) {
      number++;
      String line = raw.strip();
      if (line.isEmpty() || line.startsWith("#")) {
        continue;
      }
      if (number > MOST_LINES || complaints.size() >= MOST_COMPLAINTS) {
        complaints.add(Complaint.stop(Origin.line(file, number), complaints.size(), MOST_LINES));
        return;
      }
      Numbered here = new Numbered(number, line);
      Origin origin = Origin.line(file, number);
      attempt(
          origin,
          () -> {
            LineText.check(line);
            if (line.startsWith("[")) {
              section[0] = FileParts.section(line);
              heading[0] = here;
              open(section[0], here, origin, holds);
            } else if (section[0].equals("steps")) {
              stepLines.add(here);
              steps.add(StepText.parse(line));
            } else if (section[0].equals("ingredient")) {
              ingredients.get(ingredients.size() - 1).lines().add(here);
            } else if (section[0].equals("prices")) {
              prices.add(new Priced(line, origin));
            } else if (section[0].isEmpty()) {
              setting(line, origin, into, holds != Holds.RECIPE);
            } else {
              recipe.add(here);
            }
          });
    }
  }

  private void open(String section, Numbered here, Origin origin, Holds holds) {
    holds.check(section, here.text());
    if (section.equals("recipe")) {
      recipe.add(here);
    } else if (section.equals("ingredient")) {
      ingredients.add(FileParts.opened(here.text(), origin));
    }
  }

  private void setting(String line, Origin origin, Map<String, Value> into, boolean kitchenFile) {
    int colon = line.indexOf(':');
    boolean key = colon > 0 && line.substring(0, colon).strip().matches("[a-zA-Z-]+");
    if (!key) {
      if (kitchenFile) {
        throw new BakeryException(
            Reason.UNREADABLE_TEXT,
            "not a setting",
            "\"" + line + "\"",
            "write it like room: 21 °C");
      }
      // lines before the first heading are the dough
      recipe.add(new Numbered(origin.line(), line));
      return;
    }
    Setting<?> setting = Settings.of(line.substring(0, colon));
    if (kitchenFile && !Settings.ofTheKitchen(setting)) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "this belongs to a recipe, not to a kitchen",
          "\"" + setting.key() + "\"",
          "put it into the recipe file");
    }
    put(into, setting, new Value(line.substring(colon + 1).strip(), origin));
  }

  private void put(Map<String, Value> into, Setting<?> setting, Value value) {
    Value before = into.get(setting.key());
    if (before != null) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "a setting is given twice",
          setting.key() + " (" + before.origin() + ")",
          "keep one of both");
    }
    into.put(setting.key(), value);
  }

  private void attempt(Origin origin, Runnable work) {
    try {
      work.run();
    } catch (BakeryException wrong) {
      complaints.add(new Complaint(origin, wrong));
    }
  }

  /**
   * The plan that the file describes.
   *
   * @return the plan
   * @throws WrongInput if anything can't be read; it has all complaints, each with its line
   */
  public DayPlan plan() {
    return new PlanReader(this).plan();
  }

  /**
   * All that the setting {@code show} asks for: the bench sheet unless it is set, and label, cost,
   * shopping list and scaling sheet, in this order of its words.
   *
   * @return the text
   * @throws WrongInput if anything can't be read
   */
  public String text() {
    return new PlanReader(this).text();
  }

  /**
   * Which units are printed.
   *
   * @return the format of the setting {@code units}
   * @throws WrongInput if the setting can't be read
   */
  public AmountFormat format() {
    return new PlanReader(this).format();
  }

  String name() {
    return name;
  }

  /** The value of a setting: of an option, of the recipe, of the kitchen, in this order. */
  @Nullable Value value(Setting<?> setting) {
    for (Map<String, Value> map : List.of(options, values, kitchen)) {
      Value value = map.get(setting.key());
      if (value != null) {
        return value;
      }
    }
    return null;
  }

  /** What the recipe and the options set, for the complaint about what nothing used. */
  Map<String, Value> own() {
    Map<String, Value> own = new LinkedHashMap<>(values);
    own.putAll(options);
    return own;
  }

  List<Numbered> recipe() {
    return recipe;
  }

  List<Step> steps() {
    return steps;
  }

  List<Numbered> stepLines() {
    return stepLines;
  }

  List<OwnIngredient> ingredients() {
    return ingredients;
  }

  List<Priced> prices() {
    return prices;
  }

  List<Complaint> complaints() {
    return complaints;
  }
}
