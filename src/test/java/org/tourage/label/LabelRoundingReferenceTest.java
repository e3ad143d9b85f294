package org.tourage.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.tourage.quantity.Amounts.*;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tourage.advice.BakeryException;
import org.tourage.internal.Csv;
import org.tourage.quantity.BakeryUnits;
import org.tourage.reference.Checks;
import org.tourage.reference.Checks.Row;

class LabelRoundingReferenceTest {
  static Stream<Row> limits() {
    return Checks.rows("label-rounding-limits.csv");
  }

  @ParameterizedTest
  @MethodSource("limits")
  void aFigureAtAndBesideALimitIsPrintedAsTheRuleSays(Row row) {
    LabelScheme scheme = LabelScheme.valueOf(row.text("scheme"));
    double value = row.number("value");
    String printed =
        row.text("nutrient").equals("ENERGY")
            ? LabelRounding.one(scheme, row.text("unit"), value)
            : LabelRounding.write(
                scheme,
                Nutrient.valueOf(row.text("nutrient")),
                switch (row.text("unit")) {
                  case "mg" -> milligrams(value);
                  case "µg" -> milligrams(value / 1000);
                  default -> grams(value);
                });
    assertThat(printed).isEqualTo(row.text("printed"));
  }

  @Test
  void everyRowOfTheRulesHasItsLimitsChecked() throws Exception {
    Set<String> checked = new HashSet<>();
    limits().forEach(r -> checked.add(r.text("scheme") + r.text("nutrient") + r.text("unit")));
    for (Map<String, String> rule :
        Csv.read(Files.newInputStream(Path.of("reference-data/catalogue/label-rounding.csv")))) {
      String key =
          Csv.field(rule, "scheme") + Csv.field(rule, "nutrient") + Csv.field(rule, "unit");
      assertThat(checked).contains(key);
      if (!Csv.field(rule, "up_to").isEmpty()) {
        double limit = Double.parseDouble(Csv.field(rule, "up_to"));
        List<Double> values =
            limits()
                .filter(r -> key.equals(r.text("scheme") + r.text("nutrient") + r.text("unit")))
                .mapToDouble(r -> r.number("value"))
                .filter(v -> Math.abs(v - limit) <= 0.11 * limit)
                .boxed()
                .toList();
        assertThat(values).as(key + " " + limit).anyMatch(v -> v == limit);
        assertThat(values).as(key + " " + limit).anyMatch(v -> v < limit);
        assertThat(values).as(key + " " + limit).anyMatch(v -> v > limit);
      }
    }
  }

  @Test
  void theTwoEnergiesOfEuropeStandSideBySideAndAmericaPrintsCalories() {
    assertThat(LabelRounding.write(LabelScheme.EU, kilojoules(1046)))
        .isEqualTo("1046 kJ / 250 kcal");
    assertThat(LabelRounding.write(LabelScheme.US, kilocalories(253))).isEqualTo("250 kcal");
  }

  @Test
  void sharesAreOfTheDailyValueAndOfTheReferenceIntake() {
    assertThat(LabelRounding.share(LabelScheme.US, Nutrient.FAT, grams(39))).contains(percent(50));
    assertThat(LabelRounding.share(LabelScheme.US, Nutrient.SODIUM, milligrams(230)))
        .contains(percent(10));
    assertThat(LabelRounding.share(LabelScheme.EU, Nutrient.SALT, grams(1.5)))
        .contains(percent(25));
    assertThat(LabelRounding.share(LabelScheme.EU, Nutrient.FIBRE, grams(5))).isEmpty();
    assertThat(LabelRounding.share(LabelScheme.US, Nutrient.TRANS_FAT, grams(5))).isEmpty();
    assertThat(LabelRounding.shareOfIntake(kilojoules(2100)).in(BakeryUnits.PERCENT)).isEqualTo(25);
  }

  @Test
  void whatHasNoRuleOrCanNotBeIsRefused() {
    assertThatThrownBy(() -> LabelRounding.write(LabelScheme.US, Nutrient.SALT, grams(1)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("no rule of rounding for salt");
    assertThatThrownBy(() -> LabelRounding.write(LabelScheme.EU, Nutrient.FAT, grams(-1)))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> LabelRounding.write(LabelScheme.EU, kilojoules(-1)))
        .isInstanceOf(BakeryException.class);
  }
}
