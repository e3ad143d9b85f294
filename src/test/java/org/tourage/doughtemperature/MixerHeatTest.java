package org.tourage.doughtemperature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.JOULE;

import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.formula.Preferment;

class MixerHeatTest {
  private static final Formula STRAIGHT =
      Formula.byPercent(
          "straight dough",
          f ->
              f.line("bread flour", percent(100))
                  .line("water", percent(65))
                  .line("salt", percent(2)));
  private static final Batch BATCH = STRAIGHT.forFlour(kilograms(10));
  private static final StageMix DAY = StageMix.of(BATCH, celsius(20), celsius(22));

  private static double water(StageMix mix, double target, MixerHeat heat) {
    return mix.water(celsius(target), heat).water().orElseThrow().in(CELSIUS);
  }

  @Test
  void thePastDayGivesItsOwnWaterBack() {
    MixerHeat heat = MixerHeat.of(PastMix.of(DAY, celsius(14), celsius(25)));
    assertThat(water(DAY, 25, heat)).isCloseTo(14, within(1e-9));
    assertThat(heat.friction(DAY).celsiusDegrees()).isCloseTo(19, within(1e-9));
    assertThat(DAY.water(celsius(25), heat).comparison().orElseThrow().differs()).isFalse();
    // so it does for another size of the same formula
    StageMix small = StageMix.of(STRAIGHT.forFlour(kilograms(2)), celsius(20), celsius(22));
    assertThat(water(small, 25, heat)).isCloseTo(14, within(1e-9));
  }

  @Test
  void wettingIsCountedOnceOnly() {
    PastMix past = PastMix.of(DAY, celsius(14), celsius(25));
    MixerHeat measured = MixerHeat.of(past);
    assertThat(measured.wettingIncluded()).isTrue();
    assertThat(measured.wetting(DAY).in(JOULE)).isZero();
    assertThat(measured.working(DAY).toString()).contains("not added again");
    // a power that gives what the past mix leaves beside 15 kJ for each kg of flour is the same
    // heat
    double mechanical = measured.energy(DAY).in(JOULE) - 15_000 * 10;
    MixerHeat power = MixerHeat.power(watts(mechanical / 480), minutes(8));
    assertThat(power.wetting(DAY).in(JOULE)).isCloseTo(150_000, within(1e-6));
    assertThat(water(DAY, 25, power)).isCloseTo(14, within(1e-9));
  }

  @Test
  void flourOfAPrefermentIsNotWettedAgain() {
    Batch batch =
        Formula.byPercent(
                "poolish bread",
                f ->
                    f.line("bread flour", percent(100))
                        .line("water", percent(65))
                        .preferment(Preferment.poolish(percent(30))))
            .forFlour(kilograms(10));
    StageMix mix = StageMix.of(batch, celsius(20), celsius(22));
    assertThat(MixerHeat.power(watts(500), minutes(8)).wetting(mix).in(JOULE))
        .isCloseTo(15_000 * 7, within(1e-6));
  }

  @Test
  void aBareFrictionIsTheHeatWithWhichRuleAndBalanceAgreeOnTheReferenceDay() {
    StageMix reference = StageMix.of(BATCH, fahrenheit(68), fahrenheit(68));
    MixerHeat heat = MixerHeat.friction(celsiusDegrees(15));
    WaterPlan plan = reference.water(celsius(25), heat);
    assertThat(plan.rule().orElseThrow().water().in(CELSIUS)).isCloseTo(20, within(1e-9));
    assertThat(plan.water().orElseThrow().in(CELSIUS)).isCloseTo(20, within(1e-9));
    assertThat(plan.working().toString()).contains("20 °C (68 °F)").contains("15 K / 3 = 5 K");
    assertThat(plan.comparison().orElseThrow().differs()).isFalse();
    assertThat(plan.advice()).extracting(Advice::code).doesNotContain("FACTOR_RULE_OFF");
  }

  @Test
  void whereRuleAndBalanceDifferTheComparisonTakesOneAndSaysWhy() {
    // a hot room weighs a third in the rule and nothing in the balance
    StageMix hot = StageMix.of(BATCH, celsius(20), celsius(32));
    RuleComparison bare =
        hot.water(celsius(25), MixerHeat.friction(celsiusDegrees(15))).comparison().orElseThrow();
    assertThat(bare.differs()).isTrue();
    assertThat(bare.taken()).isEqualTo(RuleComparison.Taken.RULE);
    assertThat(bare.why()).contains("number of the rule");
    WaterPlan measured =
        hot.water(celsius(25), MixerHeat.of(PastMix.of(DAY, celsius(14), celsius(25))));
    RuleComparison taken = measured.comparison().orElseThrow();
    assertThat(taken.difference().celsiusDegrees()).isLessThan(-2);
    assertThat(taken.taken()).isEqualTo(RuleComparison.Taken.BALANCE);
    assertThat(taken.toString()).contains("take the balance");
    assertThat(measured.advice()).extracting(Advice::code).contains("FACTOR_RULE_OFF");
  }

