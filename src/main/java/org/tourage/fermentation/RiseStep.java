package org.tourage.fermentation;

import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.DAY;
import static org.tourage.quantity.BakeryUnits.MINUTE;
import static org.tourage.quantity.BakeryUnits.SECOND;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.fermentation.RiseHistory.Look;
import org.tourage.fermentation.RiseHistory.Stage;
import org.tourage.physics.SolidConduction;
import org.tourage.physics.SolidConduction.LocalProcess;
import org.tourage.physics.SolidConduction.State;
import org.tourage.physics.TemperatureHistory;
import org.tourage.physics.TemperatureHistory.Leg;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;

/** Works one stage of a {@link RiseHistory} from the ones before it. */
final class RiseStep {
  private static final int LOOKS = 24;
  private static final double WARMEST_CELSIUS = 60;

  /** Air of 60 °C and the heat of a fermentation that knows its optimum stay below this. */
  private static final double RUN_AWAY_CELSIUS = 70;

  private static final double MOST_DAYS = 31;

  /** Rates below 10 °C are looked up in a table from here on, by so many for a kelvin. */
  private static final double TABLE_FROM = -10;

  private static final int TABLE_BY_KELVIN = 10;

  private final RiseHistory history;
  private final Rise rise;
  private final double pace;

  RiseStep(RiseHistory history) {
    this.history = history;
    this.rise = history.rise();
    this.pace = rise.pace();
  }

  Stage then(String name, DoughBody body, TemperatureHistory air, boolean handled, double bubblesKept) {
    check(name, air);
    List<Stage> stages = history.stages();
    Stage before = stages.isEmpty() ? null : stages.get(stages.size() - 1);
    boolean same =
        before != null && !handled && before.body().solid().equals(body.solid());
    SolidConduction conduction = body.conduction();
    double kelvin = pace * RiseHistory.HEAT_OF_FERMENTATION / body.specificHeat();
    double seconds = air.duration().in(SECOND);
    List<Amount<Time>> times = new ArrayList<>();
    for (int i = 0; i <= LOOKS; i++) {
      times.add(SECOND.amount(seconds * i / LOOKS));
    }
    List<State> states =
        before != null && same
            ? conduction.run(before.last(), air, rise.model(), kelvin, times)
            : conduction.run(
                before == null ? history.start() : CELSIUS.amount(before.last().mean()),
                air,
                rise.model(),
                kelvin,
                times);
    refuseRunningAway(name, states);
    double kept = kept(before, bubblesKept);
    List<Double> lost = before != null && same ? before.lost() : lost(kept, states.get(0));
    double began = before == null ? 0 : before.end().time().in(SECOND);
    List<Look> looks = new ArrayList<>();
    for (int i = 0; i < states.size(); i++) {
      looks.add(look(states.get(i), lost, began, air.at(times.get(i))));
    }
    State last = states.get(states.size() - 1);
    double progress = last.meanProgress() - states.get(0).meanProgress();
    List<Double> moles = coldMoles(before, same, bubblesKept, states, looks);
    Look end = looks.get(looks.size() - 1);
    return new Stage(
        name,
        body,
        air,
        before != null && !same,
        looks,
        MINUTE.amount(progress / rise.model().rate(rise.temperature()) / 60),
        last,
        lost,
        moles,
        ColdRange.of(rise.gas(), last.mean(), end.growth(), moles, seen()),
        bubblesKept);
  }

