package org.tourage.quantity;

import static org.tourage.quantity.BakeryUnits.KELVIN;

import java.io.Serializable;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Numbers;

/**
 * A rise or fall of temperature, such as the friction of a mixer. It is a type of its own, not a
 * {@code Quantity<Temperature>}, so that the compiler refuses a thermometer reading in its place: a
 * rise of 8 °C is 14.4 °F, while a reading of 8 °C is 46.4 °F.
 *
 * <p>Kept in kelvins; equality and order look at 12 significant digits, as those of {@link Amount}
 * do. Immutable and serialisable.
 */
public final class TemperatureDifference
    implements Comparable<TemperatureDifference>, Serializable {
  private static final long serialVersionUID = 1L;
  private static final String EXACT = "a difference of ";
  private static final double FAHRENHEIT_DEGREES_PER_KELVIN = 1.8;

  /** No difference. */
  public static final TemperatureDifference ZERO = new TemperatureDifference(0);

  /** The difference in kelvins. */
  private final double kelvins;

  private TemperatureDifference(double kelvins) {
    if (!Double.isFinite(kelvins)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a temperature difference must be a finite number",
          kelvins + " K",
          "check the sum that led to it");
    }
    this.kelvins = kelvins == 0 ? 0.0 : kelvins;
  }

  /**
   * A difference in degrees Celsius, which is the same number of kelvins.
   *
   * @param degrees how many; negative for a fall
   * @return the difference
   */
  public static TemperatureDifference ofCelsiusDegrees(double degrees) {
    return new TemperatureDifference(degrees);
  }

  /**
   * A difference in degrees Fahrenheit.
   *
   * @param degrees how many; negative for a fall
   * @return the difference
   */
  public static TemperatureDifference ofFahrenheitDegrees(double degrees) {
    return new TemperatureDifference(degrees / FAHRENHEIT_DEGREES_PER_KELVIN);
  }

  /**
   * How far one reading lies above another.
   *
   * @param from where it starts
   * @param to where it ends
   * @return to − from, negative for a fall
   */
  public static TemperatureDifference between(
      Quantity<Temperature> from, Quantity<Temperature> to) {
    Amount<Temperature> start = Given.temperature("the start", from);
    Amount<Temperature> end = Given.temperature("the end", to);
    BakeryUnit<Temperature> unit = start.bakeryUnit();
    return end.bakeryUnit() == unit
        ? new TemperatureDifference((end.value() - start.value()) * unit.factor())
        : new TemperatureDifference(KELVIN.measure(end) - KELVIN.measure(start));
  }

  /**
   * The difference in degrees Celsius, that is in kelvins.
   *
   * @return how many
   */
  public double celsiusDegrees() {
    return kelvins;
  }

  /**
   * The difference in degrees Fahrenheit.
   *
   * @return how many
   */
  public double fahrenheitDegrees() {
    return kelvins * FAHRENHEIT_DEGREES_PER_KELVIN;
  }

  /**
   * The reading that lies this far above another.
   *
   * @param reading where it starts
   * @return the reading in the same unit
   */
  public Amount<Temperature> above(Quantity<Temperature> reading) {
    Amount<Temperature> start = Given.temperature("the reading", reading);
    BakeryUnit<Temperature> unit = start.bakeryUnit();
    return unit.amount(start.value() + kelvins / unit.factor());
  }

  /**
   * The sum of two differences.
   *
   * @param other the other
   * @return the sum
   */
  public TemperatureDifference plus(TemperatureDifference other) {
    return new TemperatureDifference(kelvins + other.kelvins);
  }

  /**
   * The product with a number.
   *
   * @param factor the number
   * @return the product
   */
  public TemperatureDifference times(double factor) {
    return new TemperatureDifference(kelvins * factor);
  }

  /**
   * The opposite: a fall for a rise.
   *
   * @return the opposite
   */
  public TemperatureDifference negate() {
    return new TemperatureDifference(-kelvins);
  }

  /**
   * Whether this difference, up or down, is no greater than another's size.
   *
   * @param other the other
   * @return true if it is not
   */
  public boolean isWithin(TemperatureDifference other) {
    return Math.abs(kelvins) <= Math.abs(other.kelvins);
  }

  private Amount<Temperature> key() {
    // borrows the rounding of Amount on a scale without offset
    return KELVIN.amount(Math.abs(kelvins));
  }

  @Override
  public int compareTo(TemperatureDifference other) {
    return equals(other) ? 0 : Double.compare(kelvins, other.kelvins);
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof TemperatureDifference that
        && Math.signum(kelvins) == Math.signum(that.kelvins)
        && key().equals(that.key());
  }

  @Override
  public int hashCode() {
    return Objects.hash(Math.signum(kelvins), key());
  }

  /**
   * The difference as a text that reads back to the last bit; never that of a reading.
   *
   * @return for example {@code a difference of 8.5 K}
   */
  public String exactText() {
    return EXACT + ExactText.number(kelvins) + " K";
  }

  /**
   * Reads back an {@linkplain #exactText() exact text}.
   *
   * @param exactText the text
   * @return the difference, to the last bit
   * @throws BakeryException if it is no such text, for example that of a reading
   */
  public static TemperatureDifference parse(String exactText) {
    if (!exactText.startsWith(EXACT) || !exactText.endsWith(" K")) {
      throw ExactText.unreadable(exactText, "not the exact text of a temperature difference");
    }
    String number = exactText.substring(EXACT.length(), exactText.length() - 2);
    return new TemperatureDifference(ExactText.readNumber(number));
  }

  /** For people: {@code a difference of 8 °C (14.4 °F)}. */
  @Override
  public String toString() {
    return "a difference of "
        + Numbers.significant(kelvins, 4)
        + " °C ("
        + Numbers.significant(fahrenheitDegrees(), 4)
        + " °F)";
  }
}
