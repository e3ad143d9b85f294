package org.tourage.doughtemperature;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.FAHRENHEIT;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Given;
import org.tourage.quantity.TemperatureDifference;

/**
 * The trade's factor rule for the water temperature: T_water = k · T_target − ΣT_i − friction,
 * where the T_i are readings (flour, room, preferment …) and k is one more than there are of them
 * (common practice). Friction is a difference, so °F and °C give the same water. The rule takes all
 * parts to count alike; it is rough for stiff, rich or large-preferment doughs.
 *
 * <pre>{@code
 * FactorRule.of(fahrenheit(76)).flour(fahrenheit(70)).room(fahrenheit(72))
 *     .friction(fahrenheitDegrees(24)).water(); // 62 °F
 * }</pre>
 *
 * <p>Immutable; each method returns a copy.
 *
 * @param target the wanted temperature of the dough
 * @param factors the readings
 * @param friction the number that a past mix leaves over; one that was measured in warm water and a
 *     cold room may be negative
 */
public record FactorRule(
    Amount<Temperature> target, List<Factor> factors, TemperatureDifference friction)
    implements Explained, Serializable {

  /**
   * One reading that goes into the rule.
   *
   * @param name what was measured
   * @param temperature its temperature
   */
  public record Factor(String name, Amount<Temperature> temperature) implements Serializable {
    /**
     * Checks that it can be.
     *
     * @param name what was measured
     * @param temperature its temperature, −40 °C to 100 °C
     */
    public Factor {
      requireNonNull(name, "name");
      Readings.within(name, temperature, -40, 100);
    }
  }

  /**
   * Copies the list.
   *
   * @param target the wanted temperature of the dough
   * @param factors the readings
   * @param friction the rise by mixing
   */
  public FactorRule {
    requireNonNull(target, "target");
    requireNonNull(friction, "friction");
    factors = List.copyOf(factors);
  }

  /**
   * Starts with the wanted temperature of the dough.
   *
   * @param target the temperature at the end of mixing
   * @return the rule without factors and friction
   */
  public static FactorRule of(Quantity<Temperature> target) {
    return new FactorRule(
        Given.temperature("the target", target), List.of(), TemperatureDifference.ZERO);
  }

  /**
   * Adds any reading.
   *
   * @param name what was measured
   * @param temperature its temperature
   * @return the rule
   */
  public FactorRule factor(String name, Quantity<Temperature> temperature) {
    List<Factor> more = new ArrayList<>(factors);
    more.add(new Factor(name, Given.temperature("the temperature", temperature)));
    return new FactorRule(target, more, friction);
  }

  /**
   * Adds the flour.
   *
   * @param temperature its temperature
   * @return the rule
   */
  public FactorRule flour(Quantity<Temperature> temperature) {
    return factor("flour", temperature);
  }

  /**
   * Adds the room.
   *
   * @param temperature its temperature
   * @return the rule
   */
  public FactorRule room(Quantity<Temperature> temperature) {
    return factor("room", temperature);
  }

  /**
   * Adds a preferment.
   *
   * @param temperature its temperature
   * @return the rule
   */
  public FactorRule preferment(Quantity<Temperature> temperature) {
    return factor("preferment", temperature);
  }

  /**
   * Sets the friction.
   *
   * @param friction a number of this rule, 0 K to 75 K (135 °F): as many times the rise in the
   *     mixer as the rule has temperatures, so not the rise itself
   * @return the rule
   * @throws BakeryException if it is negative or nonsense
   */
  public FactorRule friction(TemperatureDifference friction) {
    return new FactorRule(target, factors, Readings.friction(friction));
  }

  /**
   * The temperature that the water needs. Below freezing it is a demand for cold, to be met with
   * ice.
   *
   * @return the temperature, in the unit of the target
   */
  public Amount<Temperature> water() {
    double celsius = (factors.size() + 1) * target.in(CELSIUS);
    for (Factor factor : factors) {
      celsius -= factor.temperature().in(CELSIUS);
    }
    celsius -= friction.celsiusDegrees();
    Amount<Temperature> water = CELSIUS.amount(celsius);
    return inFahrenheit() ? water.to(FAHRENHEIT) : water;
  }

  private boolean inFahrenheit() {
    return target.bakeryUnit().equals(FAHRENHEIT);
  }

  /**
   * The friction that a past mix had: the number that makes the rule give the result that was
   * measured.
   *
   * @param waterUsed the temperature of the water of that mix
   * @return k · T_target − ΣT_i − T_water, with the measured dough temperature as the target
   */
  public TemperatureDifference frictionOfPastMix(Quantity<Temperature> waterUsed) {
    return TemperatureDifference.between(
        waterUsed, new FactorRule(target, factors, TemperatureDifference.ZERO).water());
  }

  /**
   * The ice for water that is not cold enough.
   *
   * @param water all the water of the dough, ice included
   * @param tap the temperature of the tap water
   * @return the plan
   */
  public IceRule ice(Quantity<Mass> water, Quantity<Temperature> tap) {
    return IceRule.of(water, tap, water());
  }

  @Override
  public List<Advice> advice() {
    return YeastWater.advice(water());
  }

  @Override
  public Working working() {
    boolean fahrenheit = inFahrenheit();
    StringBuilder numbers = new StringBuilder();
    numbers.append(factors.size() + 1).append(" × ").append(show(target, fahrenheit));
    StringBuilder equation = new StringBuilder("k·T_target");
    for (Factor factor : factors) {
      numbers.append(" − ").append(show(factor.temperature(), fahrenheit));
      equation.append(" − T_").append(factor.name());
    }
    double rise = fahrenheit ? friction.fahrenheitDegrees() : friction.celsiusDegrees();
    numbers.append(" − ").append(Numbers.significant(rise, 4));
    numbers.append(" = ").append(show(water(), fahrenheit)).append(fahrenheit ? " °F" : " °C");
    return Working.of(
        new WorkedLine(
            "T_water", equation + " − friction", numbers.toString(), Advice.COMMON_PRACTICE));
  }

  private static String show(Amount<Temperature> reading, boolean fahrenheit) {
    return Numbers.decimals(reading.in(fahrenheit ? FAHRENHEIT : CELSIUS), 1);
  }

  /** {@code water at 16.7 °C (62 °F) for dough at 24.4 °C (76 °F)}. */
  @Override
  public String toString() {
    AmountFormat format = AmountFormat.sideBySide();
    return "water at "
        + format.temperature(water())
        + " for dough at "
        + format.temperature(target);
  }
}
