package org.tourage.ingredient;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.tourage.quantity.Amounts.percent;

import org.junit.jupiter.api.Test;
import org.tourage.advice.BakeryException;
import org.tourage.internal.Csv;

class ExchangeFactsTest {
  private static final Catalogue CATALOGUE = Catalogue.builtIn();

  @Test
  void everyRowOfTheTablesNamesAnIngredientOfTheCatalogue() {
    for (var row : Csv.table(ExchangeFacts.class, "exchange-facts.csv")) {
      Ingredient ingredient = CATALOGUE.require(Csv.field(row, "id"));
      assertThat(ingredient.id()).isEqualTo(Csv.field(row, "id"));
      assertThat(ingredient.yeastForm().map(Enum::name).orElse(""))
          .isEqualTo(Csv.field(row, "yeast_form"));
      assertThat(ingredient.brownsSooner()).isEqualTo(!Csv.field(row, "browns_sooner").isEmpty());
    }
    for (var row : Csv.table(ExchangeFacts.class, "plant-substitutes.csv")) {
      Ingredient plant = CATALOGUE.require(Csv.field(row, "substitute"));
      assertThat(plant.origin()).as(plant.id()).isNotEqualTo(Origin.ANIMAL);
    }
  }

  @Test
  void everyYeastOfTheCatalogueSaysItsForm() {
    assertThat(CATALOGUE.all().stream().filter(i -> i.is(Role.YEAST)))
        .isNotEmpty()
        .allMatch(i -> i.yeastForm().isPresent());
  }

  @Test
  void anIngredientOfOnesOwnBringsItsOwnFacts() {
    Ingredient yeast =
        Ingredient.builder("sachet", "sachet yeast")
            .role(Role.YEAST)
            .composition(Composition.builder().water(percent(6)).build())
            .yeastForm(YeastForm.ACTIVE_DRY)
            .sweetness(percent(0))
            .brownsSooner()
            .build();
    assertThat(YeastForm.of(yeast)).contains(YeastForm.ACTIVE_DRY);
    assertThat(yeast.sweetness()).contains(percent(0));
    assertThat(yeast.brownsSooner()).isTrue();
    assertThatThrownBy(() -> Ingredient.builder("x", "x").sweetness(percent(-1)))
        .isInstanceOf(BakeryException.class);
  }

  @Test
  void creamGivesWayToWhatIsAsRich() {
    assertThat(CATALOGUE.plantSubstitute(CATALOGUE.require("heavy cream")).orElseThrow().id())
        .isEqualTo("coconut-milk-canned");
    assertThat(CATALOGUE.plantSubstitute(CATALOGUE.require("whole milk")).orElseThrow().id())
        .isEqualTo("soy-drink-unsweetened");
    assertThat(CATALOGUE.plantSubstitute(CATALOGUE.require("water"))).isEmpty();
  }
}
