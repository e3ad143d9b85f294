package org.tourage.substitution;

import java.io.Serializable;
import java.util.Optional;
import java.util.function.Predicate;
import org.tourage.formula.Formula;
import org.tourage.formula.Line;
import org.tourage.formula.Stage;
import org.tourage.formula.StageKind;
import org.tourage.ingredient.Ingredient;

/**
 * The line of a dough that takes up a difference of a component.
 *
 * @param index its place among the lines of the formula
 * @param stage its stage
 * @param line the line
 */
record BalancingLine(int index, Stage stage, Line line) implements Serializable {

  /** One of the final dough before one of another stage, then the richest, then the first. */
  static Optional<BalancingLine> find(
      Formula formula, Conserved component, Predicate<Ingredient> allowed) {
    BalancingLine best = null;
    int index = 0;
    for (Stage stage : formula.stages()) {
      for (Line line : stage.lines()) {
        Ingredient ingredient = line.ingredient();
        boolean fits =
            stage.kind().inDough()
                && ingredient.is(component.balancing())
                && component.of(ingredient) > 0
                && allowed.test(ingredient);
        BalancingLine here = new BalancingLine(index++, stage, line);
        if (fits && (best == null || here.rank(component) > best.rank(component))) {
          best = here;
        }
      }
    }
    return Optional.ofNullable(best);
  }

  private double rank(Conserved component) {
    return (stage.kind() == StageKind.FINAL_DOUGH ? 10 : 0) + component.of(line.ingredient());
  }
}
