package org.tourage.substitution;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
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
import org.tourage.quantity.Given;

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
 *
 * @param before the formula before
 * @param from the flour that goes
 * @param to the flour that comes
 * @param share the part of the flour that is exchanged
 * @param after the formula after; its water is changed only if the change is settled
 * @param waterChange the best estimate of the change of the water, in points of the total flour
 * @param uncertainty how far the change may be off either way, in points of the total flour
 * @param source where the model of the water comes from
 */
public record FlourExchange(
    Formula before,
    Ingredient from,
    Ingredient to,
    Amount<Dimensionless> share,
    Formula after,
    Amount<Dimensionless> waterChange,
    Amount<Dimensionless> uncertainty,
    String source)
    implements Substitution {
  /** The moisture of a bag may be off by so much either way, in points (common practice). */
  private static final double BAG_MOISTURE = 1;

  /** The least that is held back where nothing can be told, in points: a little water. */
  private static final double LITTLE = 1;

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
    boolean measured =
        FlourFigures.specification(from).absorption().isPresent()
            && FlourFigures.specification(to).absorption().isPresent();
    return of(formula, from, to, share, measured ? new MeasuredAbsorption() : new ProteinSlope());
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
    FlourWater change = FlourWater.of(formula, from, to, model, moisture);
    return exchange(formula, from, to, share, change);
  }

  /**
   * Replaces several flours, one after another, each wholly.
   *
   * @param formula the formula
   * @param replacements what comes for each flour that goes, in the order of the map
   * @return the exchanges in order; the formula after the last one is the result
   * @throws BakeryException as for one flour, if nothing is to be replaced, or if a flour that
   *     comes would go again for a later one
   */
  public static List<FlourExchange> several(
      Formula formula, Map<Ingredient, Ingredient> replacements) {
    if (replacements.isEmpty()) {
      throw new BakeryException(
          Reason.MISSING, "nothing is to be replaced", formula.name(), "name a flour that goes");
    }
    List<FlourExchange> exchanges = new ArrayList<>();
    List<Ingredient> came = new ArrayList<>();
    Formula now = formula;
    for (Map.Entry<Ingredient, Ingredient> one : replacements.entrySet()) {
      if (came.contains(one.getKey())) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            "the flour that came for another one would be replaced as well",
            one.getKey().name() + " by " + one.getValue().name(),
            "name it before the flour for which it comes, or exchange in two steps");
      }
      came.add(one.getValue());
      FlourExchange exchange = of(now, one.getKey(), one.getValue());
      exchanges.add(exchange);
      now = exchange.after();
    }
    return exchanges;
  }

  private static FlourExchange exchange(
      Formula formula,
      Ingredient from,
      Ingredient to,
      Quantity<Dimensionless> share,
      FlourWater change) {
    double part = FRACTION.measure("the share", share);
    if (part < 0 || part > 1) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "this part of a flour can't be exchanged",
          Given.ratio("the share", share).to(PERCENT).toString(),
          "give 0 % to 100 %");
    }
    double held = formula.percent(from).in(FRACTION);
    if (held <= 0) {
      throw new BakeryException(
          Reason.UNKNOWN_NAME,
          "the formula has none of the flour to be replaced",
          from.name(),
          "name one of its flours");
    }
    double exchanged = part * held;
    double estimate = from.equals(to) ? 0 : change.points() / 100 * exchanged;
    double spread = from.equals(to) ? 0 : change.spread() / 100 * exchanged;
    double water = settled(estimate, spread) ? estimate : 0;
    BalancingLine target =
        BalancingLine.find(formula, Conserved.WATER, i -> true)
            .orElseThrow(
                () ->
                    new BakeryException(
                        Reason.MISSING,
                        "the dough has no liquid whose amount could be corrected",
                        formula.name(),
                        "add water or another liquid"));
    Formula after =
        formula
            .replace(
                (stage, line) -> {
                  if (line.ingredient().equals(from)) {
                    return split(line, to, part);
                  }
                  if (stage.equals(target.stage()) && line.equals(target.line())) {
                    return List.of(wetter(line, water));
                  }
                  return List.of(new Formula.Part(line.ingredient(), line.percent()));
                })
            .formula();
    return new FlourExchange(
        formula,
        requireNonNull(from, "from"),
        requireNonNull(to, "to"),
        Given.ratio("the share", share),
        after,
        PERCENT.amount(estimate * 100),
        PERCENT.amount(spread * 100),
        change.source());
  }

  private static boolean settled(double change, double spread) {
    return Math.abs(change) > spread || spread == 0;
  }

  /**
   * Whether more is known than that the two flours differ: whether the change is greater than its
   * uncertainty. If not, {@link #after()} has the water of before.
   *
   * @return whether the sign of the change can be told
   */
  public boolean settled() {
    return settled(waterChange.value(), uncertainty.value());
  }

  /**
   * How much of the water is best held back at the mixer, to be added by feel: what the estimate
   * takes away, at least a point of the exchanged flour. Nothing is held back of a settled change.
   *
   * @return water in points of the total flour
   */
  public Amount<Dimensionless> heldBack() {
    double little = LITTLE * share.in(FRACTION) * before.percent(from).in(FRACTION);
    return PERCENT.amount(settled() ? 0 : Math.max(little, -waterChange.in(PERCENT)));
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
                    line.ingredient().equals(from)
                        ? split(line, to, share.in(FRACTION))
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

  private static Formula.Part wetter(Line line, double water) {
    double share = line.percent().in(FRACTION);
    double wetness = line.ingredient().composition().fraction(Component.WATER);
    double changed = share + water / wetness;
    if (changed < 0) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "the dough has not enough " + line.ingredient().name() + " to take the water from",
          line.percent() + " of flour, " + PERCENT.amount(-water / wetness * 100) + " to be taken",
          "exchange a smaller part of the flour");
    }
    return new Formula.Part(line.ingredient(), PERCENT.amount(changed * 100));
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
            from.name()
                + " "
                + format.percent(PERCENT.amount(FlourFigures.protein(from)))
                + ", "
                + to.name()
                + " "
                + format.percent(PERCENT.amount(FlourFigures.protein(to))),
            "conservation of dry matter"),
        new WorkedLine(
            "Δ water",
            (source.equals(ProteinSlope.SOURCE)
                    ? "1.25 · ΔP14, whole grain +7.5"
                    : "difference of the absorptions")
                + (FlourFigures.isAverage(from) && FlourFigures.isAverage(to)
                    ? ", both bags equally moist"
                    : ", then to each flour's own moisture"),
            format.percent(waterChange) + " ± " + format.percent(uncertainty) + " of flour",
            source));
  }

  /**
   * {@code 100 % of the bread flour becomes cake flour: water -4.8 % ± 3.8 % of flour}, or, where
   * that is not settled, {@code … no change that can be told (± 3.7 % of flour); hold back a little
   * water, 2.3 % of flour}.
   */
  @Override
  public String toString() {
    AmountFormat format = AmountFormat.metric();
    String sign = waterChange.value() > 0 ? "+" : "";
    String spread = "± " + format.percent(uncertainty) + " of flour";
    return share.to(PERCENT)
        + " of the "
        + from.name()
        + " becomes "
        + to.name()
        + ": "
        + (settled()
            ? "water " + sign + format.percent(waterChange) + " " + spread
            : "no change that can be told ("
                + spread
                + "); hold back a little water, "
                + format.percent(heldBack())
                + " of flour");
  }
}
