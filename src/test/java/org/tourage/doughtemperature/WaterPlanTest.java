package org.tourage.doughtemperature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.doughtemperature.WaterPlan.Way;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.formula.Preferment;

class WaterPlanTest {
  private static final MixerHeat SIX = MixerHeat.rise(celsiusDegrees(6)).over(minutes(8));

  private static Batch poolishBread(double share) {
    return Formula.byPercent(
            "poolish bread",
            f ->
                f.line("bread flour", percent(100))
                    .line("water", percent(65))
                    .line("salt", percent(2))
                    .line("instant yeast", percent(0.5))
                    .preferment(Preferment.poolish(percent(share))))
        .forFlour(kilograms(10));
  }

  private static WaterPlan poolishPlan(double share, double target) {
    return StageMix.of(poolishBread(share), celsius(22), celsius(22))
        .water(celsius(target), SIX)
        .withTap(celsius(16));
  }

  private static Batch brioche() {
    return Formula.byPercent(
            "brioche",
            f ->
                f.line("bread flour", percent(100))
                    .line("egg", percent(60))
                    .line("butter", percent(50))
                    .line("sugar", percent(12))
                    .line("salt", percent(2))
                    .line("fresh yeast", percent(3)))
        .forFlour(kilograms(1));
  }

  private static StageMix briocheDay() {
    return StageMix.of(brioche(), celsius(24), celsius(24))
        .withIngredient("egg", celsius(12))
        .withIngredient("butter", celsius(14));
  }

  private static Batch milkDough() {
    return Formula.byPercent(
            "milk dough",
            f ->
                f.line("bread flour", percent(100))
                    .line("whole milk", percent(60))
                    .line("salt", percent(2)))
        .forFlour(kilograms(1));
  }

  @Test
  void waterThatALiquidCanHaveIsNamedWithTheIceThatDoesTheSame() {
    WaterPlan plan = poolishPlan(20, 24);
    assertThat(plan.water().orElseThrow().in(CELSIUS)).isCloseTo(11.9, within(0.05));
    assertThat(plan.way()).isEqualTo(Way.COOL);
    IcedWater iced = plan.ice().orElseThrow();
    assertThat(iced.ice().in(GRAM) + iced.water().in(GRAM)).isCloseTo(4500, within(1e-6));
    assertThat(plan.levers()).isEmpty();
    assertThat(plan.dough()).isEqualTo(celsius(24));
    assertThat(plan).hasToString("4500 g water at 11.9 °C (53 °F) for dough at 24 °C (75 °F)");
  }

  @Test
  void waterBelowFreezingBecomesIceAndLeversAndNoTemperature() {
    WaterPlan plan = poolishPlan(50, 24);
    assertThat(plan.water()).isEmpty();
    assertThat(plan.way()).isEqualTo(Way.ICE);
    IcedWater iced = plan.ice().orElseThrow();
    HeatBalance balance = plan.balance().orElseThrow();
    assertThat(balance.waterTemperature().in(CELSIUS)).isCloseTo(-8.3, within(0.05));
    assertThat(balance.doughTemperature(celsius(16), iced.ice(), iced.iceTemperature()).in(CELSIUS))
        .isCloseTo(24, within(1e-9));
    // first the water at 0 °C, then what comes on top of it and spares the ice
    assertThat(plan.levers().get(0).toString()).startsWith("water at 0 °C (32 °F)");
    Lever flour = lever(plan, "bread flour");
    assertThat(flour.reaches()).isTrue();
    assertThat(plan.toString() + plan.advice()).doesNotContain("-8.3");
    assertThat(plan.advice()).extracting(Advice::code).contains("YEAST_ICED");
  }

  private static Lever lever(WaterPlan plan, String what) {
    return plan.levers().stream().filter(l -> l.what().equals(what)).findFirst().orElseThrow();
  }

  @Test
  void aLeverDoesWhatItSays() {
    WaterPlan plan = poolishPlan(50, 24);
    Lever.Temper flour = (Lever.Temper) lever(plan, "bread flour");
    WaterPlan pulled =
        StageMix.of(poolishBread(50), flour.to(), celsius(22))
            .water(celsius(24), SIX)
            .withTap(celsius(16));
    assertThat(pulled.balance().orElseThrow().waterTemperature().in(CELSIUS))
        .isCloseTo(0, within(1e-6));
    Lever.Shorten mixing = (Lever.Shorten) lever(plan, "mixing");
    assertThat(mixing.to().in(MINUTE)).isBetween(4.0, 8.0);
  }

