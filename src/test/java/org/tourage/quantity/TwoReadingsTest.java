package org.tourage.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.tourage.quantity.Amounts.*;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Numbers;

/** Texts with two readings, texts out of all bounds, texts that are not what was asked for. */
class TwoReadingsTest {
  private static void refused(String text, String words) {
    assertThatThrownBy(() -> HouseholdAmount.parse(text))
        .as(text)
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining(words);
  }

  @Test
  void aCountWhereAMassIsWantedIsRefusedInOneSentence() {
    assertThatThrownBy(() -> mass("2 sticks"))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("sticks are counted")
        .hasMessageContaining("a mass is wanted")
        .hasMessageContaining("500 g");
    assertThatThrownBy(() -> time("2 packets")).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> extent("2 sticks x 9 in")).isInstanceOf(BakeryException.class);
  }

  @ParameterizedTest
  @ValueSource(strings = {"2 lb.25 oz", "1 h.5 min", "1 lb.5 oz", "2 fl. oz.5 tsp", "1 h.30 min"})
  void aPointBetweenAUnitAndANumberIsRefused(String text) {
    refused(text, "the end of an abbreviation or a decimal point?");
  }

  @Test
  void anAbbreviationMayEndInAPointBeforeASpace() {
    assertThat(HouseholdAmount.parse("2 lb. 3 oz.").low()).hasToString("35");
    assertThat(HouseholdAmount.parse("2 lb .5 oz").low()).hasToString("32 1/2");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "1.500 g", "1.500 kg", "12.500 g", "125.000 g", "1.000 mL", "1.250 cups", "2.000",
        "1.500 °C", "1.375 g", "999.999 mg", "1.234 mL", "2.375 mm", "1.234", "1.125 packets"
      })
  void aPointThatCouldStandForThousandsIsRefusedAsACommaIs(String text) {
    refused(text, "thousands");
  }

  @ParameterizedTest
  @CsvSource({
    "0.125 g, 1/8",
    "0.500 g, 1/2",
    ".375 g, 3/8",
    "2.375 in, 2 3/8",
    "1.125 kg, 1 1/8",
    "1.375 cups, 1 3/8",
    "1.5 g, 1 1/2",
    "1.50 g, 1 1/2",
    "1.2500 g, 1 1/4",
    "1500.000 g, 1500",
    "1.125 %, 1 1/8",
    "1.125 h, 1 1/8",
    "0.250, 1/4"
  })
  void anHonestDecimalIsRead(String text, String number) {
    assertThat(HouseholdAmount.parse(text).low()).hasToString(number);
  }

  @ParameterizedTest
  @CsvSource({
    "999999999999 days, 100 years",
    "36526 days, 100 years",
    "999999999 kg, 1000000 kg",
    "99999999999 mL, 1000000 L",
    "99999999 metres, 10 km",
    "1000001, 1000000",
    "99999999 packets, 1000000",
    "0-99999999 packets, 1000000",
    "99999 °C, 3000 °C",
    "9999999 %, 1000000 %",
    "-300 °C, -273.15 °C"
  })
  void moreThanAnyBakeryHasIsRefusedWithTheLimit(String text, String limit) {
    assertThatThrownBy(() -> HouseholdAmount.parse(text))
        .as(text)
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining(limit)
        .extracting(e -> ((BakeryException) e).reason())
        .isEqualTo(Reason.OUT_OF_RANGE);
  }

  @ParameterizedTest
  @ValueSource(strings = {"350F", "350 F", "350f", "350 f", "350°F", "350 °f", "350ºF", "350˚F"})
  void aReadingInFahrenheitIsReadInEveryHand(String text) {
    assertThat(temperature(text)).isEqualTo(fahrenheit(350));
    assertThat(HouseholdAmount.parseFront(text + " 20 min", Kind.TEMPERATURE).rest())
        .isEqualTo("20 min");
  }

  @ParameterizedTest
  @ValueSource(strings = {"180C", "180 C", "180c", "180°C", "180 ℃", "180 degrees C", "180 deg C"})
  void aReadingInCelsiusIsReadInEveryHand(String text) {
    assertThat(temperature(text)).isEqualTo(celsius(180));
    assertThat(HouseholdAmount.parseFront(text + ", 20 min", Kind.TEMPERATURE).rest())
        .isEqualTo(", 20 min");
  }

  @Test
  void aRangeOfReadingsMayNameTheUnitOnce() {
    HouseholdAmount range = HouseholdAmount.parse("350-375F", Kind.TEMPERATURE);
    assertThat(range).hasToString("350 to 375 °F");
  }

  @ParameterizedTest
  @ValueSource(strings = {"2 Mg", "2 MG", "2Mg", "2 mG"})
  void aMegagramIsNeverAMilligram(String text) {
    refused(text, "milligrams");
    assertThat(HouseholdAmount.parse("2 mg").unit()).contains(BakeryUnits.MILLIGRAM);
  }

  @Test
  void definedReadingsOfMixedNumbers() {
    refused("1-1/2 cups", "a mixed number or a range?");
    refused("1.5 1/2 cups", "a decimal and another number together");
    refused("1.5½ cups", "a decimal and another number together");
    refused("1 500 g", "two numbers in a row");
    refused("1\u202f500 g", "two numbers in a row");
    refused("1\u00a0500 g", "two numbers in a row");
  }

  @ParameterizedTest
  @ValueSource(strings = {"\u202f", "\u00a0", "\u2009", "\u3000", "\t"})
  void everyKindOfSpaceIsASpace(String space) {
    assertThat(HouseholdAmount.parse("1" + space + "h" + space + "30" + space + "min").low())
        .hasToString("90");
    assertThat(HouseholdAmount.parse("1" + space + "-" + space + "2" + space + "fl" + space + "oz"))
        .hasToString("1 to 2 fl oz");
    assertThat(HouseholdAmount.parse(space + "1" + space + "1/2 cups" + space).low())
        .hasToString("1 1/2");
    assertThat(
            HouseholdAmount.parseFront("1 cup" + space + "water" + space, CupStandard.US_CUSTOMARY)
                .rest())
        .isEqualTo("water");
  }

  @Test
  void controlCharactersNeverReachTheMessage() {
    assertThatThrownBy(() -> HouseholdAmount.parse("500 \u001b[31mg\u0007"))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("\\u001b")
        .hasMessageContaining("\\u0007")
        .satisfies(e -> assertThat(e.getMessage()).doesNotContain("\u001b", "\u0007"));
  }

  @Test
  void aCountIsAWholeNumberWithinItsLimit() {
    assertThat(HouseholdAmount.parseCount("24", 1000)).isEqualTo(24);
    assertThat(HouseholdAmount.parseCount(" 24 pieces ", 1000)).isEqualTo(24);
    for (String wrong :
        new String[] {"-5", "0", "1.5", "1 1/2", "1-2", "999999999999", "1001", "2 kg", "", "x"}) {
      assertThatThrownBy(() -> HouseholdAmount.parseCount(wrong, 1000))
          .as(wrong)
          .isInstanceOf(BakeryException.class);
    }
    assertThatThrownBy(() -> HouseholdAmount.parseCount("1001", 1000))
        .hasMessageContaining("1001")
        .hasMessageContaining("from 1 to 1000");
  }

  @ParameterizedTest
  @ValueSource(strings = {"1e99999999", "1e-99999999", "x", "", "1e2147483648", "NaN"})
  void aDecimalBeyondAllBoundsIsRefused(String text) {
    assertThatThrownBy(() -> Fraction.ofDecimal(text))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("\"" + text + "\"");
    assertThat(Fraction.ofDecimal("1.5e3")).isEqualTo(Fraction.of(1500));
    assertThat(Fraction.ofDecimal("1e-9")).isEqualTo(Fraction.of(1, 1_000_000_000));
  }

  @Test
  void anAmountBeyondAllBoundsIsRefusedWhenItIsMade() {
    assertThatThrownBy(() -> kilograms(1e308)).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> grams(1e300)).isInstanceOf(BakeryException.class);
    assertThatCode(() -> grams(1e-300).hashCode()).doesNotThrowAnyException();
    assertThatCode(() -> grams(Double.MIN_VALUE).equals(grams(0))).doesNotThrowAnyException();
    assertThatCode(() -> grams(1e200).toString()).doesNotThrowAnyException();
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void aNumberThatIsNoneIsNeverPrinted(double value) {
    assertThatThrownBy(() -> Numbers.significant(value, 6))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Numbers.decimals(value, 2))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Numbers.fixed(value, 2)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Numbers.cleanProduct(3, value))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void digitsBelowOneAreRefused() {
    assertThatThrownBy(() -> Numbers.significant(1, 0))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Numbers.significant(1, -1))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Numbers.decimals(1, -1)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void roundingToABalanceStaysInBounds() {
    assertThatThrownBy(() -> BalanceRounding.of(java.util.List.of(grams(1e30)), grams(1)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("steps");
    java.util.List<Amount<javax.measure.quantity.Mass>> many = new java.util.ArrayList<>();
    for (int i = 0; i < 100_000; i++) {
      many.add(grams(i % 2 == 0 ? 0.1 : 1.9));
    }
    org.junit.jupiter.api.Assertions.assertTimeout(
        java.time.Duration.ofSeconds(5),
        () -> assertThat(BalanceRounding.of(many, grams(1)).total()).isEqualTo(grams(100_000)));
  }
}
