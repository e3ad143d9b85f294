package org.tourage.ingredient;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.KILOJOULE;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;
import org.tourage.internal.Csv;

/**
 * The tables of the library. Only the names are read at first; an ingredient is made from its row
 * when it is asked for, because a formula needs five of three hundred.
 */
final class CatalogueTable {
  private static final String RELEASE = "SR28 ";
  private static final String RELEASE_NAME =
      "USDA National Nutrient Database for Standard Reference, Release 28 (SR28, 2015), ";

  /** Columns with a share of the mass: the component and how many of its units make 100 g. */
  private static final Object[][] COLUMNS = {
    {"water", Component.WATER, 100.0},
    {"protein", Component.PROTEIN, 100.0},
    {"fat", Component.FAT, 100.0},
    {"carbohydrate", Component.CARBOHYDRATE, 100.0},
    {"fibre", Component.FIBRE, 100.0},
    {"sugars", Component.SUGARS, 100.0},
    {"ash", Component.ASH, 100.0},
    {"sodium_mg", Component.SODIUM, 1e5},
    {"saturated_fat", Component.SATURATED_FAT, 100.0},
    {"alcohol", Component.ALCOHOL, 100.0},
    {"starch", Component.STARCH, 100.0},
    {"sucrose", Component.SUCROSE, 100.0},
    {"glucose", Component.GLUCOSE, 100.0},
    {"fructose", Component.FRUCTOSE, 100.0},
    {"lactose", Component.LACTOSE, 100.0},
    {"maltose", Component.MALTOSE, 100.0},
    {"monounsaturated_fat", Component.MONOUNSATURATED_FAT, 100.0},
    {"polyunsaturated_fat", Component.POLYUNSATURATED_FAT, 100.0},
    {"trans_fat", Component.TRANS_FAT, 100.0},
    {"cholesterol_mg", Component.CHOLESTEROL, 1e5},
    {"potassium_mg", Component.POTASSIUM, 1e5},
    {"calcium_mg", Component.CALCIUM, 1e5},
    {"iron_mg", Component.IRON, 1e5},
    {"vitamin_d_ug", Component.VITAMIN_D, 1e8},
  };

  /** The place of each row in the table of ingredients, by id, in the order of the table. */
  private final Map<String, String> rows = new LinkedHashMap<>();

  /** The ids by looked-up name. */
  private final Map<String, String> names = new HashMap<>(2048);

  /** Names of things that are not in the table, with what stands nearest to them. */
  private final Map<String, List<String>> nearNames = new HashMap<>();

  /** The rows of the table of portions, by id. */
  private final Map<String, String> portions = new HashMap<>();

  private final Map<String, Ingredient> made = new ConcurrentHashMap<>();
  private final List<String> header;
  private final Ingredient.Spreads spreads = new Ingredient.Spreads();
  private final Map<String, Ingredient.Spread> ownSpreads = new HashMap<>();

  CatalogueTable() {
    String ingredients = text("ingredients.csv");
    int start = ingredients.indexOf('\n') + 1;
    header = Csv.fields(ingredients.substring(0, start - 1));
    while (start < ingredients.length()) {
      int end = lineEnd(ingredients, start);
      String row = ingredients.substring(start, end);
      String id = row.substring(0, row.indexOf(','));
      rows.put(id, row);
      names.put(CatalogueNames.key(id), id);
      names.put(CatalogueNames.key(second(row)), id);
      start = end + 1;
    }
    readNames();
    readPortions();
    for (Map<String, String> row : Csv.table(CatalogueTable.class, "spreads.csv")) {
      Ingredient.Spread spread =
          new Ingredient.Spread(number(row, "low"), number(row, "middle"), number(row, "high"));
      String role = Csv.field(row, "role");
      if (rows.containsKey(role)) {
        ownSpreads.put(role, spread);
      } else {
        spreads.put(role, Csv.field(row, "filling"), spread);
      }
    }
  }

  private void readNames() {
    String table = text("names.csv");
    int start = table.indexOf('\n') + 1;
    while (start < table.length()) {
      int end = lineEnd(table, start);
      int comma = table.indexOf(',', start);
      int last = table.lastIndexOf(',', end);
      String id = table.substring(start, comma);
      String name = CatalogueNames.key(table.substring(comma + 1, last).replace("\"", ""));
      if (last + 1 == end) {
        names.put(name, id);
      } else {
        nearNames.computeIfAbsent(name, n -> new ArrayList<>()).add(id);
      }
      start = end + 1;
    }
  }

  /** The rows of one ingredient stand together. */
  private void readPortions() {
    String table = text("portions.csv");
    int start = table.indexOf('\n') + 1;
    int first = start;
    String id = "";
    while (start < table.length()) {
      String next = table.substring(start, table.indexOf(',', start));
      if (!next.equals(id)) {
        if (!id.isEmpty()) {
          portions.put(id, table.substring(first, start));
        }
        id = next;
        first = start;
      }
      start = lineEnd(table, start) + 1;
    }
    portions.put(id, table.substring(first));
  }

