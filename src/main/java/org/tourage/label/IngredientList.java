package org.tourage.label;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.formula.Batch;
import org.tourage.formula.Line;
import org.tourage.ingredient.Allergen;
import org.tourage.ingredient.Component;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;

/**
 * The list of ingredients of a product, in descending order of their weight at mixing, all stages
 * and the finish together, with its allergens marked. A draft for the person who writes the label,
 * no legal label.
 *
 * <p>European Union (Regulation (EU) No 1169/2011): order by Article 18; added water by what is
 * left of it in the finished product, and none where that is at most 5 % of it (Annex VII, part A,
 * point 1); percent of an ingredient that is emphasised by the mixed quantity over the finished
 * product, and above 100 % as grams for 100 g (Annex VIII, points 3 and 4). United States: order by
 * weight (21 CFR 101.4(a)), water as mixed.
 *
 * <p>Immutable and serialisable.
 */
public final class IngredientList implements Serializable {
  private static final long serialVersionUID = 1L;
  private static final double WATER_NEED_NOT_BE_LISTED = 0.05;
  private static final double PURE_WATER = 0.995;

  /** The batch. */
  private final Batch batch;

  /** Whose rules. */
  private final LabelScheme scheme;

  /** Water lost in grams. */
  private final double waterLost;

  /** Ingredients whose percent is printed. */
  private final Set<Ingredient> emphasised;

  /** What compound ingredients are made of. */
  private final Map<Ingredient, List<String>> compounds;

  /** What the user says the product may contain. */
  private final EnumSet<Allergen> mayContain;

  private IngredientList(
      Batch batch,
      LabelScheme scheme,
      double waterLost,
      Set<Ingredient> emphasised,
      Map<Ingredient, List<String>> compounds,
      EnumSet<Allergen> mayContain) {
    this.batch = batch;
    this.scheme = scheme;
    this.waterLost = waterLost;
    this.emphasised = emphasised;
    this.compounds = compounds;
    this.mayContain = mayContain;
  }

  /**
   * The list of a batch before any water has gone.
   *
   * @param batch the batch
   * @param scheme whose rules
   * @return the list
   */
  public static IngredientList of(Batch batch, LabelScheme scheme) {
    return new IngredientList(
        requireNonNull(batch, "batch"),
        requireNonNull(scheme, "scheme"),
        0,
        Set.of(),
        Map.of(),
        EnumSet.noneOf(Allergen.class));
  }

  /**
   * The same list after some water has gone in the oven and in cooling.
   *
   * @param water the water that the whole batch loses
   * @return the list
   * @throws BakeryException if the batch does not hold so much water
   */
  public IngredientList withWaterLost(Quantity<Mass> water) {
    double grams = Nutrition.of(batch).withWaterLost(water).waterLost().in(GRAM);
    return new IngredientList(batch, scheme, grams, emphasised, compounds, mayContain);
  }

  /**
   * The same list with the percent of an ingredient, as its name, picture or emphasis on the label
   * asks for.
   *
   * @param ingredient the ingredient
   * @return the list
   * @throws BakeryException if the batch has no such ingredient
   */
  public IngredientList emphasising(Ingredient ingredient) {
    requireThere(ingredient);
    Set<Ingredient> more = new LinkedHashSet<>(emphasised);
    more.add(ingredient);
    return new IngredientList(batch, scheme, waterLost, more, compounds, mayContain);
  }

  /**
   * The same list with the parts of a compound ingredient in brackets behind it.
   *
   * @param ingredient the compound ingredient
   * @param parts its own ingredients in descending order, as the label in hand prints them
   * @return the list
   * @throws BakeryException if the batch has no such ingredient, or no part is given
   */
  public IngredientList compound(Ingredient ingredient, String... parts) {
    requireThere(ingredient);
    if (parts.length == 0 || Arrays.stream(parts).anyMatch(String::isBlank)) {
      throw new BakeryException(
          Reason.MISSING,
          "a compound ingredient has parts",
          ingredient.name(),
          "copy them from its label, for example \"cocoa mass\", \"sugar\"");
    }
    Map<Ingredient, List<String>> more = new LinkedHashMap<>(compounds);
    more.put(ingredient, List.of(parts));
    return new IngredientList(batch, scheme, waterLost, emphasised, more, mayContain);
  }

  /**
   * The same list with a statement of what the product may contain by cross-contact. Nothing is
   * stated unless this is called.
   *
   * @param allergens the allergens
   * @return the list
   */
  public IngredientList mayContain(Allergen... allergens) {
    EnumSet<Allergen> more = mayContain.clone();
    more.addAll(List.of(allergens));
    return new IngredientList(batch, scheme, waterLost, emphasised, compounds, more);
  }

