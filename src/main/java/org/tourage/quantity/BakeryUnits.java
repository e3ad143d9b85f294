package org.tourage.quantity;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Power;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * The units of a bakery. Factors are exact by definition: NIST Special Publication 811 (2008),
 * Appendix B, and NIST Handbook 44, Appendix C, for the customary units; 21 CFR 101.9(b)(5)(viii)
 * for the US labelling measures; the imperial gallon of 4.54609 L. The metric cup of 250 mL is
 * common practice. Symbols that other kitchens use differently carry the kitchen's name.
 */
public final class BakeryUnits {
  private static final Map<String, BakeryUnit<?>> BY_SYMBOL = new LinkedHashMap<>();

  /** The gram. */
  public static final BakeryUnit<Mass> GRAM = mass("g", "0.001");

  /** The kilogram. */
  public static final BakeryUnit<Mass> KILOGRAM = mass("kg", "1");

  /** The milligram. */
  public static final BakeryUnit<Mass> MILLIGRAM = mass("mg", "0.000001");

  /** The avoirdupois ounce, 28.349523125 g. */
  public static final BakeryUnit<Mass> OUNCE = mass("oz", "0.028349523125");

  /** The avoirdupois pound, 453.59237 g. */
  public static final BakeryUnit<Mass> POUND = mass("lb", "0.45359237");

  /** The millilitre. */
  public static final BakeryUnit<Volume> MILLILITRE = volume("mL", "0.001");

  /** The litre. */
  public static final BakeryUnit<Volume> LITRE = volume("L", "1");

  private static final Fraction US_GALLON_LITRES = Fraction.ofDecimal("3.785411784");
  private static final Fraction IMPERIAL_GALLON_LITRES = Fraction.ofDecimal("4.54609");

  /** The US customary gallon, 231 cubic inches. */
  public static final BakeryUnit<Volume> GALLON = part("gal", US_GALLON_LITRES, 1);

  /** The US customary liquid quart, a quarter of a gallon. */
  public static final BakeryUnit<Volume> QUART = part("qt", US_GALLON_LITRES, 4);

  /** The US customary liquid pint, an eighth of a gallon. */
  public static final BakeryUnit<Volume> PINT = part("pt", US_GALLON_LITRES, 8);

  /** The US customary cup, a sixteenth of a gallon: 236.5882365 mL. */
  public static final BakeryUnit<Volume> CUP = part("cup", US_GALLON_LITRES, 16);

  /** The US customary fluid ounce, 1/128 gallon. */
  public static final BakeryUnit<Volume> FLUID_OUNCE = part("fl oz", US_GALLON_LITRES, 128);

  /** The US customary tablespoon, 1/256 gallon. */
  public static final BakeryUnit<Volume> TABLESPOON = part("tbsp", US_GALLON_LITRES, 256);

  /** The US customary teaspoon, 1/768 gallon. */
  public static final BakeryUnit<Volume> TEASPOON = part("tsp", US_GALLON_LITRES, 768);

  /** The cup of US nutrition labelling, 240 mL. */
  public static final BakeryUnit<Volume> LABELLING_CUP = volume("labelling cup", "0.240");

  /** The fluid ounce of US nutrition labelling, 30 mL. */
  public static final BakeryUnit<Volume> LABELLING_FLUID_OUNCE = volume("labelling fl oz", "0.030");

  /** The tablespoon of US nutrition labelling, 15 mL. */
  public static final BakeryUnit<Volume> LABELLING_TABLESPOON = volume("labelling tbsp", "0.015");

  /** The teaspoon of US nutrition labelling, 5 mL. */
  public static final BakeryUnit<Volume> LABELLING_TEASPOON = volume("labelling tsp", "0.005");

  /** The metric cup, 250 mL. */
  public static final BakeryUnit<Volume> METRIC_CUP = volume("metric cup", "0.250");

  /** The metric tablespoon, 15 mL (an Australian tablespoon is 20 mL: give it in mL). */
  public static final BakeryUnit<Volume> METRIC_TABLESPOON = volume("metric tbsp", "0.015");

  /** The metric teaspoon, 5 mL. */
  public static final BakeryUnit<Volume> METRIC_TEASPOON = volume("metric tsp", "0.005");

  /** The imperial gallon, 4.54609 L. */
  public static final BakeryUnit<Volume> IMPERIAL_GALLON =
      part("imp gal", IMPERIAL_GALLON_LITRES, 1);

  /** The imperial quart, a quarter of the imperial gallon. */
  public static final BakeryUnit<Volume> IMPERIAL_QUART = part("imp qt", IMPERIAL_GALLON_LITRES, 4);

  /** The imperial pint, an eighth of the imperial gallon: 568.26125 mL. */
  public static final BakeryUnit<Volume> IMPERIAL_PINT = part("imp pt", IMPERIAL_GALLON_LITRES, 8);

  /** The imperial cup, half an imperial pint (common practice). */
  public static final BakeryUnit<Volume> IMPERIAL_CUP = part("imp cup", IMPERIAL_GALLON_LITRES, 16);

  /** The imperial fluid ounce, 1/160 of the imperial gallon. */
  public static final BakeryUnit<Volume> IMPERIAL_FLUID_OUNCE =
      part("imp fl oz", IMPERIAL_GALLON_LITRES, 160);

  /** The micrometre. */
  public static final BakeryUnit<Length> MICROMETRE = length("µm", "0.000001");

  /** The millimetre. */
  public static final BakeryUnit<Length> MILLIMETRE = length("mm", "0.001");

  /** The centimetre. */
  public static final BakeryUnit<Length> CENTIMETRE = length("cm", "0.01");

  /** The metre. */
  public static final BakeryUnit<Length> METRE = length("m", "1");

