package org.tourage.reference;

import static java.util.Objects.requireNonNull;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.tourage.internal.Csv;

/**
 * Reads the figures in reference-data/checks; every row names its source and how it was come by.
 */
public final class Checks {
  private static final Path FOLDER = Path.of("reference-data", "checks");

  private Checks() {}

  /** A row of a check file. */
  public record Row(Map<String, String> fields) {
    public String text(String column) {
      return requireNonNull(fields.get(column), column);
    }

    public double number(String column) {
      return Double.parseDouble(text(column));
    }

    /** Names the row in the test report: its figures and its source. */
    @Override
    public String toString() {
      return String.join(", ", fields.values());
    }
  }

  public static Stream<Row> rows(String file) {
    try {
      List<Map<String, String>> rows = Csv.read(Files.newInputStream(FOLDER.resolve(file)));
      return rows.stream().map(Row::new);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public static Row row(String file, String check) {
    return rows(file)
        .filter(r -> r.text("check").equals(check))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no check \"" + check + "\" in " + file));
  }
}
