package org.tourage.day;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import org.tourage.quantity.TemperatureDifference;

/**
 * A mixer.
 *
 * @param name what it is called
 * @param rise how much it warms a dough, heat of hydration included
 */
public record Mixer(String name, TemperatureDifference rise) implements Serializable {
  /** A mixer of which nothing is known: a rise of 7 K, common practice for eight minutes. */
  public static final Mixer USUAL =
      new Mixer("a usual mixer", TemperatureDifference.ofCelsiusDegrees(7));

  /**
   * Checks that both are there.
   *
   * @param name what it is called
   * @param rise how much it warms a dough, heat of hydration included
   */
  public Mixer {
    requireNonNull(name, "name");
    requireNonNull(rise, "rise");
  }
}
