package org.tourage.doughtemperature;

import java.io.Serializable;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;

/**
 * What can be done about the temperature of a dough beside its water, in figures. A lever goes as
 * far as it needs to, or to its limit.
 */
public sealed interface Lever extends Serializable {
  /**
   * What is changed.
   *
   * @return for example {@code bread flour}
   */
  String what();

  /**
   * What the dough comes to.
   *
   * @return its temperature
   */
  Amount<Temperature> dough();

  /**
   * Whether that is the wanted temperature.
   *
   * @return false where the lever is at its limit before
   */
  boolean reaches();

  /**
   * A part is chilled or warmed before it goes in.
   *
   * @param what the part
   * @param from its temperature on this day
   * @param to the temperature that it is brought to
   * @param dough the temperature of the dough
   * @param reaches whether that is the wanted one
   */
  record Temper(
      String what,
      Amount<Temperature> from,
      Amount<Temperature> to,
      Amount<Temperature> dough,
      boolean reaches)
      implements Lever {
    /** {@code bread flour at 4 °C (39 °F) instead of 22 °C (72 °F): dough at 25 °C (77 °F)}. */
    @Override
    public String toString() {
      AmountFormat format = AmountFormat.sideBySide();
      return what
          + " at "
          + format.temperature(to)
          + " instead of "
          + format.temperature(from)
          + ": dough at "
          + format.temperature(dough);
    }
  }

  /**
   * The dough is mixed for less time.
   *
   * @param from the mixing time
   * @param to the shorter time
   * @param dough the temperature of the dough
   * @param reaches whether that is the wanted one
   */
  record Shorten(Amount<Time> from, Amount<Time> to, Amount<Temperature> dough, boolean reaches)
      implements Lever {
    @Override
    public String what() {
      return "mixing";
    }

    /** {@code mixing for 6 min instead of 8 min: dough at 25 °C (77 °F)}. */
    @Override
    public String toString() {
      return "mixing for "
          + AmountFormat.metric().time(to)
          + " instead of "
          + AmountFormat.metric().time(from)
          + ": dough at "
          + AmountFormat.sideBySide().temperature(dough);
    }
  }

  /**
   * All free water goes in as ice.
   *
   * @param what the water
   * @param ice its mass
   * @param dough the temperature of the dough
   * @param reaches whether that is the wanted one
   */
  record AllIce(String what, Amount<Mass> ice, Amount<Temperature> dough, boolean reaches)
      implements Lever {
    /** {@code all 150 g water as ice: dough at 26 °C (79 °F)}. */
    @Override
    public String toString() {
      return "all "
          + AmountFormat.metric().mass(ice)
          + " "
          + what
          + " as ice: dough at "
          + AmountFormat.sideBySide().temperature(dough);
    }
  }
}
