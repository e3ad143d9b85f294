package org.tourage.substitution;

/**
 * Flour figures moved from one moisture to another, in percent. Two rules that must not be mixed: a
 * component (protein, ash) is diluted by moisture alone, while an absorption counts the flour's own
 * moisture with the water added. Both follow from conserving dry matter (and, for absorption, total
 * water); AACC Method 54-21 uses the same idea (from memory).
 */
public final class MoistureBasis {
  private MoistureBasis() {}

  /**
   * A component on another moisture basis.
   *
   * @param percent its share of the flour at the old moisture
   * @param moisture the old moisture, below 100
   * @param wanted the new moisture, below 100; 0 for the dry basis
   * @return percent · (100 − wanted) / (100 − moisture)
   */
  public static double shareAt(double percent, double moisture, double wanted) {
    return percent * (100 - wanted) / (100 - moisture);
  }

  /**
   * An absorption on another moisture basis: the water that gives the same dough with flour of the
   * new moisture.
   *
   * @param percent water by flour at the old moisture
   * @param moisture the old moisture, below 100
   * @param wanted the new moisture, below 100
   * @return (percent + moisture) · (100 − wanted) / (100 − moisture) − wanted
   */
  public static double absorptionAt(double percent, double moisture, double wanted) {
    return (percent + moisture) * (100 - wanted) / (100 - moisture) - wanted;
  }
}
