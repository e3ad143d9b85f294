package org.tourage.doughtemperature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.tourage.quantity.Amounts.*;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.stream.Stream;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tourage.quantity.Amount;
import org.tourage.quantity.BakeryUnits;
import org.tourage.quantity.TemperatureDifference;
import org.tourage.reference.Checks;
import org.tourage.reference.Checks.Row;

class FactorRuleReferenceTest {
  static Stream<Row> examples() {
    return Checks.rows("factor-rule.csv");
  }

  @ParameterizedTest
  @MethodSource("examples")
  void theExampleComesOutToThePrintedDigit(Row row) {
    boolean fahrenheit = row.text("unit").equals("°F");
    double value =
        switch (row.text("rule")) {
          case "water" -> reading(rule(row).water(), fahrenheit);
          case "friction" -> {
            Amount<Temperature> water = temperature(row.text("friction_or_water"), fahrenheit);
            TemperatureDifference friction = rule(row).frictionOfPastMix(water);
            yield fahrenheit ? friction.fahrenheitDegrees() : friction.celsiusDegrees();
          }
          default -> {
            Amount<Mass> mass = mass(row.text("water_mass"));
            yield IceRule.of(
                    mass,
                    temperature(row.text("others"), fahrenheit),
                    temperature(row.text("target_or_dough"), fahrenheit))
                .ice()
                .in(mass.bakeryUnit());
          }
        };
    int decimals = (int) row.number("decimals");
    BigDecimal printed = new BigDecimal(row.text("printed")).setScale(decimals);
    // ten digits only: 80.000000000001 is printed as 80
    assertThat(
            new BigDecimal(value)
                .setScale(10, RoundingMode.HALF_UP)
                .setScale(decimals, RoundingMode.HALF_UP))
        .isEqualTo(printed);
  }

  private static FactorRule rule(Row row) {
    boolean fahrenheit = row.text("unit").equals("°F");
    FactorRule rule = FactorRule.of(temperature(row.text("target_or_dough"), fahrenheit));
    for (String other : row.text("others").split(";")) {
      rule = rule.factor("factor", temperature(other, fahrenheit));
    }
    double last = row.number("friction_or_water");
    return row.text("rule").equals("friction")
        ? rule
        : rule.friction(fahrenheit ? fahrenheitDegrees(last) : celsiusDegrees(last));
  }

  private static Amount<Temperature> temperature(String degrees, boolean fahrenheit) {
    double value = Double.parseDouble(degrees);
    return fahrenheit ? fahrenheit(value) : celsius(value);
  }

  private static double reading(Amount<Temperature> amount, boolean fahrenheit) {
    return amount.in(fahrenheit ? BakeryUnits.FAHRENHEIT : BakeryUnits.CELSIUS);
  }
}
