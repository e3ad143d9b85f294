package org.tourage.formula;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import javax.measure.quantity.Mass;
import org.tourage.ingredient.Ingredient;
import org.tourage.quantity.Amount;

/**
 * A line of a batch with its mass.
 *
 * @param stage the name of its stage
 * @param kind what the stage is for
 * @param line the line
 * @param mass what of it goes into the product, in grams
 * @param toWeigh what is put on the balance, in grams: the same, or more where some of the stage is
 *     kept back, as of a levain that lives on
 */
public record WeighedLine(
    String stage, StageKind kind, Line line, Amount<Mass> mass, Amount<Mass> toWeigh)
    implements Serializable {

  /**
   * Checks that nothing is null.
   *
   * @param stage the name of its stage
   * @param kind what the stage is for
   * @param line the line
   * @param mass what of it goes into the product, in grams
   * @param toWeigh what is put on the balance, in grams
   */
  public WeighedLine {
    requireNonNull(stage, "stage");
    requireNonNull(kind, "kind");
    requireNonNull(line, "line");
    requireNonNull(mass, "mass");
    requireNonNull(toWeigh, "toWeigh");
  }

  /**
   * The ingredient.
   *
   * @return the ingredient of the line
   */
  public Ingredient ingredient() {
    return line.ingredient();
  }

  /** {@code Poolish: bread flour 200 g}. */
  @Override
  public String toString() {
    return stage + ": " + line.ingredient().name() + " " + mass;
  }
}
