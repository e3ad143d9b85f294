package org.tourage.oven;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
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

/**
 * How fast heat kills an organism in one kind of dough: log reductions = ∫10^((T − T_ref)/z) dt /
 * D_ref. D and z hold for the organism, the product and the temperatures that were tested, and for
 * nothing else: above the tested range a temperature counts as the highest tested one, below the
 * range it counts as nothing. A calculation is no validation: validate with a process authority.
 *
 * @param name organism and product
 * @param reference the temperature of D
 * @param decimal D: the time in which nine of ten die at the reference
 * @param z by how many kelvin the temperature rises for a tenth of D
 * @param tested the temperatures that were tested
 * @param source where the figures come from
 */
public record ThermalDeath(
    String name,
    Amount<Temperature> reference,
    Amount<Time> decimal,
    double z,
    AmountRange<Temperature> tested,
    String source)
    implements Serializable {
  private static final String TABLE = "/org/tourage/ingredient/lethality.csv";

  /**
   * Checks the figures.
   *
   * @param name organism and product
   * @param reference the temperature of D
   * @param decimal D: the time in which nine of ten die at the reference
   * @param z by how many kelvin the temperature rises for a tenth of D
   * @param tested the temperatures that were tested
   * @param source where the figures come from
   */
  public ThermalDeath {
    requireNonNull(name, "name");
    requireNonNull(reference, "reference");
    requireNonNull(tested, "tested");
    requireNonNull(source, "source");
    if (decimal.value() <= 0 || !(z > 0) || Double.isInfinite(z)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no organism dies so",
          name + ": D " + decimal + ", z " + z + " K",
          "give positive figures");
    }
  }

  /**
   * The published cases of the library: the D in the middle of the tested temperatures, with the z
   * that was printed with it.
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
        (name, list) -> {
          Map<String, String> middle = list.get(list.size() / 2);
          all.add(
              new ThermalDeath(
                  name,
                  CELSIUS.amount(number(middle, "celsius")),
                  MINUTE.amount(number(middle, "d_minutes")),
                  number(middle, "z_kelvin"),
                  new AmountRange<>(
                      CELSIUS.amount(number(list.get(0), "celsius")),
                      CELSIUS.amount(number(list.get(list.size() - 1), "celsius"))),
                  Csv.field(middle, "source")));
        });
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
    String wanted = name.strip().toLowerCase(Locale.ROOT);
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

  /**
   * The equivalent time at a reference temperature: F = ∫10^((T − T_ref)/z) dt, exact for each
   * stretch of a history. Nothing is cut off here: it is arithmetic.
   *
   * @param history the temperature at the slowest point
   * @param at the reference temperature
   * @param z by how many kelvin the temperature rises for a tenth of the time, positive
   * @return F in minutes
   */
  public static Amount<Time> equivalent(
      TemperatureHistory history, Quantity<Temperature> at, double z) {
    double sum = 0;
    for (Leg leg : history.legs()) {
      sum +=
          stretch(
              leg.from().in(CELSIUS),
              leg.to().in(CELSIUS),
              leg.duration().in(MINUTE),
              CELSIUS.measure(at),
              z);
    }
    return MINUTE.amount(sum);
  }

  private static double stretch(
      double from, double to, double minutes, double reference, double z) {
    double low = Math.pow(10, (from - reference) / z);
    double high = Math.pow(10, (to - reference) / z);
    double steep = Math.log(10) * (to - from) / z;
    // the exact mean of an exponential; its series where the ends are close
    return minutes * (Math.abs(steep) < 1e-6 ? (low + high) / 2 : (high - low) / steep);
  }

  /**
   * The log reductions over a history, counting only what was tested.
   *
   * @param history the temperature at the slowest point
   * @return how many times nine of ten die
   */
  public double logReductions(TemperatureHistory history) {
    double sum = 0;
    for (Leg leg : history.legs()) {
      double from = leg.from().in(CELSIUS);
      double to = leg.to().in(CELSIUS);
      double minutes = leg.duration().in(MINUTE);
      sum += from == to ? held(from, minutes) : ramped(from, to, minutes);
    }
    return sum / decimal.in(MINUTE);
  }

  /** Minutes at the reference that a held temperature stands for. */
  private double held(double celsius, double minutes) {
    double most = Math.min(celsius, tested.high().in(CELSIUS));
    return celsius < tested.low().in(CELSIUS)
        ? 0
        : minutes * Math.pow(10, (most - reference.in(CELSIUS)) / z);
  }

  /** The same for a ramp: the part within the tested range, and the part above it. */
  private double ramped(double from, double to, double minutes) {
    double bottom = Math.min(from, to);
    double top = Math.max(from, to);
    double low = Math.max(bottom, tested.low().in(CELSIUS));
    double high = Math.min(top, tested.high().in(CELSIUS));
    double perKelvin = minutes / (top - bottom);
    double within =
        low < high ? stretch(low, high, perKelvin * (high - low), reference.in(CELSIUS), z) : 0;
    double above = top - Math.max(bottom, tested.high().in(CELSIUS));
    return within + (above > 0 ? held(top, perKelvin * above) : 0);
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
            .anyMatch(
                l -> l.from().compareTo(tested.high()) > 0 || l.to().compareTo(tested.high()) > 0);
    return List.of(
        Advice.safety(
            "NO_VALIDATION",
            Numbers.decimals(logReductions(history), 1)
                + " log reductions of "
                + name
                + " by arithmetic"
                + (above
                    ? ", what is above "
                        + format.temperature(tested.high())
                        + " counted as that, since nothing hotter was tested"
                    : ""),
            "A calculation is no validation: validate with a process authority. It holds for that"
                + " product only, not for dry crust, fillings or low-moisture doughs",
            source));
  }

  /** {@code salmonella in bun dough: D 7.61 min at 58 °C (136 °F), z 6.58 K}. */
  @Override
  public String toString() {
    return name
        + ": D "
        + decimal
        + " at "
        + AmountFormat.sideBySide().temperature(reference)
        + ", z "
        + z
        + " K";
  }
}
