package org.tourage.physics;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.HOUR;
import static org.tourage.quantity.BakeryUnits.METRE;
import static org.tourage.quantity.BakeryUnits.SECOND;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.physics.SolidConduction.LocalProcess;
import org.tourage.physics.SolidConduction.State;
import org.tourage.quantity.Amount;

/** One run of a {@link SolidConduction}. The arrays go over all axes, the first axis outermost. */
final class ConductionRun {
  /** Modes of each axis for bodies of one, two and three directions. */
  private static final int[] MODES = {12, 11, 9};

  private static final double FIRST_STEP = 1e-3;
  private static final int MOST_STEPS = 200_000;

  /** A step may miss the progress by this share of it, by the difference of two rules. */
  private static final double PROGRESS_ERROR = 2e-4;

  /** A step may change a temperature by so many kelvin through the heat of the process. */
  private static final double HEAT_ERROR = 2e-3;

  /** Beyond these no process of a kitchen goes on; the heat of the process has run away. */
  private static final double COLDEST = -274;

  private static final double HOTTEST = 1000;

  private final LocalProcess process;
  private final double kelvinPerProgress;
  private final Spectrum[] spectra;

  /** Diffusivity over the half thickness squared, by axis. */
  private final double[] scales;

  private final double[] decay;
  private final double[] uniform;
  private final double[] weights;
  private final int facePoint;
  private double air;
  private double seconds;
  private int steps;

  /** Excess over the air, by modes. */
  private double[] excess;

  private double[] temperature;
  private double[] rate;
  private double[] source;
  private final double[] progress;

  ConductionRun(
      SolidConduction body,
      LocalProcess process,
      double kelvinPerProgress,
      double celsius,
      @Nullable State from) {
    this.process = requireNonNull(process, "process").prepared();
    this.kelvinPerProgress = kelvinPerProgress;
    List<Solid.Axis> axes = body.solid().axes();
    spectra = new Spectrum[axes.size()];
    scales = new double[axes.size()];
    double diffusivity = body.conductivity() / body.volumetricHeat();
    double[] rates = {0};
    double[] ones = {1};
    double[] shares = {1};
    int nearest = 0;
    for (int a = 0; a < spectra.length; a++) {
      double half = axes.get(a).half().in(METRE);
      Spectrum spectrum =
          new Spectrum(
              axes.get(a).dimensions(),
              body.coefficient() * half / body.conductivity(),
              MODES[spectra.length - 1]);
      spectra[a] = spectrum;
      scales[a] = diffusivity / (half * half);
      double[] more = new double[spectrum.modes];
      for (int n = 0; n < more.length; n++) {
        more[n] = spectrum.decay[n] * scales[a];
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
      if (from.temperatures().size() != weights.length) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            "the state is of another kind of body",
            from.temperatures().size() + " points, not " + weights.length,
            "go on with the same body, or start anew from its mean");
      }
      for (int i = 0; i < weights.length; i++) {
        temperature[i] = from.temperatures().get(i);
        progress[i] = from.progress().get(i);
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
      double[] middleTemperature = nodes(middle, air + slope * h / 2);
      double[] middleRate = rates(middleTemperature);
      double[] middleSource = project(middleRate);
      double[] end = propagate(h, slope, source, middleSource, 2);
      double[] endTemperature = nodes(end, air + slope * h);
      double[] endRate = rates(endTemperature);
      boolean away = ranAway(middleTemperature) || ranAway(endTemperature);
      if (++steps > MOST_STEPS || away && h <= FIRST_STEP) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "the heat of the process runs away",
            "after " + SECOND.amount(seconds).to(HOUR),
            "give a process that stops in the heat, a smaller body or a shorter time");
      }
      if (away) {
        h = Math.max(FIRST_STEP, h / 5);
        refused = true;
        continue;
      }
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
        h = Math.max(FIRST_STEP, h * Math.max(0.2, 0.8 / StrictMath.cbrt(error)));
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
      double growth = error == 0 ? 4 : Math.min(4, 0.8 / StrictMath.cbrt(error));
      return cutShort ? wanted : Math.max(FIRST_STEP, h * growth);
    }
  }

  /** The modes after a time; the source may grow along a straight line. */
  private double[] propagate(
      double h, double slope, double[] first, double[] later, double stretch) {
    double[] result = new double[excess.length];
    double[] falls = falls(h);
    for (int n = 0; n < result.length; n++) {
      double z = decay[n] * h;
      double fall = falls[n];
      double one = z < 1e-5 ? 1 - z / 2 : (1 - fall) / z;
      double two = z < 1e-3 ? 0.5 - z / 6 + z * z / 24 : (1 - one) / z;
      double drive = kelvinPerProgress * first[n] - slope * uniform[n];
      double change = kelvinPerProgress * stretch * (later[n] - first[n]);
      result[n] = fall * excess[n] + h * (one * drive + two * change);
    }
    return result;
  }

  /** What is left of each mode after a time: the product over the axes. */
  private double[] falls(double h) {
    double[] all = {1};
    for (int a = 0; a < spectra.length; a++) {
      double[] axis = new double[spectra[a].modes];
      for (int n = 0; n < axis.length; n++) {
        axis[n] = StrictMath.exp(-spectra[a].decay[n] * scales[a] * h);
      }
      all = outer(all, axis, false);
    }
    return all;
  }

  private double[] rates(double[] celsius) {
    double[] result = new double[celsius.length];
    for (int i = 0; i < result.length; i++) {
      result[i] = process.rate(celsius[i]);
    }
    return result;
  }

  private static boolean ranAway(double[] celsius) {
    for (double t : celsius) {
      if (!(t > COLDEST) || t > HOTTEST) {
        return true;
      }
    }
    return false;
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
          if (inner == 1) {
            // the innermost axis, without a loop of one turn
            double only = now[from];
            int to = o * s.points;
            for (int j = 0; j < s.points; j++) {
              next[to + j] += row[j] * only;
            }
            continue;
          }
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
          if (inner == 1) {
            double sum = 0;
            int from = o * s.points;
            for (int j = 1; j < s.points - 1; j++) {
              sum += row[j] * s.weights[j] * now[from + j];
            }
            next[to] = sum;
            continue;
          }
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
