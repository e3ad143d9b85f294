package org.tourage.fermentation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowable;
import static org.tourage.quantity.Amounts.*;

import java.util.LinkedHashMap;
import java.util.Map;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.tourage.advice.BakeryException;
import org.tourage.formula.Formula;
import org.tourage.label.KitchenCautions;
import org.tourage.oven.ThermalDeath;
import org.tourage.physics.TemperatureHistory;
import org.tourage.quantity.Amount;

/** What is missing at a public door is named, and a time that can't be is refused. */
@SuppressWarnings("NullAway")
class DoorsTest {
  private static final Formula DOUGH =
      Formula.byPercent("d", f -> f.line("bread flour", percent(100)).line("milk", percent(60)));
  private static final DoughGas GAS = DoughGas.of(DOUGH, celsius(24));
  private static final Rise RISE = Rise.observed(GAS, 2, minutes(90), celsius(24));
  private static final ThermalDeath BUNS = ThermalDeath.named("salmonella in bun dough");

  @Test
  void whatIsMissingIsNamed() {
    Map<ThrowingCallable, String> doors = new LinkedHashMap<>();
    doors.put(() -> Rise.observed(GAS, 2, null, celsius(24)), "time");
    doors.put(() -> Rise.observed(GAS, 2, minutes(90), null), "temperature");
    doors.put(() -> Rise.firstGuess(GAS, null), "freshYeast");
    doors.put(() -> RISE.timeTo(2, (Amount<javax.measure.quantity.Temperature>) null), "at");
    doors.put(() -> RISE.yeastFor(2, null, celsius(24)), "within");
    doors.put(() -> DoughGas.of((Formula) null, celsius(24)), "formula");
    doors.put(() -> DoughGas.of(DOUGH, null), "mixedAt");
    doors.put(() -> GAS.withAir(null), "share");
    doors.put(() -> Rosso1993.named(null), "name");
    doors.put(() -> RateMarks.named(null), "name");
    doors.put(() -> Q10Rule.of(2, null), "reference");
    doors.put(() -> Q10Rule.observed(null, celsius(24), 2), "cold");
    doors.put(() -> Arrhenius.observed(celsius(14), null, 2), "warm");
    doors.put(() -> Arrhenius.of(null, celsius(20), "x"), "activation");
    doors.put(() -> ColdTail.below(RISE.model(), null, 2), "joint");
    doors.put(() -> ThermalDeath.named(null), "name");
    doors.put(() -> ThermalDeath.Tested.of(null, minutes(1)), "at");
    doors.put(() -> ThermalDeath.Tested.of(celsius(55), null), "decimal");
    doors.put(() -> BUNS.decimalAt(null), "temperature");
    doors.put(() -> BUNS.logReductions(null), "history");
    doors.put(() -> KitchenCautions.of(null), "formula");
    doors.put(() -> KitchenCautions.warmHold(DOUGH, null), "warm");
    doors.put(() -> KitchenCautions.warmHold(DOUGH, hours(1), null, celsius(9)), "start");
    doors.put(() -> KitchenCautions.coldWater(yeasted(), null), "water");
    doors.put(() -> KitchenCautions.cooling(null), "core");
    doors.put(() -> KitchenCautions.lye(null), "step");
    doors.forEach(
        (door, name) ->
            assertThat(catchThrowable(door))
                .as(name)
                .isInstanceOf(NullPointerException.class)
                .hasMessage(name));
  }

  private static Formula yeasted() {
    return Formula.byPercent(
        "d", f -> f.line("bread flour", percent(100)).line("instant yeast", percent(1)));
  }

  @Test
  void aTimeThatCanNotBeIsRefused() {
    assertThatThrownBy(() -> KitchenCautions.warmHold(DOUGH, hours(-3)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("-3 h");
    assertThatThrownBy(() -> KitchenCautions.warmHold(DOUGH, hours(-3), celsius(4), celsius(9)))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> RISE.yeastFor(2, minutes(-5), celsius(24)))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> Rise.observed(GAS, 2, minutes(-5), celsius(24)))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> Ripeness.ofLevain(percent(20), hours(-1), celsius(24)))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> TemperatureHistory.ofHold(celsius(4), hours(-1)))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> ThermalDeath.Tested.of(celsius(55), minutes(-1)))
        .isInstanceOf(BakeryException.class);
    for (double no : new double[] {Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatThrownBy(() -> minutes(no)).isInstanceOf(BakeryException.class);
      assertThatThrownBy(() -> RISE.withYeast(no)).isInstanceOf(BakeryException.class);
      assertThatThrownBy(() -> RISE.timeTo(no, celsius(24))).isInstanceOf(BakeryException.class);
      assertThatThrownBy(() -> Q10Rule.observed(celsius(14), celsius(24), no))
          .isInstanceOf(BakeryException.class);
    }
  }
}
