package org.tourage.substitution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.tourage.quantity.Amounts.percent;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.formula.Formula;
import org.tourage.ingredient.Allergen;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;

/** Two products that go by one id are two products. */
class ExchangeOfOneIdTest {
  private static final Ingredient TABLE = Catalogue.builtIn().require("unsalted butter");
  private static final Ingredient NUTTY = butter(Allergen.MILK, Allergen.SESAME);

  private static Ingredient butter(Allergen... allergens) {
    return Ingredient.builder(TABLE.id(), TABLE.name())
        .role(Role.FAT)
        .composition(TABLE.composition())
        .allergens(allergens)
        .build();
  }

  private static Formula dough(Ingredient fat) {
    return Formula.byPercent(
        "rolls",
        f ->
            f.line("bread flour", percent(100))
                .line("water", percent(60))
                .line("salt", percent(2))
                .line(fat, percent(10)));
  }

  @Test
  void anExchangeForAProductOfTheSameIdKeepsItsAllergens() {
    for (double share : List.of(50.0, 100.0)) {
      IngredientExchange exchange =
          IngredientExchange.of(
              dough(TABLE), TABLE, NUTTY, percent(share), java.util.Set.of(Conserved.FAT));
      assertThat(exchange.allergensEntered()).containsExactly(Allergen.SESAME);
      assertThat(exchange.advice()).extracting(Advice::code).contains("ALLERGEN_ENTERS");
      assertThat(exchange.after().has(NUTTY)).isTrue();
      assertThat(exchange.after().has(TABLE)).isEqualTo(share < 100);
    }
  }

  @Test
  void whatIsNotInTheFormulaIsRefusedThoughItsIdIs() {
    assertThatThrownBy(() -> IngredientExchange.of(dough(NUTTY), TABLE, butter(Allergen.MILK)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("none of what is to be replaced")
        .hasMessageContaining("another content");
  }

  @Test
  void sugarsThatAreNotKnownAreNotSaidToBeKept() {
    Ingredient coconut = Catalogue.builtIn().require("coconut-milk-canned");
    Ingredient cream = Catalogue.builtIn().require("heavy cream");
    Formula formula =
        Formula.byPercent(
            "cream bun",
            f ->
                f.line("bread flour", percent(100))
                    .line("water", percent(40))
                    .line(cream, percent(20))
                    .line("unsalted butter", percent(10))
                    .line("sugar", percent(10)));
    IngredientExchange exchange = IngredientExchange.of(formula, cream, coconut);
    assertThat(exchange.conserved()).doesNotContain(Conserved.SUGARS);
    assertThat(exchange.lost().get(Conserved.SUGARS)).contains("not known", coconut.name());
  }
}
