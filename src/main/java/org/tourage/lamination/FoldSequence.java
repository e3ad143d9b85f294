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
import org.tourage.internal.Lists;

/**
 * A lock-in and the folds that follow, with exact layer counts of any size at a cost of one step a
 * fold. Faces of the same kind that touch become one layer: with dough on both faces there is
 * always one dough layer more than there are fat layers, whatever the kind and order of the folds.
 * With unlike faces the kind of fold matters: a zig-zag brings like faces together, flaps folded
 * inwards do not (derived from the stack of bands).
 *
 * <pre>{@code
 * FoldSequence.lockIn(LockIn.HALF).fold(Fold.BOOK).fold(Fold.LETTER).fatLayers(); // 12
 * }</pre>
 *
 * <p>An interface, so that the start of a sequence can't be called on a chain of folds, where it
 * would drop what came before. Immutable and serialisable.
 */
public sealed interface FoldSequence extends Explained, Serializable permits FoldList {

  /**
   * How the fat is enclosed.
   *
   * @return the lock-in
   */
  LockIn lockIn();

  /**
   * The folds.
   *
   * @return first to last
   */
  List<Fold> folds();

  /**
   * A sequence of folds.
   *
   * @param lockIn how the fat is enclosed
   * @param folds the folds, first to last
   * @return the sequence
   */
  static FoldSequence of(LockIn lockIn, Fold... folds) {
    return new FoldList(lockIn, Lists.copy(folds, "folds"));
  }

  /**
   * A sequence of folds.
   *
   * @param lockIn how the fat is enclosed
   * @param folds the folds, first to last
   * @return the sequence
   */
  static FoldSequence of(LockIn lockIn, List<Fold> folds) {
    return new FoldList(lockIn, Lists.copy(folds, "folds"));
  }

  /**
   * A sequence without folds.
   *
   * @param lockIn how the fat is enclosed
   * @return the sequence
   */
  static FoldSequence lockIn(LockIn lockIn) {
    return new FoldList(lockIn, List.of());
  }

  /**
   * This sequence with one more fold.
   *
   * @param fold the fold
   * @return the longer sequence
   */
  default FoldSequence fold(Fold fold) {
    List<Fold> more = new ArrayList<>(folds());
    more.add(requireNonNull(fold, "fold"));
    return new FoldList(lockIn(), more);
  }

  /**
   * The layers after all folds.
   *
   * @return the count, exact
   */
  default LayerCount count() {
    LayerCount.Counter counter = new LayerCount.Counter(lockIn());
    for (int i = 0; i < folds().size(); i++) {
      counter.fold(folds().get(i));
    }
    return counter.count();
  }

  /**
   * The layers after the lock-in and after each fold.
   *
   * @return one count more than there are folds
   */
  default List<LayerCount> counts() {
    List<LayerCount> counts = new ArrayList<>();
    LayerCount.Counter counter = new LayerCount.Counter(lockIn());
    counts.add(counter.count());
    for (Fold fold : folds()) {
      counts.add(counter.fold(fold).count());
    }
    return counts;
  }

  /**
   * The explicit stack of bands, each with its share of the thickness.
   *
   * @param fatByVolume the share of fat in the volume, above 0 and below 1
   * @return the stack
   * @throws org.tourage.advice.BakeryException if there would be more bands than a stack can hold
   */
  default LayerStack stack(double fatByVolume) {
    LayerStack.checkSize(layers());
    LayerStack stack = LayerStack.of(lockIn(), fatByVolume);
    for (Fold fold : folds()) {
      stack = stack.fold(fold);
    }
    return stack;
  }

  /**
   * The product of the panels of all folds.
   *
   * @return 1 without folds
   */
  default BigInteger multiplier() {
    return count().fatByMultiplication().divide(BigInteger.valueOf(lockIn().fatBands()));
  }

  /**
   * Distinct layers of fat.
   *
   * @return the count, exact
   */
  default BigInteger fatLayers() {
    return count().fat();
  }

  /**
   * Distinct layers of dough, touching faces counted as one.
   *
   * @return the count, exact
   */
  default BigInteger doughLayers() {
    return count().dough();
  }

  /**
   * Layers of dough as counted by multiplication, touching faces counted twice.
   *
   * @return the count, exact
   */
  default BigInteger doughLayersByMultiplication() {
    return count().doughByMultiplication();
  }

  /**
   * Distinct layers of fat and dough.
   *
   * @return the count, exact
   */
  default BigInteger layers() {
    return count().layers();
  }

  @Override
  default List<Advice> advice() {
    return lockIn().hasLikeFaces()
        ? List.of()
        : List.of(
            Advice.of(
                "UNLIKE_FACES",
                "the packet has " + lockIn().bands().get(0) + " below and another face above",
                "The kind of fold then matters, and bare fat sticks to the bench"));
  }

  @Override
  default Working working() {
    List<WorkedLine> lines = new ArrayList<>();
    List<LayerCount> counts = counts();
    boolean fatInside = !lockIn().fatOutside();
    BigInteger inside = fatInside ? counts.get(0).fat() : counts.get(0).dough();
    String name = fatInside ? "fat layers" : "dough layers";
    String panels =
        folds().isEmpty()
            ? "1"
            : folds().stream()
                .map(f -> String.valueOf(f.panels()))
                .collect(Collectors.joining(" × "));
    LayerCount last = counts.get(counts.size() - 1);
    BigInteger product = fatInside ? last.fatByMultiplication() : last.doughByMultiplication();
    lines.add(
        new WorkedLine(
            name,
            "bands at lock-in × panels of each fold",
            inside + " × " + panels + " = " + product,
            "common practice"));
    BigInteger fused = product.subtract(fatInside ? last.fat() : last.dough());
    if (fused.signum() > 0) {
      lines.add(
          new WorkedLine(
              "distinct " + name,
              "less the faces that touch",
              product + " − " + fused + " = " + product.subtract(fused),
              "derived from the stack of bands"));
    }
    String other = fatInside ? "dough layers" : "fat layers";
    BigInteger counted = fatInside ? last.doughByMultiplication() : last.fatByMultiplication();
    BigInteger distinct = fatInside ? last.dough() : last.fat();
    lines.add(
        new WorkedLine(
            other,
            "bands × panels, less the faces that touch",
            counted + " − " + counted.subtract(distinct) + " = " + distinct,
            "derived from the stack of bands"));
    return new Working(lines);
  }
}
