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
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.ingredient.Component;
import org.tourage.ingredient.Ingredient;
import org.tourage.internal.BoundedLeastSquares;
import org.tourage.internal.Numbers;
import org.tourage.internal.TextTable;
import org.tourage.quantity.AmountFormat;
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

  /** How strongly the start holds; so little that a target gives way by less than 1e-10 of it. */
  private static final double HOLD = 1e-6;

  /** A target within this share of flour or of its mass is met. */
  private static final double MET = 1e-7;

  /** The batch at the start. */
  private final Batch start;

  /** The lines that may move. */
  private final List<Move> moves;

  /** What is wanted. */
  private final List<Target> targets;

  /** A line that may move. */
  private record Move(int line, double low, double high) implements Serializable {}

  /** Σ weight·x = value, or at most value; the ratio is printed as part ÷ whole. */
  @SuppressWarnings("ArrayRecordComponent") // never compared and never handed out
  private record Target(
      String name, double[] part, double[] whole, double wanted, boolean most, boolean ratio)
      implements Serializable {
    double[] row() {
      double[] row = part.clone();
      for (int i = 0; i < row.length; i++) {
        row[i] -= ratio ? wanted * whole[i] : 0;
      }
      return row;
    }

    double reached(double[] grams) {
      double top = 0;
      double bottom = 0;
      for (int i = 0; i < grams.length; i++) {
        top += part[i] * grams[i];
        bottom += whole[i] * grams[i];
      }
      return ratio ? top / bottom : top;
    }

    String words(double value) {
      return ratio
          ? AmountFormat.metric().percent(PERCENT.amount(100 * value))
          : name.startsWith("cost")
              ? Numbers.significant(value, 5)
              : AmountFormat.metric().mass(GRAM.amount(value));
    }
  }

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
    more.removeIf(m -> m.line == line);
    more.add(new Move(line, least, most));
    return new FormulaTargets(start, more, targets);
  }

  private FormulaTargets want(
      String name,
      ToDoubleFunction<Integer> part,
      ToDoubleFunction<Integer> whole,
      double wanted,
      boolean most,
      boolean ratio) {
    if (!(wanted >= 0) || Double.isInfinite(wanted)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE, "this can't be wanted", name + " " + wanted, "give 0 or more");
    }
    int n = start.formula().lines().size();
    double[] top = new double[n];
    double[] bottom = new double[n];
    for (int i = 0; i < n; i++) {
      top[i] = part.applyAsDouble(i);
      bottom[i] = whole.applyAsDouble(i);
    }
    List<Target> more = new ArrayList<>(targets);
    more.removeIf(t -> t.name.equals(name));
    more.add(new Target(name, top, bottom, wanted, most, ratio));
    return new FormulaTargets(start, moves, more);
  }

  private Line line(int i) {
    return start.formula().lines().get(i);
  }

  private boolean inDough(int i) {
    return start.formula().stageOf(i).kind().inDough();
  }

  private boolean inPiece(int i) {
    return start.formula().stageOf(i).kind().inPiece();
  }

  private double flour(int i) {
    return inPiece(i) && line(i).isFlour() ? 1 : 0;
  }

  private double content(int i, Component component) {
    return line(i).ingredient().composition().fraction(component);
  }

  /**
   * Wants a true hydration: the water of the dough that is not the flour's own, over its flour.
   *
   * @param wanted the hydration
   * @return the targets
   */
  public FormulaTargets hydration(Quantity<Dimensionless> wanted) {
    return want(
        "hydration",
        i -> inDough(i) && !line(i).isFlour() ? content(i, Component.WATER) : 0,
        i -> inDough(i) && line(i).isFlour() ? 1 : 0,
        FRACTION.measure("the wanted", wanted),
        false,
        true);
  }

  /**
   * Wants salt by the flour, that of salted fat included, as sodium × 2.5.
   *
   * @param wanted the share
   * @return the targets
   */
  public FormulaTargets salt(Quantity<Dimensionless> wanted) {
    return want(
        "salt",
        i -> inPiece(i) ? line(i).ingredient().saltFraction() : 0,
        this::flour,
        FRACTION.measure("the wanted", wanted),
        false,
        true);
  }

  /**
   * Wants sugars by the flour, without those of the flour.
   *
   * @param wanted the share
   * @return the targets
   */
  public FormulaTargets sugars(Quantity<Dimensionless> wanted) {
    return want(
        "sugars",
        i -> inPiece(i) && !line(i).isFlour() ? content(i, Component.SUGARS) : 0,
        this::flour,
        FRACTION.measure("the wanted", wanted),
        false,
        true);
  }

  /**
   * Wants fat by the flour, roll-in included.
   *
   * @param wanted the share
   * @return the targets
   */
  public FormulaTargets fat(Quantity<Dimensionless> wanted) {
    return want(
        "fat",
        i -> inPiece(i) ? content(i, Component.FAT) : 0,
        this::flour,
        FRACTION.measure("the wanted", wanted),
        false,
        true);
  }

  /**
   * Wants a share of the flour in preferments.
   *
   * @param wanted the share
   * @return the targets
   */
  public FormulaTargets prefermentedFlour(Quantity<Dimensionless> wanted) {
    return want(
        "prefermented flour",
        i -> start.formula().stageOf(i).kind() == StageKind.PREFERMENT ? flour(i) : 0,
        this::flour,
        FRACTION.measure("the wanted", wanted),
        false,
        true);
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
    double[] seed = partsIn(stage);
    return want(
        "inoculation of " + stage,
        i -> seed[start.formula().placeOfStage(i)],
        i -> start.formula().stageOf(i).equals(build) && line(i).isFlour() ? 1 : 0,
        FRACTION.measure("the wanted", wanted),
        false,
        true);
  }

  /** What of each earlier stage is in a stage, as a share of it. */
  private double[] partsIn(String stage) {
    StageOrder order = start.formula().order();
    int build = order.place(stage);
    double[] parts = new double[order.size()];
    parts[build] = 1;
    for (int point = order.size() - 1; point >= 0; point--) {
      int taker = order.at(point);
      List<Take> taken = start.formula().stages().get(taker).taken();
      for (int k = 0; k < taken.size(); k++) {
        parts[order.taken(taker)[k]] += parts[taker] * taken.get(k).share().in(FRACTION);
      }
    }
    parts[build] = 0;
    return parts;
  }

  /**
   * Wants a mass of dough, roll-in included.
   *
   * @param wanted the mass
   * @return the targets
   */
  public FormulaTargets dough(Quantity<Mass> wanted) {
    return want(
        "dough", i -> inPiece(i) ? 1 : 0, i -> 0, GRAM.measure("the wanted", wanted), false, false);
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
   * Sets a ceiling to the cost of the dough. Ingredients without a price cost nothing.
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
          if (!(price >= 0) || Double.isInfinite(price)) {
            throw new BakeryException(
                Reason.OUT_OF_RANGE, "not a price", name + " " + price, "give 0 or more");
          }
          prices.put(start.formula().ingredient(name), price);
        });
    return want(
        "cost",
        i -> prices.getOrDefault(line(i).ingredient(), 0.0) / 1000,
        i -> 0,
        most,
        true,
        false);
  }

  /**
   * Solves.
   *
   * @return the solution; look at {@link Solution#missed()}
   * @throws BakeryException if nothing is wanted or nothing may move
   */
  public Solution solve() {
    if (targets.isEmpty() || moves.isEmpty()) {
      throw new BakeryException(
          Reason.MISSING,
          targets.isEmpty() ? "nothing is wanted" : "no line may move",
          start.formula().name(),
          "add targets, and lines with move(…)");
    }
    double[] grams = fit(targets);
    List<Missed> missed = new ArrayList<>();
    for (Target target : targets) {
      if (miss(target, grams) > MET) {
        missed.add(
            new Missed(
                target.name,
                target.words(target.wanted),
                target.words(target.reached(grams)),
                conflicts(target)));
      }
    }
    return new Solution(this, batch(grams), missed, grams(grams));
  }

  private static List<Double> grams(double[] grams) {
    List<Double> list = new ArrayList<>();
    for (double value : grams) {
      list.add(value);
    }
    return list;
  }

  /** How far a target is missed, as a share of the flour or of what is wanted. */
  private double miss(Target target, double[] grams) {
    double over = target.reached(grams) - target.wanted;
    double miss = target.most ? Math.max(0, over) : Math.abs(over);
    return target.ratio ? miss : miss / scale(target);
  }

  private double scale(Target target) {
    return target.ratio ? start.flour().in(GRAM) : Math.max(target.wanted, 1e-9);
  }

  /** The other targets without any one of which this one could be met. */
  private List<String> conflicts(Target target) {
    List<String> names = new ArrayList<>();
    for (Target other : targets) {
      if (!other.name.equals(target.name)) {
        List<Target> rest = new ArrayList<>(targets);
        rest.remove(other);
        if (miss(target, fit(rest)) <= MET) {
          names.add(other.name);
        }
      }
    }
    return names;
  }

  /** All weights in grams. */
  private double[] fit(List<Target> wanted) {
    int lines = start.formula().lines().size();
    double[] base = new double[lines];
    for (int i = 0; i < lines; i++) {
      base[i] = start.weight(i).in(GRAM);
    }
    double flour = start.flour().in(GRAM);
    int ceilings = (int) wanted.stream().filter(t -> t.most).count();
    int n = moves.size() + ceilings;
    double[][] a = new double[wanted.size() + n][n];
    double[] b = new double[a.length];
    double[] low = new double[n];
    double[] high = new double[n];
    double[] x = new double[n];
    // unknown: each weight by the flour, so that all columns are alike
    for (int j = 0; j < moves.size(); j++) {
      low[j] = moves.get(j).low / flour;
      high[j] = moves.get(j).high / flour;
      x[j] = Math.max(low[j], Math.min(high[j], base[moves.get(j).line] / flour));
    }
    int slack = moves.size();
    for (int r = 0; r < wanted.size(); r++) {
      Target target = wanted.get(r);
      double[] row = target.row();
      double scale = scale(target);
      b[r] = target.ratio ? 0 : target.wanted / scale;
      for (int i = 0; i < lines; i++) {
        b[r] -= isMoved(i) ? 0 : row[i] * base[i] / scale;
      }
      for (int j = 0; j < moves.size(); j++) {
        a[r][j] = row[moves.get(j).line] * flour / scale;
      }
      if (target.most) {
        // what is left of the ceiling; the bound is only there to be finite
        a[r][slack] = 1;
        high[slack] = 1e6;
        slack++;
      }
    }
    for (int j = 0; j < n; j++) {
      a[wanted.size() + j][j] = HOLD;
      b[wanted.size() + j] = j < moves.size() ? HOLD * x[j] : 0;
    }
    double[] found = BoundedLeastSquares.solve(a, b, low, high, x);
    for (int j = 0; j < moves.size(); j++) {
      base[moves.get(j).line] = found[j] * flour;
    }
    return base;
  }

  private boolean isMoved(int line) {
    return moves.stream().anyMatch(m -> m.line == line);
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
   * What was found.
   *
   * @param targets what was wanted
   * @param batch the batch
   * @param missed what could not be met; empty if all is met
   * @param grams the weight of each line in grams
   */
  public record Solution(
      FormulaTargets targets, Batch batch, List<Missed> missed, List<Double> grams)
      implements Explained, Serializable {
    /**
     * Copies the lists.
     *
     * @param targets what was wanted
     * @param batch the batch
     * @param missed what could not be met; empty if all is met
     * @param grams the weight of each line in grams
     */
    public Solution {
      missed = List.copyOf(missed);
      grams = List.copyOf(grams);
    }

    /**
     * Whether every target is met.
     *
     * @return true if none is missed
     */
    public boolean met() {
      return missed.isEmpty();
    }

    private double[] weights() {
      return grams.stream().mapToDouble(Double::doubleValue).toArray();
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
      Target wanted =
          targets.targets.stream()
              .filter(t -> t.name.equals(target))
              .findFirst()
              .orElseThrow(
                  () ->
                      BakeryException.unknownName(
                          "no such target",
                          target,
                          targets.targets.stream().map(Target::name).toList()));
      Move move =
          targets.moves.stream()
              .filter(
                  m ->
                      targets
                          .line(m.line)
                          .ingredient()
                          .equals(targets.start.formula().ingredient(ingredient)))
              .findFirst()
              .orElseThrow(
                  () ->
                      new BakeryException(
                          Reason.UNKNOWN_NAME,
                          "no line of this ingredient may move",
                          "\"" + ingredient + "\"",
                          "let it move with move(…)"));
      return slope(wanted, move.line);
    }

    private double slope(Target target, int line) {
      if (!target.ratio) {
        return target.part[line];
      }
      double[] x = weights();
      double bottom = 0;
      for (int i = 0; i < x.length; i++) {
        bottom += target.whole[i] * x[i];
      }
      return (target.part[line] - target.reached(x) * target.whole[line]) / bottom;
    }

    /**
     * How each target hangs on each line that may move, for 10 g more of it.
     *
     * @return a table
     */
    public String sensitivities() {
      TextTable table = new TextTable(1);
      List<String> head = new ArrayList<>(List.of("10 g more of"));
      targets.targets.forEach(t -> head.add(t.name));
      table.row(head.toArray(String[]::new));
      for (Move move : targets.moves) {
        List<String> row = new ArrayList<>();
        row.add(
            targets.line(move.line).ingredient().name()
                + " ("
                + targets.start.formula().stageOf(move.line).name()
                + ")");
        for (Target target : targets.targets) {
          double by = 10 * slope(target, move.line);
          row.add(
              target.ratio
                  ? Numbers.decimals(100 * by, 2) + " %"
                  : Numbers.significant(by, 3) + (target.name.equals("cost") ? "" : " g"));
        }
        table.row(row.toArray(String[]::new));
      }
      return table.toString();
    }

    @Override
    public List<Advice> advice() {
      return missed.stream()
          .map(
              m ->
                  Advice.warning(
                      "TARGET_MISSED",
                      m.toString(),
                      "Widen the bounds, let another line move, or give up a target",
                      "least squares under bounds"))
          .toList();
    }

    @Override
    public Working working() {
      double[] x = weights();
      List<WorkedLine> lines = new ArrayList<>();
      for (Target target : targets.targets) {
        lines.add(
            new WorkedLine(
                target.name,
                target.most ? "at most" : "wanted",
                target.words(target.wanted) + ", reached " + target.words(target.reached(x)),
                "least squares under bounds"));
      }
      for (Move move : targets.moves) {
        lines.add(
            new WorkedLine(
                targets.line(move.line).ingredient().name(),
                "from "
                    + AmountFormat.metric().mass(GRAM.amount(move.low))
                    + " to "
                    + AmountFormat.metric().mass(GRAM.amount(move.high)),
                AmountFormat.metric().mass(targets.start.weight(move.line))
                    + " → "
                    + AmountFormat.metric().mass(GRAM.amount(x[move.line])),
                "least squares under bounds"));
      }
      return new Working(lines);
    }

    /** Each target with what was reached. */
    @Override
    public String toString() {
      double[] x = weights();
      return targets.targets.stream()
              .map(t -> t.name + " " + t.words(t.reached(x)))
              .collect(Collectors.joining(", "))
          + (met()
              ? ""
              : "\n" + missed.stream().map(Missed::toString).collect(Collectors.joining("\n")));
    }
  }
}
