package org.tourage.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.ArrayList;
import java.util.List;
import javax.measure.quantity.Mass;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Component;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Amounts;
import org.tourage.quantity.BakeryUnit;
import org.tourage.quantity.BakeryUnits;

class FormulaLaws {
  private static final Catalogue CATALOGUE = Catalogue.builtIn();

  /** An ingredient and a percentage. */
  record Part(Ingredient ingredient, double percent) {}

  private static Arbitrary<Ingredient> of(boolean flour) {
    return Arbitraries.of(
        CATALOGUE.all().stream()
            .filter(i -> i.is(Role.FLOUR) == flour && !i.is(Role.LIQUID))
            .toList());
  }

  /** Formulas with 1 to 3 flours, water, others, and sometimes a preferment and a roll-in. */
  @Provide
  Arbitrary<Formula> formulas() {
    Arbitrary<Double> percent = Arbitraries.doubles().between(0.1, 60).ofScale(3);
    Arbitrary<List<Part>> flours =
        Combinators.combine(of(true), percent).as(Part::new).list().ofMinSize(1).ofMaxSize(3);
    Arbitrary<List<Part>> others =
        Combinators.combine(of(false), percent).as(Part::new).list().ofMaxSize(8);
    Arbitrary<Double> water = Arbitraries.doubles().between(40, 90).ofScale(3);
    Arbitrary<Double> preferment = Arbitraries.doubles().between(0, 40).ofScale(3);
    Arbitrary<Double> rollIn = Arbitraries.doubles().between(0, 60).ofScale(3);
    return Combinators.combine(flours, others, water, preferment, rollIn).as(FormulaLaws::build);
  }

  private static Formula build(
      List<Part> flours, List<Part> others, double water, double preferment, double rollIn) {
    double sum = flours.stream().mapToDouble(Part::percent).sum();
    return Formula.byPercent(
        "law",
        f -> {
          flours.forEach(p -> f.line(p.ingredient, Amounts.percent(p.percent / sum * 100)));
          others.forEach(p -> f.line(p.ingredient, Amounts.percent(p.percent)));
          f.line("water", Amounts.percent(water));
          double first =
              flours.stream()
                      .filter(p -> p.ingredient.equals(flours.get(0).ingredient))
                      .mapToDouble(p -> p.percent)
                      .sum()
                  / sum
                  * 100;
          double share = Math.min(preferment, first * 0.9);
          if (share > 1) {
            f.preferment(
                Preferment.poolish(Amounts.percent(share)).withFlour(flours.get(0).ingredient));
          }
          if (rollIn > 1) {
            f.rollIn("butter", Amounts.percent(rollIn));
          }
        });
  }

  @Property(tries = 300)
  void stagesSumToTheOverallFormula(@ForAll("formulas") Formula formula) {
    for (Line overall : formula.overall()) {
      double inStages =
          formula.lines().stream()
              .filter(
                  l ->
                      l.ingredient().equals(overall.ingredient())
                          && l.isFlour() == overall.isFlour())
              .mapToDouble(l -> l.percent().in(PERCENT))
              .sum();
      assertThat(inStages).isCloseTo(overall.percent().in(PERCENT), within(1e-9));
    }
    double flour =
        formula.overall().stream()
            .filter(Line::isFlour)
            .mapToDouble(l -> l.percent().in(PERCENT))
            .sum();
    assertThat(flour).isCloseTo(100, within(1e-6));
    double all = formula.overall().stream().mapToDouble(l -> l.percent().in(PERCENT)).sum();
    assertThat(all).isCloseTo(formula.dough().in(PERCENT), within(1e-9));
  }

  @Property(tries = 300)
  void scalingIsLinearAndAssociative(
      @ForAll("formulas") Formula formula,
      @ForAll @DoubleRange(min = 10, max = 5000) double flour,
      @ForAll @DoubleRange(min = 0.1, max = 20) double a,
      @ForAll @DoubleRange(min = 0.1, max = 20) double b) {
    Batch batch = formula.forFlour(Amounts.grams(flour));
    Batch direct = formula.forFlour(Amounts.grams(flour * a * b));
    Batch stepwise = batch.times(a).times(b);
    for (int i = 0; i < formula.lines().size(); i++) {
      assertThat(direct.weight(i).isCloseTo(stepwise.weight(i), 1e-12)).isTrue();
      assertThat(direct.weight(i).in(GRAM))
          .isCloseTo(batch.weight(i).in(GRAM) * a * b, within(1e-6));
    }
    assertThat(direct.dough().isCloseTo(batch.dough().multiply(a * b), 1e-12)).isTrue();
  }

