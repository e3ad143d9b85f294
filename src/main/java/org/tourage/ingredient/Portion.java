package org.tourage.ingredient;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import javax.measure.quantity.Mass;
import org.tourage.quantity.Amount;
import org.tourage.quantity.HouseholdAmount;

/**
 * What a household measure of an ingredient weighs.
 *
 * @param measure the measure: of a volume ({@code 1 cup}) or a count ({@code 1 stick}, {@code 1
 *     large})
 * @param word the word of a counted portion; empty for a volume
 * @param filling how the measure is filled
 * @param mass what it weighs
 * @param source where the figure comes from
 */
public record Portion(
    HouseholdAmount measure, String word, Filling filling, Amount<Mass> mass, Source source)
    implements Serializable {

  /**
   * Checks that nothing is null.
   *
   * @param measure the measure: of a volume ({@code 1 cup}) or a count ({@code 1 stick}, {@code 1
   *     large})
   * @param word the word of a counted portion; empty for a volume
   * @param filling how the measure is filled
   * @param mass what it weighs
   * @param source where the figure comes from
   */
  public Portion {
    requireNonNull(measure, "measure");
    requireNonNull(word, "word");
    requireNonNull(filling, "filling");
    requireNonNull(mass, "mass");
    requireNonNull(source, "source");
  }

  boolean isVolume() {
    return word.isEmpty();
  }
}
