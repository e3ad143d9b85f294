package org.tourage.house;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.tourage.advice.AdviceCode;

/** The table of advice against the source that gives it, and against the page that prints it. */
class AdviceTableTest {
  private static final Path SOURCE = Path.of("src/main/java/org/tourage");
  private static final Path PAGE = Path.of("docs/advice.md");
  private static final Pattern MADE =
      Pattern.compile(
          "\\bAdvice\\s*\\.\\s*of\\(\\s*([^,]*),|\\bnew\\s+Advice\\b|\\bAdvice::(?:new|of)\\b");
  private static final Pattern LITERAL = Pattern.compile("\"([^\"]*)\"");

  private record Raised(String code, String where) {}

  @Test
  void everyCodeOfTheTableIsRaisedOnceAndWhereTheTableSays() {
    List<Raised> table =
        AdviceCode.all().stream().map(c -> new Raised(c.code(), c.raisedBy())).toList();
    assertThat(table).hasSizeGreaterThan(100);
    assertThat(raised()).containsExactlyInAnyOrderElementsOf(table);
  }

  @Test
  void everyRowSaysInOneSentenceWhatItMeans() {
    Set<String> meanings = new LinkedHashSet<>();
    for (AdviceCode row : AdviceCode.all()) {
      assertThat(row.meaning()).as(row.code()).matches("[A-Z][^.]*(\\d\\.\\d[^.]*)?\\.");
      assertThat(row.source()).as(row.code()).isNotBlank();
      assertThat(row.code()).matches("[A-Z][A-Z0-9_]*");
      assertThat(meanings.add(row.meaning())).as(row.code()).isTrue();
    }
  }

  @Test
  void thePageOfAdviceIsTheTable() throws IOException {
    String page = page();
    if (Boolean.getBoolean("tourage.renew")) {
      Files.writeString(PAGE, page);
    }
    assertThat(Files.readString(PAGE)).isEqualTo(page);
  }

  /** Every code that the source gives to an advice, with the class that does. */
  private static List<Raised> raised() {
    List<Raised> found = new ArrayList<>();
    try (Stream<Path> files = Files.walk(SOURCE)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".java")).sorted().toList()) {
        Path inside = SOURCE.relativize(file);
        if (inside.equals(Path.of("advice", "Advice.java"))) {
          continue;
        }
        String where =
            inside
                .toString()
                .replace(".java", "")
                .replace(file.getFileSystem().getSeparator(), ".");
        Matcher made = MADE.matcher(Files.readString(file));
        while (made.find()) {
          assertThat(made.group(1)).as("%s names its code: %s", where, made.group()).isNotNull();
          int before = found.size();
          Matcher literal = LITERAL.matcher(made.group(1));
          while (literal.find()) {
            found.add(new Raised(literal.group(1), where));
          }
          assertThat(found)
              .as("%s names its code: %s", where, made.group())
              .hasSizeGreaterThan(before);
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return found;
  }

  private static String page() {
    StringBuilder page =
        new StringBuilder(
            """
            # Advice

            Advice never stops a calculation: it says what is unwise, why, and what to do. This page
            is printed from the table of all advice, `advice.csv` in the room `advice`; a test fails
            when the two differ. The code is for programs, and stays.

            - A **note** is good to know; nothing need be changed.
            - A **warning** says that the result is possible but unwise.
            - **Safety** says that a person could be hurt or made ill. Local codes decide.
            """);
    String room = "";
    for (AdviceCode row : AdviceCode.all()) {
      String its = row.raisedBy().substring(0, row.raisedBy().indexOf('.'));
      if (!its.equals(room)) {
        room = its;
        page.append("\n## Room `").append(room).append("`\n\n");
        page.append("| code | severity | from where on | meaning | source | given by |\n");
        page.append("|---|---|---|---|---|---|\n");
      }
      page.append("| `")
          .append(row.code())
          .append("` | ")
          .append(row.severity().name().toLowerCase(Locale.ROOT))
          .append(" | ")
          .append(row.threshold().isEmpty() ? "–" : row.threshold())
          .append(" | ")
          .append(row.meaning())
          .append(" | ")
          .append(row.source())
          .append(" | `")
          .append(row.raisedBy().substring(room.length() + 1))
          .append("` |\n");
    }
    return page.toString();
  }
}
