package org.tourage.doughtemperature;

import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.GRAM;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Given;

/**
 * The trade's ice rule: ice = water · (T_tap − T_needed) / (T_tap + 80) in °C, or + 112 in °F. The
 * 80 is the heat of melting over the specific heat of water, 80 kcal/kg over 1 kcal/(kg K), for ice
 * at its melting point; 112 is 144 − 32 (144 Btu/lb). The ice is part of the water.
 *
 * @param water all the water, ice included
 * @param tap the temperature of the tap water, 0 °C to 55 °C (131 °F)
 * @param needed the temperature that the water needs
 */
public record IceRule(Amount<Mass> water, Amount<Temperature> tap, Amount<Temperature> needed)
    implements Explained, Serializable {
  /** Heat of melting over specific heat of water, K. */
  private static final double MELTING_KELVINS = 80;

  private static final double MUCH_ICE = 0.5;

  /**
   * Checks the ranges.
   *
   * @param water all the water, ice included
   * @param tap the temperature of the tap water
   * @param needed the temperature that the water needs
   */
  public IceRule {
    if (water.value() <= 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE, "there is no water", water.toString(), "give a positive mass");
    }
    Readings.liquid("tap water", tap);
    if (needed.in(CELSIUS) < -MELTING_KELVINS) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "even with all the water as ice the dough comes out too warm",
          "water needed at " + AmountFormat.sideBySide().temperature(needed),
          "chill the flour and the bowl, mix for less time, or accept a warmer dough");
    }
  }

  /**
   * The rule for any quantities.
   *
   * @param water all the water, ice included
   * @param tap the temperature of the tap water
   * @param needed the temperature that the water needs
   * @return the rule
   */
  public static IceRule of(
      Quantity<Mass> water, Quantity<Temperature> tap, Quantity<Temperature> needed) {
    return new IceRule(
        Given.mass("the water", water),
        Given.temperature("the tap", tap),
        Given.temperature("the needed", needed));
  }

  /**
   * The ice.
   *
   * @return its mass in grams; 0 g where tap water is cold enough
   */
  public Amount<Mass> ice() {
    double fall = tap.in(CELSIUS) - needed.in(CELSIUS);
    double share = fall <= 0 ? 0 : fall / (tap.in(CELSIUS) + MELTING_KELVINS);
    return GRAM.amount(water.in(GRAM) * share);
  }

  /**
   * The tap water.
   *
   * @return what the ice leaves of the water, in grams
   */
  public Amount<Mass> tapWater() {
    return water.to(GRAM).subtract(ice());
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>();
    if (ice().value() > MUCH_ICE * water.in(GRAM)) {
      advice.add(
          muchIce(
              ice(),
              water,
              "It must melt within the mix: crush it, and chill the flour to need less"));
    }
    return advice;
  }

  static Advice muchIce(Amount<Mass> ice, Amount<Mass> water, String remedy) {
    return Advice.of(
        "ICE_MUCH",
        AmountFormat.metric().mass(ice) + " of " + AmountFormat.metric().mass(water) + " is ice",
        remedy);
  }

  @Override
  public Working working() {
    return Working.of(
        new WorkedLine(
            "ice",
            "water · (T_tap − T_needed) / (T_tap + 80)",
            AmountFormat.metric().mass(water)
                + " × ("
                + Numbers.decimals(tap.in(CELSIUS), 1)
                + " − "
                + Numbers.decimals(needed.in(CELSIUS), 1)
                + ") / ("
                + Numbers.decimals(tap.in(CELSIUS), 1)
                + " + 80) = "
                + AmountFormat.metric().mass(ice()),
            Advice.COMMON_PRACTICE));
  }

  /** {@code 120 g ice and 380 g tap water at 18 °C (64 °F)}. */
  @Override
  public String toString() {
    AmountFormat format = AmountFormat.metric();
    return format.mass(ice())
        + " ice and "
        + format.mass(tapWater())
        + " tap water at "
        + AmountFormat.sideBySide().temperature(tap);
  }
}
