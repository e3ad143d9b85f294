package org.tourage.label;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.GRAM;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
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
import org.tourage.formula.Batch;
import org.tourage.formula.Line;
import org.tourage.ingredient.Component;
import org.tourage.ingredient.Composition;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Origin;
import org.tourage.ingredient.Role;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Given;

/**
 * The nutrients of a batch, baked: what every line brings, the finish included, in what is left
 * after water has gone off in the oven and in cooling. A draft for the person who writes the label,
 * no legal label: figures of a table are averages, and products differ.
 *
 * <pre>{@code
 * Nutrition rolls = Nutrition.of(batch).withWaterLost(grams(95));
 * rolls.per100Grams().table(LabelScheme.EU);
 * rolls.perPiece(12).energy(LabelScheme.US);
 * }</pre>
 *
 * <p>Immutable and serialisable.
 */
public final class Nutrition implements Explained, Serializable {
  static final String UNKNOWN = "unknown";

  /** The words that stand on every draft. */
  public static final String DRAFT = "draft, no legal label";

  private static final long serialVersionUID = 1L;

  /** Where the main parts sum to this share there is no room for alcohol that is not reported. */
  private static final double NO_ROOM_FOR_ALCOHOL = 0.99;

  /** From this share of the fat on, a plant fat's trans fat is that of another time. */
  private static final double OLD_TRANS_SHARE = 0.02;

  /** The batch. */
  private final Batch batch;

  /** What comes on or in beside the batch: frying fat, boil water. */
  private final List<Uptake> uptakes;

  /** Water lost in the oven and in cooling, in grams. */
  private final double waterLost;

  /** The share of the alcohol that stays; NaN while nobody has said. */
  private final double alcoholRetained;

  private record Uptake(Ingredient ingredient, double grams) implements Serializable {}

  private Nutrition(Batch batch, List<Uptake> uptakes, double waterLost, double alcoholRetained) {
    this.batch = batch;
    this.uptakes = List.copyOf(uptakes);
    this.waterLost = waterLost;
    this.alcoholRetained = alcoholRetained;
  }

  /**
   * The nutrients of a batch before it is baked.
   *
   * @param batch the batch
   * @return the nutrition, with no water lost
   */
  public static Nutrition of(Batch batch) {
    return new Nutrition(requireNonNull(batch, "batch"), List.of(), 0, Double.NaN);
  }

