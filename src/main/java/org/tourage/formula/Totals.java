package org.tourage.formula;

import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.util.List;
import java.util.stream.Collectors;
import javax.measure.quantity.Dimensionless;
import org.jspecify.annotations.Nullable;
import org.tourage.ingredient.Ingredient;
import org.tourage.internal.TextTable;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;

/**
 * What a formula holds, roll-in included and finish left out, each by the total flour. The water is
 * the true hydration of the dough, without that of the flour and of the roll-in. Salt is sodium ×
 * 2.5 (Regulation (EU) No 1169/2011, Annex I), without the sodium of chemical leavening. What an
 * ingredient is not known to hold is left out, and the figure is printed as {@code at least}.
 * Immutable and serialisable.
 */
public final class Totals implements Serializable {
  private static final long serialVersionUID = 1L;

  private static final List<Figure> FIGURES =
      List.of(Figure.WATER, Figure.FAT, Figure.SUGARS, Figure.SALT, Figure.PROTEIN, Figure.DOUGH);

  private final Formula formula;

  private Totals(Formula formula) {
    this.formula = formula;
  }

  /**
   * The totals of a formula.
   *
   * @param formula the formula
   * @return the totals
   * @throws org.tourage.advice.BakeryException if there is no flour in the dough
   */
  public static Totals of(Formula formula) {
    formula.hydration();
    return new Totals(formula);
  }

  /**
   * The true hydration.
   *
   * @return percent of the total flour
   */
  public Amount<Dimensionless> water() {
    return formula.hydration().trueHydration();
  }

  /**
   * Fat of all lines.
   *
   * @return percent of the total flour
   */
  public Amount<Dimensionless> fat() {
    return of(Figure.FAT);
  }

  /**
   * Sugars of all lines but the flour, as far as they are known.
   *
   * @return percent of the total flour
   */
  public Amount<Dimensionless> sugars() {
    return of(Figure.SUGARS);
  }

  /**
   * Salt of all lines, as far as it is known.
   *
   * @return percent of the total flour
   */
  public Amount<Dimensionless> salt() {
    return of(Figure.SALT);
  }

  /**
   * Protein of all lines.
   *
   * @return percent of the total flour
   */
  public Amount<Dimensionless> protein() {
    return of(Figure.PROTEIN);
  }

  /**
   * The whole dough.
   *
   * @return percent of the total flour
   */
  public Amount<Dimensionless> dough() {
    return of(Figure.DOUGH);
  }

  /**
   * Ingredients of which some figure here is not known.
   *
   * @return the ingredients, each once
   */
  public List<Ingredient> unknown() {
    return FIGURES.stream().flatMap(f -> f.unknownIn(formula).stream()).distinct().toList();
  }

  private Amount<Dimensionless> of(Figure figure) {
    return PERCENT.amount(100 * figure.known(formula));
  }

  private Amount<Dimensionless> shown(Figure figure) {
    return figure.equals(Figure.WATER) ? water() : of(figure);
  }

  private String words(Figure figure) {
    boolean known = figure.unknownIn(formula).isEmpty();
    return (known ? "" : "at least ") + AmountFormat.metric().percent(shown(figure));
  }

  private static String label(Figure figure) {
    return figure.equals(Figure.WATER) ? "true hydration" : figure.name();
  }

  /**
   * Two totals beside one another.
   *
   * @param after the totals after a change
   * @return a table with before, after and the change in points of flour
   */
  public String compare(Totals after) {
    TextTable table = new TextTable(1);
    table.row("by flour", "before", "after", "change");
    for (Figure figure : FIGURES) {
      Amount<Dimensionless> change = after.shown(figure).subtract(shown(figure));
      String words = AmountFormat.metric().percent(change);
      boolean none = words.equals("0 %") || words.equals("-0 %");
      table.row(
          label(figure),
          words(figure),
          after.words(figure),
          none ? "0 %" : (change.value() > 0 ? "+" : "") + words);
    }
    return table.toString();
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Totals that && formula.equals(that.formula);
  }

  @Override
  public int hashCode() {
    return formula.hashCode();
  }

  /** One line. */
  @Override
  public String toString() {
    return FIGURES.stream()
        .map(f -> label(f) + " " + words(f))
        .collect(Collectors.joining(", ", "by flour: ", ""));
  }
}