  @Test
  void iceThatDoesNotSufficeLeavesAllIceAndLevers() {
    WaterPlan plan =
        StageMix.of(poolishBread(60), celsius(34), celsius(34))
            .water(celsius(18), MixerHeat.rise(celsiusDegrees(12)).over(minutes(12)))
            .withTap(celsius(25));
    assertThat(plan.way()).isEqualTo(Way.LEVERS);
    assertThat(plan.water()).isEmpty();
    assertThat(plan.ice()).isEmpty();
    assertThat(plan.levers().get(0)).isInstanceOf(Lever.AllIce.class);
    assertThat(plan.levers().get(0).toString()).startsWith("all 500 g water as ice: dough at");
    assertThat(plan.dough().in(CELSIUS)).isGreaterThan(18);
    assertThat(plan.best().in(CELSIUS)).isLessThan(plan.dough().in(CELSIUS));
    assertThat(plan.advice())
        .extracting(Advice::code)
        .contains("WATER_NOT_COLD_ENOUGH", "YEAST_ICED");
    assertThat(plan.comparison()).isEmpty();
  }

  @Test
  void anAllEggDoughHasLeversInFigures() {
    WaterPlan plan =
        briocheDay().water(celsius(22), MixerHeat.rise(celsiusDegrees(10)).over(minutes(15)));
    assertThat(plan.mix().freeLiquid()).isEqualTo(grams(0));
    assertThat(plan.water()).isEmpty();
    assertThat(plan.ice()).isEmpty();
    assertThat(plan.rule()).isEmpty();
    assertThat(plan.way()).isEqualTo(Way.LEVERS);
    assertThat(plan.levers())
        .extracting(Lever::what)
        .contains("bread flour", "whole egg", "unsalted butter", "mixing");
    Lever.Temper eggs = (Lever.Temper) lever(plan, "whole egg");
    WaterPlan cold =
        briocheDay()
            .withIngredient("egg", eggs.to())
            .water(celsius(22), MixerHeat.rise(celsiusDegrees(10)));
    assertThat(cold.dough().in(CELSIUS)).isCloseTo(eggs.dough().in(CELSIUS), within(1e-9));
    assertThat(eggs.to().in(CELSIUS)).isGreaterThanOrEqualTo(4);
    assertThat(plan.advice()).extracting(Advice::code).contains("NO_FREE_LIQUID");
    assertThat(plan.advice().toString()).doesNotContain("tap");
  }

  @Test
  void aDoughWithoutFreeLiquidThatIsRightIsLeftAlone() {
    WaterPlan before = briocheDay().water(celsius(22), MixerHeat.rise(celsiusDegrees(10)));
    WaterPlan plan = briocheDay().water(before.dough(), MixerHeat.rise(celsiusDegrees(10)));
    assertThat(plan.way()).isEqualTo(Way.AS_IT_COMES);
    assertThat(plan.levers()).isEmpty();
    assertThat(plan.toString()).contains("as it comes");
    assertThat(plan.advice()).isEmpty();
  }

  @Test
  void milkIsFreeOnlyWhereThereIsNoWaterAndNoStatedTemperature() {
    StageMix free = StageMix.of(milkDough(), celsius(20), celsius(22));
    assertThat(free.freeLiquidName()).isEqualTo("whole milk");
    WaterPlan warm = free.water(celsius(25), SIX).withTap(celsius(10));
    assertThat(warm.way()).isEqualTo(Way.TEMPER);
    assertThat(warm.ice()).isEmpty();
    StageMix cold = free.withIngredient("milk", celsius(4));
    assertThat(cold.freeLiquid()).isEqualTo(grams(0));
    WaterPlan plan = cold.water(celsius(27), SIX);
    assertThat(plan.way()).isEqualTo(Way.LEVERS);
    Lever.Temper milk = (Lever.Temper) lever(plan, "whole milk");
    assertThat(milk.to().in(CELSIUS)).isGreaterThan(4);
    assertThat(milk.reaches()).isTrue();
    assertThat(plan.advice()).extracting(Advice::code).contains("LEVER_PERISHABLE");
    // milk can't be ice
    WaterPlan chilled = free.water(celsius(10), SIX);
    assertThat(chilled.ice()).isEmpty();
    assertThat(chilled.levers().get(0).toString()).startsWith("whole milk at 0 °C");
  }

