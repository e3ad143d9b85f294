package org.tourage.oven;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.MINUTE;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Given;

/**
 * What the oven is set to, step by step. Set points are those of a still oven unless said
 * otherwise; a fan oven is commonly set 15 to 25 K lower (common practice).
 *
 * <pre>{@code
 * OvenProfile.of(fahrenheit(400), minutes(10)).then(fahrenheit(350), minutes(14));
 * }</pre>
 *
 * @param steps the steps, first to last
 */
public record OvenProfile(List<Step> steps) implements Explained, Serializable {
  private static final double COOL_CELSIUS = 120;
  private static final double HOT_CELSIUS = 300;

  /** Flat breads and pizza take a very hot oven, for some minutes at most (common practice). */
  private static final double HOT_MINUTES = 8;

  private static final double LIMIT_CELSIUS = 500;
  private static final double FAN_KELVIN = 20;

  /** How the air of the oven moves. */
  public enum Mode {
    /** Still air: heat from top and bottom. */
    STILL("still"),
    /** Air moved by a fan. */
    FAN("fan");

    private final String word;

    Mode(String word) {
      this.word = word;
    }

    /**
     * What it is called.
     *
     * @return {@code still} or {@code fan}
     */
    public String word() {
      return word;
    }
  }

  /** How damp the oven is. */
  public enum Damp {
    /** The vent is closed: what the load gives stays for a while. */
    CLOSED(""),
    /** Steam is given. */
    STEAM(", with steam"),
    /** The vent is open. */
    VENTED(", vent open");

    private final String words;

    Damp(String words) {
      this.words = words;
    }
  }

  /** What ends a step before its time is over. */
  public enum End {
    /** Nothing: the time alone. */
    TIME,
    /** The core has reached a temperature, in °C. */
    CORE,
    /** The piece has lost a share of its mass, in percent. */
    LOSS
  }

