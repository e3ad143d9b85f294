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
import org.tourage.advice.BakeryException;
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

  private static final List<Role> EXCHANGED =
      List.of(Role.FAT, Role.LIQUID, Role.SUGAR, Role.EGG, Role.DAIRY);

  /** Any two of one role, so far as the catalogue has them. */
  @Provide
  Arbitrary<List<Ingredient>> pairs() {
    return Arbitraries.of(EXCHANGED)
        .map(
            role ->
                Catalogue.builtIn().all().stream()
                    .filter(i -> i.is(role) && !i.is(Role.FLOUR) && !i.is(Role.YEAST))
                    .toList())
        .filter(all -> all.size() > 1)
        .flatMap(all -> Arbitraries.of(all).list().ofSize(2).uniqueElements());
  }

  @Property(tries = 300)
  void noExchangeOfAnyKindLosesOrBringsAnAllergenWithoutSayingSo(
      @ForAll("pairs") List<Ingredient> pair) {
    Formula before =
        Formula.byPercent(
            "dough",
            f ->
                f.line("rice flour", percent(100))
                    .line("water", percent(60))
                    .line("salt", percent(2))
                    .line("granulated sugar", percent(30))
                    .line(pair.get(0), percent(20)));
    IngredientExchange exchange;
    try {
      exchange = IngredientExchange.of(before, pair.get(0), pair.get(1));
    } catch (BakeryException refused) {
      // what can't be exchanged loses nothing
      assertThat(refused.getMessage()).isNotBlank();
      return;
    }
    Set<Allergen> left = allergens(before);
    left.removeAll(allergens(exchange.after()));
    Set<Allergen> entered = allergens(exchange.after());
    entered.removeAll(allergens(before));
    assertThat(said(exchange, "ALLERGEN_LEAVES")).matches(text -> names(text, left));
    assertThat(said(exchange, "ALLERGEN_ENTERS")).matches(text -> names(text, entered));
    assertThat(exchange.allergensEntered()).isEqualTo(entered);
  }

  private static String said(IngredientExchange exchange, String code) {
    return exchange.advice().stream()
        .filter(a -> a.code().equals(code))
        .map(Advice::text)
        .collect(Collectors.joining("; "));
  }

  private static boolean names(String text, Set<Allergen> allergens) {
    return text.isEmpty() == allergens.isEmpty()
        && allergens.stream()
            .allMatch(
                a -> text.contains(a.name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ')));
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
