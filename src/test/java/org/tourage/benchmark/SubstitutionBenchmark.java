package org.tourage.benchmark;

import static org.tourage.quantity.Amounts.grams;
import static org.tourage.quantity.Amounts.percent;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.tourage.formula.Formula;
import org.tourage.formula.FormulaTargets;
import org.tourage.formula.Preferment;
import org.tourage.formula.TargetSolution;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Ingredient;
import org.tourage.substitution.FlourExchange;
import org.tourage.substitution.IngredientExchange;

/** One exchange in a formula of 12 lines, and a solve for six targets. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 3, time = 1)
@Fork(2)
public class SubstitutionBenchmark {
  private final Ingredient milk = Catalogue.builtIn().require("whole milk");
  private final Ingredient soy = Catalogue.builtIn().require("soy drink");
  private final Ingredient bread = Catalogue.builtIn().require("bread flour");
  private final Ingredient plain = Catalogue.builtIn().require("all-purpose flour");
  private final Formula formula =
      Formula.byPercent(
          "twelve lines",
          f ->
              f.line("bread flour", percent(90))
                  .line("whole-wheat flour", percent(10))
                  .line("water", percent(40))
                  .line("whole milk", percent(15))
                  .line("whole egg", percent(8))
                  .line("sugar", percent(10))
                  .line("honey", percent(2))
                  .line("unsalted butter", percent(10))
                  .line("canola oil", percent(4))
                  .line("salt", percent(1.9))
                  .line("instant yeast", percent(1))
                  .line("cocoa powder", percent(3)));
  private final FormulaTargets targets =
      FormulaTargets.of(
              Formula.byPercent(
                      "with poolish",
                      f ->
                          f.line("bread flour", percent(100))
                              .line("water", percent(40))
                              .line("whole milk", percent(20))
                              .line("sugar", percent(10))
                              .line("salted butter", percent(10))
                              .line("salt", percent(1.8))
                              .line("instant yeast", percent(1))
                              .preferment(Preferment.poolish(percent(20))))
                  .forFlour(grams(1000)))
          .move("bread flour")
          .move("water")
          .move("sugar")
          .move("salted butter")
          .move("salt")
          .move("Poolish", "bread flour", grams(0), grams(2000))
          .move("Poolish", "water", grams(0), grams(2000))
          .hydration(percent(64))
          .salt(percent(2))
          .sugars(percent(9))
          .fat(percent(11))
          .prefermentedFlour(percent(25))
          .dough(grams(2500));

  @Benchmark
  public IngredientExchange exchangeALiquid() {
    return IngredientExchange.of(formula, milk, soy);
  }

  @Benchmark
  public FlourExchange exchangeAFlour() {
    return FlourExchange.of(formula, bread, plain);
  }

  @Benchmark
  public TargetSolution solveForSixTargets() {
    return targets.solve();
  }
}
