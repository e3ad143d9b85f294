package org.tourage.ingredient;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CUP;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.GRAM_PER_MILLILITRE;
import static org.tourage.quantity.BakeryUnits.KILOCALORIE;
import static org.tourage.quantity.BakeryUnits.KILOJOULE;
import static org.tourage.quantity.BakeryUnits.MILLILITRE;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Mass;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Density;
import org.tourage.quantity.Given;

/**
 * An ingredient of one's own, copied from the nutrition label of its pack. The water is what the
 * label leaves over: 100 g less protein, fat, carbohydrate, fibre, alcohol and ash. Where the ash
 * is not stated it is taken as the salt.
 *
 * <pre>{@code
 * Ingredient flour = PackLabel.per100Grams("mill flour")
 *     .role(Role.FLOUR).origin(Origin.PLANT).allergens(Allergen.WHEAT)
 *     .energy(kilojoules(1450)).fat(grams(1.2)).carbohydrate(grams(70)).sugars(grams(0.9))
 *     .fibre(grams(3.1)).protein(grams(11.6)).salt(grams(0.01)).ash(grams(0.55))
 *     .ingredient();
 * }</pre>
 *
 * <p>A label that contradicts itself is refused: an energy further than 15 % (and 4 kcal) from the
 * factors of Regulation (EU) No 1169/2011, Annex XIV, and from those of 21 CFR 101.9(c)(1)(i)(B); a
 * sum above 100 g (labels are rounded: 101 g); sugars above the carbohydrate; saturates above the
 * fat. What the label does not print stays unknown. A builder: not safe for use by several threads.
 */
public final class PackLabel {
  private static final double ENERGY_TOLERANCE = 0.15;
  private static final double SMALL_ENERGY_KCAL = 4;
  private static final double SUM_TOLERANCE_GRAMS = 1;
  private static final double PART_TOLERANCE_GRAMS = 0.1;
  private static final double SALT_FROM_SODIUM = 2.5;

  private final String name;
  private final double base;
  private final Ingredient.Builder builder;
  private final EnumMap<Component, Double> grams = new EnumMap<>(Component.class);
  private boolean carbohydrateHoldsFibre;
  private double energyKilojoules = Double.NaN;
  private String source;
  private boolean role;

  private PackLabel(String id, String name, double base) {
    this.name = name;
    this.base = base;
    this.builder = Ingredient.builder(id, name);
    this.source = "label of " + name;
  }

  /**
   * A label whose figures are for 100 g.
   *
   * @param name the everyday name
   * @return an empty label
   */
  public static PackLabel per100Grams(String name) {
    return new PackLabel(id(name), name, 100);
  }

