package org.tourage.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Ingredient;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.BalanceRounding;

class FormulaTest {
  private static final Catalogue CATALOGUE = Catalogue.builtIn();
  private static final Ingredient FLOUR = CATALOGUE.require("bread flour");

  static Formula crescent() {
    return Formula.byPercent(
        "crescent",
        f ->
            f.line(FLOUR, percent(100))
                .line("soy drink", percent(40))
                .line("water", percent(16))
                .line("sugar", percent(11))
                .line("salt", percent(2))
                .line("instant yeast", percent(1.2))
                .preferment(
                    Preferment.poolish(percent(20))
                        .withYeast(percent(0.2))
                        .withLiquid(CATALOGUE.require("soy drink")))
                .soaker("Seeds", s -> s.line("water", percent(4)))
                .rollIn("margarine-80-unsalted", percent(50))
                .finish("maple syrup", percent(3)));
  }

  @Test
  void stagesComeInTheOrderOfWork() {
    assertThat(crescent().stages())
        .extracting(Stage::name)
        .containsExactly("Poolish", "Seeds", "Final dough", "Roll-in", "Finish");
    assertThat(crescent().stage("Final dough").takes()).containsExactly("Poolish", "Seeds");
    assertThat(crescent().stage("Poolish").flourShare()).isEqualTo(percent(20));
    assertThat(crescent().stage("Poolish").toString())
        .isEqualTo("Poolish: bread flour 20 %, soy drink 20 %, instant yeast 0.04 %");
    assertThat(
            crescent()
                .stage("Roll-in")
                .percentOfOwnFlour(crescent().stage("Roll-in").lines().get(0)))
        .isEmpty();
  }

  @Test
  void overallViewAndTotalsCountEachStageOnce() {
    Formula formula = crescent();
    assertThat(formula.overall())
        .extracting(l -> l.ingredient().name())
        .doesNotContain("maple syrup")
        .doesNotHaveDuplicates();
    assertThat(formula.percent("water")).isEqualTo(percent(16));
    assertThat(formula.percent("soy drink")).isEqualTo(percent(40));
    assertThat(formula.percent(FLOUR)).isEqualTo(percent(100));
    assertThat(formula.percent(CATALOGUE.require("honey"))).isEqualTo(percent(0));
    assertThat(formula.baseDough()).isEqualTo(percent(170.2));
    assertThat(formula.dough()).isEqualTo(percent(220.2));
    assertThat(formula.prefermentedFlour()).isEqualTo(percent(20));
    assertThat(formula.toString())
        .startsWith("crescent\n")
        .contains("bread flour")
        .contains("220.2 %");
  }

  @Test
  void batchesAreScaledInEveryWayABakerAsks() {
    Formula formula = crescent();
    assertThat(formula.forFlour(kilograms(1)).dough()).isEqualTo(grams(2202));
    assertThat(formula.forDough(grams(2202)).flour()).isEqualTo(kilograms(1));
    assertThat(formula.forBaseDough(grams(1702)).flour()).isEqualTo(kilograms(1));
    assertThat(formula.forIngredient("bread flour", grams(740)).flour()).isEqualTo(grams(740));
    assertThat(formula.forIngredient(CATALOGUE.require("salt"), grams(20)).flour())
        .isEqualTo(kilograms(1));
    assertThat(formula.forPieces(PieceOrder.raw(22, grams(2202 / 22.0))).flour().in(GRAM))
        .isCloseTo(1000, within(1e-6));
    Batch batch = formula.forFlour(kilograms(1));
    assertThat(batch.rollIn()).isEqualTo(grams(500));
    assertThat(batch.baseDough()).isEqualTo(grams(1702));
    assertThat(batch.total()).isEqualTo(grams(2232));
    assertThat(batch.weightOf("salt")).isEqualTo(grams(20));
    assertThat(batch.weightOf(formula.stage("Poolish"))).isEqualTo(grams(400.4));
    assertThat(batch.wholeWeightOf(formula.stage("Final dough"))).isEqualTo(grams(1702));
    assertThat(batch.pieceMass(20, percent(10))).isEqualTo(grams(2202 * 0.9 / 20));
    assertThat(batch.pieces(grams(100), percent(10))).isEqualTo(19);
    assertThat(formula.forPieces(PieceOrder.raw(24, grams(80))).pieces(grams(80), percent(0)))
        .isEqualTo(24);
    assertThat(batch.weightOf(CATALOGUE.require("maple syrup"))).isEqualTo(grams(0));
    assertThat(PieceOrder.baked(24, grams(80), percent(12)))
        .hasToString("24 pieces of 80 g, bake loss 12 %, process loss 0 %");
    assertThat(Feeding.parts(1, 4, 4)).hasToString("1 : 4 : 4");
    assertThat(batch.weights()).hasSize(formula.lines().size());
    assertThat(batch.times(2).flour()).isEqualTo(kilograms(2));
    assertThat(batch.working().lines()).hasSameSizeAs(formula.lines());
    assertThat(batch.formula()).isSameAs(formula);
  }

