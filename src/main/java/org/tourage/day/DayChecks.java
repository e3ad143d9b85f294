package org.tourage.day;

import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.tourage.advice.Advice;
import org.tourage.fermentation.RiseHistory;
import org.tourage.internal.Numbers;
import org.tourage.lamination.FatCurve;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.AmountRange;

/** Holds what the baker wrote against what the history of the dough says. */
final class DayChecks {
  /** A chill that leaves the middle warmer than this has not done its work; common practice. */
  private static final double CHILLED_CELSIUS = 10;

  /** A fat that was worked bends this much below its window; common practice. */
  private static final double WORKED_KELVIN = 2.5;

  /** A growth that is this much short is still what the eye calls reached. */
  private static final double NEARLY = 0.95;

  /** A growth that is there before this share of the first look comes as a surprise. */
  private static final double SURPRISE = 0.75;

  private final List<DoughCourse.Leg> legs;
  private final RiseHistory history;
  private final List<Advice> advice = new ArrayList<>();

  private DayChecks(List<DoughCourse.Leg> legs, RiseHistory history) {
    this.legs = legs;
    this.history = history;
  }

  /** All that the history contradicts; without a curve nothing is said of the fat. */
  static List<Advice> of(
      List<DoughCourse.Leg> legs, RiseHistory history, Optional<FatCurve> curve) {
    DayChecks checks = new DayChecks(legs, history);
    for (int i = 0; i < legs.size(); i++) {
      int at = i;
      curve.ifPresent(fat -> checks.fat(at, fat));
      checks.cue(i);
      checks.chill(i, curve);
    }
    return checks.advice;
  }

  private Amount<Temperature> before(int i) {
    return i == 0 ? history.start() : history.stages().get(i - 1).end().mean();
  }

  /** The fat has the temperature of the dough about it when it is rolled. */
  private void fat(int i, FatCurve curve) {
    Action action = legs.get(i).step().action();
    // at the lock-in the fat has its own temperature, which the baker sets by shaping it
    boolean rolls = action instanceof Action.Turn || action == Action.Simple.SHEET;
    if (!rolls) {
      if (action == Action.Simple.PROOF) {
        advice.addAll(curve.proof(history.stages().get(i).end().air()));
      }
      return;
    }
    AmountRange<Temperature> window = curve.window();
    Amount<Temperature> start = before(i);
    Amount<Temperature> end = history.stages().get(i).end().mean();
    AmountFormat format = AmountFormat.sideBySide();
    String range = format.temperature(window.low()) + " to " + format.temperature(window.high());
    String name = legs.get(i).step().name();
    if (start.compareTo(window.high()) > 0 || end.compareTo(window.high()) > 0) {
      Amount<Temperature> warmest = start.compareTo(end) > 0 ? start : end;
      advice.add(
          Advice.of(
              "FAT_SOFT_AT_ROLLING",
              name
                  + ": the dough gets to "
                  + format.temperature(warmest)
                  + ", while the fat can be rolled from "
                  + range,
              "Chill it longer before, or work faster",
              curve.source()));
    } else if (end.in(CELSIUS) < window.low().in(CELSIUS) - WORKED_KELVIN) {
      advice.add(
          Advice.of(
              "FAT_FIRM_AT_ROLLING",
              name
                  + ": the dough has "
                  + format.temperature(start)
                  + " to "
                  + format.temperature(end)
                  + ", while the fat can be rolled from "
                  + range,
              "Let it stand in the room first, or the fat breaks",
              curve.source()));
    }
  }

  private void cue(int i) {
    Step step = legs.get(i).step();
    if (step.cue().growth().isEmpty()) {
      return;
    }
    double wanted = step.cue().growth().get();
    int first = i;
    while (first > 0 && !history.stages().get(first).knockedBack()) {
      first--;
    }
    double base = history.stages().get(first).looks().get(0).growth();
    Amount<Time> from = history.stages().get(i).looks().get(0).time();
    Amount<Time> reached = null;
    for (int s = first; s <= i && reached == null; s++) {
      for (RiseHistory.Look look : history.stages().get(s).looks()) {
        if (look.growth() >= wanted * base) {
          reached = look.time();
          break;
        }
      }
    }
    AmountFormat format = AmountFormat.metric();
    double end = history.stages().get(i).end().growth() / base;
    if (reached == null && end < wanted * NEARLY) {
      advice.add(
          Advice.of(
              "CUE_NOT_REACHED",
              step.name()
                  + ": after "
                  + format.time(step.time().high())
                  + " the dough has grown "
                  + Numbers.decimals(end, 2)
                  + " times since it was shaped, not "
                  + Numbers.decimals(wanted, 2)
                  + " times ("
                  + step.cue().words()
                  + ")",
              "Give it longer or keep it warmer"));
    } else if (reached != null) {
      double minutes = Math.max(0, reached.in(MINUTE) - from.in(MINUTE));
      if (minutes < SURPRISE * step.time().low().in(MINUTE)) {
        advice.add(
            Advice.of(
                "CUE_EARLY",
                step.name()
                    + ": "
                    + step.cue().words()
                    + " is there after "
                    + format.time(MINUTE.amount(Math.rint(minutes)))
                    + ", the first look is planned after "
                    + format.time(step.time().low()),
                "Look earlier, or keep it colder"));
      }
    }
  }

  /** A chill makes the dough as firm as its fat, or cold. */
  private void chill(int i, Optional<FatCurve> curve) {
    Step step = legs.get(i).step();
    boolean chills = step.action() == Action.Simple.CHILL || step.action() == Action.Simple.RETARD;
    Amount<Temperature> core = history.stages().get(i).end().core();
    double wanted = curve.map(c -> c.window().high().in(CELSIUS)).orElse(CHILLED_CELSIUS);
    if (chills && core.in(CELSIUS) > wanted) {
      advice.add(
          Advice.of(
              "CHILL_SHORT",
              step.name()
                  + ": its middle has still "
                  + AmountFormat.sideBySide().temperature(core)
                  + " at the end",
              "Flatten it thinner, or chill it longer"));
    }
  }
}
