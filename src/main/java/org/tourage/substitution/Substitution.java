package org.tourage.substitution;

import java.io.Serializable;
import java.util.Set;
import org.tourage.advice.Explained;
import org.tourage.formula.Formula;
import org.tourage.formula.Totals;
import org.tourage.ingredient.Allergen;

/** A formula in which something was replaced. */
public interface Substitution extends Explained, Serializable {

  /**
   * The formula before.
   *
   * @return the formula
   */
  Formula before();

  /**
   * The formula after.
   *
   * @return the formula
   */
  Formula after();

  /**
   * The allergens that were not in the formula before.
   *
   * @return the allergens
   */
  default Set<Allergen> allergensEntered() {
    return AllergenChange.entered(before(), after());
  }

  /**
   * The allergens of the table that are not in the formula any more. Traces may remain.
   *
   * @return the allergens
   */
  default Set<Allergen> allergensLeft() {
    return AllergenChange.left(before(), after());
  }

  /**
   * What the formula holds before and after, side by side.
   *
   * @return a table
   */
  default String comparison() {
    return Totals.of(before()).compare(Totals.of(after()));
  }
}
