package org.tourage.formula;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.ingredient.Ingredient;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Given;

/**
 * A levain built up from a seed, each build told by the mass and the hydration that it has when it
 * is mixed, what it takes of the build before it included. The library works out the fresh flour
 * and water: with mass m, hydration h (liquid by flour), and f and w of flour and water in what is
 * taken, the fresh flour is m / (1 + h) − f and the fresh water m·h / (1 + h) − w.
 *
 * <pre>{@code
 * Levain.seed("Mother", rye, water, grams(20), percent(100))
 *     .build("First", grams(120), percent(100))                  // takes the seed whole
 *     .build("Second", grams(100), grams(600), percent(80))      // takes 100 g of the first
 *     .stages();
 * }</pre>
 *
 * <p>Immutable; methods return copies.
 */
public final class Levain implements Serializable {
  private static final long serialVersionUID = 1L;

  /** Fresh flour or water below this share of the build is rounding. */
  private static final double NOTHING = 1e-12;

  /** The builds, first to last; the first is the seed. */
  private final List<Build> builds;

  /** The flour of builds to come. */
  private final Ingredient flour;

  /** The liquid of builds to come. */
  private final Ingredient liquid;

  /** A build in grams; {@code taken} of the one before it. */
  record Build(
      String name,
      Ingredient flour,
      Ingredient liquid,
      double freshFlour,
      double freshLiquid,
      double taken,
      double mass,
      double hydration)
      implements Serializable {}

  private Levain(List<Build> builds, Ingredient flour, Ingredient liquid) {
    this.builds = List.copyOf(builds);
    this.flour = requireNonNull(flour, "flour");
    this.liquid = requireNonNull(liquid, "liquid");
  }

  /**
   * Starts from a seed: what there is of the mother at the start.
   *
   * @param name the name of its stage
   * @param flour the flour of the seed, and of the builds unless told otherwise
   * @param liquid the liquid of the seed, and of the builds unless told otherwise
   * @param mass its mass, positive
   * @param hydration its liquid by its flour, 0 % or more
   * @return a levain without a build
   * @throws BakeryException if the mass is not positive or the hydration negative
   */
  public static Levain seed(
      String name,
      Ingredient flour,
      Ingredient liquid,
      Quantity<Mass> mass,
      Quantity<Dimensionless> hydration) {
    return new Levain(List.of(), flour, liquid)
        .next(name, 0, GRAM.measure("the mass", mass), hydration);
  }

  /**
   * The same with one more build, which takes the one before it whole.
   *
   * @param name the name of its stage
   * @param mass its mass when it is mixed, what it takes included
   * @param hydration its liquid by its flour, what it takes included
   * @return the levain
   * @throws BakeryException if what it takes does not fit into the mass and hydration
   */
  public Levain build(String name, Quantity<Mass> mass, Quantity<Dimensionless> hydration) {
    return next(name, last().mass, GRAM.measure("the mass", mass), hydration);
  }

