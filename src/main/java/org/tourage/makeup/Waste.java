package org.tourage.makeup;

import java.util.List;
import org.tourage.advice.Advice;
import org.tourage.internal.Numbers;

/** What every cutting says about its trim. */
final class Waste {
  /** More trim than this share of the sheet brings advice: common practice, in percent. */
  private static final double HIGH = 15;

  private Waste() {}

  static List<Advice> of(Cutting cutting) {
    double waste = 100 - cutting.sheetYield().value();
    return waste <= HIGH
        ? List.of()
        : List.of(
            Advice.of(
                "TRIM_HIGH",
                Numbers.decimals(waste, 0) + " % of the sheet is trim and ends",
                "Press the trim into the next dough or bake it as sticks; "
                    + (cutting instanceof RoundPlan
                        ? "rounds always leave more than a tenth"
                        : "a longer, narrower sheet wastes less")));
  }
}
