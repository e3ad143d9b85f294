package org.tourage.day;

import static org.tourage.quantity.BakeryUnits.FRACTION;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.formula.StageKind;
import org.tourage.lamination.FoldSequence;
import org.tourage.lamination.LaminationPlan;
import org.tourage.lamination.Rollers;
import org.tourage.makeup.CuttingPlan;
import org.tourage.makeup.SheetForPieces;
import org.tourage.makeup.WeighedSheet;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Extent;

/**
 * Finds the dough that is needed. Where a sheet is cut, its trim and ends depend on its size, so
 * the dough is the one whose cut pieces weigh what is wanted.
 */
final class Scaling {
  private static final int FILLING_ROUNDS = 8;
  private static final String ADD_LOCK_IN = "add a step that locks it in, and the turns";

  private final Kitchen kitchen;
  private final Order order;
  private final List<Advice> advice = new ArrayList<>();

  Scaling(Kitchen kitchen, Order order) {
    this.kitchen = kitchen;
    this.order = order;
  }

  /** What the search for the sheet has to say. */
  List<Advice> advice() {
    return advice;
  }

  /** The order as a batch of this formula; the batch is what the recipe gives. */
  Scaled scale(Batch given) {
    Formula formula = given.formula();
    Batch batch = given;
    if (order.size() instanceof Order.OfFlour flour) {
      batch = formula.forFlour(flour.flour());
    } else if (order.size() instanceof Order.Pieces pieces) {
      // the pieces that are ordered have their filling in them
      double dough = given.dough().ratioTo(given.dough().add(given.filling()));
      batch =
          formula.forDough(
              pieces.pieces().withProcessLoss(order.processLoss()).dough().multiply(dough));
    }
    if (!formula.has(StageKind.ROLL_IN)) {
      return divided(
          batch,
          Part.notAsked("no fat is rolled in", "give a roll-in stage"),
          Part.notAsked("there is no laminated sheet to cut", "divide the dough by weight"));
    }
    Batch start = batch;
    Part<LaminationPlan> plan = Part.worked(() -> laminate(start));
    if (order.count() == 0 || !(order.product().makeUp() instanceof MakeUp.FromSheet cut)) {
      return divided(
          batch,
          plan,
          Part.notAsked("the sheet is not cut", "give the number of pieces and how they are cut"));
    }
    double dough = given.dough().ratioTo(given.dough().add(given.filling()));
    Optional<Amount<Mass>> wanted = order.rawPiece().map(m -> m.multiply(dough));
    if (wanted.isEmpty() || !plan.isThere()) {
      Part<CuttingPlan> cutting =
          plan.then(
              p ->
                  CuttingPlan.forPieces(
                      cut.cut(), order.count(), p.finalSheet(), cut.trim(), cut.slenderness()));
      return cut(batch, plan, cutting);
    }
    Part<SheetForPieces> found = Part.worked(() -> find(start, cut, wanted.get()));
    // the trim grows the dough and the filling with it: what is left of the ordered mass is dough
    for (int round = 0;
        round < FILLING_ROUNDS && found.isThere() && given.filling().value() > 0;
        round++) {
      Amount<Mass> filling = start.filling().multiply(found.get().scale() / order.count());
      Amount<Mass> left = order.rawPiece().orElseThrow().subtract(filling);
      found = Part.worked(() -> find(start, cut, left));
    }
    if (!found.isThere()) {
      return cut(batch, plan, found.then(SheetForPieces::plan));
    }
    advice.addAll(found.get().advice());
    Batch right = batch.times(found.get().scale());
    return cut(right, Part.worked(() -> laminate(right)), found.then(SheetForPieces::plan));
  }

  private SheetForPieces find(Batch start, MakeUp.FromSheet cut, Amount<Mass> dough) {
    return SheetForPieces.find(
        cut.cut(),
        order.count(),
        dough,
        cut.trim(),
        cut.slenderness(),
        scale -> sheet(start.times(scale)));
  }

  /** Pieces by weight. */
  private Scaled divided(Batch batch, Part<LaminationPlan> plan, Part<CuttingPlan> cutting) {
    Amount<Mass> piece = batch.pieceMass(Math.max(1, order.count()), order.processLoss());
    return new Scaled(
        batch, order.count(), piece, filling(batch, piece), base(batch), plan, cutting);
  }

  /** Filling goes with the dough, so that all pieces have their share. */
  private static Amount<Mass> filling(Batch batch, Amount<Mass> piece) {
    return batch.filling().multiply(piece.ratioTo(batch.dough()));
  }

  /** Pieces from the sheet; where it can't be cut, as if they were divided. */
  private Scaled cut(Batch batch, Part<LaminationPlan> plan, Part<CuttingPlan> cutting) {
    if (!cutting.isThere()) {
      return divided(batch, plan, cutting);
    }
    Amount<Mass> piece = cutting.get().pieceMass(sheet(batch).mass());
    Amount<Mass> filling = batch.filling().divide(order.count());
    return new Scaled(batch, order.count(), piece, filling, base(batch), plan, cutting);
  }

  private Amount<Mass> base(Batch batch) {
    return batch.baseDough().multiply(1 - order.processLoss().in(FRACTION));
  }

  private WeighedSheet sheet(Batch batch) {
    return WeighedSheet.of(laminate(batch).finalSheet(), base(batch).add(batch.rollIn()));
  }

  /** What the kitchen has; else a pin as wide as the bench lets one work. */
  private Rollers rollers(LaminationPlan.Setup setup) {
    if (kitchen.rollers().isPresent() || kitchen.benchSize().isEmpty()) {
      return kitchen.rollers().orElse(setup.rollers());
    }
    Extent bench = kitchen.benchSize().get();
    Amount<Length> across =
        bench.width().compareTo(bench.length()) < 0 ? bench.width() : bench.length();
    return Rollers.Pin.of(across, Rollers.PIN.leastGap(), Rollers.PIN.largestReduction());
  }

  private LaminationPlan laminate(Batch batch) {
    FoldSequence folds =
        order
            .product()
            .procedure()
            .folds()
            .orElseThrow(
                () ->
                    new BakeryException(
                        Reason.MISSING,
                        "the lamination is not worked",
                        "no step locks in the fat",
                        ADD_LOCK_IN));
    LaminationPlan.Setup setup =
        order.product().makeUp() instanceof MakeUp.FromSheet sheet
            ? sheet.setup()
            : LaminationPlan.Setup.SMALL_BENCH.suiting(folds.lockIn());
    return LaminationPlan.of(batch, order.processLoss(), folds, setup.withRollers(rollers(setup)));
  }
}
