package org.tourage.formula;

import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.ArrayList;
import java.util.List;
import org.tourage.advice.Advice;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;
import org.tourage.ingredient.YeastForm;
import org.tourage.quantity.AmountFormat;

/** What is unwise about a formula: leavening, salt, yeast, hydration. */
final class FormulaAdvice {
  private static final double SALT_LOW = 1.5;
  private static final double SALT_HIGH = 2.5;
  private static final double FRESH_YEAST_LOW = 0.2;
  private static final double FRESH_YEAST_HIGH = 8;

  private FormulaAdvice() {}

  static List<Advice> of(Formula formula) {
    List<Advice> advice = new ArrayList<>();
    double salt = 0;
    double yeast = 0;
    boolean leavening = formula.prefermentedFlour().value() > 0;
    for (Line line : formula.overall()) {
      double percent = line.share() * 100;
      Ingredient ingredient = line.ingredient();
      leavening |= ingredient.is(Role.YEAST) || ingredient.is(Role.LEAVENING);
      yeast += YeastForm.of(ingredient).map(form -> percent / form.perFresh()).orElse(0.0);
      salt += percent * ingredient.saltFraction();
    }
    AmountFormat format = AmountFormat.metric();
    if (!leavening) {
      advice.add(
          Advice.of(
              "NO_LEAVENING",
              formula.name() + " has no yeast, preferment or chemical leavening",
              "Right for a pie or puff dough; otherwise add some"));
    }
    if (salt < SALT_LOW || salt > SALT_HIGH) {
      advice.add(
          Advice.of(
              salt < SALT_LOW ? "SALT_LOW" : "SALT_HIGH",
              "salt is " + format.percent(PERCENT.amount(salt)) + " of flour, counting salted fat",
              "Doughs usually have 1.8 % to 2.2 %"));
    }
    if (yeast > 0 && (yeast < FRESH_YEAST_LOW || yeast > FRESH_YEAST_HIGH)) {
      advice.add(
          Advice.of(
              yeast < FRESH_YEAST_LOW ? "YEAST_LOW" : "YEAST_HIGH",
              "yeast is "
                  + format.percent(PERCENT.amount(yeast))
                  + " of flour counted as fresh yeast",
              "Doughs usually have 0.5 % to 6 % fresh yeast, or 0.40 of that as active dry and 0.33 as"
                  + " instant"));
    }
    advice.addAll(formula.hydration().advice());
    return advice;
  }
}
