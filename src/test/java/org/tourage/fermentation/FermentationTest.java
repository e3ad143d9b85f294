package org.tourage.fermentation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.HOUR;
import static org.tourage.quantity.BakeryUnits.MINUTE;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.formula.Formula;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.YeastForm;
import org.tourage.physics.Constituents;
import org.tourage.physics.IapwsIf97Saturation;
import org.tourage.physics.Solid;
import org.tourage.physics.SolidConduction.LocalProcess;
import org.tourage.physics.TemperatureHistory;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.AmountRange;
import org.tourage.reference.Checks;

class FermentationTest {
  private static final Constituents DOUGH = new Constituents(0.40, 0.07, 0.05, 0.44, 0.02, 0.02);
  private static final RateModel GAS = Rosso1993.named("baker's yeast, gas in dough");
  private static final DoughGas BUBBLES = DoughGas.of(DOUGH, celsius(24));
  private static final Rise RISE = Rise.observed(BUBBLES, GAS, 2, minutes(95), celsius(23));

  private static double figure(String check) {
    return Checks.row("fermentation.csv", check).number("value");
  }

  @ParameterizedTest
  @CsvSource({
    "1,34,45,4",
    "1,34,45,20",
    "1,34,45,28",
    "2.5,32.3,45.4,5",
    "2.5,32.3,45.4,15",
    "2.5,32.3,45.4,25",
    "2.5,32.3,45.4,38"
  })
  void theCardinalModelGivesTheValuesOfItsEquation(
      double minimum, double optimum, double maximum, double celsius) {
    Rosso1993 model =
        Rosso1993.of("x", celsius(minimum), celsius(optimum), celsius(maximum), "test");
    String name =
        "rate "
            + number(minimum)
            + "-"
            + number(optimum)
            + "-"
            + number(maximum)
            + " at "
            + number(celsius)
            + " degC";
    assertThat(model.rate(celsius(celsius))).isCloseTo(figure(name), within(5e-7));
  }

  private static String number(double value) {
    return value == Math.rint(value) ? String.valueOf((int) value) : String.valueOf(value);
  }

  @Test
  void theTableHoldsThePublishedCardinalTemperatures() {
    Rosso1993 yeast = Rosso1993.named("Baker's yeast, growth");
    assertThat(yeast.optimum().in(CELSIUS))
        .isEqualTo(figure("optimum of Saccharomyces cerevisiae"));
    assertThat(yeast.maximum().in(CELSIUS))
        .isEqualTo(figure("maximum of Saccharomyces cerevisiae"));
    assertThat(yeast)
        .hasToString(
            "baker's yeast, growth: from 2.5 °C (37 °F), best at 32.3 °C (90 °F), to 45.4 °C (114 °F)");
    assertThat(Rosso1993.all()).hasSize(4).allSatisfy(m -> assertThat(m.source()).isNotBlank());
    assertThatThrownBy(() -> Rosso1993.named("mould"))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("baker's yeast, growth");
  }

  @Test
  void sourdoughBacteriaHaveHalfAndQuarterRateWhereThePaperSaysAndTheModelIsHighAboveTheBest() {
    Rosso1993 bacteria = Rosso1993.named("sourdough lactobacilli, growth");
    assertThat(bacteria.rate(figure("lactobacilli half rate"))).isCloseTo(0.5, within(0.02));
    assertThat(bacteria.rate(figure("lactobacilli quarter rate"))).isCloseTo(0.25, within(0.01));
    // known to be far off above the optimum, so the trusted range ends there
    double warm = figure("lactobacilli half rate above the optimum");
    assertThat(bacteria.rate(warm)).isGreaterThan(0.7);
    assertThat(bacteria.range().contains(celsius(warm))).isFalse();
  }

  @Test
  void nineKelvinAboutHalveTheTimeAsTheTradeSays() {
    double ratio = GAS.rate(celsius(27)) / GAS.rate(celsius(18));
    assertThat(ratio).isBetween(figure("time ratio of 9 K low"), figure("time ratio of 9 K high"));
  }

  @Test
  void aModelWithoutSummitIsRefused() {
    assertThatThrownBy(() -> Rosso1993.of("x", celsius(0), celsius(20), celsius(45), "test"))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("nearer to the maximum");
    assertThatThrownBy(() -> Rosso1993.of("x", celsius(40), celsius(30), celsius(45), "test"))
        .isInstanceOf(BakeryException.class);
  }

