package org.tourage.doughtemperature;

import static org.tourage.quantity.BakeryUnits.JOULE;
import static org.tourage.quantity.BakeryUnits.MINUTE;
import static org.tourage.quantity.BakeryUnits.SECOND;
import static org.tourage.quantity.BakeryUnits.WATT;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Power;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Given;
import org.tourage.quantity.TemperatureDifference;

/**
 * The heat that a dough takes up in the mixer, and where the figure comes from. Two figures are
 * kept apart: the <em>rise</em>, by which the whole dough warms, and the <em>friction</em>, a
 * number of the factor rule, which is about as many times the rise as the rule has temperatures.
 *
 * <p>What was measured on a dough has the wetting of its flour in it, and nothing is added. Only a
 * power that is known by itself gets the wetting beside it: about 15 kJ for each kilogram of dry
 * flour (6.5 Btu/lb; L. Daniels and others, J. Ind. Eng. Chem. 12 (1920) 760, from memory).
 *
 * <p>Immutable; equal by its figures.
 */
public final class MixerHeat implements Serializable {
  private static final long serialVersionUID = 1L;

  /** The wetting of flour of 11 % to 12 % moisture, J for each kilogram of it. */
  public static final double WETTING = 15_000;

  static final String WETTING_SOURCE =
      "15 kJ for each kg of flour: L. Daniels and others, J. Ind. Eng. Chem. 12 (1920) 760 (from"
          + " memory)";

  private static final double LONGEST_MINUTES = 120;
  private static final double GREATEST_WATTS = 100_000;

  /** Where the figure comes from. */
  public enum Origin {
    /** From one past mix, turned by the balance. */
    PAST_MIX,
    /** From several past mixes, by the minutes. */
    PAST_MIXES,
    /** From a bare friction of the factor rule. */
    FRICTION,
    /** From a rise of the dough. */
    RISE,
    /** From power and minutes. */
    POWER
  }

  /** Where it comes from. */
  private final Origin origin;

  /** The rise or the friction in kelvins, or the power in watts. */
  private final double figure;

  /** How long is mixed, if that is known. */
  private final @Nullable Amount<Time> time;

  /** The past mix, if it is one. */
  private final @Nullable PastMix past;

  /** The friction by the log, if it comes from one. */
  private final @Nullable TemperatureDifference friction;

  private MixerHeat(
      Origin origin,
      double figure,
      @Nullable Amount<Time> time,
      @Nullable PastMix past,
      @Nullable TemperatureDifference friction) {
    this.origin = origin;
    this.figure = figure;
    this.time = time == null ? null : checked(time);
    this.past = past;
    this.friction = friction;
  }