  @Test
  void waterAboveItsLimitIsRefusedAndLeversWarmTheRest() {
    Batch batch =
        Formula.byPercent(
                "cold bakery",
                f ->
                    f.line("bread flour", percent(100))
                        .line("water", percent(50))
                        .line("salt", percent(2))
                        .line("fresh yeast", percent(2)))
            .forFlour(kilograms(5));
    WaterPlan plan =
        StageMix.of(batch, celsius(-10), celsius(8))
            .water(celsius(30), MixerHeat.rise(celsiusDegrees(2)))
            .withTap(celsius(8));
    assertThat(plan.way()).isEqualTo(Way.LEVERS);
    assertThat(plan.water()).isEmpty();
    // at most what fresh yeast bears
    Lever.Temper water = (Lever.Temper) plan.levers().get(0);
    assertThat(water.to().in(CELSIUS)).isCloseTo(38, within(1e-9));
    assertThat(((Lever.Temper) lever(plan, "bread flour")).to().in(CELSIUS)).isGreaterThan(-10);
    assertThat(plan.advice()).extracting(Advice::code).contains("WATER_NOT_WARM_ENOUGH");
    assertThat(plan.advice().toString()).doesNotContain("LEVER_PERISHABLE");
  }

  @Test
  void coldAndFrozenIngredientsCountCold() {
    Batch batch =
        Formula.byPercent(
                "rich dough",
                f ->
                    f.line("bread flour", percent(100))
                        .line("water", percent(40))
                        .line("egg", percent(15))
                        .line("butter", percent(10))
                        .line("sugar", percent(10)))
            .forFlour(kilograms(1));
    StageMix room = StageMix.of(batch, celsius(20), celsius(20));
    StageMix cold = room.withIngredient("egg", celsius(4)).withIngredient("butter", celsius(4));
    StageMix frozen = room.withIngredient("egg", celsius(-18));
    double base = water(room);
    double eggs = 0.15 * part(room, "whole egg").specificHeat() * 16;
    double butter = 0.10 * part(room, "unsalted butter").specificHeat() * 16;
    double liquid = 0.4 * room.balance(celsius(25)).liquidSpecificHeat();
    assertThat(water(cold) - base).isCloseTo((eggs + butter) / liquid, within(1e-6));
    assertThat(part(frozen, "whole egg").melting().value()).isGreaterThan(0);
    assertThat(water(frozen)).isGreaterThan(water(cold));
    // dry goods and sugar are only cold
    assertThat(part(room.withIngredient("sugar", celsius(-18)), "granulated sugar").melting())
        .isEqualTo(joules(0));
  }

  private static double water(StageMix mix) {
    return mix.balance(celsius(25)).mixing(celsiusDegrees(0)).waterTemperature().in(CELSIUS);
  }

  private static MixPart part(StageMix mix, String name) {
    return mix.parts().stream().filter(p -> p.name().equals(name)).findFirst().orElseThrow();
  }

  @Test
  void tapWaterIsToBeWarmedOnlyWhereThereIsSome() {
    assertThat(poolishPlan(20, 30).way()).isEqualTo(Way.WARM);
    assertThat(poolishPlan(20, 30).ice()).isEmpty();
    WaterPlan right = poolishPlan(20, 24);
    assertThat(right.withTap(celsius(12)).way()).isEqualTo(Way.AS_IT_COMES);
    assertThat(
            StageMix.of(poolishBread(20), celsius(22), celsius(22)).water(celsius(24), SIX).way())
        .isEqualTo(Way.TEMPER);
  }

  @Test
  void instantYeastIsKeptFromIcedWater() {
    WaterPlan plan = poolishPlan(33, 24);
    assertThat(plan.water().orElseThrow().in(CELSIUS)).isCloseTo(7.8, within(0.05));
    assertThat(plan.advice()).extracting(Advice::code).contains("YEAST_ICED");
    assertThat(plan.advice().toString()).contains("Mix it into the flour");
    assertThat(poolishPlan(20, 27).advice())
        .extracting(Advice::code)
        .doesNotContain("YEAST_ICED", "WATER_COLD");
  }

