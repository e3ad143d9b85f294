package org.tourage.fermentation;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.MINUTE;
import static org.tourage.quantity.BakeryUnits.SECOND;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
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
import org.tourage.quantity.Given;

/**
 * When a levain build or a preferment is ripe, from one that was seen: "ripe after 8 h at 24 °C".
 *
 * <p>A levain multiplies: ripe means that its yeast is as dense as in the ripe seed, so it grows by
 * 1/s where s is the share of the seed in the build, and takes ln(1/s) over its rate (derived;
 * exponential growth without a lag). A poolish, a sponge or a biga with baker's yeast is taken to
 * ripen in a time that goes with 1/yeast (common practice). The rate by temperature is that of
 * {@link RateMarks} for the yeast of a sourdough, with its bacteria beside it, or {@link
 * ColdTail#bakersYeast()}; below, the usual cold end. Immutable.
 *
 * <pre>{@code
 * Ripeness levain = Ripeness.ofLevain(percent(20), hours(8), celsius(24));
 * levain.at(celsius(20));                  // later
 * levain.with(percent(10)).at(celsius(24)) // with half the seed
 * }</pre>
 *
 * @param levain whether it multiplies
 * @param start the seed by the mass of the build, or the yeast by the flour of the preferment
 * @param seenStart the same of the one that was seen
 * @param time after which that one was ripe
 * @param temperature at which it stood
 */
