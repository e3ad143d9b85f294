package org.tourage.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
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
  void everyTableIsDescribedInTheReadme() throws IOException {
    String readme = Files.readString(Path.of("reference-data/README.md"));
    try (Stream<Path> files = Files.walk(Path.of("reference-data"))) {
      files
          .filter(p -> p.toString().endsWith(".csv"))
          .forEach(p -> assertThat(readme).contains(p.getFileName().toString()));
    }
  }
}
