package org.tourage.label;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tourage.internal.Csv;
import org.tourage.internal.Numbers;

/** The tables of the label: energy factors, rounding, daily values. Read when first needed. */
final class LabelTables {
  /** The name under which the tables carry the energy. */
  static final String ENERGY = "ENERGY";

  private static final String FOLDER = "/org/tourage/ingredient/";

  /** Half of a step is rounded up; noise of the last bits does not move a value over a limit. */
  private static final int CLEAN_DIGITS = 12;

  private LabelTables() {}

  /**
   * One step of rounding.
   *
   * @param upTo the limit, infinite for the last
   * @param inclusive whether the limit itself belongs to this step
   * @param step the step, NaN where words are printed
   * @param prints the words
   */
  record Step(double upTo, boolean inclusive, double step, String prints) {
    boolean holds(double value) {
      return value < upTo || (inclusive && value == upTo);
    }
  }

  /** Energy of a gram. */
  record Factor(double kilojoules, double kilocalories) {}

  private static final class Read {
    static final Map<String, List<Step>> ROUNDING = new HashMap<>();
    static final Map<String, Double> DAILY = new HashMap<>();
    static final Map<LabelScheme, Map<Nutrient, Factor>> FACTORS = new EnumMap<>(LabelScheme.class);

    static {
      for (Map<String, String> row : Csv.table(LabelTables.class, FOLDER + "label-rounding.csv")) {
        String limit = Csv.field(row, "up_to");
        String step = Csv.field(row, "step");
        ROUNDING
            .computeIfAbsent(key(row), k -> new ArrayList<>())
            .add(
                new Step(
                    limit.isEmpty() ? Double.POSITIVE_INFINITY : Double.parseDouble(limit),
                    Csv.field(row, "inclusive").equals("yes"),
                    step.isEmpty() ? Double.NaN : Double.parseDouble(step),
                    Csv.field(row, "prints")));
      }
      for (Map<String, String> row :
          Csv.table(LabelTables.class, FOLDER + "label-daily-values.csv")) {
        DAILY.put(key(row), Double.parseDouble(Csv.field(row, "amount")));
      }
      for (Map<String, String> row :
          Csv.table(LabelTables.class, FOLDER + "label-energy-factors.csv")) {
        FACTORS
            .computeIfAbsent(
                LabelScheme.valueOf(Csv.field(row, "scheme")), s -> new EnumMap<>(Nutrient.class))
            .put(
                Nutrient.valueOf(Csv.field(row, "nutrient")),
                new Factor(
                    Double.parseDouble(Csv.field(row, "kj_per_gram")),
                    Double.parseDouble(Csv.field(row, "kcal_per_gram"))));
      }
    }

    private Read() {}

    private static String key(Map<String, String> row) {
      return Csv.field(row, "scheme")
          + " "
          + Csv.field(row, "nutrient")
          + " "
          + Csv.field(row, "unit");
    }
  }

  static Map<Nutrient, Factor> factors(LabelScheme scheme) {
    return Read.FACTORS.getOrDefault(scheme, Map.of());
  }

  static Optional<Double> daily(LabelScheme scheme, String nutrient, String unit) {
    return Optional.ofNullable(Read.DAILY.get(scheme + " " + nutrient + " " + unit));
  }

  /** A value as the scheme prints it; empty where it has no rule for it. */
  static Optional<String> print(LabelScheme scheme, String nutrient, String unit, double value) {
    List<Step> steps = Read.ROUNDING.get(scheme + " " + nutrient + " " + unit);
    if (steps == null) {
      return Optional.empty();
    }
    double clean = Double.parseDouble(Numbers.significant(value, CLEAN_DIGITS));
    for (int i = 0; i < steps.size(); i++) {
      Step step = steps.get(i);
      if (step.holds(clean)) {
        return Optional.of(
            Double.isNaN(step.step) ? step.prints : number(scheme, steps, i, clean) + " " + unit);
      }
    }
    return Optional.empty();
  }

  private static String number(LabelScheme scheme, List<Step> steps, int index, double value) {
    double step = steps.get(index).step;
    long count = Long.parseLong(Numbers.fixed(value / step, 0));
    double rounded = Numbers.cleanProduct(count, step);
    // what is rounded up to the limit is written as from there on: 10 g, not 10.0 g
    boolean carried = rounded >= steps.get(index).upTo && index + 1 < steps.size();
    double shown = carried ? steps.get(index + 1).step : step;
    int decimals = shown >= 1 ? 0 : shown >= 0.1 ? 1 : 2;
    return scheme == LabelScheme.US
        ? Numbers.decimals(rounded, decimals)
        : Numbers.fixed(rounded, decimals);
  }
}
