package org.tourage.substitution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.tourage.quantity.Amounts.*;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.tourage.advice.Advice;
import org.tourage.formula.Formula;
import org.tourage.ingredient.Allergen;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Component;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;

class AllergenExchangeLaws {
  private static final double DOUGH_FAT = 0.3;
  private static final List<Ingredient> FATS =
      Catalogue.builtIn().all().stream()
          .filter(i -> i.is(Role.FAT) && i.composition().fraction(Component.FAT) > DOUGH_FAT)
          .toList();

  @Provide
  Arbitrary<Ingredient> fats() {
    return Arbitraries.of(FATS);
  }

  private static Set<Allergen> allergens(Formula formula) {
    Set<Allergen> all = EnumSet.noneOf(Allergen.class);
    formula.lines().forEach(l -> all.addAll(l.ingredient().allergens()));
    return all;
  }

  @Property(tries = 200)
  void exchangingAFatNeverLosesOrBringsAnAllergenWithoutSayingSo(
      @ForAll("fats") Ingredient from, @ForAll("fats") Ingredient to) {
    if (from.equals(to)) {
      return;
    }
    Formula before =
        Formula.byPercent(
            "dough",
            f ->
                f.line("bread flour", percent(100))
                    .line("water", percent(60))
                    .line("salt", percent(2))
                    .line(from, percent(20)));
    IngredientExchange exchange = IngredientExchange.of(before, from, to);
    Set<Allergen> left = allergens(before);
    left.removeAll(allergens(exchange.after()));
    Set<Allergen> entered = allergens(exchange.after());
    entered.removeAll(allergens(before));
    String said =
        exchange.advice().stream()
            .filter(a -> a.code().equals("ALLERGEN_LEAVES") || a.code().equals("ALLERGEN_ENTERS"))
            .map(Advice::text)
            .collect(Collectors.joining("; "));
    for (Allergen allergen : left) {
      assertThat(said)
          .contains(allergen.name().toLowerCase(java.util.Locale.ROOT).replace('_', ' '));
      assertThat(said).contains("leave");
    }
    for (Allergen allergen : entered) {
      assertThat(said)
          .contains(allergen.name().toLowerCase(java.util.Locale.ROOT).replace('_', ' '));
      assertThat(said).contains("come");
    }
    assertThat(said.isEmpty()).isEqualTo(left.isEmpty() && entered.isEmpty());
  }

  @Property(tries = 50)
  void anExchangeWithOrToWhatHasUnknownAllergensSaysThatTheyAreUnknown(
      @ForAll("fats") Ingredient known) {
    Ingredient silent =
        Ingredient.builder("house-fat", "house fat")
            .role(Role.FAT)
            .composition(Catalogue.builtIn().require("shortening").composition())
            .allergensUnknown()
            .build();
    assertThat(unknownSaid(known, silent))
        .contains("house fat comes into the formula", "can hold any");
    assertThat(unknownSaid(silent, known)).contains("house fat leaves the formula", "are unknown");
    assertThat(unknownSaid(known, FATS.get(known.equals(FATS.get(0)) ? 1 : 0))).isEmpty();
  }

  private static String unknownSaid(Ingredient from, Ingredient to) {
    Formula before =
        Formula.byPercent(
            "dough",
            f ->
                f.line("bread flour", percent(100))
                    .line("water", percent(60))
                    .line(from, percent(20)));
    return IngredientExchange.of(before, from, to).advice().stream()
        .filter(a -> a.code().equals("ALLERGEN_UNKNOWN"))
        .map(Advice::text)
        .collect(Collectors.joining("; "));
  }
}
