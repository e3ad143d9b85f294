package org.tourage.oven;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.KILOGRAM_PER_CUBIC_METRE;
import static org.tourage.quantity.BakeryUnits.METRE;
import static org.tourage.quantity.BakeryUnits.SECOND;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Numbers;
import org.tourage.physics.Atmosphere;
import org.tourage.physics.ChoiOkos1986;
import org.tourage.physics.Constituents;
import org.tourage.physics.DryingBody;
import org.tourage.physics.GasBalance;
import org.tourage.physics.IapwsIf97Saturation;
import org.tourage.physics.Pores;
import org.tourage.physics.Solid;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Given;

/**
 * A piece as it goes into the oven: its shape after the proof, what it is made of, how much of it
 * is gas, how warm it is, how far it springs, what it sits on, and whether it was boiled before.
 *
 * <p>Any shape is taken by its half thickness (the smallest of its directions) and its surface for
 * its volume, see {@link DryingBody}. The crumb conducts as gas cells in dough, with evaporation
 * and condensation in the cells ({@link Pores}); dough between the cells by Choi and Okos 1986;
 * crust from its diffusivity, exp(0.0062·ε − 15.30) m²/s with ε in percent (J. Food Eng. 26 (1995)
 * 497–510), times the density and the heat of this piece's own dry matter.
 *
 * @param solid its shape after the proof
 * @param dough what it is made of, roll-in included
 * @param porosity the share of gas by volume, 0 to below 0.95; usual 0.5 to 0.7 after the proof
 * @param start its temperature
 * @param rise how far it springs in the oven
 * @param boiling the temperature at which its water boils
 * @param seat what it sits on
 * @param boiled how long it was in hot water just before the oven, 0 to 5 min; 0 for not
 * @param bath how warm that water was, 0 °C up to where it boils; null for boiling
 */
