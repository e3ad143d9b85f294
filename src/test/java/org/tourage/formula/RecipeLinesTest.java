package org.tourage.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.grams;
import static org.tourage.quantity.Amounts.percent;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import org.junit.jupiter.api.Test;
import org.tourage.ingredient.Catalogue;
import org.tourage.quantity.CupStandard;

class RecipeLinesTest {
  private static Batch back(Batch batch) {
    return HouseholdRecipe.parse(
            batch.formula().name(),
            batch.recipeLines(),
            Catalogue.builtIn(),
            CupStandard.US_CUSTOMARY)
        .batch();
  }

  private static void same(Batch one, Batch other) {
    assertThat(other.formula().lines()).hasSameSizeAs(one.formula().lines());
    for (int i = 0; i < one.lines().size(); i++) {
      WeighedLine was = one.lines().get(i);
      WeighedLine is = other.lines().get(i);
      assertThat(is.ingredient()).isEqualTo(was.ingredient());
      assertThat(is.line().isFlour()).as(was.toString()).isEqualTo(was.line().isFlour());
      assertThat(is.kind()).isEqualTo(was.kind());
      assertThat(is.stage()).isEqualTo(was.stage());
      assertThat(is.toWeigh().in(GRAM))
          .as(was.toString())
          .isCloseTo(was.toWeigh().in(GRAM), within(1e-6));
    }
  }

  @Test
  void aStarchAndAGlutenCountedAsFlourStayFlourThroughText() {
    Batch batch =
        Formula.byPercent(
                "tender roll",
                f ->
                    f.line("rice flour", percent(60))
                        .flour("cornstarch", percent(35))
                        .flour("vital wheat gluten", percent(5))
                        .line("water", percent(75))
                        .line("salt", percent(1.9)))
            .forFlour(grams(700));
    Batch again = back(batch);
    same(batch, again);
    assertThat(again.formula().percent("cornstarch").in(PERCENT)).isCloseTo(35, within(1e-9));
    assertThat(again.flour().in(GRAM)).isCloseTo(700, within(1e-6));
  }

  @Test
  void stagesAndWhatIsKeptBackStayThroughText() {
    Batch layered =
        Formula.byPercent(
                "layered",
                f ->
                    f.line("bread flour", percent(100))
                        .line("water", percent(55))
                        .line("instant yeast", percent(1))
                        .preferment(Preferment.poolish(percent(20)))
                        .rollIn("unsalted butter", percent(50)))
            .forFlour(grams(500));
    same(layered, back(layered));
    Batch kept =
        HouseholdRecipe.of(
                "kept",
                "[preferment First]",
                "50 g rye flour",
                "50 g water",
                "[preferment Second]",
                "80 g of First",
                "200 g rye flour",
                "160 g water",
                "[dough]",
                "220 g of Second",
                "400 g bread flour",
                "250 g water")
            .batch();
    same(kept, back(kept));
  }
}
