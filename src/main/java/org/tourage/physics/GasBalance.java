package org.tourage.physics;

import java.io.Serializable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * The gas of a dough that warms: air and carbon dioxide in the cells, dissolved carbon dioxide that
 * leaves the water, vapour at its pressure over moist crumb, and what yeast makes until it dies.
 * Ideal gas at the pressure of the air; what is dissolved keeps its balance with the cells.
 *
 * <p>Henry's constant of carbon dioxide in water: ln(H/MPa) = −6.8346 + 1.2817e4/T − 3.7668e6/T² +
 * 2.997e8/T³ (J.J. Carroll, J.D. Slupsky and A.E. Mather, J. Phys. Chem. Ref. Data 20 (1991) 1201).
 * Salt and bound water lower what is dissolved and are not counted. Yeast makes gas faster by 2.2
 * for 10 K up to 38 °C, no faster above (common practice: 2 to 3), and dies with D = 5.67 min at 55
 * °C and z = 4.74 K (L.H. Channaiah and others, J. Food Prot. 79 (2016) 544).
 *
 * @param gas the share of gas by volume at the start, 0 to below 1
 * @param water kg of water for each m³ at the start
 * @param celsius the temperature at the start
 * @param pressure of the air, Pa
 * @param saturation the share of carbon dioxide that is dissolved, of what the water holds, 0 to 1
 * @param perHour gas that yeast makes in an hour at the start, as a share of the volume
 */
public record GasBalance(
    double gas, double water, double celsius, double pressure, double saturation, double perHour)
    implements Serializable {
  private static final double GAS_CONSTANT = 8.314462618;
  private static final double WATER_MOLE = 0.018015;
  private static final double KELVIN = 273.15;
  private static final double ACTIVITY = 0.97;
  private static final double FASTER = 2.2;
  private static final double FASTEST_CELSIUS = 38;
  private static final double DEATH_SECONDS = 5.67 * 60;
  private static final double DEATH_CELSIUS = 55;
  private static final double DEATH_Z = 4.74;

  /**
   * Checks the figures.
   *
   * @param gas the share of gas by volume at the start, 0 to below 1
   * @param water kg of water for each m³ at the start
   * @param celsius the temperature at the start
   * @param pressure of the air, Pa
   * @param saturation the share of carbon dioxide that is dissolved, 0 to 1
   * @param perHour gas that yeast makes in an hour at the start, as a share of the volume
   */
  public GasBalance {
    boolean fits =
        gas >= 0
            && gas < 1
            && water >= 0
            && water < 1100
            && celsius > -KELVIN
            && pressure > 0
            && saturation >= 0
            && saturation <= 1
            && perHour >= 0;
    if (!fits || Double.isInfinite(celsius + pressure + perHour)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no dough holds gas so",
          gas + " gas, " + water + " kg/m³ water, " + celsius + " °C, " + pressure + " Pa",
          "give shares from 0 to 1 and positive figures");
    }
  }

  /**
   * Henry's constant.
   *
   * @param celsius 0 to 160 °C
   * @return Pa for each mole fraction
   */
  public static double henry(double celsius) {
    double t = celsius + KELVIN;
    return 1e6
        * StrictMath.exp(-6.8346 + 1.2817e4 / t - 3.7668e6 / (t * t) + 2.997e8 / (t * t * t));
  }

  private double dry(double celsius) {
    double kelvin = Math.max(KELVIN, celsius + KELVIN);
    return Math.max(0.05 * pressure, pressure - ACTIVITY * IapwsIf97Saturation.pressureAt(kelvin));
  }

  private double dissolved(double celsius) {
    return saturation * dry(celsius) / henry(celsius) * water / WATER_MOLE;
  }

  /**
   * The volume if no gas is lost.
   *
   * @param now the temperature, °C
   * @param made gas that yeast has made since the start, as a share of the volume at the start
   * @return how many times the volume at the start
   */
  public double volume(double now, double made) {
    double first = dry(celsius) / (GAS_CONSTANT * (celsius + KELVIN));
    double moles = (gas + made) * first + dissolved(celsius) - dissolved(now);
    return 1 - gas + Math.max(0, moles) * GAS_CONSTANT * (now + KELVIN) / dry(now);
  }

  /**
   * How fast living yeast makes gas.
   *
   * @param now the temperature, °C
   * @return shares of the volume at the start in a second, at the temperature of the start
   */
  public double making(double now) {
    double warmth = Math.min(FASTEST_CELSIUS, now) - Math.min(FASTEST_CELSIUS, celsius);
    return perHour / 3600 * StrictMath.pow(FASTER, warmth / 10);
  }

  /**
   * How fast yeast dies.
   *
   * @param now the temperature, °C
   * @return the natural logarithm of the share that dies in a second, positive
   */
  public static double dying(double now) {
    return StrictMath.log(10)
        / DEATH_SECONDS
        * StrictMath.pow(10, Math.min(60, now - DEATH_CELSIUS) / DEATH_Z);
  }
}
