package org.tourage.day;

import static org.tourage.quantity.BakeryUnits.LITRE;
import static org.tourage.quantity.BakeryUnits.METRE;
import static org.tourage.quantity.BakeryUnits.MILLIMETRE;

import java.util.List;
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

/** The small geometry that the forms share. */
final class Forms {
  private static final double CONTRADICTION = 1.2;
  private static final double LITRES = 1000;

  private Forms() {}

  static double cubicMetres(Quantity<Volume> volume) {
    double litres = LITRE.measure("the volume", volume);
    if (!(litres > 0) || Double.isInfinite(litres)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a body needs a volume",
          volume.toString(),
          "give a positive volume");
    }
    return litres / LITRES;
  }

  static Amount<Length> millimetres(double metres) {
    return MILLIMETRE.amount(metres * LITRES);
  }

  static double area(Extent sides) {
    return sides.length().in(METRE) * sides.width().in(METRE);
  }

  static double height(Quantity<Volume> volume, Amount<Length> diameter) {
    double d = diameter.in(METRE);
    return 4 * cubicMetres(volume) / (Math.PI * d * d);
  }

  static void positive(String form, Amount<Length> length) {
    if (!(length.value() > 0)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a " + form + " needs a measure",
          length.toString(),
          "give a positive length");
    }
  }

  static void positiveIfGiven(String form, @Nullable Amount<Length> length) {
    if (length != null) {
      positive(form, length);
    }
  }

  /** The measure that follows from the mass; one that was given may not contradict it. */
  static Amount<Length> free(
      String form, String measure, double metres, @Nullable Amount<Length> given) {
    Amount<Length> follows = millimetres(metres);
    if (given != null) {
      double ratio = given.in(METRE) / metres;
      if (!(ratio <= CONTRADICTION && ratio >= 1 / CONTRADICTION)) {
        AmountFormat format = AmountFormat.sideBySide();
        throw new BakeryException(
            Reason.INCONSISTENT,
            "the " + measure + " of the " + form + " contradicts its mass",
            format.length(given),
            "its mass and its gas make it "
                + format.length(follows)
                + "; leave the "
                + measure
                + " out, or change the mass");
      }
    }
    return follows;
  }

  static Solid cylinder(String form, Amount<Length> diameter, Amount<Length> height, String word) {
    AmountFormat format = AmountFormat.metric();
    return new Solid(
        form + " " + format.length(diameter) + " across, " + format.length(height) + " " + word,
        List.of(new Solid.Axis(2, diameter.divide(2)), new Solid.Axis(1, height.divide(2))));
  }
}
