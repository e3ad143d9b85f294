package org.tourage.formula;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.ingredient.Component;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;
import org.tourage.internal.Ordered;
import org.tourage.quantity.Amount;

/**
 * A quantity of a formula that is linear in its lines: each line brings its mass times its own
 * content. What an ingredient is not known to hold is not counted as none: the figure is then
 * unknown. Targets ({@link Target}) are made of figures. Immutable and serialisable.
 *
 * <pre>{@code
 * Figure.SUGARS.percent(formula);   // empty if the sugars of a line are not known
 * }</pre>
 */
public final class Figure implements Serializable {
  private static final long serialVersionUID = 1L;

  /** The water of the dough that is not the flour's own. */
  public static final Figure WATER = new Figure("water", new Held(Component.WATER, false, true));

  /** The salt, that of salted fat included, as sodium × 2.5, without that of leavening. */
  public static final Figure SALT = new Figure("salt", new Salt());

  /** The sugars, without those of the flour. */
  public static final Figure SUGARS =
      new Figure("sugars", new Held(Component.SUGARS, false, false));

  /** The fat, roll-in included. */
  public static final Figure FAT = new Figure("fat", new Held(Component.FAT, true, false));

  /** The protein. */
  public static final Figure PROTEIN =
      new Figure("protein", new Held(Component.PROTEIN, true, false));

  /** All flour of the piece. */
  public static final Figure FLOUR = new Figure("flour", new Flour(Part.PIECE));

  /** The flour of the dough, without that of the roll-in. */
  static final Figure DOUGH_FLOUR = new Figure("flour of the dough", new Flour(Part.DOUGH));

  /** The flour in preferments. */
  public static final Figure PREFERMENTED_FLOUR =
      new Figure("prefermented flour", new Flour(Part.PREFERMENT));

  /** All that is cut into pieces. */
  public static final Figure DOUGH = new Figure("dough", new All());

  private final String name;
  private final Content content;

  private Figure(String name, Content content) {
    this.name = name;
    this.content = content;
  }

  /**
   * What of the formula's flour is weighed into a stage.
   *
   * @param stage the name of the stage
   * @return the figure
   */
  public static Figure flourOf(String stage) {
    return new Figure("flour of " + requireNonNull(stage, "stage"), new StageFlour(stage));
  }

  /**
   * What a stage takes of all earlier stages, through any number of them.
   *
   * @param stage the name of the stage
   * @return the figure
   */
  public static Figure takenBy(String stage) {
    return new Figure("inoculation of " + requireNonNull(stage, "stage"), new Seed(stage));
  }

  /**
   * The cost, in any currency. An ingredient without a price is unknown.
   *
   * @param perKilogram what a kilogram of an ingredient costs; the order has no meaning
   * @return the figure
   * @throws BakeryException if a price is negative or no number
   */
  public static Figure cost(Map<Ingredient, Double> perKilogram) {
    perKilogram.forEach((ingredient, price) -> checkPrice(ingredient.name(), price));
    return new Figure("cost", new Cost(new LinkedHashMap<>(Ordered.map(perKilogram))));
  }

