package org.tourage.substitution;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.formula.Formula;
import org.tourage.formula.Line;
import org.tourage.formula.StageKind;
import org.tourage.formula.Totals;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;
import org.tourage.internal.Numbers;
import org.tourage.internal.Ordered;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;

/**
 * One ingredient of a formula replaced by another, flours apart ({@link FlourExchange}): a fat by
 * its fat, a sugar or syrup by its sugars, yeast by its form, anything else by its water. What else
 * is to be kept is balanced by lines of the formula: water by the wettest liquid, sugars by the
 * sweetest sugar, salt by the salt, fat by the fattest fat; where there is no such line, water,
 * sugar or salt is added. A fat of the roll-in keeps fat and salt, not water: the water of the
 * layers is no water of the dough.
 *
 * <p>What is not known of one of the two can't be kept. Immutable and serialisable.
 */
public final class IngredientExchange implements Substitution {
  private static final long serialVersionUID = 1L;
  private static final double LEAN_BLOCK = 0.78;

  private final Formula before;
  private final Exchange wanted;
  private final Formula after;
  private final double ratio;
  private final Set<Conserved> conserved;
  private final Map<Conserved, String> lost;

  IngredientExchange(
      Formula before,
      Exchange wanted,
      Formula after,
      double ratio,
      Set<Conserved> conserved,
      Map<Conserved, String> lost) {
    this.before = before;
    this.wanted = wanted;
    this.after = after;
    this.ratio = ratio;
    this.conserved = Ordered.set(conserved);
    this.lost = Ordered.map(lost);
  }

  /**
   * Replaces all of an ingredient and keeps what is usual for it: water and fat and salt for a fat
   * in the dough, fat and salt for a fat in the roll-in, sugars and water for a sugar, water, fat
   * and sugars for a liquid or egg.
   *
   * @param formula the formula
   * @param from what goes; the formula must have it
   * @param to what comes
   * @return the exchange
   * @throws BakeryException if the formula lacks it, one of them is a flour, the new one can't take
   *     its place, or an oil is to be rolled in
   */
  public static IngredientExchange of(Formula formula, Ingredient from, Ingredient to) {
    requireNonNull(formula, "formula");
    return ExchangeDraft.usual(formula, Exchange.of(from, to), from::equals).result();
  }

  /**
   * Replaces a part of an ingredient.
   *
   * @param formula the formula
   * @param from what goes; the formula must have it
   * @param to what comes
   * @param share the part that is exchanged, 0 % to 100 %
   * @param keep what is to be kept
   * @return the exchange
   * @throws BakeryException as above
   */
  public static IngredientExchange of(
      Formula formula,
      Ingredient from,
      Ingredient to,
      Quantity<Dimensionless> share,
      Set<Conserved> keep) {
    requireNonNull(formula, "formula");
    return new ExchangeDraft(formula, Exchange.of(from, to, share), keep, from::equals).result();
  }

  @Override
  public Formula before() {
    return before;
  }

  @Override
  public Formula after() {
    return after;
  }

  /**
   * What goes.
   *
   * @return the ingredient
   */
  public Ingredient from() {
    return wanted.from();
  }

  /**
   * What comes.
   *
   * @return the ingredient
   */
  public Ingredient to() {
    return wanted.to();
  }

  /**
   * The part that is exchanged.
   *
   * @return 0 % to 100 %
   */
  public Amount<Dimensionless> share() {
    return wanted.share();
  }

  /**
   * How much of the new one stands for one of the old.
   *
   * @return mass by mass
   */
  public double ratio() {
    return ratio;
  }

  /**
   * What was kept.
   *
   * @return the components
   */
  public Set<Conserved> conserved() {
    return conserved;
  }

