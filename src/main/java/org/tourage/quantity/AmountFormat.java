package org.tourage.quantity;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.text.DecimalFormatSymbols;
import java.util.Locale;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.jspecify.annotations.Nullable;
import org.tourage.internal.Numbers;

/**
 * Writes quantities for people: sensible digits by size, metric, US customary or both side by side.
 * The decimal sign is a point unless {@link #withLocale} passes a locale; the locale of the machine
 * never matters, and digits are never grouped.
 *
 * <p>Masses are written to 0.01 g below 1 g, 0.1 g below 10 g, 1 g below 10 kg and in kilograms
 * above, unless {@link #withBalance} gives the resolution of the balance that will weigh them.
 * Lengths below 1 mm are written in micrometres. Immutable.
 */
public final class AmountFormat implements Serializable {
  private static final long serialVersionUID = 1L;
  private static final AmountFormat METRIC = new AmountFormat(Systems.METRIC, Locale.ROOT, 0);

  private enum Systems {
    METRIC,
    US,
    BOTH
  }

  private final Systems systems;
  private final Locale locale;
  private final double balanceGrams;

  private AmountFormat(Systems systems, Locale locale, double balanceGrams) {
    this.systems = systems;
    this.locale = locale;
    this.balanceGrams = balanceGrams;
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof AmountFormat that
        && systems == that.systems
        && locale.equals(that.locale)
        && Double.compare(balanceGrams, that.balanceGrams) == 0;
  }

  @Override
  public int hashCode() {
    return Objects.hash(systems, locale, balanceGrams);
  }

  /** {@code metric}, {@code us} or {@code both}. */
  @Override
  public String toString() {
    return systems.name().toLowerCase(Locale.ROOT);
  }

  /**
   * Grams, millilitres, millimetres, °C.
   *
   * @return the format
   */
  public static AmountFormat metric() {
    return METRIC;
  }

  /**
   * Ounces and pounds, cups and spoons, inches, °F.
   *
   * @return the format
   */
  public static AmountFormat usCustomary() {
    return new AmountFormat(Systems.US, Locale.ROOT, 0);
  }

  /**
   * Metric with US customary behind it in brackets.
   *
   * @return the format
   */
  public static AmountFormat sideBySide() {
    return new AmountFormat(Systems.BOTH, Locale.ROOT, 0);
  }

  /**
   * The same format for a balance: masses get the decimals of its resolution.
   *
   * @param resolution the least step that the balance shows, positive
   * @return the format
   */
  public AmountFormat withBalance(Quantity<Mass> resolution) {
    return new AmountFormat(systems, locale, BalanceRounding.positiveGrams(resolution));
  }

  /**
   * The same format with the decimal sign of a locale.
   *
   * @param wanted the locale
   * @return the format
   */
  public AmountFormat withLocale(Locale wanted) {
    return new AmountFormat(systems, requireNonNull(wanted, "wanted"), balanceGrams);
  }

  /**
   * Writes a mass.
   *
   * @param mass the mass
   * @return for example {@code 740 g} or {@code 740 g (26.1 oz)}
   */
  public String mass(Quantity<Mass> mass) {
    double grams = BakeryUnits.GRAM.measure("the mass", mass);
    double ounces = BakeryUnits.OUNCE.measure("the mass", mass);
    return choose(metricMass(grams), usMass(ounces));
  }

  private String metricMass(double grams) {
    double size = Math.abs(grams);
    if (balanceGrams > 0) {
      int decimals =
          Math.max(
              0,
              new java.math.BigDecimal(Double.toString(balanceGrams)).stripTrailingZeros().scale());
      return number(Numbers.fixed(grams, decimals)) + " g";
    } else if (size >= 10_000) {
      return number(Numbers.fixed(grams / 1000, 2)) + " kg";
    }
    return number(Numbers.decimals(grams, size < 1 ? 2 : size < 10 ? 1 : 0)) + " g";
  }

  private String usMass(double ounces) {
    double size = Math.abs(ounces);
    if (size >= 32) {
      return number(Numbers.decimals(ounces / 16, 2)) + " lb";
    }
    return number(Numbers.decimals(ounces, size < 1 ? 3 : size < 10 ? 2 : 1)) + " oz";
  }

