package org.tourage.formula;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.IntPredicate;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Component;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;
import org.tourage.internal.TextTable;
import org.tourage.physics.Constituents;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;

/**
 * A formula in baker's percent: stages with lines, each line a share of the total flour.
 *
 * <p><b>Total flour</b> is all flour of all stages but the finish: that of the final dough, of
 * every preferment (the seed of a levain included), of soakers and of the roll-in. What counts as
 * flour is what has the role {@link Role#FLOUR}, which is flours and meals of any grain; starches,
 * gluten, malt and whole grains do not count unless a line is added with {@link
 * FormulaBuilder#flour}. This is the convention of the trade (common practice).
 *
 * <pre>{@code
 * Formula rolls = Formula.byPercent("Harbour rolls", f -> f
 *     .line("bread flour", percent(100))
 *     .line("water", percent(62))
 *     .line("salt", percent(2))
 *     .line("instant yeast", percent(1))
 *     .preferment(Preferment.poolish(percent(30))));
 * Batch batch = rolls.forPieces(PieceOrder.baked(24, grams(80), percent(12)));
 * }</pre>
 *
 * <p>Immutable, safe for use by several threads, serialisable.
 */
public final class Formula implements Serializable {
  private static final long serialVersionUID = 1L;

  /** The name. */
  private final String name;

  /** The stages in the order of work. */
  private final List<Stage> stages;

  /** The lines of all stages, one after another. */
  private final List<Line> lines;

  /** The place of the stage of each line. */
  private final int[] stageOfLine;

  /** Which stage takes which. */
  private final StageOrder order;

  /** The share of each line, for speed. */
  private final double[] shares;

  Formula(String name, List<Stage> stages) {
    this.name = requireNonNull(name, "name");
    this.stages = List.copyOf(stages);
    this.order =
        StageOrder.of(
            stages.stream().map(Stage::name).toList(), stages.stream().map(Stage::takes).toList());
    List<Line> all = new ArrayList<>();
    stages.forEach(stage -> all.addAll(stage.lines()));
    this.lines = List.copyOf(all);
    this.shares = new double[all.size()];
    this.stageOfLine = new int[all.size()];
    int index = 0;
    for (int s = 0; s < stages.size(); s++) {
      for (Line line : stages.get(s).lines()) {
        shares[index] = line.share();
        stageOfLine[index] = s;
        index++;
      }
    }
  }

  /**
   * A formula from baker's percentages.
   *
   * @param name the name
   * @param content adds the lines; all flour together must be 100 %
   * @return the formula
   * @throws BakeryException if there is no flour, or the flours do not sum to 100 %
   */
  public static Formula byPercent(String name, Consumer<FormulaBuilder<Dimensionless>> content) {
    requireNonNull(name, "name");
    FormulaBuilder<Dimensionless> builder = new FormulaBuilder<>(FRACTION, true);
    requireNonNull(content, "content").accept(builder);
    return builder.build(name).formula();
  }

  /**
   * A formula from stages that are written down one by one, in percent of the total flour.
   *
   * @param name the name
   * @param stages the stages; what no other takes goes into the final dough
   * @return the formula
   * @throws BakeryException if there is no flour, the flours do not sum to 100 %, a stage takes
   *     what is not there or more than there is, or stages take each other in a ring
   */
  public static Formula ofStages(String name, List<StageDraft<Dimensionless>> stages) {
    return byPercent(name, f -> stages.forEach(f::stage));
  }

  /**
   * A batch from masses; its {@link Batch#formula()} is the formula in baker's percent.
   *
   * @param name the name
   * @param content adds the lines
   * @return the batch at the size given
   * @throws BakeryException if there is no flour
   */
  public static Batch byWeight(String name, Consumer<FormulaBuilder<Mass>> content) {
    requireNonNull(name, "name");
    FormulaBuilder<Mass> builder = new FormulaBuilder<>(GRAM, false);
    requireNonNull(content, "content").accept(builder);
    FormulaBuilder.Built built = builder.build(name);
    return new Batch(built.formula(), built.flour());
  }

  /**
   * The name.
   *
   * @return the name
   */
  public String name() {
    return name;
  }

  /**
   * The stages in the order of work.
   *
   * @return preferments, soakers, final dough, roll-in, finish
   */
  public List<Stage> stages() {
    return stages;
  }

