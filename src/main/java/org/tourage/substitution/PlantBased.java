package org.tourage.substitution;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Working;
import org.tourage.formula.Formula;
import org.tourage.formula.Line;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Origin;
import org.tourage.ingredient.Role;

/**
 * A whole formula from dairy, egg and honey to plants, each ingredient by {@link
 * IngredientExchange}. Plant-based is not a claim of allergen-free, nor of free of milk allergen.
 *
 * @param before the formula before
 * @param exchanges the exchanges in order
 * @param after the formula after
 */
public record PlantBased(Formula before, List<IngredientExchange> exchanges, Formula after)
    implements Substitution {

  /**
   * Copies the list.
   *
   * @param before the formula before
   * @param exchanges the exchanges in order
   * @param after the formula after
   */
  public PlantBased {
    requireNonNull(before, "before");
    requireNonNull(after, "after");
    exchanges = List.copyOf(exchanges);
  }

  /**
   * The usual replacements: a plant-based block of 80 % fat for butter, unsweetened soy drink for
   * milk and egg, canned coconut milk for cream, maple syrup for honey.
   *
   * @param formula the formula
   * @return the change; without exchanges if there is nothing of animals in it
   */
  public static PlantBased of(Formula formula) {
    return of(formula, Map.of());
  }

  /**
   * With replacements of one's own.
   *
   * @param formula the formula
   * @param choices what takes the place of an ingredient, by the ingredient; others as usual
   * @return the change
   * @throws BakeryException if there is no usual replacement for an ingredient of animals and none
   *     was chosen, or a choice can't take its place
   */
  public static PlantBased of(Formula formula, Map<Ingredient, Ingredient> choices) {
    Map<Ingredient, Ingredient> wanted = new LinkedHashMap<>();
    for (Line line : formula.lines()) {
      Ingredient old = line.ingredient();
      if (old.origin() == Origin.ANIMAL) {
        Ingredient chosen = choices.get(old);
        wanted.put(old, chosen == null ? usual(old) : chosen);
      }
    }
    List<IngredientExchange> exchanges = new ArrayList<>();
    Formula now = formula;
    for (Map.Entry<Ingredient, Ingredient> entry : wanted.entrySet()) {
      IngredientExchange exchange = IngredientExchange.of(now, entry.getKey(), entry.getValue());
      exchanges.add(exchange);
      now = exchange.after();
    }
    return new PlantBased(formula, exchanges, now);
  }

  private static Ingredient usual(Ingredient old) {
    Catalogue catalogue = Catalogue.builtIn();
    if (old.is(Role.FAT)) {
      return catalogue.require("margarine-80-unsalted");
    } else if (old.is(Role.LIQUID)) {
      boolean cream = Conserved.FAT.of(old) > 0.15;
      return catalogue.require(cream ? "coconut-milk-canned" : "soy-drink-unsweetened");
    } else if (old.is(Role.EGG)) {
      return catalogue.require("soy-drink-unsweetened");
    } else if (old.is(Role.SUGAR)) {
      return catalogue.require("maple-syrup");
    }
    throw new BakeryException(
        Reason.MISSING,
        "there is no usual plant-based ingredient in place of this",
        old.name(),
        "choose one, for example soy drink in place of the water and no powder");
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>();
    for (IngredientExchange exchange : exchanges) {
      exchange.advice().stream()
          .filter(a -> !a.code().startsWith("ALLERGEN_"))
          .forEach(advice::add);
    }
    advice.addAll(AllergenChange.advice(before, after));
    return advice;
  }

  @Override
  public Working working() {
    Working all = new Working(List.of());
    for (IngredientExchange exchange : exchanges) {
      all = all.then(exchange.working());
    }
    return all;
  }

  /** One line for each exchange. */
  @Override
  public String toString() {
    return exchanges.isEmpty()
        ? "nothing of animals in " + before.name()
        : exchanges.stream().map(IngredientExchange::toString).collect(Collectors.joining("\n"));
  }
}
