package org.tourage.internal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers as text, never locale-dependent. */
public final class Numbers {
  private static final MathContext CLEAN = new MathContext(12);

  private Numbers() {}

  /**
   * Writes a number with at most so many significant digits, in plain notation, without trailing
   * zeros.
   *
   * @param value the number, finite
   * @param digits at least 1
   * @return the text, for example {@code 176.667}
   */
  public static String significant(double value, int digits) {
    check(value, digits >= 1);
    return plain(new BigDecimal(value).round(new MathContext(digits, RoundingMode.HALF_UP)));
  }

  /**
   * Writes a number with at most so many decimals, without trailing zeros.
   *
   * @param value the number, finite
   * @param decimals 0 or more
   * @return the text
   */
  public static String decimals(double value, int decimals) {
    check(value, decimals >= 0);
    return plain(clean(value).setScale(decimals, RoundingMode.HALF_UP));
  }

  /**
   * Writes a number with exactly so many decimals, so that columns line up.
   *
   * @param value the number, finite
   * @param decimals 0 or more
   * @return the text
   */
  public static String fixed(double value, int decimals) {
    check(value, decimals >= 0);
    BigDecimal rounded = clean(value).setScale(decimals, RoundingMode.HALF_UP);
    return rounded.signum() == 0
        ? BigDecimal.ZERO.setScale(decimals).toPlainString()
        : rounded.toPlainString();
  }

  /**
   * A whole number of decimal steps as the nearest double, so that 3 × 0.1 is 0.3.
   *
   * @param count how many steps
   * @param step the step
   * @return count × step
   */
  public static double cleanProduct(long count, double step) {
    check(step, true);
    return BigDecimal.valueOf(step).multiply(BigDecimal.valueOf(count)).doubleValue();
  }

  /** Refuses what has no digits: a number that is none must never look like one. */
  private static void check(double value, boolean digitsFit) {
    if (!Double.isFinite(value) || !digitsFit) {
      // the doors of the rooms refuse such numbers with their own words
      throw new IllegalArgumentException(
          digitsFit ? "can't write " + value : "can't write a number with that many digits");
    }
  }

  /** Without the noise of the last bits, so that a computed 54.5 rounds like 54.5. */
  private static BigDecimal clean(double value) {
    return new BigDecimal(value).round(CLEAN);
  }

  private static String plain(BigDecimal value) {
    return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
  }
}
