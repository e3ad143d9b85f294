package org.tourage.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.command.RecipeFile;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.formula.StageKind;
import org.tourage.lamination.Fold;
import org.tourage.lamination.LockIn;
import org.tourage.oven.OvenProfile;

/** In which order steps can follow one another. Recipes are invented. */
class StepOrderTest {
  private static final Step MIX = Step.mix(minutes(15), celsius(24));
  private static final Step PROOF = Step.proof(minutes(50));
  private static final Step BAKE = Step.bake(OvenProfile.of(celsius(220), minutes(18)));
  private static final Step BOIL = Step.boil(seconds(45));
  private static final Step ENCLOSE = Step.enclose(LockIn.HALF, minutes(10));
  private static final Step TURN = Step.turn(minutes(10), Fold.BOOK);
  private static final Step CUT = Step.cut(minutes(10));
  private static final Step COOL = Step.cool(minutes(30));

  static Stream<Arguments> impossible() {
    return Stream.of(
        Arguments.of(List.of(MIX, PROOF, MIX), 3, "the final dough is mixed twice"),
        Arguments.of(List.of(PROOF, MIX, BAKE), 1, "before the dough is mixed"),
        Arguments.of(List.of(BAKE, MIX), 1, "before the dough is mixed"),
        Arguments.of(List.of(Step.bulkRise(hours(1)), MIX), 1, "before the dough is mixed"),
        Arguments.of(List.of(MIX, BAKE, PROOF), 3, "after the bake"),
        Arguments.of(List.of(MIX, BAKE, BOIL), 3, "after the bake"),
        Arguments.of(List.of(MIX, BAKE, BAKE), 3, "it is baked twice"),
        Arguments.of(List.of(MIX, BOIL, PROOF, BAKE), 3, "between the boil and the oven"),
        Arguments.of(
            List.of(MIX, BOIL, Step.retard(hours(8)), BAKE), 3, "between the boil and the oven"),
        Arguments.of(List.of(MIX, BOIL, BOIL, BAKE), 3, "it is boiled twice"),
        Arguments.of(List.of(MIX, TURN), 2, "a turn needs a lock-in before it"),
        Arguments.of(List.of(MIX, ENCLOSE, ENCLOSE), 3, "the fat is locked in twice"),
        Arguments.of(List.of(MIX, ENCLOSE, CUT, TURN), 4, "what is cut is not folded"));
  }

  @ParameterizedTest
  @MethodSource("impossible")
  void anImpossibleOrderIsRefusedWithNumberAndTextOfTheStep(
      List<Step> steps, int number, String problem) {
    assertThatThrownBy(() -> new Procedure(steps))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining(problem)
        .hasMessageContaining("step " + number + " \"" + steps.get(number - 1) + "\"");
  }

  private static Batch onPoolish() {
    return Formula.byWeight(
        "On a poolish",
        f ->
            f.stage(
                    StageKind.PREFERMENT,
                    "Poolish",
                    s ->
                        s.line("bread flour", grams(300))
                            .line("water", grams(300))
                            .line("instant yeast", grams(0.4)))
                .line("bread flour", grams(700))
                .line("water", grams(340))
                .line("instant yeast", grams(4))
                .line("salt", grams(19)));
  }

  @Test
  void aPartMixNamesItsStageAndLeavesTheFinalMixAlone() {
    Procedure procedure =
        Procedure.of(
            Step.mix("Poolish", minutes(5)).mixedTo(celsius(20)),
            Step.ripen("Poolish", hours(12)).at(celsius(18)),
            MIX);
    BakeDay day =
        BakeDay.of(DayPlan.of(Kitchen.USUAL, Order.asGiven(Product.of(onPoolish(), procedure))));
    assertThat(day.water().get().dough().in(CELSIUS)).isCloseTo(24, within(1e-9));
    assertThat(day.timetable().entries().get(0).task().name()).isEqualTo("mix Poolish");
    assertThatThrownBy(() -> Step.mix(" ", minutes(5))).isInstanceOf(BakeryException.class);
  }

