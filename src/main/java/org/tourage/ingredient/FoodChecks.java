package org.tourage.ingredient;

import static org.tourage.quantity.BakeryUnits.KILOCALORIE;
import static org.tourage.quantity.BakeryUnits.KILOJOULE;

import java.util.Locale;
import java.util.Map;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Numbers;

/** Refuses figures of a food that contradict one another. */
final class FoodChecks {
  /** Figures in print are rounded, and carbohydrate is by difference; our own choice. */
  private static final double SUM_TOLERANCE_GRAMS = 1;

  private static final double PART_TOLERANCE_GRAMS = 1;

  /** Pure fat has 884 kcal (oils) to 902 kcal (lard) in 100 g: USDA SR28. */
  private static final double MOST_KILOCALORIES = 910;

  /** Two energies of one food are rounded, and of two sets of factors. */
  private static final double SAME_ENERGY_SHARE = 0.02;

  private static final double SAME_ENERGY_KILOJOULES = 10;

  /**
   * Kilocalories in a gram: the general factors of Atwater, as 21 CFR 101.9(c)(1)(i)(B) has them
   * for a label; 7 for alcohol is Regulation (EU) No 1169/2011, Annex XIV.
   */
  private static final double PROTEIN_FACTOR = 4;

  private static final double FAT_FACTOR = 9;
  private static final double CARBOHYDRATE_FACTOR = 4;
  private static final double ALCOHOL_FACTOR = 7;

  /**
   * So far the energy of a food can be from the general factors. Our own choice, not from print:
   * wide enough for bran, cocoa and the acids, which the factors overrate by half and more, and
   * narrow enough for kJ in the place of kcal, which is 4.184 times as much.
   */
  private static final double MOST_OF_FACTORS = 1.6;

  private static final double LEAST_OF_FACTORS = 0.35;

  /** Below this many kilocalories a share says nothing; our own choice. */
  private static final double SLACK_KILOCALORIES = 60;

  private final long id;
  private final Map<Component, Double> grams;

  /** Of a food in 100 g; the map is read and not kept beyond the reading. */
  FoodChecks(long id, Map<Component, Double> grams) {
    this.id = id;
    this.grams = grams;
  }

  /** The energy of the first row there is; two of one kind of energy must agree. */
  double energy(Map<Integer, Double> energies) {
    Double kilojoules = energies.get(4);
    Double kilocalories = energies.get(1);
    if (kilojoules != null && kilocalories != null) {
      double off = Math.abs(kilojoules - kilocalories);
      if (off > SAME_ENERGY_SHARE * kilojoules + SAME_ENERGY_KILOJOULES) {
        throw refused(
            Reason.INCONSISTENT,
            "two energies that are not the same",
            Numbers.significant(kilojoules, 5)
                + " kJ and "
                + Numbers.significant(KILOCALORIE.measure(KILOJOULE.amount(kilocalories)), 5)
                + " kcal",
            "1 kcal is 4.184 kJ");
      }
    }
    for (int rank = 1; rank <= 4; rank++) {
      Double found = energies.get(rank);
      if (found != null) {
        return found;
      }
    }
    return Double.NaN;
  }

  void check(double energy, boolean perVolume) {
    part(Component.SUGARS, Component.CARBOHYDRATE);
    part(Component.FIBRE, Component.CARBOHYDRATE);
    part(Component.STARCH, Component.CARBOHYDRATE);
    part(Component.SATURATED_FAT, Component.FAT);
    part(Component.TRANS_FAT, Component.FAT);
    part(Component.ADDED_SUGARS, Component.SUGARS);
    if (!perVolume) {
      checkSum(id, grams, 1);
      checkEnergy(energy);
    }
  }

  private void part(Component part, Component whole) {
    double value = grams.getOrDefault(part, 0.0);
    Double all = grams.get(whole);
    if (all != null && value > all + PART_TOLERANCE_GRAMS) {
      throw refused(
          Reason.INCONSISTENT,
          "more " + word(part) + " than " + word(whole),
          Numbers.significant(value, 5) + " g of " + Numbers.significant(all, 5) + " g",
          "a part can't be greater than its whole");
    }
  }

  /** Refuses more than 100 g in 100 g. */
  static void checkSum(long id, Map<Component, Double> grams, double scale) {
    double sum = 0;
    for (Component main : Component.MAIN) {
      sum += grams.getOrDefault(main, 0.0) * scale;
    }
    double greatest = grams.values().stream().mapToDouble(v -> v * scale).max().orElse(0);
    double most = 100 + SUM_TOLERANCE_GRAMS;
    if (sum > most || greatest > most) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "the figures of fdcId " + id + " are more than there is",
          Numbers.significant(Math.max(sum, greatest), 5) + " g in 100 g",
          "give figures for 100 g; is the density right, or are they for a serving?");
    }
  }

  /**
   * Foods differ from the general factors by what they can't digest and by other factors: only what
   * is a confusion of units is refused.
   */
  private void checkEnergy(double energy) {
    if (Double.isNaN(energy)) {
      return;
    }
    double printed = KILOCALORIE.measure(KILOJOULE.amount(energy));
    boolean known =
        grams.containsKey(Component.PROTEIN)
            && grams.containsKey(Component.FAT)
            && grams.containsKey(Component.CARBOHYDRATE);
    double factors =
        PROTEIN_FACTOR * grams.getOrDefault(Component.PROTEIN, 0.0)
            + FAT_FACTOR * grams.getOrDefault(Component.FAT, 0.0)
            + CARBOHYDRATE_FACTOR * grams.getOrDefault(Component.CARBOHYDRATE, 0.0)
            + ALCOHOL_FACTOR * grams.getOrDefault(Component.ALCOHOL, 0.0);
    boolean off =
        known
            && (printed > Math.max(MOST_OF_FACTORS * factors, factors + SLACK_KILOCALORIES)
                || printed < Math.min(LEAST_OF_FACTORS * factors, factors - SLACK_KILOCALORIES));
    if (printed > MOST_KILOCALORIES || off) {
      throw refused(
          Reason.INCONSISTENT,
          "the energy does not fit the nutrients",
          Numbers.significant(printed, 4)
              + " kcal in 100 g"
              + (known ? ", " + Numbers.significant(factors, 4) + " kcal by the factors" : ""),
          "are kJ and kcal, or 100 g and the serving, mixed up?");
    }
  }

  static String word(Component part) {
    return part.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  private BakeryException refused(Reason reason, String problem, String given, String expected) {
    return new BakeryException(reason, problem + " in fdcId " + id, given, expected);
  }
}
