package org.tourage.label;

import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.tourage.advice.Advice;
import org.tourage.formula.Formula;
import org.tourage.formula.Line;
import org.tourage.formula.StageKind;
import org.tourage.ingredient.Allergen;
import org.tourage.ingredient.Component;
import org.tourage.ingredient.Role;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.BakeryUnits;

/**
 * The usual cautions of a bakery for a formula. They are reminders, not a food-safety plan: local
 * codes and licensed practice decide.
 */
public final class KitchenCautions {
  private static final double MOST_WARM_HOURS = 4;

  private KitchenCautions() {}

  /**
   * The cautions for a formula.
   *
   * @param formula the formula
   * @return safety advice
   */
  public static List<Advice> of(Formula formula) {
    List<Advice> advice = new ArrayList<>();
    advice.add(
        Advice.safety(
            "RAW_FLOUR",
            "flour is a raw food and dough is not to be tasted",
            "Bake it through and wash hands, bench and tools",
            "U.S. Food and Drug Administration, consumer advice on raw flour (from memory)"));
    boolean egg = formula.lines().stream().anyMatch(l -> l.ingredient().is(Role.EGG));
    if (egg) {
      advice.add(
          Advice.safety(
              "RAW_EGG",
              "raw egg can carry salmonella",
              "Keep it cold; food with raw egg that is not served at once is cooked to 68 °C (155 °F) for 17 s, or as your local code says",
              "FDA Food Code 2022, section 3-401.11(A)(2)"));
    }
    boolean perishable = egg || formula.lines().stream().anyMatch(KitchenCautions::isMilky);
    if (perishable) {
      advice.add(
          Advice.safety(
              "COLD_HOLDING",
              "milk, cream and egg spoil in the warm",
              "Hold them at 5 °C (41 °F) or below, and follow your local code for doughs and fillings that stay warm",
              "FDA Food Code 2022, section 3-501.16(A)(2)"));
    }
    advice.add(
        Advice.safety(
            "HOT_OVEN",
            "oven, trays, steam and melted sugar burn",
            "Use dry cloths, stand aside when the door opens, keep learners back",
            Advice.COMMON_PRACTICE));
    boolean rolled = formula.stages().stream().anyMatch(s -> s.kind() == StageKind.ROLL_IN);
    if (rolled) {
      advice.add(
          Advice.safety(
              "SHEETER",
              "a dough sheeter draws fingers in",
              "Use it only with its guards and after instruction, as its maker and your local rules say",
              Advice.COMMON_PRACTICE));
    }
    return advice;
  }

  /**
   * The caution for a dough that stays out of the cold for long. Food that needs time and
   * temperature control for safety is held at 5 °C or below, or at 57 °C or above (FDA Food Code
   * 2022, 3-501.16(A)), or by time alone for at most 4 hours (3-501.19(B)).
   *
   * @param formula the formula
   * @param warm how long it is between 5 °C and 57 °C, all stages together
   * @return safety advice if it holds egg, milk or a plant drink and the time is over 4 hours; a
   *     note if it does and the time is shorter; none otherwise
   */
  public static List<Advice> warmHold(Formula formula, Quantity<Time> warm) {
    boolean controlled = formula.lines().stream().anyMatch(KitchenCautions::needsControl);
    if (!controlled) {
      return List.of();
    }
    String time = AmountFormat.metric().time(warm);
    if (BakeryUnits.HOUR.measure(warm) > MOST_WARM_HOURS) {
      return List.of(
          Advice.safety(
              "WARM_HOLD",
              "a dough with egg, milk or plant drink is "
                  + time
                  + " above 5 °C (41 °F), longer than the 4 hours that the model code gives by time"
                  + " alone",
              "Chill sooner, or ask your local authority how your code sees fermenting doughs; it decides",
              "FDA Food Code 2022, sections 3-501.16(A) and 3-501.19(B)"));
    }
    return List.of(
        Advice.note(
            "WARM_HOLD_TIME",
            "a dough with egg, milk or plant drink is " + time + " above 5 °C (41 °F)",
            "The model code gives at most 4 hours by time alone; your local code decides",
            "FDA Food Code 2022, section 3-501.19(B)"));
  }

  private static boolean needsControl(Line line) {
    // a drink other than water brings protein; the finish counts too, it is held beside the dough
    boolean drink =
        line.ingredient().is(Role.LIQUID)
            && line.ingredient().composition().fraction(Component.PROTEIN) > 0;
    return drink || line.ingredient().is(Role.EGG) || line.ingredient().is(Role.DAIRY);
  }

  private static boolean isMilky(Line line) {
    boolean moist = line.ingredient().is(Role.LIQUID) || line.ingredient().is(Role.DAIRY);
    return moist && line.ingredient().allergens().contains(Allergen.MILK);
  }
}
