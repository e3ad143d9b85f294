package org.tourage.doughtemperature;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Given;
import org.tourage.quantity.TemperatureDifference;

/**
 * Past mixes, kept by mixer and speed, each with two figures that are kept apart: the rise of the
 * dough in the mixer, for the heat balance, and the friction, for the factor rule. Both are taken
 * to grow with the mixing time along a straight line that does not start at nothing: the wetting of
 * the flour gives its heat however short the mix. Slope and intercept are fitted by least squares.
 * Immutable.
 *
 * @param mixes the past mixes
 */
public record FrictionLog(List<Mix> mixes) implements Serializable {
  private static final double DISAGREE_KELVINS = 2;

  /** How far outside the logged minutes a line is trusted. */
  private static final double FAR = 1.5;

  /**
   * What wetting gives to a dough of 60 % water, K: 15 kJ/kg of flour, 1.6 kg dough for each kg of
   * it, specific heat 2.75 kJ/(kg·K) (derived).
   */
  private static final double USUAL_WETTING = MixerHeat.WETTING / 1.6 / 2750;

  /** A log without mixes. */
  public static final FrictionLog EMPTY = new FrictionLog(List.of());

  /**
   * A past mix.
   *
   * @param mixer which mixer
   * @param speed which speed
   * @param time for how long
   * @param rise the rise of the dough in the mixer, wetting included
   * @param friction the friction of the factor rule
   * @param wetting how much of the rise the wetting of the flour gives
   */
  public record Mix(
      String mixer,
      String speed,
      Amount<Time> time,
      TemperatureDifference rise,
      TemperatureDifference friction,
      TemperatureDifference wetting)
      implements Serializable {
    /**
     * Checks the time.
     *
     * @param mixer which mixer
     * @param speed which speed
     * @param time for how long
     * @param rise the rise of the dough in the mixer, wetting included
     * @param friction the friction of the factor rule
     * @param wetting how much of the rise the wetting of the flour gives
     */
    public Mix {
      requireNonNull(mixer, "mixer");
      requireNonNull(speed, "speed");
      requireNonNull(rise, "rise");
      requireNonNull(friction, "friction");
      requireNonNull(wetting, "wetting");
      if (time.value() <= 0) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE, "mixing takes time", time.toString(), "give minutes");
      }
    }
  }

  /**
   * What past mixes say about a mix.
   *
   * @param time how long the mix takes
   * @param rise the rise of the dough to reckon with
   * @param friction the friction of the factor rule to reckon with
   * @param intercept the rise at no time at all: the wetting, where the line knows it
   * @param perMinute the rise by one minute
   * @param uncertainty the standard uncertainty of the rise; 0 where the mixes can't tell
   * @param mixes how many past mixes it stands on
   * @param scatter the standard deviation of the rises about the line
   * @param times how many mixing times differ among them
   * @param far whether the time lies far outside them
   */
  public record Estimate(
      Amount<Time> time,
      TemperatureDifference rise,
      TemperatureDifference friction,
      TemperatureDifference intercept,
      TemperatureDifference perMinute,
      TemperatureDifference uncertainty,
      int mixes,
      TemperatureDifference scatter,
      int times,
      boolean far)
      implements Serializable {

    /**
     * The heat of the mixer for {@link StageMix#water}.
     *
     * @return the heat, with its minutes
     */
    public MixerHeat heat() {
      return MixerHeat.fitted(rise, friction, time);
    }

    /**
     * What is unwise about the estimate.
     *
     * @return advice where the past mixes disagree, are few, or lie elsewhere
     */
    public List<Advice> advice() {
      List<Advice> advice = new ArrayList<>();
      if (mixes == 1) {
        advice.add(
            Advice.of(
                "ONE_MIX",
                "the friction stands on one past mix",
                "Measure two or three more before you trust it"));
      }
      if (times == 1 && far) {
        advice.add(
            Advice.of(
                "ONE_MIXING_TIME",
                "all past mixes took the same time; what does not grow with the minutes is taken"
                    + " to be the wetting of the flour, "
                    + Numbers.decimals(intercept.celsiusDegrees(), 1)
                    + " K",
                "Measure a mix of another length"));
      } else if (far) {
        advice.add(
            Advice.of(
                "FAR_FROM_PAST_MIXES",
                "the time lies far outside those of the past mixes",
                "Measure this mix before you trust the figure"));
      }
      if (scatter.celsiusDegrees() > DISAGREE_KELVINS) {
        advice.add(
            Advice.of(
                "MIXES_DISAGREE",
                "past mixes differ by "
                    + Numbers.decimals(scatter.celsiusDegrees(), 1)
                    + " K about the line",
                "Look for another dough size or a room that was not measured"));
      }
      if (perMinute.celsiusDegrees() < 0) {
        advice.add(
            Advice.of(
                "FRICTION_FALLS",
                "by these mixes a longer mix warms the dough less",
                "Look for readings taken on another day or of another dough"));
      }
      return advice;
    }

    /**
     * {@code rise 6.2 K ± 0.1 K in the mixer, friction 18.5 K of the factor rule, from 3 mixes}.
     */
    @Override
    public String toString() {
      return "rise "
          + Numbers.decimals(rise.celsiusDegrees(), 1)
          + " K ± "
          + Numbers.decimals(uncertainty.celsiusDegrees(), 1)
          + " K in the mixer, friction "
          + Numbers.decimals(friction.celsiusDegrees(), 1)
          + " K of the factor rule, from "
          + mixes
          + (mixes == 1 ? " mix" : " mixes");
    }
  }

  /**
   * Copies the list.
   *
   * @param mixes the past mixes
   */
  public FrictionLog {
    mixes = List.copyOf(mixes);
  }

  private FrictionLog with(Mix mix) {
    List<Mix> more = new ArrayList<>(mixes);
    more.add(mix);
    return new FrictionLog(more);
  }

  /**
   * This log with one more mix, whose balance and rule give both figures.
   *
   * @param mixer which mixer
   * @param speed which speed
   * @param time for how long
   * @param past what was read that day
   * @return the longer log
   */
  public FrictionLog with(String mixer, String speed, Quantity<Time> time, PastMix past) {
    MixerHeat heat = MixerHeat.of(past);
    return with(
        new Mix(
            mixer,
            speed,
            Given.time("the time", time),
            past.rise(),
            heat.friction(past.mix()),
            kelvins(MixerHeat.usualWettingKelvins(past.mix()))));
  }

  /**
   * This log with one more mix of which only the friction of the factor rule is known.
   *
   * @param mixer which mixer
   * @param speed which speed
   * @param time for how long
   * @param friction its friction, from {@link FactorRule#frictionOfPastMix}, 0 K to 75 K
   * @param temperatures how many temperatures the rule multiplies the target by: 3 for flour, room
   *     and water
   * @return the longer log; the rise is the friction over that number
   */
  public FrictionLog withFriction(
      String mixer,
      String speed,
      Quantity<Time> time,
      TemperatureDifference friction,
      int temperatures) {
    return with(
        new Mix(
            mixer,
            speed,
            Given.time("the time", time),
            Readings.friction(friction).times(1.0 / counted(temperatures)),
            friction,
            kelvins(USUAL_WETTING)));
  }

  /**
   * This log with one more mix of which only the rise of the dough in the mixer is known.
   *
   * @param mixer which mixer
   * @param speed which speed
   * @param time for how long
   * @param rise the rise, wetting included, 0 K to 25 K
   * @param temperatures how many temperatures the rule multiplies the target by: 3 for flour, room
   *     and water
   * @return the longer log; the friction is the rise times that number
   */
  public FrictionLog withRise(
      String mixer,
      String speed,
      Quantity<Time> time,
      TemperatureDifference rise,
      int temperatures) {
    return with(
        new Mix(
            mixer,
            speed,
            Given.time("the time", time),
            Readings.rise(rise),
            rise.times(counted(temperatures)),
            kelvins(USUAL_WETTING)));
  }

  private static int counted(int temperatures) {
    if (temperatures < 2 || temperatures > 12) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no factor rule has so many temperatures",
          String.valueOf(temperatures),
          "give 2 to 12: 3 for flour, room and water, one more for each preferment");
    }
    return temperatures;
  }

  private static TemperatureDifference kelvins(double value) {
    return TemperatureDifference.ofCelsiusDegrees(value);
  }

  /**
   * The rise and the friction of a mix to come, along a line through the past mixes. Where they all
   * took one time, the line starts at the wetting of the flour.
   *
   * @param mixer which mixer
   * @param speed which speed
   * @param time for how long
   * @return the estimate
   * @throws BakeryException if there is no past mix on that mixer and speed
   */
  public Estimate estimate(String mixer, String speed, Quantity<Time> time) {
    double wanted = MINUTE.measure("the time", time);
    if (wanted <= 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "mixing takes time",
          Given.time("the time", time).toString(),
          "give minutes");
    }
    List<Mix> past =
        mixes.stream().filter(m -> m.mixer.equals(mixer) && m.speed.equals(speed)).toList();
    if (past.isEmpty()) {
      throw new BakeryException(
          Reason.UNKNOWN_NAME,
          "no past mix on record",
          mixer + ", " + speed,
          "add one with with(…), or take a first guess of a rise of 6 °C (11 °F) in the mixer, which"
              + " is a friction of 18 °C (32 °F) for flour, room and water, and measure");
    }
    double[] minutes = past.stream().mapToDouble(m -> m.time.in(MINUTE)).toArray();
    double[] rises = past.stream().mapToDouble(m -> m.rise.celsiusDegrees()).toArray();
    double[] frictions = past.stream().mapToDouble(m -> m.friction.celsiusDegrees()).toArray();
    double mean = mean(minutes);
    double rise = mean(rises);
    double spread = sum(minutes, minutes, mean, mean);
    double slope;
    double frictionSlope;
    int free;
    long times = java.util.Arrays.stream(minutes).distinct().count();
    if (times > 1) {
      slope = sum(minutes, rises, mean, rise) / spread;
      frictionSlope = sum(minutes, frictions, mean, mean(frictions)) / spread;
      free = past.size() - 2;
    } else {
      double wetting = mean(past.stream().mapToDouble(m -> m.wetting.celsiusDegrees()).toArray());
      slope = Math.max(0, rise - wetting) / mean;
      // the friction that is not wetting grows as the rise does
      frictionSlope = rise > 0 ? slope * mean(frictions) / rise : 0;
      free = past.size() - 1;
    }
    double squares = 0;
    for (int i = 0; i < minutes.length; i++) {
      double miss = rises[i] - rise - slope * (minutes[i] - mean);
      squares += miss * miss;
    }
    double scatter = free > 0 ? Math.sqrt(squares / free) : 0;
    double away = wanted - mean;
    double lever = 1.0 / past.size() + (times > 1 ? away * away / spread : 0);
    double least = java.util.Arrays.stream(minutes).min().orElse(mean);
    double most = java.util.Arrays.stream(minutes).max().orElse(mean);
    boolean far = times > 1 ? wanted > most * FAR || wanted < least / FAR : Math.abs(away) > 1e-9;
    return new Estimate(
        Given.time("the time", time),
        kelvins(rise + slope * away),
        kelvins(mean(frictions) + frictionSlope * away),
        kelvins(rise - slope * mean),
        kelvins(slope),
        kelvins(scatter * Math.sqrt(lever)),
        past.size(),
        kelvins(scatter),
        (int) times,
        far);
  }

  private static double mean(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    return sum / values.length;
  }

  private static double sum(double[] x, double[] y, double meanX, double meanY) {
    double sum = 0;
    for (int i = 0; i < x.length; i++) {
      sum += (x[i] - meanX) * (y[i] - meanY);
    }
    return sum;
  }
}
