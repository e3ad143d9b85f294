package org.tourage.ingredient;

import static org.tourage.quantity.BakeryUnits.KILOCALORIE;
import static org.tourage.quantity.BakeryUnits.KILOJOULE;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.ingredient.FoodDocument.Measure;
import org.tourage.internal.Csv;
import org.tourage.internal.Numbers;
import org.tourage.internal.VisibleText;

/** Reads the figures of one food and refuses those that can't be. */
final class FoodReader {
  /** Labels are rounded; what is further off is of another base. */
  private static final double LABEL_SHARE = 0.2;

  private static final double LABEL_GRAMS = 1;
  private static final double LABEL_KILOCALORIES = 10;

  private static final Map<String, Component> LABEL =
      Map.of(
          "fat", Component.FAT,
          "saturatedFat", Component.SATURATED_FAT,
          "transFat", Component.TRANS_FAT,
          "carbohydrates", Component.CARBOHYDRATE,
          "fiber", Component.FIBRE,
          "sugars", Component.SUGARS,
          "addedSugar", Component.ADDED_SUGARS,
          "protein", Component.PROTEIN);

  /** What the label prints in milligrams. */
  private static final Map<String, Component> LABEL_MILLIGRAMS =
      Map.of(
          "cholesterol", Component.CHOLESTEROL,
          "sodium", Component.SODIUM,
          "calcium", Component.CALCIUM,
          "iron", Component.IRON,
          "potassium", Component.POTASSIUM);

  /** A row of the table of nutrients; without a component it is an energy. */
  private record Row(String id, String number, @Nullable Component part, String unit, int rank) {}

  /** Read when the first document is. */
  private static final class Table {
    static final List<Row> ROWS = rows();

    private Table() {}

    private static List<Row> rows() {
      List<Row> rows = new ArrayList<>();
      for (Map<String, String> row : Csv.table(FoodReader.class, "food-nutrients.csv")) {
        String part = Csv.field(row, "component");
        rows.add(
            new Row(
                Csv.field(row, "id"),
                Csv.field(row, "number"),
                part.equals("energy") ? null : Component.valueOf(part),
                Csv.field(row, "unit"),
                Integer.parseInt(Csv.field(row, "rank"))));
      }
      return List.copyOf(rows);
    }
  }

  private final long id;
  private final Map<String, Object> food;
  private final EnumMap<Component, Double> grams = new EnumMap<>(Component.class);
  private final EnumMap<Component, Integer> ranks = new EnumMap<>(Component.class);

  /** Kilojoules by the rank of their row. */
  private final Map<Integer, Double> energies = new HashMap<>();

  private final List<Measure> measures = new ArrayList<>();
  private final List<String> leftOut = new ArrayList<>();

  private FoodReader(long id, Map<String, Object> food) {
    this.id = id;
    this.food = food;
  }

  static FoodDocument read(Map<String, Object> food) {
    Object number = food.get("fdcId");
    BigDecimal id = number instanceof BigDecimal given ? given : BigDecimal.ZERO;
    boolean whole = id.signum() > 0 && id.scale() <= 0 && id.precision() - id.scale() <= 12;
    if (!whole) {
      throw new BakeryException(
          Reason.MISSING,
          "a food document has the number of its food",
          number == null ? "no fdcId" : "fdcId " + VisibleText.of(number.toString()),
          "give the food as it was downloaded, with a whole positive fdcId");
    }
    return new FoodReader(id.longValue(), food).document();
  }

  private FoodDocument document() {
    String description = text(food, "description");
    if (description.isBlank()) {
      throw refused(Reason.MISSING, "the description is missing", "none", "give the whole food");
    }
    for (Object entry : list("foodNutrients")) {
      nutrient(map(entry, "foodNutrients"));
    }
    for (Object entry : list("foodPortions")) {
      portion(map(entry, "foodPortions"));
    }
    String type = text(food, "dataType");
    boolean perVolume = branded(type) && perVolume();
    if (grams.isEmpty() && energies.isEmpty()) {
      throw refused(
          Reason.MISSING,
          "no nutrient is reported",
          "no amount under foodNutrients or labelNutrients",
          "download the food with its nutrients");
    }
    FoodChecks checks = new FoodChecks(id, grams);
    double energy = checks.energy(energies);
    checks.check(energy, perVolume);
    return new FoodDocument(
        new FoodDocument.Read(
            id,
            description.strip(),
            type.strip(),
            text(food, "publicationDate").strip(),
            text(food, "ingredients").strip(),
            grams,
            energy,
            measures,
            leftOut,
            perVolume));
  }

  private static boolean branded(String type) {
    return type.toLowerCase(Locale.ROOT).startsWith("branded");
  }

