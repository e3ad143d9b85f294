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
import org.tourage.formula.StageKind;
import org.tourage.ingredient.Allergen;
import org.tourage.ingredient.Component;
import org.tourage.ingredient.FlourSpecification;
import org.tourage.ingredient.Ingredient;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;

/**
 * One flour of a formula replaced by another, mass for mass, with the water corrected so that the
 * dough stays as stiff as it was.
 *
 * <p>The model: absorption at 14 % moisture rises by 1.25 points of water for each point of protein
 * at 14 % moisture, between 1 and 1.5 in practice; whole-grain flour takes 7.5 points more, between
 * 5 and 10 (common practice). A measured absorption, where both flours have one, is used instead.
 * The flour's own moisture counts: what a drier flour lacks is added as water, by conservation of
 * dry matter and total water. It is a model of wheat flours; with others it says so.
 *
 * <p>Conserved: the mass of flour and every line but the water. Immutable and serialisable.
 *
 * @param before the formula before
 * @param from the flour that goes
 * @param to the flour that comes
 * @param share the part of the flour that is exchanged
 * @param after the formula after
 * @param waterChange the change of the water, in points of the total flour
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
  private static final double WEAK_PROTEIN = 9;
  private static final double WEAKER_POINTS = 1;
  private static final double NEARLY_ALL = 0.75;

  /**
   * Replaces all of a flour.
   *
   * @param formula the formula
   * @param from the flour that goes; the formula must have it
   * @param to the flour that comes
   * @return the exchange
   * @throws BakeryException if the formula lacks the flour, one of them is no flour of known
   *     protein, or the dough has not enough water to give
   */
  public static FlourExchange of(Formula formula, Ingredient from, Ingredient to) {
    return of(formula, from, to, PERCENT.amount(100));
  }

  /**
   * Replaces a part of a flour.
   *
   * @param formula the formula
   * @param from the flour that goes; the formula must have it
   * @param to the flour that comes
   * @param share the part that is exchanged, 0 % to 100 %
   * @return the exchange
   * @throws BakeryException if the formula lacks the flour, one of them is no flour of known
   *     protein, the share can't be, or the dough has not enough water to give
   */
  public static FlourExchange of(
      Formula formula, Ingredient from, Ingredient to, Quantity<Dimensionless> share) {
    return exchange(formula, from, to, share, change(formula, from, to), Advice.COMMON_PRACTICE);
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
    AbsorptionModel.Estimate old = model.estimate(from);
    AbsorptionModel.Estimate fresh = model.estimate(to);
    double points = difference(model, from, to);
    double spread = Math.hypot(old.uncertainty().in(PERCENT), fresh.uncertainty().in(PERCENT));
    return exchange(
        formula, from, to, share, atOwnMoisture(formula, from, to, points, spread), fresh.source());
  }

  /**
   * Replaces several flours, one after another, each wholly.
   *
   * @param formula the formula
   * @param replacements what comes for each flour that goes, in the order of the map
   * @return the exchanges in order; the formula after the last one is the result
   * @throws BakeryException as for one flour, or if nothing is to be replaced
   */
  public static List<FlourExchange> several(
      Formula formula, Map<Ingredient, Ingredient> replacements) {
    if (replacements.isEmpty()) {
      throw new BakeryException(
          Reason.MISSING, "nothing is to be replaced", formula.name(), "name a flour that goes");
    }
    List<FlourExchange> exchanges = new ArrayList<>();
    Formula now = formula;
    for (Map.Entry<Ingredient, Ingredient> one : replacements.entrySet()) {
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
      Change change,
      String source) {
    double part = FRACTION.measure(share);
    if (part < 0 || part > 1) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "this part of a flour can't be exchanged",
          Amount.from(share).to(PERCENT).toString(),
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
    double water = from.equals(to) ? 0 : change.points / 100 * exchanged;
    double spread = from.equals(to) ? 0 : change.spread / 100 * exchanged;
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
        Amount.from(share),
        after,
        PERCENT.amount(water * 100),
        PERCENT.amount(spread * 100),
        source);
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

  private record Change(double points, double spread) {}

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

  private static Change change(Formula formula, Ingredient from, Ingredient to) {
    FlourSpecification old = FlourFigures.specification(from);
    FlourSpecification fresh = FlourFigures.specification(to);
    boolean measured = old.absorption().isPresent() && fresh.absorption().isPresent();
    AbsorptionModel model = measured ? new MeasuredAbsorption() : new ProteinSlope();
    double spread = measured ? 0 : ProteinSlope.spread(from, to);
    return atOwnMoisture(formula, from, to, difference(model, from, to), spread);
  }

  /** Points of water at 14 % moisture that the new flour takes more than the old one. */
  private static double difference(AbsorptionModel model, Ingredient from, Ingredient to) {
    return model.estimate(to).absorption().in(PERCENT)
        - model.estimate(from).absorption().in(PERCENT);
  }

  /** A difference at 14 % moisture as one of the flours as they are. */
  private static Change atOwnMoisture(
      Formula formula, Ingredient from, Ingredient to, double atReference, double spread) {
    FlourSpecification old = FlourFigures.specification(from);
    FlourSpecification fresh = FlourFigures.specification(to);
    Amount<Dimensionless> oldWater = formula.hydration().trueHydration();
    Amount<Dimensionless> oldAtReference =
        MoistureBasis.absorptionAt(oldWater, old.moisture(), FlourFigures.REFERENCE_MOISTURE);
    Amount<Dimensionless> newWater =
        MoistureBasis.absorptionAt(
            oldAtReference.add(PERCENT.amount(atReference)),
            FlourFigures.REFERENCE_MOISTURE,
            fresh.moisture());
    // a change at the reference moisture is diluted like a component
    Amount<Dimensionless> uncertainty =
        MoistureBasis.shareAt(
            PERCENT.amount(spread), FlourFigures.REFERENCE_MOISTURE, fresh.moisture());
    return new Change(newWater.subtract(oldWater).in(PERCENT), uncertainty.in(PERCENT));
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>();
    if (!isWheat(from) || !isWheat(to)) {
      advice.add(
          Advice.warning(
              "NOT_WHEAT",
              "the water correction is a model of wheat flours; "
                  + (isWheat(to) ? from : to).name()
                  + " is none",
              "Take the figure as a first trial and correct by feel",
              Advice.COMMON_PRACTICE));
    }
    boolean gluten =
        to.allergens().stream()
            .anyMatch(a -> a == Allergen.WHEAT || a == Allergen.RYE || a == Allergen.BARLEY);
    if (!gluten && share.value() > 0) {
      advice.add(
          Advice.warning(
              "NO_GLUTEN",
              to.name()
                  + " has no gluten: a dough of it alone holds no gas and can't be rolled thin",
              "Exchange at most a quarter, or use a recipe made for it with a binder; it is no"
                  + " claim of gluten-free",
              Advice.COMMON_PRACTICE));
    } else if (to.allergens().contains(Allergen.RYE)) {
      advice.add(
          Advice.note(
              "RYE",
              to.name() + " thickens by its pentosans, not by gluten",
              "Mix gently, expect a stickier dough and a shorter rise; above a third of rye work"
                  + " with sourdough",
              Advice.COMMON_PRACTICE));
    } else if (FlourFigures.isWholeGrain(to) && !FlourFigures.isWholeGrain(from)) {
      advice.add(
          Advice.note(
              "WHOLE_GRAIN",
              to.name() + " takes its water slowly, and its bran cuts the gluten",
              "Rest it wet before mixing, mix less, and expect a shorter fermentation tolerance",
              Advice.COMMON_PRACTICE));
    } else if (FlourFigures.protein(from) - FlourFigures.protein(to) > WEAKER_POINTS) {
      advice.add(
          Advice.note(
              "FLOUR_WEAKER",
              to.name() + " is weaker than " + from.name(),
              "Mix for less time and let it rise for less",
              Advice.COMMON_PRACTICE));
    }
    double protein = to.flour().orElseThrow().protein().in(PERCENT);
    boolean rolledIn = after.stages().stream().anyMatch(s -> s.kind() == StageKind.ROLL_IN);
    if (protein < WEAK_PROTEIN && isWheat(to)) {
      advice.add(
          Advice.warning(
              "FLOUR_WEAK",
              to.name()
                  + " has "
                  + AmountFormat.metric().percent(PERCENT.amount(protein))
                  + " protein"
                  + (rolledIn ? ", too little to be rolled thin without tearing" : ""),
              rolledIn && share.in(FRACTION) > NEARLY_ALL
                  ? "This can't work as a laminated dough: exchange at most a half, or add gluten"
                  : "Exchange a part only, or add some strong flour",
              Advice.COMMON_PRACTICE));
    }
    if (uncertainty.value() > 2) {
      advice.add(
          Advice.note(
              "WATER_UNCERTAIN",
              "the water correction may be off by "
                  + AmountFormat.metric().percent(uncertainty)
                  + " of flour",
              "Hold part of the water back and add it by feel",
              Advice.COMMON_PRACTICE));
    }
    return advice;
  }

  private static boolean isWheat(Ingredient flour) {
    return flour.allergens().contains(Allergen.WHEAT);
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
            source.equals(Advice.COMMON_PRACTICE)
                ? "1.25 · ΔP14, whole grain +7.5, then to each flour's own moisture"
                : "difference of the absorptions, then to each flour's own moisture",
            format.percent(waterChange) + " ± " + format.percent(uncertainty) + " of flour",
            source));
  }

  /** {@code bread flour → all-purpose flour: water −1.2 % ± 0.4 % of flour}. */
  @Override
  public String toString() {
    AmountFormat format = AmountFormat.metric();
    String sign = waterChange.value() > 0 ? "+" : "";
    return share.to(PERCENT)
        + " of the "
        + from.name()
        + " becomes "
        + to.name()
        + ": water "
        + sign
        + format.percent(waterChange)
        + " ± "
        + format.percent(uncertainty)
        + " of flour";
  }
}
