package org.tourage.ingredient;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CUP;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.GRAM_PER_MILLILITRE;
import static org.tourage.quantity.BakeryUnits.KILOJOULE;
import static org.tourage.quantity.BakeryUnits.MILLILITRE;

import java.io.Serializable;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.VisibleText;
import org.tourage.quantity.Density;
import org.tourage.quantity.Given;

/**
 * A food of FoodData Central (United States Department of Agriculture, public domain), read from
 * the JSON document that the user has downloaded: Foundation, SR Legacy or Branded, in the full,
 * the abridged or the search layout. Nothing is downloaded here.
 *
 * <pre>{@code
 * Ingredient flour = FoodDocument.parseOne(text).toIngredient("mill flour")
 *     .role(Role.FLOUR).origin(Origin.PLANT).allergens(Allergen.WHEAT).build();
 * }</pre>
 *
 * <p>A nutrient that the document does not report stays unknown ({@link #missing()}). The document
 * says nothing that can be relied on about allergens, and they are not guessed from names: they are
 * unknown until {@link Ingredient.Builder#allergens} states them, if need be with none.
 *
 * <p>Figures are for 100 g. Those of a branded food whose serving is in millilitres are for 100 ml
 * and need {@link #withDensity}. Where a branded food has only the figures of its label, they are
 * scaled from the serving.
 *
 * <p>Refused are figures that can't be: negative ones, wrong units, two values of one nutrient,
 * more than 100 g in 100 g, sugars above the carbohydrate, an energy in kcal that is one in kJ, two
 * energies that differ, a label that does not fit its food.
 *
 * <p>Reading needs Jackson core ({@code com.fasterxml.jackson.core:jackson-core}, 2.x), which is an
 * optional dependency. Immutable and serialisable.
 */
public final class FoodDocument implements Serializable {
  private static final long serialVersionUID = 1L;
  private static final double LEAST_DENSITY = 0.05;
  private static final double MOST_DENSITY = 3;
  private static final double SALT_FROM_SODIUM = 2.5;

  /** The number of the food. */
  private final long id;

  /** Its description. */
  private final String description;

  /** Which data set it is of. */
  private final String dataType;

  /** When it was published, empty if it does not say. */
  private final String published;

  /** The list of ingredients of a branded food, empty if there is none. */
  private final String ingredientsText;

  /** Grams in 100 g, or in 100 ml. */
  private final EnumMap<Component, Double> grams;

  /** Kilojoules in 100 g, or in 100 ml; NaN if not reported. */
  private final double kilojoules;

  /** Household measures. */
  private final List<Measure> measures;

  /** Measures that could not be read. */
  private final List<String> leftOut;

  /** Whether the figures are for 100 ml. */
  private final boolean perVolume;

  /** Grams per millilitre; NaN if not given. */
  private final double density;

  /** A household measure as the document has it. */
  record Measure(String text, Filling filling, double grams) implements Serializable {}

  /** What was read of a document, before it is checked. */
  record Read(
      long id,
      String description,
      String dataType,
      String published,
      String ingredientsText,
      EnumMap<Component, Double> grams,
      double kilojoules,
      List<Measure> measures,
      List<String> leftOut,
      boolean perVolume)
      implements Serializable {}

  FoodDocument(Read read) {
    this(read, Double.NaN);
  }

  private FoodDocument(Read read, double density) {
    this.id = read.id;
    this.description = read.description;
    this.dataType = read.dataType;
    this.published = read.published;
    this.ingredientsText = read.ingredientsText;
    this.grams = read.grams.clone();
    this.kilojoules = read.kilojoules;
    this.measures = List.copyOf(read.measures);
    this.leftOut = List.copyOf(read.leftOut);
    this.perVolume = read.perVolume;
    this.density = density;
  }

