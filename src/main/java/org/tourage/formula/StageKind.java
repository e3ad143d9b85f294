package org.tourage.formula;

/** What a stage of a formula is for. */
public enum StageKind {
  /** A poolish, a sponge, a levain build: flour that ferments before the final dough. */
  PREFERMENT,
  /** Grains, seeds or flour soaked or scalded without yeast. */
  SOAKER,
  /** The final dough. */
  FINAL_DOUGH,
  /** The fat (and what is mixed into it) that is folded into the dough. */
  ROLL_IN,
  /** What goes into or onto a piece before it is baked. It is no part of the dough. */
  FILLING,
  /** What goes on the piece: wash, syrup, dusting. It is no part of the dough. */
  FINISH;

  /**
   * Whether the stage is part of the dough before any fat is rolled in.
   *
   * @return true for preferment, soaker and final dough
   */
  public boolean inDough() {
    return this != ROLL_IN && inPiece();
  }

  /**
   * Whether the stage is part of the dough that is cut into pieces, roll-in included.
   *
   * @return true for all but filling and finish
   */
  public boolean inPiece() {
    return this != FILLING && this != FINISH;
  }

  /**
   * Whether the stage is part of what goes into the oven.
   *
   * @return true for all but the finish, which is hardly more than a film
   */
  public boolean isBaked() {
    return this != FINISH;
  }
}
