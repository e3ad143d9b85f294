package org.tourage.doughtemperature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.JOULE;
import static org.tourage.quantity.BakeryUnits.KILOGRAM;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.ingredient.YeastForm;
import org.tourage.physics.Constituents;
import org.tourage.quantity.BakeryUnits;
import org.tourage.reference.Checks;

class HeatBalanceTest {
  private static double figure(String check) {
    return Checks.row("other-rooms.csv", check).number("value");
  }

  private static HeatBalance worked() {
    return HeatBalance.of(celsius(25), kilograms(6.3))
        .part("flour", kilograms(10), celsius(22), 1800)
        .part("salt", kilograms(0.2), celsius(22), 850)
        .mixing(kilojoules(12 * 16.5))
        .hydration(kilojoules(15 * 10));
  }

  @Test
  void theWorkedDoughComesOutToThePrintedDigit() {
    assertThat(worked().waterTemperature().in(CELSIUS))
        .isCloseTo(
            figure(
                "heat balance water for flour 10 kg 1.80 at 22 salt 0.2 kg 0.85 at 22 water 6.3 kg 12 kJ/kg dough 15 kJ/kg flour target 25"),
            within(5e-5));
    assertThat(worked().ice(celsius(18), celsius(0)).in(KILOGRAM))
        .isCloseTo(figure("ice of that dough from tap 18"), within(5e-7));
    assertThat(worked())
        .hasToString("water at 13.9 °C (57 °F) for dough at 25 °C (77 °F) by heat balance");
    assertThat(worked().working().toString())
        .contains("10.00 kg × 1800 J/(kg·K) × -3 K = -54 kJ")
        .contains("198 kJ + 150 kJ − 0 kJ");
    assertThat(worked().advice()).isEmpty();
  }

  /** Water alone that needs a temperature: the target is that temperature. */
  private static double ice(double tap, double needed, double iceTemperature) {
    // a target below 0 °C stands for the demand; the liquid alone is the dough
    return HeatBalance.of(celsius(needed), kilograms(10))
        .ice(celsius(tap), celsius(iceTemperature))
        .in(KILOGRAM);
  }

  @Test
  void iceOfTheBalanceIsTheWorkedOne() {
    assertThat(ice(20, 5, 0)).isCloseTo(figure("ice for 10 kg tap 20 needed 5"), within(5e-6));
    assertThat(ice(20, 5, -18))
        .isCloseTo(figure("ice for 10 kg tap 20 needed 5 with ice at -18"), within(5e-6));
    assertThat(ice(25, -8, 0)).isCloseTo(figure("ice for 10 kg tap 25 needed -8"), within(5e-6));
    assertThat(ice(4, 10, 0)).isZero();
  }

  @Test
  void aTextbookProblemWithHydrationByDoughComesOut() {
    // water is let warm to 15 °C; flour at 15 °C brings nothing
    HeatBalance problem =
        HeatBalance.of(celsius(15), kilograms(1))
            .part("flour", kilograms(2), celsius(15), 1760)
            .hydration(kilojoules(45));
    assertThat(problem.waterTemperature().in(CELSIUS))
        .isCloseTo(
            figure("water for 2 kg flour 1 kg water heat of hydration 15 kJ/kg dough at 15"),
            within(0.06));
  }

  @Property
  void theBalanceClosesAndTheDoughGetsItsTarget(
      @ForAll @DoubleRange(min = 15, max = 32) double target,
      @ForAll @DoubleRange(min = -18, max = 40) double flour,
      @ForAll @DoubleRange(min = 0.4, max = 1.2) double water,
      @ForAll @DoubleRange(min = 0, max = 30) double mixing) {
    HeatBalance balance =
        HeatBalance.of(celsius(target), kilograms(water))
            .part("flour", kilograms(1), celsius(flour), 1800)
            .mixing(kilojoules(mixing))
            .loss(kilojoules(mixing / 3));
    assertThat(balance.closure()).isCloseTo(0, within(1e-9));
    assertThat(balance.doughTemperature(balance.waterTemperature()).in(CELSIUS))
        .isCloseTo(target, within(1e-9));
  }

  @Property
  void iceBringsTheDoughToItsTarget(
      @ForAll @DoubleRange(min = 10, max = 25) double tap,
      @ForAll @DoubleRange(min = -18, max = 0) double iceTemperature,
      @ForAll @DoubleRange(min = 18, max = 26) double target) {
    HeatBalance balance =
        HeatBalance.of(celsius(target), kilograms(6))
            .part("flour", kilograms(10), celsius(24), 1800)
            .mixing(kilojoules(150));
    var ice = balance.ice(celsius(tap), celsius(iceTemperature));
    if (ice.value() > 0) {
      assertThat(balance.doughTemperature(celsius(tap), ice, celsius(iceTemperature)).in(CELSIUS))
          .isCloseTo(target, within(1e-9));
    } else {
      assertThat(balance.waterTemperature().in(CELSIUS)).isGreaterThanOrEqualTo(tap - 1e-9);
    }
  }

