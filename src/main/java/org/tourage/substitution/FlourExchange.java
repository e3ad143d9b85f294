package org.tourage.substitution;

import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.function.Predicate;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.formula.Formula;
import org.tourage.formula.Line;
import org.tourage.ingredient.Component;
import org.tourage.ingredient.Ingredient;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;

/**
 * One flour of a formula replaced by another, mass for mass, with the water corrected where that
 * can be told, so that the dough stays as stiff as it was.
 *
 * <p>Between two wheat flours, absorption at 14 % moisture rises by 1.25 points of water for each
 * point of protein at 14 % moisture, between 1 and 1.5 in practice; whole-grain flour takes 7.5
 * points more, between 5 and 10 (common practice). A measured absorption, where both flours have
 * one, is used instead. For other flours there is no such slope: without measured absorptions, or a
 * model of one's own, the exchange is refused.
 *
 * <p>The bag's own moisture counts, by conservation of dry matter and total water, where it is
 * known of at least one of the two bags. The averages of a table are no moisture of a bag: two
 * flours of the table are taken to be equally moist.
 *
 * <p>The uncertainty holds what the moisture of both bags leaves open (a point each if nothing else
 * is said), what flours of one protein differ by, and what the slope leaves open. Where it is
 * greater than the change, not even the sign is known: the formula keeps its water, and the baker
 * holds a little of it back.
 *
 * <p>Conserved: the mass of flour and every line but the water. Immutable and serialisable.
 */
public final class FlourExchange implements Substitution {
  private static final long serialVersionUID = 1L;

  /** The moisture of a bag may be off by so much either way, in points (common practice). */
  private static final double BAG_MOISTURE = 1;

  /** The least that is held back where nothing can be told, in points: a little water. */
  private static final double LITTLE = 1;

  private final Formula before;
  private final Exchange wanted;
  private final BalancingLine target;
  private final FlourWater water;
  private final Formula after;

  private FlourExchange(Formula before, Exchange wanted, FlourWater water, BalancingLine target) {
    this.before = before;
    this.wanted = wanted;
    this.water = water;
    this.target = target;
    LineChanges lines = new LineChanges(before);
    applyTo(lines);
    refuseOverdrawn(before, lines);
    this.after = lines.formula();
  }

  /**
   * Replaces all of a flour.
   *
   * @param formula the formula
   * @param from the flour that goes; the formula must have it
   * @param to the flour that comes
   * @return the exchange
   * @throws BakeryException as for a part of it
   */
  public static FlourExchange of(Formula formula, Ingredient from, Ingredient to) {
    return of(formula, from, to, PERCENT.amount(100));
  }

  /**
   * Replaces a part of a flour. The water goes by the measured absorptions if both flours have one,
   * else by {@link ProteinSlope}.
   *
   * @param formula the formula
   * @param from the flour that goes; the formula must have it
   * @param to the flour that comes
   * @param share the part that is exchanged, 0 % to 100 %
   * @return the exchange
   * @throws BakeryException if the formula lacks the flour, one of them is no flour of known
   *     protein, one is no wheat and not both absorptions were measured, the share can't be, or the
   *     dough has not enough water to give
   */
  public static FlourExchange of(
      Formula formula, Ingredient from, Ingredient to, Quantity<Dimensionless> share) {
    return of(formula, from, to, share, usual(from, to));
  }

  /**
   * Replaces a part of a flour, with the water by a model of one's choice.
   *
   * @param formula the formula
   * @param from the flour that goes; the formula must have it
   * @param to the flour that comes
   * @param share the part that is exchanged, 0 % to 100 %
   * @param model how much water each flour takes
   * @return the exchange
   * @throws BakeryException as above, or if a flour lacks a figure that the model needs
   */
  public static FlourExchange of(
      Formula formula,
      Ingredient from,
      Ingredient to,
      Quantity<Dimensionless> share,
      AbsorptionModel model) {
    return of(formula, from, to, share, model, PERCENT.amount(BAG_MOISTURE));
  }

