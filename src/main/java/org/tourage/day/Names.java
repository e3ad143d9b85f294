package org.tourage.day;

import static java.util.Objects.requireNonNull;

import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/** What a name of the day can be. */
final class Names {
  private static final int LONGEST = 400;
  private static final int SHOWN = 40;

  private Names() {}

  /** The name, if it can stand on one line of a sheet. */
  static String check(String what, String parameter, String name) {
    requireNonNull(name, parameter);
    boolean oneLine = name.codePoints().noneMatch(Character::isISOControl);
    if (name.isBlank() || !oneLine || name.length() > LONGEST) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT,
          what + " has no such name",
          "\""
              + name.substring(0, Math.min(SHOWN, name.length())).replaceAll("\\p{Cntrl}", " ")
              + "\"",
          "give it words on one line, at most " + LONGEST + " letters");
    }
    return name;
  }
}
