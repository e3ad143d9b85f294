package org.tourage.day;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.METRE;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Volume;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.physics.Solid;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Extent;
import org.tourage.quantity.Given;

/**
 * What shape a dough or a piece has, or what holds it. The measure that is free follows from the
 * mass and the gas of the dough; where it is given as well and contradicts them by more than a
 * fifth, {@link #solid} refuses it with both figures.
 *
 * <pre>{@code
 * Form.roll(centimetres(52)).solid(litres(0.32));   // 28 mm across
 * }</pre>
 */
public sealed interface Form extends Serializable {
  /** A ball; its diameter follows from the mass. */
  Form BALL = new Ball(null);

  /**
   * The body that a volume of dough has in this form.
   *
   * @param volume the volume with its gas, positive
   * @return the body
   * @throws BakeryException if a given measure contradicts the volume by more than a fifth
   */
  Solid solid(Quantity<Volume> volume);

  /**
   * The body that a proofed piece has in the oven, where a ball has settled to a bun or a round
   * loaf and a thick roll to a loaf.
   *
   * @param volume the volume with its gas, positive
   * @return the body; that of the form where nothing settles
   * @throws BakeryException if a given measure contradicts the volume by more than a fifth
   */
  default Solid inOven(Quantity<Volume> volume) {
    return solid(volume);
  }

  /**
   * The extent that a piece takes on a tray, seen from above.
   *
   * @param volume the volume with its gas, positive
   * @return length and width
   */
  Extent footprint(Quantity<Volume> volume);

  /**
   * A ball whose diameter is known.
   *
   * @param diameter its diameter, checked against the mass
   * @return the form
   */
  static Form ball(Quantity<Length> diameter) {
    requireNonNull(diameter, "diameter");
    return new Ball(Given.length("the diameter", diameter));
  }

  /**
   * A roll or baguette of this length; its diameter follows from the mass.
   *
   * @param length from end to end
   * @return the form
   */
  static Form roll(Quantity<Length> length) {
    requireNonNull(length, "length");
    return new Roll(Given.length("the length", length), null);
  }

  /**
   * A roll of this diameter, of a length that follows from the mass.
   *
   * @param diameter across
   * @return the form
   */
  static Form rollAcross(Quantity<Length> diameter) {
    requireNonNull(diameter, "diameter");
    return new Roll(null, Given.length("the diameter", diameter));
  }

  /**
   * A disc; its thickness follows from the mass.
   *
   * @param diameter across
   * @return the form
   */
  static Form disc(Quantity<Length> diameter) {
    requireNonNull(diameter, "diameter");
    return new Disc(Given.length("the diameter", diameter), null);
  }

  /**
   * A slab of this thickness, as large as the mass makes it.
   *
   * @param thickness its thickness
   * @return the form
   */
  static Form slab(Quantity<Length> thickness) {
    requireNonNull(thickness, "thickness");
    return new Slab(null, Given.length("the thickness", thickness));
  }

  /**
   * A rectangle; its thickness follows from the mass.
   *
   * @param sides length and width
   * @return the form
   */
  static Form rectangle(Extent sides) {
    return new Slab(sides, null);
  }

  /**
   * A tin with a rectangular base; how high the dough stands in it follows from the mass.
   *
   * @param base length and width inside
   * @return the form
   */
  static Form tin(Extent base) {
    return new Tin(base, null);
  }

  /**
   * A round tin, cup or muffin mould; how high the dough stands follows from the mass.
   *
   * @param diameter inside
   * @return the form
   */
  static Form mould(Quantity<Length> diameter) {
    requireNonNull(diameter, "diameter");
    return new Mould(Given.length("the diameter", diameter));
  }

  /**
   * A tub or bowl; how high the dough stands follows from the mass.
   *
   * @param diameter inside
   * @return the form
   */
  static Form tub(Quantity<Length> diameter) {
    requireNonNull(diameter, "diameter");
    return new Tub(Given.length("the diameter", diameter), null);
  }

  /**
   * A ring, such as a bagel; how thick it is follows from the mass.
   *
   * @param hole the diameter of the hole
   * @return the form
   */
  static Form ring(Quantity<Length> hole) {
    requireNonNull(hole, "hole");
    return new Ring(Given.length("the hole", hole));
  }

