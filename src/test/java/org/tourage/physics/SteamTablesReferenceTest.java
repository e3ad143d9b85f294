package org.tourage.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.celsius;
import static org.tourage.quantity.Amounts.inches;
import static org.tourage.quantity.Amounts.metres;
import static org.tourage.quantity.BakeryUnits.CELSIUS;

import java.util.stream.Stream;
import javax.measure.quantity.Length;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tourage.quantity.Amount;
import org.tourage.reference.Checks;
import org.tourage.reference.Checks.Row;

/** Printed tables of steam, water and air against what the library works out. */
class SteamTablesReferenceTest {
  private static final Constituents WATER = new Constituents(1, 0, 0, 0, 0, 0);
  private static final double MOLAR_MASS = 0.018015;
  private static final double PASCAL_OF_PSI = 6894.757;

  static Stream<Row> steam() {
    return Checks.rows("steam.csv");
  }

  static Stream<Row> water() {
    return Checks.rows("water.csv");
  }

  static Stream<Row> air() {
    return Checks.rows("air-by-altitude.csv");
  }

  @ParameterizedTest
  @MethodSource("steam")
  void thePressureOfSteamIsThePrintedOne(Row row) {
    double celsius = row.number("celsius");
    double pascal = 1000 * row.number("value");
    assertThat(IapwsIf97Saturation.pressure(celsius(celsius)))
        .isCloseTo(pascal, Percentage.withPercentage(100 * row.number("relative_tolerance")));
    assertThat(IapwsIf97Saturation.boiling(pascal).in(CELSIUS)).isCloseTo(celsius, within(0.03));
  }

  @ParameterizedTest
  @MethodSource("water")
  void waterOfTheFoodModelIsThePrintedOneWithinThreePerMilleAndOnePercent(Row row) {
    double celsius = row.number("celsius");
    if (row.text("property").equals("density")) {
      assertThat(ChoiOkos1986.density(WATER, celsius(celsius)).value())
          .isCloseTo(row.number("value"), Percentage.withPercentage(0.3));
    } else {
      assertThat(ChoiOkos1986.specificHeat(WATER, celsius(celsius)))
          .isCloseTo(row.number("value") / MOLAR_MASS, Percentage.withPercentage(1.1));
    }
  }

  @ParameterizedTest
  @MethodSource("air")
  void airAndBoilingByAltitudeAreThePrintedOnes(Row row) {
    double altitude = row.number("altitude");
    Amount<Length> height =
        row.text("altitude_unit").equals("ft") ? inches(12 * altitude) : metres(altitude);
    double value = row.number("value");
    switch (row.text("unit")) {
      case "°C" ->
          assertThat(Atmosphere.boiling(height).in(CELSIUS)).isCloseTo(value, within(0.01));
      // the customary table lies up to 0.003 psi above the equation of 1976
      case "psi" ->
          assertThat(Atmosphere.pressure(height) / PASCAL_OF_PSI).isCloseTo(value, within(0.0035));
      default -> assertThat(Atmosphere.pressure(height)).isCloseTo(value, within(2.0));
    }
  }
}
