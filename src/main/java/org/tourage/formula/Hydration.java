package org.tourage.formula;

import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import javax.measure.quantity.Dimensionless;
import org.tourage.advice.Advice;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.ingredient.Component;
import org.tourage.ingredient.Ingredient;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;

/**
 * How wet a dough is, counted in three ways. The roll-in fat and the finish are left out: they do
 * not wet the dough.
 *
 * <ul>
 *   <li>{@link #nominal()}: the liquids by mass over the flour, as recipes are often quoted;
 *   <li>{@link #trueHydration()}: the water inside all lines that are not flour (liquids, eggs,
 *       fats, syrups, fresh yeast) over the flour as it is;
 *   <li>{@link #dryMatterRatio()}: all water, the flour's own moisture included, over the dry
 *       matter of the flour.
 * </ul>
 *
 * @param nominal liquids over flour
 * @param trueHydration water of all but the flour, over flour
 * @param dryMatterRatio all water over dry flour
 * @param lines the lines that bring water, and those whose water is unknown, which counts as none:
 *     see {@link #unknown()}
 */
public record Hydration(
    Amount<Dimensionless> nominal,
    Amount<Dimensionless> trueHydration,
    Amount<Dimensionless> dryMatterRatio,
    List<Line> lines)
    implements Explained, Serializable {
  private static final double LOW_PERCENT = 40;
  private static final double HIGH_PERCENT = 100;

  /**
   * Copies the list.
   *
   * @param nominal liquids over flour
   * @param trueHydration water of all but the flour, over flour
   * @param dryMatterRatio all water over dry flour
   * @param lines the lines that bring water
   */
  public Hydration {
    lines = List.copyOf(lines);
  }

  /**
   * The ingredients whose water is unknown. If there are any, the figures are without their water.
   *
   * @return the ingredients, usually none
   */
  public List<Ingredient> unknown() {
    return lines.stream()
        .map(Line::ingredient)
        .filter(i -> i.composition().share(Component.WATER).isEmpty())
        .distinct()
        .toList();
  }

  private String unknownNames() {
    return unknown().stream().map(Ingredient::name).collect(Collectors.joining(", "));
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>();
    if (!unknown().isEmpty()) {
      advice.add(
          Advice.of(
              "HYDRATION_UNKNOWN",
              "the hydration is without the water of " + unknownNames() + ", which is unknown",
              "Give its composition, for example from its label"));
    }
    double percent = trueHydration.in(PERCENT);
    if (percent < LOW_PERCENT || percent > HIGH_PERCENT) {
      advice.add(
          Advice.of(
              "HYDRATION_UNUSUAL",
              "the true hydration is "
                  + AmountFormat.metric().percent(trueHydration)
                  + " of the flour",
              "Doughs usually have 50 % to 85 %; check the liquids"));
    }
    return advice;
  }

  @Override
  public Working working() {
    List<WorkedLine> work = new ArrayList<>();
    for (Line line : lines) {
      double water = line.ingredient().composition().fraction(Component.WATER);
      boolean unknown = line.ingredient().composition().share(Component.WATER).isEmpty();
      work.add(
          new WorkedLine(
              "w(" + line.ingredient().name() + ")",
              "percent × share of water",
              unknown
                  ? line.percent() + " × unknown, left out"
                  : line.percent()
                      + " × "
                      + PERCENT.amount(water * 100)
                      + " = "
                      + PERCENT.amount(line.share() * water * 100),
              line.ingredient()
                  .composition()
                  .source(Component.WATER)
                  .map(Object::toString)
                  .orElse("unknown")));
    }
    work.add(
        new WorkedLine(
            "true hydration", "Σ w", trueHydration.toString(), "definition of true hydration"));
    return new Working(work);
  }

  /** {@code true hydration 62.9 % (liquids 60 %)}. */
  @Override
  public String toString() {
    AmountFormat format = AmountFormat.metric();
    return "true hydration "
        + format.percent(trueHydration)
        + " of flour (liquids "
        + format.percent(nominal)
        + "; all water on dry flour "
        + format.percent(dryMatterRatio)
        + ")"
        + (unknown().isEmpty() ? "" : ", without the water of " + unknownNames() + ": unknown");
  }
}