  @Test
  void warmWaterIsToldWhereThePrefermentBringsTheYeast() {
    Batch levain =
        Formula.byPercent(
                "levain bread",
                f ->
                    f.line("bread flour", percent(100))
                        .line("water", percent(70))
                        .line("salt", percent(2))
                        .preferment(
                            Preferment.of("Levain", percent(15), percent(100))
                                .withYeast(percent(0))))
            .forFlour(kilograms(1));
    WaterPlan plan =
        StageMix.of(levain, celsius(8), celsius(18))
            .withStage("Levain", celsius(20))
            .water(celsius(30), MixerHeat.rise(celsiusDegrees(0)));
    assertThat(plan.water().orElseThrow().in(CELSIUS)).isGreaterThan(38);
    assertThat(plan.advice().toString()).contains("yeast of a preferment");
  }

  @Test
  void aBowlThatIsCountedIsALever() {
    WaterPlan plan =
        StageMix.of(poolishBread(50), celsius(22), celsius(30))
            .withStage("Poolish", celsius(22))
            .withBowl(kilograms(15))
            .water(celsius(22), SIX);
    assertThat(lever(plan, "bowl").toString()).startsWith("bowl at");
  }

  @Test
  void rollInAndFinishNeverCount() {
    Batch plain =
        Formula.byWeight(
            "dough", f -> f.line("bread flour", grams(1000)).line("water", grams(550)));
    Batch laminated =
        Formula.byWeight(
            "dough",
            f ->
                f.line("bread flour", grams(1000))
                    .line("water", grams(550))
                    .rollIn("butter", grams(500))
                    .finish("whole milk", grams(50)));
    assertThat(StageMix.of(laminated, celsius(20), celsius(20)).parts())
        .isEqualTo(StageMix.of(plain, celsius(20), celsius(20)).parts());
    assertThatThrownBy(() -> StageMix.of(laminated, "Roll-in", celsius(20), celsius(20)))
        .hasMessageContaining("Roll-in")
        .hasMessageContaining("name a preferment");
  }

  @Test
  void aPrefermentHasAWaterOfItsOwn() {
    StageMix poolish = StageMix.of(poolishBread(30), "Poolish", celsius(18), celsius(22));
    assertThat(poolish.freeLiquid()).isEqualTo(grams(3000));
    assertThat(poolish.water(celsius(24), MixerHeat.rise(celsiusDegrees(2))).way())
        .isEqualTo(Way.TEMPER);
  }

  @Test
  void whatCanNotBeIsRefusedWithValueAndRange() {
    WaterPlan plan = poolishPlan(20, 24);
    StageMix mix = plan.mix();
    assertThatThrownBy(() -> plan.withTap(celsius(200)))
        .hasMessageContaining("200 °C")
        .hasMessageContaining("0 °C to 55 °C");
    assertThatThrownBy(() -> plan.withIce(celsius(1))).hasMessageContaining("1 °C");
    assertThatThrownBy(() -> mix.water(celsius(80), SIX)).hasMessageContaining("80 °C");
    assertThatThrownBy(() -> mix.withIngredient("water", celsius(70)))
        .hasMessageContaining("70 °C")
        .hasMessageContaining("0 °C to 55 °C");
    assertThatThrownBy(() -> mix.withIngredient("water", celsius(-2)))
        .hasMessageContaining("-2 °C");
    assertThatThrownBy(() -> mix.withIngredient("salt", celsius(400)))
        .hasMessageContaining("400 °C");
    assertThatThrownBy(() -> mix.withStage("Levain", celsius(20)))
        .hasMessageContaining("Levain")
        .hasMessageContaining("Poolish");
    assertThatThrownBy(() -> mix.withBowl(kilograms(-1))).hasMessageContaining("-1 kg");
    assertThatThrownBy(() -> StageMix.of(poolishBread(20), celsius(90), celsius(20)))
        .hasMessageContaining("the flour: 90 °C");
    assertThatThrownBy(() -> StageMix.of(poolishBread(20), celsius(20), celsius(90)))
        .hasMessageContaining("the room: 90 °C");
  }

  @Test
  void aPlanTravelsAndComparesByValue() throws Exception {
    for (WaterPlan plan : new WaterPlan[] {poolishPlan(20, 24), poolishPlan(50, 24)}) {
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
        out.writeObject(plan);
      }
      try (ObjectInputStream in =
          new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
        Object copy = in.readObject();
        assertThat(copy).isEqualTo(plan).hasSameHashCodeAs(plan).hasToString(plan.toString());
        assertThat(((WaterPlan) copy).levers()).isEqualTo(plan.levers());
      }
    }
  }
}
