package org.tourage.lamination;

import static java.util.Objects.requireNonNull;

import org.tourage.formula.Formula;
import org.tourage.formula.StageKind;
import org.tourage.ingredient.Role;

/** What kind of dough is laminated; what is usual for layers and fat depends on it. */
public enum LaminatedDough {
  /** With yeast or a preferment: crescents, filled pieces, braids. */
  YEASTED,
  /** Without: puff dough. */
  PUFF,
  /** Not said. */
  UNSAID;

  /**
   * The kind of a formula.
   *
   * @param formula the formula
   * @return yeasted if its dough has yeast or a preferment, otherwise puff
   */
  public static LaminatedDough of(Formula formula) {
    requireNonNull(formula, "formula");
    boolean yeasted =
        formula.stages().stream()
            .filter(s -> s.kind().inDough())
            .anyMatch(
                s ->
                    s.kind() == StageKind.PREFERMENT
                        || s.lines().stream().anyMatch(l -> l.ingredient().is(Role.YEAST)));
    return yeasted ? YEASTED : PUFF;
  }
}
