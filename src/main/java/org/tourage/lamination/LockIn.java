package org.tourage.lamination;

/**
 * How the fat is enclosed in the dough, or the dough in the fat. Layer counts of the closed packet
 * are those of the stack of bands, from the bottom up.
 */
public enum LockIn {
  /** Fat on one half of the sheet, the other half folded over: dough, fat, dough. */
  HALF("fat on one half, the other half folded over", 1, 2, false),
  /** Fat on two thirds, folded in three, the bare third first: dough, fat, dough, fat, dough. */
  THIRDS("fat on two thirds, folded in three with the bare third first", 2, 3, false),
  /** Fat in the middle, four flaps to the centre: dough, fat, dough. */
  ENVELOPE("fat in the middle, flaps folded to the centre", 1, 2, false),
  /** Fat outside, the inverted way: fat, dough, fat. */
  OUTSIDE("dough on one half of the fat, the other half folded over", 2, 1, true);

  private final String words;
  private final int fatBands;
  private final int doughBands;
  private final boolean fatOutside;

  LockIn(String words, int fatBands, int doughBands, boolean fatOutside) {
    this.words = words;
    this.fatBands = fatBands;
    this.doughBands = doughBands;
    this.fatOutside = fatOutside;
  }

  /**
   * What to do, in words.
   *
   * @return the words
   */
  public String words() {
    return words;
  }

  /**
   * Bands of fat in the closed packet.
   *
   * @return 1 or 2
   */
  public int fatBands() {
    return fatBands;
  }

  /**
   * Bands of dough in the closed packet.
   *
   * @return 1 to 3
   */
  public int doughBands() {
    return doughBands;
  }

  /**
   * Whether the outer faces are fat.
   *
   * @return true for the inverted way
   */
  public boolean fatOutside() {
    return fatOutside;
  }
}
