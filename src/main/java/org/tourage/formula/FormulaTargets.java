package org.tourage.formula;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.ingredient.Ingredient;
import org.tourage.quantity.Given;

/**
 * Finds the weights of a batch that meet targets: say what is wanted, which lines may move and
 * within which bounds, and {@link #solve()} gives the batch, what could not be met, and how each
 * target hangs on each line. Every target is linear in the weights (a ratio r of A to B is A − r·B
 * = 0), so that the answer is the least squares under bounds; of all answers that are as good it is
 * the one closest to the batch at the start. Immutable; each method returns a copy.
 *
 * <pre>{@code
 * FormulaTargets.of(batch).move("water").move("salt").hydration(percent(65)).salt(percent(2)).solve();
 * }</pre>
 */
public final class FormulaTargets implements Serializable {
  private static final long serialVersionUID = 1L;

  /** A target within this share of flour or of its mass is met. */
  private static final double MET = 1e-7;

  /** The batch at the start. */
  private final Batch start;

  /** The lines that may move. */
  private final List<Move> moves;

  /** What is wanted. */
  private final List<Target> targets;

  /** A line that may move. */
  record Move(int line, double low, double high) implements Serializable {}

  private FormulaTargets(Batch start, List<Move> moves, List<Target> targets) {
    this.start = start;
    this.moves = List.copyOf(moves);
    this.targets = List.copyOf(targets);
  }

  /**
   * Starts from a batch; nothing may move yet.
   *
   * @param batch the batch
   * @return targets without any
   */
  public static FormulaTargets of(Batch batch) {
    return new FormulaTargets(requireNonNull(batch, "batch"), List.of(), List.of());
  }

  /**
   * Lets a line move from nothing to ten times the flour.
   *
   * @param ingredient the name of the ingredient; its line in the final dough, or else its first
   * @return the targets
   * @throws BakeryException if the formula has no such line
   */
  public FormulaTargets move(String ingredient) {
    return move(ingredient, GRAM.amount(0), start.flour().multiply(10));
  }

  /**
   * Lets a line move within bounds.
   *
   * @param ingredient the name of the ingredient; its line in the final dough, or else its first
   * @param low the least mass
   * @param high the greatest mass
   * @return the targets
   * @throws BakeryException if the formula has no such line, or the bounds are crossed
   */
  public FormulaTargets move(String ingredient, Quantity<Mass> low, Quantity<Mass> high) {
    Formula formula = start.formula();
    int found = -1;
    for (int i = 0; i < formula.lines().size(); i++) {
      boolean it = formula.lines().get(i).ingredient().equals(formula.ingredient(ingredient));
      boolean better =
          found < 0
              || (formula.stageOf(i).kind() == StageKind.FINAL_DOUGH
                  && formula.stageOf(found).kind() != StageKind.FINAL_DOUGH);
      found = it && better ? i : found;
    }
    return move(found, low, high);
  }

  /**
   * Lets a line of a named stage move within bounds.
   *
   * @param stage the name of the stage
   * @param ingredient the name of the ingredient
   * @param low the least mass
   * @param high the greatest mass
   * @return the targets
   * @throws BakeryException if there is no such line, or the bounds are crossed
   */
  public FormulaTargets move(
      String stage, String ingredient, Quantity<Mass> low, Quantity<Mass> high) {
    Formula formula = start.formula();
    Stage wanted = formula.stage(stage);
    for (int i = 0; i < formula.lines().size(); i++) {
      if (formula.stageOf(i).equals(wanted)
          && formula.lines().get(i).ingredient().equals(formula.ingredient(ingredient))) {
        return move(i, low, high);
      }
    }
    throw new BakeryException(
        Reason.UNKNOWN_NAME,
        "no such line in the stage",
        "\"" + ingredient + "\" in " + stage,
        "name a line of " + wanted);
  }

