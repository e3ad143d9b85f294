package org.tourage.advice;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;

/**
 * A line of a text that was refused. Several travel in one exception, see {@link
 * BakeryException#of}.
 *
 * @param line the number of the line, from 1
 * @param text the line, fit to be printed
 * @param exception why it was refused
 */
public record Problem(int line, String text, BakeryException exception) implements Serializable {

  /**
   * Checks that nothing is null.
   *
   * @param line the number of the line, from 1
   * @param text the line, fit to be printed
   * @param exception why it was refused
   */
  public Problem {
    requireNonNull(text, "text");
    requireNonNull(exception, "exception");
  }

  /**
   * Where in the line the refused words begin.
   *
   * @return letters before them; 0 if the whole line is refused or the words are not in it
   */
  public int offset() {
    String given = exception.given();
    boolean quoted = given.length() > 2 && given.startsWith("\"") && given.endsWith("\"");
    int at = text.indexOf(quoted ? given.substring(1, given.length() - 1) : given);
    return Math.max(0, at);
  }

  /** {@code line 3: a unit is missing: "500" …}; with the line itself if the rest lacks it. */
  @Override
  public String toString() {
    String message = String.valueOf(exception.getMessage());
    String where = message.contains(text) ? "" : ", \"" + text + "\"";
    return "line " + line + where + ": " + message;
  }
}
