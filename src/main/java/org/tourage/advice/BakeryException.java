package org.tourage.advice;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * The one exception of the library for input that makes no sense. It says what was wrong, the value
 * with its unit, and what would be right; {@link #reason()} is for programs. Nulls are refused with
 * {@link NullPointerException} instead.
 */
public class BakeryException extends RuntimeException {
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

  /** The lines that were refused, if this is about lines of a text. */
  private final ArrayList<Problem> problems;

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
    this.given = Objects.requireNonNull(given, "given");
    this.expected = Objects.requireNonNull(expected, "expected");
    this.problems = new ArrayList<>();
  }

  /**
   * Makes an exception for several things at once; reason, value and what would be right are those
   * of the first.
   *
   * @param problems what was refused, in order, at least one
   * @param message all of it
   */
  protected BakeryException(List<Problem> problems, String message) {
    super(message, problems.get(0).exception());
    BakeryException first = problems.get(0).exception();
    this.reason = first.reason;
    this.given = first.given;
    this.expected = first.expected;
    this.problems = new ArrayList<>(problems);
  }

  /**
   * One exception for all lines of a text that were refused; reason, value and what would be right
   * are those of the first.
   *
   * @param problems the lines in order, at least one
   * @return the exception; its message has a row for each line
   */
  public static BakeryException of(List<Problem> problems) {
    if (problems.size() == 1) {
      return new BakeryException(problems, problems.get(0).toString());
    }
    return new BakeryException(
        problems,
        problems.size()
            + " lines can't be read:\n"
            + problems.stream().map(Problem::toString).collect(Collectors.joining("\n")));
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

  /** Refusals are equal if they say the same; where they were thrown does not count. */
  @Override
  public final boolean equals(@Nullable Object other) {
    return other instanceof BakeryException that
        && reason == that.reason
        && Objects.equals(getMessage(), that.getMessage())
        && given.equals(that.given)
        && expected.equals(that.expected)
        && problems.equals(that.problems);
  }

  @Override
  public final int hashCode() {
    return Objects.hash(reason, getMessage());
  }

  /**
   * Why the input was refused, for programs.
   *
   * @return the reason
   */
  public final Reason reason() {
    return reason;
  }

  /**
   * The offending value with its unit.
   *
   * @return the value as text
   */
  public final String given() {
    return given;
  }

  /**
   * What would be right.
   *
   * @return one sentence without a full stop
   */
  public final String expected() {
    return expected;
  }

  /**
   * The lines that were refused, if this is about lines of a text.
   *
   * @return the lines in order; none if this is about something else
   */
  public final List<Problem> problems() {
    return List.copyOf(problems);
  }
}
