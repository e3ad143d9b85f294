package org.tourage.substitution;

import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import javax.measure.quantity.Dimensionless;
import org.tourage.formula.Formula;
import org.tourage.formula.Line;
import org.tourage.formula.Stage;
import org.tourage.formula.StageKind;
import org.tourage.ingredient.Ingredient;
import org.tourage.quantity.Amount;

/**
 * What exchanges do to the lines of a formula, summed up before any of it is done, so that it does
 * not matter which is named first.
 */
final class LineChanges {
  static final double NOTHING = 1e-12;

  /** What comes for a part of an ingredient, by mass of what goes. */
  private record Coming(Ingredient from, Ingredient to, double part, double ratio) {}

  private final Formula formula;
  private final double[] change;
  private final Map<Ingredient, Double> additions = new LinkedHashMap<>();
  private final List<Coming> coming = new ArrayList<>();

  LineChanges(Formula formula) {
    this.formula = formula;
    this.change = new double[formula.lines().size()];
  }

  void exchange(Exchange wanted, double ratio) {
    coming.add(new Coming(wanted.from(), wanted.to(), wanted.part(), ratio));
  }

  /** Changes a line, in shares of the total flour before. */
  void change(int line, double by) {
    change[line] += by;
  }

  /** Adds something to the final dough, in shares of the total flour before. */
  void add(Ingredient ingredient, double share) {
    additions.merge(ingredient, share, Double::sum);
  }

  /** What is taken from a line, by the total flour before. */
  Amount<Dimensionless> taken(int line) {
    return PERCENT.amount(-100 * change[line]);
  }

  private double share(int line) {
    return formula.lines().get(line).percent().in(FRACTION) + change[line];
  }

  /** A line from which more is taken than there is. */
  OptionalInt overdrawn() {
    for (int i = 0; i < change.length; i++) {
      if (share(i) < -NOTHING) {
        return OptionalInt.of(i);
      }
    }
    return OptionalInt.empty();
  }

  Formula formula() {
    int[] next = {0};
    boolean[] added = {false};
    Stage host = host();
    return formula
        .replace(
            (stage, line) -> {
              List<Formula.Part> parts = parts(line, share(next[0]++));
              if (!added[0] && stage.equals(host)) {
                added[0] = true;
                additions.forEach((ingredient, share) -> parts.add(part(ingredient, share)));
              }
              return parts;
            })
        .formula();
  }

  private List<Formula.Part> parts(Line line, double share) {
    List<Formula.Part> parts = new ArrayList<>();
    List<Formula.Part> fresh = new ArrayList<>();
    double kept = 1;
    for (Coming one : coming) {
      if (one.from.equals(line.ingredient()) && one.part > 0) {
        kept -= one.part;
        fresh.add(part(one.to, share * one.part * one.ratio));
      }
    }
    if (share * kept > NOTHING) {
      parts.add(part(line.ingredient(), share * kept));
    }
    parts.addAll(fresh);
    return parts;
  }

  private static Formula.Part part(Ingredient ingredient, double share) {
    return new Formula.Part(ingredient, PERCENT.amount(100 * share));
  }

  private Stage host() {
    return formula.stages().stream()
        .filter(s -> s.kind() == StageKind.FINAL_DOUGH && !s.lines().isEmpty())
        .findFirst()
        .orElse(formula.stages().get(0));
  }
}
