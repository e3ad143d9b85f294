package org.tourage.quantity;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.math.BigInteger;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * An amount as a household recipe gives it: an exact number, or a range, of a unit ({@code 3 1/2
 * cups}), of a packet or stick ({@code 2 packets}), or of nothing named ({@code 3}).
 *
 * <p>What is read: whole numbers, decimals with a point, fractions ({@code 1/2}), mixed numbers
 * ({@code 3 1/2}, {@code 3½}), ranges ({@code 1-2}, {@code 1 to 2}), sums of falling units of one
 * kind ({@code 1 h 30 min}, {@code 1 cup + 2 tbsp}). Every kind of space is a space. Numbers are
 * exact until the unit is converted.
 *
 * <p>What could be read in two ways is refused:
 *
 * <ul>
 *   <li>a comma ({@code 1,5} or {@code 1,500}), and digits in groups ({@code 1 500});
 *   <li>a point that could stand for thousands: one to three digits of which the first is no
 *       nought, a point, and exactly three digits, if the last of these is a nought ({@code 1.500
 *       kg}: nobody writes 1.500 for 1.5) or the unit is g, mg, mL, mm, µm or none, of which a
 *       thousand is common and a thousandth is not ({@code 1.375 g}). {@code 0.125 g}, {@code 2.375
 *       in}, {@code 1.125 kg} and {@code 1500.000 g} are decimals;
 *   <li>{@code 1-1/2} (a mixed number or a range), a fraction behind a decimal ({@code 1.5 1/2});
 *   <li>a point between a unit and a number ({@code 2 lb.25 oz}: an abbreviation or a decimal);
 *   <li>{@code T} and {@code t} (tablespoon or teaspoon), {@code c}, and {@code f} where no
 *       temperature is wanted; {@code Mg}, which is not a milligram.
 * </ul>
 *
 * <p>More than 1,000,000 kg, L, % or pieces, 10 km, 100 years or 3000 degrees is refused.
 *
 * <p>Immutable and serialisable. The locale never matters.
 */
public final class HouseholdAmount implements Serializable {
  private static final long serialVersionUID = 1L;

  /** What was read. */
  private final String text;

  /** The lower end. */
  private final Fraction low;

  /** The upper end; the same as the lower where there is no range. */
  private final Fraction high;

  /** The unit, if one was named. */
  private final @Nullable BakeryUnit<?> unit;

  /** Packet, stick and the like, if one was named. */
  private final @Nullable String countWord;

  /** Where the text that was not read begins. */
  private final int end;

  HouseholdAmount(
      String text,
      Fraction low,
      Fraction high,
      @Nullable BakeryUnit<?> unit,
      @Nullable String countWord,
      int end) {
    this.text = text;
    this.low = low;
    this.high = high;
    this.unit = unit;
    this.countWord = countWord;
    this.end = end;
  }

  /**
   * Reads a whole text, with US customary cups and spoons.
   *
   * @param text the text
   * @return the amount
   * @throws BakeryException if any part of the text can't be read with certainty
   */
  public static HouseholdAmount parse(String text) {
    return parse(text, CupStandard.US_CUSTOMARY);
  }

  /**
   * Reads a whole text.
   *
   * @param text the text
   * @param cups which kitchen's cups and spoons it means
   * @return the amount
   * @throws BakeryException if any part of the text can't be read with certainty
   */
  public static HouseholdAmount parse(String text, CupStandard cups) {
    return new AmountReader(text, Kind.OTHER, cups).readAll();
  }

  /**
   * Reads a whole text that must be of one kind.
   *
   * @param text the text
   * @param kind the kind wanted
   * @return the amount
   * @throws BakeryException if the text can't be read, or is of another kind
   */
  public static HouseholdAmount parse(String text, Kind kind) {
    return new AmountReader(text, kind, CupStandard.US_CUSTOMARY).readAll();
  }

  static HouseholdAmount parseWithDefault(String text, BakeryUnit<?> unit) {
    HouseholdAmount read =
        new AmountReader(text, unit.kind(), CupStandard.US_CUSTOMARY).unitOptional().readAll();
    return read.unit != null
        ? read
        : new HouseholdAmount(read.text, read.low, read.high, unit, null, read.end);
  }

  /**
   * Reads the amount at the front of a recipe line and leaves the rest to {@link #rest()}.
   *
   * @param line for example {@code 3 1/2 cups bread flour}
   * @param cups which kitchen's cups and spoons it means
   * @return the amount
   * @throws BakeryException if the front can't be read with certainty
   */
  public static HouseholdAmount parseFront(String line, CupStandard cups) {
    return new AmountReader(line, Kind.OTHER, cups).readFront();
  }

  /**
   * Reads the amount of one kind at the front of a text and leaves the rest to {@link #rest()}, as
   * the oven's set point in {@code 350F 20 min}.
   *
   * @param text the text
   * @param kind the kind wanted
   * @return the amount
   * @throws BakeryException if the front can't be read with certainty, or is of another kind
   */
  public static HouseholdAmount parseFront(String text, Kind kind) {
    return new AmountReader(text, kind, CupStandard.US_CUSTOMARY).readFront();
  }