  /**
   * The same with one more build, which takes some of the one before it; the rest is kept back.
   *
   * @param name the name of its stage
   * @param taken what it takes of the build before it, positive, at most its mass
   * @param mass its mass when it is mixed, what it takes included
   * @param hydration its liquid by its flour, what it takes included
   * @return the levain
   * @throws BakeryException if there is not so much of the build before it, or what it takes does
   *     not fit into the mass and hydration
   */
  public Levain build(
      String name, Quantity<Mass> taken, Quantity<Mass> mass, Quantity<Dimensionless> hydration) {
    double part = GRAM.measure("the taken", taken);
    if (!(part > 0 && part <= last().mass * (1 + 1e-9))) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "\"" + name + "\" can't take that much of \"" + last().name + "\"",
          Given.mass("the taken", taken).toString(),
          "there are " + GRAM.amount(last().mass) + " of it");
    }
    return next(name, Math.min(part, last().mass), GRAM.measure("the mass", mass), hydration);
  }

  private Levain next(String name, double taken, double mass, Quantity<Dimensionless> hydration) {
    if (name.isBlank() || builds.stream().anyMatch(b -> b.name.equalsIgnoreCase(name))) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "each build of a levain has a name of its own",
          "\"" + name + "\" after " + builds.stream().map(Build::name).toList(),
          "give it another name");
    }
    double ratio = FRACTION.measure("the hydration", hydration);
    if (!(mass > 0) || ratio < 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a build needs a mass above 0 and a hydration of 0 % or more",
          name
              + " of "
              + GRAM.amount(mass)
              + " at "
              + Given.ratio("the hydration", hydration).to(PERCENT),
          "give, for example, 300 g at 100 %");
    }
    double before = builds.isEmpty() ? 0 : last().hydration;
    double fresh = mass / (1 + ratio) - taken / (1 + before);
    double water = mass * ratio / (1 + ratio) - taken * before / (1 + before);
    if (fresh < -NOTHING * mass || water < -NOTHING * mass) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "what \"" + name + "\" takes does not fit into its mass and hydration",
          Numbers.significant(taken, 6)
              + " g at "
              + Numbers.significant(before * 100, 4)
              + " % into "
              + Numbers.significant(mass, 6)
              + " g at "
              + Numbers.significant(ratio * 100, 4)
              + " % leave "
              + Numbers.significant(fresh, 4)
              + " g for fresh flour and "
              + Numbers.significant(water, 4)
              + " g for fresh liquid",
          "make the build larger, take less, or move its hydration");
    }
    List<Build> more = new ArrayList<>(builds);
    more.add(
        new Build(name, flour, liquid, Math.max(0, fresh), Math.max(0, water), taken, mass, ratio));
    return new Levain(more, flour, liquid);
  }

  private Build last() {
    return builds.get(builds.size() - 1);
  }

  /**
   * The same with another flour for the builds to come.
   *
   * @param value the flour
   * @return the levain
   */
  public Levain withFlour(Ingredient value) {
    return new Levain(builds, value, liquid);
  }

  /**
   * The same with another liquid for the builds to come.
   *
   * @param value the liquid
   * @return the levain
   */
  public Levain withLiquid(Ingredient value) {
    return new Levain(builds, flour, value);
  }

  /**
   * The name of the last build, which goes into the dough.
   *
   * @return the name
   */
  public String name() {
    return last().name;
  }

  /**
   * The mass of the last build.
   *
   * @return the mass in grams, what it takes included
   */
  public Amount<Mass> mass() {
    return GRAM.amount(last().mass);
  }

  /**
   * All flour of the last build, that of the builds inside it included.
   *
   * @return the mass in grams
   */
  public Amount<Mass> flour() {
    return GRAM.amount(last().mass / (1 + last().hydration));
  }

  /**
   * The stages as drafts in masses, first to last, each taking the one before it.
   *
   * @return the drafts, for {@link Batch#ofStages} or {@link FormulaBuilder#stage(StageDraft)}
   */
  public List<StageDraft<Mass>> stages() {
    List<StageDraft<Mass>> drafts = new ArrayList<>();
    for (Build build : builds) {
      List<StageDraft.Part<Mass>> parts = new ArrayList<>();
      if (build.freshFlour > 0) {
        parts.add(new StageDraft.Part<>(build.flour, GRAM.amount(build.freshFlour), true));
      }
      if (build.freshLiquid > 0) {
        parts.add(new StageDraft.Part<>(build.liquid, GRAM.amount(build.freshLiquid), false));
      }
      StageDraft<Mass> draft = new StageDraft<>(build.name, StageKind.PREFERMENT, parts, List.of());
      Build before = drafts.isEmpty() ? build : builds.get(drafts.size() - 1);
      drafts.add(
          drafts.isEmpty()
              ? draft
              : build.taken == before.mass
                  ? draft.taking(before.name)
                  : draft.taking(before.name, GRAM.amount(build.taken)));
    }
    return drafts;
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Levain that
        && builds.equals(that.builds)
        && flour.equals(that.flour)
        && liquid.equals(that.liquid);
  }

  @Override
  public int hashCode() {
    return Objects.hash(builds, flour, liquid);
  }

  /** {@code Mother 20 g at 100 %, First 120 g at 100 %}. */
  @Override
  public String toString() {
    return builds.stream()
        .map(b -> b.name + " " + GRAM.amount(b.mass) + " at " + PERCENT.amount(b.hydration * 100))
        .collect(Collectors.joining(", "));
  }
}
