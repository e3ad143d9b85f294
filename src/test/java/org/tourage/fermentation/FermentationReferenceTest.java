package org.tourage.fermentation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.CELSIUS;

import java.util.stream.Stream;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tourage.physics.Carroll1991;
import org.tourage.physics.IapwsIf97Saturation;
import org.tourage.reference.Checks;
import org.tourage.reference.Checks.Row;

class FermentationReferenceTest {
  private static final double MOLES_IN_A_KILOGRAM_OF_WATER = 1000 / 18.01528;

  private static Stream<Row> rows(String begin) {
    return Checks.rows("fermentation.csv").filter(r -> r.text("check").startsWith(begin));
  }

  private static double figure(String check) {
    return Checks.row("fermentation.csv", check).number("value");
  }

  private static double celsiusOf(Row row) {
    String check = row.text("check");
    String[] words = check.substring(0, check.indexOf(" degC")).split(" ");
    return Double.parseDouble(words[words.length - 1]);
  }

  static Stream<Row> handbook() {
    return rows("mole fraction of carbon dioxide");
  }

  @ParameterizedTest
  @MethodSource("handbook")
  void carbonDioxideDissolvesInPureWaterWithin2PercentOfTheHandbook(Row row) {
    double celsius = celsiusOf(row);
    double moles = Carroll1991.dissolved(celsius(celsius)) * 100_000;
    double fraction = moles / (moles + MOLES_IN_A_KILOGRAM_OF_WATER);
    assertThat(1000 * fraction).isCloseTo(row.number("value"), Percentage.withPercentage(2));
  }

  @ParameterizedTest
  @MethodSource("handbook")
  void aDoughOfNearlyAllWaterHoldsWhatTheHandbookSays(Row row) {
    double celsius = celsiusOf(row);
    double steam = IapwsIf97Saturation.pressure(celsius(celsius));
    // hardly any air: at a small growth the bubbles hold carbon dioxide alone, at 100 kPa
    DoughGas water =
        new DoughGas(
            0.999999, kilogramsPerCubicMetre(1000), 1e-9, celsius(celsius), 100_000 + steam);
    double all = water.carbonDioxide(1 + 1e-6, celsius(celsius));
    double inBubbles = 100_000 * 1e-3 * 1e-6 / (8.314462618 * (273.15 + celsius));
    double moles = all - inBubbles;
    assertThat(1000 * moles / (moles + MOLES_IN_A_KILOGRAM_OF_WATER))
        .isCloseTo(row.number("value"), Percentage.withPercentage(2));
  }

  static Stream<Row> bunsen() {
    return rows("Bunsen coefficient");
  }

  @ParameterizedTest
  @MethodSource("bunsen")
  void otherMeasurementsOfTheSolubilityLieWithin4PercentAsTheTablesDoAmongThemselves(Row row) {
    // litres of gas at 0 °C and 101 325 Pa in a litre of water; water taken as 1 kg/L
    double moles = Carroll1991.dissolved(celsius(celsiusOf(row))) * 101_325;
    assertThat(moles * 22.414).isCloseTo(row.number("value"), Percentage.withPercentage(4));
  }

  static Stream<Row> sourdough() {
    return Stream.concat(rows("sourdough bacteria at"), rows("sourdough yeast at"));
  }

  @ParameterizedTest
  @MethodSource("sourdough")
  void bacteriaAndYeastOfASourdoughGrowAsThePaperSaysAtEachOfItsTemperatures(Row row) {
    Sourdough dough = Sourdough.at(celsius(celsiusOf(row)), 5.3, percent(0));
    double share = row.text("check").contains("bacteria") ? dough.bacteria() : dough.yeast();
    assertThat(share).isCloseTo(row.number("value"), within(1e-9));
  }

  @Test
  void theBestOfASourdoughIsWhereThePaperSays() {
    double low = figure("sourdough bacteria best low");
    double high = figure("sourdough bacteria best high");
    double best = figure("sourdough yeast best");
    assertThat(RateMarks.named("sourdough bacteria").optimum().in(CELSIUS)).isBetween(low, high);
    RateMarks yeast = RateMarks.named("sourdough yeast");
    for (double celsius = 0; celsius < 50; celsius += 0.25) {
      assertThat(yeast.rate(celsius)).isLessThanOrEqualTo(yeast.rate(best));
    }
  }

  @Test
  void theMarksAgreeWithTheCardinalModelBelowTheBestAndFallSteeperAbove() {
    Rosso1993 cardinal = Rosso1993.named("sourdough lactobacilli, growth");
    RateMarks marks = RateMarks.named("sourdough bacteria");
    for (double celsius = 5; celsius <= 32; celsius++) {
      assertThat(marks.rate(celsius)).isCloseTo(cardinal.rate(celsius), within(0.09));
    }
    assertThat(cardinal.rate(37)).isGreaterThan(marks.rate(37) + 0.25);
  }

  @Test
  void thePhAndTheSaltOfThePaperStopTheBacteria() {
    double least = figure("sourdough bacteria least pH");
    double most = figure("sourdough bacteria highest pH");
    double salt = figure("salt that stops sourdough bacteria");
    assertThat(Sourdough.at(celsius(30), least, percent(0)).bacteria()).isZero();
    assertThat(Sourdough.at(celsius(30), most, percent(0)).bacteria()).isZero();
    assertThat(Sourdough.at(celsius(30), least + 0.1, percent(0)).bacteria()).isPositive();
    assertThat(Sourdough.at(celsius(30), most - 0.1, percent(0)).bacteria()).isPositive();
    assertThat(Sourdough.at(celsius(30), 5.3, percent(salt)).bacteria()).isZero();
    assertThat(Sourdough.at(celsius(30), 5.3, percent(salt - 0.1)).bacteria()).isPositive();
    assertThat(Sourdough.at(celsius(30), 5.3, percent(salt)).yeast()).isPositive();
  }

  @Test
  void yeastAtOneDegreeKeepsATenthOfItsBestRateAsTheTradePaperSaysWithinAFactorOfTwo() {
    double share = figure("rate of yeast at 1 degC");
    ColdTail usual = ColdTail.bakersYeast();
    assertThat(usual.rate(1)).isBetween(share / 2, share * 2);
    // the model of growth alone has none left there
    assertThat(ColdTail.withoutTail(usual).rate(1)).isLessThan(share / 20);
  }

  @Test
  void radiationCrossesTheAirUnderACover() {
    assertThat(Cover.AIR_GAP.resistance())
        .isCloseTo(figure("air gap under a cover"), within(0.005));
  }
}
