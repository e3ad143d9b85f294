package org.tourage.substitution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.percent;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tourage.formula.Formula;
import org.tourage.ingredient.Allergen;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.FlourSpecification;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;
import org.tourage.reference.Checks;
import org.tourage.reference.Checks.Row;

class SubstitutionReferenceTest {
  private static final Catalogue CATALOGUE = Catalogue.builtIn();

  static Stream<Row> exchanges() {
    return kinds("water", "fat", "sugars", "yeast");
  }

  static Stream<Row> figures() {
    return kinds("component", "absorption", "titration", "square");
  }

  private static Stream<Row> kinds(String... wanted) {
    return Checks.rows("substitution.csv").filter(r -> List.of(wanted).contains(r.text("kind")));
  }

  private static double figure(String check) {
    return Checks.row("substitution.csv", check).number("value");
  }

  @ParameterizedTest
  @MethodSource("exchanges")
  void theMassThatReplacesAnotherIsThatOfThePublishedCompositions(Row row) {
    Ingredient from = CATALOGUE.require(row.text("a"));
    Ingredient to = CATALOGUE.require(row.text("b"));
    Formula formula =
        Formula.byPercent(
            "dough", f -> f.line("bread flour", percent(100)).line(from, percent(100)));
    IngredientExchange exchange =
        IngredientExchange.of(
            formula,
            from,
            to,
            percent(100),
            row.text("kind").equals("yeast")
                ? EnumSet.noneOf(Conserved.class)
                : EnumSet.of(Conserved.valueOf(row.text("kind").toUpperCase(Locale.ROOT))));
    assertThat(exchange.after().percent(to).in(PERCENT))
        .isCloseTo(row.number("value"), within(5.1e-5));
    assertThat(exchange.lost()).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("figures")
  void moistureBasesAndSquaresAreThoseWorkedByHand(Row row) {
    double a = row.number("a");
    double value =
        switch (row.text("kind")) {
          case "component" ->
              MoistureBasis.shareAt(percent(a), percent(row.number("b")), percent(row.number("c")))
                  .in(PERCENT);
          case "absorption" ->
              MoistureBasis.absorptionAt(
                      percent(a), percent(row.number("b")), percent(row.number("c")))
                  .in(PERCENT);
          case "titration" -> titration(a, row.number("b"));
          default ->
              FlourBlend.square(percent(a), percent(row.number("b")), percent(row.number("c")))
                  .in(PERCENT);
        };
    assertThat(value).isCloseTo(row.number("value"), within(6e-5));
  }

  /** V mL of water were needed by as much flour as weighs 300 g at 14 % moisture. */
  private static double titration(double millilitres, double moisture) {
    double flour = 300 * 86 / (100 - moisture);
    return MoistureBasis.absorptionAt(
            percent(100 * millilitres / flour), percent(moisture), percent(14))
        .in(PERCENT);
  }

  private static Ingredient flour(double protein, double moisture) {
    return Ingredient.builder("test-flour", "test flour")
        .role(Role.FLOUR)
        .allergens(Allergen.WHEAT)
        .composition(CATALOGUE.require("bread flour").composition())
        .flour(FlourSpecification.of(percent(protein), percent(moisture)))
        .build();
  }

  @Test
  void theModelsGiveTheValuesWorkedFromTheirPapers() {
    assertThat(Bushuk1966.water(58, 6, 12, 1.5))
        .isCloseTo(
            figure("water held by 58 native starch 6 damaged 12 protein 1.5 pentosans"),
            within(1e-9));
    assertThat(new Farrand1969(28).estimate(flour(12, 14)).absorption().in(PERCENT))
        .isCloseTo(
            figure("absorption by Farrand for protein 12 damage 28 moisture 14"), within(1e-9));
  }

  @Test
  void theLineByProteinStaysWithinWhat44FloursTook() {
    double least = figure("least absorption of 44 wheat flours");
    double most = figure("greatest absorption of 44 wheat flours");
    double low = figure("least protein of 44 wheat flours");
    double high = figure("greatest protein of 44 wheat flours");
    ProteinSlope line = new ProteinSlope();
    assertThat(line.estimate(flour(low, 14)).absorption().in(PERCENT)).isBetween(least, most);
    assertThat(line.estimate(flour(high, 14)).absorption().in(PERCENT)).isBetween(least, most);
  }

  @Test
  void aMeasuredAbsorptionHasThePublishedRepeatability() {
    Ingredient measured =
        Ingredient.builder("mill-flour", "mill flour")
            .role(Role.FLOUR)
            .composition(CATALOGUE.require("bread flour").composition())
            .flour(FlourSpecification.of(percent(12), percent(13)).withAbsorption(percent(60)))
            .build();
    AbsorptionModel.Estimate estimate = new MeasuredAbsorption().estimate(measured);
    assertThat(estimate.absorption()).isEqualTo(percent(60));
    assertThat(estimate.uncertainty().in(PERCENT))
        .isCloseTo(60 * figure("repeatability of absorption in percent of it") / 100, within(1e-9));
    assertThat(estimate).hasToString("60 % ± 0.33 %");
  }
}
