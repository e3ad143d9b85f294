package org.tourage.quantity;

import static java.util.Objects.requireNonNull;

import java.math.BigInteger;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.jspecify.annotations.Nullable;
import tech.units.indriya.function.AddConverter;
import tech.units.indriya.function.MultiplyConverter;
import tech.units.indriya.function.RationalNumber;
import tech.units.indriya.unit.Units;

/**
 * Unit objects of the units API. The only class that touches its implementation, so that none of it
 * is loaded before a unit object is asked for.
 */
final class UnitObjects {
  private UnitObjects() {}

  static Kind kindOf(Unit<?> unit) {
    if (unit.isCompatible(Units.KILOGRAM)) {
      return Kind.MASS;
    } else if (unit.isCompatible(Units.CUBIC_METRE)) {
      return Kind.VOLUME;
    } else if (unit.isCompatible(Units.METRE)) {
      return Kind.LENGTH;
    } else if (unit.isCompatible(Units.SECOND)) {
      return Kind.TIME;
    } else if (unit.isCompatible(Units.KELVIN)) {
      return Kind.TEMPERATURE;
    } else if (unit.isCompatible(Units.PERCENT)) {
      return Kind.RATIO;
    } else if (unit.isCompatible(Units.JOULE)) {
      return Kind.ENERGY;
    } else if (unit.isCompatible(Units.KILOGRAM.divide(Units.CUBIC_METRE))) {
      return Kind.DENSITY;
    } else if (unit.isCompatible(Units.WATT)) {
      return Kind.POWER;
    }
    return Kind.OTHER;
  }

  /** The base unit of a kind as an object of the units API. */
  @SuppressWarnings("unchecked") // the kind names the type of the unit
  static <Q extends Quantity<Q>> Unit<Q> systemUnit(@Nullable Unit<Q> unit, Kind kind) {
    Unit<?> system =
        switch (kind) {
          case MASS -> Units.KILOGRAM;
          case VOLUME -> Units.CUBIC_METRE;
          case LENGTH -> Units.METRE;
          case TIME -> Units.SECOND;
          case TEMPERATURE -> Units.KELVIN;
          case ENERGY -> Units.JOULE;
          case POWER -> Units.WATT;
          case DENSITY -> Units.KILOGRAM.divide(Units.CUBIC_METRE);
          case RATIO -> Units.PERCENT.getSystemUnit();
          case OTHER -> requireNonNull(unit, "unit").getSystemUnit();
        };
    return (Unit<Q>) system;
  }

  /** A unit object from its exact factor and offset to the base unit of its kind. */
  static <Q extends Quantity<Q>> Unit<Q> make(Kind kind, Fraction factor, Fraction offset) {
    Unit<Q> made = systemUnit(null, kind);
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
