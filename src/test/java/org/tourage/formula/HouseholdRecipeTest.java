package org.tourage.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.GRAM;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.ingredient.Catalogue;
import org.tourage.quantity.CupStandard;

class HouseholdRecipeTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          500 g bread flour                         | bread flour                         | 500  |
          4 cups all-purpose flour                  | all-purpose flour                   | 500  |
          4 cups of flour                           | all-purpose flour                   | 500  |
          1 cup flour, scooped                      | all-purpose flour                   | 145  |
          1 cup sifted all-purpose flour            | all-purpose flour                   | 115  |
          1 cup packed brown sugar                  | brown sugar                         | 220  |
          2 sticks unsalted butter, cold            | unsalted butter                     | 226  | cold
          2 sticks (230 g) unsalted butter          | unsalted butter                     | 230  |
          1 cup (from the fridge) whole milk        | whole milk                          | 244  | from the fridge
          1 cup (8 fl oz) whole milk, cold          | whole milk                          | 244  | 8 fl oz, cold
          2 large eggs                              | whole egg                           | 100  |
          3 eggs                                    | whole egg                           | 150  |
          2 extra large eggs                        |                                     |      |
          1 packet instant yeast                    | instant yeast                       | 7    |
          2 lb 3 oz bread flour                     | bread flour                         | 992.2333 |
          1-2 tbsp water                            | water                               | 22.2188  |
          100 g white wheat flour, 10 % protein     | white wheat flour, 10 % protein     | 100  |
          """)
  void linesAreReadAsKitchensWriteThem(String line, String name, String grams, String note) {
    if (name == null) {
      assertThatThrownBy(() -> HouseholdRecipe.of("x", line))
          .isInstanceOf(BakeryException.class)
          .hasMessageContaining("did you mean");
      return;
    }
    HouseholdRecipe.Item item = HouseholdRecipe.of("x", line).items().get(0);
    assertThat(item.weighed().ingredient().name()).isEqualTo(name);
    assertThat(item.weighed().mass().in(GRAM)).isCloseTo(Double.parseDouble(grams), within(1e-3));
    assertThat(item.note()).isEqualTo(note == null ? "" : note);
  }

  private static HouseholdRecipe recipe() {
    return HouseholdRecipe.of(
        "class recipe",
        "# an invented recipe",
        "4 cups bread flour, spooned",
        "",
        "1 cup water",
        "2 tsp salt",
        "[preferment Poolish]",
        "1 cup bread flour, spooned",
        "1/2 cup water",
        "[soaker Seeds]",
        "3 tbsp flaxseed",
        "[roll-in]",
        "2 sticks butter",
        "[finish]",
        "1 egg",
        "[dough]",
        "1 packet instant yeast");
  }

  @Test
  void headingsMakeStages() {
    Batch batch = recipe().batch();
    assertThat(batch.formula().stages())
        .extracting(Stage::name)
        .containsExactly("Poolish", "Seeds", "Final dough", "Roll-in", "Finish");
    assertThat(batch.formula().stage("Final dough").takes()).containsExactly("Poolish", "Seeds");
    assertThat(batch.flour().in(GRAM)).isCloseTo(5 * 137 / 1.16, within(1e-9));
    assertThat(batch.rollIn()).isEqualTo(grams(226));
    assertThat(recipe().toString())
        .startsWith("class recipe\n")
        .contains("4 cups bread flour, spooned  472 g");
    assertThat(recipe().working().lines()).hasSameSizeAs(recipe().items());
    assertThat(recipe().advice()).extracting(Advice::code).containsOnly("MEASURE_SPREAD");
  }

  @Test
  void theUnitOfALineNeverChangesTheFormula() {
    Batch cups =
        HouseholdRecipe.of("x", "4 cups bread flour", "1 cup water", "1 tbsp salt").batch();
    Batch spoons =
        HouseholdRecipe.of("x", "192 tsp bread flour", "1/2 pint water", "3 tsp salt").batch();
    for (int i = 0; i < 3; i++) {
      assertThat(cups.weight(i).isCloseTo(spoons.weight(i), 1e-12)).isTrue();
    }
  }

  @Test
  void anotherKitchensCupsCanBeMeant() {
    HouseholdRecipe metric =
        HouseholdRecipe.parse(
            "x", List.of("1 cup water", "100 g flour"), Catalogue.builtIn(), CupStandard.METRIC);
    assertThat(metric.items().get(0).weighed().mass().in(GRAM))
        .isCloseTo(237 * 250 / 236.5882365, within(1e-9));
  }

  @Test
  void wrongLinesAreNamed() {
    assertThatThrownBy(() -> HouseholdRecipe.of("x")).hasMessageContaining("needs lines");
    assertThatThrownBy(() -> HouseholdRecipe.of("x", "[icing]")).hasMessageContaining("[icing]");
    assertThatThrownBy(() -> HouseholdRecipe.of("x", "500 g"))
        .hasMessageContaining("an ingredient is missing");
    assertThatThrownBy(() -> HouseholdRecipe.of("x", "2 cups bred flour"))
        .hasMessageContaining("2 cups bred flour")
        .hasMessageContaining("bread flour");
    assertThatThrownBy(() -> HouseholdRecipe.of("x", "some flour"))
        .hasMessageContaining("a number is missing");
    assertThatThrownBy(() -> HouseholdRecipe.of("x", "1 cup water").batch())
        .hasMessageContaining("needs flour");
  }
}