  @Test
  void tenKelvinMultiplyTheRateByTheFactor() {
    Q10Rule rule = Q10Rule.of(2.5, celsius(20));
    assertThat(rule.rate(celsius(20))).isEqualTo(1);
    assertThat(rule.rate(celsius(30))).isCloseTo(2.5, within(1e-12));
    assertThat(rule).hasToString("rate times 2.5 for each 10 K");
    assertThat(rule.corners()).isEmpty();
    assertThat(rule.source()).isEqualTo(Advice.COMMON_PRACTICE);
    assertThat(Q10Rule.observed(celsius(20), celsius(28), 1.8).factor())
        .isCloseTo(Math.pow(1.8, 1.25), within(1e-12));
    assertThatThrownBy(() -> Q10Rule.of(1, celsius(20))).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> Q10Rule.observed(celsius(28), celsius(20), 1.8))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("lower temperature first");
  }

  @Test
  void aColdTailJoinsTheModelAndGoesOnBelowItsEnd() {
    ColdTail tail = ColdTail.below(GAS, celsius(8), 3);
    assertThat(tail.rate(20)).isEqualTo(GAS.rate(20));
    assertThat(tail.rate(8)).isEqualTo(GAS.rate(8));
    assertThat(tail.rate(-2)).isCloseTo(GAS.rate(8) / 3, within(1e-12));
    assertThat(tail.corners()).containsExactly(8.0, 50.0);
    assertThat(tail.range()).isEqualTo(new AmountRange<>(celsius(8), celsius(36)));
    assertThat(tail).hasToString("baker's yeast, gas in dough, below 8 °C by 3 for each 10 K");
    assertThat(tail.source()).contains("modelling choice");
    assertThatThrownBy(() -> ColdTail.below(GAS, celsius(0), 3))
        .isInstanceOf(BakeryException.class);
  }

  @Test
  void equivalentTimeShowsItsWorkingAndSaysWhereItIsUnsure() {
    EquivalentTime time =
        EquivalentTime.of(
            GAS,
            TemperatureHistory.ofHold(celsius(23), hours(1)).thenHold(celsius(8), hours(5)),
            celsius(23));
    double expected = 60 + 300 * GAS.rate(8) / GAS.rate(23);
    assertThat(time.time().in(MINUTE)).isCloseTo(expected, within(1e-9));
    assertThat(time).hasToString("as 1 h 40 min at 23 °C (73 °F)");
    assertThat(time.working().toString()).contains("8 °C (46 °F) for 5 h", "40 min");
    assertThat(time.advice()).isEmpty();
    EquivalentTime warm =
        EquivalentTime.of(GAS, TemperatureHistory.ofHold(celsius(42), hours(1)), celsius(23));
    assertThat(warm.advice()).extracting(Advice::code).containsExactly("WARM_UNSURE");
    EquivalentTime cold =
        EquivalentTime.of(
            ColdTail.below(GAS, celsius(8), 3),
            TemperatureHistory.ofHold(celsius(4), hours(10)),
            celsius(23));
    assertThat(cold.advice()).extracting(Advice::code).containsExactly("COLD_SHARE");
    assertThatThrownBy(
            () ->
                EquivalentTime.of(GAS, TemperatureHistory.ofHold(celsius(4), hours(1)), celsius(0)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("0 °C (32 °F)");
  }

  private static double steam(double celsius) {
    return IapwsIf97Saturation.pressure(celsius(celsius));
  }

  @Test
  void theGasOfAGramOfHexoseIsTheVolumeOfAnIdealGas() {
    double moles = 2 / 180.156;
    double millilitres = 1e6 * moles * 8.314462618 * 300.15 / 101_325;
    assertThat(millilitres)
        .isCloseTo(
            figure("carbon dioxide of a gram of hexose at 27 degC and 101325 Pa"), within(0.01));
    // in a dough without water to speak of, the bubbles grow by just that
    DoughGas dry =
        new DoughGas(1e-9, kilogramsPerCubicMetre(1250), 0.08, celsius(27), 101_325 + steam(27));
    double litres = (dry.growth(moles, celsius(27)) - 1) * 0.8 / 0.92;
    assertThat(1000 * litres).isCloseTo(millilitres, within(0.01));
  }

  @Test
  void aDoughWithoutYeastKeepsItsVolumeAndACoolingOneShrinks() {
    assertThat(BUBBLES.growth(0, celsius(24))).isCloseTo(1, within(1e-12));
    assertThat(BUBBLES.growth(0, celsius(4))).isLessThan(1);
    double doubled = BUBBLES.carbonDioxide(2, celsius(24));
    assertThat(BUBBLES.growth(doubled, celsius(4))).isBetween(1.4, 1.9);
    double kept = BUBBLES.afterKnockingBack(doubled, celsius(24));
    assertThat(kept).isBetween(0.1 * doubled, 0.5 * doubled);
    assertThat(BUBBLES).hasToString("dough with 40 % water and 8 % air, mixed at 24 °C (75 °F)");
    assertThat(BUBBLES.withAir(fraction(0.05)).air()).isEqualTo(0.05);
  }

  @Test
  void highUpTheSameGasRaisesTheDoughFurther() {
    double moles = BUBBLES.carbonDioxide(2, celsius(24));
    DoughGas high = DoughGas.of(DOUGH, celsius(24)).atAltitude(metres(1609));
    assertThat(high.growth(moles, celsius(24))).isGreaterThan(2.2);
  }

  @Test
  void whatIsNoDoughIsRefused() {
    assertThatThrownBy(() -> BUBBLES.carbonDioxide(1, celsius(24)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("2 for doubled");
    assertThatThrownBy(() -> BUBBLES.growth(-1, celsius(24))).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> BUBBLES.growth(0.01, celsius(70)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("70 °C");
    assertThatThrownBy(() -> BUBBLES.withAir(fraction(0))).isInstanceOf(BakeryException.class);
    assertThatThrownBy(
            () -> new DoughGas(0.4, kilogramsPerCubicMetre(1200), 0.08, celsius(24), 1000))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("1000.0 Pa");
  }

  @Test
  void whatWasSeenComesBack() {
    assertThat(RISE.timeTo(2, celsius(23)).in(MINUTE)).isCloseTo(95, within(1e-9));
    assertThat(RISE.growthAfter(TemperatureHistory.ofHold(celsius(23), minutes(95))))
        .isCloseTo(2, within(1e-9));
    assertThat(RISE).hasToString("2 times the volume in 1 h 35 min at 23 °C (73 °F)");
    assertThat(RISE.advice()).isEmpty();
    assertThat(RISE.working().toString()).contains("CO₂", "mmol/(kg·h)");
    assertThat(
            RISE.timeTo(2, TemperatureHistory.ofHold(celsius(23), hours(3)))
                .orElseThrow()
                .in(MINUTE))
        .isCloseTo(95, within(1e-6));
    assertThat(RISE.timeTo(2, TemperatureHistory.ofHold(celsius(4), hours(3)))).isEmpty();
  }

  @Test
  void itsGasIsAsMuchAsDoughGives() {
    // a doubling is about 0.8 litres of gas for a kilogram, and as much again dissolved in part
    assertThat(1000 * BUBBLES.carbonDioxide(2, celsius(23))).isBetween(35.0, 60.0);
  }

  @Test
  void yeastForAWantedTimeIsTheInverseOfTheTime() {
    Rise quick = RISE.yeastFor(2, minutes(60), celsius(26));
    assertThat(quick.timeTo(2, celsius(26)).in(MINUTE)).isCloseTo(60, within(1e-9));
    assertThat(quick.yeast()).isGreaterThan(1);
    assertThat(quick.toString()).contains("with 1.", "times the yeast of the dough seen");
    Rise overnight = RISE.yeastFor(2, hours(12), celsius(21));
    assertThat(overnight.yeast()).isLessThan(0.5);
    assertThat(overnight.advice()).extracting(Advice::code).containsExactly("YEAST_FAR");
    assertThatThrownBy(() -> RISE.yeastFor(2, minutes(0), celsius(26)))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> RISE.withYeast(0)).isInstanceOf(BakeryException.class);
  }

  @Test
  void aFirstGuessSaysThatItIsOne() {
    Rise guess = Rise.firstGuess(BUBBLES, GAS, percent(4));
    assertThat(guess.timeTo(2, celsius(26)).in(MINUTE)).isCloseTo(45, within(1e-9));
    assertThat(guess.advice()).extracting(Advice::code).containsExactly("FIRST_GUESS");
    assertThat(guess.toString()).endsWith("(first guess)");
  }

  @Test
  void riseAdviceNamesWhatIsUnsure() {
    assertThat(Rise.observed(BUBBLES, GAS, 3.5, hours(3), celsius(24)).advice())
        .extracting(Advice::code)
        .containsExactly("GAS_ESCAPES");
    assertThat(Rise.observed(BUBBLES, GAS, 2, hours(1), celsius(40)).advice())
        .extracting(Advice::code)
        .containsExactly("OUTSIDE_MODEL");
    assertThatThrownBy(() -> Rise.observed(BUBBLES, GAS, 2, hours(1), celsius(0)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("nothing ferments");
    assertThatThrownBy(() -> Rise.observed(BUBBLES, GAS, 2, hours(0), celsius(20)))
        .isInstanceOf(BakeryException.class);
  }

  @Test
  void yeastFormsStandForOneAnotherAsTheTextbookSays() {
    assertThat(YeastForm.ACTIVE_DRY.insteadOf(grams(100), YeastForm.FRESH).in(GRAM))
        .isCloseTo(100 * figure("fresh yeast as active dry"), within(1e-9));
    assertThat(YeastForm.INSTANT.insteadOf(grams(100), YeastForm.FRESH).in(GRAM))
        .isCloseTo(100 * figure("fresh yeast as instant"), within(1e-9));
    // the dry matter alone would give a little less
    assertThat(YeastForm.ACTIVE_DRY.perFresh())
        .isGreaterThan(figure("fresh yeast as active dry by dry matter"));
    Catalogue catalogue = Catalogue.builtIn();
    assertThat(YeastForm.of(catalogue.require("active dry yeast"))).contains(YeastForm.ACTIVE_DRY);
    assertThat(YeastForm.of(catalogue.require("instant yeast"))).contains(YeastForm.INSTANT);
    assertThat(YeastForm.of(catalogue.require("fresh yeast"))).contains(YeastForm.FRESH);
    assertThat(YeastForm.of(catalogue.require("salt"))).isEmpty();
    for (YeastForm form : YeastForm.values()) {
      assertThat(form.foamTest()).contains("foams");
      assertThat(form.label()).contains("yeast");
      assertThat(form.water().high().in(CELSIUS)).isBetween(38.0, 43.0);
    }
  }

  @Test
  void theHeatOfFermentationIsTheSumOfTheEnthalpies() {
    assertThat(2 * RiseHistory.HEAT_OF_FERMENTATION / 1000)
        .isCloseTo(figure("heat of fermentation for a mole of glucose"), within(0.05));
    double kilojoules = 2 * -288.30 + 2 * -393.50 + 1262.19;
    assertThat(-kilojoules)
        .isCloseTo(figure("heat of fermentation for a mole of glucose"), within(0.05));
  }

  private static DoughBody tub() {
    return DoughBody.of(Solid.tub(centimetres(20), centimetres(12)), DOUGH).covered(Cover.TUB);
  }

  @Test
  void anOvernightRetardFermentsMostWhileItCools() {
    RiseHistory night =
        RiseHistory.start(RISE, celsius(25)).then("retard", tub(), celsius(4), hours(14));
    RiseHistory.Stage stage = night.stages().get(0);
    double quarter = stage.looks().get(6).growth();
    assertThat(quarter - 1).isGreaterThan(0.5 * (night.end().growth() - 1));
    assertThat(night.end().core().in(CELSIUS)).isBetween(4.0, 8.0);
    assertThat(stage.looks().get(0).core()).isEqualTo(celsius(25));
    assertThat(night.working().toString()).contains("tub 200 mm across", "in a plastic tub");
    assertThat(night.table(AmountFormat.metric())).contains("retard", "core", "×");
    assertThat(night.advice()).extracting(Advice::code).contains("OVERPROOFED");
    assertThat(night.above(celsius(5)).in(HOUR)).isBetween(8.0, 14.0);
    assertThat(night.above(celsius(-10))).isEqualTo(hours(14));
    assertThat(night.above(celsius(30))).isEqualTo(hours(0));
  }

  @Test
  void theSmallerAndTheBetterChilledPieceRisesLess() {
    DoughBody slab = DoughBody.of(Solid.slab(millimetres(25)), DOUGH);
    double still = overnight(slab);
    double moved = overnight(slab.inMovedAir());
    double tub = overnight(tub());
    assertThat(moved).isLessThan(still);
    assertThat(still).isLessThan(tub);
    assertThat(overnight(slab.covered(Cover.AIR_GAP))).isGreaterThan(still);
  }

  private static double overnight(DoughBody body) {
    return RiseHistory.start(RISE, celsius(25))
        .then("retard", body, celsius(4), hours(12))
        .end()
        .growth();
  }

  @Test
  void shapingKnocksTheBubblesBackAndStandingOnDoesNot() {
    DoughBody ball = DoughBody.of(Solid.ball(centimetres(8)), DOUGH);
    RiseHistory before =
        RiseHistory.start(RISE, celsius(24)).then("rest", ball, celsius(24), minutes(80));
    RiseHistory standing = before.then("rest on", ball, celsius(24), minutes(1));
    RiseHistory shaped =
        before.then("shape", ball.shaped(Solid.roll(millimetres(40))), celsius(24), minutes(1));
    assertThat(before.end().growth()).isGreaterThan(1.7);
    assertThat(standing.end().growth()).isGreaterThan(before.end().growth());
    assertThat(shaped.end().growth()).isBetween(1.0, 1.2);
    assertThat(shaped.end().carbonDioxide()).isLessThan(before.end().carbonDioxide());
    assertThat(shaped.stages().get(1).knockedBack()).isTrue();
    assertThat(standing.stages().get(1).knockedBack()).isFalse();
    // dissolved gas stays, so the second rise is quicker than the first
    Amount<?> first = before.reached(1.5).orElseThrow();
    RiseHistory second =
        before.then("proof", ball.shaped(Solid.roll(millimetres(40))), celsius(24), minutes(80));
    double again = second.reached(1.5).orElseThrow().in(MINUTE) - 80;
    assertThat(again).isLessThan(first.getValue().doubleValue());
    assertThat(before.reached(5)).isEmpty();
  }

  @Test
  void aBodyInAirOfItsOwnTemperatureRisesAsCalibrated() {
    DoughBody thin = DoughBody.of(Solid.slab(millimetres(4)), DOUGH).inAir(200);
    RiseHistory rest =
        RiseHistory.start(RISE, celsius(23)).then("rest", thin, celsius(23), minutes(95));
    assertThat(rest.end().growth()).isCloseTo(2, within(0.01));
    assertThat(rest.stages().get(0).equivalent().in(MINUTE)).isCloseTo(95, within(0.5));
    assertThat(rest.reached(2).orElse(minutes(95)).in(MINUTE)).isCloseTo(95, within(1.0));
  }

  @Test
  void theHeatOfFermentationWarmsAThickDoughBySomeTenths() {
    DoughBody box =
        DoughBody.of(Solid.box(centimetres(40), centimetres(30), centimetres(15)), DOUGH);
    RiseHistory rest =
        RiseHistory.start(RISE, celsius(24)).then("rest", box, celsius(24), hours(2));
    assertThat(rest.end().core().in(CELSIUS) - 24).isBetween(0.5, 2.0);
    assertThat(rest.end().core()).isGreaterThan(rest.end().surface());
  }

  @Test
  void historiesWithoutStageOrInAnOvenAreRefusedAndFreezingIsSaid() {
    RiseHistory none = RiseHistory.start(RISE, celsius(24));
    assertThatThrownBy(none::end).isInstanceOf(BakeryException.class).hasMessageContaining("then");
    assertThatThrownBy(() -> none.then("bake", tub(), celsius(200), minutes(20)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("bake at 200 °C");
    RiseHistory frozen =
        none.then(
            "freezer", DoughBody.of(Solid.slab(millimetres(10)), DOUGH), celsius(-18), hours(2));
    assertThat(frozen.advice()).extracting(Advice::code).contains("FREEZING");
    RiseHistory cold =
        none.then(
            "fridge", DoughBody.of(Solid.slab(millimetres(10)), DOUGH), celsius(3), hours(48));
    assertThat(cold.advice()).extracting(Advice::code).contains("COLD_UNSURE");
    assertThatThrownBy(() -> DoughBody.of(Solid.slab(millimetres(10)), DOUGH).inAir(0))
        .isInstanceOf(BakeryException.class);
  }

  @Test
  void saltAndSugarAreToldAndSlowTheBacteriaByALineToThePublishedLimit() {
    Formula sweet =
        Formula.byPercent(
            "sweet",
            f ->
                f.line("bread flour", percent(100))
                    .line("water", percent(50))
                    .line("sugar", percent(15))
                    .line("salt", percent(3))
                    .line("instant yeast", percent(1)));
    OsmoticLoad load = OsmoticLoad.of(sweet);
    assertThat(load.advice()).extracting(Advice::code).containsExactly("SUGAR_HIGH", "SALT_SLOWS");
    // 3 of salt in 3 and the water of the flour (about 13 %) and of the dough
    assertThat(load.saltInWater().in(PERCENT)).isBetween(4.0, 5.5);
    // by the flour, 3 % of 4 % (by the water it would be none)
    assertThat(load.lactobacilliFactor()).isCloseTo(0.25, within(0.03));
    Formula lean =
        Formula.byPercent(
            "lean",
            f ->
                f.line("bread flour", percent(100))
                    .line("water", percent(65))
                    .line("sugar", percent(8))
                    .line("salt", percent(1.8)));
    OsmoticLoad little = OsmoticLoad.of(lean);
    assertThat(little.advice()).extracting(Advice::code).containsExactly("SUGAR_SLOWS");
    assertThat(little.lactobacilliFactor()).isCloseTo(0.55, within(0.03));
    assertThat(little.toString()).contains("of the water phase, sugar 7.98 % of flour");
    assertThat(little.working().toString()).contains("modelling choice");
  }

  @Test
  void aProcessOfNothingHasNoRate() {
    assertThat(LocalProcess.NONE.rate(20)).isZero();
    assertThat(List.of(Cover.values())).allSatisfy(c -> assertThat(c.words()).isNotBlank());
  }

  @Test
  void adviceOnTheModelSaysHowMuchOfTheFermentationItConcerns() {
    EquivalentTime mixed =
        EquivalentTime.of(
            GAS,
            TemperatureHistory.ofHold(celsius(40), hours(1)).thenHold(celsius(20), hours(1)),
            celsius(23));
    double share = GAS.rate(40) / (GAS.rate(40) + GAS.rate(20));
    assertThat(mixed.advice().get(0).text())
        .startsWith(Math.round(100 * share) + " % of the fermentation happens above 36 °C (97 °F)");
    // a tenth or less is not worth a word
    EquivalentTime little =
        EquivalentTime.of(
            GAS,
            TemperatureHistory.ofHold(celsius(40), minutes(5)).thenHold(celsius(24), hours(4)),
            celsius(23));
    assertThat(little.advice()).isEmpty();
    assertThat(little.working().lines()).hasSize(3);
    assertThat(little.working().toString()).contains("40 °C (104 °F) for 5 min");
  }

  @Test
  void aHistoryOfSeveralStagesKeepsItsTimesAndItsLooks() {
    DoughBody slab = DoughBody.of(Solid.slab(millimetres(20)), DOUGH);
    RiseHistory history =
        RiseHistory.start(RISE, celsius(24))
            .then("rest", slab, celsius(22), minutes(30))
            .then("chill", slab, celsius(4), hours(3))
            .then("proof", slab.shaped(Solid.ball(millimetres(60))), celsius(26), hours(1));
    assertThat(history.end().time().in(MINUTE)).isCloseTo(270, within(1e-9));
    assertThat(history.stages())
        .extracting(RiseHistory.Stage::name)
        .containsExactly("rest", "chill", "proof");
    RiseHistory.Stage chill = history.stages().get(1);
    assertThat(chill.looks()).hasSize(25);
    assertThat(chill.looks().get(0).time().in(MINUTE)).isCloseTo(30, within(1e-9));
    // no jump of gas or temperature where the same body stands on
    assertThat(chill.looks().get(0).growth())
        .isCloseTo(history.stages().get(0).end().growth(), within(1e-6));
    assertThat(chill.looks().get(0).mean().in(CELSIUS))
        .isCloseTo(history.stages().get(0).end().mean().in(CELSIUS), within(1e-6));
    assertThat(chill.looks().get(0).air()).isEqualTo(celsius(4));
    // a short stage has one line, a long one four
    assertThat(history.table(org.tourage.quantity.AmountFormat.metric()).lines()).hasSize(7);
    // between the looks the middle was above 20 °C for less than the warm stages lasted
    double warm = history.above(celsius(20)).in(MINUTE);
    assertThat(warm).isBetween(30.0, 95.0);
    assertThat(history.above(celsius(4)).in(MINUTE)).isGreaterThan(warm);
    assertThat(history.reached(1.1).orElseThrow().in(MINUTE)).isBetween(210.0, 270.0);
    assertThat(history.stages().stream().mapToDouble(s -> s.equivalent().in(MINUTE)).sum())
        .isBetween(60.0, 270.0);
  }
}
