package org.tourage.fermentation;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.KELVIN;
import static org.tourage.quantity.BakeryUnits.KILOGRAM_PER_CUBIC_METRE;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Temperature;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.formula.Formula;
import org.tourage.formula.Line;
import org.tourage.formula.StageKind;
import org.tourage.ingredient.Allergen;
import org.tourage.internal.Numbers;
import org.tourage.physics.Atmosphere;
import org.tourage.physics.Carroll1991;
import org.tourage.physics.ChoiOkos1986;
import org.tourage.physics.Constituents;
import org.tourage.physics.IapwsIf97Saturation;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Density;
import org.tourage.quantity.Given;

/**
 * Where the gas of a fermenting dough is: part of the carbon dioxide is dissolved in the water of
 * the dough, the rest swells the bubbles that mixing beat in as air. So a young dough gives gas
 * before it rises, a dough that cools shrinks and takes gas back into solution, and a dough high in
 * the mountains rises further on the same gas.
 *
 * <p>Bubbles and water are in balance at the pressure of the air: with the vapour pressure p_w of
 * water (IAPWS-IF97), P = p − p_w, the carbon dioxide at partial pressure p_c gives n = H·V_w·p_c +
 * p_c·n_a/(P − p_c), and the bubbles take V = n_a·R·T/(P − p_c), where n_a is the air. Henry's
 * constant H follows {@link Carroll1991}, lowered by the salt of the formula where there is one
 * (about a tenth in a usual dough) and by water that is said to be bound. Sugar lowers it too and
 * fat takes up a little, which is not counted. No gas is lost.
 *
 * @param water the share of water by mass, above 0 and below 1
 * @param gasFree the density of the dough without gas
 * @param air the share of air by volume after mixing; usually 0.04 to 0.12
 * @param mixedAt the temperature after mixing
 * @param pascal the pressure of the air in Pa
 * @param salt mol of sodium chloride for each litre of the water, 0 to 6
 * @param freeWater the share of the water that dissolves gas, above 0 and up to 1; what is bound to
 *     the flour dissolves none
 * @param holds the growth above which gas escapes from the dough, above 1
 */
