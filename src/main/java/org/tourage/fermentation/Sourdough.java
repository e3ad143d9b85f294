package org.tourage.fermentation;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Temperature;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Given;

/**
 * How fast bacteria and yeast of a sourdough grow, as shares of their best, by temperature, pH and
 * salt: M.G. Gänzle, M. Ehmann and W.P. Hammes, Appl. Environ. Microbiol. 64 (1998) 2616, for
 * Lactobacillus sanfranciscensis and Candida milleri; other cultures differ. The factors are
 * multiplied, which is a modelling choice.
 *
 * <ul>
 *   <li>temperature: {@link RateMarks} through the marks of the paper;
 *   <li>pH: bacteria from 3.9 to 6.7 by the cardinal model of L. Rosso and others, Appl. Environ.
 *       Microbiol. 61 (1995) 610 (from memory), γ = (pH − min)(pH − max) / ((pH − min)(pH − max) −
 *       (pH − best)²) with the best in the middle, 5.3, a choice; the yeast is not held back by the
 *       pH of a dough (from memory);
 *   <li>salt by the flour: the bacteria stop at 4 %, along a straight line, a choice; the yeast
 *       bears 8 % and gets no factor.
 * </ul>
 *
 * @param temperature of the dough
 * @param ph from 2 to 9
 * @param salt on flour, 0 % to 8 %
 */
public record Sourdough(Amount<Temperature> temperature, double ph, Amount<Dimensionless> salt)
    implements Explained, Serializable {
  private static final double PH_LEAST = 3.9;
  private static final double PH_MOST = 6.7;
  private static final double PH_BEST = 5.3;
  private static final double MOST_SALT_PERCENT = 8;
  private static final double SALT_STOPS_PERCENT = 4;
  private static final String PAPER =
      "Gänzle, Ehmann and Hammes, Appl. Environ. Microbiol. 64 (1998) 2616";

  /**
   * Checks the figures.
   *
   * @param temperature of the dough
   * @param ph from 2 to 9
   * @param salt on flour, 0 % to 8 %
   */
  public Sourdough {
    requireNonNull(temperature, "temperature");
    requireNonNull(salt, "salt");
    double percent = salt.in(PERCENT);
    if (!(ph >= 2) || ph > 9 || !(percent >= 0) || percent > MOST_SALT_PERCENT) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no sourdough like this was studied",
          "pH " + ph + ", salt " + Numbers.significant(percent, 4) + " % of flour",
          "give a pH of 2 to 9 (a ripe levain has about 3.8) and salt of 0 % to 8 % of the flour");
    }
  }

  /**
   * A sourdough at a moment.
   *
   * @param temperature of the dough
   * @param ph about 6 when mixed, 3.6 to 4 when ripe
   * @param salt on flour, 0 % to 8 %
   * @return the sourdough
   */
  public static Sourdough at(
      Quantity<Temperature> temperature, double ph, Quantity<Dimensionless> salt) {
    return new Sourdough(
        Given.temperature("the temperature", requireNonNull(temperature, "temperature")),
        ph,
        Given.ratio("the salt", requireNonNull(salt, "salt")));
  }

  /**
   * How fast the bacteria grow.
   *
   * @return the share of their best, 0 to 1
   */
  public double bacteria() {
    return RateMarks.named("sourdough bacteria").rate(temperature)
        * acid()
        * OsmoticLoad.keptOf(salt);
  }

  /**
   * How fast the yeast grows.
   *
   * @return the share of its best, 0 to 1
   */
  public double yeast() {
    return RateMarks.named("sourdough yeast").rate(temperature);
  }

  private double acid() {
    if (ph <= PH_LEAST || ph >= PH_MOST) {
      return 0;
    }
    double product = (ph - PH_LEAST) * (ph - PH_MOST);
    return product / (product - (ph - PH_BEST) * (ph - PH_BEST));
  }

  @Override
  public List<Advice> advice() {
    AmountFormat format = AmountFormat.sideBySide();
    List<Advice> advice = new ArrayList<>();
    if (yeast() == 0) {
      advice.add(
          Advice.of(
              "SOURDOUGH_YEAST_STOPS",
              "at " + format.temperature(temperature) + " the yeast of a sourdough does not grow",
              "Keep it between 8 °C (46 °F) and 35 °C (95 °F); it rises best near 28 °C (82 °F)"));
    }
    if (salt.in(PERCENT) >= SALT_STOPS_PERCENT) {
      advice.add(
          Advice.of(
              "SALT_STOPS_BACTERIA",
              "salt of " + format.percent(salt) + " of the flour stops the bacteria",
              "Sour without salt, and salt the dough that it goes into"));
    }
    if (acid() == 0) {
      advice.add(
          Advice.of(
              "PH_STOPS_BACTERIA",
              "at pH " + Numbers.significant(ph, 3) + " the bacteria do not grow any more",
              "Refresh it with flour and water, which lift the pH"));
    }
    return advice;
  }

  @Override
  public Working working() {
    return Working.of(
        new WorkedLine(
            "bacteria",
            "temperature · pH · salt",
            Numbers.significant(RateMarks.named("sourdough bacteria").rate(temperature), 3)
                + " × "
                + Numbers.significant(acid(), 3)
                + " × "
                + Numbers.significant(OsmoticLoad.keptOf(salt), 3)
                + " = "
                + Numbers.significant(bacteria(), 3),
            PAPER),
        new WorkedLine("yeast", "temperature", Numbers.significant(yeast(), 3), PAPER));
  }

  /** {@code bacteria at 49 %, yeast at 50 % of their best at 20 °C (68 °F)}. */
  @Override
  public String toString() {
    return "bacteria at "
        + Numbers.decimals(100 * bacteria(), 0)
        + " %, yeast at "
        + Numbers.decimals(100 * yeast(), 0)
        + " % of their best at "
        + AmountFormat.sideBySide().temperature(temperature);
  }
}
