package org.tourage.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.tourage.quantity.Amounts.*;

import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.advice.Severity;
import org.tourage.formula.Formula;
import org.tourage.ingredient.Allergen;

class AllergenSummaryTest {
  private static Formula plant() {
    return Formula.byPercent(
        "plant",
        f ->
            f.line("bread flour", percent(80))
                .line("light rye flour", percent(20))
                .line("almond drink", percent(60))
                .line("oat drink", percent(5))
                .rollIn("margarine", percent(40))
                .finish("hazelnuts", percent(5)));
  }

  @Test
  void bothLegalListsAreWordedAndTheFinishCounts() {
    AllergenSummary summary = AllergenSummary.of(plant());
    assertThat(summary.unitedStates()).containsExactly("tree nuts (almond, hazelnut)", "wheat");
    assertThat(summary.europeanUnion())
        .containsExactly("cereals containing gluten (wheat, rye, oats)", "nuts (almond, hazelnut)");
    // malted barley in the bread flour, wheat and barley by contact in the oats
    assertThat(summary.check())
        .containsExactlyInAnyOrder(Allergen.MILK, Allergen.SOY, Allergen.BARLEY);
    assertThat(summary.toString()).contains("check labels for barley, soy, milk");
  }

  @Test
  void plantBasedIsNeverAClaimOfFreeFromMilkAllergen() {
    AllergenSummary summary = AllergenSummary.of(plant());
    assertThat(summary.plantBased()).isTrue();
    assertThat(summary.advice())
        .extracting(Advice::code)
        .containsExactly("ALLERGENS", "LABEL_DECIDES", "PLANT_BASED_IS_NO_CLAIM");
    assertThat(summary.advice()).extracting(Advice::severity).containsOnly(Severity.SAFETY);
    assertThat(summary.advice().get(2).text())
        .contains("plant-based is not a claim of allergen-free");
  }

  @Test
  void animalOriginIsSeenAndNothingKnownIsSaidSo() {
    Formula butter =
        Formula.byPercent(
            "butter", f -> f.line("rice flour", percent(100)).line("water", percent(60)));
    AllergenSummary none = AllergenSummary.of(butter);
    assertThat(none.advice().get(0).text()).startsWith("no allergen of the legal lists is known");
    assertThat(none).hasToString("US: ; EU: ");
    assertThat(none.advice())
        .extracting(Advice::code)
        .containsExactly("ALLERGENS", "GLUTEN_FREE_IS_A_CLAIM", "PLANT_BASED_IS_NO_CLAIM");
    assertThat(none.advice().get(1).remedy()).contains("20 mg/kg");
    Formula milk =
        Formula.byPercent(
            "milk", f -> f.line("rice flour", percent(100)).line("milk", percent(60)));
    assertThat(AllergenSummary.of(milk).plantBased()).isFalse();
    assertThat(AllergenSummary.of(milk).unitedStates()).containsExactly("milk");
  }

  @Test
  void cautionsFollowTheIngredientsAndTheWork() {
    assertThat(KitchenCautions.of(plant()))
        .extracting(Advice::code)
        .containsExactly("RAW_FLOUR", "HOT_OVEN", "FLOUR_DUST", "MIXER", "SHEETER");
    Formula custard =
        Formula.byPercent(
            "custard",
            f ->
                f.line("bread flour", percent(100))
                    .line("milk", percent(60))
                    .line("egg", percent(20)));
    assertThat(KitchenCautions.of(custard))
        .extracting(Advice::code)
        .containsExactly("RAW_FLOUR", "RAW_EGG", "COLD_HOLDING", "HOT_OVEN", "FLOUR_DUST", "MIXER");
    assertThat(KitchenCautions.of(custard))
        .allSatisfy(a -> assertThat(a.severity()).isEqualTo(Severity.SAFETY));
    assertThat(KitchenCautions.of(custard).get(1).source()).contains("3-401.11");
  }

  private static AllergenSummary of(String ingredient) {
    return AllergenSummary.of(
        Formula.byPercent(
            "one",
            f ->
                f.line("rice flour", percent(ingredient.endsWith("flour") ? 80 : 100))
                    .line(ingredient, percent(20))));
  }

  @Test
  void productsOfAKindAreToBeReadForWhatTheyMayHold() {
    assertThat(of("raisins").check()).contains(Allergen.SULPHITES);
    assertThat(of("molasses").check()).contains(Allergen.SULPHITES);
    assertThat(of("coconut milk, canned").check()).contains(Allergen.SULPHITES);
    assertThat(of("oats").check()).contains(Allergen.WHEAT, Allergen.BARLEY);
    assertThat(of("all-purpose flour").check()).contains(Allergen.BARLEY);
    assertThat(of("active dry yeast").check()).doesNotContain(Allergen.SULPHITES);
    assertThat(of("whole-wheat flour").check()).doesNotContain(Allergen.BARLEY);
    // the label that decides is named
    assertThat(of("raisins").labelsToRead()).extracting(i -> i.name()).contains("raisins");
  }

  @Test
  void oatsAreNoGlutenFreeCerealAndCoconutIsNoTreeNut() {
    assertThat(of("oats").advice())
        .extracting(Advice::code)
        .doesNotContain("GLUTEN_FREE_IS_A_CLAIM");
    AllergenSummary coconut = of("coconut milk, canned");
    assertThat(coconut.unitedStates()).doesNotContain("tree nuts");
    assertThat(coconut.advice()).extracting(Advice::code).contains("COCONUT_NOT_LISTED");
  }
}
