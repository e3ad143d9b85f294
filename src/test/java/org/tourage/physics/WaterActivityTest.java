package org.tourage.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.DAY;
import static org.tourage.quantity.BakeryUnits.FRACTION;

import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tourage.advice.BakeryException;
import org.tourage.reference.Checks;
import org.tourage.reference.Checks.Row;

class WaterActivityTest {
  static Stream<Row> solutions() {
    return Checks.rows("water-activity.csv");
  }

  @ParameterizedTest
  @MethodSource("solutions")
  void aSolutionHasThePrintedWaterActivity(Row row) {
    Solute solute = Solute.valueOf(row.text("solute"));
    Solution solution =
        Solution.of(kilograms(1))
            .with(solute, grams(row.number("molality") * solute.gramsPerMole()));
    assertThat(solution.waterActivity().in(FRACTION))
        .isCloseTo(row.number("value"), within(row.number("tolerance")));
  }

  private static double activity(double sucrose, double glucose, double salt) {
    return Solution.of(grams(100))
        .with(Solute.SUCROSE, grams(sucrose))
        .with(Solute.GLUCOSE, grams(glucose))
        .with(Solute.SODIUM_CHLORIDE, grams(salt))
        .waterActivity()
        .in(FRACTION);
  }

  @Property
  void moreSoluteNeverRaisesTheWaterActivityAndAGramOfGlucoseLowersItMoreThanOneOfSucrose(
      @ForAll @DoubleRange(min = 0, max = 60) double sucrose,
      @ForAll @DoubleRange(min = 0, max = 40) double glucose,
      @ForAll @DoubleRange(min = 0, max = 15) double salt) {
    double here = activity(sucrose, glucose, salt);
    assertThat(here).isBetween(0.7, 1.0);
    assertThat(activity(sucrose + 5, glucose, salt)).isLessThan(here);
    assertThat(activity(sucrose, glucose, salt + 1)).isLessThan(here);
    assertThat(activity(sucrose, glucose + 5, salt))
        .isLessThan(activity(sucrose + 5, glucose, salt));
  }

  @Property
  void aWeakSolutionFollowsRaoult(@ForAll @DoubleRange(min = 0.01, max = 0.5) double grams) {
    double moles = grams / 342.30;
    double water = 100 / 18.015;
    assertThat(activity(grams, 0, 0)).isCloseTo(water / (water + moles), within(1e-6));
    // a salt counts by its two ions, less what they hold of one another
    double ions = 2 * grams / 58.44;
    assertThat(1 - activity(0, 0, grams)).isCloseTo(ions / water, Percentage.withPercentage(9));
  }

  static Stream<Row> days() {
    return Checks.rows("keeping.csv").filter(r -> r.text("check").startsWith("mould-free days"));
  }

  @ParameterizedTest
  @MethodSource("days")
  void mouldFreeDaysAreThoseOfTheLine(Row row) {
    double celsius = row.text("check").equals("mould-free days at 27 °C") ? 27 : 21;
    assertThat(MouldFreeDays.at(percent(row.number("a")), celsius(celsius)).in(DAY))
        .isCloseTo(row.number("value"), Percentage.withPercentage(0.3));
  }

  @Property
  void wetterOrWarmerNeverKeepsLonger(
      @ForAll @DoubleRange(min = 74, max = 89) double erh,
      @ForAll @DoubleRange(min = 21, max = 26) double celsius) {
    double here = MouldFreeDays.at(percent(erh), celsius(celsius)).in(DAY);
    assertThat(MouldFreeDays.at(percent(erh + 1), celsius(celsius)).in(DAY)).isLessThan(here);
    assertThat(MouldFreeDays.at(percent(erh), celsius(celsius + 1)).in(DAY)).isLessThan(here);
  }

  @Test
  void whereNothingIsKnownNothingIsSaid() {
    assertThatThrownBy(() -> MouldFreeDays.at(percent(91), celsius(21)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("91 %");
    assertThatThrownBy(() -> MouldFreeDays.at(percent(80), celsius(5)))
        .hasMessageContaining("5 °C");
    assertThatThrownBy(() -> activity(0, 0, 37)).hasMessageContaining("6.15");
    assertThatThrownBy(() -> activity(400, 0, 0)).hasMessageContaining("15 %");
    assertThatThrownBy(() -> activity(-1, 0, 0)).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> Solution.of(grams(0))).hasMessageContaining("some water");
    assertThat(Solution.of(grams(100)).waterActivity().in(FRACTION)).isEqualTo(1);
    assertThat(Solution.of(grams(100)).with(Solute.SUCROSE, grams(150)))
        .hasToString("100 g of water with 150 g sucrose");
  }
}