  @Test
  void theRuleHasAsManyFactorsAsTheTradeGivesIt() {
    Batch batch =
        Formula.byPercent(
                "two preferments",
                f ->
                    f.line("bread flour", percent(100))
                        .line("water", percent(70))
                        .line("salt", percent(2))
                        .line("sunflower seeds", percent(10))
                        .preferment(Preferment.poolish(percent(20)))
                        .preferment(
                            Preferment.of("Sponge", percent(10), percent(60)).withYeast(percent(0)))
                        .soaker("Seeds", s -> s.line("sunflower seeds", percent(10))))
            .forFlour(kilograms(10));
    StageMix mix =
        StageMix.of(batch, celsius(20), celsius(22))
            .withStage("poolish", celsius(24))
            .withStage("Sponge", celsius(18));
    FactorRule rule = mix.factorRule(celsius(25), MixerHeat.friction(celsiusDegrees(20)));
    assertThat(rule.factors())
        .extracting(FactorRule.Factor::name)
        .containsExactly("flour", "room", "poolish", "sponge");
    assertThat(rule.water().in(CELSIUS)).isCloseTo(5 * 25 - 20 - 22 - 24 - 18 - 20, within(1e-9));
  }

  @Test
  void aPastMixOfAnotherFormulaOrACoolOneIsTold() {
    Batch other =
        Formula.byPercent(
                "stiff dough", f -> f.line("bread flour", percent(100)).line("water", percent(50)))
            .forFlour(kilograms(1));
    MixerHeat heat = MixerHeat.of(PastMix.of(DAY, celsius(14), celsius(25)));
    assertThat(StageMix.of(other, celsius(20), celsius(22)).water(celsius(25), heat).advice())
        .extracting(Advice::code)
        .contains("PAST_MIX_OF_OTHER_FORMULA");
    assertThat(DAY.water(celsius(25), heat).advice())
        .extracting(Advice::code)
        .doesNotContain("PAST_MIX_OF_OTHER_FORMULA", "PAST_MIX_COLD");
    assertThat(PastMix.of(DAY, celsius(30), celsius(25)).advice())
        .extracting(Advice::code)
        .containsExactly("PAST_MIX_COLD");
  }

  @Test
  void anEggDoughHasAPastMixWithoutWater() {
    Batch batch =
        Formula.byPercent(
                "egg dough", f -> f.line("bread flour", percent(100)).line("egg", percent(60)))
            .forFlour(kilograms(1));
    StageMix mix = StageMix.of(batch, celsius(22), celsius(22)).withIngredient("egg", celsius(5));
    PastMix past = PastMix.of(mix, celsius(24));
    assertThat(past.friction()).isEmpty();
    assertThat(mix.water(celsius(22), MixerHeat.of(past)).dough().in(CELSIUS))
        .isCloseTo(24, within(1e-9));
    assertThatThrownBy(() -> PastMix.of(mix, celsius(20), celsius(24)))
        .hasMessageContaining("no free liquid");
    assertThatThrownBy(() -> PastMix.of(DAY, celsius(24))).hasMessageContaining("is missing");
  }

  @Test
  void whatCanNotBeIsRefusedWithValueAndRange() {
    assertThatThrownBy(() -> MixerHeat.friction(celsiusDegrees(-5)))
        .hasMessageContaining("-5 °C")
        .hasMessageContaining("0 °C to 75 °C (0 °F to 135 °F)");
    assertThatThrownBy(() -> FactorRule.of(celsius(24)).friction(celsiusDegrees(-5)))
        .hasMessageContaining("-5 °C");
    assertThatThrownBy(() -> MixerHeat.rise(celsiusDegrees(60)))
        .hasMessageContaining("60 °C")
        .hasMessageContaining("0 °C to 25 °C");
    assertThatThrownBy(() -> MixerHeat.rise(celsiusDegrees(-1))).hasMessageContaining("-1 °C");
    assertThatThrownBy(() -> MixerHeat.power(watts(0), minutes(5))).hasMessageContaining("0 W");
    assertThatThrownBy(() -> MixerHeat.power(watts(5), minutes(500)))
        .hasMessageContaining("500 min")
        .hasMessageContaining("120 min");
    assertThatThrownBy(() -> DAY.water(celsius(24), MixerHeat.power(kilowatts(90), minutes(60))))
        .hasMessageContaining("at most 25 K");
    assertThatThrownBy(() -> PastMix.of(DAY, celsius(56), celsius(25)))
        .hasMessageContaining("56 °C")
        .hasMessageContaining("0 °C to 55 °C (32 °F to 131 °F)");
    assertThatThrownBy(() -> PastMix.of(DAY, celsius(-3), celsius(25)))
        .hasMessageContaining("-3 °C");
    assertThatThrownBy(() -> PastMix.of(DAY, celsius(14), celsius(49)))
        .hasMessageContaining("49 °C")
        .hasMessageContaining("-10 K to 25 K");
    assertThatThrownBy(() -> PastMix.iced(DAY, celsius(14), kilograms(7), celsius(20)))
        .hasMessageContaining("7 kg");
    assertThatThrownBy(() -> FactorRule.of(celsius(24)).flour(celsius(200)))
        .hasMessageContaining("200 °C");
  }

  private static org.tourage.quantity.Amount<javax.measure.quantity.Power> kilowatts(double value) {
    return watts(value * 1000);
  }
}