public record DoughGas(
    double water,
    Amount<Density> gasFree,
    double air,
    Amount<Temperature> mixedAt,
    double pascal,
    double salt,
    double freeWater,
    double holds)
    implements Serializable {
  /** Air in a dough that is mixed in the open: usual 4 to 12 % by volume (from memory). */
  public static final double USUAL_AIR = 0.08;

  /** The gas constant, J/(mol·K), exact since 2019 to the digits given. */
  private static final double GAS_CONSTANT = 8.314462618;

  /** g/mol, standard atomic weights. */
  private static final double MOLAR_MASS_OF_SALT = 58.44;

  /** A saturated brine has about 6 mol of salt to the litre. */
  private static final double MOST_SALT = 6.2;

  /** Above this growth gas escapes from most doughs of wheat: common practice. */
  private static final double WHEAT_HOLDS = 3;

  /** Doughs of mostly rye, or without gluten, are proofed by half to double: common practice. */
  private static final double WEAK_HOLDS = 2;

  private static final double LOWEST_PASCAL = 20_000;
  private static final double HIGHEST_PASCAL = 120_000;
  private static final double WARMEST_CELSIUS = 60;

  /**
   * Checks the figures.
   *
   * @param water the share of water by mass, above 0 and below 1
   * @param gasFree the density of the dough without gas
   * @param air the share of air by volume after mixing; usually 0.04 to 0.12
   * @param mixedAt the temperature after mixing
   * @param pascal the pressure of the air in Pa
   * @param salt mol of sodium chloride for each litre of the water, 0 to 6
   * @param freeWater the share of the water that dissolves gas, above 0 and up to 1
   * @param holds the growth above which gas escapes from the dough, above 1
   */
  public DoughGas {
    requireNonNull(gasFree, "gasFree");
    requireNonNull(mixedAt, "mixedAt");
    if (!(holds > 1) || Double.isInfinite(holds)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a dough that holds no gas has no rise",
          holds + " times the volume",
          "give the growth above which gas escapes: about 3 for wheat, 2 for rye");
    }
    boolean shares = water > 0 && water < 1 && air > 0 && air < 0.5;
    if (!(salt >= 0) || salt > MOST_SALT || !(freeWater > 0) || freeWater > 1) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "the water of no dough is like this",
          salt + " mol/L of salt, " + freeWater + " of it free",
          "give 0 to 6 mol/L (35 % is saturated) and a free share above 0 and up to 1");
    }
    if (!shares || gasFree.value() <= 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no dough is like this",
          water + " water, " + air + " air, " + gasFree,
          "give shares between 0 and 1 (air below 0.5) and a positive density");
    }
    if (!(pascal >= LOWEST_PASCAL) || pascal > HIGHEST_PASCAL) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no kitchen has this air pressure",
          pascal + " Pa",
          "give 20 000 Pa to 120 000 Pa; sea level has 101 325 Pa");
    }
    celsiusInRange(mixedAt.in(CELSIUS));
  }

  /**
   * A dough of wheat without salt whose water is all free.
   *
   * @param water the share of water by mass, above 0 and below 1
   * @param gasFree the density of the dough without gas
   * @param air the share of air by volume after mixing; usually 0.04 to 0.12
   * @param mixedAt the temperature after mixing
   * @param pascal the pressure of the air in Pa
   */
  public DoughGas(
      double water,
      Amount<Density> gasFree,
      double air,
      Amount<Temperature> mixedAt,
      double pascal) {
    this(water, gasFree, air, mixedAt, pascal, 0, 1, WHEAT_HOLDS);
  }

  /**
   * The gas of a dough by its formula, with usual air, at sea level, its salt counted. It holds 3
   * times its volume where half of the flour or more is wheat, 2 times otherwise (common practice).
   *
   * @param formula the formula; its roll-in fat and finish are left out
   * @param mixedAt the temperature after mixing
   * @return the gas
   */
  public static DoughGas of(Formula formula, Quantity<Temperature> mixedAt) {
    requireNonNull(formula, "formula");
    return of(formula.constituents(StageKind::inDough), mixedAt)
        .withSaltInWater(OsmoticLoad.of(formula).saltInWater())
        .withHold(holds(formula));
  }

  private static double holds(Formula formula) {
    double wheat = 0;
    double flour = 0;
    for (Line line : formula.lines()) {
      if (line.isFlour()) {
        double share = line.percent().in(FRACTION);
        flour += share;
        wheat += line.ingredient().allergens().contains(Allergen.WHEAT) ? share : 0;
      }
    }
    // what counts no flour is judged as wheat is; the sum may miss its half by a last digit
    return wheat >= 0.5 * flour * (1 - 1e-9) ? WHEAT_HOLDS : WEAK_HOLDS;
  }

  /**
   * The gas of a dough by what it is made of, with usual air, at sea level; its salt is not known
   * and not counted.
   *
   * @param dough what the dough is made of
   * @param mixedAt the temperature after mixing
   * @return the gas
   */
  public static DoughGas of(Constituents dough, Quantity<Temperature> mixedAt) {
    requireNonNull(dough, "dough");
    requireNonNull(mixedAt, "mixedAt");
    return new DoughGas(
        dough.water() / dough.sum(),
        ChoiOkos1986.density(dough, mixedAt),
        USUAL_AIR,
        Given.temperature("the mixed at", requireNonNull(mixedAt, "mixedAt")),
        Atmosphere.SEA_LEVEL_PASCAL);
  }

  /**
   * The same dough at an altitude.
   *
   * @param altitude above the sea
   * @return the gas
   */
  public DoughGas atAltitude(Quantity<Length> altitude) {
    return new DoughGas(
        water, gasFree, air, mixedAt, Atmosphere.pressure(altitude), salt, freeWater, holds);
  }

  /**
   * The same dough with another share of air.
   *
   * @param share by volume after mixing, for example 8 %
   * @return the gas
   */
  public DoughGas withAir(Quantity<Dimensionless> share) {
    return new DoughGas(
        water,
        gasFree,
        FRACTION.measure("the share", requireNonNull(share, "share")),
        mixedAt,
        pascal,
        salt,
        freeWater,
        holds);
  }

  /**
   * The same dough with salt in its water.
   *
   * @param share salt over salt and water by mass, as {@link OsmoticLoad#saltInWater()} has it
   * @return the gas
   */
  public DoughGas withSaltInWater(Quantity<Dimensionless> share) {
    double s = FRACTION.measure("the share", requireNonNull(share, "share"));
    // grams of salt to a kilogram of water, taken as a litre
    double molar = s < 1 ? 1000 * s / (1 - s) / MOLAR_MASS_OF_SALT : Double.NaN;
    return new DoughGas(water, gasFree, air, mixedAt, pascal, molar, freeWater, holds);
  }

  /**
   * The same dough with water that dissolves no gas since it is bound. How much that is nobody
   * agrees on: water that does not freeze is about 0.3 g for each gram of dry flour (from memory).
   *
   * @param share of the water, 0 % or more and below 100 %
   * @return the gas
   */
  public DoughGas withBoundWater(Quantity<Dimensionless> share) {
    return new DoughGas(
        water,
        gasFree,
        air,
        mixedAt,
        pascal,
        salt,
        1 - FRACTION.measure("the share", requireNonNull(share, "share")),
        holds);
  }

  /**
   * The same dough with another limit of what it holds.
   *
   * @param growth the growth above which gas escapes, above 1
   * @return the gas
   */
  public DoughGas withHold(double growth) {
    return new DoughGas(water, gasFree, air, mixedAt, pascal, salt, freeWater, growth);
  }

  private static double celsiusInRange(double celsius) {
    if (!(celsius >= 0) || celsius > WARMEST_CELSIUS) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "the gas of a dough is not known at this temperature",
          Numbers.significant(celsius, 6) + " °C",
          "give 0 °C to 60 °C (32 °F to 140 °F); below, the dough freezes, above, it bakes");
    }
    return celsius;
  }

  /** Cubic metres of dough without gas, for a kilogram. */
  private double solidVolume() {
    return 1 / gasFree.in(KILOGRAM_PER_CUBIC_METRE);
  }

  /** Cubic metres of bubbles after mixing, for a kilogram. */
  private double firstBubbles() {
    return solidVolume() * air / (1 - air);
  }

  /** Moles of air, for a kilogram. */
  double airMoles() {
    double kelvin = mixedAt.in(KELVIN);
    return dryPressure(kelvin) * firstBubbles() / (GAS_CONSTANT * kelvin);
  }

  private double dryPressure(double kelvin) {
    // the skin of a dough may be a little below 0 °C; the vapour pressure is under 1 % there
    return pascal - IapwsIf97Saturation.pressure(KELVIN.amount(Math.max(273.15, kelvin)));
  }

  /** Moles dissolved for each pascal, for a kilogram. */
  private double dissolving(double kelvin) {
    return Carroll1991.dissolved(kelvin, salt) * water * freeWater;
  }

  /** The partial pressure of carbon dioxide: the smaller root of the balance. */
  private static double partial(double moles, double dry, double dissolving, double airMoles) {
    double b = moles + dissolving * dry + airMoles;
    // written so that nothing cancels where there is little gas
    return 2 * moles * dry / (b + Math.sqrt(b * b - 4 * dissolving * moles * dry));
  }

  private static double moles(double moles) {
    if (!(moles >= 0) || Double.isInfinite(moles)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "there can't be so much carbon dioxide",
          moles + " mol/kg",
          "give 0 or more");
    }
    return moles;
  }

  /**
   * How many times its volume after mixing the dough has.
   *
   * @param moles all carbon dioxide in the dough, dissolved or not, mol for each kg of dough
   * @param temperature of the dough, 0 °C to 60 °C
   * @return the growth, 2 for doubled; a little below 1 for a dough without gas that has cooled
   */
  public double growth(double moles, Quantity<Temperature> temperature) {
    return growthAt(
        moles(moles),
        celsiusInRange(
            CELSIUS.measure("the temperature", requireNonNull(temperature, "temperature"))));
  }

  double growthAt(double moles, double celsius) {
    return growthAt(moles, celsius, airMoles());
  }

  /** The same with the moles of air at hand, for loops over many points. */
  double growthAt(double moles, double celsius, double airMoles) {
    double kelvin = 273.15 + celsius;
    double dry = dryPressure(kelvin);
    double bubbles =
        airMoles
            * GAS_CONSTANT
            * kelvin
            / (dry - partial(moles, dry, dissolving(kelvin), airMoles));
    return (solidVolume() + bubbles) / (solidVolume() + firstBubbles());
  }

  /**
   * The carbon dioxide that a growth takes.
   *
   * @param growth how many times its volume after mixing the dough has
   * @param temperature of the dough, 0 °C to 60 °C
   * @return mol for each kg of dough, dissolved gas included
   * @throws BakeryException if the dough would have this volume without any carbon dioxide
   */
  public double carbonDioxide(double growth, Quantity<Temperature> temperature) {
    double kelvin =
        273.15
            + celsiusInRange(
                CELSIUS.measure("the temperature", requireNonNull(temperature, "temperature")));
    double bubbles = growth * (solidVolume() + firstBubbles()) - solidVolume();
    double dry = dryPressure(kelvin);
    double alone = airMoles() * GAS_CONSTANT * kelvin / dry;
    if (!(bubbles > alone * (1 + 1e-9)) || Double.isInfinite(growth)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "this is no rise",
          growth + " times the volume after mixing",
          "give more than "
              + Numbers.significant((solidVolume() + alone) / (solidVolume() + firstBubbles()), 4)
              + ", for example 2 for doubled");
    }
    double partial = dry - airMoles() * GAS_CONSTANT * kelvin / bubbles;
    return dissolving(kelvin) * partial + partial * bubbles / (GAS_CONSTANT * kelvin);
  }

  /**
   * What stays in the dough when it is knocked back, rolled or shaped: the bubbles go down to the
   * air that was mixed in, the dissolved carbon dioxide stays.
   *
   * @param moles all carbon dioxide before, mol for each kg of dough
   * @param temperature of the dough, 0 °C to 60 °C
   * @return mol for each kg of dough after
   */
  public double afterKnockingBack(double moles, Quantity<Temperature> temperature) {
    return keptAt(
        moles(moles),
        celsiusInRange(
            CELSIUS.measure("the temperature", requireNonNull(temperature, "temperature"))));
  }

  /**
   * What is dissolved in the water, and not in bubbles.
   *
   * @param moles all carbon dioxide in the dough, mol for each kg of dough
   * @param temperature of the dough, 0 °C to 60 °C
   * @return mol for each kg of dough
   */
  public double dissolved(double moles, Quantity<Temperature> temperature) {
    return keptAt(
        moles(moles),
        celsiusInRange(
            CELSIUS.measure("the temperature", requireNonNull(temperature, "temperature"))));
  }

  /** The same for any temperature. */
  double keptAt(double moles, double celsius) {
    double kelvin = 273.15 + celsius;
    double dissolving = dissolving(kelvin);
    return dissolving * partial(moles, dryPressure(kelvin), dissolving, airMoles());
  }

  /** {@code dough with 44 % water and 8 % air, mixed at 24 °C (75 °F)}. */
  @Override
  public String toString() {
    return "dough with "
        + Numbers.decimals(100 * water, 1)
        + " % water and "
        + Numbers.decimals(100 * air, 1)
        + " % air, mixed at "
        + AmountFormat.sideBySide().temperature(mixedAt);
  }
}
