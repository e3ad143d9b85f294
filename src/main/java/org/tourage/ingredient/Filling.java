package org.tourage.ingredient;

import java.util.Locale;

/** How a cup or a spoon is filled. For flours it moves the mass by a quarter and more. */
public enum Filling {
  /** There is only one usual way. */
  AS_IS,
  /** Sifted into the cup and levelled. */
  SIFTED,
  /** Spooned into the cup and levelled. */
  SPOONED,
  /** The cup dipped into the bin and levelled. */
  SCOOPED,
  /** Pressed down. */
  PACKED,
  /** Not pressed down. */
  UNPACKED,
  /** Whole pieces. */
  WHOLE,
  /** Chopped pieces. */
  CHOPPED,
  /** Slices. */
  SLICED,
  /** Slivers. */
  SLIVERED,
  /** Ground. */
  GROUND,
  /** Whipped. */
  WHIPPED;

  /**
   * The word for it.
   *
   * @return for example {@code spooned}
   */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
