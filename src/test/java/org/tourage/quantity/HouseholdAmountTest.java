package org.tourage.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

class HouseholdAmountTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          3 1/2 cups         | 3 1/2   | cup
          3½ cups            | 3 1/2   | cup
          3 ½ cups           | 3 1/2   | cup
          1¼ tsp             | 1 1/4   | tsp
          ⅔ cup              | 2/3     | cup
          1⁄2 cup            | 1/2     | cup
          1 / 2 cup          | 1/2     | cup
          0.5 kg             | 1/2     | kg
          .5 kg              | 1/2     | kg
          500g               | 500     | g
          500 G              | 500     | g
          24 in              | 24      | in
          24"                | 24      | in
          400°F              | 400     | °F
          400 ° F            | 400     | °F
          -18 °C             | -18     | °C
          −18 ℃              | -18     | °C
          20 degrees celsius | 20      | °C
          62 %               | 62      | %
          8 fl. oz.          | 8       | fl oz
          8 fluid ounces     | 8       | fl oz
          8 oz.              | 8       | oz
          2 Tablespoons      | 2       | tbsp
          2 metric cups      | 2       | metric cup
          2 imp pints        | 2       | imp pt
          2 UK pints         | 2       | imp pt
          2 US pints         | 2       | pt
          2 labelling cups   | 2       | labelling cup
          1 h 30 min         | 90      | min
          1h30min            | 90      | min
          1 1/2 hours        | 1 1/2   | h
          2 lb 3 oz          | 35      | oz
          1 cup + 2 tbsp     | 18      | tbsp
          1 cup plus 2 tbsp  | 18      | tbsp
          1 d 2 h 3 min      | 1563    | min
          300 µm             | 300     | µm
          300 μm             | 300     | µm
          12 kJ              | 12      | kJ
          007 g              | 7       | g
          """)
  void readsWhatKitchensWrite(String text, String number, String unit) {
    HouseholdAmount amount = HouseholdAmount.parse(text);
    assertThat(amount.low()).hasToString(number);
    assertThat(amount.unit().orElseThrow().symbol()).isEqualTo(unit);
    assertThat(amount.isRange()).isFalse();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          1-2 hours          | 1       | 2       | h
          1–2 hours          | 1       | 2       | h
          1 to 2 hours       | 1       | 2       | h
          30 min - 1 h       | 1/2     | 1       | h
          1/2-3/4 cup        | 1/2     | 3/4     | cup
          1-1 1/2 cups       | 1       | 1 1/2   | cup
          20-22 °C           | 20      | 22      | °C
          20 °C to 22 °C     | 20      | 22      | °C
          2-3 packets        | 2       | 3       | packet
          """)
  void readsRanges(String text, String low, String high, String unit) {
    HouseholdAmount amount = HouseholdAmount.parse(text);
    assertThat(amount.low()).hasToString(low);
    assertThat(amount.high()).hasToString(high);
    assertThat(amount.isRange()).isTrue();
    assertThat(amount).hasToString(low + " to " + high + " " + unit);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " ",
        "cups",
        "1,5 kg",
        "1,500 g",
        "1.5.2 g",
        "1 000 g",
        "1/0 cup",
        "1/2/3 cup",
        "3 4/2 cups",
        "3.5 1/2 cups",
        "1-1/2 cups",
        "1-3/4 cup",
        "2 T sugar",
        "2 t",
        "2 C",
        "2 c",
        "-3 cups",
        "2-1 hours",
        "1e3 g",
        "½½ cup",
        "½1 cup",
        "12½3 cups",
        "5 m",
        "٣ cups",
        "１ cup",
        "1/ cup",
        "/2 cup",
        "1. cup",
        "1.",
        "30 min 1 h",
        "1 h 1 kg",
        "1 h + 5",
        "1 cup + 2",
        "1:30 h",
        "1 cup/2",
        "1 metric pint",
        "2 imperial tbsp",
        "1234567890123456 g",
        "5 furlongs",
        "350 F",
        "20 °C-70 °F",
        "1 h to 2 kg",
        "5 g, 3",
        "1;2 g",
        "+5 g",
        "-0 g",
        "4-4 oz",
        "1 packet-2 cups",
        "1 packet to 2 sticks",
        "1 packet-2"
      })
  void refusesWhatCouldBeReadInTwoWaysOrNotAtAll(String text) {
    assertThatThrownBy(() -> HouseholdAmount.parse(text))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("\"" + text + "\"")
        .extracting(e -> ((BakeryException) e).reason())
        .isEqualTo(Reason.UNREADABLE_TEXT);
  }

  @Test
  void errorsNameTheTextThePlaceAndWhatWouldBeRight() {
    assertThatThrownBy(() -> HouseholdAmount.parse("3 1/0 cups"))
        .hasMessage(
            "a fraction can't have 0 below the line: \"3 1/0 cups\" at character 5 (\"0 cups\");"
                + " write it like 1/2");
    assertThatThrownBy(() -> mass("500"))
        .hasMessageContaining("a unit is missing")
        .hasMessageContaining("at character 4 (its end)")
        .hasMessageContaining("500 g");
    assertThatThrownBy(() -> mass("2 cups"))
        .hasMessageContaining("a volume where a mass is wanted");
    assertThatThrownBy(() -> HouseholdAmount.parse("x".repeat(201)))
        .hasMessageContaining("201 characters");
  }

  @Test
  void theSameAmountWrittenDifferentlyIsEqual() {
    assertThat(HouseholdAmount.parse("3½ cups"))
        .isEqualTo(HouseholdAmount.parse("3 1/2 cup"))
        .hasSameHashCodeAs(HouseholdAmount.parse("3.5 cups"));
    assertThat(HouseholdAmount.parse("3 cups"))
        .isNotEqualTo(HouseholdAmount.parse("3 tbsp"))
        .isNotEqualTo(HouseholdAmount.parse("3-4 cups"))
        .isNotEqualTo(HouseholdAmount.parse("4 cups"));
    assertThat(HouseholdAmount.parse("3 sticks")).isNotEqualTo(HouseholdAmount.parse("3 packets"));
  }

  @Test
  void factoriesReadTheirOwnKind() {
    assertThat(mass("1 lb 2 oz")).hasToString("18 oz");
    assertThat(volume("1/2 cup")).isEqualTo(cups(0.5));
    assertThat(length("1 m")).isEqualTo(metres(1));
    assertThat(time("90 m")).isEqualTo(hours(1.5));
    assertThat(temperature("24 C")).isEqualTo(celsius(24));
    assertThat(temperature("75 f")).isEqualTo(fahrenheit(75));
    assertThat(percentage("62 %")).isEqualTo(percent(62));
    assertThat(timeRange("1-2 hours")).hasToString("1 h to 2 h");
    assertThat(timeRange("2 h")).hasToString("2 h");
    assertThatThrownBy(() -> time("1-2 hours"))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("range");
  }

  @Test
  void extentsTakeOneUnitOrTwo() {
    assertThat(extent("24 x 9 in")).isEqualTo(Extent.of(inches(24), inches(9)));
    assertThat(extent("24 in x 9 in")).isEqualTo(Extent.of(inches(24), inches(9)));
    assertThat(extent("24\"×9\"")).isEqualTo(Extent.of(inches(24), inches(9)));
    assertThat(extent("60x23cm")).isEqualTo(Extent.of(centimetres(60), centimetres(23)));
    assertThat(extent("1/2 x ½ m")).isEqualTo(Extent.of(metres(0.5), metres(0.5)));
    assertThat(extent("2 ft".replace("ft", "in") + " x 50 cm")).hasToString("2 in x 50 cm");
    for (String wrong :
        new String[] {
          "24 in",
          "24 x 9",
          "24 x 9 x 2 in",
          "24 x 9 g",
          "x 9 in",
          "0 x 9 in",
          "-2 x 9 in",
          "24 in x 9"
        }) {
      assertThatThrownBy(() -> extent(wrong)).as(wrong).isInstanceOf(BakeryException.class);
    }
  }

  @Test
  void countsNeedTheMassOfOne() {
    HouseholdAmount packets = HouseholdAmount.parse("2 packets");
    assertThat(packets.countWord()).contains("packet");
    assertThat(packets.kind()).isEqualTo(Kind.OTHER);
    assertThat(packets.massOf(grams(7))).isEqualTo(grams(14));
    assertThat(packets).hasToString("2 packet");
    assertThat(HouseholdAmount.parse("3").massOf(grams(50))).isEqualTo(grams(150));
    assertThatThrownBy(() -> HouseholdAmount.parse("2 cups").massOf(grams(7)))
        .hasMessageContaining("not a count");
    assertThatThrownBy(() -> HouseholdAmount.parse("2-3 packets").massOf(grams(7)))
        .hasMessageContaining("range");
    assertThatThrownBy(() -> packets.to(BakeryUnits.GRAM)).hasMessageContaining("not a mass");
  }

  @Test
  void theFrontOfARecipeLineLeavesTheName() {
    HouseholdAmount front =
        HouseholdAmount.parseFront("3 1/2 cups bread flour", CupStandard.US_CUSTOMARY);
    assertThat(front.rest()).isEqualTo("bread flour");
    assertThat(front.text()).isEqualTo("3 1/2 cups");
    assertThat(front.to(BakeryUnits.MILLILITRE).value()).isCloseTo(828.05882775, within(1e-9));
    assertThat(HouseholdAmount.parseFront("1 cup 2% milk", CupStandard.US_CUSTOMARY).rest())
        .isEqualTo("2% milk");
    assertThat(HouseholdAmount.parseFront("2 large eggs", CupStandard.US_CUSTOMARY).rest())
        .isEqualTo("large eggs");
    assertThat(HouseholdAmount.parseFront("2 cups cake flour", CupStandard.METRIC).unit())
        .contains(BakeryUnits.METRIC_CUP);
    assertThat(HouseholdAmount.parse("1 cup", CupStandard.US_LABELLING).unit())
        .contains(BakeryUnits.LABELLING_CUP);
    assertThat(
            HouseholdAmount.parse("1 tbsp", CupStandard.US_LABELLING)
                .to(BakeryUnits.MILLILITRE)
                .value())
        .isCloseTo(15, within(1e-9));
    assertThat(
            HouseholdAmount.parse("1 tsp", CupStandard.METRIC).to(BakeryUnits.MILLILITRE).value())
        .isCloseTo(5, within(1e-9));
    assertThat(
            HouseholdAmount.parse("1 pint", CupStandard.IMPERIAL)
                .to(BakeryUnits.MILLILITRE)
                .value())
        .isCloseTo(568.26125, within(1e-9));
    assertThat(HouseholdAmount.parse("1 quart", CupStandard.US_CUSTOMARY).unit())
        .contains(BakeryUnits.QUART);
    assertThat(HouseholdAmount.parse("1 gallon", CupStandard.IMPERIAL).unit())
        .contains(BakeryUnits.IMPERIAL_GALLON);
    assertThat(HouseholdAmount.parse("1 qt", CupStandard.IMPERIAL).unit())
        .contains(BakeryUnits.IMPERIAL_QUART);
    assertThat(HouseholdAmount.parse("1 cup", CupStandard.IMPERIAL).unit())
        .contains(BakeryUnits.IMPERIAL_CUP);
    assertThat(HouseholdAmount.parse("1 fl oz", CupStandard.IMPERIAL).unit())
        .contains(BakeryUnits.IMPERIAL_FLUID_OUNCE);
    assertThat(HouseholdAmount.parse("1 fl oz", CupStandard.US_LABELLING).unit())
        .contains(BakeryUnits.LABELLING_FLUID_OUNCE);
    assertThat(HouseholdAmount.parse("1 gallon", CupStandard.US_CUSTOMARY).unit())
        .contains(BakeryUnits.GALLON);
  }

  @Test
  void theLocaleOfTheMachineNeverMatters() {
    Locale before = Locale.getDefault();
    try {
      for (String tag : new String[] {"de-DE", "tr-TR", "ar-EG", "fr-FR", "hi-IN-u-nu-deva"}) {
        Locale.setDefault(Locale.forLanguageTag(tag));
        assertThat(mass("1234.5 g").value()).isEqualTo(1234.5);
        assertThat(length("24 IN")).isEqualTo(inches(24));
        assertThat(grams(1234.5)).hasToString("1234.5 g");
        assertThat(AmountFormat.sideBySide().mass(grams(12.5))).isEqualTo("13 g (0.441 oz)");
        assertThat(HouseholdAmount.parse("1-2 hours")).hasToString("1 to 2 h");
      }
    } finally {
      Locale.setDefault(before);
    }
  }
}
