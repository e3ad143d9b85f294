package org.tourage.fermentation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.HOUR;
import static org.tourage.quantity.BakeryUnits.KILOGRAM;
import static org.tourage.quantity.BakeryUnits.METRE;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.Severity;
import org.tourage.formula.Formula;
import org.tourage.physics.Constituents;
import org.tourage.physics.Solid;
import org.tourage.physics.TemperatureHistory;
import org.tourage.quantity.Extent;

/** The cold end, shapes by mass, the gas at the end, and preferments. */
class ColdTest {
  private static final Constituents DOUGH = new Constituents(0.40, 0.07, 0.05, 0.44, 0.02, 0.02);
  private static final DoughGas BUBBLES = DoughGas.of(DOUGH, celsius(24));
  private static final Rise RISE = Rise.observed(BUBBLES, 2, minutes(95), celsius(23));
  private static final DoughBody SLAB =
      DoughBody.of(Solid.slab(millimetres(25)), DOUGH).covered(Cover.FILM);

  @Test
  void whereNoRateIsNamedTheColdEndIsTheFactorAndTheNightIsQuickerThanByGrowthAlone() {
    assertThat(RISE.model()).isInstanceOf(ColdTail.class);
    RateModel growth = Rosso1993.named("baker's yeast, gas in dough");
    Rise byGrowth = Rise.observed(BUBBLES, growth, 2, minutes(95), celsius(23));
    double slower = byGrowth.timeTo(2, celsius(4)).in(HOUR) / RISE.timeTo(2, celsius(4)).in(HOUR);
    assertThat(slower).isBetween(2.0, 5.0);
    assertThat(RISE.timeTo(2, celsius(12))).isEqualTo(byGrowth.timeTo(2, celsius(12)));
  }

  @Test
  void belowTenDegreesTheNightIsWarnedOfWithItsRange() {
    RiseHistory night =
        RiseHistory.start(RISE, celsius(24)).then("night", SLAB, celsius(4), hours(14));
    ColdRange range = night.coldRange();
    assertThat(range.byGrowth()).isLessThan(range.slow());
    assertThat(range.slow()).isLessThan(range.taken());
    assertThat(range.taken()).isLessThan(range.quick());
    assertThat(range.taken()).isEqualTo(night.end().growth());
    Advice advice =
        night.advice().stream()
            .filter(a -> a.code().equals("COLD_UNSURE"))
            .findFirst()
            .orElseThrow();
    assertThat(advice.severity()).isEqualTo(Severity.WARNING);
    assertThat(advice.text())
        .contains("night may end anywhere from")
        .contains("below 10 °C (50 °F)");
    assertThat(advice.remedy()).contains("in the evening and in the morning");
    // in the warm there is nothing to warn of
    RiseHistory day = RiseHistory.start(RISE, celsius(24)).then("day", SLAB, celsius(12), hours(3));
    assertThat(day.advice()).isEmpty();
    assertThat(day.coldRange().least()).isCloseTo(day.coldRange().most(), within(1e-12));
  }

  @ParameterizedTest
  @ValueSource(strings = {"growth", "slow", "quick"})
  void theRangeIsWhatTheWholeHistoryGivesUnderEachModel(String which) {
    RateModel model =
        switch (which) {
          case "growth" -> ColdTail.withoutTail(RISE.model());
          case "slow" -> ColdTail.slowest(RISE.model());
          default -> ColdTail.quickest(RISE.model());
        };
    DoughBody tub = DoughBody.tubOf(kilograms(2), DOUGH);
    RiseHistory night =
        RiseHistory.start(RISE, celsius(24))
            .then("rest", tub, celsius(22), minutes(20))
            .then("night", tub, celsius(4), hours(12))
            .then("shaped", SLAB, celsius(4), hours(10));
    RiseHistory other = night.with(RISE.withModel(model));
    for (int i = 0; i < 3; i++) {
      ColdRange range = night.stages().get(i).cold();
      double of =
          which.equals("growth")
              ? range.byGrowth()
              : which.equals("slow") ? range.slow() : range.quick();
      assertThat(of).isCloseTo(other.stages().get(i).end().growth(), within(0.02));
    }
  }

