package org.tourage.doughtemperature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.fahrenheit;
import static org.tourage.quantity.Amounts.pounds;
import static org.tourage.quantity.BakeryUnits.POUND;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.tourage.reference.Checks;
import org.tourage.reference.Checks.Row;

/** The ice table of a bakers' supply house against the rule. */
class IceTableReferenceTest {
  private static double share(double tap, double wanted) {
    return IceRule.of(pounds(1), fahrenheit(tap), fahrenheit(wanted)).ice().in(POUND);
  }

  @Test
  void theRuleFollowsThePrintedTableWithinFourPercentButForTwoCellsAtThirtyFive() {
    List<Row> rows = Checks.rows("ice-table.csv").filter(r -> r.text("unit").equals("lb")).toList();
    List<Row> off =
        rows.stream()
            .filter(
                r -> {
                  double ours = share(r.number("tap_fahrenheit"), r.number("wanted_fahrenheit"));
                  return Math.abs(ours / r.number("value") - 1) > 0.04;
                })
            .toList();
    assertThat(rows).hasSizeGreaterThan(30);
    assertThat(off)
        .hasSize(2)
        .allSatisfy(r -> assertThat(r.text("wanted_fahrenheit")).isEqualTo("35"));
  }

  @Test
  void theRuleTakesThePrintedHeatOfMelting() {
    Row row =
        Checks.rows("ice-table.csv")
            .filter(r -> r.text("unit").equals("Btu/lb"))
            .findFirst()
            .orElseThrow();
    double share = share(70, 40);
    // what a pound of ice takes up to 40 °F is what the rest of the water gives
    double melting = (1 - share) * (70 - 40) / share - (40 - row.number("tap_fahrenheit"));
    assertThat(melting).isCloseTo(row.number("value"), within(1e-9));
  }
}