  private void requireThere(Ingredient ingredient) {
    boolean there =
        batch.formula().lines().stream().anyMatch(l -> l.ingredient().equals(ingredient));
    if (!there) {
      throw new BakeryException(
          Reason.UNKNOWN_NAME,
          "no such ingredient in " + batch.formula().name(),
          ingredient.name(),
          "name one of its lines");
    }
  }

  /**
   * An entry of the list.
   *
   * @param ingredient the ingredient
   * @param mixed its mass as weighed
   * @param counted the mass that its place follows: as weighed, or for added water what is left of
   *     it
   */
  public record Entry(Ingredient ingredient, Amount<Mass> mixed, Amount<Mass> counted)
      implements Serializable {}

  /**
   * The entries in descending order.
   *
   * @return the entries; equal masses in the order of the formula
   */
  public List<Entry> entries() {
    Map<Ingredient, Double> masses = new LinkedHashMap<>();
    List<Line> lines = batch.formula().lines();
    for (int i = 0; i < lines.size(); i++) {
      masses.merge(lines.get(i).ingredient(), batch.weight(i).in(GRAM), Double::sum);
    }
    List<Entry> entries = new ArrayList<>();
    for (Map.Entry<Ingredient, Double> mass : masses.entrySet()) {
      boolean water = scheme == LabelScheme.EU && isWater(mass.getKey());
      double counted = water ? Math.max(0, mass.getValue() - waterLost) : mass.getValue();
      boolean listed = !water || counted > WATER_NEED_NOT_BE_LISTED * finishedGrams();
      if (listed && mass.getValue() > 0) {
        entries.add(new Entry(mass.getKey(), GRAM.amount(mass.getValue()), GRAM.amount(counted)));
      }
    }
    entries.sort((a, b) -> Double.compare(b.counted.in(GRAM), a.counted.in(GRAM)));
    return entries;
  }

  private static boolean isWater(Ingredient ingredient) {
    return ingredient.is(Role.LIQUID)
        && ingredient.composition().fraction(Component.WATER) > PURE_WATER;
  }

  private double finishedGrams() {
    return batch.total().in(GRAM) - waterLost;
  }

  /**
   * The quantity of an ingredient: its mass at mixing by the mass of the finished product. Above
   * 100 % a label prints grams for 100 g.
   *
   * @param ingredient the ingredient
   * @return the share in percent, 0 if it is not in the batch
   */
  public Amount<Dimensionless> quantity(Ingredient ingredient) {
    double grams = 0;
    List<Line> lines = batch.formula().lines();
    for (int i = 0; i < lines.size(); i++) {
      grams += lines.get(i).ingredient().equals(ingredient) ? batch.weight(i).in(GRAM) : 0;
    }
    return PERCENT.amount(100 * grams / finishedGrams());
  }

  /**
   * The list as a text with the allergens of the scheme marked. An allergen that the name does not
   * name stands in brackets behind it.
   *
   * @return the text, without a heading
   */
  public MarkedText text() {
    StringBuilder out = new StringBuilder();
    List<MarkedText.Span> spans = new ArrayList<>();
    for (Entry entry : entries()) {
      out.append(out.length() == 0 ? "" : ", ");
      Ingredient ingredient = entry.ingredient;
      Set<Allergen> open = onList(ingredient.allergens());
      append(out, spans, ingredient.name(), open);
      if (emphasised.contains(ingredient)) {
        out.append(' ').append(quid(ingredient));
      }
      List<String> parts = compounds.get(ingredient);
      if (parts != null) {
        out.append(" (");
        for (int i = 0; i < parts.size(); i++) {
          out.append(i == 0 ? "" : ", ");
          append(out, spans, parts.get(i), open);
        }
        out.append(')');
      }
      if (!open.isEmpty()) {
        out.append(" (");
        boolean first = true;
        for (Allergen allergen : open) {
          out.append(first ? "" : ", ");
          first = false;
          spans.add(
              new MarkedText.Span(out.length(), out.length() + allergen.word().length(), allergen));
          out.append(allergen.word());
        }
        out.append(')');
      }
    }
    return new MarkedText(out.toString(), spans);
  }

  private String quid(Ingredient ingredient) {
    double percent = quantity(ingredient).value();
    int decimals = percent < 1 ? 1 : 0;
    return percent > 100
        ? "(" + Numbers.decimals(percent, 0) + " g per 100 g)"
        : Numbers.decimals(percent, decimals) + " %";
  }

