package org.tourage.day;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tourage.advice.Advice;
import org.tourage.advice.Severity;
import org.tourage.command.Main;
import org.tourage.reference.Checks;
import org.tourage.reference.Checks.Row;

/** The example recipes against the windows that the trade would call right. */
class StylesTest {
  private static final String TABLE = "styles.csv";
  private static final String WAITING = "waiting for crumb: ";
  private static final int STYLES = 18;
  private static final double ROUNDING = 1e-6;

  /** Figures that a better physics of the crumb may still move; no others may wait. */
  private static final Set<String> MAY_WAIT =
      Set.of("core", "loss", "core of 93 °C", "core below boiling");

  /** Notes that would tell a baker that the classical form of the style is a mistake. */
  private static final Set<String> SCOLDING =
      Set.of(
          "BALANCE_TOO_COARSE",
          "CRUST_HOT",
          "FAT_LAYER_THIN",
          "FAT_LAYER_FINE",
          "FAT_LAYERS_MANY",
          "HOT_OVEN",
          "HYDRATION_UNUSUAL",
          "LOSS_UNUSUAL",
          "NO_LEAVENING",
          "OVEN_HOT",
          "ROLL_IN_LEAN",
          "ROLL_IN_UNUSUAL",
          "SALT_HIGH",
          "SALT_LOW",
          "SLENDERNESS_MISSED",
          "YEAST_HIGH",
          "YEAST_LOW");

  static Stream<Row> windows() {
    return Checks.rows(TABLE).filter(r -> !waits(r));
  }

  static Stream<Row> waitingWindows() {
    return Checks.rows(TABLE).filter(StylesTest::waits);
  }

  static List<String> recipes() {
    return Examples.names();
  }

  private static boolean waits(Row row) {
    return !row.text("waiting").isEmpty();
  }

  private static boolean inside(Row row, double value) {
    return value >= row.number("low") - ROUNDING && value <= row.number("high") + ROUNDING;
  }

  private static String said(Row row, double value) {
    return String.format(
        Locale.ROOT,
        "%s (%s): %s is %.4g %s, not %s to %s %s (%s)",
        row.text("style"),
        row.text("recipe"),
        row.text("figure"),
        value,
        row.text("unit"),
        row.text("low"),
        row.text("high"),
        row.text("unit"),
        row.text("source"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("windows")
  void everyFigureOfAnExampleFallsIntoTheWindowOfItsStyle(Row row) {
    double value = StyleFigure.of(Examples.day(row.text("recipe")), row.text("figure"));

    assertThat(inside(row, value)).as(said(row, value)).isTrue();
  }

  @Test
  void onlyFiguresOfTheBakeWaitForTheCrumbAndTheRowSaysWhy() {
    assertThat(waitingWindows())
        .allSatisfy(
            row -> {
              assertThat(row.text("waiting")).startsWith(WAITING);
              assertThat(row.text("figure")).isIn(MAY_WAIT);
            });
  }

  @Test
  void aFigureThatWaitsForTheCrumbIsStillMissed() {
    List<String> there =
        waitingWindows()
            .filter(
                row ->
                    inside(
                        row, StyleFigure.of(Examples.day(row.text("recipe")), row.text("figure"))))
            .map(row -> row.text("recipe") + ": " + row.text("figure"))
            .toList();

    assertThat(there).as("inside its window now: take the mark out of " + TABLE).isEmpty();
  }

  @Test
  void theTableKnowsEveryExampleAndAtLeastEighteenStyles() {
    Map<String, Long> byRecipe =
        Checks.rows(TABLE)
            .map(r -> r.text("recipe"))
            .collect(Collectors.groupingBy(Function.identity(), Collectors.counting()));

    assertThat(byRecipe.keySet()).containsExactlyInAnyOrderElementsOf(Examples.names());
    assertThat(Checks.rows(TABLE).map(r -> r.text("style")).distinct().count())
        .isGreaterThanOrEqualTo(STYLES);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("recipes")
  void everyExampleSaysThatItIsInvented(String recipe) {
    assertThat(Examples.text(recipe + ".txt").lines().findFirst().orElseThrow())
        .startsWith("# Invented for the Kestrel Lane Pastry School, which does not exist");
    assertThat(Examples.text(Examples.kitchen(recipe)).lines().findFirst().orElseThrow())
        .startsWith("# Invented data");
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("recipes")
  void everyExamplePrintsASheetWithEveryPartWorked(String recipe) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int code =
        Main.run(
            new String[] {
              Examples.FOLDER.resolve(recipe + ".txt").toString(),
              "--kitchen",
              Examples.FOLDER.resolve(Examples.kitchen(recipe)).toString()
            },
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8));

    assertThat(err.toString(StandardCharsets.UTF_8)).isEmpty();
    assertThat(code).isZero();
    assertThat(out.toString(StandardCharsets.UTF_8))
        .contains("1. At a glance")
        .doesNotContain("not worked:")
        .doesNotContain(waits(recipe) ? "NaN" : "not done:")
        .doesNotContain("NaN")
        .doesNotContain("Infinity");
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("recipes")
  void noAdviceScoldsTheClassicalFormOfAStyle(String recipe) {
    List<Advice> advice = Examples.day(recipe).advice();

    // that no rate of gas in the cold is published is no fault of a classical night
    assertThat(advice.stream().filter(a -> a.severity() == Severity.WARNING))
        .filteredOn(a -> !a.code().equals("COLD_UNSURE"))
        .filteredOn(a -> !waits(recipe) || !a.code().equals("NOT_DONE"))
        .isEmpty();
    assertThat(advice)
        .filteredOn(a -> !waits(recipe) || !a.code().equals("LOSS_UNUSUAL"))
        .extracting(Advice::code)
        .doesNotContainAnyElementsOf(SCOLDING);
  }

  /** Whether a bake of this recipe waits for the crumb, so that its core or loss is missed. */
  private static boolean waits(String recipe) {
    return waitingWindows().anyMatch(row -> row.text("recipe").equals(recipe));
  }
}
