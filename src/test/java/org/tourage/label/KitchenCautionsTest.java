package org.tourage.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.tourage.quantity.Amounts.*;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.tourage.advice.Advice;
import org.tourage.advice.Severity;
import org.tourage.formula.Formula;
import org.tourage.physics.TemperatureHistory;
import org.tourage.reference.Checks;

class KitchenCautionsTest {
  private static Formula with(String liquid) {
    return Formula.byPercent(
        "dough", f -> f.line("bread flour", percent(100)).line(liquid, percent(60)));
  }

  @Test
  void milkAndEggAreHeldAsColdAsTheModelCodeSays() {
    double celsius = Checks.row("fermentation.csv", "cold holding").number("value");
    Formula formula =
        Formula.byPercent(
            "custard dough",
            f -> f.line("bread flour", percent(100)).line("whole milk", percent(60)));
    assertThat(KitchenCautions.of(formula).toString())
        .contains("Hold them at " + (int) celsius + " °C (41 °F) or below");
  }

  @Test
  void milkAndPlantDrinkInTheWarmForLongAreToldWithTheSectionsOfTheCode() {
    double hours = Checks.row("fermentation.csv", "time as control").number("value");
    for (String liquid : new String[] {"whole milk", "unsweetened soy drink"}) {
      Advice late = KitchenCautions.warmHold(with(liquid), hours(hours + 1)).get(0);
      assertThat(late.severity()).isEqualTo(Severity.SAFETY);
      assertThat(late.source()).contains("3-501.16(A)", "3-501.19(B)");
      assertThat(late.remedy()).contains("local authority");
      Advice soon = KitchenCautions.warmHold(with(liquid), hours(hours)).get(0);
      assertThat(soon.severity()).isEqualTo(Severity.NOTE);
    }
  }

  @Test
  void waterNeedsNoSuchCaution() {
    assertThat(KitchenCautions.warmHold(with("water"), hours(20))).isEmpty();
  }

  @Test
  void cheeseAndYoghurtAreKeptColdAsMilkIs() {
    Formula filled =
        Formula.byPercent(
            "filled",
            f ->
                f.line("bread flour", percent(100))
                    .line("water", percent(60))
                    .line("cream cheese", percent(20)));
    assertThat(KitchenCautions.of(filled)).extracting(Advice::code).contains("COLD_HOLDING");
    assertThat(KitchenCautions.warmHold(filled, hours(5)))
        .extracting(Advice::code)
        .containsExactly("WARM_HOLD");
  }

  private static double limit(String check) {
    return Checks.row("fermentation.csv", check).number("value");
  }

  @Test
  void whatStartsColdAndIsNeverAboveTheCeilingHasSixHoursAndNothingElseHas() {
    double six = limit("time as control, never above 21 degC");
    double ceiling = limit("ceiling of the 6 hours");
    double cold = limit("cold holding");
    Formula milk = with("whole milk");
    Advice told =
        KitchenCautions.warmHold(milk, hours(six), celsius(cold), celsius(ceiling)).get(0);
    assertThat(told.severity()).isEqualTo(Severity.NOTE);
    assertThat(told.source()).contains("3-501.19(C)");
    assertThat(severity(milk, six + 0.1, cold, ceiling)).isEqualTo(Severity.SAFETY);
    assertThat(severity(milk, six, cold, ceiling + 0.1)).isEqualTo(Severity.SAFETY);
    assertThat(severity(milk, six, cold + 0.1, ceiling)).isEqualTo(Severity.SAFETY);
    assertThat(severity(milk, 3, 24, 26)).isEqualTo(Severity.NOTE);
    assertThat(KitchenCautions.warmHold(with("water"), hours(5), celsius(cold), celsius(ceiling)))
        .isEmpty();
  }

  private static Severity severity(Formula formula, double hours, double start, double warmest) {
    return KitchenCautions.warmHold(formula, hours(hours), celsius(start), celsius(warmest))
        .get(0)
        .severity();
  }

