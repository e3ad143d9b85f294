package org.tourage.quantity;

import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Power;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;

/**
 * Readable factories, meant for a static import.
 *
 * <pre>{@code
 * import static org.tourage.quantity.Amounts.*;
 *
 * grams(500).to(BakeryUnits.OUNCE);   // 17.637 oz
 * mass("1 lb 2 oz");                  // 18 oz
 * temperature("400°F");               // 400 °F
 * }</pre>
 *
 * <p>Every factory refuses NaN and infinity; every reader of text refuses what it can't read with
 * certainty, with a {@link org.tourage.advice.BakeryException} that names the text, the place and
 * what would be right. None depends on the locale.
 */
public final class Amounts {
  private Amounts() {}

  /**
   * So many grams.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Mass> grams(double value) {
    return BakeryUnits.GRAM.amount(value);
  }

  /**
   * So many kilograms.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Mass> kilograms(double value) {
    return BakeryUnits.KILOGRAM.amount(value);
  }

  /**
   * So many milligrams.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Mass> milligrams(double value) {
    return BakeryUnits.MILLIGRAM.amount(value);
  }

  /**
   * So many avoirdupois ounces (a mass; see {@link #fluidOunces}).
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Mass> ounces(double value) {
    return BakeryUnits.OUNCE.amount(value);
  }

  /**
   * So many avoirdupois pounds.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Mass> pounds(double value) {
    return BakeryUnits.POUND.amount(value);
  }

  /**
   * So many millilitres.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Volume> millilitres(double value) {
    return BakeryUnits.MILLILITRE.amount(value);
  }

  /**
   * So many litres.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Volume> litres(double value) {
    return BakeryUnits.LITRE.amount(value);
  }

  /**
   * So many US customary cups of 236.5882365 mL.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Volume> cups(double value) {
    return BakeryUnits.CUP.amount(value);
  }

  /**
   * So many US customary tablespoons.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Volume> tablespoons(double value) {
    return BakeryUnits.TABLESPOON.amount(value);
  }

  /**
   * So many US customary teaspoons.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Volume> teaspoons(double value) {
    return BakeryUnits.TEASPOON.amount(value);
  }

  /**
   * So many US customary fluid ounces.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Volume> fluidOunces(double value) {
    return BakeryUnits.FLUID_OUNCE.amount(value);
  }

  /**
   * So many US customary pints.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Volume> pints(double value) {
    return BakeryUnits.PINT.amount(value);
  }

  /**
   * So many US customary quarts.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Volume> quarts(double value) {
    return BakeryUnits.QUART.amount(value);
  }

  /**
   * So many US customary gallons.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Volume> gallons(double value) {
    return BakeryUnits.GALLON.amount(value);
  }

  /**
   * So many US labelling cups of 240 mL.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Volume> labellingCups(double value) {
    return BakeryUnits.LABELLING_CUP.amount(value);
  }

  /**
   * So many metric cups of 250 mL.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Volume> metricCups(double value) {
    return BakeryUnits.METRIC_CUP.amount(value);
  }

  /**
   * So many imperial pints.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Volume> imperialPints(double value) {
    return BakeryUnits.IMPERIAL_PINT.amount(value);
  }

  /**
   * So many micrometres.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Length> micrometres(double value) {
    return BakeryUnits.MICROMETRE.amount(value);
  }

  /**
   * So many millimetres.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Length> millimetres(double value) {
    return BakeryUnits.MILLIMETRE.amount(value);
  }

  /**
   * So many centimetres.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Length> centimetres(double value) {
    return BakeryUnits.CENTIMETRE.amount(value);
  }

  /**
   * So many metres.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Length> metres(double value) {
    return BakeryUnits.METRE.amount(value);
  }

  /**
   * So many inches.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Length> inches(double value) {
    return BakeryUnits.INCH.amount(value);
  }

  /**
   * So many seconds.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Time> seconds(double value) {
    return BakeryUnits.SECOND.amount(value);
  }

  /**
   * So many minutes.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Time> minutes(double value) {
    return BakeryUnits.MINUTE.amount(value);
  }

  /**
   * So many hours.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Time> hours(double value) {
    return BakeryUnits.HOUR.amount(value);
  }

  /**
   * So many days of 24 hours.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Time> days(double value) {
    return BakeryUnits.DAY.amount(value);
  }

  /**
   * So many degrees Celsius, a thermometer reading.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Temperature> celsius(double value) {
    return BakeryUnits.CELSIUS.amount(value);
  }

  /**
   * So many degrees Fahrenheit, a thermometer reading.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Temperature> fahrenheit(double value) {
    return BakeryUnits.FAHRENHEIT.amount(value);
  }

  /**
   * So many kelvins, a thermometer reading.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Temperature> kelvin(double value) {
    return BakeryUnits.KELVIN.amount(value);
  }

  /**
   * So many percent.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Dimensionless> percent(double value) {
    return BakeryUnits.PERCENT.amount(value);
  }

  /**
   * So many parts of one: 0.5 is one half.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Dimensionless> fraction(double value) {
    return BakeryUnits.FRACTION.amount(value);
  }

  /**
   * So many joules.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Energy> joules(double value) {
    return BakeryUnits.JOULE.amount(value);
  }

  /**
   * So many kilojoules.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Energy> kilojoules(double value) {
    return BakeryUnits.KILOJOULE.amount(value);
  }

  /**
   * So many thermochemical kilocalories of 4184 J.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Energy> kilocalories(double value) {
    return BakeryUnits.KILOCALORIE.amount(value);
  }

  /**
   * So many watts.
   *
   * @param value how many
   * @return the amount
   */
  public static Amount<Power> watts(double value) {
    return BakeryUnits.WATT.amount(value);
  }

