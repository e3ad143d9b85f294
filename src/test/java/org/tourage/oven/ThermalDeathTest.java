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
import javax.measure.quantity.Temperature;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tourage.advice.BakeryException;
import org.tourage.internal.Csv;
import org.tourage.oven.ThermalDeath.Tested;
import org.tourage.physics.TemperatureHistory;
import org.tourage.quantity.AmountRange;
import org.tourage.reference.Checks;
import org.tourage.reference.Checks.Row;

class ThermalDeathTest {
  private static final ThermalDeath BUNS = ThermalDeath.named("Salmonella in bun dough");

  private static double figure(String check) {
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
    TemperatureHistory minute = TemperatureHistory.ofHold(fahrenheit(row.number("a")), minutes(1));
    double f = ThermalDeath.equivalent(minute, fahrenheit(130), fahrenheitDegrees(10)).in(MINUTE);
    assertThat(Math.ceil(111.4 / f)).isEqualTo(row.number("value"));
  }

  static Stream<Row> otherBeef() {
    return Checks.rows("beef-lethality.csv");
  }

  @ParameterizedTest
  @MethodSource("otherBeef")
  void theOtherColumnsOfThatTableAreTheSameLethalityUpToItsRounding(Row row) {
    TemperatureHistory minute =
        TemperatureHistory.ofHold(fahrenheit(row.number("fahrenheit")), minutes(1));
    double f = ThermalDeath.equivalent(minute, fahrenheit(130), fahrenheitDegrees(10)).in(MINUTE);
    double minutes = 111.4 * row.number("log10") / 6.5 / f;
    double here = row.text("unit").equals("s") ? 60 * minutes : minutes;
    // the column of 7 log was not worked from the one of 6.5: it is up to 6 % off
    assertThat(here).isCloseTo(row.number("value"), within(1 + 0.05 * row.number("value")));
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
          TemperatureHistory.ofHold(fahrenheit(row.number("a")), seconds(row.number("value")));
      double f = ThermalDeath.equivalent(held, fahrenheit(145), fahrenheitDegrees(10)).in(MINUTE);
      first = first == 0 ? f : first;
      assertThat(f).isCloseTo(first, Percentage.withPercentage(7));
    }
    assertThat(rows).hasSize(3);
  }

  @ParameterizedTest
  @MethodSource("refits")
  void zFittedToThePrintedDIsTheOneWorkedIndependentlyAndNearThePrintedOne(Row row) {
    ThermalDeath death = ThermalDeath.named(row.text("a"));
    double fitted = death.fit().z().celsiusDegrees();
    assertThat(fitted).isCloseTo(row.number("value"), within(0.0006));
    // printed and fitted z are close, so the line of the table was copied right
    assertThat(death.z().celsiusDegrees()).isCloseTo(fitted, Percentage.withPercentage(2));
  }

  @Test
  void theUncertaintyOfZIsThatOfTheSlope() {
    // log D = 3, 2, 1.3 at 50, 60, 70 °C: slope −0.085, residuals +0.05, −0.1, +0.05
    ThermalDeath death =
        ThermalDeath.of(
            "test organism",
            "worked by hand",
            Tested.of(celsius(70), minutes(Math.pow(10, 1.3))),
            Tested.of(celsius(50), minutes(1000)),
            Tested.of(celsius(60), minutes(100)));
    assertThat(death.fit().z().celsiusDegrees()).isCloseTo(1 / 0.085, within(1e-9));
    double slope = Math.sqrt(0.015 / 1 / 200);
    assertThat(death.fit().uncertainty().celsiusDegrees())
        .isCloseTo(slope / 0.085 / 0.085, within(1e-9));
    assertThat(death.fit()).hasToString("z 11.76 K ± 1.2 K from 3 pairs");
    assertThat(death.z()).isEqualTo(death.fit().z());
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
                    TemperatureHistory.ofRamp(celsius(55), celsius(75), minutes(4)),
                    celsius(65),
                    celsiusDegrees(6.58))
                .in(MINUTE))
        .isCloseTo(figure("F of a ramp from 55 to 75 in 4 min, 65, z 6.58"), within(5e-5));
    TemperatureHistory steps =
        TemperatureHistory.ofRamp(celsius(30), celsius(52), minutes(3))
            .thenRamp(celsius(62), minutes(3))
            .thenRamp(celsius(71), minutes(2))
            .thenRamp(celsius(78), minutes(2));
    assertThat(ThermalDeath.equivalent(steps, celsius(70), celsiusDegrees(6.58)).in(MINUTE))
        .isCloseTo(figure("F of 0 3 6 8 10 min at 30 52 62 71 78, 70, z 6.58"), within(5e-6));
  }

  @ParameterizedTest
  @MethodSource("cases")
  void everyRowOfTheSourceIsMetAndTheHottestOneHoldsForWhatIsHotter(ThermalDeath death) {
    List<Row> rows = rowsOf(death.name());
    assertThat(rows).hasSizeGreaterThan(2);
    for (Row row : rows) {
      double d = row.number("d_minutes");
      assertThat(death.decimalAt(celsius(row.number("celsius"))).in(MINUTE)).isEqualTo(d);
      assertThat(
              death.logReductions(
                  TemperatureHistory.ofHold(celsius(row.number("celsius")), minutes(5 * d))))
          .isCloseTo(5, within(1e-12));
      assertThat(row.number("z_kelvin")).isEqualTo(death.z().celsiusDegrees());
    }
    Row hottest = rows.get(rows.size() - 1);
    assertThat(death.decimalAt(celsius(99)).in(MINUTE)).isEqualTo(hottest.number("d_minutes"));
    assertThatThrownBy(() -> death.decimalAt(celsius(rows.get(0).number("celsius") - 0.1)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("nothing was tested so cool");
  }

  static Stream<ThermalDeath> cases() {
    return ThermalDeath.all().stream();
  }

  @Test
  void fiveMeasuredReductionsAreNotPromisedAsMore() {
    // the D in the middle with the printed z promised 5.9 here
    assertThat(BUNS.logReductions(TemperatureHistory.ofHold(celsius(61), minutes(5 * 3.14))))
        .isCloseTo(5, within(1e-12));
  }

  /** Log D from the rows of the source, on straight lines; the test's own reading of the table. */
  private static double rate(List<Row> rows, double celsius) {
    if (celsius < rows.get(0).number("celsius")) {
      return 0;
    }
    for (int i = 1; i < rows.size(); i++) {
      double a = rows.get(i - 1).number("celsius");
      double b = rows.get(i).number("celsius");
      if (celsius <= b) {
        double part = (celsius - a) / (b - a);
        return Math.pow(rows.get(i - 1).number("d_minutes"), part - 1)
            * Math.pow(rows.get(i).number("d_minutes"), -part);
      }
    }
    return 1 / rows.get(rows.size() - 1).number("d_minutes");
  }

  @Property(tries = 200)
  void theKillIsNeverAboveWhatStraightLinesOfLogDThroughTheSourceGive(
      @ForAll @IntRange(min = 0, max = 8) int which,
      @ForAll @DoubleRange(min = 20, max = 99) double a,
      @ForAll @DoubleRange(min = 20, max = 99) double b,
      @ForAll @DoubleRange(min = 0.1, max = 60) double minutes) {
    ThermalDeath death = ThermalDeath.all().get(which);
    List<Row> rows = rowsOf(death.name());
    double sum = 0;
    int steps = 4000;
    for (int i = 0; i < steps; i++) {
      sum += rate(rows, a + (b - a) * (i + 0.5) / steps) * minutes / steps;
    }
    // a step of the sum is off where the range begins, by one step at most
    double edge = rate(rows, rows.get(0).number("celsius")) * minutes / steps;
    TemperatureHistory history =
        TemperatureHistory.ofRamp(celsius(a), celsius(b), minutes(minutes));
    assertThat(death.logReductions(history)).isCloseTo(sum, within(1e-6 * sum + edge + 1e-12));
    double top = Math.max(a, b);
    assertThat(death.logReductions(history))
        .isLessThanOrEqualTo(minutes * rate(rows, top) * (1 + 1e-12));
  }

  @Property
  void reductionsAddUpAndMoreHeatNeverKillsLess(
      @ForAll @DoubleRange(min = 20, max = 99) double a,
      @ForAll @DoubleRange(min = 20, max = 99) double b,
      @ForAll @DoubleRange(min = 0.1, max = 10) double warmer) {
    TemperatureHistory one = TemperatureHistory.ofRamp(celsius(a), celsius(b), minutes(5));
    TemperatureHistory two = TemperatureHistory.ofRamp(celsius(b), celsius(a), minutes(3));
    assertThat(BUNS.logReductions(one.then(two)))
        .isCloseTo(BUNS.logReductions(one) + BUNS.logReductions(two), within(1e-9));
    TemperatureHistory hotter =
        TemperatureHistory.ofRamp(celsius(a + warmer), celsius(b + warmer), minutes(5));
    assertThat(BUNS.logReductions(hotter)).isGreaterThanOrEqualTo(BUNS.logReductions(one) - 1e-12);
  }

  @Test
  void onlyWhatWasTestedCounts() {
    assertThat(BUNS.logReductions(TemperatureHistory.ofHold(celsius(54.9), hours(10)))).isZero();
    double at61 = BUNS.logReductions(TemperatureHistory.ofHold(celsius(61), minutes(10)));
    assertThat(BUNS.logReductions(TemperatureHistory.ofHold(celsius(95), minutes(10))))
        .isCloseTo(at61, within(1e-12));
    // half of the ramp lies above the range, a tenth within it, the rest below
    double ramp =
        BUNS.logReductions(TemperatureHistory.ofRamp(celsius(31), celsius(91), minutes(10)));
    double low = 0.5 * (1 / 7.61 - 1 / 28.64) / Math.log(28.64 / 7.61);
    double high = 0.5 * (1 / 3.14 - 1 / 7.61) / Math.log(7.61 / 3.14);
    assertThat(ramp).isCloseTo(at61 / 2 + low + high, within(1e-9));
  }

  @Test
  void theWordsThatMustBeSaidAreSaid() {
    String advice =
        BUNS.advice(TemperatureHistory.ofRamp(celsius(30), celsius(98), minutes(12))).toString();
    assertThat(advice)
        .contains("A calculation is no validation: validate with a process authority")
        .contains("61 °C (142 °F) counted as that, since nothing hotter was tested");
    assertThat(BUNS)
        .hasToString(
            "salmonella in bun dough: D 28.64 min at 55 °C (131 °F), 7.61 min at 58 °C (136 °F),"
                + " 3.14 min at 61 °C (142 °F); z 6.58 K");
    assertThat(BUNS.tested().low().in(CELSIUS)).isEqualTo(55);
    assertThat(BUNS.decimal()).isEqualTo(minutes(7.61));
    assertThat(ThermalDeath.all()).hasSize(9);
    assertThatThrownBy(() -> ThermalDeath.named("mould in jam"))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("salmonella in bun dough");
  }

  @Test
  void anOrganismOfOnesOwnIsOneCall() {
    ThermalDeath pairs =
        ThermalDeath.of(
            "own organism",
            "own laboratory",
            Tested.of(celsius(55), minutes(10)),
            Tested.of(celsius(60), minutes(1)));
    assertThat(pairs.z().celsiusDegrees()).isCloseTo(5, within(1e-12));
    assertThat(pairs.decimalAt(celsius(57.5)).in(MINUTE)).isCloseTo(Math.sqrt(10), within(1e-12));
    assertThatThrownBy(pairs::fit).hasMessageContaining("third temperature");
    ThermalDeath line =
        ThermalDeath.of(
            "own organism",
            "own laboratory",
            celsius(58),
            minutes(8),
            celsiusDegrees(6),
            new AmountRange<>(celsius(55), celsius(64)));
    assertThat(line.decimalAt(celsius(58))).isEqualTo(minutes(8));
    assertThat(line.decimalAt(celsius(64)).in(MINUTE)).isCloseTo(0.8, within(1e-12));
    assertThat(line.decimalAt(celsius(90)).in(MINUTE)).isCloseTo(0.8, within(1e-12));
    assertThat(line.logReductions(TemperatureHistory.ofHold(celsius(61), minutes(8))))
        .isCloseTo(Math.sqrt(10), within(1e-9));
    ThermalDeath end =
        ThermalDeath.of(
            "own organism",
            "own laboratory",
            celsius(55),
            minutes(8),
            celsiusDegrees(6),
            new AmountRange<>(celsius(55), celsius(64)));
    assertThat(end.table()).hasSize(2);
  }

  @Test
  void whatKillsNothingIsRefused() {
    Tested cool = Tested.of(celsius(55), minutes(10));
    assertThatThrownBy(() -> Tested.of(celsius(60), minutes(0))).hasMessageContaining("0 min");
    assertThatThrownBy(() -> ThermalDeath.of("x", "test", cool))
        .hasMessageContaining("two tested temperatures");
    assertThatThrownBy(
            () -> ThermalDeath.of("x", "test", cool, Tested.of(celsius(60), minutes(11))))
        .hasMessageContaining("D must fall");
    assertThatThrownBy(() -> ThermalDeath.of("x", "test", cool, cool))
        .hasMessageContaining("D must fall");
    AmountRange<Temperature> range = new AmountRange<>(celsius(55), celsius(60));
    assertThatThrownBy(
            () -> ThermalDeath.of("x", "test", celsius(65), minutes(1), celsiusDegrees(6), range))
        .hasMessageContaining("range tested");
    assertThatThrownBy(
            () -> ThermalDeath.of("x", "test", celsius(57), minutes(1), celsiusDegrees(0), range))
        .hasMessageContaining("above 0 K");
    assertThatThrownBy(
            () ->
                ThermalDeath.equivalent(
                    TemperatureHistory.ofHold(celsius(60), minutes(1)),
                    celsius(60),
                    celsiusDegrees(0)))
        .hasMessageContaining("above 0 K");
  }
}
