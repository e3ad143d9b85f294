package org.tourage.fermentation;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.util.List;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.tourage.advice.Advice;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;

/**
 * When a build or a preferment is ripe at a temperature.
 *
 * @param temperature of the build
 * @param time by its yeast, from mixing on
 * @param earliest by the quickest of yeast, bacteria and cold ends
 * @param latest by the slowest of them; the same where there is but one
 * @param advice what is unsure about it
 */
public record RipeTime(
    Amount<Temperature> temperature,
    Amount<Time> time,
    Amount<Time> earliest,
    Amount<Time> latest,
    List<Advice> advice)
    implements Serializable {

  /**
   * Copies the list.
   *
   * @param temperature of the build
   * @param time by its yeast, from mixing on
   * @param earliest by the quickest of yeast, bacteria and cold ends
   * @param latest by the slowest of them; the same where there is but one
   * @param advice what is unsure about it
   */
  public RipeTime {
    requireNonNull(temperature, "temperature");
    requireNonNull(time, "time");
    requireNonNull(earliest, "earliest");
    requireNonNull(latest, "latest");
    requireNonNull(advice, "advice");
    advice = List.copyOf(advice);
  }

  /** {@code ripe after 8 h 20 min (7 h 40 min to 8 h 20 min) at 22 °C (72 °F)}. */
  @Override
  public String toString() {
    AmountFormat format = AmountFormat.metric();
    return "ripe after "
        + format.time(time)
        + (earliest.equals(latest)
            ? ""
            : " (" + format.time(earliest) + " to " + format.time(latest) + ")")
        + " at "
        + AmountFormat.sideBySide().temperature(temperature);
  }
}
