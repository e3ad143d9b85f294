package org.tourage.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/** The parts of a file as they were written. */
final class FileParts {
  private FileParts() {}

  /** A line with the number that it has in its file. */
  record Numbered(int number, String text) {}

  /** A value with the place where it was set. */
  record Value(String text, Origin origin) {}

  /** A line under {@code [prices]}. */
  record Priced(String text, Origin origin) {}

  /** What a file may hold. */
  enum Holds {
    RECIPE,
    KITCHEN,
    CATALOGUE;

    /** Refuses a section that belongs into another file. */
    void check(String section, String heading) {
      boolean prices = section.equals("prices");
      if (this == KITCHEN && !prices) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            "a kitchen file has settings only",
            "\"" + heading + "\"",
            "put recipe lines and steps into the recipe file; [prices] may stand here");
      }
      if (this == CATALOGUE && !prices && !section.equals("ingredient")) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            "a catalogue file has ingredients and prices only",
            "\"" + heading + "\"",
            "put recipe lines and steps into the recipe file");
      }
    }
  }

  /** The kind of a section by its heading. */
  static String section(String line) {
    String inside = line.substring(1).strip().toLowerCase(Locale.ROOT);
    return inside.startsWith("steps") || inside.startsWith("timetable")
        ? "steps"
        : inside.startsWith("ingredient")
            ? "ingredient"
            : inside.startsWith("prices") ? "prices" : "recipe";
  }

  /** The ingredient that a heading opens. */
  static OwnIngredient opened(String heading, Origin origin) {
    String inside = heading.replace("[", "").replace("]", "").strip();
    String own = inside.substring("ingredient".length()).strip();
    if (own.isEmpty()) {
      throw new BakeryException(
          Reason.MISSING,
          "an ingredient of one's own needs a name",
          "\"" + heading + "\"",
          "write [ingredient Seed mix]");
    }
    return new OwnIngredient(own, origin, new ArrayList<>());
  }

  /** An ingredient of one's own: its name and its lines. */
  record OwnIngredient(String name, Origin origin, List<Numbered> lines) {}
}
