package org.tourage.advice;

import java.io.Serializable;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.tourage.internal.Csv;

/**
 * A row of the table of all advice that the library gives: {@code advice.csv}, printed as {@code
 * docs/advice.md}. How much a piece of advice matters and where its rule comes from stand there and
 * nowhere else.
 *
 * @param code the code in upper snake case, for example {@code SALT_HIGH}
 * @param severity how much it matters
 * @param threshold from where on it is given, with its unit; empty if there is no figure
 * @param source where the rule comes from; {@code that of …} if it is the source of the model or
 *     the curve at work
 * @param raisedBy the room and the class that gives it, for example {@code formula.FormulaAdvice}
 * @param meaning one sentence of what it says
 */
public record AdviceCode(
    String code,
    Severity severity,
    String threshold,
    String source,
    String raisedBy,
    String meaning)
    implements Serializable {

  private static final String OF_ANOTHER = "that of ";

  /**
   * Checks that nothing is null.
   *
   * @param code the code in upper snake case, for example {@code SALT_HIGH}
   * @param severity how much it matters
   * @param threshold from where on it is given, with its unit; empty if there is no figure
   * @param source where the rule comes from; {@code that of …} if it is the source of the model or
   *     the curve at work
   * @param raisedBy the room and the class that gives it, for example {@code formula.FormulaAdvice}
   * @param meaning one sentence of what it says
   */
  public AdviceCode {
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(severity, "severity");
    Objects.requireNonNull(threshold, "threshold");
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(raisedBy, "raisedBy");
    Objects.requireNonNull(meaning, "meaning");
  }

  /**
   * The whole table.
   *
   * @return the rows by room and class
   */
  public static List<AdviceCode> all() {
    return List.copyOf(Rows.BY_CODE.values());
  }

  /**
   * The row of a code.
   *
   * @param code the code
   * @return its row
   * @throws BakeryException if no advice has that code
   */
  public static AdviceCode named(String code) {
    AdviceCode found = Rows.BY_CODE.get(Objects.requireNonNull(code, "code"));
    if (found == null) {
      throw new BakeryException(
          BakeryException.Reason.UNKNOWN_NAME,
          "no advice has that code",
          "\"" + code + "\"",
          "use a code of the table of advice");
    }
    return found;
  }

  /**
   * Whether each piece of this advice brings its own source: that of the model or the curve at
   * work.
   *
   * @return whether the table gives none
   */
  public boolean bringsItsSource() {
    return source.startsWith(OF_ANOTHER);
  }

  /** The table, read once, when the first advice is given. */
  private static final class Rows {
    private static final Map<String, AdviceCode> BY_CODE = read();

    private static Map<String, AdviceCode> read() {
      Map<String, AdviceCode> rows = new LinkedHashMap<>();
      for (Map<String, String> row :
          Csv.table(AdviceCode.class, "/org/tourage/advice/advice.csv")) {
        AdviceCode code =
            new AdviceCode(
                Csv.field(row, "code"),
                Severity.valueOf(Csv.field(row, "severity").toUpperCase(Locale.ROOT)),
                Csv.field(row, "threshold"),
                Csv.field(row, "source"),
                Csv.field(row, "raised_by"),
                Csv.field(row, "meaning"));
        if (rows.put(code.code(), code) != null) {
          throw new IllegalStateException(code.code() + " stands twice in the table of advice");
        }
      }
      return rows;
    }
  }
}
