package org.tourage.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.grams;
import static org.tourage.quantity.Amounts.mass;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.tourage.ingredient.Catalogue;
import org.tourage.reference.Checks;
import org.tourage.reference.Checks.Row;

/** A second printed table of baker's percent, in pounds and in grams. */
class TwoStageCakeReferenceTest {
  private static final List<Row> ROWS = Checks.rows("two-stage-cake.csv").toList();

  @Test
  void thePrintedPercentagesComeOutOfThePoundsToThePrintedDigit() {
    Batch batch =
        Formula.byWeight(
            "two-stage cake",
            f -> ROWS.forEach(r -> f.line(r.text("name"), mass(r.text("amount")))));
    for (Row row : ROWS) {
      String printed = row.text("percent");
      int decimals = printed.contains(".") ? printed.length() - printed.indexOf('.') - 1 : 0;
      assertThat(percent(batch, row))
          .isCloseTo(row.number("percent"), within(0.5 * Math.pow(10, -decimals)));
    }
  }

  @Test
  void theGramsOfThatTableAreRoundedOnTheirOwnAndMoveThePercentagesByUpToAPointAndAHalf() {
    Batch batch =
        Formula.byWeight(
            "two-stage cake",
            f -> ROWS.forEach(r -> f.line(r.text("name"), grams(r.number("metric_grams")))));
    for (Row row : ROWS) {
      assertThat(percent(batch, row)).isCloseTo(row.number("percent"), within(1.5));
    }
  }

  private static double percent(Batch batch, Row row) {
    return batch.formula().percent(Catalogue.builtIn().require(row.text("name"))).in(PERCENT);
  }
}
