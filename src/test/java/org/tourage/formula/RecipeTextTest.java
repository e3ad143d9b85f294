package org.tourage.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.GRAM;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.tourage.advice.BakeryException;
import org.tourage.advice.Problem;
import org.tourage.ingredient.Allergen;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Composition;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;
import org.tourage.quantity.CupStandard;
import org.tourage.quantity.HouseholdAmount;

/**
 * How the text of a recipe is read: chains, flour bases, brackets, and whatever else is written.
 */
class RecipeTextTest {
  private static double weight(String line) {
    return HouseholdRecipe.of("x", line).items().get(0).weighed().mass().in(GRAM);
  }

  private static BakeryException refused(String... lines) {
    BakeryException exception =
        catchThrowableOfType(BakeryException.class, () -> HouseholdRecipe.of("x", lines));
    assertThat(exception).as(String.join(" | ", lines)).isNotNull();
    return exception;
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          2 large eggs (100 g)                  | 100
          2 (110 g) large eggs                  | 110
          2 large eggs (cold) (104 g)           | 104
          2 cups large eggs (500 g)             | 500
          2 large eggs                          | 100
          2 lb (907 g) bread flour              | 907
          1 cup (4 oz) bread flour              | 113.398
          """)
  void aMassInBracketsWins(String line, double grams) {
    assertThat(weight(line)).isCloseTo(grams, within(1e-3));
  }

  @ParameterizedTest
  @ValueSource(strings = {"300 g large eggs", "2 cups large eggs", "2 packets large eggs"})
  void aMeasureTimesASizeIsRefused(String line) {
    assertThat(refused(line))
        .hasMessageContaining("a measure and a size together")
        .hasMessageContaining("large whole egg");
    Ingredient egg = Catalogue.builtIn().require("egg");
    assertThatThrownBy(() -> egg.weighPieces(HouseholdAmount.parse("300 g"), "large"))
        .isInstanceOf(BakeryException.class);
  }

  @Test
  void twoMassesThatDisagreeAreRefused() {
    assertThat(refused("500 g (450 g) bread flour")).hasMessageContaining("two masses");
    assertThat(refused("2 sticks (226 g) (300 g) butter")).hasMessageContaining("two masses");
    assertThat(refused("2 sticks (226 g butter")).hasMessageContaining("bracket is not closed");
  }

  @Test
  void aChainOfBuildsIsWrittenByName() {
    Batch batch =
        HouseholdRecipe.of(
                "rye of three builds",
                "[preferment First]",
                "50 g rye flour",
                "50 g water",
                "[preferment Second]",
                "80 g of First",
                "100 g rye flour",
                "100 g water",
                "[preferment Third]",
                "all of second",
                "200 g rye flour",
                "140 g water",
                "[dough]",
                "all of Third",
                "500 g bread flour",
                "300 g water",
                "18 g salt")
            .batch();
    Formula formula = batch.formula();
    assertThat(formula.stages())
        .extracting(Stage::name)
        .containsExactly("First", "Second", "Third", "Final dough");
    assertThat(formula.stage("Third").takes()).containsExactly("Second");
    assertThat(formula.stage("Final dough").takes()).containsExactly("Third");
    assertThat(batch.flour()).isEqualTo(grams(40 + 100 + 200 + 500));
    assertThat(batch.madeOf(formula.stage("First"))).isEqualTo(grams(100));
    assertThat(batch.wholeWeightOf(formula.stage("Third"))).isEqualTo(grams(620));
    assertThat(batch.toString()).contains("all of Third").contains("of it kept back");
  }

  @Test
  void aStageIsTakenInPartByMassByShareOrWithoutTheWordOf() {
    for (String half : new String[] {"100 g of Poolish", "50 % of Poolish", "100 g poolish"}) {
      HouseholdRecipe recipe =
          HouseholdRecipe.of(
              "x",
              "500 g bread flour",
              half,
              "[preferment Poolish]",
              "100 g bread flour",
              "100 g water");
      assertThat(recipe.batch().flour()).as(half).isEqualTo(grams(550));
      assertThat(recipe.draws()).hasSize(1);
      assertThat(recipe.toString()).contains("  " + half);
    }
  }

  @Test
  void drawsThatCannotBeAreRefusedWithTheirLine() {
    String[] poolish = {"[preferment Poolish]", "100 g bread flour", "100 g water", "[dough]", ""};
    poolish[4] = "all of Biga";
    assertThat(refused(poolish))
        .hasMessageContaining("line 5, \"all of Biga\": no such stage to take: \"Biga\"");
    poolish[4] = "1 cup of Poolish";
    assertThat(refused(poolish)).hasMessageContaining("line 5: how much of \"Poolish\"?");
    poolish[4] = "100-200 g of Poolish";
    assertThat(refused(poolish)).hasMessageContaining("line 5: how much of \"Poolish\"?");
    assertThat(refused("[soaker Oats]", "50 g oats", "[dough]", "50 g of oats"))
        .hasMessageContaining("a stage and an ingredient have one name");
    assertThat(refused("500 g flour", "all of Seed", "[soaker Seed]"))
        .hasMessageContaining("line 2, \"all of Seed\": a stage that is taken has no lines");
    assertThat(refused("[soaker A]", "5 g flour", "[preferment A]"))
        .hasMessageContaining("line 3, \"[preferment A]\": two stages have one name");
    HouseholdRecipe ring =
        HouseholdRecipe.of(
            "x",
            "[preferment A]",
            "all of B",
            "10 g flour",
            "[preferment B]",
            "all of A",
            "10 g flour");
    assertThatThrownBy(ring::batch)
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("ring");
  }

  @Test
  void whatIsDeclaredAsFlourCountsAsFlourInItsLineOnly() {
    HouseholdRecipe recipe =
        HouseholdRecipe.of(
            "gluten-free tin loaf",
            "300 g rice flour",
            "150 g cornstarch, as flour",
            "50 g cornstarch",
            "[soaker Gel]",
            "50 g potato flour, sieved, as flour",
            "400 g water");
    assertThat(recipe.batch().flour()).isEqualTo(grams(500));
    assertThat(recipe.batch().formula().hydration().nominal()).isEqualTo(percent(80));
    assertThat(recipe.items())
        .extracting(HouseholdRecipe.Item::flour)
        .containsExactly(true, true, false, true, false);
    assertThat(recipe.items().get(3).note()).isEqualTo("sieved");
    assertThat(HouseholdRecipe.of("x", "1 cup flour, scooped, as flour").items().get(0).weighed())
        .hasToString("1 cup all-purpose flour = 145 g (138 g to 156 g)");
  }

  @Test
  void ryeIsFlourWithoutAWord() {
    assertThat(
            HouseholdRecipe.of("x", "100 g rye flour", "50 g dark rye flour", "70 g water")
                .batch()
                .flour())
        .isEqualTo(grams(150));
  }

  @Test
  void oneHandFillsAllFloursOfARecipe() {
    // bread flour is on record as scooped, all-purpose flour as spooned
    assertThat(weight("1 cup bread flour")).isCloseTo(137 / 1.16, within(1e-9));
    assertThat(weight("1 cup bread flour, scooped")).isEqualTo(137);
    assertThat(weight("1 cup all-purpose flour")).isEqualTo(125);
    HouseholdRecipe recipe = HouseholdRecipe.of("x", "1 cup bread flour");
    assertThat(recipe.items().get(0).weighed().range().high().in(GRAM))
        .isCloseTo(137 / 1.16 * 1.25, within(1e-9));
  }

  @Test
  void everyBadLineIsReportedWithItsNumberInOneException() {
    BakeryException exception =
        refused(
            "# a recipe",
            "500 g bred flour",
            "2 lb.25 oz water",
            "300 g water",
            "[poolish]",
            "salt",
            "[dough");
    assertThat(exception.problems()).extracting(Problem::line).containsExactly(2, 3, 5, 6, 7);
    assertThat(exception.problems().get(0).text()).isEqualTo("500 g bred flour");
    assertThat(exception.problems().get(0).exception().reason())
        .isEqualTo(BakeryException.Reason.UNKNOWN_NAME);
    assertThat(exception)
        .hasMessageStartingWith(
            "5 lines can't be read:\nline 2, \"500 g bred flour\": no such ingredient")
        .hasMessageContaining("did you mean bread flour")
        .hasMessageContaining("\nline 7: not a heading");
    assertThat(refused("salt").problems()).hasSize(1);
    assertThatThrownBy(() -> HouseholdRecipe.of("x")).hasMessageContaining("needs lines");
  }

  @Test
  void linesOfALargerTextKeepTheirNumbers() {
    assertThatThrownBy(
            () ->
                HouseholdRecipe.read(
                    "x",
                    List.of(
                        new HouseholdRecipe.Row(12, "500 g flour"),
                        new HouseholdRecipe.Row(40, "5 g xyzzy")),
                    Catalogue.builtIn(),
                    CupStandard.US_CUSTOMARY))
        .hasMessageContaining("line 40, \"5 g xyzzy\": no such ingredient: \"xyzzy\"");
  }

  @Test
  void anIngredientOfTheRecipesOwnIsLookedUpFirst() {
    Ingredient blend =
        Ingredient.builder("school-blend", "school blend")
            .role(Role.FLOUR)
            .composition(Composition.builder().water(percent(12)).protein(percent(8)).build())
            .allergens(Allergen.WHEAT)
            .portion("1 cup", grams(130))
            .build();
    HouseholdRecipe recipe =
        HouseholdRecipe.parse(
            "x",
            List.of("2 cups school blend", "100 g water"),
            Catalogue.builtIn().with(blend),
            CupStandard.US_CUSTOMARY);
    assertThat(recipe.batch().formula().has(blend)).isTrue();
    assertThat(recipe.batch().flour().in(GRAM)).isCloseTo(260, within(1e-9));
    assertThat(refused("200 g school blend").problems().get(0).exception().expected())
        .startsWith("did you mean");
  }

  @Test
  void aByteOrderMarkIsPassedOverAndOtherHiddenCharactersAreRefused() {
    assertThat(HouseholdRecipe.of("x", "\ufeff500 g flour").items()).hasSize(1);
    assertThat(HouseholdRecipe.of("x", "\ufeff[dough]", "500 g flour").items()).hasSize(1);
    for (String hidden : new String[] {"\u001b[31m", "\u0000", "\u0007", "\u202e", "\u200b"}) {
      BakeryException exception = refused("500 g flour", "2 g " + hidden + "salt");
      assertThat(exception)
          .hasMessageContaining("line 2: a character that can't be seen")
          .hasMessageContaining("\\u");
      assertThat(exception.getMessage()).doesNotContain(hidden.substring(0, 1));
      assertThat(exception.problems().get(0).text()).doesNotContain(hidden.substring(0, 1));
    }
    assertThatThrownBy(() -> HouseholdRecipe.of("\u001b[2Jx", "500 g flour"))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("\\u001b");
    assertThat(weight("500\u202fg\u00a0bread\tflour")).isEqualTo(500);
  }

  @Test
  void aHeadingOfSpacesAndALineOfMegabytesAreAnsweredAtOnce() {
    Assertions.assertTimeout(
        Duration.ofSeconds(2),
        () -> {
          refused("[dough" + " ".repeat(2000) + "x");
          refused("[" + " ".repeat(200_000) + "dough x] y");
          refused("[preferment " + "x".repeat(5000) + "]");
          assertThat(refused("500 g " + "x".repeat(5_000_000))).hasMessageMatching("(?s).{1,500}");
          refused("(".repeat(900) + ")".repeat(90));
          refused("1 g " + "()".repeat(450));
        });
  }

  @Test
  void tenMegabytesOfShortLinesAreAnsweredInOnePass() {
    String[] same = new String[1_200_000];
    Arrays.fill(same, "1 g salt");
    String[] different = new String[800_000];
    String[] bad = new String[800_000];
    for (int i = 0; i < bad.length; i++) {
      different[i] = i + " g flour";
      bad[i] = "1 g nothing" + i;
    }
    // wide, for a busy machine; what is quadratic takes hours
    Assertions.assertTimeout(
        Duration.ofSeconds(60),
        () -> {
          assertThat(HouseholdRecipe.of("x", same).items()).hasSize(same.length);
          assertThat(refused(different)).hasMessageContaining("200000 different lines");
          assertThat(refused(bad).problems()).hasSize(50);
        });
  }

  @Test
  void countsThatOverflowAreRefused() {
    assertThatThrownBy(() -> PieceOrder.raw(Integer.MAX_VALUE, grams(80)))
        .hasMessageContaining("from 1 to 1000000");
    assertThatThrownBy(() -> PieceOrder.raw(-5, grams(80))).hasMessageContaining("-5 pieces");
    Batch batch = HouseholdRecipe.of("x", "500 g flour").batch();
    assertThatThrownBy(() -> batch.pieces(grams(1e-9), percent(0)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("too many pieces");
    assertThatThrownBy(() -> batch.times(1e300).dough()).isInstanceOf(BakeryException.class);
    assertThat(refused("9999999999999 kg flour")).hasMessageContaining("line 1: more than");
  }
}