  /**
   * Reads a count of whole things, such as pieces, trays or days.
   *
   * @param text the text, with or without the word {@code pieces}
   * @param most the most that makes sense, at least 1
   * @return the count, from 1 up
   * @throws BakeryException if the text is no whole number from 1 to the most
   */
  public static int parseCount(String text, int most) {
    HouseholdAmount read = parse(text);
    boolean pieces =
        read.unit == null && (read.countWord == null || read.countWord.equals("piece"));
    boolean whole = !read.isRange() && read.low.denominator().equals(BigInteger.ONE);
    boolean fits = read.low.signum() > 0 && read.low.compareTo(Fraction.of(Math.max(1, most))) <= 0;
    if (!pieces || !whole || !fits) {
      throw new BakeryException(
          pieces && whole ? Reason.OUT_OF_RANGE : Reason.UNREADABLE_TEXT,
          "not a count that fits",
          "\"" + read.text() + "\"",
          "give a whole number from 1 to " + most);
    }
    return read.low.numerator().intValueExact();
  }

  /**
   * What was read.
   *
   * @return the text without what was left
   */
  public String text() {
    return text.substring(0, end).strip();
  }

  /**
   * What {@link #parseFront} left.
   *
   * @return the rest of the line, without spaces around it
   */
  public String rest() {
    return text.substring(end).strip();
  }

  /**
   * The number, or the lower end of a range, exactly.
   *
   * @return the number
   */
  public Fraction low() {
    return low;
  }

  /**
   * The number, or the upper end of a range, exactly.
   *
   * @return the number
   */
  public Fraction high() {
    return high;
  }

  /**
   * Whether a range was given.
   *
   * @return true for {@code 1-2 hours}
   */
  public boolean isRange() {
    return !low.equals(high);
  }

  /**
   * The unit, if one was named.
   *
   * @return the unit
   */
  public Optional<BakeryUnit<?>> unit() {
    return Optional.ofNullable(unit);
  }

  /**
   * The packet, stick, cake or the like, if one was named, in the singular.
   *
   * @return the word
   */
  public Optional<String> countWord() {
    return Optional.ofNullable(countWord);
  }

  /**
   * The kind of the unit, {@link Kind#OTHER} for a count.
   *
   * @return the kind
   */
  public Kind kind() {
    return unit == null ? Kind.OTHER : unit.kind();
  }

  /** The single amount in the unit of the text; the caller has asked the reader for the kind. */
  <Q extends Quantity<Q>> Amount<Q> amount() {
    refuseRange();
    return this.<Q>range().low();
  }

  @SuppressWarnings("unchecked") // the caller has asked the reader for the kind
  <Q extends Quantity<Q>> AmountRange<Q> range() {
    BakeryUnit<Q> typed = (BakeryUnit<Q>) requireNonNull(unit, "unit");
    return new AmountRange<>(typed.amount(low.doubleValue()), typed.amount(high.doubleValue()));
  }

  /**
   * The amount in a unit.
   *
   * @param wanted the unit
   * @param <Q> the kind of quantity
   * @return the amount
   * @throws BakeryException if the amount is of another kind, or a range
   */
  public <Q extends Quantity<Q>> Amount<Q> to(BakeryUnit<Q> wanted) {
    refuseRange();
    return rangeTo(wanted).low();
  }

  /**
   * The range in a unit; a single amount is a range from itself to itself.
   *
   * @param wanted the unit
   * @param <Q> the kind of quantity
   * @return the range
   * @throws BakeryException if the amount is of another kind
   */
  public <Q extends Quantity<Q>> AmountRange<Q> rangeTo(BakeryUnit<Q> wanted) {
    if (kind() != wanted.kind()) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "not a " + wanted.kind().label(),
          "\"" + text() + "\"",
          "give one like " + wanted.kind().example());
    }
    AmountRange<Q> range = range();
    return new AmountRange<>(range.low().to(wanted), range.high().to(wanted));
  }

  /**
   * The mass of a count of packets, sticks or pieces.
   *
   * @param each the mass of one
   * @return the mass
   * @throws BakeryException if a unit was named, or a range was given
   */
  public Amount<Mass> massOf(Quantity<Mass> each) {
    refuseRange();
    if (unit != null) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "not a count",
          "\"" + text() + "\"",
          "give a number of packets or pieces, for example 2 packets");
    }
    return Given.mass("the each", each).multiply(low.doubleValue());
  }

  private void refuseRange() {
    if (isRange()) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "a range where one amount is wanted",
          "\"" + text() + "\"",
          "choose one amount between " + low + " and " + high);
    }
  }

  /** Equal when number, range, unit and count word are, however they were written. */
  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof HouseholdAmount that
        && low.equals(that.low)
        && high.equals(that.high)
        && Objects.equals(unit, that.unit)
        && Objects.equals(countWord, that.countWord);
  }

  @Override
  public int hashCode() {
    return Objects.hash(low, high, unit == null ? "" : unit.symbol(), countWord);
  }

  /** {@code 3 1/2 cup}, {@code 1 to 2 h}, {@code 2 packet}. */
  @Override
  public String toString() {
    String number = isRange() ? low + " to " + high : low.toString();
    String word = unit != null ? unit.symbol() : countWord != null ? countWord : "";
    return String.format(Locale.ROOT, "%s %s", number, word).strip();
  }
}
