package org.tourage.formula;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.BakeryUnit;
import org.tourage.quantity.BakeryUnits;

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
  /** Flour percentages must sum to 100 % within this share, which forgives printed thirds. */
  private static final double FLOUR_TOLERANCE = 5e-4;

  /** A remainder below this share of the flour is rounding, not a line. */
  private static final double NOTHING = 1e-12;

  private final BakeryUnit<Q> unit;
  private final boolean percent;
  private Catalogue catalogue = Catalogue.builtIn();
  private final List<Line> dough = new ArrayList<>();
  private final List<Preferment> preferments = new ArrayList<>();
  private final List<Stage> taken = new ArrayList<>();
  private final List<Stage> stages = new ArrayList<>();
  private final List<Line> rollIn = new ArrayList<>();
  private final List<Line> finish = new ArrayList<>();

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
    catalogue = requireNonNull(value, "value");
    return this;
  }

  private Line read(Ingredient ingredient, Quantity<Q> amount, boolean flour) {
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
    return read(ingredient, amount, ingredient.is(Role.FLOUR));
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
    StageBuilder<Q> builder = new StageBuilder<>(this);
    lines.accept(builder);
    taken.add(builder.build(name, StageKind.SOAKER));
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
    StageBuilder<Q> builder = new StageBuilder<>(this);
    lines.accept(builder);
    stages.add(builder.build(name, requireNonNull(kind, "kind")));
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
    private final List<String> takes = new ArrayList<>();
    private double basis = 1;

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
     * Says that another stage goes into this one whole.
     *
     * @param stage its name
     * @return this builder
     */
    public StageBuilder<Q> takes(String stage) {
      takes.add(requireNonNull(stage, "stage"));
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
      double share = BakeryUnits.FRACTION.measure(flourShare);
      if (!formula.percent || share <= 0) {
        throw new BakeryException(
            formula.percent ? Reason.OUT_OF_RANGE : Reason.INCONSISTENT,
            formula.percent
                ? "the flour of a stage must be positive"
                : "masses need no flour to refer to",
            Amount.from(flourShare).toString(),
            "give a share above 0 % in a formula of percentages");
      }
      basis = share;
      return this;
    }

    private Stage build(String name, StageKind kind) {
      List<Line> scaled = new ArrayList<>();
      for (Line line : lines) {
        scaled.add(line.withShare(line.share() * basis));
      }
      return new Stage(name, kind, scaled, takes);
    }
  }

  /** The formula and the mass of flour (1 where percentages were given). */
  record Built(Formula formula, double flour) {}

  Built build(String name) {
    List<Stage> raw = new ArrayList<>(stages);
    if (!dough.isEmpty()) {
      raw.add(new Stage("Overall dough", StageKind.FINAL_DOUGH, dough, List.of()));
    }
    if (!rollIn.isEmpty()) {
      raw.add(new Stage("Roll-in", StageKind.ROLL_IN, rollIn, List.of()));
    }
    double flour = 0;
    for (Stage stage : raw) {
      flour += stage.kind().inPiece() ? stage.flour() : 0;
    }
    checkFlour(name, flour);
    double scale = percent ? 1 : flour;
    List<Stage> result = new ArrayList<>();
    List<Line> remaining = scaled(dough, scale);
    for (Preferment preferment : preferments) {
      takePreferment(preferment, remaining, result);
    }
    for (Stage soaker : taken) {
      List<Line> lines = scaled(soaker.lines(), scale);
      for (Line line : lines) {
        take(remaining, line.ingredient(), line.share(), soaker.name());
      }
      result.add(new Stage(soaker.name(), soaker.kind(), lines, soaker.takes()));
    }
    for (Stage stage : stages) {
      result.add(
          new Stage(stage.name(), stage.kind(), scaled(stage.lines(), scale), stage.takes()));
    }
    addFinalDough(result, remaining);
    addPart(result, "Roll-in", StageKind.ROLL_IN, scaled(rollIn, scale));
    addPart(result, "Finish", StageKind.FINISH, scaled(finish, scale));
    checkNames(result);
    return new Built(new Formula(name, order(result)), scale);
  }

  private void checkFlour(String name, double flour) {
    if (flour <= 0) {
      throw new BakeryException(
          Reason.MISSING,
          "baker's percent needs flour",
          "\"" + name + "\" has none",
          "add a flour, or add a line with flour(…) so that it counts as one");
    }
    if (percent && Math.abs(flour - 1) > FLOUR_TOLERANCE) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "the flours must sum to 100 %",
          Numbers.significant(flour * 100, 6) + " %",
          "all flour of all stages together is 100 %; use Formula.byWeight for masses");
    }
  }

  private static List<Line> scaled(List<Line> lines, double scale) {
    List<Line> result = new ArrayList<>();
    for (Line line : lines) {
      result.add(line.withShare(line.share() / scale));
    }
    return result;
  }

  private void takePreferment(Preferment preferment, List<Line> remaining, List<Stage> result) {
    List<String> before = List.of();
    for (Preferment.Step step : preferment.steps()) {
      List<Line> lines = new ArrayList<>();
      Ingredient flour = choose(preferment.flour(), Role.FLOUR, remaining, step.name());
      lines.add(take(remaining, flour, step.flour(), step.name()));
      if (step.liquid() > 0) {
        Ingredient liquid = choose(preferment.liquid(), Role.LIQUID, remaining, step.name());
        lines.add(take(remaining, liquid, step.liquid(), step.name()));
      }
      if (step.yeast() > 0) {
        Ingredient yeast = choose(null, Role.YEAST, remaining, step.name());
        lines.add(take(remaining, yeast, step.yeast(), step.name()));
      }
      result.add(new Stage(step.name(), StageKind.PREFERMENT, lines, before));
      before = List.of(step.name());
    }
  }

  private static Ingredient choose(
      @Nullable Ingredient wanted, Role role, List<Line> lines, String stage) {
    if (wanted != null) {
      return wanted;
    }
    for (Line line : lines) {
      if (role == Role.FLOUR ? line.isFlour() : line.ingredient().is(role)) {
        return line.ingredient();
      }
    }
    throw new BakeryException(
        Reason.MISSING,
        stage + " has nothing to take",
        "no " + role.name().toLowerCase(java.util.Locale.ROOT) + " in the overall dough",
        "add it with line(…)");
  }

  /** Moves part of the overall dough into a stage. */
  private static Line take(
      List<Line> remaining, Ingredient ingredient, double share, String stage) {
    double left = share;
    boolean flour = ingredient.is(Role.FLOUR);
    for (int i = 0; i < remaining.size(); i++) {
      Line line = remaining.get(i);
      if (line.ingredient().equals(ingredient)) {
        flour = line.isFlour();
        double moved = Math.min(left, line.share());
        remaining.set(i, line.withShare(line.share() - moved));
        left -= moved;
      }
    }
    if (left > NOTHING * 100) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          stage + " takes more " + ingredient.name() + " than the overall dough has left",
          Numbers.significant(share * 100, 5)
              + " % wanted, "
              + Numbers.significant((share - left) * 100, 5)
              + " % left",
          "make the stage smaller or drier, or raise the overall percentage");
    }
    return new Line(ingredient, share, flour);
  }

  private static void addFinalDough(List<Stage> result, List<Line> remaining) {
    remaining.removeIf(line -> line.share() <= NOTHING);
    Set<String> alreadyTaken = new HashSet<>();
    for (Stage stage : result) {
      alreadyTaken.addAll(stage.takes());
    }
    List<String> takes = new ArrayList<>();
    for (Stage stage : result) {
      boolean before = stage.kind() == StageKind.PREFERMENT || stage.kind() == StageKind.SOAKER;
      if (before && !alreadyTaken.contains(stage.name())) {
        takes.add(stage.name());
      }
    }
    for (int i = 0; i < result.size(); i++) {
      Stage stage = result.get(i);
      if (stage.kind() == StageKind.FINAL_DOUGH) {
        List<Line> lines = new ArrayList<>(stage.lines());
        lines.addAll(remaining);
        List<String> all = new ArrayList<>(stage.takes());
        all.addAll(takes);
        result.set(i, new Stage(stage.name(), stage.kind(), lines, all));
        return;
      }
    }
    if (!remaining.isEmpty() || !takes.isEmpty()) {
      result.add(new Stage("Final dough", StageKind.FINAL_DOUGH, remaining, takes));
    }
  }

  private static void addPart(List<Stage> result, String name, StageKind kind, List<Line> lines) {
    if (!lines.isEmpty()) {
      result.add(new Stage(name, kind, lines, List.of()));
    }
  }

  private static void checkNames(List<Stage> stages) {
    Set<String> names = new HashSet<>();
    for (Stage stage : stages) {
      if (!names.add(stage.name())) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            "two stages have one name",
            "\"" + stage.name() + "\"",
            "give each stage a name of its own");
      }
    }
    Set<String> used = new HashSet<>();
    for (Stage stage : stages) {
      for (String name : stage.takes()) {
        if (!names.contains(name) || !used.add(name) || name.equals(stage.name())) {
          throw new BakeryException(
              Reason.INCONSISTENT,
              "a stage can be taken once, by another stage",
              "\"" + stage.name() + "\" takes \"" + name + "\"",
              "name an existing stage that no other stage takes");
        }
      }
    }
  }

  /** Preferments, soakers, final dough, roll-in, finish; otherwise as given. */
  private static List<Stage> order(List<Stage> stages) {
    List<Stage> ordered = new ArrayList<>(stages);
    ordered.sort(java.util.Comparator.comparing(Stage::kind));
    return ordered;
  }
}
