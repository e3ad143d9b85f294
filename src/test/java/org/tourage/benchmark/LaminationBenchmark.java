package org.tourage.benchmark;

import static org.tourage.quantity.Amounts.celsius;
import static org.tourage.quantity.Amounts.grams;
import static org.tourage.quantity.Amounts.kilogramsPerCubicMetre;
import static org.tourage.quantity.Amounts.millimetres;

import java.math.BigInteger;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import javax.measure.quantity.Time;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.tourage.lamination.Bench;
import org.tourage.lamination.FatCurve;
import org.tourage.lamination.Fold;
import org.tourage.lamination.FoldSequence;
import org.tourage.lamination.LaminationPlan;
import org.tourage.lamination.LayerStack;
import org.tourage.lamination.LockIn;
import org.tourage.lamination.SheetBody;
import org.tourage.physics.Air;
import org.tourage.physics.Constituents;
import org.tourage.quantity.Amount;

/**
 * Counting over a billion layers, building a stack of over 100,000 bands, one answer of warming.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 3, time = 1)
@Fork(2)
public class LaminationBenchmark {
  private final FoldSequence billion = letters(19);
  private final FoldSequence hundredThousand = letters(10).fold(Fold.HALF);
  private final SheetBody packet =
      SheetBody.of(
          LaminationPlan.of(
              FoldSequence.lockIn(LockIn.HALF).fold(Fold.BOOK).fold(Fold.LETTER),
              grams(1000),
              grams(280),
              kilogramsPerCubicMetre(1200),
              kilogramsPerCubicMetre(940),
              LaminationPlan.Setup.SMALL_BENCH),
          millimetres(20),
          new Constituents(0.40, 0.07, 0.03, 0.46, 0.02, 0.02),
          new Constituents(0.165, 0.002, 0.807, 0.007, 0, 0.019),
          FatCurve.named("dairy butterfat"));

  private static FoldSequence letters(int folds) {
    FoldSequence sequence = FoldSequence.lockIn(LockIn.HALF);
    for (int i = 0; i < folds; i++) {
      sequence = sequence.fold(Fold.LETTER);
    }
    return sequence;
  }

  @Benchmark
  public BigInteger countABillionLayers() {
    return billion.fatLayers();
  }

  @Benchmark
  public LayerStack buildAStackOf118098FatLayers() {
    return hundredThousand.stack(0.25);
  }

  @Benchmark
  public Optional<Amount<Time>> minutesUntilTooSoft() {
    return packet.untilTooSoft(celsius(4), Bench.WOOD, Air.still(celsius(22)));
  }
}