  /**
   * Reads every food of a document: one food, a list of foods, or a list under the name of its data
   * set as in the downloads and in the result of a search.
   *
   * @param json the text of the document
   * @return the foods in their order, at least one
   * @throws BakeryException if the document can't be read or a food in it can't be; also if Jackson
   *     core is not there, with what to add
   */
  public static List<FoodDocument> parse(String json) {
    requireNonNull(json, "json");
    String plain = json.startsWith("\uFEFF") ? json.substring(1) : json;
    List<Map<String, Object>> foods;
    try {
      foods = FoodJson.foods(plain);
    } catch (NoClassDefFoundError missing) {
      throw new BakeryException(
          Reason.MISSING,
          "food documents are read with Jackson core, which is not there",
          "no " + Objects.toString(missing.getMessage()).replace('/', '.'),
          "add com.fasterxml.jackson.core:jackson-core, 2.18 or later, to the dependencies; on a"
              + " module path that does not require it, run with --add-modules"
              + " com.fasterxml.jackson.core");
    }
    if (foods.isEmpty()) {
      throw new BakeryException(
          Reason.MISSING, "no food in the document", "an empty list", "give at least one food");
    }
    return foods.stream().map(FoodReader::read).toList();
  }

  /**
   * Reads a document of one food.
   *
   * @param json the text of the document
   * @return the food
   * @throws BakeryException as {@link #parse}, and if there is more than one food
   */
  public static FoodDocument parseOne(String json) {
    List<FoodDocument> foods = parse(json);
    if (foods.size() > 1) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "more than one food in the document",
          foods.size() + " foods",
          "choose one of parse(…)");
    }
    return foods.get(0);
  }

  /**
   * The number of the food.
   *
   * @return its fdcId
   */
  public long id() {
    return id;
  }

  /**
   * The description of the food.
   *
   * @return for example {@code Wheat flour, white, bread, enriched}
   */
  public String description() {
    return description;
  }

  /**
   * Which data set the food is of.
   *
   * @return for example {@code SR Legacy}, empty if the document does not say
   */
  public String dataType() {
    return dataType;
  }

  /**
   * The list of ingredients as the maker printed it: to be read by the user, above all for its
   * allergens. It is not interpreted.
   *
   * @return the text; empty if there is none
   */
  public Optional<String> ingredientsText() {
    return ingredientsText.isEmpty() ? Optional.empty() : Optional.of(ingredientsText);
  }

  /**
   * Whether the figures are for 100 ml and a density is still needed.
   *
   * @return true if {@link #withDensity} must be called
   */
  public boolean needsDensity() {
    return perVolume && Double.isNaN(density);
  }

  /**
   * The same food with its density, which turns figures for 100 ml into figures for 100 g.
   *
   * @param value the density, 0.05 g/ml to 3 g/ml
   * @return the food
   * @throws BakeryException if nothing that is eaten has this density
   */
  public FoodDocument withDensity(Quantity<Density> value) {
    double given = GRAM_PER_MILLILITRE.measure("the value", value);
    if (!(given >= LEAST_DENSITY && given <= MOST_DENSITY)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no food has this density",
          Given.density("the value", value).toString(),
          "give 0.05 g/ml to 3 g/ml; milk has 1.03 g/ml");
    }
    return new FoodDocument(read(), given);
  }

  private Read read() {
    return new Read(
        id,
        description,
        dataType,
        published,
        ingredientsText,
        grams,
        kilojoules,
        measures,
        leftOut,
        perVolume);
  }

  /**
   * The components that the document does not report, which stay unknown; of a branded food the
   * water is worked by difference and is not among them where that can be done.
   *
   * @return the components, in the order of {@link Component}
   */
  public List<Component> missing() {
    EnumMap<Component, Double> known = withWater();
    return List.of(Component.values()).stream().filter(c -> !known.containsKey(c)).toList();
  }

  /**
   * Household measures of the document that are no measures of this library.
   *
   * @return the measures as they stand there, for example {@code 1 cup, crumbled}
   */
  public List<String> measuresLeftOut() {
    return leftOut;
  }

  /**
   * Where the figures come from.
   *
   * @return the data base, the number of the food, its data set and date
   */
  public Source source() {
    String set = dataType.isEmpty() ? "" : ", " + dataType;
    String date = published.isEmpty() ? "" : ", " + published;
    return new Source("FoodData Central, fdcId " + id + set + date, Provenance.USER);
  }

  /**
   * What 100 g are made of.
   *
   * @return the composition, each figure with the number of the food as its source
   * @throws BakeryException if the figures are for 100 ml and no density is given
   */
  public Composition composition() {
    if (needsDensity()) {
      throw new BakeryException(
          Reason.MISSING,
          "the figures of fdcId " + id + " are for 100 ml",
          "no density of " + VisibleText.of(description),
          "call withDensity(…), in g/ml");
    }
    double scale = perVolume ? 1 / density : 1;
    Composition.Builder composition = Composition.builder().source(source());
    EnumMap<Component, Double> known = withWater();
    known.forEach((part, value) -> composition.published(part, value * scale / 100));
    if (!grams.containsKey(Component.WATER) && known.containsKey(Component.WATER)) {
      composition.published(
          Component.WATER,
          Math.max(0, known.getOrDefault(Component.WATER, 0.0)) * scale / 100,
          new Source(source().text() + "; water by difference", Provenance.USER));
    }
    if (!Double.isNaN(kilojoules)) {
      composition.printedEnergy(KILOJOULE.amount(kilojoules * scale));
    }
    FoodChecks.checkSum(id, known, scale);
    return composition.buildPublished();
  }

  /** The figures, with the water of a branded food by difference: 100 g less all the rest. */
  private EnumMap<Component, Double> withWater() {
    EnumMap<Component, Double> known = grams.clone();
    boolean enough =
        grams.containsKey(Component.PROTEIN)
            && grams.containsKey(Component.FAT)
            && grams.containsKey(Component.CARBOHYDRATE);
    boolean label = dataType.toLowerCase(Locale.ROOT).startsWith("branded");
    if (label && enough && !grams.containsKey(Component.WATER)) {
      double ash =
          grams.getOrDefault(
              Component.ASH, SALT_FROM_SODIUM * grams.getOrDefault(Component.SODIUM, 0.0));
      double dry =
          grams.getOrDefault(Component.PROTEIN, 0.0)
              + grams.getOrDefault(Component.FAT, 0.0)
              + grams.getOrDefault(Component.CARBOHYDRATE, 0.0)
              + grams.getOrDefault(Component.ALCOHOL, 0.0)
              + ash;
      double scale = perVolume ? 1 / density : 1;
      // stays NaN, and away, while a density is missing
      double water = 100 - dry * scale;
      if (!Double.isNaN(water)) {
        known.put(Component.WATER, water / (perVolume ? scale : 1));
      }
    }
    return known;
  }

  /**
   * An ingredient with the figures and the household measures of the food. Its roles are still to
   * be given, and its allergens: while they are not stated they are unknown.
   *
   * @param name the everyday name
   * @return a builder; the id of the ingredient is {@code fdc-} and the number of the food
   * @throws BakeryException as {@link #composition}
   */
  public Ingredient.Builder toIngredient(String name) {
    Ingredient.Builder builder =
        Ingredient.builder("fdc-" + id, name).composition(composition()).allergensUnknown();
    for (Measure measure : measures) {
      builder.portion(measure.text, measure.filling, GRAM.amount(measure.grams), source());
    }
    if (!Double.isNaN(density)) {
      double cup = density * MILLILITRE.measure(CUP.amount(1));
      builder.portion("1 cup", Filling.AS_IS, GRAM.amount(cup), Source.USER);
    }
    return builder;
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof FoodDocument that
        && read().equals(that.read())
        && Double.compare(density, that.density) == 0;
  }

  @Override
  public int hashCode() {
    return 31 * read().hashCode() + Double.hashCode(density);
  }

  /** The description, where it is from and what it does not report. */
  @Override
  public String toString() {
    return VisibleText.of(description)
        + " ("
        + source().text()
        + "); not reported: "
        + missing().stream()
            .map(c -> c.name().toLowerCase(Locale.ROOT).replace('_', ' '))
            .collect(Collectors.joining(", "));
  }
}
