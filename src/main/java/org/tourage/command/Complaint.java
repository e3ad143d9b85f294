package org.tourage.command;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.util.Objects;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * What is wrong with one line or option.
 *
 * @param origin where it stands
 * @param problem what is wrong, and what would be right
 */
public record Complaint(Origin origin, BakeryException problem) implements Serializable {
  /**
   * Checks that nothing is null.
   *
   * @param origin where it stands
   * @param problem what is wrong, and what would be right
   */
  public Complaint {
    requireNonNull(origin, "origin");
    requireNonNull(problem, "problem");
  }

  /** What goes on like this is no recipe. */
  static Complaint stop(Origin origin, int complaints, int mostLines) {
    return new Complaint(
        origin,
        new BakeryException(
            Reason.OUT_OF_RANGE,
            "the file is not read further",
            complaints >= RecipeFile.MOST_COMPLAINTS
                ? complaints + " complaints"
                : "more than " + mostLines + " lines",
            "mend what is said above, or give a shorter file"));
  }

  /** {@code rolls.txt, line 12: not a mass: "2 sticks"; …} on one line. */
  @Override
  public String toString() {
    String text = Objects.toString(problem.getMessage());
    return origin + ": " + text.replaceAll("\\p{Cntrl}", " ").replaceAll(" {2,}", " ").strip();
  }
}