  /**
   * What was to be kept and could not be.
   *
   * @return the reasons by component
   */
  public Map<Conserved, String> lost() {
    return lost;
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>();
    lost.forEach(
        (component, reason) ->
            advice.add(
                Advice.of(
                    "NOT_CONSERVED",
                    "the " + component.word() + " could not be kept: " + reason,
                    "See the comparison, and correct by hand")));
    double protein =
        Totals.of(after).protein().in(PERCENT) - Totals.of(before).protein().in(PERCENT);
    if (from().is(Role.EGG) && !to().is(Role.EGG)) {
      advice.add(
          Advice.of(
              "EGG_GONE",
              "the binding, lift and colour of egg are not replaced, and the protein changes by "
                  + Numbers.decimals(protein, 1)
                  + " % of flour",
              "Expect a paler, less tender crumb; try a small dough first"));
    }
    if (to().is(Role.SUGAR)) {
      sweetness(advice);
    }
    boolean rolledIn =
        after.stages().stream()
            .filter(s -> s.kind() == StageKind.ROLL_IN)
            .flatMap(s -> s.lines().stream())
            .anyMatch(l -> l.ingredient().equals(to()));
    if (rolledIn && Conserved.FAT.of(to()) < LEAN_BLOCK) {
      advice.add(
          Advice.of(
              "ROLL_IN_LEAN",
              to().name()
                  + " has "
                  + AmountFormat.metric().percent(PERCENT.amount(100 * Conserved.FAT.of(to())))
                  + " fat: more of it is rolled in, and more of its water turns to steam",
              "Keep it colder, roll gently, and look up its solid-fat curve before you set the bench time"));
    }
    advice.addAll(AllergenChange.advice(before, after));
    return advice;
  }

  private void sweetness(List<Advice> advice) {
    Optional<Amount<Dimensionless>> known = from().sweetness();
    Optional<Amount<Dimensionless>> given = to().sweetness();
    if (known.isPresent() && given.isPresent() && !from().equals(to())) {
      double old = known.get().in(FRACTION);
      double fresh = given.get().in(FRACTION);
      advice.add(
          Advice.of(
              "SWEETNESS",
              to().name()
                  + " is about "
                  + Numbers.significant(fresh, 3)
                  + " times as sweet as sugar by mass, "
                  + from().name()
                  + " about "
                  + Numbers.significant(old, 3)
                  + "; the exchange makes it "
                  + Numbers.decimals(100 * (ratio * fresh / old - 1), 0)
                  + " % sweeter (a minus for less)",
              "Taste decides; a table can't know it"));
    }
    if (to().brownsSooner() && !from().brownsSooner()) {
      advice.add(
          Advice.of(
              "BROWNS_SOONER",
              to().name() + " browns sooner than sugar and keeps the crumb moist",
              "Lower the oven by 10 to 15 K (18 to 27 °F) and look earlier"));
    }
  }

  @Override
  public Working working() {
    List<WorkedLine> lines = new ArrayList<>();
    lines.add(
        new WorkedLine(
            to().name() + " for 1 of " + from().name(),
            Balance.lead(from(), to()).map(c -> c.word() + " kept").orElse("by form or mass"),
            Numbers.significant(ratio, 4),
            from().is(Role.YEAST) ? "J. Hamelman, Bread, 2004" : "composition of the two"));
    for (Line line : after.overall()) {
      double was =
          before.overall().stream()
              .filter(l -> l.ingredient().equals(line.ingredient()))
              .mapToDouble(l -> l.percent().in(PERCENT))
              .sum();
      double is = line.percent().in(PERCENT);
      if (!line.ingredient().equals(to()) && Math.abs(is - was) > 1e-9) {
        lines.add(
            new WorkedLine(
                line.ingredient().name(),
                "takes up the difference",
                Numbers.decimals(was, 2) + " % → " + Numbers.decimals(is, 2) + " % of flour",
                "conservation of mass"));
      }
    }
    return new Working(lines);
  }

  /** {@code whole milk becomes soy drink, unsweetened, × 0.946; kept: water, fat, sugars}. */
  @Override
  public String toString() {
    String part =
        share().in(FRACTION) == 1 ? "" : AmountFormat.metric().percent(share()) + " of the ";
    return part
        + from().name()
        + " becomes "
        + to().name()
        + ", × "
        + Numbers.significant(ratio, 3)
        + "; kept: "
        + conserved.stream().map(Conserved::word).collect(Collectors.joining(", "))
        + (lost.isEmpty()
            ? ""
            : "; not kept: "
                + lost.keySet().stream().map(Conserved::word).collect(Collectors.joining(", ")));
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof IngredientExchange that
        && before.equals(that.before)
        && wanted.equals(that.wanted)
        && after.equals(that.after)
        && Double.compare(ratio, that.ratio) == 0
        && conserved.equals(that.conserved)
        && lost.equals(that.lost);
  }

  @Override
  public int hashCode() {
    return Objects.hash(before, wanted, after);
  }
}
