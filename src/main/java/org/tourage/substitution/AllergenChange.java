package org.tourage.substitution;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.tourage.advice.Advice;
import org.tourage.formula.Formula;
import org.tourage.formula.Line;
import org.tourage.ingredient.Allergen;
import org.tourage.ingredient.Ingredient;

/** The allergens that an exchange brings and takes. */
final class AllergenChange {

  private AllergenChange() {}

  static Set<Allergen> entered(Formula before, Formula after) {
    Set<Allergen> entered = of(after);
    entered.removeAll(of(before));
    return entered;
  }

  static Set<Allergen> left(Formula before, Formula after) {
    Set<Allergen> left = of(before);
    left.removeAll(of(after));
    return left;
  }

  private static Set<Allergen> of(Formula formula) {
    Set<Allergen> all = EnumSet.noneOf(Allergen.class);
    for (Line line : formula.lines()) {
      all.addAll(line.ingredient().allergens());
    }
    return all;
  }

  static List<Advice> advice(Formula before, Formula after) {
    List<Advice> advice = new ArrayList<>();
    Set<Allergen> entered = entered(before, after);
    Set<Allergen> left = left(before, after);
    if (!entered.isEmpty()) {
      advice.add(
          Advice.of(
              "ALLERGEN_ENTERS",
              words(entered) + (entered.size() == 1 ? " comes" : " come") + " into the formula",
              "Tell everyone who eats it, and change the label as your local law says"));
    }
    if (!left.isEmpty()) {
      advice.add(
          Advice.of(
              "ALLERGEN_LEAVES",
              words(left)
                  + (left.size() == 1 ? " leaves" : " leave")
                  + " the formula by the table, but plant-based is not a claim of allergen-free, nor"
                  + " of free of milk allergen",
              "Traces come with ingredients, shared tools and shared ovens; make no claim without"
                  + " control"));
    }
    unknown(after, before)
        .ifPresent(
            names ->
                advice.add(
                    unsure(
                        names + " comes into the formula with unknown allergens: it can hold any",
                        "Read its label and state them before anyone eats of it")));
    unknown(before, after)
        .ifPresent(
            names ->
                advice.add(
                    unsure(
                        names
                            + " leaves the formula; its allergens are unknown, and so is what left",
                        "Read its label before you say what the formula no longer holds")));
    Set<Allergen> check = EnumSet.noneOf(Allergen.class);
    List<String> products = new ArrayList<>();
    for (Line line : after.lines()) {
      boolean fresh =
          before.lines().stream().noneMatch(l -> l.ingredient().equals(line.ingredient()));
      if (fresh && !line.ingredient().allergensToCheck().isEmpty()) {
        check.addAll(line.ingredient().allergensToCheck());
        products.add(line.ingredient().name());
      }
    }
    if (!check.isEmpty()) {
      advice.add(
          Advice.of(
              "ALLERGEN_CHECK",
              String.join(" and ", products) + " may hold " + words(check),
              "Read the label of the product in hand"));
    }
    return advice;
  }

  /** What is in one formula and not in the other, and of unknown allergens. */
  private static Optional<String> unknown(Formula in, Formula notIn) {
    return in.lines().stream()
        .map(Line::ingredient)
        .filter(i -> !i.areAllergensKnown())
        .filter(i -> notIn.lines().stream().noneMatch(l -> l.ingredient().equals(i)))
        .map(Ingredient::name)
        .distinct()
        .reduce((a, b) -> a + " and " + b);
  }

  private static String words(Set<Allergen> allergens) {
    return allergens.stream()
        .map(a -> a.name().toLowerCase(Locale.ROOT).replace('_', ' '))
        .collect(Collectors.joining(", "));
  }

  private static Advice unsure(String text, String remedy) {
    return Advice.of("ALLERGEN_UNKNOWN", text, remedy);
  }
}
