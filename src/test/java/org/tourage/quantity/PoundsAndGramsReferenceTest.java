package org.tourage.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.tourage.quantity.BakeryUnits.GRAM;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tourage.reference.Checks;
import org.tourage.reference.Checks.Row;

/** A college's formula in pounds and in grams. */
class PoundsAndGramsReferenceTest {
  static Stream<Row> weights() {
    return Checks.rows("pounds-and-grams.csv");
  }

  @ParameterizedTest
  @MethodSource("weights")
  void poundsAndOuncesWeighThePrintedGrams(Row row) {
    double grams = Amounts.mass(row.text("amount")).in(GRAM);
    boolean cutOff = row.text("source").contains("cut off");
    assertThat(cutOff ? Math.floor(grams) : Math.rint(grams)).isEqualTo(row.number("grams"));
  }
}
