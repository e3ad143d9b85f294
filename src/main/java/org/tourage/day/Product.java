package org.tourage.day;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.fermentation.ColdTail;
import org.tourage.fermentation.RateModel;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.formula.HouseholdRecipe;
import org.tourage.ingredient.Ingredient;
import org.tourage.oven.DoughKind;
import org.tourage.oven.ThermalDeath;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Amounts;
import org.tourage.quantity.Given;

/**
 * What is made: the formula at the size that the recipe gives, its procedure and its make-up, and
 * what the baker knows of this dough.
 *
 * <pre>{@code
 * Product.of(formula, procedure).ofKind(DoughKind.LEAN).seen(2, minutes(90), celsius(24));
 * }</pre>
 */
public final class Product implements Serializable {
  private static final long serialVersionUID = 1L;

  private final String name;
  private final Batch given;
  private final @Nullable HouseholdRecipe recipe;
  private final Procedure procedure;
  private final Extras extras;

  /** What may be added to a product. */
  private record Extras(
      MakeUp makeUp,
      @Nullable DoughKind kind,
      @Nullable SeenRise seen,
      @Nullable RateModel rate,
      @Nullable ThermalDeath kill,
      List<PartAt> temperatures)
      implements Serializable {
    static final Extras NONE = new Extras(MakeUp.DIVIDED, null, null, null, null, List.of());

    Extras {
      requireNonNull(makeUp, "makeUp");
      temperatures = List.copyOf(temperatures);
    }
  }