  /**
   * The same after some water has gone, in the oven and in cooling together.
   *
   * @param water the water that the whole batch loses, 0 g up to the water in it
   * @return the nutrition of what is left
   * @throws BakeryException if there is not so much water
   */
  public Nutrition withWaterLost(Quantity<Mass> water) {
    double grams = GRAM.measure("the water", water);
    double there = total(Component.WATER) + unknownMass();
    if (grams < 0 || grams > there) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "so much water can't go off",
          Given.mass("the water", water) + " of " + AmountFormat.metric().mass(GRAM.amount(there)),
          "give 0 g up to the water in the batch; a bake loses 6 % to 25 % of the raw mass");
    }
    return new Nutrition(batch, uptakes, grams, alcoholRetained);
  }

  /**
   * The same with something taken up on the way: fat in the fryer, water in the boil, a glaze that
   * is no line of the formula.
   *
   * @param ingredient what is taken up
   * @param mass how much the whole batch takes up, not negative
   * @return the nutrition with it
   */
  public Nutrition withUptake(Ingredient ingredient, Quantity<Mass> mass) {
    requireNonNull(ingredient, "ingredient");
    double grams = GRAM.measure("the mass", mass);
    if (grams < 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "an uptake can't be negative",
          Given.mass("the mass", mass) + " " + ingredient,
          "give water that goes off to withWaterLost(…)");
    }
    List<Uptake> more = new ArrayList<>(uptakes);
    more.add(new Uptake(ingredient, grams));
    return new Nutrition(batch, more, waterLost, alcoholRetained);
  }

  /**
   * The same with a statement of how much of the alcohol stays in the bake. All of it is counted
   * while nobody has said.
   *
   * @param share 0 % to 100 %
   * @return the nutrition with it; the mass falls by the alcohol that goes
   */
  public Nutrition withAlcoholRetained(Quantity<Dimensionless> share) {
    double value = FRACTION.measure("the share", share);
    if (value < 0 || value > 1) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no such share of alcohol can stay",
          Given.ratio("the share", share).toString(),
          "give 0 % to 100 %");
    }
    return new Nutrition(batch, uptakes, waterLost, value);
  }

  /**
   * The batch.
   *
   * @return the batch
   */
  public Batch batch() {
    return batch;
  }

  /**
   * The water that goes off.
   *
   * @return the mass in grams
   */
  public Amount<Mass> waterLost() {
    return GRAM.amount(waterLost);
  }

  /**
   * What is left on the tray: all that was weighed and taken up, less the water and the alcohol
   * that went off.
   *
   * @return the mass in grams
   */
  public Amount<Mass> mass() {
    return GRAM.amount(grams());
  }

  private double grams() {
    double sum = batch.total().in(GRAM) - waterLost - alcoholLost();
    for (Uptake uptake : uptakes) {
      sum += uptake.grams;
    }
    return sum;
  }

  private double alcoholLost() {
    return Double.isNaN(alcoholRetained) ? 0 : (1 - alcoholRetained) * total(Component.ALCOHOL);
  }

  /**
   * The nutrients of 100 g of the baked product.
   *
   * @return the facts
   */
  public NutritionFacts per100Grams() {
    return facts("100 g", 100 / grams());
  }

  /**
   * The nutrients of a piece.
   *
   * @param pieces how many pieces the whole batch makes, positive
   * @return the facts; a piece times the pieces is the batch
   */
  public NutritionFacts perPiece(int pieces) {
    if (pieces <= 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE, "a batch makes pieces", pieces + " pieces", "give 1 or more");
    }
    return facts("piece", 1.0 / pieces);
  }

  /**
   * The nutrients of a piece of a mass, where not all of the batch gets into pieces.
   *
   * @param piece the mass of the baked piece, positive
   * @return the facts
   */
  public NutritionFacts perPiece(Quantity<Mass> piece) {
    return facts("piece", share("piece", piece));
  }

  /**
   * The nutrients of a serving.
   *
   * @param serving the mass of the baked serving, positive
   * @return the facts
   */
  public NutritionFacts perServing(Quantity<Mass> serving) {
    double share = share("serving", serving);
    return facts("serving of " + AmountFormat.metric().mass(serving), share);
  }

  /** The share of the product that so much of it is. */
  private double share(String what, Quantity<Mass> part) {
    Amount<Mass> mass = Given.mass("the " + what, part);
    if (!(mass.value() > 0)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a " + what + " must weigh something",
          mass.toString(),
          "give for example 50 g");
    }
    return mass.in(GRAM) / grams();
  }

  /**
   * The nutrients of all that the batch makes.
   *
   * @return the facts
   */
  public NutritionFacts whole() {
    return facts("batch", 1);
  }

  private NutritionFacts facts(String basis, double scale) {
    List<NutrientFigure> figures = new ArrayList<>();
    for (Nutrient nutrient : Nutrient.values()) {
      double grams = 0;
      Set<Ingredient> unknown = new LinkedHashSet<>();
      for (Uptake part : parts()) {
        Composition composition = part.ingredient.composition();
        double share = share(nutrient, composition);
        if (!Double.isNaN(share)) {
          grams += part.grams * share;
        } else if (part.grams > 0) {
          unknown.add(part.ingredient);
        }
      }
      double kept =
          nutrient == Nutrient.ALCOHOL && !Double.isNaN(alcoholRetained) ? alcoholRetained : 1;
      figures.add(
          new NutrientFigure(
              nutrient,
              GRAM.amount(grams * kept * scale * nutrient.gramsFromComponent()),
              new ArrayList<>(unknown)));
    }
    return new NutritionFacts(basis, GRAM.amount(grams() * scale), figures);
  }

  /** NaN where the composition does not report it. */
  private static double share(Nutrient nutrient, Composition composition) {
    boolean known = composition.share(nutrient.component()).isPresent();
    double value = composition.fraction(nutrient.component());
    return switch (nutrient) {
      case CARBOHYDRATE ->
          known && composition.share(Component.FIBRE).isPresent()
              ? Math.max(0, value - composition.fraction(Component.FIBRE))
              : Double.NaN;
      case ALCOHOL -> known ? value : noRoomForAlcohol(composition) ? 0 : Double.NaN;
      default -> known ? value : Double.NaN;
    };
  }

  private static boolean noRoomForAlcohol(Composition composition) {
    double sum = 0;
    for (Component part :
        new Component[] {
          Component.WATER, Component.PROTEIN, Component.FAT, Component.CARBOHYDRATE, Component.ASH
        }) {
      sum += composition.fraction(part);
    }
    return sum >= NO_ROOM_FOR_ALCOHOL;
  }

  private List<Uptake> parts() {
    List<Uptake> parts = new ArrayList<>();
    List<Line> lines = batch.formula().lines();
    for (int i = 0; i < lines.size(); i++) {
      parts.add(new Uptake(lines.get(i).ingredient(), batch.weight(i).in(GRAM)));
    }
    parts.addAll(uptakes);
    return parts;
  }

  private double total(Component component) {
    double sum = 0;
    for (Uptake part : parts()) {
      sum += part.grams * part.ingredient.composition().fraction(component);
    }
    return sum;
  }

  private double unknownMass() {
    double sum = 0;
    for (Uptake part : parts()) {
      sum += part.ingredient.composition().share(Component.WATER).isEmpty() ? part.grams : 0;
    }
    return sum;
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>();
    advice.add(
        Advice.of(
            "LABEL_DRAFT",
            "the nutrition is a " + DRAFT,
            "Tables are averages: the analysis or the labels in hand and the local law decide"));
    boolean cereal = parts().stream().anyMatch(p -> p.ingredient.is(Role.FLOUR));
    if (cereal) {
      advice.add(
          Advice.of(
              "PROTEIN_FACTOR",
              "the protein of flours is by the nitrogen factor of the table (5.70 for white wheat)",
              "The European Union takes nitrogen × 6.25, up to a tenth more for wheat"));
    }
    String old =
        parts().stream()
            .map(Uptake::ingredient)
            .filter(Nutrition::hydrogenated)
            .distinct()
            .map(Ingredient::name)
            .collect(Collectors.joining(", "));
    if (!old.isEmpty()) {
      advice.add(
          Advice.of(
              "OLD_FAT",
              "the table's " + old + " was made with partly hydrogenated oil",
              "Put in the label in hand: its saturated and trans fat are others today"));
    }
    if (total(Component.ALCOHOL) > 0 && Double.isNaN(alcoholRetained)) {
      advice.add(
          Advice.of(
              "ALCOHOL_KEPT",
              AmountFormat.metric().mass(GRAM.amount(total(Component.ALCOHOL)))
                  + " of alcohol is counted as if none went off",
              "Say how much stays"));
    }
    return advice;
  }

  private static boolean hydrogenated(Ingredient ingredient) {
    Composition composition = ingredient.composition();
    return ingredient.is(Role.FAT)
        && ingredient.origin() != Origin.ANIMAL
        && composition.fraction(Component.TRANS_FAT)
            > OLD_TRANS_SHARE * composition.fraction(Component.FAT);
  }

  @Override
  public Working working() {
    List<WorkedLine> lines = new ArrayList<>();
    lines.add(
        new WorkedLine(
            "m(baked)",
            "weighed + taken up − water lost − alcohol lost",
            Numbers.significant(grams(), 6) + " g",
            "conservation of mass"));
    for (Uptake part : parts()) {
      lines.add(
          new WorkedLine(
              part.ingredient.name(),
              "mass × composition",
              Numbers.significant(part.grams, 6) + " g",
              part.ingredient
                  .composition()
                  .source(Component.WATER)
                  .map(Object::toString)
                  .orElse(UNKNOWN)));
    }
    return new Working(lines);
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Nutrition that
        && batch.equals(that.batch)
        && uptakes.equals(that.uptakes)
        && Double.compare(waterLost, that.waterLost) == 0
        && Double.compare(alcoholRetained, that.alcoholRetained) == 0;
  }

  @Override
  public int hashCode() {
    return Objects.hash(batch, uptakes, waterLost, alcoholRetained);
  }

  /** The facts of 100 g. */
  @Override
  public String toString() {
    return per100Grams().toString();
  }
}