public record Ripeness(
    boolean levain,
    Amount<Dimensionless> start,
    Amount<Dimensionless> seenStart,
    Amount<Time> time,
    Amount<Temperature> temperature)
    implements Explained, Serializable {
  private static final double FAR_KELVIN = 8;
  private static final double MOST_SEED = 0.95;
  private static final double MOST_YEAST = 0.2;
  private static final double LEAST = 1e-6;

  /**
   * Checks the figures.
   *
   * @param levain whether it multiplies
   * @param start the seed by the mass of the build, or the yeast by the flour of the preferment
   * @param seenStart the same of the one that was seen
   * @param time after which that one was ripe
   * @param temperature at which it stood
   */
  public Ripeness {
    requireNonNull(start, "start");
    requireNonNull(seenStart, "seenStart");
    requireNonNull(time, "time");
    requireNonNull(temperature, "temperature");
    checkStart(levain, start);
    checkStart(levain, seenStart);
    if (time.value() <= 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE, "ripening takes time", time.toString(), "give a positive time");
    }
    EquivalentTime.requireRate(yeast(levain), temperature);
  }

  private static void checkStart(boolean levain, Amount<Dimensionless> start) {
    double share = start.in(FRACTION);
    if (!(share >= LEAST) || share > (levain ? MOST_SEED : MOST_YEAST)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          levain ? "no build has so much seed" : "no preferment has so much yeast",
          start.toString(),
          levain
              ? "give the ripe levain by the mass of the whole build, above 0 % and at most 95 %"
              : "give the yeast by the flour of the preferment, above 0 % and at most 20 %");
    }
  }

  /**
   * A levain build that was seen to be ripe.
   *
   * @param seed the ripe levain in it by the mass of the whole build: 1 : 2 : 2 is 20 %
   * @param time after which it was ripe
   * @param temperature of the build, not of the room
   * @return the ripeness
   * @throws BakeryException if nothing ferments there
   */
  public static Ripeness ofLevain(
      Quantity<Dimensionless> seed, Quantity<Time> time, Quantity<Temperature> temperature) {
    Amount<Dimensionless> share = Given.ratio("the seed", requireNonNull(seed, "seed"));
    return new Ripeness(
        true,
        share,
        share,
        Given.time("the time", requireNonNull(time, "time")),
        Given.temperature("the temperature", requireNonNull(temperature, "temperature")));
  }

  /**
   * A preferment with baker's yeast that was seen to be ripe.
   *
   * @param yeast by the flour of the preferment, of any form
   * @param time after which it was ripe
   * @param temperature of the preferment, not of the room
   * @return the ripeness
   * @throws BakeryException if nothing ferments there
   */
  public static Ripeness ofPreferment(
      Quantity<Dimensionless> yeast, Quantity<Time> time, Quantity<Temperature> temperature) {
    Amount<Dimensionless> share = Given.ratio("the yeast", requireNonNull(yeast, "yeast"));
    return new Ripeness(
        false,
        share,
        share,
        Given.time("the time", requireNonNull(time, "time")),
        Given.temperature("the temperature", requireNonNull(temperature, "temperature")));
  }

  /**
   * The same build with another seed, or the same preferment with other yeast of the same form.
   *
   * @param other the seed by the mass of the build, or the yeast by the flour
   * @return the ripeness
   */
  public Ripeness with(Quantity<Dimensionless> other) {
    return new Ripeness(
        levain,
        Given.ratio("the other", requireNonNull(other, "other")),
        seenStart,
        time,
        temperature);
  }

  private static RateModel yeast(boolean levain) {
    return levain ? ColdTail.usual(RateMarks.named("sourdough yeast")) : ColdTail.bakersYeast();
  }

  /** Seconds that it would take at the temperature that was seen. */
  private double seconds() {
    double ratio =
        levain
            ? StrictMath.log(start.in(FRACTION)) / StrictMath.log(seenStart.in(FRACTION))
            : seenStart.in(FRACTION) / start.in(FRACTION);
    return time.in(SECOND) * ratio;
  }

  private double seconds(RateModel model, double celsius) {
    return seconds() * model.rate(temperature) / model.rate(celsius);
  }

  /**
   * When it is ripe at a temperature.
   *
   * @param at the temperature of the build
   * @return the time by its yeast, with the range of the models
   * @throws BakeryException if its yeast does not ferment there
   */
  public RipeTime at(Quantity<Temperature> at) {
    RateModel yeast = yeast(levain);
    Amount<Temperature> there = Given.temperature("the at", requireNonNull(at, "at"));
    EquivalentTime.requireRate(yeast, there);
    double celsius = there.in(CELSIUS);
    double mine = seconds(yeast, celsius);
    List<Double> all = new ArrayList<>(List.of(mine));
    List<RateModel> others = new ArrayList<>();
    if (levain) {
      others.add(ColdTail.usual(RateMarks.named("sourdough bacteria")));
    }
    if (celsius < ColdTail.UNKNOWN_BELOW) {
      others.add(ColdTail.slowest(yeast));
      others.add(ColdTail.quickest(yeast));
    }
    for (RateModel other : others) {
      if (other.rate(temperature) > 0 && other.rate(celsius) > 0) {
        all.add(seconds(other, celsius));
      }
    }
    return new RipeTime(
        there,
        MINUTE.amount(mine / 60),
        MINUTE.amount(all.stream().mapToDouble(d -> d).min().orElse(mine) / 60),
        MINUTE.amount(all.stream().mapToDouble(d -> d).max().orElse(mine) / 60),
        unsure(celsius));
  }

  private List<Advice> unsure(double celsius) {
    List<Advice> advice = new ArrayList<>();
    if (celsius < ColdTail.UNKNOWN_BELOW) {
      advice.add(
          ColdTail.unsure(
              "below 10 °C (50 °F) no rate of a build is published; the range is that of the models",
              "Look at it in the cold once, and go by its dome, not by the clock",
              yeast(levain).source()));
    } else if (Math.abs(celsius - temperature.in(CELSIUS)) > FAR_KELVIN) {
      advice.add(
          Advice.of(
              "RIPENESS_FAR",
              "one was seen at "
                  + AmountFormat.sideBySide().temperature(temperature)
                  + ", this is "
                  + Numbers.decimals(Math.abs(celsius - temperature.in(CELSIUS)), 0)
                  + " K away",
              "Look at one near this temperature",
              yeast(levain).source()));
    }
    return advice;
  }

  /**
   * When it is ripe over a changing temperature.
   *
   * @param history the temperature of the build
   * @return the time since mixing by its yeast; empty if it is not ripe at the end
   */
  public Optional<Amount<Time>> over(TemperatureHistory history) {
    RateModel yeast = yeast(levain);
    double wanted = seconds() * yeast.rate(temperature);
    double before = 0;
    for (Leg leg : history.legs()) {
      double length = leg.duration().in(SECOND);
      double whole = EquivalentTime.integral(yeast, leg, length);
      if (whole >= wanted) {
        return Optional.of(MINUTE.amount((before + within(yeast, leg, wanted, length)) / 60));
      }
      wanted -= whole;
      before += length;
    }
    return Optional.empty();
  }

  private static double within(RateModel yeast, Leg leg, double wanted, double length) {
    double low = 0;
    double high = length;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (EquivalentTime.integral(yeast, leg, middle) >= wanted) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return high;
  }

  @Override
  public List<Advice> advice() {
    return at(temperature).advice();
  }

  @Override
  public Working working() {
    return Working.of(
        new WorkedLine(
            "time as seen",
            levain ? "t · ln(seed) / ln(seed seen)" : "t · yeast seen / yeast",
            AmountFormat.metric().time(MINUTE.amount(seconds() / 60))
                + " at "
                + AmountFormat.sideBySide().temperature(temperature),
            levain ? "derived: exponential growth without a lag" : Advice.COMMON_PRACTICE),
        new WorkedLine(
            "rate", "time · rate is constant", yeast(levain).name(), yeast(levain).source()));
  }

  /** {@code levain of 20 % seed: ripe after 8 h at 24 °C (75 °F)}. */
  @Override
  public String toString() {
    return (levain ? "levain of " : "preferment of ")
        + AmountFormat.metric().percent(start)
        + (levain ? " seed: " : " yeast: ")
        + "ripe after "
        + AmountFormat.metric().time(MINUTE.amount(seconds() / 60))
        + " at "
        + AmountFormat.sideBySide().temperature(temperature);
  }
}
