package org.tourage.command;

import java.util.List;

/** The parts of a file as they were written. */
final class FileParts {
  private FileParts() {}

  /** A line with the number that it has in its file. */
  record Numbered(int number, String text) {}

  /** A value with the place where it was set. */
  record Value(String text, Origin origin) {}

  /** An ingredient of one's own: its name and its lines. */
  record OwnIngredient(String name, Origin origin, List<Numbered> lines) {}
}
