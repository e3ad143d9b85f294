package org.tourage.ingredient;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.MILLILITRE;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountRange;
import org.tourage.quantity.CupStandard;
import org.tourage.quantity.Given;
import org.tourage.quantity.HouseholdAmount;
import org.tourage.quantity.Kind;

/**
 * An ingredient: its composition, what it does, how it is measured, where it comes from and which
 * allergens it brings. Two ingredients are equal when all of that is; whether two go by one id asks
 * {@link #sameIdAs}.
 *
 * <p>One of one's own:
 *
 * <pre>{@code
 * Ingredient house = Ingredient.builder("house-flour", "house flour")
 *     .role(Role.FLOUR)
 *     .composition(Composition.builder().water(percent(14)).protein(percent(12.2)).build())
 *     .allergens(Allergen.WHEAT)
 *     .build();
 * }</pre>
 *
 * <p>Immutable and serialisable.
 */
public final class Ingredient implements Serializable {
  private static final long serialVersionUID = 1L;
  private static final double SALT_FROM_SODIUM = 2.5;
  private static final Spread ANY_SPREAD = new Spread(0.9, 1, 1.1);

  /** The machine-readable name. */
  private final String id;

  /** The everyday name. */
  private final String name;

  /** What it does. */
  private final EnumSet<Role> roles;

  /** Where it comes from. */
  private final Origin origin;

  /** What it is made of. */
  private final Composition composition;

  /** Allergens that it is. */
  private final EnumSet<Allergen> allergens;

  /** Allergens that products of this kind may hold. */
  private final EnumSet<Allergen> allergensToCheck;

  /** Whether nobody has said which allergens it holds. */
  private final boolean allergensUnknown;

  /** Household measures. */
  private final List<Portion> portions;

  /** Spread of the household measures. */
  private final Spreads spreads;

  /** The flour specification, if given or if this is a flour of known protein. */
  private final @Nullable FlourSpecification flour;

  /** The form in which yeast is sold, if this is yeast and it is known. */
  private final @Nullable YeastForm yeastForm;

  /** Sweetness by mass, sucrose 1; NaN where unknown. */
  private final double sweetness;

  private final boolean brownsSooner;

  private Ingredient(Builder builder, Composition composition) {
    this.id = builder.id;
    this.name = builder.name;
    this.roles = builder.roles.clone();
    this.origin = builder.origin;
    this.composition = composition;
    this.allergens = builder.allergens.clone();
    this.allergensToCheck = builder.allergensToCheck.clone();
    this.allergensUnknown = builder.allergensUnknown;
    this.portions = List.copyOf(builder.portions);
    this.spreads = builder.spreads;
    this.flour = builder.flour != null ? builder.flour : derivedFlour();
    this.yeastForm = builder.yeastForm;
    this.sweetness = builder.sweetness;
    this.brownsSooner = builder.brownsSooner;
  }

  private @Nullable FlourSpecification derivedFlour() {
    boolean known = roles.contains(Role.FLOUR) && composition.share(Component.PROTEIN).isPresent();
    if (!known) {
      return null;
    }
    FlourSpecification specification =
        FlourSpecification.of(
            composition.share(Component.PROTEIN).orElseThrow(),
            composition.share(Component.WATER).orElseThrow());
    return composition.share(Component.ASH).map(specification::withAsh).orElse(specification);
  }

  /**
   * Starts an ingredient of one's own.
   *
   * @param id a machine-readable name, for example {@code house-flour}
   * @param name the everyday name
   * @return a builder
   */
  public static Builder builder(String id, String name) {
    return new Builder(id, name);
  }

  /**
   * An ingredient of which nothing is known but its name: its mass counts, its composition does
   * not, and what needs the composition can say so ({@link Composition#isUnknown()}). Its allergens
   * are unknown too ({@link #areAllergensKnown()}).
   *
   * @param name the everyday name
   * @return the ingredient, with the role {@link Role#INCLUSION}
   */
  public static Ingredient unknown(String name) {
    return builder(CatalogueNames.key(name).replace(' ', '-'), name)
        .role(Role.INCLUSION)
        .composition(Composition.unknown())
        .allergensUnknown()
        .build();
  }

