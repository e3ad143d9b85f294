package org.tourage.label;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.measure.quantity.Mass;
import org.tourage.ingredient.Ingredient;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.BakeryUnits;

/**
 * How much of a nutrient there is, or at least how much where an ingredient does not report it.
 *
 * @param nutrient the nutrient
 * @param atLeast what the ingredients that report it bring
 * @param unknownIn the ingredients that do not report it, none if the figure is whole
 */
public record NutrientFigure(Nutrient nutrient, Amount<Mass> atLeast, List<Ingredient> unknownIn)
    implements Serializable {

  /**
   * Copies the list.
   *
   * @param nutrient the nutrient
   * @param atLeast what the ingredients that report it bring
   * @param unknownIn the ingredients that do not report it
   */
  public NutrientFigure {
    requireNonNull(nutrient, "nutrient");
    requireNonNull(atLeast, "atLeast");
    unknownIn = List.copyOf(unknownIn);
  }

  /**
   * The mass of the nutrient.
   *
   * @return the mass; empty, never 0, if an ingredient does not report it
   */
  public Optional<Amount<Mass>> mass() {
    return unknownIn.isEmpty() ? Optional.of(atLeast) : Optional.empty();
  }

  /** {@code fat 3.2 g}, or {@code trans fat unknown (bread flour)}. */
  @Override
  public String toString() {
    double units = atLeast.in(BakeryUnits.GRAM) * nutrient.unitsInGram();
    return nutrient.word()
        + " "
        + (unknownIn.isEmpty()
            ? Numbers.significant(units, 4) + " " + nutrient.unit()
            : "unknown ("
                + unknownIn.stream().map(Ingredient::name).collect(Collectors.joining(", "))
                + ")");
  }
}
