package org.tourage.quantity;

import java.util.EnumMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.VisibleText;

/**
 * The most that a written amount can be: far beyond any bakery, and far below where a sum of such
 * amounts, a count as a whole number or a date would overflow. What is beyond is a slip of the hand
 * (common practice).
 */
final class AmountLimits {
  private static final Map<Kind, Limit> LIMITS = limits();
  private static final Limit COUNT = new Limit(Fraction.of(1_000_000), "1000000");
  private static final Fraction ABSOLUTE_ZERO_CELSIUS = Fraction.ofDecimal("-273.15");
  private static final Fraction ABSOLUTE_ZERO_FAHRENHEIT = Fraction.ofDecimal("-459.67");

  private AmountLimits() {}

  private record Limit(Fraction base, String words) {}

  private static Map<Kind, Limit> limits() {
    Map<Kind, Limit> map = new EnumMap<>(Kind.class);
    put(map, 1_000_000, BakeryUnits.KILOGRAM, "1000000 kg");
    put(map, 1_000_000, BakeryUnits.LITRE, "1000000 L");
    put(map, 10_000, BakeryUnits.METRE, "10 km");
    put(map, 36_525, BakeryUnits.DAY, "100 years");
    put(map, 1_000_000, BakeryUnits.PERCENT, "1000000 %");
    put(map, 1_000_000_000, BakeryUnits.KILOJOULE, "1000000000 kJ");
    return map;
  }

  private static void put(Map<Kind, Limit> map, long number, BakeryUnit<?> unit, String words) {
    map.put(
        unit.kind(), new Limit(Fraction.of(number).times(unit.exactFactor().orElseThrow()), words));
  }

  /** Refuses an amount or a range that goes beyond the limit of its kind. */
  static void check(String text, Fraction low, Fraction high, @Nullable BakeryUnit<?> unit) {
    if (unit == null) {
      check(text, high, COUNT);
    } else if (unit.kind() == Kind.TEMPERATURE) {
      checkReading(text, low, high, unit);
    } else {
      Limit limit = LIMITS.get(unit.kind());
      if (limit != null) {
        check(text, high.times(unit.exactFactor().orElseThrow()), limit);
      }
    }
  }

  private static void check(String text, Fraction value, Limit limit) {
    if (value.compareTo(limit.base) > 0) {
      throw beyond(text, "more than any bakery has", "give at most " + limit.words);
    }
  }

  private static void checkReading(String text, Fraction low, Fraction high, BakeryUnit<?> unit) {
    if (high.compareTo(Fraction.of(3000)) > 0) {
      throw beyond(text, "hotter than anything in a bakery", "give at most 3000 " + unit.symbol());
    }
    boolean fahrenheit = unit == BakeryUnits.FAHRENHEIT;
    Fraction zero =
        fahrenheit
            ? ABSOLUTE_ZERO_FAHRENHEIT
            : unit == BakeryUnits.CELSIUS ? ABSOLUTE_ZERO_CELSIUS : Fraction.ZERO;
    if (low.compareTo(zero) < 0) {
      throw beyond(
          text,
          "a temperature can't lie below absolute zero",
          "give a reading from -273.15 °C (-459.67 °F) up");
    }
  }

  private static BakeryException beyond(String text, String problem, String expected) {
    return new BakeryException(
        Reason.OUT_OF_RANGE, problem, "\"" + VisibleText.of(text) + "\"", expected);
  }
}
