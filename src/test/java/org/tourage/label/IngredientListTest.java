package org.tourage.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.tourage.quantity.Amounts.*;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.formula.StageKind;
import org.tourage.ingredient.Allergen;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Ingredient;

class IngredientListTest {
  private static final Ingredient CHOCOLATE = Catalogue.builtIn().require("semi-sweet chocolate");

  private static Batch buns() {
    return Formula.byWeight(
        "chocolate buns",
        f ->
            f.stage(
                    StageKind.PREFERMENT,
                    "Poolish",
                    s -> s.line("bread flour", grams(100)).line("water", grams(100)))
                .line("bread flour", grams(400))
                .line("water", grams(100))
                .line("whole milk", grams(120))
                .line("unsalted butter", grams(80))
                .line("salt", grams(10))
                .line(CHOCOLATE, grams(150))
                .finish("hazelnuts", grams(40))
                .finish("whole egg", grams(30)));
  }

  @Test
  void ingredientsStandInDescendingOrderAtMixingAllStagesTogetherWithTheirAllergensMarked() {
    IngredientList list = IngredientList.of(buns(), LabelScheme.US);
    assertThat(list.text().text())
        .isEqualTo(
            "bread flour (wheat), water, semi-sweet chocolate, whole milk, unsalted butter (milk),"
                + " hazelnuts, whole egg, salt");
    assertThat(list.text().inCapitals())
        .isEqualTo(
            "bread flour (WHEAT), water, semi-sweet chocolate, whole MILK, unsalted butter (MILK),"
                + " HAZELNUTS, whole EGG, salt");
    assertThat(list.contains()).contains("Contains: eggs, milk, tree nuts (hazelnut), wheat");
    assertThat(list.toString()).endsWith("(draft, no legal label)").contains("Contains: eggs");
    assertThat(list.advice()).extracting(Advice::code).contains("LIST_DRAFT", "LABEL_DECIDES");
  }

  @Test
  void theListOfEuropeNamesItsOwnGroupsAndRye() {
    Batch rye =
        Formula.byWeight(
            "rye",
            f ->
                f.line("medium rye flour", grams(500))
                    .line("water", grams(400))
                    .line("pine nuts", grams(50))
                    .line("celery seeds", grams(5)));
    assertThat(IngredientList.of(rye, LabelScheme.EU).text().inCapitals())
        .isEqualTo("medium RYE flour, water, pine nuts, CELERY seeds");
    assertThat(IngredientList.of(rye, LabelScheme.EU).contains())
        .contains("Contains: celery, cereals containing gluten (rye)");
    assertThat(IngredientList.of(rye, LabelScheme.US).text().inCapitals())
        .isEqualTo("medium rye flour, water, PINE NUTS, celery seeds");
    assertThat(IngredientList.of(rye, LabelScheme.US).contains())
        .contains("Contains: tree nuts (pine nut)");
  }

  @Test
  void addedWaterIsWhatIsLeftOfItAndNotListedBelowFivePercent() {
    Batch crackers =
        Formula.byWeight(
            "crackers",
            f ->
                f.line("bread flour", grams(500))
                    .line("water", grams(200))
                    .line("olive oil", grams(60))
                    .line("salt", grams(10)));
    IngredientList raw = IngredientList.of(crackers, LabelScheme.EU);
    assertThat(raw.text().text()).startsWith("bread flour (wheat), water, olive oil");
    assertThat(raw.withWaterLost(grams(150)).text().text())
        .isEqualTo("bread flour (wheat), olive oil, water, salt");
    // 30 g of water left in 600 g of crackers are the twentieth part
    assertThat(raw.withWaterLost(grams(169.9)).text().text()).contains("water");
    assertThat(raw.withWaterLost(grams(170.1)).text().text()).doesNotContain("water");
    assertThat(IngredientList.of(crackers, LabelScheme.US).withWaterLost(grams(190)).text().text())
        .startsWith("bread flour (wheat), water");
  }

  @Test
  void anEmphasisedIngredientHasItsPercentOfTheFinishedProduct() {
    IngredientList list =
        IngredientList.of(buns(), LabelScheme.EU).withWaterLost(grams(130)).emphasising(CHOCOLATE);
    assertThat(list.quantity(CHOCOLATE)).isEqualTo(percent(15));
    assertThat(list.text().text()).contains("semi-sweet chocolate 15 %");
    Ingredient butter = Catalogue.builtIn().require("unsalted butter");
    Batch dried =
        Formula.byWeight(
            "dry",
            f ->
                f.line("bread flour", grams(20))
                    .line("water", grams(100))
                    .line(butter, grams(100)));
    assertThat(
            IngredientList.of(dried, LabelScheme.EU)
                .withWaterLost(grams(110))
                .emphasising(butter)
                .quantity(butter)
                .value())
        .isLessThan(100);
    Ingredient apple = Catalogue.builtIn().require("peeled apple");
    Batch rings =
        Formula.byWeight("rings", f -> f.line("bread flour", grams(20)).line(apple, grams(400)));
    assertThat(
            IngredientList.of(rings, LabelScheme.EU)
                .withWaterLost(grams(320))
                .emphasising(apple)
                .text()
                .text())
        .contains("peeled apple (400 g per 100 g)");
  }

  @Test
  void aCompoundIngredientStandsWithItsPartsInBracketsAndTheirAllergensMarked() {
    Ingredient spread = Catalogue.builtIn().require("chocolate hazelnut spread");
    Batch batch =
        Formula.byWeight("filled", f -> f.line("rice flour", grams(100)).line(spread, grams(50)));
    IngredientList list =
        IngredientList.of(batch, LabelScheme.EU)
            .compound(spread, "sugar", "palm oil", "hazelnut 13 %", "skimmed milk powder");
    assertThat(list.text().inCapitals())
        .isEqualTo(
            "white rice flour, chocolate HAZELNUT spread (sugar, palm oil, hazelnut 13 %, skimmed"
                + " MILK powder)");
    assertThatThrownBy(() -> list.compound(spread)).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> list.compound(CHOCOLATE, "sugar"))
        .hasMessageContaining("no such ingredient in filled");
  }

  @Test
  void nothingIsPrintedThatIsEmptyAndMayContainOnlyWhereTheUserSaysSo() {
    Batch rice =
        Formula.byWeight("rice", f -> f.line("rice flour", grams(100)).line("water", grams(90)));
    IngredientList list = IngredientList.of(rice, LabelScheme.US);
    assertThat(list.contains()).isEmpty();
    assertThat(list.mayContainText()).isEmpty();
    assertThat(list.toString()).doesNotContain("ontain");
    assertThat(list.mayContain(Allergen.SESAME, Allergen.MILK).mayContainText())
        .contains("May contain: milk, sesame");
    assertThat(IngredientList.of(buns(), LabelScheme.US).mayContain(Allergen.MILK).mayContainText())
        .isEmpty();
  }

  @Test
  void aWordInAWordIsNoAllergen() {
    Batch batch =
        Formula.byWeight(
            "words",
            f ->
                f.line("buckwheat flour", grams(100))
                    .line("coconut milk", grams(60))
                    .line("buttermilk", grams(50)));
    assertThat(IngredientList.of(batch, LabelScheme.EU).text().inCapitals())
        .isEqualTo("buckwheat flour, coconut milk, canned, buttermilk (MILK)");
  }

  @Test
  void marksThatDoNotLieInTheTextAreRefused() {
    assertThatThrownBy(
            () -> new MarkedText("abc", List.of(new MarkedText.Span(2, 5, Allergen.MILK))))
        .isInstanceOf(BakeryException.class);
  }
}
