package org.tourage.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.doughtemperature.WaterPlan;
import org.tourage.fermentation.RiseHistory;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.formula.StageKind;
import org.tourage.lamination.FatCurve;
import org.tourage.lamination.Fold;
import org.tourage.lamination.LaminationPlan;
import org.tourage.lamination.LockIn;
import org.tourage.makeup.Shape;
import org.tourage.oven.OvenProfile;
import org.tourage.quantity.AmountFormat;
import org.tourage.sheet.BenchSheet;

/** The nine rules of the joints: what the rooms promise one another. Recipes are invented. */
class RulesOfTheJointsTest {
  private static final OvenProfile OVEN = OvenProfile.of(celsius(220), minutes(20));

  private static Formula lean() {
    return Formula.byPercent(
        "Lean rolls",
        f ->
            f.line("bread flour", percent(100))
                .line("water", percent(62))
                .line("salt", percent(2))
                .line("instant yeast", percent(0.8)));
  }

  private static Batch poolishBread() {
    return Formula.byWeight(
        "Poolish bread",
        f ->
            f.stage(
                    StageKind.PREFERMENT,
                    "Poolish",
                    s ->
                        s.line("bread flour", grams(500))
                            .line("water", grams(500))
                            .line("instant yeast", grams(0.5)))
                .line("bread flour", grams(500))
                .line("water", grams(150))
                .line("salt", grams(20)));
  }

  private static BakeDay day(Kitchen kitchen, Order order) {
    return BakeDay.of(DayPlan.of(kitchen, order));
  }

  private static List<String> codes(BakeDay day) {
    return day.advice().stream().map(Advice::code).toList();
  }

  @Test
  void rule1OnlyTheFreeLiquidOfTheStageThatIsMixedNowIsTempered() {
    Procedure procedure =
        Procedure.of(
            Step.ripen("Poolish", hours(14)).at(celsius(17)), Step.mix(minutes(15), celsius(24)));
    BakeDay day = day(Kitchen.USUAL, Order.asGiven(Product.of(poolishBread(), procedure)));
    WaterPlan water = day.water().get();
    assertThat(water.mix().freeLiquid().in(GRAM)).isCloseTo(150, within(0.5));
    assertThat(water.mix().readyStages())
        .singleElement()
        .satisfies(
            ready -> {
              assertThat(ready.name()).isEqualTo("Poolish");
              // after 14 h it has followed its air, and its own heat hardly counts
              assertThat(ready.temperature().in(CELSIUS)).isCloseTo(17.2, within(0.5));
            });
    // flour, room, poolish: three others beside the water and the friction
    assertThat(water.rule().orElseThrow().factors()).hasSize(3);
  }

  @Test
  void rule2WhatWasMeasuredWinsAndTheSameDayGivesTheSameWater() {
    Kitchen kitchen =
        Kitchen.named("measured")
            .withFlour(celsius(20))
            .withRoom(celsius(22))
            .withMixer(
                new Mixer(
                    "spiral", Warming.pastMix(celsius(20), celsius(22), celsius(14), celsius(25))));
    Product product = Product.of(lean(), Procedure.of(Step.mix(minutes(12), celsius(25))));
    WaterPlan water = day(kitchen, Order.asGiven(product)).water().get();
    assertThat(water.water().orElseThrow().in(CELSIUS)).isCloseTo(14, within(1e-6));
  }

  @Test
  void rule3WithoutFreeWaterThereAreLeversInFiguresAndNoRefusal() {
    Formula brioche =
        Formula.byPercent(
            "Egg buns",
            f ->
                f.line("bread flour", percent(100))
                    .line("whole egg", percent(60))
                    .line("butter", percent(50))
                    .line("granulated sugar", percent(12))
                    .line("salt", percent(2))
                    .line("instant yeast", percent(1.5)));
    Product product =
        Product.of(
            brioche, Procedure.of(Step.mix(minutes(20), celsius(23)), Step.retard(hours(12))));
    BakeDay day = day(Kitchen.USUAL, Order.pieces(product, 20, grams(50)));
    WaterPlan water = day.water().get();
    assertThat(water.water()).isEmpty();
    assertThat(water.levers())
        .isNotEmpty()
        .allSatisfy(lever -> assertThat(lever.dough().in(CELSIUS)).isBetween(5.0, 40.0));
    String sheet = BenchSheet.of(day, AmountFormat.metric()).toString();
    assertThat(sheet).contains("lever: ").doesNotContain("to be warmed").doesNotContain("-404");
  }

