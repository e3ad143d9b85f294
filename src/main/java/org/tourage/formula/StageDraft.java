package org.tourage.formula;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Given;

/**
 * A stage as it is written down, before it is part of a formula: its lines in masses or in percent
 * of the total flour, and what it takes of other stages. A list of drafts makes a formula by {@link
 * Formula#ofStages} (percent) or {@link Batch#ofStages} (masses).
 *
 * <pre>{@code
 * StageDraft<Mass> first = StageDraft.<Mass>of(StageKind.PREFERMENT, "First")
 *     .with(rye, grams(100)).with(water, grams(100));
 * StageDraft<Mass> second = StageDraft.<Mass>of(StageKind.PREFERMENT, "Second")
 *     .taking("First", grams(150)).with(rye, grams(300)).with(water, grams(240));
 * }</pre>
 *
 * @param name the name, unique in the formula
 * @param kind what it is for
 * @param parts its own lines
 * @param draws what it takes of other stages
 * @param <Q> {@code Mass}, or {@code Dimensionless} for percentages
 */
public record StageDraft<Q extends Quantity<Q>>(
    String name, StageKind kind, List<Part<Q>> parts, List<Draw<Q>> draws) implements Serializable {

  /**
   * Copies the lists.
   *
   * @param name the name, unique in the formula
   * @param kind what it is for
   * @param parts its own lines
   * @param draws what it takes of other stages
   */
  public StageDraft {
    if (requireNonNull(name, "name").isBlank()) {
      throw new BakeryException(
          Reason.MISSING, "a stage needs a name", "\"" + name + "\"", "give at least one letter");
    }
    requireNonNull(kind, "kind");
    parts = List.copyOf(parts);
    draws = List.copyOf(draws);
    if (draws.stream().anyMatch(draw -> draw.stage().equalsIgnoreCase(name))) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "no stage takes itself",
          "\"" + name + "\"",
          "name the stage before it");
    }
  }

  /**
   * A line of a draft.
   *
   * @param ingredient the ingredient
   * @param amount a mass, or percent of the total flour, not negative
   * @param flour whether it counts as flour
   * @param <Q> {@code Mass}, or {@code Dimensionless} for percentages
   */
  public record Part<Q extends Quantity<Q>>(Ingredient ingredient, Amount<Q> amount, boolean flour)
      implements Serializable {

    /**
     * Checks the amount.
     *
     * @param ingredient the ingredient
     * @param amount a mass, or percent of the total flour, not negative
     * @param flour whether it counts as flour
     */
    public Part {
      requireNonNull(ingredient, "ingredient");
      if (amount.value() < 0) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "a line can't be negative",
            ingredient.name() + " " + amount,
            "give 0 or more");
      }
    }
  }

  /**
   * What a stage takes of another: an amount, or a share of it; exactly one of the two is given.
   *
   * @param stage the name of the stage that is taken
   * @param amount a mass or percent of the total flour, as the lines of the draft, positive
   * @param share what of the stage, above 0 % up to 100 %
   * @param <Q> {@code Mass}, or {@code Dimensionless} for percentages
   */
  public record Draw<Q extends Quantity<Q>>(
      String stage, @Nullable Amount<Q> amount, @Nullable Amount<Dimensionless> share)
      implements Serializable {

    /**
     * Checks the amount.
     *
     * @param stage the name of the stage that is taken
     * @param amount a mass or percent of the total flour, positive
     * @param share what of the stage, above 0 % up to 100 %
     */
    public Draw {
      requireNonNull(stage, "stage");
      Amount<?> given = requireNonNull(amount == null ? share : amount, "amount or share");
      boolean tooMuch = share != null && share.in(FRACTION) > 1;
      if ((amount != null && share != null) || !(given.value() > 0) || tooMuch) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "that much of \"" + stage + "\" can't be taken",
            given.toString(),
            "give an amount above 0, or more than 0 % and at most 100 % of the stage");
      }
    }

    /** {@code all of First}, {@code 40 % of First} or {@code 100 g of First}. */
    @Override
    public String toString() {
      boolean all = share != null && share.in(FRACTION) == 1;
      return (all ? "all" : amount == null ? share : amount) + " of " + stage;
    }
  }

  /**
   * Starts a draft.
   *
   * @param kind what the stage is for
   * @param name its name
   * @param <Q> {@code Mass}, or {@code Dimensionless} for percentages
   * @return a draft without lines
   */
  public static <Q extends Quantity<Q>> StageDraft<Q> of(StageKind kind, String name) {
    return new StageDraft<>(name, kind, List.of(), List.of());
  }

  /**
   * The same with one more line, which counts as flour if the ingredient is one.
   *
   * @param ingredient the ingredient
   * @param amount a mass, or percent of the total flour
   * @return the draft
   */
  public StageDraft<Q> with(Ingredient ingredient, Quantity<Q> amount) {
    return with(new Part<>(ingredient, Amount.from(amount), ingredient.is(Role.FLOUR)));
  }

  /**
   * The same with one more line that counts as flour whatever its role.
   *
   * @param ingredient the ingredient
   * @param amount a mass, or percent of the total flour
   * @return the draft
   */
  public StageDraft<Q> withFlour(Ingredient ingredient, Quantity<Q> amount) {
    return with(new Part<>(ingredient, Amount.from(amount), true));
  }

  private StageDraft<Q> with(Part<Q> part) {
    List<Part<Q>> more = new ArrayList<>(parts);
    more.add(part);
    return new StageDraft<>(name, kind, more, draws);
  }

  /**
   * The same, and all of another stage goes into it.
   *
   * @param stage the name of the other stage
   * @return the draft
   */
  public StageDraft<Q> taking(String stage) {
    return takingShare(stage, PERCENT.amount(100));
  }

  /**
   * The same, and an amount of another stage goes into it; what no stage takes is kept back.
   *
   * @param stage the name of the other stage
   * @param amount a mass, or percent of the total flour, positive
   * @return the draft
   */
  public StageDraft<Q> taking(String stage, Quantity<Q> amount) {
    return with(new Draw<>(stage, Amount.from(amount), null));
  }

  /**
   * The same, and a share of another stage goes into it; what no stage takes is kept back.
   *
   * @param stage the name of the other stage
   * @param share what of the other stage, above 0 % up to 100 %
   * @return the draft
   */
  public StageDraft<Q> takingShare(String stage, Quantity<Dimensionless> share) {
    return with(new Draw<>(stage, null, Given.ratio("the share", share)));
  }

  private StageDraft<Q> with(Draw<Q> draw) {
    List<Draw<Q>> more = new ArrayList<>(draws);
    more.add(draw);
    return new StageDraft<>(name, kind, parts, more);
  }

  /** The name, what it takes, and its lines. */
  @Override
  public String toString() {
    List<String> texts = new ArrayList<>(draws.stream().map(Draw::toString).toList());
    texts.addAll(parts.stream().map(p -> p.amount() + " " + p.ingredient().name()).toList());
    return name + ": " + texts.stream().collect(Collectors.joining(", "));
  }
}
