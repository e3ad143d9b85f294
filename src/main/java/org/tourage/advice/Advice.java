package org.tourage.advice;

import java.io.Serializable;
import java.util.Objects;

/**
 * What is unwise about a result, why, and what to do. Advice never stops a calculation: input that
 * makes no sense is refused with a {@link BakeryException} instead.
 *
 * @param severity how much it matters
 * @param code a stable machine-readable code in upper snake case, for example {@code SALT_HIGH}
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
   * Checks that nothing is null.
   *
   * @param severity how much it matters
   * @param code a stable machine-readable code in upper snake case, for example {@code SALT_HIGH}
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
  }

  /**
   * A note.
   *
   * @param code the code
   * @param text what and why
   * @param remedy what to do
   * @param source where it comes from
   * @return the advice
   */
  public static Advice note(String code, String text, String remedy, String source) {
    return new Advice(Severity.NOTE, code, text, remedy, source);
  }

  /**
   * A warning.
   *
   * @param code the code
   * @param text what and why
   * @param remedy what to do
   * @param source where it comes from
   * @return the advice
   */
  public static Advice warning(String code, String text, String remedy, String source) {
    return new Advice(Severity.WARNING, code, text, remedy, source);
  }

  /**
   * A safety caution.
   *
   * @param code the code
   * @param text what and why
   * @param remedy what to do
   * @param source where it comes from
   * @return the advice
   */
  public static Advice safety(String code, String text, String remedy, String source) {
    return new Advice(Severity.SAFETY, code, text, remedy, source);
  }

  /** Reads as one line: {@code Warning: text. Remedy. [source]}. */
  @Override
  public String toString() {
    String label =
        severity.name().charAt(0) + severity.name().substring(1).toLowerCase(java.util.Locale.ROOT);
    return label + ": " + text + ". " + remedy + ". [" + source + "]";
  }
}