  @Test
  void rule4TheRiseStartsAtTheEndOfTheMixAndStopsAtTheOven() {
    Procedure procedure =
        Procedure.of(
            Step.mix(minutes(15), celsius(25)),
            Step.bulkRise(minutes(60)),
            Step.divide(minutes(10)),
            Step.proof(minutes(50)).in(Place.PROOFER),
            Step.bake(OVEN).called("into the hearth at last"),
            Step.cool(minutes(40)));
    BakeDay day = day(Kitchen.USUAL, Order.pieces(Product.of(lean(), procedure), 12, grams(80)));
    RiseHistory history = day.rise().get();
    assertThat(history.start().in(CELSIUS)).isCloseTo(25, within(1e-9));
    assertThat(history.stages())
        .extracting(RiseHistory.Stage::name)
        .containsExactly("bulk rise", "divide", "proof");
    assertThat(history.end().time().in(MINUTE)).isCloseTo(120, within(1e-9));
    // no step has a shape: the dough is warm all the way from the mix on
    assertThat(history.above(celsius(5)).in(MINUTE)).isCloseTo(120, within(1e-6));
  }

  @Test
  void rule5PiecesHaveTheSizeThatTheirMassGivesThem() {
    Procedure procedure =
        Procedure.of(
            Step.mix(minutes(15), celsius(25)),
            Step.shape(Form.roll(centimetres(52)), minutes(20)),
            Step.proof(minutes(50)),
            Step.bake(OVEN));
    BakeDay day = day(Kitchen.USUAL, Order.pieces(Product.of(lean(), procedure), 4, grams(330)));
    // 330 g without gas are about 0.27 L, and 0.29 L with the air of the mix
    assertThat(day.rise().get().stages().get(0).body().solid())
        .hasToString("roll 26.7 mm across, 520 mm long");

    Procedure wrong =
        Procedure.of(
            Step.mix(minutes(15), celsius(25)),
            Step.shape(Form.ball(centimetres(12)), minutes(20)),
            Step.proof(minutes(50)),
            Step.bake(OVEN));
    BakeDay refused = day(Kitchen.USUAL, Order.pieces(Product.of(lean(), wrong), 4, grams(60)));
    assertThatThrownBy(() -> refused.rise().get())
        .hasMessageContaining("the diameter of the ball contradicts its mass: 120 mm")
        .hasMessageContaining("make it 46");
  }

  @Test
  void rule6OvenAndTimetableAreOne() {
    Procedure procedure =
        Procedure.of(
            Step.mix(minutes(15), celsius(25)),
            Step.divide(minutes(10)),
            Step.proof(minutes(60)),
            Step.bake(OVEN),
            Step.cool(minutes(30)));
    Kitchen kitchen =
        Kitchen.named("small").withOven(KitchenOven.HOUSEHOLD.withTrays(1, extent("40 x 30 cm")));
    BakeDay day = day(kitchen, Order.pieces(Product.of(lean(), procedure), 30, grams(80)));
    Baking baking = day.bake().get();
    assertThat(baking.loads().stream().mapToInt(Integer::intValue).sum()).isEqualTo(30);
    assertThat(baking.loads()).hasSizeGreaterThan(1);
    List<Timetable.Entry> bakes =
        day.timetable().entries().stream().filter(e -> e.task().name().startsWith("bake")).toList();
    assertThat(bakes).hasSameSizeAs(baking.loads());
    Timetable.Entry heating =
        day.timetable().entries().stream()
            .filter(Timetable.Entry::beside)
            .findFirst()
            .orElseThrow();
    assertThat(heating.end()).isEqualTo(bakes.get(0).start());
    assertThat(heating.task().duration()).isEqualTo(baking.heatingUp().orElseThrow());

    OvenProfile fan = OvenProfile.of(new OvenProfile.Step(celsius(200), minutes(20)).withFan());
    BakeDay withFan =
        day(
            kitchen,
            Order.pieces(
                Product.of(lean(), Procedure.of(Step.mix(minutes(9)), Step.bake(fan))),
                4,
                grams(80)));
    assertThat(BenchSheet.of(withFan, AmountFormat.metric()).toString())
        .contains("200 °C (392 °F) for 20 min, fan")
        .doesNotContain("a fan oven 15 to 25 K");
  }

  @Test
  void rule7TheSheetNamesTheNumbersThatAreFirstNeededFirst() {
    Procedure procedure =
        Procedure.of(Step.mix(minutes(15), celsius(25)), Step.proof(minutes(60)), Step.bake(OVEN));
    BakeDay day =
        day(
            Kitchen.named("cool tap").withTap(celsius(10)),
            Order.pieces(Product.of(lean(), procedure), 12, grams(80))
                .startingAt(DayTime.parse("06:00")));
    String glance = BenchSheet.of(day, AmountFormat.metric()).toString().split("\n2\\. ")[0];
    assertThat(glance)
        .containsSubsequence("pieces", "12", "scaling weight, raw", "80 g", "dough", "960 g")
        .containsPattern("water +\\d+ g water at [\\d.]+ °C")
        .contains("day 1 06:00")
        .contains(day.timetable().end().toString());
  }

