package org.tourage.ingredient;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.KILOJOULE;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Energy;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Numbers;
import org.tourage.physics.Constituents;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Given;

/**
 * What an ingredient is made of, as shares of its mass (grams per 100 g are percent). A figure can
 * be unknown, which is not the same as 0; each known figure has a {@link Source}. Water, protein,
 * fat, carbohydrate, ash and alcohol together make at most 100 %; what is missing is {@link
 * #unaccounted()} (the carbon dioxide of baking soda, for example).
 *
 * <p>Immutable and serialisable.
 */
public final class Composition implements Serializable {
  private static final long serialVersionUID = 1L;

  /** Tables are rounded: sums up to 100.1 % occur in them (USDA water and butter: 100.05). */
  private static final double SUM_TOLERANCE = 0.001;

  /**
   * Sugars are analysed, carbohydrate is a difference: in USDA milk the sugars exceed the
   * carbohydrate by 0.26 g per 100 g.
   */
  private static final double PART_TOLERANCE = 0.003;

  private static final double MOST_ENERGY = 4000;

  /** What {@link #toString} prints: the rest is in {@link #share}. */
  private static final List<Component> PRINTED =
      List.of(
          Component.WATER,
          Component.PROTEIN,
          Component.FAT,
          Component.CARBOHYDRATE,
          Component.SUGARS,
          Component.FIBRE,
          Component.ASH,
          Component.SODIUM,
          Component.SATURATED_FAT,
          Component.ALCOHOL);

  /** Mass fractions by component ordinal; NaN where unknown. */
  private final double[] fractions;

  /** Sources by component; a component without one has the general source. */
  private final EnumMap<Component, Source> sources;

  /** The energy that the table prints, in kilojoules per 100 g; NaN where it prints none. */
  private final double energy;

  private Composition(double[] fractions, EnumMap<Component, Source> sources, double energy) {
    this.fractions = fractions;
    this.sources = sources;
    this.energy = energy;
  }

  /**
   * Starts a composition of one's own.
   *
   * @return a builder with nothing known
   */
  public static Builder builder() {
    return new Builder();
  }

  /**
   * A composition of which nothing is known.
   *
   * @return the composition; every share is empty
   */
  public static Composition unknown() {
    double[] fractions = new double[Component.count()];
    Arrays.fill(fractions, Double.NaN);
    return new Composition(fractions, new EnumMap<>(Component.class), Double.NaN);
  }

  /**
   * Whether nothing is known of it.
   *
   * @return true if no share is known
   */
  public boolean isUnknown() {
    return sources.isEmpty();
  }

  /**
   * The share of a component.
   *
   * @param component the component
   * @return its share in percent; empty if unknown
   */
  public Optional<Amount<Dimensionless>> share(Component component) {
    double value = fractions[component.ordinal()];
    return Double.isNaN(value) ? Optional.empty() : Optional.of(PERCENT.amount(value * 100));
  }

  /**
   * The source of a figure.
   *
   * @param component the component
   * @return its source; empty if the figure is unknown
   */
  public Optional<Source> source(Component component) {
    return Optional.ofNullable(sources.get(component));
  }

  /**
   * The mass fraction of a component for use in sums.
   *
   * @param component the component
   * @return 0 to 1; an unknown part counts as 0
   */
  public double fraction(Component component) {
    double value = fractions[component.ordinal()];
    return Double.isNaN(value) ? 0 : value;
  }

  /**
   * The energy of 100 g as the source prints it. A table can count it by factors of the food, a
   * label by those of the law: compute the energy of a product from its nutrients.
   *
   * @return the energy in kilojoules; empty if the source prints none
   */
  public Optional<Amount<Energy>> printedEnergy() {
    return Double.isNaN(energy) ? Optional.empty() : Optional.of(KILOJOULE.amount(energy));
  }

  /**
   * What the six main components do not account for.
   *
   * @return the share in percent, not below 0
   */
  public Amount<Dimensionless> unaccounted() {
    return PERCENT.amount(Math.max(0, 1 - sum(fractions)) * 100);
  }

