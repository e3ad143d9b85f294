package org.tourage.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;

/** The two small solvers against an independent optimiser on random problems. */
class OptimiserLaws {
  private static double[][] matrix(Random random, int rows, int columns) {
    double[][] a = new double[rows][columns];
    for (double[] row : a) {
      for (int j = 0; j < columns; j++) {
        row[j] = 2 * random.nextDouble() - 1;
      }
    }
    return a;
  }

  private static double squares(double[][] a, double[] b, double[] x) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      double rest = b[i];
      for (int j = 0; j < x.length; j++) {
        rest -= a[i][j] * x[j];
      }
      sum += rest * rest;
    }
    return sum;
  }

  @Property(tries = 1000)
  void boundedLeastSquaresHaveTheResidualOfAnIndependentSolver(@ForAll long seed) {
    Random random = new Random(seed);
    int n = 1 + random.nextInt(8);
    int m = n + random.nextInt(6);
    double[][] a = matrix(random, m, n);
    for (int j = 0; j < n; j++) {
      a[j][j] += 2; // keeps the columns independent
    }
    double[] b = matrix(random, 1, m)[0];
    double[] low = new double[n];
    double[] high = new double[n];
    double[] start = new double[n];
    for (int j = 0; j < n; j++) {
      low[j] = -random.nextDouble() / 2;
      high[j] = random.nextDouble() / 2;
      start[j] = low[j] + random.nextDouble() * (high[j] - low[j]);
    }
    double[] x = BoundedLeastSquares.solve(a, b, low, high, start);
    ExpressionsBasedModel model = new ExpressionsBasedModel();
    Expression objective = model.newExpression("squares").weight(1.0);
    for (int j = 0; j < n; j++) {
      model.newVariable("x" + j).lower(low[j]).upper(high[j]);
    }
    for (int j = 0; j < n; j++) {
      double linear = 0;
      for (int i = 0; i < m; i++) {
        linear -= 2 * a[i][j] * b[i];
      }
      objective.set(j, linear);
      for (int k = 0; k < n; k++) {
        double product = 0;
        for (int i = 0; i < m; i++) {
          product += a[i][j] * a[i][k];
        }
        objective.set(j, k, product);
      }
    }
    Optimisation.Result other = model.minimise();
    double[] theirs = new double[n];
    for (int j = 0; j < n; j++) {
      assertThat(x[j]).isBetween(low[j], high[j]);
      theirs[j] = Math.max(low[j], Math.min(high[j], other.doubleValue(j)));
    }
    assertThat(squares(a, b, x)).isCloseTo(squares(a, b, theirs), within(1e-6));
    // and never worse
    assertThat(squares(a, b, x)).isLessThanOrEqualTo(squares(a, b, theirs) + 1e-10);
  }

  @Property(tries = 1000)
  void linearProgrammesHaveTheCostOfAnIndependentSolverAndInfeasibleOnesAreReported(
      @ForAll long seed) {
    Random random = new Random(seed);
    int n = 2 + random.nextInt(7);
    int m = 1 + random.nextInt(Math.min(n, 4));
    double[][] a = matrix(random, m, n);
    double[] inside = new double[n];
    double[] cost = new double[n];
    for (int j = 0; j < n; j++) {
      inside[j] = random.nextInt(3) == 0 ? 0 : random.nextDouble();
      cost[j] = random.nextDouble();
    }
    boolean feasible = random.nextBoolean();
    double[] b = new double[m];
    for (int i = 0; i < m; i++) {
      for (int j = 0; j < n; j++) {
        b[i] += a[i][j] * inside[j];
      }
    }
    if (!feasible) {
      for (int j = 0; j < n; j++) {
        a[0][j] = Math.abs(a[0][j]) + 0.01;
      }
      b[0] = -0.5 - random.nextDouble(); // positive sums can't be negative
    }
    Optional<double[]> x = LinearProgramme.minimise(a, b, cost);
    ExpressionsBasedModel model = new ExpressionsBasedModel();
    for (int j = 0; j < n; j++) {
      Variable variable = model.newVariable("x" + j).lower(0).weight(cost[j]);
      assertThat(variable.getName()).isEqualTo("x" + j);
    }
    for (int i = 0; i < m; i++) {
      Expression row = model.newExpression("r" + i).level(b[i]);
      for (int j = 0; j < n; j++) {
        row.set(j, a[i][j]);
      }
    }
    Optimisation.Result other = model.minimise();
    assertThat(x.isPresent()).isEqualTo(feasible);
    if (feasible) {
      double ours = 0;
      for (int j = 0; j < n; j++) {
        ours += cost[j] * x.orElseThrow()[j];
        assertThat(x.orElseThrow()[j]).isGreaterThanOrEqualTo(0);
      }
      for (int i = 0; i < m; i++) {
        double sum = 0;
        for (int j = 0; j < n; j++) {
          sum += a[i][j] * x.orElseThrow()[j];
        }
        assertThat(sum).isCloseTo(b[i], within(1e-8));
      }
      assertThat(other.getState().isFeasible()).isTrue();
      assertThat(ours).isCloseTo(other.getValue(), within(1e-6));
    }
  }

  @Test
  void aProgrammeWithoutLeastCostAndDependentColumnsAreRefused() {
    assertThatThrownBy(
            () ->
                LinearProgramme.minimise(
                    new double[][] {{1, -1}}, new double[] {0}, new double[] {-1, 0}))
        .isInstanceOf(ArithmeticException.class);
    assertThatThrownBy(
            () ->
                BoundedLeastSquares.solve(
                    new double[][] {{0}},
                    new double[] {1},
                    new double[] {-1},
                    new double[] {1},
                    new double[] {0}))
        .isInstanceOf(ArithmeticException.class);
  }
}