  /**
   * A coil cut from a rolled sheet, lying on its cut face among neighbours in a pan; its diameter
   * follows from the mass.
   *
   * @param height from cut face to cut face
   * @return the form
   */
  static Form coil(Quantity<Length> height) {
    requireNonNull(height, "height");
    return new Coil(Given.length("the height", height));
  }

  /**
   * Whether walls of metal or paper carry heat into its sides.
   *
   * @return whether it stands in a tin or mould
   */
  default boolean inTin() {
    return false;
  }

  /**
   * Whether pieces touch one another in the oven.
   *
   * @return whether they stand side by side in a pan
   */
  default boolean amongNeighbours() {
    return false;
  }

  /**
   * A ball.
   *
   * @param diameter its diameter, null to take it from the mass
   */
  record Ball(@Nullable Amount<Length> diameter) implements Form {
    private static final double SMALL_BUN = 0.17e-3;
    private static final double LARGE_BUN = 0.6e-3;

    /**
     * Checks the diameter.
     *
     * @param diameter its diameter, null to take it from the mass
     */
    public Ball {
      Forms.positiveIfGiven("ball", diameter);
    }

    @Override
    public Solid solid(Quantity<Volume> volume) {
      requireNonNull(volume, "volume");
      double d = StrictMath.cbrt(6 * Forms.cubicMetres(volume) / Math.PI);
      return Solid.ball(Forms.free("ball", "diameter", d, diameter));
    }

    /** Height by diameter: 0.45 for a bun of 0.17 L, 0.35 for a loaf of 1.7 L; common practice. */
    private static double flatness(double cubicMetres) {
      double tenfold = Math.log10(cubicMetres / SMALL_BUN);
      return Math.max(0.33, Math.min(0.47, 0.45 - 0.1 * tenfold));
    }

    private static double settled(double cubicMetres) {
      return StrictMath.cbrt(4 * cubicMetres / (Math.PI * flatness(cubicMetres)));
    }

    @Override
    public Solid inOven(Quantity<Volume> volume) {
      requireNonNull(volume, "volume");
      solid(volume);
      double v = Forms.cubicMetres(volume);
      double d = settled(v);
      return Forms.cylinder(
          v < LARGE_BUN ? "bun" : "round loaf",
          Forms.millimetres(d),
          Forms.millimetres(d * flatness(v)),
          "high");
    }

    @Override
    public Extent footprint(Quantity<Volume> volume) {
      requireNonNull(volume, "volume");
      Amount<Length> d = Forms.millimetres(settled(Forms.cubicMetres(volume)));
      return new Extent(d, d);
    }
  }

  /**
   * A roll. Without a length or a diameter it is as long as four and a half times its diameter, as
   * common practice shapes a small roll.
   *
   * @param length from end to end, null to take it from the mass
   * @param diameter across, null to take it from the mass
   */
  record Roll(@Nullable Amount<Length> length, @Nullable Amount<Length> diameter) implements Form {
    private static final double USUAL_SLENDERNESS = 4.5;

    /** From this diameter on a roll settles to a loaf 1.77 times as wide as high. */
    private static final double SETTLES_METRES = 0.06;

    private static final double LOAF_HEIGHT = 0.666;

    /**
     * Checks the measures.
     *
     * @param length from end to end, null to take it from the mass
     * @param diameter across, null to take it from the mass
     */
    public Roll {
      Forms.positiveIfGiven("roll", length);
      Forms.positiveIfGiven("roll", diameter);
    }

    private double across(double volume) {
      if (length != null) {
        return Math.sqrt(4 * volume / (Math.PI * length.in(METRE)));
      }
      return diameter != null
          ? diameter.in(METRE)
          : StrictMath.cbrt(4 * volume / (Math.PI * USUAL_SLENDERNESS));
    }

    private double along(double volume) {
      double d = across(volume);
      return length != null ? length.in(METRE) : 4 * volume / (Math.PI * d * d);
    }

