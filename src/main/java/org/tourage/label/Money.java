package org.tourage.label;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Currency;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * An amount of money. Sums are exact; only the text is rounded to the currency's digits.
 *
 * @param amount the amount
 * @param currency its currency
 */
public record Money(BigDecimal amount, Currency currency)
    implements Comparable<Money>, Serializable {

  /**
   * Checks that nothing is null.
   *
   * @param amount the amount
   * @param currency its currency
   */
  public Money {
    requireNonNull(amount, "amount");
    requireNonNull(currency, "currency");
  }

  /**
   * An amount written as text, so that no binary fraction comes in.
   *
   * @param amount for example {@code 1.29}
   * @param currencyCode an ISO 4217 code, for example {@code EUR}
   * @return the money
   * @throws BakeryException if either can't be read
   */
  public static Money of(String amount, String currencyCode) {
    try {
      return new Money(new BigDecimal(amount.strip()), Currency.getInstance(currencyCode.strip()));
    } catch (IllegalArgumentException e) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT,
          "not an amount of money",
          "\"" + amount + "\" \"" + currencyCode + "\"",
          "give a number like 1.29 and an ISO 4217 code like EUR");
    }
  }

  /**
   * Nothing of a currency.
   *
   * @param currency the currency
   * @return zero
   */
  public static Money zero(Currency currency) {
    return new Money(BigDecimal.ZERO, currency);
  }

  /**
   * The sum.
   *
   * @param other money of the same currency
   * @return the sum
   * @throws BakeryException if the currencies differ
   */
  public Money plus(Money other) {
    if (!currency.equals(other.currency)) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "two currencies have no sum",
          this + " and " + other,
          "give all prices in one currency");
    }
    return new Money(amount.add(other.amount), currency);
  }

  /**
   * This money times a factor.
   *
   * @param factor the factor
   * @return the product
   */
  public Money times(BigDecimal factor) {
    return new Money(amount.multiply(factor), currency);
  }

  /** This money times a ratio of masses or times, to 16 digits. */
  Money times(double ratio) {
    return new Money(amount.multiply(new BigDecimal(ratio, MathContext.DECIMAL64)), currency);
  }

  /**
   * This money divided.
   *
   * @param parts how many parts, positive
   * @return one part, to 34 digits
   */
  public Money dividedBy(int parts) {
    if (parts <= 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE, "money is divided into parts", parts + " parts", "give 1 or more");
    }
    return new Money(amount.divide(BigDecimal.valueOf(parts), MathContext.DECIMAL128), currency);
  }

  /**
   * As it is paid: rounded half up to the digits of the currency.
   *
   * @return the rounded money
   */
  public Money rounded() {
    int digits = Math.max(0, currency.getDefaultFractionDigits());
    return new Money(amount.setScale(digits, RoundingMode.HALF_UP), currency);
  }

  @Override
  public int compareTo(Money other) {
    plus(other); // refuses another currency
    return amount.compareTo(other.amount);
  }

  /** For example {@code 1.29 EUR}. */
  @Override
  public String toString() {
    return rounded().amount.toPlainString() + " " + currency.getCurrencyCode();
  }
}
