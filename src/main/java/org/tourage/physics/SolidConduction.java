package org.tourage.physics;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.METRE;
import static org.tourage.quantity.BakeryUnits.SECOND;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;

/**
 * Heat in a body of one material that meets air of changing temperature, coupled with a process in
 * it whose rate depends on the local temperature and which may give off heat.
 *
 * <p>The conduction is taken apart into modes (Galerkin's method with Legendre polynomials), each
 * of which is followed exactly in time; the process is integrated at the points of a Gauss rule by
 * Simpson's rule, and its heat enters by exponential time differencing of second order (S.M. Cox
 * and P.C. Matthews, J. Comput. Phys. 176 (2002) 430, from memory). Steps are chosen by the error.
 * Checked against the series solutions of H.S. Carslaw and J.C. Jaeger, Conduction of Heat in
 * Solids, 2nd ed., 1959 (from memory): within 0.5 % from a Fourier number of 0.01 on; before, the
 * modes may swing by less than 1 % of a jump. The properties are constant, and every face meets the
 * same.
 *
 * @param solid the body
 * @param conductivity W/(m·K), positive
 * @param volumetricHeat density times specific heat, J/(m³·K), positive
 * @param coefficient from the surface to the air, covers included, W/(m²·K); 0 for no exchange
 */
