package org.tourage.formula;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
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
import org.tourage.ingredient.YeastForm;
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

  private static final double SALT_LOW = 1.5;
  private static final double SALT_HIGH = 2.5;
  private static final double FRESH_YEAST_LOW = 0.2;
  private static final double FRESH_YEAST_HIGH = 8;

  /** The name. */
  private final String name;

  /** The stages in the order of work. */
  private final List<Stage> stages;

  /** The lines of all stages, one after another. */
  private final List<Line> lines;

  /** The stage of each line. */
  private final List<Stage> stageOfLine;

  /** The share of each line, for speed. */
  private final double[] shares;

  Formula(String name, List<Stage> stages) {
    this.name = requireNonNull(name, "name");
    this.stages = List.copyOf(stages);
    List<Line> all = new ArrayList<>();
    List<Stage> owners = new ArrayList<>();
    for (Stage stage : stages) {
      for (Line line : stage.lines()) {
        all.add(line);
        owners.add(stage);
      }
    }
    this.lines = List.copyOf(all);
    this.stageOfLine = List.copyOf(owners);
    this.shares = all.stream().mapToDouble(Line::share).toArray();
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
    FormulaBuilder<Dimensionless> builder = new FormulaBuilder<>(FRACTION, true);
    content.accept(builder);
    return builder.build(name).formula();
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
    FormulaBuilder<Mass> builder = new FormulaBuilder<>(GRAM, false);
    content.accept(builder);
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
    for (Stage stage : stages) {
      if (stage.name().equals(wanted)) {
        return stage;
      }
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
    return stageOfLine.get(index);
  }

  /**
   * An ingredient of this formula by name or id.
   *
   * @param wanted the name
   * @return the ingredient
   * @throws BakeryException if the formula has none
   */
  public Ingredient ingredient(String wanted) {
    String key = wanted.toLowerCase(Locale.ROOT);
    for (Line line : lines) {
      boolean same =
          line.ingredient().id().equals(key)
              || line.ingredient().name().toLowerCase(Locale.ROOT).equals(key);
      if (same) {
        return line.ingredient();
      }
    }
    // an everyday name, as the builder takes it
    Ingredient known = Catalogue.builtIn().find(wanted).orElse(null);
    if (known != null && lines.stream().anyMatch(l -> l.ingredient().equals(known))) {
      return known;
    }
    throw new BakeryException(
        Reason.UNKNOWN_NAME,
        "no such ingredient in the formula",
        "\"" + wanted + "\"",
        "it has "
            + overall().stream().map(l -> l.ingredient().name()).collect(Collectors.joining(", ")));
  }

  /**
   * The overall formula: each ingredient once, with all stages but the finish together.
   *
   * @return the lines, in order of first appearance in the stages
   */
  public List<Line> overall() {
    List<Line> merged = new ArrayList<>();
    for (Stage stage : stages) {
      if (stage.kind().inPiece()) {
        for (Line line : stage.lines()) {
          merge(merged, line);
        }
      }
    }
    return merged;
  }

  private static void merge(List<Line> merged, Line line) {
    for (int i = 0; i < merged.size(); i++) {
      if (merged.get(i).matches(line)) {
        merged.set(i, line.withShare(merged.get(i).share() + line.share()));
        return;
      }
    }
    merged.add(line);
  }

  /**
   * The baker's percent of an ingredient over all stages but the finish.
   *
   * @param ingredient the ingredient
   * @return the percentage, 0 % if the formula has none
   */
  public Amount<Dimensionless> percent(Ingredient ingredient) {
    double share = 0;
    for (Line line : overall()) {
      share += line.ingredient().equals(ingredient) ? line.share() : 0;
    }
    return PERCENT.amount(share * 100);
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
    List<Line> wet = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      if (!stageOfLine.get(i).kind().inDough()) {
        continue;
      }
      Line line = lines.get(i);
      double own = line.share() * line.ingredient().composition().fraction(Component.WATER);
      if (line.isFlour()) {
        flour += line.share();
        flourWater += own;
      } else {
        water += own;
        liquids += line.ingredient().is(Role.LIQUID) ? line.share() : 0;
        if (own > 0) {
          merge(wet, line);
        }
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
        wet);
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
      if (wanted.test(stageOfLine.get(i).kind())) {
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
    return new Batch(this, GRAM.measure(flour));
  }

  /**
   * Scales to a mass of all that is cut into pieces, roll-in included.
   *
   * @param dough the mass, positive
   * @return the batch
   */
  public Batch forDough(Quantity<Mass> dough) {
    return new Batch(this, GRAM.measure(dough) / shareOf(StageKind::inPiece));
  }

  /**
   * Scales to a mass of the dough before any fat is rolled in.
   *
   * @param dough the mass, positive
   * @return the batch
   */
  public Batch forBaseDough(Quantity<Mass> dough) {
    return new Batch(this, GRAM.measure(dough) / shareOf(StageKind::inDough));
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
    return new Batch(this, GRAM.measure(mass) / share);
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
    List<Stage> changed = new ArrayList<>();
    double flour = 0;
    for (Stage stage : stages) {
      List<Line> replaced = new ArrayList<>();
      for (Line line : stage.lines()) {
        for (Part part : rule.replace(stage, line)) {
          boolean counts =
              line.ingredient().equals(part.ingredient())
                  ? line.isFlour()
                  : line.isFlour() || part.ingredient().is(Role.FLOUR);
          merge(replaced, new Line(part.ingredient(), part.share().in(FRACTION), counts));
        }
      }
      Stage next = new Stage(stage.name(), stage.kind(), replaced, stage.takes());
      flour += stage.kind().inPiece() ? next.flour() : 0;
      changed.add(next);
    }
    if (flour <= 0) {
      throw new BakeryException(
          Reason.MISSING, "no flour would be left", name, "replace flour by flour");
    }
    List<Stage> scaled = new ArrayList<>();
    for (Stage stage : changed) {
      double scale = flour;
      scaled.add(
          new Stage(
              stage.name(),
              stage.kind(),
              stage.lines().stream().map(l -> l.withShare(l.share() / scale)).toList(),
              stage.takes()));
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
    List<Advice> advice = new ArrayList<>();
    double salt = 0;
    double yeast = 0;
    boolean leavening = prefermentedFlour().value() > 0;
    for (Line line : overall()) {
      double percent = line.share() * 100;
      Ingredient ingredient = line.ingredient();
      leavening |= ingredient.is(Role.YEAST) || ingredient.is(Role.LEAVENING);
      yeast += YeastForm.of(ingredient).map(form -> percent / form.perFresh()).orElse(0.0);
      salt += percent * ingredient.saltFraction();
    }
    AmountFormat format = AmountFormat.metric();
    if (!leavening) {
      advice.add(
          Advice.note(
              "NO_LEAVENING",
              name + " has no yeast, preferment or chemical leavening",
              "Right for a pie or puff dough; otherwise add some",
              Advice.COMMON_PRACTICE));
    }
    if (salt < SALT_LOW || salt > SALT_HIGH) {
      advice.add(
          Advice.warning(
              salt < SALT_LOW ? "SALT_LOW" : "SALT_HIGH",
              "salt is " + format.percent(PERCENT.amount(salt)) + " of flour, counting salted fat",
              "Doughs usually have 1.8 % to 2.2 %",
              Advice.COMMON_PRACTICE));
    }
    if (yeast > 0 && (yeast < FRESH_YEAST_LOW || yeast > FRESH_YEAST_HIGH)) {
      advice.add(
          Advice.warning(
              yeast < FRESH_YEAST_LOW ? "YEAST_LOW" : "YEAST_HIGH",
              "yeast is "
                  + format.percent(PERCENT.amount(yeast))
                  + " of flour counted as fresh yeast",
              "Doughs usually have 0.5 % to 6 % fresh yeast, or 0.40 of that as active dry and 0.33 as"
                  + " instant",
              "J. Hamelman, Bread, 2004 (the ratios); common practice (the range)"));
    }
    advice.addAll(hydration().advice());
    return advice;
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
