package org.tourage.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.HOUR;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.formula.StageKind;
import org.tourage.ingredient.Catalogue;
import org.tourage.oven.OvenProfile;

/** What a baker found missing in the sheets. Recipes are invented. */
class OpenFindingsTest {
  private static final OvenProfile OVEN = OvenProfile.of(celsius(200), minutes(25));

  private static BakeDay day(Product product) {
    return BakeDay.of(DayPlan.of(Kitchen.USUAL, Order.pieces(product, 12, grams(90))));
  }

  private static Product tarts(StageKind custard) {
    Batch batch =
        Formula.byWeight(
            "Tarts",
            f ->
                f.line("bread flour", grams(500))
                    .line("water", grams(290))
                    .line("instant yeast", grams(5))
                    .stage(
                        custard,
                        "Custard",
                        s -> s.line("whole milk", grams(300)).line("egg yolk", grams(60))));
    return Product.of(
        batch,
        Procedure.of(
            Step.mix(minutes(12), celsius(24)),
            Step.shape(Form.disc(centimetres(9)), minutes(10)),
            Step.proof(minutes(45)),
            Step.of(Action.Simple.GLAZE, minutes(8)).called("fill with the custard"),
            Step.bake(OVEN)));
  }

  @Test
  void aCustardThatIsFilledAfterTheProofIsInTheBakeOrTheDaySaysThatItIsNot() {
    BakeDay filled = day(tarts(StageKind.FILLING));
    BakeDay finished = day(tarts(StageKind.FINISH));
    assertThat(filled.fillingWeight().in(GRAM)).isCloseTo(90 * 360 / 1155.0, within(0.1));
    double water = filled.bake().get().bake().piece().dough().water();
    assertThat(water).isGreaterThan(finished.bake().get().bake().piece().dough().water());
    assertThat(filled.advice()).extracting(Advice::code).doesNotContain("FINISH_HEAVY");
    assertThat(finished.advice()).extracting(Advice::code).contains("FINISH_HEAVY");
  }

  private static Batch milkSoaker() {
    return Formula.byWeight(
        "Oat rolls",
        f ->
            f.stage(
                    StageKind.SOAKER,
                    "Oats",
                    s -> s.line("rolled oats", grams(100)).line("whole milk", grams(200)))
                .stage(
                    StageKind.PREFERMENT,
                    "Poolish",
                    s ->
                        s.line("bread flour", grams(150))
                            .line("water", grams(150))
                            .line("instant yeast", grams(0.2)))
                .line("bread flour", grams(350))
                .line("water", grams(60))
                .line("instant yeast", grams(4))
                .line("salt", grams(10)));
  }

  private static Product oats(Place soaking) {
    return Product.of(
        milkSoaker(),
        Procedure.of(
            Step.ripen("Poolish", hours(10)).in(Place.ROOM),
            Step.ripen("Oats", hours(6)).in(soaking),
            Step.mix(minutes(12), celsius(24)),
            Step.bulkRise(minutes(60)),
            Step.proof(minutes(50)),
            Step.bake(OVEN),
            Step.cool(minutes(30))));
  }

  @Test
  void theHoursOfAMilkSoakerCountInTheWarmHold() {
    BakeDay warm = day(oats(Place.ROOM));
    assertThat(warm.cautions())
        .filteredOn(a -> a.code().equals("WARM_HOLD"))
        .singleElement()
        // 6 h soaking, 1 h 50 min of rise; the poolish has no milk in it
        .satisfies(a -> assertThat(a.text()).contains("7 h 50 min"));
    BakeDay cold = day(oats(Place.REFRIGERATOR));
    assertThat(cold.cautions()).extracting(Advice::code).contains("WARM_HOLD");
    double dough = cold.rise().get().above(celsius(5)).in(HOUR);
    assertThat(dough).isCloseTo(110 / 60.0, within(1e-6));
  }

