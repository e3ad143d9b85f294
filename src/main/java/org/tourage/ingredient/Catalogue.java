package org.tourage.ingredient;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Csv;

/**
 * Ingredients by id and by everyday name. {@link #builtIn()} reads the tables of the library when
 * it is first called; {@link #with(Ingredient)} adds one's own, which takes precedence. Immutable.
 *
 * <pre>{@code
 * Catalogue.builtIn().require("bread flour").composition();
 * }</pre>
 */
public final class Catalogue {
  private static final int NEAR_MATCHES = 3;

  private final Map<String, Ingredient> byName;
  private final Map<String, Ingredient> byId;

  private Catalogue(Map<String, Ingredient> byId, Map<String, Ingredient> byName) {
    this.byId = byId;
    this.byName = byName;
  }

  /** Loads on first use, not when the class {@link Catalogue} is. */
  private static final class BuiltIn {
    static final Catalogue CATALOGUE = load();

    private BuiltIn() {}
  }

  /**
   * The catalogue of the library.
   *
   * @return the same every time
   */
  public static Catalogue builtIn() {
    return BuiltIn.CATALOGUE;
  }

  /**
   * This catalogue with one more ingredient, which takes precedence over one of the same id or
   * name.
   *
   * @param ingredient the ingredient
   * @return a new catalogue
   */
  public Catalogue with(Ingredient ingredient) {
    requireNonNull(ingredient, "ingredient");
    Map<String, Ingredient> ids = new LinkedHashMap<>(byId);
    Map<String, Ingredient> names = new LinkedHashMap<>(byName);
    names.values().removeIf(known -> known.equals(ingredient));
    ids.put(ingredient.id(), ingredient);
    names.put(key(ingredient.id()), ingredient);
    names.put(key(ingredient.name()), ingredient);
    return new Catalogue(ids, names);
  }

  /**
   * Every ingredient.
   *
   * @return the ingredients, in the order of the tables
   */
  public Collection<Ingredient> all() {
    return Collections.unmodifiableCollection(byId.values());
  }

  /**
   * Looks up an ingredient by id or everyday name; capitals, hyphens and a plural do not matter.
   *
   * @param name for example {@code bread flour}
   * @return the ingredient, if there is one
   */
  public Optional<Ingredient> find(String name) {
    return Optional.ofNullable(byName.get(key(name)));
  }

  /**
   * Looks up an ingredient that must be there.
   *
   * @param name for example {@code bread flour}
   * @return the ingredient
   * @throws BakeryException if there is none; the message offers near matches
   */
  public Ingredient require(String name) {
    return find(name)
        .orElseThrow(
            () ->
                new BakeryException(
                    Reason.UNKNOWN_NAME,
                    "no such ingredient",
                    "\"" + name + "\"",
                    "did you mean " + String.join(", ", near(name)) + "?"));
  }

  /**
   * The names nearest to a name.
   *
   * @param name the name
   * @return up to three everyday names, the nearest first
   */
  public List<String> near(String name) {
    String wanted = key(name);
    List<String> keys = new ArrayList<>(byName.keySet());
    keys.sort(Comparator.comparingDouble(k -> distance(wanted, k)));
    return keys.stream()
        .map(k -> requireNonNull(byName.get(k)).name())
        .distinct()
        .limit(NEAR_MATCHES)
        .toList();
  }

  /** Edits between two names, less for each word that they share. */
  private static double distance(String a, String b) {
    int[] previous = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      previous[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int[] current = new int[b.length() + 1];
      current[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        current[j] = Math.min(previous[j - 1] + change, Math.min(previous[j], current[j - 1]) + 1);
      }
      previous = current;
    }
    List<String> words = new ArrayList<>(List.of(a.split(" ")));
    words.retainAll(List.of(b.split(" ")));
    int shared = String.join("", words).length();
    return previous[b.length()] - 0.8 * shared;
  }

  /** One form for all spellings of a name. */
  private static String key(String name) {
    String[] words =
        name.toLowerCase(Locale.ROOT)
            .replace('-', ' ')
            .replace('\u2019', '\'')
            .strip()
            .split("[\\s,]+");
    for (int i = 0; i < words.length; i++) {
      boolean plural = words[i].length() > 3 && words[i].endsWith("s") && !words[i].endsWith("ss");
      words[i] = plural ? words[i].substring(0, words[i].length() - 1) : words[i];
    }
    return String.join(" ", words);
  }