    @Override
    public Solid solid(Quantity<Volume> volume) {
      requireNonNull(volume, "volume");
      double v = Forms.cubicMetres(volume);
      Amount<Length> d = Forms.free("roll", "diameter", across(v), diameter);
      double l = along(v);
      if (l < d.in(METRE) / 2) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            "a roll of this diameter would be shorter than it is thick",
            AmountFormat.metric().length(d)
                + " across, "
                + AmountFormat.metric().length(Forms.millimetres(l))
                + " long",
            "give the length of the roll instead, or another mass");
      }
      return Forms.cylinder("roll", d, Forms.millimetres(l), "long");
    }

    @Override
    public Solid inOven(Quantity<Volume> volume) {
      requireNonNull(volume, "volume");
      Solid roll = solid(volume);
      double v = Forms.cubicMetres(volume);
      double d = across(v);
      if (d < SETTLES_METRES) {
        return roll;
      }
      double high = LOAF_HEIGHT * d;
      double wide = Math.PI * d * d / 4 / high;
      return Solid.box(
          Forms.millimetres(along(v)), Forms.millimetres(wide), Forms.millimetres(high));
    }

    @Override
    public Extent footprint(Quantity<Volume> volume) {
      requireNonNull(volume, "volume");
      double v = Forms.cubicMetres(volume);
      double d = across(v);
      double wide = d < SETTLES_METRES ? d : Math.PI * d / 4 / LOAF_HEIGHT;
      return new Extent(Forms.millimetres(along(v)), Forms.millimetres(wide));
    }
  }

  /**
   * A disc.
   *
   * @param diameter across
   * @param thickness its thickness, null to take it from the mass
   */
  record Disc(Amount<Length> diameter, @Nullable Amount<Length> thickness) implements Form {
    /**
     * Checks the diameter.
     *
     * @param diameter across
     * @param thickness its thickness, null to take it from the mass
     */
    public Disc {
      requireNonNull(diameter, "diameter");
      Forms.positive("disc", diameter);
      Forms.positiveIfGiven("disc", thickness);
    }

    @Override
    public Solid solid(Quantity<Volume> volume) {
      requireNonNull(volume, "volume");
      double t = Forms.height(volume, diameter);
      return Forms.cylinder(
          "disc", diameter, Forms.free("disc", "thickness", t, thickness), "thick");
    }

    @Override
    public Extent footprint(Quantity<Volume> volume) {
      requireNonNull(volume, "volume");
      return new Extent(diameter, diameter);
    }
  }

  /**
   * A slab, sheet or flattened dough.
   *
   * @param sides length and width, null to take them from the mass
   * @param thickness its thickness, null to take it from the mass
   */
  record Slab(@Nullable Extent sides, @Nullable Amount<Length> thickness) implements Form {
    /**
     * Checks that one of both is there.
     *
     * @param sides length and width, null to take them from the mass
     * @param thickness its thickness, null to take it from the mass
     */
    public Slab {
      if (sides == null && thickness == null) {
        throw new BakeryException(
            Reason.MISSING, "a slab needs a measure", "none", "give its thickness or its sides");
      }
      Forms.positiveIfGiven("slab", thickness);
    }

    @Override
    public Solid solid(Quantity<Volume> volume) {
      requireNonNull(volume, "volume");
      if (sides == null) {
        return Solid.slab(requireNonNull(thickness));
      }
      double t = Forms.cubicMetres(volume) / Forms.area(sides);
      Amount<Length> thick = Forms.free("slab", "thickness", t, thickness);
      return Solid.box(sides.length(), sides.width(), thick);
    }

    @Override
    public Extent footprint(Quantity<Volume> volume) {
      requireNonNull(volume, "volume");
      if (sides != null) {
        return sides;
      }
      double side = Math.sqrt(Forms.cubicMetres(volume) / requireNonNull(thickness).in(METRE));
      return new Extent(Forms.millimetres(side), Forms.millimetres(side));
    }
  }

  /**
   * A rectangular tin.
   *
   * @param base length and width inside
   * @param height how high its walls are, null if not known
   */
  record Tin(Extent base, @Nullable Amount<Length> height) implements Form {
    /**
     * Checks that there is a base.
     *
     * @param base length and width inside
     * @param height how high its walls are, null if not known
     */
    public Tin {
      requireNonNull(base, "base");
      Forms.positiveIfGiven("tin", height);
    }

    @Override
    public Solid solid(Quantity<Volume> volume) {
      requireNonNull(volume, "volume");
      double t = Forms.cubicMetres(volume) / Forms.area(base);
      return Solid.box(base.length(), base.width(), Forms.millimetres(t));
    }

    @Override
    public Extent footprint(Quantity<Volume> volume) {
      requireNonNull(volume, "volume");
      return base;
    }

    @Override
    public boolean inTin() {
      return true;
    }
  }

  /**
   * A round mould.
   *
   * @param diameter inside
   */
  record Mould(Amount<Length> diameter) implements Form {
    /**
     * Checks the diameter.
     *
     * @param diameter inside
     */
    public Mould {
      requireNonNull(diameter, "diameter");
      Forms.positive("mould", diameter);
    }

    @Override
    public Solid solid(Quantity<Volume> volume) {
      requireNonNull(volume, "volume");
      return Forms.cylinder(
          "mould", diameter, Forms.millimetres(Forms.height(volume, diameter)), "filled");
    }

    @Override
    public Extent footprint(Quantity<Volume> volume) {
      requireNonNull(volume, "volume");
      return new Extent(diameter, diameter);
    }

    @Override
    public boolean inTin() {
      return true;
    }
  }

  /**
   * A tub or bowl.
   *
   * @param diameter inside
   * @param height how high the dough stands, null to take it from the mass
   */
  record Tub(Amount<Length> diameter, @Nullable Amount<Length> height) implements Form {
    /**
     * Checks the diameter.
     *
     * @param diameter inside
     * @param height how high the dough stands, null to take it from the mass
     */
    public Tub {
      requireNonNull(diameter, "diameter");
      Forms.positive("tub", diameter);
      Forms.positiveIfGiven("tub", height);
    }

    @Override
    public Solid solid(Quantity<Volume> volume) {
      requireNonNull(volume, "volume");
      double h = Forms.height(volume, diameter);
      return Solid.tub(diameter, Forms.free("tub", "height of the dough", h, height));
    }

    @Override
    public Extent footprint(Quantity<Volume> volume) {
      requireNonNull(volume, "volume");
      return new Extent(diameter, diameter);
    }
  }

  /**
   * A ring.
   *
   * @param hole the diameter of the hole
   */
  record Ring(Amount<Length> hole) implements Form {
    private static final int HALVINGS = 60;

    /**
     * Checks the hole.
     *
     * @param hole the diameter of the hole
     */
    public Ring {
      requireNonNull(hole, "hole");
      Forms.positive("ring", hole);
    }

    /** The radius of its strand: V = 2 π² (hole/2 + r) r², by halving. */
    private double strand(Quantity<Volume> volume) {
      double v = Forms.cubicMetres(volume);
      double low = 0;
      double high = StrictMath.cbrt(v);
      for (int i = 0; i < HALVINGS; i++) {
        double r = (low + high) / 2;
        double full = 2 * Math.PI * Math.PI * (hole.in(METRE) / 2 + r) * r * r;
        if (full < v) {
          low = r;
        } else {
          high = r;
        }
      }
      return (low + high) / 2;
    }

    @Override
    public Solid solid(Quantity<Volume> volume) {
      requireNonNull(volume, "volume");
      Amount<Length> thick = Forms.millimetres(2 * strand(volume));
      return Solid.roll(thick);
    }

    @Override
    public Extent footprint(Quantity<Volume> volume) {
      requireNonNull(volume, "volume");
      Amount<Length> across = Forms.millimetres(hole.in(METRE) + 4 * strand(volume));
      return new Extent(across, across);
    }
  }

  /**
   * A coil in a pan.
   *
   * @param height from cut face to cut face
   */
  record Coil(Amount<Length> height) implements Form {
    /**
     * Checks the height.
     *
     * @param height from cut face to cut face
     */
    public Coil {
      requireNonNull(height, "height");
      Forms.positive("coil", height);
    }

    private Amount<Length> across(Quantity<Volume> volume) {
      return Forms.millimetres(
          Math.sqrt(4 * Forms.cubicMetres(volume) / (Math.PI * height.in(METRE))));
    }

    @Override
    public Solid solid(Quantity<Volume> volume) {
      requireNonNull(volume, "volume");
      return Forms.cylinder("coil", across(volume), height, "high");
    }

    @Override
    public Extent footprint(Quantity<Volume> volume) {
      requireNonNull(volume, "volume");
      return new Extent(across(volume), across(volume));
    }

    @Override
    public boolean amongNeighbours() {
      return true;
    }
  }
}