  @Test
  void aDoughThatNobodyTempersGetsTheTemperatureOfItsParts() {
    Formula puff =
        Formula.byPercent(
            "Short puff",
            f ->
                f.line("pastry flour", percent(100))
                    .line("butter", percent(60))
                    .line("water", percent(42))
                    .line("salt", percent(2)));
    Procedure steps = Procedure.of(Step.mix(minutes(5)), Step.rest(minutes(30)));
    Kitchen cool =
        Kitchen.named("cool")
            .withRoom(celsius(22))
            .withTap(celsius(5))
            .withMixer(
                new Mixer(
                    "hands",
                    Warming.rise(org.tourage.quantity.TemperatureDifference.ofCelsiusDegrees(1))));
    Product product =
        Product.of(puff, steps)
            .with(Catalogue.builtIn().require("butter"), Place.REFRIGERATOR)
            .with(Catalogue.builtIn().require("pastry flour"), Place.REFRIGERATOR);
    double cold = start(cool, product);
    double warm = start(cool.withTap(celsius(22)), Product.of(puff, steps));
    assertThat(cold).isBetween(4.0, 10.0);
    // all at 22 °C: only the mixer, and wetting where the rise does not count it already
    assertThat(warm).isBetween(22.5, 26.0);
  }

  private static double start(Kitchen kitchen, Product product) {
    return BakeDay.of(DayPlan.of(kitchen, Order.asGiven(product))).rise().get().start().in(CELSIUS);
  }

  @Test
  void whatRipensForTheSameMixStandsSideBySide() {
    BakeDay day = day(oats(Place.ROOM));
    Timetable.Entry poolish = entry(day, "ripen Poolish");
    Timetable.Entry oats = entry(day, "ripen Oats");
    Timetable.Entry mix = entry(day, "mix");
    assertThat(poolish.end()).isEqualTo(mix.start());
    assertThat(oats.end()).isEqualTo(mix.start());
    assertThat(day.timetable().start()).isEqualTo(poolish.start());
    assertThat(poolish.beside()).isFalse();
    assertThat(oats.beside()).isTrue();
    assertThat(day.timetable().end())
        .isEqualTo(
            poolish
                .start()
                .plusMinutes(600 + 12 + 110 + Math.round(day.bake().get().time().in(MINUTE)) + 30));
    // the clock of the rise starts at the end of the mix
    assertThat(day.reaches(1.05)).hasValueSatisfying(t -> assertThat(t).isGreaterThan(mix.end()));
  }

  @Test
  void aChainOfBuildsStillFollowsOneAnother() {
    Batch batch =
        Formula.byWeight(
            "Two builds",
            f ->
                f.stage(
                        org.tourage.formula.StageDraft.<javax.measure.quantity.Mass>of(
                                StageKind.PREFERMENT, "First")
                            .with(Catalogue.builtIn().require("bread flour"), grams(50))
                            .with(Catalogue.builtIn().require("water"), grams(50)))
                    .stage(
                        org.tourage.formula.StageDraft.<javax.measure.quantity.Mass>of(
                                StageKind.PREFERMENT, "Second")
                            .taking("First")
                            .with(Catalogue.builtIn().require("bread flour"), grams(100))
                            .with(Catalogue.builtIn().require("water"), grams(80)))
                    .stage(
                        StageKind.SOAKER,
                        "Seeds",
                        s -> s.line("sunflower seeds", grams(50)).line("water", grams(50)))
                    .line("bread flour", grams(350))
                    .line("water", grams(200))
                    .line("salt", grams(10)));
    Procedure steps =
        Procedure.of(
            Step.ripen("First", hours(8)),
            Step.ripen("Seeds", hours(4)),
            Step.ripen("Second", hours(3)),
            Step.mix(minutes(12)),
            Step.proof(hours(3)));
    Timetable table =
        BakeDay.of(
                DayPlan.of(
                    Kitchen.USUAL,
                    Order.asGiven(Product.of(batch, steps).seen(2, hours(4), celsius(25)))))
            .timetable();
    List<String> names = table.entries().stream().map(e -> e.task().name()).toList();
    assertThat(names).containsExactly("ripen First", "ripen Seeds", "ripen Second", "mix", "proof");
    assertThat(table.entries().get(2).start()).isEqualTo(table.entries().get(0).end());
    assertThat(table.entries().get(1).end()).isEqualTo(table.entries().get(3).start());
  }

  private static Timetable.Entry entry(BakeDay day, String name) {
    return day.timetable().entries().stream()
        .filter(e -> e.task().name().equals(name))
        .findFirst()
        .orElseThrow();
  }
}