  private static Catalogue load() {
    Ingredient.Spreads spreads = new Ingredient.Spreads();
    for (Map<String, String> row : Csv.table(Catalogue.class, "spreads.csv")) {
      spreads.put(
          Csv.field(row, "role"),
          Csv.field(row, "filling"),
          new Ingredient.Spread(number(row, "low"), number(row, "middle"), number(row, "high")));
    }
    Map<String, List<Map<String, String>>> portions = new LinkedHashMap<>();
    for (Map<String, String> row : Csv.table(Catalogue.class, "portions.csv")) {
      portions.computeIfAbsent(Csv.field(row, "id"), id -> new ArrayList<>()).add(row);
    }
    Map<String, Ingredient> ids = new LinkedHashMap<>();
    Map<String, Ingredient> names = new LinkedHashMap<>();
    for (Map<String, String> row : Csv.table(Catalogue.class, "ingredients.csv")) {
      Ingredient ingredient =
          ingredient(row, portions.getOrDefault(Csv.field(row, "id"), List.of()), spreads);
      ids.put(ingredient.id(), ingredient);
      names.put(key(ingredient.id()), ingredient);
      names.put(key(ingredient.name()), ingredient);
    }
    for (Map<String, String> row : Csv.table(Catalogue.class, "names.csv")) {
      names.put(
          key(Csv.field(row, "name")),
          requireNonNull(ids.get(Csv.field(row, "id")), Csv.field(row, "id")));
    }
    return new Catalogue(ids, names);
  }

  private static double number(Map<String, String> row, String column) {
    return Double.parseDouble(Csv.field(row, column));
  }

  private static Ingredient ingredient(
      Map<String, String> row, List<Map<String, String>> portions, Ingredient.Spreads spreads) {
    Source source =
        new Source(Csv.field(row, "source"), Provenance.of(Csv.field(row, "provenance")));
    Composition.Builder composition = Composition.builder().source(source);
    share(composition, row, "water", Component.WATER, 1);
    share(composition, row, "protein", Component.PROTEIN, 1);
    share(composition, row, "fat", Component.FAT, 1);
    share(composition, row, "carbohydrate", Component.CARBOHYDRATE, 1);
    share(composition, row, "fibre", Component.FIBRE, 1);
    share(composition, row, "sugars", Component.SUGARS, 1);
    share(composition, row, "ash", Component.ASH, 1);
    share(composition, row, "sodium_mg", Component.SODIUM, 1000);
    share(composition, row, "saturated_fat", Component.SATURATED_FAT, 1);
    Ingredient.Builder builder =
        Ingredient.builder(Csv.field(row, "id"), Csv.field(row, "name"))
            .origin(Origin.valueOf(Csv.field(row, "origin")))
            .composition(composition.build())
            .spreads(spreads);
    for (String role : Csv.field(row, "roles").split(" ")) {
      builder.role(Role.valueOf(role));
    }
    builder.allergens(allergens(Csv.field(row, "allergens")));
    builder.allergensToCheck(allergens(Csv.field(row, "allergens_to_check")));
    for (Map<String, String> portion : portions) {
      builder.portion(
          Csv.field(portion, "amount") + " " + Csv.field(portion, "measure"),
          Filling.valueOf(Csv.field(portion, "filling").toUpperCase(Locale.ROOT).replace(' ', '_')),
          GRAM.amount(number(portion, "grams")),
          new Source(
              Csv.field(portion, "source"), Provenance.of(Csv.field(portion, "provenance"))));
    }
    return builder.build();
  }

  private static void share(
      Composition.Builder builder,
      Map<String, String> row,
      String column,
      Component component,
      double perGram) {
    String value = Csv.field(row, column);
    if (!value.isEmpty()) {
      builder.with(component, PERCENT.amount(Double.parseDouble(value) / perGram));
    }
  }

  private static Allergen[] allergens(String words) {
    List<Allergen> list = new ArrayList<>();
    for (String word : words.split(" ")) {
      if (!word.isEmpty()) {
        list.add(Allergen.valueOf(word));
      }
    }
    return list.toArray(new Allergen[0]);
  }
}
