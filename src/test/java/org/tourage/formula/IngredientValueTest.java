package org.tourage.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.grams;
import static org.tourage.quantity.Amounts.percent;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.tourage.advice.BakeryException;
import org.tourage.ingredient.Allergen;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Component;
import org.tourage.ingredient.Composition;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;

/** An ingredient is what it is made of and what it brings, not what it is called. */
class IngredientValueTest {
  private static final Ingredient TABLE = Catalogue.builtIn().require("bread flour");
  private static final Ingredient DRY = flour(10);
  private static final Ingredient DAMP = flour(15);

  private static Ingredient flour(double moisture) {
    return Ingredient.builder("mill-flour", "mill flour")
        .role(Role.FLOUR)
        .composition(Composition.builder().water(percent(moisture)).protein(percent(12)).build())
        .allergens(Allergen.WHEAT)
        .build();
  }

  private static Formula dough(Ingredient flour) {
    return Formula.byPercent(
        "dough",
        f -> f.line(flour, percent(100)).line("water", percent(62)).line("salt", percent(2)));
  }

  private static Formula withMilk(double water) {
    Ingredient milk =
        Ingredient.builder("farm-milk", "farm milk")
            .role(Role.LIQUID)
            .composition(Composition.builder().water(percent(water)).build())
            .build();
    return Formula.byPercent("milk dough", f -> f.line(DRY, percent(100)).line(milk, percent(60)));
  }

  @Test
  void ingredientsOfOneIdAndDifferentContentAreNotEqual() {
    assertThat(DRY).isNotEqualTo(DAMP).isEqualTo(flour(10)).hasSameHashCodeAs(flour(10));
    Ingredient sesame =
        Ingredient.builder("mill-flour", "mill flour")
            .role(Role.FLOUR)
            .composition(DRY.composition())
            .allergens(Allergen.WHEAT, Allergen.SESAME)
            .build();
    assertThat(sesame).isNotEqualTo(DRY);
    Ingredient measured =
        Ingredient.builder("mill-flour", "mill flour")
            .role(Role.FLOUR)
            .composition(DRY.composition())
            .allergens(Allergen.WHEAT)
            .portion("1 cup", grams(130))
            .build();
    assertThat(measured).isNotEqualTo(DRY);
  }

  @Test
  void anIngredientEqualsItselfAfterATripThroughAStream() throws Exception {
    for (Ingredient ingredient : Catalogue.builtIn().all()) {
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
        out.writeObject(ingredient);
      }
      try (ObjectInputStream in =
          new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
        assertThat(in.readObject()).isEqualTo(ingredient).hasSameHashCodeAs(ingredient);
      }
    }
  }

  @Test
  void formulasOfDifferentTrueHydrationAreNotEqual() {
    Formula thin = withMilk(92);
    Formula thick = withMilk(70);
    assertThat(thin.hydration().trueHydration()).isNotEqualTo(thick.hydration().trueHydration());
    assertThat(thin).isNotEqualTo(thick).isEqualTo(withMilk(92));
    assertThat(dough(DRY).hydration().dryMatterRatio())
        .isNotEqualTo(dough(DAMP).hydration().dryMatterRatio());
    assertThat(dough(DRY)).isNotEqualTo(dough(DAMP)).isEqualTo(dough(flour(10)));
  }

  @Test
  void twoContentsOfOneIdAreKeptApartAndNeitherIsDropped() {
    Formula both =
        Formula.byPercent(
            "both",
            f -> f.line(DRY, percent(40)).line(DAMP, percent(60)).line("water", percent(62)));
    assertThat(both.overall()).hasSize(3);
    assertThat(both.percent(DRY)).isEqualTo(percent(40));
    assertThat(both.percent(DAMP)).isEqualTo(percent(60));
    Formula same =
        both.replace((stage, line) -> List.of(new Formula.Part(line.ingredient(), line.percent())))
            .formula();
    assertThat(same).isEqualTo(both);
    // the water of each flour counts as its own bag has it: 4 and 9 of 100
    double water =
        62 * Catalogue.builtIn().require("water").composition().fraction(Component.WATER);
    assertThat(both.hydration().dryMatterRatio().in(PERCENT))
        .isCloseTo(100 * (water + 4 + 9) / 87, within(1e-9));
    Batch batch = both.forFlour(grams(1000));
    assertThat(batch.weightOf(DAMP).in(GRAM)).isCloseTo(600, within(1e-9));
  }

  @Test
  void aNameThatTwoContentsShareIsRefusedNotGuessed() {
    Formula both =
        Formula.byPercent(
            "both",
            f -> f.line(DRY, percent(40)).line(DAMP, percent(60)).line("water", percent(62)));
    assertThatThrownBy(() -> both.percent("mill flour"))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("mill flour")
        .hasMessageContaining("two");
    assertThatThrownBy(() -> both.forIngredient("mill-flour", grams(500)))
        .isInstanceOf(BakeryException.class);
  }

  @Test
  void anIngredientByAnyOfItsNamesIsTheFormulasOwn() {
    Ingredient own =
        Ingredient.builder("bread-flour", "bread flour of Kestrel Lane")
            .role(Role.FLOUR)
            .composition(Composition.builder().water(percent(11)).protein(percent(13)).build())
            .allergens(Allergen.WHEAT)
            .build();
    Formula formula = dough(own);
    for (String name : List.of("bread-flour", "bread flour", "strong flour", "Bread Flour")) {
      Ingredient found = formula.ingredient(name);
      assertThat(found).as(name).isSameAs(own);
      assertThat(found.composition().share(Component.WATER)).contains(percent(11));
    }
    assertThat(TABLE).isNotEqualTo(own);
  }
}
