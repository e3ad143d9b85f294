package org.tourage.lamination;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Temperature;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Csv;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.AmountRange;
import org.tourage.quantity.Given;

/**
 * How much of a fat is solid, by temperature, and the window in which it can be rolled: from 45 %
 * solid (at the cold end) to 25 % (at the warm end). Those two figures are set so that dairy
 * butterfat gets the window that bakers give dairy butter, about 13 to 18 °C (common practice); for
 * other fats they are a transfer. Straight lines between the points; products of one name differ.
 * Immutable and serialisable.
 *
 * <pre>{@code
 * FatCurve.named("coconut oil").window(); // narrow: brittle below, oil above
 * }</pre>
 */
public final class FatCurve implements Serializable {
  private static final long serialVersionUID = 1L;
  private static final double HARD_END = 45;
  private static final double SOFT_END = 25;

  /** Percent solid at which a fat runs out of the layers; dairy butter comes to it near 31 °C. */
  private static final double RUNNING = 5;

  /** A proof stays this much below: 2 to 4 K, common practice. */
  private static final double PROOF_MARGIN_KELVIN = 3;

  private static final String TABLE = "/org/tourage/ingredient/solid-fat.csv";

  /** The name, which is no product's. */
  private final String name;

  /** Temperatures, rising. */
  private final double[] celsius;

  /** Percent solid at each, falling. */
  private final double[] solid;

  /** Heat of melting of the solid fat in J/kg. */
  private final double fusion;

  /** Where the figures come from. */
  private final String source;

  /** Whether the fat is rolled in, and whether a window by solid fat holds for it. */
  private final RollIn rollIn;

  private FatCurve(
      String name, double[] celsius, double[] solid, double fusion, String source, RollIn rollIn) {
    this.name = name;
    this.celsius = celsius;
    this.solid = solid;
    this.fusion = fusion;
    this.source = source;
    this.rollIn = rollIn;
  }

  /** What a fat is to lamination. */
  private enum RollIn {
    /** The window by solid fat was set by this fat, or the user says so. */
    YES,
    /** The window by solid fat is a transfer: the maker's curve decides. */
    ASK,
    /** Brittle as long as it is solid. */
    NO
  }

  /** Loads on first use. */
  private static final class Table {
    static final Map<String, FatCurve> CURVES = load();

    private Table() {}

    private static Map<String, FatCurve> load() {
      Map<String, List<Map<String, String>>> rows = new LinkedHashMap<>();
      for (Map<String, String> row : Csv.table(FatCurve.class, TABLE)) {
        rows.computeIfAbsent(Csv.field(row, "name"), n -> new ArrayList<>()).add(row);
      }
      Map<String, FatCurve> curves = new LinkedHashMap<>();
      rows.forEach(
          (name, list) -> {
            NavigableMap<Double, Double> points = new TreeMap<>();
            list.forEach(
                row ->
                    points.put(
                        Double.valueOf(Csv.field(row, "celsius")),
                        Double.valueOf(Csv.field(row, "solid_percent"))));
            Map<String, String> first = list.get(0);
            curves.put(
                name,
                make(
                    name,
                    points,
                    1000 * Double.parseDouble(Csv.field(first, "fusion_kj_per_kg")),
                    Csv.field(first, "source")
                        + " ("
                        + Csv.field(first, "provenance")
                        + "); heat of melting: "
                        + Csv.field(first, "fusion_source")
                        + " ("
                        + Csv.field(first, "fusion_provenance")
                        + ")",
                    RollIn.valueOf(Csv.field(first, "roll_in").toUpperCase(Locale.ROOT))));
          });
      return curves;
    }
  }

  /**
   * The curves of the library: dairy butterfat, palm oil, coconut oil, palm kernel oil, cocoa
   * butter.
   *
   * @return the curves
   */
  public static List<FatCurve> all() {
    return List.copyOf(Table.CURVES.values());
  }

  /**
   * A curve of the library.
   *
   * @param name its name
   * @return the curve
   * @throws BakeryException if there is none of that name
   */
  public static FatCurve named(String name) {
    requireNonNull(name, "name");
    FatCurve curve = Table.CURVES.get(name.strip().toLowerCase(Locale.ROOT));
    if (curve == null) {
      throw new BakeryException(
          Reason.UNKNOWN_NAME,
          "no solid-fat curve of that name",
          "\"" + name + "\"",
          "use one of " + Table.CURVES.keySet() + ", or give your own points");
    }
    return curve;
  }

