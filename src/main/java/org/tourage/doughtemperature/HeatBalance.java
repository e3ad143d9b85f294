package org.tourage.doughtemperature;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.JOULE;
import static org.tourage.quantity.BakeryUnits.KILOGRAM;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Power;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Explained;
import org.tourage.advice.Working;
import org.tourage.formula.Batch;
import org.tourage.ingredient.YeastForm;
import org.tourage.physics.Constituents;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.BakeryUnits;
import org.tourage.quantity.Given;
import org.tourage.quantity.TemperatureDifference;

/**
 * The water temperature from the heat that goes in and out, in place of the factor rule: what the
 * parts, the liquid, the mixer and the wetting of the flour bring must be what the dough holds at
 * its target.
 *
 * <p>Σ m·c·(T − T_target) over all parts and the liquid + mixing + hydration − loss = 0, with
 * constant specific heats. Ice counts as water at 0 °C less its heat of melting. Below 0 °C the
 * liquid temperature is a demand for cold, on the same straight line.
 *
 * <p>Immutable; each method returns a copy.
 *
 * @param target the wanted temperature of the dough
 * @param parts everything but the liquid
 * @param liquid the mass of water and other liquids that are poured in together, ice included
 * @param liquidSpecificHeat its specific heat, J/(kg·K)
 * @param mixing what the mixer puts in
 * @param hydration what the wetting of the flour gives
 * @param loss what is lost to bowl and room
 */
