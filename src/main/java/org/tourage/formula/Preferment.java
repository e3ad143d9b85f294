package org.tourage.formula;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.ingredient.Ingredient;
import org.tourage.quantity.Given;

/**
 * A preferment that takes its flour, its water and its yeast out of the overall formula, so that
 * the overall percentages stay as they are written. Its flour is a share of the total flour; the
 * share of a levain counts the flour of the seed as well.
 *
 * <p>Unless told otherwise it takes the first flour and the first liquid of the formula, and no
 * yeast. Immutable; {@code with…} methods return copies.
 */
public final class Preferment implements Serializable {
  private static final long serialVersionUID = 1L;
  private static final double POOLISH_HYDRATION = 1.0;
  private static final double SPONGE_HYDRATION = 0.6;

  /** The name of the stage. */
  private final String name;

  /** Its flour by total flour. */
  private final double flourShare;

  /** Water by its flour; for a levain, of the seed. */
  private final double hydration;

  /** Yeast by its flour. */
  private final double yeast;

  /** The feedings of a levain. */
  private final List<Feeding> feedings;

  /** The flour to take, or the first. */
  private final @Nullable Ingredient flour;

  /** The liquid to take, or the first. */
  private final @Nullable Ingredient liquid;

  private Preferment(
      String name,
      double flourShare,
      double hydration,
      double yeast,
      List<Feeding> feedings,
      @Nullable Ingredient flour,
      @Nullable Ingredient liquid) {
    this.name = requireNonNull(name, "name");
    this.flourShare = flourShare;
    this.hydration = hydration;
    this.yeast = yeast;
    this.feedings = List.copyOf(feedings);
    this.flour = flour;
    this.liquid = liquid;
  }

