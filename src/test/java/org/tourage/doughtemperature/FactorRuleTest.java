package org.tourage.doughtemperature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.FAHRENHEIT;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.KILOGRAM;
import static org.tourage.quantity.BakeryUnits.POUND;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.quantity.TemperatureDifference;
import org.tourage.reference.Checks;

class FactorRuleTest {
  private static double figure(String check) {
    return Checks.row("other-rooms.csv", check).number("value");
  }

  private static FactorRule textbook() {
    return FactorRule.of(fahrenheit(76))
        .flour(fahrenheit(70))
        .room(fahrenheit(72))
        .friction(fahrenheitDegrees(24));
  }

  @Test
  void theTradeExampleComesOutToThePrintedDigit() {
    assertThat(textbook().water().in(FAHRENHEIT))
        .isCloseTo(figure("water for target 76 flour 70 room 72 friction 24"), within(1e-9));
    assertThat(textbook().working().toString()).contains("3 × 76 − 70 − 72 − 24 = 62 °F");
    assertThat(textbook()).hasToString("water at 16.7 °C (62 °F) for dough at 24.4 °C (76 °F)");
    assertThat(textbook().advice()).isEmpty();
  }

  @Test
  void theIceExamplesComeOutToThePrintedDigit() {
    assertThat(IceRule.of(pounds(10), fahrenheit(70), fahrenheit(45)).ice().in(POUND))
        .isCloseTo(figure("ice for 10 lb from tap 70 to 45"), within(5e-5));
    IceRule metric = IceRule.of(kilograms(10), celsius(20), celsius(5));
    assertThat(metric.ice().in(KILOGRAM))
        .isCloseTo(figure("ice for 10 kg from tap 20 to 5"), within(1e-12));
    assertThat(metric.tapWater()).isEqualTo(kilograms(8.5));
    assertThat(metric).hasToString("1500 g ice and 8500 g tap water at 20 °C (68 °F)");
    assertThat(metric.working().toString()).contains("(20 − 5) / (20 + 80)");
  }

  @Property
  void bothScalesGiveTheSameWater(
      @ForAll @DoubleRange(min = 15, max = 35) double target,
      @ForAll @DoubleRange(min = -5, max = 40) double flour,
      @ForAll @DoubleRange(min = 0, max = 40) double room,
      @ForAll @DoubleRange(min = 0, max = 20) double friction) {
    FactorRule c =
        FactorRule.of(celsius(target))
            .flour(celsius(flour))
            .room(celsius(room))
            .friction(celsiusDegrees(friction));
    FactorRule f =
        FactorRule.of(celsius(target).to(FAHRENHEIT))
            .flour(celsius(flour).to(FAHRENHEIT))
            .room(celsius(room).to(FAHRENHEIT))
            .friction(fahrenheitDegrees(friction * 1.8));
    assertThat(f.water().in(CELSIUS)).isCloseTo(c.water().in(CELSIUS), within(1e-9));
  }

  @Property
  void frictionOfAPastMixIsTheInverseOfTheRule(
      @ForAll @DoubleRange(min = 15, max = 35) double dough,
      @ForAll @DoubleRange(min = 0, max = 40) double water,
      @ForAll @DoubleRange(min = 0, max = 40) double flour) {
    FactorRule measured =
        FactorRule.of(celsius(dough))
            .flour(celsius(flour))
            .room(celsius(22))
            .preferment(celsius(20));
    TemperatureDifference friction = measured.frictionOfPastMix(celsius(water));
    FactorRule repeated = new FactorRule(measured.target(), measured.factors(), friction);
    assertThat(repeated.water().in(CELSIUS)).isCloseTo(water, within(1e-9));
  }

  @Property
  void warmerTapWaterNeedsMoreIce(
      @ForAll @DoubleRange(min = 5, max = 30) double tap,
      @ForAll @DoubleRange(min = 0.1, max = 10) double more) {
    double less = IceRule.of(grams(1000), celsius(tap), celsius(2)).ice().in(GRAM);
    assertThat(IceRule.of(grams(1000), celsius(tap + more), celsius(2)).ice().in(GRAM))
        .isGreaterThan(less);
  }

  @Test
  void whatIsUnwiseIsAdvisedAndWhatCanNotBeIsRefused() {
    FactorRule cold = FactorRule.of(celsius(30)).flour(celsius(10)).room(celsius(15));
    assertThat(cold.water().in(CELSIUS)).isCloseTo(65, within(1e-9));
    assertThat(cold.advice()).extracting(Advice::code).containsExactly("WATER_KILLS_YEAST");
    assertThat(cold.friction(celsiusDegrees(20)).advice())
        .extracting(Advice::code)
        .containsExactly("WATER_WARM");
    FactorRule summer =
        FactorRule.of(celsius(22))
            .flour(celsius(32))
            .room(celsius(34))
            .friction(celsiusDegrees(12));
    assertThat(summer.advice()).extracting(Advice::code).containsExactly("WATER_BELOW_FREEZING");
    assertThat(summer.ice(grams(600), celsius(20)).advice()).isEmpty();
    assertThat(IceRule.of(grams(600), celsius(20), celsius(-40)).advice())
        .extracting(Advice::code)
        .containsExactly("ICE_MUCH");
    assertThat(IceRule.of(grams(600), celsius(10), celsius(20)).ice()).isEqualTo(grams(0));
    assertThatThrownBy(() -> IceRule.of(grams(600), celsius(20), celsius(-81)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("chill the flour");
    assertThatThrownBy(() -> IceRule.of(grams(0), celsius(20), celsius(5)))
        .hasMessageContaining("no water");
    assertThatThrownBy(() -> IceRule.of(grams(1), celsius(101), celsius(5)))
        .hasMessageContaining("101 °C");
  }
}
