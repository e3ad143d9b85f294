package org.tourage.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tourage.reference.Checks;
import org.tourage.reference.Checks.Row;

class BakeryUnitsReferenceTest {
  static Stream<Row> exact() {
    return Checks.rows("units-exact.csv");
  }

  static Stream<Row> printed() {
    return Checks.rows("units-printed.csv");
  }

  static Stream<Row> handbook() {
    return Checks.rows("handbook-44.csv");
  }

  static Stream<Row> temperatures() {
    return Checks.rows("temperatures.csv");
  }

  @ParameterizedTest
  @MethodSource("exact")
  void factorIsTheDefinition(Row row) {
    BakeryUnit<?> unit = BakeryUnits.bySymbol(row.text("symbol"));
    assertThat(unit.exactFactor()).contains(Fraction.ofDecimal(row.text("factor")));
  }

  @ParameterizedTest
  @MethodSource("printed")
  void factorAgreesWithThePrintedDigits(Row row) {
    BakeryUnit<?> unit = BakeryUnits.bySymbol(row.text("symbol"));
    double printed = row.number("factor_as_printed");
    // seven digits are printed
    assertThat(unit.factor()).isCloseTo(printed, within(printed * 5e-7));
  }

  @ParameterizedTest
  @MethodSource("handbook")
  void customaryVolumesRelateAsTheHandbookSays(Row row) {
    String right = row.text("equals");
    Fraction expected;
    if (right.endsWith(" in3")) {
      Fraction inch = Fraction.ofDecimal("0.0254");
      expected = Fraction.ofDecimal(right.replace(" in3", "")).times(inch).times(inch).times(inch);
    } else {
      expected = exactBase(right);
    }
    assertThat(exactBase(row.text("amount"))).isEqualTo(expected);
  }

  private static Fraction exactBase(String text) {
    HouseholdAmount amount = HouseholdAmount.parse(text);
    return amount.low().times(amount.unit().orElseThrow().exactFactor().orElseThrow());
  }

  @ParameterizedTest
  @MethodSource("temperatures")
  void fahrenheitAndCelsiusReadingsAgree(Row row) {
    double fahrenheit = Amounts.celsius(row.number("celsius")).in(BakeryUnits.FAHRENHEIT);
    double celsius = Amounts.fahrenheit(row.number("fahrenheit")).in(BakeryUnits.CELSIUS);
    assertThat(fahrenheit).isCloseTo(row.number("fahrenheit"), within(1e-9));
    assertThat(celsius).isCloseTo(row.number("celsius"), within(1e-9));
  }
}
