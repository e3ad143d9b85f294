package org.tourage.quantity;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.UnitConverter;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * A unit with its factor and offset to the base unit of its kind, as two doubles: base = value ×
 * factor + offset. The units that a bakery needs are constants of {@link BakeryUnits}; any linear
 * unit of the units API can be wrapped by {@link #from(Unit)}. The object of the units API behind a
 * unit is made only when {@link #unit()} asks for it, so that a first result does not wait for it.
 *
 * <p>Immutable and safe for use by several threads.
 *
 * @param <Q> the kind of quantity
 */
public final class BakeryUnit<Q extends Quantity<Q>> implements Serializable {
  private static final long serialVersionUID = 1L;
  private static final Map<Unit<?>, BakeryUnit<?>> WRAPPED = new ConcurrentHashMap<>();

  /** The symbol printed behind a number. */
  private final String symbol;

  /** The kind of quantity. */
  private final Kind kind;

  /** Base units in one of this unit. */
  private final double factor;

  /** What is added after the factor; 0 but for temperatures. */
  private final double offset;

  /** The exact factor, where the unit is one of ours. */
  private final @Nullable Fraction exactFactor;

  /** The exact offset, where the unit is one of ours. */
  private final @Nullable Fraction exactOffset;

  /** The object of the units API; made on demand for our own units. */
  private transient volatile @Nullable Unit<Q> unit;

  private BakeryUnit(
      String symbol,
      Kind kind,
      double factor,
      double offset,
      @Nullable Fraction exactFactor,
      @Nullable Fraction exactOffset,
      @Nullable Unit<Q> unit) {
    this.symbol = symbol;
    this.kind = kind;
    this.factor = factor;
    this.offset = offset;
    this.exactFactor = exactFactor;
    this.exactOffset = exactOffset;
    this.unit = unit;
  }

  static <Q extends Quantity<Q>> BakeryUnit<Q> of(
      String symbol, Kind kind, Fraction factor, Fraction offset) {
    return new BakeryUnit<>(
        symbol, kind, factor.doubleValue(), offset.doubleValue(), factor, offset, null);
  }

  /**
   * Wraps any linear unit of the units API; the two doubles are read off its converter once and
   * kept.
   *
   * @param unit the unit
   * @param <Q> the kind of quantity
   * @return the unit with its factor and offset
   * @throws BakeryException if the unit is not linear (a logarithmic one, for example)
   */
  @SuppressWarnings("unchecked") // a unit of Q is stored under a key of Q only
  public static <Q extends Quantity<Q>> BakeryUnit<Q> from(Unit<Q> unit) {
    requireNonNull(unit, "unit");
    BakeryUnit<?> known = WRAPPED.get(unit);
    if (known == null) {
      known = wrap(unit);
      WRAPPED.put(unit, known);
    }
    return (BakeryUnit<Q>) known;
  }

  private static <Q extends Quantity<Q>> BakeryUnit<Q> wrap(Unit<Q> unit) {
    Kind kind = UnitObjects.kindOf(unit);
    UnitConverter converter = unit.getConverterTo(UnitObjects.systemUnit(unit, kind));
    double offset = converter.convert(0.0);
    double factor = converter.convert(1.0) - offset;
    double probe = converter.convert(1000.0);
    double straight = 1000.0 * factor + offset;
    boolean linear =
        Double.isFinite(factor)
            && factor != 0
            && Math.abs(probe - straight) <= 1e-9 * Math.abs(straight);
    if (!linear) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "this unit can't be read with a factor and an offset",
          unit.toString(),
          "convert the quantity to a linear unit first");
    }
    if (kind != Kind.TEMPERATURE && Math.abs(offset) < 1e-300) {
      offset = 0;
    }
    // convert(1) − convert(0) loses digits where there is an offset
    double exact = kind == Kind.TEMPERATURE ? (converter.convert(1000.0) - offset) / 1000 : factor;
    String symbol = unit.getSymbol() == null ? unit.toString() : unit.getSymbol();
    return new BakeryUnit<>(symbol, kind, exact, offset, null, null, unit);
  }

  /**
   * Makes an amount in this unit.
   *
   * @param value how many of this unit, finite
   * @return the amount
   * @throws BakeryException if the value is NaN or infinite, or a temperature below absolute zero
   */
  public Amount<Q> amount(double value) {
    return new Amount<>(value, this);
  }

  /**
   * Reads a quantity of any implementation in this unit.
   *
   * @param quantity the quantity
   * @return how many of this unit it is
   * @throws BakeryException if its value is NaN or infinite
   */
  public double measure(Quantity<Q> quantity) {
    Amount<Q> amount = Amount.from(quantity);
    return amount.bakeryUnit() == this ? amount.value() : fromBase(amount.base());
  }

  double toBase(double value) {
    return value * factor + offset;
  }

  double fromBase(double base) {
    return (base - offset) / factor;
  }

  /** Converts from another unit of the same kind with as few roundings as can be. */
  double convert(double value, BakeryUnit<Q> from) {
    if (from == this) {
      return value;
    }
    return value * (from.factor / factor) + (from.offset - offset) / factor;
  }

  /**
   * The symbol printed behind a number.
   *
   * @return for example {@code g} or {@code °F}
   */
  public String symbol() {
    return symbol;
  }

  /**
   * The kind of quantity.
   *
   * @return the kind
   */
  public Kind kind() {
    return kind;
  }

  /**
   * Base units of the kind in one of this unit, exactly; empty for a unit wrapped from the units
   * API.
   *
   * @return the factor
   */
  public Optional<Fraction> exactFactor() {
    return Optional.ofNullable(exactFactor);
  }

  /**
   * Base units of the kind in one of this unit.
   *
   * @return the factor, for example 0.001 for the gram
   */
  public double factor() {
    return factor;
  }

  /**
   * What is added after the factor.
   *
   * @return 0 but for °C and °F
   */
  public double offset() {
    return offset;
  }

  /**
   * The object of the units API.
   *
   * @return the unit
   */
  public Unit<Q> unit() {
    Unit<Q> made = unit;
    if (made == null) {
      made =
          UnitObjects.make(
              kind,
              requireNonNull(exactFactor, "exactFactor"),
              requireNonNull(exactOffset, "exactOffset"));
      unit = made;
      WRAPPED.putIfAbsent(made, this);
    }
    return made;
  }

  boolean sameKind(BakeryUnit<?> other) {
    return kind == other.kind
        && (kind != Kind.OTHER || unit().getSystemUnit().equals(other.unit().getSystemUnit()));
  }

  boolean isReading() {
    return kind == Kind.TEMPERATURE;
  }

  // keeps our own units single after deserialisation and wraps others anew
  private Object writeReplace() {
    return new Form(exactFactor == null ? null : symbol, exactFactor == null ? unit() : null);
  }

  private record Form(@Nullable String symbol, @Nullable Unit<?> unit) implements Serializable {
    private Object readResolve() {
      return symbol != null ? BakeryUnits.bySymbol(symbol) : fromAny(requireNonNull(unit, "unit"));
    }

    @SuppressWarnings({"unchecked", "rawtypes"}) // the type is erased in the stream
    private static BakeryUnit<?> fromAny(Unit<?> unit) {
      return from((Unit) unit);
    }
  }

  /** The symbol. */
  @Override
  public String toString() {
    return symbol;
  }
}
