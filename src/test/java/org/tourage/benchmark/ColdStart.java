package org.tourage.benchmark;

import static org.tourage.quantity.Amounts.grams;
import static org.tourage.quantity.Amounts.percent;

import org.tourage.formula.Formula;

/**
 * Prints a first scaled formula; {@link RunBenchmarks} times it from outside. With an argument, an
 * amount.
 */
public final class ColdStart {
  private ColdStart() {}

  public static void main(String[] args) {
    if (args.length > 0) {
      System.out.println(grams(500));
      return;
    }
    Formula rolls =
        Formula.byPercent(
            "rolls",
            f ->
                f.line("bread flour", percent(100))
                    .line("water", percent(62))
                    .line("salt", percent(2))
                    .line("instant yeast", percent(1)));
    System.out.println(rolls.forFlour(grams(740)));
  }
}
