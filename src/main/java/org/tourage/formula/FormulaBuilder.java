package org.tourage.formula;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;
import org.tourage.quantity.Amount;
import org.tourage.quantity.BakeryUnit;
import org.tourage.quantity.BakeryUnits;
import org.tourage.quantity.Given;

/**
 * Collects the lines of a formula, all in baker's percent or all in masses. There are two ways,
 * which can be mixed:
 *
 * <ul>
 *   <li>{@link #line} gives the overall dough; {@link #preferment} and {@link #soaker} take their
 *       part out of it, and what remains is the final dough;
 *   <li>{@link #stage} gives a stage by itself, on top of the overall dough.
 * </ul>
 *
 * <p>An ingredient given by name is looked up in the catalogue. Used inside {@link
 * Formula#byPercent} and {@link Formula#byWeight}; not safe for use by several threads.
 *
 * @param <Q> {@code Dimensionless} for percentages, {@code Mass} for masses
 */
public final class FormulaBuilder<Q extends Quantity<Q>> {
  private final BakeryUnit<Q> unit;
  private final boolean percent;
  private Catalogue catalogue = Catalogue.builtIn();
  private final List<Line> dough = new ArrayList<>();
  private final List<Preferment> preferments = new ArrayList<>();
  private final List<FormulaAssembly.Node> taken = new ArrayList<>();
  private final List<FormulaAssembly.Node> stages = new ArrayList<>();
  private final List<FormulaAssembly.Draw> draws = new ArrayList<>();
  private final List<Line> rollIn = new ArrayList<>();
  private final List<Line> finish = new ArrayList<>();
  private boolean done;

  FormulaBuilder(BakeryUnit<Q> unit, boolean percent) {
    this.unit = unit;
    this.percent = percent;
  }

  /**
   * Looks names up in another catalogue from here on.
   *
   * @param value the catalogue
   * @return this builder
   */
  public FormulaBuilder<Q> catalogue(Catalogue value) {
    open();
    catalogue = requireNonNull(value, "value");
    return this;
  }

