package org.tourage.lamination;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * A fold of the sheet into equal panels that all lie one over another. For creases elsewhere see
 * {@link CreasePlan}.
 *
 * @param name what bakers call it
 * @param panels how many panels, at least 2
 * @param style how the panels follow one another
 */
public record Fold(String name, int panels, Style style) implements Serializable {

  /** How the panels follow one another; it matters where the two faces of the sheet are unlike. */
  public enum Style {
    /** To and fro: each panel the other way up than the one before. */
    ZIGZAG,
    /**
     * Rolled up flap over flap: each turn lays all that was folded over onto the next panel, so the
     * panels come to lie above and below the first by turns; in the folded stack the lower half of
     * them lies as it lay, the upper half turned.
     */
    INWARD
  }

  /** In half: two panels. */
  public static final Fold HALF = new Fold("fold in half", 2, Style.ZIGZAG);

  /** In three, like a letter, two flaps over the middle: also called a single fold. */
  public static final Fold LETTER = new Fold("letter fold", 3, Style.INWARD);

  /** In four, like a book, flaps to the seam and then closed: also called a double fold. */
  public static final Fold BOOK = new Fold("book fold", 4, Style.ZIGZAG);

  /** Two flaps to the middle without closing: it doubles the layers. */
  public static final Fold GATE = new Fold("gate fold", 2, Style.ZIGZAG);

  private static final int MOST_PANELS = 12;

  /**
   * Checks the panels.
   *
   * @param name what bakers call it
   * @param panels how many panels, at least 2
   * @param style how the panels follow one another
   */
  public Fold {
    requireNonNull(name, "name");
    requireNonNull(style, "style");
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
    return new Fold("zig-zag in " + panels, panels, Style.ZIGZAG);
  }

  /**
   * A sheet rolled up flat into any number of panels, from one end to the other.
   *
   * @param panels 2 to 12
   * @return the fold
   */
  public static Fold rolled(int panels) {
    return new Fold("rolled in " + panels, panels, Style.INWARD);
  }

  /** Whether a panel of the folded stack, counted from the bottom, lies turned. */
  boolean turned(int panel) {
    return style == Style.ZIGZAG ? panel % 2 == 1 : panel >= (panels + 1) / 2;
  }

  /** Contacts of top face on top face. */
  int topOnTop() {
    return style == Style.ZIGZAG ? panels / 2 : 1;
  }

  /** Contacts of bottom face on bottom face. */
  int bottomOnBottom() {
    return style == Style.ZIGZAG ? (panels - 1) / 2 : 0;
  }

  /** Contacts of a top face with a bottom face. */
  int topOnBottom() {
    return style == Style.ZIGZAG ? 0 : panels - 2;
  }

  /** Whether the upper face of the folded stack is the bottom face of the sheet. */
  boolean turnsTopDown() {
    return style == Style.INWARD || panels % 2 == 0;
  }

  @Override
  public String toString() {
    return name;
  }
}
