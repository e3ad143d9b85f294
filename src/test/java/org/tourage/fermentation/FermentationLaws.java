package org.tourage.fermentation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.FAHRENHEIT;
import static org.tourage.quantity.BakeryUnits.HOUR;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import org.assertj.core.data.Percentage;
import org.tourage.physics.Constituents;
import org.tourage.physics.Solid;
import org.tourage.physics.TemperatureHistory;
import org.tourage.quantity.BakeryUnits;

class FermentationLaws {
  private static final Constituents DOUGH = new Constituents(0.40, 0.07, 0.05, 0.44, 0.02, 0.02);
  private static final Rosso1993 GAS = Rosso1993.named("baker's yeast, gas in dough");
  private static final DoughGas BUBBLES = DoughGas.of(DOUGH, celsius(24));
  private static final Rise RISE = Rise.observed(BUBBLES, GAS, 2, minutes(95), celsius(23));

  @Property
  void theRateGrowsWithTheTemperatureBelowTheOptimumAndFallsAbove(
      @ForAll @IntRange(min = 0, max = 3) int which,
      @ForAll @DoubleRange(min = 0, max = 0.98) double at,
      @ForAll @DoubleRange(min = 0.01, max = 1) double further) {
    Rosso1993 model = Rosso1993.all().get(which);
    double low = model.minimum().in(BakeryUnits.CELSIUS);
    double best = model.optimum().in(BakeryUnits.CELSIUS);
    double high = model.maximum().in(BakeryUnits.CELSIUS);
    double next = at + further * (1 - at);
    assertThat(model.rate(low + next * (best - low)))
        .isGreaterThan(model.rate(low + at * (best - low)));
    assertThat(model.rate(best + next * (high - best)))
        .isLessThan(model.rate(best + at * (high - best)));
    assertThat(model.rate(best)).isCloseTo(1, within(1e-12));
  }

  @Property
  void theUnitOfTheTemperatureNeverMatters(@ForAll @DoubleRange(min = 2, max = 45) double celsius) {
    assertThat(GAS.rate(celsius(celsius).to(FAHRENHEIT)))
        .isCloseTo(GAS.rate(celsius(celsius)), within(1e-12));
    assertThat(GAS.rate(kelvin(celsius + 273.15))).isCloseTo(GAS.rate(celsius), within(1e-12));
  }

  @Property
  void equivalentTimeIsAdditive(
      @ForAll @DoubleRange(min = 0, max = 45) double a,
      @ForAll @DoubleRange(min = 0, max = 45) double b,
      @ForAll @DoubleRange(min = 0.1, max = 20) double first,
      @ForAll @DoubleRange(min = 0.1, max = 20) double second) {
    TemperatureHistory one = TemperatureHistory.ofRamp(celsius(a), celsius(b), hours(first));
    TemperatureHistory two = TemperatureHistory.ofHold(celsius(a), hours(second));
    assertThat(at23(one.then(two))).isCloseTo(at23(one) + at23(two), within(1e-9));
  }

  @Property
  void splittingARampChangesNothing(
      @ForAll @DoubleRange(min = 0, max = 48) double a,
      @ForAll @DoubleRange(min = 0, max = 48) double b,
      @ForAll @DoubleRange(min = 0.01, max = 0.99) double part) {
    TemperatureHistory whole = TemperatureHistory.ofRamp(celsius(a), celsius(b), hours(10));
    TemperatureHistory split =
        TemperatureHistory.ofRamp(celsius(a), celsius(a + part * (b - a)), hours(10 * part))
            .thenRamp(celsius(b), hours(10 * (1 - part)));
    assertThat(at23(split)).isCloseTo(at23(whole), within(1e-6));
  }

  @Property
  void aRampThereAndBackIsTwiceTheRamp(
      @ForAll @DoubleRange(min = 0, max = 48) double a,
      @ForAll @DoubleRange(min = 0, max = 48) double b) {
    TemperatureHistory there = TemperatureHistory.ofRamp(celsius(a), celsius(b), hours(3));
    assertThat(at23(there.thenRamp(celsius(a), hours(3)))).isCloseTo(2 * at23(there), within(1e-9));
  }

