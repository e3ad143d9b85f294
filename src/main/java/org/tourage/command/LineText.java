package org.tourage.command;

import java.util.Locale;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/** What a line of a file can be: text, and not too long. */
final class LineText {
  private static final int LONGEST_LINE = 2_000;

  private LineText() {}

  /** Refuses what is no text. */
  static void check(String line) {
    if (line.length() > LONGEST_LINE) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT,
          "a line is too long",
          line.length() + " characters",
          "write at most " + LONGEST_LINE);
    }
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      boolean bad = (Character.isISOControl(c) && c != '\t') || c == '\uFFFD';
      if (bad) {
        throw new BakeryException(
            Reason.UNREADABLE_TEXT,
            "a character that is no text",
            String.format(Locale.ROOT, "U+%04X at place %d", (int) c, i + 1),
            "save the file as plain text in UTF-8");
      }
    }
  }
}
