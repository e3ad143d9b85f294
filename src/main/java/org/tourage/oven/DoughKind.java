package org.tourage.oven;

import static org.tourage.quantity.BakeryUnits.CELSIUS;

import javax.measure.quantity.Temperature;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountRange;

/** When a piece is done by its core (common practice), and when its starch has set. */
public enum DoughKind {
  /** Flour, water, yeast, salt: 93 °C to 99 °C. */
  LEAN("lean", 93, 99),
  /** With fat, sugar, milk or egg, laminated pieces included: 88 °C to 95 °C. */
  RICH("rich", 88, 95);

  /** Wheat starch in dough swells and sets from about 60 °C to 85 °C (common practice). */
  private static final double STARCH_SET_CELSIUS = 85;

  private final String word;
  private final double low;
  private final double high;

  DoughKind(String word, double low, double high) {
    this.word = word;
    this.low = low;
    this.high = high;
  }

  /**
   * What it is called.
   *
   * @return {@code lean} or {@code rich}
   */
  public String word() {
    return word;
  }

  /**
   * The core of a piece that is done.
   *
   * @return the range
   */
  public AmountRange<Temperature> core() {
    return new AmountRange<>(CELSIUS.amount(low), CELSIUS.amount(high));
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
