package org.tourage.doughtemperature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.GRAM;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.formula.Preferment;

class StageMixTest {
  @ParameterizedTest
  @CsvSource({"20, 11.9", "33, 7.8", "50, -8.3"})
  void onlyTheWaterOfTheStageThatIsMixedNowIsTempered(double share, double water) {
    Batch batch =
        Formula.byPercent(
                "poolish bread",
                f ->
                    f.line("bread flour", percent(100))
                        .line("water", percent(65))
                        .line("salt", percent(2))
                        .line("instant yeast", percent(0.5))
                        .preferment(Preferment.poolish(percent(share))))
            .forFlour(kilograms(10));
    HeatBalance balance = HeatBalance.of(batch, celsius(24), celsius(22)).mixing(celsiusDegrees(6));
    assertThat(balance.waterTemperature().in(CELSIUS)).isCloseTo(water, within(0.05));
    assertThat(balance.liquid().in(GRAM)).isCloseTo(6500 - 100 * share, within(1e-6));
  }

  @Test
  void ofAPoolishWithAlmostAllTheWaterTheRestIsTempered() {
    Batch batch =
        Formula.byWeight(
            "poolish bread",
            f ->
                f.line("bread flour", grams(1000))
                    .line("water", grams(650))
                    .preferment(Preferment.poolish(percent(50))));
    assertThat(HeatBalance.of(batch, celsius(24), celsius(22)).liquid()).isEqualTo(grams(150));
  }
}
