package org.tourage.advice;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A worked solution: the lines in the order in which they are computed.
 *
 * @param lines the lines, first to last
 */
public record Working(List<WorkedLine> lines) implements Serializable {

  /**
   * Copies the lines.
   *
   * @param lines the lines, first to last
   */
  public Working {
    lines = List.copyOf(lines);
  }

  /**
   * A working of the given lines.
   *
   * @param lines the lines
   * @return the working
   */
  public static Working of(WorkedLine... lines) {
    return new Working(List.of(lines));
  }

  /**
   * This working followed by another.
   *
   * @param next what follows
   * @return both
   */
  public Working then(Working next) {
    List<WorkedLine> both = new ArrayList<>(lines);
    both.addAll(next.lines);
    return new Working(both);
  }

  /** One line of text a line of working. */
  @Override
  public String toString() {
    return lines.stream().map(WorkedLine::toString).collect(Collectors.joining("\n"));
  }
}
