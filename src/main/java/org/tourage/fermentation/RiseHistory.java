package org.tourage.fermentation;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.MINUTE;
import static org.tourage.quantity.BakeryUnits.SECOND;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.internal.Numbers;
import org.tourage.internal.TextTable;
import org.tourage.physics.SolidConduction;
import org.tourage.physics.SolidConduction.State;
import org.tourage.physics.TemperatureHistory;
import org.tourage.physics.TemperatureHistory.Leg;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;

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
 * @param stages the stages so far
 */
public record RiseHistory(Rise rise, Amount<Temperature> start, List<Stage> stages)
    implements Explained, Serializable {
  /**
   * Heat of fermentation for each mole of carbon dioxide, J/mol: glucose in water to ethanol in
   * water and gas, 2·(−288.30) + 2·(−393.50) + 1262.19 = −101.4 kJ for two moles, from the
   * enthalpies of formation in R.A. Alberty, Thermodynamics of Biochemical Reactions, 2003 (from
   * memory).
   */
  public static final double HEAT_OF_FERMENTATION = 50_700;

  private static final int LOOKS = 24;
  private static final double WARMEST_CELSIUS = 60;
  private static final double LONG_STAGE_MINUTES = 120;

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
   */
  public record Stage(
      String name,
      DoughBody body,
      TemperatureHistory air,
      boolean knockedBack,
      List<Look> looks,
      Amount<Time> equivalent,
      State last,
      List<Double> lost)
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
     */
    public Stage {
      requireNonNull(name, "name");
      looks = List.copyOf(looks);
      lost = List.copyOf(lost);
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
   * @param stages the stages so far
   */
  public RiseHistory {
    requireNonNull(rise, "rise");
    requireNonNull(start, "start");
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
    return new RiseHistory(rise, Amount.from(temperature), List.of());
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
    return then(name, body, TemperatureHistory.hold(air, time));
  }

  /**
   * This history and a stage in air of changing temperature.
   *
   * @param name what it is, for example {@code programmed retarder}
   * @param body the dough as it stands
   * @param air the temperature of the air, at most 60 °C
   * @return the longer history
   */
  public RiseHistory then(String name, DoughBody body, TemperatureHistory air) {
    for (Leg leg : air.legs()) {
      Amount<Temperature> warmest = leg.from().compareTo(leg.to()) > 0 ? leg.from() : leg.to();
      if (warmest.in(CELSIUS) > WARMEST_CELSIUS) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "nothing rises in this air",
            name + " at " + AmountFormat.sideBySide().temperature(warmest),
            "give at most 60 °C (140 °F); what is baked is no part of the rise");
      }
    }
    Stage before = stages.isEmpty() ? null : stages.get(stages.size() - 1);
    boolean same = before != null && before.body.solid().equals(body.solid());
    double pace = rise.pace();
    SolidConduction conduction = body.conduction();
    double kelvin = pace * HEAT_OF_FERMENTATION / body.specificHeat();
    double seconds = air.duration().in(SECOND);
    List<Amount<Time>> times = new ArrayList<>();
    for (int i = 0; i <= LOOKS; i++) {
      times.add(SECOND.amount(seconds * i / LOOKS));
    }
    List<State> states =
        before != null && same
            ? conduction.run(before.last, air, rise.model(), kelvin, times)
            : conduction.run(
                before == null ? start : CELSIUS.amount(before.last.mean()),
                air,
                rise.model(),
                kelvin,
                times);
    List<Double> lost = lost(before, same, pace, states.get(0));
    double began = before == null ? 0 : before.end().time().in(SECOND);
    List<Look> looks = new ArrayList<>();
    for (int i = 0; i < states.size(); i++) {
      looks.add(look(states.get(i), pace, lost, began, air.at(times.get(i))));
    }
    State last = states.get(states.size() - 1);
    double progress = last.meanProgress() - states.get(0).meanProgress();
    List<Stage> more = new ArrayList<>(stages);
    more.add(
        new Stage(
            name,
            body,
            air,
            before != null && !same,
            looks,
            MINUTE.amount(progress / rise.model().rate(rise.temperature()) / 60),
            last,
            lost));
    return new RiseHistory(rise, start, more);
  }

  /** What is to be taken off the gas that the progress of the state gives, at each point. */
  private List<Double> lost(@Nullable Stage before, boolean same, double pace, State first) {
    if (before != null && same) {
      return before.lost;
    }
    // another shape starts with no progress of its own, and with what was left in the dough
    double kept =
        before == null ? 0 : rise.gas().keptAt(before.end().carbonDioxide(), before.last.mean());
    List<Double> lost = new ArrayList<>();
    for (double progress : first.progress()) {
      lost.add(pace * progress - kept);
    }
    return lost;
  }

  private Look look(
      State state, double pace, List<Double> lost, double began, Amount<Temperature> air) {
    double growth = 0;
    double moles = 0;
    double airMoles = rise.gas().airMoles();
    for (int i = 0; i < lost.size(); i++) {
      double weight = state.weights().get(i);
      if (weight > 0) {
        double here = pace * state.progress().get(i) - lost.get(i);
        growth += weight * rise.gas().growthAt(here, state.temperatures().get(i), airMoles);
        moles += weight * here;
      }
    }
    return new Look(
        MINUTE.amount((began + state.seconds()) / 60),
        air,
        CELSIUS.amount(state.core()),
        CELSIUS.amount(state.surface()),
        CELSIUS.amount(state.mean()),
        growth,
        moles);
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
   * How long the middle of the dough was warmer than a temperature.
   *
   * @param limit the temperature
   * @return the time, between looks on straight lines
   */
  public Amount<Time> above(Quantity<Temperature> limit) {
    double celsius = CELSIUS.measure(limit);
    double minutes = 0;
    for (Stage stage : stages) {
      for (int i = 1; i < stage.looks.size(); i++) {
        double from = stage.looks.get(i - 1).core.in(CELSIUS) - celsius;
        double to = stage.looks.get(i).core.in(CELSIUS) - celsius;
        double length = stage.looks.get(i).time.in(MINUTE) - stage.looks.get(i - 1).time.in(MINUTE);
        double high = Math.max(from, to);
        double low = Math.min(from, to);
        minutes += low >= 0 ? length : high <= 0 ? 0 : length * high / (high - low);
      }
    }
    return MINUTE.amount(minutes);
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>(rise.advice());
    double cold = 0;
    double all = 0;
    double trusted = rise.model().range().low().in(CELSIUS);
    for (Stage stage : stages) {
      double part = stage.equivalent.in(MINUTE);
      all += part;
      cold += stage.end().mean().in(CELSIUS) < trusted + 3 ? part : 0;
      if (stage.end().growth() > Rise.GAS_ESCAPES) {
        advice.add(
            Advice.warning(
                "OVERPROOFED",
                stage.name
                    + " ends at "
                    + Numbers.significant(stage.end().growth(), 3)
                    + " times the volume",
                "Gas escapes above about three times; end it earlier or keep it colder",
                Advice.COMMON_PRACTICE));
      }
      if (stage.end().surface().in(CELSIUS) < 0) {
        advice.add(
            Advice.warning(
                "FREEZING",
                stage.name
                    + " ends with the surface at "
                    + AmountFormat.sideBySide().temperature(stage.end().surface()),
                "Freezing is not in this model: it holds the temperature and harms the yeast",
                Advice.COMMON_PRACTICE));
      }
    }
    if (cold > EquivalentTime.NOTABLE_SHARE * all) {
      advice.add(
          Advice.note(
              "COLD_UNSURE",
              Numbers.decimals(100 * cold / all, 0)
                  + " % of the fermentation happens in stages that end close to the cold end of the"
                  + " model",
              "Mark the height of the dough when it goes in and in the morning, and calibrate",
              rise.model().source()));
    }
    return advice;
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
    TextTable table = new TextTable(1);
    table.row("stage", "after", "air", "surface", "core", "volume");
    for (Stage stage : stages) {
      double minutes = stage.end().time().in(MINUTE) - stage.looks.get(0).time.in(MINUTE);
      int parts = minutes > LONG_STAGE_MINUTES ? 4 : 1;
      for (int i = 1; i <= parts; i++) {
        Look look = stage.looks.get(LOOKS * i / parts);
        table.row(
            i == 1 ? stage.name : "",
            AmountFormat.metric().time(look.time),
            format.temperature(look.air),
            format.temperature(look.surface),
            format.temperature(look.core),
            "× " + Numbers.fixed(look.growth, 2));
      }
    }
    return table.toString();
  }

  /** The table in metric and US customary units. */
  @Override
  public String toString() {
    return table(AmountFormat.sideBySide());
  }
}
