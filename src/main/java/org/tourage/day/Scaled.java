package org.tourage.day;

import javax.measure.quantity.Mass;
import org.tourage.formula.Batch;
import org.tourage.lamination.LaminationPlan;
import org.tourage.makeup.CuttingPlan;
import org.tourage.quantity.Amount;

/**
 * What scaling settled.
 *
 * @param batch the batch, not rounded
 * @param pieces how many pieces, 0 if not parted
 * @param piece the raw mass of the dough of one, roll-in included; of the whole dough if not parted
 * @param filling the filling of one
 * @param doughMass the dough without roll-in that gets onto the bench
 * @param lamination the lamination, where fat is rolled in
 * @param cutting the cutting plan, where a sheet is cut
 */
record Scaled(
    Batch batch,
    int pieces,
    Amount<Mass> piece,
    Amount<Mass> filling,
    Amount<Mass> doughMass,
    Part<LaminationPlan> lamination,
    Part<CuttingPlan> cutting)
    implements java.io.Serializable {

  /** What is left of the sheet, 0 g where none is cut. */
  Amount<Mass> trim() {
    return cutting
        .found()
        .map(c -> c.trimMass(doughMass.add(batch.rollIn())))
        .orElseGet(() -> org.tourage.quantity.Amounts.grams(0));
  }
}