  @Test
  void theTableReadsAsABakerReadsIt() {
    String table = crescent().forFlour(kilograms(1)).rounded(grams(1)).toString();
    assertThat(table)
        .startsWith(
            """
            crescent
            ingredient                             % of flour  weight

            Poolish
              bread flour                               20.00   200 g
            """)
        .contains("  all of Poolish")
        .contains("  = final dough")
        .contains("total flour                                100.00  1000 g")
        .contains("total dough with roll-in                   220.20  2202 g");
    assertThat(crescent().forFlour(kilograms(1)).table(AmountFormat.usCustomary()))
        .contains("7.05 oz");
    assertThat(
            Formula.byWeight("x", f -> f.line(FLOUR, grams(10)).line("water", grams(6))).toString())
        .contains("total dough  ")
        .doesNotContain("roll-in");
  }

  @Test
  void roundingKeepsTheTotalAndTellsTheError() {
    Batch rounded = crescent().forFlour(grams(333)).rounded(grams(1));
    BalanceRounding rounding = rounded.rounding().orElseThrow();
    assertThat(rounding.greatestError().value()).isPositive();
    assertThat(rounded.total().value()).isCloseTo(333 * 2.232, within(0.5));
    assertThat(rounded.flour().value()).isCloseTo(333, within(1.0));
    assertThat(rounded.advice()).extracting(Advice::code).contains("BALANCE_TOO_COARSE");
    assertThat(crescent().forFlour(grams(333)).rounding()).isEmpty();
    assertThat(rounded)
        .isNotEqualTo(crescent().forFlour(grams(333)))
        .isEqualTo(crescent().forFlour(grams(333)).rounded(grams(1)));
    assertThat(rounded).hasSameHashCodeAs(crescent().forFlour(grams(333)).rounded(grams(1)));
    assertThat(rounded.rounded(grams(0.1)).total().value()).isCloseTo(333 * 2.232, within(0.05));
  }

  @Test
  void percentagesOfAStagesOwnFlourBecomePercentagesOfTheTotal() {
    Formula formula =
        Formula.byPercent(
            "staged",
            f ->
                f.stage(
                        StageKind.PREFERMENT,
                        "Biga",
                        s ->
                            s.ofOwnFlour(percent(40))
                                .line(FLOUR, percent(100))
                                .line("water", percent(50)))
                    .stage(
                        StageKind.FINAL_DOUGH,
                        "Dough",
                        s ->
                            s.line("bread flour", percent(60))
                                .line("water", percent(45))
                                .line("salt", percent(2))));
    assertThat(formula.percent("water")).isEqualTo(percent(65));
    assertThat(formula.stage("Dough").takes()).containsExactly("Biga");
    assertThat(formula.stage("Biga").percentOfOwnFlour(formula.stage("Biga").lines().get(1)))
        .contains(percent(50));
  }

