package org.tourage.fermentation;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Csv;
import org.tourage.physics.SolidConduction;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.AmountRange;
import org.tourage.quantity.Given;

/**
 * The cardinal temperature model with inflection: L. Rosso, J.R. Lobry and J.P. Flandrois, "An
 * unexpected correlation between cardinal temperatures of microbial growth highlighted by a new
 * model", J. Theor. Biol. 162 (1993) 447.
 *
 * <p>γ(T) = (T − Tmax)(T − Tmin)² / {(Topt − Tmin)[(Topt − Tmin)(T − Topt) − (Topt − Tmax)(Topt +
 * Tmin − 2T)]} between Tmin and Tmax, 0 outside; 1 at Topt. Its shape was compared with published
 * half and quarter rates of sourdough: it agrees below the optimum and is too high above it, so the
 * trusted range ends at the optimum.
 *
 * @param name what it is the rate of
 * @param minimum no rate at or below it
 * @param optimum the best temperature
 * @param maximum no rate at or above it
 * @param source where the three temperatures come from
 */
public record Rosso1993(
    String name,
    Amount<Temperature> minimum,
    Amount<Temperature> optimum,
    Amount<Temperature> maximum,
    String source)
    implements RateModel {
  private static final String TABLE = "/org/tourage/ingredient/cardinal-temperatures.csv";

  /**
   * Checks the order, and that the curve has its one summit at the optimum.
   *
   * @param name what it is the rate of
   * @param minimum no rate at or below it
   * @param optimum the best temperature
   * @param maximum no rate at or above it
   * @param source where the three temperatures come from
   */
  public Rosso1993 {
    requireNonNull(minimum, "minimum");
    requireNonNull(optimum, "optimum");
    requireNonNull(maximum, "maximum");
    requireNonNull(name, "name");
    requireNonNull(source, "source");
    double low = minimum.in(CELSIUS);
    double best = optimum.in(CELSIUS);
    double high = maximum.in(CELSIUS);
    // below the middle the published equation has a pole within the range
    if (!(low < best) || !(best < high) || best <= (low + high) / 2) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "these can't be cardinal temperatures",
          minimum + ", " + optimum + ", " + maximum,
          "the optimum lies nearer to the maximum than to the minimum");
    }
  }

  /**
   * A model of one's own.
   *
   * @param name what it is the rate of
   * @param minimum no rate at or below it
   * @param optimum the best temperature, nearer to the maximum
   * @param maximum no rate at or above it
   * @param source where they come from
   * @return the model
   */
  public static Rosso1993 of(
      String name,
      Quantity<Temperature> minimum,
      Quantity<Temperature> optimum,
      Quantity<Temperature> maximum,
      String source) {
    return new Rosso1993(
        name,
        Given.temperature("the minimum", requireNonNull(minimum, "minimum")),
        Given.temperature("the optimum", requireNonNull(optimum, "optimum")),
        Given.temperature("the maximum", requireNonNull(maximum, "maximum")),
        source);
  }

  /**
   * The models of the library.
   *
   * @return the models, read from its table
   */
  public static List<Rosso1993> all() {
    List<Rosso1993> models = new ArrayList<>();
    for (Map<String, String> row : Csv.table(Rosso1993.class, TABLE)) {
      models.add(
          new Rosso1993(
              Csv.field(row, "name"),
              CELSIUS.amount(Double.parseDouble(Csv.field(row, "minimum_celsius"))),
              CELSIUS.amount(Double.parseDouble(Csv.field(row, "optimum_celsius"))),
              CELSIUS.amount(Double.parseDouble(Csv.field(row, "maximum_celsius"))),
              Csv.field(row, "source") + " (" + Csv.field(row, "provenance") + ")"));
    }
    return models;
  }

  /**
   * A model of the library.
   *
   * @param name its name, for example {@code baker's yeast, gas in dough}
   * @return the model
   * @throws BakeryException if there is none of that name
   */
  public static Rosso1993 named(String name) {
    return RateTable.named(name, all(), "no rate model of that name");
  }

  @Override
  public double rate(double celsius) {
    return curve(
        RateModel.known(celsius), minimum.in(CELSIUS), optimum.in(CELSIUS), maximum.in(CELSIUS));
  }

  @Override
  public SolidConduction.LocalProcess prepared() {
    double low = minimum.in(CELSIUS);
    double best = optimum.in(CELSIUS);
    double high = maximum.in(CELSIUS);
    return celsius -> curve(celsius, low, best, high);
  }

  private static double curve(double celsius, double low, double best, double high) {
    if (!(celsius > low && celsius < high)) {
      return 0;
    }
    double rise = celsius - low;
    double span = best - low;
    double below = span * (span * (celsius - best) - (best - high) * (best + low - 2 * celsius));
    return (celsius - high) * rise * rise / below;
  }

  @Override
  public AmountRange<Temperature> range() {
    return new AmountRange<>(minimum, optimum);
  }

  @Override
  public List<Double> corners() {
    return List.of(minimum.in(CELSIUS), maximum.in(CELSIUS));
  }

  /** {@code baker's yeast, growth: from 2.5 °C, best at 32.3 °C, to 45.4 °C}. */
  @Override
  public String toString() {
    AmountFormat format = AmountFormat.sideBySide();
    return name
        + ": from "
        + format.temperature(minimum)
        + ", best at "
        + format.temperature(optimum)
        + ", to "
        + format.temperature(maximum);
  }
}
