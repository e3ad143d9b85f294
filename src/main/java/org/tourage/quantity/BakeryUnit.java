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
import org.tourage.internal.Numbers;

/**
 * A unit with its factor and offset to the base unit of its kind, as two doubles: base = value ×
 * factor + offset. The units that a bakery needs are constants of {@link BakeryUnits}; any linear
 * unit of the units API is turned into one by {@link #from(Unit)}. The object of the units API
 * behind a unit is made only when {@link #unit()} asks for it, so that a first result does not wait
 * for it.
 *
 * <p>Immutable and safe for use by several threads.
 *
 * @param <Q> the kind of quantity
 */
public final class BakeryUnit<Q extends Quantity<Q>> implements Serializable {
  private static final long serialVersionUID = 1L;

  /**
   * More units than a program has; beyond it the store starts anew, and nothing but time is lost.
   */
  static final int MOST_KEPT = 256;

  private static final Map<Same, BakeryUnit<?>> KEPT = new ConcurrentHashMap<>();

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

  /** The base units that it is made of, such as {@code kg m^-3}. */
  private final String base;

  /** The object of the units API; made on demand for our own units. */
  private transient volatile @Nullable Unit<Q> unit;

  private BakeryUnit(
      String symbol,
      Kind kind,
      double factor,
      double offset,
      @Nullable Fraction exactFactor,
      @Nullable Fraction exactOffset,
      String base,
      @Nullable Unit<Q> unit) {
    this.base = base;
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
        symbol,
        kind,
        factor.doubleValue(),
        offset.doubleValue(),
        factor,
        offset,
        kind.base(),
        null);
  }

  /** A unit that is none of ours, from its figures alone. */
  static BakeryUnit<?> ofFigures(String symbol, String base, double factor, double offset) {
    return new BakeryUnit<>(symbol, Kind.ofBase(base), factor, offset, null, null, base, null);
  }

  /** A unit by its identity: two that are equal may still be written differently. */
  private record Same(Unit<?> unit) {
    @Override
    public boolean equals(@Nullable Object other) {
      return other instanceof Same that && unit == that.unit;
    }

    @Override
    public int hashCode() {
      return unit.hashCode();
    }
  }

  /**
   * Turns any linear unit of the units API, of whatever implementation, into one of ours: the one
   * of {@link BakeryUnits} of that size where there is one, else a unit with its symbol, factor and
   * offset.
   *
   * @param unit the unit
   * @param <Q> the kind of quantity
   * @return the unit with its factor and offset; the same whatever was asked before
   * @throws BakeryException if the unit is not linear (a logarithmic one, for example)
   */
  @SuppressWarnings("unchecked") // a unit of Q is stored under a key of Q only
  public static <Q extends Quantity<Q>> BakeryUnit<Q> from(Unit<Q> unit) {
    requireNonNull(unit, "unit");
    Same key = new Same(unit);
    BakeryUnit<?> known = KEPT.get(key);
    if (known == null) {
      known = wrap(unit);
      if (KEPT.size() >= MOST_KEPT) {
        KEPT.clear();
      }
      KEPT.put(key, known);
    }
    return (BakeryUnit<Q>) known;
  }

  static int kept() {
    return KEPT.size();
  }

  private static <Q extends Quantity<Q>> BakeryUnit<?> wrap(Unit<Q> unit) {
    String base = UnitObjects.baseOf(unit);
    Kind kind = Kind.ofBase(base);
    UnitConverter converter = unit.getConverterTo(unit.getSystemUnit());
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
    BakeryUnit<?> ours = BakeryUnits.ofSize(unit, kind, exact, offset);
    if (ours != null) {
      return ours;
    }
    String symbol = unit.getSymbol() == null ? unit.toString() : unit.getSymbol();
    return new BakeryUnit<>(symbol, kind, exact, offset, null, null, base, unit);
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
   * @throws BakeryException if its value is NaN or infinite, or it is of another kind
   */
  public double measure(Quantity<Q> quantity) {
    return measure("the amount", quantity);
  }

  /**
   * Reads a quantity of any implementation in this unit.
   *
   * @param name what it is, for the message, for example {@code the flour}
   * @param quantity the quantity
   * @return how many of this unit it is
   * @throws BakeryException if its value is NaN or infinite, or it is of another kind
   */
  public double measure(String name, Quantity<Q> quantity) {
    Amount<Q> amount = Amount.from(name, quantity);
    BakeryUnit<Q> other = amount.bakeryUnit();
    if (other == this) {
      return amount.value();
    }
    requireSameKind(name, amount.value(), other);
    return fromBase(amount.base());
  }

  /**
   * Reads back the {@linkplain Amount#exactText() exact text} of an amount of this unit's kind.
   *
   * @param exactText the text
   * @return the amount in the unit of the text, to the last bit
   * @throws BakeryException if it is no such text, or an amount of another kind
   */
  @SuppressWarnings("unchecked") // the kind is checked
  public Amount<Q> parse(String exactText) {
    Amount<?> amount = ExactText.read(exactText);
    requireSameKind("the text", amount.value(), amount.bakeryUnit());
    return (Amount<Q>) amount;
  }

  /** The compiler can be talked out of the kind by a cast; this can't. */
  void requireSameKind(String name, double value, BakeryUnit<?> other) {
    if (!sameKind(other)) {
      throw otherKind(
          name, kind == Kind.OTHER ? "in " + base : kind.withArticle(), value, other, kind);
    }
  }

  static BakeryException otherKind(
      String name, String wanted, double value, BakeryUnit<?> given, Kind kind) {
    return new BakeryException(
        Reason.MEANINGLESS,
        name
            + " must be "
            + wanted
            + (given.kind == Kind.OTHER ? "" : ", not " + given.kind.withArticle()),
        (Numbers.significant(value, 6) + " " + given.symbol).strip(),
        kind == Kind.OTHER ? "give an amount of the same kind" : "give it like " + kind.example());
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
    requireSameKind("the amount", value, from);
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
              base,
              exactFactor == null ? Fraction.ofDouble(factor) : exactFactor,
              exactOffset == null ? Fraction.ofDouble(offset) : exactOffset);
      unit = made;
    }
    return made;
  }

  /** Whether the object of the units API has been made, and is this very one. */
  boolean isMadeAs(Unit<?> object) {
    return unit == object;
  }

  /** The base units that it is made of. */
  String base() {
    return base;
  }

  /** The unit as an object that can be multiplied with those of our own units. */
  Unit<Q> multipliable() {
    Unit<Q> given = unit();
    return UnitObjects.isOwn(given) || !UnitObjects.isSi(base)
        ? given
        : UnitObjects.make(base, Fraction.ofDouble(factor), Fraction.ofDouble(offset));
  }

  boolean sameKind(BakeryUnit<?> other) {
    return kind == other.kind && (kind != Kind.OTHER || base.equals(other.base));
  }

  boolean isReading() {
    return kind == Kind.TEMPERATURE;
  }

  // keeps our own units single after deserialisation and makes others anew from their figures
  private Object writeReplace() {
    boolean foreign = exactFactor == null && !UnitObjects.isSi(base);
    return new Form(symbol, exactFactor != null, base, factor, offset, foreign ? unit() : null);
  }

  private record Form(
      String symbol, boolean own, String base, double factor, double offset, @Nullable Unit<?> unit)
      implements Serializable {
    private Object readResolve() {
      return own
          ? BakeryUnits.bySymbol(symbol)
          : unit != null ? fromAny(unit) : ofFigures(symbol, base, factor, offset);
    }

    @SuppressWarnings({"unchecked", "rawtypes"}) // the type is erased in the stream
    private static BakeryUnit<?> fromAny(Unit<?> unit) {
      return from((Unit) unit);
    }
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return this == other
        || other instanceof BakeryUnit<?> that
            && symbol.equals(that.symbol)
            && base.equals(that.base)
            && factor == that.factor
            && offset == that.offset;
  }

  @Override
  public int hashCode() {
    return 31 * symbol.hashCode() + Double.hashCode(factor);
  }

  /** The symbol. */
  @Override
  public String toString() {
    return symbol;
  }
}
