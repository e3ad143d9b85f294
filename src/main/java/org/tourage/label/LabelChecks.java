package org.tourage.label;

import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.tourage.ingredient.Allergen;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;

/**
 * Allergens that products of a kind may hold although the ingredient itself is none of them, by the
 * words of its name: malted barley in wheat flours for bread, wheat and barley by contact in oats,
 * sulphites in dried fruit, molasses, potato flour and coconut milk. All common practice; the label
 * in hand decides.
 */
final class LabelChecks {
  private static final List<String> MALTED = List.of("bread flour", "all-purpose", "high-gluten");

  private static final List<String> SULPHITED =
      List.of(
          "raisin",
          "currant",
          "sultana",
          "dried",
          "candied",
          "molasses",
          "treacle",
          "potato flour",
          "potato flakes",
          "potato starch",
          "coconut milk",
          "coconut drink",
          "desiccated coconut");

  private LabelChecks() {}

  /** What is to be looked for on the label beside what the table says. */
  static Set<Allergen> of(Ingredient ingredient) {
    EnumSet<Allergen> check = EnumSet.noneOf(Allergen.class);
    String name = ingredient.name().toLowerCase(Locale.ROOT);
    Set<Allergen> holds = ingredient.allergens();
    boolean wheatFlour = ingredient.is(Role.FLOUR) && holds.contains(Allergen.WHEAT);
    if (wheatFlour && MALTED.stream().anyMatch(name::contains)) {
      check.add(Allergen.BARLEY);
    }
    if (holds.contains(Allergen.OAT)) {
      check.add(Allergen.WHEAT);
      check.add(Allergen.BARLEY);
    }
    // herbs, yeast, egg and milk are dried as well, and are not sulphited
    boolean other =
        ingredient.is(Role.YEAST)
            || ingredient.is(Role.EGG)
            || ingredient.is(Role.FLAVOUR)
            || holds.contains(Allergen.MILK);
    if (!other && SULPHITED.stream().anyMatch(name::contains)) {
      check.add(Allergen.SULPHITES);
    }
    check.removeAll(holds);
    return check;
  }
}
