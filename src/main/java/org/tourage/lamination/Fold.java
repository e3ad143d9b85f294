package org.tourage.lamination;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * A fold of the sheet into equal panels that all lie one over another.
 *
 * @param name what bakers call it
 * @param panels how many panels, at least 2
 */
public record Fold(String name, int panels) implements Serializable {
  /** In half: two panels. */
  public static final Fold HALF = new Fold("fold in half", 2);

  /** In three, like a letter: also called a single fold. */
  public static final Fold LETTER = new Fold("letter fold", 3);

  /** In four, like a book: also called a double fold. */
  public static final Fold BOOK = new Fold("book fold", 4);

  private static final int MOST_PANELS = 12;

  /**
   * Checks the panels.
   *
   * @param name what bakers call it
   * @param panels how many panels, at least 2
   */
  public Fold {
    requireNonNull(name, "name");
    if (panels < 2 || panels > MOST_PANELS) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a fold can't have this many panels",
          panels + " panels",
          "give 2 to " + MOST_PANELS);
    }
  }

  /**
   * A zig-zag of any number of panels.
   *
   * @param panels 2 to 12
   * @return the fold
   */
  public static Fold zigzag(int panels) {
    return new Fold("zig-zag in " + panels, panels);
  }

  @Override
  public String toString() {
    return name;
  }
}
