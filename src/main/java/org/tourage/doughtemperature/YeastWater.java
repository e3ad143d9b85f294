package org.tourage.doughtemperature;

import static org.tourage.quantity.BakeryUnits.CELSIUS;

import java.util.List;
import javax.measure.quantity.Temperature;
import org.tourage.advice.Advice;
import org.tourage.ingredient.YeastForm;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;

/** What is unwise about a water temperature, however it was found. */
final class YeastWater {
  private static final double YEAST_DAMAGE_CELSIUS = 50;

  private YeastWater() {}

  static List<Advice> advice(Amount<Temperature> water) {
    double celsius = water.in(CELSIUS);
    String reading = AmountFormat.sideBySide().temperature(water);
    if (celsius > YEAST_DAMAGE_CELSIUS) {
      return List.of(
          Advice.warning(
              "WATER_KILLS_YEAST",
              "water of " + reading + " damages any yeast that it meets",
              "Warm the flour or the room instead, or accept a cooler dough and a longer rise",
              Advice.COMMON_PRACTICE));
    } else if (water.compareTo(YeastForm.FRESH.water().high()) > 0) {
      return List.of(
          Advice.warning(
              "WATER_WARM",
              "water of " + reading + " is too warm for fresh yeast",
              "Mix the yeast into the flour, not into the water; fresh yeast bears up to 38 °C (100 °F)",
              Advice.COMMON_PRACTICE));
    } else if (celsius < 0) {
      return List.of(
          Advice.note(
              "WATER_BELOW_FREEZING",
              "the dough needs water of " + reading,
              "Use ice for part of the water; see ice(…)",
              Advice.COMMON_PRACTICE));
    }
    return List.of();
  }
}
