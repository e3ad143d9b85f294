package org.tourage.lamination;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.tourage.advice.Advice;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;

/**
 * A lock-in and the folds that follow, with exact layer counts of any size. Faces of the same kind
 * that touch become one layer, so with dough outside there is always one dough layer more than
 * there are fat layers, whatever the order of the folds (derived from the stack of bands).
 *
 * <pre>{@code
 * FoldSequence.lockIn(LockIn.HALF).fold(Fold.BOOK).fold(Fold.LETTER).fatLayers(); // 12
 * }</pre>
 *
 * @param lockIn how the fat is enclosed
 * @param folds the folds, first to last
 */
public record FoldSequence(LockIn lockIn, List<Fold> folds) implements Explained, Serializable {

  /**
   * Copies the list.
   *
   * @param lockIn how the fat is enclosed
   * @param folds the folds, first to last
   */
  public FoldSequence {
    requireNonNull(lockIn, "lockIn");
    folds = List.copyOf(folds);
  }

  /**
   * A sequence without folds.
   *
   * @param lockIn how the fat is enclosed
   * @return the sequence
   */
  public static FoldSequence lockIn(LockIn lockIn) {
    return new FoldSequence(lockIn, List.of());
  }

  /**
   * This sequence with one more fold.
   *
   * @param fold the fold
   * @return the longer sequence
   */
  public FoldSequence fold(Fold fold) {
    List<Fold> more = new ArrayList<>(folds);
    more.add(requireNonNull(fold, "fold"));
    return new FoldSequence(lockIn, more);
  }

  /**
   * The product of the panels of all folds.
   *
   * @return 1 without folds
   */
  public BigInteger multiplier() {
    BigInteger product = BigInteger.ONE;
    for (Fold fold : folds) {
      product = product.multiply(BigInteger.valueOf(fold.panels()));
    }
    return product;
  }

  /**
   * Distinct layers of fat.
   *
   * @return the count, exact
   */
  public BigInteger fatLayers() {
    return lockIn.fatOutside()
        ? doughLayers().add(BigInteger.ONE)
        : multiplier().multiply(BigInteger.valueOf(lockIn.fatBands()));
  }

  /**
   * Distinct layers of dough, touching faces counted as one.
   *
   * @return the count, exact
   */
  public BigInteger doughLayers() {
    return lockIn.fatOutside()
        ? multiplier().multiply(BigInteger.valueOf(lockIn.doughBands()))
        : fatLayers().add(BigInteger.ONE);
  }

  /**
   * Layers of dough as counted by multiplication, touching faces counted twice.
   *
   * @return the count, exact
   */
  public BigInteger doughLayersByMultiplication() {
    return multiplier().multiply(BigInteger.valueOf(lockIn.doughBands()));
  }

  /**
   * Distinct layers of fat and dough.
   *
   * @return the count, exact
   */
  public BigInteger layers() {
    return fatLayers().add(doughLayers());
  }

  @Override
  public List<Advice> advice() {
    return List.of();
  }

  @Override
  public Working working() {
    String panels =
        folds.isEmpty()
            ? "1"
            : folds.stream()
                .map(f -> String.valueOf(f.panels()))
                .collect(Collectors.joining(" × "));
    String start = String.valueOf(lockIn.fatOutside() ? lockIn.doughBands() : lockIn.fatBands());
    String multiplied = lockIn.fatOutside() ? "dough layers" : "fat layers";
    String other = lockIn.fatOutside() ? "fat layers" : "dough layers";
    BigInteger first = lockIn.fatOutside() ? doughLayers() : fatLayers();
    return Working.of(
        new WorkedLine(
            multiplied,
            "bands at lock-in × panels of each fold",
            start + " × " + panels + " = " + first,
            "common practice"),
        new WorkedLine(
            other,
            multiplied + " + 1, as touching faces become one",
            first + " + 1 = " + first.add(BigInteger.ONE),
            "derived from the stack of bands"));
  }

  /** {@code lock-in half, book fold, letter fold: 12 fat layers, 13 dough layers}. */
  @Override
  public String toString() {
    String list = folds.stream().map(f -> ", " + f.name()).collect(Collectors.joining());
    return "lock-in "
        + lockIn.name().toLowerCase(java.util.Locale.ROOT)
        + list
        + ": "
        + fatLayers()
        + " fat layers, "
        + doughLayers()
        + " dough layers";
  }
}