  /**
   * A label whose figures are for a serving.
   *
   * @param name the everyday name
   * @param serving the mass of the serving, positive
   * @return an empty label
   * @throws BakeryException if the serving weighs nothing
   */
  public static PackLabel perServing(String name, Quantity<Mass> serving) {
    double base = GRAM.measure("the serving", serving);
    if (!(base > 0)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a serving must weigh something",
          Given.mass("the serving", serving).toString(),
          "give the grams that the label prints beside the serving, for example 30 g");
    }
    return new PackLabel(id(name), name, base);
  }

  private static String id(String name) {
    return CatalogueNames.key(requireNonNull(name, "name")).replace(' ', '-');
  }

  /**
   * Sets the energy.
   *
   * @param value the energy of the base, in any unit
   * @return this label
   */
  public PackLabel energy(Quantity<Energy> value) {
    energyKilojoules = KILOJOULE.measure("the value", value);
    return this;
  }

  /**
   * Sets the fat.
   *
   * @param value its mass in the base
   * @return this label
   */
  public PackLabel fat(Quantity<Mass> value) {
    return set(Component.FAT, value);
  }

  /**
   * Sets the saturates.
   *
   * @param value their mass in the base
   * @return this label
   */
  public PackLabel saturates(Quantity<Mass> value) {
    return set(Component.SATURATED_FAT, value);
  }

  /**
   * Sets the carbohydrate as labels of the European Union and the United Kingdom print it: without
   * the fibre.
   *
   * @param value its mass in the base
   * @return this label
   */
  public PackLabel carbohydrate(Quantity<Mass> value) {
    carbohydrateHoldsFibre = false;
    return set(Component.CARBOHYDRATE, value);
  }

  /**
   * Sets the total carbohydrate as labels of the United States print it: with the fibre.
   *
   * @param value its mass in the base
   * @return this label
   */
  public PackLabel totalCarbohydrate(Quantity<Mass> value) {
    carbohydrateHoldsFibre = true;
    return set(Component.CARBOHYDRATE, value);
  }

  /**
   * Sets the sugars.
   *
   * @param value their mass in the base
   * @return this label
   */
  public PackLabel sugars(Quantity<Mass> value) {
    return set(Component.SUGARS, value);
  }

  /**
   * Sets the fibre.
   *
   * @param value its mass in the base
   * @return this label
   */
  public PackLabel fibre(Quantity<Mass> value) {
    return set(Component.FIBRE, value);
  }

  /**
   * Sets the protein.
   *
   * @param value its mass in the base
   * @return this label
   */
  public PackLabel protein(Quantity<Mass> value) {
    return set(Component.PROTEIN, value);
  }

  /**
   * Sets the salt, which is sodium × 2.5 (Regulation (EU) No 1169/2011, Annex I).
   *
   * @param value its mass in the base
   * @return this label
   */
  public PackLabel salt(Quantity<Mass> value) {
    return put(Component.SODIUM, GRAM.measure("the value", value) / SALT_FROM_SODIUM, value);
  }

  /**
   * Sets the sodium.
   *
   * @param value its mass in the base
   * @return this label
   */
  public PackLabel sodium(Quantity<Mass> value) {
    return set(Component.SODIUM, value);
  }

  /**
   * Sets another figure, for example trans fat, cholesterol, added sugars, alcohol, ash, or the
   * water if it is known better than by difference.
   *
   * @param component the component
   * @param value its mass in the base
   * @return this label
   */
  public PackLabel with(Component component, Quantity<Mass> value) {
    if (component == Component.CARBOHYDRATE) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "a label prints carbohydrate with or without its fibre",
          Given.mass("the value", value).toString(),
          "call carbohydrate(…) for the one without, totalCarbohydrate(…) for the one with fibre");
    }
    return set(component, value);
  }

  /**
   * States the ash, from the miller or an analysis; labels do not print it.
   *
   * @param value its mass in the base
   * @return this label
   */
  public PackLabel ash(Quantity<Mass> value) {
    return set(Component.ASH, value);
  }

  private PackLabel set(Component component, Quantity<Mass> value) {
    return put(component, GRAM.measure("the value", value), value);
  }

  private PackLabel put(Component component, double value, Quantity<Mass> given) {
    if (value < 0 || value > base * (1 + 1e-9)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "the " + word(component) + " of " + name + " can't be",
          Given.mass("the given", given) + " in " + Numbers.significant(base, 6) + " g",
          "give 0 g up to the mass of the base");
    }
    grams.put(component, value);
    return this;
  }

  /**
   * Adds a role, at least one is needed.
   *
   * @param value what it does in a dough
   * @return this label
   */
  public PackLabel role(Role value) {
    role = true;
    builder.role(value);
    return this;
  }

  /**
   * Sets the origin; {@link Origin#CHECK_LABEL} unless set.
   *
   * @param value where it comes from
   * @return this label
   */
  public PackLabel origin(Origin value) {
    builder.origin(value);
    return this;
  }

  /**
   * Adds allergens that its list of ingredients emphasises.
   *
   * @param values the allergens
   * @return this label
   */
  public PackLabel allergens(Allergen... values) {
    builder.allergens(values);
    return this;
  }

  /**
   * Adds allergens that the pack says it may contain.
   *
   * @param values the allergens
   * @return this label
   */
  public PackLabel mayContain(Allergen... values) {
    builder.allergensToCheck(values);
    return this;
  }

  /**
   * Sets what a cup weighs by its density, bulk density for a powder.
   *
   * @param value the density, positive
   * @return this label
   */
  public PackLabel density(Quantity<Density> value) {
    double cup =
        GRAM_PER_MILLILITRE.measure("the value", value) * MILLILITRE.measure(CUP.amount(1));
    return measure("1 cup", GRAM.amount(cup));
  }

  /**
   * Adds what a household measure weighs.
   *
   * @param measure for example {@code 1 cup} or {@code 1 sachet}
   * @param mass what it weighs
   * @return this label
   */
  public PackLabel measure(String measure, Quantity<Mass> mass) {
    builder.portion(measure, mass);
    return this;
  }

  /**
   * Says where the figures come from; {@code label of …} unless set.
   *
   * @param text the source
   * @return this label
   */
  public PackLabel source(String text) {
    source = requireNonNull(text, "text");
    return this;
  }

  /**
   * The ingredient.
   *
   * @return the ingredient, its figures with the provenance {@link Provenance#USER}
   * @throws BakeryException if the label contradicts itself, or has no role or no protein, fat and
   *     carbohydrate to find the water by
   */
  public Ingredient ingredient() {
    List<Contradiction> found = contradictions();
    if (!found.isEmpty()) {
      throw found.get(0).problem;
    }
    Source label = new Source(source, Provenance.USER);
    Composition.Builder composition = Composition.builder().source(label);
    double scale = 100 / base;
    for (Map.Entry<Component, Double> figure : grams.entrySet()) {
      double value =
          figure.getKey() == Component.CARBOHYDRATE ? wholeCarbohydrate() : figure.getValue();
      composition.with(figure.getKey(), PERCENT.amount(Math.min(100, value * scale)), label);
    }
    if (!grams.containsKey(Component.ASH)) {
      composition.with(
          Component.ASH,
          PERCENT.amount(ash() * scale),
          new Source(source + "; the ash is not on it and is taken as the salt", Provenance.USER));
    }
    if (!grams.containsKey(Component.WATER)) {
      composition.with(
          Component.WATER,
          PERCENT.amount(Math.max(0, base - dry()) * scale),
          new Source(source + "; water by difference", Provenance.USER));
    }
    if (!Double.isNaN(energyKilojoules)) {
      composition.printedEnergy(KILOJOULE.amount(energyKilojoules * scale));
    }
    // labels are rounded, so their sum can pass 100 g by a little; what passes more was refused
    return builder.composition(composition.buildRounded()).build();
  }

  /** A contradiction and the figure that it is about. */
  record Contradiction(@Nullable Component about, BakeryException problem) {}

  /** Everything that speaks against the label, none if it is sound. */
  List<Contradiction> contradictions() {
    List<Contradiction> found = new ArrayList<>();
    missing(found);
    part(found, Component.SUGARS, Component.CARBOHYDRATE);
    part(found, Component.SATURATED_FAT, Component.FAT);
    part(found, Component.TRANS_FAT, Component.FAT);
    part(found, Component.ADDED_SUGARS, Component.SUGARS);
    if (carbohydrateHoldsFibre) {
      part(found, Component.FIBRE, Component.CARBOHYDRATE);
    }
    double sum = dry() + value(Component.WATER);
    if (sum > base + SUM_TOLERANCE_GRAMS * base / 100) {
      found.add(
          new Contradiction(
              null,
              refused(
                  "the figures sum to more than there is",
                  Numbers.significant(sum, 5) + " g in " + Numbers.significant(base, 6) + " g",
                  "water, protein, fat, carbohydrate, fibre, ash and alcohol make at most the base;"
                      + " is the carbohydrate with its fibre (total) or without?")));
    }
    energy(found);
    return found;
  }

  private void missing(List<Contradiction> found) {
    List<String> missing = new ArrayList<>();
    for (Component needed :
        new Component[] {Component.FAT, Component.CARBOHYDRATE, Component.PROTEIN}) {
      if (!grams.containsKey(needed)) {
        missing.add(word(needed));
      }
    }
    if (!missing.isEmpty() && !grams.containsKey(Component.WATER)) {
      found.add(
          new Contradiction(
              null,
              new BakeryException(
                  Reason.MISSING,
                  "the water can't be found by difference",
                  "no " + String.join(", no ", missing) + " in the label of " + name,
                  "copy fat, carbohydrate and protein from the label, or state the water")));
    }
    if (!role) {
      found.add(
          new Contradiction(
              null,
              new BakeryException(
                  Reason.MISSING,
                  "an ingredient needs a role",
                  name,
                  "say what it does in a dough, for example flour, sugar, fat or liquid")));
    }
  }

  private void part(List<Contradiction> found, Component part, Component whole) {
    boolean both = grams.containsKey(part) && grams.containsKey(whole);
    double tolerance = PART_TOLERANCE_GRAMS * base / 100;
    if (both && value(part) > value(whole) + tolerance) {
      found.add(
          new Contradiction(
              part,
              refused(
                  "more " + word(part) + " than " + word(whole),
                  grams(part) + " of " + grams(whole),
                  "a part can't be greater than its whole")));
    }
  }

  private void energy(List<Contradiction> found) {
    boolean known =
        !Double.isNaN(energyKilojoules)
            && grams.containsKey(Component.FAT)
            && grams.containsKey(Component.CARBOHYDRATE)
            && grams.containsKey(Component.PROTEIN);
    if (!known) {
      return;
    }
    double printed = KILOCALORIE.measure(KILOJOULE.amount(energyKilojoules));
    double rest =
        4 * value(Component.PROTEIN) + 9 * value(Component.FAT) + 7 * value(Component.ALCOHOL);
    double fibre = value(Component.FIBRE);
    double european = rest + 4 * (wholeCarbohydrate() - fibre) + 2 * fibre;
    double american = rest + 4 * wholeCarbohydrate();
    double small = SMALL_ENERGY_KCAL * base / 100;
    double low = Math.min(european, american);
    double high = Math.max(european, american);
    boolean fits =
        printed >= Math.min(low * (1 - ENERGY_TOLERANCE), low - small)
            && printed <= Math.max(high * (1 + ENERGY_TOLERANCE), high + small);
    if (!fits) {
      found.add(
          new Contradiction(
              null,
              refused(
                  "the energy does not fit the nutrients",
                  Numbers.decimals(printed, 0)
                      + " kcal printed, "
                      + Numbers.decimals(european, 0)
                      + " kcal by the factors",
                  "it lies within 15 % of 4 kcal/g of carbohydrate and protein, 9 of fat, 7 of"
                      + " alcohol, 2 of fibre; are kJ and kcal, or 100 g and the serving, mixed up?")));
    }
  }

  private double value(Component component) {
    return grams.getOrDefault(component, 0.0);
  }

  private double wholeCarbohydrate() {
    return value(Component.CARBOHYDRATE) + (carbohydrateHoldsFibre ? 0 : value(Component.FIBRE));
  }

  private double ash() {
    return grams.getOrDefault(Component.ASH, SALT_FROM_SODIUM * value(Component.SODIUM));
  }

  private double dry() {
    return value(Component.PROTEIN)
        + value(Component.FAT)
        + wholeCarbohydrate()
        + value(Component.ALCOHOL)
        + ash();
  }

  private String grams(Component component) {
    return Numbers.significant(value(component), 5) + " g";
  }

  private static String word(Component component) {
    return component.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  private BakeryException refused(String problem, String given, String expected) {
    return new BakeryException(
        Reason.INCONSISTENT, problem + " in the label of " + name, given, expected);
  }
}
