package org.tourage.oven;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;

/**
 * What the oven is set to, step by step. Set points are those of a still oven unless said
 * otherwise; a fan oven is commonly set 15 to 25 K lower (common practice).
 *
 * <pre>{@code
 * OvenProfile.step(fahrenheit(400), minutes(10)).then(fahrenheit(350), minutes(14));
 * }</pre>
 *
 * @param steps the steps, first to last
 */
public record OvenProfile(List<Step> steps) implements Explained, Serializable {
  private static final double COOL_CELSIUS = 120;
  private static final double HOT_CELSIUS = 260;
  private static final double LIMIT_CELSIUS = 350;

  /**
   * One step.
   *
   * @param setPoint what the oven is set to
   * @param duration for how long
   */
  public record Step(Amount<Temperature> setPoint, Amount<Time> duration) implements Serializable {
    /**
     * Checks the ranges.
     *
     * @param setPoint what the oven is set to
     * @param duration for how long
     */
    public Step {
      double celsius = setPoint.in(CELSIUS);
      if (celsius < 0 || celsius > LIMIT_CELSIUS) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "a bakery oven can't be set so",
            AmountFormat.sideBySide().temperature(setPoint),
            "give 0 °C to 350 °C (32 °F to 662 °F)");
      }
      if (duration.value() <= 0) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "a step needs time",
            duration.toString(),
            "give minutes, for example 10 min");
      }
    }

    /** {@code 204 °C (400 °F) for 10 min}. */
    @Override
    public String toString() {
      return AmountFormat.sideBySide().temperature(setPoint)
          + " for "
          + AmountFormat.metric().time(duration);
    }
  }

  /**
   * Copies the list and checks that there is a step.
   *
   * @param steps the steps, first to last
   */
  public OvenProfile {
    requireNonNull(steps, "steps");
    steps = List.copyOf(steps);
    if (steps.isEmpty()) {
      throw new BakeryException(
          Reason.MISSING, "a profile needs a step", "none", "give a set point and a time");
    }
  }

  /**
   * A profile of one step.
   *
   * @param setPoint what the oven is set to
   * @param duration for how long
   * @return the profile
   */
  public static OvenProfile step(Quantity<Temperature> setPoint, Quantity<Time> duration) {
    return new OvenProfile(List.of(new Step(Amount.from(setPoint), Amount.from(duration))));
  }

  /**
   * This profile with one more step.
   *
   * @param setPoint what the oven is set to
   * @param duration for how long
   * @return the longer profile
   */
  public OvenProfile then(Quantity<Temperature> setPoint, Quantity<Time> duration) {
    List<Step> more = new ArrayList<>(steps);
    more.add(new Step(Amount.from(setPoint), Amount.from(duration)));
    return new OvenProfile(more);
  }

  /**
   * The time of all steps.
   *
   * @return the sum in minutes
   */
  public Amount<Time> total() {
    double minutes = 0;
    for (Step step : steps) {
      minutes += step.duration().in(MINUTE);
    }
    return MINUTE.amount(minutes);
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>();
    for (int i = 0; i < steps.size(); i++) {
      Amount<Temperature> setPoint = steps.get(i).setPoint();
      double celsius = setPoint.in(CELSIUS);
      if (celsius < COOL_CELSIUS || celsius > HOT_CELSIUS) {
        advice.add(
            Advice.warning(
                celsius < COOL_CELSIUS ? "OVEN_COOL" : "OVEN_HOT",
                "step " + (i + 1) + " is set to " + AmountFormat.sideBySide().temperature(setPoint),
                "Pastry is usually baked at 160 °C to 230 °C (320 °F to 446 °F)",
                Advice.COMMON_PRACTICE));
      }
    }
    return advice;
  }

  @Override
  public Working working() {
    String sum =
        steps.stream()
            .map(s -> AmountFormat.metric().time(s.duration()))
            .collect(Collectors.joining(" + "));
    return Working.of(
        new WorkedLine(
            "total time",
            "Σ steps",
            sum + " = " + AmountFormat.metric().time(total()),
            "definition"));
  }

  /** The steps and the total time. */
  @Override
  public String toString() {
    return steps.stream().map(Step::toString).collect(Collectors.joining(", then "))
        + "; "
        + AmountFormat.metric().time(total())
        + " in all";
  }
}
