package org.tourage.lamination;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.stream.Collectors;

/** The one kind of sequence. */
record FoldList(LockIn lockIn, List<Fold> folds) implements FoldSequence {

  FoldList {
    requireNonNull(lockIn, "lockIn");
    folds = List.copyOf(folds);
  }

  /** {@code lock-in half, book fold, letter fold: 12 fat layers, 13 dough layers}. */
  @Override
  public String toString() {
    String list = folds.stream().map(f -> ", " + f.name()).collect(Collectors.joining());
    return "lock-in " + lockIn.name() + list + ": " + count();
  }
}