  private static double sum(double[] f) {
    double sum = 0;
    for (Component main : Component.MAIN) {
      double value = f[main.ordinal()];
      sum += Double.isNaN(value) ? 0 : value;
    }
    return sum;
  }

  /**
   * The same for the physical models. What nothing is known of is taken there as dry carbohydrate
   * (a convention of ours): it has a mass and no water.
   *
   * @return the constituents; carbohydrate without fibre
   */
  public Constituents constituents() {
    if (isUnknown()) {
      return new Constituents(0, 0, 0, 1, 0, 0);
    }
    double fibre = fraction(Component.FIBRE);
    return new Constituents(
        fraction(Component.WATER),
        fraction(Component.PROTEIN),
        fraction(Component.FAT),
        Math.max(0, fraction(Component.CARBOHYDRATE) - fibre),
        fibre,
        fraction(Component.ASH));
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Composition that
        && Arrays.equals(fractions, that.fractions)
        && Double.compare(energy, that.energy) == 0
        && sources.equals(that.sources);
  }

  @Override
  public int hashCode() {
    return 31 * Arrays.hashCode(fractions) + sources.hashCode();
  }

  /** The main known shares, for example {@code water 13.36 %, protein 11.98 %}. */
  @Override
  public String toString() {
    StringBuilder out = new StringBuilder();
    for (Component component : PRINTED) {
      double value = fractions[component.ordinal()];
      boolean none = component == Component.ALCOHOL && value == 0;
      if (!Double.isNaN(value) && !none) {
        out.append(out.length() == 0 ? "" : ", ")
            .append(component.name().toLowerCase(java.util.Locale.ROOT).replace('_', ' '))
            .append(' ')
            .append(Numbers.significant(value * 100, 5))
            .append(" %");
      }
    }
    return out.toString();
  }

  /** Collects the shares of a composition; it is not safe for use by several threads. */
  public static final class Builder {
    private final double[] fractions = new double[Component.count()];
    private final Map<Component, Source> own = new EnumMap<>(Component.class);
    private Source general = Source.USER;
    private double energy = Double.NaN;
    private boolean published;

    private Builder() {
      Arrays.fill(fractions, Double.NaN);
    }

    /**
     * Sets the source of every figure that has none of its own.
     *
     * @param source the source
     * @return this builder
     */
    public Builder source(Source source) {
      general = requireNonNull(source, "source");
      return this;
    }

