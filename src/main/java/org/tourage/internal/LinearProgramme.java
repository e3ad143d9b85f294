package org.tourage.internal;

import java.util.Arrays;
import java.util.Optional;

/**
 * The least c·x with A·x = b and x ≥ 0: the simplex method in a table, in two phases, with Bland's
 * rule so that it can't go in circles (G.B. Dantzig, Linear Programming and Extensions, 1963; R.G.
 * Bland, Math. Oper. Res. 2 (1977) 103; both from memory). For small dense problems.
 */
public final class LinearProgramme {
  private static final double ZERO = 1e-11;
  private static final double INFEASIBLE = 1e-9;

  private final double[][] table;
  private final int[] basis;
  private final int rows;
  private final int columns;

  private LinearProgramme(double[][] a, double[] b) {
    rows = a.length;
    columns = a[0].length;
    table = new double[rows][columns + rows + 1];
    basis = new int[rows];
    for (int i = 0; i < rows; i++) {
      double sign = b[i] < 0 ? -1 : 1;
      for (int j = 0; j < columns; j++) {
        table[i][j] = sign * a[i][j];
      }
      table[i][columns + i] = 1;
      table[i][columns + rows] = sign * b[i];
      basis[i] = columns + i;
    }
  }

  /**
   * Solves.
   *
   * @param a rows of the matrix
   * @param b the right side
   * @param cost what each x costs
   * @return x; empty if no x fits
   * @throws ArithmeticException if the cost has no least value
   */
  public static Optional<double[]> minimise(double[][] a, double[] b, double[] cost) {
    LinearProgramme programme = new LinearProgramme(a, b);
    double[] phase = new double[programme.columns + programme.rows];
    Arrays.fill(phase, programme.columns, phase.length, 1);
    programme.run(phase, phase.length);
    double left = 0;
    double size = 1;
    for (int i = 0; i < programme.rows; i++) {
      size = Math.max(size, Math.abs(b[i]));
      left += programme.basis[i] >= programme.columns ? programme.right(i) : 0;
    }
    if (left > INFEASIBLE * size) {
      return Optional.empty();
    }
    programme.driveOut();
    double[] full = Arrays.copyOf(cost, phase.length);
    programme.run(full, programme.columns);
    double[] x = new double[programme.columns];
    for (int i = 0; i < programme.rows; i++) {
      if (programme.basis[i] < programme.columns) {
        x[programme.basis[i]] = Math.max(0, programme.right(i));
      }
    }
    return Optional.of(x);
  }

  private double right(int row) {
    return table[row][columns + rows];
  }

  /** Helpers that stayed in the basis at 0 are exchanged for real variables where that goes. */
  private void driveOut() {
    for (int i = 0; i < rows; i++) {
      if (basis[i] >= columns) {
        for (int j = 0; j < columns; j++) {
          if (Math.abs(table[i][j]) > 1e-9) {
            pivot(i, j);
            break;
          }
        }
      }
    }
  }

  private void run(double[] cost, int usable) {
    while (true) {
      int enter = -1;
      for (int j = 0; j < usable && enter < 0; j++) {
        double reduced = cost[j];
        for (int i = 0; i < rows; i++) {
          reduced -= cost[basis[i]] * table[i][j];
        }
        enter = reduced < -ZERO ? j : enter;
      }
      if (enter < 0) {
        return;
      }
      int leave = -1;
      for (int i = 0; i < rows; i++) {
        if (table[i][enter] > ZERO) {
          double ratio = right(i) / table[i][enter];
          double best = leave < 0 ? Double.POSITIVE_INFINITY : right(leave) / table[leave][enter];
          boolean better = ratio < best - ZERO || (ratio <= best + ZERO && basis[i] < basis[leave]);
          leave = leave < 0 || better ? i : leave;
        }
      }
      if (leave < 0) {
        throw new ArithmeticException("the cost has no least value");
      }
      pivot(leave, enter);
    }
  }

  private void pivot(int row, int column) {
    double by = table[row][column];
    for (int j = 0; j < table[row].length; j++) {
      table[row][j] /= by;
    }
    for (int i = 0; i < rows; i++) {
      double factor = table[i][column];
      if (i != row && factor != 0) {
        for (int j = 0; j < table[i].length; j++) {
          table[i][j] -= factor * table[row][j];
        }
      }
    }
    basis[row] = column;
  }
}