public record BakePiece(
    Solid solid,
    Constituents dough,
    double porosity,
    Amount<Temperature> start,
    OvenRise rise,
    Amount<Temperature> boiling,
    Seat seat,
    Amount<Time> boiled,
    @Nullable Amount<Temperature> bath)
    implements Serializable {
  private static final double MOST_POROSITY = 0.95;
  private static final double USUAL_POROSITY = 0.6;
  private static final double PROPERTIES_CELSIUS = 60;
  private static final double LONGEST_BOIL_SECONDS = 300;

  /** Water that a crust of bread keeps in the oven, of the piece: about 3 %. */
  private static final double BOUND = 0.03;

  /** Water activity of a moist crumb: 0.93 to 0.98, common practice. */
  private static final double CRUMB_ACTIVITY = 0.97;

  /**
   * With less gas than this at the start the cells hold steam in place of air, as in puff pastry,
   * and vapour leaves by pressure rather than by diffusion: a modelling choice.
   */
  private static final double AIRY = 0.25;

  private static final double LEAST_AIRY = 0.1;

  /** Of the surface of a roll or a ball that lies, so much is below and so much above. */
  private static final double ROLL_BOTTOM = 0.3;

  private static final double BALL_BOTTOM = 0.25;

  /**
   * Checks the figures.
   *
   * @param solid its shape after the proof
   * @param dough what it is made of, roll-in included
   * @param porosity the share of gas by volume, 0 to below 0.95
   * @param start its temperature
   * @param rise how far it springs in the oven
   * @param boiling the temperature at which its water boils
   * @param seat what it sits on
   * @param boiled how long it was in hot water just before, 0 to 5 min
   * @param bath how warm that water was, 0 °C up to where it boils; null for boiling
   */
  public BakePiece {
    requireNonNull(solid, "solid");
    requireNonNull(dough, "dough");
    requireNonNull(start, "start");
    requireNonNull(rise, "rise");
    requireNonNull(boiling, "boiling");
    requireNonNull(seat, "seat");
    if (!(porosity >= 0) || porosity >= MOST_POROSITY) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no piece is like this",
          "porosity " + porosity,
          "give a porosity from 0 to below 0.95");
    }
    double seconds = boiled.in(SECOND);
    if (!(seconds >= 0) || seconds > LONGEST_BOIL_SECONDS) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no piece is boiled so long before the oven",
          boiled.toString(),
          "give 0 to 5 min; bagels take 30 s to 60 s");
    }
    if (bath != null && !(bath.in(CELSIUS) >= 0 && bath.in(CELSIUS) <= boiling.in(CELSIUS))) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no bath has this temperature here",
          bath.toString(),
          "give 0 °C to " + Numbers.decimals(boiling.in(CELSIUS), 1) + " °C, where water boils");
    }
  }

  /**
   * A proofed piece: 60 % gas, 26 °C, springs by the balance of its gas, at sea level, on a baking
   * sheet.
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
        OvenRise.PROOFED,
        Atmosphere.boiling(METRE.amount(0)),
        Seat.SHEET,
        SECOND.amount(0),
        null);
  }

  /**
   * The same with another share of gas.
   *
   * @param share by volume, usual 50 % to 70 % after the proof
   * @return the piece
   */
  public BakePiece withPorosity(Quantity<Dimensionless> share) {
    return new BakePiece(
        solid,
        dough,
        FRACTION.measure("the share", share),
        start,
        rise,
        boiling,
        seat,
        boiled,
        bath);
  }

  /**
   * The same from another temperature.
   *
   * @param temperature the temperature
   * @return the piece
   */
  public BakePiece from(Quantity<Temperature> temperature) {
    return new BakePiece(
        solid,
        dough,
        porosity,
        Given.temperature("the temperature", temperature),
        rise,
        boiling,
        seat,
        boiled,
        bath);
  }

  /**
   * The same with a growth of one's own in the oven.
   *
   * @param times how many times its volume, 1 to 12
   * @return the piece
   */
  public BakePiece withSpring(double times) {
    return withRise(OvenRise.fixed(times));
  }

  /**
   * The same with another rise in the oven.
   *
   * @param value the rise
   * @return the piece
   */
  public BakePiece withRise(OvenRise value) {
    return new BakePiece(solid, dough, porosity, start, value, boiling, seat, boiled, bath);
  }

  /**
   * The same dough in another shape.
   *
   * @param value the shape after the proof
   * @return the piece
   */
  public BakePiece shaped(Solid value) {
    return new BakePiece(value, dough, porosity, start, rise, boiling, seat, boiled, bath);
  }

  /**
   * The same on another seat.
   *
   * @param value what it sits on
   * @return the piece
   */
  public BakePiece on(Seat value) {
    return new BakePiece(solid, dough, porosity, start, rise, boiling, value, boiled, bath);
  }

  /**
   * The same, boiled just before the oven: its skin comes hot and wet into the oven. What it takes
   * up there (1 % to 4 % of its mass, common practice) is water on its skin; the loss in the oven
   * is counted from the mass of the raw piece, as if that water had drained.
   *
   * @param time how long, 30 s to 60 s for a bagel, at most 5 min
   * @return the piece
   */
  public BakePiece boiledFor(Quantity<Time> time) {
    return new BakePiece(
        solid, dough, porosity, start, rise, boiling, seat, Given.time("the time", time), bath);
  }

  /**
   * The same from a bath that did not boil, as a cold dip in lye or a scald below the boil is.
   *
   * @param water how warm the water was, 0 °C up to where it boils
   * @return the piece
   */
  public BakePiece inBath(Quantity<Temperature> water) {
    return new BakePiece(
        solid,
        dough,
        porosity,
        start,
        rise,
        boiling,
        seat,
        boiled,
        Given.temperature("the water", water));
  }

  /** How warm the water was in which it was boiled. */
  Amount<Temperature> bathTemperature() {
    return bath == null ? boiling : bath;
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
    return new BakePiece(
        solid, dough, porosity, start, rise, Atmosphere.boiling(altitude), seat, boiled, bath);
  }

  /** 1 for a slab, 2 for a roll, 3 for a ball, between for what lies between. */
  double dimensions() {
    return Math.max(1, Math.min(3, half() * solid.surfaceByVolume()));
  }

  /** Metres from the middle to the nearest surface. */
  double half() {
    return solid.axes().stream().mapToDouble(a -> a.half().in(METRE)).min().orElseThrow();
  }

  /** The share of the surface that lies below. */
  double bottom() {
    return flat() ? 1 / last().half().in(METRE) / (2 * solid.surfaceByVolume()) : rounded();
  }

  /** The share of the surface at the sides. */
  double sides() {
    return 1 - 2 * bottom();
  }

  private double rounded() {
    return solid.axes().get(0).dimensions() == 3 ? BALL_BOTTOM : ROLL_BOTTOM;
  }

  private Solid.Axis last() {
    return solid.axes().get(solid.axes().size() - 1);
  }

  /** Whether it stands on a flat face; a long round piece lies on its side. */
  private boolean flat() {
    Solid.Axis first = solid.axes().get(0);
    boolean lies = first.dimensions() == 2 && last().half().compareTo(first.half()) > 0;
    return last().dimensions() == 1 && !lies;
  }

  /** kg/m³ with its gas. */
  double density() {
    return ChoiOkos1986.density(dough, start).in(KILOGRAM_PER_CUBIC_METRE) * (1 - porosity);
  }

  /** Pa. */
  double pressure() {
    return IapwsIf97Saturation.pressure(boiling);
  }

  GasBalance gas() {
    return new GasBalance(
        porosity,
        density() * dough.water() / dough.sum(),
        start.in(CELSIUS),
        pressure(),
        rise.saturation(),
        rise.perHour());
  }

  DryingBody.Material material() {
    double sum = dough.sum();
    double water = dough.water() / sum;
    double evaporable = Math.max(0, water - BOUND);
    Amount<Temperature> hot = CELSIUS.amount(PROPERTIES_CELSIUS);
    double airy = Math.max(LEAST_AIRY, Math.min(1, porosity / AIRY));
    double rest = ChoiOkos1986.specificHeat(dough, hot) - water * waterHeat(hot);
    return DryingBody.Material.foam(
        density(),
        evaporable,
        rest + (water - evaporable) * DryingBody.WATER_HEAT,
        ChoiOkos1986.conductivity(dough, hot),
        boiling.in(CELSIUS),
        new Pores(porosity, pressure(), CRUMB_ACTIVITY, airy * Pores.USUAL_CRUST_DIFFUSION));
  }

  private static double waterHeat(Amount<Temperature> at) {
    return ChoiOkos1986.specificHeat(new Constituents(1, 0, 0, 0, 0, 0), at);
  }

  /** {@code roll 45 mm across on a baking sheet, 60 % gas, from 26 °C}. */
  @Override
  public String toString() {
    return solid
        + " "
        + seat
        + ", "
        + Math.round(100 * porosity)
        + " % gas, from "
        + AmountFormat.sideBySide().temperature(start)
        + (boiled.value() > 0 ? ", " + bathWords() : "");
  }

  private String bathWords() {
    String time = " for " + AmountFormat.metric().time(boiled);
    return bath == null
        ? "boiled" + time
        : "in water of " + AmountFormat.sideBySide().temperature(bath) + time;
  }
}
