package org.tourage.quantity;

import java.io.Serializable;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.VisibleText;

/**
 * An exact rational number in lowest terms, of any size: {@code 3 1/2} stays three and a half.
 *
 * @param numerator the number above the line, with the sign
 * @param denominator the number below the line, positive
 */
public record Fraction(BigInteger numerator, BigInteger denominator)
    implements Comparable<Fraction>, Serializable {

  /** The most digits of a decimal on either side of its point; an exponent can ask for more. */
  private static final int MAX_DIGITS = 1000;

  /** Nought. */
  public static final Fraction ZERO = of(0);

  /** One. */
  public static final Fraction ONE = of(1);

  /**
   * Brings the fraction to lowest terms with a positive denominator.
   *
   * @param numerator the number above the line, with the sign
   * @param denominator the number below the line, positive
   */
  public Fraction {
    if (denominator.signum() == 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a fraction can't have 0 below the line",
          numerator + "/" + denominator,
          "give a denominator from 1 up");
    }
    BigInteger divisor = numerator.gcd(denominator);
    if (denominator.signum() < 0) {
      divisor = divisor.negate();
    }
    numerator = numerator.divide(divisor);
    denominator = denominator.divide(divisor);
  }

  /**
   * A whole number.
   *
   * @param whole the number
   * @return the fraction
   */
  public static Fraction of(long whole) {
    return of(whole, 1);
  }

  /**
   * A fraction.
   *
   * @param numerator above the line
   * @param denominator below the line, not 0
   * @return the fraction in lowest terms
   */
  public static Fraction of(long numerator, long denominator) {
    return new Fraction(BigInteger.valueOf(numerator), BigInteger.valueOf(denominator));
  }

  /**
   * The exact value of a decimal.
   *
   * @param decimal plain or with an exponent, for example {@code 0.45359237}; at most 1000 digits
   *     before or behind the point
   * @return the fraction
   * @throws BakeryException if the text is no decimal, or one of more digits
   */
  public static Fraction ofDecimal(String decimal) {
    BigDecimal value = null;
    if (decimal.length() <= 2 * MAX_DIGITS) {
      try {
        value = new BigDecimal(decimal);
      } catch (NumberFormatException noDecimal) {
        // refused below, with the text
      }
    }
    if (value == null
        || value.scale() > MAX_DIGITS
        || (long) value.precision() - value.scale() > MAX_DIGITS) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT,
          value == null ? "not a decimal" : "a decimal of too many digits",
          "\"" + VisibleText.of(decimal) + "\"",
          "give one like 0.45, with at most " + MAX_DIGITS + " digits on either side of the point");
    }
    return value.scale() > 0
        ? new Fraction(value.unscaledValue(), BigInteger.TEN.pow(value.scale()))
        : new Fraction(value.toBigIntegerExact(), BigInteger.ONE);
  }

  /** The exact value of a double. */
  static Fraction ofDouble(double value) {
    BigDecimal exact = new BigDecimal(value);
    return exact.scale() > 0
        ? new Fraction(exact.unscaledValue(), BigInteger.TEN.pow(exact.scale()))
        : new Fraction(exact.toBigIntegerExact(), BigInteger.ONE);
  }

  /**
   * The sum.
   *
   * @param other the other
   * @return this + other
   */
  public Fraction plus(Fraction other) {
    return new Fraction(
        numerator.multiply(other.denominator).add(other.numerator.multiply(denominator)),
        denominator.multiply(other.denominator));
  }

  /**
   * The difference.
   *
   * @param other the other
   * @return this − other
   */
  public Fraction minus(Fraction other) {
    return plus(other.negate());
  }

  /**
   * The product.
   *
   * @param other the other
   * @return this × other
   */
  public Fraction times(Fraction other) {
    return new Fraction(
        numerator.multiply(other.numerator), denominator.multiply(other.denominator));
  }

  /**
   * The quotient.
   *
   * @param other the other, not 0
   * @return this ÷ other
   */
  public Fraction over(Fraction other) {
    return new Fraction(
        numerator.multiply(other.denominator), denominator.multiply(other.numerator));
  }

  /**
   * The opposite.
   *
   * @return −this
   */
  public Fraction negate() {
    return new Fraction(numerator.negate(), denominator);
  }

  /**
   * The sign.
   *
   * @return −1, 0 or 1
   */
  public int signum() {
    return numerator.signum();
  }

  /**
   * The nearest double to 34 digits.
   *
   * @return the value
   */
  public double doubleValue() {
    return new BigDecimal(numerator)
        .divide(new BigDecimal(denominator), MathContext.DECIMAL128)
        .doubleValue();
  }

  @Override
  public int compareTo(Fraction other) {
    return numerator.multiply(other.denominator).compareTo(other.numerator.multiply(denominator));
  }

  /** As a cook writes it: {@code 3 1/2}, {@code 1/4}, {@code 2}. */
  @Override
  public String toString() {
    BigInteger[] parts = numerator.abs().divideAndRemainder(denominator);
    String sign = numerator.signum() < 0 ? "-" : "";
    if (parts[1].signum() == 0) {
      return sign + parts[0];
    }
    String proper = parts[1] + "/" + denominator;
    return sign + (parts[0].signum() == 0 ? proper : parts[0] + " " + proper);
  }
}
