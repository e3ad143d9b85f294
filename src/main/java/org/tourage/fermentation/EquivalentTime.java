package org.tourage.fermentation;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.MINUTE;
import static org.tourage.quantity.BakeryUnits.SECOND;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.internal.Numbers;
import org.tourage.physics.TemperatureHistory;
import org.tourage.physics.TemperatureHistory.Leg;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.AmountRange;
import org.tourage.quantity.Given;

/**
 * How long a dough would have to stand at one temperature to ferment as much as it does over a
 * changing one: t = ∫ rate(T(t)) dt / rate(T_ref).
 *
 * @param model the rate by temperature
 * @param history the temperature of the dough, not of the room
 * @param reference the one temperature
 */
public record EquivalentTime(
    RateModel model, TemperatureHistory history, Amount<Temperature> reference)
    implements Explained, Serializable {
  /** Less of the fermentation than this share is not worth a word. */
  static final double NOTABLE_SHARE = 0.1;

  /** Points and weights of Gauss's rule with five points on −1 to 1. */
  private static final double[] POINTS = {
    0, 0.5384693101056831, -0.5384693101056831, 0.9061798459386640, -0.9061798459386640
  };

  private static final double[] WEIGHTS = {
    0.5688888888888889,
    0.4786286704993665,
    0.4786286704993665,
    0.2369268850561891,
    0.2369268850561891
  };
  private static final int PARTS = 16;

  /**
   * Checks that there is a rate at the reference.
   *
   * @param model the rate by temperature
   * @param history the temperature of the dough, not of the room
   * @param reference the one temperature
   */
  public EquivalentTime {
    requireNonNull(model, "model");
    requireNonNull(reference, "reference");
    requireNonNull(history, "history");
    requireRate(model, reference);
  }

  /**
   * The equivalent time for any quantities.
   *
   * @param model the rate by temperature
   * @param history the temperature of the dough, not of the room
   * @param reference the one temperature
   * @return the result
   * @throws BakeryException if nothing ferments at the reference
   */
  public static EquivalentTime of(
      RateModel model, TemperatureHistory history, Quantity<Temperature> reference) {
    return new EquivalentTime(
        model, history, Given.temperature("the reference", requireNonNull(reference, "reference")));
  }

  static void requireRate(RateModel model, Amount<Temperature> at) {
    if (!(model.rate(at) > 0)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "nothing ferments at this temperature",
          AmountFormat.sideBySide().temperature(at) + " (" + model.name() + ")",
          "give a temperature at which the dough rises");
    }
  }

  /**
   * The time at the reference.
   *
   * @return the time in minutes
   */
  public Amount<Time> time() {
    return MINUTE.amount(integral(model, history) / model.rate(reference) / 60);
  }

  /** Seconds at rate 1. */
  static double integral(RateModel model, TemperatureHistory history) {
    double sum = 0;
    for (Leg leg : history.legs()) {
      sum += integral(model, leg, leg.duration().in(SECOND));
    }
    return sum;
  }

  /** Seconds at rate 1 over the first part of a leg. */
  static double integral(RateModel model, Leg leg, double seconds) {
    double from = leg.from().in(CELSIUS);
    double to = leg.celsiusAfter(seconds);
    if (from == to) {
      return seconds * model.rate(from);
    }
    double low = Math.min(from, to);
    double high = Math.max(from, to);
    double[] ends = {low};
    for (double corner : model.corners()) {
      if (corner > low && corner < high) {
        ends = Arrays.copyOf(ends, ends.length + 1);
        ends[ends.length - 1] = corner;
      }
    }
    double sum = 0;
    for (int i = 0; i < ends.length; i++) {
      sum += overTemperature(model, ends[i], i + 1 < ends.length ? ends[i + 1] : high);
    }
    return sum * seconds / (high - low);
  }

  private static double overTemperature(RateModel model, double low, double high) {
    double half = (high - low) / (2 * PARTS);
    double sum = 0;
    for (int part = 0; part < PARTS; part++) {
      double middle = low + (2 * part + 1) * half;
      for (int i = 0; i < POINTS.length; i++) {
        sum += WEIGHTS[i] * half * model.rate(middle + half * POINTS[i]);
      }
    }
    return sum;
  }

  @Override
  public List<Advice> advice() {
    AmountRange<Temperature> range = model.range();
    double cold = 0;
    double warm = 0;
    double all = 0;
    for (Leg leg : history.legs()) {
      double part = integral(model, leg, leg.duration().in(SECOND));
      double middle = (leg.from().in(CELSIUS) + leg.to().in(CELSIUS)) / 2;
      all += part;
      cold += middle < range.low().in(CELSIUS) ? part : 0;
      warm += middle > range.high().in(CELSIUS) ? part : 0;
    }
    List<Advice> advice = new ArrayList<>();
    if (all > 0 && cold > NOTABLE_SHARE * all) {
      advice.add(
          Advice.of(
              "COLD_SHARE",
              outside(cold / all, "below " + AmountFormat.sideBySide().temperature(range.low())),
              "Look at the dough, and calibrate with what you see",
              model.source()));
    }
    if (all > 0 && warm > NOTABLE_SHARE * all) {
      advice.add(
          Advice.of(
              "WARM_UNSURE",
              outside(warm / all, "above " + AmountFormat.sideBySide().temperature(range.high())),
              "The model runs too high there; stay below for a rise that can be told",
              model.source()));
    }
    return advice;
  }

  private static String outside(double share, String where) {
    return Numbers.decimals(100 * share, 0)
        + " % of the fermentation happens "
        + where
        + ", where the model is not to be trusted";
  }

  @Override
  public Working working() {
    AmountFormat format = AmountFormat.sideBySide();
    double atReference = model.rate(reference);
    List<WorkedLine> lines = new ArrayList<>();
    for (Leg leg : history.legs()) {
      double seconds = integral(model, leg, leg.duration().in(SECOND));
      lines.add(
          new WorkedLine(
              leg.toString(),
              "∫ rate dt / rate(T_ref)",
              Numbers.decimals(seconds / 60, 2)
                  + " min / "
                  + Numbers.significant(atReference, 4)
                  + " = "
                  + Numbers.decimals(seconds / 60 / atReference, 1)
                  + " min",
              model.source()));
    }
    lines.add(
        new WorkedLine(
            "t at " + format.temperature(reference),
            "Σ",
            AmountFormat.metric().time(time()),
            "sum of the stretches"));
    return new Working(lines);
  }

  /** {@code as 2 h 5 min at 24 °C (75 °F)}. */
  @Override
  public String toString() {
    return "as "
        + AmountFormat.metric().time(time())
        + " at "
        + AmountFormat.sideBySide().temperature(reference);
  }
}
