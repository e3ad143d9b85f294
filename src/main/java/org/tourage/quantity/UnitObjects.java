package org.tourage.quantity;

import java.math.BigInteger;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import javax.measure.Quantity;
import javax.measure.Unit;
import tech.units.indriya.function.AddConverter;
import tech.units.indriya.function.MultiplyConverter;
import tech.units.indriya.function.RationalNumber;
import tech.units.indriya.unit.Units;

/**
 * Unit objects of the units API. The only class that touches its implementation, so that none of it
 * is loaded before a unit object is asked for.
 */
final class UnitObjects {
  /** The base units of the SI in the order in which they are written. */
  private static final List<String> SI = List.of("kg", "m", "s", "K", "mol", "A", "cd");

  private UnitObjects() {}

  /**
   * The base units that a unit is made of, as a text that is the same for every implementation:
   * {@code kg m^-3}. Two implementations do not know each other's units as compatible, but their
   * base units have the same symbols.
   */
  static String baseOf(Unit<?> unit) {
    Map<String, Integer> powers = new TreeMap<>();
    collect(unit.getSystemUnit(), 1, powers);
    StringBuilder text = new StringBuilder();
    for (String symbol : SI) {
      append(text, symbol, powers.remove(symbol));
    }
    powers.forEach((symbol, power) -> append(text, symbol, power));
    return text.toString();
  }

  private static void collect(Unit<?> unit, int power, Map<String, Integer> powers) {
    Map<? extends Unit<?>, Integer> parts = unit.getBaseUnits();
    if (parts == null) {
      String symbol = unit.getSymbol() == null ? unit.toString() : unit.getSymbol();
      // the sign of the kelvin has a code point of its own that some write
      powers.merge(symbol.replace('\u212A', 'K'), power, Integer::sum);
    } else {
      parts.forEach((part, times) -> collect(part.getSystemUnit(), power * times, powers));
    }
  }

  private static void append(
      StringBuilder text, String symbol, @org.jspecify.annotations.Nullable Integer power) {
    if (power != null && power != 0) {
      text.append(text.isEmpty() ? "" : " ").append(symbol).append(power == 1 ? "" : "^" + power);
    }
  }

  /** Whether only base units of the SI occur, so that the unit can be made anew from the text. */
  static boolean isSi(String base) {
    for (String part : base.isEmpty() ? new String[0] : base.split(" ", -1)) {
      if (!SI.contains(part.replaceFirst("\\^-?[0-9]{1,3}$", ""))) {
        return false;
      }
    }
    return true;
  }

  private static Unit<?> unitOf(String base) {
    return switch (base) {
      case "" -> Units.PERCENT.getSystemUnit();
      case "m^3" -> Units.CUBIC_METRE;
      case "kg m^2 s^-2" -> Units.JOULE;
      case "kg m^2 s^-3" -> Units.WATT;
      case "kg m^-3" -> Units.KILOGRAM.divide(Units.CUBIC_METRE);
      default -> product(base);
    };
  }

  private static Unit<?> product(String base) {
    Unit<?> product = null;
    for (String part : base.split(" ", -1)) {
      int hat = part.indexOf('^');
      Unit<?> factor = single(hat < 0 ? part : part.substring(0, hat));
      Unit<?> power = hat < 0 ? factor : factor.pow(Integer.parseInt(part.substring(hat + 1)));
      product = product == null ? power : product.multiply(power);
    }
    return product == null ? Units.METRE.divide(Units.METRE) : product;
  }

  private static Unit<?> single(String symbol) {
    return switch (symbol) {
      case "kg" -> Units.KILOGRAM;
      case "m" -> Units.METRE;
      case "s" -> Units.SECOND;
      case "K" -> Units.KELVIN;
      case "mol" -> Units.MOLE;
      case "A" -> Units.AMPERE;
      default -> Units.CANDELA;
    };
  }

  /** Whether a unit can be multiplied with the objects that are made here. */
  static boolean isOwn(Unit<?> unit) {
    // the class that all of its units extend; named, it would bring annotations into the pages
    return Units.METRE.getClass().getSuperclass().isInstance(unit);
  }

  /** A unit object from its exact factor and offset to its base units. */
  @SuppressWarnings("unchecked") // the base units name the type of the unit
  static <Q extends Quantity<Q>> Unit<Q> make(String base, Fraction factor, Fraction offset) {
    Unit<Q> made = (Unit<Q>) unitOf(base);
    if (offset.signum() != 0) {
      // base = value × factor + offset: the offset is taken last, so it stands outermost
      made = made.transform(new AddConverter(number(offset)));
    }
    if (!factor.equals(Fraction.ONE)) {
      made = made.transform(MultiplyConverter.of(number(factor)));
    }
    return made;
  }

  private static Number number(Fraction f) {
    return f.denominator().equals(BigInteger.ONE)
        ? f.numerator()
        : RationalNumber.of(f.numerator(), f.denominator());
  }
}
