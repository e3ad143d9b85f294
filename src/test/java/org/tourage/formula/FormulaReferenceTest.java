package org.tourage.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.OUNCE;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.tourage.ingredient.Catalogue;
import org.tourage.reference.Checks;
import org.tourage.reference.Checks.Row;

class FormulaReferenceTest {
  private static double published(String check) {
    return Checks.row("formula-figures.csv", check).number("value");
  }

  static Formula lean() {
    return Formula.byPercent(
        "lean sweet dough",
        f ->
            f.line("bread flour", percent(100))
                .line("water", percent(62))
                .line("salt", percent(2))
                .line("instant yeast", percent(1.5))
                .line("sugar", percent(8))
                .line("butter", percent(6)));
  }

  @Test
  void aTextbookCakeGivesItsPrintedPercentagesFromItsWeights() {
    List<Row> rows = Checks.rows("bakers-percent.csv").toList();
    Batch batch =
        Formula.byWeight(
            "white cake", f -> rows.forEach(r -> f.line(r.text("name"), mass(r.text("amount")))));
    for (Row row : rows) {
      assertThat(batch.formula().percent(Catalogue.builtIn().require(row.text("name"))).in(PERCENT))
          .as(row.toString())
          .isCloseTo(row.number("percent"), within(1e-9));
    }
    assertThat(batch.formula().dough().in(PERCENT))
        .isCloseTo(published("total percentage of the white cake"), within(1e-9));
    assertThat(batch.formula().forDough(pounds(6)).flour().in(OUNCE))
        .isCloseTo(
            published("cake batter of 6 lb at 377.5 % total needs cake flour"), within(0.005));
  }

  @Test
  void doughAndFlourForPiecesAreTheWorkedOnes() {
    assertThat(lean().forFlour(grams(1000)).dough().in(GRAM))
        .isCloseTo(
            published("dough of 1000 g flour at 62 water 2 salt 1.5 yeast 8 sugar 6 fat"),
            within(1e-9));
    PieceOrder order = PieceOrder.baked(24, grams(80), percent(12)).withProcessLoss(percent(2));
    Batch batch = lean().forPieces(order);
    assertThat(batch.dough().in(GRAM))
        .isCloseTo(
            published("dough for 24 pieces of 80 g baked with bake loss 12 and process loss 2"),
            within(0.005));
    assertThat(batch.flour().in(GRAM))
        .isCloseTo(
            published("flour for 24 pieces of 80 g baked with bake loss 12 and process loss 2"),
            within(0.005));
    assertThat(order.working().toString()).contains("24 × 80 g");
  }

  @Test
  void aPoolishTakesItsPartAndLeavesTheRest() {
    Formula formula =
        Formula.byPercent(
            "poolish dough",
            f ->
                f.line("bread flour", percent(100))
                    .line("water", percent(62))
                    .line("salt", percent(2))
                    .preferment(Preferment.poolish(percent(30))));
    Batch batch = formula.forFlour(grams(1000));
    List<Line> poolish = formula.stage("Poolish").lines();
    assertThat(batch.weight(0).in(GRAM))
        .isCloseTo(published("poolish flour of 30 % of 1000 g"), within(1e-9));
    assertThat(batch.weight(1).in(GRAM))
        .isCloseTo(published("poolish water of 30 % of 1000 g"), within(1e-9));
    assertThat(poolish).hasSize(2);
    assertThat(batch.weight(2).in(GRAM))
        .isCloseTo(published("final dough flour after a 30 % poolish"), within(1e-9));
    assertThat(batch.weight(3).in(GRAM))
        .isCloseTo(
            published("final dough water after a 30 % poolish at 62 % hydration"), within(1e-9));
  }

  @Test
  void theFinalStageOfAWetDoughIsStiffer() {
    Formula formula =
        Formula.byPercent(
            "wet dough",
            f ->
                f.line("bread flour", percent(100))
                    .line("water", percent(70))
                    .preferment(Preferment.of("Sponge", percent(20), percent(100))));
    Stage last = formula.stage("Final dough");
    assertThat(last.percentOfOwnFlour(last.lines().get(1)).orElseThrow().in(PERCENT))
        .isCloseTo(
            published("final stage hydration of H 70 % with 20 % of the flour at 100 %"),
            within(1e-9));
  }

  @Test
  void aLevainBroughtReadyCountsItsFlour() {
    double inside = published("flour inside 300 g of levain at 125 %");
    Batch batch =
        Formula.byWeight(
            "levain bread",
            f ->
                f.stage(
                        StageKind.PREFERMENT,
                        "Levain",
                        s ->
                            s.line("bread flour", grams(300 / 2.25))
                                .line("water", grams(300 * 1.25 / 2.25)))
                    .line("bread flour", grams(900))
                    .line("water", grams(600)));
    assertThat(batch.weight(0).in(GRAM)).isCloseTo(inside, within(5e-4));
    assertThat(batch.formula().hydration().nominal().in(PERCENT))
        .isCloseTo(
            published("overall hydration of 900 g flour 600 g water 300 g levain at 125 %"),
            within(5e-5));
    assertThat(batch.formula().prefermentedFlour().in(PERCENT))
        .isCloseTo(
            published("prefermented flour of 900 g flour and 300 g levain at 125 %"), within(5e-5));
  }

  @Test
  void aLevainChainIsSizedBackwards() {
    Preferment levain =
        Preferment.levain(
            percent(20),
            percent(100),
            Feeding.parts(1, 1, 1),
            Feeding.parts(1, 2, 2),
            Feeding.parts(1, 4, 4));
    Formula formula =
        Formula.byPercent(
            "levain",
            f -> f.line("bread flour", percent(100)).line("water", percent(70)).preferment(levain));
    Stage last = formula.stage("Levain build 3");
    Batch unit = formula.forFlour(grams(1000));
    Batch batch = unit.times(540 / unit.wholeWeightOf(last).in(GRAM));
    assertThat(batch.wholeWeightOf(last).in(GRAM)).isCloseTo(540, within(1e-9));
    assertThat(batch.weightOf(formula.stage("Levain seed")).in(GRAM))
        .isCloseTo(
            published("first seed of 540 g levain fed 1:1:1 then 1:2:2 then 1:4:4"), within(1e-9));
    assertThat(batch.wholeWeightOf(formula.stage("Levain build 1")).in(GRAM))
        .isCloseTo(published("second seed of that chain"), within(1e-9));
    assertThat(batch.wholeWeightOf(formula.stage("Levain build 2")).in(GRAM))
        .isCloseTo(published("third seed of that chain"), within(1e-9));
    assertThat(formula.prefermentedFlour().in(PERCENT)).isCloseTo(20, within(1e-9));
  }
}
