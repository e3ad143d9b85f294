package org.tourage.physics;

/**
 * Conduction along one axis, x from 0 in the middle to 1 at the face, taken apart into modes that
 * each die away at a rate of their own: even Legendre polynomials, Galerkin's method, the
 * generalised eigenvalue problem by Cholesky's factor and Jacobi's rotations. The convection at the
 * face is the natural boundary condition, so the heat is conserved.
 */
final class Spectrum {
  private static final int MOST_SWEEPS = 60;
  private static final double NOTHING = 1e-26;

  /** How many modes, and how many points: the first is the middle, the last is the face. */
  final int modes;

  final int points;

  /** Rates of decay, in units of diffusivity over the half thickness squared. */
  final double[] decay;

  /** The modes at the points: [mode][point]. */
  final double[][] values;

  /** The share of the body that each point stands for; 0 for the middle and the face. */
  final double[] weights;

  /** What each mode has of a uniform 1. */
  final double[] uniform;

  /**
   * Takes an axis apart.
   *
   * @param dimensions 1, 2 or 3
   * @param biot coefficient times half thickness over conductivity
   * @param modes how many modes
   */
  Spectrum(int dimensions, double biot, int modes) {
    this.modes = modes;
    // exact for the products of the polynomials with the weight of a sphere
    double[][] gauss = gauss(2 * modes + 1);
    double[][] mass = new double[modes][modes];
    double[][] stiff = new double[modes][modes];
    for (int q = 0; q < gauss[0].length; q++) {
      double x = gauss[0][q];
      double w = gauss[1][q] * dimensions * power(x, dimensions - 1);
      double[] p = evenLegendre(x, modes);
      double[] slope = evenLegendreSlopes(x, modes);
      for (int i = 0; i < modes; i++) {
        for (int j = 0; j < modes; j++) {
          mass[i][j] += w * p[i] * p[j];
          stiff[i][j] += w * slope[i] * slope[j];
        }
      }
    }
    for (int i = 0; i < modes; i++) {
      for (int j = 0; j < modes; j++) {
        stiff[i][j] += dimensions * biot; // every P(1) is 1
      }
    }
    double[][] lower = cholesky(mass);
    double[][] vectors = identity(modes);
    double[][] symmetric = reduce(stiff, lower);
    jacobi(symmetric, vectors);
    decay = new double[modes];
    for (int n = 0; n < modes; n++) {
      decay[n] = Math.max(0, symmetric[n][n]);
    }
    double[][] nodes = gauss(modes + 2);
    points = nodes[0].length + 2;
    weights = new double[points];
    values = new double[modes][points];
    uniform = new double[modes];
    double[][] coefficients = backSubstitute(lower, vectors);
    for (int j = 0; j < points; j++) {
      boolean inside = j > 0 && j < points - 1;
      double x = inside ? nodes[0][j - 1] : j == 0 ? 0 : 1;
      weights[j] = inside ? nodes[1][j - 1] * dimensions * power(x, dimensions - 1) : 0;
      double[] p = evenLegendre(x, modes);
      for (int n = 0; n < modes; n++) {
        for (int i = 0; i < modes; i++) {
          values[n][j] += coefficients[n][i] * p[i];
        }
        uniform[n] += weights[j] * values[n][j];
      }
    }
  }

  /** A power of 0, 1 or 2, the same bits everywhere. */
  private static double power(double x, int exponent) {
    return exponent == 0 ? 1 : exponent == 1 ? x : x * x;
  }

  /** P0, P2, P4 … at x. */
  private static double[] evenLegendre(double x, int count) {
    double[] even = new double[count];
    double before = 1;
    double now = x;
    even[0] = 1;
    for (int k = 2; k <= 2 * count - 2; k++) {
      double next = ((2 * k - 1) * x * now - (k - 1) * before) / k;
      before = now;
      now = next;
      if (k % 2 == 0) {
        even[k / 2] = now;
      }
    }
    return even;
  }

  /** Their slopes: P'(k) = P'(k−2) + (2k − 1)·P(k−1). */
  private static double[] evenLegendreSlopes(double x, int count) {
    double[] slopes = new double[count];
    double before = 1;
    double now = x;
    double slope = 0;
    for (int k = 2; k <= 2 * count - 2; k++) {
      double next = ((2 * k - 1) * x * now - (k - 1) * before) / k;
      if (k % 2 == 0) {
        slope += (2 * k - 1) * now;
        slopes[k / 2] = slope;
      }
      before = now;
      now = next;
    }
    return slopes;
  }

