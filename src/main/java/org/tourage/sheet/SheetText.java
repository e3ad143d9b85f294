package org.tourage.sheet;

import java.util.ArrayList;
import java.util.List;
import org.tourage.advice.Advice;
import org.tourage.advice.Severity;

/** The text of a sheet: numbered sections, wrapped paragraphs. */
final class SheetText {
  private static final int WIDTH = 96;

  private final StringBuilder out = new StringBuilder();
  private int number;

  SheetText(String title) {
    out.append(title).append('\n').append("=".repeat(title.length())).append('\n');
  }

  void section(String heading, List<String> lines) {
    if (lines.isEmpty()) {
      return;
    }
    out.append('\n').append(++number).append(". ").append(heading).append('\n');
    for (String line : lines) {
      out.append("   ".repeat(line.isBlank() ? 0 : 1)).append(line.stripTrailing()).append('\n');
    }
  }

  void advice(String heading, List<Advice> advice) {
    List<String> lines = new ArrayList<>();
    for (Advice one : advice) {
      String mark = one.severity() == Severity.WARNING ? "! " : "- ";
      wrap(lines, mark + one.text() + ". " + one.remedy() + ". [" + one.source() + "]");
    }
    section(heading, lines);
  }

  /** Breaks a paragraph; what follows is set in. */
  static void wrap(List<String> lines, String text) {
    StringBuilder line = new StringBuilder();
    for (String word : text.split(" ")) {
      if (line.length() > 0 && line.length() + word.length() >= WIDTH - 3) {
        lines.add(line.toString());
        line = new StringBuilder("  ");
      } else if (line.length() > 0) {
        line.append(' ');
      }
      line.append(word);
    }
    lines.add(line.toString());
  }

  @Override
  public String toString() {
    return out.toString();
  }
}
