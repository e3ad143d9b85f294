package org.tourage.formula;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.measure.quantity.Dimensionless;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;

/**
 * A stage of a formula: its own lines, and the earlier stages that go into it. The lines hold what
 * of the stage goes into the product; where some of it is kept back, {@link #made()} tells how much
 * more is made.
 *
 * @param name the name, unique in the formula
 * @param kind what it is for
 * @param lines the lines weighed into this stage
 * @param taken the stages that go into this one, whole or in part
 * @param made what is made of the stage, by what of it goes into the product: 100 %, or more where
 *     some is kept back
 */
public record Stage(
    String name, StageKind kind, List<Line> lines, List<Take> taken, Amount<Dimensionless> made)
    implements Serializable {

  /** All of it goes on. */
  static final Amount<Dimensionless> WHOLE = PERCENT.amount(100);

  /**
   * Copies the lists.
   *
   * @param name the name, unique in the formula
   * @param kind what it is for
   * @param lines the lines weighed into this stage
   * @param taken the stages that go into this one, whole or in part
   * @param made what is made of the stage, by what of it goes into the product, 100 % or more
   */
  public Stage {
    requireNonNull(name, "name");
    requireNonNull(kind, "kind");
    lines = List.copyOf(lines);
    taken = List.copyOf(taken);
    if (made.in(FRACTION) < 1 - 1e-9) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "less of \"" + name + "\" is made than goes into the product",
          made.toString(),
          "give 100 % or more");
    }
  }

  /**
   * The names of the stages that go into this one, whole or in part.
   *
   * @return the names
   */
  public List<String> takes() {
    List<String> names = new ArrayList<>();
    for (Take take : taken) {
      names.add(take.stage());
    }
    return names;
  }

  /** The same with other lines. */
  Stage withLines(List<Line> value) {
    return new Stage(name, kind, value, taken, made);
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

  /** The name, what it takes and its lines. */
  @Override
  public String toString() {
    String before = taken.stream().map(t -> t + ", ").collect(Collectors.joining());
    String own = lines.stream().map(Line::toString).collect(Collectors.joining(", "));
    return (name + ": " + before + own).replaceAll(", $", "");
  }
}