  @Test
  void stagesCanTakeEachOther() {
    Formula formula =
        Formula.byWeight(
                "two builds",
                f ->
                    f.stage(
                            StageKind.PREFERMENT,
                            "one",
                            s -> s.line(FLOUR, grams(10)).line("water", grams(10)))
                        .stage(
                            StageKind.PREFERMENT,
                            "two",
                            s -> s.takes("one").line(FLOUR, grams(50)).line("water", grams(50)))
                        .line(FLOUR, grams(500))
                        .line("water", grams(300)))
            .formula();
    assertThat(formula.stage("Final dough").takes()).containsExactly("two");
    assertThatThrownBy(
            () ->
                Formula.byWeight(
                    "x",
                    f ->
                        f.stage(
                            StageKind.SOAKER, "one", s -> s.takes("none").line(FLOUR, grams(1)))))
        .hasMessageContaining("takes \"none\"");
    assertThatThrownBy(
            () ->
                Formula.byWeight(
                    "x",
                    f ->
                        f.stage(StageKind.SOAKER, "one", s -> s.line(FLOUR, grams(1)))
                            .stage(StageKind.SOAKER, "one", s -> s.line(FLOUR, grams(1)))))
        .hasMessageContaining("two stages have one name");
  }

  @Test
  void aLevainTakesYeastOnlyInItsLastBuildAndByInoculationToo() {
    Preferment levain =
        Preferment.levain(percent(15), percent(50), Feeding.inoculation(percent(20), percent(50)))
            .withName("Stiff")
            .withYeast(percent(0.1))
            .withFlour(FLOUR);
    Formula formula =
        Formula.byPercent(
            "stiff",
            f ->
                f.line(FLOUR, percent(100))
                    .line("water", percent(60))
                    .line("instant yeast", percent(1))
                    .preferment(levain));
    assertThat(formula.stages())
        .extracting(Stage::name)
        .containsExactly("Stiff seed", "Stiff", "Final dough");
    // seed 1, flour 5, water 2.5; flour 5.667 of 15 %
    assertThat(formula.stage("Stiff").lines().get(0).percent().in(PERCENT))
        .isCloseTo(15 * 5 / (5 + 2 / 3.0), within(1e-9));
    assertThat(formula.stage("Stiff").lines().get(2).percent().in(PERCENT))
        .isCloseTo(0.015, within(1e-12));
    assertThat(formula.prefermentedFlour().in(PERCENT)).isCloseTo(15, within(1e-9));
    assertThat(levain).hasToString("Stiff of 15 % of the flour");
    assertThat(Preferment.sponge(percent(40)).steps().get(0).liquid())
        .isCloseTo(0.24, within(1e-12));
  }

  @Test
  void trueHydrationCountsTheWaterInsideMilkEggsAndButter() {
    Batch batch =
        Formula.byWeight(
            "brioche",
            f ->
                f.line(FLOUR, grams(500))
                    .line("whole milk", grams(100))
                    .line("egg", grams(250))
                    .line("unsalted butter", grams(250))
                    .rollIn("unsalted butter", grams(100))
                    .finish("egg", grams(50)));
    Hydration hydration = batch.formula().hydration();
    double water = 100 * 0.8813 + 250 * 0.7615 + 250 * 0.1794;
    assertThat(hydration.nominal().in(PERCENT)).isCloseTo(20, within(1e-9));
    assertThat(hydration.trueHydration().in(PERCENT)).isCloseTo(water / 5, within(1e-9));
    double flourWater = 500 * 0.1336;
    assertThat(hydration.dryMatterRatio().in(PERCENT))
        .isCloseTo(100 * (water + flourWater) / (500 - flourWater), within(1e-9));
    assertThat(hydration.lines()).hasSize(3);
    assertThat(hydration.working().lines()).hasSize(4);
    assertThat(hydration.working().toString()).contains("NDB 01077");
    assertThat(hydration.toString()).startsWith("true hydration 64.7 % of flour (liquids 20 %");
    assertThat(hydration.advice()).isEmpty();
  }

