package org.tourage.quantity;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Power;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;

/**
 * What every door reads a quantity with: it takes any implementation, and refuses whatever is not
 * of the kind that the door wants, even where an unchecked cast has talked the compiler out of it.
 * The message has the door's own name for the amount.
 *
 * <pre>{@code
 * Amount<Mass> flour = Given.mass("the flour", quantity);
 * // the flour must be a mass, not a length: 3 m; give it like 500 g
 * }</pre>
 */
public final class Given {
  private Given() {}

  /**
   * Reads a mass.
   *
   * @param name what it is at this door, for example {@code the flour}
   * @param given the quantity, of any implementation
   * @return the same as an amount
   * @throws org.tourage.advice.BakeryException if it is of another kind, or not finite
   */
  public static Amount<Mass> mass(String name, Quantity<Mass> given) {
    return of(Kind.MASS, name, given);
  }

  /**
   * Reads a volume.
   *
   * @param name what it is at this door, for example {@code the flour}
   * @param given the quantity, of any implementation
   * @return the same as an amount
   * @throws org.tourage.advice.BakeryException if it is of another kind, or not finite
   */
  public static Amount<Volume> volume(String name, Quantity<Volume> given) {
    return of(Kind.VOLUME, name, given);
  }

  /**
   * Reads a length.
   *
   * @param name what it is at this door, for example {@code the flour}
   * @param given the quantity, of any implementation
   * @return the same as an amount
   * @throws org.tourage.advice.BakeryException if it is of another kind, or not finite
   */
  public static Amount<Length> length(String name, Quantity<Length> given) {
    return of(Kind.LENGTH, name, given);
  }

  /**
   * Reads a time.
   *
   * @param name what it is at this door, for example {@code the flour}
   * @param given the quantity, of any implementation
   * @return the same as an amount
   * @throws org.tourage.advice.BakeryException if it is of another kind, or not finite
   */
  public static Amount<Time> time(String name, Quantity<Time> given) {
    return of(Kind.TIME, name, given);
  }

  /**
   * Reads a thermometer reading.
   *
   * @param name what it is at this door, for example {@code the flour}
   * @param given the quantity, of any implementation
   * @return the same as an amount
   * @throws org.tourage.advice.BakeryException if it is of another kind, or not finite
   */
  public static Amount<Temperature> temperature(String name, Quantity<Temperature> given) {
    return of(Kind.TEMPERATURE, name, given);
  }

  /**
   * Reads a ratio, such as a percentage.
   *
   * @param name what it is at this door, for example {@code the flour}
   * @param given the quantity, of any implementation
   * @return the same as an amount
   * @throws org.tourage.advice.BakeryException if it is of another kind, or not finite
   */
  public static Amount<Dimensionless> ratio(String name, Quantity<Dimensionless> given) {
    return of(Kind.RATIO, name, given);
  }

  /**
   * Reads an energy.
   *
   * @param name what it is at this door, for example {@code the flour}
   * @param given the quantity, of any implementation
   * @return the same as an amount
   * @throws org.tourage.advice.BakeryException if it is of another kind, or not finite
   */
  public static Amount<Energy> energy(String name, Quantity<Energy> given) {
    return of(Kind.ENERGY, name, given);
  }

  /**
   * Reads a density.
   *
   * @param name what it is at this door, for example {@code the flour}
   * @param given the quantity, of any implementation
   * @return the same as an amount
   * @throws org.tourage.advice.BakeryException if it is of another kind, or not finite
   */
  public static Amount<Density> density(String name, Quantity<Density> given) {
    return of(Kind.DENSITY, name, given);
  }

  /**
   * Reads a power.
   *
   * @param name what it is at this door, for example {@code the flour}
   * @param given the quantity, of any implementation
   * @return the same as an amount
   * @throws org.tourage.advice.BakeryException if it is of another kind, or not finite
   */
  public static Amount<Power> power(String name, Quantity<Power> given) {
    return of(Kind.POWER, name, given);
  }

  private static <Q extends Quantity<Q>> Amount<Q> of(Kind kind, String name, Quantity<Q> given) {
    Amount<Q> amount = Amount.from(name, given);
    BakeryUnit<Q> unit = amount.bakeryUnit();
    if (unit.kind() != kind) {
      throw BakeryUnit.otherKind(name, kind.withArticle(), amount.value(), unit, kind);
    }
    return amount;
  }
}
