package org.tourage.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;

import javax.measure.Quantity;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class TemperatureDifferenceTest {
  @Test
  void aDifferenceIsNoQuantityOfTemperature() {
    assertThat(Quantity.class).matches(q -> !q.isAssignableFrom(TemperatureDifference.class));
  }

  @Test
  void theSameRiseInBothScalesIsEqual() {
    assertThat(celsiusDegrees(10))
        .isEqualTo(fahrenheitDegrees(18))
        .hasSameHashCodeAs(fahrenheitDegrees(18));
    assertThat(celsiusDegrees(10)).isEqualByComparingTo(fahrenheitDegrees(18));
    assertThat(celsiusDegrees(-1))
        .isLessThan(TemperatureDifference.ZERO)
        .isNotEqualTo(celsiusDegrees(1));
    assertThat((Object) celsiusDegrees(1)).isNotEqualTo("1 K");
    assertThat(celsiusDegrees(0))
        .isEqualTo(celsiusDegrees(-0.0))
        .hasSameHashCodeAs(celsiusDegrees(-0.0));
  }

  @Test
  void differencesOfReadingsAreTrueInAnyScale() {
    assertThat(TemperatureDifference.between(celsius(24), celsius(26)).celsiusDegrees())
        .isCloseTo(2, within(1e-12));
    assertThat(TemperatureDifference.between(fahrenheit(70), fahrenheit(79)).celsiusDegrees())
        .isCloseTo(5, within(1e-12));
    assertThat(TemperatureDifference.between(fahrenheit(32), celsius(10)).fahrenheitDegrees())
        .isCloseTo(18, within(1e-9));
  }

  @Test
  void arithmeticAndText() {
    TemperatureDifference rise = celsiusDegrees(8);
    assertThat(rise.plus(rise.negate())).isEqualTo(TemperatureDifference.ZERO);
    assertThat(rise.times(2)).isEqualTo(celsiusDegrees(16));
    assertThat(rise.above(fahrenheit(50)).in(BakeryUnits.FAHRENHEIT)).isCloseTo(64.4, within(1e-9));
    assertThat(rise.isWithin(celsiusDegrees(-9))).isTrue();
    assertThat(rise.isWithin(celsiusDegrees(7))).isFalse();
    assertThat(rise).hasToString("a difference of 8 °C (14.4 °F)");
  }

  @Property
  void addingTheDifferenceLeadsFromOneReadingToTheOther(
      @ForAll @DoubleRange(min = -40, max = 300) double from,
      @ForAll @DoubleRange(min = -40, max = 300) double to) {
    TemperatureDifference between = TemperatureDifference.between(fahrenheit(from), celsius(to));
    assertThat(between.above(fahrenheit(from)).in(BakeryUnits.CELSIUS)).isCloseTo(to, within(1e-9));
  }
}
