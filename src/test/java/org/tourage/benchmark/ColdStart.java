package org.tourage.benchmark;

import static org.tourage.quantity.Amounts.grams;
import static org.tourage.quantity.Amounts.percent;

import java.lang.management.ManagementFactory;
import org.tourage.formula.Formula;

/** Prints a first scaled formula and how long after the start of the virtual machine that was. */
public final class ColdStart {
  private ColdStart() {}

  public static void main(String[] args) {
    Formula rolls =
        Formula.byPercent(
            "rolls",
            f ->
                f.line("bread flour", percent(100))
                    .line("water", percent(62))
                    .line("salt", percent(2))
                    .line("instant yeast", percent(1)));
    System.out.println(rolls.forFlour(grams(740)));
    long started = ManagementFactory.getRuntimeMXBean().getStartTime();
    System.out.println("cold start: " + (System.currentTimeMillis() - started) + " ms");
  }
}
