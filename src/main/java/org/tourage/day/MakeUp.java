package org.tourage.day;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.lamination.FatCurve;
import org.tourage.lamination.LaminationPlan;
import org.tourage.makeup.Shape;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Amounts;
import org.tourage.quantity.Given;

/** How pieces come from the dough: divided by weight, or cut from a sheet. */
public sealed interface MakeUp extends Serializable {
  /** Pieces that are divided by weight. Their shape is that of the step that shapes them. */
  MakeUp DIVIDED = new Divided();

  /** Divided by weight. */
  record Divided() implements MakeUp {}

  /**
   * Cut from a laminated sheet of these measures.
   *
   * @param setup the measures of packet and sheet
   * @return triangles, 5 mm of trim, twice as high as wide
   */
  static FromSheet sheet(LaminationPlan.Setup setup) {
    return new FromSheet(setup, Shape.TRIANGLE, Amounts.millimetres(5), 2, null);
  }

  /**
   * Cut from a sheet.
   *
   * @param setup the measures of packet and sheet
   * @param cut the outline of the pieces
   * @param trim what is cut off each edge
   * @param slenderness the wanted height of a piece by its base
   * @param curve the solid-fat curve of the roll-in fat, null if not known
   */
  record FromSheet(
      LaminationPlan.Setup setup,
      Shape cut,
      Amount<Length> trim,
      double slenderness,
      @Nullable FatCurve curve)
      implements MakeUp {
    /**
     * Checks that all is there.
     *
     * @param setup the measures of packet and sheet
     * @param cut the outline of the pieces
     * @param trim what is cut off each edge
     * @param slenderness the wanted height of a piece by its base
     * @param curve the solid-fat curve of the roll-in fat, null if not known
     */
    public FromSheet {
      requireNonNull(setup, "setup");
      requireNonNull(cut, "cut");
      requireNonNull(trim, "trim");
      if (!(slenderness > 0) || Double.isInfinite(slenderness)) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "no piece is cut so slender",
            slenderness + " times as high as wide",
            "give a positive number, for example 2.2");
      }
    }

    /**
     * Cut into other outlines.
     *
     * @param shape the outline
     * @return the changed make-up
     */
    public FromSheet cutInto(Shape shape) {
      requireNonNull(shape, "shape");
      return new FromSheet(setup, shape, trim, slenderness, curve);
    }

    /**
     * With another trim.
     *
     * @param off what is cut off each edge
     * @return the changed make-up
     */
    public FromSheet trimmed(Quantity<Length> off) {
      requireNonNull(off, "off");
      return new FromSheet(setup, cut, Given.length("the off", off), slenderness, curve);
    }

    /**
     * With pieces of another slenderness.
     *
     * @param heightByBase height by base
     * @return the changed make-up
     */
    public FromSheet slender(double heightByBase) {
      return new FromSheet(setup, cut, trim, heightByBase, curve);
    }

    /**
     * With the curve of the roll-in fat.
     *
     * @param fat its solid-fat curve
     * @return the changed make-up
     */
    public FromSheet withFat(FatCurve fat) {
      return new FromSheet(setup, cut, trim, slenderness, requireNonNull(fat, "fat"));
    }

    /**
     * The curve of the roll-in fat.
     *
     * @return the curve, empty if not known
     */
    public Optional<FatCurve> fat() {
      return Optional.ofNullable(curve);
    }
  }
}
