package org.tourage.oven;

import static org.tourage.quantity.BakeryUnits.CELSIUS;

import javax.measure.quantity.Temperature;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountRange;

/**
 * When a piece is done by its core (common practice), how its starch sets, and how well its crumb
 * holds the gas that swells in the oven (our choices, docs/models.md).
 */
public enum DoughKind {
  /** Flour, water, yeast, salt: 93 °C to 99 °C. */
  LEAN("lean", 93, 99, 0, 0.45),
  /** With fat, sugar, milk or egg: 88 °C to 95 °C. */
  RICH("rich", 88, 95, 3, 0.45),
  /** A yeasted dough with fat rolled in: 92 °C to 99 °C. */
  LAMINATED("laminated", 92, 99, 3, 0.45),
  /** A dough without yeast with fat rolled in: 98 °C to 100 °C, dry to the middle. */
  PUFF("puff", 98, 100, 3, 0.45),
  /** Rye from half of the flour on: 96 °C to 99 °C; it holds little gas. */
  RYE("rye", 96, 99, 0, 0.15),
  /** A batter of muffins and quick breads: 95 °C to 99 °C. */
  BATTER("batter", 95, 99, 6, 0.45),
  /** Starches and gums in place of gluten: 96 °C to 99 °C; it holds little gas. */
  GLUTEN_FREE("gluten-free", 96, 99, 0, 0.2);

  /** Wheat starch in dough swells and sets from about 60 °C to 85 °C (common practice). */
  private static final double STARCH_SET_CELSIUS = 85;

  /** A crumb ends 2 to 4 K below the boiling point of its place (common practice). */
  private static final double BELOW_BOILING = 2;

  /** Where water boils above this, the handbooks hold as they stand. */
  private static final double LOWLAND_BOILING = 99;

  private static final double FAR_BELOW_BOILING = 4;

  private final String word;
  private final double low;
  private final double high;
  private final double starchLater;
  private final double holds;

  DoughKind(String word, double low, double high, double starchLater, double holds) {
    this.word = word;
    this.low = low;
    this.high = high;
    this.starchLater = starchLater;
    this.holds = holds;
  }

  /**
   * What it is called.
   *
   * @return for example {@code lean}
   */
  public String word() {
    return word;
  }

  /**
   * The core of a piece that is done at sea level.
   *
   * @return the range
   */
  public AmountRange<Temperature> core() {
    return new AmountRange<>(CELSIUS.amount(low), CELSIUS.amount(high));
  }

  /**
   * The core of a piece that is done where water boils sooner: from no more than the boiling point
   * less 4 K to no more than the boiling point less 2 K.
   *
   * @param boiling the temperature at which water boils there
   * @return the range
   */
  public AmountRange<Temperature> core(Amount<Temperature> boiling) {
    double most = boiling.in(CELSIUS);
    if (most >= LOWLAND_BOILING) {
      return core();
    }
    return new AmountRange<>(
        CELSIUS.amount(Math.min(low, most - FAR_BELOW_BOILING)),
        CELSIUS.amount(Math.min(high, most - BELOW_BOILING)));
  }

  /** By how many kelvin sugar and fat raise the temperature at which its starch sets. */
  double starchLater() {
    return starchLater;
  }

  /** The share of the gas that swells and stays in. */
  double holds() {
    return holds;
  }

  /**
   * The temperature at which the starch of the crumb has set.
   *
   * @return 85 °C
   */
  public static Amount<Temperature> starchSet() {
    return CELSIUS.amount(STARCH_SET_CELSIUS);
  }
}
