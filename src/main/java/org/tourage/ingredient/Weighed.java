package org.tourage.ingredient;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.tourage.advice.Advice;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.AmountRange;
import org.tourage.quantity.BakeryUnits;
import org.tourage.quantity.HouseholdAmount;

/**
 * A household measure of an ingredient, weighed by the table.
 *
 * @param ingredient the ingredient
 * @param measure the household measure
 * @param mass what it weighs
 * @param range what it can weigh in practice
 * @param filling how the measure was taken to be filled
 * @param source where the figure comes from
 */
public record Weighed(
    Ingredient ingredient,
    HouseholdAmount measure,
    Amount<Mass> mass,
    AmountRange<Mass> range,
    Filling filling,
    Source source)
    implements Explained, Serializable {
  private static final double WIDE_PERCENT = 8;

  /**
   * Checks that nothing is null.
   *
   * @param ingredient the ingredient
   * @param measure the household measure
   * @param mass what it weighs
   * @param range what it can weigh in practice
   * @param filling how the measure was taken to be filled
   * @param source where the figure comes from
   */
  public Weighed {
    requireNonNull(ingredient, "ingredient");
    requireNonNull(measure, "measure");
    requireNonNull(mass, "mass");
    requireNonNull(range, "range");
    requireNonNull(filling, "filling");
    requireNonNull(source, "source");
  }

  /**
   * Half the width of the range, as a share of the mass.
   *
   * @return the spread in percent; 0 for an amount that was given as a mass
   */
  public Amount<Dimensionless> spread() {
    double width = range.high().in(BakeryUnits.GRAM) - range.low().in(BakeryUnits.GRAM);
    double grams = mass.in(BakeryUnits.GRAM);
    return BakeryUnits.PERCENT.amount(grams == 0 ? 0 : 50 * width / grams);
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>();
    if (spread().value() > WIDE_PERCENT) {
      advice.add(
          Advice.of(
              "MEASURE_SPREAD",
              measure
                  + " of "
                  + ingredient.name()
                  + " can weigh "
                  + AmountFormat.metric().mass(range.low())
                  + " to "
                  + AmountFormat.metric().mass(range.high()),
              "Weigh it; "
                  + AmountFormat.metric().mass(mass)
                  + " is taken here ("
                  + filling.word()
                  + ")",
              source + "; the range by common practice"));
    }
    return advice;
  }

  @Override
  public Working working() {
    return Working.of(
        new WorkedLine(
            "m(" + ingredient.name() + ")",
            "measure × mass of the measure",
            measure + " = " + AmountFormat.metric().mass(mass),
            source.toString()));
  }

  /** {@code 3 1/2 cup bread flour = 480 g (364 g to 517 g)}. */
  @Override
  public String toString() {
    AmountFormat format = AmountFormat.metric();
    String width =
        range.low().equals(range.high())
            ? ""
            : " (" + format.mass(range.low()) + " to " + format.mass(range.high()) + ")";
    return measure + " " + ingredient.name() + " = " + format.mass(mass) + width;
  }
}
