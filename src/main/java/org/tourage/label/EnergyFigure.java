package org.tourage.label;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.measure.quantity.Energy;
import org.tourage.ingredient.Ingredient;
import org.tourage.quantity.Amount;
import org.tourage.quantity.BakeryUnits;

/**
 * The energy of a food by the factors of a scheme. Kilojoules and kilocalories have rounded factors
 * of their own each, so the two differ a little.
 *
 * @param scheme whose factors
 * @param kilojoulesAtLeast the energy by the factors in kJ, of what is known
 * @param kilocaloriesAtLeast the energy by the factors in kcal, of what is known
 * @param unknownIn the ingredients that do not report a nutrient that counts, none if the figure is
 *     whole
 */
public record EnergyFigure(
    LabelScheme scheme,
    Amount<Energy> kilojoulesAtLeast,
    Amount<Energy> kilocaloriesAtLeast,
    List<Ingredient> unknownIn)
    implements Serializable {

  /**
   * Copies the list.
   *
   * @param scheme whose factors
   * @param kilojoulesAtLeast the energy by the factors in kJ
   * @param kilocaloriesAtLeast the energy by the factors in kcal
   * @param unknownIn the ingredients that do not report a nutrient that counts
   */
  public EnergyFigure {
    requireNonNull(scheme, "scheme");
    requireNonNull(kilojoulesAtLeast, "kilojoulesAtLeast");
    requireNonNull(kilocaloriesAtLeast, "kilocaloriesAtLeast");
    unknownIn = List.copyOf(unknownIn);
  }

  /**
   * The energy by the factors in kilojoules.
   *
   * @return the energy; empty, never 0, if a nutrient that counts is not reported
   */
  public Optional<Amount<Energy>> kilojoules() {
    return unknownIn.isEmpty() ? Optional.of(kilojoulesAtLeast) : Optional.empty();
  }

  /**
   * The energy by the factors in kilocalories.
   *
   * @return the energy; empty, never 0, if a nutrient that counts is not reported
   */
  public Optional<Amount<Energy>> kilocalories() {
    return unknownIn.isEmpty() ? Optional.of(kilocaloriesAtLeast) : Optional.empty();
  }

  /**
   * As a label rounds it.
   *
   * @return for example {@code 1046 kJ / 250 kcal}, {@code 250 kcal} or {@code unknown}
   */
  public String printed() {
    if (!unknownIn.isEmpty()) {
      return Nutrition.UNKNOWN;
    }
    double kilocalories = kilocaloriesAtLeast.in(BakeryUnits.KILOCALORIE);
    return scheme == LabelScheme.EU
        ? LabelRounding.write(kilojoulesAtLeast.in(BakeryUnits.KILOJOULE), kilocalories)
        : LabelRounding.one(scheme, "kcal", kilocalories);
  }

  /** The energy as a label rounds it, or who does not report. */
  @Override
  public String toString() {
    return "energy "
        + printed()
        + (unknownIn.isEmpty()
            ? ""
            : unknownIn.stream()
                .map(Ingredient::name)
                .collect(Collectors.joining(", ", " (", ")")));
  }
}