  @ParameterizedTest
  @CsvSource({"1.6", "2.4", "4"})
  void aNightThatWasSeenGivesItsColdEndBack(double factor) {
    RateModel truth = ColdTail.below(ColdTail.withoutTail(RISE.model()), celsius(10), factor);
    double morning =
        RiseHistory.startGrown(RISE.withModel(truth), celsius(22), 1.2)
            .then("night", SLAB, celsius(4), hours(16))
            .end()
            .growth();
    ColdNight night = ColdNight.seen(RISE, SLAB, celsius(22), 1.2, celsius(4), hours(16), morning);
    assertThat(night.factor()).isCloseTo(factor, within(0.01));
    assertThat(night.rise().model().rate(4)).isCloseTo(truth.rate(4), within(1e-3));
    assertThat(night.history().end().growth()).isCloseTo(morning, within(1e-3));
    assertThat(night.advice().stream().anyMatch(a -> a.code().equals("COLD_FACTOR_UNUSUAL")))
        .isEqualTo(factor < 2 || factor > 3);
    assertThat(night.working().toString()).contains("for each 10 K");
    assertThat(night).hasToString(night.toString()).asString().startsWith("a night from 1.2 to");
    // from then on nothing is open, and no warning is given
    RiseHistory next =
        RiseHistory.start(night.rise(), celsius(24)).then("next", SLAB, celsius(4), hours(14));
    assertThat(next.advice()).extracting(Advice::code).doesNotContain("COLD_UNSURE");
    assertThat(next.coldRange().toString()).endsWith("(cold end seen)");
  }

  @Test
  void aMorningThatNoColdEndExplainsIsRefusedWithTheVolumesThatWouldDo() {
    assertThatThrownBy(() -> ColdNight.seen(RISE, SLAB, celsius(22), 1.2, celsius(4), hours(12), 9))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("1.2 times the volume in the evening")
        .hasMessageContaining("as quick as at 10 °C all night");
    assertThatThrownBy(
            () -> ColdNight.seen(RISE, SLAB, celsius(22), 1.2, celsius(4), hours(12), 1.0))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(
            () -> ColdNight.seen(RISE, SLAB, celsius(22), 1.2, celsius(4), hours(12), Double.NaN))
        .isInstanceOf(BakeryException.class);
    Rise seenCold = Rise.observed(BUBBLES, 1.5, hours(10), celsius(6));
    assertThatThrownBy(
            () -> ColdNight.seen(seenCold, SLAB, celsius(22), 1.2, celsius(4), hours(12), 1.5))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("seen in the warm");
    // a short hour in the cold tells nothing
    DoughBody tub = DoughBody.tubOf(kilograms(10), DOUGH);
    double soon =
        RiseHistory.startGrown(RISE, celsius(20), 1.1)
            .then("x", tub, celsius(4), hours(2))
            .end()
            .growth();
    assertThat(ColdNight.seen(RISE, tub, celsius(20), 1.1, celsius(4), hours(2), soon).advice())
        .extracting(Advice::code)
        .contains("COLD_NOT_TOLD");
  }

