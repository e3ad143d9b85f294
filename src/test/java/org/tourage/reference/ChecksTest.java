package org.tourage.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.tourage.internal.Csv;

class ChecksTest {
  @Test
  void everyRowOfReferenceDataNamesItsSourceAndProvenance() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("reference-data"))) {
      List<Path> tables =
          files
              .filter(p -> p.toString().endsWith(".csv"))
              .filter(p -> !p.endsWith("names.csv"))
              .toList();
      assertThat(tables).hasSizeGreaterThan(8);
      for (Path table : tables) {
        assertThat(Csv.read(Files.newInputStream(table)))
            .as(table.toString())
            .isNotEmpty()
            .allSatisfy(
                row -> {
                  assertThat(row.get("source")).isNotBlank();
                  assertThat(row.get("provenance"))
                      .isIn("fetched", "from memory", "common practice", "derived");
                });
      }
    }
  }

  @Test
  void whatIsOurOwnArithmeticIsNotCalledFetchedOrRecalled() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("reference-data/checks"))) {
      for (Path table : files.filter(p -> p.toString().endsWith(".csv")).toList()) {
        assertThat(Csv.read(Files.newInputStream(table)))
            .as(table.toString())
            .filteredOn(r -> String.valueOf(r.get("source")).contains("worked "))
            .filteredOn(r -> !String.valueOf(r.get("source")).contains("worked with CoolProp"))
            .allSatisfy(r -> assertThat(r.get("provenance")).isEqualTo("derived"));
      }
    }
  }

  /** All text between quotes in the tests, adjacent pieces joined. */
  private static List<String> literals(String tests) {
    Matcher matcher =
        Pattern.compile("\"((?:[^\"\\\\\\n]|\\\\.)*)\"")
            .matcher(tests.replaceAll("\"\\s*\\+\\s*\"", ""));
    List<String> literals = new ArrayList<>();
    while (matcher.find()) {
      literals.add(matcher.group(1));
    }
    return literals;
  }

  /** A table is read whole, or each of its checks is named, wholly or by how it begins. */
  @Test
  void everyRowOfTheChecksIsReadByATest() throws IOException {
    StringBuilder sources = new StringBuilder();
    try (Stream<Path> files = Files.walk(Path.of("src/test/java"))) {
      for (Path file : files.filter(p -> p.toString().endsWith("Test.java")).toList()) {
        sources.append(Files.readString(file));
      }
    }
    String tests = sources.toString();
    List<String> literals = literals(tests);
    try (Stream<Path> files = Files.list(Path.of("reference-data/checks"))) {
      for (Path table : files.sorted().toList()) {
        String name = table.getFileName().toString();
        assertThat(tests).as("a test that reads " + name).contains('"' + name + '"');
        for (var row : Csv.read(Files.newInputStream(table))) {
          String check = row.get("check");
          String kind = row.get("kind");
          boolean whole =
              check == null
                  || Pattern.compile("rows\\(\"" + Pattern.quote(name) + "\"\\)\\s*;")
                      .matcher(tests)
                      .find();
          boolean read =
              whole
                  || literals.contains(check)
                  || kind != null && literals.contains(kind)
                  || literals.stream().anyMatch(l -> l.length() > 4 && check.startsWith(l));
          assertThat(read).as("a test that reads \"" + check + "\" of " + name).isTrue();
        }
      }
    }
  }

  @Test
  void everyTableIsDescribedInTheReadme() throws IOException {
    String readme = Files.readString(Path.of("reference-data/README.md"));
    try (Stream<Path> files = Files.walk(Path.of("reference-data"))) {
      files
          .filter(p -> p.toString().endsWith(".csv"))
          .forEach(p -> assertThat(readme).contains(p.getFileName().toString()));
    }
  }
}