  static void checkPrice(String name, double price) {
    if (!(price >= 0) || Double.isInfinite(price)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE, "not a price", name + " " + price, "give 0 or more");
    }
  }

  /**
   * What it is called.
   *
   * @return for example {@code sugars}
   */
  public String name() {
    return name;
  }

  boolean isMass() {
    return !(content instanceof Cost);
  }

  /** What a gram of each line brings; NaN where that is not known. */
  double[] contents(Formula formula) {
    return content.of(formula);
  }

  /**
   * The ingredients that may hold some and of which it is not known how much.
   *
   * @param formula the formula
   * @return the ingredients, each once
   */
  public List<Ingredient> unknownIn(Formula formula) {
    double[] contents = contents(formula);
    LinkedHashSet<Ingredient> unknown = new LinkedHashSet<>();
    for (int i = 0; i < contents.length; i++) {
      if (Double.isNaN(contents[i]) && formula.share(i) > 0) {
        unknown.add(formula.lines().get(i).ingredient());
      }
    }
    return new ArrayList<>(unknown);
  }

  /** What is known of it, by the total flour. */
  double known(Formula formula) {
    double[] contents = contents(formula);
    double sum = 0;
    for (int i = 0; i < contents.length; i++) {
      sum += Double.isNaN(contents[i]) ? 0 : formula.share(i) * contents[i];
    }
    return sum;
  }

  /**
   * The figure by the total flour.
   *
   * @param formula the formula
   * @return baker's percent; empty where the content of a line is not known
   * @throws BakeryException if this is no mass, but a cost
   */
  public Optional<Amount<Dimensionless>> percent(Formula formula) {
    checkMass();
    return unknownIn(formula).isEmpty()
        ? Optional.of(PERCENT.amount(100 * known(formula)))
        : Optional.empty();
  }

  /**
   * The figure of a batch.
   *
   * @param batch the batch
   * @return the mass in grams; empty where the content of a line is not known
   * @throws BakeryException if this is no mass, but a cost
   */
  public Optional<Amount<Mass>> mass(Batch batch) {
    checkMass();
    OptionalDouble sum = sum(batch);
    return sum.isPresent() ? Optional.of(GRAM.amount(sum.getAsDouble())) : Optional.empty();
  }

  /**
   * The cost of a batch, for a figure that is one.
   *
   * @param batch the batch
   * @return the cost in the currency of the prices; empty where a price is not known
   * @throws BakeryException if this is a mass
   */
  public OptionalDouble money(Batch batch) {
    if (isMass()) {
      throw new BakeryException(
          Reason.MEANINGLESS, "this is a mass and no cost", name, "ask for mass(…)");
    }
    return sum(batch);
  }

  private OptionalDouble sum(Batch batch) {
    if (!unknownIn(batch.formula()).isEmpty()) {
      return OptionalDouble.empty();
    }
    double[] contents = contents(batch.formula());
    double sum = 0;
    for (int i = 0; i < contents.length; i++) {
      sum += batch.weight(i).in(GRAM) * contents[i];
    }
    return OptionalDouble.of(sum);
  }

  private void checkMass() {
    if (!isMass()) {
      throw new BakeryException(
          Reason.MEANINGLESS, "this is a cost and no mass", name, "ask for money(…)");
    }
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Figure that && name.equals(that.name) && content.equals(that.content);
  }

  @Override
  public int hashCode() {
    return name.hashCode();
  }

  /** Its name. */
  @Override
  public String toString() {
    return name;
  }

  /** How much of it a gram of each line brings. */
  private sealed interface Content extends Serializable {
    double of(Formula formula, int line);

    default double[] of(Formula formula) {
      double[] contents = new double[formula.size()];
      for (int i = 0; i < contents.length; i++) {
        contents[i] = of(formula, i);
      }
      return contents;
    }
  }

  private enum Part {
    DOUGH,
    PIECE,
    PREFERMENT;

    boolean has(StageKind kind) {
      return switch (this) {
        case DOUGH -> kind.inDough();
        case PIECE -> kind.inPiece();
        case PREFERMENT -> kind == StageKind.PREFERMENT;
      };
    }
  }

  private record Held(Component component, boolean ofFlour, boolean doughOnly) implements Content {
    @Override
    public double of(Formula formula, int i) {
      Line line = formula.lines().get(i);
      StageKind kind = formula.stageOf(i).kind();
      boolean counts =
          (doughOnly ? kind.inDough() : kind.inPiece()) && (ofFlour || !line.isFlour());
      return counts
          ? line.ingredient().composition().share(component).isPresent()
              ? line.ingredient().composition().fraction(component)
              : Double.NaN
          : 0;
    }
  }

  private record Salt() implements Content {
    @Override
    public double of(Formula formula, int i) {
      Ingredient ingredient = formula.lines().get(i).ingredient();
      boolean counts = formula.stageOf(i).kind().inPiece() && !ingredient.is(Role.LEAVENING);
      boolean known = ingredient.composition().share(Component.SODIUM).isPresent();
      return counts ? known ? ingredient.saltFraction() : Double.NaN : 0;
    }
  }

  private record Flour(Part part) implements Content {
    @Override
    public double of(Formula formula, int i) {
      return part.has(formula.stageOf(i).kind()) && formula.lines().get(i).isFlour() ? 1 : 0;
    }
  }

  private record All() implements Content {
    @Override
    public double of(Formula formula, int i) {
      return formula.stageOf(i).kind().inPiece() ? 1 : 0;
    }
  }

  private record StageFlour(String stage) implements Content {
    @Override
    public double of(Formula formula, int i) {
      boolean here = formula.placeOfStage(i) == formula.order().place(formula.stage(stage).name());
      return here && formula.lines().get(i).isFlour() ? 1 : 0;
    }
  }

  private record Seed(String stage) implements Content {
    @Override
    public double of(Formula formula, int i) {
      return formula.partsIn(stage)[formula.placeOfStage(i)];
    }

    @Override
    public double[] of(Formula formula) {
      double[] parts = formula.partsIn(stage);
      double[] contents = new double[formula.size()];
      for (int i = 0; i < contents.length; i++) {
        contents[i] = parts[formula.placeOfStage(i)];
      }
      return contents;
    }
  }

  private record Cost(LinkedHashMap<Ingredient, Double> perKilogram) implements Content {
    @Override
    public double of(Formula formula, int i) {
      return perKilogram.getOrDefault(formula.lines().get(i).ingredient(), Double.NaN) / 1000;
    }
  }
}
