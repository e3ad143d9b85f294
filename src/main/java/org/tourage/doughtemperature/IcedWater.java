package org.tourage.doughtemperature;

import java.io.Serializable;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;

/**
 * The free water of a dough as water and ice, by the heat balance.
 *
 * @param ice the ice
 * @param iceTemperature its temperature
 * @param water the water beside it
 * @param waterTemperature its temperature
 */
public record IcedWater(
    Amount<Mass> ice,
    Amount<Temperature> iceTemperature,
    Amount<Mass> water,
    Amount<Temperature> waterTemperature)
    implements Serializable {

  /** {@code 120 g ice and 380 g water at 18 °C (64 °F)}. */
  @Override
  public String toString() {
    AmountFormat format = AmountFormat.metric();
    return format.mass(ice)
        + " ice and "
        + format.mass(water)
        + " water at "
        + AmountFormat.sideBySide().temperature(waterTemperature);
  }
}
