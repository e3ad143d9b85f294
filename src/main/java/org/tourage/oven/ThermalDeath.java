package org.tourage.oven;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Csv;
import org.tourage.internal.Numbers;
import org.tourage.physics.TemperatureHistory;
import org.tourage.physics.TemperatureHistory.Leg;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.AmountRange;
import org.tourage.quantity.Given;
import org.tourage.quantity.TemperatureDifference;

/**
 * How fast heat kills an organism in one kind of dough: log reductions = ∫dt / D(T). D is the time
 * in which nine of ten die. Between two tested temperatures log D lies on the straight line between
 * the two measured ones; above the highest tested temperature it stays the D measured there, and
 * below the lowest one nothing counts. So no history is promised more than the measured table
 * gives. The printed z is kept for comparison and for {@link #equivalent}; no kill is worked from
 * it.
 *
 * <p>The figures hold for the organism, the product and the temperatures that were tested, and for
 * nothing else. A calculation is no validation: validate with a process authority.
 *
 * @param name organism and product
 * @param table the measured pairs, two or more, rising in temperature and falling in D
 * @param z by how much the temperature rises for a tenth of D, as printed, or fitted where nothing
 *     was printed
 * @param source where the figures come from
 */
public record ThermalDeath(String name, List<Tested> table, TemperatureDifference z, String source)
    implements Serializable {
  private static final String TABLE = "/org/tourage/ingredient/lethality.csv";
  private static final int PAIRS_OF_A_SPREAD = 3;

  /**
   * A measured pair.
   *
   * @param at the temperature that was tested
   * @param decimal D there: the time in which nine of ten die
   */
  public record Tested(Amount<Temperature> at, Amount<Time> decimal) implements Serializable {
    /**
     * Checks the pair.
     *
     * @param at the temperature that was tested
     * @param decimal D there: the time in which nine of ten die, above 0
     */
    public Tested {
      requireNonNull(decimal, "decimal");
      requireNonNull(at, "at");
      if (decimal.value() <= 0) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE, "no organism dies so", "D " + decimal, "give a D above 0 min");
      }
    }

    /**
     * A measured pair.
     *
     * @param at the temperature that was tested
     * @param decimal D there, above 0
     * @return the pair
     * @throws BakeryException if D is not above 0
     */
    public static Tested of(Quantity<Temperature> at, Quantity<Time> decimal) {
      return new Tested(
          Given.temperature("the at", requireNonNull(at, "at")),
          Given.time("the decimal", requireNonNull(decimal, "decimal")));
    }

    /** {@code 28.64 min at 55 °C (131 °F)}. */
    @Override
    public String toString() {
      return decimal + " at " + AmountFormat.sideBySide().temperature(at);
    }
  }

  /**
   * z by least squares of log D on the temperature.
   *
   * @param z by how much the temperature rises for a tenth of D
   * @param uncertainty its standard uncertainty, from the scatter of the pairs about the line
   * @param pairs how many pairs there were; the scatter has two degrees of freedom fewer
   */
  public record Fit(TemperatureDifference z, TemperatureDifference uncertainty, int pairs)
      implements Serializable {
    /** {@code z 6.26 K ± 0.43 K from 3 pairs}. */
    @Override
    public String toString() {
      return "z "
          + kelvins(z)
          + " ± "
          + Numbers.significant(uncertainty.celsiusDegrees(), 2)
          + " K from "
          + pairs
          + " pairs";
    }
  }

  /**
   * Checks the figures.
   *
   * @param name organism and product
   * @param table the measured pairs, two or more, rising in temperature and falling in D
   * @param z by how much the temperature rises for a tenth of D, above 0
   * @param source where the figures come from
   */
  public ThermalDeath {
    requireNonNull(table, "table");
    requireNonNull(z, "z");
    requireNonNull(name, "name");
    requireNonNull(source, "source");
    table = List.copyOf(table);
    if (table.size() < 2) {
      throw new BakeryException(
          Reason.MISSING,
          "a death curve needs two tested temperatures",
          name + ": " + table,
          "give another pair of temperature and D, or a D with its z and the range tested");
    }
    for (int i = 1; i < table.size(); i++) {
      boolean rises = table.get(i).at.compareTo(table.get(i - 1).at) > 0;
      boolean falls = table.get(i).decimal.compareTo(table.get(i - 1).decimal) < 0;
      if (!rises || !falls) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            "D must fall as the temperature rises",
            name + ": " + table.get(i - 1) + ", then " + table.get(i),
            "give each temperature once, the coolest first, and check the figures");
      }
    }
    if (z.celsiusDegrees() <= 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no organism dies so",
          name + ": z " + kelvins(z),
          "give z above 0 K");
    }
  }

  /**
   * An organism of one's own by measured pairs; z is fitted to them.
   *
   * @param name organism and product
   * @param source where the figures come from
   * @param pairs the measured pairs in any order, two or more
   * @return the case
   * @throws BakeryException if there are fewer than two, or D does not fall with the temperature
   */
  public static ThermalDeath of(String name, String source, Tested... pairs) {
    List<Tested> table = new ArrayList<>(List.of(pairs));
    table.sort(Comparator.comparing(Tested::at));
    DeathCurve.Line line = DeathCurve.Line.through(table);
    // a line that does not fall is refused with the pairs that are wrong
    double z = line.slope() < 0 ? -1 / line.slope() : 1;
    return new ThermalDeath(name, table, TemperatureDifference.ofCelsiusDegrees(z), source);
  }

  /**
   * An organism of one's own by one D and its z, within the range that was tested.
   *
   * @param name organism and product
   * @param source where the figures come from
   * @param reference the temperature of D, within the range
   * @param decimal D there, above 0
   * @param z by how much the temperature rises for a tenth of D, above 0
   * @param tested the temperatures that were tested, the lowest below the highest
   * @return the case
   * @throws BakeryException if a figure can't be
   */
  public static ThermalDeath of(
      String name,
      String source,
      Quantity<Temperature> reference,
      Quantity<Time> decimal,
      TemperatureDifference z,
      AmountRange<Temperature> tested) {
    if (!tested.contains(reference) || !(z.celsiusDegrees() > 0)) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "D must belong to the range tested, and z be above 0 K",
          Given.temperature("the reference", reference) + " in " + tested + ", z " + kelvins(z),
          "give the temperatures that were tested, or leave the D out");
    }
    Tested middle = Tested.of(reference, decimal);
    List<Tested> table = new ArrayList<>();
    for (Amount<Temperature> at : new TreeSet<>(List.of(tested.low(), middle.at, tested.high()))) {
      double higher = (at.in(CELSIUS) - middle.at.in(CELSIUS)) / z.celsiusDegrees();
      table.add(
          at.equals(middle.at)
              ? middle
              : Tested.of(at, middle.decimal.multiply(StrictMath.pow(10, -higher))));
    }
    return new ThermalDeath(name, table, z, source);
  }

  /**
   * The published cases of the library, with the z that was printed with them.
   *
   * @return the cases, read from its table
   */
  public static List<ThermalDeath> all() {
    Map<String, List<Map<String, String>>> rows = new LinkedHashMap<>();
    for (Map<String, String> row : Csv.table(ThermalDeath.class, TABLE)) {
      rows.computeIfAbsent(Csv.field(row, "name"), n -> new ArrayList<>()).add(row);
    }
    List<ThermalDeath> all = new ArrayList<>();
    rows.forEach(
        (name, list) ->
            all.add(
                new ThermalDeath(
                    name,
                    list.stream()
                        .map(
                            r ->
                                Tested.of(
                                    CELSIUS.amount(number(r, "celsius")),
                                    MINUTE.amount(number(r, "d_minutes"))))
                        .toList(),
                    TemperatureDifference.ofCelsiusDegrees(number(list.get(0), "z_kelvin")),
                    Csv.field(list.get(0), "source"))));
    return all;
  }

  /**
   * A published case of the library.
   *
   * @param name organism and product, for example {@code salmonella in bun dough}
   * @return the case
   * @throws BakeryException if there is none of that name
   */
  public static ThermalDeath named(String name) {
    String wanted = requireNonNull(name, "name").strip().toLowerCase(Locale.ROOT);
    List<ThermalDeath> all = all();
    return all.stream()
        .filter(d -> d.name.equals(wanted))
        .findFirst()
        .orElseThrow(
            () ->
                BakeryException.unknownName(
                    "no published case of that name",
                    name,
                    all.stream().map(ThermalDeath::name).toList()));
  }

  private static double number(Map<String, String> row, String column) {
    return Double.parseDouble(Csv.field(row, column));
  }

  private static String kelvins(TemperatureDifference z) {
    return Numbers.significant(z.celsiusDegrees(), 4) + " K";
  }

  /**
   * The temperatures that were tested.
   *
   * @return the lowest and the highest
   */
  public AmountRange<Temperature> tested() {
    return new AmountRange<>(table.get(0).at, last().at);
  }

  private Tested last() {
    return table.get(table.size() - 1);
  }

  /**
   * The temperature in the middle of the table.
   *
   * @return one of those that were tested
   */
  public Amount<Temperature> reference() {
    return table.get(table.size() / 2).at;
  }

  /**
   * D at {@link #reference()}, as measured.
   *
   * @return the time in which nine of ten die there
   */
  public Amount<Time> decimal() {
    return table.get(table.size() / 2).decimal;
  }

  /**
   * D at a temperature: log D on the straight line between the two tested temperatures beside it;
   * at the highest tested one and above it, the D measured there.
   *
   * @param temperature a temperature, not below the lowest tested one
   * @return the time in which nine of ten die
   * @throws BakeryException below the lowest tested temperature, where nothing may be counted
   */
  public Amount<Time> decimalAt(Quantity<Temperature> temperature) {
    double celsius = CELSIUS.measure("the temperature", requireNonNull(temperature, "temperature"));
    if (celsius < table.get(0).at.in(CELSIUS)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "nothing was tested so cool",
          Given.temperature("the temperature", temperature) + " for " + name,
          "give " + table.get(0).at + " or more; cooler counts as no kill");
    }
    return MINUTE.amount(new DeathCurve(table).minutes(celsius));
  }

  /**
   * z fitted to the measured pairs by least squares of log D on the temperature, with its standard
   * uncertainty: u(z) = z²·u(slope), u(slope) from the scatter about the line with n − 2 degrees of
   * freedom. With three pairs, as most studies have, that is one degree: read it as a warning, not
   * as a limit.
   *
   * @return z, its uncertainty and the number of pairs
   * @throws BakeryException with fewer than three pairs, which have no scatter
   */
  public Fit fit() {
    if (table.size() < PAIRS_OF_A_SPREAD) {
      throw new BakeryException(
          Reason.MISSING,
          "two pairs lie on a line and say nothing of its uncertainty",
          name + ": " + table,
          "measure at a third temperature; z of two pairs is z()");
    }
    DeathCurve.Line line = DeathCurve.Line.through(table);
    double fitted = -1 / line.slope();
    return new Fit(
        TemperatureDifference.ofCelsiusDegrees(fitted),
        TemperatureDifference.ofCelsiusDegrees(fitted * fitted * line.uncertainty()),
        table.size());
  }

  /**
   * The equivalent time at a reference temperature: F = ∫10^((T − T_ref)/z) dt, exact for each
   * stretch of a history. Nothing is cut off here: it is arithmetic.
   *
   * @param history the temperature at the slowest point
   * @param at the reference temperature
   * @param z by how much the temperature rises for a tenth of the time, above 0
   * @return F in minutes
   * @throws BakeryException if z is not above 0 K
   */
  public static Amount<Time> equivalent(
      TemperatureHistory history, Quantity<Temperature> at, TemperatureDifference z) {
    if (!(z.celsiusDegrees() > 0)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE, "no organism dies so", "z " + kelvins(z), "give z above 0 K");
    }
    double reference = CELSIUS.measure("the at", requireNonNull(at, "at"));
    double sum = 0;
    for (Leg leg : history.legs()) {
      sum +=
          leg.duration().in(MINUTE)
              * DeathCurve.mean(
                  StrictMath.pow(10, (leg.from().in(CELSIUS) - reference) / z.celsiusDegrees()),
                  StrictMath.pow(10, (leg.to().in(CELSIUS) - reference) / z.celsiusDegrees()));
    }
    return MINUTE.amount(sum);
  }

  /**
   * The log reductions over a history, counting only what was tested; exact for each stretch.
   *
   * @param history the temperature at the slowest point
   * @return how many times nine of ten die
   */
  public double logReductions(TemperatureHistory history) {
    requireNonNull(history, "history");
    DeathCurve curve = new DeathCurve(table);
    double sum = 0;
    for (Leg leg : history.legs()) {
      sum +=
          curve.reductions(leg.from().in(CELSIUS), leg.to().in(CELSIUS), leg.duration().in(MINUTE));
    }
    return sum;
  }

  /**
   * What must be said with every figure.
   *
   * @param history the temperature at the slowest point
   * @return safety advice
   */
  public List<Advice> advice(TemperatureHistory history) {
    AmountFormat format = AmountFormat.sideBySide();
    boolean above =
        history.legs().stream()
            .anyMatch(l -> l.from().compareTo(last().at) > 0 || l.to().compareTo(last().at) > 0);
    return List.of(
        Advice.of(
            "NO_VALIDATION",
            Numbers.decimals(logReductions(history), 1)
                + " log reductions of "
                + name
                + " by arithmetic"
                + (above
                    ? ", what is above "
                        + format.temperature(last().at)
                        + " counted as that, since nothing hotter was tested"
                    : ""),
            "A calculation is no validation: validate with a process authority. It holds for that"
                + " product only, not for dry crust, fillings or low-moisture doughs",
            source));
  }

  /** {@code salmonella in bun dough: D 28.64 min at 55 °C (131 °F), …; z 6.58 K}. */
  @Override
  public String toString() {
    return name
        + ": D "
        + table.stream().map(Tested::toString).collect(Collectors.joining(", "))
        + "; z "
        + kelvins(z);
  }
}
