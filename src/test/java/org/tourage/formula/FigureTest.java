package org.tourage.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.grams;
import static org.tourage.quantity.Amounts.percent;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Component;
import org.tourage.ingredient.Ingredient;

class FigureTest {
  private static final Ingredient COCONUT = Catalogue.builtIn().require("coconut-milk-canned");

  private static Formula dough() {
    return Formula.byPercent(
        "coconut roll",
        f ->
            f.line("bread flour", percent(100))
                .line("water", percent(40))
                .line(COCONUT, percent(30))
                .line("sugar", percent(10))
                .line("salt", percent(2))
                .rollIn("unsalted butter", percent(50)));
  }

  @Test
  void sugarsThatTheTableDoesNotKnowAreUnknownAndNotNone() {
    assertThat(COCONUT.composition().share(Component.SUGARS)).isEmpty();
    assertThat(Figure.SUGARS.percent(dough())).isEmpty();
    assertThat(Figure.SUGARS.mass(dough().forFlour(grams(500)))).isEmpty();
    assertThat(Figure.SUGARS.unknownIn(dough())).containsExactly(COCONUT);
    Totals totals = Totals.of(dough());
    assertThat(totals.toString()).contains("sugars at least 10 %");
    assertThat(totals.unknown()).containsExactly(COCONUT);
    assertThat(totals.compare(totals)).contains("at least 10 %");
  }

  @Test
  void whatIsKnownIsTheSumOfTheLines() {
    double water = Catalogue.builtIn().require("water").composition().fraction(Component.WATER);
    double expected = 40 * water + 30 * COCONUT.composition().fraction(Component.WATER);
    // salt and sugar bring a trace
    assertThat(Figure.WATER.percent(dough()).orElseThrow().in(PERCENT))
        .isCloseTo(dough().hydration().trueHydration().in(PERCENT), within(1e-9))
        .isCloseTo(expected, within(0.01));
    assertThat(Figure.DOUGH.mass(dough().forDough(grams(1000))).orElseThrow().in(GRAM))
        .isCloseTo(1000, within(1e-9));
    assertThat(Figure.FLOUR.percent(dough())).contains(percent(100));
  }

  @Test
  void aTargetOverAFigureThatIsNotKnownSaysSo() {
    TargetSolution solution =
        FormulaTargets.of(dough().forFlour(grams(1000))).move("sugar").sugars(percent(8)).solve();
    assertThat(solution.met()).isTrue();
    assertThat(solution.advice()).extracting(Advice::code).containsExactly("FIGURE_UNKNOWN");
    assertThat(solution.advice().get(0).text()).contains(COCONUT.name());
  }

  @Test
  void anyRatioMassOrCeilingOverAFigureCanBeWanted() {
    TargetSolution solution =
        FormulaTargets.of(dough().forFlour(grams(1000)))
            .move("unsalted butter")
            .move("water")
            .want(new Target.Ratio("fat of the dough", Figure.FAT, Figure.DOUGH, percent(20)))
            .want(new Target.Mass("water", Figure.WATER, grams(600)))
            .solve();
    assertThat(solution.met()).isTrue();
    Batch found = solution.batch();
    double fat = Figure.FAT.mass(found).orElseThrow().in(GRAM);
    assertThat(fat / found.dough().in(GRAM)).isCloseTo(0.20, within(1e-6));
    assertThat(Figure.WATER.mass(found).orElseThrow().in(GRAM)).isCloseTo(600, within(1e-3));
    TargetSolution capped =
        FormulaTargets.of(dough().forFlour(grams(1000)))
            .move("unsalted butter")
            .want(new Target.Ceiling("fat", Figure.FAT, 200))
            .solve();
    assertThat(Figure.FAT.mass(capped.batch()).orElseThrow().in(GRAM))
        .isLessThanOrEqualTo(200 + 1e-3);
  }

  @Test
  void aCostWithoutAPriceIsUnknown() {
    Ingredient salt = Catalogue.builtIn().require("salt");
    Batch batch = dough().forFlour(grams(1000));
    assertThat(Figure.cost(Map.of(salt, 1.0)).money(batch)).isEmpty();
    assertThatThrownBy(() -> Figure.cost(Map.of(salt, 1.0)).mass(batch))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> Figure.SALT.money(batch)).isInstanceOf(BakeryException.class);
    Batch plain =
        Formula.byPercent("p", f -> f.line("bread flour", percent(100)).line(salt, percent(2)))
            .forFlour(grams(1000));
    Ingredient flour = plain.formula().ingredient("bread flour");
    assertThat(Figure.cost(Map.of(salt, 2.0, flour, 1.0)).money(plain).orElseThrow())
        .isCloseTo(1 + 0.04, within(1e-12));
    assertThat(List.of(Figure.SALT)).contains(Figure.SALT);
  }

  @Test
  void aCostIsWantedAsACeilingAndNeverAsAMass() {
    Ingredient butter = Catalogue.builtIn().require("butter");
    Figure cost = Figure.cost(Map.of(butter, 10.0));
    assertThatThrownBy(() -> new Target.Mass("cost", cost, grams(5)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("a cost is no mass");
    assertThatThrownBy(() -> new Target.Ratio("cost", cost, Figure.FLOUR, percent(5)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("a cost has no ratio to a mass");
    assertThat(new Target.Ratio("of the cost", cost, cost, percent(5)).part()).isEqualTo(cost);
    assertThat(new Target.Ceiling("cost", cost, 5).figure()).isEqualTo(cost);
  }
}
