package org.tourage.oven;

import static org.assertj.core.api.Assertions.assertThat;
import static org.tourage.quantity.Amounts.celsius;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.MINUTE;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tourage.reference.Checks;
import org.tourage.reference.Checks.Row;

/** What was measured in bakes, against a bake and not a ramp of our own. */
class MeasuredBakesReferenceTest {
  static Stream<Row> measured() {
    return Checks.rows("measured-bakes.csv");
  }

  @ParameterizedTest
  @MethodSource("measured")
  void theMeasuredFigureLiesInItsBandOrTheRowSaysThatItDoesNot(Row row) {
    Bake bake = BakeCase.bake(row);
    double found =
        switch (row.text("quantity")) {
          case "core" -> bake.end().core().in(CELSIUS);
          case "arrival" -> bake.coreReaches(celsius(93)).orElseThrow().in(MINUTE);
          case "loss" -> bake.end().loss().in(PERCENT);
          case "porosity" -> 100 * bake.piece().material().pores().grown(bake.end().volume());
          case "water" -> {
            double loss = bake.end().loss().in(FRACTION);
            double water = bake.piece().dough().water() / bake.piece().dough().sum();
            yield 100 * (water - loss) / (1 - loss);
          }
          default -> throw new AssertionError(row.text("quantity"));
        };
    boolean inside = found >= row.number("low") && found <= row.number("high");
    assertThat(inside).as(row.text("quantity") + " " + found).isEqualTo(holds(row));
  }

  private static boolean holds(Row row) {
    return row.text("holds").equals("yes");
  }
}