    /**
     * Sets the energy that the source prints.
     *
     * @param per100Grams the energy of 100 g, 0 to 4,000 kJ
     * @return this builder
     * @throws BakeryException if it can't be
     */
    public Builder printedEnergy(Quantity<Energy> per100Grams) {
      double kilojoules = KILOJOULE.measure("the per 100grams", per100Grams);
      if (kilojoules < 0 || kilojoules > MOST_ENERGY) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "no food has this energy",
            Given.energy("the per 100grams", per100Grams) + " in 100 g",
            "give 0 kJ to " + (int) MOST_ENERGY + " kJ for 100 g; pure fat has 3,700 kJ");
      }
      energy = kilojoules;
      return this;
    }

    /** A published row as it stands: parts are analysed one by one and can exceed their whole. */
    Builder published(Component component, double fraction) {
      fractions[component.ordinal()] = fraction;
      published = true;
      return this;
    }

    Builder published(Component component, double fraction, Source source) {
      own.put(component, source);
      return published(component, fraction);
    }

    /**
     * Sets the share of a component.
     *
     * @param component the component
     * @param share its share, 0 to 100 %
     * @return this builder
     * @throws BakeryException if the share is negative or above 100 %
     */
    public Builder with(Component component, Quantity<Dimensionless> share) {
      double fraction = FRACTION.measure("the share", share);
      if (fraction < 0 || fraction > 1 + SUM_TOLERANCE) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "the share of " + component.name().toLowerCase(java.util.Locale.ROOT) + " can't be",
            Given.ratio("the share", share).to(PERCENT).toString(),
            "give 0 % to 100 %, grams per 100 g");
      }
      fractions[component.ordinal()] = fraction;
      return this;
    }

    /**
     * Sets the share of a component with a source of its own.
     *
     * @param component the component
     * @param share its share, 0 to 100 %
     * @param source where the figure comes from
     * @return this builder
     */
    public Builder with(Component component, Quantity<Dimensionless> share, Source source) {
      own.put(component, requireNonNull(source, "source"));
      return with(component, share);
    }

    /**
     * Sets the share of water.
     *
     * @param share 0 to 100 %
     * @return this builder
     */
    public Builder water(Quantity<Dimensionless> share) {
      return with(Component.WATER, share);
    }

    /**
     * Sets the share of protein.
     *
     * @param share 0 to 100 %
     * @return this builder
     */
    public Builder protein(Quantity<Dimensionless> share) {
      return with(Component.PROTEIN, share);
    }

    /**
     * Sets the share of fat.
     *
     * @param share 0 to 100 %
     * @return this builder
     */
    public Builder fat(Quantity<Dimensionless> share) {
      return with(Component.FAT, share);
    }

    /**
     * Sets the share of carbohydrate, fibre included.
     *
     * @param share 0 to 100 %
     * @return this builder
     */
    public Builder carbohydrate(Quantity<Dimensionless> share) {
      return with(Component.CARBOHYDRATE, share);
    }

    /**
     * Sets the share of ash.
     *
     * @param share 0 to 100 %
     * @return this builder
     */
    public Builder ash(Quantity<Dimensionless> share) {
      return with(Component.ASH, share);
    }

    /**
     * Makes the composition.
     *
     * @return the composition
     * @throws BakeryException if the water is not given, the shares sum to over 100 %, or a part
     *     (sugars, fibre, sodium, saturated fat) is greater than its whole
     */
    public Composition build() {
      if (Double.isNaN(fractions[Component.WATER.ordinal()])) {
        throw new BakeryException(
            Reason.MISSING,
            "a composition needs its water",
            "no share of water",
            "give it, 0 % for a dry ingredient; hydration is counted from it");
      }
      if (!published) {
        checkParts();
      }
      return made();
    }

    /** Of a published document, whose water can be unknown as every other figure can. */
    Composition buildPublished() {
      published = true;
      return made();
    }

    private Composition made() {
      EnumMap<Component, Source> sources = new EnumMap<>(Component.class);
      for (Component component : Component.values()) {
        if (!Double.isNaN(fractions[component.ordinal()])) {
          sources.put(component, own.getOrDefault(component, general));
        }
      }
      return new Composition(fractions.clone(), sources, energy);
    }

    /** Of a pack label, whose contradictions were looked for with the tolerance of its rounding. */
    Composition buildRounded() {
      published = true;
      return build();
    }

    private void checkParts() {
      double sum = sum(fractions);
      if (sum > 1 + SUM_TOLERANCE) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            "the shares sum to over 100 %",
            Numbers.significant(sum * 100, 6) + " %",
            "water, protein, fat, carbohydrate (with fibre), ash and alcohol make at most 100 %");
      }
      checkPart(
          "sugars and fibre",
          known(Component.SUGARS) + known(Component.FIBRE),
          Component.CARBOHYDRATE);
      checkPart("saturated fat", known(Component.SATURATED_FAT), Component.FAT);
      if (known(Component.SODIUM) > 1 - known(Component.WATER) + SUM_TOLERANCE) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            "more sodium than dry matter",
            Numbers.significant(known(Component.SODIUM) * 100, 4) + " %",
            "sodium is given in grams per 100 g here, tables print milligrams");
      }
    }

    private double known(Component component) {
      double value = fractions[component.ordinal()];
      return Double.isNaN(value) ? 0 : value;
    }

    private void checkPart(String name, double part, Component whole) {
      double value = fractions[whole.ordinal()];
      if (!Double.isNaN(value) && part > value + PART_TOLERANCE) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            "more " + name + " than " + whole.name().toLowerCase(java.util.Locale.ROOT),
            Numbers.significant(part * 100, 4)
                + " % of "
                + Numbers.significant(value * 100, 4)
                + " %",
            "a part can't be greater than its whole");
      }
    }
  }
}