  /** Advice codes of a dough of bread flour with water, salt and one leavening, in percent. */
  private static List<String> codes(double water, double salt, String leavening, double amount) {
    return Formula.byPercent(
            "x",
            f ->
                f.line(FLOUR, percent(100))
                    .line("water", percent(water))
                    .line("salt", percent(salt))
                    .line(leavening, percent(amount)))
        .advice()
        .stream()
        .map(Advice::code)
        .toList();
  }

  @Test
  void whatIsUnwiseComesBackAsAdvice() {
    assertThat(codes(60, 2, "fresh yeast", 3)).isEmpty();
    assertThat(codes(60, 2, "sugar", 3)).containsExactly("NO_LEAVENING");
    assertThat(codes(60, 2, "baking powder", 4)).isEmpty();
    assertThat(codes(60, 0, "fresh yeast", 3)).containsExactly("SALT_LOW");
    assertThat(codes(60, 3, "fresh yeast", 3)).containsExactly("SALT_HIGH");
    assertThat(codes(60, 2, "instant yeast", 3)).containsExactly("YEAST_HIGH");
    assertThat(codes(60, 2, "active dry yeast", 3)).isEmpty();
    assertThat(codes(60, 2, "fresh yeast", 0.1)).containsExactly("YEAST_LOW");
    assertThat(codes(130, 2, "fresh yeast", 2)).containsExactly("HYDRATION_UNUSUAL");
  }

  @Test
  void aPrefermentLeavensAndSaltedFatSalts() {
    Formula levain =
        Formula.byPercent(
            "x",
            f ->
                f.line(FLOUR, percent(100))
                    .line("water", percent(60))
                    .line("salt", percent(2))
                    .preferment(Preferment.poolish(percent(30))));
    assertThat(levain.advice()).isEmpty();
    // 90 % salted butter brings 1.4 % salt
    Formula salted =
        Formula.byPercent(
            "x",
            f ->
                f.line(FLOUR, percent(100))
                    .line("water", percent(60))
                    .line("salt", percent(0.5))
                    .line("fresh yeast", percent(3))
                    .rollIn("salted butter", percent(90)));
    assertThat(salted.advice()).isEmpty();
  }

  private static void refused(
      Reason reason,
      String words,
      Consumer<FormulaBuilder<javax.measure.quantity.Dimensionless>> lines) {
    assertThatThrownBy(() -> Formula.byPercent("x", lines))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining(words)
        .extracting(e -> ((BakeryException) e).reason())
        .isEqualTo(reason);
  }

