package org.tourage.advice;

import java.util.Collection;
import java.util.Objects;

/**
 * The one exception of the library for input that makes no sense. It says what was wrong, the value
 * with its unit, and what would be right; {@link #reason()} is for programs. Nulls are refused with
 * {@link NullPointerException} instead.
 */
public final class BakeryException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** Why the input was refused. */
  public enum Reason {
    /** A text could not be read as an amount, a name or a line. */
    UNREADABLE_TEXT,
    /** A number lies outside what is possible, or is not finite. */
    OUT_OF_RANGE,
    /** No ingredient, portion, option or unit has that name. */
    UNKNOWN_NAME,
    /** Two inputs, or an input and the formula, contradict each other. */
    INCONSISTENT,
    /** Something that is needed was not given. */
    MISSING,
    /** The operation has no physical meaning, for example a sum of thermometer readings. */
    MEANINGLESS
  }

  /** The reason, for programs. */
  private final Reason reason;

  /** What was given. */
  private final String given;

  /** What would be right. */
  private final String expected;

  /**
   * Makes an exception.
   *
   * @param reason why, for programs
   * @param problem what was wrong
   * @param given the offending value with its unit
   * @param expected what would be right
   */
  public BakeryException(Reason reason, String problem, String given, String expected) {
    super(problem + ": " + given + "; " + expected);
    this.reason = Objects.requireNonNull(reason, "reason");
    this.given = given;
    this.expected = expected;
  }

  /**
   * An exception for a name that is not known.
   *
   * @param problem what was wrong
   * @param name the name
   * @param known the names that are known
   * @return the exception
   */
  public static BakeryException unknownName(String problem, String name, Collection<String> known) {
    return new BakeryException(
        Reason.UNKNOWN_NAME, problem, "\"" + name + "\"", "use one of " + known);
  }

  /**
   * Why the input was refused, for programs.
   *
   * @return the reason
   */
  public Reason reason() {
    return reason;
  }

  /**
   * The offending value with its unit.
   *
   * @return the value as text
   */
  public String given() {
    return given;
  }

  /**
   * What would be right.
   *
   * @return one sentence without a full stop
   */
  public String expected() {
    return expected;
  }
}
