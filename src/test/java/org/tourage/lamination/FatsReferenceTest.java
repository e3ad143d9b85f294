package org.tourage.lamination;

import static org.assertj.core.api.Assertions.assertThat;
import static org.tourage.quantity.Amounts.celsius;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tourage.physics.ChoiOkos1986;
import org.tourage.physics.Constituents;
import org.tourage.reference.Checks;
import org.tourage.reference.Checks.Row;

/** Measured fats against the table of the jar and the food model. */
class FatsReferenceTest {
  private static final Constituents FAT = new Constituents(0, 0, 1, 0, 0, 0);

  static Stream<Row> fats() {
    return Checks.rows("fats.csv");
  }

  @ParameterizedTest
  @MethodSource("fats")
  void theFatOfTheTableLiesWhereItWasMeasured(Row row) {
    FatCurve curve = FatCurve.named(row.text("fat"));
    double low = row.number("low");
    double high = row.number("high");
    switch (row.text("property")) {
      case "solid" ->
          assertThat(curve.solid(celsius(row.number("celsius"))).in(PERCENT)).isBetween(low, high);
      case "heat of fusion" -> assertThat(curve.fusion() / 1000).isBetween(low, high);
      // the food model knows fat as such; it runs within 3 % of cocoa butter
      default ->
          assertThat(ChoiOkos1986.specificHeat(FAT, celsius(row.number("celsius"))))
              .isBetween(0.97 * low, 1.03 * high);
    }
  }
}