  @Property
  void ofTwoHistoriesTheWarmerOneFermentsMoreBelowTheOptimum(
      @ForAll @DoubleRange(min = 1, max = 30) double a,
      @ForAll @DoubleRange(min = 1, max = 30) double b,
      @ForAll @DoubleRange(min = 0.1, max = 5) double warmer) {
    TemperatureHistory cold = TemperatureHistory.ofRamp(celsius(a), celsius(b), hours(3));
    TemperatureHistory warm =
        TemperatureHistory.ofRamp(celsius(a + warmer), celsius(b + warmer), hours(3));
    assertThat(at23(warm)).isGreaterThan(at23(cold));
  }

  private static double at23(TemperatureHistory history) {
    return EquivalentTime.of(GAS, history, celsius(23)).time().in(MINUTE);
  }

  @Property
  void growthAndCarbonDioxideAreAnInversePair(
      @ForAll @DoubleRange(min = 1.1, max = 6) double growth,
      @ForAll @DoubleRange(min = 0, max = 60) double celsius,
      @ForAll @DoubleRange(min = 0.02, max = 0.2) double air) {
    DoughGas gas = BUBBLES.withAir(fraction(air));
    double least = gas.growth(0, celsius(celsius));
    double wanted = least + (growth - 1);
    assertThat(gas.growth(gas.carbonDioxide(wanted, celsius(celsius)), celsius(celsius)))
        .isCloseTo(wanted, within(1e-9));
  }

  @Property
  void moreGasMeansMoreVolumeAndColdMeansLess(
      @ForAll @DoubleRange(min = 0, max = 0.2) double moles,
      @ForAll @DoubleRange(min = 0.001, max = 0.1) @Scale(4) double more,
      @ForAll @DoubleRange(min = 0, max = 55) double celsius,
      @ForAll @DoubleRange(min = 0.1, max = 5) double warmer) {
    double now = BUBBLES.growth(moles, celsius(celsius));
    assertThat(BUBBLES.growth(moles + more, celsius(celsius))).isGreaterThan(now);
    assertThat(BUBBLES.growth(moles, celsius(celsius + warmer))).isGreaterThan(now);
  }

  @Property
  void knockingBackTwiceTakesNoMoreThanTheBubblesLeft(
      @ForAll @DoubleRange(min = 0, max = 0.3) double moles,
      @ForAll @DoubleRange(min = 0, max = 40) double celsius) {
    double kept = BUBBLES.afterKnockingBack(moles, celsius(celsius));
    assertThat(kept).isBetween(0.0, moles);
    assertThat(BUBBLES.growth(kept, celsius(celsius)))
        .isLessThanOrEqualTo(BUBBLES.growth(moles, celsius(celsius)) + 1e-12);
  }

  @Property
  void yeastTimesTimeIsConstant(
      @ForAll @DoubleRange(min = 0.1, max = 5) double factor,
      @ForAll @DoubleRange(min = 2, max = 40) double celsius,
      @ForAll @DoubleRange(min = 1.2, max = 3) double growth) {
    double once = RISE.timeTo(growth, celsius(celsius)).in(MINUTE);
    assertThat(RISE.withYeast(factor).timeTo(growth, celsius(celsius)).in(MINUTE))
        .isCloseTo(once / factor, within(1e-9 * once));
  }

  @Property
  void theTimeOverAHeldHistoryIsTheTimeAtItsTemperature(
      @ForAll @DoubleRange(min = 8, max = 40) double celsius,
      @ForAll @DoubleRange(min = 1.2, max = 3) double growth) {
    double minutes = RISE.timeTo(growth, celsius(celsius)).in(MINUTE);
    assertThat(
            RISE.timeTo(growth, TemperatureHistory.ofHold(celsius(celsius), minutes(1.5 * minutes)))
                .orElseThrow()
                .in(MINUTE))
        .isCloseTo(minutes, within(1e-6 * minutes));
  }

  @Property(tries = 40)
  void cuttingARetardIntoStagesChangesItByLessThanTheTolerance(
      @ForAll @DoubleRange(min = 0.05, max = 0.95) double part,
      @ForAll @DoubleRange(min = 15, max = 120) double millimetres,
      @ForAll @IntRange(min = 0, max = 2) int kind) {
    Solid solid =
        switch (kind) {
          case 0 -> Solid.slab(millimetres(millimetres));
          case 1 -> Solid.roll(millimetres(millimetres));
          default -> Solid.ball(millimetres(millimetres));
        };
    DoughBody body = DoughBody.of(solid, DOUGH).covered(Cover.FILM);
    RiseHistory start = RiseHistory.start(RISE, celsius(26));
    RiseHistory whole = start.then("retard", body, celsius(4), hours(12));
    RiseHistory cut =
        start
            .then("retard", body, celsius(4), hours(12 * part))
            .then("retard", body, celsius(4), hours(12 * (1 - part)));
    assertThat(cut.end().growth()).isCloseTo(whole.end().growth(), Percentage.withPercentage(0.2));
    assertThat(cut.end().carbonDioxide())
        .isCloseTo(whole.end().carbonDioxide(), Percentage.withPercentage(0.2));
  }

