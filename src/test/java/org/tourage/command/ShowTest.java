package org.tourage.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.grams;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.tourage.advice.BakeryException;
import org.tourage.day.BakeDay;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Ingredient;
import org.tourage.quantity.AmountFormat;
import org.tourage.sheet.CounterSheet;

/** Label, cost, shopping list and scaling sheet of the main command, and what is unknown. */
class ShowTest {
  private static final String ROLLS =
      """
      # Invented for the Kestrel Lane Pastry School, which does not exist.
      title: Show rolls
      pieces: 6
      [dough]
      500 g bread flour
      300 g water
      10 g salt
      5 g instant yeast
      """;
  private static final String STEPS =
      "[steps]\nmix: 12 min\nbulk rise: 60 min\nshape: 10 min as ball\nproof: 45 min\n"
          + "bake: 220 °C 20 min\n";
  private static final String PRICES =
      """
      [prices]
      bread flour: 25 kg for 20.00
      water: 1000 kg for 2.50 EUR
      salt: 1 kg for 0.60 EUR
      instant yeast: 500 g for 6.00 EUR
      salt: on hand 4 g
      work: 30 min at 18.00 EUR
      energy: 0.30 EUR
      piece: sells for 4.00 EUR
      """;

  @SuppressWarnings("NullAway.Init") // by the test engine
  @TempDir
  Path folder;

  private MainTest.Result run(String text, String... options) throws IOException {
    return MainTest.runFile(text, options);
  }

  private Path file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  @Test
  void theBenchSheetIsPrintedUnlessAnotherIsAskedFor() throws IOException {
    assertThat(run(ROLLS + STEPS).out())
        .isEqualTo(run(ROLLS + STEPS, "--show", "bench").out())
        .contains("At a glance")
        .doesNotContain("draft, no legal label");
  }

  @Test
  void theLabelIsOfTheBakedProductAndSaysThatItIsADraft() throws IOException {
    MainTest.Result result = run(ROLLS + STEPS, "--show", "label");

    assertThat(result.err()).isEmpty();
    assertThat(result.out())
        .contains("Show rolls: label, draft, no legal label", "of water lost in the oven")
        .containsPattern("energy +\\d+ kJ / \\d+ kcal")
        .contains("Ingredients: bread flour (WHEAT), water, salt, instant yeast")
        .contains("Contains: wheat", "Contains: cereals containing gluten (wheat)")
        .doesNotContain("At a glance", "May contain", "Allergens unknown");
    assertThat(run(ROLLS + "[steps]\nmix: 5 min\n", "--show", "label").out())
        .contains("no bake is worked: nothing lost");
  }

  @Test
  void theCostCountsPackagesWorkAndEnergy() throws IOException {
    MainTest.Result result = run("show: cost\ncurrency: EUR\n" + ROLLS + STEPS + PRICES);

    // flour 500/25000 × 20 = 0.40; yeast 5/500 × 6 = 0.06; salt 0.006; work 9.00
    assertThat(result.err()).isEmpty();
    assertThat(result.out())
        .containsPattern("bread flour +500 g +500 g +0.40 EUR")
        .containsPattern("instant yeast +5 g +5 g +0.06 EUR")
        .containsPattern("work +9.00 EUR")
        .containsPattern("energy +0.\\d\\d EUR")
        .containsPattern("a piece: 1\\.\\d\\d EUR")
        .containsPattern("of 4.00 EUR that it sells for: \\d\\d")
        .doesNotContain("no price");
  }

  @Test
  void costAndShoppingListAreInTheUnitsThatAreAskedForAndAPieceSaysItsMass() throws IOException {
    String text = "currency: EUR\nunits: us\n" + ROLLS + STEPS + PRICES;

    // 500 g / 28.3495 = 17.637 oz; 25 kg / 453.592 g = 55.1 lb
    assertThat(run(text, "--show", "cost").out())
        .containsPattern("bread flour +17.6 oz +17.6 oz +0.40 EUR");
    assertThat(run(text, "--show", "shopping").out())
        .containsPattern("bread flour +17.6 oz .* 1 x 55.1\\d* lb");
    assertThat(run(ROLLS + STEPS, "--show", "label").out())
        .containsPattern("per piece \\(1[12]\\d g\\)");
  }

