package org.tourage.day;

import static org.tourage.quantity.BakeryUnits.FRACTION;

import java.util.Optional;
import javax.measure.quantity.Mass;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.formula.StageKind;
import org.tourage.lamination.FoldSequence;
import org.tourage.lamination.LaminationPlan;
import org.tourage.makeup.CuttingPlan;
import org.tourage.quantity.Amount;

/**
 * Finds the dough that is needed. Where a sheet is cut, its trim and ends depend on its size, so
 * the dough is the one whose cut pieces weigh what is wanted.
 */
final class Scaling {
  private static final int MOST_ROUNDS = 60;
  private static final double SETTLED = 1e-12;

  private final Order order;

  Scaling(Order order) {
    this.order = order;
  }

  /** The order as a batch of this formula; the batch is what the recipe gives. */
  Scaled scale(Batch given) {
    Formula formula = given.formula();
    Batch batch = given;
    if (order.size() instanceof Order.OfFlour flour) {
      batch = formula.forFlour(flour.flour());
    } else if (order.size() instanceof Order.Pieces pieces) {
      batch = formula.forPieces(pieces.pieces().withProcessLoss(order.processLoss()));
    }
    boolean rolledIn = formula.stages().stream().anyMatch(s -> s.kind() == StageKind.ROLL_IN);
    Scaled scaled = lay(batch, rolledIn);
    Optional<Amount<Mass>> wanted = order.rawPiece();
    if (wanted.isEmpty() || !scaled.cutting().isThere()) {
      return scaled;
    }
    for (int round = 0; round < MOST_ROUNDS && scaled.cutting().isThere(); round++) {
      double correction = wanted.get().ratioTo(scaled.piece());
      if (Math.abs(correction - 1) < SETTLED) {
        break;
      }
      scaled = lay(scaled.batch().times(correction), rolledIn);
    }
    return scaled;
  }

  private Scaled lay(Batch batch, boolean rolledIn) {
    int pieces = order.count();
    Amount<Mass> divided =
        batch.pieceMass(Math.max(1, pieces), order.processLoss());
    Amount<Mass> base =
        batch.baseDough().multiply(1 - order.processLoss().in(FRACTION));
    if (!rolledIn) {
      return new Scaled(
          batch,
          pieces,
          divided,
          base,
          Part.notAsked("no fat is rolled in", "give a roll-in stage"),
          Part.notAsked("there is no laminated sheet to cut", "divide the dough by weight"));
    }
    Part<LaminationPlan> plan = Part.worked(() -> laminate(batch, base));
    Amount<Mass> sheet = base.add(batch.rollIn());
    Part<CuttingPlan> cutting =
        pieces == 0 || !(order.product().makeUp() instanceof MakeUp.FromSheet cut)
            ? Part.notAsked("the sheet is not cut", "give the number of pieces and how they are cut")
            : plan.then(
                p ->
                    CuttingPlan.forPieces(
                        cut.cut(), pieces, p.finalSheet(), cut.trim(), cut.slenderness()));
    Amount<Mass> piece = cutting.found().map(c -> c.pieceMass(sheet)).orElse(divided);
    return new Scaled(batch, pieces, piece, base, plan, cutting);
  }

  private LaminationPlan laminate(Batch batch, Amount<Mass> base) {
    FoldSequence folds =
        order
            .product()
            .procedure()
            .folds()
            .orElseThrow(
                () ->
                    new org.tourage.advice.BakeryException(
                        org.tourage.advice.BakeryException.Reason.MISSING,
                        "the lamination is not worked",
                        "no step locks in the fat",
                        "add a step that locks it in, and the turns"));
    LaminationPlan.Setup setup =
        order.product().makeUp() instanceof MakeUp.FromSheet sheet
            ? sheet.setup()
            : LaminationPlan.Setup.SMALL_BENCH;
    Formula formula = batch.formula();
    return LaminationPlan.of(
        folds,
        base,
        batch.rollIn(),
        org.tourage.physics.ChoiOkos1986.density(
            formula.constituents(StageKind::inDough),
            org.tourage.quantity.Amounts.celsius(15)),
        org.tourage.physics.ChoiOkos1986.density(
            formula.constituents(k -> k == StageKind.ROLL_IN),
            org.tourage.quantity.Amounts.celsius(15)),
        setup);
  }
}
