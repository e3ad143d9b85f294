package org.tourage.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.tourage.quantity.Amounts.*;

import java.util.Locale;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.tourage.advice.BakeryException;

class AmountFormatTest {
  private final AmountFormat metric = AmountFormat.metric();
  private final AmountFormat us = AmountFormat.usCustomary();

  @ParameterizedTest
  @CsvSource({
    "0.234, 0.23 g, 0.008 oz",
    "0.996, 1 g, 0.035 oz",
    "7.26, 7.3 g, 0.256 oz",
    "85.4, 85 g, 3.01 oz",
    "740, 740 g, 26.1 oz",
    "1240, 1240 g, 2.73 lb",
    "12345, 12.35 kg, 27.22 lb",
    "0, 0 g, 0 oz",
    "-85.4, -85 g, -3.01 oz"
  })
  void massesHaveSensibleDigitsBySize(double grams, String inMetric, String inUs) {
    assertThat(metric.mass(grams(grams))).isEqualTo(inMetric);
    assertThat(us.mass(grams(grams))).isEqualTo(inUs);
    assertThat(AmountFormat.sideBySide().mass(grams(grams)))
        .isEqualTo(inMetric + " (" + inUs + ")");
  }

  @Test
  void aBalanceSetsTheDecimals() {
    assertThat(metric.withBalance(grams(0.1)).mass(grams(7.26))).isEqualTo("7.3 g");
    assertThat(metric.withBalance(grams(0.5)).mass(grams(7))).isEqualTo("7.0 g");
    assertThat(metric.withBalance(grams(1)).mass(grams(12345))).isEqualTo("12345 g");
    assertThat(metric.withBalance(grams(5)).mass(grams(45))).isEqualTo("45 g");
    assertThat(metric.withBalance(grams(0.01)).mass(grams(0))).isEqualTo("0.00 g");
    assertThatThrownBy(() -> metric.withBalance(grams(0))).isInstanceOf(BakeryException.class);
  }

  @Test
  void lengthsRunFromMicrometresToInches() {
    assertThat(metric.length(micrometres(3.456))).isEqualTo("3.46 µm");
    assertThat(metric.length(micrometres(36.43))).isEqualTo("36.4 µm");
    assertThat(metric.length(micrometres(111.7))).isEqualTo("112 µm");
    assertThat(metric.length(millimetres(4))).isEqualTo("4 mm");
    assertThat(metric.length(millimetres(2.257))).isEqualTo("2.26 mm");
    assertThat(metric.length(millimetres(24.3))).isEqualTo("24.3 mm");
    assertThat(metric.length(inches(24))).isEqualTo("610 mm");
    assertThat(us.length(inches(24))).isEqualTo("24 in");
    assertThat(us.length(inches(9.5))).isEqualTo("9 1/2 in");
    assertThat(us.length(millimetres(4))).isEqualTo("0.157 in");
  }

  @Test
  void temperaturesTimesAndPercentages() {
    assertThat(metric.temperature(celsius(23.96))).isEqualTo("24 °C");
    assertThat(metric.temperature(fahrenheit(72))).isEqualTo("22.2 °C");
    assertThat(metric.temperature(fahrenheit(400))).isEqualTo("204 °C");
    assertThat(us.temperature(celsius(24))).isEqualTo("75 °F");
    assertThat(metric.time(minutes(90))).isEqualTo("1 h 30 min");
    assertThat(metric.time(minutes(120))).isEqualTo("2 h");
    assertThat(metric.time(minutes(45))).isEqualTo("45 min");
    assertThat(metric.time(seconds(90))).isEqualTo("90 s");
    assertThat(metric.time(minutes(-75))).isEqualTo("-1 h 15 min");
    assertThat(metric.percent(percent(62.04))).isEqualTo("62 %");
    assertThat(metric.percent(percent(2.049))).isEqualTo("2.05 %");
    assertThat(metric.percent(fraction(0.335))).isEqualTo("33.5 %");
  }

  @Test
  void aLocaleIsUsedOnlyWhereItIsPassed() {
    AmountFormat german = metric.withLocale(Locale.GERMANY);
    assertThat(german.mass(grams(7.26))).isEqualTo("7,3 g");
    assertThat(german.withBalance(grams(0.1)).mass(grams(1234.5))).isEqualTo("1234,5 g");
    assertThat(metric.mass(grams(7.26))).isEqualTo("7.3 g");
  }

  @Test
  void volumesPreferTrueKitchenMeasures() {
    assertThat(metric.volume(cups(1))).isEqualTo("237 mL");
    assertThat(metric.volume(teaspoons(1))).isEqualTo("4.9 mL");
    assertThat(metric.volume(litres(12))).isEqualTo("12 L");
    assertThat(us.volume(millilitres(237))).isEqualTo("1 cup");
    assertThat(us.volume(millilitres(3.08))).isEqualTo("5/8 tsp");
    assertThat(us.volume(millilitres(0.1))).isEqualTo("0.00338 fl oz");
  }

  @ParameterizedTest
  @CsvSource({
    "236.588, 1 cup", "59.147, 1/4 cup", "44.36, 3 tbsp", "14.787, 1 tbsp", "2.464, 1/2 tsp",
    "354.88, 1 1/2 cups", "315.45, 1 1/3 cups", "266.16, 1 1/8 cups", "251.4, 1 cup + 1 tbsp",
        "19.7, 1 tbsp + 1 tsp"
  })
  void kitchenFractionsAreTheNearestOfTheSimplest(double millilitres, String expected) {
    assertThat(KitchenMeasure.usCustomary().describe(millilitres(millilitres))).contains(expected);
  }

  @Test
  void aKitchenMeasureKeepsItsError() {
    KitchenMeasure strict = new KitchenMeasure(CupStandard.METRIC, percent(0.1));
    assertThat(strict.describe(millilitres(250))).contains("1 cup");
    assertThat(strict.describe(millilitres(252))).isEmpty();
    assertThat(strict.describe(millilitres(0))).isEmpty();
    assertThat(
            new KitchenMeasure(CupStandard.US_LABELLING, percent(0.1)).describe(millilitres(240)))
        .contains("1 cup");
    assertThatThrownBy(() -> new KitchenMeasure(CupStandard.IMPERIAL, percent(1)))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> new KitchenMeasure(CupStandard.METRIC, percent(-1)))
        .isInstanceOf(BakeryException.class);
  }

  @Property
  void aKitchenMeasureThatIsPrintedIsTrueWithinTheStatedError(
      @ForAll @DoubleRange(min = 0.3, max = 5000) double millilitres) {
    Optional<String> text = KitchenMeasure.usCustomary().describe(millilitres(millilitres));
    text.ifPresent(
        t ->
            assertThat(volume(t).isCloseTo(millilitres(millilitres), 0.0201))
                .as("%s for %s mL", t, millilitres)
                .isTrue());
    // cups come in eighths and tablespoons between them: from a cup up there is always one near
    // enough
    if (millilitres > 1000) {
      assertThat(text).isPresent();
    }
  }

  @Property
  void printedMassesAreTrueToTheLastDigitPrinted(
      @ForAll @DoubleRange(min = 0.01, max = 1e5) double grams) {
    double allowed =
        grams < 1 ? 0.0050001 : grams < 10 ? 0.050001 : grams < 10_000 ? 0.50001 : 5.0001;
    assertThat(mass(metric.mass(grams(grams))).isCloseTo(grams(grams), grams(allowed))).isTrue();
  }
}
