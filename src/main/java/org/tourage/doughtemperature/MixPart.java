package org.tourage.doughtemperature;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.JOULE;
import static org.tourage.quantity.BakeryUnits.KILOGRAM;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.physics.ChoiOkos1986;
import org.tourage.physics.Constituents;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Given;

/**
 * A part of the dough whose temperature is what it is, or the bowl.
 *
 * @param name what it is
 * @param mass its mass, positive
 * @param temperature its temperature before mixing
 * @param specificHeat J/(kg·K), positive
 * @param melting what it takes to thaw beside m·c·T; 0 if it is not frozen
 */
public record MixPart(
    String name,
    Amount<Mass> mass,
    Amount<Temperature> temperature,
    double specificHeat,
    Amount<Energy> melting)
    implements Serializable {

  /**
   * Checks the figures.
   *
   * @param name what it is
   * @param mass its mass, positive
   * @param temperature its temperature before mixing
   * @param specificHeat J/(kg·K), positive
   * @param melting what it takes to thaw beside m·c·T; 0 if it is not frozen
   */
  public MixPart {
    requireNonNull(name, "name");
    requireNonNull(temperature, "temperature");
    requireNonNull(melting, "melting");
    if (mass.value() <= 0 || !(specificHeat > 0) || Double.isInfinite(specificHeat)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a part must have mass and specific heat",
          name + ": " + mass + ", " + specificHeat + " J/(kg·K)",
          "give positive figures");
    }
  }

  /**
   * A part that is not frozen.
   *
   * @param name what it is
   * @param mass its mass
   * @param temperature its temperature before mixing
   * @param specificHeat J/(kg·K): flour about 1800, dough 2500 to 3000, steel 480
   * @return the part
   */
  public static MixPart of(
      String name, Quantity<Mass> mass, Quantity<Temperature> temperature, double specificHeat) {
    return new MixPart(
        name,
        Given.mass("the mass", mass),
        Given.temperature("the temperature", temperature),
        specificHeat,
        JOULE.amount(0));
  }

  /**
   * A part that is frozen: what its ice takes to melt is taken from the dough. All its water is
   * taken to be ice below 0 °C. Specific heats by Choi and Okos (1986), ice at the middle of its
   * way to 0 °C.
   *
   * @param name what it is
   * @param mass its mass
   * @param temperature its temperature, −40 °C to 0 °C
   * @param food what it is made of
   * @return the part
   */
  public static MixPart frozen(
      String name, Quantity<Mass> mass, Quantity<Temperature> temperature, Constituents food) {
    double cold = CELSIUS.measure("the temperature", temperature);
    if (!(cold <= 0) || cold < -40) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "this part is not frozen",
          name + " at " + Given.temperature("the temperature", temperature),
          "give -40 °C to 0 °C (-40 °F to 32 °F), or add it with part(…)");
    }
    double water = food.water() / food.sum();
    double thawed = ChoiOkos1986.specificHeat(food, CELSIUS.amount(0));
    double waterThawed =
        ChoiOkos1986.specificHeat(new Constituents(1, 0, 0, 0, 0, 0), CELSIUS.amount(0));
    // ice at the middle of its way to 0 °C; the rest of the food as at 0 °C
    double frozen = thawed - water * (waterThawed - ChoiOkos1986.iceSpecificHeat(cold / 2));
    double melting =
        KILOGRAM.measure("the mass", mass)
            * (water * HeatBalance.HEAT_OF_MELTING + (thawed - frozen) * cold);
    return new MixPart(
        name,
        Given.mass("the mass", mass),
        Given.temperature("the temperature", temperature),
        thawed,
        JOULE.amount(melting));
  }

  /** J/K. */
  double capacity() {
    return mass.in(KILOGRAM) * specificHeat;
  }

  /** What it brings above itself at 0 °C and thawed, J. */
  double heat() {
    return capacity() * temperature.in(CELSIUS) - melting.in(JOULE);
  }
}
