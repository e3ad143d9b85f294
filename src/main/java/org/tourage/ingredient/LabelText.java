package org.tourage.ingredient;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Mass;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amounts;
import org.tourage.quantity.BakeryUnits;
import org.tourage.quantity.Density;
import org.tourage.quantity.HouseholdAmount;

/**
 * Reads an ingredient of one's own from lines of {@code key: value}, as they stand in a recipe or a
 * catalogue file:
 *
 * <pre>
 * role: flour
 * per: 100 g            (or the serving: per: 30 g)
 * energy: 1450 kJ / 342 kcal
 * fat: 1.2 g
 * saturates: 0.2 g
 * carbohydrate: 70 g    (or: total carbohydrate, with the fibre)
 * sugars: 0.9 g
 * fibre: 3.1 g
 * protein: 11.6 g
 * salt: 0.01 g          (or: sodium: 4 mg)
 * ash: 0.55 g
 * allergens: wheat
 * may contain: soy, rye
 * measure: 1 cup = 120 g
 * also: our flour, shop flour
 * </pre>
 *
 * <p>Further keys: origin (plant, animal, check label), water, alcohol, added sugars, trans fat,
 * cholesterol, potassium, calcium, iron, vitamin d, starch, density, source. Empty lines and lines
 * that start with {@code #} are passed over. Every line that can't be read is told, not only the
 * first.
 */
public final class LabelText {
  private static final Map<String, Component> FIGURES = new LinkedHashMap<>();

  static {
    FIGURES.put("fat", Component.FAT);
    FIGURES.put("total fat", Component.FAT);
    FIGURES.put("saturates", Component.SATURATED_FAT);
    FIGURES.put("saturated fat", Component.SATURATED_FAT);
    FIGURES.put("trans fat", Component.TRANS_FAT);
    FIGURES.put("cholesterol", Component.CHOLESTEROL);
    FIGURES.put("sugars", Component.SUGARS);
    FIGURES.put("total sugars", Component.SUGARS);
    FIGURES.put("added sugars", Component.ADDED_SUGARS);
    FIGURES.put("starch", Component.STARCH);
    FIGURES.put("fibre", Component.FIBRE);
    FIGURES.put("fiber", Component.FIBRE);
    FIGURES.put("dietary fiber", Component.FIBRE);
    FIGURES.put("protein", Component.PROTEIN);
    FIGURES.put("sodium", Component.SODIUM);
    FIGURES.put("alcohol", Component.ALCOHOL);
    FIGURES.put("ash", Component.ASH);
    FIGURES.put("water", Component.WATER);
    FIGURES.put("potassium", Component.POTASSIUM);
    FIGURES.put("calcium", Component.CALCIUM);
    FIGURES.put("iron", Component.IRON);
    FIGURES.put("vitamin d", Component.VITAMIN_D);
  }

  private static final Pattern DENSITY =
      Pattern.compile(
          "(\\d+(?:\\.\\d+)?)\\s*(g/ml|g/cm3|g/cm³|kg/m3|kg/m³)", Pattern.CASE_INSENSITIVE);

  private static final List<String> OTHER_KEYS =
      List.of(
          "role",
          "origin",
          "per",
          "energy",
          "carbohydrate",
          "total carbohydrate",
          "salt",
          "density",
          "allergens",
          "may contain",
          "measure",
          "also",
          "source");

  private LabelText() {}

  /**
   * A line that can't be read, or a contradiction of the whole.
   *
   * @param line its number from 1 among the given lines; 0 for the label as a whole
   * @param problem what is wrong with it
   */
  public record Problem(int line, BakeryException problem) implements Serializable {
    /**
     * Checks that nothing is null.
     *
     * @param line its number from 1 among the given lines; 0 for the label as a whole
     * @param problem what is wrong with it
     */
    public Problem {
      requireNonNull(problem, "problem");
    }

    /** {@code line 3: …}. */
    @Override
    public String toString() {
      return (line > 0 ? "line " + line + ": " : "") + problem.getMessage();
    }
  }

  /** What was read: an ingredient, or every problem that stands in its way. */
  public static final class Reading implements Serializable {
    private static final long serialVersionUID = 1L;

    /** The ingredient, if there is no problem. */
    private final @Nullable Ingredient ingredient;

    /** Further everyday names of it. */
    private final List<String> names;

    /** Every problem. */
    private final List<Problem> problems;

    private Reading(@Nullable Ingredient ingredient, List<String> names, List<Problem> problems) {
      this.ingredient = ingredient;
      this.names = List.copyOf(names);
      this.problems = List.copyOf(problems);
    }

    /**
     * The ingredient.
     *
     * @return the ingredient; empty if there is a problem
     */
    public Optional<Ingredient> ingredient() {
      return Optional.ofNullable(ingredient);
    }

    /**
     * Further everyday names of it, from the line {@code also}.
     *
     * @return the names
     */
    public List<String> names() {
      return names;
    }