  @Test
  void rule8OnePartThatCannotBeWorkedDoesNotTakeTheSheetDown() {
    Formula laminated =
        Formula.byPercent(
            "Forgotten turns",
            f ->
                f.line("bread flour", percent(100))
                    .line("water", percent(52))
                    .line("instant yeast", percent(1))
                    .line("salt", percent(2))
                    .rollIn("butter", percent(50)));
    BakeDay day =
        day(
            Kitchen.USUAL,
            Order.pieces(
                Product.of(laminated, Procedure.of(Step.mix(minutes(15), celsius(24))))
                    .madeUp(MakeUp.sheet(LaminationPlan.Setup.SMALL_BENCH)),
                12,
                grams(70)));
    assertThat(day.lamination().failed()).isTrue();
    assertThat(day.lamination().problem().orElseThrow())
        .hasMessageContaining("no step locks in the fat")
        .hasMessageContaining("add a step that locks it in");
    assertThat(day.water().isThere()).isTrue();
    assertThat(day.batch().dough().in(GRAM)).isCloseTo(840, within(1.0));
    assertThat(BenchSheet.of(day, AmountFormat.metric()).toString())
        .contains(
            "Lamination\n   not worked: the lamination is not worked: no step locks in the fat")
        .contains("Water");
  }

  @Test
  void rule9AdviceIsCheckedAgainstTheDay() {
    Formula laminated =
        Formula.byPercent(
            "Hasty turns",
            f ->
                f.line("bread flour", percent(100))
                    .line("water", percent(54))
                    .line("instant yeast", percent(1.2))
                    .line("salt", percent(2))
                    .rollIn("butter", percent(50)));
    Procedure procedure =
        Procedure.of(
            Step.mix(minutes(15), celsius(26)),
            Step.chill(minutes(15)).as(Form.slab(millimetres(40))),
            Step.enclose(LockIn.HALF, minutes(15)),
            Step.turn(minutes(15), Fold.BOOK),
            Step.sheet(minutes(20)),
            Step.cut(minutes(10)),
            Step.proof(minutes(30)).until(Cue.growth("doubled", 2)),
            Step.bake(OVEN));
    BakeDay day =
        day(
            Kitchen.USUAL,
            Order.pieces(
                Product.of(laminated, procedure)
                    .madeUp(
                        MakeUp.sheet(LaminationPlan.Setup.SMALL_BENCH)
                            .cutInto(Shape.RECTANGLE)
                            .withFat(FatCurve.named("dairy butterfat"))),
                12,
                grams(70)));
    assertThat(codes(day)).contains("FAT_SOFT_AT_ROLLING", "CHILL_SHORT", "CUE_NOT_REACHED");

    Procedure patient =
        Procedure.of(
            Step.mix(minutes(15), celsius(26)),
            Step.bulkRise(hours(4)).lookingFrom(hours(3)).until(Cue.growth("doubled", 2)));
    BakeDay early =
        day(
            Kitchen.USUAL,
            Order.asGiven(Product.of(lean(), patient).seen(2, minutes(70), celsius(26))));
    assertThat(codes(early)).contains("CUE_EARLY").doesNotContain("CUE_NOT_REACHED");
  }

  @Test
  void theWorkingOfADayIsThatOfAllItsPartsInTheirOrder() {
    Procedure procedure =
        Procedure.of(Step.mix(minutes(15), celsius(25)), Step.proof(minutes(60)), Step.bake(OVEN));
    BakeDay day = day(Kitchen.USUAL, Order.pieces(Product.of(lean(), procedure), 12, grams(80)));
    assertThat(day.working().lines())
        .startsWith(day.batch().working().lines().get(0))
        .containsAll(day.water().get().working().lines())
        .containsAll(day.rise().get().working().lines())
        .endsWith(
            day.bake().get().working().lines().get(day.bake().get().working().lines().size() - 1));
  }

  @Test
  void aDipInLyeIsCautionedOnceWhereverItStandsAndAButterDipIsNot() {
    Procedure lye =
        Procedure.of(
            Step.mix(minutes(12), celsius(25)),
            Step.of(Action.Simple.GLAZE, minutes(3)).called("dip in lye"),
            Step.of(Action.Simple.WORK, minutes(3)).called("pour the lye away"));
    Procedure butter =
        Procedure.of(
            Step.mix(minutes(12), celsius(25)),
            Step.of(Action.Simple.GLAZE, minutes(3)).called("dip in butter"));
    assertThat(day(Kitchen.USUAL, Order.asGiven(Product.of(lean(), lye))).cautions())
        .extracting(Advice::code)
        .containsOnlyOnce("LYE");
    assertThat(day(Kitchen.USUAL, Order.asGiven(Product.of(lean(), butter))).cautions())
        .extracting(Advice::code)
        .doesNotContain("LYE");
  }
}
