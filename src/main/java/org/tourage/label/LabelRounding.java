package org.tourage.label;

import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.KILOCALORIE;
import static org.tourage.quantity.BakeryUnits.KILOJOULE;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Mass;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;
import org.tourage.quantity.BakeryUnits;
import org.tourage.quantity.Given;

/**
 * Writes a figure as a label rounds it: for the United States by 21 CFR 101.9(c) as tabulated in
 * FDA, A Food Labeling Guide, Appendix H; for the European Union by the Commission's guidance on
 * tolerances of December 2012, section 6. Half of a step is rounded up.
 */
public final class LabelRounding {
  private LabelRounding() {}

  /**
   * Writes the mass of a nutrient.
   *
   * @param scheme whose rules
   * @param nutrient the nutrient
   * @param mass its mass, not negative
   * @return for example {@code 3.5 g}, {@code less than 1 g} or {@code <0.5 g}
   * @throws BakeryException if the mass is negative or the scheme has no rule for the nutrient
   */
  public static String write(LabelScheme scheme, Nutrient nutrient, Quantity<Mass> mass) {
    double grams = GRAM.measure("the mass", mass);
    if (grams < 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a nutrient can't weigh less than nothing",
          Given.mass("the mass", mass).toString(),
          "give 0 g or more");
    }
    double units = grams * nutrient.unitsInGram();
    return LabelTables.print(scheme, nutrient.name(), nutrient.unit(), units)
        .orElseThrow(
            () ->
                new BakeryException(
                    Reason.UNKNOWN_NAME,
                    "no rule of rounding for " + nutrient.word(),
                    scheme.place(),
                    "use one of " + Nutrient.of(scheme)));
  }

  /**
   * Writes an energy.
   *
   * @param scheme whose rules
   * @param energy the energy, not negative
   * @return {@code 1046 kJ / 250 kcal} for the European Union, {@code 250 kcal} for the United
   *     States
   * @throws BakeryException if the energy is negative
   */
  public static String write(LabelScheme scheme, Quantity<Energy> energy) {
    return scheme == LabelScheme.EU
        ? write(KILOJOULE.measure("the energy", energy), KILOCALORIE.measure("the energy", energy))
        : one(scheme, "kcal", KILOCALORIE.measure("the energy", energy));
  }

  /** The two energies of the European Union have factors of their own each. */
  static String write(double kilojoules, double kilocalories) {
    return one(LabelScheme.EU, "kJ", kilojoules)
        + " / "
        + one(LabelScheme.EU, "kcal", kilocalories);
  }

  static String one(LabelScheme scheme, String unit, double value) {
    if (value < 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "an energy of a food can't be negative",
          value + " " + unit,
          "0 or more");
    }
    return LabelTables.print(scheme, LabelTables.ENERGY, unit, value).orElseThrow();
  }

  /**
   * The share of a nutrient in the reference intake of an adult (European Union, Annex XIII) or in
   * the daily value (United States).
   *
   * @param scheme whose values
   * @param nutrient the nutrient
   * @param mass its mass
   * @return the share in percent, not rounded; empty where there is no such value
   */
  public static Optional<Amount<Dimensionless>> share(
      LabelScheme scheme, Nutrient nutrient, Quantity<Mass> mass) {
    double units = GRAM.measure("the mass", mass) * nutrient.unitsInGram();
    return LabelTables.daily(scheme, nutrient.name(), nutrient.unit())
        .map(daily -> BakeryUnits.PERCENT.amount(100 * units / daily));
  }

  /**
   * The share of an energy in the reference intake of 8,400 kJ (European Union); the United States
   * give none.
   *
   * @param energy the energy
   * @return the share in percent, not rounded
   */
  public static Amount<Dimensionless> shareOfIntake(Quantity<Energy> energy) {
    double daily = LabelTables.daily(LabelScheme.EU, LabelTables.ENERGY, "kJ").orElseThrow();
    return BakeryUnits.PERCENT.amount(100 * KILOJOULE.measure("the energy", energy) / daily);
  }
}