  /**
   * A rise that somebody saw in this dough.
   *
   * @param growth volume by volume
   * @param time how long it took
   * @param temperature how warm the dough was
   */
  public record SeenRise(double growth, Amount<Time> time, Amount<Temperature> temperature)
      implements Serializable {
    /**
     * Checks the figures.
     *
     * @param growth volume by volume, above 1 up to 10
     * @param time how long it took
     * @param temperature how warm the dough was, 0 °C to 50 °C
     */
    public SeenRise {
      requireNonNull(time, "time");
      requireNonNull(temperature, "temperature");
      Cue.growth("seen", growth);
      Ranges.within("rise at this temperature", temperature, 0, 50);
      if (!(time.value() > 0)) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE, "a rise takes time", time.toString(), "give more than 0 min");
      }
    }
  }

  /**
   * An ingredient that comes into the mixer at a temperature of its own.
   *
   * @param ingredient the ingredient
   * @param place where it stood
   */
  public record PartAt(Ingredient ingredient, Place place) implements Serializable {
    /**
     * Checks that both are there.
     *
     * @param ingredient the ingredient
     * @param place where it stood
     */
    public PartAt {
      requireNonNull(ingredient, "ingredient");
      requireNonNull(place, "place");
    }
  }

  private Product(
      String name,
      Batch given,
      @Nullable HouseholdRecipe recipe,
      Procedure procedure,
      Extras extras) {
    this.name = Names.check("a product", "name", name);
    this.given = requireNonNull(given, "given");
    this.recipe = recipe;
    this.procedure = requireNonNull(procedure, "procedure");
    this.extras = extras;
    StepOrder.check(procedure.steps(), given.formula());
  }

  /**
   * A product of a formula, at the size of 1 kg of flour where no order says otherwise.
   *
   * @param formula the formula
   * @param procedure its steps
   * @return the product, divided by weight
   * @throws BakeryException if a step names no stage of it, or a stage is ready only after it is
   *     needed
   */
  public static Product of(Formula formula, Procedure procedure) {
    requireNonNull(formula, "formula");
    return of(formula.forFlour(Amounts.kilograms(1)), procedure);
  }

  /**
   * A product of a formula at a size.
   *
   * @param batch the formula and its size
   * @param procedure its steps
   * @return the product, divided by weight
   * @throws BakeryException if a step names no stage of it, or a stage is ready only after it is
   *     needed
   */
  public static Product of(Batch batch, Procedure procedure) {
    requireNonNull(batch, "batch");
    return new Product(batch.formula().name(), batch, null, procedure, Extras.NONE);
  }

  /**
   * A product of a household recipe at the size that it gives.
   *
   * @param recipe the recipe
   * @param procedure its steps
   * @return the product, divided by weight
   * @throws BakeryException if a step names no stage of it, or a stage is ready only after it is
   *     needed
   */
  public static Product of(HouseholdRecipe recipe, Procedure procedure) {
    requireNonNull(recipe, "recipe");
    return new Product(recipe.name(), recipe.batch(), recipe, procedure, Extras.NONE);
  }

  private Product with(Extras more) {
    return new Product(name, given, recipe, procedure, more);
  }

  /**
   * The product with another make-up.
   *
   * @param value how pieces come from the dough
   * @return the changed product
   */
  public Product madeUp(MakeUp value) {
    requireNonNull(value, "value");
    return with(
        new Extras(value, extras.kind, extras.seen, extras.rate, extras.kill, extras.temperatures));
  }

  /**
   * The product of a kind of dough.
   *
   * @param value the kind, which says when it is done
   * @return the changed product
   */
  public Product ofKind(DoughKind value) {
    return with(
        new Extras(
            extras.makeUp,
            requireNonNull(value, "value"),
            extras.seen,
            extras.rate,
            extras.kill,
            extras.temperatures));
  }

  /**
   * The product with a rise that was seen.
   *
   * @param growth volume by volume, above 1
   * @param time how long it took
   * @param temperature how warm the dough was
   * @return the changed product
   */
  public Product seen(double growth, Quantity<Time> time, Quantity<Temperature> temperature) {
    requireNonNull(time, "time");
    requireNonNull(temperature, "temperature");
    return with(
        new Extras(
            extras.makeUp,
            extras.kind,
            new SeenRise(
                growth,
                Given.time("the time", time),
                Given.temperature("the temperature", temperature)),
            extras.rate,
            extras.kill,
            extras.temperatures));
  }

  /**
   * The product with another rate model.
   *
   * @param value how the rate of the rise follows the temperature
   * @return the changed product
   */
  public Product fermenting(RateModel value) {
    return with(
        new Extras(
            extras.makeUp,
            extras.kind,
            extras.seen,
            requireNonNull(value, "value"),
            extras.kill,
            extras.temperatures));
  }

  /**
   * The product with a published case of thermal death to be reckoned with its core.
   *
   * @param value the case
   * @return the changed product
   */
  public Product killing(ThermalDeath value) {
    return with(
        new Extras(
            extras.makeUp,
            extras.kind,
            extras.seen,
            extras.rate,
            requireNonNull(value, "value"),
            extras.temperatures));
  }

  /**
   * The product with an ingredient that comes cold or warm.
   *
   * @param ingredient the ingredient
   * @param place where it stood, for example {@link Place#REFRIGERATOR}
   * @return the changed product
   */
  public Product with(Ingredient ingredient, Place place) {
    List<PartAt> more = new ArrayList<>(extras.temperatures);
    more.add(new PartAt(ingredient, place));
    return with(
        new Extras(extras.makeUp, extras.kind, extras.seen, extras.rate, extras.kill, more));
  }

  /**
   * What it is called.
   *
   * @return the name
   */
  public String name() {
    return name;
  }

  /**
   * The formula at the size that the recipe gives.
   *
   * @return the batch
   */
  public Batch given() {
    return given;
  }

  /**
   * The household recipe.
   *
   * @return the recipe, empty where a formula was given
   */
  public Optional<HouseholdRecipe> recipe() {
    return Optional.ofNullable(recipe);
  }

  /**
   * Its steps.
   *
   * @return the procedure
   */
  public Procedure procedure() {
    return procedure;
  }

  /**
   * How pieces come from the dough.
   *
   * @return the make-up
   */
  public MakeUp makeUp() {
    return extras.makeUp;
  }

  /**
   * What kind of dough it is.
   *
   * @return the kind, empty if it was not said
   */
  public Optional<DoughKind> kind() {
    return Optional.ofNullable(extras.kind);
  }

  /**
   * The rise that was seen.
   *
   * @return the rise, empty if none was
   */
  public Optional<SeenRise> seenRise() {
    return Optional.ofNullable(extras.seen);
  }

  /**
   * How the rate of the rise follows the temperature.
   *
   * @return the model
   */
  public RateModel rate() {
    return extras.rate == null ? ColdTail.bakersYeast() : extras.rate;
  }

  /**
   * The case of thermal death to be reckoned.
   *
   * @return the case, empty if nobody asked
   */
  public Optional<ThermalDeath> kill() {
    return Optional.ofNullable(extras.kill);
  }

  /**
   * The ingredients that come at a temperature of their own.
   *
   * @return them, in the order in which they were given
   */
  public List<PartAt> temperatures() {
    return extras.temperatures;
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Product that
        && name.equals(that.name)
        && given.equals(that.given)
        && Objects.equals(recipe, that.recipe)
        && procedure.equals(that.procedure)
        && extras.equals(that.extras);
  }

  @Override
  public int hashCode() {
    return Objects.hash(name, given, procedure);
  }

  @Override
  public String toString() {
    return name + ": " + procedure.steps().size() + " steps";
  }
}