  @Test
  void saltAndBoundWaterDissolveLessAndTheSaltOfAFormulaCounts() {
    double moles = 0.03;
    double pure = BUBBLES.dissolved(moles, celsius(10));
    DoughGas salted = BUBBLES.withSaltInWater(percent(3));
    // 30.9 g to the litre of water are 0.53 mol: 10^(-0.112 * 0.53) at 25 °C
    assertThat(salted.salt()).isCloseTo(30.93 / 58.44, within(0.001));
    double whole = org.tourage.physics.Carroll1991.dissolved(298.15, 0);
    assertThat(org.tourage.physics.Carroll1991.dissolved(298.15, 0.53) / whole)
        .isCloseTo(0.873, within(0.003));
    assertThat(salted.dissolved(moles, celsius(10))).isLessThan(pure);
    assertThat(BUBBLES.withBoundWater(percent(30)).dissolved(moles, celsius(10))).isLessThan(pure);
    assertThat(salted.growth(moles, celsius(10))).isGreaterThan(BUBBLES.growth(moles, celsius(10)));
    Formula formula =
        Formula.byPercent(
            "salted",
            f ->
                f.line("bread flour", percent(100))
                    .line("water", percent(60))
                    .line("salt", percent(2)));
    assertThat(DoughGas.of(formula, celsius(24)).salt()).isBetween(0.4, 0.6);
    assertThatThrownBy(() -> BUBBLES.withBoundWater(percent(100)))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> BUBBLES.withSaltInWater(percent(40)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("mol/L");
  }

  @Test
  void theGasAtTheEndIsToldByPartsForWhatComesAfter() {
    RiseHistory proof =
        RiseHistory.start(RISE, celsius(24)).then("proof", SLAB, celsius(26), minutes(80));
    GasState gas = proof.gas();
    assertThat(gas.carbonDioxide()).isCloseTo(proof.end().carbonDioxide(), within(1e-12));
    assertThat(gas.dissolved()).isBetween(0.2 * gas.carbonDioxide(), 0.6 * gas.carbonDioxide());
    assertThat(gas.rate()).isCloseTo(gas.rateAt(proof.end().mean()), within(1e-15));
    // the pace is that of the observation: so much gas in 95 min at 23 °C
    double seen = BUBBLES.carbonDioxide(2, celsius(23)) / (95 * 60);
    assertThat(gas.rateAt(celsius(23))).isCloseTo(seen, within(1e-12));
    assertThat(gas.rateAt(celsius(55))).isZero();
    // bubbles of air and carbon dioxide fill what is not dough
    double solid = 0.92 / gas.growth();
    assertThat(gas.porosity()).isCloseTo(1 - solid, within(1e-12));
    assertThat(gas.air()).isPositive();
    assertThat(gas.toString()).contains("mmol/kg dissolved", "in bubbles at");
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.08, 1, 40})
  void aDoughWithoutAStatedShapeHasOneFromItsMass(double kilograms) {
    for (DoughBody body :
        new DoughBody[] {
          DoughBody.ballOf(kilograms(kilograms), DOUGH),
          DoughBody.tubOf(kilograms(kilograms), DOUGH),
          DoughBody.tubOf(kilograms(kilograms), DOUGH, centimetres(30)),
          DoughBody.rollOf(kilograms(kilograms), DOUGH, centimetres(25)),
          DoughBody.ballOf(kilograms(kilograms), DOUGH).grown(1.8)
        }) {
      assertThat(body.mass().orElseThrow().in(KILOGRAM))
          .isCloseTo(kilograms, within(1e-9 * kilograms));
    }
    assertThat(DoughBody.tubOf(kilograms(kilograms), DOUGH).cover()).isEqualTo(Cover.TUB);
    DoughBody sheet =
        DoughBody.sheetOf(kilograms(kilograms), DOUGH, Extent.of(centimetres(60), centimetres(40)));
    double thick = 2 * sheet.solid().axes().get(0).half().in(METRE);
    assertThat(thick * 0.24 * sheet.density()).isCloseTo(kilograms, within(1e-9 * kilograms));
    assertThat(sheet.mass()).isEmpty();
  }