  private void check(String name, TemperatureHistory air) {
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
    if (air.duration().in(DAY) > MOST_DAYS) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no dough stands for so long",
          name + " for " + air.duration().to(DAY),
          "give at most 31 days");
    }
  }

  /** A simple factor has no optimum: the warmer, the quicker, until the heat runs away. */
  private void refuseRunningAway(String name, List<State> states) {
    for (State state : states) {
      for (double celsius : state.temperatures()) {
        if (celsius > RUN_AWAY_CELSIUS) {
          throw new BakeryException(
              Reason.OUT_OF_RANGE,
              "the heat of fermentation runs away in this dough",
              name
                  + " after "
                  + AmountFormat.metric().time(SECOND.amount(state.seconds()))
                  + " (rate: "
                  + rise.model().name()
                  + ")",
              "take a rate that knows an optimum, less yeast, a smaller dough or a shorter time");
        }
      }
    }
  }

  /** What is left of the gas where the dough is shaped anew, or what it started with. */
  private double kept(@Nullable Stage before, double bubblesKept) {
    return before == null
        ? history.carbonDioxide()
        : kept(before.end().carbonDioxide(), before.last().mean(), bubblesKept);
  }

  /** What is dissolved stays; of what is in bubbles the share that a gentle hand leaves. */
  private double kept(double moles, double celsius, double bubblesKept) {
    double dissolved = rise.gas().keptAt(moles, celsius);
    return dissolved + bubblesKept * Math.max(0, moles - dissolved);
  }

  /** What is to be taken off the gas that the progress of the state gives, at each point. */
  private List<Double> lost(double kept, State first) {
    // another shape starts with no progress of its own, and with what was left in the dough
    List<Double> lost = new ArrayList<>();
    for (double progress : first.progress()) {
      lost.add(pace * progress - kept);
    }
    return lost;
  }

  private Look look(State state, List<Double> lost, double began, Amount<Temperature> air) {
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

  private boolean seen() {
    return rise.model() instanceof ColdTail tail && tail.seen();
  }

  /** All carbon dioxide at the end by the model taken, by growth alone, slow tail, quick tail. */
  private List<Double> coldMoles(
      @Nullable Stage before,
      boolean same,
      double bubblesKept,
      List<State> states,
      List<Look> looks) {
    double end = looks.get(looks.size() - 1).carbonDioxide();
    if (seen()) {
      return List.of(end, end, end, end);
    }
    double made = end - looks.get(0).carbonDioxide();
    Rates own = new Rates(rise.model());
    boolean warm =
        states.stream()
            .allMatch(s -> s.temperatures().stream().allMatch(t -> t >= ColdTail.UNKNOWN_BELOW));
    List<RateModel> others =
        List.of(
            ColdTail.withoutTail(rise.model()),
            ColdTail.slowest(rise.model()),
            ColdTail.quickest(rise.model()));
    List<Double> moles = new ArrayList<>();
    moles.add(end);
    for (int k = 0; k < others.size(); k++) {
      double first =
          before == null
              ? history.carbonDioxide()
              : same
                  ? before.coldMoles().get(k + 1)
                  : kept(before.coldMoles().get(k + 1), before.last().mean(), bubblesKept);
      RateModel other = others.get(k);
      double atSeen = other.rate(rise.temperature());
      double scale = atSeen > 0 ? rise.model().rate(rise.temperature()) / atSeen : 1;
      moles.add(first + (warm ? made * scale : made(states, own, new Rates(other), scale)));
    }
    return moles;
  }

  /** Gas by another rate over the same temperatures, by the ratio of the rates between looks. */
  private double made(List<State> states, Rates own, Rates other, double scale) {
    double made = 0;
    for (int look = 1; look < states.size(); look++) {
      State from = states.get(look - 1);
      State to = states.get(look);
      double time = to.seconds() - from.seconds();
      for (int i = 0; i < from.weights().size(); i++) {
        double weight = to.weights().get(i);
        if (weight == 0) {
          continue;
        }
        double by = to.progress().get(i) - from.progress().get(i);
        double one = from.temperatures().get(i);
        double two = to.temperatures().get(i);
        if (Math.min(one, two) < ColdTail.UNKNOWN_BELOW) {
          double mine = own.at(one) + own.at(two);
          double others = other.at(one) + other.at(two);
          by = mine > 0 ? by * others / mine : time * others / 2;
        }
        made += weight * by;
      }
    }
    return pace * scale * made;
  }

  /** A rate that is looked up where it is cold, since a power for each point takes its time. */
  private static final class Rates {
    private final LocalProcess rate;
    private final double[] table;

    Rates(RateModel model) {
      rate = model.prepared();
      table = new double[(int) ((ColdTail.UNKNOWN_BELOW - TABLE_FROM) * TABLE_BY_KELVIN) + 1];
      Arrays.fill(table, Double.NaN);
    }

    double at(double celsius) {
      if (celsius >= ColdTail.UNKNOWN_BELOW) {
        return rate.rate(celsius);
      }
      double place = Math.max(0, (celsius - TABLE_FROM) * TABLE_BY_KELVIN);
      int i = Math.min((int) place, table.length - 2);
      return entry(i) + (place - i) * (entry(i + 1) - entry(i));
    }

    private double entry(int i) {
      if (Double.isNaN(table[i])) {
        table[i] = rate.rate(TABLE_FROM + (double) i / TABLE_BY_KELVIN);
      }
      return table[i];
    }
  }
}
