package org.tourage.oven;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tourage.advice.BakeryException;
import org.tourage.internal.Csv;
import org.tourage.physics.TemperatureHistory;
import org.tourage.reference.Checks;
import org.tourage.reference.Checks.Row;

class ThermalDeathTest {
  private static final ThermalDeath BUNS = ThermalDeath.named("Salmonella in bun dough");

  private static double published(String check) {
    return Checks.row("oven.csv", check).number("value");
  }

  static Stream<Row> beef() {
    return Checks.rows("oven.csv")
        .filter(r -> r.text("check").equals("roast beef lethality table"));
  }

  static Stream<Row> refits() {
    return Checks.rows("oven.csv").filter(r -> r.text("check").startsWith("z refitted"));
  }

  @ParameterizedTest
  @MethodSource("beef")
  void eachLineOfTheRegulatoryTableIsTheSameLethalityRoundedUpToTheMinute(Row row) {
    // 111.4 min at 130 °F, z 10 °F: the one figure from which the whole table follows
    TemperatureHistory minute = TemperatureHistory.hold(fahrenheit(row.number("a")), minutes(1));
    double f = ThermalDeath.equivalent(minute, fahrenheit(130), 10 / 1.8).in(MINUTE);
    assertThat(Math.ceil(111.4 / f)).isEqualTo(row.number("value"));
  }

  @Test
  void theAlternativesOfTheFoodCodeForRawEggsAreOneLethality() {
    List<Row> rows =
        Checks.rows("oven.csv")
            .filter(r -> r.text("check").equals("food code alternatives for raw eggs"))
            .toList();
    double first = 0;
    for (Row row : rows) {
      TemperatureHistory held =
          TemperatureHistory.hold(fahrenheit(row.number("a")), seconds(row.number("value")));
      double f = ThermalDeath.equivalent(held, fahrenheit(145), 10 / 1.8).in(MINUTE);
      first = first == 0 ? f : first;
      assertThat(f).isCloseTo(first, Percentage.withPercentage(7));
    }
    assertThat(rows).hasSize(3);
  }

  @ParameterizedTest
  @MethodSource("refits")
  void zFollowsFromThePrintedD(Row row) {
    List<Row> table = rowsOf(row.text("a"));
    double n = table.size();
    double t = 0;
    double d = 0;
    double tt = 0;
    double td = 0;
    for (Row one : table) {
      double x = one.number("celsius");
      double y = Math.log10(one.number("d_minutes"));
      t += x;
      d += y;
      tt += x * x;
      td += x * y;
    }
    double slope = (n * td - t * d) / (n * tt - t * t);
    assertThat(-1 / slope).isCloseTo(row.number("value"), within(0.0006));
    // printed and refitted z are close, so the line of the table was copied right
    assertThat(ThermalDeath.named(row.text("a")).z())
        .isCloseTo(row.number("value"), Percentage.withPercentage(2));
  }

  private static List<Row> rowsOf(String name) {
    try (InputStream in = Files.newInputStream(Path.of("reference-data/catalogue/lethality.csv"))) {
      return Csv.read(in).stream().map(Row::new).filter(r -> r.text("name").equals(name)).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void rampsAreIntegratedExactly() {
    assertThat(
            ThermalDeath.equivalent(
                    TemperatureHistory.ramp(celsius(55), celsius(75), minutes(4)),
                    celsius(65),
                    6.58)
                .in(MINUTE))
        .isCloseTo(published("F of a ramp from 55 to 75 in 4 min, 65, z 6.58"), within(5e-5));
    TemperatureHistory steps =
        TemperatureHistory.ramp(celsius(30), celsius(52), minutes(3))
            .thenRamp(celsius(62), minutes(3))
            .thenRamp(celsius(71), minutes(2))
            .thenRamp(celsius(78), minutes(2));
    assertThat(ThermalDeath.equivalent(steps, celsius(70), 6.58).in(MINUTE))
        .isCloseTo(published("F of 0 3 6 8 10 min at 30 52 62 71 78, 70, z 6.58"), within(5e-6));
  }

  @Property
  void aConstantHoldGivesTimeOverD(
      @ForAll @DoubleRange(min = 55, max = 60.9) double celsius,
      @ForAll @DoubleRange(min = 0.1, max = 60) double minutes) {
    double d = 7.61 * Math.pow(10, (58 - celsius) / 6.58);
    assertThat(BUNS.logReductions(TemperatureHistory.hold(celsius(celsius), minutes(minutes))))
        .isCloseTo(minutes / d, within(1e-12 + 1e-12 * minutes / d));
  }

  @Property
  void reductionsAddUpAndMoreHeatNeverKillsLess(
      @ForAll @DoubleRange(min = 20, max = 99) double a,
      @ForAll @DoubleRange(min = 20, max = 99) double b,
      @ForAll @DoubleRange(min = 0.1, max = 10) double warmer) {
    TemperatureHistory one = TemperatureHistory.ramp(celsius(a), celsius(b), minutes(5));
    TemperatureHistory two = TemperatureHistory.ramp(celsius(b), celsius(a), minutes(3));
    assertThat(BUNS.logReductions(one.then(two)))
        .isCloseTo(BUNS.logReductions(one) + BUNS.logReductions(two), within(1e-9));
    TemperatureHistory hotter =
        TemperatureHistory.ramp(celsius(a + warmer), celsius(b + warmer), minutes(5));
    assertThat(BUNS.logReductions(hotter)).isGreaterThanOrEqualTo(BUNS.logReductions(one) - 1e-12);
  }

  @Test
  void onlyWhatWasTestedCounts() {
    assertThat(BUNS.logReductions(TemperatureHistory.hold(celsius(54.9), hours(10)))).isZero();
    double at61 = BUNS.logReductions(TemperatureHistory.hold(celsius(61), minutes(10)));
    assertThat(BUNS.logReductions(TemperatureHistory.hold(celsius(95), minutes(10))))
        .isCloseTo(at61, within(1e-12));
    // half of the ramp lies above the range, a tenth within it, the rest below
    double ramp =
        BUNS.logReductions(TemperatureHistory.ramp(celsius(31), celsius(91), minutes(10)));
    double within =
        ThermalDeath.equivalent(
                    TemperatureHistory.ramp(celsius(55), celsius(61), minutes(1)),
                    celsius(58),
                    6.58)
                .in(MINUTE)
            / 7.61;
    assertThat(ramp).isCloseTo(at61 / 2 + within, within(1e-9));
  }

  @Test
  void theWordsThatMustBeSaidAreSaid() {
    String advice =
        BUNS.advice(TemperatureHistory.ramp(celsius(30), celsius(98), minutes(12))).toString();
    assertThat(advice)
        .contains("A calculation is no validation: validate with a process authority")
        .contains("61 °C (142 °F) counted as that, since nothing hotter was tested");
    assertThat(BUNS).hasToString("salmonella in bun dough: D 7.61 min at 58 °C (136 °F), z 6.58 K");
    assertThat(BUNS.tested().low().in(CELSIUS)).isEqualTo(55);
    assertThat(ThermalDeath.all()).hasSize(7);
    assertThatThrownBy(() -> ThermalDeath.named("mould in jam"))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("salmonella in bun dough");
    assertThatThrownBy(
            () -> new ThermalDeath("x", celsius(60), minutes(0), 6, BUNS.tested(), "test"))
        .isInstanceOf(BakeryException.class);
  }
}