  @Property(tries = 300)
  void fromPercentToWeightsAndBackIsTheIdentity(
      @ForAll("formulas") Formula formula,
      @ForAll @DoubleRange(min = 10, max = 50_000) double flour) {
    Batch batch = formula.forFlour(Amounts.grams(flour));
    Batch back =
        Formula.byWeight(
            formula.name(),
            f -> {
              int i = 0;
              for (Stage stage : formula.stages()) {
                List<Integer> indices = new ArrayList<>();
                for (int k = 0; k < stage.lines().size(); k++) {
                  indices.add(i++);
                }
                f.stage(
                    stage.kind(),
                    stage.name(),
                    s ->
                        indices.forEach(
                            n -> s.line(formula.lines().get(n).ingredient(), batch.weight(n))));
              }
            });
    assertThat(back.flour().isCloseTo(Amounts.grams(flour), 1e-9)).isTrue();
    assertThat(back.formula().lines()).hasSameSizeAs(formula.lines());
    for (int i = 0; i < formula.lines().size(); i++) {
      assertThat(back.formula().lines().get(i).percent().in(PERCENT))
          .isCloseTo(formula.lines().get(i).percent().in(PERCENT), within(1e-7));
    }
  }

  @Property(tries = 300)
  void everyWayOfScalingIsTheInverseOfItsFigure(
      @ForAll("formulas") Formula formula,
      @ForAll @DoubleRange(min = 10, max = 50_000) double grams) {
    Amount<Mass> mass = Amounts.grams(grams);
    assertThat(formula.forFlour(mass).flour().isCloseTo(mass, 1e-12)).isTrue();
    assertThat(formula.forDough(mass).dough().isCloseTo(mass, 1e-9)).isTrue();
    assertThat(formula.forBaseDough(mass).baseDough().isCloseTo(mass, 1e-9)).isTrue();
    for (Line line : formula.overall()) {
      Batch batch = formula.forIngredient(line.ingredient(), mass);
      assertThat(batch.weightOf(line.ingredient()).isCloseTo(mass, 1e-9)).isTrue();
    }
  }

  @Property(tries = 300)
  void theUnitOfTheInputNeverChangesTheResult(
      @ForAll("formulas") Formula formula,
      @ForAll @DoubleRange(min = 10, max = 50_000) double grams,
      @ForAll("massUnits") BakeryUnit<Mass> unit) {
    Batch inGrams = formula.forFlour(Amounts.grams(grams));
    Batch inUnit = formula.forFlour(Amounts.grams(grams).to(unit));
    for (int i = 0; i < formula.lines().size(); i++) {
      assertThat(inUnit.weight(i).isCloseTo(inGrams.weight(i), 1e-12)).isTrue();
    }
  }

  @Provide
  Arbitrary<BakeryUnit<Mass>> massUnits() {
    return Arbitraries.of(
        List.of(BakeryUnits.GRAM, BakeryUnits.KILOGRAM, BakeryUnits.OUNCE, BakeryUnits.POUND));
  }

  @Property(tries = 200)
  void roundingABatchConservesItsTotal(
      @ForAll("formulas") Formula formula,
      @ForAll @DoubleRange(min = 200, max = 5000) double flour) {
    Batch batch = formula.forFlour(Amounts.grams(flour));
    Batch rounded = batch.rounded(Amounts.grams(0.1));
    assertThat(rounded.total().value()).isCloseTo(batch.total().value(), within(0.0501));
    double lines = rounded.weights().stream().mapToDouble(Amount::value).sum();
    assertThat(lines).isCloseTo(rounded.total().value(), within(1e-6));
  }

  @Property(tries = 300)
  void waterIsConservedWhereverAPrefermentTakesIt(@ForAll("formulas") Formula formula) {
    double water = 0;
    for (Line line : formula.overall()) {
      boolean dough =
          !line.ingredient().equals(CATALOGUE.require("butter"))
              || formula.stages().stream().noneMatch(s -> s.kind() == StageKind.ROLL_IN);
      if (!line.isFlour() && dough) {
        water +=
            line.percent().in(PERCENT) * line.ingredient().composition().fraction(Component.WATER);
      }
    }
    boolean butterInDough =
        formula.stages().stream()
            .filter(s -> s.kind().inDough())
            .flatMap(s -> s.lines().stream())
            .anyMatch(l -> l.ingredient().equals(CATALOGUE.require("butter")));
    if (!butterInDough) {
      assertThat(formula.hydration().trueHydration().in(PERCENT)).isCloseTo(water, within(1e-6));
    }
  }
}