  /**
   * The machine-readable name.
   *
   * @return for example {@code bread-flour}
   */
  public String id() {
    return id;
  }

  /**
   * The everyday name.
   *
   * @return for example {@code bread flour}
   */
  public String name() {
    return name;
  }

  /**
   * What it does in a dough.
   *
   * @return the roles, at least one
   */
  public Set<Role> roles() {
    return EnumSet.copyOf(roles);
  }

  /**
   * Whether it does this.
   *
   * @param role the role
   * @return true if it does
   */
  public boolean is(Role role) {
    return roles.contains(role);
  }

  /**
   * Where it comes from.
   *
   * @return the origin
   */
  public Origin origin() {
    return origin;
  }

  /**
   * What it is made of.
   *
   * @return the composition
   */
  public Composition composition() {
    return composition;
  }

  /**
   * The salt that it brings, as sodium × 2.5 (Regulation (EU) No 1169/2011, Annex I). The sodium of
   * chemical leavening is no salt.
   *
   * @return its mass fraction, 0 if the sodium is not known
   */
  public double saltFraction() {
    return is(Role.LEAVENING) ? 0 : SALT_FROM_SODIUM * composition.fraction(Component.SODIUM);
  }

  /**
   * Allergens that it is or always holds.
   *
   * @return the allergens
   */
  public Set<Allergen> allergens() {
    return allergens.isEmpty() ? Set.of() : EnumSet.copyOf(allergens);
  }

  /**
   * Whether anybody has said which allergens it holds. If not, {@link #allergens()} is empty and
   * means nothing.
   *
   * @return true if they are known, also if there are none
   */
  public boolean areAllergensKnown() {
    return !allergensUnknown;
  }

  /**
   * Allergens that products of this kind may hold: read the label in hand.
   *
   * @return the allergens
   */
  public Set<Allergen> allergensToCheck() {
    return allergensToCheck.isEmpty() ? Set.of() : EnumSet.copyOf(allergensToCheck);
  }

  /**
   * What household measures of it weigh.
   *
   * @return the portions
   */
  public List<Portion> portions() {
    return portions;
  }

  /**
   * What the miller prints, for a flour.
   *
   * @return the specification; empty if this is no flour or its protein is unknown
   */
  public Optional<FlourSpecification> flour() {
    return Optional.ofNullable(flour);
  }

  /**
   * The form in which yeast is sold.
   *
   * @return the form; empty if this is no yeast or it was not said
   */
  public Optional<YeastForm> yeastForm() {
    return Optional.ofNullable(yeastForm);
  }

  /**
   * How sweet it is by mass, sucrose 100 %.
   *
   * @return the sweetness; empty where it is not known
   */
  public Optional<Amount<Dimensionless>> sweetness() {
    return Double.isNaN(sweetness)
        ? Optional.empty()
        : Optional.of(PERCENT.amount(100 * sweetness));
  }

  /**
   * Whether it browns sooner than sugar, by invert or other reducing sugars.
   *
   * @return true if it is known to
   */
  public boolean brownsSooner() {
    return brownsSooner;
  }

  /**
   * Weighs a household measure given as text, with US customary cups and spoons.
   *
   * @param measure for example {@code 3 1/2 cups}, {@code 2 sticks}, {@code 500 g}
   * @return the mass, with its range and source
   * @throws BakeryException if the text can't be read or this ingredient has no such measure
   */
  public Weighed weigh(String measure) {
    return weigh(HouseholdAmount.parse(measure, CupStandard.US_CUSTOMARY));
  }

  /**
   * Weighs a household measure given as text, filled in a stated way.
   *
   * @param measure for example {@code 3 1/2 cups}
   * @param filling how the cup is filled
   * @return the mass, with its range and source
   * @throws BakeryException if the text can't be read or this ingredient has no such measure
   */
  public Weighed weigh(String measure, Filling filling) {
    return weigh(HouseholdAmount.parse(measure, CupStandard.US_CUSTOMARY), filling);
  }

