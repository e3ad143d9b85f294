package org.tourage.fermentation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.HOUR;
import static org.tourage.quantity.BakeryUnits.KILOGRAM;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.tourage.physics.Constituents;
import org.tourage.physics.Solid;

class RiseHistoryLaws {
  private static final Constituents DOUGH = new Constituents(0.40, 0.07, 0.05, 0.44, 0.02, 0.02);
  private static final Rise RISE =
      Rise.observed(DoughGas.of(DOUGH, celsius(24)), 2, minutes(95), celsius(23));

  @Property(tries = 40)
  void lessYeastNeverRisesFasterInAnyShapeAtAnyTemperature(
      @ForAll @DoubleRange(min = 0.1, max = 3) double yeast,
      @ForAll @DoubleRange(min = 0.05, max = 0.95) double less,
      @ForAll @DoubleRange(min = 2, max = 34) double air,
      @ForAll @DoubleRange(min = 0.5, max = 14) double hours,
      @ForAll @DoubleRange(min = 0.05, max = 20) double kilograms) {
    DoughBody body = DoughBody.ballOf(kilograms(kilograms), DOUGH);
    RiseHistory much =
        RiseHistory.start(RISE.withYeast(yeast), celsius(24))
            .then("rise", body, celsius(air), hours(hours));
    RiseHistory little =
        RiseHistory.start(RISE.withYeast(yeast * less), celsius(24))
            .then("rise", body, celsius(air), hours(hours));
    for (int i = 0; i < much.stages().get(0).looks().size(); i++) {
      assertThat(little.stages().get(0).looks().get(i).growth())
          .isLessThanOrEqualTo(much.stages().get(0).looks().get(i).growth() + 1e-9);
    }
    assertThat(RISE.withYeast(yeast * less).timeTo(2, celsius(air)))
        .isGreaterThan(RISE.withYeast(yeast).timeTo(2, celsius(air)));
  }

  @Property(tries = 60)
  void aHistoryIsAsLongAsItsStagesTogetherAndIsNeverCutShort(
      @ForAll @IntRange(min = 1, max = 5) int stages,
      @ForAll @DoubleRange(min = 0.01, max = 60) double minutes,
      @ForAll @DoubleRange(min = -10, max = 59) double air,
      @ForAll @DoubleRange(min = 1.1, max = 4) double factor) {
    Rise simple = RISE.withModel(Q10Rule.of(factor, celsius(23)));
    DoughBody body = DoughBody.ballOf(kilograms(0.5), DOUGH);
    RiseHistory history = RiseHistory.start(simple, celsius(24));
    for (int i = 0; i < stages; i++) {
      history = history.then("stage " + i, body, celsius(air), minutes(minutes));
    }
    assertThat(history.end().time().in(MINUTE)).isCloseTo(stages * minutes, within(1e-9));
    assertThat(history.stages()).hasSize(stages).allSatisfy(s -> assertThat(s.looks()).hasSize(25));
  }

  @Property(tries = 40)
  void movingAShapeFromOneStepToTheNextChangesNoWarmHoursOfAUniformDough(
      @ForAll @DoubleRange(min = 6, max = 32) double celsius,
      @ForAll @DoubleRange(min = 5, max = 120) double first,
      @ForAll @DoubleRange(min = 5, max = 120) double second,
      @ForAll @DoubleRange(min = 15, max = 120) double millimetres) {
    // the air is as warm as the dough all through, so a shape earlier or later warms nothing
    DoughBody slab = DoughBody.of(Solid.slab(millimetres(millimetres)), DOUGH);
    DoughBody ball = DoughBody.ballOf(kilograms(1), DOUGH);
    RiseHistory early =
        RiseHistory.start(RISE, celsius(celsius))
            .then("one", slab, celsius(celsius), minutes(first))
            .then("two", slab, celsius(celsius), minutes(second));
    RiseHistory late =
        RiseHistory.start(RISE, celsius(celsius))
            .then("one", ball, celsius(celsius), minutes(first))
            .then("two", slab, celsius(celsius), minutes(second));
    double warm = (first + second) / 60;
    assertThat(early.above(celsius(5)).in(HOUR)).isCloseTo(warm, within(1e-9));
    assertThat(late.above(celsius(5)).in(HOUR)).isCloseTo(warm, within(1e-9));
  }

  @Property(tries = 40)
  void aWarmHoldCountsEveryStageFromTheMixOn(
      @ForAll @DoubleRange(min = 0.2, max = 5) double rest,
      @ForAll @DoubleRange(min = 1, max = 20) double night,
      @ForAll @DoubleRange(min = 0.1, max = 30) double kilograms) {
    DoughBody tub = DoughBody.tubOf(kilograms(kilograms), DOUGH);
    RiseHistory whole =
        RiseHistory.start(RISE, celsius(25))
            .then("rest", tub, celsius(22), hours(rest))
            .then("night", tub, celsius(3), hours(night));
    double warm = whole.above(celsius(5)).in(HOUR);
    assertThat(warm).isBetween(rest - 1e-9, rest + night + 1e-9);
    // further stages only add
    double more = whole.then("proof", tub, celsius(26), hours(1)).above(celsius(5)).in(HOUR);
    assertThat(more).isBetween(warm - 1e-9, warm + 1 + 1e-9);
    assertThat(whole.warmest().in(CELSIUS)).isGreaterThanOrEqualTo(25);
  }

  @Property(tries = 40)
  void ofTheColdEndsTheQuickOneRisesMostAndGrowthAloneLeast(
      @ForAll @DoubleRange(min = 1, max = 9) double air,
      @ForAll @DoubleRange(min = 2, max = 30) double hours,
      @ForAll @DoubleRange(min = 10, max = 80) double millimetres) {
    DoughBody slab = DoughBody.of(Solid.slab(millimetres(millimetres)), DOUGH);
    ColdRange range =
        RiseHistory.start(RISE, celsius(24))
            .then("night", slab, celsius(air), hours(hours))
            .coldRange();
    assertThat(range.byGrowth()).isLessThanOrEqualTo(range.slow() + 1e-9);
    assertThat(range.slow()).isLessThanOrEqualTo(range.taken() + 1e-9);
    assertThat(range.taken()).isLessThanOrEqualTo(range.quick() + 1e-9);
  }

  @Property
  void moreSeedIsRipeSoonerAndWarmerIsSoonerBelowTheBest(
      @ForAll @DoubleRange(min = 0.02, max = 0.4) double seed,
      @ForAll @DoubleRange(min = 1.05, max = 2) double more,
      @ForAll @DoubleRange(min = 3, max = 26) double celsius,
      @ForAll @DoubleRange(min = 0.2, max = 2) double warmer) {
    Ripeness levain = Ripeness.ofLevain(fraction(seed), hours(8), celsius(24));
    assertThat(levain.with(fraction(seed * more)).at(celsius(celsius)).time())
        .isLessThan(levain.at(celsius(celsius)).time());
    assertThat(levain.at(celsius(celsius + warmer)).time())
        .isLessThan(levain.at(celsius(celsius)).time());
  }

  @Property
  void aBallOfTwiceTheMassHoldsTwiceTheMass(
      @ForAll @DoubleRange(min = 0.01, max = 100) double kilograms) {
    double twice =
        DoughBody.ballOf(kilograms(2 * kilograms), DOUGH).mass().orElseThrow().in(KILOGRAM);
    double once = DoughBody.ballOf(kilograms(kilograms), DOUGH).mass().orElseThrow().in(KILOGRAM);
    assertThat(twice).isCloseTo(2 * once, within(1e-9 * twice));
  }
}