  /** Any of the layouts: the nutrient as an object of its own, or all keys side by side. */
  private void nutrient(Map<String, Object> entry) {
    Map<String, Object> nutrient =
        entry.containsKey("nutrient") ? map(entry.get("nutrient"), "nutrient") : entry;
    boolean full = nutrient != entry;
    String key = plain(full ? nutrient.get("id") : entry.get("nutrientId"));
    String number =
        plain(
            nutrient.containsKey("number") ? nutrient.get("number") : entry.get("nutrientNumber"));
    Row row = row(key, number);
    Object amount = entry.containsKey("amount") ? entry.get("amount") : entry.get("value");
    if (row == null || amount == null) {
      return;
    }
    String what = row.part == null ? "energy" : FoodChecks.word(row.part);
    String unit = text(nutrient, "unitName").strip();
    if (!sameUnit(unit, row.unit)) {
      throw refused(
          Reason.INCONSISTENT,
          "the " + what + " is in a wrong unit",
          unit.isEmpty() ? "no unitName" : "\"" + VisibleText.of(unit) + "\"",
          "nutrient " + row.id + " is in " + row.unit);
    }
    double value = number(amount, what, unit);
    if (row.part == null) {
      Double before =
          energies.put(
              row.rank,
              row.unit.equals("kJ") ? value : KILOJOULE.measure(KILOCALORIE.amount(value)));
      once(before == null || before.equals(energies.get(row.rank)), what);
      return;
    }
    double mass = value / (row.unit.equals("mg") ? 1e3 : row.unit.equals("ug") ? 1e6 : 1);
    Integer rank = ranks.get(row.part);
    once(rank == null || rank != row.rank || mass == grams.getOrDefault(row.part, 0.0), what);
    if (rank == null || row.rank < rank) {
      ranks.put(row.part, row.rank);
      grams.put(row.part, mass);
    }
  }

  private void once(boolean same, String what) {
    if (!same) {
      throw refused(
          Reason.INCONSISTENT,
          "the " + what + " has two values",
          "in one food",
          "give one of them");
    }
  }

  /** The row by id or by number; the two must not contradict each other. */
  private @Nullable Row row(String key, String number) {
    Row found = null;
    for (Row row : Table.ROWS) {
      boolean byKey = row.id.equals(key);
      boolean byNumber = row.number.equals(number);
      if (byKey && !number.isEmpty() && !byNumber) {
        boolean another = Table.ROWS.stream().anyMatch(r -> r.number.equals(number));
        if (another) {
          throw refused(
              Reason.INCONSISTENT,
              "the id and the number of a nutrient contradict each other",
              "id " + key + ", number " + VisibleText.of(number),
              "nutrient " + row.id + " has the number " + row.number);
        }
      }
      if (byKey || (key.isEmpty() && byNumber)) {
        found = row;
      }
    }
    return found;
  }

  private static boolean sameUnit(String given, String wanted) {
    String unit = given.toLowerCase(Locale.ROOT);
    boolean micro = unit.equals("\u00b5g") || unit.equals("\u03bcg") || unit.equals("mcg");
    return (micro ? "ug" : unit).equals(wanted.toLowerCase(Locale.ROOT));
  }

  private double number(@Nullable Object value, String what, String unit) {
    double number = value instanceof BigDecimal given ? given.doubleValue() : Double.NaN;
    if (!(number >= 0) || number > 1e9) {
      throw refused(
          value instanceof BigDecimal ? Reason.OUT_OF_RANGE : Reason.UNREADABLE_TEXT,
          "the " + what + " can't be",
          VisibleText.of(String.valueOf(value)) + (unit.isEmpty() ? "" : " " + unit),
          "a number that is not negative");
    }
    return number;
  }

  /** The serving says whether the figures are for 100 g or for 100 ml. */
  private boolean perVolume() {
    String unit = text(food, "servingSizeUnit").strip().toLowerCase(Locale.ROOT);
    boolean mass = unit.equals("g") || unit.equals("grm");
    boolean volume = unit.equals("ml") || unit.equals("mlt");
    if (!mass && !volume) {
      throw refused(
          unit.isEmpty() ? Reason.MISSING : Reason.INCONSISTENT,
          "whether the figures are for 100 g or 100 ml is not said",
          unit.isEmpty()
              ? "no servingSizeUnit"
              : "servingSizeUnit \"" + VisibleText.of(unit) + "\"",
          "download the full document; its serving is in g or ml");
    }
    if (food.containsKey("labelNutrients")) {
      double serving = number(food.get("servingSize"), "serving", unit);
      if (!(serving > 0)) {
        throw refused(
            Reason.OUT_OF_RANGE, "a serving must be something", "0 " + unit, "a positive serving");
      }
      label(map(food.get("labelNutrients"), "labelNutrients"), serving);
    }
    return volume;
  }

