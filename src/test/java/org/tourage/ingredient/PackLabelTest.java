package org.tourage.ingredient;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.tourage.advice.BakeryException;
import org.tourage.formula.HouseholdRecipe;
import org.tourage.quantity.CupStandard;

/** Labels of invented packs. */
class PackLabelTest {
  private static final List<String> MILL_FLOUR =
      List.of(
          "role: flour",
          "origin: plant",
          "energy: 1485 kJ / 350 kcal",
          "fat: 1.2 g",
          "saturates: 0.2 g",
          "carbohydrate: 70 g",
          "sugars: 0.9 g",
          "fibre: 3.1 g",
          "protein: 11.6 g",
          "salt: 0.01 g",
          "ash: 0.55 g",
          "",
          "# printed on the side",
          "allergens: wheat",
          "may contain: soy, rye",
          "measure: 1 cup = 120 g",
          "measure: 1 sack = 25 kg",
          "also: shop flour, our flour");

  private static PackLabel flour() {
    return PackLabel.per100Grams("mill flour")
        .role(Role.FLOUR)
        .fat(grams(1.2))
        .carbohydrate(grams(70))
        .protein(grams(11.6));
  }

  private static double percentOf(Ingredient ingredient, Component component) {
    return ingredient.composition().share(component).orElseThrow().in(PERCENT);
  }

  @Test
  void waterIsWhatTheLabelLeavesOver() {
    Ingredient flour = flour().fibre(grams(3.1)).salt(grams(0.01)).ash(grams(0.55)).ingredient();
    assertThat(percentOf(flour, Component.WATER))
        .isCloseTo(100 - 1.2 - 70 - 3.1 - 11.6 - 0.55, within(1e-9));
    assertThat(percentOf(flour, Component.CARBOHYDRATE)).isCloseTo(73.1, within(1e-9));
    assertThat(percentOf(flour, Component.SODIUM)).isCloseTo(0.004, within(1e-12));
    assertThat(flour.flour().orElseThrow().protein().in(PERCENT)).isCloseTo(11.6, within(1e-9));
    assertThat(flour.composition().source(Component.WATER).orElseThrow().text())
        .contains("by difference");
    assertThat(flour.composition().source(Component.FAT).orElseThrow().provenance())
        .isEqualTo(Provenance.USER);
  }

  @Test
  void whatIsNotOnTheLabelStaysUnknownAndTheAshSaysWhereItIsFrom() {
    Ingredient flour = flour().salt(grams(1)).ingredient();
    assertThat(flour.composition().share(Component.SUGARS)).isEmpty();
    assertThat(flour.composition().share(Component.FIBRE)).isEmpty();
    assertThat(flour.composition().share(Component.TRANS_FAT)).isEmpty();
    assertThat(percentOf(flour, Component.ASH)).isCloseTo(1, within(1e-9));
    assertThat(flour.composition().source(Component.ASH).orElseThrow().text())
        .contains("taken as the salt");
  }

  @Test
  void aServingIsScaledToAHundredGramsAndAmericanCarbohydrateHoldsItsFibre() {
    Ingredient spread =
        PackLabel.perServing("bench spread", grams(14))
            .role(Role.FAT)
            .energy(kilocalories(100))
            .fat(grams(11))
            .saturates(grams(4))
            .totalCarbohydrate(grams(0.2))
            .fibre(grams(0.1))
            .protein(grams(0))
            .sodium(milligrams(90))
            .density(gramsPerMillilitre(0.95))
            .ingredient();
    assertThat(percentOf(spread, Component.FAT)).isCloseTo(1100 / 14.0, within(1e-9));
    assertThat(percentOf(spread, Component.CARBOHYDRATE)).isCloseTo(20 / 14.0, within(1e-9));
    assertThat(percentOf(spread, Component.SODIUM)).isCloseTo(9 / 14.0, within(1e-9));
    assertThat(spread.weigh("1 cup").mass().in(GRAM)).isCloseTo(0.95 * 236.588, within(0.01));
    assertThat(spread.composition().printedEnergy().orElseThrow())
        .isEqualTo(kilocalories(10000 / 14.0));
  }