  /**
   * A preferment of any hydration.
   *
   * @param name the name of the stage
   * @param flourShare its flour by the total flour, above 0 % up to 100 %
   * @param hydration its water by its flour, 0 % or more
   * @return the preferment
   * @throws BakeryException if a share can't be
   */
  public static Preferment of(
      String name, Quantity<Dimensionless> flourShare, Quantity<Dimensionless> hydration) {
    double share = FRACTION.measure("the flour share", flourShare);
    if (!(share > 0 && share <= 1)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a preferment can't hold this share of the flour",
          Given.ratio("the flour share", flourShare).to(PERCENT).toString(),
          "give more than 0 % and at most 100 % of the total flour");
    }
    return new Preferment(
        name, share, notNegative("hydration", hydration), 0, List.of(), null, null);
  }

  private static double notNegative(String what, Quantity<Dimensionless> ratio) {
    double value = FRACTION.measure("the ratio", ratio);
    if (value < 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "the " + what + " can't be negative",
          Given.ratio("the ratio", ratio).to(PERCENT).toString(),
          "give 0 % or more of the flour of the preferment");
    }
    return value;
  }

  /**
   * A poolish: as much water as flour (common practice).
   *
   * @param flourShare its flour by the total flour
   * @return the preferment
   */
  public static Preferment poolish(Quantity<Dimensionless> flourShare) {
    return of("Poolish", flourShare, FRACTION.amount(POOLISH_HYDRATION));
  }

  /**
   * A stiff sponge of 60 % hydration (common practice).
   *
   * @param flourShare its flour by the total flour
   * @return the preferment
   */
  public static Preferment sponge(Quantity<Dimensionless> flourShare) {
    return of("Sponge", flourShare, FRACTION.amount(SPONGE_HYDRATION));
  }

  /**
   * A levain built from a seed by one or more feedings. Each build takes the one before it whole.
   *
   * @param flourShare all its flour, that of the seed included, by the total flour
   * @param seedHydration water by flour in the seed
   * @param feedings the feedings, first to last, at least one
   * @return the preferment
   * @throws BakeryException if there is no feeding or a share can't be
   */
  public static Preferment levain(
      Quantity<Dimensionless> flourShare,
      Quantity<Dimensionless> seedHydration,
      Feeding... feedings) {
    if (feedings.length == 0) {
      throw new BakeryException(
          Reason.MISSING,
          "a levain needs a feeding",
          "none",
          "give one like Feeding.parts(1, 4, 4)");
    }
    return of("Levain", flourShare, seedHydration).withFeedings(List.of(feedings));
  }

  private Preferment withFeedings(List<Feeding> list) {
    return new Preferment(name, flourShare, hydration, yeast, list, flour, liquid);
  }

  /**
   * The same under another name.
   *
   * @param value the name of the stage
   * @return the preferment
   */
  public Preferment withName(String value) {
    return new Preferment(value, flourShare, hydration, yeast, feedings, flour, liquid);
  }

  /**
   * The same with yeast, taken from the yeast of the formula.
   *
   * @param share yeast by the flour of the preferment
   * @return the preferment
   */
  public Preferment withYeast(Quantity<Dimensionless> share) {
    return new Preferment(
        name, flourShare, hydration, notNegative("yeast", share), feedings, flour, liquid);
  }

  /**
   * The same with a flour other than the first.
   *
   * @param value the flour, which must be in the formula
   * @return the preferment
   */
  public Preferment withFlour(Ingredient value) {
    return new Preferment(
        name, flourShare, hydration, yeast, feedings, requireNonNull(value, "value"), liquid);
  }

  /**
   * The same with a liquid other than the first.
   *
   * @param value the liquid, which must be in the formula
   * @return the preferment
   */
  public Preferment withLiquid(Ingredient value) {
    return new Preferment(
        name, flourShare, hydration, yeast, feedings, flour, requireNonNull(value, "value"));
  }

  @Nullable Ingredient flour() {
    return flour;
  }

  @Nullable Ingredient liquid() {
    return liquid;
  }

  /** One step of making the preferment, in shares of total flour. */
  record Step(String name, double flour, double liquid, double yeast) {}

  /** The steps, first to last; each takes the one before it. */
  List<Step> steps() {
    if (feedings.isEmpty()) {
      return List.of(new Step(name, flourShare, flourShare * hydration, flourShare * yeast));
    }
    // from the last build back, so that a thousand feedings don't grow beyond all numbers
    int n = feedings.size();
    double[] fresh = new double[n];
    double[] water = new double[n];
    double before = 1;
    double flourSum = 0;
    for (int i = n - 1; i >= 0; i--) {
      Feeding feeding = feedings.get(i);
      double parts = feeding.seed() + feeding.flour() + feeding.water();
      fresh[i] = before * feeding.flour() / parts;
      water[i] = before * feeding.water() / parts;
      before *= feeding.seed() / parts;
      flourSum += fresh[i];
    }
    double seedFlour = before / (1 + hydration);
    double scale = flourShare / (flourSum + seedFlour);
    List<Step> steps = new ArrayList<>();
    steps.add(new Step(name + " seed", seedFlour * scale, hydration * seedFlour * scale, 0));
    for (int i = 0; i < n; i++) {
      String label = n == 1 ? name : name + " build " + (i + 1);
      double added = i == n - 1 ? yeast * flourShare : 0;
      steps.add(new Step(label, fresh[i] * scale, water[i] * scale, added));
    }
    return steps;
  }

  /** {@code Poolish of 30 % of the flour}. */
  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Preferment that
        && name.equals(that.name)
        && Double.compare(flourShare, that.flourShare) == 0
        && Double.compare(hydration, that.hydration) == 0
        && Double.compare(yeast, that.yeast) == 0
        && feedings.equals(that.feedings)
        && Objects.equals(flour, that.flour)
        && Objects.equals(liquid, that.liquid);
  }

  @Override
  public int hashCode() {
    return Objects.hash(name, flourShare, hydration, yeast, feedings, flour, liquid);
  }

  @Override
  public String toString() {
    return name + " of " + PERCENT.amount(flourShare * 100) + " of the flour";
  }
}