  @Test
  void whatGoesIntoTheDoughIsReadyBeforeTheMix() {
    Step late = Step.ripen("Poolish", hours(12));
    assertThatThrownBy(() -> Product.of(onPoolish(), Procedure.of(MIX, late)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("Poolish has gone into")
        .hasMessageContaining("step 2 \"ripen Poolish: 12 h\"");
    Step part = Step.mix("Poolish", minutes(5));
    assertThatThrownBy(() -> Product.of(onPoolish(), Procedure.of(late, part, MIX)))
        .hasMessageContaining("is mixed after it has been mixed or has ripened");
    assertThatThrownBy(
            () -> Product.of(onPoolish(), Procedure.of(Step.mix("Final dough", minutes(9)))))
        .hasMessageContaining("the final dough is no part mix");
  }

  private static Formula lean() {
    return Formula.byPercent(
        "Rings",
        f ->
            f.line("bread flour", percent(100))
                .line("water", percent(55))
                .line("salt", percent(2))
                .line("instant yeast", percent(0.8)));
  }

  private static BakeDay day(Kitchen kitchen, Step... steps) {
    Product product = Product.of(lean(), Procedure.of(steps));
    return BakeDay.of(DayPlan.of(kitchen, Order.pieces(product, 12, grams(100))));
  }

  private static List<String> codes(BakeDay day) {
    return day.advice().stream().map(Advice::code).toList();
  }

  @Test
  void noBathIsHotterThanWaterBoilsAtTheAltitude() {
    Kitchen high = Kitchen.named("high").atAltitude(metres(2400));
    Step hot = Step.boil(celsius(98), seconds(45));
    assertThatThrownBy(() -> day(high, MIX, PROOF, hot, BAKE))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("water boils at 92")
        .hasMessageContaining("step 3 \"boil");
    assertThat(day(Kitchen.USUAL, MIX, PROOF, hot, BAKE).bake().isThere()).isTrue();
    assertThat(day(high, MIX, PROOF, BOIL, BAKE).bake().isThere()).isTrue();
    assertThatThrownBy(() -> Step.boil(celsius(160), seconds(45)))
        .isInstanceOf(BakeryException.class);
  }

  @Test
  void aCoolerBathWarmsTheCoreLaterAndIsAdvisedAgainst() {
    Step cool = Step.boil(celsius(60), minutes(3));
    Step boiling = Step.boil(minutes(3));
    BakeDay cooler = day(Kitchen.USUAL, MIX, PROOF, cool, BAKE);
    BakeDay hotter = day(Kitchen.USUAL, MIX, PROOF, boiling, BAKE);
    assertThat(cooler.bake().get().bake().piece().toString()).contains("in water of 60 °C");
    assertThat(toSixty(cooler)).isGreaterThan(toSixty(hotter) + 0.2);
    assertThat(codes(cooler)).contains("BATH_COOL");
    assertThat(codes(hotter)).doesNotContain("BATH_COOL");
    // what anybody calls 100 °C boils
    BakeDay hundred = day(Kitchen.USUAL, MIX, PROOF, Step.boil(celsius(100), minutes(3)), BAKE);
    assertThat(toSixty(hundred)).isEqualTo(toSixty(hotter));
  }

  private static double toSixty(BakeDay day) {
    return day.bake().get().bake().coreReaches(celsius(60)).orElseThrow().in(MINUTE);
  }

  @Test
  void anUnwiseOrderIsAdvice() {
    assertThat(codes(day(Kitchen.USUAL, PROOF, BAKE))).contains("NO_MIX");
    assertThat(codes(day(Kitchen.USUAL, MIX, COOL, BAKE))).contains("COOL_BEFORE_BAKE");
    assertThat(codes(day(Kitchen.USUAL, MIX, ENCLOSE, TURN))).contains("NO_ROLL_IN");
    assertThat(codes(day(Kitchen.USUAL, MIX, PROOF, BAKE, COOL)))
        .doesNotContain("NO_MIX", "COOL_BEFORE_BAKE", "NO_ROLL_IN", "BATH_COOL");
  }

  @Test
  void aRecipeFileNamesTheLineOfTheStepAndReadsTheBath() {
    String recipe =
        "[dough]\n500 g bread flour\n290 g water\n4 g instant yeast\n[steps]\n%s\n"
            + "mix the dough: 12 min\n%s\nbake: 220 °C 20 min\n";
    assertThatThrownBy(
            () ->
                RecipeFile.parse("rings.txt", recipe.formatted("rest: 5 min", "mix again: 5 min"))
                    .plan())
        .hasMessageContaining("line 8")
        .hasMessageContaining("mixed twice");
    DayPlan plan =
        RecipeFile.parse("rings.txt", recipe.formatted("rest: 5 min", "boil: 45 s at 90 °C"))
            .plan();
    assertThat(plan.order().product().procedure().boil().orElseThrow().action())
        .isEqualTo(new Action.Boil(celsius(90)));
  }
}