  /**
   * A stage by name.
   *
   * @param wanted the name
   * @return the stage
   * @throws BakeryException if there is none
   */
  public Stage stage(String wanted) {
    int place = order.place(wanted);
    if (place >= 0) {
      return stages.get(place);
    }
    throw new BakeryException(
        Reason.UNKNOWN_NAME,
        "no such stage",
        "\"" + wanted + "\"",
        "this formula has " + stages.stream().map(Stage::name).collect(Collectors.joining(", ")));
  }

  /**
   * The lines of all stages, one after another.
   *
   * @return the lines
   */
  public List<Line> lines() {
    return lines;
  }

  int size() {
    return shares.length;
  }

  double share(int index) {
    return shares[index];
  }

  Stage stageOf(int index) {
    return stages.get(stageOfLine[index]);
  }

  StageOrder order() {
    return order;
  }

  /** The place of the stage of a line. */
  int placeOfStage(int line) {
    return stageOfLine[line];
  }

  /**
   * An ingredient of this formula by name or id, or by another name that the built-in catalogue has
   * for its id.
   *
   * @param wanted the name
   * @return the formula's own ingredient
   * @throws BakeryException if the formula has none, or two different ones go by that name
   */
  public Ingredient ingredient(String wanted) {
    String key = requireNonNull(wanted, "wanted").toLowerCase(Locale.ROOT);
    return only(i -> i.id().equals(key) || i.name().toLowerCase(Locale.ROOT).equals(key), wanted)
        .or(
            // an everyday name, as the builder takes it
            () ->
                Catalogue.builtIn()
                    .find(wanted)
                    .flatMap(known -> only(i -> i.sameIdAs(known), wanted)))
        .orElseThrow(
            () ->
                new BakeryException(
                    Reason.UNKNOWN_NAME,
                    "no such ingredient in the formula",
                    "\"" + wanted + "\"",
                    "it has "
                        + overall().stream()
                            .map(l -> l.ingredient().name())
                            .collect(Collectors.joining(", "))));
  }

