package org.tourage.doughtemperature;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.JOULE;
import static org.tourage.quantity.BakeryUnits.KILOGRAM;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.formula.Batch;
import org.tourage.formula.Stage;
import org.tourage.formula.StageKind;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.YeastForm;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Given;
import org.tourage.quantity.TemperatureDifference;

/**
 * The stage that is mixed now, with what goes into it and how warm each of it stands.
 *
 * <p>A stage that it takes (poolish, soaker, levain, old dough) comes in whole, as one part at one
 * temperature, its water and its flour with it. Roll-in and finish never count. What can be chosen
 * is the temperature of the <em>free liquid</em>: the water that is weighed into this stage and has
 * no stated temperature. Where the stage has none, it is its other drinks (milk, plant drinks,
 * cream, juice) that have no stated temperature. Eggs are never free.
 *
 * <p>Flour stands at the temperature of the flour; everything else, the stages and the bowl
 * included, stands at that of the room unless it is stated. Specific heats are those of Choi and
 * Okos (1986) at 20 °C for the compositions. A wet ingredient or a fat below 0 °C is frozen; dry
 * goods and sugars are only cold.
 *
 * <pre>{@code
 * StageMix.of(batch, celsius(20), celsius(22)).withStage("Poolish", celsius(24))
 *     .withIngredient("egg", celsius(5));
 * }</pre>
 *
 * <p>Immutable; each method returns a copy.
 *
 * @param batch the batch
 * @param stageName the name of the stage that is mixed now
 * @param flour the temperature of the flour
 * @param room the temperature of the room
 * @param readyStages the stated temperatures of stages that go in whole
 * @param ingredients the stated temperatures of ingredients, by their ids
 * @param bowl the mass of the bowl as steel; 0 g where it is not counted
 */
