package org.tourage.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.tourage.advice.BakeryException;

class FractionTest {
  @Test
  void isKeptInLowestTermsWithThePositiveDenominator() {
    assertThat(Fraction.of(6, -4)).isEqualTo(Fraction.of(-3, 2)).hasToString("-1 1/2");
    assertThat(Fraction.of(0, 7)).isEqualTo(Fraction.ZERO).hasToString("0");
    assertThat(Fraction.of(7, 1)).hasToString("7");
    assertThat(Fraction.of(1, 4)).hasToString("1/4");
    assertThat(Fraction.ofDecimal("0.125")).isEqualTo(Fraction.of(1, 8));
    assertThat(Fraction.ofDecimal("12")).isEqualTo(Fraction.of(12));
    assertThat(Fraction.of(1, 3).doubleValue()).isEqualTo(1.0 / 3);
    assertThat(Fraction.of(-1, 3).signum()).isEqualTo(-1);
    assertThatThrownBy(() -> Fraction.of(1, 0))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("1/0");
  }

  @Property
  void arithmeticIsExactAndInverse(
      @ForAll @IntRange(min = -999, max = 999) int a,
      @ForAll @IntRange(min = 1, max = 64) int b,
      @ForAll @IntRange(min = -999, max = 999) int c,
      @ForAll @IntRange(min = 1, max = 64) int d) {
    Fraction x = Fraction.of(a, b);
    Fraction y = Fraction.of(c, d);
    assertThat(x.plus(y).minus(y)).isEqualTo(x);
    assertThat(x.plus(y)).isEqualTo(y.plus(x));
    assertThat(x.compareTo(y)).isEqualTo(Long.compare((long) a * d, (long) c * b));
    assertThat(x.plus(y).doubleValue()).isCloseTo((double) a / b + (double) c / d, within(1e-9));
    Assume.that(c != 0);
    assertThat(x.times(y).over(y)).isEqualTo(x);
  }
}
