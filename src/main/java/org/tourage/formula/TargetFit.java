package org.tourage.formula;

import static org.tourage.quantity.BakeryUnits.GRAM;

import java.util.List;
import org.tourage.internal.BoundedLeastSquares;

/**
 * The weights of a batch that meet targets as well as can be: least squares under bounds, and of
 * all answers that are as good the one closest to the start.
 */
final class TargetFit {
  /** How strongly the start holds; so little that a target gives way by less than 1e-10 of it. */
  private static final double HOLD = 1e-6;

  private final Batch start;
  private final List<FormulaTargets.Move> moves;

  TargetFit(Batch start, List<FormulaTargets.Move> moves) {
    this.start = start;
    this.moves = moves;
  }

  /** All weights in grams. */
  double[] solve(List<TargetRow> wanted) {
    double[] grams = new double[start.formula().size()];
    boolean[] moved = new boolean[grams.length];
    for (int i = 0; i < grams.length; i++) {
      grams[i] = start.weight(i).in(GRAM);
    }
    moves.forEach(m -> moved[m.line()] = true);
    double flour = start.flour().in(GRAM);
    int ceilings = (int) wanted.stream().filter(TargetRow::isCeiling).count();
    int n = moves.size() + ceilings;
    double[][] a = new double[wanted.size() + n][n];
    double[] b = new double[a.length];
    double[] low = new double[n];
    double[] high = new double[n];
    double[] x = new double[n];
    // unknown: each weight by the flour, so that all columns are alike
    for (int j = 0; j < moves.size(); j++) {
      low[j] = moves.get(j).low() / flour;
      high[j] = moves.get(j).high() / flour;
      x[j] = Math.max(low[j], Math.min(high[j], grams[moves.get(j).line()] / flour));
    }
    int slack = moves.size();
    for (int r = 0; r < wanted.size(); r++) {
      TargetRow target = wanted.get(r);
      double[] row = target.coefficients();
      double scale = target.scale(flour);
      b[r] = target.isRatio() ? 0 : target.goal / scale;
      for (int i = 0; i < grams.length; i++) {
        b[r] -= moved[i] ? 0 : row[i] * grams[i] / scale;
      }
      for (int j = 0; j < moves.size(); j++) {
        a[r][j] = row[moves.get(j).line()] * flour / scale;
      }
      if (target.isCeiling()) {
        // what is left of the ceiling; the bound is only there to be finite
        a[r][slack] = 1;
        high[slack] = 1e6;
        slack++;
      }
    }
    for (int j = 0; j < n; j++) {
      a[wanted.size() + j][j] = HOLD;
      b[wanted.size() + j] = j < moves.size() ? HOLD * x[j] : 0;
    }
    double[] found = BoundedLeastSquares.solve(a, b, low, high, x);
    for (int j = 0; j < moves.size(); j++) {
      grams[moves.get(j).line()] = found[j] * flour;
    }
    return grams;
  }
}
