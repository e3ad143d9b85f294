package org.tourage.internal;

import java.util.Arrays;

/** As many linear equations as unknowns. */
public final class LinearEquations {
  private static final double NOTHING = 1e-12;

  private LinearEquations() {}

  /**
   * Solves by elimination with pivots (Gauss and Jordan).
   *
   * @param m the rows, each with its right side last; they are used up
   * @return the unknowns. Where a column is of no use its unknown is 0, or NaN if an equation is
   *     left over that nothing can meet
   */
  public static double[] solve(double[][] m) {
    int n = m.length;
    int[] rowOf = new int[n];
    Arrays.fill(rowOf, -1);
    boolean[] used = new boolean[n];
    for (int c = 0; c < n; c++) {
      int pivot = -1;
      for (int r = 0; r < n; r++) {
        boolean larger = pivot < 0 || Math.abs(m[r][c]) > Math.abs(m[pivot][c]);
        pivot = !used[r] && Math.abs(m[r][c]) > NOTHING && larger ? r : pivot;
      }
      if (pivot < 0) {
        continue;
      }
      used[pivot] = true;
      rowOf[c] = pivot;
      for (int r = 0; r < n; r++) {
        double factor = r == pivot ? 0 : m[r][c] / m[pivot][c];
        for (int k = c; k <= n && factor != 0; k++) {
          m[r][k] -= factor * m[pivot][k];
        }
      }
    }
    double[] x = new double[n];
    for (int c = 0; c < n; c++) {
      x[c] = rowOf[c] < 0 ? leftOver(m, used) : m[rowOf[c]][n] / m[rowOf[c]][c];
    }
    return x;
  }

  private static double leftOver(double[][] m, boolean[] used) {
    for (int r = 0; r < m.length; r++) {
      if (!used[r] && Math.abs(m[r][m.length]) > NOTHING) {
        return Double.NaN;
      }
    }
    return 0;
  }
}
