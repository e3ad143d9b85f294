package org.tourage.lamination;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.util.List;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Lists;

/**
 * How the fat is enclosed in the dough, or the dough in the fat: the bands of the closed packet
 * from the bottom up. Bands of one kind never touch; where they would, they are one.
 *
 * @param name one or two words
 * @param words what to do
 * @param bands the bands of the closed packet, bottom to top, at least one of each kind
 * @param diamond whether the cover lies as a diamond and its corners are folded to the centre
 */
public record LockIn(String name, String words, List<Band> bands, boolean diamond)
    implements Serializable {
  private static final Band D = Band.DOUGH;
  private static final Band F = Band.FAT;
  private static final int MOST_BLOCKS = 500;
  private static final int MOST_BANDS = 2 * MOST_BLOCKS + 1;

  /** Fat on one half of the sheet, the other half folded over: dough, fat, dough. */
  public static final LockIn HALF =
      new LockIn("half", "fat on one half, the other half folded over", List.of(D, F, D), false);

  /** Fat on two thirds, folded in three, the bare third first: dough, fat, dough, fat, dough. */
  public static final LockIn THIRDS =
      new LockIn(
          "thirds",
          "fat on two thirds, folded in three with the bare third first",
          List.of(D, F, D, F, D),
          false);

  /**
   * A square block set as a diamond on a square of dough, four corners to the centre: dough, fat,
   * dough.
   */
  public static final LockIn ENVELOPE =
      new LockIn(
          "envelope", "fat in the middle, flaps folded to the centre", List.of(D, F, D), true);

  /**
   * Fat outside, the inverted way: fat, dough, fat. The fat is commonly mixed with a third to a
   * half of its mass of flour and rolled to a sheet of its own.
   */
  public static final LockIn OUTSIDE =
      new LockIn(
          "outside",
          "dough on one half of the fat, the other half folded over",
          List.of(F, D, F),
          false);

  /**
   * Checks the bands.
   *
   * @param name one or two words
   * @param words what to do
   * @param bands the bands of the closed packet, bottom to top, at least one of each kind
   * @param diamond whether the cover lies as a diamond and its corners are folded to the centre
   */
  public LockIn {
    requireNonNull(name, "name");
    requireNonNull(words, "words");
    bands = Lists.copy(bands, "bands");
    checkSize(bands.size());
    boolean touching = false;
    for (int i = 1; i < bands.size(); i++) {
      touching |= bands.get(i) == bands.get(i - 1);
    }
    if (touching || !bands.contains(Band.DOUGH) || !bands.contains(Band.FAT)) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "these bands are no packet",
          bands.toString(),
          "give dough and fat in turn, for example DOUGH, FAT, DOUGH");
    }
    if (diamond && (bands.size() != 3)) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "an envelope encloses one block",
          bands.toString(),
          "give three bands, for example DOUGH, FAT, DOUGH");
    }
  }

  private static void checkSize(int bands) {
    if (bands > MOST_BANDS) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a packet can't have this many bands",
          bands + " bands",
          "give up to " + MOST_BANDS);
    }
  }

  /**
   * Any packet, such as several fat blocks between sheets of dough.
   *
   * @param name one or two words
   * @param bands the bands of the closed packet, bottom to top, dough and fat in turn
   * @return the lock-in
   * @throws BakeryException if two bands of one kind touch, or one kind is missing
   */
  public static LockIn of(String name, Band... bands) {
    List<Band> all = Lists.copy(bands, "bands");
    return new LockIn(name, "stack " + all, all, false);
  }

  /**
   * Several fat blocks, each between two sheets of dough.
   *
   * @param blocks how many, 1 to 500
   * @return the lock-in
   * @throws BakeryException if there is no block, or more than a packet can hold
   */
  public static LockIn blocks(int blocks) {
    if (blocks < 1 || blocks > MOST_BLOCKS) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "these are no packet",
          blocks + " blocks",
          "give 1 to " + MOST_BLOCKS + " blocks");
    }
    Band[] bands = new Band[2 * blocks + 1];
    for (int i = 0; i < bands.length; i++) {
      bands[i] = i % 2 == 0 ? D : F;
    }
    return of(blocks + " blocks", bands);
  }

  /**
   * Bands of fat in the closed packet.
   *
   * @return 1 or more
   */
  public int fatBands() {
    return count(Band.FAT);
  }

  /**
   * Bands of dough in the closed packet.
   *
   * @return 1 or more
   */
  public int doughBands() {
    return count(Band.DOUGH);
  }

  private int count(Band kind) {
    return (int) bands.stream().filter(b -> b == kind).count();
  }

  /**
   * Whether the bottom face is fat.
   *
   * @return true for the inverted way
   */
  public boolean fatOutside() {
    return bands.get(0) == Band.FAT;
  }

  /**
   * Whether both faces are of one kind.
   *
   * @return true for all the usual lock-ins
   */
  public boolean hasLikeFaces() {
    return bands.get(0) == bands.get(bands.size() - 1);
  }

  /** The name. */
  @Override
  public String toString() {
    return name;
  }
}
