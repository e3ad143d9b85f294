package org.tourage.day;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.METRE;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.oven.OvenModel;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Amounts;
import org.tourage.quantity.Extent;
import org.tourage.quantity.Given;

/**
 * An oven of the kitchen.
 *
 * @param name what it is called
 * @param model how it follows its set point and heats
 * @param highest its highest set point
 * @param trays how many trays go in at once
 * @param tray length and width of a tray
 * @param stone whether pieces lie on stone, not on a tray on a rack
 */
public record KitchenOven(
    String name,
    OvenModel model,
    Amount<Temperature> highest,
    int trays,
    Extent tray,
    boolean stone)
    implements Serializable {
  /** A household oven: up to 275 °C, two trays of 45 x 35 cm (common practice). */
  public static final KitchenOven HOUSEHOLD =
      new KitchenOven(
          "a household oven",
          OvenModel.HOUSEHOLD,
          Amounts.celsius(275),
          2,
          Extent.of(Amounts.centimetres(45), Amounts.centimetres(35)),
          false);

  private static final double HOUSEHOLD_AREA = 2 * 0.45 * 0.35;
  private static final double DECK_AREA = 1;
  private static final int MOST_TRAYS = 1000;

  /**
   * Checks the trays and the highest set point.
   *
   * @param name what it is called
   * @param model how it follows its set point and heats
   * @param highest its highest set point
   * @param trays how many trays go in at once
   * @param tray length and width of a tray
   * @param stone whether pieces lie on stone, not on a tray on a rack
   */
  public KitchenOven {
    requireNonNull(highest, "highest");
    Names.check("an oven", "name", name);
    requireNonNull(model, "model");
    requireNonNull(tray, "tray");
    if (trays < 1 || trays > MOST_TRAYS) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE, "no oven has so many trays", trays + " trays", "give 1 to 1000");
    }
    double celsius = highest.in(CELSIUS);
    if (!(celsius >= 50 && celsius <= 600)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no oven goes up to",
          AmountFormat.sideBySide().temperature(highest),
          "give 50 °C to 600 °C (122 °F to 1112 °F)");
    }
  }

  /**
   * The oven with other trays.
   *
   * @param count how many go in at once
   * @param size length and width of one
   * @return the changed oven
   */
  public KitchenOven withTrays(int count, Extent size) {
    requireNonNull(size, "size");
    return new KitchenOven(name, model, highest, count, size, stone);
  }

  /**
   * The oven with another highest set point.
   *
   * @param value 50 °C to 600 °C
   * @return the changed oven
   */
  public KitchenOven withHighest(Quantity<Temperature> value) {
    requireNonNull(value, "value");
    return new KitchenOven(name, model, Given.temperature("the value", value), trays, tray, stone);
  }

  /**
   * The oven with another model of its heat.
   *
   * @param value the model
   * @return the changed oven
   */
  public KitchenOven withModel(OvenModel value) {
    requireNonNull(value, "value");
    return new KitchenOven(name, value, highest, trays, tray, stone);
  }

  /**
   * The oven under another name.
   *
   * @param value its name
   * @return the changed oven
   */
  public KitchenOven called(String value) {
    requireNonNull(value, "value");
    return new KitchenOven(value, model, highest, trays, tray, stone);
  }

  /**
   * The oven with a stone floor; a household oven becomes a deck oven.
   *
   * @return the changed oven
   */
  public KitchenOven onStone() {
    OvenModel deck = model.equals(OvenModel.HOUSEHOLD) ? OvenModel.DECK : model;
    return new KitchenOven(name, deck, highest, trays, tray, true);
  }

  /**
   * The model with the power and the heat of an oven of this size: those of the model belong to two
   * household trays, or to a deck of a square metre, and grow with the trays.
   *
   * @return the model of this oven
   */
  public OvenModel sized() {
    double area = trays * tray.length().in(METRE) * tray.width().in(METRE);
    double usual = stone ? DECK_AREA : HOUSEHOLD_AREA;
    double times = Math.max(1, area / usual);
    return new OvenModel(
        model.offset(),
        model.lag(),
        model.still(),
        model.fan(),
        model.emissivity(),
        model.doorDrop(),
        model.power() * times,
        model.capacity() * times,
        model.loss() * times);
  }

  @Override
  public String toString() {
    return name
        + " up to "
        + AmountFormat.sideBySide().temperature(highest)
        + ", "
        + trays
        + (trays == 1 ? " tray of " : " trays of ")
        + tray
        + (stone ? ", stone floor" : "");
  }
}
