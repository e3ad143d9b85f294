package org.tourage.formula;

import static org.tourage.quantity.BakeryUnits.GRAM;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.ingredient.Ingredient;
import org.tourage.internal.Numbers;
import org.tourage.internal.TextTable;
import org.tourage.quantity.AmountFormat;

/** What {@link FormulaTargets#solve()} has found. Immutable and serialisable. */
public final class TargetSolution implements Explained, Serializable {
  private static final long serialVersionUID = 1L;
  private static final String SOURCE = "least squares under bounds";

  private final FormulaTargets targets;
  private final Batch batch;
  private final List<Missed> missed;
  private final double[] grams;

  TargetSolution(FormulaTargets targets, Batch batch, List<Missed> missed, double[] grams) {
    this.targets = targets;
    this.batch = batch;
    this.missed = List.copyOf(missed);
    this.grams = grams.clone();
  }

  /**
   * A target that could not be met.
   *
   * @param target its name
   * @param wanted what was wanted, in words
   * @param reached what was reached, in words
   * @param conflicts the targets, each of which would have to be given up to meet this one; empty
   *     if only the bounds stand in the way
   */
  public record Missed(String target, String wanted, String reached, List<String> conflicts)
      implements Serializable {
    /**
     * Copies the list.
     *
     * @param target its name
     * @param wanted what was wanted, in words
     * @param reached what was reached, in words
     * @param conflicts the targets, each of which would have to be given up to meet this one
     */
    public Missed {
      conflicts = List.copyOf(conflicts);
    }

    /** {@code hydration 65 % not met: 60 %; it conflicts with dough}. */
    @Override
    public String toString() {
      return target
          + " "
          + wanted
          + " not met: "
          + reached
          + (conflicts.isEmpty()
              ? "; the bounds stand in the way"
              : "; it conflicts with " + String.join(" or ", conflicts));
    }
  }

  /**
   * What was wanted.
   *
   * @return the targets
   */
  public FormulaTargets targets() {
    return targets;
  }

  /**
   * The batch that meets them as well as can be.
   *
   * @return the batch
   */
  public Batch batch() {
    return batch;
  }

  /**
   * What could not be met.
   *
   * @return the targets that are missed; none if all is met
   */
  public List<Missed> missed() {
    return missed;
  }

  /**
   * Whether every target is met.
   *
   * @return true if none is missed
   */
  public boolean met() {
    return missed.isEmpty();
  }

  /**
   * How much a target moves when a line gets one gram more, the others as they are.
   *
   * @param target the name of the target, for example {@code hydration}
   * @param ingredient the name of the ingredient; its line that may move
   * @return share of flour for a gram, or for a mass or cost that per gram
   * @throws BakeryException if there is no such target, or no line of it may move
   */
  public double sensitivity(String target, String ingredient) {
    List<TargetRow> rows = targets.rows();
    TargetRow wanted =
        rows.stream()
            .filter(r -> r.name().equals(target))
            .findFirst()
            .orElseThrow(
                () ->
                    BakeryException.unknownName(
                        "no such target", target, rows.stream().map(TargetRow::name).toList()));
    Ingredient moved = targets.start().formula().ingredient(ingredient);
    FormulaTargets.Move move =
        targets.moves().stream()
            .filter(m -> ingredient(m).equals(moved))
            .findFirst()
            .orElseThrow(
                () ->
                    new BakeryException(
                        Reason.UNKNOWN_NAME,
                        "no line of this ingredient may move",
                        "\"" + ingredient + "\"",
                        "let it move with move(…)"));
    return wanted.slope(grams, move.line());
  }

  private Ingredient ingredient(FormulaTargets.Move move) {
    return targets.start().formula().lines().get(move.line()).ingredient();
  }

  /**
   * How each target hangs on each line that may move, for 10 g more of it.
   *
   * @return a table
   */
  public String sensitivities() {
    TextTable table = new TextTable(1);
    List<TargetRow> rows = targets.rows();
    List<String> head = new ArrayList<>(List.of("10 g more of"));
    rows.forEach(r -> head.add(r.name()));
    table.row(head.toArray(String[]::new));
    for (FormulaTargets.Move move : targets.moves()) {
      List<String> row = new ArrayList<>();
      String stage = targets.start().formula().stageOf(move.line()).name();
      row.add(ingredient(move).name() + " (" + stage + ")");
      for (TargetRow target : rows) {
        double by = 10 * target.slope(grams, move.line());
        row.add(
            target.isRatio()
                ? Numbers.decimals(100 * by, 2) + " %"
                : Numbers.significant(by, 3) + (target.isMoney() ? "" : " g"));
      }
      table.row(row.toArray(String[]::new));
    }
    return table.toString();
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>();
    for (Missed miss : missed) {
      advice.add(
          Advice.of(
              "TARGET_MISSED",
              miss.toString(),
              "Widen the bounds, let another line move, or give up a target"));
    }
    for (TargetRow row : targets.rows()) {
      List<Ingredient> unknown = row.unknownIn(targets.start().formula());
      if (!unknown.isEmpty()) {
        advice.add(
            Advice.of(
                "FIGURE_UNKNOWN",
                "the "
                    + row.name()
                    + " of "
                    + unknown.stream().map(Ingredient::name).collect(Collectors.joining(", "))
                    + (unknown.size() == 1 ? " is" : " are")
                    + " not known and left out: there is at least what is reached",
                "Give an ingredient of your own with the figure from its label"));
      }
    }
    return advice;
  }

  @Override
  public Working working() {
    List<WorkedLine> lines = new ArrayList<>();
    AmountFormat format = AmountFormat.metric();
    for (TargetRow row : targets.rows()) {
      lines.add(
          new WorkedLine(
              row.name(),
              row.isCeiling() ? "at most" : "wanted",
              row.words(row.goal) + ", reached " + row.words(row.reached(grams)),
              SOURCE));
    }
    for (FormulaTargets.Move move : targets.moves()) {
      lines.add(
          new WorkedLine(
              ingredient(move).name(),
              "from "
                  + format.mass(GRAM.amount(move.low()))
                  + " to "
                  + format.mass(GRAM.amount(move.high())),
              format.mass(targets.start().weight(move.line()))
                  + " → "
                  + format.mass(GRAM.amount(grams[move.line()])),
              SOURCE));
    }
    return new Working(lines);
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof TargetSolution that
        && targets.equals(that.targets)
        && batch.equals(that.batch)
        && missed.equals(that.missed)
        && Arrays.equals(grams, that.grams);
  }

  @Override
  public int hashCode() {
    return Objects.hash(targets, batch, missed);
  }

  /** Each target with what was reached. */
  @Override
  public String toString() {
    return targets.rows().stream()
            .map(r -> r.name() + " " + r.words(r.reached(grams)))
            .collect(Collectors.joining(", "))
        + missed.stream().map(m -> "\n" + m).collect(Collectors.joining());
  }
}