  private static int lineEnd(String text, int start) {
    int end = text.indexOf('\n', start);
    return end < 0 ? text.length() : end;
  }

  /** The second field of a row, which can be quoted. */
  private static String second(String row) {
    int start = row.indexOf(',') + 1;
    boolean quoted = row.charAt(start) == '"';
    return quoted
        ? row.substring(start + 1, row.indexOf('"', start + 1))
        : row.substring(start, row.indexOf(',', start));
  }

  private static String text(String resource) {
    try (InputStream in =
        requireNonNull(CatalogueTable.class.getResourceAsStream(resource), resource)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The ids in the order of the table. */
  Iterable<String> ids() {
    return Collections.unmodifiableSet(rows.keySet());
  }

  /** The id behind a looked-up name. */
  @Nullable String id(String key) {
    return names.get(key);
  }

  /** The names that can be looked up, with their ids. */
  Map<String, String> names() {
    return Collections.unmodifiableMap(names);
  }

  /** The ids that stand nearest to a thing that is not in the table. */
  List<String> nearest(String key) {
    return nearNames.getOrDefault(key, List.of());
  }

  Ingredient ingredient(String id) {
    Ingredient known = made.get(id);
    if (known == null) {
      Ingredient fresh = make(id);
      Ingredient before = made.putIfAbsent(id, fresh);
      known = before == null ? fresh : before;
    }
    return known;
  }

  private Ingredient make(String id) {
    List<String> fields = Csv.fields(requireNonNull(rows.get(id), id));
    Map<String, String> row = new HashMap<>();
    for (int i = 0; i < fields.size(); i++) {
      row.put(header.get(i), fields.get(i));
    }
    EnumSet<Role> roles = EnumSet.noneOf(Role.class);
    for (String role : Csv.field(row, "roles").split(" ")) {
      roles.add(Role.valueOf(role));
    }
    Ingredient.Builder builder =
        Ingredient.builder(id, Csv.field(row, "name"))
            .origin(Origin.valueOf(Csv.field(row, "origin")))
            .composition(composition(row))
            .allergens(allergens(Csv.field(row, "allergens")))
            .allergensToCheck(allergens(Csv.field(row, "allergens_to_check")))
            .spreads(spreads(id, roles));
    roles.forEach(builder::role);
    ExchangeFacts.addTo(builder, id);
    String lines = portions.getOrDefault(id, "");
    if (!lines.isEmpty()) {
      for (String line : lines.split("\n")) {
        List<String> portion = Csv.fields(line);
        builder.portion(
            portion.get(1) + " " + portion.get(2),
            Filling.valueOf(portion.get(3).toUpperCase(Locale.ROOT).replace(' ', '_')),
            GRAM.amount(Double.parseDouble(portion.get(4))),
            source(portion.get(6), portion.get(7)));
      }
    }
    return builder.build();
  }

  private static Composition composition(Map<String, String> row) {
    Composition.Builder composition =
        Composition.builder()
            .source(source(Csv.field(row, "source"), Csv.field(row, "provenance")));
    for (Object[] column : COLUMNS) {
      String value = Csv.field(row, (String) column[0]);
      if (!value.isEmpty()) {
        composition.published(
            (Component) column[1], Double.parseDouble(value) / (Double) column[2]);
      }
    }
    String sugars = Csv.field(row, "sugars");
    switch (Csv.field(row, "added_sugars")) {
      case "all" -> {
        if (!sugars.isEmpty()) {
          composition.published(Component.ADDED_SUGARS, Double.parseDouble(sugars) / 100);
        }
      }
      case "none" -> composition.published(Component.ADDED_SUGARS, 0);
      default -> {
        // a part, or a matter of the label: unknown, which is not the same as none
      }
    }
    String energy = Csv.field(row, "energy_kj");
    if (!energy.isEmpty()) {
      composition.printedEnergy(KILOJOULE.amount(Double.parseDouble(energy)));
    }
    return composition.build();
  }

  /** An ingredient whose measures spread more than those of its role has a row of its own. */
  private Ingredient.Spreads spreads(String id, EnumSet<Role> roles) {
    Ingredient.Spread own = ownSpreads.get(id);
    if (own == null) {
      return spreads;
    }
    Ingredient.Spreads table = new Ingredient.Spreads();
    roles.forEach(role -> table.put(role.name(), "", own));
    return table;
  }

  /** The release is named in full only once. */
  private static Source source(String text, String provenance) {
    Provenance traced = Provenance.of(provenance);
    return traced == Provenance.FETCHED && text.startsWith(RELEASE)
        ? new Source(
            RELEASE_NAME
                + text.substring(RELEASE.length())
                    .replace(" Seq ", " (public domain), Weight file, Seq ")
                + (text.contains(" Seq ") ? "" : " (public domain)"),
            traced)
        : new Source(text, traced);
  }

  private static double number(Map<String, String> row, String column) {
    return Double.parseDouble(Csv.field(row, column));
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
