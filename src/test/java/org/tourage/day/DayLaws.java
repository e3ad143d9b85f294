package org.tourage.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.tourage.doughtemperature.WaterPlan;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.formula.StageKind;
import org.tourage.lamination.Fold;
import org.tourage.lamination.LaminationPlan;
import org.tourage.lamination.LockIn;

class DayLaws {
  private static Formula lean(double water) {
    return Formula.byPercent(
        "Lean",
        f ->
            f.line("bread flour", percent(100))
                .line("water", percent(water))
                .line("salt", percent(2))
                .line("instant yeast", percent(0.8)));
  }

  @Property(tries = 200)
  void aMixRepeatedUnderItsOwnConditionsGivesItsOwnWaterBack(
      @ForAll @DoubleRange(min = 5, max = 28) double flour,
      @ForAll @DoubleRange(min = 10, max = 30) double room,
      @ForAll @DoubleRange(min = 2, max = 30) double water,
      @ForAll @DoubleRange(min = 50, max = 80) double hydration,
      @ForAll @DoubleRange(min = 2, max = 10) double rise) {
    Kitchen usual =
        Kitchen.named("law")
            .withFlour(celsius(flour))
            .withRoom(celsius(room))
            .withMixer(new Mixer("law", Warming.rise(celsiusDegrees(rise))));
    // the dough that this water and this mixer give
    double target = target(usual, hydration, water);
    Kitchen measured =
        usual.withMixer(
            new Mixer(
                "law",
                Warming.pastMix(celsius(flour), celsius(room), celsius(water), celsius(target))));
    assertThat(water(measured, hydration, target).water().orElseThrow().in(CELSIUS))
        .isCloseTo(water, within(1e-6));
  }

  private static double target(Kitchen kitchen, double hydration, double water) {
    return water(kitchen, hydration, 25)
        .balance()
        .orElseThrow()
        .doughTemperature(celsius(water))
        .in(CELSIUS);
  }

  private static WaterPlan water(Kitchen kitchen, double hydration, double target) {
    Product product =
        Product.of(lean(hydration), Procedure.of(Step.mix(minutes(12), celsius(target))));
    return BakeDay.of(DayPlan.of(kitchen, Order.asGiven(product))).water().get();
  }

  @Property(tries = 60)
  void movingAShapeFromOneStepToTheNextChangesNoWarmHours(
      @ForAll @IntRange(min = 0, max = 2) int first,
      @ForAll @IntRange(min = 0, max = 2) int second,
      @ForAll @DoubleRange(min = 12, max = 32) double room) {
    assertThat(warm(first, room)).isCloseTo(warm(second, room), within(1e-9));
  }

  private static double warm(int shapeAt, double room) {
    Step[] steps = new Step[4];
    steps[0] = Step.mix(minutes(15), celsius(24));
    for (int i = 0; i < 3; i++) {
      Step rest = Step.rest(minutes(30 + 10 * i));
      steps[i + 1] = i == shapeAt ? rest.as(Form.slab(millimetres(30))) : rest;
    }
    Product product = Product.of(lean(62), Procedure.of(steps));
    return BakeDay.of(
            DayPlan.of(Kitchen.named("law").withRoom(celsius(room)), Order.asGiven(product)))
        .rise()
        .get()
        .above(celsius(5))
        .in(MINUTE);
  }

  @Property(tries = 60)
  void whatIsPromisedIsWhatIsCutOrTheSheetSaysSo(
      @ForAll @IntRange(min = 1, max = 40) int pieces,
      @ForAll @DoubleRange(min = 30, max = 120) double mass,
      @ForAll @DoubleRange(min = 20, max = 50) double width,
      @ForAll @DoubleRange(min = 2.5, max = 6) double thick) {
    Formula formula =
        Formula.byPercent(
            "Laminated",
            f ->
                f.line("bread flour", percent(100))
                    .line("water", percent(54))
                    .line("instant yeast", percent(1.2))
                    .line("salt", percent(2))
                    .rollIn("butter", percent(50)));
    Procedure procedure =
        Procedure.of(
            Step.mix(minutes(15)),
            Step.enclose(LockIn.HALF, minutes(15)),
            Step.turn(minutes(15), Fold.BOOK, Fold.LETTER),
            Step.sheet(minutes(20)),
            Step.cut(minutes(10)));
    LaminationPlan.Setup setup =
        LaminationPlan.Setup.SMALL_BENCH.withFinalSheet(millimetres(thick), centimetres(width));
    BakeDay day =
        BakeDay.of(
            DayPlan.of(
                Kitchen.USUAL,
                Order.pieces(
                    Product.of(formula, procedure).madeUp(MakeUp.sheet(setup)),
                    pieces,
                    grams(mass))));
    boolean said =
        day.cutting().failed()
            || day.advice().stream().anyMatch(a -> a.code().startsWith("SHEET_"))
            || day.advice().stream().anyMatch(a -> a.code().contains("SETTLED"));
    if (!said) {
      assertThat(day.scalingWeight().in(GRAM)).isCloseTo(mass, within(1.0));
      double all = day.scalingWeight().in(GRAM) * pieces + day.trim().in(GRAM);
      assertThat(all).isCloseTo(day.batch().dough().in(GRAM), within(2.0));
    }
  }

  @Property(tries = 40)
  void theSamePlanGivesTheSameDayToTheLastBit(@ForAll @IntRange(min = 1, max = 60) int pieces) {
    Batch batch =
        Formula.byWeight(
            "Poolish",
            f ->
                f.stage(
                        StageKind.PREFERMENT,
                        "Poolish",
                        s -> s.line("bread flour", grams(300)).line("water", grams(300)))
                    .line("bread flour", grams(700))
                    .line("water", grams(350))
                    .line("instant yeast", grams(6))
                    .line("salt", grams(20)));
    Procedure procedure =
        Procedure.of(Step.mix(minutes(15), celsius(25)), Step.bulkRise(minutes(80)));
    Order order = Order.parted(Product.of(batch, procedure), pieces);
    BakeDay one = BakeDay.of(DayPlan.of(Kitchen.USUAL, order));
    BakeDay two = BakeDay.of(DayPlan.of(Kitchen.USUAL, order));
    assertThat(two.rise().get().end().growth()).isEqualTo(one.rise().get().end().growth());
    assertThat(two.water().get().water()).isEqualTo(one.water().get().water());
    assertThat(two.scalingWeight().value()).isEqualTo(one.scalingWeight().value());
  }
}