  /** The label is for a serving: it fills what is not reported, or must fit what is. */
  private void label(Map<String, Object> label, double serving) {
    boolean alone = grams.isEmpty() && energies.isEmpty();
    for (Map.Entry<String, Object> entry : label.entrySet()) {
      Object value = map(entry.getValue(), entry.getKey()).get("value");
      if (value == null) {
        continue;
      }
      if (entry.getKey().equals("calories")) {
        double kilojoules =
            KILOJOULE.measure(KILOCALORIE.amount(number(value, "energy", "kcal") * 100 / serving));
        double slack = KILOJOULE.measure(KILOCALORIE.amount(LABEL_KILOCALORIES)) * 100 / serving;
        if (alone) {
          energies.put(1, kilojoules);
        } else if (energies.containsKey(1)) {
          fits("energy", kilojoules, energies.getOrDefault(1, 0.0), slack);
        }
        continue;
      }
      Component part = LABEL.get(entry.getKey());
      boolean milligrams = part == null;
      part = milligrams ? LABEL_MILLIGRAMS.get(entry.getKey()) : part;
      if (part == null) {
        continue;
      }
      double mass =
          number(value, FoodChecks.word(part), milligrams ? "mg" : "g")
              / (milligrams ? 1e3 : 1)
              * 100
              / serving;
      if (alone) {
        grams.put(part, mass);
      } else if (grams.containsKey(part)) {
        fits(
            FoodChecks.word(part),
            mass,
            grams.getOrDefault(part, 0.0),
            LABEL_GRAMS * 100 / serving);
      }
    }
  }

  private void fits(String what, double label, double food, double slack) {
    if (Math.abs(label - food) > slack + LABEL_SHARE * Math.max(label, food)) {
      throw refused(
          Reason.INCONSISTENT,
          "the " + what + " of the label does not fit the food",
          Numbers.significant(label, 4)
              + " by the serving, "
              + Numbers.significant(food, 4)
              + " reported, in a hundred",
          "labelNutrients are for a serving, foodNutrients for 100 g or 100 ml");
    }
  }

  /** A cup, a spoon or a piece; what else there is stands among what is left out. */
  private void portion(Map<String, Object> entry) {
    Object mass = entry.get("gramWeight");
    if (mass == null) {
      return;
    }
    double weight = number(mass, "portion", "g");
    Object count = entry.get("amount");
    double amount = count == null ? 1 : number(count, "amount of a portion", "");
    String unit = "";
    if (entry.get("measureUnit") instanceof Map<?, ?> measure
        && measure.get("name") instanceof String name
        && !name.equals("undetermined")) {
      unit = name.strip();
    }
    String modifier = text(entry, "modifier").strip();
    String words = unit.isEmpty() ? modifier : modifier.isEmpty() ? unit : unit + ", " + modifier;
    int comma = words.indexOf(',');
    String measure = comma < 0 ? words : words.substring(0, comma).strip();
    Filling filling =
        comma < 0 ? Filling.AS_IS : FoodMeasures.filling(words.substring(comma + 1).strip());
    String text = Numbers.significant(amount, 6) + " " + measure;
    if (filling == null || weight <= 0 || amount <= 0 || !FoodMeasures.isMeasure(text)) {
      leftOut.add(VisibleText.of(Numbers.significant(amount, 6) + " " + words));
    } else {
      measures.add(new Measure(text, filling, weight));
    }
  }

  private List<?> list(String key) {
    Object value = food.get(key);
    if (value == null) {
      return List.of();
    }
    if (value instanceof List<?> list) {
      return list;
    }
    throw refused(Reason.UNREADABLE_TEXT, key + " is no list", kind(value), "a list");
  }

  @SuppressWarnings("unchecked")
  private Map<String, Object> map(@Nullable Object value, String key) {
    if (value instanceof Map) {
      return (Map<String, Object>) value;
    }
    throw refused(Reason.UNREADABLE_TEXT, key + " holds no object", kind(value), "an object");
  }

  private String text(Map<String, Object> map, String key) {
    Object value = map.get(key);
    if (value == null) {
      return "";
    }
    if (value instanceof String text) {
      return text;
    }
    throw refused(Reason.UNREADABLE_TEXT, key + " is no text", kind(value), "a text");
  }

  private static String plain(@Nullable Object value) {
    return value == null || value instanceof Map || value instanceof List
        ? ""
        : value.toString().strip();
  }

  private static String kind(@Nullable Object value) {
    return value == null
        ? "nothing"
        : value instanceof Map ? "an object" : VisibleText.of(value.toString());
  }

  private BakeryException refused(Reason reason, String problem, String given, String expected) {
    return new BakeryException(reason, problem + " in fdcId " + id, given, expected);
  }
}