  @Test
  void whatIsNoPieceOfDoughIsRefused() {
    assertThatThrownBy(() -> DoughBody.ballOf(grams(0), DOUGH))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("1 g to 2000 kg");
    assertThatThrownBy(() -> DoughBody.ballOf(kilograms(3000), DOUGH))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> DoughBody.ballOf(kilograms(1), DOUGH).grown(0))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> DoughBody.rollOf(kilograms(1), DOUGH, centimetres(0)))
        .isInstanceOf(BakeryException.class);
    assertThat(DoughBody.rollOf(grams(400), DOUGH, centimetres(25)))
        .asString()
        .startsWith("roll ")
        .contains("long");
  }

  @Test
  void aHistoryGoesOnInTheShapeBeforeAndNeedsOneFirst() {
    RiseHistory none = RiseHistory.start(RISE, celsius(24));
    assertThatThrownBy(() -> none.then("rest", celsius(22), minutes(20)))
        .isInstanceOf(BakeryException.class);
    RiseHistory on =
        none.then("bulk", SLAB, celsius(24), hours(1)).then("rest", celsius(4), hours(2));
    assertThat(on.stages().get(1).body()).isEqualTo(SLAB);
    assertThat(on.stages().get(1).knockedBack()).isFalse();
    assertThat(on.warmest().in(CELSIUS)).isBetween(24.0, 24.6);
  }

  @Test
  void aSimpleFactorThatRunsAwayIsRefusedAndNeverCutShort() {
    Rise wild = Rise.observed(BUBBLES, Q10Rule.of(8, celsius(24)), 2, minutes(20), celsius(24));
    DoughBody big = DoughBody.tubOf(kilograms(400), DOUGH);
    RiseHistory start = RiseHistory.start(wild, celsius(35));
    assertThatThrownBy(() -> start.then("bulk", big, celsius(45), hours(20)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("runs away");
    assertThatThrownBy(() -> start.then("bulk", SLAB, celsius(20), days(32)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("31 days");
    // with an optimum the same dough has its whole history
    RiseHistory tame = start.with(RISE).then("bulk", big, celsius(45), hours(20));
    assertThat(tame.end().time().in(HOUR)).isCloseTo(20, within(1e-9));
    assertThat(tame.stages().get(0).looks()).hasSize(25);
  }

  @Test
  void arrheniusIsTheFactorForTenKelvinNearItsReference() {
    Arrhenius law = Arrhenius.of(kilojoules(60), celsius(20), "test");
    assertThat(law.rate(20)).isEqualTo(1);
    assertThat(law.rate(celsius(30)))
        .isCloseTo(Math.exp(-60000 / 8.314462618 * (1 / 303.15 - 1 / 293.15)), within(1e-9));
    assertThat(law).hasToString("Arrhenius, 60 kJ/mol");
    Arrhenius seen = Arrhenius.observed(celsius(20), celsius(30), law.rate(30));
    assertThat(seen.rate(25)).isCloseTo(law.rate(25), within(1e-9));
    Rise rise = Rise.observed(BUBBLES, law, 2, minutes(95), celsius(20));
    assertThat(rise.timeTo(2, celsius(25)).in(MINUTE)).isLessThan(95);
    assertThatThrownBy(() -> Arrhenius.of(kilojoules(0), celsius(20), "x"))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> Arrhenius.observed(celsius(30), celsius(20), 2))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("lower temperature first");
    for (RateModel model :
        new RateModel[] {law, RISE.model(), Q10Rule.of(2, celsius(20)), RateMarks.all().get(0)}) {
      assertThatThrownBy(() -> model.rate(Double.NaN)).isInstanceOf(BakeryException.class);
      assertThat(model.rate(1e300)).isFinite();
      assertThat(model.rate(-1e300)).isFinite();
    }
  }

  @Test
  void marksThatAreNoCurveAreRefused() {
    assertThatThrownBy(
            () ->
                new RateMarks(
                    "x",
                    java.util.List.of(
                        RateMarks.Mark.of(celsius(5), 0), RateMarks.Mark.of(celsius(20), 1)),
                    "test"))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("one summit");
    assertThatThrownBy(() -> RateMarks.named("mould")).isInstanceOf(BakeryException.class);
    assertThat(RateMarks.named("sourdough yeast"))
        .asString()
        .startsWith("sourdough yeast: best at 28 °C (82 °F), 0 of it at 8 °C (46 °F), 0.25 of it");
  }

  @Test
  void aSourdoughSaysWhatStopsIt() {
    assertThat(Sourdough.at(celsius(28), 5, percent(0)).advice()).isEmpty();
    assertThat(Sourdough.at(celsius(36), 3.8, percent(5)).advice())
        .extracting(Advice::code)
        .containsExactly("SOURDOUGH_YEAST_STOPS", "SALT_STOPS_BACTERIA", "PH_STOPS_BACTERIA");
    assertThat(Sourdough.at(celsius(20), 5.3, percent(0)))
        .hasToString("bacteria at 50 %, yeast at 50 % of their best at 20 °C (68 °F)");
    assertThat(Sourdough.at(celsius(20), 5.3, percent(2)).working().toString()).contains("× 0.5");
    assertThatThrownBy(() -> Sourdough.at(celsius(20), 12, percent(0)))
        .isInstanceOf(BakeryException.class);
  }

  @Test
  void aBuildIsRipeWhenOneObservationSaysAndLaterInTheCold() {
    Ripeness levain = Ripeness.ofLevain(percent(20), hours(8), celsius(24));
    assertThat(levain.at(celsius(24)).time().in(HOUR)).isCloseTo(8, within(1e-9));
    RipeTime cool = levain.at(celsius(20));
    RateMarks yeast = RateMarks.named("sourdough yeast");
    assertThat(cool.time().in(HOUR)).isCloseTo(8 * yeast.rate(24) / 0.5, within(1e-6));
    assertThat(cool.latest()).isGreaterThanOrEqualTo(cool.time());
    assertThat(cool.earliest()).isLessThanOrEqualTo(cool.time());
    // a twenty-fifth of seed doubles the generations of a fifth
    assertThat(levain.with(percent(4)).at(celsius(24)).time().in(HOUR)).isCloseTo(16, within(1e-9));
    assertThat(levain.over(TemperatureHistory.ofHold(celsius(24), hours(9))).orElseThrow().in(HOUR))
        .isCloseTo(8, within(1e-6));
    assertThat(levain.over(TemperatureHistory.ofHold(celsius(24), hours(7)))).isEmpty();
    assertThat(levain.at(celsius(5)).advice())
        .extracting(Advice::code)
        .containsExactly("COLD_UNSURE");
    assertThat(levain.at(celsius(14)).advice())
        .extracting(Advice::code)
        .containsExactly("RIPENESS_FAR");
    assertThatThrownBy(() -> levain.at(celsius(36)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("36 °C");
    assertThatThrownBy(() -> Ripeness.ofLevain(percent(100), hours(8), celsius(24)))
        .isInstanceOf(BakeryException.class);
    assertThat(levain).hasToString("levain of 20 % seed: ripe after 8 h at 24 °C (75 °F)");
    assertThat(levain.at(celsius(24))).hasToString("ripe after 8 h at 24 °C (75 °F)");
    assertThat(levain.working().toString()).contains("ln(seed)");
  }

  @Test
  void aPrefermentWithHalfTheYeastTakesTwiceAsLong() {
    Ripeness poolish = Ripeness.ofPreferment(percent(0.1), hours(13), celsius(21));
    assertThat(poolish.with(percent(0.05)).at(celsius(21)).time().in(HOUR))
        .isCloseTo(26, within(1e-9));
    assertThat(poolish.at(celsius(25)).time()).isLessThan(hours(13));
    RipeTime cold = poolish.at(celsius(4));
    assertThat(cold.earliest()).isLessThan(cold.time());
    assertThat(cold.latest()).isGreaterThan(cold.time());
    assertThat(poolish.working().toString()).contains("yeast seen / yeast");
    assertThatThrownBy(() -> Ripeness.ofPreferment(percent(30), hours(13), celsius(21)))
        .isInstanceOf(BakeryException.class);
  }
}
