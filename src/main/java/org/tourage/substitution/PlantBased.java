package org.tourage.substitution;

import static java.util.Objects.requireNonNull;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Working;
import org.tourage.formula.Formula;
import org.tourage.formula.Line;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Origin;

/**
 * A whole formula from dairy, egg and honey to plants, all at once as in {@link Exchanges}.
 * Plant-based is not a claim of allergen-free, nor of free of milk allergen. Immutable and
 * serialisable.
 */
public final class PlantBased implements Substitution {
  private static final long serialVersionUID = 1L;

  private final Exchanges chain;

  private PlantBased(Exchanges chain) {
    this.chain = chain;
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
    Set<Exchange> wanted = new LinkedHashSet<>();
    for (Line line : requireNonNull(formula, "formula").lines()) {
      Ingredient old = line.ingredient();
      if (old.origin() == Origin.ANIMAL) {
        Ingredient chosen = choices.get(old);
        wanted.add(Exchange.of(old, chosen == null ? usual(old) : chosen));
      }
    }
    return new PlantBased(Exchanges.of(formula, List.copyOf(wanted)));
  }

  @Override
  public Formula before() {
    return chain.before();
  }

  @Override
  public Formula after() {
    return chain.after();
  }

  /**
   * Each exchange as it would be by itself; {@link #after()} is all of them together.
   *
   * @return the exchanges, in the order of the lines
   */
  public List<Substitution> exchanges() {
    return chain.parts();
  }

  Exchanges chain() {
    return chain;
  }

  private static Ingredient usual(Ingredient old) {
    return Catalogue.builtIn()
        .plantSubstitute(old)
        .orElseThrow(
            () ->
                new BakeryException(
                    Reason.MISSING,
                    "there is no usual plant-based ingredient in place of this",
                    old.name(),
                    "choose one, for example soy drink in place of the water and no powder"));
  }

  @Override
  public List<Advice> advice() {
    return chain.advice();
  }

  @Override
  public Working working() {
    return chain.working();
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof PlantBased that && chain.equals(that.chain);
  }

  @Override
  public int hashCode() {
    return chain.hashCode();
  }

  /** One line for each exchange. */
  @Override
  public String toString() {
    return exchanges().isEmpty() ? "nothing of animals in " + before().name() : chain.toString();
  }
}
