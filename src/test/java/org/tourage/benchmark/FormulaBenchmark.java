package org.tourage.benchmark;

import static org.tourage.quantity.Amounts.grams;
import static org.tourage.quantity.Amounts.percent;

import java.util.concurrent.TimeUnit;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.quantity.Amount;
import tech.units.indriya.quantity.Quantities;
import tech.units.indriya.unit.Units;

/**
 * Scaling and summing a formula of 12 lines, the 12 results kept. One run compares: a hand-written
 * loop over records of doubles, the public typed API in two forms, and the stock implementation's
 * arithmetic.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class FormulaBenchmark {
  private static final int LINES = 12;

  /** What someone would write without the library. */
  record Grams(double grams) {}

  private final String[] names = {
    "bread flour",
    "whole-wheat flour",
    "water",
    "milk",
    "egg",
    "sugar",
    "salt",
    "instant yeast",
    "butter",
    "honey",
    "raisins",
    "almonds"
  };
  private final double[] percents = {
    88.5, 11.5, 40.2, 20.4, 8.3, 9.7, 1.9, 1.2, 6.4, 3.3, 12.5, 7.1
  };
  private final Grams[] records = new Grams[LINES];
  private final Amount<?>[] kept = new Amount<?>[LINES];
  private final Grams[] keptRecords = new Grams[LINES];
  private final Quantity<?>[] keptStock = new Quantity<?>[LINES];
  private final java.util.List<Amount<Mass>> amounts = new java.util.ArrayList<>();
  private final java.util.List<Quantity<Mass>> stock = new java.util.ArrayList<>();
  private final Formula formula =
      Formula.byPercent(
          "twelve lines",
          f -> {
            for (int i = 0; i < LINES; i++) {
              f.line(names[i], percent(percents[i]));
            }
          });
  private double factor = 7.4;
  private final Amount<Mass> flour = grams(740);

  public FormulaBenchmark() {
    for (int i = 0; i < LINES; i++) {
      records[i] = new Grams(percents[i]);
      amounts.add(grams(percents[i]));
      stock.add(Quantities.getQuantity(percents[i], Units.GRAM));
    }
  }

  @Benchmark
  public Grams handWrittenRecords(Blackhole hole) {
    double sum = 0;
    for (int i = 0; i < LINES; i++) {
      Grams scaled = new Grams(records[i].grams() * factor);
      keptRecords[i] = scaled;
      sum += scaled.grams();
    }
    hole.consume(keptRecords);
    return new Grams(sum);
  }

  @Benchmark
  public Amount<Mass> typedAmounts(Blackhole hole) {
    Amount<Mass> sum = grams(0);
    for (int i = 0; i < LINES; i++) {
      Amount<Mass> scaled = amounts.get(i).multiply(factor);
      kept[i] = scaled;
      sum = sum.add(scaled);
    }
    hole.consume(kept);
    return sum;
  }

  @Benchmark
  public Amount<Mass> typedFormula(Blackhole hole) {
    Batch batch = formula.forFlour(flour);
    for (int i = 0; i < LINES; i++) {
      kept[i] = batch.weight(i);
    }
    hole.consume(kept);
    return batch.total();
  }

  @Benchmark
  public Quantity<Mass> stockArithmetic(Blackhole hole) {
    Quantity<Mass> sum = Quantities.getQuantity(0, Units.GRAM);
    for (int i = 0; i < LINES; i++) {
      Quantity<Mass> scaled = stock.get(i).multiply(factor);
      keptStock[i] = scaled;
      sum = sum.add(scaled);
    }
    hole.consume(keptStock);
    return sum;
  }
}
