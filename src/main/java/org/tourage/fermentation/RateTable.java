package org.tourage.fermentation;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.Locale;
import org.tourage.advice.BakeryException;

/** Finds a model of the library's tables by its name. */
final class RateTable {
  private RateTable() {}

  static <M extends RateModel> M named(String name, List<M> all, String problem) {
    String wanted = requireNonNull(name, "name").strip().toLowerCase(Locale.ROOT);
    return all.stream()
        .filter(m -> m.name().equals(wanted))
        .findFirst()
        .orElseThrow(
            () ->
                BakeryException.unknownName(
                    problem, name, all.stream().map(RateModel::name).toList()));
  }
}