  /**
   * So many kilograms per cubic metre.
   *
   * @param value how many
   * @return the density
   */
  public static Amount<Density> kilogramsPerCubicMetre(double value) {
    return BakeryUnits.KILOGRAM_PER_CUBIC_METRE.amount(value);
  }

  /**
   * So many grams per millilitre.
   *
   * @param value how many
   * @return the density
   */
  public static Amount<Density> gramsPerMillilitre(double value) {
    return BakeryUnits.GRAM_PER_MILLILITRE.amount(value);
  }

  /**
   * A rise or fall in degrees Celsius, that is in kelvins.
   *
   * @param degrees how many; negative for a fall
   * @return the difference
   */
  public static TemperatureDifference celsiusDegrees(double degrees) {
    return TemperatureDifference.ofCelsiusDegrees(degrees);
  }

  /**
   * A rise or fall in degrees Fahrenheit.
   *
   * @param degrees how many; negative for a fall
   * @return the difference
   */
  public static TemperatureDifference fahrenheitDegrees(double degrees) {
    return TemperatureDifference.ofFahrenheitDegrees(degrees);
  }

  /**
   * A length and a width.
   *
   * @param length along the sheet
   * @param width across the sheet
   * @return the extent
   */
  public static Extent extent(
      javax.measure.Quantity<Length> length, javax.measure.Quantity<Length> width) {
    return Extent.of(length, width);
  }

  /**
   * Reads a mass, for example {@code 500g}, {@code 1 lb 2 oz}.
   *
   * @param text the text
   * @return the amount, in the unit of the text
   * @throws org.tourage.advice.BakeryException if the text can't be read as one
   */
  public static Amount<Mass> mass(String text) {
    return HouseholdAmount.parse(text, Kind.MASS).amount();
  }

  /**
   * Reads a volume, for example {@code 3 1/2 cups}, {@code 1¼ tsp} (US customary).
   *
   * @param text the text
   * @return the amount, in the unit of the text
   * @throws org.tourage.advice.BakeryException if the text can't be read as one
   */
  public static Amount<Volume> volume(String text) {
    return HouseholdAmount.parse(text, Kind.VOLUME).amount();
  }

  /**
   * Reads a length, for example {@code 24 in}, {@code 61 cm}.
   *
   * @param text the text
   * @return the amount, in the unit of the text
   * @throws org.tourage.advice.BakeryException if the text can't be read as one
   */
  public static Amount<Length> length(String text) {
    return HouseholdAmount.parse(text, Kind.LENGTH).amount();
  }

  /**
   * Reads a time, for example {@code 1 h 30 min}, {@code 90 min}.
   *
   * @param text the text
   * @return the amount, in the unit of the text
   * @throws org.tourage.advice.BakeryException if the text can't be read as one
   */
  public static Amount<Time> time(String text) {
    return HouseholdAmount.parse(text, Kind.TIME).amount();
  }

  /**
   * Reads a thermometer reading, for example {@code 400°F}, {@code 24 °C}.
   *
   * @param text the text
   * @return the amount, in the unit of the text
   * @throws org.tourage.advice.BakeryException if the text can't be read as one
   */
  public static Amount<Temperature> temperature(String text) {
    return HouseholdAmount.parse(text, Kind.TEMPERATURE).amount();
  }

  /**
   * Reads a percentage, for example {@code 62 %}.
   *
   * @param text the text
   * @return the amount, in the unit of the text
   * @throws org.tourage.advice.BakeryException if the text can't be read as one
   */
  public static Amount<Dimensionless> percentage(String text) {
    return HouseholdAmount.parse(text, Kind.RATIO).amount();
  }

  /**
   * Reads a length and a width, for example {@code 24 x 9 in}.
   *
   * @param text the text
   * @return the extent
   * @throws org.tourage.advice.BakeryException if the text can't be read as one
   */
  public static Extent extent(String text) {
    return Extent.parse(text);
  }

  /**
   * Reads a time or a range of times, for example {@code 1-2 hours}.
   *
   * @param text the text
   * @return the range; a single time is a range from itself to itself
   * @throws org.tourage.advice.BakeryException if the text can't be read as one
   */
  public static AmountRange<Time> timeRange(String text) {
    return HouseholdAmount.parse(text, Kind.TIME).range();
  }
}
