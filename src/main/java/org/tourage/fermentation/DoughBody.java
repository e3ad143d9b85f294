package org.tourage.fermentation;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.KILOGRAM;
import static org.tourage.quantity.BakeryUnits.KILOGRAM_PER_CUBIC_METRE;
import static org.tourage.quantity.BakeryUnits.METRE;

import java.io.Serializable;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Numbers;
import org.tourage.physics.Air;
import org.tourage.physics.ChoiOkos1986;
import org.tourage.physics.Constituents;
import org.tourage.physics.Solid;
import org.tourage.physics.SolidConduction;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Extent;
import org.tourage.quantity.Given;

/**
 * A piece or a tub of dough as it stands somewhere: its shape, how it holds and conducts heat, what
 * covers it and how the air moves. It keeps its size while it rises; what the bubbles take from the
 * conductivity they take from the weight of a litre too, so that the two nearly cancel.
 *
 * @param solid the shape
 * @param conductivity W/(m·K), positive
 * @param density kg/m³ with the air that was mixed in, positive
 * @param specificHeat J/(kg·K), positive
 * @param coefficient from the air to the outside of the cover, W/(m²·K), positive
 * @param cover what lies between the dough and the air
 */
public record DoughBody(
    Solid solid,
    double conductivity,
    double density,
    double specificHeat,
    double coefficient,
    Cover cover)
    implements Serializable {
  private static final Amount<Temperature> REFERENCE = CELSIUS.amount(15);
  private static final double LEAST_KILOGRAMS = 1e-3;
  private static final double MOST_KILOGRAMS = 2000;
  private static final double MOST_GROWTH = 20;

  /**
   * Checks the figures.
   *
   * @param solid the shape
   * @param conductivity W/(m·K), positive
   * @param density kg/m³ with the air that was mixed in, positive
   * @param specificHeat J/(kg·K), positive
   * @param coefficient from the air to the outside of the cover, W/(m²·K), positive
   * @param cover what lies between the dough and the air
   */
  public DoughBody {
    requireNonNull(solid, "solid");
    requireNonNull(cover, "cover");
    boolean fits = conductivity > 0 && density > 0 && specificHeat > 0 && coefficient > 0;
    if (!fits || Double.isInfinite(conductivity + density + specificHeat + coefficient)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a dough can't have these properties",
          conductivity
              + " W/(m·K), "
              + density
              + " kg/m³, "
              + specificHeat
              + " J/(kg·K), "
              + coefficient
              + " W/(m²·K)",
          "give positive figures");
    }
  }

  /**
   * A body of a dough, uncovered in still air.
   *
   * @param solid the shape
   * @param dough what the dough is made of, roll-in fat included where there is some; its
   *     conductivity, density and specific heat are those of Choi and Okos (1986) at 15 °C
   * @return the body
   */
  public static DoughBody of(Solid solid, Constituents dough) {
    return new DoughBody(
        solid,
        ChoiOkos1986.conductivity(dough, REFERENCE),
        density(dough),
        ChoiOkos1986.specificHeat(dough, REFERENCE),
        Air.STILL,
        Cover.NONE);
  }

  /**
   * A ball of a mass of dough, uncovered in still air: what a dough without a stated shape is.
   *
   * @param mass the dough, positive
   * @param dough what it is made of
   * @return the body, as large as the dough with the air that was mixed in
   */
  public static DoughBody ballOf(Quantity<Mass> mass, Constituents dough) {
    double radius = StrictMath.cbrt(volume(mass, dough) * 3 / (4 * Math.PI));
    return of(Solid.ball(METRE.amount(2 * radius)), dough);
  }

  /**
   * A mass of dough in a round tub that it fills half as high as wide (common practice).
   *
   * @param mass the dough, positive
   * @param dough what it is made of
   * @return the body, in a plastic tub in still air
   */
  public static DoughBody tubOf(Quantity<Mass> mass, Constituents dough) {
    double diameter = StrictMath.cbrt(volume(mass, dough) * 8 / Math.PI);
    return tubOf(mass, dough, METRE.amount(diameter));
  }

  /**
   * A mass of dough in a round tub.
   *
   * @param mass the dough, positive
   * @param dough what it is made of
   * @param diameter of the tub inside
   * @return the body, as high as the mass makes it, in a plastic tub in still air
   */
  public static DoughBody tubOf(
      Quantity<Mass> mass, Constituents dough, Quantity<Length> diameter) {
    double wide = METRE.measure("the diameter", requireNonNull(diameter, "diameter"));
    double height = volume(mass, dough) * 4 / (Math.PI * wide * wide);
    return of(Solid.tub(diameter, METRE.amount(positive(height))), dough).covered(Cover.TUB);
  }

  /**
   * A mass of dough shaped to a roll.
   *
   * @param mass the dough, positive
   * @param dough what it is made of
   * @param length of the roll
   * @return the body, as thick as the mass makes it, uncovered in still air
   */
  public static DoughBody rollOf(Quantity<Mass> mass, Constituents dough, Quantity<Length> length) {
    double across =
        Math.sqrt(
            volume(mass, dough)
                * 4
                / (Math.PI * METRE.measure("the length", requireNonNull(length, "length"))));
    AmountFormat format = AmountFormat.metric();
    Amount<Length> wide = METRE.amount(positive(across));
    Amount<Length> axis = Given.length("the length", requireNonNull(length, "length"));
    return of(
        new Solid(
            "roll " + format.length(wide) + " across, " + format.length(axis) + " long",
            List.of(new Solid.Axis(2, wide.divide(2)), new Solid.Axis(1, axis.divide(2)))),
        dough);
  }

  /**
   * A mass of dough as a sheet or in a tray.
   *
   * @param mass the dough, positive
   * @param dough what it is made of
   * @param extent length and width
   * @return the body, as thick as the mass makes it, uncovered in still air
   */
  public static DoughBody sheetOf(Quantity<Mass> mass, Constituents dough, Extent extent) {
    double area = extent.length().in(METRE) * extent.width().in(METRE);
    return of(Solid.slab(METRE.amount(positive(volume(mass, dough) / area))), dough);
  }

  /** Cubic metres with the air that was mixed in. */
  private static double volume(Quantity<Mass> mass, Constituents dough) {
    double kilograms = KILOGRAM.measure("the mass", requireNonNull(mass, "mass"));
    if (!(kilograms >= LEAST_KILOGRAMS) || kilograms > MOST_KILOGRAMS) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no piece or tub of dough has this mass",
          Given.mass("the mass", mass).toString(),
          "give 1 g to 2000 kg");
    }
    return kilograms / density(dough);
  }

  private static double positive(double metres) {
    if (!(metres > 0) || Double.isInfinite(metres)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "this mass of dough does not come out in these measures",
          Numbers.significant(Double.isInfinite(metres) ? 0 : metres, 3) + " m",
          "give the measures of a tub, a roll or a sheet that holds it");
    }
    return metres;
  }

  private static double density(Constituents dough) {
    return ChoiOkos1986.density(dough, REFERENCE).in(KILOGRAM_PER_CUBIC_METRE)
        * (1 - DoughGas.USUAL_AIR);
  }

  /**
   * The same piece grown: larger alike in all its directions, the same mass and conductivity. A
   * sheet grows in its thickness alone only if its extent is held, which this does not do.
   *
   * @param growth how many times its volume after mixing
   * @return the body
   */
  public DoughBody grown(double growth) {
    if (!(growth > 0) || growth > MOST_GROWTH) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no dough grows like this",
          growth + " times the volume",
          "give above 0 and at most 20, for example 2 for doubled");
    }
    return new DoughBody(
        solid.grown(StrictMath.cbrt(growth)),
        conductivity,
        density / growth,
        specificHeat,
        coefficient,
        cover);
  }

  /**
   * How much dough it is: volume times density, where the shape is closed.
   *
   * @return the mass; empty for a sheet or a roll without a stated length
   */
  public Optional<Amount<Mass>> mass() {
    int dimensions = solid.axes().stream().mapToInt(Solid.Axis::dimensions).sum();
    if (dimensions < 3) {
      return Optional.empty();
    }
    double volume = 1;
    for (Solid.Axis axis : solid.axes()) {
      double half = axis.half().in(METRE);
      volume *=
          switch (axis.dimensions()) {
            case 1 -> 2 * half;
            case 2 -> Math.PI * half * half;
            default -> 4 * Math.PI / 3 * half * half * half;
          };
    }
    return Optional.of(KILOGRAM.amount(volume * density));
  }

  /**
   * The same in air moved by a fan.
   *
   * @return the body
   */
  public DoughBody inMovedAir() {
    return inAir(Air.MOVED);
  }

  /**
   * The same in air of another coefficient.
   *
   * @param value W/(m²·K), radiation included
   * @return the body
   */
  public DoughBody inAir(double value) {
    return new DoughBody(solid, conductivity, density, specificHeat, value, cover);
  }

  /**
   * The same under a cover.
   *
   * @param value the cover
   * @return the body
   */
  public DoughBody covered(Cover value) {
    return new DoughBody(solid, conductivity, density, specificHeat, coefficient, value);
  }

  /**
   * The same dough in another shape.
   *
   * @param value the shape
   * @return the body
   */
  public DoughBody shaped(Solid value) {
    return new DoughBody(value, conductivity, density, specificHeat, coefficient, cover);
  }

  SolidConduction conduction() {
    return new SolidConduction(
        solid, conductivity, density * specificHeat, 1 / (1 / coefficient + cover.resistance()));
  }

  /** {@code slab 25 mm thick, under film}. */
  @Override
  public String toString() {
    return solid + ", " + cover.words();
  }
}
