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
import org.tourage.quantity.TemperatureDifference;

/**
 * Friction from past mixes, kept by mixer and speed. Friction is taken to grow with the mixing
 * time, in a straight line from nothing; the slope is fitted by least squares and its uncertainty
 * told. Immutable.
 *
 * @param mixes the past mixes
 */
public record FrictionLog(List<Mix> mixes) implements Serializable {
  private static final double DISAGREE_KELVINS = 2;

  /** A log without mixes. */
  public static final FrictionLog EMPTY = new FrictionLog(List.of());

  /**
   * A past mix.
   *
   * @param mixer which mixer
   * @param speed which speed
   * @param time for how long
   * @param friction its friction, from {@link FactorRule#frictionOfPastMix}
   */
  public record Mix(String mixer, String speed, Amount<Time> time, TemperatureDifference friction)
      implements Serializable {
    /**
     * Checks the time.
     *
     * @param mixer which mixer
     * @param speed which speed
     * @param time for how long
     * @param friction its friction
     */
    public Mix {
      requireNonNull(mixer, "mixer");
      requireNonNull(speed, "speed");
      requireNonNull(friction, "friction");
      if (time.value() <= 0) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE, "mixing takes time", time.toString(), "give minutes");
      }
    }
  }

  /**
   * What past mixes say about a mix.
   *
   * @param friction the friction to use
   * @param uncertainty its standard uncertainty; 0 where there is one past mix only
   * @param mixes how many past mixes it stands on
   * @param scatter the standard deviation of the past mixes about the line
   */
  public record Estimate(
      TemperatureDifference friction,
      TemperatureDifference uncertainty,
      int mixes,
      TemperatureDifference scatter)
      implements Serializable {
    /**
     * What is unwise about the estimate.
     *
     * @return advice where the past mixes disagree or there is only one
     */
    public List<Advice> advice() {
      List<Advice> advice = new ArrayList<>();
      if (mixes == 1) {
        advice.add(
            Advice.note(
                "ONE_MIX",
                "the friction stands on one past mix",
                "Measure two or three more before you trust it",
                Advice.COMMON_PRACTICE));
      }
      if (scatter.celsiusDegrees() > DISAGREE_KELVINS) {
        advice.add(
            Advice.warning(
                "MIXES_DISAGREE",
                "past mixes differ by "
                    + Numbers.decimals(scatter.celsiusDegrees(), 1)
                    + " K about the line",
                "Look for another dough size or a room that was not measured",
                "least squares"));
      }
      return advice;
    }

    /** {@code friction a difference of 8 °C (14.4 °F), ± 0.5 K, from 3 mixes}. */
    @Override
    public String toString() {
      return "friction "
          + friction
          + ", ± "
          + Numbers.decimals(uncertainty.celsiusDegrees(), 1)
          + " K, from "
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

  /**
   * This log with one more mix.
   *
   * @param mixer which mixer
   * @param speed which speed
   * @param time for how long
   * @param friction its friction
   * @return the longer log
   */
  public FrictionLog with(
      String mixer, String speed, Quantity<Time> time, TemperatureDifference friction) {
    List<Mix> more = new ArrayList<>(mixes);
    more.add(new Mix(mixer, speed, Amount.from(time), friction));
    return new FrictionLog(more);
  }

  /**
   * The friction of a mix to come: slope · time, with slope = Σ t·f / Σ t².
   *
   * @param mixer which mixer
   * @param speed which speed
   * @param time for how long
   * @return the estimate
   * @throws BakeryException if there is no past mix on that mixer and speed
   */
  public Estimate estimate(String mixer, String speed, Quantity<Time> time) {
    double tt = 0;
    double tf = 0;
    int n = 0;
    for (Mix mix : mixes) {
      if (mix.mixer.equals(mixer) && mix.speed.equals(speed)) {
        double t = mix.time.in(MINUTE);
        tt += t * t;
        tf += t * mix.friction.celsiusDegrees();
        n++;
      }
    }
    if (n == 0) {
      throw new BakeryException(
          Reason.UNKNOWN_NAME,
          "no past mix on record",
          mixer + ", " + speed,
          "add one with with(…), or take a first guess of 8 °C (14 °F) rise and measure");
    }
    double slope = tf / tt;
    double squares = 0;
    for (Mix mix : mixes) {
      if (mix.mixer.equals(mixer) && mix.speed.equals(speed)) {
        double miss = mix.friction.celsiusDegrees() - slope * mix.time.in(MINUTE);
        squares += miss * miss;
      }
    }
    double scatter = n > 1 ? Math.sqrt(squares / (n - 1)) : 0;
    double wanted = MINUTE.measure(time);
    return new Estimate(
        TemperatureDifference.ofCelsiusDegrees(slope * wanted),
        TemperatureDifference.ofCelsiusDegrees(scatter / Math.sqrt(tt) * wanted),
        n,
        TemperatureDifference.ofCelsiusDegrees(scatter));
  }
}
