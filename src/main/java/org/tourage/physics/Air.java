package org.tourage.physics;

import static org.tourage.quantity.BakeryUnits.CELSIUS;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.physics.LayeredSlab.Surface;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Given;

/**
 * The air around a sheet or a piece: its temperature and how well it carries heat, radiation
 * included. Usual coefficients: still air about 8 W/(m²·K) (between 5 and 15), moved by a fan about
 * 25 (15 to 35), common practice.
 *
 * @param temperature the temperature of the air
 * @param coefficient watts per square metre and kelvin, positive
 */
public record Air(Amount<Temperature> temperature, double coefficient) implements Serializable {
  /** Coefficient of still air in W/(m²·K), radiation included; 5 to 15, common practice. */
  public static final double STILL = 8;

  /** Coefficient of air moved by a fan in W/(m²·K); 15 to 35, common practice. */
  public static final double MOVED = 25;

  /**
   * Checks the coefficient.
   *
   * @param temperature the temperature of the air
   * @param coefficient watts per square metre and kelvin, positive
   */
  public Air {
    if (!(coefficient > 0) || Double.isInfinite(coefficient)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "air must carry heat",
          coefficient + " W/(m²·K)",
          "still air has about 8, moved air about 25");
    }
  }

  /**
   * Still air, as in a room or a refrigerator without a fan.
   *
   * @param temperature its temperature
   * @return the air
   */
  public static Air still(Quantity<Temperature> temperature) {
    return new Air(Given.temperature("the temperature", temperature), STILL);
  }

  /**
   * Air moved by a fan.
   *
   * @param temperature its temperature
   * @return the air
   */
  public static Air moved(Quantity<Temperature> temperature) {
    return new Air(Given.temperature("the temperature", temperature), MOVED);
  }

  /**
   * The air as what a face meets.
   *
   * @return the surface
   */
  public Surface surface() {
    return new Surface(coefficient, temperature.in(CELSIUS));
  }

  /** {@code air at 22 °C (72 °F)}. */
  @Override
  public String toString() {
    return "air at " + AmountFormat.sideBySide().temperature(temperature);
  }
}