  /** Writes a name and marks the allergens in it; those that were found are no longer open. */
  private static void append(
      StringBuilder out, List<MarkedText.Span> spans, String name, Set<Allergen> open) {
    int start = out.length();
    out.append(name);
    String lower = name.toLowerCase(Locale.ROOT);
    Map<Integer, MarkedText.Span> found = new TreeMap<>();
    for (Allergen allergen : new ArrayList<>(open)) {
      int at = wordAt(lower, allergen);
      if (at >= 0 && !found.containsKey(at)) {
        int end = at + allergen.word().length();
        boolean plural = end < lower.length() && lower.charAt(end) == 's';
        end += plural ? 1 : 0;
        found.put(at, new MarkedText.Span(start + at, start + end, allergen));
        open.remove(allergen);
      }
    }
    spans.addAll(found.values());
  }

  /**
   * Where a whole word of the name names the allergen: no milk in buttermilk, no nut in coconut.
   */
  private static int wordAt(String lower, Allergen allergen) {
    String word = allergen.word().toLowerCase(Locale.ROOT);
    int at = lower.indexOf(word);
    while (at >= 0) {
      boolean starts = at == 0 || !Character.isLetter(lower.charAt(at - 1));
      int end = at + word.length();
      boolean ends =
          end == lower.length()
              || !Character.isLetter(lower.charAt(end))
              || (lower.charAt(end) == 's'
                  && (end + 1 == lower.length() || !Character.isLetter(lower.charAt(end + 1))));
      if (starts && ends) {
        return at;
      }
      at = lower.indexOf(word, at + 1);
    }
    return -1;
  }

  private Set<Allergen> onList(Set<Allergen> allergens) {
    EnumSet<Allergen> listed = EnumSet.noneOf(Allergen.class);
    for (Allergen allergen : allergens) {
      boolean on =
          scheme == LabelScheme.EU
              ? allergen.europeanUnion().isPresent()
              : allergen.unitedStates().isPresent();
      if (on) {
        listed.add(allergen);
      }
    }
    return listed;
  }

  /**
   * The allergens of the product on the list of the scheme: the union over all stages and the
   * finish.
   *
   * @return the allergens
   */
  public Set<Allergen> allergens() {
    EnumSet<Allergen> all = EnumSet.noneOf(Allergen.class);
    for (Line line : batch.formula().lines()) {
      all.addAll(onList(line.ingredient().allergens()));
    }
    return all.isEmpty() ? Set.of() : all;
  }

  /**
   * The statement of what it contains: the groups of the nine of the United States (section 403(w)
   * of the Federal Food, Drug, and Cosmetic Act), or of the fourteen of Annex II.
   *
   * @return for example {@code Contains: milk, wheat}; empty if there is none
   */
  public Optional<String> contains() {
    AllergenSummary summary = AllergenSummary.of(batch.formula());
    List<String> groups =
        scheme == LabelScheme.EU ? summary.europeanUnion() : summary.unitedStates();
    return groups.isEmpty()
        ? Optional.empty()
        : Optional.of("Contains: " + String.join(", ", groups));
  }

  /**
   * What the user says the product may contain, without what it contains anyway.
   *
   * @return for example {@code May contain: sesame}; empty unless the user said so
   */
  public Optional<String> mayContainText() {
    Set<Allergen> rest = mayContain.clone();
    rest.removeAll(allergens());
    return rest.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "May contain: " + rest.stream().map(Allergen::word).collect(Collectors.joining(", ")));
  }

  /**
   * The ingredients whose allergens nobody has said; what {@link #contains()} says is then not all.
   *
   * @return for example {@code Allergens unknown: sprinkles}; empty if all are known
   */
  public Optional<String> allergensUnknown() {
    return AllergenSummary.of(batch.formula()).unknownText();
  }

  /**
   * What the person who writes the label must still look at.
   *
   * @return the advice of the allergens, and that this is a draft
   */
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>();
    advice.add(
        Advice.of(
            "LIST_DRAFT",
            "the list of ingredients is a " + Nutrition.DRAFT,
            "Use the names that your law asks for, and the parts of compound ingredients as their"
                + " labels print them"));
    advice.addAll(AllergenSummary.of(batch.formula()).advice());
    return advice;
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof IngredientList that
        && batch.equals(that.batch)
        && scheme == that.scheme
        && Double.compare(waterLost, that.waterLost) == 0
        && emphasised.equals(that.emphasised)
        && compounds.equals(that.compounds)
        && mayContain.equals(that.mayContain);
  }

  @Override
  public int hashCode() {
    return Objects.hash(batch, scheme, waterLost, emphasised, compounds, mayContain);
  }

  /** The list with its allergens in capitals, then the statements, then that it is a draft. */
  @Override
  public String toString() {
    StringBuilder out = new StringBuilder("Ingredients: ").append(text().inCapitals());
    contains().ifPresent(text -> out.append('\n').append(text));
    mayContainText().ifPresent(text -> out.append('\n').append(text));
    allergensUnknown().ifPresent(text -> out.append('\n').append(text));
    return out.append("\n(").append(Nutrition.DRAFT).append(')').toString();
  }
}
