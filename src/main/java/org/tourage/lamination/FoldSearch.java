package org.tourage.lamination;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * Which sequences of folds reach a wanted range of fat layers: all of them up to a number of folds,
 * the ones with the fewest turns first, then those of one kind of fold, then those in the middle of
 * the range. With like faces the order of the folds does not change the count, so each choice of
 * folds is listed once, the folds with more panels first, while the sheet is thick.
 */
public final class FoldSearch {
  private static final int MOST_FOLDS = 8;
  private static final List<Fold> FOLDS = List.of(Fold.BOOK, Fold.LETTER, Fold.HALF);

  private FoldSearch() {}

  /**
   * A sequence that reaches the range.
   *
   * @param sequence the sequence
   * @param reason why it stands where it stands
   */
  public record Found(FoldSequence sequence, String reason) implements Serializable {
    /**
     * Checks that nothing is missing.
     *
     * @param sequence the sequence
     * @param reason why it stands where it stands
     */
    public Found {
      requireNonNull(sequence, "sequence");
      requireNonNull(reason, "reason");
    }

    /** The sequence and the reason. */
    @Override
    public String toString() {
      return sequence + " (" + reason + ")";
    }
  }

  /**
   * The sequences of book, letter and half folds that reach a range.
   *
   * @param lockIn how the fat is enclosed, with like faces
   * @param fewest the least number of fat layers, at least 1
   * @param most the greatest number, not below the least
   * @param mostFolds up to how many folds, 0 to 8
   * @return the sequences, best first; empty if none reaches the range
   * @throws BakeryException if the range goes down, the folds are too many, or the faces are unlike
   */
  public static List<Found> reach(LockIn lockIn, long fewest, long most, int mostFolds) {
    requireNonNull(lockIn, "lockIn");
    if (fewest < 1 || most < fewest || mostFolds < 0 || mostFolds > MOST_FOLDS) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no such search",
          fewest + " to " + most + " fat layers with up to " + mostFolds + " folds",
          "give a range that goes up from 1, and at most " + MOST_FOLDS + " folds");
    }
    if (!lockIn.hasLikeFaces()) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "the order of folds matters for a packet with unlike faces",
          lockIn.bands().toString(),
          "search with a lock-in whose faces are alike");
    }
    List<FoldSequence> found = new ArrayList<>();
    collect(FoldSequence.lockIn(lockIn), 0, mostFolds, fewest, most, found);
    double middle = Math.sqrt((double) fewest * most);
    found.sort(
        Comparator.comparingInt((FoldSequence s) -> s.folds().size())
            .thenComparingLong(s -> s.folds().stream().distinct().count())
            .thenComparingDouble(s -> Math.abs(Math.log(s.fatLayers().doubleValue() / middle))));
    int least = found.isEmpty() ? 0 : found.get(0).folds().size();
    return found.stream().map(s -> new Found(s, reason(s, least))).toList();
  }

  private static void collect(
      FoldSequence sequence,
      int firstKind,
      int left,
      long fewest,
      long most,
      List<FoldSequence> found) {
    BigInteger layers = sequence.fatLayers();
    if (layers.compareTo(BigInteger.valueOf(most)) > 0) {
      return;
    }
    if (layers.compareTo(BigInteger.valueOf(fewest)) >= 0) {
      found.add(sequence);
    }
    for (int kind = firstKind; left > 0 && kind < FOLDS.size(); kind++) {
      collect(sequence.fold(FOLDS.get(kind)), kind, left - 1, fewest, most, found);
    }
  }

  private static String reason(FoldSequence sequence, int least) {
    int folds = sequence.folds().size();
    String turns = folds + (folds == 1 ? " turn" : " turns");
    String rank = folds == least ? "the fewest" : folds - least + " more than the fewest";
    boolean oneKind = sequence.folds().stream().distinct().count() <= 1;
    return turns + ", " + rank + (oneKind ? ", one kind of fold" : "");
  }
}