  @Property
  void withEqualSpecificHeatsItIsTheMassWeightedMean(
      @ForAll @DoubleRange(min = 5, max = 35) double flour,
      @ForAll @DoubleRange(min = 1, max = 40) double water,
      @ForAll @DoubleRange(min = 0.3, max = 3) double mass) {
    HeatBalance balance =
        HeatBalance.of(celsius(20), kilograms(1))
            .part("flour", kilograms(mass), celsius(flour), HeatBalance.WATER_SPECIFIC_HEAT);
    assertThat(balance.doughTemperature(celsius(water)).in(CELSIUS))
        .isCloseTo((mass * flour + water) / (mass + 1), within(1e-9));
  }

  @Test
  void energyOfTheMixerCanComeFromPowerOrFromARise() {
    assertThat(worked().mixing(watts(500), minutes(8)).mixing().in(JOULE)).isEqualTo(240_000);
    HeatBalance risen =
        HeatBalance.of(celsius(24), kilograms(1))
            .part("flour", kilograms(1), celsius(24), 1800)
            .mixing(celsiusDegrees(3));
    assertThat(risen.mixing().in(JOULE)).isCloseTo(3 * (4186 + 1800), within(1e-6));
    assertThat(risen.doughTemperature(celsius(24)).in(CELSIUS)).isCloseTo(27, within(1e-9));
  }

  @Test
  void aBatchBringsItsOwnMassesAndSpecificHeats() {
    Batch batch =
        Formula.byWeight(
            "dough",
            f ->
                f.line("bread flour", grams(1000))
                    .line("water", grams(500))
                    .line("whole milk", grams(100))
                    .line("salt", grams(20))
                    .rollIn("butter", grams(400)));
    HeatBalance balance = HeatBalance.of(batch, celsius(24), fahrenheit(70));
    assertThat(balance.parts())
        .extracting(MixPart::name)
        .containsExactly("bread flour", "whole milk", "salt");
    assertThat(balance.liquid()).isEqualTo(grams(500));
    assertThat(balance.liquidSpecificHeat()).isBetween(4170.0, 4186.0);
    Batch dry =
        Formula.byWeight("dry", f -> f.line("bread flour", grams(1000)).line("egg", grams(500)));
    assertThatThrownBy(() -> HeatBalance.of(dry, celsius(24), celsius(20)))
        .hasMessageContaining("no liquid");
  }

  @Test
  void theFactorRuleIsToldHowFarItIsOff() {
    FactorRule rule =
        FactorRule.of(celsius(25))
            .flour(celsius(22))
            .room(celsius(30))
            .friction(celsiusDegrees(12));
    assertThat(worked().compare(rule)).extracting(Advice::code).containsExactly("FACTOR_RULE_OFF");
    assertThat(worked().compare(rule).get(0).text()).contains("colder");
    FactorRule fitted = rule.friction(rule.frictionOfPastMix(worked().waterTemperature()));
    assertThat(worked().compare(fitted)).isEmpty();
  }

