package org.tourage.doughtemperature;

import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.JOULE;
import static org.tourage.quantity.BakeryUnits.KILOJOULE;

import java.util.ArrayList;
import java.util.List;
import javax.measure.quantity.Temperature;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;

/** Writes a heat balance on the board. */
final class BalanceWorking {
  private BalanceWorking() {}

  static Working of(HeatBalance balance) {
    List<WorkedLine> lines = new ArrayList<>();
    double goal = balance.target().in(CELSIUS);
    for (MixPart part : balance.parts()) {
      lines.add(
          new WorkedLine(
              "Q(" + part.name() + ")",
              "m·c·(T − T_target)",
              AmountFormat.metric().mass(part.mass())
                  + " × "
                  + Numbers.decimals(part.specificHeat(), 0)
                  + " J/(kg·K) × "
                  + Numbers.decimals(part.temperature().in(CELSIUS) - goal, 1)
                  + " K = "
                  + kilojoules(part.capacity() * (part.temperature().in(CELSIUS) - goal)),
              "specific heat: Choi and Okos 1986, or as given"));
    }
    lines.add(
        new WorkedLine(
            "extra",
            "mixing + hydration − loss − thawing",
            kilojoules(balance.mixing().in(JOULE))
                + " + "
                + kilojoules(balance.hydration().in(JOULE))
                + " − "
                + kilojoules(balance.loss().in(JOULE))
                + " − "
                + kilojoules(balance.mixture().melting()),
            "energy balance"));
    lines.add(
        new WorkedLine(
            "T_water",
            "T_target − (Σ Q + extra)/(m·c of the liquid)",
            balance.outOfReach()
                ? "colder than any liquid"
                : AmountFormat.sideBySide().temperature(balance.waterTemperature()),
            "energy balance"));
    return new Working(lines);
  }

  /** What is said where all the liquid as ice is not cold enough. */
  static BakeryException tooWarm(HeatBalance balance, Amount<Temperature> reached) {
    double tooMuch = reached.in(CELSIUS) - balance.target().in(CELSIUS);
    double capacity = balance.mixture().capacity();
    double others = balance.mixture().partsCapacity();
    AmountFormat format = AmountFormat.sideBySide();
    return new BakeryException(
        Reason.OUT_OF_RANGE,
        "even with all the liquid as ice the dough comes out too warm",
        format.temperature(reached) + " instead of " + format.temperature(balance.target()),
        (others > 0
                ? "chill the other parts by "
                    + Numbers.decimals(tooMuch * capacity / others, 1)
                    + " K, or "
                : "")
            + "mix so that "
            + Numbers.decimals(tooMuch * capacity / 1000, 0)
            + " kJ less go in");
  }

  private static String kilojoules(double joules) {
    return Numbers.decimals(JOULE.amount(joules).in(KILOJOULE), 2) + " kJ";
  }
}
