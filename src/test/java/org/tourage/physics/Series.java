package org.tourage.physics;

import org.hipparchus.special.BesselJ;

/**
 * The series solutions of a body that is put into air of another temperature: H.S. Carslaw and J.C.
 * Jaeger, Conduction of Heat in Solids, 2nd ed., 1959 (from memory); the same in F.P. Incropera and
 * others, Fundamentals of Heat and Mass Transfer, chapter 5. Excess over the air as a share of the
 * first.
 */
final class Series {
  private static final int TERMS = 120;

  private Series() {}

  /** x from 0 in the middle to 1 at the face. */
  static double excess(int dimensions, double bi, double fo, double x) {
    double sum = 0;
    for (int i = 0; i < TERMS; i++) {
      double z = root(dimensions, bi, i);
      double decay = Math.exp(-z * z * fo);
      if (decay < 1e-20 * Math.max(sum, 1e-30) && i > 3) {
        break;
      }
      sum += amplitude(dimensions, z) * decay * mode(dimensions, z, x);
    }
    return sum;
  }

  private static double amplitude(int dimensions, double z) {
    if (dimensions == 1) {
      return 4 * Math.sin(z) / (2 * z + Math.sin(2 * z));
    } else if (dimensions == 2) {
      double j0 = bessel(0, z);
      double j1 = bessel(1, z);
      return 2 / z * j1 / (j0 * j0 + j1 * j1);
    }
    return 4 * (Math.sin(z) - z * Math.cos(z)) / (2 * z - Math.sin(2 * z));
  }

  private static double mode(int dimensions, double z, double x) {
    if (dimensions == 1) {
      return Math.cos(z * x);
    } else if (dimensions == 2) {
      return bessel(0, z * x);
    }
    return x == 0 ? 1 : Math.sin(z * x) / (z * x);
  }

  /** 0 at a root: ζ tan ζ = Bi, ζ J1 = Bi J0, 1 − ζ cot ζ = Bi. */
  private static double condition(int dimensions, double bi, double z) {
    if (dimensions == 1) {
      return z * Math.sin(z) - bi * Math.cos(z);
    } else if (dimensions == 2) {
      return z * bessel(1, z) - bi * bessel(0, z);
    }
    return (1 - bi) * Math.sin(z) - z * Math.cos(z);
  }

  private static double bessel(int order, double x) {
    return x == 0 ? (order == 0 ? 1 : 0) : BesselJ.value(order, x);
  }

  /** The i-th root: the roots of cos, J0 and so on lie one in each stretch of about π. */
  private static double root(int dimensions, double bi, int i) {
    double step = 0.02;
    double low = 1e-6;
    int found = -1;
    while (true) {
      double high = low + step;
      boolean crosses = condition(dimensions, bi, low) * condition(dimensions, bi, high) <= 0;
      if (crosses && ++found == i) {
        break;
      }
      low = high;
    }
    double high = low + step;
    for (int k = 0; k < 60; k++) {
      double middle = (low + high) / 2;
      boolean left = condition(dimensions, bi, low) * condition(dimensions, bi, middle) <= 0;
      if (left) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return (low + high) / 2;
  }
}