  private FormulaTargets move(int line, Quantity<Mass> low, Quantity<Mass> high) {
    double least = GRAM.measure("the low", low);
    double most = GRAM.measure("the high", high);
    if (!(least >= 0) || !(most >= least)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a line can't move within these bounds",
          Given.mass("the low", low) + " to " + Given.mass("the high", high),
          "give masses from 0 g, the lower one first");
    }
    List<Move> more = new ArrayList<>(moves);
    more.removeIf(m -> m.line() == line);
    more.add(new Move(line, least, most));
    return new FormulaTargets(start, more, targets);
  }

  /**
   * Wants something.
   *
   * @param target the target; one of the same name that was there before gives way
   * @return the targets
   * @throws BakeryException if the formula lacks a stage that the target names
   */
  public FormulaTargets want(Target target) {
    new TargetRow(requireNonNull(target, "target"), start.formula());
    List<Target> more = new ArrayList<>(targets);
    more.removeIf(t -> t.name().equals(target.name()));
    more.add(target);
    return new FormulaTargets(start, moves, more);
  }

  private FormulaTargets ratio(
      String name, Figure part, Figure whole, Quantity<Dimensionless> wanted) {
    return want(new Target.Ratio(name, part, whole, Given.ratio("the wanted", wanted)));
  }

  /**
   * Wants a true hydration: the water of the dough that is not the flour's own, over its flour.
   *
   * @param wanted the hydration
   * @return the targets
   */
  public FormulaTargets hydration(Quantity<Dimensionless> wanted) {
    return ratio("hydration", Figure.WATER, Figure.DOUGH_FLOUR, wanted);
  }

  /**
   * Wants salt by the flour, that of salted fat included, as sodium × 2.5.
   *
   * @param wanted the share
   * @return the targets
   */
  public FormulaTargets salt(Quantity<Dimensionless> wanted) {
    return ratio("salt", Figure.SALT, Figure.FLOUR, wanted);
  }

  /**
   * Wants sugars by the flour, without those of the flour.
   *
   * @param wanted the share
   * @return the targets
   */
  public FormulaTargets sugars(Quantity<Dimensionless> wanted) {
    return ratio("sugars", Figure.SUGARS, Figure.FLOUR, wanted);
  }

  /**
   * Wants fat by the flour, roll-in included.
   *
   * @param wanted the share
   * @return the targets
   */
  public FormulaTargets fat(Quantity<Dimensionless> wanted) {
    return ratio("fat", Figure.FAT, Figure.FLOUR, wanted);
  }

  /**
   * Wants a share of the flour in preferments.
   *
   * @param wanted the share
   * @return the targets
   */
  public FormulaTargets prefermentedFlour(Quantity<Dimensionless> wanted) {
    return ratio("prefermented flour", Figure.PREFERMENTED_FLOUR, Figure.FLOUR, wanted);
  }

  /**
   * Wants an inoculation: all that a stage takes from earlier stages, over the flour that is
   * weighed into it.
   *
   * @param stage the name of the stage
   * @param wanted the share
   * @return the targets
   * @throws BakeryException if there is no such stage, or it takes no other
   */
  public FormulaTargets inoculation(String stage, Quantity<Dimensionless> wanted) {
    Stage build = start.formula().stage(stage);
    if (build.takes().isEmpty()) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "nothing inoculates this stage",
          stage,
          "name a stage that takes an earlier one");
    }
    return ratio("inoculation of " + stage, Figure.takenBy(stage), Figure.flourOf(stage), wanted);
  }

  /**
   * Wants a mass of dough, roll-in included.
   *
   * @param wanted the mass
   * @return the targets
   */
  public FormulaTargets dough(Quantity<Mass> wanted) {
    return want(new Target.Mass("dough", Figure.DOUGH, Given.mass("the wanted", wanted)));
  }

  /**
   * Wants the dough of an order of pieces.
   *
   * @param order the order
   * @return the targets
   */
  public FormulaTargets pieces(PieceOrder order) {
    return dough(order.dough());
  }

  /**
   * Sets a ceiling to the cost of the dough. Ingredients without a price are left out of it, and
   * the solution says so.
   *
   * @param most the greatest cost, in any currency
   * @param perKilogram what a kilogram of an ingredient costs, by its name
   * @return the targets
   * @throws BakeryException if the formula lacks a named ingredient or a price is negative
   */
  public FormulaTargets costAtMost(double most, Map<String, Double> perKilogram) {
    Map<Ingredient, Double> prices = new LinkedHashMap<>();
    perKilogram.forEach(
        (name, price) -> {
          Figure.checkPrice(name, price);
          prices.put(start.formula().ingredient(name), price);
        });
    return want(new Target.Ceiling("cost", Figure.cost(prices), most));
  }

  /**
   * Solves.
   *
   * @return the solution; look at {@link TargetSolution#missed()}
   * @throws BakeryException if nothing is wanted or nothing may move
   */
  public TargetSolution solve() {
    if (targets.isEmpty() || moves.isEmpty()) {
      throw new BakeryException(
          Reason.MISSING,
          targets.isEmpty() ? "nothing is wanted" : "no line may move",
          start.formula().name(),
          "add targets, and lines with move(…)");
    }
    TargetFit fit = new TargetFit(start, moves);
    List<TargetRow> rows = rows();
    double[] grams = fit.solve(rows);
    List<TargetSolution.Missed> missed = new ArrayList<>();
    for (TargetRow row : rows) {
      if (row.miss(grams) > MET) {
        missed.add(
            new TargetSolution.Missed(
                row.name(),
                row.words(row.goal),
                row.words(row.reached(grams)),
                conflicts(row, rows, fit)));
      }
    }
    return new TargetSolution(this, batch(grams), missed, grams);
  }

  /** The other targets without any one of which this one could be met. */
  private static List<String> conflicts(TargetRow target, List<TargetRow> rows, TargetFit fit) {
    List<String> names = new ArrayList<>();
    for (TargetRow other : rows) {
      if (other != target) {
        List<TargetRow> rest = new ArrayList<>(rows);
        rest.remove(other);
        if (target.miss(fit.solve(rest)) <= MET) {
          names.add(other.name());
        }
      }
    }
    return names;
  }

  List<TargetRow> rows() {
    return targets.stream().map(t -> new TargetRow(t, start.formula())).toList();
  }

  List<Move> moves() {
    return moves;
  }

  Batch start() {
    return start;
  }

  private Batch batch(double[] grams) {
    double old = start.flour().in(GRAM);
    int[] index = {0};
    Formula.Changed changed =
        start
            .formula()
            .replace(
                (stage, line) ->
                    List.of(
                        new Formula.Part(
                            line.ingredient(), PERCENT.amount(100 * grams[index[0]++] / old))));
    return changed.formula().forFlour(GRAM.amount(old * changed.flour().in(FRACTION)));
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof FormulaTargets that
        && start.equals(that.start)
        && moves.equals(that.moves)
        && targets.equals(that.targets);
  }

  @Override
  public int hashCode() {
    return Objects.hash(start, moves, targets);
  }

  /** What is wanted, by name. */
  @Override
  public String toString() {
    return rows().stream()
        .map(r -> r.name() + (r.isCeiling() ? " at most " : " ") + r.words(r.goal))
        .collect(Collectors.joining(", "));
  }
}
