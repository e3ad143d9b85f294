package org.tourage.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.tourage.quantity.Amounts.*;

import java.util.List;
import javax.measure.Quantity;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.tourage.advice.BakeryException;
import org.tourage.command.Main;
import org.tourage.command.RecipeFile;
import org.tourage.formula.Formula;
import org.tourage.formula.Levain;
import org.tourage.formula.PieceOrder;
import org.tourage.formula.StageDraft;
import org.tourage.formula.StageKind;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Ingredient;
import org.tourage.oven.OvenProfile;
import org.tourage.quantity.AmountFormat;
import org.tourage.sheet.BenchSheet;

/** Doors of the day that took nonsense without a word. */
class DoorsTest {
  private static final Ingredient FLOUR = Catalogue.builtIn().require("bread flour");
  private static final Ingredient WATER = Catalogue.builtIn().require("water");
  private static final BakeDay DEMO = BakeDay.of(Main.demo().plan());

  private static Arguments row(String said, ThrowingCallable door) {
    return Arguments.of(said, door);
  }

  static List<Arguments> nonsense() {
    return List.of(
        row("nobody looks before", () -> Step.rest(hours(2)).lookingFrom(hours(-2))),
        row(
            "coarser",
            () ->
                Kitchen.USUAL
                    .withBalance(Balance.to(grams(1)))
                    .withFineBalance(Balance.to(grams(5)))),
        row("such a growth", () -> DEMO.reaches(-1)),
        row("such a growth", () -> DEMO.reaches(Double.NaN)),
        row("no such name", () -> Kitchen.named(" ")),
        row("no such name", () -> Step.work("two\nlines", minutes(5))),
        row("no such name", () -> Timetable.Task.of("", minutes(5))),
        row("no such name", () -> Step.ripen("", hours(5))),
        row("needs a measure", () -> Form.ball(millimetres(0))),
        row("needs a measure", () -> Form.slab(millimetres(-3))),
        row(
            "no stage takes itself",
            () ->
                new StageDraft<>("Sour", StageKind.PREFERMENT, List.of(), List.of())
                    .takingShare("sour", percent(10))),
        row(
            "a name of its own",
            () ->
                Levain.seed("Mother", FLOUR, WATER, grams(20), percent(100))
                    .build("mother", grams(200), percent(100))),
        row("from 1 to 1000000", () -> PieceOrder.raw(1_000_001, grams(50))),
        row("1000000", () -> new Order.OfFlour(grams(500), 1_000_001)),
        row("line 1", () -> RecipeFile.parse("x.txt", "pieces: 1000001\n500 g flour").plan()));
  }

  @ParameterizedTest(name = "{0} {index}")
  @MethodSource("nonsense")
  void nonsenseIsRefusedInWords(String said, ThrowingCallable door) {
    assertThatThrownBy(door)
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining(said)
        .hasMessageNotContaining("null");
  }

  @Test
  void aMillionPiecesAreOneDayAndOneSheetThatCanBeRead() {
    Formula rings =
        Formula.byPercent(
            "Rings",
            f ->
                f.line("bread flour", percent(100))
                    .line("water", percent(55))
                    .line("instant yeast", percent(0.8)));
    Procedure steps =
        Procedure.of(
            Step.mix(minutes(15)),
            Step.proof(minutes(60)),
            Step.bake(OvenProfile.of(celsius(200), minutes(20))));
    BakeDay day =
        BakeDay.of(
            DayPlan.of(
                Kitchen.USUAL, Order.pieces(Product.of(rings, steps), PieceOrder.MOST, grams(80))));
    List<Integer> loads = day.bake().get().loads();
    assertThat(loads.stream().mapToInt(Integer::intValue).sum()).isEqualTo(PieceOrder.MOST);
    assertThat(day.timetable().entries()).hasSizeLessThan(400);
    // the clock counts every load
    assertThat(BenchSheet.of(day, AmountFormat.metric()).toString().length()).isLessThan(60_000);
    assertThat(day.timetable().entries().toString())
        .contains("loads 1 to ")
        .contains(" to " + loads.size() + " of " + loads.size());
  }

  @SuppressWarnings({"unchecked", "TypeParameterUnusedInFormals"}) // what a raw caller may pass
  private static <Q extends Quantity<Q>> Quantity<Q> cast(Quantity<?> any) {
    return (Quantity<Q>) any;
  }

  @Test
  void aMassIsNoTimeAtTheDoorOfAStep() {
    assertThatThrownBy(() -> Step.mix(cast(grams(3))))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("the time must be a time, not a mass: 3 g");
    assertThatThrownBy(() -> Step.proof(minutes(60)).lookingFrom(cast(grams(3))))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("the earliest must be a time, not a mass: 3 g");
  }
}