  @Test
  void aMissingPriceIsNamedAndNoTotalIsGiven() throws IOException {
    String text = ROLLS + STEPS + "[prices]\nbread flour: 25 kg for 20.00 EUR\n";

    assertThat(run(text, "--show", "cost", "--currency", "EUR").out())
        .contains("total without [water, salt, instant yeast]")
        .contains("a piece: unknown, a price is missing");
    assertThat(run(ROLLS + STEPS, "--show", "cost").err())
        .contains("--show: a cost needs prices", "[prices]");
  }

  @Test
  void theShoppingListTakesWhatIsOnHand() throws IOException {
    assertThat(run("currency: EUR\n" + ROLLS + STEPS + PRICES, "--show", "shopping").out())
        .containsPattern("salt +6 g .* 1 x 1000 g")
        .containsPattern("bread flour +500 g .* 1 x 25.00 kg")
        .doesNotContain("water");
    assertThat(run(ROLLS + STEPS, "--show", "shopping").out()).containsPattern("salt +10 g");
  }

  @Test
  void theScalingSheetHasFiveSizesAndSeveralViewsStandInTheirOrder() throws IOException {
    assertThat(run(ROLLS + STEPS, "--show", "scaling,label").out())
        .containsPattern("bread flour +250 g +500 g +1000 g +1500 g +2500 g")
        .containsSubsequence("five sizes", "label, draft");
  }

  @Test
  void aKitchenFileAndACatalogueFileHoldPricesAndACatalogueFileIngredients() throws IOException {
    Path kitchen = file("k.kitchen", "currency: EUR\n[prices]\nsalt: 1 kg for 0.60\n");
    Path catalogue =
        file(
            "own.catalogue",
            "[ingredient Brook flour]\nrole: flour\nfat: 1.2 g\ncarbohydrate: 70 g\n"
                + "protein: 11.6 g\nallergens: wheat\n[prices]\nBrook flour: 5 kg for 6.00\n");
    String text = ROLLS.replace("bread flour", "Brook flour") + STEPS;

    MainTest.Result result =
        run(
            text,
            "--show",
            "cost",
            "--kitchen",
            kitchen.toString(),
            "--catalogue",
            catalogue.toString());

    assertThat(result.err()).isEmpty();
    assertThat(result.out())
        .containsPattern("Brook flour +500 g +500 g +0.60 EUR")
        .containsPattern("salt +10 g +10 g +0.01 EUR");
  }

