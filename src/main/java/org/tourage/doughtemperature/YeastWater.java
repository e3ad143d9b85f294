package org.tourage.doughtemperature;

import static org.tourage.quantity.BakeryUnits.CELSIUS;

import java.util.ArrayList;
import java.util.List;
import javax.measure.quantity.Temperature;
import org.tourage.advice.Advice;
import org.tourage.formula.StageKind;
import org.tourage.ingredient.YeastForm;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.AmountRange;

/** What is unwise about a water temperature, however it was found. */
final class YeastWater {
  private static final double YEAST_DAMAGE_CELSIUS = 50;

  /** Colder liquid slows instant yeast that meets it before it is wet (common practice). */
  private static final double ICED_CELSIUS = 15;

  private YeastWater() {}

  static List<Advice> advice(Amount<Temperature> water) {
    double celsius = water.in(CELSIUS);
    String reading = AmountFormat.sideBySide().temperature(water);
    if (celsius > YEAST_DAMAGE_CELSIUS) {
      return List.of(
          Advice.of(
              "WATER_KILLS_YEAST",
              "water of " + reading + " damages any yeast that it meets",
              "Warm the flour or the room instead, or accept a cooler dough and a longer rise"));
    } else if (water.compareTo(YeastForm.FRESH.water().high()) > 0) {
      return List.of(
          tooWarm(
              "water of " + reading + " is too warm for fresh yeast",
              "Mix the yeast into the flour, not into the water; fresh yeast bears up to 38 °C (100 °F)"));
    } else if (celsius < 0) {
      return List.of(
          Advice.of(
              "WATER_BELOW_FREEZING",
              "the dough needs water of " + reading,
              "Use ice for part of the water; see ice(…)"));
    }
    return List.of();
  }

  /** Whether the water of a balance suits a form of yeast that is stirred into it. */
  static List<Advice> suits(HeatBalance balance, YeastForm form) {
    Amount<Temperature> water = balance.waterTemperature();
    AmountRange<Temperature> range = form.water();
    if (range.contains(water)) {
      return List.of();
    }
    boolean warm = water.compareTo(range.high()) > 0;
    Amount<Temperature> nearest = warm ? range.high() : range.low();
    double gap = water.in(CELSIUS) - nearest.in(CELSIUS);
    double others = balance.mixture().partsCapacity();
    AmountFormat format = AmountFormat.sideBySide();
    String lever =
        others > 0
            ? "bring the other parts "
                + Numbers.decimals(Math.abs(gap) * balance.mixture().liquidCapacity() / others, 1)
                + " K "
                + (warm ? "higher" : "lower")
                + ", or "
            : "";
    String text =
        "water of "
            + format.temperature(water)
            + " is too "
            + (warm ? "warm" : "cold")
            + " to stir "
            + form.label()
            + " into it";
    String remedy =
        "With water of "
            + format.temperature(nearest)
            + " the dough comes to "
            + format.temperature(balance.doughTemperature(nearest))
            + "; "
            + lever
            + "wake the yeast apart in a little water of "
            + format.temperature(range.low())
            + " to "
            + format.temperature(range.high());
    return List.of(warm ? tooWarm(text, remedy) : Advice.of("WATER_COLD", text, remedy));
  }

  /** What is unwise about the water of a plan for the yeast that is weighed into the stage. */
  static List<Advice> advice(WaterPlan plan) {
    List<Advice> advice = new ArrayList<>();
    Amount<Temperature> water = plan.water().orElse(null);
    for (YeastForm form : plan.mix().yeasts()) {
      boolean iced =
          plan.way() == WaterPlan.Way.ICE
              || plan.levers().stream().anyMatch(l -> l instanceof Lever.AllIce)
              || (form == YeastForm.INSTANT && water != null && water.in(CELSIUS) < ICED_CELSIUS);
      if (iced) {
        advice.add(
            Advice.of("YEAST_ICED", form.label() + " loses strength in iced water", remedy(form)));
      } else if (water != null
          && (form == YeastForm.ACTIVE_DRY || water.compareTo(form.water().high()) > 0)) {
        plan.balance().ifPresent(balance -> advice.addAll(suits(balance, form)));
      }
    }
    boolean prefermented =
        plan.mix().stage().takes().stream()
            .anyMatch(t -> plan.mix().batch().formula().stage(t).kind() == StageKind.PREFERMENT);
    if (prefermented
        && plan.mix().yeasts().isEmpty()
        && water != null
        && water.compareTo(YeastForm.FRESH.water().high()) > 0) {
      advice.add(
          tooWarm(
              "water of "
                  + AmountFormat.sideBySide().temperature(water)
                  + " is too warm for the yeast of a preferment",
              "Stir it into the flour before the preferment goes in, or warm the flour instead"));
    }
    return advice;
  }

  private static Advice tooWarm(String text, String remedy) {
    return Advice.of("WATER_WARM", text, remedy);
  }

  private static String remedy(YeastForm form) {
    AmountFormat format = AmountFormat.sideBySide();
    return switch (form) {
      case INSTANT ->
          "Mix it into the flour and let the flour take up part of the water before the ice goes in,"
              + " or wet the yeast apart in a little water of "
              + format.temperature(form.water().low())
              + " to "
              + format.temperature(form.water().high())
              + ", weighed off the water of the dough";
      case FRESH -> "Crumble it into the flour, or add it when the ice has melted";
      case ACTIVE_DRY ->
          "Wake it apart in a little water of "
              + format.temperature(form.water().low())
              + " to "
              + format.temperature(form.water().high())
              + ", weighed off the water of the dough";
    };
  }
}
