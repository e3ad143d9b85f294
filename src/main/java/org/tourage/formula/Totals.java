package org.tourage.formula;

import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import javax.measure.quantity.Dimensionless;
import org.tourage.ingredient.Component;
import org.tourage.ingredient.Composition;
import org.tourage.internal.TextTable;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;

/**
 * What a formula holds, roll-in included and finish left out, each by the total flour. The water is
 * the true hydration of the dough, without that of the flour and of the roll-in. Salt is sodium ×
 * 2.5 (Regulation (EU) No 1169/2011, Annex I), without the sodium of chemical leavening.
 *
 * @param water the true hydration
 * @param fat fat of all lines
 * @param sugars sugars of all lines but the flour
 * @param salt salt of all lines
 * @param protein protein of all lines
 * @param dough the whole dough
 */
public record Totals(
    Amount<Dimensionless> water,
    Amount<Dimensionless> fat,
    Amount<Dimensionless> sugars,
    Amount<Dimensionless> salt,
    Amount<Dimensionless> protein,
    Amount<Dimensionless> dough)
    implements Serializable {

  /**
   * The totals of a formula.
   *
   * @param formula the formula
   * @return the totals
   */
  public static Totals of(Formula formula) {
    double fat = 0;
    double sugars = 0;
    double salt = 0;
    double protein = 0;
    for (Line line : formula.overall()) {
      double percent = 100 * line.share();
      Composition composition = line.ingredient().composition();
      fat += percent * composition.fraction(Component.FAT);
      sugars += line.isFlour() ? 0 : percent * composition.fraction(Component.SUGARS);
      salt += percent * line.ingredient().saltFraction();
      protein += percent * composition.fraction(Component.PROTEIN);
    }
    return new Totals(
        formula.hydration().trueHydration(),
        PERCENT.amount(fat),
        PERCENT.amount(sugars),
        PERCENT.amount(salt),
        PERCENT.amount(protein),
        formula.dough());
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
    row(table, "true hydration", water, after.water);
    row(table, "fat", fat, after.fat);
    row(table, "sugars", sugars, after.sugars);
    row(table, "salt", salt, after.salt);
    row(table, "protein", protein, after.protein);
    row(table, "dough", dough, after.dough);
    return table.toString();
  }

  private static void row(
      TextTable table, String name, Amount<Dimensionless> before, Amount<Dimensionless> after) {
    AmountFormat format = AmountFormat.metric();
    Amount<Dimensionless> change = after.subtract(before);
    String words = format.percent(change);
    boolean none = words.equals("0 %") || words.equals("-0 %");
    table.row(
        name,
        format.percent(before),
        format.percent(after),
        none ? "0 %" : (change.value() > 0 ? "+" : "") + words);
  }

  /** One line. */
  @Override
  public String toString() {
    AmountFormat format = AmountFormat.metric();
    return "by flour: true hydration "
        + format.percent(water)
        + ", fat "
        + format.percent(fat)
        + ", sugars "
        + format.percent(sugars)
        + ", salt "
        + format.percent(salt)
        + ", protein "
        + format.percent(protein)
        + ", dough "
        + format.percent(dough);
  }
}
