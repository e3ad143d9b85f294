package org.tourage.doughtemperature;

import static org.tourage.quantity.BakeryUnits.KILOGRAM;

import java.util.ArrayList;
import java.util.List;
import org.tourage.advice.Advice;
import org.tourage.quantity.AmountFormat;

/** What is unwise about a plan, and what to do. */
final class WaterAdvice {
  /** More ice than this share of the water must be helped to melt in time (common practice). */
  private static final double MUCH_ICE = 0.5;

  /** So many levers are named in a remedy. */
  private static final int NAMED = 4;

  private WaterAdvice() {}

  static List<Advice> of(WaterPlan plan) {
    List<Advice> advice = new ArrayList<>(plan.heat().advice(plan.mix()));
    plan.comparison().ifPresent(c -> advice.addAll(c.advice()));
    if (plan.way() == WaterPlan.Way.LEVERS) {
      advice.add(outOfReach(plan));
    } else if (plan.way() == WaterPlan.Way.ICE) {
      plan.ice().filter(i -> much(i, plan)).ifPresent(i -> advice.add(muchIce(i, plan)));
    }
    advice.addAll(YeastWater.advice(plan));
    if (Levers.warmsPerishables(plan.mix(), plan.levers())) {
      advice.add(
          Advice.of(
              "LEVER_PERISHABLE",
              "a lever warms what spoils",
              "Warm eggs, milk and fat just before they go in and do not let them stand; local food"
                  + " rules come first"));
    }
    return advice;
  }

  private static Advice outOfReach(WaterPlan plan) {
    AmountFormat format = AmountFormat.sideBySide();
    boolean none = plan.mix().freeLiquid().value() == 0;
    boolean warm = plan.dough().compareTo(plan.target()) > 0;
    String what =
        none
            ? "nothing that goes into "
                + plan.mix().stageName()
                + " is liquid whose temperature can be chosen: the dough comes to "
            : "no "
                + plan.mix().freeLiquidName()
                + " is "
                + (warm ? "cold" : "warm")
                + " enough: at its limit the dough comes to ";
    String text =
        what
            + format.temperature(plan.dough())
            + " instead of "
            + format.temperature(plan.target());
    if (none) {
      return Advice.of("NO_FREE_LIQUID", text, remedy(plan));
    }
    return warm
        ? notColdEnough(text, remedy(plan))
        : Advice.of("WATER_NOT_WARM_ENOUGH", text, remedy(plan));
  }

  private static boolean much(IcedWater iced, WaterPlan plan) {
    return iced.ice().in(KILOGRAM) > MUCH_ICE * plan.mix().freeLiquid().in(KILOGRAM);
  }

  private static Advice muchIce(IcedWater iced, WaterPlan plan) {
    return IceRule.muchIce(
        iced.ice(),
        plan.mix().freeLiquid(),
        "It must melt within the mix: crush it; or " + remedy(plan));
  }

  static Advice notColdEnough(String text, String remedy) {
    return Advice.of("WATER_NOT_COLD_ENOUGH", text, remedy);
  }

  private static String remedy(WaterPlan plan) {
    String first =
        plan.levers().isEmpty()
            ? "Nothing here can be changed"
            : String.join(
                // the other levers come on top of the liquid at its limit
                plan.mix().freeLiquid().value() > 0 ? "; with that also " : "; or ",
                plan.levers().stream().limit(NAMED).map(Lever::toString).toList());
    return plan.best().equals(plan.target())
        ? first
        : first
            + "; all together bring it to "
            + AmountFormat.sideBySide().temperature(plan.best())
            + ", so accept that";
  }
}
