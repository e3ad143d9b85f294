package org.tourage.internal;

import static java.util.Objects.requireNonNull;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Reads comma-separated values as RFC 4180 describes them, with a header line. */
public final class Csv {
  private Csv() {}

  /**
   * Reads every record as a map from column name to text.
   *
   * @param in UTF-8 text with a header line; it is closed
   * @return the records in order
   * @throws IllegalArgumentException if a record has not as many fields as the header
   */
  public static List<Map<String, String>> read(InputStream in) {
    String text;
    try (BufferedReader reader =
        new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      text = reader.lines().collect(Collectors.joining("\n"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    List<List<String>> records = records(text);
    List<String> header = records.get(0);
    List<Map<String, String>> result = new ArrayList<>();
    for (List<String> record : records.subList(1, records.size())) {
      if (record.size() != header.size()) {
        throw new IllegalArgumentException(
            "record with " + record.size() + " fields, not " + header.size() + ": " + record);
      }
      Map<String, String> row = new LinkedHashMap<>();
      for (int i = 0; i < header.size(); i++) {
        row.put(header.get(i), record.get(i));
      }
      result.add(row);
    }
    return result;
  }

  /**
   * Reads a table that lies in the jar.
   *
   * @param anchor a class of the module
   * @param resource the absolute name of the table
   * @return the records in order
   */
  public static List<Map<String, String>> table(Class<?> anchor, String resource) {
    return read(requireNonNull(anchor.getResourceAsStream(resource), resource));
  }

  /**
   * Reads one record.
   *
   * @param line a record without a line break in it
   * @return its fields
   */
  public static List<String> fields(String line) {
    return records(line).get(0);
  }

  /**
   * A field that must be there.
   *
   * @param row the record
   * @param column the name of the column
   * @return the text
   */
  public static String field(Map<String, String> row, String column) {
    return requireNonNull(row.get(column), column);
  }

  private static List<List<String>> records(String text) {
    List<List<String>> records = new ArrayList<>();
    List<String> record = new ArrayList<>();
    StringBuilder field = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (quoted) {
        boolean doubled = c == '"' && i + 1 < text.length() && text.charAt(i + 1) == '"';
        if (doubled) {
          field.append(c);
          i++;
        } else if (c == '"') {
          quoted = false;
        } else {
          field.append(c);
        }
      } else if (c == '"') {
        quoted = true;
      } else if (c == ',' || c == '\n') {
        record.add(field.toString());
        field.setLength(0);
        if (c == '\n') {
          records.add(record);
          record = new ArrayList<>();
        }
      } else {
        field.append(c);
      }
    }
    record.add(field.toString());
    records.add(record);
    records.removeIf(r -> r.size() == 1 && r.get(0).isBlank());
    return records;
  }
}
