package org.tourage.oven;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.KILOGRAM_PER_CUBIC_METRE;
import static org.tourage.quantity.BakeryUnits.METRE;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Temperature;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.physics.Atmosphere;
import org.tourage.physics.ChoiOkos1986;
import org.tourage.physics.Constituents;
import org.tourage.physics.DryingBody;
import org.tourage.physics.Solid;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.BakeryUnits;

/**
 * A piece as it goes into the oven: its shape after the proof, what it is made of, how much of it
 * is gas, how warm it is and how far it springs. A shape of several directions (a coil lying flat,
 * a loaf, a block) is taken as a ball of the same surface for its volume.
 *
 * <p>Conductivity of crumb and crust from the diffusivity of bread by porosity ε in percent: crumb
 * exp(0.01·ε − 15.25), crust exp(0.0062·ε − 15.30) m²/s, with densities 979 − 9.90·ε and 895 −
 * 9.0·ε kg/m³ (J. Food Eng. 26 (1995) 497–510).
 *
 * @param solid its shape after the proof
 * @param dough what it is made of, roll-in included
 * @param porosity the share of gas by volume, 0 to below 0.95; usual 0.5 to 0.7 after the proof
 * @param start its temperature
 * @param spring how many times its volume it grows in the oven, 1 to 3
 * @param boiling the temperature at which its water boils
 */
public record BakePiece(
    Solid solid,
    Constituents dough,
    double porosity,
    Amount<Temperature> start,
    double spring,
    Amount<Temperature> boiling)
    implements Serializable {
  private static final double USUAL_POROSITY = 0.60;
  private static final double USUAL_SPRING = 1.3;
  private static final double MOST_SPRING = 3;
  private static final double MOST_POROSITY = 0.95;
  private static final double PROPERTIES_CELSIUS = 80;

  /** Water that stays even in the crust, kg for each kg of piece: common practice, about 3 %. */
  private static final double BOUND = 0.03;

  /**
   * Checks the figures.
   *
   * @param solid its shape after the proof
   * @param dough what it is made of, roll-in included
   * @param porosity the share of gas by volume, 0 to below 0.95
   * @param start its temperature
   * @param spring how many times its volume it grows in the oven, 1 to 3
   * @param boiling the temperature at which its water boils
   */
  public BakePiece {
    requireNonNull(solid, "solid");
    requireNonNull(dough, "dough");
    requireNonNull(start, "start");
    requireNonNull(boiling, "boiling");
    boolean fits =
        porosity >= 0 && porosity < MOST_POROSITY && spring >= 1 && spring <= MOST_SPRING;
    if (!fits) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no piece is like this",
          "porosity " + porosity + ", spring " + spring,
          "give a porosity from 0 to below 0.95 and a spring from 1 to 3");
    }
  }

  /**
   * A proofed piece: 60 % gas, 26 °C, grows by 1.3 times (common practice), at sea level.
   *
   * @param solid its shape after the proof
   * @param dough what it is made of, roll-in included
   * @return the piece
   */
  public static BakePiece of(Solid solid, Constituents dough) {
    return new BakePiece(
        solid,
        dough,
        USUAL_POROSITY,
        CELSIUS.amount(26),
        USUAL_SPRING,
        Atmosphere.boiling(METRE.amount(0)));
  }

  /**
   * The same with another share of gas.
   *
   * @param share by volume, usual 50 % to 70 % after the proof
   * @return the piece
   */
  public BakePiece withPorosity(Quantity<Dimensionless> share) {
    return new BakePiece(solid, dough, FRACTION.measure(share), start, spring, boiling);
  }

  /**
   * The same from another temperature.
   *
   * @param temperature the temperature
   * @return the piece
   */
  public BakePiece from(Quantity<Temperature> temperature) {
    return new BakePiece(solid, dough, porosity, Amount.from(temperature), spring, boiling);
  }

  /**
   * The same with another growth in the oven.
   *
   * @param times how many times its volume
   * @return the piece
   */
  public BakePiece withSpring(double times) {
    return new BakePiece(solid, dough, porosity, start, times, boiling);
  }

  /**
   * The same dough in another shape.
   *
   * @param value the shape after the proof
   * @return the piece
   */
  public BakePiece shaped(Solid value) {
    return new BakePiece(value, dough, porosity, start, spring, boiling);
  }

  /**
   * A piece of the same proportions and another mass.
   *
   * @param times how many times the mass, positive
   * @return the piece, all its lengths grown by the cube root
   */
  public BakePiece massTimes(double times) {
    return shaped(solid.grown(Math.cbrt(times)));
  }

  /**
   * The same at an altitude: its water boils sooner.
   *
   * @param altitude above the sea
   * @return the piece
   */
  public BakePiece atAltitude(Quantity<Length> altitude) {
    return new BakePiece(solid, dough, porosity, start, spring, Atmosphere.boiling(altitude));
  }

  int dimensions() {
    return solid.axes().size() == 1 ? solid.axes().get(0).dimensions() : 3;
  }

  /** Metres from the middle to the surface. */
  double half() {
    return solid.axes().size() == 1
        ? solid.axes().get(0).half().in(METRE)
        : 3 / solid.surfaceByVolume();
  }

  /** kg/m³ with its gas. */
  double density() {
    return ChoiOkos1986.density(dough, start).in(KILOGRAM_PER_CUBIC_METRE) * (1 - porosity);
  }

  DryingBody.Material material() {
    double sum = dough.sum();
    double water = dough.water() / sum;
    double evaporable = Math.max(0, water - BOUND);
    Amount<Temperature> hot = CELSIUS.amount(PROPERTIES_CELSIUS);
    double rest = ChoiOkos1986.specificHeat(dough, hot) - water * waterHeat(hot);
    double dryHeat = rest + (water - evaporable) * DryingBody.WATER_HEAT;
    double percent = 100 * porosity;
    double crumb =
        Math.exp(0.01 * percent - 15.25)
            * (979 - 9.90 * percent)
            * (dryHeat + evaporable * DryingBody.WATER_HEAT);
    double crust =
        Math.exp(0.0062 * percent - 15.30) * (895 - 9.0 * percent) * dryHeat / (1 - evaporable);
    return new DryingBody.Material(
        density(), evaporable, dryHeat, crumb, crust, boiling.in(BakeryUnits.CELSIUS));
  }

  private static double waterHeat(Amount<Temperature> at) {
    return ChoiOkos1986.specificHeat(new Constituents(1, 0, 0, 0, 0, 0), at);
  }

  /** {@code roll 45 mm across, 60 % gas, from 26 °C}. */
  @Override
  public String toString() {
    return solid
        + ", "
        + Math.round(100 * porosity)
        + " % gas, from "
        + AmountFormat.sideBySide().temperature(start);
  }
}