  private void open() {
    if (done) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "this formula is made already",
          "a line that comes after",
          "add all lines inside byPercent(…) or byWeight(…)");
    }
  }

  private Line read(Ingredient ingredient, Quantity<Q> amount, boolean flour) {
    open();
    requireNonNull(ingredient, "ingredient");
    requireNonNull(amount, "amount");
    double value = unit.measure(amount);
    if (value < 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a line can't be negative",
          ingredient.name() + " " + Amount.from(amount),
          "give 0 or more");
    }
    return new Line(ingredient, value, flour);
  }

  private Line read(Ingredient ingredient, Quantity<Q> amount) {
    return read(ingredient, amount, requireNonNull(ingredient, "ingredient").is(Role.FLOUR));
  }

  /**
   * Adds a line to the overall dough.
   *
   * @param ingredient the ingredient
   * @param amount percent of the total flour, or a mass
   * @return this builder
   */
  public FormulaBuilder<Q> line(Ingredient ingredient, Quantity<Q> amount) {
    dough.add(read(ingredient, amount));
    return this;
  }

  /**
   * Adds a line to the overall dough.
   *
   * @param ingredient the name of the ingredient
   * @param amount percent of the total flour, or a mass
   * @return this builder
   * @throws BakeryException if the catalogue has no such ingredient
   */
  public FormulaBuilder<Q> line(String ingredient, Quantity<Q> amount) {
    return line(catalogue.require(ingredient), amount);
  }

  /**
   * Adds a line that counts as flour whatever its role, such as a starch in a gluten-free blend.
   *
   * @param ingredient the ingredient
   * @param amount percent of the total flour, or a mass
   * @return this builder
   */
  public FormulaBuilder<Q> flour(Ingredient ingredient, Quantity<Q> amount) {
    dough.add(read(ingredient, amount, true));
    return this;
  }

  /**
   * Adds a line that counts as flour whatever its role, such as a starch in a gluten-free blend.
   *
   * @param ingredient the name of the ingredient
   * @param amount percent of the total flour, or a mass
   * @return this builder
   * @throws BakeryException if the catalogue has no such ingredient
   */
  public FormulaBuilder<Q> flour(String ingredient, Quantity<Q> amount) {
    return flour(catalogue.require(ingredient), amount);
  }

  /**
   * Adds a line to the fat that is rolled in.
   *
   * @param ingredient the ingredient
   * @param amount percent of the total flour, or a mass
   * @return this builder
   */
  public FormulaBuilder<Q> rollIn(Ingredient ingredient, Quantity<Q> amount) {
    rollIn.add(read(ingredient, amount));
    return this;
  }

  /**
   * Adds a line to the fat that is rolled in.
   *
   * @param ingredient the name of the ingredient
   * @param amount percent of the total flour, or a mass
   * @return this builder
   * @throws BakeryException if the catalogue has no such ingredient
   */
  public FormulaBuilder<Q> rollIn(String ingredient, Quantity<Q> amount) {
    return rollIn(catalogue.require(ingredient), amount);
  }

  /**
   * Adds a line to the finish.
   *
   * @param ingredient the ingredient
   * @param amount percent of the total flour, or a mass
   * @return this builder
   */
  public FormulaBuilder<Q> finish(Ingredient ingredient, Quantity<Q> amount) {
    finish.add(read(ingredient, amount));
    return this;
  }

  /**
   * Adds a line to the finish.
   *
   * @param ingredient the name of the ingredient
   * @param amount percent of the total flour, or a mass
   * @return this builder
   * @throws BakeryException if the catalogue has no such ingredient
   */
  public FormulaBuilder<Q> finish(String ingredient, Quantity<Q> amount) {
    return finish(catalogue.require(ingredient), amount);
  }

  /**
   * Takes a preferment out of the overall dough.
   *
   * @param preferment the preferment
   * @return this builder
   */
  public FormulaBuilder<Q> preferment(Preferment preferment) {
    open();
    preferments.add(requireNonNull(preferment, "preferment"));
    return this;
  }

  /**
   * Takes a soaker out of the overall dough.
   *
   * @param name the name of the stage
   * @param lines adds its lines
   * @return this builder
   */
  public FormulaBuilder<Q> soaker(String name, Consumer<StageBuilder<Q>> lines) {
    open();
    StageBuilder<Q> builder = new StageBuilder<>(this);
    lines.accept(builder);
    taken.add(builder.build(name, StageKind.SOAKER, true));
    return this;
  }

  /**
   * Adds a stage by itself, on top of the overall dough.
   *
   * @param kind what it is for
   * @param name its name, unique in the formula
   * @param lines adds its lines
   * @return this builder
   */
  public FormulaBuilder<Q> stage(StageKind kind, String name, Consumer<StageBuilder<Q>> lines) {
    open();
    StageBuilder<Q> builder = new StageBuilder<>(this);
    lines.accept(builder);
    stages.add(builder.build(name, requireNonNull(kind, "kind"), false));
    return this;
  }

  /**
   * Adds a stage by itself, on top of the overall dough.
   *
   * @param draft the stage
   * @return this builder
   */
  public FormulaBuilder<Q> stage(StageDraft<Q> draft) {
    open();
    FormulaAssembly.Node node = new FormulaAssembly.Node(draft.name(), draft.kind(), false);
    for (StageDraft.Part<Q> part : draft.parts()) {
      node.lines().add(read(part.ingredient(), part.amount(), part.flour()));
    }
    for (StageDraft.Draw<Q> draw : draft.draws()) {
      node.draws().add(read(draw));
    }
    stages.add(node);
    return this;
  }

  private FormulaAssembly.Draw read(StageDraft.Draw<Q> draw) {
    return draw.amount() == null
        ? new FormulaAssembly.Draw(
            draw.stage(), BakeryUnits.FRACTION.measure(requireNonNull(draw.share())), true)
        : read(draw.stage(), draw.amount());
  }

  private FormulaAssembly.Draw read(String stage, Quantity<Q> amount) {
    open();
    double value = unit.measure(amount);
    if (!(value > 0)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "nothing is taken of \"" + stage + "\"",
          Amount.from(amount).toString(),
          "give more than 0, or leave it out");
    }
    return new FormulaAssembly.Draw(requireNonNull(stage, "stage"), value, false);
  }

  /**
   * Says that all of a stage goes into the final dough. A preferment or soaker that no stage takes
   * goes there anyway.
   *
   * @param stage its name
   * @return this builder
   */
  public FormulaBuilder<Q> takes(String stage) {
    open();
    draws.add(FormulaAssembly.Draw.all(requireNonNull(stage, "stage")));
    return this;
  }

  /**
   * Says that some of a stage goes into the final dough; what no stage takes is kept back.
   *
   * @param stage its name
   * @param amount percent of the total flour, or a mass, positive
   * @return this builder
   */
  public FormulaBuilder<Q> takes(String stage, Quantity<Q> amount) {
    draws.add(read(stage, amount));
    return this;
  }

  FormulaBuilder<Q> takes(StageDraft.Draw<Q> draw) {
    draws.add(read(draw));
    return this;
  }

  /** Adds a line to the dough, the roll-in or the finish. */
  FormulaBuilder<Q> add(StageKind kind, Ingredient ingredient, Quantity<Q> amount, boolean flour) {
    List<Line> lines =
        kind == StageKind.ROLL_IN ? rollIn : kind == StageKind.FINISH ? finish : dough;
    lines.add(read(ingredient, amount, flour));
    return this;
  }

  /**
   * The lines of one stage.
   *
   * @param <Q> the same as the formula's
   */
  public static final class StageBuilder<Q extends Quantity<Q>> {
    private final FormulaBuilder<Q> formula;
    private final List<Line> lines = new ArrayList<>();
    private final List<FormulaAssembly.Draw> draws = new ArrayList<>();
    private double basis = 1;
    private boolean ownFlour;
    private boolean made;

    private StageBuilder(FormulaBuilder<Q> formula) {
      this.formula = formula;
    }

    /**
     * Adds a line.
     *
     * @param ingredient the ingredient
     * @param amount percent, or a mass
     * @return this builder
     */
    public StageBuilder<Q> line(Ingredient ingredient, Quantity<Q> amount) {
      stillOpen();
      lines.add(formula.read(ingredient, amount));
      return this;
    }

    /**
     * Adds a line.
     *
     * @param ingredient the name of the ingredient
     * @param amount percent, or a mass
     * @return this builder
     */
    public StageBuilder<Q> line(String ingredient, Quantity<Q> amount) {
      return line(formula.catalogue.require(ingredient), amount);
    }

    /**
     * Adds a line that counts as flour whatever its role, such as a starch in a gluten-free blend.
     *
     * @param ingredient the ingredient
     * @param amount percent, or a mass
     * @return this builder
     */
    public StageBuilder<Q> flour(Ingredient ingredient, Quantity<Q> amount) {
      stillOpen();
      lines.add(formula.read(ingredient, amount, true));
      return this;
    }

    /**
     * Adds a line that counts as flour whatever its role, such as a starch in a gluten-free blend.
     *
     * @param ingredient the name of the ingredient
     * @param amount percent, or a mass
     * @return this builder
     */
    public StageBuilder<Q> flour(String ingredient, Quantity<Q> amount) {
      return flour(formula.catalogue.require(ingredient), amount);
    }

    /**
     * Says that another stage goes into this one whole.
     *
     * @param stage its name
     * @return this builder
     */
    public StageBuilder<Q> takes(String stage) {
      stillOpen();
      draws.add(FormulaAssembly.Draw.all(requireNonNull(stage, "stage")));
      return this;
    }

    /**
     * Says that some of another stage goes into this one; what no stage takes is kept back.
     *
     * @param stage its name
     * @param amount a mass, or percent as the lines of this stage, positive
     * @return this builder
     */
    public StageBuilder<Q> takes(String stage, Quantity<Q> amount) {
      stillOpen();
      draws.add(formula.read(stage, amount));
      return this;
    }

    /**
     * Says that the percentages of this stage are of its own flour, and how much of the total flour
     * that is. Without this they are of the total flour.
     *
     * @param flourShare the flour of this stage by the total flour, above 0 %
     * @return this builder
     * @throws BakeryException if the formula is given in masses, or the share is not positive
     */
    public StageBuilder<Q> ofOwnFlour(Quantity<Dimensionless> flourShare) {
      stillOpen();
      double share = BakeryUnits.FRACTION.measure("the flour share", flourShare);
      if (!formula.percent || share <= 0) {
        throw new BakeryException(
            formula.percent ? Reason.OUT_OF_RANGE : Reason.INCONSISTENT,
            formula.percent
                ? "the flour of a stage must be positive"
                : "masses need no flour to refer to",
            Given.ratio("the flour share", flourShare).toString(),
            "give a share above 0 % in a formula of percentages");
      }
      if (ownFlour) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            "the flour of a stage is given twice",
            Given.ratio("the flour share", flourShare).toString(),
            "call ofOwnFlour(…) once");
      }
      ownFlour = true;
      basis = share;
      return this;
    }

    private void stillOpen() {
      formula.open();
      if (made) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            "this stage is made already",
            "a line that comes after",
            "add all lines of a stage inside its own block");
      }
    }

    private FormulaAssembly.Node build(String name, StageKind kind, boolean takenOut) {
      made = true;
      if (lines.isEmpty() && draws.isEmpty()) {
        throw new BakeryException(
            Reason.MISSING, "a stage has no lines", "\"" + name + "\"", "add one, or leave it out");
      }
      FormulaAssembly.Node node = new FormulaAssembly.Node(name, kind, takenOut);
      for (Line line : lines) {
        node.lines().add(line.withShare(line.share() * basis));
      }
      for (FormulaAssembly.Draw draw : draws) {
        node.draws()
            .add(
                draw.ofStage()
                    ? draw
                    : new FormulaAssembly.Draw(draw.stage(), draw.amount() * basis, false));
      }
      return node;
    }
  }

  /** The formula and the mass of flour (1 where percentages were given). */
  record Built(Formula formula, double flour) {}

  Built build(String name) {
    open();
    done = true;
    return new FormulaAssembly(
            name, percent, dough, preferments, taken, stages, draws, rollIn, finish)
        .build();
  }
}