  /**
   * Weighs a household measure, filled in the way of the published figure.
   *
   * @param measure the measure
   * @return the mass, with its range and source
   * @throws BakeryException if this ingredient has no such measure
   */
  public Weighed weigh(HouseholdAmount measure) {
    return weighFilled(measure, null);
  }

  /**
   * Weighs a household measure, filled in a stated way.
   *
   * @param measure the measure
   * @param filling how the cup is filled
   * @return the mass, with its range and source
   * @throws BakeryException if this ingredient has no such measure
   */
  public Weighed weigh(HouseholdAmount measure, Filling filling) {
    return weighFilled(measure, requireNonNull(filling, "filling"));
  }

  /**
   * Weighs a household measure of a recipe that does not say how its cups are filled: all flours of
   * a recipe are filled by one hand, and the range is that of any hand.
   *
   * @param measure the measure
   * @param hand how a cup of flour is taken to be filled; nothing else depends on it
   * @return the mass, with its range and source
   * @throws BakeryException if this ingredient has no such measure
   */
  public Weighed weighByHand(HouseholdAmount measure, Filling hand) {
    Weighed any = weigh(measure);
    if (measure.kind() != Kind.VOLUME || !is(Role.FLOUR) || any.filling() == hand) {
      return any;
    }
    Weighed filled = weigh(measure, hand);
    return new Weighed(this, measure, filled.mass(), any.range(), hand, filled.source());
  }

  private Weighed weighFilled(HouseholdAmount measure, @Nullable Filling filling) {
    requireNonNull(measure, "measure");
    return switch (measure.kind()) {
      case MASS -> {
        AmountRange<Mass> range = measure.rangeTo(GRAM);
        Amount<Mass> middle = middle(range.low(), range.high());
        yield new Weighed(
            this,
            measure,
            middle,
            range,
            Filling.AS_IS,
            new Source("given as a mass", Provenance.USER));
      }
      case VOLUME -> weighVolume(measure, filling);
      case OTHER -> weighCount(measure);
      default ->
          throw new BakeryException(
              Reason.INCONSISTENT,
              "an ingredient can't be measured by " + measure.kind().label(),
              measure + " " + name,
              "give a mass, a volume or a number of pieces");
    };
  }

  private static Amount<Mass> middle(Amount<Mass> low, Amount<Mass> high) {
    return GRAM.amount((low.in(GRAM) + high.in(GRAM)) / 2);
  }

  private Weighed weighVolume(HouseholdAmount measure, @Nullable Filling wanted) {
    AmountRange<Volume> volume = measure.rangeTo(MILLILITRE);
    Figure figure = density(wanted);
    double low = volume.low().value();
    double high = volume.high().value();
    return new Weighed(
        this,
        measure,
        GRAM.amount((low + high) / 2 * figure.middle),
        new AmountRange<>(GRAM.amount(low * figure.low), GRAM.amount(high * figure.high)),
        figure.filling,
        figure.source);
  }

  /** Grams per millilitre with its range. */
  private record Figure(double low, double middle, double high, Filling filling, Source source) {}

