package org.tourage.benchmark;

import static org.tourage.quantity.Amounts.celsius;
import static org.tourage.quantity.Amounts.millimetres;
import static org.tourage.quantity.Amounts.minutes;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealVector;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.tourage.oven.Bake;
import org.tourage.oven.BakePiece;
import org.tourage.oven.DoughKind;
import org.tourage.oven.OvenModel;
import org.tourage.oven.OvenProfile;
import org.tourage.physics.Constituents;
import org.tourage.physics.DryingBody;
import org.tourage.physics.DryingBody.Material;
import org.tourage.physics.Solid;

/**
 * A bake of 25 minutes: whole, the semi-discrete system alone, and the same system by a
 * general-purpose integrator for stiff systems (the modified Rosenbrock formula of order 2 with
 * error estimate of L.F. Shampine and M.W. Reichelt, SIAM J. Sci. Comput. 18 (1997) 1, numerical
 * Jacobian, dense LU), which knows nothing of the system but its right side.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 3, time = 1)
@Fork(2)
public class BakeBenchmark {
  private static final int CELLS = 40;
  private static final double SECONDS = 1500;
  private static final double AIR = 190;
  private static final double CONVECTION = 18;
  private static final double HALF = 0.025;
  private static final Material DOUGH = new Material(458, 0.33, 1300, 0.45, 0.227, 100);

  private final BakePiece piece =
      BakePiece.of(
          Solid.roll(millimetres(50)), new Constituents(0.36, 0.06, 0.22, 0.33, 0.015, 0.015));
  private final OvenProfile profile =
      OvenProfile.of(celsius(200), minutes(10)).then(celsius(175), minutes(15));

  /** Constant oven without radiation and drying skin, so that the system is short to write. */
  private static final class Oven implements DryingBody.Surroundings {
    @Override
    public double celsius(double seconds) {
      return AIR;
    }

    @Override
    public double convection(double seconds) {
      return CONVECTION;
    }

    @Override
    public double emissivity() {
      return 0;
    }

    @Override
    public double vapour(double seconds) {
      return -1;
    }
  }

  @Benchmark
  public Bake wholeBake() {
    return Bake.of(piece, OvenModel.HOUSEHOLD, profile, DoughKind.RICH);
  }

  @Benchmark
  public double[] boilingSystem() {
    DryingBody.Run run =
        new DryingBody(2, HALF, DOUGH, CELLS, 300).run(26, SECONDS, new Oven(), r -> true);
    return new double[] {run.core(), run.loss()};
  }

  @Benchmark
  public double[] sameSystemByStiffIntegrator() {
    return integrate(TOLERANCE);
  }

  private static final double TOLERANCE = 1e-3;

  /** How far both are from a run on the same grid with very small steps: core in K, loss share. */
  static List<Double> errors() {
    DryingBody.Run fine =
        new DryingBody(2, HALF, DOUGH, CELLS, 30_000).run(26, SECONDS, new Oven(), r -> true);
    BakeBenchmark b = new BakeBenchmark();
    List<Double> errors = new ArrayList<>();
    for (double[] result : List.of(b.boilingSystem(), b.sameSystemByStiffIntegrator())) {
      errors.add(Math.abs(result[0] - fine.core()));
      errors.add(Math.abs(result[1] / fine.loss() - 1));
    }
    return errors;
  }

  // The same system, written once more: the heat taken by each cell, boiling included.

  private static final double LATENT = 2_500_900 - 2444 * 100;
  private final double[] width = new double[CELLS];
  private final double[] radius = new double[CELLS];
  private final double[] mass = new double[CELLS];
  private final double[] face = new double[CELLS];

  /** Makes the grid. */
  public BakeBenchmark() {
    double stretch = Math.pow(0.2, 1.0 / (CELLS - 1));
    double unit = HALF * (1 - stretch) / (1 - Math.pow(stretch, CELLS));
    double inner = 0;
    for (int i = 0; i < CELLS; i++) {
      double outer = i == CELLS - 1 ? HALF : inner + unit * Math.pow(stretch, i);
      width[i] = outer - inner;
      radius[i] = (inner + outer) / 2;
      mass[i] = DOUGH.density() * (outer * outer - inner * inner) / 2;
      face[i] = outer;
      inner = outer;
    }
  }

  private static double wetHeat() {
    return DOUGH.dryHeat() + DOUGH.water() * DryingBody.WATER_HEAT;
  }

  /** What has boiled off in a cell that has taken so much heat. */
  private static double boiled(double heat) {
    return Math.max(0, Math.min(DOUGH.water(), (heat - wetHeat() * 100) / LATENT));
  }

  private static double temperature(double heat) {
    double above = heat - wetHeat() * 100;
    if (above <= 0) {
      return heat / wetHeat();
    }
    double over = above - DOUGH.water() * LATENT;
    return over <= 0 ? 100 : 100 + over / DOUGH.dryHeat();
  }

  private double[] slope(double[] y) {
    double[] t = new double[CELLS];
    double[] out = new double[CELLS];
    double[] in = new double[CELLS];
    for (int i = 0; i < CELLS; i++) {
      t[i] = temperature(y[i]);
      double dry = boiled(y[i]) / DOUGH.water();
      double k =
          DOUGH.wetConductivity() + dry * (DOUGH.dryConductivity() - DOUGH.wetConductivity());
      boolean boils = t[i] == 100 && dry < 1;
      out[i] =
          boils ? Math.max(0.02, dry) * width[i] / DOUGH.dryConductivity() : width[i] / (2 * k);
      in[i] = boils ? (1 - dry) * width[i] / DOUGH.wetConductivity() : width[i] / (2 * k);
    }
    double[] dy = new double[CELLS];
    double before = 0;
    for (int i = 0; i < CELLS; i++) {
      double after =
          i + 1 < CELLS
              ? face[i] * (t[i] - t[i + 1]) / (out[i] + in[i + 1])
              : -face[i] * (AIR - t[i]) / (1 / CONVECTION + out[i]);
      dy[i] = (before - after) / mass[i];
      before = after;
    }
    return dy;
  }

  /** Core and loss at the end. */
  private double[] integrate(double tolerance) {
    double[] y = new double[CELLS];
    Arrays.fill(y, wetHeat() * 26);
    double d = 1 / (2 + Math.sqrt(2));
    double e = 6 + Math.sqrt(2);
    double t = 0;
    double h = 1e-3;
    double[] f0 = slope(y);
    while (t < SECONDS) {
      h = Math.min(h, SECONDS - t);
      double[][] w = new double[CELLS][CELLS];
      for (int j = 0; j < CELLS; j++) {
        double step = 1e-6 * Math.max(1e3, Math.abs(y[j]));
        double[] moved = y.clone();
        moved[j] += step;
        double[] fj = slope(moved);
        for (int i = 0; i < CELLS; i++) {
          w[i][j] = (i == j ? 1 : 0) - h * d * (fj[i] - f0[i]) / step;
        }
      }
      var solver = new LUDecomposition(new Array2DRowRealMatrix(w, false)).getSolver();
      RealVector k1 = solver.solve(new ArrayRealVector(f0, false));
      double[] half = new ArrayRealVector(y).add(k1.mapMultiply(h / 2)).toArray();
      RealVector f1 = new ArrayRealVector(slope(half), false);
      RealVector k2 = solver.solve(f1.subtract(k1)).add(k1);
      double[] next = new ArrayRealVector(y).add(k2.mapMultiply(h)).toArray();
      double[] f2 = slope(next);
      RealVector k3 =
          solver.solve(
              new ArrayRealVector(f2)
                  .subtract(k2.subtract(f1).mapMultiply(e))
                  .subtract(k1.subtract(new ArrayRealVector(f0)).mapMultiply(2)));
      double error = 0;
      for (int i = 0; i < CELLS; i++) {
        double miss = h / 6 * Math.abs(k1.getEntry(i) - 2 * k2.getEntry(i) + k3.getEntry(i));
        error = Math.max(error, miss / (tolerance * Math.max(1e5, Math.abs(next[i]))));
      }
      if (error <= 1 || h < 1e-6) {
        t += h;
        y = next;
        f0 = f2;
      }
      h *= Math.max(0.2, Math.min(4, 0.8 / Math.cbrt(Math.max(error, 1e-9))));
    }
    double lost = 0;
    double all = 0;
    for (int i = 0; i < CELLS; i++) {
      lost += mass[i] * boiled(y[i]);
      all += mass[i];
    }
    double t0 = temperature(y[0]);
    double t1 = temperature(y[1]);
    double near = radius[0] * radius[0];
    double far = radius[1] * radius[1];
    return new double[] {t0 + (t0 - t1) * near / (far - near), lost / all};
  }
}
