package org.tourage.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tourage.internal.Csv;
import org.tourage.reference.Checks.Row;

/** Each figure of the tables that was seen in print says so, says where, and is that figure. */
class SeenInPrintReferenceTest {
  static Stream<Row> seen() {
    return Checks.rows("seen-in-print.csv");
  }

  private static Map<String, String> rowOf(Row seen) throws IOException {
    List<String> key = List.of(seen.text("key").split("\\|"));
    List<Map<String, String>> rows =
        Csv.read(Files.newInputStream(Path.of("reference-data", seen.text("table")))).stream()
            .filter(r -> r.values().containsAll(key))
            .toList();
    assertThat(rows).as(seen.text("key")).hasSize(1);
    return rows.get(0);
  }

  @ParameterizedTest
  @MethodSource("seen")
  void aFigureThatWasSeenIsFetchedAndItsRowSaysWhere(Row seen) throws IOException {
    Map<String, String> row = rowOf(seen);
    // the heat of melting of a fat has a source of its own beside that of the curve
    String of = seen.text("column").startsWith("fusion_") ? "fusion_" : "";
    assertThat(row.get(of + "provenance")).isEqualTo("fetched");
    assertThat(row.get(of + "source")).contains(seen.text("place"));
  }

  @ParameterizedTest
  @MethodSource("seen")
  void itIsTheSeenFigureToTheLastDigitOfTheRounderPrint(Row seen) throws IOException {
    Map<String, String> row = rowOf(seen);
    List<BigDecimal> ours =
        Arrays.stream(seen.text("column").split(";")).map(row::get).map(this::number).toList();
    List<BigDecimal> printed =
        Arrays.stream(seen.text("seen").split(" ")).map(BigDecimal::new).toList();
    assertThat(ours).hasSameSizeAs(printed);
    for (int i = 0; i < ours.size(); i++) {
      int digits = Math.min(ours.get(i).scale(), printed.get(i).scale());
      BigDecimal band =
          seen.text("grade").equals("exact") ? BigDecimal.ZERO : BigDecimal.valueOf(5, digits + 1);
      assertThat(ours.get(i)).isCloseTo(printed.get(i), within(band));
    }
  }

  private BigDecimal number(String cell) {
    return new BigDecimal(cell.split(" ")[0]);
  }

  @Test
  void theyAreAHundredAndFive() {
    assertThat(seen()).hasSize(105);
    assertThat(seen().filter(r -> r.text("grade").equals("rounded"))).hasSize(9);
  }

  static Stream<Row> settled() {
    return Checks.rows("settled-figures.csv");
  }

  @ParameterizedTest
  @MethodSource("settled")
  void aFigureThatDisagreedStandsAsItWasSettled(Row settled) throws IOException {
    assertThat(rowOf(settled)).containsEntry(settled.text("column"), settled.text("now"));
    // a figure that was kept says why it was
    boolean kept = settled.text("now").equals(settled.text("before"));
    assertThat(settled.text("why").startsWith("kept: ")).isEqualTo(kept);
  }

  @Test
  void theDisagreementsAreEightAndTwoOfThemAreKept() {
    assertThat(settled()).hasSize(8);
    assertThat(settled().filter(r -> r.text("why").startsWith("kept: "))).hasSize(2);
  }

  static Stream<Row> tables() {
    return Checks.rows("printed-tables.csv");
  }

  @ParameterizedTest
  @MethodSource("tables")
  void aPrintedTableIsHereWithAllItsRowsFetched(Row table) throws IOException {
    assertThat(Csv.read(Files.newInputStream(Path.of("reference-data", table.text("table")))))
        .filteredOn(r -> String.valueOf(r.get("source")).contains(table.text("source")))
        .filteredOn(r -> "fetched".equals(r.get("provenance")))
        .hasSize((int) table.number("rows"));
  }

  @Test
  void atLeastFifteenPrintedTablesAreChecks() {
    assertThat(tables().map(r -> r.text("topic")).distinct()).hasSizeGreaterThanOrEqualTo(15);
  }
}