  @Test
  void aCatalogueFileIsNoRecipeAndItsMistakesHaveItsNameAndLine() throws IOException {
    Path bad = file("bad.catalogue", "room: 20 °C\n[dough]\n[ingredient X]\nfat: much\n");

    String err = run(ROLLS + STEPS, "--catalogue", bad.toString()).err();

    assertThat(err).contains("bad.catalogue, line 2: a catalogue file has ingredients and prices");
    Path label = file("label.catalogue", "[ingredient X]\nrole: flour\nfat: much\n");
    assertThat(run(ROLLS + STEPS, "--catalogue", label.toString()).err())
        .contains("label.catalogue, line 3: ");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "bread flour             | not a line of prices",
        "bread flour: cheap      | not a line of prices",
        "bread flour: 1 kg for x | not an amount of money",
        "bread flour: 1 kg for 2 USD | two currencies",
        "bread flour: 0 kg for 2 | no such package",
        "bred flower: 1 kg for 2 | no such ingredient",
        "salt: yield 130 %       | no such yield",
        "energy: -1 EUR          | not an amount of money",
      })
  void aPriceThatCanNotBeReadIsComplainedOfWithItsLine(String line, String words)
      throws IOException {
    MainTest.Result result = run("currency: EUR\n" + ROLLS + STEPS + "[prices]\n" + line + "\n");

    assertThat(result.code()).isEqualTo(2);
    assertThat(result.out()).isEmpty();
    assertThat(result.err()).contains("line 17: ").contains(words);
  }

  @Test
  void aViewOrACurrencyThatIsNoneIsRefused() throws IOException {
    assertThat(run(ROLLS + STEPS, "--show", "label,menu").err()).contains("bench, cost, label");
    assertThat(run(ROLLS + STEPS, "--currency", "EURO").err()).contains("--currency");
  }

  @Test
  void anUnknownIngredientThatIsWeighedDoesNotStopTheSheetAndIsNamedWhereItIsMissing()
      throws IOException {
    String text = ROLLS + "40 g hundreds and thousands\n" + STEPS;

    MainTest.Result bench = run(text, "--dough-temperature", "24 °C");
    assertThat(bench.code()).isZero();
    assertThat(bench.out())
        .containsPattern("dough +855 g")
        .contains("without the water of hundreds and thousands: unknown")
        .contains("nothing is known of \"hundreds and thousands\" but its mass")
        .contains("the allergens of hundreds and thousands are unknown")
        .doesNotContain("not worked");
    assertThat(run(text, "--show", "label").out())
        .containsPattern("energy +unknown")
        .containsPattern("salt +unknown")
        .contains("unknown, not nought: not reported for hundreds and thousands")
        .contains("Allergens unknown: hundreds and thousands");
  }

  @Test
  void oneThatIsMeasuredByCupIsRefusedWithNearMatches() throws IOException {
    MainTest.Result result = run(ROLLS + "1 cup bred flour\n" + STEPS);

    assertThat(result.code()).isEqualTo(2);
    assertThat(result.err())
        .contains("no such ingredient", "did you mean", "bread flour", "or weigh it");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"100 g bred flour", "100 g bread fluor", "20 g grnulated sugar", "40 g buter"})
  void aWeighedNameThatIsOneOrTwoLettersOffAKnownOneIsRefusedAsMistyped(String line)
      throws IOException {
    MainTest.Result result = run(ROLLS + line + "\n" + STEPS);

    assertThat(result.code()).isEqualTo(2);
    assertThat(result.err()).contains("no such ingredient", "did you mean");
  }

  @ParameterizedTest
  @ValueSource(strings = {"hundreds and thousands", "house flour", "mola", "kamut flour", "zoat"})
  void aNameThatIsNoMistypedOneIsKept(String name) throws IOException {
    assertThat(run(ROLLS + "20 g " + name + "\n" + STEPS).code()).isZero();
  }

  @Test
  void anUnknownFlourCountsAsFlourAndSaysSoAtTheTopAndWithNearMatches() throws IOException {
    String out = run(ROLLS + "100 g millstone flour\n" + STEPS).out().replaceAll("\\s+", " ");

    assertThat(out)
        .containsPattern("flour +600 g")
        .contains("it is counted as flour.")
        .containsSubsequence("At a glance", "unknown flour millstone flour", "As given");
  }

  @Test
  void whatStaysOnTheBenchIsInNoPieceAndAFillingLosesWaterAsTheDoughDoes() throws IOException {
    String filled =
        "title: Filled rolls\npieces: 10\npiece-mass: 80 g\nprocess-loss: 5 %\n[dough]\n500 g bread flour\n"
            + "300 g water\n10 g salt\n5 g instant yeast\n[filling Jam]\n200 g apricot jam\n"
            + STEPS;
    String out = run(filled, "--show", "bench,label").out();
    Matcher of = Pattern.compile("([0-9]+) g of product, 10 pieces of ([0-9.]+) g").matcher(out);
    assertThat(of.find()).as(out).isTrue();
    double piece = Double.parseDouble(of.group(2));
    assertThat(out)
        .contains("scaling weight, raw         64 g")
        .contains("filling each                16 g");
    Matcher rows =
        Pattern.compile("20 min +[0-9.]+ °C +[0-9.]+ °C +[0-9.]+ °C +([0-9.]+) %").matcher(out);
    assertThat(rows.find()).as(out).isTrue();
    double kept = 1 - Double.parseDouble(rows.group(1)) / 100;
    // 64 g of dough and 16 g of jam are scaled, whatever stays on the bench
    assertThat(piece).isCloseTo(80 * kept, within(0.6));
    assertThat(Double.parseDouble(of.group(1))).isCloseTo(10 * piece, within(5.1));
  }

  @Test
  void lessThanNothingIsNotOnHand() {
    CounterSheet sheet = CounterSheet.of(BakeDay.of(Main.demo().plan()), AmountFormat.metric());
    Ingredient water = Catalogue.builtIn().require("water");
    assertThatThrownBy(() -> sheet.onHand(water, grams(-5)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("less than nothing can't be on hand: -5 g of water");
  }
}
