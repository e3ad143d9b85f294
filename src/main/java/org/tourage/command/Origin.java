package org.tourage.command;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;

/**
 * Where a text stands: a line of a file, or an option of the command line.
 *
 * @param file the name of the file, empty for an option
 * @param line the number of the line from 1 up, 0 for an option
 * @param option the option, empty for a line
 */
public record Origin(String file, int line, String option) implements Serializable {
  /**
   * Checks that nothing is null.
   *
   * @param file the name of the file, empty for an option
   * @param line the number of the line from 1 up, 0 for an option
   * @param option the option, empty for a line
   */
  public Origin {
    requireNonNull(file, "file");
    requireNonNull(option, "option");
  }

  static Origin line(String file, int line) {
    return new Origin(file, line, "");
  }

  static Origin option(String key) {
    return new Origin("", 0, "--" + key);
  }

  /** {@code rolls.txt, line 12} or {@code --pieces}. */
  @Override
  public String toString() {
    return option.isEmpty() ? (file.isEmpty() ? "" : file + ", ") + "line " + line : option;
  }
}
