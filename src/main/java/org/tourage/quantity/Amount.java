package org.tourage.quantity;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.math.BigDecimal;
import java.math.MathContext;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Numbers;

/**
 * A quantity with a unit: a finite double (at most 1e280 of its own and of the base unit) and a
 * {@link BakeryUnit}. It is what the library returns wherever the units API says {@link Quantity};
 * any other implementation is welcome as input and is read by {@link #from(Quantity)}.
 *
 * <p><b>Equality.</b> Two amounts are equal when they are of the same kind and are the same amount
 * to 12 significant digits of the base unit: 1000 g equals 1 kg, and 1 oz equals 28.349523125 g.
 * {@code equals}, {@code hashCode} and {@code compareTo} all look at that one rounded value, so
 * they agree with each other, and equality is transitive. A quantity of another implementation is
 * never {@code equals} to an amount (it could not answer likewise); compare it with {@link
 * #compareTo} or {@link #isCloseTo(Quantity, double)}.
 *
 * <p><b>Temperature.</b> An {@code Amount<Temperature>} is a thermometer reading, a point on a
 * scale. Readings can be compared and converted; sums, products and opposites of readings have no
 * physical meaning and are refused. A rise or a fall is a {@link TemperatureDifference}.
 *
 * <p>Immutable, safe for use by several threads, and serialisable.
 *
 * <pre>{@code
 * Amount<Mass> flour = Amounts.grams(740);
 * flour.to(BakeryUnits.POUND); // 1.63142 lb
 * }</pre>
 *
 * @param <Q> the kind of quantity
 */
