package org.tourage.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.KELVIN;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.tourage.advice.BakeryException;
import org.tourage.reference.Checks;

class SteamTest {
  private static double published(String check) {
    return Checks.row("fermentation.csv", check).number("value");
  }

  @ParameterizedTest
  @CsvSource({"300", "500", "600"})
  void thePressureIsThePrintedOneToAllDigits(int kelvin) {
    double printed = published("steam pressure at " + kelvin + " K");
    assertThat(IapwsIf97Saturation.pressure(kelvin(kelvin)) / 1e6)
        .isCloseTo(printed, within(1e-8 * printed));
  }

  @ParameterizedTest
  @CsvSource({"0.1", "1", "10"})
  void theBoilingPointIsThePrintedOneToAllDigits(String megapascal) {
    assertThat(IapwsIf97Saturation.boiling(1e6 * Double.parseDouble(megapascal)).in(KELVIN))
        .isCloseTo(published("boiling at " + megapascal + " MPa"), within(5e-7));
  }

  @Property
  void boilingIsTheInverseOfThePressure(
      @ForAll @DoubleRange(min = 0.01, max = 370) double celsius) {
    double pascal = IapwsIf97Saturation.pressure(celsius(celsius));
    assertThat(IapwsIf97Saturation.boiling(pascal).in(CELSIUS)).isCloseTo(celsius, within(1e-5));
  }

  @Test
  void highUpTheAirIsThinAndWaterBoilsSooner() {
    assertThat(Atmosphere.pressure(metres(0))).isEqualTo(Atmosphere.SEA_LEVEL_PASCAL);
    assertThat(Atmosphere.SEA_LEVEL_PASCAL / Atmosphere.pressure(metres(1609)))
        .isCloseTo(published("gas volume at 1609 m over sea level"), within(5e-6));
    assertThat(Atmosphere.boiling(metres(0)).in(CELSIUS)).isCloseTo(99.974, within(0.01));
    assertThat(Atmosphere.boiling(metres(1000)).in(CELSIUS)).isCloseTo(96.68, within(0.1));
    assertThat(Atmosphere.boiling(metres(3000)).in(CELSIUS)).isCloseTo(90.03, within(0.1));
  }

  @Property
  void boilingFallsWithTheAltitude(
      @ForAll @DoubleRange(min = 0, max = 4000) double low,
      @ForAll @DoubleRange(min = 1, max = 500) double more) {
    assertThat(Atmosphere.boiling(metres(low + more))).isLessThan(Atmosphere.boiling(metres(low)));
  }

  @Test
  void whatHasNoSteamIsRefused() {
    assertThatThrownBy(() -> IapwsIf97Saturation.pressure(celsius(-1)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("-1 °C");
    assertThatThrownBy(() -> IapwsIf97Saturation.boiling(1))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("1.0 Pa");
    assertThatThrownBy(() -> Atmosphere.pressure(metres(12000)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("12000 m");
  }

  private static double coefficients(String property, String component, double celsius) {
    return Checks.rows("thermal-coefficients.csv")
        .filter(r -> r.text("property").equals(property) && r.text("component").equals(component))
        .map(
            r ->
                r.number("a0")
                    + celsius * (r.number("a1_per_degC") + celsius * r.number("a2_per_degC2")))
        .findFirst()
        .orElseThrow();
  }

  @Property(tries = 100)
  void theSpecificHeatOfIceIsTheTabulatedOne(
      @ForAll @DoubleRange(min = -40, max = 0) double celsius) {
    assertThat(ChoiOkos1986.iceSpecificHeat(celsius))
        .isCloseTo(coefficients("specific_heat", "ice", celsius), Percentage.withPercentage(0.1));
  }

  private static Constituents pure(String component) {
    return switch (component) {
      case "water" -> new Constituents(1, 0, 0, 0, 0, 0);
      case "protein" -> new Constituents(0, 1, 0, 0, 0, 0);
      case "fat" -> new Constituents(0, 0, 1, 0, 0, 0);
      case "carbohydrate" -> new Constituents(0, 0, 0, 1, 0, 0);
      case "fibre" -> new Constituents(0, 0, 0, 0, 1, 0);
      default -> new Constituents(0, 0, 0, 0, 0, 1);
    };
  }

  @Property(tries = 200)
  void choiAndOkosValuesAreTheTabulatedOnesWithinATenthOfAPercent(
      @ForAll @DoubleRange(min = 0, max = 150) @Scale(3) double celsius) {
    for (String component :
        new String[] {"water", "protein", "fat", "carbohydrate", "fibre", "ash"}) {
      assertThat(ChoiOkos1986.specificHeat(pure(component), celsius(celsius)))
          .as(component)
          .isCloseTo(
              coefficients("specific_heat", component, celsius), Percentage.withPercentage(0.1));
      assertThat(ChoiOkos1986.conductivity(pure(component), celsius(celsius)))
          .as(component)
          .isCloseTo(
              coefficients("conductivity", component, celsius), Percentage.withPercentage(0.1));
      assertThat(ChoiOkos1986.density(pure(component), celsius(celsius)).value())
          .as(component)
          .isCloseTo(coefficients("density", component, celsius), Percentage.withPercentage(0.1));
    }
  }
}
