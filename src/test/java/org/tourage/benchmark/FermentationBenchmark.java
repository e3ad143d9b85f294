package org.tourage.benchmark;

import static org.tourage.quantity.Amounts.celsius;
import static org.tourage.quantity.Amounts.centimetres;
import static org.tourage.quantity.Amounts.hours;
import static org.tourage.quantity.Amounts.minutes;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import javax.measure.quantity.Time;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.tourage.fermentation.Cover;
import org.tourage.fermentation.DoughBody;
import org.tourage.fermentation.DoughGas;
import org.tourage.fermentation.Rise;
import org.tourage.fermentation.RiseHistory;
import org.tourage.fermentation.Rosso1993;
import org.tourage.physics.Constituents;
import org.tourage.physics.Solid;
import org.tourage.physics.SolidConduction;
import org.tourage.physics.TemperatureHistory;
import org.tourage.quantity.Amount;

/**
 * A night in the retarder: a ball of 12 cm for 16 hours, heat and fermentation coupled. Once whole
 * (with the gas balance at 25 times), once the coupled equations alone, once the same semi-discrete
 * system (the equations for the modes and for the progress at the points) by a general-purpose
 * integrator with step control.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 3, time = 1)
@Fork(2)
public class FermentationBenchmark {
  private static final double HOURS = 16;
  private final Constituents dough = new Constituents(0.40, 0.07, 0.05, 0.44, 0.02, 0.02);
  private final Rosso1993 model = Rosso1993.named("baker's yeast, gas in dough");
  private final Rise rise =
      Rise.observed(DoughGas.of(dough, celsius(24)), model, 2, minutes(95), celsius(23));
  private final DoughBody ball =
      DoughBody.of(Solid.ball(centimetres(12)), dough).covered(Cover.FILM);
  private final SolidConduction conduction =
      new SolidConduction(
          ball.solid(), ball.conductivity(), ball.density() * ball.specificHeat(), 8);
  private final TemperatureHistory retarder = TemperatureHistory.ofHold(celsius(4), hours(HOURS));
  private final List<Amount<Time>> end = List.of(hours(HOURS));

  /** Warming by a second at a rate of 1, about as in the whole job. */
  private static final double KELVIN = 2.5e-4;

  @Benchmark
  public RiseHistory wholeRetard() {
    return RiseHistory.start(rise, celsius(25)).then("retard", ball, celsius(4), hours(HOURS));
  }

  @Benchmark
  public SolidConduction.State coupledSystem() {
    return conduction.run(celsius(25), retarder, model, KELVIN, end).get(0);
  }

  /**
   * The same system: 12 modes of a sphere by the same Galerkin method, built here once more from
   * its matrices so that nothing but the integration is timed.
   */
  private final GalerkinSphere sphere =
      new GalerkinSphere(
          ball.conductivity() / (ball.density() * ball.specificHeat()),
          0.06,
          8 * 0.06 / ball.conductivity(),
          model,
          KELVIN,
          4);

  @Benchmark
  public double[] sameSystemByGeneralIntegrator() {
    return sphere.integrate(25, HOURS * 3600, TOLERANCE);
  }

  /** Gives about the error of the library's own step control; see {@link #errors}. */
  private static final double TOLERANCE = 1e-4;

  /** How far both are from a run with a tolerance of 10⁻¹¹: core in K, progress as a share. */
  static List<Double> errors() {
    FermentationBenchmark b = new FermentationBenchmark();
    double[] fine = b.sphere.integrate(25, HOURS * 3600, 1e-11);
    SolidConduction.State ours = b.coupledSystem();
    double[] theirs = b.sameSystemByGeneralIntegrator();
    List<Double> errors = new ArrayList<>();
    errors.add(Math.abs(ours.core() - fine[0]));
    errors.add(Math.abs(ours.meanProgress() / fine[1] - 1));
    errors.add(Math.abs(theirs[0] - fine[0]));
    errors.add(Math.abs(theirs[1] / fine[1] - 1));
    return errors;
  }

  /** Sphere, polynomials 1, x², x⁴ … orthogonalised; unknowns: 12 amplitudes and 16 progresses. */
  static final class GalerkinSphere {
    private static final int MODES = 12;
    private static final int POINTS = 16;
    private final double[] x = new double[POINTS];
    private final double[] w = new double[POINTS];
    private final double[][] phi = new double[MODES][POINTS];
    private final double[] middle = new double[MODES];
    private final double[][] stiff = new double[MODES][MODES];
    private final double[] uniform = new double[MODES];
    private final Rosso1993 model;
    private final double kelvin;
    private final double air;

    GalerkinSphere(
        double diffusivity,
        double radius,
        double biot,
        Rosso1993 model,
        double kelvin,
        double air) {
      this.model = model;
      this.kelvin = kelvin;
      this.air = air;
      org.hipparchus.analysis.integration.gauss.GaussIntegrator gauss =
          new org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory()
              .legendre(POINTS, 0, 1);
      org.hipparchus.analysis.integration.gauss.GaussIntegrator exact =
          new org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory().legendre(30, 0, 1);
      for (int j = 0; j < POINTS; j++) {
        x[j] = gauss.getPoint(j);
        w[j] = gauss.getWeight(j) * 3 * x[j] * x[j];
      }
      // orthonormal under the weight of the sphere, by Gram and Schmidt on Legendre polynomials
      double[][] c = new double[MODES][MODES];
      for (int n = 0; n < MODES; n++) {
        c[n][n] = 1;
        for (int twice = 0; twice < 2; twice++) {
          for (int m = 0; m < n; m++) {
            double dot = dot(exact, c[n], c[m]);
            for (int i = 0; i < MODES; i++) {
              c[n][i] -= dot * c[m][i];
            }
          }
        }
        double norm = Math.sqrt(dot(exact, c[n], c[n]));
        for (int i = 0; i < MODES; i++) {
          c[n][i] /= norm;
        }
      }
      double scale = diffusivity / (radius * radius);
      for (int n = 0; n < MODES; n++) {
        for (int j = 0; j < POINTS; j++) {
          phi[n][j] = value(c[n], x[j]);
        }
        middle[n] = value(c[n], 0);
        uniform[n] = 0;
        for (int q = 0; q < 30; q++) {
          double at = exact.getPoint(q);
          uniform[n] += exact.getWeight(q) * 3 * at * at * value(c[n], at);
        }
        for (int m = 0; m < MODES; m++) {
          double sum = 3 * biot * value(c[n], 1) * value(c[m], 1);
          for (int q = 0; q < 30; q++) {
            double at = exact.getPoint(q);
            double h = 1e-6;
            double slopeN = (value(c[n], at + h) - value(c[n], at - h)) / (2 * h);
            double slopeM = (value(c[m], at + h) - value(c[m], at - h)) / (2 * h);
            sum += exact.getWeight(q) * 3 * at * at * slopeN * slopeM;
          }
          stiff[n][m] = scale * sum;
        }
      }
    }

    private static double value(double[] c, double x) {
      double sum = 0;
      double before = 1;
      double now = x;
      sum += c[0];
      for (int k = 2; k <= 2 * MODES - 2; k++) {
        double next = ((2 * k - 1) * x * now - (k - 1) * before) / k;
        before = now;
        now = next;
        if (k % 2 == 0) {
          sum += c[k / 2] * now;
        }
      }
      return sum;
    }

    private static double dot(
        org.hipparchus.analysis.integration.gauss.GaussIntegrator gauss, double[] a, double[] b) {
      double sum = 0;
      for (int q = 0; q < gauss.getNumberOfPoints(); q++) {
        double at = gauss.getPoint(q);
        sum += gauss.getWeight(q) * 3 * at * at * value(a, at) * value(b, at);
      }
      return sum;
    }

    /** Core temperature and mean progress at the end. */
    double[] integrate(double start, double seconds, double tolerance) {
      OrdinaryDifferentialEquation equation =
          new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
              return MODES + POINTS;
            }

            @Override
            public double[] computeDerivatives(double t, double[] y) {
              double[] slope = new double[MODES + POINTS];
              for (int j = 0; j < POINTS; j++) {
                double celsius = air;
                for (int n = 0; n < MODES; n++) {
                  celsius += phi[n][j] * y[n];
                }
                slope[MODES + j] = model.rate(celsius);
              }
              for (int n = 0; n < MODES; n++) {
                double sum = 0;
                for (int m = 0; m < MODES; m++) {
                  sum -= stiff[n][m] * y[m];
                }
                for (int j = 0; j < POINTS; j++) {
                  sum += kelvin * w[j] * phi[n][j] * slope[MODES + j];
                }
                slope[n] = sum;
              }
              return slope;
            }
          };
      double[] y = new double[MODES + POINTS];
      for (int n = 0; n < MODES; n++) {
        y[n] = (start - air) * uniform[n];
      }
      double[] end =
          new DormandPrince853Integrator(1e-9, seconds, tolerance, tolerance)
              .integrate(equation, new ODEState(0, y), seconds)
              .getPrimaryState();
      double core = air;
      double progress = 0;
      for (int n = 0; n < MODES; n++) {
        core += middle[n] * end[n];
      }
      for (int j = 0; j < POINTS; j++) {
        progress += w[j] * end[MODES + j];
      }
      return new double[] {core, progress};
    }
  }
}