public record SolidConduction(
    Solid solid, double conductivity, double volumetricHeat, double coefficient)
    implements Serializable {
  private static final int[] MODES = {12, 9, 6};
  private static final double FIRST_STEP = 1e-3;

  /** A step may miss the progress by this share of it, by the difference of two rules. */
  private static final double PROGRESS_ERROR = 2e-4;

  /** A step may change a temperature by so many kelvin through the heat of the process. */
  private static final double HEAT_ERROR = 2e-3;

  /**
   * A process that goes on in the body.
   *
   * <p>Its progress grows by the rate times the seconds.
   */
  @FunctionalInterface
  public interface LocalProcess {
    /** Nothing goes on. */
    LocalProcess NONE = celsius -> 0;

    /**
     * How fast it goes.
     *
     * @param celsius the temperature in °C
     * @return the rate, not negative
     */
    double rate(double celsius);
  }

  /**
   * Checks the figures.
   *
   * @param solid the body
   * @param conductivity W/(m·K), positive
   * @param volumetricHeat density times specific heat, J/(m³·K), positive
   * @param coefficient from the surface to the air, covers included, W/(m²·K); 0 for no exchange
   */
  public SolidConduction {
    requireNonNull(solid, "solid");
    boolean fits = conductivity > 0 && volumetricHeat > 0 && coefficient >= 0;
    if (!fits || Double.isInfinite(conductivity + volumetricHeat + coefficient)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a body can't have these properties",
          conductivity + " W/(m·K), " + volumetricHeat + " J/(m³·K), " + coefficient + " W/(m²·K)",
          "give positive figures");
    }
  }

  /**
   * The state of the body at one time.
   *
   * @param seconds the time since the start
   * @param core °C in the middle
   * @param surface °C in the middle of the nearest face
   * @param mean °C over the volume
   * @param temperatures °C at the points
   * @param progress the progress at the points
   * @param weights what share of the body each point stands for; some stand for none
   */
  public record State(
      double seconds,
      double core,
      double surface,
      double mean,
      List<Double> temperatures,
      List<Double> progress,
      List<Double> weights)
      implements Serializable {
    /**
     * Copies the lists.
     *
     * @param seconds the time since the start
     * @param core °C in the middle
     * @param surface °C in the middle of the nearest face
     * @param mean °C over the volume
     * @param temperatures °C at the points
     * @param progress the progress at the points
     * @param weights what share of the body each point stands for; some stand for none
     */
    public State {
      temperatures = List.copyOf(temperatures);
      progress = List.copyOf(progress);
      weights = List.copyOf(weights);
    }

    /**
     * The mean progress over the volume.
     *
     * @return the progress
     */
    public double meanProgress() {
      double sum = 0;
      for (int i = 0; i < weights.size(); i++) {
        sum += weights.get(i) * progress.get(i);
      }
      return sum;
    }
  }

  /**
   * Follows the body from a uniform temperature.
   *
   * @param start its temperature at the start
   * @param surroundings the temperature of the air
   * @param process what goes on in it
   * @param kelvinPerProgress how much one unit of progress would warm it if no heat were lost
   * @param times when to look, rising, from 0 on, none beyond the end of the surroundings
   * @return the state at each of these times
   * @throws BakeryException if the times do not rise or go beyond the end
   */
  public List<State> run(
      Quantity<Temperature> start,
      TemperatureHistory surroundings,
      LocalProcess process,
      double kelvinPerProgress,
      List<? extends Quantity<Time>> times) {
    return new Run(process, kelvinPerProgress, CELSIUS.measure(start), null)
        .follow(surroundings, times);
  }

  /**
   * Follows the body on from a state of the same body, perhaps with another cover or in other air.
   *
   * @param from the state, of a body of the same shape
   * @param surroundings the temperature of the air from now on
   * @param process what goes on in it
   * @param kelvinPerProgress how much one unit of progress would warm it if no heat were lost
   * @param times when to look, rising, from 0 (now) on
   * @return the state at each of these times
   * @throws BakeryException if the times do not rise or go beyond the end, or the state is of
   *     another kind of body
   */
  public List<State> run(
      State from,
      TemperatureHistory surroundings,
      LocalProcess process,
      double kelvinPerProgress,
      List<? extends Quantity<Time>> times) {
    return new Run(process, kelvinPerProgress, from.mean, from).follow(surroundings, times);
  }

  /** One run. The arrays go over all axes, the first axis outermost. */
  private final class Run {
    private final LocalProcess process;
    private final double kelvinPerProgress;
    private final Spectrum[] spectra;
    private final double[] decay;
    private final double[] uniform;
    private final double[] weights;
    private final int facePoint;
    private double air;
    private double seconds;

    /** Excess over the air, by modes. */
    private double[] excess;

    private double[] temperature;
    private double[] rate;
    private double[] source;
    private final double[] progress;

    Run(LocalProcess process, double kelvinPerProgress, double celsius, @Nullable State from) {
      this.process = requireNonNull(process, "process");
      this.kelvinPerProgress = kelvinPerProgress;
      List<Solid.Axis> axes = solid.axes();
      spectra = new Spectrum[axes.size()];
      double diffusivity = conductivity / volumetricHeat;
      double[] rates = {0};
      double[] ones = {1};
      double[] shares = {1};
      int nearest = 0;
      for (int a = 0; a < spectra.length; a++) {
        double half = axes.get(a).half().in(METRE);
        Spectrum spectrum =
            new Spectrum(
                axes.get(a).dimensions(),
                coefficient * half / conductivity,
                MODES[spectra.length - 1]);
        spectra[a] = spectrum;
        double scale = diffusivity / (half * half);
        double[] more = new double[spectrum.modes];
        for (int n = 0; n < more.length; n++) {
          more[n] = spectrum.decay[n] * scale;
        }
        rates = outer(rates, more, true);
        ones = outer(ones, spectrum.uniform, false);
        shares = outer(shares, spectrum.weights, false);
        nearest = half < axes.get(nearest).half().in(METRE) ? a : nearest;
      }
      decay = rates;
      uniform = ones;
      weights = shares;
      int stride = 1;
      for (int a = spectra.length - 1; a > nearest; a--) {
        stride *= spectra[a].points;
      }
      facePoint = (spectra[nearest].points - 1) * stride;
      excess = new double[decay.length];
      temperature = new double[weights.length];
      progress = new double[weights.length];
      if (from == null) {
        for (int n = 0; n < excess.length; n++) {
          excess[n] = celsius * uniform[n];
        }
        Arrays.fill(temperature, celsius);
      } else {
        if (from.temperatures.size() != weights.length) {
          throw new BakeryException(
              Reason.INCONSISTENT,
              "the state is of another kind of body",
              from.temperatures.size() + " points, not " + weights.length,
              "go on with the same body, or start anew from its mean");
        }
        for (int i = 0; i < weights.length; i++) {
          temperature[i] = from.temperatures.get(i);
          progress[i] = from.progress.get(i);
        }
        excess = project(temperature);
      }
      rate = rates(temperature);
      source = project(rate);
    }

    /** Every pair of two lists, summed or multiplied, the first list outermost. */
    private static double[] outer(double[] left, double[] right, boolean sum) {
      double[] all = new double[left.length * right.length];
      for (int i = 0; i < left.length; i++) {
        for (int j = 0; j < right.length; j++) {
          all[i * right.length + j] = sum ? left[i] + right[j] : left[i] * right[j];
        }
      }
      return all;
    }

    List<State> follow(TemperatureHistory surroundings, List<? extends Quantity<Time>> times) {
      double[] looks = times.stream().mapToDouble(SECOND::measure).toArray();
      double end = surroundings.duration().in(SECOND);
      for (int i = 0; i < looks.length; i++) {
        // a billionth of the end forgives the rounding of sums
        if (looks[i] < (i == 0 ? 0 : looks[i - 1]) || looks[i] > end * (1 + 1e-9)) {
          throw new BakeryException(
              Reason.OUT_OF_RANGE,
              "can't look at the body at this time",
              Amount.from(times.get(i)).toString(),
              "give rising times from 0 to " + surroundings.duration());
        }
      }
      List<State> states = new ArrayList<>();
      int next = 0;
      while (next < looks.length && looks[next] <= 0) {
        states.add(state());
        next++;
      }
      double step = FIRST_STEP;
      double legEnd = 0;
      int legs = surroundings.legs().size();
      for (int l = 0; l < legs && next < looks.length; l++) {
        TemperatureHistory.Leg leg = surroundings.legs().get(l);
        double legStart = legEnd;
        double length = leg.duration().in(SECOND);
        legEnd = l == legs - 1 ? Math.max(end, looks[looks.length - 1]) : legStart + length;
        jumpTo(leg.from().in(CELSIUS));
        double slope = (leg.to().in(CELSIUS) - leg.from().in(CELSIUS)) / length;
        while (seconds < legEnd && next < looks.length) {
          double until = Math.min(legEnd, looks[next]);
          step = advance(until, step, slope);
          while (next < looks.length && looks[next] <= seconds) {
            states.add(state());
            next++;
          }
        }
      }
      return states;
    }

    /** The air jumps; the body does not. */
    private void jumpTo(double celsius) {
      for (int n = 0; n < excess.length; n++) {
        excess[n] += (air - celsius) * uniform[n];
      }
      air = celsius;
    }

    /** One step, not beyond a time; returns the next step to try. */
    private double advance(double until, double wanted, double slope) {
      double h = Math.min(wanted, until - seconds);
      boolean refused = false;
      while (true) {
        double[] middle = propagate(h / 2, slope, source, source, 0);
        double[] middleRate = rates(nodes(middle, air + slope * h / 2));
        double[] middleSource = project(middleRate);
        double[] end = propagate(h, slope, source, middleSource, 2);
        double[] endTemperature = nodes(end, air + slope * h);
        double[] endRate = rates(endTemperature);
        double simpson = 0;
        double miss = 0;
        double before = 0;
        double heat = 0;
        for (int i = 0; i < weights.length; i++) {
          double by = h / 6 * (rate[i] + 4 * middleRate[i] + endRate[i]);
          simpson += weights[i] * by;
          miss += weights[i] * Math.abs(by - h / 2 * (rate[i] + endRate[i]));
          before += weights[i] * progress[i];
          heat = Math.max(heat, Math.abs(middleRate[i] - rate[i]));
        }
        double progressError = miss / (PROGRESS_ERROR * (before + simpson) + Double.MIN_NORMAL);
        double heatError = heat * h * kelvinPerProgress / HEAT_ERROR;
        double error = Math.max(progressError, heatError);
        if (error > 1 && h > FIRST_STEP) {
          h = Math.max(FIRST_STEP, h * Math.max(0.2, 0.8 / Math.cbrt(error)));
          refused = true;
          continue;
        }
        for (int i = 0; i < weights.length; i++) {
          progress[i] += h / 6 * (rate[i] + 4 * middleRate[i] + endRate[i]);
        }
        excess = end;
        temperature = endTemperature;
        rate = endRate;
        source = project(endRate);
        air += slope * h;
        // lands on the time exactly, so that the look at it is not missed by rounding
        seconds = h == until - seconds ? until : seconds + h;
        boolean cutShort = h < wanted && !refused;
        double growth = error == 0 ? 4 : Math.min(4, 0.8 / Math.cbrt(error));
        return cutShort ? wanted : Math.max(FIRST_STEP, h * growth);
      }
    }

    /** The modes after a time; the source may grow along a straight line. */
    private double[] propagate(
        double h, double slope, double[] first, double[] later, double stretch) {
      double[] result = new double[excess.length];
      for (int n = 0; n < result.length; n++) {
        double z = decay[n] * h;
        double fall = Math.exp(-z);
        double one = z < 1e-5 ? 1 - z / 2 : (1 - fall) / z;
        double two = z < 1e-3 ? 0.5 - z / 6 + z * z / 24 : (1 - one) / z;
        double drive = kelvinPerProgress * first[n] - slope * uniform[n];
        double change = kelvinPerProgress * stretch * (later[n] - first[n]);
        result[n] = fall * excess[n] + h * (one * drive + two * change);
      }
      return result;
    }

    private double[] rates(double[] celsius) {
      double[] result = new double[celsius.length];
      for (int i = 0; i < result.length; i++) {
        result[i] = process.rate(celsius[i]);
      }
      return result;
    }

    /** From modes to points. */
    private double[] nodes(double[] modal, double airThen) {
      double[] now = modal;
      int outer = 1;
      int inner = modal.length;
      for (Spectrum s : spectra) {
        inner /= s.modes;
        double[] next = new double[outer * s.points * inner];
        for (int o = 0; o < outer; o++) {
          for (int n = 0; n < s.modes; n++) {
            double[] row = s.values[n];
            int from = (o * s.modes + n) * inner;
            for (int j = 0; j < s.points; j++) {
              double value = row[j];
              int to = (o * s.points + j) * inner;
              for (int i = 0; i < inner; i++) {
                next[to + i] += value * now[from + i];
              }
            }
          }
        }
        now = next;
        outer *= s.points;
      }
      for (int i = 0; i < now.length; i++) {
        now[i] += airThen;
      }
      return now;
    }

    /** From points to modes. */
    private double[] project(double[] nodal) {
      double[] now = nodal;
      int outer = 1;
      int inner = nodal.length;
      for (Spectrum s : spectra) {
        inner /= s.points;
        double[] next = new double[outer * s.modes * inner];
        for (int o = 0; o < outer; o++) {
          for (int n = 0; n < s.modes; n++) {
            double[] row = s.values[n];
            int to = (o * s.modes + n) * inner;
            for (int j = 1; j < s.points - 1; j++) {
              double value = row[j] * s.weights[j];
              int from = (o * s.points + j) * inner;
              for (int i = 0; i < inner; i++) {
                next[to + i] += value * now[from + i];
              }
            }
          }
        }
        now = next;
        outer *= s.modes;
      }
      return now;
    }

    private State state() {
      double mean = 0;
      List<Double> temperatures = new ArrayList<>(temperature.length);
      List<Double> done = new ArrayList<>(temperature.length);
      List<Double> shares = new ArrayList<>(temperature.length);
      for (int i = 0; i < temperature.length; i++) {
        mean += weights[i] * temperature[i];
        temperatures.add(temperature[i]);
        done.add(progress[i]);
        shares.add(weights[i]);
      }
      return new State(
          seconds, temperature[0], temperature[facePoint], mean, temperatures, done, shares);
    }
  }
}