public record StageMix(
    Batch batch,
    String stageName,
    Amount<Temperature> flour,
    Amount<Temperature> room,
    List<Reading> readyStages,
    List<Reading> ingredients,
    Amount<Mass> bowl)
    implements Serializable {

  /**
   * A stated temperature.
   *
   * @param name the name of a stage, or the id of an ingredient
   * @param temperature its temperature before mixing
   */
  public record Reading(String name, Amount<Temperature> temperature) implements Serializable {
    /**
     * Checks that it can be.
     *
     * @param name the name of a stage, or the id of an ingredient
     * @param temperature its temperature before mixing, −40 °C to 100 °C
     */
    public Reading {
      requireNonNull(name, "name");
      Readings.within(name, temperature, -40, 100);
    }
  }

  /**
   * Checks the temperatures and the stage.
   *
   * @param batch the batch
   * @param stageName the name of the stage that is mixed now
   * @param flour the temperature of the flour, −30 °C to 60 °C
   * @param room the temperature of the room, −10 °C to 50 °C
   * @param readyStages the stated temperatures of stages that go in whole
   * @param ingredients the stated temperatures of ingredients, by their ids
   * @param bowl the mass of the bowl as steel; 0 g where it is not counted
   */
  public StageMix {
    Stage stage = batch.formula().stage(stageName);
    if (!stage.kind().inDough()) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "roll-in and finish are not mixed with water",
          "\"" + stageName + "\"",
          "name a preferment, a soaker or the final dough");
    }
    Readings.within("the flour", flour, -30, 60);
    Readings.within("the room", room, -10, 50);
    readyStages = List.copyOf(readyStages);
    ingredients = List.copyOf(ingredients);
    StageParts.check(stage, readyStages, ingredients);
    if (bowl.value() < 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE, "a bowl can't weigh this", bowl.toString(), "give 0 kg or more");
    }
  }

  /**
   * The final dough of a batch.
   *
   * @param batch the batch
   * @param flour the temperature of the flour
   * @param room the temperature of the room
   * @return the mix
   * @throws BakeryException if the formula has no final dough
   */
  public static StageMix of(Batch batch, Quantity<Temperature> flour, Quantity<Temperature> room) {
    Stage last = null;
    for (Stage stage : batch.formula().stages()) {
      last = stage.kind() == StageKind.FINAL_DOUGH ? stage : last;
    }
    if (last == null) {
      throw new BakeryException(
          Reason.MISSING,
          "there is no final dough to mix",
          batch.formula().name(),
          "name the stage that is mixed now");
    }
    return of(batch, last.name(), flour, room);
  }

  /**
   * One stage of a batch.
   *
   * @param batch the batch
   * @param stage the name of the stage that is mixed now
   * @param flour the temperature of the flour
   * @param room the temperature of the room
   * @return the mix
   */
  public static StageMix of(
      Batch batch, String stage, Quantity<Temperature> flour, Quantity<Temperature> room) {
    return new StageMix(
        batch,
        stage,
        Given.temperature("the flour", flour),
        Given.temperature("the room", room),
        List.of(),
        List.of(),
        KILOGRAM.amount(0));
  }

  /**
   * States how warm a stage is that goes in whole.
   *
   * @param name the name of a stage that this one takes
   * @param temperature its temperature when it goes in
   * @return the mix
   * @throws BakeryException if this stage takes none of that name
   */
  public StageMix withStage(String name, Quantity<Temperature> temperature) {
    String known =
        stage().takes().stream().filter(t -> t.equalsIgnoreCase(name)).findFirst().orElse(name);
    return new StageMix(
        batch, stageName, flour, room, stated(readyStages, known, temperature), ingredients, bowl);
  }

  /**
   * States how warm an ingredient of this stage is: cold eggs, milk, butter, or frozen ones. Water
   * whose temperature is stated is not free.
   *
   * @param name an ingredient that is weighed into this stage
   * @param temperature its temperature before mixing
   * @return the mix
   * @throws BakeryException if this stage has none of it
   */
  public StageMix withIngredient(String name, Quantity<Temperature> temperature) {
    return withIngredient(batch.formula().ingredient(name), temperature);
  }

  /**
   * States how warm an ingredient of this stage is.
   *
   * @param ingredient an ingredient that is weighed into this stage
   * @param temperature its temperature before mixing
   * @return the mix
   * @throws BakeryException if this stage has none of it
   */
  public StageMix withIngredient(Ingredient ingredient, Quantity<Temperature> temperature) {
    return new StageMix(
        batch,
        stageName,
        flour,
        room,
        readyStages,
        stated(ingredients, ingredient.id(), temperature),
        bowl);
  }

  /**
   * Counts the bowl, as steel at the temperature of the room.
   *
   * @param mass the mass of the bowl
   * @return the mix
   */
  public StageMix withBowl(Quantity<Mass> mass) {
    return new StageMix(
        batch, stageName, flour, room, readyStages, ingredients, Given.mass("the mass", mass));
  }

  private static List<Reading> stated(
      List<Reading> before, String name, Quantity<Temperature> temperature) {
    List<Reading> after = new ArrayList<>(before);
    after.removeIf(r -> r.name().equals(name));
    after.add(new Reading(name, Given.temperature("the temperature", temperature)));
    return after;
  }

  /** How warm a ready stage stands. */
  Amount<Temperature> ofStage(String name) {
    return stated(readyStages, name).orElse(room);
  }

  /** How warm an ingredient stands, if that is stated. */
  Optional<Amount<Temperature>> ofIngredient(Ingredient ingredient) {
    return stated(ingredients, ingredient.id());
  }

  private static Optional<Amount<Temperature>> stated(List<Reading> readings, String name) {
    return readings.stream()
        .filter(r -> r.name().equals(name))
        .map(Reading::temperature)
        .findFirst();
  }

  /**
   * The stage that is mixed now.
   *
   * @return the stage
   */
  public Stage stage() {
    return batch.formula().stage(stageName);
  }

  /**
   * The free liquid: what is poured in at a temperature that can be chosen.
   *
   * @return its mass in grams, 0 g if there is none
   */
  public Amount<Mass> freeLiquid() {
    return GRAM.amount(new StageParts(this).freeKilograms() * 1000);
  }

  /**
   * What the free liquid is.
   *
   * @return for example {@code water}; an empty text if there is none
   */
  public String freeLiquidName() {
    return new StageParts(this).freeName();
  }

  /**
   * Whether the free liquid is water, so that a part of it can be ice.
   *
   * @return false for milk and other drinks, and where there is none
   */
  public boolean freeLiquidIsWater() {
    return new StageParts(this).freeIsWater();
  }

  /** The parts with the temperatures that they can be brought to. */
  List<Levers.Movable> movables() {
    return new StageParts(this).movables();
  }

  /**
   * All parts but the free liquid.
   *
   * @return the lines of this stage, the stages that it takes, the bowl
   */
  public List<MixPart> parts() {
    return movables().stream().map(Levers.Movable::part).toList();
  }

  Mixture mixture(double extraJoules) {
    return new StageParts(this).mixture(extraJoules);
  }

  /** The flour that is wetted in this mix: that of ready stages is wet. */
  double dryFlourKilograms() {
    return new StageParts(this).dryFlourKilograms();
  }

  /**
   * The forms of yeast that are weighed into this stage.
   *
   * @return each form once, in the order of the lines
   */
  public List<YeastForm> yeasts() {
    return new StageParts(this).yeasts();
  }

  /** Whether something beside the flour stands at a stated temperature. */
  boolean hasStatedParts() {
    return !stage().takes().isEmpty() || !ingredients.isEmpty();
  }

  /**
   * The heat balance of this stage without mixer.
   *
   * @param target the wanted temperature of the dough
   * @return the balance; mixing, hydration and loss are still to be given
   * @throws BakeryException if the stage has no free liquid; {@link WaterPlan} has levers then
   */
  public HeatBalance balance(Quantity<Temperature> target) {
    Mixture mixture = mixture(0);
    if (mixture.liquid() == 0) {
      throw new BakeryException(
          Reason.MISSING,
          "the dough has no liquid whose temperature could be chosen",
          batch.formula().name() + ", " + stageName,
          "add water or another liquid, or ask a WaterPlan for levers");
    }
    Amount<Energy> none = JOULE.amount(0);
    return new HeatBalance(
        Given.temperature("the target", target),
        mixture.parts(),
        KILOGRAM.amount(mixture.liquid()),
        mixture.liquidSpecificHeat(),
        none,
        none,
        none);
  }

  /**
   * The heat balance of this stage in a mixer.
   *
   * @param target the wanted temperature of the dough
   * @param heat what the mixer gives
   * @return the balance
   * @throws BakeryException if the stage has no free liquid
   */
  public HeatBalance balance(Quantity<Temperature> target, MixerHeat heat) {
    return balance(target).mixing(heat.energy(this)).hydration(heat.wetting(this));
  }

  /**
   * How warm the dough gets when nobody tempers it: the balance of all that goes in.
   *
   * @param liquid the temperature at which the free liquid is poured, 0 °C to 55 °C; without
   *     meaning where there is none
   * @param heat what the mixer gives
   * @return the temperature of the mixed dough
   */
  public Amount<Temperature> dough(Quantity<Temperature> liquid, MixerHeat heat) {
    Amount<Temperature> poured =
        Readings.liquid("the liquid", Given.temperature("the liquid", liquid));
    Mixture mixture = mixture(heat.energy(this).in(JOULE) + heat.wetting(this).in(JOULE));
    return CELSIUS.amount(mixture.dough(poured.in(CELSIUS)));
  }

  /**
   * The factor rule with as many factors as the trade gives it: flour, room, and each preferment
   * that goes in.
   *
   * @param target the wanted temperature of the dough
   * @return the rule without friction
   */
  public FactorRule factorRule(Quantity<Temperature> target) {
    FactorRule rule = FactorRule.of(target).flour(flour).room(room);
    for (String name : stage().takes()) {
      if (batch.formula().stage(name).kind() == StageKind.PREFERMENT) {
        rule = rule.factor(name.toLowerCase(Locale.ROOT), stated(readyStages, name).orElse(room));
      }
    }
    return rule;
  }

  /**
   * The factor rule with a friction that stands for the heat of a mixer.
   *
   * @param target the wanted temperature of the dough
   * @param heat what the mixer gives
   * @return the rule
   */
  public FactorRule factorRule(Quantity<Temperature> target, MixerHeat heat) {
    FactorRule rule = factorRule(target);
    TemperatureDifference friction = heat.friction(this);
    // a friction that was measured may be negative, one that is typed in may not
    return new FactorRule(rule.target(), rule.factors(), friction);
  }

  /**
   * The water for a wanted dough.
   *
   * @param target the wanted temperature of the dough
   * @param heat what the mixer gives
   * @return the plan
   */
  public WaterPlan water(Quantity<Temperature> target, MixerHeat heat) {
    return WaterPlan.of(this, target, heat);
  }

  /** {@code Final dough of rolls, flour at 20 °C (68 °F), room at 22 °C (72 °F)}. */
  @Override
  public String toString() {
    AmountFormat format = AmountFormat.sideBySide();
    StringBuilder text = new StringBuilder(stageName + " of " + batch.formula().name());
    text.append(", flour at ").append(format.temperature(flour));
    text.append(", room at ").append(format.temperature(room));
    for (Reading reading : readyStages) {
      text.append(", ").append(reading.name()).append(" at ");
      text.append(format.temperature(reading.temperature()));
    }
    for (Reading reading : ingredients) {
      text.append(", ").append(reading.name()).append(" at ");
      text.append(format.temperature(reading.temperature()));
    }
    return text.toString();
  }
}
