package org.tourage.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tourage.internal.Csv;

/** Every row of wrong-input.csv is refused with its place, and none with a trace or a number. */
class WrongInputTest {
  private static final String RECIPE =
      "[dough]\n500 g bread flour\n310 g water\n10 g salt\n5 g instant yeast\n%s"
          + "[steps]\nmix the dough: 15 min\n%s%s";
  private static final String BAKE = "bake: 220 °C 20 min\n";

  static Stream<Map<String, String>> rows() throws Exception {
    try (InputStream in =
        Objects.requireNonNull(WrongInputTest.class.getResourceAsStream("wrong-input.csv"))) {
      return Csv.read(in).stream();
    }
  }

  private static String unescaped(String text) {
    return text.replace("\\e", "\u001B").replace("\\a", "\u0007");
  }

  @ParameterizedTest
  @MethodSource("rows")
  void wrongInputIsRefusedWithItsPlaceAndNothingElse(Map<String, String> row) throws Exception {
    String text = unescaped(Objects.requireNonNull(row.get("text")));
    List<String> parts = List.of(text.split(" ; ", -1));
    String lines = String.join("\n", parts) + "\n";
    MainTest.Result result =
        switch (Objects.requireNonNull(row.get("kind"))) {
          case "setting" -> MainTest.runFile(lines + RECIPE.formatted("", "", BAKE));
          case "line" -> MainTest.runFile(RECIPE.formatted(lines, "", BAKE));
          case "step" ->
              MainTest.runFile(RECIPE.formatted("", lines, text.startsWith("bake") ? "" : BAKE));
          default -> MainTest.runFile("ready: 18:00\n" + RECIPE.formatted("", "", BAKE), text);
        };
    assertThat(result.code()).isEqualTo(2);
    assertThat(result.out()).isEmpty();
    assertThat(result.err().lines())
        .isNotEmpty()
        .allSatisfy(
            line ->
                assertThat(line)
                    .startsWith("tourage: ")
                    .doesNotContain("Exception")
                    .doesNotContain("\tat ")
                    .matches(l -> l.chars().noneMatch(c -> c < ' ')));
    assertThat(result.err())
        .contains(Objects.requireNonNull(row.get("message")))
        .containsPattern("line \\d+|--[a-z-]+|nowhere\\.kitchen");
  }

  @Test
  void theTableIsLong() throws Exception {
    assertThat(rows()).hasSizeGreaterThan(150);
  }
}