  @Test
  void contradictionsAreRefusedWithBothFigures() {
    assertThatThrownBy(() -> flour().energy(kilocalories(1400)).ingredient())
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("1400 kcal printed, 337 kcal by the factors");
    assertThatThrownBy(() -> flour().energy(kilocalories(270)).ingredient())
        .hasMessageContaining("within 15 %");
    assertThatThrownBy(() -> flour().sugars(grams(71)).ingredient())
        .hasMessageContaining("more sugars than carbohydrate")
        .hasMessageContaining("71 g of 70 g");
    assertThatThrownBy(() -> flour().saturates(grams(2)).ingredient())
        .hasMessageContaining("more saturated fat than fat");
    assertThatThrownBy(() -> flour().ash(grams(20)).ingredient())
        .hasMessageContaining("sum to more than there is")
        .hasMessageContaining("102.8 g in 100 g");
    assertThatThrownBy(() -> flour().fat(grams(101))).hasMessageContaining("101 g in 100 g");
    assertThatThrownBy(() -> flour().fat(grams(-1))).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> PackLabel.perServing("x", grams(0))).hasMessageContaining("serving");
    assertThatThrownBy(() -> flour().with(Component.CARBOHYDRATE, grams(3)))
        .hasMessageContaining("with or without");
    assertThatThrownBy(() -> PackLabel.per100Grams("x").role(Role.FAT).fat(grams(80)).ingredient())
        .hasMessageContaining("no carbohydrate, no protein");
    assertThatThrownBy(
            () ->
                PackLabel.per100Grams("x")
                    .fat(grams(80))
                    .carbohydrate(grams(0))
                    .protein(grams(0))
                    .ingredient())
        .hasMessageContaining("role");
  }

  @Test
  void theEnergyMayLieFifteenPercentFromTheFactorsAndNoFurther() {
    double factors = 9 * 1.2 + 4 * 70 + 4 * 11.6;
    for (double share : new double[] {0.851, 1, 1.149}) {
      assertThat(flour().energy(kilocalories(factors * share)).ingredient()).isNotNull();
    }
    for (double share : new double[] {0.849, 1.151}) {
      assertThatThrownBy(() -> flour().energy(kilocalories(factors * share)).ingredient())
          .isInstanceOf(BakeryException.class);
    }
  }

  @Test
  void theRoundingOfALabelIsNoContradiction() {
    Ingredient sugar =
        PackLabel.per100Grams("packed sugar")
            .role(Role.SUGAR)
            .energy(kilojoules(1700))
            .fat(grams(0))
            .carbohydrate(grams(100))
            .sugars(grams(100))
            .protein(grams(0))
            .salt(grams(0.1))
            .ingredient();
    assertThat(percentOf(sugar, Component.WATER)).isZero();
  }

  @Test
  void aLabelIsReadFromLinesAndTakesItsPlaceInTheCatalogue() {
    LabelText.Reading reading = LabelText.parse("mill flour", MILL_FLOUR);
    assertThat(reading.problems()).isEmpty();
    Ingredient flour = reading.require();
    assertThat(flour.id()).isEqualTo("mill-flour");
    assertThat(flour.allergens()).containsExactly(Allergen.WHEAT);
    assertThat(flour.allergensToCheck()).containsExactlyInAnyOrder(Allergen.SOY, Allergen.RYE);
    assertThat(flour.origin()).isEqualTo(Origin.PLANT);
    assertThat(reading.toString()).startsWith("mill flour: water 13.55 %");
    Catalogue mine = Catalogue.builtIn().with(flour, reading.names());
    HouseholdRecipe recipe =
        HouseholdRecipe.parse(
            "own",
            List.of("2 cups mill flour", "100 g shop flour"),
            mine,
            CupStandard.US_CUSTOMARY);
    assertThat(recipe.batch().total()).isEqualTo(grams(340));
    assertThat(mine.near("our flours")).first().isEqualTo("mill flour");
  }

  @Test
  void everyLineThatCanNotBeReadIsToldWithItsNumber() {
    LabelText.Reading reading =
        LabelText.parse(
            "muddle",
            List.of(
                "role: flower",
                "fat: 1.2",
                "fat: 2 g",
                "protien: 3 g",
                "carbohydrate 70 g",
                "allergens: wheat, moonbeam",
                "measure: 1 cup",
                "density: heavy",
                "energy: 1000 kJ / 500 kcal",
                "salt: 1 g",
                "sodium: 400 mg"));
    assertThat(reading.ingredient()).isEmpty();
    assertThat(reading.problems())
        .extracting(LabelText.Problem::line)
        .containsExactlyInAnyOrder(1, 2, 3, 4, 5, 6, 7, 8, 9, 10);
    assertThat(reading.toString()).contains("line 4: ").contains("protien");
    assertThatThrownBy(reading::require).isInstanceOf(BakeryException.class);
  }

  @Test
  void aContradictionNamesItsLineWhereItHasOne() {
    LabelText.Reading sugars =
        LabelText.parse(
            "x",
            List.of(
                "role: sugar", "fat: 0 g", "protein: 0 g", "carbohydrate: 5 g", "sugars: 50 g"));
    assertThat(sugars.problems()).extracting(LabelText.Problem::line).containsExactly(5);
    LabelText.Reading energy =
        LabelText.parse(
            "x",
            List.of(
                "role: sugar",
                "per: 30 g",
                "energy: 900 kcal",
                "fat: 0 g",
                "protein: 0 g",
                "total carbohydrate: 28 g",
                "vitamin d: 2 µg"));
    assertThat(energy.problems()).extracting(LabelText.Problem::line).containsExactly(0);
    assertThat(energy.toString()).contains("900 kcal printed, 112 kcal");
  }

  @Test
  void anUnknownIngredientHasAMassAndNoFigures() {
    Ingredient sprinkles = Ingredient.unknown("hundreds and thousands");
    assertThat(sprinkles.composition().isUnknown()).isTrue();
    assertThat(Catalogue.builtIn().require("salt").composition().isUnknown()).isFalse();
    assertThat(sprinkles.composition().share(Component.WATER)).isEmpty();
    assertThat(sprinkles.weigh("30 g").mass()).isEqualTo(grams(30));
  }
}