  /** Points and weights of Gauss's rule on 0 to 1. */
  private static double[][] gauss(int count) {
    double[] points = new double[count];
    double[] weights = new double[count];
    for (int i = 0; i < count; i++) {
      double x = StrictMath.cos(Math.PI * (i + 0.75) / (count + 0.5));
      double slope = 0;
      for (int round = 0; round < 100; round++) {
        double before = 1;
        double now = x;
        for (int k = 2; k <= count; k++) {
          double next = ((2 * k - 1) * x * now - (k - 1) * before) / k;
          before = now;
          now = next;
        }
        slope = count * (x * now - before) / (x * x - 1);
        double step = now / slope;
        x -= step;
        if (Math.abs(step) < 1e-15) {
          break;
        }
      }
      points[count - 1 - i] = (x + 1) / 2;
      weights[count - 1 - i] = 1 / ((1 - x * x) * slope * slope);
    }
    return new double[][] {points, weights};
  }

  private static double[][] identity(int n) {
    double[][] one = new double[n][n];
    for (int i = 0; i < n; i++) {
      one[i][i] = 1;
    }
    return one;
  }

  private static double[][] cholesky(double[][] a) {
    int n = a.length;
    double[][] lower = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        double sum = a[i][j];
        for (int k = 0; k < j; k++) {
          sum -= lower[i][k] * lower[j][k];
        }
        lower[i][j] = i == j ? Math.sqrt(sum) : sum / lower[j][j];
      }
    }
    return lower;
  }

  /** L⁻¹·A·L⁻ᵀ. */
  private static double[][] reduce(double[][] a, double[][] lower) {
    int n = a.length;
    double[][] half = new double[n][n];
    for (int column = 0; column < n; column++) {
      for (int i = 0; i < n; i++) {
        double sum = a[i][column];
        for (int k = 0; k < i; k++) {
          sum -= lower[i][k] * half[k][column];
        }
        half[i][column] = sum / lower[i][i];
      }
    }
    double[][] result = new double[n][n];
    for (int row = 0; row < n; row++) {
      for (int i = 0; i < n; i++) {
        double sum = half[row][i];
        for (int k = 0; k < i; k++) {
          sum -= lower[i][k] * result[row][k];
        }
        result[row][i] = sum / lower[i][i];
      }
    }
    return result;
  }

  /** Turns a symmetric matrix into its eigenvalues; the vectors end up in columns. */
  private static void jacobi(double[][] a, double[][] vectors) {
    int n = a.length;
    for (int sweep = 0; sweep < MOST_SWEEPS; sweep++) {
      double off = 0;
      double all = 0;
      for (int i = 0; i < n; i++) {
        for (int j = 0; j < n; j++) {
          all += a[i][j] * a[i][j];
          off += i == j ? 0 : a[i][j] * a[i][j];
        }
      }
      if (off <= NOTHING * all) {
        return;
      }
      for (int p = 0; p < n; p++) {
        for (int q = p + 1; q < n; q++) {
          if (a[p][q] != 0) {
            rotate(a, vectors, p, q);
          }
        }
      }
    }
  }

  private static void rotate(double[][] a, double[][] vectors, int p, int q) {
    double ratio = (a[q][q] - a[p][p]) / (2 * a[p][q]);
    double tangent = (ratio >= 0 ? 1 : -1) / (Math.abs(ratio) + Math.sqrt(ratio * ratio + 1));
    double cosine = 1 / Math.sqrt(tangent * tangent + 1);
    double sine = tangent * cosine;
    int n = a.length;
    for (int k = 0; k < n; k++) {
      double left = a[k][p];
      double right = a[k][q];
      a[k][p] = cosine * left - sine * right;
      a[k][q] = sine * left + cosine * right;
    }
    for (int k = 0; k < n; k++) {
      double left = a[p][k];
      double right = a[q][k];
      a[p][k] = cosine * left - sine * right;
      a[q][k] = sine * left + cosine * right;
      double vp = vectors[k][p];
      double vq = vectors[k][q];
      vectors[k][p] = cosine * vp - sine * vq;
      vectors[k][q] = sine * vp + cosine * vq;
    }
  }

  /** The modes as sums of polynomials: row n holds the coefficients of mode n. */
  private static double[][] backSubstitute(double[][] lower, double[][] vectors) {
    int n = lower.length;
    double[][] rows = new double[n][n];
    for (int mode = 0; mode < n; mode++) {
      for (int i = n - 1; i >= 0; i--) {
        double sum = vectors[i][mode];
        for (int k = i + 1; k < n; k++) {
          sum -= lower[k][i] * rows[mode][k];
        }
        rows[mode][i] = sum / lower[i][i];
      }
    }
    return rows;
  }
}
