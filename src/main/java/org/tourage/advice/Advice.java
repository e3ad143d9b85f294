package org.tourage.advice;

import java.io.Serializable;
import java.util.Objects;

/**
 * What is unwise about a result, why, and what to do. Advice never stops a calculation: input that
 * makes no sense is refused with a {@link BakeryException} instead.
 *
 * @param severity how much it matters
 * @param code a stable machine-readable code of the table {@link AdviceCode}, for example {@code
 *     SALT_HIGH}
 * @param text what is unwise and why, with figures and units
 * @param remedy what to do about it
 * @param source where the rule comes from: a publication, {@code common practice}, or {@code from
 *     memory} with the publication
 */
public record Advice(Severity severity, String code, String text, String remedy, String source)
    implements Serializable {

  /** The mark of a rule of the trade that no single publication owns. */
  public static final String COMMON_PRACTICE = "common practice";

  /**
   * Checks that nothing is null, and that code, severity and source are those of the table.
   *
   * @param severity how much it matters
   * @param code a stable machine-readable code of the table {@link AdviceCode}, for example {@code
   *     SALT_HIGH}
   * @param text what is unwise and why, with figures and units
   * @param remedy what to do about it
   * @param source where the rule comes from: a publication, {@code common practice}, or {@code from
   *     memory} with the publication
   */
  public Advice {
    Objects.requireNonNull(severity, "severity");
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(text, "text");
    Objects.requireNonNull(remedy, "remedy");
    Objects.requireNonNull(source, "source");
    AdviceCode row = AdviceCode.named(code);
    if (severity != row.severity()) {
      throw unlike("the severity of " + code, severity.toString(), row.severity().toString());
    }
    if (row.bringsItsSource() == source.equals(row.source())) {
      throw unlike("the source of " + code, source, row.source());
    }
  }

  private static BakeryException unlike(String what, String given, String table) {
    return new BakeryException(
        BakeryException.Reason.INCONSISTENT,
        what + " is not that of the table",
        given,
        "the table says: " + table);
  }

  /**
   * Advice whose severity and source stand in the table.
   *
   * @param code a code of the table, see {@link AdviceCode}
   * @param text what and why
   * @param remedy what to do
   * @return the advice
   * @throws BakeryException if no advice has that code, or if advice of that code brings its source
   */
  public static Advice of(String code, String text, String remedy) {
    AdviceCode row = AdviceCode.named(code);
    return new Advice(row.severity(), code, text, remedy, row.source());
  }

  /**
   * Advice that brings its source, which is that of the model or the curve at work.
   *
   * @param code a code of the table, see {@link AdviceCode}
   * @param text what and why
   * @param remedy what to do
   * @param source where it comes from
   * @return the advice
   * @throws BakeryException if no advice has that code, or if the table gives another source
   */
  public static Advice of(String code, String text, String remedy, String source) {
    return new Advice(AdviceCode.named(code).severity(), code, text, remedy, source);
  }

  /** Reads as one line: {@code Warning: text. Remedy. [source]}. */
  @Override
  public String toString() {
    String label =
        severity.name().charAt(0) + severity.name().substring(1).toLowerCase(java.util.Locale.ROOT);
    return label + ": " + text + ". " + remedy + ". [" + source + "]";
  }
}
