package org.tourage.schedule;

import java.io.Serializable;
import java.util.Objects;

/**
 * What a schedule breaks.
 *
 * @param kind what sort of rule
 * @param text what is broken, with the tasks, the times and by how much
 */
public record Violation(Kind kind, String text) implements Serializable {

  /** What sort of rule is broken. */
  public enum Kind {
    /** A task of the problem has no start, or one that is unknown has. */
    TASKS,
    /** A release or a deadline. */
    WINDOW,
    /** A least or greatest wait, or a greatest duration. */
    LINK,
    /** A capacity. */
    CAPACITY,
    /** Different settings at once, or a change without its time. */
    SETTING
  }

  /**
   * Checks that nothing is null.
   *
   * @param kind what sort of rule
   * @param text what is broken, with the tasks, the times and by how much
   */
  public Violation {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(text, "text");
  }

  /** The text. */
  @Override
  public String toString() {
    return text;
  }
}
