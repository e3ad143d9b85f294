package org.tourage.ingredient;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.tourage.quantity.BakeryUnits.GRAM;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.tourage.advice.BakeryException;
import org.tourage.formula.HouseholdRecipe;
import org.tourage.internal.Csv;
import org.tourage.reference.Checks;
import org.tourage.reference.Checks.Row;

/** What a baker writes is what a baker gets. */
class EverydayNamesTest {
  private final Catalogue catalogue = Catalogue.builtIn();

  static Stream<Row> lines() {
    return Checks.rows("everyday-lines.csv");
  }

  static Stream<Row> windows() {
    return Checks.rows("household-windows.csv");
  }

  @ParameterizedTest
  @MethodSource("lines")
  void everydayLinesOfAmericanAndBritishHomeBakingAreReadWithoutAMiss(Row row) {
    HouseholdRecipe.Item item = HouseholdRecipe.of("line", row.text("line")).items().get(0);
    assertThat(item.weighed().ingredient().id()).isEqualTo(row.text("id"));
    assertThat(item.weighed().mass().in(GRAM))
        .isBetween(row.number("low_grams"), row.number("high_grams"));
  }

  @Test
  void thereAreAtLeastSixtySuchLinesAndNoneTwice() {
    assertThat(lines().map(r -> r.text("line")))
        .hasSizeGreaterThanOrEqualTo(60)
        .doesNotHaveDuplicates();
  }

  @ParameterizedTest
  @MethodSource("windows")
  void householdMeasuresLieInTheWindowsOfTheTrade(Row row) {
    Ingredient ingredient = catalogue.require(row.text("id"));
    String filling = row.text("filling");
    Weighed weighed =
        filling.isEmpty()
            ? ingredient.weigh(row.text("measure"))
            : ingredient.weigh(
                row.text("measure"), Filling.valueOf(filling.toUpperCase(Locale.ROOT)));
    assertThat(weighed.mass().in(GRAM))
        .isBetween(row.number("low_grams") - 1e-9, row.number("high_grams") + 1e-9);
  }

  @Test
  void whereARecipeDoesNotSayEveryFlourIsFilledByTheSameHand() {
    assertThat(catalogue.all())
        .filteredOn(i -> i.is(Role.FLOUR))
        .hasSizeGreaterThan(40)
        .allSatisfy(
            i -> assertThat(i.weigh("1 cup").filling()).as(i.id()).isEqualTo(Filling.SPOONED));
  }

  @ParameterizedTest
  @CsvSource({
    "flaxseed meal, flaxseed",
    "whole spelt flour, spelt-flour-whole",
    "high-gluten flour, high-gluten-flour",
    "pinhead oats, steel-cut-oats",
    "porridge oats, rolled-oats",
    "quick-cooking oats, quick-oats",
    "oat flakes, oat-flakes",
    "oat groats, oats",
    "melted butter, butter-unsalted",
    "room temperature butter, butter-unsalted",
    "boiling water, water",
    "chilled buttermilk, buttermilk-lowfat",
    "fresh ginger, ginger-fresh",
    "ginger, ginger-ground",
    "Crème Fraîche, creme-fraiche",
    "confectioners\u2019 sugar, powdered-sugar",
    "white rye flour, rye-flour-light",
    "wholegrain rye flour, rye-flour-dark"
  })
  void namesMeanWhatABakerMeans(String name, String id) {
    assertThat(catalogue.require(name).id()).isEqualTo(id);
  }

  @Test
  void highGlutenFlourIsNeverBreadFlourInSilence() {
    Ingredient strong = catalogue.require("high-gluten flour");
    Ingredient bread = catalogue.require("bread flour");
    assertThat(strong).isNotEqualTo(bread);
    assertThat(strong.composition().fraction(Component.PROTEIN))
        .isGreaterThan(bread.composition().fraction(Component.PROTEIN) + 0.02);
    assertThat(strong.composition().source(Component.PROTEIN).orElseThrow().provenance())
        .isEqualTo(Provenance.COMMON_PRACTICE);
  }

  @Test
  void aNearNameIsNearInMeaningAndKind() {
    assertThat(catalogue.near("ground cassia")).first().isEqualTo("ground cinnamon");
    assertThat(catalogue.near("ground cinamon")).first().isEqualTo("ground cinnamon");
    assertThat(catalogue.near("ground zedoary"))
        .noneMatch(n -> n.contains("sugar") || n.contains("flour"));
    assertThat(catalogue.near("kamut flour")).contains("emmer flour");
    assertThat(catalogue.near("type 00 flour")).contains("bread flour, unenriched");
    assertThat(catalogue.near("vanila extract")).first().isEqualTo("vanilla extract");
    assertThat(catalogue.near("breadflour")).first().isEqualTo("bread flour");
    assertThat(catalogue.near("hazlenut oil")).noneMatch(n -> n.contains("flour"));
    assertThat(catalogue.near("skyr")).contains("Greek yogurt");
    assertThat(catalogue.near("xyzzy")).isEmpty();
    assertThatThrownBy(() -> catalogue.require("xyzzy"))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("of your own, from its label");
  }

  @ParameterizedTest
  @ValueSource(strings = {"cooked quinoa", "fresh rosemary", "gluten-free flour", "00 flour"})
  void aDifferentThingIsNotTakenForOneThatIsKnown(String name) {
    assertThat(catalogue.find(name)).isEmpty();
    assertThat(catalogue.hint(name)).startsWith("did you mean");
  }

  @Test
  void noEverydayNameStandsForTwoIngredients() throws Exception {
    Map<String, String> seen = new HashMap<>();
    List<Map<String, String>> names =
        Csv.read(Files.newInputStream(Path.of("reference-data/catalogue/names.csv")));
    for (Map<String, String> row : names) {
      String name = Csv.field(row, "name");
      String id = Csv.field(row, "id");
      if (Csv.field(row, "kind").isEmpty()) {
        assertThat(seen.put(CatalogueNames.key(name), id)).as(name).isNull();
        assertThat(catalogue.require(name).id()).as(name).isEqualTo(id);
      } else {
        assertThat(catalogue.find(name)).as(name).isEmpty();
        assertThat(catalogue.near(name)).as(name).contains(catalogue.require(id).name());
      }
    }
    assertThat(seen).hasSizeGreaterThan(700);
  }

  @Test
  void everyIngredientCanBeBuiltAndAddedSugarsAreKnownOrUnknownButNeverAboveTheSugars() {
    assertThat(catalogue.all()).hasSizeGreaterThanOrEqualTo(240);
    assertThat(catalogue.all())
        .allSatisfy(
            i -> {
              Composition c = i.composition();
              assertThat(c.fraction(Component.ADDED_SUGARS))
                  .isLessThanOrEqualTo(c.fraction(Component.SUGARS) + 1e-12);
              assertThat(i.roles()).isNotEmpty();
            });
    assertThat(
            catalogue
                .require("granulated sugar")
                .composition()
                .share(Component.ADDED_SUGARS)
                .orElseThrow()
                .value())
        .isEqualTo(99.8);
    assertThat(catalogue.require("dark chocolate").composition().share(Component.ADDED_SUGARS))
        .isEmpty();
  }
}
