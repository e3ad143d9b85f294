package org.tourage.ingredient;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.grams;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.GRAM_PER_MILLILITRE;
import static org.tourage.quantity.BakeryUnits.KILOCALORIE;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.lang.reflect.InvocationTargetException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.tourage.advice.BakeryException;

class FoodDocumentTest {
  private static final List<Component> PUBLISHED =
      List.of(
          Component.WATER,
          Component.PROTEIN,
          Component.FAT,
          Component.CARBOHYDRATE,
          Component.FIBRE,
          Component.SUGARS,
          Component.ASH,
          Component.SODIUM,
          Component.SATURATED_FAT,
          Component.CALCIUM,
          Component.IRON);

  private static String resource(String name) {
    try (InputStream in =
        Objects.requireNonNull(FoodDocumentTest.class.getResourceAsStream(name), name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  /** A food of one line of nutrients. */
  private static String food(String nutrients) {
    return "{\"fdcId\":900000099,\"dataType\":\"SR Legacy\",\"description\":\"a food\","
        + "\"foodNutrients\":["
        + nutrients
        + "]}";
  }

  private static String nutrient(int id, String amount, String unit) {
    return "{\"nutrient\":{\"id\":"
        + id
        + ",\"unitName\":\""
        + unit
        + "\"},\"amount\":"
        + amount
        + "}";
  }

  private static void isTheRow(Composition read, String id) {
    Composition row = Catalogue.builtIn().require(id).composition();
    for (Component part : PUBLISHED) {
      assertThat(read.share(part).isPresent())
          .as(part.name())
          .isEqualTo(row.share(part).isPresent());
      assertThat(read.fraction(part)).as(part.name()).isEqualTo(row.fraction(part), within(1e-12));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"food-sr-legacy.json", "food-abridged.json", "food-search.json"})
  void everyLayoutGivesTheFiguresOfTheTable(String file) {
    FoodDocument food = FoodDocument.parseOne(resource(file));

    assertThat(food.description()).isEqualTo("Wheat flour, white, bread, enriched");
    isTheRow(food.composition(), "bread-flour");
    assertThat(KILOCALORIE.measure(food.composition().printedEnergy().orElseThrow()))
        .isEqualTo(361, within(1e-9));
  }

  @Test
  void aListOfFoundationFoodsGivesEachWithItsNumberAsSource() {
    List<FoodDocument> foods = FoodDocument.parse(resource("foods-foundation.json"));

    assertThat(foods).hasSize(3);
    isTheRow(foods.get(0).composition(), "milk-whole");
    isTheRow(foods.get(1).composition(), "butter-unsalted");
    assertThat(foods.get(1).composition().source(Component.FAT).orElseThrow().toString())
        .isEqualTo("FoodData Central, fdcId 900000002, Foundation, 2015-09-01 (user)");
    assertThat(KILOCALORIE.measure(foods.get(0).composition().printedEnergy().orElseThrow()))
        .isEqualTo(61, within(1e-9));
  }

  @Test
  void whatIsNotReportedStaysUnknownAndIsNamed() {
    FoodDocument flour = FoodDocument.parseOne(resource("food-sr-legacy.json"));

    assertThat(flour.missing()).contains(Component.TRANS_FAT, Component.ADDED_SUGARS);
    assertThat(flour.composition().share(Component.TRANS_FAT)).isEmpty();
    // a reported nought is nought
    assertThat(flour.composition().share(Component.CHOLESTEROL)).isPresent();
    assertThat(flour.toString()).contains("not reported: ", "trans fat");
    // Foundation layout: the nutrient is there, its amount is not
    assertThat(FoodDocument.parse(resource("foods-foundation.json")).get(2).missing())
        .contains(Component.TRANS_FAT);
  }

  @Test
  void aFoodWithoutItsWaterHasUnknownWaterAndNotNone() {
    FoodDocument food = FoodDocument.parseOne(food(nutrient(1003, "12", "g")));

    assertThat(food.composition().share(Component.WATER)).isEmpty();
    assertThat(food.missing()).contains(Component.WATER);
  }

  @Test
  void itBecomesAnIngredientWhoseAllergensAreUnknownUntilTheyAreStated() {
    FoodDocument food = FoodDocument.parse(resource("foods-branded.json")).get(0);
    assertThat(food.ingredientsText()).contains("WHEAT FLOUR, MALTED BARLEY FLOUR, NIACIN, IRON.");

    Ingredient silent = food.toIngredient("mill flour").role(Role.FLOUR).build();
    assertThat(silent.id()).isEqualTo("fdc-900000021");
    assertThat(silent.allergens()).isEmpty();
    assertThat(silent.areAllergensKnown()).isFalse();

    Ingredient stated =
        food.toIngredient("mill flour")
            .role(Role.FLOUR)
            .allergens(Allergen.WHEAT, Allergen.BARLEY)
            .build();
    assertThat(stated.areAllergensKnown()).isTrue();
    assertThat(stated.allergens()).containsExactlyInAnyOrder(Allergen.WHEAT, Allergen.BARLEY);
    assertThat(food.toIngredient("x").role(Role.FLOUR).allergens().build().areAllergensKnown())
        .isTrue();
  }

  @Test
  void householdMeasuresAreReadAndThoseThatAreNoneAreNamed() {
    FoodDocument milk = FoodDocument.parse(resource("foods-foundation.json")).get(0);

    Ingredient ingredient = milk.toIngredient("milk").role(Role.LIQUID).build();
    assertThat(ingredient.weigh("2 cups").mass()).isEqualTo(grams(488));
    assertThat(milk.measuresLeftOut()).containsExactly("1 quart, of the school");
  }

  @Test
  void theWaterOfABrandedFoodIsWorkedByDifferenceAndSaysSo() {
    Composition flour = FoodDocument.parse(resource("foods-branded.json")).get(0).composition();

    // 100 − 11.98 − 1.66 − 72.53 − salt 2 mg × 2.5
    assertThat(flour.share(Component.WATER).orElseThrow().in(PERCENT))
        .isEqualTo(13.825, within(1e-9));
    assertThat(flour.source(Component.WATER).orElseThrow().text())
        .endsWith("; water by difference");
    assertThat(flour.share(Component.ASH)).isEmpty();
  }

  @Test
  void figuresForAHundredMillilitresAskForADensity() {
    FoodDocument milk = FoodDocument.parse(resource("foods-branded.json")).get(1);

    assertThat(milk.needsDensity()).isTrue();
    assertThatThrownBy(milk::composition)
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("fdcId 900000022")
        .hasMessageContaining("100 ml")
        .hasMessageContaining("withDensity");
    assertThat(milk.missing()).contains(Component.WATER);

    FoodDocument dense = milk.withDensity(GRAM_PER_MILLILITRE.amount(1.03));
    Composition row = Catalogue.builtIn().require("milk-whole").composition();
    assertThat(dense.composition().fraction(Component.PROTEIN))
        .isEqualTo(row.fraction(Component.PROTEIN), within(1e-6));
    // ash is taken as the salt, which is less than the ash of milk
    assertThat(dense.composition().fraction(Component.WATER))
        .isEqualTo(row.fraction(Component.WATER), within(0.007));
    assertThat(KILOCALORIE.measure(dense.composition().printedEnergy().orElseThrow()))
        .isEqualTo(61, within(0.01));
    assertThat(dense.toIngredient("milk").role(Role.LIQUID).build().weigh("1 cup").mass().in(GRAM))
        .isEqualTo(243.7, within(0.1));
    assertThatThrownBy(() -> milk.withDensity(GRAM_PER_MILLILITRE.amount(1030)))
        .isInstanceOf(BakeryException.class);
  }

  @Test
  void aLabelAloneIsScaledFromItsServing() {
    String label =
        "{\"fdcId\":900000098,\"dataType\":\"Branded\",\"description\":\"seeds\",\"servingSize\":30,"
            + "\"servingSizeUnit\":\"g\",\"labelNutrients\":{\"fat\":{\"value\":15},"
            + "\"protein\":{\"value\":6},\"carbohydrates\":{\"value\":6},\"sodium\":{\"value\":3},"
            + "\"calories\":{\"value\":180},\"unheard\":{\"value\":1}}}";

    Composition seeds = FoodDocument.parseOne(label).composition();

    assertThat(seeds.fraction(Component.FAT)).isEqualTo(0.5, within(1e-12));
    assertThat(seeds.fraction(Component.SODIUM)).isEqualTo(0.0001, within(1e-12));
    assertThat(KILOCALORIE.measure(seeds.printedEnergy().orElseThrow()))
        .isEqualTo(600, within(1e-9));
    assertThatThrownBy(() -> FoodDocument.parseOne(label.replace("\"g\"", "\"oz\"")))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("servingSizeUnit");
    assertThatThrownBy(() -> FoodDocument.parseOne(label.replace(":30,", ":0,")))
        .isInstanceOf(BakeryException.class);
  }

  @Test
  void aLabelMustFitItsFood() {
    // the figures of the serving where those of 100 g belong
    String mixed =
        resource("foods-branded.json")
            .replace("\"amount\": 11.98", "\"amount\": 3.59")
            .replace("\"amount\": 72.53", "\"amount\": 21.76");
    assertThatThrownBy(() -> FoodDocument.parse(mixed))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("of the label does not fit the food in fdcId 900000021");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "1003 |-1    |g   |can't be",
        "1003 |12000 |mg  |wrong unit",
        "1003 |12    |''  |wrong unit",
        "1093 |2     |g   |wrong unit",
        "1114 |40    |IU  |wrong unit",
        "1003 |101.5 |g   |more than there is",
        "1003 |1e999999|g |can't be",
        "1008 |1510  |kcal|the energy does not fit",
        "1062 |361   |kcal|wrong unit",
        "1003 |\"12\"|g   |can't be",
        "1003 |true  |g   |can't be",
        "1003 |[12]  |g   |can't be",
        "1003 |NaN   |g   |not a JSON document",
      })
  void aFigureThatCanNotBeIsRefusedByName(int id, String amount, String unit, String words) {
    assertThatThrownBy(() -> FoodDocument.parse(food(nutrient(id, amount, unit))))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining(words);
  }

  @Test
  void kilojoulesThatAreKilocaloriesAndTwoEnergiesThatDifferAreRefused() {
    String rest =
        nutrient(1003, "11.98", "g")
            + ","
            + nutrient(1004, "1.66", "g")
            + ","
            + nutrient(1005, "72.53", "g")
            + ",";
    assertThatThrownBy(() -> FoodDocument.parse(food(rest + nutrient(1062, "361", "kJ"))))
        .hasMessageContaining("the energy does not fit the nutrients");
    assertThatThrownBy(
            () ->
                FoodDocument.parse(
                    food(rest + nutrient(1008, "361", "kcal") + "," + nutrient(1062, "361", "kJ"))))
        .hasMessageContaining("two energies that are not the same")
        .hasMessageContaining("361 kJ and 361 kcal");
    assertThat(
            FoodDocument.parseOne(
                    food(rest + nutrient(1008, "361", "KCAL") + "," + nutrient(1062, "1510", "kJ")))
                .composition()
                .printedEnergy())
        .isPresent();
  }

  @Test
  void contradictionsOfAFoodAreRefused() {
    assertThatThrownBy(
            () ->
                FoodDocument.parse(
                    food(nutrient(1005, "10", "g") + "," + nutrient(2000, "12", "g"))))
        .hasMessageContaining("more sugars than carbohydrate in fdcId 900000099");
    assertThatThrownBy(
            () ->
                FoodDocument.parse(
                    food(nutrient(1003, "10", "g") + "," + nutrient(1003, "12", "g"))))
        .hasMessageContaining("the protein has two values");
    assertThatThrownBy(
            () ->
                FoodDocument.parse(
                    food(nutrient(1051, "60", "g") + "," + nutrient(1005, "60", "g"))))
        .hasMessageContaining("more than there is");
    assertThatThrownBy(
            () ->
                FoodDocument.parse(
                    food(
                        "{\"nutrient\":{\"id\":1003,\"number\":\"204\",\"unitName\":\"g\"},"
                            + "\"amount\":3}")))
        .hasMessageContaining("contradict each other");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "7",
        "\"food\"",
        "[]",
        "[1]",
        "{\"foods\":[]}",
        "{",
        "{}",
        "{\"fdcId\":1}",
        "{\"fdcId\":-3,\"description\":\"x\"}",
        "{\"fdcId\":1.5,\"description\":\"x\"}",
        "{\"fdcId\":1e99,\"description\":\"x\"}",
        "{\"fdcId\":1,\"description\":\"x\"}",
        "{\"fdcId\":1,\"description\":{},\"foodNutrients\":[]}",
        "{\"fdcId\":1,\"description\":\"x\",\"foodNutrients\":{}}",
        "{\"fdcId\":1,\"description\":\"x\",\"foodNutrients\":[7]}",
        "{\"fdcId\":1,\"fdcId\":2,\"description\":\"x\"}",
        "{\"fdcId\":1,\"description\":\"x\"} {}",
        "{\"fdcId\":1,\"dataType\":\"Branded\",\"description\":\"x\",\"foodNutrients\":[]}",
        "\u0000",
      })
  void whatIsNoFoodDocumentIsRefused(String json) {
    assertThatThrownBy(() -> FoodDocument.parse(json)).isInstanceOf(BakeryException.class);
  }

  @Test
  void depthAndSizeAreBounded() {
    assertThatThrownBy(() -> FoodDocument.parse("{\"a\":" + "[".repeat(100_000)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("not a JSON document");
    assertThatThrownBy(
            () ->
                FoodDocument.parse(
                    "{\"fdcId\":1,\"description\":\"" + "x".repeat(2_000_000) + "\"}"))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> FoodDocument.parse("{\"fdcId\":" + "1".repeat(5000) + "}"))
        .isInstanceOf(BakeryException.class);
  }

  @Test
  void oneFoodIsOneFood() {
    assertThatThrownBy(() -> FoodDocument.parseOne(resource("foods-foundation.json")))
        .hasMessageContaining("3 foods");
  }

  @Test
  void aFoodTravelsThroughAStreamUnchanged() throws Exception {
    FoodDocument food = FoodDocument.parseOne(resource("food-sr-legacy.json"));
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
      out.writeObject(food);
    }
    try (ObjectInputStream in =
        new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
      assertThat(in.readObject()).isEqualTo(food).hasSameHashCodeAs(food);
    }
  }

  @Test
  void noFoodOfTheTableIsTakenForAConfusionOfUnits() {
    for (Ingredient ingredient : Catalogue.builtIn().all()) {
      Composition composition = ingredient.composition();
      StringBuilder nutrients = new StringBuilder();
      Object[][] ids = {
        {1051, Component.WATER}, {1003, Component.PROTEIN}, {1004, Component.FAT},
        {1005, Component.CARBOHYDRATE}, {1007, Component.ASH}, {1018, Component.ALCOHOL},
        {1079, Component.FIBRE}, {2000, Component.SUGARS}, {1258, Component.SATURATED_FAT},
      };
      for (Object[] id : ids) {
        composition
            .share((Component) id[1])
            .ifPresent(
                s -> nutrients.append(nutrient((int) id[0], "" + s.value(), "g")).append(','));
      }
      composition
          .printedEnergy()
          .ifPresent(e -> nutrients.append(nutrient(1062, "" + e.value(), "kJ")).append(','));
      nutrients.setLength(nutrients.length() - 1);
      assertThat(FoodDocument.parse(food(nutrients.toString()))).as(ingredient.id()).hasSize(1);
    }
  }

  /** Without Jackson everything else works, and reading says what to add. */
  @Test
  void withoutJacksonOneClearExceptionSaysWhatToAdd() throws Exception {
    URL[] path = {
      where(FoodDocument.class), where(Quantity.class), where(tech.units.indriya.AbstractUnit.class)
    };
    try (URLClassLoader bare = new URLClassLoader(path, null)) {
      Class<?> type = bare.loadClass(FoodDocument.class.getName());
      assertThatThrownBy(() -> type.getMethod("parse", String.class).invoke(null, "{}"))
          .isInstanceOf(InvocationTargetException.class)
          .cause()
          .hasMessageContaining("Jackson core")
          .hasMessageContaining("com.fasterxml.jackson.core:jackson-core")
          .satisfies(
              e -> assertThat(e.getClass().getName()).isEqualTo(BakeryException.class.getName()));
    }
  }

  private static URL where(Class<?> type) {
    return type.getProtectionDomain().getCodeSource().getLocation();
  }

  @Test
  void jacksonIsOptionalAndOnlyTheReaderOfJsonNamesIt() throws IOException {
    String pom = Files.readString(Path.of("pom.xml"));
    int at = pom.indexOf("<artifactId>jackson-core</artifactId>");
    assertThat(pom.substring(at, pom.indexOf("</dependency>", at)))
        .contains("<optional>true</optional>");
    assertThat(Files.readString(Path.of("src/main/java/module-info.java")))
        .contains("requires static com.fasterxml.jackson.core;");
    try (var files = Files.walk(Path.of("src/main/java"))) {
      for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
        String name = file.getFileName().toString();
        if (Files.readString(file).contains("import com.fasterxml")) {
          assertThat(name).isEqualTo("FoodJson.java");
        }
      }
    }
  }
}
