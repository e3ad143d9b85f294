package org.tourage.physics;

import static org.tourage.quantity.BakeryUnits.METRE;

import java.io.Serializable;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Given;

/**
 * A body as heat sees it: a slab, a cylinder, a sphere, or what comes out where they are crossed (a
 * box of three slabs, a short cylinder of a cylinder and a slab). It is symmetric: all faces of an
 * axis meet the same.
 *
 * @param name what it is, in words
 * @param axes the directions in which heat goes in and out, one to three
 */
public record Solid(String name, List<Axis> axes) implements Serializable {
  private static final int MOST_AXES = 3;

  /**
   * One direction.
   *
   * @param dimensions 1 across a slab, 2 for the radius of a cylinder, 3 for that of a sphere
   * @param half from the middle to the face, positive
   */
  public record Axis(int dimensions, Amount<Length> half) implements Serializable {
    /**
     * Checks the figures.
     *
     * @param dimensions 1 across a slab, 2 for the radius of a cylinder, 3 for that of a sphere
     * @param half from the middle to the face, positive
     */
    public Axis {
      if (dimensions < 1 || dimensions > MOST_AXES || half.value() <= 0) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "a body can't have this direction",
            dimensions + " dimensions, " + half + " from the middle to the face",
            "give 1 to 3 dimensions and a positive length");
      }
    }
  }

  /**
   * Checks that there are no more than three dimensions in all.
   *
   * @param name what it is, in words
   * @param axes the directions in which heat goes in and out, one to three
   */
  public Solid {
    axes = List.copyOf(axes);
    int dimensions = axes.stream().mapToInt(Axis::dimensions).sum();
    if (dimensions < 1 || dimensions > MOST_AXES) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a body has one to three dimensions",
          name + " with " + dimensions,
          "use a slab, cylinder, sphere, short cylinder or box");
    }
  }

  private static Axis half(int dimensions, Quantity<Length> whole) {
    return new Axis(dimensions, Given.length("the whole", whole).divide(2));
  }

  /**
   * A sheet or a tray of dough: heat goes through its two faces only.
   *
   * @param thickness its thickness
   * @return the slab
   */
  public static Solid slab(Quantity<Length> thickness) {
    return new Solid(
        "slab " + AmountFormat.metric().length(thickness) + " thick", List.of(half(1, thickness)));
  }

  /**
   * A long roll: heat goes through its side only.
   *
   * @param diameter its diameter
   * @return the cylinder
   */
  public static Solid roll(Quantity<Length> diameter) {
    return new Solid(
        "roll " + AmountFormat.metric().length(diameter) + " across", List.of(half(2, diameter)));
  }

  /**
   * A ball.
   *
   * @param diameter its diameter
   * @return the sphere
   */
  public static Solid ball(Quantity<Length> diameter) {
    return new Solid(
        "ball " + AmountFormat.metric().length(diameter) + " across", List.of(half(3, diameter)));
  }

  /**
   * A round tub, a short roll or a round loaf with flat ends.
   *
   * @param diameter its diameter
   * @param height its height
   * @return the short cylinder
   */
  public static Solid tub(Quantity<Length> diameter, Quantity<Length> height) {
    AmountFormat format = AmountFormat.metric();
    return new Solid(
        "tub " + format.length(diameter) + " across, " + format.length(height) + " high",
        List.of(half(2, diameter), half(1, height)));
  }

  /**
   * A block or a square tub.
   *
   * @param length its length
   * @param width its width
   * @param height its height
   * @return the box
   */
  public static Solid box(
      Quantity<Length> length, Quantity<Length> width, Quantity<Length> height) {
    AmountFormat format = AmountFormat.metric();
    return new Solid(
        "box "
            + format.length(length)
            + " x "
            + format.length(width)
            + " x "
            + format.length(height),
        List.of(half(1, length), half(1, width), half(1, height)));
  }

  /**
   * How much surface there is for the volume.
   *
   * @return square metres for a cubic metre
   */
  public double surfaceByVolume() {
    return axes.stream().mapToDouble(a -> a.dimensions() / a.half().in(METRE)).sum();
  }

  /**
   * The same shape, larger or smaller in all its directions.
   *
   * @param factor how many times as long, positive
   * @return the shape
   */
  public Solid grown(double factor) {
    return new Solid(
        name + ", × " + Numbers.significant(factor, 3),
        axes.stream().map(a -> new Axis(a.dimensions(), a.half().multiply(factor))).toList());
  }

  /** {@code slab 25 mm thick}. */
  @Override
  public String toString() {
    return name;
  }
}