  private Figure density(@Nullable Filling wanted) {
    Portion basis = null;
    for (Portion portion : portions) {
      boolean fits = portion.isVolume() && (wanted == null || portion.filling() == wanted);
      if (fits && (basis == null || betterBasis(portion, basis))) {
        basis = portion;
      }
    }
    if (basis != null) {
      double density = basis.mass().in(GRAM) / volumeOf(basis);
      if (is(Role.FLOUR)) {
        double spooned = density / spreads.flour(basis.filling()).middle();
        double low =
            spooned
                * (wanted == null ? spreads.flour(Filling.SIFTED) : spreads.flour(wanted)).low();
        double high =
            spooned
                * (wanted == null ? spreads.flour(Filling.SCOOPED) : spreads.flour(wanted)).high();
        return new Figure(low, density, high, basis.filling(), basis.source());
      }
      Spread spread = spreads.of(roles);
      return new Figure(
          density * spread.low(),
          density,
          density * spread.high(),
          basis.filling(),
          basis.source());
    }
    boolean flourFilling =
        wanted == Filling.SIFTED || wanted == Filling.SPOONED || wanted == Filling.SCOOPED;
    if (is(Role.FLOUR) && flourFilling) {
      Figure published = density(null);
      Spread spread = spreads.flour(requireNonNull(wanted));
      double spooned = published.middle / spreads.flour(published.filling).middle();
      return new Figure(
          spooned * spread.low(),
          spooned * spread.middle(),
          spooned * spread.high(),
          wanted,
          new Source(
              published.source.text()
                  + "; moved from "
                  + published.filling.word()
                  + " to "
                  + wanted.word(),
              Provenance.COMMON_PRACTICE));
    }
    throw new BakeryException(
        Reason.UNKNOWN_NAME,
        wanted == null
            ? "no volume of " + name + " is on record"
            : name + " is not measured " + wanted.word(),
        wanted == null ? "a volume" : wanted.word(),
        "weigh it, or use one of: " + measures());
  }

  /**
   * The plain filling first, then the largest measure, which has the least rounding. One basis for
   * all units keeps three teaspoons a tablespoon.
   */
  private static boolean betterBasis(Portion portion, Portion than) {
    boolean plain = portion.filling() == Filling.AS_IS;
    boolean wasPlain = than.filling() == Filling.AS_IS;
    return plain != wasPlain ? plain : volumeOf(portion) > volumeOf(than);
  }

  private static double volumeOf(Portion portion) {
    return portion.measure().to(MILLILITRE).value();
  }

  private Weighed weighCount(HouseholdAmount measure) {
    String word = measure.countWord().orElse("piece");
    return weighPieces(measure, word);
  }

