package org.tourage.substitution;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Working;
import org.tourage.formula.Formula;
import org.tourage.ingredient.Ingredient;

/**
 * Several ingredients of a formula replaced at once: each exchange looks at the formula as it was
 * before any of them, so that it does not matter which is named first, and two ingredients can
 * change places. No ingredient that goes takes up what another exchange leaves over. Flours go as
 * in {@link FlourExchange}, all else as in {@link IngredientExchange}, each keeping what is usual
 * for it. {@link #then} goes on from the result. Immutable and serialisable.
 *
 * <pre>{@code
 * Exchanges.of(formula, List.of(Exchange.of(bread, spelt), Exchange.of(milk, oatDrink))).after();
 * }</pre>
 */
public final class Exchanges implements Substitution {
  private static final long serialVersionUID = 1L;

  private final Formula before;
  private final List<Substitution> parts;
  private final Formula after;

  private Exchanges(Formula before, List<Substitution> parts, Formula after) {
    this.before = before;
    this.parts = List.copyOf(parts);
    this.after = after;
  }

  /**
   * Exchanges at once.
   *
   * @param formula the formula
   * @param wanted what is wanted in place of what; their order has no meaning
   * @return the exchanges; none if nothing is wanted
   * @throws BakeryException as for each by itself, if more than all of an ingredient goes, or if
   *     the flours together take more water than a line has
   */
  public static Exchanges of(Formula formula, List<Exchange> wanted) {
    requireNonNull(formula, "formula");
    check(wanted);
    Set<Ingredient> gone = new LinkedHashSet<>();
    wanted.forEach(w -> gone.add(w.from()));
    Predicate<Ingredient> going = gone::contains;
    List<FlourExchange> flours = new ArrayList<>();
    List<ExchangeDraft> drafts = new ArrayList<>();
    for (Exchange one : wanted) {
      if (one.isFlour()) {
        flours.add(FlourExchange.of(formula, one, going));
      } else {
        drafts.add(ExchangeDraft.usual(formula, one, going));
      }
    }
    LineChanges lines = sum(formula, flours, drafts);
    for (OptionalInt scarce = lines.overdrawn(); scarce.isPresent(); scarce = lines.overdrawn()) {
      int line = scarce.getAsInt();
      // every one of them gives it up, so that no order decides
      long gaveUp = drafts.stream().filter(d -> d.giveUp(line)).count();
      if (gaveUp == 0) {
        FlourExchange.refuseOverdrawn(formula, lines);
      }
      lines = sum(formula, flours, drafts);
    }
    List<Substitution> parts = new ArrayList<>(flours);
    drafts.forEach(d -> parts.add(d.result()));
    return new Exchanges(formula, parts, wanted.isEmpty() ? formula : lines.formula());
  }

  private static LineChanges sum(
      Formula formula, List<FlourExchange> flours, List<ExchangeDraft> drafts) {
    LineChanges lines = new LineChanges(formula);
    flours.forEach(f -> f.applyTo(lines));
    drafts.forEach(d -> d.applyTo(lines));
    return lines;
  }

  private static void check(List<Exchange> wanted) {
    Map<Ingredient, Double> gone = new LinkedHashMap<>();
    for (Exchange one : wanted) {
      double sum = gone.merge(one.from(), one.part(), Double::sum);
      if (sum > 1 + 1e-9) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            "more than all of an ingredient would go",
            wanted.stream()
                .filter(w -> w.from().equals(one.from()))
                .map(Exchange::toString)
                .collect(Collectors.joining(", ")),
            "let the parts of one ingredient sum to 100 % or less");
      }
    }
  }

  /**
   * More exchanges, of what these have left.
   *
   * @param wanted what is wanted in place of what
   * @return these and the further ones
   * @throws BakeryException as for {@link #of}
   */
  public Exchanges then(List<Exchange> wanted) {
    return then(of(after, wanted));
  }

  /**
   * What is still of animals gives way to plants, as in {@link PlantBased}.
   *
   * @return these and the further ones
   * @throws BakeryException as for {@link PlantBased#of(Formula)}
   */
  public Exchanges thenPlantBased() {
    return then(PlantBased.of(after).chain());
  }

  private Exchanges then(Exchanges next) {
    List<Substitution> all = new ArrayList<>(parts);
    all.addAll(next.parts);
    return new Exchanges(before, all, next.after);
  }

  @Override
  public Formula before() {
    return before;
  }

  @Override
  public Formula after() {
    return after;
  }

  /**
   * Each exchange as it would be by itself; {@link #after()} is all of them together.
   *
   * @return flours first
   */
  public List<Substitution> parts() {
    return parts;
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>();
    for (Substitution part : parts) {
      part.advice().stream()
          .filter(a -> !a.code().startsWith("ALLERGEN_"))
          .filter(a -> !advice.contains(a))
          .forEach(advice::add);
    }
    advice.addAll(AllergenChange.advice(before, after));
    return advice;
  }

  @Override
  public Working working() {
    Working all = new Working(List.of());
    for (Substitution part : parts) {
      all = all.then(part.working());
    }
    return all;
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Exchanges that
        && before.equals(that.before)
        && parts.equals(that.parts)
        && after.equals(that.after);
  }

  @Override
  public int hashCode() {
    return Objects.hash(before, parts);
  }

  /** One line for each exchange. */
  @Override
  public String toString() {
    return parts.isEmpty()
        ? "nothing exchanged in " + before.name()
        : parts.stream().map(Substitution::toString).collect(Collectors.joining("\n"));
  }
}
