package org.tourage.formula;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.measure.quantity.Dimensionless;
import org.tourage.quantity.Amount;

/**
 * A stage of a formula: its own lines, and the earlier stages that go into it whole.
 *
 * @param name the name, unique in the formula
 * @param kind what it is for
 * @param lines the lines weighed into this stage
 * @param takes the names of the stages that go into this one whole
 */
public record Stage(String name, StageKind kind, List<Line> lines, List<String> takes)
    implements Serializable {

  /**
   * Copies the lists.
   *
   * @param name the name, unique in the formula
   * @param kind what it is for
   * @param lines the lines weighed into this stage
   * @param takes the names of the stages that go into this one whole
   */
  public Stage {
    requireNonNull(name, "name");
    requireNonNull(kind, "kind");
    lines = List.copyOf(lines);
    takes = List.copyOf(takes);
  }

  double share() {
    double sum = 0;
    for (Line line : lines) {
      sum += line.share();
    }
    return sum;
  }

  double flour() {
    double sum = 0;
    for (Line line : lines) {
      sum += line.isFlour() ? line.share() : 0;
    }
    return sum;
  }

  /**
   * The flour weighed into this stage, as a share of the total flour of the formula.
   *
   * @return the share in percent
   */
  public Amount<Dimensionless> flourShare() {
    return PERCENT.amount(flour() * 100);
  }

  /**
   * A line as baker's percent of the flour weighed into this stage.
   *
   * @param line one of the lines
   * @return the percentage; empty where the stage has no flour
   */
  public Optional<Amount<Dimensionless>> percentOfOwnFlour(Line line) {
    double flour = flour();
    return flour == 0 ? Optional.empty() : Optional.of(PERCENT.amount(line.share() / flour * 100));
  }

  /** The name and its lines. */
  @Override
  public String toString() {
    return name + ": " + lines.stream().map(Line::toString).collect(Collectors.joining(", "));
  }
}
