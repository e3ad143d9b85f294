package org.tourage.fermentation;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.KILOGRAM_PER_CUBIC_METRE;

import java.io.Serializable;
import javax.measure.quantity.Temperature;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.physics.Air;
import org.tourage.physics.ChoiOkos1986;
import org.tourage.physics.Constituents;
import org.tourage.physics.Solid;
import org.tourage.physics.SolidConduction;
import org.tourage.quantity.Amount;

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
        ChoiOkos1986.density(dough, REFERENCE).in(KILOGRAM_PER_CUBIC_METRE)
            * (1 - DoughGas.USUAL_AIR),
        ChoiOkos1986.specificHeat(dough, REFERENCE),
        Air.STILL,
        Cover.NONE);
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