  /**
   * Writes a volume; US customary ones in cups and spoons where {@link KitchenMeasure} can do so
   * within 2 %, else in fluid ounces.
   *
   * @param volume the volume
   * @return for example {@code 59 mL} or {@code 1/4 cup}
   */
  public String volume(Quantity<Volume> volume) {
    double millilitres = BakeryUnits.MILLILITRE.measure("the volume", volume);
    double size = Math.abs(millilitres);
    String metric =
        size >= 10_000
            ? number(Numbers.decimals(millilitres / 1000, 2)) + " L"
            : number(Numbers.decimals(millilitres, size < 10 ? 1 : 0)) + " mL";
    String us =
        KitchenMeasure.usCustomary()
            .describe(volume)
            .orElseGet(
                () ->
                    number(
                            Numbers.significant(
                                BakeryUnits.FLUID_OUNCE.measure("the volume", volume), 3))
                        + " fl oz");
    return choose(metric, us);
  }

  /**
   * Writes a length; US customary ones in inches to the nearest 1/16 where that is within 1 %.
   *
   * @param length the length
   * @return for example {@code 36 µm}, {@code 4 mm}, {@code 610 mm (24 in)}
   */
  public String length(Quantity<Length> length) {
    double millimetres = BakeryUnits.MILLIMETRE.measure("the length", length);
    double size = Math.abs(millimetres);
    String metric;
    if (size > 0 && size < 1) {
      double micrometres = millimetres * 1000;
      metric =
          number(
                  Numbers.decimals(
                      micrometres,
                      Math.abs(micrometres) < 10 ? 2 : Math.abs(micrometres) < 100 ? 1 : 0))
              + " µm";
    } else {
      metric = number(Numbers.decimals(millimetres, size < 10 ? 2 : size < 100 ? 1 : 0)) + " mm";
    }
    return choose(metric, inches(BakeryUnits.INCH.measure("the length", length)));
  }

  private String inches(double inches) {
    long sixteenths = Math.round(inches * 16);
    boolean near = Math.abs(sixteenths / 16.0 - inches) <= 0.01 * Math.abs(inches);
    String text =
        near ? Fraction.of(sixteenths, 16).toString() : number(Numbers.significant(inches, 3));
    return text + " in";
  }

  /**
   * Writes a thermometer reading: to 0.1 °C below 100 °C (whole °F), to whole degrees above.
   *
   * @param temperature the reading
   * @return for example {@code 24 °C (75 °F)}
   */
  public String temperature(Quantity<Temperature> temperature) {
    double celsius = BakeryUnits.CELSIUS.measure("the temperature", temperature);
    double fahrenheit = BakeryUnits.FAHRENHEIT.measure("the temperature", temperature);
    String metric = number(Numbers.decimals(celsius, Math.abs(celsius) < 100 ? 1 : 0)) + " °C";
    return choose(metric, number(Numbers.decimals(fahrenheit, 0)) + " °F");
  }

  /**
   * Writes a time to the minute, or in seconds below two minutes.
   *
   * @param time the time
   * @return for example {@code 1 h 30 min}
   */
  public String time(Quantity<Time> time) {
    double seconds = BakeryUnits.SECOND.measure("the time", time);
    if (Math.abs(seconds) < 120) {
      return number(Numbers.decimals(seconds, 0)) + " s";
    }
    long minutes = Math.round(Math.abs(seconds) / 60);
    String sign = seconds < 0 ? "-" : "";
    long hours = minutes / 60;
    long rest = minutes % 60;
    if (hours == 0) {
      return sign + rest + " min";
    }
    return sign + hours + " h" + (rest == 0 ? "" : " " + rest + " min");
  }

  /**
   * Writes a ratio in percent, to 0.01 below 1 %, 0.1 below 10 % unless whole, else 0.1.
   *
   * @param ratio the ratio
   * @return for example {@code 62 %}
   */
  public String percent(Quantity<Dimensionless> ratio) {
    double percent = BakeryUnits.PERCENT.measure("the ratio", ratio);
    return number(Numbers.decimals(percent, Math.abs(percent) < 10 ? 2 : 1)) + " %";
  }

  private String choose(String metric, String us) {
    return switch (systems) {
      case METRIC -> metric;
      case US -> us;
      case BOTH -> metric + " (" + us + ")";
    };
  }

  private String number(String plain) {
    if (locale.equals(Locale.ROOT)) {
      return plain;
    }
    char sign = DecimalFormatSymbols.getInstance(locale).getDecimalSeparator();
    return plain.replace('.', sign);
  }
}