  private static Amount<Time> checked(Amount<Time> time) {
    double minutes = time.in(MINUTE);
    if (!(minutes > 0 && minutes <= LONGEST_MINUTES)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no dough is mixed for so long",
          time.toString(),
          "give more than 0 min and at most 120 min");
    }
    return time;
  }

  /**
   * The heat of a past mix, for the same formula in the same mixer for the same minutes.
   *
   * @param past the past mix
   * @return the heat
   */
  public static MixerHeat of(PastMix past) {
    return new MixerHeat(Origin.PAST_MIX, past.rise().celsiusDegrees(), null, past, null);
  }

  /** The heat by a log of past mixes. */
  static MixerHeat fitted(
      TemperatureDifference rise, TemperatureDifference friction, Amount<Time> time) {
    Readings.difference(
        "the rise of a dough in the mixer by past mixes",
        rise,
        -Readings.GREATEST_LOSS,
        Readings.GREATEST_RISE);
    return new MixerHeat(Origin.PAST_MIXES, rise.celsiusDegrees(), time, null, friction);
  }

  /**
   * The heat that stands behind a bare friction of the factor rule: the one for which rule and
   * balance agree on a reference day, on which flour, room, preferments and water all stand at 20
   * °C (68 °F). By the rule of k temperatures the dough then comes to 20 °C + friction / k, and so
   * it does by the balance.
   *
   * @param friction the number of the rule, 0 K to 75 K (135 °F)
   * @return the heat
   * @throws BakeryException if it is negative or nonsense
   */
  public static MixerHeat friction(TemperatureDifference friction) {
    return new MixerHeat(
        Origin.FRICTION, Readings.friction(friction).celsiusDegrees(), null, null, null);
  }

  /**
   * The heat by which the whole dough warms in the mixer, wetting included.
   *
   * @param rise the rise, 0 K to 25 K (45 °F)
   * @return the heat
   * @throws BakeryException if it is negative or nonsense
   */
  public static MixerHeat rise(TemperatureDifference rise) {
    return new MixerHeat(Origin.RISE, Readings.rise(rise).celsiusDegrees(), null, null, null);
  }

  /**
   * The heat by power and minutes; the wetting of the dry flour of the stage comes on top.
   *
   * @param power the power that reaches the dough, above 0 kW and at most 100 kW
   * @param time the mixing time, at most 120 min
   * @return the heat
   * @throws BakeryException if power or time can't be
   */
  public static MixerHeat power(Quantity<Power> power, Quantity<Time> time) {
    double watts = WATT.measure("the power", power);
    if (!(watts > 0 && watts <= GREATEST_WATTS)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "this can't be the power of a mixer",
          Given.power("the power", power).toString(),
          "give more than 0 W and at most 100 kW");
    }
    return new MixerHeat(Origin.POWER, watts, Given.time("the time", time), null, null);
  }

  /**
   * Says how long is mixed, so that shorter mixing can be a lever. A power keeps its watts.
   *
   * @param minutes the mixing time, at most 120 min
   * @return the heat
   */
  public MixerHeat over(Quantity<Time> minutes) {
    return new MixerHeat(origin, figure, Given.time("the minutes", minutes), past, friction);
  }

  /**
   * Where the figure comes from.
   *
   * @return the origin
   */
  public Origin origin() {
    return origin;
  }

  /**
   * How long is mixed.
   *
   * @return the time, if it is known
   */
  public Optional<Amount<Time>> time() {
    return Optional.ofNullable(time);
  }

  /**
   * The past mix that it comes from.
   *
   * @return the past mix, if it is one
   */
  public Optional<PastMix> past() {
    return Optional.ofNullable(past);
  }

  /**
   * Whether the heat of wetting is in the figure.
   *
   * @return false only for a power
   */
  public boolean wettingIncluded() {
    return origin != Origin.POWER;
  }

  private double watts() {
    return figure;
  }

  /**
   * What goes into a mix, less {@link #wetting}.
   *
   * @param mix the mix
   * @return the energy
   * @throws BakeryException if power and minutes would warm the dough by more than 25 K
   */
  public Amount<Energy> energy(StageMix mix) {
    double capacity = mix.mixture(0).capacity();
    double joules =
        switch (origin) {
          case POWER -> watts() * (time == null ? 0 : time.in(SECOND));
          case FRICTION -> figure / (mix.factorRule(mix.room()).factors().size() + 1) * capacity;
          default -> figure * capacity;
        };
    if (joules > Readings.GREATEST_RISE * capacity) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no dough warms by so much in the mixer",
          Numbers.decimals(joules / capacity, 1) + " K from " + this,
          "give what makes at most 25 K (45 °F)");
    }
    return JOULE.amount(joules);
  }

  /**
   * The wetting that is counted beside {@link #energy}.
   *
   * @param mix the mix
   * @return 15 kJ for each kg of dry flour for a power, 0 J where it is in the figure
   */
  public Amount<Energy> wetting(StageMix mix) {
    return JOULE.amount(wettingIncluded() ? 0 : WETTING * mix.dryFlourKilograms());
  }

  /** The wetting of a mix as a rise of its dough, K. */
  static double usualWettingKelvins(StageMix mix) {
    return WETTING * mix.dryFlourKilograms() / mix.mixture(0).capacity();
  }

  /** What grows with the minutes, J: all but the wetting, not below 0. */
  double mechanical(StageMix mix) {
    double all = energy(mix).in(JOULE);
    return wettingIncluded() ? Math.max(0, all - WETTING * mix.dryFlourKilograms()) : all;
  }

  /**
   * The rise of the dough of a mix, wetting included.
   *
   * @param mix the mix
   * @return the rise
   */
  public TemperatureDifference rise(StageMix mix) {
    double joules = energy(mix).in(JOULE) + wetting(mix).in(JOULE);
    return TemperatureDifference.ofCelsiusDegrees(joules / mix.mixture(0).capacity());
  }

  /**
   * The friction of the factor rule for a mix: the given or measured number; otherwise as many
   * times the rise as the rule has temperatures.
   *
   * @param mix the mix
   * @return the friction
   */
  public TemperatureDifference friction(StageMix mix) {
    int factors = mix.factorRule(mix.room()).factors().size() + 1;
    if (origin == Origin.FRICTION) {
      return TemperatureDifference.ofCelsiusDegrees(figure);
    } else if (friction != null) {
      return friction;
    } else if (past != null) {
      int then = past.mix().factorRule(past.dough()).factors().size() + 1;
      Optional<TemperatureDifference> measured = past.friction();
      if (then == factors && measured.isPresent()) {
        return measured.get();
      }
    }
    return rise(mix).times(factors);
  }

  /** What is unwise about it for a mix. */
  List<Advice> advice(StageMix mix) {
    List<Advice> advice = new ArrayList<>();
    if (past != null) {
      advice.addAll(past.advice());
      if (!past.mix().batch().formula().equals(mix.batch().formula())) {
        advice.add(
            Advice.of(
                "PAST_MIX_OF_OTHER_FORMULA",
                "the mixer's heat was measured on " + past.mix().batch().formula().name(),
                "It holds for that formula; measure this one once and keep its own"));
      }
    }
    return advice;
  }

  /**
   * How the heat of a mix is found.
   *
   * @param mix the mix
   * @return the lines
   */
  public Working working(StageMix mix) {
    String rise = Numbers.decimals(rise(mix).celsiusDegrees(), 2) + " K";
    int factors = mix.factorRule(mix.room()).factors().size() + 1;
    return switch (origin) {
      case PAST_MIX, PAST_MIXES, RISE ->
          (past == null ? new Working(List.of()) : past.working())
              .then(
                  Working.of(
                      new WorkedLine(
                          "rise",
                          "as measured, the wetting of the flour in it and not added again",
                          rise,
                          origin == Origin.PAST_MIXES ? "least squares" : "as measured")));
      case FRICTION ->
          Working.of(
              new WorkedLine(
                  "rise",
                  "friction / k: with flour, room, preferments and water all at 20 °C (68 °F) rule"
                      + " and balance both bring the dough to 20 °C + friction / k",
                  Numbers.decimals(figure, 2) + " K / " + factors + " = " + rise,
                  "reference day, by definition"));
      case POWER ->
          Working.of(
              new WorkedLine(
                  "rise",
                  "(power · time + 15 kJ/kg · dry flour) / Σ m·c",
                  this + " = " + rise,
                  WETTING_SOURCE));
    };
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof MixerHeat that
        && origin == that.origin
        && Double.compare(figure, that.figure) == 0
        && Objects.equals(time, that.time)
        && Objects.equals(past, that.past)
        && Objects.equals(friction, that.friction);
  }

  @Override
  public int hashCode() {
    return Objects.hash(origin, figure, time, past, friction);
  }

  /** {@code friction 8 K of a factor rule}, {@code 500 W}, {@code rise 6 K over 8 min}. */
  @Override
  public String toString() {
    String minutes = time == null ? "" : " over " + AmountFormat.metric().time(time);
    String kelvins = Numbers.decimals(figure, 2) + " K";
    return switch (origin) {
          case PAST_MIX -> "rise " + kelvins + " of a past mix";
          case PAST_MIXES -> "rise " + kelvins + " by past mixes";
          case FRICTION -> "friction " + kelvins + " of a factor rule";
          case RISE -> "rise " + kelvins;
          case POWER -> Numbers.decimals(watts(), 0) + " W";
        }
        + minutes;
  }
}