    /**
     * What could not be read, line by line, then what the label contradicts.
     *
     * @return the problems; none if there is an ingredient
     */
    public List<Problem> problems() {
      return problems;
    }

    /**
     * The ingredient, which must have been readable.
     *
     * @return the ingredient
     * @throws BakeryException the first problem, if there is one
     */
    public Ingredient require() {
      if (ingredient == null) {
        throw problems.get(0).problem();
      }
      return ingredient;
    }

    /** The ingredient, or the problems one a line. */
    @Override
    public String toString() {
      return ingredient != null
          ? ingredient + ": " + ingredient.composition()
          : problems.stream().map(Problem::toString).collect(Collectors.joining("\n"));
    }
  }

  /**
   * Reads a label.
   *
   * @param name the everyday name of the ingredient
   * @param lines the lines after the heading
   * @return the ingredient or its problems, line by line
   */
  public static Reading parse(String name, List<String> lines) {
    return new Lines(name, lines).read();
  }

  /** One reading. */
  private static final class Lines {
    private final String name;
    private final Map<String, String> values = new LinkedHashMap<>();
    private final Map<String, Integer> numbers = new HashMap<>();
    private final List<Problem> problems = new ArrayList<>();

    Lines(String name, List<String> lines) {
      this.name = requireNonNull(name, "name");
      int number = 0;
      for (String line : lines) {
        number++;
        String text = line.strip();
        if (!text.isEmpty() && !text.startsWith("#")) {
          take(number, text);
        }
      }
    }

    private void take(int number, String text) {
      int colon = text.indexOf(':');
      if (colon <= 0 || colon == text.length() - 1) {
        problem(
            number,
            Reason.UNREADABLE_TEXT,
            "not a line of a label",
            "\"" + text + "\"",
            "write it like fat: 1.2 g");
        return;
      }
      String key =
          text.substring(0, colon).strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", " ");
      String value = text.substring(colon + 1).strip();
      boolean known = FIGURES.containsKey(key) || OTHER_KEYS.contains(key);
      if (!known) {
        List<String> keys = new ArrayList<>(OTHER_KEYS);
        keys.addAll(FIGURES.keySet());
        problem(
            number,
            Reason.UNKNOWN_NAME,
            "a label has no such line",
            "\"" + key + "\"",
            "use one of " + String.join(", ", keys));
      } else if (values.containsKey(canonical(key)) && !key.equals("measure")) {
        problem(
            number,
            Reason.INCONSISTENT,
            "given twice in the label of " + name,
            "\"" + text + "\" and line " + numbers.get(canonical(key)),
            "give it once");
      } else {
        values.merge(canonical(key), value, (a, b) -> a + "\n" + b);
        numbers.putIfAbsent(canonical(key), number);
      }
    }

    /** Two words for one figure are one key. */
    private static String canonical(String key) {
      Component component = FIGURES.get(key);
      if (component != null) {
        return component.name();
      }
      return switch (key) {
        case "total carbohydrate" -> "carbohydrate+";
        default -> key;
      };
    }

    private void problem(int line, Reason reason, String what, String given, String expected) {
      problems.add(new Problem(line, new BakeryException(reason, what, given, expected)));
    }

    private Optional<String> value(String key) {
      return Optional.ofNullable(values.get(key));
    }

    private void each(String key, Use use) {
      String value = values.get(key);
      if (value != null) {
        try {
          use.of(value);
        } catch (BakeryException e) {
          problems.add(new Problem(requireNonNull(numbers.get(key)), e));
        }
      }
    }

    private interface Use {
      void of(String value);
    }

    Reading read() {
      PackLabel label = base();
      each("role", v -> words(v).forEach(w -> label.role(role(w))));
      each("origin", v -> label.origin(origin(v)));
      each("source", label::source);
      each("energy", v -> label.energy(energy(v)));
      if (values.containsKey("carbohydrate") && values.containsKey("carbohydrate+")) {
        problem(
            requireNonNull(numbers.get("carbohydrate+")),
            Reason.INCONSISTENT,
            "carbohydrate with and without its fibre",
            "both given for " + name,
            "give the one that the label prints");
      }
      each("carbohydrate", v -> label.carbohydrate(mass(v)));
      each("carbohydrate+", v -> label.totalCarbohydrate(mass(v)));
      if (values.containsKey("salt") && values.containsKey(Component.SODIUM.name())) {
        problem(
            requireNonNull(numbers.get("salt")),
            Reason.INCONSISTENT,
            "salt and sodium",
            "both given for " + name,
            "give the one that the label prints; salt is sodium × 2.5");
      }
      each("salt", v -> label.salt(mass(v)));
      for (Component component : new LinkedHashSet<>(FIGURES.values())) {
        each(component.name(), v -> label.with(component, mass(v)));
      }
      each("allergens", v -> label.allergens(allergens(v)));
      each("may contain", v -> label.mayContain(allergens(v)));
      each("density", v -> label.density(density(v)));
      each("measure", v -> v.lines().forEach(line -> measure(label, line)));
      if (problems.isEmpty()) {
        for (PackLabel.Contradiction contradiction : label.contradictions()) {
          problems.add(new Problem(lineOf(contradiction.about()), contradiction.problem()));
        }
      }
      Ingredient ingredient = problems.isEmpty() ? label.ingredient() : null;
      return new Reading(ingredient, words(value("also").orElse("")), problems);
    }