  @Property(tries = 40)
  void aWarmerRetarderRaisesTheDoughFurther(
      @ForAll @DoubleRange(min = 2, max = 20) double celsius,
      @ForAll @DoubleRange(min = 0.5, max = 8) double warmer,
      @ForAll @DoubleRange(min = 15, max = 100) double millimetres) {
    DoughBody body = DoughBody.of(Solid.slab(millimetres(millimetres)), DOUGH);
    RiseHistory start = RiseHistory.start(RISE, celsius(24));
    assertThat(start.then("a", body, celsius(celsius + warmer), hours(6)).end().growth())
        .isGreaterThan(start.then("b", body, celsius(celsius), hours(6)).end().growth());
  }

  @Property(tries = 40)
  void aSmallBodyFollowsTheHistoryOfItsAir(
      @ForAll @DoubleRange(min = 5, max = 30) double from,
      @ForAll @DoubleRange(min = 5, max = 30) double to) {
    DoughBody thin = DoughBody.of(Solid.slab(micrometres(500)), DOUGH).inAir(300);
    TemperatureHistory air = TemperatureHistory.ofRamp(celsius(from), celsius(to), hours(5));
    double coupled =
        RiseHistory.start(RISE, celsius(from))
            .then("x", thin, air)
            .stages()
            .get(0)
            .equivalent()
            .in(HOUR);
    double alone = EquivalentTime.of(GAS, air, celsius(23)).time().in(HOUR);
    assertThat(coupled).isCloseTo(alone, Percentage.withPercentage(0.5));
  }

  @Property(tries = 50)
  void aHistoryOfAnyBodyInAnyAirStaysBetweenItsTemperaturesButForItsOwnHeat(
      @ForAll @DoubleRange(min = 2, max = 300) double millimetres,
      @ForAll @DoubleRange(min = 0.5, max = 58) double start,
      @ForAll @DoubleRange(min = 0.5, max = 59) double first,
      @ForAll @DoubleRange(min = -25, max = 59) double second,
      @ForAll @DoubleRange(min = 0.05, max = 40) double hours,
      @ForAll @IntRange(min = 0, max = 4) int kind) {
    Solid solid =
        switch (kind) {
          case 0 -> Solid.slab(millimetres(millimetres));
          case 1 -> Solid.roll(millimetres(millimetres));
          case 2 -> Solid.ball(millimetres(millimetres));
          case 3 -> Solid.tub(millimetres(millimetres), millimetres(80));
          default -> Solid.box(millimetres(millimetres), millimetres(60), millimetres(200));
        };
    DoughBody body = DoughBody.of(solid, DOUGH).inMovedAir();
    RiseHistory history =
        RiseHistory.start(RISE, celsius(start))
            .then("one", body.covered(Cover.TUB), celsius(first), hours(hours))
            .then("two", body, celsius(second), hours(hours))
            .then("three", body.shaped(Solid.slab(millimetres(20))), celsius(20), hours(1));
    double low = Math.min(Math.min(Math.min(start, first), second), 20);
    double high = Math.max(Math.max(Math.max(start, first), second), 20);
    // just after a jump the modes swing by less than a hundredth of it
    double slack = 0.01 * (high - low) + 0.01;
    for (RiseHistory.Stage stage : history.stages()) {
      for (RiseHistory.Look look : stage.looks()) {
        assertThat(look.core().in(BakeryUnits.CELSIUS)).isBetween(low - slack, high + 30);
        assertThat(look.surface().in(BakeryUnits.CELSIUS)).isBetween(low - slack, high + 30);
        assertThat(look.growth()).isGreaterThan(0.8);
        assertThat(look.carbonDioxide()).isGreaterThanOrEqualTo(-1e-9);
      }
    }
  }
}
