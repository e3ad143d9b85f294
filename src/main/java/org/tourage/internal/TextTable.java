package org.tourage.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/** A plain-text table; the first column is set to the left, the others to the right. */
public final class TextTable {
  private static final String GAP = "  ";
  private final List<List<String>> rows = new ArrayList<>();
  private final int leftColumns;

  /**
   * Starts a table.
   *
   * @param leftColumns how many columns, from the first, are set to the left
   */
  public TextTable(int leftColumns) {
    this.leftColumns = leftColumns;
  }

  /**
   * Adds a row.
   *
   * @param cells its cells
   * @return this table
   */
  public TextTable row(String... cells) {
    rows.add(Arrays.asList(cells));
    return this;
  }

  /**
   * Adds a row that is a single text across the columns.
   *
   * @param text the text
   * @return this table
   */
  public TextTable heading(String text) {
    rows.add(List.of(text));
    return this;
  }

  @Override
  public String toString() {
    int columns = rows.stream().mapToInt(List::size).max().orElse(0);
    int[] width = new int[columns];
    for (List<String> row : rows) {
      for (int c = 0; row.size() > 1 && c < row.size(); c++) {
        width[c] = Math.max(width[c], row.get(c).length());
      }
    }
    return rows.stream().map(row -> line(row, width)).collect(Collectors.joining("\n"));
  }

  private String line(List<String> row, int[] width) {
    if (row.size() == 1) {
      return row.get(0);
    }
    StringBuilder out = new StringBuilder();
    for (int c = 0; c < row.size(); c++) {
      String pad = " ".repeat(width[c] - row.get(c).length());
      out.append(c == 0 ? "" : GAP).append(c < leftColumns ? row.get(c) + pad : pad + row.get(c));
    }
    return out.toString().stripTrailing();
  }
}