  @Test
  void whatMakesNoSenseIsRefused() {
    refused(Reason.MISSING, "needs flour", f -> f.line("water", percent(100)));
    refused(Reason.INCONSISTENT, "105 %", f -> f.line(FLOUR, percent(105)));
    refused(
        Reason.OUT_OF_RANGE, "-2 %", f -> f.line(FLOUR, percent(100)).line("salt", percent(-2)));
    refused(Reason.UNKNOWN_NAME, "did you mean", f -> f.line("bred flour", percent(100)));
    refused(
        Reason.INCONSISTENT,
        "30 % wanted, 20 % left",
        f ->
            f.line(FLOUR, percent(100))
                .line("water", percent(20))
                .preferment(Preferment.poolish(percent(30))));
    refused(
        Reason.MISSING,
        "no liquid",
        f -> f.line(FLOUR, percent(100)).preferment(Preferment.poolish(percent(30))));
    refused(
        Reason.MISSING,
        "no yeast",
        f ->
            f.line(FLOUR, percent(100))
                .line("water", percent(60))
                .preferment(Preferment.poolish(percent(30)).withYeast(percent(1))));
    refused(Reason.OUT_OF_RANGE, "120 %", f -> f.preferment(Preferment.poolish(percent(120))));
    refused(
        Reason.OUT_OF_RANGE,
        "-5 %",
        f -> f.preferment(Preferment.of("p", percent(20), percent(-5))));
    refused(
        Reason.OUT_OF_RANGE,
        "0:1",
        f -> f.preferment(Preferment.levain(percent(20), percent(100), Feeding.parts(0, 1, 1))));
    refused(
        Reason.MISSING, "feeding", f -> f.preferment(Preferment.levain(percent(20), percent(100))));
    refused(
        Reason.OUT_OF_RANGE,
        "positive",
        f -> f.stage(StageKind.PREFERMENT, "p", s -> s.ofOwnFlour(percent(0))));
    assertThatThrownBy(
            () ->
                Formula.byWeight(
                    "x", f -> f.stage(StageKind.PREFERMENT, "p", s -> s.ofOwnFlour(percent(10)))))
        .hasMessageContaining("masses need no flour");
    assertThatThrownBy(() -> crescent().forFlour(grams(0))).hasMessageContaining("needs flour");
    assertThatThrownBy(() -> crescent().forIngredient(CATALOGUE.require("honey"), grams(5)))
        .hasMessageContaining("honey");
    assertThatThrownBy(() -> crescent().ingredient("honey"))
        .hasMessageContaining("it has bread flour");
    assertThatThrownBy(() -> crescent().stage("x"))
        .hasMessageContaining("this formula has Poolish");
    assertThatThrownBy(() -> PieceOrder.raw(0, grams(5))).hasMessageContaining("0 pieces");
    assertThatThrownBy(() -> PieceOrder.raw(1, grams(0))).hasMessageContaining("weigh something");
    assertThatThrownBy(() -> PieceOrder.baked(1, grams(5), percent(100)))
        .hasMessageContaining("bake loss");
    assertThatThrownBy(() -> PieceOrder.raw(1, grams(5)).withProcessLoss(percent(-1)))
        .hasMessageContaining("process loss");
    assertThatThrownBy(() -> crescent().constituents(k -> false))
        .hasMessageContaining("no such stage");
  }

  @Test
  void starchCountsAsFlourOnlyWhereItIsAddedAsFlour() {
    Formula formula =
        Formula.byPercent(
            "gluten-free",
            f ->
                f.flour("cornstarch", percent(40))
                    .line("rice flour", percent(60))
                    .line("water", percent(80)));
    assertThat(formula.lines()).extracting(Line::isFlour).containsExactly(true, true, false);
    assertThat(formula.hydration().nominal()).isEqualTo(percent(80));
    Formula plain =
        Formula.byPercent(
            "starchy",
            f ->
                f.line("cornstarch", percent(40))
                    .line("rice flour", percent(100))
                    .line("water", percent(80)));
    assertThat(plain.percent("cornstarch")).isEqualTo(percent(40));
    assertThat(plain.lines().get(0).isFlour()).isFalse();
  }

  @Test
  void replacingLinesMakesTheNewFlour100PercentAgain() {
    Formula.Changed changed =
        crescent()
            .replace(
                (stage, line) ->
                    line.ingredient().equals(FLOUR)
                        ? List.of(
                            new Formula.Part(
                                CATALOGUE.require("cake flour"), line.percent().multiply(2)))
                        : List.of(new Formula.Part(line.ingredient(), line.percent())));
    assertThat(changed.flour()).isEqualTo(percent(200));
    assertThat(changed.formula().percent("cake flour")).isEqualTo(percent(100));
    assertThat(changed.formula().percent("salt")).isEqualTo(percent(1));
    assertThatThrownBy(() -> crescent().replace((stage, line) -> List.of()))
        .hasMessageContaining("no flour");
  }

  @Test
  void equalFormulasAreEqual() {
    assertThat(crescent())
        .isEqualTo(crescent())
        .hasSameHashCodeAs(crescent())
        .isNotEqualTo(FormulaReferenceTest.lean());
    assertThat(crescent().lines().get(0))
        .isEqualTo(crescent().lines().get(0))
        .hasSameHashCodeAs(crescent().lines().get(0))
        .hasToString("bread flour 20 %");
    assertThat(crescent().lines().get(0)).isNotEqualTo(crescent().lines().get(1));
    assertThat(crescent().name()).isEqualTo("crescent");
    assertThat(crescent().constituents(StageKind::inDough).sum()).isCloseTo(1, within(0.01));
  }
}
