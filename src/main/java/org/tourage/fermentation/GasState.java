package org.tourage.fermentation;

import static org.tourage.quantity.BakeryUnits.CELSIUS;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;

/**
 * The gas of a dough at a moment, for what comes after the rise: how much is dissolved and will
 * come out when it gets warm, how much is in bubbles, and how fast the yeast adds to it.
 *
 * @param temperature the mean temperature of the dough
 * @param growth how many times its volume after mixing it has
 * @param dissolved carbon dioxide in the water of the dough, mol for each kg of dough
 * @param inBubbles carbon dioxide in the bubbles, mol/kg
 * @param air air in the bubbles, mol/kg
 * @param pace carbon dioxide that the yeast gives at a rate of 1, mol/(kg·s)
 * @param gas where the gas of this dough goes
 * @param model the rate by temperature
 */
public record GasState(
    Amount<Temperature> temperature,
    double growth,
    double dissolved,
    double inBubbles,
    double air,
    double pace,
    DoughGas gas,
    RateModel model)
    implements Serializable {

  static GasState of(Rise rise, RiseHistory.Look look) {
    double celsius = look.mean().in(CELSIUS);
    double dissolved =
        Math.min(look.carbonDioxide(), rise.gas().keptAt(look.carbonDioxide(), celsius));
    return new GasState(
        look.mean(),
        look.growth(),
        dissolved,
        look.carbonDioxide() - dissolved,
        rise.gas().airMoles(),
        rise.pace(),
        rise.gas(),
        rise.model());
  }

  /**
   * All carbon dioxide in the dough.
   *
   * @return mol/kg
   */
  public double carbonDioxide() {
    return dissolved + inBubbles;
  }

  /**
   * How fast the yeast gives gas now.
   *
   * @return mol/(kg·s) at the mean temperature
   */
  public double rate() {
    return rateAt(temperature);
  }

  /**
   * How fast the yeast gives gas at another temperature, as long as it lives.
   *
   * @param other the temperature of the dough
   * @return mol/(kg·s); 0 above the highest temperature of the model
   */
  public double rateAt(Quantity<Temperature> other) {
    return pace * model.rate(other);
  }

  /**
   * The share of gas in the volume of the dough.
   *
   * @return air and carbon dioxide by volume, 0 to 1
   */
  public double porosity() {
    return 1 - (1 - gas.air()) / growth;
  }

  /** {@code 12.1 mmol/kg dissolved and 25.4 in bubbles at 26 °C (79 °F), 14 mmol/(kg·h) more}. */
  @Override
  public String toString() {
    return Numbers.significant(1000 * dissolved, 3)
        + " mmol/kg dissolved and "
        + Numbers.significant(1000 * inBubbles, 3)
        + " in bubbles at "
        + AmountFormat.sideBySide().temperature(temperature)
        + ", "
        + Numbers.significant(3.6e6 * rate(), 3)
        + " mmol/(kg·h) more";
  }
}