  @Test
  void coolingIsJudgedByTwoStepsFromHotAndByFourHoursFromWarm() {
    double hot = limit("hot holding");
    double cool = limit("ceiling of the 6 hours");
    double cold = limit("cold holding");
    double first = limit("cooling to 21 degC");
    double all = limit("cooling to 5 degC in all");
    double warm = limit("cooling of food made from ambient ingredients");
    assertThat(KitchenCautions.cooling(twoSteps(hot, cool, first, cold, all - first))).isEmpty();
    assertThat(KitchenCautions.cooling(twoSteps(hot, cool, first + 0.1, cold, all - first - 0.5)))
        .extracting(Advice::code)
        .containsExactly("COOLING_SLOW");
    assertThat(KitchenCautions.cooling(twoSteps(hot, cool, first, cold, all - first + 0.1)))
        .hasSize(1);
    TemperatureHistory ambient = TemperatureHistory.ofRamp(celsius(24), celsius(cold), hours(warm));
    assertThat(KitchenCautions.cooling(ambient)).isEmpty();
    assertThat(
            KitchenCautions.cooling(
                TemperatureHistory.ofRamp(celsius(24), celsius(cold), hours(warm + 0.1))))
        .hasSize(1);
    Advice never = KitchenCautions.cooling(TemperatureHistory.ofHold(celsius(30), hours(1))).get(0);
    assertThat(never.text()).contains("not at 5 °C");
    assertThat(never.source()).contains("3-501.14");
    // what is cold already has nothing to cool; what warms up again is not cold
    assertThat(KitchenCautions.cooling(TemperatureHistory.ofHold(celsius(4), hours(9)))).isEmpty();
    assertThat(KitchenCautions.cooling(ambient.thenRamp(celsius(10), hours(1)))).hasSize(1);
  }

  private static TemperatureHistory twoSteps(
      double hot, double cool, double first, double cold, double second) {
    return TemperatureHistory.ofRamp(celsius(hot), celsius(cool), hours(first))
        .thenRamp(celsius(cold), hours(second));
  }

  @Test
  void dryYeastIsKeptOutOfColdWaterAndFreshYeastIsNot() {
    Formula instant = yeasted("instant yeast");
    assertThat(KitchenCautions.coldWater(instant, celsius(19.9)))
        .extracting(Advice::code)
        .containsExactly("DRY_YEAST_COLD_WATER");
    assertThat(KitchenCautions.coldWater(instant, celsius(20))).isEmpty();
    assertThat(KitchenCautions.coldWater(yeasted("fresh yeast"), celsius(2))).isEmpty();
    assertThat(KitchenCautions.trim().remedy()).contains("same formula on the same day");
    assertThat(KitchenCautions.kettle().severity()).isEqualTo(Severity.SAFETY);
  }

  private static Formula yeasted(String yeast) {
    return Formula.byPercent(
        "dough",
        f ->
            f.line("bread flour", percent(100)).line("water", percent(60)).line(yeast, percent(1)));
  }

  @ParameterizedTest
  @ValueSource(strings = {"dip in lye", "Lye bath", "boil in lye-water", "dip in caustic soda"})
  void aDipInLyeHasACautionOfItsOwnForSkinEyesAndMetal(String step) {
    Advice lye = KitchenCautions.lye(step).get(0);
    assertThat(lye.code()).isEqualTo("LYE");
    assertThat(lye.severity()).isEqualTo(Severity.SAFETY);
    assertThat(lye.text()).contains("skin", "eyes");
    assertThat(lye.remedy())
        .contains("goggles", "gloves", "lye into cold water, never water onto lye", "aluminium")
        .contains("rinse", "bake");
  }

  @Test
  void whatNamesNoLyeHasNoSuchCaution() {
    assertThat(KitchenCautions.lye("dip in butter, Reilye's way")).isEmpty();
    assertThat(KitchenCautions.lye("boil with baking soda")).isEmpty();
    assertThat(KitchenCautions.of(with("water"))).extracting(Advice::code).doesNotContain("LYE");
    // a kettle of plain water needs no word of lye
    assertThat(KitchenCautions.kettle().toString()).doesNotContainIgnoringCase("lye");
  }
}
