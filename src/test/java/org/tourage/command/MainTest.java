package org.tourage.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MainTest {
  record Result(int code, String out, String err) {}

  static Result run(String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int code =
        Main.run(
            args,
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8));
    return new Result(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  @Test
  void theDemoPrintsTheWholeBenchSheet() {
    Result result = run();
    assertThat(result.code()).isZero();
    assertThat(result.err()).isEmpty();
    assertThat(result.out())
        .contains("(invented demo)")
        .contains("1. The recipe as given")
        .contains("2. Flour on hand")
        .contains("3. Formula")
        .contains("16 pieces of 75 g raw")
        .contains("4. Water")
        .contains("water at 19 °C (66 °F)")
        .contains("5. Lamination")
        .contains("12 fat layers, 13 dough layers")
        .contains("rolling 1, to and fro: from ")
        .contains("6. On the bench")
        .contains("can be rolled after ")
        .contains("too soft after ")
        .contains("7. Cutting plan")
        .contains("corners of the first pieces: [(5 mm, 5 mm)")
        .contains("16 triangles")
        .contains("each piece 75 g")
        .contains("8. Oven")
        .contains("step 1: 204 °C (400 °F) for 10 min")
        .contains("9. Timetable")
        .contains("day 2 10:00  done")
        .contains("10. Temperature and rise")
        .contains("11. Safety")
        .contains("plant-based is not a claim of allergen-free")
        .contains("12. Advice");
  }

  @Test
  void piecesComeOutAtTheMassWantedAfterTrimAndLoss() {
    for (String pieces : new String[] {"6", "12", "25"}) {
      String out = run("--pieces", pieces, "--piece-mass=90 g", "--balance", "0.1 g").out();
      Matcher each = Pattern.compile("each piece ([0-9.]+) g").matcher(out);
      assertThat(each.find()).isTrue();
      assertThat(Double.parseDouble(each.group(1))).isCloseTo(90, within(0.5));
      assertThat(out).contains(pieces + " triangles").contains(pieces + " pieces of 90 g raw");
    }
  }

  @Test
  void settingsChangeTheSheet() {
    assertThat(run("--units", "metric").out()).doesNotContain(" oz)");
    assertThat(run("--units", "us").out()).contains(" oz").contains("°F");
    assertThat(run("--cut", "rectangles").out()).contains("16 rectangles");
    assertThat(run("--flour", "740 g").out()).contains("740 g");
    assertThat(run("--bake-loss", "12 %").out()).contains("75 g baked, bake loss 12 %");
    assertThat(run("--lock-in", "outside", "--folds", "zigzag 5, half").out())
        .contains("11 fat layers, 10 dough layers")
        .contains("dough block");
    assertThat(run("--lock-in", "thirds").out()).contains("24 fat layers");
    assertThat(run("--lock-in", "envelope").out()).contains("flaps folded to the centre");
    assertThat(run("--tap", "30 °C", "--room", "90 °F", "--friction", "27 °F").out())
        .contains(" ice and ");
    assertThat(run("--flour-replaced", "bread flour", "--flour-on-hand", "whole-wheat flour").out())
        .contains("whole-wheat flour");
    assertThat(run("--cups", "metric").out()).contains("499 g");
  }

  @Test
  void helpListsEverySetting() {
    Result help = run("--help");
    assertThat(help.code()).isZero();
    for (Setting setting : Setting.values()) {
      assertThat(help.out())
          .contains("--" + setting.key())
          .contains(setting.example())
          .contains(setting.help());
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          --pieces    | none          | can't read pieces
          --pieces    | 0             | can't read pieces
          --oven      | hot           | a number is missing
          --oven      | 10 min        | can't read oven
          --oven      | 400 °F        | can't read oven
          --units     | furlongs      | can't read units
          --cups      | british       | can't read cups
          --cut       | stars         | can't read cut
          --lock-in   | quarters      | can't read lock-in
          --folds     | fancy         | can't read folds
          --folds     | zigzag 99     | 99 panels
          --slenderness | 2 cups      | can't read slenderness
          --ready     | tomorrow      | not a time of day
          --room      | 22            | a unit is missing
          --flour-on-hand | bred flor | did you mean bread flour
          --flour-on-hand | chalk     | add it as an ingredient of your own
          --wings     | 2             | no such setting
          --piece-mass | -5 g         | can't be negative
          --balance   | 0 g           | resolution
          --sheet-thickness | 50 mm   | rolling can't make a sheet thicker
          nowhere.txt |               | can't read the recipe file
          --pieces    |               | needs a value
          """)
  void wrongInputGivesOneLineAndCode2(String first, String second, String words) {
    Result result = second == null ? run(first) : run(first, second);
    assertThat(result.code()).isEqualTo(2);
    assertThat(result.out()).isEmpty();
    assertThat(result.err().lines()).hasSize(1);
    assertThat(result.err()).startsWith("tourage: ").contains(words);
  }

  private static Result runFile(String text) throws IOException {
    Path file = Files.createTempFile("test", ".recipe");
    try {
      Files.writeString(file, text);
      return run(file.toString());
    } finally {
      Files.delete(file);
    }
  }

  @Test
  void aPlainDoughNeedsNoSheet() throws IOException {
    Result result =
        runFile(
            "pieces: 10\n500 g bread flour\n310 g water\n10 g salt\n5 g instant yeast\ncut: triangles\n");
    assertThat(result.code()).isZero();
    assertThat(result.out())
        .contains("Bench sheet")
        .contains("about 83 g raw before trim")
        .contains("there is no laminated sheet to cut")
        .doesNotContain("Lamination")
        .doesNotContain("Timetable");
    assertThat(
            runFile("500 g bread flour\n310 g water\n[timetable]\nmix: 10 min\nrise: 1-2 hours\n")
                .out())
        .contains("the recipe at the size given")
        .contains("day 1 14:00  mix (10 min)")
        .contains("rise (2 h): look from 1 h on");
  }

  @Test
  void filesThatContradictThemselvesAreRefused() throws IOException {
    assertThat(runFile("piece-mass: 80 g\n500 g bread flour\n").err())
        .contains("number of pieces is missing");
    assertThat(runFile("dough-temperature: 24 °C\n500 g bread flour\n300 g water\n").err())
        .contains("flour-temperature");
    assertThat(runFile("[timetable]\nsleep\n").err()).contains("not a task");
    assertThat(runFile("").err()).contains("needs lines");
    assertThat(runFile("500 g bread flour\n3 oz mystery\n").err()).contains("mystery");
    assertThat(run("a", "b").err()).contains("more than one recipe file");
  }

  @Test
  void theDemoIsMarkedAsInvented() {
    assertThat(Main.demo().settings().get(Setting.TITLE)).contains("invented");
    assertThat(Main.demo().with("pieces", "4").settings()).containsEntry(Setting.PIECES, "4");
    assertThat(BenchDay.work(Main.demo()).advice()).isNotEmpty();
  }
}
