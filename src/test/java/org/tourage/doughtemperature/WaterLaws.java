package org.tourage.doughtemperature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.CELSIUS;

import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.formula.Preferment;

class WaterLaws {
  private static Batch poolishBread(double share, double kilograms) {
    return Formula.byPercent(
            "poolish bread",
            f -> {
              f.line("bread flour", percent(100))
                  .line("water", percent(65))
                  .line("salt", percent(2))
                  .line("egg", percent(5));
              if (share > 0) {
                f.preferment(Preferment.poolish(percent(share)));
              }
            })
        .forFlour(kilograms(kilograms));
  }

  private static StageMix day(
      double share, double mass, double flour, double room, double poolish, double eggs) {
    StageMix day =
        StageMix.of(poolishBread(share, mass), celsius(flour), celsius(room))
            .withIngredient("egg", celsius(eggs));
    return share > 0 ? day.withStage("Poolish", celsius(poolish)) : day;
  }

  @Property
  void aMixRepeatedUnderItsOwnConditionsGivesItsOwnWaterBack(
      @ForAll @DoubleRange(min = 0, max = 55) double water,
      @ForAll @DoubleRange(min = 5, max = 40) double dough,
      @ForAll @DoubleRange(min = 0, max = 40) double flour,
      @ForAll @DoubleRange(min = 5, max = 40) double room,
      @ForAll @DoubleRange(min = 4, max = 30) double poolish,
      @ForAll @DoubleRange(min = -18, max = 25) double eggs,
      @ForAll @DoubleRange(min = -30, max = 55) double shareOrNone,
      @ForAll @DoubleRange(min = 0.5, max = 40) double mass) {
    // a third of the doughs are straight
    double share = Math.max(0, shareOrNone);
    StageMix day = day(share, mass, flour, room, poolish, eggs);
    Mixture mixture = day.mixture(0);
    double rise = mixture.extraFor(water, dough) / mixture.capacity();
    Assume.that(rise > -10 && rise < 25);
    PastMix past = PastMix.of(day, celsius(water), celsius(dough));
    WaterPlan plan = day.water(celsius(dough), MixerHeat.of(past));
    assertThat(plan.balance().orElseThrow().waterTemperature().in(CELSIUS))
        .isCloseTo(water, within(1e-7));
    assertThat(plan.rule().orElseThrow().water().in(CELSIUS)).isCloseTo(water, within(1e-7));
  }

  @Property
  void aPastMixWithIceGivesTheSameIceBack(
      @ForAll @DoubleRange(min = 10, max = 25) double tap,
      @ForAll @DoubleRange(min = 0.05, max = 0.9) double share) {
    StageMix day = day(20, 2, 28, 30, 26, 5);
    double free = day.mixture(0).liquid();
    double iced = day.mixture(0).iced(tap, share * free, 0);
    double dough = day.mixture(0).dough(iced) + 6;
    Assume.that(dough > 0);
    PastMix past = PastMix.iced(day, celsius(tap), kilograms(share * free), celsius(dough));
    WaterPlan plan = day.water(celsius(dough), MixerHeat.of(past)).withTap(celsius(tap));
    assertThat(plan.ice().orElseThrow().ice().ratioTo(kilograms(free)))
        .isCloseTo(share, within(1e-9));
  }

  @Property
  void aRipePrefermentAtTheWantedDoughTemperatureChangesNothingForTheRest(
      @ForAll @DoubleRange(min = 5, max = 60) double share,
      @ForAll @DoubleRange(min = 18, max = 30) double target,
      @ForAll @DoubleRange(min = 5, max = 35) double flour,
      @ForAll @DoubleRange(min = 5, max = 35) double room,
      @ForAll @DoubleRange(min = 0, max = 12) double rise) {
    StageMix whole = day(share, 10, flour, room, target, 5);
    MixerHeat heat = MixerHeat.rise(celsiusDegrees(rise));
    // the rest alone: what is weighed into the final dough, as a straight dough
    Batch rest =
        Formula.byWeight(
            "the rest",
            f ->
                f.line("bread flour", kilograms(10 - share / 10))
                    .line("water", kilograms(6.5 - share / 10))
                    .line("salt", kilograms(0.2))
                    .line("egg", kilograms(0.5)));
    HeatBalance alone =
        StageMix.of(rest, celsius(flour), celsius(room))
            .withIngredient("egg", celsius(5))
            .balance(celsius(target))
            .mixing(heat.energy(whole));
    // the demand itself: with little free water it may lie below what a liquid can have
    assertThat(whole.balance(celsius(target), heat).mixture().liquidFor(target))
        .isCloseTo(alone.mixture().liquidFor(target), within(1e-6));
  }

  @Property
  void ruleAndBalanceBringTheReferenceDayToTheSameDough(
      @ForAll @DoubleRange(min = 0, max = 40) double friction,
      @ForAll @DoubleRange(min = -30, max = 50) double shareOrNone) {
    StageMix day = day(Math.max(0, shareOrNone), 10, 20, 20, 20, 20);
    MixerHeat heat = MixerHeat.friction(celsiusDegrees(friction));
    double factors = shareOrNone > 0 ? 4 : 3;
    Assume.that(friction / factors < 25);
    double dough = 20 + friction / factors;
    WaterPlan plan = day.water(celsius(dough), heat);
    assertThat(plan.rule().orElseThrow().water().in(CELSIUS)).isCloseTo(20, within(1e-9));
    assertThat(plan.water().orElseThrow().in(CELSIUS)).isCloseTo(20, within(1e-7));
  }

  @Property
  void noPlanNamesATemperatureThatNoLiquidCanHave(
      @ForAll @DoubleRange(min = 5, max = 45) double target,
      @ForAll @DoubleRange(min = -20, max = 50) double flour,
      @ForAll @DoubleRange(min = 0, max = 45) double room,
      @ForAll @DoubleRange(min = 0, max = 25) double rise,
      @ForAll @DoubleRange(min = 0, max = 60) double share,
      @ForAll @DoubleRange(min = 0, max = 55) double tap) {
    StageMix day = day(share, 5, flour, room, room, 5);
    WaterPlan plan =
        day.water(celsius(target), MixerHeat.rise(celsiusDegrees(rise)).over(minutes(8)))
            .withTap(celsius(tap));
    plan.water().ifPresent(w -> assertThat(w.in(CELSIUS)).isBetween(0.0, 55.0));
    plan.ice()
        .ifPresent(
            i -> {
              assertThat(i.ice().value()).isGreaterThanOrEqualTo(0);
              assertThat(i.water().value()).isGreaterThanOrEqualTo(0);
              HeatBalance balance = plan.balance().orElseThrow();
              assertThat(
                      balance
                          .doughTemperature(i.waterTemperature(), i.ice(), i.iceTemperature())
                          .in(CELSIUS))
                  .isCloseTo(target, within(1e-6));
            });
    for (Lever lever : plan.levers()) {
      assertThat(lever.dough().in(CELSIUS)).isBetween(-60.0, 90.0);
      if (lever instanceof Lever.Temper temper) {
        assertThat(temper.to().in(CELSIUS)).isBetween(-18.0, 55.0);
      }
    }
    if (plan.water().isEmpty() && plan.ice().isEmpty()) {
      assertThat(plan.levers()).isNotEmpty();
    }
    assertThat(plan.toString() + plan.advice() + plan.working()).doesNotContain("NaN");
  }
}
