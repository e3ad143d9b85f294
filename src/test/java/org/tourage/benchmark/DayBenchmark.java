package org.tourage.benchmark;

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
import org.tourage.command.Main;
import org.tourage.day.BakeDay;
import org.tourage.day.DayPlan;
import org.tourage.quantity.AmountFormat;
import org.tourage.sheet.BenchSheet;

/** The whole demo day from its plan, and its sheet. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 3, time = 2)
public class DayBenchmark {
  private final DayPlan plan = Main.demo().plan();
  private final BakeDay day = BakeDay.of(plan);

  /** Works the demo day. */
  @Benchmark
  public BakeDay wholeDay() {
    return BakeDay.of(plan);
  }

  /** Prints its sheet. */
  @Benchmark
  public String sheet() {
    return BenchSheet.of(day, AmountFormat.sideBySide()).toString();
  }
}
