package org.tourage.formula;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import javax.measure.quantity.Dimensionless;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;

/**
 * What is wanted of a batch: a ratio of two figures, a mass of one, or a ceiling over one; see
 * {@link FormulaTargets#want}.
 */
public sealed interface Target extends Serializable {

  /**
   * What it is called; a target takes the place of an earlier one of its name.
   *
   * @return for example {@code hydration}
   */
  String name();

  /**
   * A ratio of two figures.
   *
   * @param name what it is called
   * @param part the part
   * @param whole by what it is measured
   * @param wanted how much
   */
  record Ratio(String name, Figure part, Figure whole, Amount<Dimensionless> wanted)
      implements Target {
    /**
     * Checks what is wanted.
     *
     * @param name what it is called
     * @param part the part
     * @param whole by what it is measured
     * @param wanted how much
     * @throws BakeryException if it is negative, or if one is a cost and the other a mass
     */
    public Ratio {
      requireNonNull(part, "part");
      requireNonNull(whole, "whole");
      if (part.isMass() != whole.isMass()) {
        throw new BakeryException(
            Reason.MEANINGLESS,
            "a cost has no ratio to a mass",
            part + " by " + whole,
            "give two masses or two costs");
      }
      check(name, wanted.value(), wanted);
    }
  }

  /**
   * A mass of a figure.
   *
   * @param name what it is called
   * @param figure the figure
   * @param wanted how much
   */
  record Mass(String name, Figure figure, Amount<javax.measure.quantity.Mass> wanted)
      implements Target {
    /**
     * Checks what is wanted.
     *
     * @param name what it is called
     * @param figure the figure
     * @param wanted how much
     * @throws BakeryException if it is negative, or if the figure is a cost
     */
    public Mass {
      if (!requireNonNull(figure, "figure").isMass()) {
        throw new BakeryException(
            Reason.MEANINGLESS, "a cost is no mass", figure.toString(), "want a Ceiling over it");
      }
      check(name, wanted.value(), wanted);
    }
  }

  /**
   * A ceiling over a figure.
   *
   * @param name what it is called
   * @param figure the figure
   * @param most the most: grams of a mass, or a cost in the currency of its prices
   */
  record Ceiling(String name, Figure figure, double most) implements Target {
    /**
     * Checks what is wanted.
     *
     * @param name what it is called
     * @param figure the figure
     * @param most the most
     * @throws BakeryException if it is negative
     */
    public Ceiling {
      requireNonNull(figure, "figure");
      check(name, most, most);
    }
  }

  private static void check(String name, double value, Object given) {
    if (requireNonNull(name, "name").isBlank() || !(value >= 0) || Double.isInfinite(value)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE, "this can't be wanted", name + " " + given, "give 0 or more");
    }
  }
}