  /**
   * One step.
   *
   * @param setPoint what the oven is set to
   * @param duration for how long, at most
   * @param mode how the air moves
   * @param damp how damp the oven is
   * @param ramp how long the set point takes from that of the step before; 0 for at once
   * @param end what ends it sooner
   * @param endValue at which value, °C or percent; not read for {@link End#TIME}
   * @param rampFrom where the ramp starts; null for the set point of the step before
   */
  public record Step(
      Amount<Temperature> setPoint,
      Amount<Time> duration,
      Mode mode,
      Damp damp,
      Amount<Time> ramp,
      End end,
      double endValue,
      @Nullable Amount<Temperature> rampFrom)
      implements Serializable {
    /**
     * Checks the ranges.
     *
     * @param setPoint what the oven is set to
     * @param duration for how long, at most
     * @param mode how the air moves
     * @param damp how damp the oven is
     * @param ramp how long the set point takes from that of the step before; 0 for at once
     * @param end what ends it sooner
     * @param endValue at which value, °C or percent; not read for {@link End#TIME}
     * @param rampFrom where the ramp starts; null for the set point of the step before
     */
    public Step {
      requireNonNull(mode, "mode");
      requireNonNull(damp, "damp");
      requireNonNull(end, "end");
      double celsius = setPoint.in(CELSIUS);
      if (celsius < 0 || celsius > LIMIT_CELSIUS) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "a bakery oven can't be set so",
            AmountFormat.sideBySide().temperature(setPoint),
            "give 0 °C to 500 °C (32 °F to 932 °F)");
      }
      if (duration.value() <= 0 || ramp.value() < 0 || ramp.compareTo(duration) > 0) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "a step needs time",
            duration + ", ramp " + ramp,
            "give minutes, for example 10 min, and a ramp that is not longer");
      }
    }

    /**
     * A step whose ramp, if it has one, starts at the set point of the step before.
     *
     * @param setPoint what the oven is set to
     * @param duration for how long, at most
     * @param mode how the air moves
     * @param damp how damp the oven is
     * @param ramp how long the set point takes from that of the step before; 0 for at once
     * @param end what ends it sooner
     * @param endValue at which value, °C or percent; not read for {@link End#TIME}
     */
    public Step(
        Amount<Temperature> setPoint,
        Amount<Time> duration,
        Mode mode,
        Damp damp,
        Amount<Time> ramp,
        End end,
        double endValue) {
      this(setPoint, duration, mode, damp, ramp, end, endValue, null);
    }

    /**
     * A step at once, in still air, vent closed, ended by the clock.
     *
     * @param setPoint what the oven is set to
     * @param duration for how long
     */
    public Step(Amount<Temperature> setPoint, Amount<Time> duration) {
      this(setPoint, duration, Mode.STILL, Damp.CLOSED, MINUTE.amount(0), End.TIME, 0);
    }

    /**
     * The same with steam.
     *
     * @return the step
     */
    public Step withSteam() {
      return new Step(setPoint, duration, mode, Damp.STEAM, ramp, end, endValue, rampFrom);
    }

    /**
     * The same with the vent open.
     *
     * @return the step
     */
    public Step vented() {
      return new Step(setPoint, duration, mode, Damp.VENTED, ramp, end, endValue, rampFrom);
    }

    /**
     * The same with the fan.
     *
     * @return the step
     */
    public Step withFan() {
      return new Step(setPoint, duration, Mode.FAN, damp, ramp, end, endValue, rampFrom);
    }

    /**
     * The same with a set point that changes along a straight line.
     *
     * @param time how long it takes
     * @return the step
     */
    public Step ramped(Quantity<Time> time) {
      return new Step(setPoint, duration, mode, damp, Given.time("the time", time), end, endValue);
    }

    /**
     * The same with a set point that changes along a straight line from another: for a first step,
     * what the oven has when the piece goes in. The oven stands there, whatever it loses at the
     * door.
     *
     * @param from where it starts
     * @param time how long it takes
     * @return the step
     */
    public Step ramped(Quantity<Temperature> from, Quantity<Time> time) {
      return new Step(
          setPoint,
          duration,
          mode,
          damp,
          Given.time("the time", time),
          end,
          endValue,
          Given.temperature("the from", from));
    }

    /**
     * The same, but ended when the core reaches a temperature.
     *
     * @param core the temperature
     * @return the step
     */
    public Step untilCore(Quantity<Temperature> core) {
      return new Step(
          setPoint,
          duration,
          mode,
          damp,
          ramp,
          End.CORE,
          CELSIUS.measure("the core", core),
          rampFrom);
    }

    /**
     * The same, but ended when the piece has lost a share of its mass.
     *
     * @param share the share
     * @return the step
     */
    public Step untilLoss(Quantity<Dimensionless> share) {
      return new Step(
          setPoint,
          duration,
          mode,
          damp,
          ramp,
          End.LOSS,
          PERCENT.measure("the share", share),
          rampFrom);
    }

    /** The fan step of a still one: the rest as it was. */
    private Step copyOf(Step still) {
      return new Step(
          setPoint,
          duration,
          Mode.FAN,
          still.damp,
          still.ramp,
          still.end,
          still.endValue,
          still.rampFrom);
    }

    Step lasting(double minutes) {
      return new Step(setPoint, MINUTE.amount(minutes), mode, damp, ramp, end, endValue, rampFrom);
    }

    /** {@code 212 °C (414 °F) for 8 min, fan, with steam}. */
    @Override
    public String toString() {
      AmountFormat format = AmountFormat.sideBySide();
      return format.temperature(setPoint)
          + " for "
          + (end == End.TIME ? "" : "at most ")
          + AmountFormat.metric().time(duration)
          + switch (end) {
            case TIME -> "";
            case CORE -> ", until the core has " + format.temperature(CELSIUS.amount(endValue));
            case LOSS ->
                ", until " + AmountFormat.metric().percent(PERCENT.amount(endValue)) + " is lost";
          }
          + (rampFrom == null ? "" : ", from " + format.temperature(rampFrom))
          + (ramp.value() > 0 ? ", reached within " + AmountFormat.metric().time(ramp) : "")
          + (mode == Mode.FAN ? ", fan" : "")
          + damp.words;
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
    Step first = steps.get(0);
    if (first.ramp.value() > 0 && first.rampFrom == null) {
      throw new BakeryException(
          Reason.MISSING,
          "the ramp of the first step starts nowhere",
          first.toString(),
          "say what the oven has when the piece goes in: ramped(from, time)");
    }
  }

  /**
   * A profile of one step.
   *
   * @param setPoint what the oven is set to
   * @param duration for how long
   * @return the profile
   */
  public static OvenProfile of(Quantity<Temperature> setPoint, Quantity<Time> duration) {
    return new OvenProfile(
        List.of(
            new Step(
                Given.temperature("the set point", setPoint),
                Given.time("the duration", duration))));
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
    more.add(
        new Step(
            Given.temperature("the set point", setPoint), Given.time("the duration", duration)));
    return new OvenProfile(more);
  }

  /**
   * A profile of one step.
   *
   * @param step the step
   * @return the profile
   */
  public static OvenProfile of(Step step) {
    return new OvenProfile(List.of(step));
  }

  /**
   * This profile with one more step.
   *
   * @param step the step
   * @return the longer profile
   */
  public OvenProfile then(Step step) {
    List<Step> more = new ArrayList<>(steps);
    more.add(step);
    return new OvenProfile(more);
  }

  /**
   * The same set points for other times.
   *
   * @param factor how many times as long, positive
   * @return the profile
   */
  public OvenProfile stretched(double factor) {
    return new OvenProfile(
        steps.stream()
            .map(
                s ->
                    new Step(
                        s.setPoint,
                        s.duration.multiply(factor),
                        s.mode,
                        s.damp,
                        s.ramp.multiply(factor),
                        s.end,
                        s.endValue,
                        s.rampFrom))
            .toList());
  }

  /**
   * The same bake in an oven with a fan, from one for still air: set points 20 K lower (15 to 25 K,
   * common practice), the times kept.
   *
   * @return the profile
   */
  public OvenProfile forFan() {
    return new OvenProfile(
        steps.stream()
            .map(
                s ->
                    s.mode == Mode.FAN
                        ? s
                        : new Step(CELSIUS.amount(s.setPoint.in(CELSIUS) - FAN_KELVIN), s.duration)
                            .copyOf(s))
            .toList());
  }

  /**
   * Whether a step has the fan on: then advice for a fan oven has nothing to add.
   *
   * @return true if one has
   */
  public boolean usesFan() {
    return steps.stream().anyMatch(s -> s.mode == Mode.FAN);
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
      boolean lasts = steps.get(i).duration().in(MINUTE) > HOT_MINUTES;
      if (celsius < COOL_CELSIUS || celsius > HOT_CELSIUS && lasts) {
        advice.add(
            Advice.of(
                celsius < COOL_CELSIUS ? "OVEN_COOL" : "OVEN_HOT",
                "step " + (i + 1) + " is set to " + AmountFormat.sideBySide().temperature(setPoint),
                celsius < COOL_CELSIUS
                    ? "Bread and pastry are usually baked at 160 °C to 250 °C (320 °F to 482 °F)"
                    : "So hot only for flat breads and pizza, for some minutes"));
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