  /** The inch, 25.4 mm. */
  public static final BakeryUnit<Length> INCH = length("in", "0.0254");

  /** The second. */
  public static final BakeryUnit<Time> SECOND = time("s", 1);

  /** The minute. */
  public static final BakeryUnit<Time> MINUTE = time("min", 60);

  /** The hour. */
  public static final BakeryUnit<Time> HOUR = time("h", 3600);

  /** The day of 24 hours. */
  public static final BakeryUnit<Time> DAY = time("d", 86400);

  /** The kelvin. */
  public static final BakeryUnit<Temperature> KELVIN = keep("K", Kind.TEMPERATURE, Fraction.ONE);

  /** The degree Celsius: K = °C + 273.15. */
  public static final BakeryUnit<Temperature> CELSIUS =
      keep("°C", Kind.TEMPERATURE, Fraction.ONE, Fraction.ofDecimal("273.15"));

  /** The degree Fahrenheit: K = (°F + 459.67) / 1.8. */
  public static final BakeryUnit<Temperature> FAHRENHEIT =
      keep(
          "°F",
          Kind.TEMPERATURE,
          Fraction.of(5, 9),
          Fraction.ofDecimal("459.67").times(Fraction.of(5, 9)));

  /** The percent. */
  public static final BakeryUnit<Dimensionless> PERCENT =
      keep("%", Kind.RATIO, Fraction.of(1, 100));

  /** A plain number: 0.5 is one half. */
  public static final BakeryUnit<Dimensionless> FRACTION = keep("", Kind.RATIO, Fraction.ONE);

  /** The joule. */
  public static final BakeryUnit<Energy> JOULE = energy("J", "1");

  /** The kilojoule. */
  public static final BakeryUnit<Energy> KILOJOULE = energy("kJ", "1000");

  /** The thermochemical kilocalorie, 4184 J. */
  public static final BakeryUnit<Energy> KILOCALORIE = energy("kcal", "4184");

  /** The watt. */
  public static final BakeryUnit<Power> WATT = keep("W", Kind.POWER, Fraction.ONE);

  /** The kilogram per cubic metre. */
  public static final BakeryUnit<Density> KILOGRAM_PER_CUBIC_METRE =
      keep("kg/m³", Kind.DENSITY, Fraction.ONE);

  /** The gram per millilitre. */
  public static final BakeryUnit<Density> GRAM_PER_MILLILITRE =
      keep("g/mL", Kind.DENSITY, Fraction.of(1000));

  private BakeryUnits() {}

  private static <Q extends Quantity<Q>> BakeryUnit<Q> keep(
      String symbol, Kind kind, Fraction factor) {
    return keep(symbol, kind, factor, Fraction.ZERO);
  }

  private static <Q extends Quantity<Q>> BakeryUnit<Q> keep(
      String symbol, Kind kind, Fraction factor, Fraction offset) {
    BakeryUnit<Q> unit = BakeryUnit.of(symbol, kind, factor, offset);
    BY_SYMBOL.put(symbol, unit);
    return unit;
  }

  private static BakeryUnit<Mass> mass(String symbol, String kilograms) {
    return keep(symbol, Kind.MASS, Fraction.ofDecimal(kilograms));
  }

  private static BakeryUnit<Volume> volume(String symbol, String litres) {
    return part(symbol, Fraction.ofDecimal(litres), 1);
  }

  private static BakeryUnit<Volume> part(String symbol, Fraction litres, long parts) {
    return keep(symbol, Kind.VOLUME, litres.over(Fraction.of(1000L * parts)));
  }

  private static BakeryUnit<Length> length(String symbol, String metres) {
    return keep(symbol, Kind.LENGTH, Fraction.ofDecimal(metres));
  }

  private static BakeryUnit<Time> time(String symbol, long seconds) {
    return keep(symbol, Kind.TIME, Fraction.of(seconds));
  }

  private static BakeryUnit<Energy> energy(String symbol, String joules) {
    return keep(symbol, Kind.ENERGY, Fraction.ofDecimal(joules));
  }

  /** Equality of factors that two implementations round differently. */
  private static final double SAME_SIZE = 1e-12;

  /**
   * Our unit of that size: the very one whose object this is, else the first one, those of US
   * labelling last, because 15 mL are a metric tablespoon everywhere else.
   */
  static @Nullable BakeryUnit<?> ofSize(Unit<?> object, Kind kind, double factor, double offset) {
    BakeryUnit<?> first = null;
    BakeryUnit<?> last = null;
    for (BakeryUnit<?> unit : BY_SYMBOL.values()) {
      boolean same =
          unit.kind() == kind
              && Math.abs(unit.factor() - factor) <= SAME_SIZE * Math.abs(factor)
              && Math.abs(unit.offset() - offset) <= SAME_SIZE * Math.abs(offset);
      if (same && unit.isMadeAs(object)) {
        return unit;
      } else if (same && unit.symbol().startsWith("labelling ")) {
        last = last == null ? unit : last;
      } else if (same) {
        first = first == null ? unit : first;
      }
    }
    return first == null ? last : first;
  }

  /**
   * All units of the library.
   *
   * @return the units, kind by kind
   */
  public static List<BakeryUnit<?>> all() {
    return List.copyOf(BY_SYMBOL.values());
  }

  static @Nullable BakeryUnit<?> find(String symbol) {
    return BY_SYMBOL.get(symbol);
  }

  static BakeryUnit<?> bySymbol(String symbol) {
    BakeryUnit<?> unit = BY_SYMBOL.get(symbol);
    if (unit == null) {
      throw new BakeryException(
          Reason.UNKNOWN_NAME, "no such unit", symbol, "use one of " + BY_SYMBOL.keySet());
    }
    return unit;
  }
}
