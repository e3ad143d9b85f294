package org.tourage.fermentation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.tourage.quantity.Amounts.*;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.formula.Formula;
import org.tourage.physics.Solid;

/** A dough that would rise further than it can hold its gas. */
class OverproofTest {
  private static Formula with(String flour, double share, String other) {
    return Formula.byPercent(
        "dough",
        f ->
            f.line(flour, percent(share))
                .line(other, percent(100 - share))
                .line("water", percent(70))
                .line("salt", percent(2))
                .line("instant yeast", percent(1)));
  }

  private static Rise rise(Formula formula) {
    return Rise.observed(DoughGas.of(formula, celsius(24)), 1.5, minutes(60), celsius(24));
  }

  private static RiseHistory proof(Formula formula, double minutes) {
    DoughBody body =
        DoughBody.of(Solid.slab(millimetres(40)), formula.constituents(s -> s.inDough()));
    return RiseHistory.start(rise(formula), celsius(24))
        .then("proof", body, celsius(24), minutes(minutes))
        .then("score", body, celsius(24), minutes(4));
  }

  private static List<Advice> overproofed(RiseHistory history) {
    return history.advice().stream().filter(a -> a.code().equals("OVERPROOFED")).toList();
  }

  @Test
  void wheatHoldsThreeTimesItsVolumeAndADoughOfMostlyRyeOrWithoutGlutenTwoTimes() {
    assertThat(DoughGas.of(with("bread flour", 90, "dark rye flour"), celsius(24)).holds())
        .isEqualTo(3);
    assertThat(DoughGas.of(with("bread flour", 50, "dark rye flour"), celsius(24)).holds())
        .isEqualTo(3);
    assertThat(DoughGas.of(with("bread flour", 49, "dark rye flour"), celsius(24)).holds())
        .isEqualTo(2);
    assertThat(DoughGas.of(with("white rice flour", 70, "buckwheat flour"), celsius(24)).holds())
        .isEqualTo(2);
    DoughGas rye = DoughGas.of(with("dark rye flour", 90, "bread flour"), celsius(24));
    assertThat(rye.withAir(percent(6)).atAltitude(metres(2000)).holds()).isEqualTo(2);
    assertThat(rye.withHold(1.7).holds()).isEqualTo(1.7);
    assertThatThrownBy(() -> rye.withHold(1)).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> rye.withHold(Double.NaN)).isInstanceOf(BakeryException.class);
  }

  @Test
  void theSameRiseIsFineForWheatAndTooFarForRye() {
    assertThat(overproofed(proof(with("bread flour", 90, "dark rye flour"), 150))).isEmpty();
    assertThat(overproofed(proof(with("dark rye flour", 90, "bread flour"), 150))).hasSize(1);
  }

  @Test
  void itIsSaidOnceWithTheLimitWhenItIsPassedAndThatTheFigureIsOnPaperOnly() {
    List<Advice> told = overproofed(proof(with("bread flour", 90, "dark rye flour"), 420));
    assertThat(told).hasSize(1);
    assertThat(told.get(0).text())
        .matches(
            "proof passes 3 times the volume within 2 h 55 min and would end at 7\\.09 times if no gas escaped")
        .doesNotContain("score");
    assertThat(told.get(0).remedy()).contains("collapse");
    assertThat(told.get(0).source()).isEqualTo(Advice.COMMON_PRACTICE);
  }

  @Test
  void aRiseThatIsAskedForBeyondTheLimitIsToldBeforeAnythingRises() {
    Rise rise = rise(with("dark rye flour", 90, "bread flour"));
    assertThat(rise.advice(2)).isEqualTo(rise.advice());
    assertThat(rise.advice(2.5)).extracting(Advice::code).contains("OVERPROOFED");
    assertThatThrownBy(() -> rise.advice(Double.NaN)).isInstanceOf(BakeryException.class);
  }
}
