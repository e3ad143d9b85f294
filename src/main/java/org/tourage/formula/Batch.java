package org.tourage.formula;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.GRAM;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.function.Predicate;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;
import org.tourage.internal.Numbers;
import org.tourage.internal.TextTable;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.BalanceRounding;
import org.tourage.quantity.Given;

/**
 * A formula at a definite size: each line weighed. The masses are exact until {@link #rounded} says
 * for which balance. Immutable and serialisable.
 */
public final class Batch implements Explained, Serializable {
  private static final long serialVersionUID = 1L;

  /** The formula. */
  private final Formula formula;

  /** The total flour in grams. */
  private final double flour;

  /** The rounding, if the batch has been rounded. */
  private final @Nullable BalanceRounding rounding;

  Batch(Formula formula, double flourGrams) {
    this(formula, flourGrams, null);
  }

  private Batch(Formula formula, double flour, @Nullable BalanceRounding rounding) {
    if (!(flour > 0) || Double.isInfinite(flour)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a batch needs flour",
          Numbers.significant(Double.isFinite(flour) ? flour : 0, 6) + " g",
          "give a positive mass");
    }
    this.formula = formula;
    this.flour = flour;
    this.rounding = rounding;
  }

  /**
   * A batch from stages that are written down one by one, in masses.
   *
   * @param name the name
   * @param stages the stages; what no other takes goes into the final dough
   * @return the batch at the size given; its formula is in baker's percent
   * @throws BakeryException if there is no flour, a stage takes what is not there or more than
   *     there is, or stages take each other in a ring
   */
  public static Batch ofStages(String name, List<StageDraft<Mass>> stages) {
    return Formula.byWeight(name, f -> stages.forEach(f::stage));
  }

  /**
   * The formula.
   *
   * @return the formula
   */
  public Formula formula() {
    return formula;
  }

  /**
   * The mass of a line.
   *
   * @param index its place in {@link Formula#lines()}, from 0
   * @return the mass in grams
   * @throws BakeryException if there is no such line
   */
  public Amount<Mass> weight(int index) {
    if (index < 0 || index >= formula.size()) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no such line in the batch",
          "line " + index,
          "the lines are 0 to " + (formula.size() - 1));
    }
    return GRAM.amount(grams(index));
  }

  /**
   * The mass of every line.
   *
   * @return the masses in the order of {@link Formula#lines()}
   */
  public List<Amount<Mass>> weights() {
    if (rounding != null) {
      return rounding.rounded();
    }
    List<Amount<Mass>> weights = new ArrayList<>();
    for (int i = 0; i < formula.size(); i++) {
      weights.add(weight(i));
    }
    return weights;
  }

  /**
   * Every line with its stage and its mass, in the order of work.
   *
   * @return the lines in the order of {@link Formula#lines()}
   */
  public List<WeighedLine> lines() {
    List<WeighedLine> result = new ArrayList<>(formula.size());
    for (int i = 0; i < formula.size(); i++) {
      Stage stage = formula.stageOf(i);
      double grams = grams(i);
      Amount<Mass> mass = GRAM.amount(grams);
      Amount<Mass> toWeigh =
          stage.made() == Stage.WHOLE ? mass : GRAM.amount(grams * stage.made().in(FRACTION));
      result.add(
          new WeighedLine(stage.name(), stage.kind(), formula.lines().get(i), mass, toWeigh));
    }
    return result;
  }

  /**
   * The mass of an ingredient in all stages but the finish together.
   *
   * @param ingredient the ingredient
   * @return the mass in grams, 0 g if those stages have none
   */
  public Amount<Mass> weightOf(Ingredient ingredient) {
    requireNonNull(ingredient, "ingredient");
    return sum(
        i ->
            formula.stageOf(i).kind().inPiece()
                && formula.lines().get(i).ingredient().equals(ingredient));
  }

  /**
   * The mass of an ingredient in all stages but the finish together.
   *
   * @param name the name of an ingredient of the formula
   * @return the mass in grams
   * @throws BakeryException if the formula has no such ingredient
   */
  public Amount<Mass> weightOf(String name) {
    return weightOf(formula.ingredient(name));
  }

  /**
   * The mass of an ingredient that is weighed into a stage; what the stage takes from others is not
   * counted.
   *
   * @param ingredient the ingredient
   * @param stage the name of the stage
   * @return the mass in grams, 0 g if the stage has none
   * @throws BakeryException if there is no such stage
   */
  public Amount<Mass> massOf(Ingredient ingredient, String stage) {
    requireNonNull(ingredient, "ingredient");
    IntPredicate inside = formula.inStages(stage);
    return sum(i -> inside.test(i) && formula.lines().get(i).ingredient().equals(ingredient));
  }

  /**
   * The mass of an ingredient that is weighed into a stage; what the stage takes from others is not
   * counted.
   *
   * @param ingredient the name of an ingredient of the formula
   * @param stage the name of the stage
   * @return the mass in grams, 0 g if the stage has none
   * @throws BakeryException if there is no such ingredient or stage
   */
  public Amount<Mass> massOf(String ingredient, String stage) {
    return massOf(formula.ingredient(ingredient), stage);
  }

  /**
   * The mass of all that has a role, in all stages but the finish together.
   *
   * @param role the role
   * @return the mass in grams, 0 g if those stages have none
   */
  public Amount<Mass> massOf(Role role) {
    return massOf(role, StageKind::inPiece);
  }

  /**
   * The mass of all that has a role, in the stages of some kinds.
   *
   * @param role the role
   * @param wanted chooses the stages, for example {@code StageKind::inDough}
   * @return the mass in grams, 0 g if those stages have none
   */
  public Amount<Mass> massOf(Role role, Predicate<StageKind> wanted) {
    return sum(formula.ofRole(role, wanted));
  }

  /**
   * The mass of all that has a role and is weighed into a stage; what the stage takes from others
   * is not counted.
   *
   * @param role the role
   * @param stage the name of the stage
   * @return the mass in grams, 0 g if the stage has none
   * @throws BakeryException if there is no such stage
   */
  public Amount<Mass> massOf(Role role, String stage) {
    IntPredicate inside = formula.inStages(stage);
    IntPredicate has = formula.ofRole(role, kind -> true);
    return sum(i -> inside.test(i) && has.test(i));
  }

  /**
   * The mass of what is weighed into a stage; what the stage takes from others is not counted.
   *
   * @param stage a stage of this formula
   * @return the mass in grams
   * @throws BakeryException if the formula has no such stage
   */
  public Amount<Mass> weightOf(Stage stage) {
    int place = placeOf(stage);
    return sum(i -> formula.placeOfStage(i) == place);
  }

  /**
   * The mass of a stage with all that goes into it from other stages.
   *
   * @param stage a stage of this formula
   * @return what of it goes into the product, in grams
   * @throws BakeryException if the formula has no such stage
   */
  public Amount<Mass> wholeWeightOf(Stage stage) {
    int place = placeOf(stage);
    return GRAM.amount(wholeGrams()[place]);
  }

  /**
   * The mass of a stage that is made, with all that goes into it from other stages: more than
   * {@link #wholeWeightOf} where some of the stage is kept back.
   *
   * @param stage a stage of this formula
   * @return the mass in grams
   * @throws BakeryException if the formula has no such stage
   */
  public Amount<Mass> madeOf(Stage stage) {
    return wholeWeightOf(stage).multiply(stage.made().in(FRACTION));
  }

  private int placeOf(Stage stage) {
    int place = formula.order().place(stage.name());
    if (place < 0 || !formula.stages().get(place).equals(stage)) {
      throw new BakeryException(
          Reason.UNKNOWN_NAME,
          "not a stage of this formula",
          "\"" + stage.name() + "\"",
          "ask formula().stage(…) for it");
    }
    return place;
  }

  /** The mass of each stage with all that goes into it; each stage is worked once. */
  private double[] wholeGrams() {
    StageOrder order = formula.order();
    double[] whole = new double[order.size()];
    for (int i = 0; i < formula.size(); i++) {
      whole[formula.placeOfStage(i)] += grams(i);
    }
    for (int point = 0; point < order.size(); point++) {
      int stage = order.at(point);
      List<Take> taken = formula.stages().get(stage).taken();
      for (int k = 0; k < taken.size(); k++) {
        whole[stage] += taken.get(k).share().in(FRACTION) * whole[order.taken(stage)[k]];
      }
    }
    return whole;
  }

  /** The mass of a line in grams, without a quantity made for it. */
  private double grams(int index) {
    return rounding == null ? formula.share(index) * flour : rounding.rounded().get(index).value();
  }

  private Amount<Mass> sum(IntPredicate wanted) {
    double sum = 0;
    for (int i = 0; i < formula.size(); i++) {
      sum += wanted.test(i) ? grams(i) : 0;
    }
    return GRAM.amount(sum);
  }

  /**
   * The total flour.
   *
   * @return the mass in grams
   */
  public Amount<Mass> flour() {
    return rounding == null
        ? GRAM.amount(flour)
        : sum(i -> formula.stageOf(i).kind().inPiece() && formula.lines().get(i).isFlour());
  }

  /**
   * The dough before any fat is rolled in.
   *
   * @return the mass in grams
   */
  public Amount<Mass> baseDough() {
    return sum(i -> formula.stageOf(i).kind().inDough());
  }

  /**
   * The fat that is rolled in.
   *
   * @return the mass in grams, 0 g if there is none
   */
  public Amount<Mass> rollIn() {
    return sum(i -> formula.stageOf(i).kind() == StageKind.ROLL_IN);
  }

  /**
   * All that is cut into pieces: the dough with the fat rolled in.
   *
   * @return the mass in grams
   */
  public Amount<Mass> dough() {
    return sum(i -> formula.stageOf(i).kind().inPiece());
  }

  /**
   * What fills or tops the pieces before they are baked.
   *
   * @return the mass in grams, 0 g without a filling
   */
  public Amount<Mass> filling() {
    return sum(i -> formula.stageOf(i).kind() == StageKind.FILLING);
  }

  /**
   * All that is weighed, the finish included.
   *
   * @return the mass in grams
   */
  public Amount<Mass> total() {
    return sum(i -> true);
  }

  /**
   * The raw mass of each piece when the dough is divided.
   *
   * @param pieces how many
   * @param processLoss the share of the dough that does not get into pieces
   * @return the mass of one
   */
  public Amount<Mass> pieceMass(int pieces, Quantity<Dimensionless> processLoss) {
    PieceOrder checked = PieceOrder.raw(pieces, dough()).withProcessLoss(processLoss);
    return dough().multiply((1 - checked.processLoss().in(FRACTION)) / pieces);
  }

  /**
   * How many pieces the dough gives.
   *
   * @param pieceMass the raw mass of one, positive
   * @param processLoss the share of the dough that does not get into pieces
   * @return the whole pieces; what is left is less than one
   * @throws BakeryException if they are more than an {@code int} counts
   */
  public int pieces(Quantity<Mass> pieceMass, Quantity<Dimensionless> processLoss) {
    PieceOrder one = PieceOrder.raw(1, pieceMass).withProcessLoss(processLoss);
    // forgives the rounding of a batch that was scaled to whole pieces
    double pieces = Math.floor(dough().ratioTo(one.dough()) * (1 + 1e-9));
    if (pieces > Integer.MAX_VALUE) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "too many pieces to count",
          Numbers.significant(pieces, 4) + " pieces of " + Given.mass("the piece mass", pieceMass),
          "give a larger piece");
    }
    return (int) pieces;
  }

  /**
   * The same batch times a factor.
   *
   * @param factor the factor, positive
   * @return an exact batch
   */
  public Batch times(double factor) {
    return new Batch(formula, flour * factor);
  }

  /**
   * The same batch rounded to the resolution of a balance: the total is kept, no ingredient
   * vanishes.
   *
   * @param resolution the step of the balance
   * @return the rounded batch; its {@link #rounding()} tells the greatest error
   */
  public Batch rounded(Quantity<Mass> resolution) {
    List<Amount<Mass>> exact = new Batch(formula, flour).weights();
    return new Batch(formula, flour, BalanceRounding.of(exact, resolution));
  }

  /**
   * The same batch rounded to two balances: small masses go on the fine one.
   *
   * @param coarse the step of the balance for most ingredients
   * @param fine the step of the balance for small amounts
   * @param mostOnFine what the fine balance can carry
   * @return the rounded batch
   */
  public Batch rounded(Quantity<Mass> coarse, Quantity<Mass> fine, Quantity<Mass> mostOnFine) {
    List<Amount<Mass>> exact = new Batch(formula, flour).weights();
    return new Batch(formula, flour, BalanceRounding.of(exact, coarse, fine, mostOnFine));
  }

  /**
   * How the batch was rounded.
   *
   * @return the rounding, if it was
   */
  public Optional<BalanceRounding> rounding() {
    return Optional.ofNullable(rounding);
  }

  /**
   * The batch as the lines of a household recipe in grams, ingredients by their ids; what counts as
   * flour though it is none says so. {@link HouseholdRecipe#parse} makes the same batch of them,
   * with a catalogue that has the ingredients.
   *
   * @return the lines, with a heading for each stage
   */
  public List<String> recipeLines() {
    return RecipeText.of(this);
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>(formula.advice());
    if (rounding != null) {
      advice.addAll(rounding.advice());
    }
    return advice;
  }

  @Override
  public Working working() {
    List<WorkedLine> lines = new ArrayList<>();
    for (int i = 0; i < formula.size(); i++) {
      Line line = formula.lines().get(i);
      lines.add(
          new WorkedLine(
              "m(" + line.ingredient().name() + ")",
              "percent × flour",
              line.percent() + " × " + GRAM.amount(flour) + " = " + weight(i),
              "baker's percentage, common practice"));
    }
    return new Working(lines);
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Batch that
        && formula.equals(that.formula)
        && GRAM.amount(flour).equals(GRAM.amount(that.flour))
        && Objects.equals(rounding, that.rounding);
  }

  @Override
  public int hashCode() {
    return 31 * formula.hashCode() + GRAM.amount(flour).hashCode();
  }

  /** The table as a baker reads it, in grams. */
  @Override
  public String toString() {
    return table(AmountFormat.metric());
  }

  /**
   * The table as a baker reads it: stage by stage, ingredient, percent of the total flour, weight,
   * and the totals.
   *
   * @param given how to write the weights
   * @return the table as text
   */
  public String table(AmountFormat given) {
    AmountFormat format = rounding == null ? given : given.withBalance(rounding.resolution());
    int decimals = percentDecimals();
    TextTable table = new TextTable(1);
    table.heading(formula.name());
    table.row("ingredient", "% of flour", "weight");
    int index = 0;
    double[] whole = wholeGrams();
    for (int s = 0; s < whole.length; s++) {
      Stage stage = formula.stages().get(s);
      double made = stage.made().in(FRACTION);
      table.heading("");
      table.heading(stage.name());
      for (int k = 0; k < stage.taken().size(); k++) {
        Take take = stage.taken().get(k);
        double grams = take.share().in(FRACTION) * whole[formula.order().taken(s)[k]] * made;
        boolean all =
            take.isWhole() && formula.stage(take.stage()).made().in(FRACTION) < made * (1 + 1e-9);
        table.row((all ? "  all of " : "  of ") + take.stage(), "", mass(format, grams));
      }
      for (Line line : stage.lines()) {
        table.row(
            "  " + line.ingredient().name(),
            Numbers.fixed(line.percent().value() * made, decimals),
            mass(
                rounding == null ? given : given.withBalance(rounding.steps().get(index)),
                grams(index) * made));
        index++;
      }
      if (stage.lines().size() + stage.taken().size() > 1) {
        table.row(
            "  = " + stage.name().toLowerCase(java.util.Locale.ROOT),
            "",
            mass(format, whole[s] * made));
      }
      if (made > 1) {
        table.row("  of it kept back", "", mass(format, whole[s] * (made - 1)));
      }
    }
    table.heading("");
    table.row("total flour", Numbers.fixed(100, decimals), format.mass(flour()));
    table.row(
        "total dough" + (rollIn().value() > 0 ? " with roll-in" : ""),
        Numbers.fixed(formula.dough().value(), decimals),
        format.mass(dough()));
    if (filling().value() > 0) {
      table.row("filling", "", format.mass(filling()));
    }
    return table.toString();
  }

  private static String mass(AmountFormat format, double grams) {
    return format.mass(GRAM.amount(grams));
  }

  /** One decimal of percent, or as many more as the smallest line needs to show. */
  private int percentDecimals() {
    int decimals = 1;
    for (Line line : formula.lines()) {
      double percent = line.percent().value();
      if (percent > 0 && percent < 0.95) {
        decimals = Math.max(decimals, percent < 0.0295 ? 3 : 2);
      }
    }
    return decimals;
  }
}