    private int lineOf(@Nullable Component component) {
      return component == null ? 0 : numbers.getOrDefault(component.name(), 0);
    }

    private PackLabel base() {
      PackLabel[] label = {PackLabel.per100Grams(name)};
      each("per", v -> label[0] = PackLabel.perServing(name, mass(v)));
      return label[0];
    }

    private static Quantity<Mass> mass(String text) {
      return text.toLowerCase(Locale.ROOT).endsWith("µg") || text.endsWith("mcg")
          ? micrograms(text)
          : Amounts.mass(text);
    }

    private static Quantity<Mass> micrograms(String text) {
      String number = text.replaceAll("(?i)(µg|mcg)$", "").strip();
      return BakeryUnits.GRAM.amount(Amounts.mass(number + " g").in(BakeryUnits.GRAM) / 1_000_000);
    }

    /** One of two energies is enough; two must be the same. */
    private static Quantity<Energy> energy(String text) {
      String[] parts = text.split("/");
      Quantity<Energy> first = HouseholdAmount.parse(parts[0].strip()).to(BakeryUnits.KILOJOULE);
      if (parts.length > 1) {
        double second = HouseholdAmount.parse(parts[1].strip()).to(BakeryUnits.KILOJOULE).value();
        double kilojoules = BakeryUnits.KILOJOULE.measure("the first", first);
        if (Math.abs(second - kilojoules) > 0.05 * kilojoules + 10) {
          throw new BakeryException(
              Reason.INCONSISTENT,
              "two energies that are not the same",
              "\"" + text + "\"",
              "1 kcal is 4.184 kJ");
        }
      }
      return first;
    }

    private static Quantity<Density> density(String text) {
      Matcher matcher = DENSITY.matcher(text);
      if (!matcher.matches()) {
        throw new BakeryException(
            Reason.UNREADABLE_TEXT,
            "not a density",
            "\"" + text + "\"",
            "write it like 0.53 g/ml or 530 kg/m3");
      }
      double value = Double.parseDouble(matcher.group(1));
      return matcher.group(2).startsWith("k")
          ? BakeryUnits.KILOGRAM_PER_CUBIC_METRE.amount(value)
          : BakeryUnits.GRAM_PER_MILLILITRE.amount(value);
    }

    private static void measure(PackLabel label, String line) {
      int equals = line.indexOf('=');
      if (equals <= 0) {
        throw new BakeryException(
            Reason.UNREADABLE_TEXT,
            "not a household measure",
            "\"" + line + "\"",
            "write it like measure: 1 cup = 120 g");
      }
      label.measure(
          line.substring(0, equals).strip(), Amounts.mass(line.substring(equals + 1).strip()));
    }

    private static Role role(String word) {
      return constant(Role.class, word, "no such role");
    }

    private static Origin origin(String word) {
      return constant(Origin.class, word, "no such origin");
    }

    private static Allergen[] allergens(String text) {
      List<Allergen> list = new ArrayList<>();
      for (String word : words(text)) {
        list.add(allergen(word));
      }
      return list.toArray(new Allergen[0]);
    }

    private static Allergen allergen(String word) {
      String wanted = CatalogueNames.key(word);
      for (Allergen allergen : Allergen.values()) {
        if (CatalogueNames.key(allergen.word()).equals(wanted)
            || allergen.name().toLowerCase(Locale.ROOT).replace('_', ' ').equals(wanted)) {
          return allergen;
        }
      }
      return constant(Allergen.class, word, "no such allergen of the legal lists");
    }

    private static <E extends Enum<E>> E constant(Class<E> type, String word, String problem) {
      String wanted = word.strip().toUpperCase(Locale.ROOT).replaceAll("[\\s-]+", "_");
      EnumMap<E, String> words = new EnumMap<>(type);
      for (E constant : requireNonNull(type.getEnumConstants())) {
        if (constant.name().equals(wanted)) {
          return constant;
        }
        words.put(constant, constant.name().toLowerCase(Locale.ROOT).replace('_', ' '));
      }
      throw BakeryException.unknownName(problem, word, words.values());
    }

    private static List<String> words(String text) {
      List<String> words = new ArrayList<>();
      for (String word : text.split(",")) {
        if (!word.isBlank()) {
          words.add(word.strip());
        }
      }
      return words;
    }
  }
}
