package org.tourage.fermentation;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.MINUTE;
import static org.tourage.quantity.BakeryUnits.PERCENT;
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
 * How a dough rises, from what its baker has seen: "doubled in 95 min at 23 °C". The yeast gives
 * carbon dioxide at a steady pace that follows the {@link RateModel} by temperature and the amount
 * of yeast; {@link DoughGas} says what volume that gives. Immutable.
 *
 * <pre>{@code
 * Rise rise = Rise.observed(DoughGas.of(formula, celsius(24)), yeast, 2, minutes(95), celsius(23));
 * rise.timeTo(2, celsius(27)); // sooner
 * }</pre>
 *
 * @param gas where the gas goes
 * @param model the rate by temperature
 * @param growth the growth that was seen, 2 for doubled
 * @param time after how long
 * @param temperature at which temperature of the dough
 * @param yeast how many times the yeast of that dough
 * @param seen whether it was seen; false for a first guess
 */
public record Rise(
    DoughGas gas,
    RateModel model,
    double growth,
    Amount<Time> time,
    Amount<Temperature> temperature,
    double yeast,
    boolean seen)
    implements Explained, Serializable {
  private static final double LEAST_SURE = 0.5;
  private static final double MOST_SURE = 2;

  private static final int LOOKS = 400;
  private static final int HALVINGS = 60;

  /** Percent of fresh yeast, minutes, °C at which a lean dough doubles: common practice. */
  private static final double GUESS_FRESH_PERCENT = 2;

  private static final double GUESS_MINUTES = 90;
  private static final double GUESS_CELSIUS = 26;

  /**
   * Checks the observation.
   *
   * @param gas where the gas goes
   * @param model the rate by temperature
   * @param growth the growth that was seen, 2 for doubled
   * @param time after how long
   * @param temperature at which temperature of the dough
   * @param yeast how many times the yeast of that dough
   * @param seen whether it was seen; false for a first guess
   */
  public Rise {
    requireNonNull(model, "model");
    requireNonNull(time, "time");
    requireNonNull(temperature, "temperature");
    requireNonNull(gas, "gas");
    EquivalentTime.requireRate(model, temperature);
    gas.carbonDioxide(growth, temperature);
    if (time.value() <= 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE, "a rise takes time", time.toString(), "give a positive time");
    }
    if (!(yeast > 0) || Double.isInfinite(yeast)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a dough without yeast does not rise",
          yeast + " times the yeast",
          "give a positive factor");
    }
  }

  /**
   * A rise that was seen.
   *
   * @param gas where the gas goes
   * @param model the rate by temperature
   * @param growth how many times its volume after mixing the dough had, 2 for doubled
   * @param time after how long
   * @param temperature at which temperature of the dough, not of the room
   * @return the rise
   * @throws BakeryException if nothing ferments at that temperature, or the growth is none
   */
  public static Rise observed(
      DoughGas gas,
      RateModel model,
      double growth,
      Quantity<Time> time,
      Quantity<Temperature> temperature) {
    return new Rise(
        gas,
        model,
        growth,
        Given.time("the time", requireNonNull(time, "time")),
        Given.temperature("the temperature", requireNonNull(temperature, "temperature")),
        1,
        true);
  }

  /**
   * A rise that was seen of a dough with baker's yeast, its rate by {@link ColdTail#bakersYeast()}.
   *
   * @param gas where the gas goes
   * @param growth how many times its volume after mixing the dough had, 2 for doubled
   * @param time after how long
   * @param temperature at which temperature of the dough, not of the room
   * @return the rise
   * @throws BakeryException if the growth is none
   */
  public static Rise observed(
      DoughGas gas, double growth, Quantity<Time> time, Quantity<Temperature> temperature) {
    return observed(gas, ColdTail.bakersYeast(), growth, time, temperature);
  }

  /**
   * A first guess without an observation: a lean dough with 2 % fresh yeast doubles in about 90 min
   * at 26 °C (common practice; doughs differ by half and more).
   *
   * @param gas where the gas goes
   * @param model the rate by temperature
   * @param freshYeast yeast by the flour, counted as fresh yeast ({@link
   *     org.tourage.ingredient.YeastForm})
   * @return the rise
   */
  public static Rise firstGuess(DoughGas gas, RateModel model, Quantity<Dimensionless> freshYeast) {
    return new Rise(
        gas,
        model,
        2,
        MINUTE.amount(GUESS_MINUTES),
        CELSIUS.amount(GUESS_CELSIUS),
        PERCENT.measure("the fresh yeast", requireNonNull(freshYeast, "freshYeast"))
            / GUESS_FRESH_PERCENT,
        false);
  }

  /**
   * A first guess for baker's yeast, its rate by {@link ColdTail#bakersYeast()}.
   *
   * @param gas where the gas goes
   * @param freshYeast yeast by the flour, counted as fresh yeast ({@link
   *     org.tourage.ingredient.YeastForm})
   * @return the rise
   */
  public static Rise firstGuess(DoughGas gas, Quantity<Dimensionless> freshYeast) {
    return firstGuess(gas, ColdTail.bakersYeast(), freshYeast);
  }

  /**
   * The same observation with another rate by temperature.
   *
   * @param other the rate
   * @return the rise
   * @throws BakeryException if it has no rate where the rise was seen
   */
  public Rise withModel(RateModel other) {
    return new Rise(gas, other, growth, time, temperature, yeast, seen);
  }

  /**
   * The same dough with more or less yeast. The pace of the gas follows the yeast: yeast times time
   * is constant (common practice), which holds best between half and double the amount.
   *
   * @param factor how many times the yeast
   * @return the rise
   */
  public Rise withYeast(double factor) {
    return new Rise(gas, model, growth, time, temperature, yeast * factor, seen);
  }

  /** mol of carbon dioxide for each kg of dough and second at a rate of 1. */
  double pace() {
    return yeast
        * gas.carbonDioxide(growth, temperature)
        / (model.rate(temperature) * time.in(SECOND));
  }

  /**
   * How long the dough takes at one temperature.
   *
   * @param wanted the growth wanted, 2 for doubled
   * @param at the temperature of the dough
   * @return the time in minutes
   * @throws BakeryException if nothing ferments there, or the growth is none
   */
  public Amount<Time> timeTo(double wanted, Quantity<Temperature> at) {
    EquivalentTime.requireRate(model, Given.temperature("the at", requireNonNull(at, "at")));
    return MINUTE.amount(gas.carbonDioxide(wanted, at) / (pace() * model.rate(at)) / 60);
  }

  /**
   * When a dough over a temperature history has grown to a volume for the first time.
   *
   * @param wanted the growth wanted, 2 for doubled
   * @param history the temperature of the dough
   * @return the time in minutes since the start; empty if it does not happen within the history
   */
  public Optional<Amount<Time>> timeTo(double wanted, TemperatureHistory history) {
    double pace = pace();
    double moles = 0;
    double before = 0;
    for (Leg leg : history.legs()) {
      double length = leg.duration().in(SECOND);
      double last = 0;
      for (int look = 1; look <= LOOKS; look++) {
        double now = length * look / LOOKS;
        if (growth(pace, moles, leg, now) >= wanted) {
          return Optional.of(
              MINUTE.amount((before + crossing(pace, moles, leg, wanted, last, now)) / 60));
        }
        last = now;
      }
      moles += pace * EquivalentTime.integral(model, leg, length);
      before += length;
    }
    return Optional.empty();
  }

  private double crossing(
      double pace, double moles, Leg leg, double wanted, double from, double to) {
    double low = from;
    double high = to;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (growth(pace, moles, leg, middle) >= wanted) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return high;
  }

  private double growth(double pace, double moles, Leg leg, double seconds) {
    return gas.growth(
        moles + pace * EquivalentTime.integral(model, leg, seconds),
        CELSIUS.amount(leg.celsiusAfter(seconds)));
  }

  /**
   * How far the dough has risen at the end of a temperature history.
   *
   * @param history the temperature of the dough, 0 °C to 60 °C at its end
   * @return how many times its volume after mixing it has
   */
  public double growthAfter(TemperatureHistory history) {
    Amount<Temperature> end = history.legs().get(history.legs().size() - 1).to();
    return gas.growth(pace() * EquivalentTime.integral(model, history), end);
  }

  /**
   * How much yeast brings the dough to a volume in a wanted time.
   *
   * @param wanted the growth wanted, 2 for doubled
   * @param within the wanted time
   * @param at the temperature of the dough
   * @return this rise with the yeast that it takes; {@link #yeast()} is the factor
   */
  public Rise yeastFor(double wanted, Quantity<Time> within, Quantity<Temperature> at) {
    double seconds = SECOND.measure("the within", requireNonNull(within, "within"));
    if (!(seconds > 0)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a rise takes time",
          Given.time("the within", within).toString(),
          "give a positive time");
    }
    return withYeast(timeTo(wanted, at).in(SECOND) / seconds);
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>();
    if (!seen) {
      advice.add(
          Advice.of(
              "FIRST_GUESS",
              "the rise stands on a rule of the trade, not on this dough",
              "Watch one rise, and put in when it had doubled and at which dough temperature"));
    } else if (yeast < LEAST_SURE || yeast > MOST_SURE) {
      advice.add(
          Advice.of(
              "YEAST_FAR",
              Numbers.significant(yeast, 3) + " times the yeast of the dough that was seen",
              "Between half and double the amount time follows yeast; beyond, try a small dough first"));
    }
    if (growth > gas.holds()) {
      advice.add(
          Advice.of(
              "GAS_ESCAPES",
              "a growth of " + Numbers.significant(growth, 3) + " was seen",
              "Above about "
                  + Numbers.significant(gas.holds(), 3)
                  + " times the volume gas escapes; calibrate with a smaller rise"));
    }
    if (!model.range().contains(temperature)) {
      advice.add(
          Advice.of(
              "OUTSIDE_MODEL",
              "the rise was seen at "
                  + AmountFormat.sideBySide().temperature(temperature)
                  + ", outside "
                  + AmountFormat.sideBySide().temperature(model.range().low())
                  + " to "
                  + AmountFormat.sideBySide().temperature(model.range().high()),
              "Watch one within the range",
              model.source()));
    }
    return advice;
  }

  /**
   * The advice for a growth that is wanted of this dough.
   *
   * @param wanted the growth wanted, 2 for doubled
   * @return as {@link #advice()}, and a warning where gas escapes before
   * @throws BakeryException if that is no growth
   */
  public List<Advice> advice(double wanted) {
    gas.carbonDioxide(wanted, temperature);
    List<Advice> advice = new ArrayList<>(advice());
    if (wanted > gas.holds()) {
      advice.add(
          RiseAdvice.overproofed(
              Numbers.significant(wanted, 3)
                  + " times the volume is wanted of a dough that holds about "
                  + Numbers.significant(gas.holds(), 3)));
    }
    return advice;
  }

  @Override
  public Working working() {
    double moles = gas.carbonDioxide(growth, temperature);
    return Working.of(
        new WorkedLine(
            "CO₂",
            "balance of bubbles and water",
            Numbers.significant(1000 * moles, 4) + " mmol/kg for " + growth + " times the volume",
            "solubility: Carroll, Slupsky and Mather 1991; ideal gas"),
        new WorkedLine(
            "pace",
            "yeast · CO₂ / (rate · time)",
            Numbers.significant(yeast, 4)
                + " × "
                + Numbers.significant(1000 * moles, 4)
                + " / ("
                + Numbers.significant(model.rate(temperature), 4)
                + " × "
                + Numbers.significant(time.in(MINUTE) / 60, 4)
                + " h) = "
                + Numbers.significant(3.6e6 * pace(), 4)
                + " mmol/(kg·h)",
            model.source()));
  }

  /** {@code 2 times the volume in 1 h 35 min at 23 °C (73 °F)}. */
  @Override
  public String toString() {
    return Numbers.significant(growth, 3)
        + " times the volume in "
        + AmountFormat.metric().time(MINUTE.amount(time.in(MINUTE) / yeast))
        + " at "
        + AmountFormat.sideBySide().temperature(temperature)
        + (seen && yeast != 1
            ? ", with " + Numbers.significant(yeast, 3) + " times the yeast of the dough seen"
            : "")
        + (seen ? "" : " (first guess)");
  }
}
