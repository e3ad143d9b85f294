package org.tourage.label;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.formula.Line;
import org.tourage.formula.Stage;
import org.tourage.internal.TextTable;
import org.tourage.quantity.AmountFormat;

/**
 * One recipe at several sizes side by side.
 *
 * @param batches the same formula at each size, in order
 */
public record ScalingSheet(List<Batch> batches) implements Serializable {
  private static final int MOST_COLUMNS = 12;

  /**
   * Copies the list and checks that it is of one formula.
   *
   * @param batches the same formula at each size
   */
  public ScalingSheet {
    batches = List.copyOf(batches);
    boolean one = batches.stream().map(Batch::formula).distinct().count() == 1;
    if (!one || batches.size() > MOST_COLUMNS) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "a scaling sheet is of one formula at 1 to " + MOST_COLUMNS + " sizes",
          batches.size() + " batches",
          "give the same formula at each size");
    }
  }

  /**
   * A formula at several masses of dough.
   *
   * @param formula the formula
   * @param doughs the masses of dough, for example five
   * @return the sheet
   */
  public static ScalingSheet of(Formula formula, List<? extends Quantity<Mass>> doughs) {
    List<Batch> batches = new ArrayList<>();
    for (Quantity<Mass> dough : doughs) {
      batches.add(formula.forDough(dough));
    }
    return new ScalingSheet(batches);
  }

  /**
   * The same sheet with each size rounded to the step of a balance.
   *
   * @param resolution the step
   * @return the sheet
   */
  public ScalingSheet rounded(Quantity<Mass> resolution) {
    return new ScalingSheet(batches.stream().map(b -> b.rounded(resolution)).toList());
  }

  /** A row for each line, a column for each size. */
  @Override
  public String toString() {
    return table(AmountFormat.metric());
  }

  /**
   * A row for each line, a column for each size.
   *
   * @param format how to write the masses
   * @return the table as text
   */
  public String table(AmountFormat format) {
    Formula formula = batches.get(0).formula();
    TextTable table = new TextTable(1);
    table.heading(formula.name());
    table.row(row("dough", b -> format.mass(b.dough())));
    int index = 0;
    for (Stage stage : formula.stages()) {
      table.heading(stage.name());
      for (Line line : stage.lines()) {
        int place = index++;
        table.row(row("  " + line.ingredient().name(), b -> format.mass(b.weight(place))));
      }
    }
    return table.toString();
  }

  private String[] row(String name, java.util.function.Function<Batch, String> cell) {
    List<String> cells = new ArrayList<>(List.of(name));
    batches.forEach(b -> cells.add(cell.apply(b)));
    return cells.toArray(new String[0]);
  }
}
