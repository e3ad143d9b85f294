package org.tourage.fermentation;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.JOULE;
import static org.tourage.quantity.BakeryUnits.KELVIN;
import static org.tourage.quantity.BakeryUnits.KILOJOULE;

import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Temperature;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.AmountRange;
import org.tourage.quantity.Given;

/**
 * The law of S. Arrhenius (1889): rate = exp(−E/R·(1/T − 1/T_ref)), 1 at the reference. Like {@link
 * Q10Rule} it knows no optimum; an activation energy of 50 to 80 kJ/mol is a factor of about 2 to 3
 * for 10 K at 20 °C (by the equation).
 *
 * @param activation activation energy of a mole, above 0 and at most 400 kJ
 * @param reference where the rate is 1
 * @param range where the law is used
 * @param source where the activation energy comes from
 */
public record Arrhenius(
    Amount<Energy> activation,
    Amount<Temperature> reference,
    AmountRange<Temperature> range,
    String source)
    implements RateModel {
  private static final double GAS_CONSTANT = 8.314462618;
  private static final double MOST_JOULES = 400_000;

  /** Nothing gets colder; a rate is asked for at the air of a freezer at the worst. */
  private static final double COLDEST_KELVIN = 150;

  /**
   * Checks the energy.
   *
   * @param activation activation energy of a mole, above 0 and at most 400 kJ
   * @param reference where the rate is 1
   * @param range where the law is used
   * @param source where the activation energy comes from
   */
  public Arrhenius {
    requireNonNull(activation, "activation");
    requireNonNull(reference, "reference");
    requireNonNull(range, "range");
    requireNonNull(source, "source");
    double joules = activation.in(JOULE);
    if (!(joules > 0) || joules > MOST_JOULES || !(reference.in(KELVIN) > COLDEST_KELVIN)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no fermentation has this activation energy",
          activation + " a mole, rate 1 at " + AmountFormat.sideBySide().temperature(reference),
          "give above 0 and up to 400 kJ, usually 50 to 80 kJ, and a temperature of a dough");
    }
  }

  /**
   * A law for dough between 10 °C and 32 °C.
   *
   * @param activation activation energy of a mole, usually 50 kJ to 80 kJ
   * @param reference where the rate is 1
   * @param source where the activation energy comes from
   * @return the law
   */
  public static Arrhenius of(
      Quantity<Energy> activation, Quantity<Temperature> reference, String source) {
    return new Arrhenius(
        Given.energy("the activation", requireNonNull(activation, "activation")),
        Given.temperature("the reference", requireNonNull(reference, "reference")),
        new AmountRange<>(CELSIUS.amount(10), CELSIUS.amount(32)),
        source);
  }

  /**
   * The law from two times that the same dough took to the same volume.
   *
   * @param cold the lower temperature
   * @param warm the higher temperature
   * @param ratio the time in the cold over the time in the warm, above 1
   * @return the law, with 1 at the lower temperature
   * @throws BakeryException if the warmer dough was not the quicker one
   */
  public static Arrhenius observed(
      Quantity<Temperature> cold, Quantity<Temperature> warm, double ratio) {
    TwoTimes times = TwoTimes.of(cold, warm, ratio);
    double joules = GAS_CONSTANT * StrictMath.log(ratio) / (1 / times.low() - 1 / times.high());
    return of(KILOJOULE.amount(joules / 1000), cold, "two times of one dough");
  }

  @Override
  public String name() {
    return "Arrhenius, " + Numbers.significant(activation.in(KILOJOULE), 3) + " kJ/mol";
  }

  @Override
  public double rate(double celsius) {
    double kelvin = Math.max(COLDEST_KELVIN, RateModel.known(celsius) + 273.15);
    return StrictMath.exp(
        -activation.in(JOULE) / GAS_CONSTANT * (1 / kelvin - 1 / reference.in(KELVIN)));
  }

  @Override
  public List<Double> corners() {
    return List.of();
  }

  /** {@code Arrhenius, 60 kJ/mol}. */
  @Override
  public String toString() {
    return name();
  }
}
