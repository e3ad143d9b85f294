package org.tourage.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

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
  void theDemoPrintsWhatIsNeededFirstAtTheTop() {
    Result result = run();
    assertThat(result.code()).isZero();
    assertThat(result.err()).isEmpty();
    assertThat(result.out())
        .contains("(invented demo)")
        .containsPattern("1\\. At a glance\n   pieces +18\n")
        .containsSubsequence(
            "At a glance",
            "scaling weight, raw",
            "As given",
            "Exchanged",
            "Weights",
            "Timetable",
            "Lamination",
            "16 fat layers, 17 dough layers",
            "Cutting plan",
            "18 rectangles",
            "each piece 68 g",
            "Temperature and rise",
            "Oven",
            "Kitchen",
            "Safety",
            "plant-based is not a claim of allergen-free",
            "Advice")
        .contains("day 3 08:30  done")
        .doesNotContain("not worked");
  }

  @Test
  void theSheetHasOnlyTheUnitsThatWereAskedFor() {
    assertThat(run("--units", "metric").out()).doesNotContain(" oz)");
    assertThat(run("--units", "us").out()).contains(" oz").contains("°F");
  }

  @Test
  void whatTheHelpPrintsAsDefaultIsTheDefault() {
    Result help = run("--help");
    assertThat(help.code()).isZero();
    assertThat(run("-h").out()).isEqualTo(help.out());
    for (Setting<?> setting : Settings.all()) {
      assertThat(help.out())
          .contains("--" + setting.key())
          .contains(setting.example())
          .contains(setting.usual())
          .contains(setting.help());
      assertThat(setting.read(setting.example())).as(setting.key()).isNotNull();
      assertThat(setting.usual().isEmpty() || setting.byDefault() != null).isTrue();
    }
  }

  static Result runFile(String text, String... options) throws IOException {
    Path file = Files.createTempFile("test", ".recipe");
    try {
      Files.writeString(file, text);
      String[] args = new String[options.length + 1];
      args[0] = file.toString();
      System.arraycopy(options, 0, args, 1, options.length);
      return run(args);
    } finally {
      Files.delete(file);
    }
  }

  @Test
  void aPlainDoughNeedsNoSheet() throws IOException {
    Result result =
        runFile(
            "pieces: 10\n[dough]\n500 g bread flour\n310 g water\n10 g salt\n5 g instant yeast\n"
                + "[steps]\nmix: 10 min\nrise: 1-2 hours, until doubled\nbake: 220 °C 20 min\n");
    assertThat(result.err()).isEmpty();
    assertThat(result.out())
        .containsPattern("scaling weight, raw +83 g")
        .contains("day 1 08:00  mix (10 min)")
        .contains("rise (2 h): doubled; look from 1 h on")
        .doesNotContain("Lamination")
        .doesNotContain("Cutting");
  }

  @Test
  void allComplaintsComeAtOnceEachWithItsLine() throws IOException {
    Result result =
        runFile(
            "pieces: none\nwings: 2\n[dough]\n500 g bread flour\n[steps]\nsleep: 8 h\nmix: soon\n");
    assertThat(result.code()).isEqualTo(2);
    assertThat(result.out()).isEmpty();
    assertThat(result.err().lines())
        .hasSize(4)
        .allMatch(l -> l.startsWith("tourage: "))
        .satisfiesExactly(
            l -> assertThat(l).contains("line 1: pieces"),
            l -> assertThat(l).contains("line 2: no such setting"),
            l -> assertThat(l).contains("line 6: no step begins"),
            l -> assertThat(l).contains("line 7: "));
  }

  @Test
  void whatNothingUsesIsSaidWithItsLine() throws IOException {
    assertThat(runFile("sheet-width: 30 cm\n[dough]\n500 g bread flour\n300 g water\n").err())
        .contains("line 1: nothing uses this setting");
    assertThat(runFile("room: 20 °C\nroom: 22 °C\n[dough]\n1 kg bread flour\n").err())
        .contains("line 2: a setting is given twice: room")
        .contains("line 1)");
  }

  @Test
  void theDemoIsMarkedAsInvented() {
    assertThat(Main.demo().plan().order().product().name()).contains("invented");
  }
}