  /**
   * A curve of one's own, for example from a supplier's data sheet.
   *
   * @param name the name
   * @param percentByCelsius percent solid by temperature in °C, at least two points, falling to 0
   * @param fusion heat of melting of the solid fat in J/kg, 0 or more
   * @param source where the figures come from
   * @return the curve
   * @throws BakeryException if the points do not fall from at most 100 % to 0 %
   */
  public static FatCurve of(
      String name, Map<Double, Double> percentByCelsius, double fusion, String source) {
    return make(name, new TreeMap<>(percentByCelsius), fusion, source, RollIn.YES);
  }

  private static FatCurve make(
      String name,
      NavigableMap<Double, Double> points,
      double fusion,
      String source,
      RollIn rollIn) {
    double[] t = points.keySet().stream().mapToDouble(d -> d).toArray();
    double[] s = points.values().stream().mapToDouble(d -> d).toArray();
    boolean falls = t.length >= 2 && s[0] <= 100 && s[t.length - 1] == 0 && fusion >= 0;
    for (int i = 1; i < t.length; i++) {
      falls &= s[i] < s[i - 1];
    }
    if (!falls) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "the solid fat must fall with the temperature, from at most 100 % to 0 %",
          name + " " + points,
          "give at least two points, the last at 0 %");
    }
    return new FatCurve(
        requireNonNull(name, "name"), t, s, fusion, requireNonNull(source, "source"), rollIn);
  }

  /**
   * The name.
   *
   * @return for example {@code palm oil}
   */
  public String name() {
    return name;
  }

  /**
   * Where the figures come from.
   *
   * @return the source
   */
  public String source() {
    return source;
  }

  /**
   * How much heat it takes to melt the solid part.
   *
   * @return J for each kg of solid fat
   */
  public double fusion() {
    return fusion;
  }

  /**
   * Whether the fat can be rolled in at all: cocoa butter can't, it is brittle as long as it is
   * solid and oil when it is not.
   *
   * @return false for cocoa butter; true for every other curve
   */
  public boolean canBeRolledIn() {
    return rollIn != RollIn.NO;
  }

  /**
   * What is to be said about this fat between layers of dough.
   *
   * @return a warning for a fat that is no roll-in fat; a note where the window by solid fat alone
   *     is a transfer from dairy butter; none for dairy butterfat and for a curve of one's own
   */
  public List<Advice> rollIn() {
    return switch (rollIn) {
      case YES -> List.of();
      case ASK ->
          List.of(
              Advice.of(
                  "FAT_WINDOW_TRANSFER",
                  "a window by solid fat alone holds for butter-like fats; for "
                      + name
                      + " it is a transfer",
                  "Ask the maker of the fat for its curve and its working temperatures"));
      case NO ->
          List.of(
              Advice.of(
                  "NO_ROLL_IN_FAT",
                  name + " is no roll-in fat: it breaks as long as it is solid, and runs above",
                  "Take a fat that is made for rolling in, or dairy butter"));
    };
  }

  double solidPercent(double at) {
    int i = Arrays.binarySearch(celsius, at);
    if (i >= 0) {
      return solid[i];
    }
    int above = -i - 1;
    if (above == 0) {
      return solid[0];
    } else if (above == celsius.length) {
      return 0;
    }
    double share = (at - celsius[above - 1]) / (celsius[above] - celsius[above - 1]);
    return solid[above - 1] + share * (solid[above] - solid[above - 1]);
  }

  /** Percent of solid fat lost for a kelvin more; 0 outside the points. */
  double fallPerKelvin(double at) {
    int i = Arrays.binarySearch(celsius, at);
    int above = i >= 0 ? i + 1 : -i - 1;
    if (above == 0 || above >= celsius.length) {
      return 0;
    }
    return (solid[above - 1] - solid[above]) / (celsius[above] - celsius[above - 1]);
  }

  /**
   * How much of the fat is solid; below the first point as there, above the last nothing.
   *
   * @param temperature the temperature
   * @return the share
   */
  public Amount<Dimensionless> solid(Quantity<Temperature> temperature) {
    requireNonNull(temperature, "temperature");
    return PERCENT.amount(solidPercent(CELSIUS.measure("the temperature", temperature)));
  }

  /**
   * The temperature at which so much of the fat is solid.
   *
   * @param share the share, within the points
   * @return the temperature
   * @throws BakeryException if the curve does not reach the share
   */
  public Amount<Temperature> temperatureAt(Quantity<Dimensionless> share) {
    requireNonNull(share, "share");
    double wanted = PERCENT.measure("the share", share);
    for (int i = 1; i < celsius.length; i++) {
      if (solid[i] <= wanted && wanted <= solid[i - 1]) {
        double part = (solid[i - 1] - wanted) / (solid[i - 1] - solid[i]);
        return CELSIUS.amount(celsius[i - 1] + part * (celsius[i] - celsius[i - 1]));
      }
    }
    throw new BakeryException(
        Reason.OUT_OF_RANGE,
        "the curve of " + name + " does not reach this share of solid fat",
        Given.ratio("the share", share).to(PERCENT).toString(),
        "give 0 % to " + solid[0] + " %");
  }

  /**
   * The temperatures between which the fat can be rolled.
   *
   * @return the window
   * @throws BakeryException if it is no roll-in fat ({@link #canBeRolledIn()})
   */
  public AmountRange<Temperature> window() {
    if (!canBeRolledIn()) {
      throw new BakeryException(
          Reason.MEANINGLESS,
          "there is no temperature at which this fat can be rolled",
          name,
          "take a fat that is made for rolling in; this one is brittle as long as it is solid");
    }
    return new AmountRange<>(
        temperatureAt(PERCENT.amount(HARD_END)), temperatureAt(PERCENT.amount(SOFT_END)));
  }

  /**
   * How warm a laminated dough with this fat may proof: 3 K below the temperature at which 5 % of
   * it are solid. For dairy butterfat that is about 28 °C, where bakers stop (26 to 28 °C, common
   * practice); for other fats it is a transfer.
   *
   * @return the temperature
   */
  public Amount<Temperature> proofLimit() {
    return CELSIUS.amount(temperatureAt(PERCENT.amount(RUNNING)).in(CELSIUS) - PROOF_MARGIN_KELVIN);
  }

  /**
   * Whether a laminated dough with this fat may proof at a temperature.
   *
   * @param proof the temperature of the proofer
   * @return advice if it is too warm
   */
  public List<Advice> proof(Quantity<Temperature> proof) {
    requireNonNull(proof, "proof");
    Amount<Temperature> limit = proofLimit();
    if (Given.temperature("the proof", proof).compareTo(limit) <= 0) {
      return List.of();
    }
    AmountFormat format = AmountFormat.sideBySide();
    return List.of(
        Advice.of(
            "PROOF_WARM",
            "a proof at "
                + format.temperature(proof)
                + " leaves the "
                + name
                + " only "
                + format.percent(solid(proof))
                + " solid: it runs out of the layers",
            "Proof at " + format.temperature(limit) + " or below, and longer",
            source));
  }

  /**
   * Whether dough and fat match now.
   *
   * @param fat the temperature of the fat
   * @param dough the temperature of the dough
   * @return advice; none if the fat is in its window and the dough will not soften it
   */
  public List<Advice> match(Quantity<Temperature> fat, Quantity<Temperature> dough) {
    requireNonNull(fat, "fat");
    requireNonNull(dough, "dough");
    if (!canBeRolledIn()) {
      return rollIn();
    }
    List<Advice> advice = new ArrayList<>();
    AmountRange<Temperature> window = window();
    AmountFormat format = AmountFormat.sideBySide();
    Amount<Temperature> fatNow = Given.temperature("the fat", fat);
    String state =
        "the "
            + name
            + " is at "
            + format.temperature(fat)
            + ", "
            + format.percent(solid(fat))
            + " solid";
    String range = format.temperature(window.low()) + " to " + format.temperature(window.high());
    if (fatNow.compareTo(window.low()) < 0) {
      advice.add(Advice.of("FAT_HARD", state + ": it will crack", "Temper it to " + range, source));
    } else if (fatNow.compareTo(window.high()) > 0) {
      advice.add(
          Advice.of(
              "FAT_SOFT",
              state + ": it will smear into the dough",
              "Chill it to " + range,
              source));
    }
    if (Given.temperature("the dough", dough).compareTo(window.high()) > 0) {
      advice.add(
          Advice.of(
              "DOUGH_WARM",
              "the dough is at " + format.temperature(dough) + " and will soften the fat",
              "Chill the dough below " + format.temperature(window.high())));
    }
    return advice;
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof FatCurve that
        && name.equals(that.name)
        && Arrays.equals(celsius, that.celsius)
        && Arrays.equals(solid, that.solid)
        && fusion == that.fusion
        && rollIn == that.rollIn;
  }

  @Override
  public int hashCode() {
    return 31 * name.hashCode() + Arrays.hashCode(solid);
  }

  /** {@code palm oil: can be rolled from 13 °C (55 °F) to 20.6 °C (69 °F)}. */
  @Override
  public String toString() {
    if (!canBeRolledIn()) {
      return name + ": no roll-in fat";
    }
    AmountFormat format = AmountFormat.sideBySide();
    AmountRange<Temperature> window = window();
    return name
        + ": can be rolled from "
        + format.temperature(window.low())
        + " to "
        + format.temperature(window.high());
  }
}
