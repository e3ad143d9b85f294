package org.tourage.label;

import java.util.ArrayList;
import java.util.List;
import org.tourage.advice.Advice;
import org.tourage.formula.Formula;
import org.tourage.formula.Line;
import org.tourage.formula.StageKind;
import org.tourage.ingredient.Allergen;
import org.tourage.ingredient.Role;

/**
 * The usual cautions of a bakery for a formula. They are reminders, not a food-safety plan: local
 * codes and licensed practice decide.
 */
public final class KitchenCautions {
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

  private static boolean isMilky(Line line) {
    return line.ingredient().is(Role.LIQUID)
        && line.ingredient().allergens().contains(Allergen.MILK);
  }
}
