package org.tourage.formula;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import javax.measure.quantity.Dimensionless;
import org.jspecify.annotations.Nullable;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;
import org.tourage.quantity.Amount;

/**
 * One line of a stage: an ingredient and how much of it there is for the total flour of the
 * formula. Immutable and serialisable.
 */
public final class Line implements Serializable {
  private static final long serialVersionUID = 1L;

  /** The ingredient. */
  private final Ingredient ingredient;

  /** Mass of the line by mass of total flour. */
  private final double share;

  /** Whether the line counts as flour. */
  private final boolean flour;

  Line(Ingredient ingredient, double share, boolean flour) {
    this.ingredient = requireNonNull(ingredient, "ingredient");
    this.share = share;
    this.flour = flour;
  }

  static Line of(Ingredient ingredient, double share) {
    return new Line(ingredient, share, ingredient.is(Role.FLOUR));
  }

  Line withShare(double value) {
    return new Line(ingredient, value, flour);
  }

  /** Lines of one key can be merged. */
  record Key(Ingredient ingredient, boolean flour) {}

  Key key() {
    return new Key(ingredient, flour);
  }

  /**
   * The ingredient.
   *
   * @return the ingredient
   */
  public Ingredient ingredient() {
    return ingredient;
  }

  /**
   * Baker's percent: the mass of the line by the mass of the total flour of the formula.
   *
   * @return the percentage
   */
  public Amount<Dimensionless> percent() {
    return PERCENT.amount(share * 100);
  }

  /**
   * Whether the line counts as flour.
   *
   * @return true for flours and meals, and for lines added as flour
   */
  public boolean isFlour() {
    return flour;
  }

  double share() {
    return share;
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Line that
        && ingredient.equals(that.ingredient)
        && Double.compare(share, that.share) == 0
        && flour == that.flour;
  }

  @Override
  public int hashCode() {
    return 31 * ingredient.hashCode() + Double.hashCode(share);
  }

  /** {@code bread flour 100 %}. */
  @Override
  public String toString() {
    return ingredient.name() + " " + percent();
  }
}
