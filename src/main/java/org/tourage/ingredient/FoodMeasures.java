package org.tourage.ingredient;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.quantity.CupStandard;
import org.tourage.quantity.HouseholdAmount;
import org.tourage.quantity.Kind;

/** Which words of a food's portions are household measures. */
final class FoodMeasures {
  private FoodMeasures() {}

  static @Nullable Filling filling(String word) {
    for (Filling filling : Filling.values()) {
      if (filling.word().equals(word.toLowerCase(Locale.ROOT))) {
        return filling;
      }
    }
    return null;
  }

  static boolean isMeasure(String text) {
    try {
      HouseholdAmount read = HouseholdAmount.parse(text, CupStandard.US_CUSTOMARY);
      return (read.kind() == Kind.VOLUME || read.countWord().isPresent()) && !read.isRange();
    } catch (BakeryException other) {
      return false;
    }
  }
}
