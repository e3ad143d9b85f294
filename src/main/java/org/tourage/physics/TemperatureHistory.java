package org.tourage.physics;

import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.SECOND;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Given;

/**
 * A temperature in time: legs one after another, each held or changing along a straight line. From
 * one leg to the next it may jump. Immutable.
 *
 * <pre>{@code
 * TemperatureHistory.ofHold(celsius(24), hours(1)).thenRamp(celsius(4), hours(2)).thenHold(celsius(4), hours(12));
 * }</pre>
 *
 * @param legs the legs in order
 */
public record TemperatureHistory(List<Leg> legs) implements Serializable {

  /**
   * A stretch of time.
   *
   * @param duration how long, positive
   * @param from the temperature at its start
   * @param to the temperature at its end
   */
  public record Leg(Amount<Time> duration, Amount<Temperature> from, Amount<Temperature> to)
      implements Serializable {
    /**
     * Checks the duration.
     *
     * @param duration how long, positive
     * @param from the temperature at its start
     * @param to the temperature at its end
     */
    public Leg {
      if (duration.value() <= 0) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "a stretch of a temperature history takes time",
            duration.toString(),
            "give a positive time");
      }
    }

    /**
     * The temperature after a part of the stretch.
     *
     * @param seconds since its start, up to its end
     * @return °C
     */
    public double celsiusAfter(double seconds) {
      double start = from.in(CELSIUS);
      return start + (to.in(CELSIUS) - start) * seconds / duration.in(SECOND);
    }

    /** {@code 23 °C (73 °F) for 1 h 30 min}. */
    @Override
    public String toString() {
      AmountFormat both = AmountFormat.sideBySide();
      String time = AmountFormat.metric().time(duration);
      return from.equals(to)
          ? both.temperature(from) + " for " + time
          : both.temperature(from) + " to " + both.temperature(to) + " within " + time;
    }
  }

  /**
   * Copies the list and checks that there is a leg.
   *
   * @param legs the legs in order
   */
  public TemperatureHistory {
    legs = List.copyOf(legs);
    if (legs.isEmpty()) {
      throw new BakeryException(
          Reason.MISSING, "a temperature history needs a stretch of time", "none", "give one");
    }
  }

  /**
   * A temperature held for a time.
   *
   * @param temperature the temperature
   * @param time how long
   * @return the history
   */
  public static TemperatureHistory ofHold(Quantity<Temperature> temperature, Quantity<Time> time) {
    Amount<Temperature> held = Given.temperature("the temperature", temperature);
    return new TemperatureHistory(List.of(new Leg(Given.time("the time", time), held, held)));
  }

  /**
   * A temperature that changes along a straight line.
   *
   * @param from the temperature at the start
   * @param to the temperature at the end
   * @param time how long
   * @return the history
   */
  public static TemperatureHistory ofRamp(
      Quantity<Temperature> from, Quantity<Temperature> to, Quantity<Time> time) {
    return new TemperatureHistory(
        List.of(
            new Leg(
                Given.time("the time", time),
                Given.temperature("the from", from),
                Given.temperature("the to", to))));
  }

  /**
   * This history, then another.
   *
   * @param next what comes after
   * @return both
   */
  public TemperatureHistory then(TemperatureHistory next) {
    List<Leg> all = new ArrayList<>(legs);
    all.addAll(next.legs);
    return new TemperatureHistory(all);
  }

  /**
   * This history, then a temperature held.
   *
   * @param temperature the temperature
   * @param time how long
   * @return the longer history
   */
  public TemperatureHistory thenHold(Quantity<Temperature> temperature, Quantity<Time> time) {
    return then(ofHold(temperature, time));
  }

  /**
   * This history, then on along a straight line.
   *
   * @param to the temperature at the end
   * @param time how long
   * @return the longer history
   */
  public TemperatureHistory thenRamp(Quantity<Temperature> to, Quantity<Time> time) {
    return then(ofRamp(legs.get(legs.size() - 1).to(), to, time));
  }

  /**
   * How long it is.
   *
   * @return the time in seconds
   */
  public Amount<Time> duration() {
    return SECOND.amount(legs.stream().mapToDouble(l -> l.duration().in(SECOND)).sum());
  }

  /**
   * The temperature at a time; at a jump, the one after it; beyond the end, the last one.
   *
   * @param time the time since the start, not negative
   * @return the temperature
   */
  public Amount<Temperature> at(Quantity<Time> time) {
    double left = SECOND.measure("the time", time);
    if (left < 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "the history starts at 0",
          Given.time("the time", time).toString(),
          "give a time from 0 on");
    }
    for (Leg leg : legs) {
      double length = leg.duration().in(SECOND);
      if (left < length) {
        return CELSIUS.amount(leg.celsiusAfter(left));
      }
      left -= length;
    }
    return legs.get(legs.size() - 1).to();
  }

  /** {@code 24 °C (75 °F) for 1 h, then 4 °C (39 °F) for 12 h}. */
  @Override
  public String toString() {
    return legs.stream().map(Leg::toString).collect(Collectors.joining(", then "));
  }
}
