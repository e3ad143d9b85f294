package org.tourage.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.tourage.quantity.Amounts.grams;
import static org.tourage.quantity.Amounts.percent;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Composition;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Origin;
import org.tourage.ingredient.Role;

class UnknownIngredientTest {
  private static final Ingredient SPRINKLES = Ingredient.unknown("sprinkles");
  private static final Batch BATCH =
      Formula.byWeight(
          "buns",
          f ->
              f.line("bread flour", grams(500))
                  .line("water", grams(300))
                  .finish(SPRINKLES, grams(20)));

  @Test
  void theAllergensOfWhatIsUnknownAreUnknownAndNotNone() {
    AllergenSummary summary = AllergenSummary.of(BATCH.formula());

    assertThat(summary.unknown()).containsExactly(SPRINKLES);
    assertThat(summary.unknownText()).contains("Allergens unknown: sprinkles");
    assertThat(summary.plantBased()).isFalse();
    assertThat(summary.advice()).anyMatch(a -> a.code().equals("ALLERGENS_UNKNOWN"));
    assertThat(summary.toString()).endsWith("; Allergens unknown: sprinkles");
    for (LabelScheme scheme : LabelScheme.values()) {
      assertThat(IngredientList.of(BATCH, scheme).toString())
          .contains("\nAllergens unknown: sprinkles\n");
    }
  }

  @Test
  void nothingIsSaidOfUnknownAllergensWhereAllAreKnown() {
    Batch plain =
        Formula.byWeight("dough", f -> f.line("bread flour", grams(500)).line("water", grams(300)));

    assertThat(AllergenSummary.of(plain.formula()).unknown()).isEmpty();
    assertThat(IngredientList.of(plain, LabelScheme.EU).allergensUnknown()).isEmpty();
    assertThat(plain.formula().hydration().unknown()).isEmpty();
    assertThat(plain.formula().hydration().toString()).doesNotContain("unknown");
  }

  @Test
  void hydrationNamesTheDoughIngredientWhoseWaterItLacks() {
    Batch dough =
        Formula.byWeight(
            "dough",
            f ->
                f.line("bread flour", grams(500))
                    .line("water", grams(300))
                    .line(SPRINKLES, grams(20)));

    assertThat(dough.formula().hydration().unknown()).containsExactly(SPRINKLES);
    assertThat(dough.formula().hydration().toString())
        .endsWith(", without the water of sprinkles: unknown");
    assertThat(dough.formula().hydration().advice())
        .anyMatch(a -> a.code().equals("HYDRATION_UNKNOWN"));
    assertThat(dough.formula().hydration().working().toString()).contains("unknown, left out");
    // the finish does not wet the dough
    assertThat(BATCH.formula().hydration().unknown()).isEmpty();
  }

  @Test
  void unknownAllergensAreNotTheSameValueAsNone() {
    Ingredient silent = dust().allergensUnknown().build();
    Ingredient free = dust().allergens().build();

    assertThat(silent).isNotEqualTo(free).isEqualTo(dust().allergensUnknown().build());
    Catalogue own = Catalogue.builtIn().with(silent, List.of("house dust"));
    assertThat(own.require("house dust").areAllergensKnown()).isFalse();
    assertThat(own.with(free).require("house dust").areAllergensKnown()).isTrue();
  }

  @Test
  void whatNobodyHasSaidAnythingOfIsNotCalledPlantBased() {
    assertThat(plantBased(dust().allergensUnknown().build())).isFalse();
    assertThat(plantBased(dust().allergensUnknown().origin(Origin.PLANT).build())).isTrue();
    assertThat(plantBased(dust().allergens().build())).isTrue();
    assertThat(plantBased(dust().allergens().origin(Origin.ANIMAL).build())).isFalse();
  }

  private static boolean plantBased(Ingredient ingredient) {
    Formula formula =
        Formula.byPercent(
            "any", f -> f.line("bread flour", percent(100)).line(ingredient, percent(5)));
    return AllergenSummary.of(formula).plantBased();
  }

  private static Ingredient.Builder dust() {
    return Ingredient.builder("dust", "dust")
        .role(Role.INCLUSION)
        .composition(Composition.builder().water(percent(1)).build());
  }
}