public record HeatBalance(
    Amount<Temperature> target,
    List<MixPart> parts,
    Amount<Mass> liquid,
    double liquidSpecificHeat,
    Amount<Energy> mixing,
    Amount<Energy> hydration,
    Amount<Energy> loss)
    implements Explained, Serializable {

  /** Specific heat of water, J/(kg·K): common handbook value at 15 °C (from memory). */
  public static final double WATER_SPECIFIC_HEAT = 4186;

  /** Specific heat of ice near 0 °C, J/(kg·K): common handbook value (from memory). */
  public static final double ICE_SPECIFIC_HEAT = 2050;

  /** Heat of melting of ice, J/kg: CRC Handbook of Chemistry and Physics (from memory). */
  public static final double HEAT_OF_MELTING = 333_550;

  /** °C. */
  private static final double ABSOLUTE_ZERO = -273.15;

  /**
   * Checks the liquid and copies the list.
   *
   * @param target the wanted temperature of the dough
   * @param parts everything but the liquid
   * @param liquid the mass of water and other liquids that are poured in together, ice included
   * @param liquidSpecificHeat its specific heat, J/(kg·K)
   * @param mixing what the mixer puts in
   * @param hydration what the wetting of the flour gives
   * @param loss what is lost to bowl and room
   */
  public HeatBalance {
    requireNonNull(target, "target");
    requireNonNull(mixing, "mixing");
    requireNonNull(hydration, "hydration");
    requireNonNull(loss, "loss");
    parts = List.copyOf(parts);
    if (liquid.value() <= 0 || !(liquidSpecificHeat > 0) || Double.isInfinite(liquidSpecificHeat)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "the balance needs liquid whose temperature can be chosen",
          liquid + ", " + liquidSpecificHeat + " J/(kg·K)",
          "give a positive mass and specific heat");
    }
  }

  /**
   * A balance with water and nothing else yet.
   *
   * @param target the wanted temperature of the dough
   * @param water the mass of the water, ice included
   * @return the balance
   */
  public static HeatBalance of(Quantity<Temperature> target, Quantity<Mass> water) {
    Amount<Energy> none = JOULE.amount(0);
    return new HeatBalance(
        Given.temperature("the target", target),
        List.of(),
        Given.mass("the water", water),
        WATER_SPECIFIC_HEAT,
        none,
        none,
        none);
  }

  /**
   * The balance of the final dough of a batch: its free water is the liquid, everything else, what
   * stages bring included, has one temperature. {@link StageMix} takes another stage, and more
   * temperatures. Mixing, hydration and loss are still to be given.
   *
   * @param batch the batch
   * @param target the wanted temperature of the dough
   * @param ingredients the temperature of everything but the free liquid
   * @return the balance
   * @throws BakeryException if the final dough has no free liquid
   */
  public static HeatBalance of(
      Batch batch, Quantity<Temperature> target, Quantity<Temperature> ingredients) {
    return StageMix.of(batch, ingredients, ingredients).balance(target);
  }

  /**
   * Adds a part, or the bowl.
   *
   * @param name what it is
   * @param mass its mass
   * @param temperature its temperature before mixing
   * @param specificHeat J/(kg·K): flour about 1800, dough 2500 to 3000, steel 480
   * @return the balance
   */
  public HeatBalance part(
      String name, Quantity<Mass> mass, Quantity<Temperature> temperature, double specificHeat) {
    return with(MixPart.of(name, mass, temperature, specificHeat));
  }

  private HeatBalance with(MixPart part) {
    List<MixPart> more = new ArrayList<>(parts);
    more.add(part);
    return new HeatBalance(target, more, liquid, liquidSpecificHeat, mixing, hydration, loss);
  }

  /**
   * Adds a part that is frozen: what its ice takes to melt is taken from the dough. All its water
   * is taken to be ice below 0 °C.
   *
   * @param name what it is
   * @param mass its mass
   * @param temperature its temperature, −40 °C to 0 °C
   * @param food what it is made of; specific heats by Choi and Okos (1986)
   * @return the balance
   */
  public HeatBalance frozen(
      String name, Quantity<Mass> mass, Quantity<Temperature> temperature, Constituents food) {
    return with(MixPart.frozen(name, mass, temperature, food));
  }

  /**
   * Changes the temperature of one part, for example of chilled flour.
   *
   * @param name the name of the part
   * @param temperature its temperature before mixing
   * @return the balance
   * @throws BakeryException if there is no part of that name
   */
  public HeatBalance partAt(String name, Quantity<Temperature> temperature) {
    List<MixPart> changed = new ArrayList<>();
    boolean found = false;
    for (MixPart part : parts) {
      boolean it = part.name().equals(name);
      found |= it;
      if (it && part.melting().value() != 0) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            "a frozen part takes another heat to thaw from another temperature",
            name,
            "leave it out here and add it with frozen(…)");
      }
      changed.add(
          it
              ? MixPart.of(
                  name,
                  part.mass(),
                  Given.temperature("the temperature", temperature),
                  part.specificHeat())
              : part);
    }
    if (!found) {
      throw BakeryException.unknownName(
          "no part of that name", name, parts.stream().map(MixPart::name).toList());
    }
    return new HeatBalance(target, changed, liquid, liquidSpecificHeat, mixing, hydration, loss);
  }

  /**
   * Whether the water suits a form of yeast that is stirred into it.
   *
   * @param form the form of the yeast
   * @return advice if the water is too warm or too cold for it, with the dough that the nearest
   *     suitable water gives and how much warmer or colder the other parts must be instead
   */
  public List<Advice> suits(YeastForm form) {
    return YeastWater.suits(this, form);
  }

  /**
   * Sets what the mixer puts in.
   *
   * @param energy the energy
   * @return the balance
   */
  public HeatBalance mixing(Quantity<Energy> energy) {
    return new HeatBalance(
        target,
        parts,
        liquid,
        liquidSpecificHeat,
        Given.energy("the energy", energy),
        hydration,
        loss);
  }

  /**
   * Sets what the mixer puts in by its power and the time.
   *
   * @param power the power that reaches the dough
   * @param time the mixing time
   * @return the balance
   */
  public HeatBalance mixing(Quantity<Power> power, Quantity<Time> time) {
    return mixing(
        JOULE.amount(
            BakeryUnits.WATT.measure("the power", power)
                * BakeryUnits.SECOND.measure("the time", time)));
  }

  /**
   * Sets what the mixer puts in by the rise of a dough like this one while it was mixed, its parts
   * and bowl included. The wetting of its flour is in it: leave hydration at nothing.
   *
   * @param rise the rise, 0 K to 25 K (45 °F); no friction of a factor rule
   * @return the balance
   */
  public HeatBalance mixing(TemperatureDifference rise) {
    return mixing(JOULE.amount(mixture().capacity() * Readings.rise(rise).celsiusDegrees()));
  }

  /**
   * Sets what the wetting of the flour gives. Two traditions give about 15 kJ, one for each
   * kilogram of flour (6.5 Btu/lb, from memory), one for each kilogram of dough (Y.A. Çengel and
   * M.A. Boles, Thermodynamics, 8th ed., problem 5-157): say the energy, not the rule.
   *
   * @param energy the energy
   * @return the balance
   */
  public HeatBalance hydration(Quantity<Energy> energy) {
    return new HeatBalance(
        target,
        parts,
        liquid,
        liquidSpecificHeat,
        mixing,
        Given.energy("the energy", energy),
        loss);
  }

  /**
   * Sets what is lost to the bowl and the room.
   *
   * @param energy the energy
   * @return the balance
   */
  public HeatBalance loss(Quantity<Energy> energy) {
    return new HeatBalance(
        target,
        parts,
        liquid,
        liquidSpecificHeat,
        mixing,
        hydration,
        Given.energy("the energy", energy));
  }

  Mixture mixture() {
    double extra = mixing.in(JOULE) + hydration.in(JOULE) - loss.in(JOULE);
    return new Mixture(parts, liquid.in(KILOGRAM), liquidSpecificHeat, extra);
  }

  /**
   * The temperature that the liquid needs. Where no liquid has it, it is a demand for cold or
   * warmth.
   *
   * @return T_target − (mixing + hydration − loss + Σ m·c·(T − T_target)) / (m·c of the liquid)
   * @throws BakeryException if there is so little liquid that the demand lies below absolute zero;
   *     {@link WaterPlan} has levers then
   */
  public Amount<Temperature> waterTemperature() {
    double demand = demand();
    if (demand < ABSOLUTE_ZERO) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no liquid is cold enough for this dough",
          liquid + " for dough at " + target,
          "chill the other parts, mix for less time, or accept a warmer dough");
    }
    return CELSIUS.amount(demand);
  }

  /** What the liquid needs on the line of liquid water, °C. */
  private double demand() {
    return mixture().liquidFor(target.in(CELSIUS));
  }

  boolean outOfReach() {
    return demand() < ABSOLUTE_ZERO;
  }

  /**
   * The temperature that the dough gets from liquid at some temperature.
   *
   * @param water the temperature of the liquid
   * @return the temperature of the dough
   */
  public Amount<Temperature> doughTemperature(Quantity<Temperature> water) {
    return CELSIUS.amount(mixture().dough(CELSIUS.measure("the water", water)));
  }

  /**
   * The temperature that the dough gets from tap water and ice.
   *
   * @param tap the temperature of the liquid that is not ice
   * @param ice the mass of the ice, a part of the liquid
   * @param iceTemperature the temperature of the ice, 0 °C or below
   * @return the temperature of the dough
   */
  public Amount<Temperature> doughTemperature(
      Quantity<Temperature> tap, Quantity<Mass> ice, Quantity<Temperature> iceTemperature) {
    double frozen = KILOGRAM.measure("the ice", ice);
    double cold = CELSIUS.measure("the ice temperature", iceTemperature);
    checkIce(frozen, cold);
    Mixture mixture = mixture();
    return CELSIUS.amount(
        mixture.dough(mixture.iced(CELSIUS.measure("the tap", tap), frozen, cold)));
  }

  private void checkIce(double kilograms, double celsius) {
    if (kilograms < 0 || kilograms > liquid.in(KILOGRAM) || celsius > 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "this can't be the ice",
          kilograms + " kg at " + celsius + " °C of " + liquid + " liquid",
          "give at most the liquid, at 0 °C (32 °F) or below");
    }
  }

  /**
   * The ice that brings tap water to the temperature needed.
   *
   * @param tap the temperature of the tap water
   * @param iceTemperature the temperature of the ice, 0 °C or below
   * @return the mass, a part of the liquid; 0 g where the tap water is cold enough
   * @throws BakeryException if all the liquid as ice would still be too warm; the message says what
   *     the dough would reach and how much colder the other parts must be
   */
  public Amount<Mass> ice(Quantity<Temperature> tap, Quantity<Temperature> iceTemperature) {
    double warm = Readings.liquid("tap water", tap).in(CELSIUS);
    double cold = CELSIUS.measure("the ice temperature", iceTemperature);
    checkIce(0, cold);
    Mixture mixture = mixture();
    double ice = mixture.ice(warm, mixture.liquidFor(target.in(CELSIUS)), cold);
    if (ice > liquid.in(KILOGRAM)) {
      throw BalanceWorking.tooWarm(this, doughTemperature(tap, liquid, iceTemperature));
    }
    return KILOGRAM.amount(ice).to(BakeryUnits.GRAM);
  }

  /**
   * How far the balance is from closing at the temperature that it gives: a check of the
   * arithmetic.
   *
   * @return what goes in less what the dough holds, over the heat moved; 0 but for rounding
   */
  public double closure() {
    double goal = target.in(CELSIUS);
    double liquids = mixture().liquidCapacity() * (demand() - goal);
    double extra = mixture().extra() - mixture().melting();
    double sum = extra + liquids;
    double moved = Math.abs(extra) + Math.abs(liquids);
    for (MixPart part : parts) {
      double heat = part.capacity() * (part.temperature().in(CELSIUS) - goal);
      sum += heat;
      moved += Math.abs(heat);
    }
    return moved == 0 ? 0 : sum / moved;
  }

  /**
   * How the factor rule compares; {@link WaterPlan#comparison()} knows more of the day.
   *
   * @param rule the rule for the same dough
   * @return advice that says how far it is off and why; none within 2 K
   */
  public List<Advice> compare(FactorRule rule) {
    Mixture mixture = mixture();
    return RuleComparison.of(
            rule.water(),
            waterTemperature(),
            RuleComparison.Taken.BALANCE,
            RuleComparison.weighsAlike(mixture.liquidCapacity() / mixture.capacity()))
        .advice();
  }

  @Override
  public List<Advice> advice() {
    return outOfReach()
        ? List.of(
            WaterAdvice.notColdEnough(
                "no liquid is cold enough for dough at "
                    + AmountFormat.sideBySide().temperature(target),
                "Chill the other parts, mix for less time, or accept a warmer dough"))
        : YeastWater.advice(waterTemperature());
  }

  @Override
  public Working working() {
    return BalanceWorking.of(this);
  }

  /** {@code water at 13.9 °C (57 °F) for dough at 25 °C (77 °F) by heat balance}. */
  @Override
  public String toString() {
    AmountFormat format = AmountFormat.sideBySide();
    return (outOfReach()
            ? "no water is cold enough"
            : "water at " + format.temperature(waterTemperature()))
        + " for dough at "
        + format.temperature(target)
        + " by heat balance";
  }
}