public final class Amount<Q extends Quantity<Q>>
    implements Quantity<Q>, Comparable<Amount<Q>>, Serializable {
  private static final long serialVersionUID = 1L;

  /** Equality looks at this many significant digits of the base unit's value. */
  public static final int EQUALITY_DIGITS = 12;

  private static final MathContext EQUALITY = new MathContext(EQUALITY_DIGITS);
  private static final int PRINTED_DIGITS = 6;

  /** No amount is greater, in its own unit or in the base unit. */
  private static final double GREATEST = 1e280;

  /** How many of the unit. */
  private final double value;

  /** The unit. */
  private final BakeryUnit<Q> unit;

  Amount(double value, BakeryUnit<Q> unit) {
    // sums and conversions of what is below can't overflow
    if (!(Math.abs(value) <= GREATEST) || !(Math.abs(unit.toBase(value)) <= GREATEST)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a " + unit.kind().label() + " must be a finite number of at most 1e280",
          value + " " + unit.symbol(),
          "check the sum that led to it");
    }
    if (unit.isReading()) {
      checkAboveAbsoluteZero(value, unit);
    }
    this.value = value;
    this.unit = unit;
  }

  private static void checkAboveAbsoluteZero(double value, BakeryUnit<?> unit) {
    // 1e-9 K forgives the rounding of a reading given as exactly absolute zero
    if (unit.toBase(value) < -1e-9) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a temperature can't lie below absolute zero",
          Numbers.significant(value, PRINTED_DIGITS) + " " + unit.symbol(),
          "give a reading above -273.15 °C (-459.67 °F)");
    }
  }

  /**
   * Reads a quantity of any implementation. A door that knows which kind it wants reads with {@link
   * Given}, which checks the kind and names the door.
   *
   * @param quantity the quantity; one of ours is returned as it is
   * @param <Q> the kind of quantity
   * @return the same as an amount, in the same unit
   * @throws BakeryException if its value is NaN or infinite, its unit is not linear, or it is a
   *     relative temperature (a difference passed where a reading is wanted)
   */
  public static <Q extends Quantity<Q>> Amount<Q> from(Quantity<Q> quantity) {
    return from("the amount", quantity);
  }

  static <Q extends Quantity<Q>> Amount<Q> from(String name, Quantity<Q> quantity) {
    if (quantity instanceof Amount<Q> ours) {
      return ours;
    }
    requireNonNull(quantity, name);
    BakeryUnit<Q> unit = BakeryUnit.from(quantity.getUnit());
    if (unit.isReading() && quantity.getScale() == Scale.RELATIVE) {
      throw new BakeryException(
          Reason.MEANINGLESS,
          name + ": a temperature difference can't stand for a thermometer reading",
          quantity.getValue() + " " + unit.symbol(),
          "pass a TemperatureDifference where a rise or fall is wanted");
    }
    return new Amount<>(quantity.getValue().doubleValue(), unit);
  }

  /**
   * How many of its own unit.
   *
   * @return the value, finite
   */
  public double value() {
    return value;
  }

  /**
   * How many of the given unit.
   *
   * @param wanted the unit
   * @return the value
   */
  public double in(BakeryUnit<Q> wanted) {
    return wanted.convert(value, unit);
  }

  /**
   * The same amount in another unit.
   *
   * @param wanted the unit
   * @return the amount
   */
  public Amount<Q> to(BakeryUnit<Q> wanted) {
    return wanted == unit ? this : new Amount<>(in(wanted), wanted);
  }

  @Override
  public Amount<Q> to(Unit<Q> wanted) {
    return to(BakeryUnit.from(wanted));
  }

  double base() {
    return unit.toBase(value);
  }

  /**
   * The unit with its factor and symbol; unlike {@link #getUnit()} it loads nothing of the units
   * API.
   *
   * @return the unit
   */
  public BakeryUnit<Q> bakeryUnit() {
    return unit;
  }

  /** The value as a {@link Double}. */
  @Override
  public Double getValue() {
    return value;
  }

  @Override
  public Unit<Q> getUnit() {
    return unit.unit();
  }

  /**
   * Always {@link javax.measure.Quantity.Scale#ABSOLUTE}: differences of temperature are a type of
   * their own.
   */
  @Override
  public Scale getScale() {
    return Scale.ABSOLUTE;
  }

  @Override
  public Amount<Q> add(Quantity<Q> other) {
    refuseReadings("adding");
    return new Amount<>(value + unit.measure(other), unit);
  }

  @Override
  public Amount<Q> subtract(Quantity<Q> other) {
    refuseReadings("subtracting");
    return new Amount<>(value - unit.measure(other), unit);
  }

  /**
   * The product with a number.
   *
   * @param factor the number, finite
   * @return the product in the same unit
   * @throws BakeryException if this is a thermometer reading
   */
  public Amount<Q> multiply(double factor) {
    refuseReadings("multiplying");
    return new Amount<>(value * factor, unit);
  }

  /**
   * The quotient with a number.
   *
   * @param divisor the number, finite, not 0
   * @return the quotient in the same unit
   * @throws BakeryException if this is a thermometer reading
   */
  public Amount<Q> divide(double divisor) {
    refuseReadings("dividing");
    return new Amount<>(value / divisor, unit);
  }

  @Override
  public Amount<Q> multiply(Number factor) {
    return multiply(factor.doubleValue());
  }

  @Override
  public Amount<Q> divide(Number divisor) {
    return divide(divisor.doubleValue());
  }

  @Override
  public Amount<?> multiply(Quantity<?> other) {
    refuseReadings("multiplying");
    Amount<?> right = fromAny(other);
    right.refuseReadings("multiplying");
    return ofAny(value * right.value, unit.multipliable().multiply(right.unit.multipliable()));
  }

  @Override
  public Amount<?> divide(Quantity<?> other) {
    refuseReadings("dividing");
    Amount<?> right = fromAny(other);
    right.refuseReadings("dividing");
    return ofAny(value / right.value, unit.multipliable().divide(right.unit.multipliable()));
  }

  /**
   * This amount as a share of another, a plain number.
   *
   * @param whole the other, not 0
   * @return this ÷ whole
   * @throws BakeryException if this is a thermometer reading, or the whole is 0
   */
  public double ratioTo(Quantity<Q> whole) {
    refuseReadings("dividing");
    double ratio = value / unit.measure(whole);
    if (!Double.isFinite(ratio)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "can't take a share of nothing",
          this + " of " + from(whole),
          "give a whole that is not 0");
    }
    return ratio;
  }

  @Override
  public Amount<?> inverse() {
    refuseReadings("inverting");
    return ofAny(1 / value, unit.multipliable().inverse());
  }

  @Override
  public Amount<Q> negate() {
    refuseReadings("negating");
    return new Amount<>(-value, unit);
  }

  @SuppressWarnings({"unchecked", "rawtypes"}) // the type of a product is not known at compile time
  private static Amount<?> ofAny(double value, Unit<?> unit) {
    return new Amount(value, BakeryUnit.from((Unit) unit));
  }

  @SuppressWarnings({"unchecked", "rawtypes"}) // any quantity is one of some kind
  private static Amount<?> fromAny(Quantity<?> quantity) {
    return from((Quantity) quantity);
  }

  private void refuseReadings(String verb) {
    if (unit.isReading()) {
      throw new BakeryException(
          Reason.MEANINGLESS,
          verb + " thermometer readings has no physical meaning",
          toString(),
          "use TemperatureDifference for a rise or a fall");
    }
  }

  /**
   * This amount under another type of the units API.
   *
   * @throws ClassCastException if the unit is not one of that type
   */
  @Override
  public <T extends Quantity<T>> Amount<T> asType(Class<T> type) {
    return new Amount<>(value, BakeryUnit.from(unit.multipliable().asType(type)));
  }

  @Override
  public boolean isEquivalentTo(Quantity<Q> other) {
    return compareTo(from(other)) == 0;
  }

  /**
   * Whether two amounts lie close together.
   *
   * @param other the other
   * @param relativeTolerance the greatest difference allowed, as a share of the greater of the two
   *     magnitudes, for example 1e-9
   * @return true if they do
   * @throws BakeryException if this is a thermometer reading: use {@link
   *     TemperatureDifference#between} and {@link TemperatureDifference#isWithin}
   */
  public boolean isCloseTo(Quantity<Q> other, double relativeTolerance) {
    refuseReadings("comparing shares of");
    double right = unit.measure(other);
    return Math.abs(value - right)
        <= relativeTolerance * Math.max(Math.abs(value), Math.abs(right));
  }

  /**
   * Whether two amounts differ by no more than a given amount.
   *
   * @param other the other
   * @param tolerance the greatest difference allowed
   * @return true if they do
   * @throws BakeryException if this is a thermometer reading: use {@link
   *     TemperatureDifference#between} and {@link TemperatureDifference#isWithin}
   */
  public boolean isCloseTo(Quantity<Q> other, Quantity<Q> tolerance) {
    refuseReadings("subtracting");
    return Math.abs(value - unit.measure(other)) <= unit.measure(tolerance);
  }

  /** Compares by size, to {@value #EQUALITY_DIGITS} significant digits of the base unit. */
  @Override
  public int compareTo(Amount<Q> other) {
    unit.requireSameKind("the amount", other.value, other.unit);
    double left = base();
    double right = other.base();
    if (left == right) {
      return 0;
    }
    // far apart: no need to round
    if (Math.abs(left - right) > 1e-9 * Math.max(Math.abs(left), Math.abs(right))) {
      return Double.compare(left, right);
    }
    return Double.compare(rounded(left), rounded(right));
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Amount<?> that
        && unit.sameKind(that.unit)
        && Double.compare(rounded(base()), rounded(that.base())) == 0;
  }

  @Override
  public int hashCode() {
    return 31 * unit.kind().name().hashCode() + Double.hashCode(rounded(base()));
  }

  /** The normal form that equality, hash and order share; the rounding never reverses an order. */
  private static double rounded(double base) {
    return base == 0 ? 0.0 : new BigDecimal(base).round(EQUALITY).doubleValue();
  }

  /**
   * The amount as a text that reads back to the last bit, the same on every machine. For people
   * there is {@link #toString()}.
   *
   * @return for example {@code 0.1 kg}, or {@code 3 hg [× 0.1 kg]} for a unit that is none of
   *     {@link BakeryUnits}
   */
  public String exactText() {
    return ExactText.of(value, unit);
  }

  /**
   * Reads back an {@linkplain #exactText() exact text}. What people write is read by {@link
   * HouseholdAmount}.
   *
   * @param exactText the text
   * @return the amount in the unit of the text, to the last bit; where its kind is known, {@link
   *     BakeryUnit#parse} gives it its type
   * @throws BakeryException if it is no such text
   */
  public static Amount<?> parse(String exactText) {
    return ExactText.read(exactText);
  }

  /** For people: at most six significant digits and the symbol, whatever the locale. */
  @Override
  public String toString() {
    String number = Numbers.significant(value, PRINTED_DIGITS);
    return unit.symbol().isEmpty() ? number : number + " " + unit.symbol();
  }
}