  /**
   * Replaces a part of a flour, for bags whose moisture is known better, or worse, than to a point.
   *
   * @param formula the formula
   * @param from the flour that goes; the formula must have it
   * @param to the flour that comes
   * @param share the part that is exchanged, 0 % to 100 %
   * @param model how much water each flour takes
   * @param moisture how far the moisture of each bag may be off either way, 0 to 10 points
   * @return the exchange
   * @throws BakeryException as above, or if the moisture can't be off by so much
   */
  public static FlourExchange of(
      Formula formula,
      Ingredient from,
      Ingredient to,
      Quantity<Dimensionless> share,
      AbsorptionModel model,
      Quantity<Dimensionless> moisture) {
    FlourWater water = FlourWater.of(formula, from, to, model, moisture);
    return of(formula, Exchange.of(from, to, share), water, i -> false);
  }

  /** A wish by the usual model; some ingredients go at the same time and hold no water. */
  static FlourExchange of(Formula formula, Exchange wanted, Predicate<Ingredient> going) {
    FlourWater water =
        FlourWater.of(
            formula,
            wanted.from(),
            wanted.to(),
            usual(wanted.from(), wanted.to()),
            PERCENT.amount(BAG_MOISTURE));
    return of(formula, wanted, water, going);
  }

  private static FlourExchange of(
      Formula formula, Exchange wanted, FlourWater water, Predicate<Ingredient> going) {
    if (formula.percent(wanted.from()).value() <= 0) {
      throw ExchangeDraft.notHeld(formula, wanted.from(), "the flour");
    }
    BalancingLine target =
        BalancingLine.find(formula, Conserved.WATER, going.negate())
            // what goes takes its water along to what comes
            .or(() -> BalancingLine.find(formula, Conserved.WATER, i -> true))
            .orElseThrow(
                () ->
                    new BakeryException(
                        Reason.MISSING,
                        "the dough has no liquid whose amount could be corrected",
                        formula.name(),
                        "add water or another liquid"));
    return new FlourExchange(formula, wanted, water, target);
  }

  private static AbsorptionModel usual(Ingredient from, Ingredient to) {
    boolean measured =
        FlourFigures.specification(from).absorption().isPresent()
            && FlourFigures.specification(to).absorption().isPresent();
    return measured ? new MeasuredAbsorption() : new ProteinSlope();
  }

  /** Does the exchange to the lines of the formula. */
  void applyTo(LineChanges lines) {
    lines.exchange(wanted, 1);
    double change = settled() ? waterChange().in(FRACTION) : 0;
    if (change != 0) {
      lines.change(
          target.index(),
          change / target.line().ingredient().composition().fraction(Component.WATER));
    }
  }

  /** Flours can't give less water than they take. */
  static void refuseOverdrawn(Formula formula, LineChanges lines) {
    OptionalInt line = lines.overdrawn();
    if (line.isPresent()) {
      Line scarce = formula.lines().get(line.getAsInt());
      throw new BakeryException(
          Reason.INCONSISTENT,
          "the dough has not enough " + scarce.ingredient().name() + " to take the water from",
          scarce.percent() + " of flour, " + lines.taken(line.getAsInt()) + " to be taken",
          "exchange a smaller part of the flour");
    }
  }

