package org.tourage.benchmark;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.options.Options;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/**
 * Runs the benchmarks in one run, prints their ratios, then measures the cold start in new
 * machines.
 */
public final class RunBenchmarks {
  private static final int COLD_STARTS = 15;

  private RunBenchmarks() {}

  public static void main(String[] args) throws Exception {
    Options options =
        new OptionsBuilder()
            .include(args.length == 0 ? "org.tourage.benchmark.*Benchmark.*" : args[0])
            .build();
    Collection<RunResult> results = new Runner(options).run();
    if (args.length > 0) {
      return; // a part of the benchmarks has no ratios to the others
    }
    double records = score(results, "handWrittenRecords");
    for (String name : new String[] {"typedAmounts", "typedFormula"}) {
      double score = score(results, name);
      System.out.printf(
          Locale.ROOT,
          "%s: %.1f ns, %.2f x the hand-written records, stock arithmetic / this = %.0f%n",
          name,
          score,
          score / records,
          score(results, "stockArithmetic") / score);
    }
    for (String name :
        new String[] {
          "countABillionLayers",
          "buildAStackOf118098FatLayers",
          "minutesUntilTooSoft",
          "exchangeALiquid",
          "exchangeAFlour",
          "solveForSixTargets"
        }) {
      System.out.printf(Locale.ROOT, "%s: %.3f ms%n", name, score(results, name) / 1e6);
    }
    double coupled = score(results, "coupledSystem");
    System.out.printf(
        Locale.ROOT,
        "retard of 16 h: whole %.3f ms, coupled system %.3f ms, general integrator / this = %.1f;"
            + " errors of core (K) and progress (share), ours then its: %s%n",
        score(results, "wholeRetard") / 1e6,
        coupled / 1e6,
        score(results, "sameSystemByGeneralIntegrator") / coupled,
        FermentationBenchmark.errors());
    double boiling = score(results, "boilingSystem");
    System.out.printf(
        Locale.ROOT,
        "bake of 25 min: whole %.3f ms, system %.3f ms, stiff integrator / this = %.1f; errors of"
            + " core (K) and loss (share), ours then its: %s%n",
        score(results, "wholeBake") / 1e6,
        boiling / 1e6,
        score(results, "sameSystemByStiffIntegrator") / boiling,
        BakeBenchmark.errors());
    List<Long> starts = new ArrayList<>();
    for (int i = 0; i < COLD_STARTS; i++) {
      starts.add(coldStart());
    }
    Collections.sort(starts);
    System.out.println(
        "cold start, ms, "
            + COLD_STARTS
            + " runs: median "
            + starts.get(COLD_STARTS / 2)
            + ", all "
            + starts);
  }

  private static double score(Collection<RunResult> results, String name) {
    return results.stream()
        .filter(r -> r.getParams().getBenchmark().endsWith("." + name))
        .findFirst()
        .orElseThrow()
        .getPrimaryResult()
        .getScore();
  }

  private static long coldStart() throws Exception {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    long before = System.nanoTime();
    Process process =
        new ProcessBuilder(
                java,
                "-classpath",
                System.getProperty("java.class.path"),
                "org.tourage.benchmark.ColdStart")
            .start();
    long found = -1;
    try (BufferedReader out =
        new BufferedReader(
            new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
      for (String line = out.readLine(); line != null; line = out.readLine()) {
        if (line.startsWith("total dough")) {
          found = (System.nanoTime() - before) / 1_000_000;
        }
      }
    }
    return found;
  }
}
