package org.tourage.physics;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.GRAM;

import java.io.Serializable;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Given;

/**
 * Water with sugars and salts in it. Immutable.
 *
 * <pre>{@code
 * Solution.of(grams(100)).with(Solute.SUCROSE, grams(150)).waterActivity();
 * }</pre>
 *
 * @param water the water
 * @param solutes what is dissolved in it
 */
public record Solution(Amount<Mass> water, Map<Solute, Amount<Mass>> solutes)
    implements Serializable {
  private static final double WATER_GRAMS_PER_MOLE = 18.015;

  /**
   * Copies the map and checks the masses.
   *
   * @param water the water, above 0 g
   * @param solutes what is dissolved in it, 0 g or more each
   */
  public Solution {
    EnumMap<Solute, Amount<Mass>> copy = new EnumMap<>(Solute.class);
    copy.putAll(solutes);
    solutes = Collections.unmodifiableMap(copy);
    boolean negative = solutes.values().stream().anyMatch(m -> m.value() < 0);
    if (water.value() <= 0 || negative) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no solution is made so",
          water + " of water with " + solutes,
          "give some water, and 0 g or more of each solute");
    }
  }

  /**
   * Plain water.
   *
   * @param water its mass, above 0 g
   * @return the solution
   * @throws BakeryException if there is none
   */
  public static Solution of(Quantity<Mass> water) {
    return new Solution(Given.mass("the water", water), Map.of());
  }

  /**
   * The same with a solute; what was said of it before is replaced.
   *
   * @param solute what is dissolved
   * @param mass how much, 0 g or more
   * @return the solution
   * @throws BakeryException if the mass is negative
   */
  public Solution with(Solute solute, Quantity<Mass> mass) {
    EnumMap<Solute, Amount<Mass>> more = new EnumMap<>(Solute.class);
    more.putAll(solutes);
    more.put(requireNonNull(solute, "solute"), Given.mass("the mass", mass));
    return new Solution(water, more);
  }

  /**
   * The water activity at about 25 °C: the product of what the sugars make of the water by {@link
   * Norrish1966} and what each salt makes of it by {@link Pitzer1973} (K.D. Ross, Food Technol.
   * 29/3 (1975) 26, from memory). The product is an approximation, good to about 0.01 down to 0.85.
   *
   * @return the water activity, at most 100 %
   * @throws BakeryException if the solution is thicker than the equations hold
   */
  public Amount<Dimensionless> waterActivity() {
    double sugars =
        Norrish1966.waterActivity(
            water.in(GRAM) / WATER_GRAMS_PER_MOLE, moles(Solute.SUCROSE), moles(Solute.GLUCOSE));
    double kilograms = water.in(GRAM) / 1000;
    double salts =
        Pitzer1973.sodiumChloride(moles(Solute.SODIUM_CHLORIDE) / kilograms)
            * Pitzer1973.potassiumChloride(moles(Solute.POTASSIUM_CHLORIDE) / kilograms);
    return FRACTION.amount(sugars * salts);
  }

  private double moles(Solute solute) {
    Amount<Mass> mass = solutes.get(solute);
    return mass == null ? 0 : mass.in(GRAM) / solute.gramsPerMole();
  }

  /** {@code 100 g of water with 150 g sucrose}. */
  @Override
  public String toString() {
    StringBuilder out = new StringBuilder(water + " of water");
    solutes.forEach(
        (solute, mass) ->
            out.append(out.indexOf(" with ") < 0 ? " with " : ", ")
                .append(mass)
                .append(' ')
                .append(solute.word()));
    return out.toString();
  }
}
