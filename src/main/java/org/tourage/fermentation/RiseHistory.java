package org.tourage.fermentation;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.MINUTE;

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
import org.tourage.physics.SolidConduction.State;
import org.tourage.physics.TemperatureHistory;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Given;

/**
 * The temperature and the rise of a dough over the stages of its day: how its middle lags behind
 * the air, and how far it has risen in truth. Heat and fermentation are coupled: each point of the
 * dough ferments at its own temperature and is warmed by the heat of fermentation. Immutable; each
 * stage returns a longer history.
 *
 * <pre>{@code
 * RiseHistory.start(rise, celsius(25))
 *     .then("retard", body, celsius(4), hours(14))
 *     .then("proof", body.shaped(Solid.roll(millimetres(45))), celsius(26), hours(2));
 * }</pre>
 *
 * <p>Where the next stage has another shape, the dough was rolled or shaped: its temperature
 * becomes uniform and its bubbles go down to the air that was mixed in ({@link
 * DoughGas#afterKnockingBack}). With the same shape it goes on as it is.
 *
 * @param rise how the dough rises
 * @param start its temperature at the start
 * @param carbonDioxide what was in it at the start, dissolved or not, mol/kg; 0 after mixing
 * @param stages the stages so far
 */
public record RiseHistory(
    Rise rise, Amount<Temperature> start, double carbonDioxide, List<Stage> stages)
    implements Explained, Serializable {
  /**
   * Heat of fermentation for each mole of carbon dioxide, J/mol: glucose in water to ethanol in
   * water and gas, 2·(−288.30) + 2·(−393.50) + 1262.19 = −101.4 kJ for two moles, from the
   * enthalpies of formation in R.A. Alberty, Thermodynamics of Biochemical Reactions, 2003 (from
   * memory).
   */
  public static final double HEAT_OF_FERMENTATION = 50_700;

  /**
   * What a look at the dough shows.
   *
   * @param time since the start of the history
   * @param air the temperature of the air
   * @param core the temperature in the middle
   * @param surface the temperature in the middle of the nearest face
   * @param mean the mean temperature
   * @param growth how many times its volume after mixing it has
   * @param carbonDioxide all of it in the dough, mol/kg
   */
  public record Look(
      Amount<Time> time,
      Amount<Temperature> air,
      Amount<Temperature> core,
      Amount<Temperature> surface,
      Amount<Temperature> mean,
      double growth,
      double carbonDioxide)
      implements Serializable {}

  /**
   * A stage.
   *
   * @param name what it is
   * @param body the dough as it stands
   * @param air the temperature of the air
   * @param knockedBack whether it was rolled or shaped before
   * @param looks looks at the dough, from the start of the stage to its end
   * @param equivalent how long it would have taken at the temperature of the observation, same
   *     yeast
   * @param last the state at the end
   * @param lost the carbon dioxide that was pressed out so far at each point, mol/kg
   * @param coldMoles all carbon dioxide at the end, mol/kg, by the model taken, by growth alone, by
   *     the slow and by the quick cold end
   * @param cold the volume at the end by each of them
   * @param bubblesKept the share of the gas in bubbles that stayed in when it was shaped before
   */
  public record Stage(
      String name,
      DoughBody body,
      TemperatureHistory air,
      boolean knockedBack,
      List<Look> looks,
      Amount<Time> equivalent,
      State last,
      List<Double> lost,
      List<Double> coldMoles,
      ColdRange cold,
      double bubblesKept)
      implements Serializable {
    /**
     * Copies the lists.
     *
     * @param name what it is
     * @param body the dough as it stands
     * @param air the temperature of the air
     * @param knockedBack whether it was rolled or shaped before
     * @param looks looks at the dough, from the start of the stage to its end
     * @param equivalent how long it would have taken at the temperature of the observation, same
     *     yeast
     * @param last the state at the end
     * @param lost the carbon dioxide that was pressed out so far at each point, mol/kg
     * @param coldMoles all carbon dioxide at the end, mol/kg, by the model taken, by growth alone,
     *     by the slow and by the quick cold end
     * @param cold the volume at the end by each of them
     * @param bubblesKept the share of the gas in bubbles that stayed in when it was shaped before
     */
    public Stage {
      requireNonNull(body, "body");
      requireNonNull(air, "air");
      requireNonNull(looks, "looks");
      requireNonNull(equivalent, "equivalent");
      requireNonNull(last, "last");
      requireNonNull(lost, "lost");
      requireNonNull(coldMoles, "coldMoles");
      requireNonNull(cold, "cold");
      requireNonNull(name, "name");
      looks = List.copyOf(looks);
      lost = List.copyOf(lost);
      coldMoles = List.copyOf(coldMoles);
      if (looks.size() < 2 || lost.size() != last.progress().size() || coldMoles.size() != 4) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            "these are no looks at a stage",
            looks.size() + " looks, " + lost.size() + " points, " + coldMoles.size() + " sums",
            "let RiseHistory.then work it");
      }
    }

    /**
     * The last look.
     *
     * @return the look at the end of the stage
     */
    public Look end() {
      return looks.get(looks.size() - 1);
    }
  }

  /**
   * Copies the list.
   *
   * @param rise how the dough rises
   * @param start its temperature at the start
   * @param carbonDioxide what was in it at the start, dissolved or not, mol/kg; 0 after mixing
   * @param stages the stages so far
   */
  public RiseHistory {
    requireNonNull(start, "start");
    requireNonNull(stages, "stages");
    requireNonNull(rise, "rise");
    rise.gas().growth(carbonDioxide, start); // refuses what no dough has
    stages = List.copyOf(stages);
  }

  /**
   * A history that starts with a mixed dough.
   *
   * @param rise how the dough rises
   * @param temperature its temperature after mixing
   * @return the history, without a stage yet
   */
  public static RiseHistory start(Rise rise, Quantity<Temperature> temperature) {
    return new RiseHistory(
        rise,
        Given.temperature("the temperature", requireNonNull(temperature, "temperature")),
        0,
        List.of());
  }

  /**
   * A history that starts with a dough that has risen already, for example when it goes into the
   * refrigerator.
   *
   * @param rise how the dough rises
   * @param temperature its temperature, the same all through
   * @param growth how many times its volume after mixing it has
   * @return the history, without a stage yet
   * @throws BakeryException if the growth is none
   */
  public static RiseHistory startGrown(
      Rise rise, Quantity<Temperature> temperature, double growth) {
    double moles = rise.gas().carbonDioxide(growth, temperature);
    return new RiseHistory(
        rise,
        Given.temperature("the temperature", requireNonNull(temperature, "temperature")),
        moles,
        List.of());
  }

  /**
   * This history and a stage in air of one temperature.
   *
   * @param name what it is, for example {@code retard}
   * @param body the dough as it stands
   * @param air the temperature of the air, at most 60 °C
   * @param time how long
   * @return the longer history
   */
  public RiseHistory then(
      String name, DoughBody body, Quantity<Temperature> air, Quantity<Time> time) {
    return then(name, body, TemperatureHistory.ofHold(air, time));
  }

  /**
   * This history and a stage of the dough as it stood in the stage before.
   *
   * @param name what it is, for example {@code rest}
   * @param air the temperature of the air, at most 60 °C
   * @param time how long
   * @return the longer history
   * @throws BakeryException if there is no stage yet
   */
  public RiseHistory then(String name, Quantity<Temperature> air, Quantity<Time> time) {
    return then(name, last().body, air, time);
  }

  /**
   * This history and a stage in air of changing temperature.
   *
   * @param name what it is, for example {@code programmed retarder}
   * @param body the dough as it stands
   * @param air the temperature of the air, at most 60 °C, and at most 31 days of it
   * @return the longer history
   * @throws BakeryException if the air is hotter, or if the heat of fermentation runs away under a
   *     rate without an optimum; a history never ends early in silence
   */
  public RiseHistory then(String name, DoughBody body, TemperatureHistory air) {
    return with(name, body, air, false, 0);
  }

  /**
   * This history and a stage before which the dough was handled: rolled, divided, cut or shaped,
   * even to the form that it had. A light hand leaves a share of the gas in its bubbles.
   *
   * @param name what it is, for example {@code proof on flour}
   * @param body the dough as it stands
   * @param air the temperature of the air, at most 60 °C, and at most 31 days of it
   * @param bubblesKept the share of the gas in bubbles that stays in, 0 % to 100 %
   * @return the longer history
   * @throws BakeryException if the share is none, or as for {@link #then(String, DoughBody,
   *     TemperatureHistory)}
   */
  public RiseHistory then(
      String name, DoughBody body, TemperatureHistory air, Quantity<Dimensionless> bubblesKept) {
    double share = FRACTION.measure("the bubbles kept", requireNonNull(bubblesKept, "bubblesKept"));
    if (!(share >= 0 && share <= 1)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no dough keeps such a share of its gas",
          Given.ratio("the bubbles kept", bubblesKept).toString(),
          "give 0 % to 100 %");
    }
    return with(name, body, air, true, share);
  }

  private RiseHistory with(
      String name, DoughBody body, TemperatureHistory air, boolean handled, double bubblesKept) {
    List<Stage> more = new ArrayList<>(stages);
    more.add(
        new RiseStep(this).then(requireNonNull(name, "name"), body, air, handled, bubblesKept));
    return new RiseHistory(rise, start, carbonDioxide, more);
  }

  /**
   * The same stages with another rise: other yeast, another rate, another observation.
   *
   * @param other how the dough rises
   * @return the history, worked anew
   */
  public RiseHistory with(Rise other) {
    RiseHistory again = new RiseHistory(other, start, carbonDioxide, List.of());
    for (Stage stage : stages) {
      again = again.with(stage.name, stage.body, stage.air, stage.knockedBack, stage.bubblesKept);
    }
    return again;
  }

  private Stage last() {
    if (stages.isEmpty()) {
      throw new BakeryException(
          Reason.MISSING, "the history has no stage yet", "none", "add one with then(…)");
    }
    return stages.get(stages.size() - 1);
  }

  /**
   * The look at the end.
   *
   * @return the last look of the last stage
   * @throws BakeryException if there is no stage yet
   */
  public Look end() {
    return last().end();
  }

  /**
   * The gas at the end, dissolved and in bubbles, and how fast the yeast adds to it: what an oven
   * or another model of the rise starts from.
   *
   * @return the gas
   * @throws BakeryException if there is no stage yet
   */
  public GasState gas() {
    return GasState.of(rise, end());
  }

  /**
   * What the cold end of the rate leaves open at the end.
   *
   * @return the volumes by the models
   * @throws BakeryException if there is no stage yet
   */
  public ColdRange coldRange() {
    return last().cold;
  }

  /**
   * The stages in the last shape, since the dough was last rolled or shaped.
   *
   * @return the stages; empty if there is none yet
   */
  public List<Stage> lastShape() {
    int from = Math.max(0, stages.size() - 1);
    while (from > 0 && !stages.get(from).knockedBack) {
      from--;
    }
    return stages.subList(from, stages.size());
  }

  /**
   * When the dough first had a volume in its last shape.
   *
   * @param growth how many times its volume after mixing
   * @return the time since the start of the history, between two looks on a straight line; empty if
   *     it did not get there in the last shape
   */
  public Optional<Amount<Time>> reached(double growth) {
    Look before = null;
    for (Stage stage : lastShape()) {
      for (Look look : stage.looks) {
        if (look.growth >= growth) {
          if (before == null || look.growth == before.growth) {
            return Optional.of(look.time);
          }
          double part = (growth - before.growth) / (look.growth - before.growth);
          double minutes = before.time.in(MINUTE);
          return Optional.of(MINUTE.amount(minutes + part * (look.time.in(MINUTE) - minutes)));
        }
        before = look;
      }
    }
    return Optional.empty();
  }

  /**
   * How long the dough was warmer than a temperature in its middle or at its face, over all stages
   * from the start of the history on: whichever is the warmer counts, as a caution wants it.
   *
   * @param limit the temperature
   * @return the time, between looks on straight lines
   */
  public Amount<Time> above(Quantity<Temperature> limit) {
    double celsius = CELSIUS.measure("the limit", requireNonNull(limit, "limit"));
    double minutes = 0;
    for (Stage stage : stages) {
      for (int i = 1; i < stage.looks.size(); i++) {
        double from = warmer(stage.looks.get(i - 1)) - celsius;
        double to = warmer(stage.looks.get(i)) - celsius;
        double length = stage.looks.get(i).time.in(MINUTE) - stage.looks.get(i - 1).time.in(MINUTE);
        double high = Math.max(from, to);
        double low = Math.min(from, to);
        minutes += low >= 0 ? length : high <= 0 ? 0 : length * high / (high - low);
      }
    }
    return MINUTE.amount(minutes);
  }

  /** Middle or face, °C. */
  private static double warmer(Look look) {
    return Math.max(look.core.in(CELSIUS), look.surface.in(CELSIUS));
  }

  /**
   * The warmest that the dough was, in its middle or at its face, from the start on.
   *
   * @return the temperature
   */
  public Amount<Temperature> warmest() {
    double warmest = start.in(CELSIUS);
    for (Stage stage : stages) {
      for (Look look : stage.looks) {
        warmest = Math.max(warmest, warmer(look));
      }
    }
    return CELSIUS.amount(warmest);
  }

  @Override
  public List<Advice> advice() {
    return RiseAdvice.of(this);
  }

  @Override
  public Working working() {
    List<WorkedLine> lines = new ArrayList<>(rise.working().lines());
    for (Stage stage : stages) {
      lines.add(
          new WorkedLine(
              stage.name,
              "heat and fermentation, point by point",
              stage.body
                  + " in air of "
                  + stage.air
                  + ": as "
                  + AmountFormat.metric().time(stage.equivalent)
                  + " at "
                  + AmountFormat.sideBySide().temperature(rise.temperature()),
              rise.model().source()));
    }
    return new Working(lines);
  }

  /**
   * The history as a table: the end of each stage, and looks within the long ones.
   *
   * @param format how temperatures are written
   * @return the table
   */
  public String table(AmountFormat format) {
    return RiseAdvice.table(this, format);
  }

  /** The table in metric and US customary units. */
  @Override
  public String toString() {
    return table(AmountFormat.sideBySide());
  }
}
