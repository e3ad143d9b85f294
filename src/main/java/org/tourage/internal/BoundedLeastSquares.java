package org.tourage.internal;

import java.util.Arrays;

/**
 * The least squares of A·x − b where each x lies between two bounds: the active-set method of P.B.
 * Stark and R.L. Parker, "Bounded-variable least-squares", Computational Statistics 10 (1995) 129
 * (from memory), with Householder reflections for the free variables. For small dense problems
 * whose columns are independent.
 */
public final class BoundedLeastSquares {
  private static final double GRADIENT_TOLERANCE = 1e-11;
  private static final int ROUNDS_PER_VARIABLE = 50;

  private BoundedLeastSquares() {}

  /**
   * Solves.
   *
   * @param a rows of the matrix, at least as many as columns, columns independent
   * @param b the right side
   * @param low the lower bounds
   * @param high the upper bounds, none below its lower bound
   * @param start where to start, within the bounds
   * @return x
   * @throws ArithmeticException if it does not settle
   */
  public static double[] solve(
      double[][] a, double[] b, double[] low, double[] high, double[] start) {
    int n = start.length;
    double[] x = start.clone();
    boolean[] free = new boolean[n];
    double scale = 0;
    for (int j = 0; j < n; j++) {
      free[j] = x[j] > low[j] && x[j] < high[j];
    }
    for (double[] row : a) {
      for (double value : row) {
        scale = Math.max(scale, Math.abs(value));
      }
    }
    for (int round = 0; round < ROUNDS_PER_VARIABLE * (n + 1); round++) {
      descend(a, b, low, high, x, free);
      int best = -1;
      double steepest = 0;
      double[] rest = residual(a, b, x);
      double size = norm(b) + norm(rest);
      for (int j = 0; j < n; j++) {
        if (free[j] || low[j] == high[j]) {
          continue;
        }
        double slope = 0;
        for (int i = 0; i < a.length; i++) {
          slope += a[i][j] * rest[i];
        }
        double towards = x[j] <= low[j] ? slope : -slope;
        if (towards > GRADIENT_TOLERANCE * scale * size && towards > steepest) {
          steepest = towards;
          best = j;
        }
      }
      if (best < 0) {
        return x;
      }
      free[best] = true;
    }
    throw new ArithmeticException("least squares did not settle");
  }

  /** Goes to the least squares of the free variables, fixing each that meets a bound on the way. */
  private static void descend(
      double[][] a, double[] b, double[] low, double[] high, double[] x, boolean[] free) {
    int n = x.length;
    while (true) {
      int[] columns = columns(free);
      if (columns.length == 0) {
        return;
      }
      double[] right = b.clone();
      for (int i = 0; i < a.length; i++) {
        for (int j = 0; j < n; j++) {
          right[i] -= free[j] ? 0 : a[i][j] * x[j];
        }
      }
      double[] goal = leastSquares(a, right, columns);
      double step = 1;
      int stopped = -1;
      for (int k = 0; k < columns.length; k++) {
        int j = columns[k];
        double bound = goal[k] < low[j] ? low[j] : goal[k] > high[j] ? high[j] : goal[k];
        if (bound != goal[k]) {
          double part = (bound - x[j]) / (goal[k] - x[j]);
          if (stopped < 0 || part < step) {
            step = Math.max(0, part);
            stopped = j;
          }
        }
      }
      for (int k = 0; k < columns.length; k++) {
        int j = columns[k];
        x[j] = stopped < 0 ? goal[k] : x[j] + step * (goal[k] - x[j]);
      }
      if (stopped < 0) {
        return;
      }
      for (int j : columns) {
        // whoever stands on a bound after the step is fixed there exactly
        if (j == stopped) {
          x[j] = Math.abs(x[j] - low[j]) < Math.abs(x[j] - high[j]) ? low[j] : high[j];
          free[j] = false;
        }
      }
    }
  }

  private static int[] columns(boolean[] free) {
    int[] all = new int[free.length];
    int count = 0;
    for (int j = 0; j < free.length; j++) {
      if (free[j]) {
        all[count++] = j;
      }
    }
    return Arrays.copyOf(all, count);
  }

  private static double[] residual(double[][] a, double[] b, double[] x) {
    double[] rest = b.clone();
    for (int i = 0; i < a.length; i++) {
      for (int j = 0; j < x.length; j++) {
        rest[i] -= a[i][j] * x[j];
      }
    }
    return rest;
  }

  private static double norm(double[] v) {
    double sum = 0;
    for (double value : v) {
      sum += value * value;
    }
    return Math.sqrt(sum);
  }

  /** Householder's reflections on the chosen columns. */
  private static double[] leastSquares(double[][] a, double[] b, int[] columns) {
    int m = a.length;
    int n = columns.length;
    double[][] r = new double[m][n];
    for (int i = 0; i < m; i++) {
      for (int k = 0; k < n; k++) {
        r[i][k] = a[i][columns[k]];
      }
    }
    double[] right = b.clone();
    for (int k = 0; k < n; k++) {
      double norm = 0;
      for (int i = k; i < m; i++) {
        norm += r[i][k] * r[i][k];
      }
      norm = Math.sqrt(norm);
      if (norm == 0) {
        throw new ArithmeticException("columns of the least squares are dependent");
      }
      double alpha = r[k][k] > 0 ? -norm : norm;
      double[] v = new double[m];
      for (int i = k; i < m; i++) {
        v[i] = r[i][k];
      }
      v[k] -= alpha;
      double vv = 0;
      for (int i = k; i < m; i++) {
        vv += v[i] * v[i];
      }
      for (int c = k; c < n; c++) {
        double dot = 0;
        for (int i = k; i < m; i++) {
          dot += v[i] * r[i][c];
        }
        for (int i = k; i < m; i++) {
          r[i][c] -= 2 * dot / vv * v[i];
        }
      }
      double dot = 0;
      for (int i = k; i < m; i++) {
        dot += v[i] * right[i];
      }
      for (int i = k; i < m; i++) {
        right[i] -= 2 * dot / vv * v[i];
      }
    }
    double[] x = new double[n];
    for (int k = n - 1; k >= 0; k--) {
      double sum = right[k];
      for (int c = k + 1; c < n; c++) {
        sum -= r[k][c] * x[c];
      }
      x[k] = sum / r[k][k];
    }
    return x;
  }
}