  @Test
  void whatCanNotBeReachedSaysWhatWouldBe() {
    HeatBalance hot =
        HeatBalance.of(celsius(10), kilograms(1)).part("flour", kilograms(10), celsius(35), 1800);
    assertThatThrownBy(() -> hot.ice(celsius(20), celsius(0)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("instead of 10 °C (50 °F)")
        .hasMessageContaining("chill the other parts by ")
        .hasMessageContaining("kJ less");
    HeatBalance cold =
        HeatBalance.of(celsius(30), kilograms(0.5)).part("flour", kilograms(1), celsius(0), 1800);
    assertThat(cold.advice()).extracting(Advice::code).containsExactly("WATER_KILLS_YEAST");
    HeatBalance warm =
        HeatBalance.of(celsius(25), kilograms(0.5)).part("flour", kilograms(1), celsius(6), 1800);
    assertThat(warm.advice()).extracting(Advice::code).containsExactly("WATER_WARM");
    assertThat(hot.advice()).extracting(Advice::code).containsExactly("WATER_BELOW_FREEZING");
    assertThatThrownBy(() -> HeatBalance.of(celsius(20), kilograms(0)))
        .hasMessageContaining("needs liquid");
    assertThatThrownBy(() -> worked().part("x", kilograms(0), celsius(20), 1000))
        .hasMessageContaining("x: 0 kg");
    assertThatThrownBy(() -> worked().ice(celsius(20), celsius(1)))
        .hasMessageContaining("can't be the ice");
    assertThatThrownBy(() -> worked().doughTemperature(celsius(20), kilograms(7), celsius(0)))
        .hasMessageContaining("7.0 kg");
  }

  @Test
  void aFrozenPartTakesItsMeltingFromTheDough() {
    Constituents water = new Constituents(1, 0, 0, 0, 0, 0);
    HeatBalance ice =
        HeatBalance.of(celsius(20), kilograms(9)).frozen("ice", kilograms(1), celsius(0), water);
    // 9 kg at T give 1 kg of ice its melting and its warming: 9·4186·(T − 20) = 333550 + 4176.2·20
    double expected = 20 + (333_550 + 4176.2 * 20) / (9 * 4186);
    assertThat(ice.waterTemperature().in(CELSIUS)).isCloseTo(expected, within(1e-9));
    HeatBalance colder =
        HeatBalance.of(celsius(20), kilograms(9)).frozen("ice", kilograms(1), celsius(-18), water);
    // 18 K of ice at its mean of −9 °C
    double more = (2062.3 - 6.0769 * 9) * 18 / (9 * 4186);
    assertThat(colder.waterTemperature().in(CELSIUS)).isCloseTo(expected + more, within(1e-9));
    assertThat(Math.abs(colder.closure())).isLessThan(1e-9);
    assertThatThrownBy(
            () ->
                HeatBalance.of(celsius(20), kilograms(1))
                    .frozen("fruit", kilograms(1), celsius(4), water))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("fruit at 4 °C");
  }

  @Test
  void chilledFlourAsksForWarmerWater() {
    HeatBalance warm =
        HeatBalance.of(celsius(24), kilograms(6)).part("flour", kilograms(10), celsius(22), 1800);
    HeatBalance cold = warm.partAt("flour", celsius(12));
    double difference = 10 * 1800 * 10.0 / (6 * 4186);
    assertThat(cold.waterTemperature().in(CELSIUS) - warm.waterTemperature().in(CELSIUS))
        .isCloseTo(difference, within(1e-9));
    assertThatThrownBy(() -> warm.partAt("rye", celsius(12)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("[flour]");
  }

  @Test
  void waterThatDoesNotSuitTheYeastNamesTheNearestDoughAndTheLever() {
    HeatBalance hot =
        HeatBalance.of(celsius(28), kilograms(5)).part("flour", kilograms(10), celsius(10), 1800);
    assertThat(hot.waterTemperature().in(CELSIUS)).isGreaterThan(40);
    List<Advice> advice = hot.suits(YeastForm.FRESH);
    assertThat(advice).extracting(Advice::code).containsExactly("WATER_WARM");
    assertThat(advice.get(0).remedy())
        .contains("With water of 38 °C (100 °F) the dough comes to")
        .contains("K higher");
    // the lever does what it says
    double gap = hot.waterTemperature().in(CELSIUS) - 38;
    double kelvin = gap * 5 * 4186 / (10 * 1800);
    assertThat(hot.partAt("flour", celsius(10 + kelvin)).waterTemperature().in(CELSIUS))
        .isCloseTo(38, within(1e-9));
    HeatBalance cool =
        HeatBalance.of(celsius(24), kilograms(6)).part("flour", kilograms(10), celsius(22), 1800);
    assertThat(cool.suits(YeastForm.ACTIVE_DRY))
        .extracting(Advice::code)
        .containsExactly("WATER_COLD");
    assertThat(cool.suits(YeastForm.FRESH)).isEmpty();
  }

  @Test
  void allTheWaterAsIceReachesTheLimitOfTheHeatOfMelting() {
    // needed −79.68 °C is the limit for ice at 0 °C: L/c = 333.55/4.186
    double limit = -333_550.0 / 4186;
    assertThat(limit)
        .isCloseTo(
            Checks.row("other-rooms.csv", "limit of all ice").number("value"), within(0.005));
    HeatBalance water = HeatBalance.of(celsius(limit), kilograms(10));
    assertThat(water.ice(celsius(25), celsius(0)).in(BakeryUnits.KILOGRAM))
        .isCloseTo(10, within(1e-9));
    assertThatThrownBy(
            () -> HeatBalance.of(celsius(limit - 1), kilograms(10)).ice(celsius(25), celsius(0)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("even with all the liquid as ice");
  }

  @Test
  void aLossThatIsSetAfterwardsDoesNotForgetWhatTheFrozenPartTakes() {
    Constituents water = new Constituents(1, 0, 0, 0, 0, 0);
    HeatBalance first =
        HeatBalance.of(celsius(20), kilograms(9))
            .loss(kilojoules(10))
            .frozen("ice", kilograms(1), celsius(-18), water);
    HeatBalance last =
        HeatBalance.of(celsius(20), kilograms(9))
            .frozen("ice", kilograms(1), celsius(-18), water)
            .loss(kilojoules(10));
    assertThat(last.waterTemperature().in(CELSIUS))
        .isCloseTo(first.waterTemperature().in(CELSIUS), within(1e-12));
    assertThat(last.working().toString()).contains("− thawing");
    assertThatThrownBy(() -> last.partAt("ice", celsius(-5)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("frozen(…)");
  }
}