  /** How much of the flour is exchanged, by the total flour. */
  private double exchanged() {
    boolean same = wanted.from().equals(wanted.to());
    return same ? 0 : wanted.part() * before.percent(wanted.from()).in(FRACTION);
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
   * The flour that goes.
   *
   * @return the flour
   */
  public Ingredient from() {
    return wanted.from();
  }

  /**
   * The flour that comes.
   *
   * @return the flour
   */
  public Ingredient to() {
    return wanted.to();
  }

  /**
   * The part of the flour that is exchanged.
   *
   * @return 0 % to 100 %
   */
  public Amount<Dimensionless> share() {
    return wanted.share();
  }

  /**
   * The best estimate of the change of the water; {@link #after()} has it only if it is {@linkplain
   * #settled() settled}.
   *
   * @return points of the total flour
   */
  public Amount<Dimensionless> waterChange() {
    return PERCENT.amount(water.points() * exchanged());
  }

  /**
   * How far the change may be off either way.
   *
   * @return points of the total flour
   */
  public Amount<Dimensionless> uncertainty() {
    return PERCENT.amount(water.spread() * exchanged());
  }

  /**
   * Where the model of the water comes from.
   *
   * @return the source
   */
  public String source() {
    return water.source();
  }

  /**
   * Whether more is known than that the two flours differ: whether the change is greater than its
   * uncertainty. If not, {@link #after()} has the water of before.
   *
   * @return whether the sign of the change can be told
   */
  public boolean settled() {
    double spread = uncertainty().value();
    return Math.abs(waterChange().value()) > spread || spread == 0;
  }

  /**
   * How much of the water is best held back at the mixer, to be added by feel: what the estimate
   * takes away, at least a point of the exchanged flour. Nothing is held back of a settled change.
   *
   * @return water in points of the total flour
   */
  public Amount<Dimensionless> heldBack() {
    double little = LITTLE * share().in(FRACTION) * before.percent(from()).in(FRACTION);
    return PERCENT.amount(settled() ? 0 : Math.max(little, -waterChange().in(PERCENT)));
  }

  /**
   * The household way: keep the water and every other line, and change the mass of the flour until
   * the dough is as stiff as with the water corrected.
   *
   * @return the formula, its flour 100 % again, and the new mass of flour by the old
   */
  public Formula.Changed keepingTheWater() {
    double wanted = after.hydration().trueHydration().value();
    double held = before.hydration().trueHydration().value();
    double k = wanted / held;
    Formula changed =
        before
            .replace(
                (stage, line) ->
                    line.ingredient().equals(from())
                        ? split(line, to(), share().in(FRACTION))
                        : List.of(
                            new Formula.Part(
                                line.ingredient(),
                                line.isFlour() ? line.percent() : line.percent().multiply(k))))
            .formula();
    return new Formula.Changed(changed, PERCENT.amount(100 / k));
  }

  /**
   * What the formula holds before and after, side by side, and the mass of the dough either way.
   *
   * @return a table
   */
  @Override
  public String comparison() {
    Formula.Changed household = keepingTheWater();
    AmountFormat format = AmountFormat.metric();
    return Substitution.super.comparison()
        + "\nor keep the water: "
        + format.percent(household.flour())
        + " of the flour, dough "
        + format.percent(
            PERCENT.amount(
                household.formula().dough().in(PERCENT)
                    * household.flour().in(PERCENT)
                    / before.dough().in(PERCENT)))
        + " of what it was";
  }

  private static List<Formula.Part> split(Line line, Ingredient to, double part) {
    List<Formula.Part> parts = new ArrayList<>();
    if (part < 1) {
      parts.add(new Formula.Part(line.ingredient(), line.percent().multiply(1 - part)));
    }
    if (part > 0) {
      parts.add(new Formula.Part(to, line.percent().multiply(part)));
    }
    return parts;
  }

  @Override
  public List<Advice> advice() {
    return FlourAdvice.of(this);
  }

  @Override
  public Working working() {
    AmountFormat format = AmountFormat.metric();
    return Working.of(
        new WorkedLine(
            "P14",
            "P · (100 − 14) / (100 − M)",
            from().name()
                + " "
                + format.percent(PERCENT.amount(FlourFigures.protein(from())))
                + ", "
                + to().name()
                + " "
                + format.percent(PERCENT.amount(FlourFigures.protein(to()))),
            "conservation of dry matter"),
        new WorkedLine(
            "Δ water",
            (source().equals(ProteinSlope.SOURCE)
                    ? "1.25 · ΔP14, whole grain +7.5"
                    : "difference of the absorptions")
                + (FlourFigures.isAverage(from()) && FlourFigures.isAverage(to())
                    ? ", both bags equally moist"
                    : ", then to each flour's own moisture"),
            format.percent(waterChange()) + " ± " + format.percent(uncertainty()) + " of flour",
            source()));
  }

  /**
   * {@code 100 % of the bread flour becomes cake flour: water -4.8 % ± 3.8 % of flour}, or, where
   * that is not settled, {@code … no change that can be told (± 3.7 % of flour); hold back a little
   * water, 2.3 % of flour}.
   */
  @Override
  public String toString() {
    AmountFormat format = AmountFormat.metric();
    String sign = waterChange().value() > 0 ? "+" : "";
    String spread = "± " + format.percent(uncertainty()) + " of flour";
    return share().to(PERCENT)
        + " of the "
        + from().name()
        + " becomes "
        + to().name()
        + ": "
        + (settled()
            ? "water " + sign + format.percent(waterChange()) + " " + spread
            : "no change that can be told ("
                + spread
                + "); hold back a little water, "
                + format.percent(heldBack())
                + " of flour");
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof FlourExchange that
        && before.equals(that.before)
        && wanted.equals(that.wanted)
        && water.equals(that.water)
        && after.equals(that.after);
  }

  @Override
  public int hashCode() {
    return Objects.hash(before, wanted, water);
  }
}
