package org.tourage.ingredient;

import static org.tourage.quantity.BakeryUnits.CELSIUS;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountRange;
import org.tourage.quantity.BakeryUnits;

/**
 * The forms of baker's yeast, what one weighs in place of another, and the water that each bears.
 * Ratios: 0.40 active dry and 0.33 instant for 1 of fresh (J. Hamelman, Bread, 2004); makers print
 * 0.40 to 0.50 and 0.33 to 0.40.
 */
public enum YeastForm {
  /** Compressed or cream yeast of about 70 % water. */
  FRESH(
      "fresh yeast",
      1,
      20,
      38,
      "crumble it into a little of the water; with a pinch of sugar it foams within about 10 minutes"),
  /** Dried yeast that is woken in warm water before it goes into the dough. */
  ACTIVE_DRY(
      "active dry yeast",
      0.40,
      38,
      43,
      "stir it into warm water with a pinch of sugar; it foams to a thick cap within about 10 minutes,"
          + " and if it does not, start again with other yeast"),
  /** Finely dried yeast that goes into the flour. */
  INSTANT(
      "instant yeast",
      0.33,
      20,
      43,
      "mix it into the flour; to test it, stir some into warm water with a pinch of sugar: it foams"
          + " within about 10 minutes");

  private static final double FRESH_WATER_SHARE = 0.5;

  private final String label;
  private final double perFresh;
  private final double coldest;
  private final double warmest;
  private final String foamTest;

  YeastForm(String label, double perFresh, double coldest, double warmest, String foamTest) {
    this.label = label;
    this.perFresh = perFresh;
    this.coldest = coldest;
    this.warmest = warmest;
    this.foamTest = foamTest;
  }

  /**
   * The form of an ingredient: as it was said, or else fresh if more than half of it is water and
   * instant if not.
   *
   * @param ingredient an ingredient
   * @return its form; empty if it is no yeast
   */
  public static Optional<YeastForm> of(Ingredient ingredient) {
    if (!ingredient.is(Role.YEAST)) {
      return Optional.empty();
    }
    boolean fresh = ingredient.composition().fraction(Component.WATER) > FRESH_WATER_SHARE;
    return ingredient.yeastForm().or(() -> Optional.of(fresh ? FRESH : INSTANT));
  }

  /**
   * What it is called.
   *
   * @return for example {@code fresh yeast}
   */
  public String label() {
    return label;
  }

  /**
   * How much of it stands for one of fresh yeast.
   *
   * @return 1, 0.40 or 0.33
   */
  public double perFresh() {
    return perFresh;
  }

  /**
   * How much of this form stands for some of another.
   *
   * @param mass the mass of the other form
   * @param other the other form
   * @return the mass of this form in grams
   */
  public Amount<Mass> insteadOf(Quantity<Mass> mass, YeastForm other) {
    return BakeryUnits.GRAM.amount(
        BakeryUnits.GRAM.measure("the mass", mass) * perFresh / other.perFresh);
  }

  /**
   * The water that it is stirred into, or for instant yeast the water that its dough is mixed with
   * (common practice).
   *
   * @return the range
   */
  public AmountRange<Temperature> water() {
    return new AmountRange<>(CELSIUS.amount(coldest), CELSIUS.amount(warmest));
  }

  /**
   * How to see that it is alive (common practice).
   *
   * @return the test in words
   */
  public String foamTest() {
    return foamTest;
  }
}
