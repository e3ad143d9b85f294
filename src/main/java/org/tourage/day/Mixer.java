package org.tourage.day;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import org.tourage.quantity.TemperatureDifference;

/**
 * A mixer.
 *
 * @param name what it is called
 * @param warming what is known of how it warms a dough
 */
public record Mixer(String name, Warming warming) implements Serializable {
  /** A mixer of which nothing is known: a rise of 7 K, common practice for eight minutes. */
  public static final Mixer USUAL =
      new Mixer("a usual mixer", Warming.rise(TemperatureDifference.ofCelsiusDegrees(7)));

  /**
   * Checks that both are there.
   *
   * @param name what it is called
   * @param warming what is known of how it warms a dough
   */
  public Mixer {
    Names.check("a mixer", "name", name);
    requireNonNull(warming, "warming");
  }

  @Override
  public String toString() {
    return name + ", " + warming;
  }
}