  /**
   * Weighs a count of a size, such as 2 large (eggs).
   *
   * @param measure the count
   * @param word the size or piece, for example {@code large}
   * @return the mass, with its range and source
   * @throws BakeryException if this ingredient has no such measure, or the measure is no plain
   *     count
   */
  public Weighed weighPieces(HouseholdAmount measure, String word) {
    boolean otherCount = measure.countWord().filter(w -> !w.equals(word)).isPresent();
    if (measure.unit().isPresent() || otherCount) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "a measure and a size together have no one reading",
          measure + " " + word + " " + name,
          "give a count, as in 2 "
              + word
              + " "
              + name
              + ", with the mass in brackets if it is known, or the measure without the size");
    }
    Portion portion =
        portions.stream()
            .filter(
                p ->
                    !p.isVolume()
                        && (p.word().equals(word)
                            || (word.equals("piece") && p.word().equals("large"))))
            .findFirst()
            .orElseThrow(
                () ->
                    new BakeryException(
                        Reason.UNKNOWN_NAME,
                        "no weight of a " + word + " of " + name + " is on record",
                        measure + " " + name,
                        "weigh it, or use one of: " + measures()));
    double each = portion.mass().in(GRAM) / portion.measure().low().doubleValue();
    Spread spread = spreads.of(roles);
    double low = measure.low().doubleValue() * each;
    double high = measure.high().doubleValue() * each;
    return new Weighed(
        this,
        measure,
        GRAM.amount((low + high) / 2),
        new AmountRange<>(GRAM.amount(low * spread.low()), GRAM.amount(high * spread.high())),
        Filling.AS_IS,
        portion.source());
  }

  /**
   * Whether a counted portion of that word is on record.
   *
   * @param word the size or piece, for example {@code large}
   * @return true if it is
   */
  public boolean hasPiece(String word) {
    return portions.stream().anyMatch(p -> p.word().equals(word));
  }

  private String measures() {
    String known =
        portions.stream()
            .map(p -> p.isVolume() ? "volume (" + p.filling().word() + ")" : p.word())
            .distinct()
            .collect(Collectors.joining(", "));
    return known.isEmpty() ? "grams" : known;
  }

  /**
   * Whether another ingredient goes by the same id, whatever it is made of.
   *
   * @param other the other one
   * @return true if the ids are the same
   */
  public boolean sameIdAs(Ingredient other) {
    return id.equals(requireNonNull(other, "other").id);
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return this == other
        || (other instanceof Ingredient that
            && id.equals(that.id)
            && name.equals(that.name)
            && roles.equals(that.roles)
            && origin == that.origin
            && composition.equals(that.composition)
            && allergens.equals(that.allergens)
            && allergensToCheck.equals(that.allergensToCheck)
            && allergensUnknown == that.allergensUnknown
            && portions.equals(that.portions)
            && spreads.equals(that.spreads)
            && Objects.equals(flour, that.flour)
            && yeastForm == that.yeastForm
            && Double.compare(sweetness, that.sweetness) == 0
            && brownsSooner == that.brownsSooner);
  }

  @Override
  public int hashCode() {
    return id.hashCode();
  }

  /** The everyday name. */
  @Override
  public String toString() {
    return name;
  }

  /**
   * How far household measures spread, as shares of the middle.
   *
   * @param low the low end
   * @param middle the middle
   * @param high the high end
   */
  record Spread(double low, double middle, double high) implements Serializable {}

  /** The table of spreads, read from the catalogue. */
  static final class Spreads implements Serializable {
    private static final long serialVersionUID = 1L;

    /** A table for ingredients of one's own made without the catalogue. */
    static final Spreads PLAIN = new Spreads();

    /** By role and filling. */
    private final java.util.TreeMap<String, Spread> table = new java.util.TreeMap<>();

    void put(String role, String filling, Spread spread) {
      table.put(role + "/" + filling, spread);
    }

    Spread flour(Filling filling) {
      return table.getOrDefault("FLOUR/" + filling.word(), ANY_SPREAD);
    }

    @Override
    public boolean equals(@Nullable Object other) {
      return this == other || (other instanceof Spreads that && table.equals(that.table));
    }

    @Override
    public int hashCode() {
      return table.hashCode();
    }

    Spread of(Set<Role> roles) {
      for (Role role : roles) {
        Spread spread = table.get(role.name() + "/");
        if (spread != null) {
          return spread;
        }
      }
      return table.getOrDefault("/", ANY_SPREAD);
    }
  }

  /** Collects what an ingredient is; it is not safe for use by several threads. */
  public static final class Builder {
    private final String id;
    private final String name;
    private final EnumSet<Role> roles = EnumSet.noneOf(Role.class);
    private Origin origin = Origin.CHECK_LABEL;
    private @Nullable Composition composition;
    private final EnumSet<Allergen> allergens = EnumSet.noneOf(Allergen.class);
    private final EnumSet<Allergen> allergensToCheck = EnumSet.noneOf(Allergen.class);
    private boolean allergensUnknown;
    private final List<Portion> portions = new ArrayList<>();
    private Spreads spreads = Spreads.PLAIN;
    private @Nullable FlourSpecification flour;
    private @Nullable YeastForm yeastForm;
    private double sweetness = Double.NaN;
    private boolean brownsSooner;

    private Builder(String id, String name) {
      this.id = requireText(id, "id");
      this.name = requireText(name, "name");
    }

    private static String requireText(String text, String parameter) {
      if (requireNonNull(text, parameter).isBlank()) {
        throw new BakeryException(
            Reason.MISSING,
            "an ingredient needs its " + parameter,
            "\"" + text + "\"",
            "give at least one letter");
      }
      return text;
    }

    /**
     * Adds a role.
     *
     * @param role the role
     * @return this builder
     */
    public Builder role(Role role) {
      roles.add(role);
      return this;
    }

    /**
     * Sets the origin; {@link Origin#CHECK_LABEL} unless set.
     *
     * @param value the origin
     * @return this builder
     */
    public Builder origin(Origin value) {
      origin = requireNonNull(value, "value");
      return this;
    }

    /**
     * Sets the composition.
     *
     * @param value the composition
     * @return this builder
     */
    public Builder composition(Composition value) {
      composition = requireNonNull(value, "value");
      return this;
    }

    /**
     * Says that nobody has said which allergens it holds, until {@link #allergens} is called.
     *
     * @return this builder
     */
    public Builder allergensUnknown() {
      allergensUnknown = true;
      return this;
    }

    /**
     * Adds allergens that it is or always holds; without any it states that there are none.
     *
     * @param values the allergens
     * @return this builder
     */
    public Builder allergens(Allergen... values) {
      allergensUnknown = false;
      allergens.addAll(List.of(values));
      return this;
    }

    /**
     * Adds allergens that products of this kind may hold.
     *
     * @param values the allergens
     * @return this builder
     */
    public Builder allergensToCheck(Allergen... values) {
      allergensToCheck.addAll(List.of(values));
      return this;
    }

    /**
     * Adds what a household measure weighs.
     *
     * @param measure a volume ({@code 1 cup}) or a count word ({@code 1 stick}, {@code 1 large})
     * @param mass what it weighs, positive
     * @return this builder
     */
    public Builder portion(String measure, Quantity<Mass> mass) {
      return portion(measure, Filling.AS_IS, mass, Source.USER);
    }

    /**
     * Adds what a household measure weighs.
     *
     * @param measure a volume ({@code 1 cup}) or a count word ({@code 1 stick}, {@code 1 large})
     * @param filling how it is filled
     * @param mass what it weighs, positive
     * @param source where the figure comes from
     * @return this builder
     */
    public Builder portion(String measure, Filling filling, Quantity<Mass> mass, Source source) {
      HouseholdAmount read = HouseholdAmount.parseFront(measure, CupStandard.US_CUSTOMARY);
      Amount<Mass> weight = Given.mass("the mass", mass);
      if (weight.value() <= 0 || read.low().signum() <= 0) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "a portion must weigh something",
            measure + " = " + weight,
            "give a positive measure and mass");
      }
      boolean volume = read.kind() == Kind.VOLUME && read.rest().isEmpty();
      String word = volume ? "" : read.countWord().orElse(read.rest());
      if (!volume && (word.isEmpty() || read.unit().isPresent())) {
        throw new BakeryException(
            Reason.UNREADABLE_TEXT,
            "not a household measure",
            "\"" + measure + "\"",
            "write it like 1 cup, 1 stick or 1 large");
      }
      portions.add(new Portion(read, word, filling, weight, source));
      return this;
    }

    /**
     * Sets what the miller prints; otherwise it is taken from the composition.
     *
     * @param value the specification
     * @return this builder
     */
    public Builder flour(FlourSpecification value) {
      flour = requireNonNull(value, "value");
      return this;
    }

    /**
     * Says in which form yeast is sold.
     *
     * @param value the form
     * @return this builder
     */
    public Builder yeastForm(YeastForm value) {
      yeastForm = requireNonNull(value, "value");
      return this;
    }

    /**
     * Says how sweet it is by mass, sucrose 100 %.
     *
     * @param value 0 % or more
     * @return this builder
     * @throws BakeryException if it is negative
     */
    public Builder sweetness(Quantity<Dimensionless> value) {
      double share = FRACTION.measure("the value", value);
      if (!(share >= 0) || Double.isInfinite(share)) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "nothing is as sweet as this",
            Given.ratio("the value", value).toString(),
            "give 0 % or more, sucrose 100 %");
      }
      sweetness = share;
      return this;
    }

    /**
     * Says that it browns sooner than sugar.
     *
     * @return this builder
     */
    public Builder brownsSooner() {
      brownsSooner = true;
      return this;
    }

    Builder spreads(Spreads value) {
      spreads = value;
      return this;
    }

    /**
     * Makes the ingredient.
     *
     * @return the ingredient
     * @throws BakeryException if it has no role or no composition
     */
    public Ingredient build() {
      if (roles.isEmpty() || composition == null) {
        throw new BakeryException(
            Reason.MISSING,
            "an ingredient needs a role and a composition",
            name,
            "call role(…) and composition(…)");
      }
      return new Ingredient(this, composition);
    }
  }
}
