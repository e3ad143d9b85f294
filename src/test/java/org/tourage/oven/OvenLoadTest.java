package org.tourage.oven;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.celsius;
import static org.tourage.quantity.Amounts.grams;
import static org.tourage.quantity.Amounts.millimetres;
import static org.tourage.quantity.Amounts.minutes;
import static org.tourage.quantity.BakeryUnits.JOULE;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import org.junit.jupiter.api.Test;
import org.tourage.advice.BakeryException;
import org.tourage.physics.Constituents;
import org.tourage.physics.Solid;

class OvenLoadTest {
  private static final Bake BAKE =
      Bake.of(
          BakePiece.of(
              Solid.roll(millimetres(50)), new Constituents(0.44, 0.07, 0.02, 0.44, 0.015, 0.015)),
          OvenModel.DECK.withHeating(9000, 200_000, 8),
          OvenProfile.of(celsius(220), minutes(20)),
          DoughKind.LEAN);

  @Test
  void loadsFollowTheTraysAndTheEnergyCountsHeatingUpOnce() {
    OvenLoad load = new OvenLoad(100, 12, 4);
    assertThat(load.loads()).isEqualTo(3);
    assertThat(load.atOnce()).isEqualTo(48);
    assertThat(new OvenLoad(48, 12, 4).loads()).isEqualTo(1);
    assertThat(load.baking(BAKE).in(MINUTE)).isCloseTo(60, within(1e-6));
    double pieces = BAKE.heatTaken() * 0.08 * 100;
    double kept = 3 * 8 * (220 - 20) * 1200.0;
    assertThat(load.energy(BAKE, celsius(20), grams(80)).in(JOULE))
        .isCloseTo(200_000.0 * 200 + kept + pieces, within(1.0));
    assertThat(load.watts(BAKE, grams(80)))
        .isCloseTo(BAKE.heatTaken() * 0.08 * 48 / 1200, within(1e-6));
    assertThat(load).hasToString("100 pieces, 12 on a tray, 4 trays at once: 3 loads");
    assertThatThrownBy(() -> new OvenLoad(0, 1, 1)).isInstanceOf(BakeryException.class);
  }
}
