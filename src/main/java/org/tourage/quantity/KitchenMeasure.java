package org.tourage.quantity;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Volume;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * Writes a volume in cups and spoons with kitchen fractions, but only where that is true within a
 * stated error: whole and fractional cups (1/8, 1/4, 1/3, 1/2, 2/3, 3/4 …), then tablespoons, then
 * teaspoons down to 1/8, alone or two measures together ({@code 1 cup + 2 tbsp}).
 *
 * @param standard which kitchen; the imperial one has no single spoon and is refused
 * @param greatestError the greatest relative error allowed, for example 2 %
 */
public record KitchenMeasure(CupStandard standard, Amount<Dimensionless> greatestError)
    implements Serializable {
  private static final Fraction[] CUP_PARTS = {
    Fraction.ONE,
    Fraction.of(3, 4),
    Fraction.of(2, 3),
    Fraction.of(1, 2),
    Fraction.of(1, 3),
    Fraction.of(1, 4),
    Fraction.of(1, 8)
  };
  private static final double DEFAULT_ERROR_PERCENT = 2;
  private static final int TABLESPOONS_TO_CUP = 4;
  private static final int TEASPOONS_TO_TABLESPOON = 3;

  /**
   * Checks that the kitchen has spoons and the error makes sense.
   *
   * @param standard which kitchen; the imperial one has no single spoon and is refused
   * @param greatestError the greatest relative error allowed, for example 2 %
   */
  public KitchenMeasure {
    requireNonNull(standard, "standard");
    if (standard == CupStandard.IMPERIAL) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "the imperial kitchen has no single spoon",
          standard.toString(),
          "choose US_CUSTOMARY, US_LABELLING or METRIC");
    }
    if (greatestError.value() < 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "the greatest error can't be negative",
          greatestError.toString(),
          "give for example 2 %");
    }
  }

  /**
   * US customary cups and spoons, true within 2 %.
   *
   * @return the measure
   */
  public static KitchenMeasure usCustomary() {
    return new KitchenMeasure(
        CupStandard.US_CUSTOMARY, BakeryUnits.PERCENT.amount(DEFAULT_ERROR_PERCENT));
  }

  private BakeryUnit<Volume> cup() {
    return switch (standard) {
      case US_LABELLING -> BakeryUnits.LABELLING_CUP;
      case METRIC -> BakeryUnits.METRIC_CUP;
      default -> BakeryUnits.CUP;
    };
  }

  private BakeryUnit<Volume> tablespoon() {
    return standard == CupStandard.US_CUSTOMARY
        ? BakeryUnits.TABLESPOON
        : BakeryUnits.METRIC_TABLESPOON;
  }

  private BakeryUnit<Volume> teaspoon() {
    return standard == CupStandard.US_CUSTOMARY
        ? BakeryUnits.TEASPOON
        : BakeryUnits.METRIC_TEASPOON;
  }

  /**
   * Writes a volume in cups and spoons.
   *
   * @param volume the volume, not negative
   * @return for example {@code 1 1/3 cups}; empty where no kitchen measure is true within the error
   */
  public Optional<String> describe(Quantity<Volume> volume) {
    double target = BakeryUnits.MILLILITRE.measure("the volume", volume);
    double allowed = BakeryUnits.FRACTION.measure(greatestError);
    if (target <= 0) {
      return Optional.empty();
    }
    double cup = BakeryUnits.MILLILITRE.measure(cup().amount(1));
    double tablespoon = BakeryUnits.MILLILITRE.measure(tablespoon().amount(1));
    double teaspoon = BakeryUnits.MILLILITRE.measure(teaspoon().amount(1));
    List<Candidate> simplest = new ArrayList<>();
    long wholeCups = (long) Math.floor(target / cup);
    for (long cups = Math.max(0, wholeCups - 1); cups <= wholeCups + 1; cups++) {
      addCups(simplest, Fraction.of(cups), cup, tablespoon);
      for (Fraction part : CUP_PARTS) {
        addCups(simplest, Fraction.of(cups).plus(part), cup, tablespoon);
      }
    }
    // spoons run up to a quarter cup, as they do in recipes
    for (int spoons = 1; spoons < TABLESPOONS_TO_CUP; spoons++) {
      add(simplest, spoons + " tbsp", spoons * tablespoon, 1);
      for (int more = 1; more < TEASPOONS_TO_TABLESPOON; more++) {
        add(
            simplest,
            spoons + " tbsp + " + more + " tsp",
            spoons * tablespoon + more * teaspoon,
            2);
      }
    }
    for (int eighths = 1; eighths < TEASPOONS_TO_TABLESPOON * 8; eighths++) {
      Fraction spoons = Fraction.of(eighths, 8);
      add(simplest, spoons + " tsp", spoons.doubleValue() * teaspoon, 1);
    }
    Candidate best = null;
    for (Candidate candidate : simplest) {
      double error = Math.abs(candidate.millilitres - target) / target;
      boolean allowedError = error <= allowed;
      boolean better =
          best == null
              || candidate.measures < best.measures
              || (candidate.measures == best.measures
                  && error < Math.abs(best.millilitres - target) / target - 1e-9);
      if (allowedError && better) {
        best = candidate;
      }
    }
    return best == null ? Optional.empty() : Optional.of(best.text);
  }

  private record Candidate(String text, double millilitres, int measures) {}

  private static void add(List<Candidate> list, String text, double millilitres, int measures) {
    list.add(new Candidate(text, millilitres, measures));
  }

  private static void addCups(List<Candidate> list, Fraction cups, double cup, double tablespoon) {
    if (cups.signum() == 0) {
      return;
    }
    String text = cups + (cups.compareTo(Fraction.ONE) > 0 ? " cups" : " cup");
    double millilitres = cups.doubleValue() * cup;
    add(list, text, millilitres, 1);
    for (int spoons = 1; spoons < TABLESPOONS_TO_CUP; spoons++) {
      add(list, text + " + " + spoons + " tbsp", millilitres + spoons * tablespoon, 2);
    }
  }
}
