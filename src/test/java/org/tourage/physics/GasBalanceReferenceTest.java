package org.tourage.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.tourage.advice.BakeryException;

class GasBalanceReferenceTest {
  /** CRC Handbook, p. 8-90: 1000 × mole fraction of CO2 in water at 100 kPa of CO2. */
  @ParameterizedTest
  @CsvSource({
    "0, 1.337",
    "5, 1.123",
    "10, 0.950",
    "15, 0.814",
    "20, 0.704",
    "25, 0.614",
    "30, 0.541",
    "35, 0.481",
    "40, 0.431"
  })
  void carbonDioxideDissolvesAsPrintedWithinTwoPercent(double celsius, double thousandth) {
    assertThat(1000 * 1e5 / GasBalance.henry(celsius))
        .isCloseTo(thousandth, Percentage.withPercentage(2));
  }

  @Test
  void withoutLossFrom26To70DegreesTheVolumeGrowsByAboutHalf() {
    // worked independently: × 1.53; this one with 60 % gas and 200 kg of water in a cubic metre
    GasBalance dough = new GasBalance(0.6, 200, 26, 101_325, 1, 0);
    assertThat(dough.volume(70, 0)).isBetween(1.4, 1.7);
    assertThat(dough.volume(26, 0)).isCloseTo(1, within(1e-12));
    assertThat(dough.volume(70, 0.1)).isGreaterThan(dough.volume(70, 0));
    assertThatThrownBy(() -> new GasBalance(1.2, 200, 26, 101_325, 1, 0))
        .isInstanceOf(BakeryException.class);
  }

  @Test
  void yeastDiesAsMeasured() {
    // D of 5.67 min at 55 °C and 1.03 min at 58 °C (Channaiah and others 2016): by z within a third
    assertThat(Math.log(10) / GasBalance.dying(55) / 60).isCloseTo(5.67, within(1e-9));
    assertThat(Math.log(10) / GasBalance.dying(58) / 60)
        .isCloseTo(1.03, Percentage.withPercentage(34));
  }
}
