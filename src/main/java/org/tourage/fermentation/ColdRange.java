package org.tourage.fermentation;

import java.io.Serializable;
import java.util.List;
import org.tourage.internal.Numbers;

/**
 * What the cold end of the rate leaves open: the volume at the end of a stage by the model of
 * growth alone, and by factors of 3 and of 2 for each 10 K below 8 °C and 10 °C, beside the one
 * that the history takes. Nobody has published a gas rate of dough below 10 °C, so the truth may
 * lie anywhere between. Worked from the same temperatures; only the rate differs.
 *
 * @param byGrowth how many times its volume after mixing by the model of growth alone
 * @param slow the same by a factor of 3 below 8 °C
 * @param taken the same by the model of the history
 * @param quick the same by a factor of 2 below 10 °C
 * @param seen whether a night of this dough set the cold end, so that nothing is left open
 */
public record ColdRange(double byGrowth, double slow, double taken, double quick, boolean seen)
    implements Serializable {
  /** A spread of less of the volume than this is not worth a word. */
  static final double NOTABLE = 0.03;

  /**
   * The least volume of all four.
   *
   * @return how many times its volume after mixing
   */
  public double least() {
    return seen ? taken : Math.min(Math.min(byGrowth, slow), taken);
  }

  /**
   * The largest volume of all four.
   *
   * @return how many times its volume after mixing
   */
  public double most() {
    return seen ? taken : Math.max(Math.max(quick, slow), taken);
  }

  /**
   * Whether the models differ by something that can be seen in a dough.
   *
   * @return true for a spread of 3 % of the volume and more
   */
  public boolean matters() {
    return most() - least() >= NOTABLE * taken;
  }

  /** The volumes with the gas of each model, at one temperature of the dough. */
  static ColdRange of(
      DoughGas gas, double celsius, double taken, List<Double> moles, boolean seen) {
    // the volume that is taken counts the dough point by point; the others lie beside it
    double mean = gas.growthAt(moles.get(0), celsius);
    return new ColdRange(
        taken + gas.growthAt(moles.get(1), celsius) - mean,
        taken + gas.growthAt(moles.get(2), celsius) - mean,
        taken,
        taken + gas.growthAt(moles.get(3), celsius) - mean,
        seen);
  }

  /** {@code × 1.62 (1.41 by growth alone, 1.52 to 1.71 by factors of 3 to 2 for each 10 K)}. */
  @Override
  public String toString() {
    return "× "
        + Numbers.fixed(taken, 2)
        + (seen
            ? " (cold end seen)"
            : " ("
                + Numbers.fixed(byGrowth, 2)
                + " by growth alone, "
                + Numbers.fixed(slow, 2)
                + " to "
                + Numbers.fixed(quick, 2)
                + " by factors of 3 to 2 for each 10 K)");
  }
}
