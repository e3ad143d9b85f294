package org.tourage.formula;

import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.List;
import org.tourage.ingredient.Ingredient;
import org.tourage.internal.Numbers;
import org.tourage.quantity.AmountFormat;

/**
 * A target over the lines of one formula: Σ part·x = goal, or at most the goal, or for a ratio Σ
 * part·x = goal · Σ whole·x. What is not known of a line counts as none here; {@link
 * TargetSolution#advice()} says so.
 */
final class TargetRow {
  final Target target;
  final double goal;
  private final double[] part;
  private final double[] whole;

  TargetRow(Target target, Formula formula) {
    this.target = target;
    if (target instanceof Target.Ratio ratio) {
      goal = ratio.wanted().in(FRACTION);
      part = known(ratio.part(), formula);
      whole = known(ratio.whole(), formula);
    } else if (target instanceof Target.Mass mass) {
      goal = mass.wanted().in(GRAM);
      part = known(mass.figure(), formula);
      whole = new double[part.length];
    } else {
      Target.Ceiling ceiling = (Target.Ceiling) target;
      goal = ceiling.most();
      part = known(ceiling.figure(), formula);
      whole = new double[part.length];
    }
  }

  private static double[] known(Figure figure, Formula formula) {
    double[] contents = figure.contents(formula);
    for (int i = 0; i < contents.length; i++) {
      contents[i] = Double.isNaN(contents[i]) ? 0 : contents[i];
    }
    return contents;
  }

  boolean isRatio() {
    return target instanceof Target.Ratio;
  }

  boolean isCeiling() {
    return target instanceof Target.Ceiling;
  }

  boolean isMoney() {
    return target instanceof Target.Ceiling ceiling && !ceiling.figure().isMass();
  }

  String name() {
    return target.name();
  }

  /** Ingredients of which it is not known how much they bring. */
  List<Ingredient> unknownIn(Formula formula) {
    if (target instanceof Target.Ratio ratio) {
      return ratio.part().unknownIn(formula);
    }
    return target instanceof Target.Mass mass
        ? mass.figure().unknownIn(formula)
        : ((Target.Ceiling) target).figure().unknownIn(formula);
  }

  /** The coefficients of the equation, linear in the weights. */
  double[] coefficients() {
    double[] row = part.clone();
    for (int i = 0; i < row.length; i++) {
      row[i] -= isRatio() ? goal * whole[i] : 0;
    }
    return row;
  }

  double reached(double[] grams) {
    double top = 0;
    double bottom = 0;
    for (int i = 0; i < grams.length; i++) {
      top += part[i] * grams[i];
      bottom += whole[i] * grams[i];
    }
    return isRatio() ? top / bottom : top;
  }

  /** How much it moves for a gram more of a line. */
  double slope(double[] grams, int line) {
    if (!isRatio()) {
      return part[line];
    }
    double bottom = 0;
    for (int i = 0; i < grams.length; i++) {
      bottom += whole[i] * grams[i];
    }
    return (part[line] - reached(grams) * whole[line]) / bottom;
  }

  /** By what a miss of it is measured, for a batch of so much flour. */
  double scale(double flour) {
    return isRatio() ? flour : Math.max(goal, 1e-9);
  }

  /** How far it is missed, as a share of the flour or of what is wanted. */
  double miss(double[] grams) {
    double over = reached(grams) - goal;
    double miss = isCeiling() ? Math.max(0, over) : Math.abs(over);
    return isRatio() ? miss : miss / Math.max(goal, 1e-9);
  }

  String words(double value) {
    if (isRatio()) {
      return AmountFormat.metric().percent(PERCENT.amount(100 * value));
    }
    return isMoney()
        ? Numbers.significant(value, 5)
        : AmountFormat.metric().mass(GRAM.amount(value));
  }
}
