package org.tourage.day;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.tourage.advice.BakeryException;
import org.tourage.doughtemperature.MixerHeat;
import org.tourage.doughtemperature.PastMix;
import org.tourage.doughtemperature.StageMix;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Given;
import org.tourage.quantity.TemperatureDifference;

/** What a baker knows of how a mixer warms a dough. What was measured wins over what is usual. */
public sealed interface Warming extends Serializable {
  /**
   * The heat of the mixer for a mix.
   *
   * @param mix the stage that is mixed
   * @return the heat
   * @throws BakeryException if the figures make no sense for this mix
   */
  MixerHeat heat(StageMix mix);

  /**
   * A rise of the dough in the mixer.
   *
   * @param rise the rise, heat of hydration included
   * @return the warming
   */
  static Warming rise(TemperatureDifference rise) {
    requireNonNull(rise, "rise");
    return new Known(MixerHeat.rise(rise));
  }

  /**
   * A friction number of the factor rule.
   *
   * @param friction the number
   * @return the warming
   */
  static Warming friction(TemperatureDifference friction) {
    requireNonNull(friction, "friction");
    return new Known(MixerHeat.friction(friction));
  }

  /**
   * A mix of another day, of the same formula in the same mixer.
   *
   * @param flour the temperature of the flour
   * @param room the temperature of the room
   * @param water the temperature of the water
   * @param dough the temperature that the dough came out at
   * @return the warming
   */
  static Warming pastMix(
      Quantity<Temperature> flour,
      Quantity<Temperature> room,
      Quantity<Temperature> water,
      Quantity<Temperature> dough) {
    requireNonNull(flour, "flour");
    requireNonNull(room, "room");
    requireNonNull(water, "water");
    requireNonNull(dough, "dough");
    return new PastDay(
        Given.temperature("the flour", flour),
        Given.temperature("the room", room),
        Given.temperature("the water", water),
        Given.temperature("the dough", dough));
  }

  /**
   * A figure that does not depend on the mix.
   *
   * @param heat the heat
   */
  record Known(MixerHeat heat) implements Warming {
    /**
     * Checks that there is one.
     *
     * @param heat the heat
     */
    public Known {
      requireNonNull(heat, "heat");
    }

    @Override
    public MixerHeat heat(StageMix mix) {
      requireNonNull(mix, "mix");
      return heat;
    }

    @Override
    public String toString() {
      return heat.toString();
    }
  }

  /**
   * The temperatures of another day.
   *
   * @param flour the temperature of the flour
   * @param room the temperature of the room, of all else that went in
   * @param water the temperature of the water
   * @param dough the temperature that the dough came out at
   */
  record PastDay(
      Amount<Temperature> flour,
      Amount<Temperature> room,
      Amount<Temperature> water,
      Amount<Temperature> dough)
      implements Warming {
    /**
     * Checks that all are there.
     *
     * @param flour the temperature of the flour
     * @param room the temperature of the room, of all else that went in
     * @param water the temperature of the water
     * @param dough the temperature that the dough came out at
     */
    public PastDay {
      requireNonNull(flour, "flour");
      requireNonNull(room, "room");
      requireNonNull(water, "water");
      requireNonNull(dough, "dough");
      Ranges.within("flour of this temperature", flour, -30, 60);
      Ranges.within("room of this temperature", room, -10, 50);
      Ranges.within("water of this temperature in a dough", water, 0, 55);
      Ranges.within("dough of this temperature", dough, 0, 50);
    }

    @Override
    public MixerHeat heat(StageMix mix) {
      requireNonNull(mix, "mix");
      StageMix then = StageMix.of(mix.batch(), mix.stageName(), flour, room);
      return MixerHeat.of(
          then.freeLiquid().value() == 0
              ? PastMix.of(then, dough)
              : PastMix.of(then, water, dough));
    }

    @Override
    public String toString() {
      AmountFormat format = AmountFormat.sideBySide();
      return "past mix: flour "
          + format.temperature(flour)
          + ", room "
          + format.temperature(room)
          + ", water "
          + format.temperature(water)
          + ", dough "
          + format.temperature(dough);
    }
  }
}