  private Optional<Ingredient> only(Predicate<Ingredient> fits, String wanted) {
    List<Ingredient> found = lines.stream().map(Line::ingredient).filter(fits).distinct().toList();
    if (found.size() > 1) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "two ingredients of the formula go by one name, with different content",
          "\"" + wanted + "\"",
          "give the ingredient itself, from lines(), or give each an id of its own");
    }
    return found.stream().findFirst();
  }

  /**
   * The overall formula: each ingredient once, with all stages but the finish together.
   *
   * @return the lines, in order of first appearance in the stages
   */
  public List<Line> overall() {
    MergedLines merged = new MergedLines();
    for (Stage stage : stages) {
      if (stage.kind().inPiece()) {
        stage.lines().forEach(merged::add);
      }
    }
    return merged.lines();
  }

  /** Lines of which those of one ingredient and one part become one, in order of appearance. */
  private static final class MergedLines {
    private final Map<Line.Key, Line> lines = new LinkedHashMap<>();

    void add(Line line) {
      lines.merge(line.key(), line, (old, more) -> more.withShare(old.share() + more.share()));
    }

    List<Line> lines() {
      return new ArrayList<>(lines.values());
    }
  }

  /**
   * The baker's percent of an ingredient over all stages but the finish.
   *
   * @param ingredient the ingredient
   * @return the percentage, 0 % if the formula has none
   */
  public Amount<Dimensionless> percent(Ingredient ingredient) {
    return percent(ingredient, StageKind::inPiece);
  }

  /**
   * The baker's percent of an ingredient over the stages of some kinds.
   *
   * @param ingredient the ingredient
   * @param wanted chooses the stages, for example {@code StageKind::inDough}
   * @return the percentage, 0 % if those stages have none
   */
  public Amount<Dimensionless> percent(Ingredient ingredient, Predicate<StageKind> wanted) {
    requireNonNull(ingredient, "ingredient");
    return PERCENT.amount(
        100
            * share(
                i ->
                    wanted.test(stageOf(i).kind())
                        && lines.get(i).ingredient().equals(ingredient)));
  }

  /**
   * The baker's percent, by the total flour of the formula, of an ingredient over stages that are
   * named. What those stages take of others is not counted: name these as well.
   *
   * @param ingredient the ingredient
   * @param stage the name of a stage
   * @param more the names of more stages
   * @return the percentage, 0 % if those stages have none
   * @throws BakeryException if there is no such stage
   */
  public Amount<Dimensionless> percent(Ingredient ingredient, String stage, String... more) {
    requireNonNull(ingredient, "ingredient");
    IntPredicate inside = inStages(stage, more);
    return PERCENT.amount(
        100 * share(i -> inside.test(i) && lines.get(i).ingredient().equals(ingredient)));
  }

  /**
   * The baker's percent of all that has a role, over all stages but the finish.
   *
   * @param role the role
   * @return the percentage, 0 % if the formula has none
   */
  public Amount<Dimensionless> percent(Role role) {
    return percent(role, StageKind::inPiece);
  }

  /**
   * The baker's percent of all that has a role, over the stages of some kinds.
   *
   * @param role the role
   * @param wanted chooses the stages, for example {@code StageKind::inDough}
   * @return the percentage, 0 % if those stages have none
   */
  public Amount<Dimensionless> percent(Role role, Predicate<StageKind> wanted) {
    return PERCENT.amount(100 * share(ofRole(role, wanted)));
  }

  /**
   * Whether anything that goes into the piece has a role. The finish does not count.
   *
   * @param role the role
   * @return true if a line of more than 0 % has it
   */
  public boolean has(Role role) {
    return has(role, StageKind::inPiece);
  }

  /**
   * Whether anything in the stages of some kinds has a role.
   *
   * @param role the role
   * @param wanted chooses the stages, for example {@code kind -> true}
   * @return true if a line of more than 0 % has it
   */
  public boolean has(Role role, Predicate<StageKind> wanted) {
    return share(ofRole(role, wanted)) > 0;
  }

  /**
   * Whether an ingredient goes into the piece. The finish does not count.
   *
   * @param ingredient the ingredient
   * @return true if there is more than 0 % of it
   */
  public boolean has(Ingredient ingredient) {
    return has(ingredient, StageKind::inPiece);
  }

  /**
   * Whether the stages of some kinds hold an ingredient.
   *
   * @param ingredient the ingredient
   * @param wanted chooses the stages, for example {@code kind -> true}
   * @return true if there is more than 0 % of it
   */
  public boolean has(Ingredient ingredient, Predicate<StageKind> wanted) {
    return percent(ingredient, wanted).value() > 0;
  }

  /**
   * Whether the formula has a stage of a kind.
   *
   * @param kind the kind, for example the roll-in
   * @return true if it has
   */
  public boolean has(StageKind kind) {
    return stages.stream().anyMatch(stage -> stage.kind() == kind);
  }

  /** Lines that have a role, in stages of some kinds. */
  IntPredicate ofRole(Role role, Predicate<StageKind> wanted) {
    requireNonNull(role, "role");
    return i -> wanted.test(stageOf(i).kind()) && lines.get(i).ingredient().is(role);
  }

  /** Lines of named stages. */
  IntPredicate inStages(String stage, String... more) {
    boolean[] inside = new boolean[stages.size()];
    inside[order.place(stage(stage).name())] = true;
    for (String name : more) {
      inside[order.place(stage(name).name())] = true;
    }
    return i -> inside[stageOfLine[i]];
  }

  /** What of each earlier stage is in a stage, as a share of it; by the place of the stage. */
  double[] partsIn(String stage) {
    int build = order.place(stage(stage).name());
    double[] parts = new double[order.size()];
    parts[build] = 1;
    for (int point = order.size() - 1; point >= 0; point--) {
      int taker = order.at(point);
      List<Take> taken = stages.get(taker).taken();
      for (int k = 0; k < taken.size(); k++) {
        parts[order.taken(taker)[k]] += parts[taker] * taken.get(k).share().in(FRACTION);
      }
    }
    parts[build] = 0;
    return parts;
  }

  private double share(IntPredicate wanted) {
    double sum = 0;
    for (int i = 0; i < shares.length; i++) {
      sum += wanted.test(i) ? shares[i] : 0;
    }
    return sum;
  }

  /**
   * The baker's percent of an ingredient over all stages but the finish.
   *
   * @param ingredient the name of an ingredient of the formula
   * @return the percentage
   * @throws BakeryException if the formula has no such ingredient
   */
  public Amount<Dimensionless> percent(String ingredient) {
    return percent(ingredient(ingredient));
  }

  /**
   * All that is cut into pieces (all stages but the finish), by the flour.
   *
   * @return the sum of the percentages
   */
  public Amount<Dimensionless> dough() {
    return PERCENT.amount(shareOf(StageKind::inPiece) * 100);
  }

  /**
   * The dough before any fat is rolled in, by the flour.
   *
   * @return the sum of the percentages
   */
  public Amount<Dimensionless> baseDough() {
    return PERCENT.amount(shareOf(StageKind::inDough) * 100);
  }

  private double shareOf(Predicate<StageKind> wanted) {
    double sum = 0;
    for (Stage stage : stages) {
      sum += wanted.test(stage.kind()) ? stage.share() : 0;
    }
    return sum;
  }

  /**
   * The flour that is fermented before the final dough, by the total flour.
   *
   * @return the share
   */
  public Amount<Dimensionless> prefermentedFlour() {
    double sum = 0;
    for (Stage stage : stages) {
      sum += stage.kind() == StageKind.PREFERMENT ? stage.flour() : 0;
    }
    return PERCENT.amount(sum * 100);
  }

  /**
   * How wet the dough is.
   *
   * @return the hydration, nominal and true
   */
  public Hydration hydration() {
    double liquids = 0;
    double water = 0;
    double flourWater = 0;
    double flour = 0;
    MergedLines wet = new MergedLines();
    for (int i = 0; i < lines.size(); i++) {
      if (!stageOf(i).kind().inDough()) {
        continue;
      }
      Line line = lines.get(i);
      double own = line.share() * line.ingredient().composition().fraction(Component.WATER);
      boolean unknown = line.ingredient().composition().share(Component.WATER).isEmpty();
      if (line.isFlour()) {
        flour += line.share();
        flourWater += own;
      } else {
        water += own;
        liquids += line.ingredient().is(Role.LIQUID) ? line.share() : 0;
      }
      if (unknown || (own > 0 && !line.isFlour())) {
        wet.add(line);
      }
    }
    if (flour == 0) {
      throw new BakeryException(
          Reason.MISSING,
          "hydration needs flour in the dough",
          name + " has flour in the roll-in only",
          "put the flour of the dough in the dough");
    }
    return new Hydration(
        PERCENT.amount(liquids / flour * 100),
        PERCENT.amount(water / flour * 100),
        PERCENT.amount((water + flourWater) / (flour - flourWater) * 100),
        wet.lines());
  }

  /**
   * What the stages of some kinds are made of together, for the physical models.
   *
   * @param wanted chooses the stages, for example {@code StageKind::inDough}
   * @return the constituents, as mass fractions
   * @throws BakeryException if no such stage has a line
   */
  public Constituents constituents(Predicate<StageKind> wanted) {
    double[] sum = new double[6];
    double mass = 0;
    for (int i = 0; i < lines.size(); i++) {
      if (wanted.test(stageOf(i).kind())) {
        double share = shares[i];
        Constituents part = lines.get(i).ingredient().composition().constituents();
        sum[0] += share * part.water();
        sum[1] += share * part.protein();
        sum[2] += share * part.fat();
        sum[3] += share * part.carbohydrate();
        sum[4] += share * part.fibre();
        sum[5] += share * part.ash();
        mass += share;
      }
    }
    if (mass == 0) {
      throw new BakeryException(
          Reason.MISSING, "no such stage in the formula", name, "choose stages that have lines");
    }
    return new Constituents(
        sum[0] / mass, sum[1] / mass, sum[2] / mass, sum[3] / mass, sum[4] / mass, sum[5] / mass);
  }

  /**
   * Scales to a mass of total flour.
   *
   * @param flour the flour, positive
   * @return the batch
   */
  public Batch forFlour(Quantity<Mass> flour) {
    return new Batch(this, GRAM.measure("the flour", flour));
  }

  /**
   * Scales to a mass of all that is cut into pieces, roll-in included.
   *
   * @param dough the mass, positive
   * @return the batch
   */
  public Batch forDough(Quantity<Mass> dough) {
    return new Batch(this, GRAM.measure("the dough", dough) / shareOf(StageKind::inPiece));
  }

  /**
   * Scales to a mass of the dough before any fat is rolled in.
   *
   * @param dough the mass, positive
   * @return the batch
   */
  public Batch forBaseDough(Quantity<Mass> dough) {
    return new Batch(this, GRAM.measure("the dough", dough) / shareOf(StageKind::inDough));
  }

  /**
   * Scales to a number of pieces.
   *
   * @param order the pieces and the losses
   * @return the batch
   */
  public Batch forPieces(PieceOrder order) {
    return forDough(order.dough());
  }

  /**
   * Scales so that one ingredient comes out at a given mass, all stages but the finish together ("I
   * have 740 g of flour").
   *
   * @param ingredient the ingredient
   * @param mass what there is of it, positive
   * @return the batch
   * @throws BakeryException if the formula has none of it
   */
  public Batch forIngredient(Ingredient ingredient, Quantity<Mass> mass) {
    double share = percent(ingredient).in(FRACTION);
    if (share <= 0) {
      throw new BakeryException(
          Reason.UNKNOWN_NAME,
          "the formula can't be scaled to an ingredient that it lacks",
          ingredient.name(),
          "name one of its ingredients");
    }
    return new Batch(this, GRAM.measure("the mass", mass) / share);
  }

  /**
   * Scales so that one ingredient comes out at a given mass.
   *
   * @param ingredient the name of an ingredient of the formula
   * @param mass what there is of it, positive
   * @return the batch
   * @throws BakeryException if the formula has no such ingredient
   */
  public Batch forIngredient(String ingredient, Quantity<Mass> mass) {
    return forIngredient(ingredient(ingredient), mass);
  }

  /**
   * A copy with every line changed by a rule, for substitutions. The new total flour is 100 %
   * again.
   *
   * @param rule gives for each line of each stage the ingredient and the mass by old flour that
   *     take its place
   * @return the new formula and, beside it, the new total flour by the old
   */
  public Changed replace(Replacement rule) {
    List<List<Line>> changed = new ArrayList<>();
    double flour = 0;
    for (Stage stage : stages) {
      MergedLines replaced = new MergedLines();
      for (Line line : stage.lines()) {
        for (Part part : rule.replace(stage, line)) {
          boolean counts =
              line.ingredient().equals(part.ingredient())
                  ? line.isFlour()
                  : line.isFlour() || part.ingredient().is(Role.FLOUR);
          replaced.add(new Line(part.ingredient(), part.share().in(FRACTION), counts));
        }
      }
      changed.add(replaced.lines());
      for (Line line : changed.get(changed.size() - 1)) {
        flour += stage.kind().inPiece() && line.isFlour() ? line.share() : 0;
      }
    }
    if (!(flour > 0)) {
      throw new BakeryException(
          Reason.MISSING, "no flour would be left", name, "replace flour by flour");
    }
    List<Stage> scaled = new ArrayList<>();
    for (int s = 0; s < stages.size(); s++) {
      List<Line> lines = new ArrayList<>();
      for (Line line : changed.get(s)) {
        lines.add(line.withShare(line.share() / flour));
      }
      scaled.add(stages.get(s).withLines(lines));
    }
    return new Changed(new Formula(name, scaled), PERCENT.amount(flour * 100));
  }

  /** A rule that replaces lines. */
  @FunctionalInterface
  public interface Replacement {
    /**
     * What takes the place of a line.
     *
     * @param stage the stage of the line
     * @param line the line
     * @return the parts that take its place; none to drop the line
     */
    List<Part> replace(Stage stage, Line line);
  }

  /**
   * A part that takes the place of a line, or of a part of it.
   *
   * @param ingredient the ingredient
   * @param share its mass by the old total flour
   */
  public record Part(Ingredient ingredient, Amount<Dimensionless> share) implements Serializable {}

  /**
   * A changed formula.
   *
   * @param formula the new formula, its total flour 100 %
   * @param flour the new total flour by the old
   */
  public record Changed(Formula formula, Amount<Dimensionless> flour) implements Serializable {}

  /**
   * What is unwise about this formula.
   *
   * @return advice on leavening, salt, yeast and hydration
   */
  public List<Advice> advice() {
    return FormulaAdvice.of(this);
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Formula that && name.equals(that.name) && stages.equals(that.stages);
  }

  @Override
  public int hashCode() {
    return 31 * name.hashCode() + stages.hashCode();
  }

  /** The overall formula in percent, and the stages. */
  @Override
  public String toString() {
    TextTable table = new TextTable(1);
    table.heading(name);
    for (Line line : overall()) {
      table.row("  " + line.ingredient().name(), AmountFormat.metric().percent(line.percent()));
    }
    table.row("  total", AmountFormat.metric().percent(dough()));
    return table.toString();
  }
}
