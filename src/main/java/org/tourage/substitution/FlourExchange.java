package org.tourage.substitution;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.formula.Formula;
import org.tourage.formula.Line;
import org.tourage.formula.Stage;
import org.tourage.formula.StageKind;
import org.tourage.ingredient.Allergen;
import org.tourage.ingredient.Component;
import org.tourage.ingredient.FlourSpecification;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;
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
 */
public record FlourExchange(
    Formula before,
    Ingredient from,
    Ingredient to,
    Amount<Dimensionless> share,
    Formula after,
    Amount<Dimensionless> waterChange,
    Amount<Dimensionless> uncertainty)
    implements Explained, Serializable {
  private static final double POINTS_PER_PROTEIN = 1.25;
  private static final double POINTS_PER_PROTEIN_SPREAD = 0.25;
  private static final double WHOLE_GRAIN_POINTS = 7.5;
  private static final double WHOLE_GRAIN_SPREAD = 2.5;
  private static final double WHOLE_GRAIN_FIBRE = 0.08;
  private static final Amount<Dimensionless> REFERENCE_MOISTURE = PERCENT.amount(14);
  private static final double WEAK_PROTEIN = 9;

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
    Change change = change(formula, from, to);
    double exchanged = part * held;
    double water = from.equals(to) ? 0 : change.points / 100 * exchanged;
    double spread = from.equals(to) ? 0 : change.spread / 100 * exchanged;
    WaterLine target = waterLine(formula);
    Formula after =
        formula
            .replace(
                (stage, line) -> {
                  if (line.ingredient().equals(from)) {
                    return split(line, to, part);
                  }
                  if (stage.equals(target.stage) && line.equals(target.line)) {
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
        PERCENT.amount(spread * 100));
  }

  private record Change(double points, double spread) {}

  private record WaterLine(Stage stage, Line line) {}

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

  /** The wettest liquid of the final dough, or of any stage of the dough. */
  private static WaterLine waterLine(Formula formula) {
    WaterLine best = null;
    for (Stage stage : formula.stages()) {
      for (Line line : stage.lines()) {
        boolean liquid = stage.kind().inDough() && line.ingredient().is(Role.LIQUID);
        if (liquid && (best == null || better(stage, line, best))) {
          best = new WaterLine(stage, line);
        }
      }
    }
    if (best == null) {
      throw new BakeryException(
          Reason.MISSING,
          "the dough has no liquid whose amount could be corrected",
          formula.name(),
          "add water or another liquid");
    }
    return best;
  }

  private static boolean better(Stage stage, Line line, WaterLine than) {
    boolean isFinal = stage.kind() == StageKind.FINAL_DOUGH;
    boolean wasFinal = than.stage.kind() == StageKind.FINAL_DOUGH;
    if (isFinal != wasFinal) {
      return isFinal;
    }
    return wetness(line) > wetness(than.line);
  }

  private static double wetness(Line line) {
    return line.ingredient().composition().fraction(Component.WATER);
  }

  private static Change change(Formula formula, Ingredient from, Ingredient to) {
    FlourSpecification old = specification(from);
    FlourSpecification fresh = specification(to);
    double atReference;
    double spread;
    if (old.absorption().isPresent() && fresh.absorption().isPresent()) {
      atReference =
          fresh.absorption().orElseThrow().in(PERCENT) - old.absorption().orElseThrow().in(PERCENT);
      spread = 0;
    } else {
      double protein = protein14(fresh) - protein14(old);
      double grain = (isWholeGrain(to) ? 1 : 0) - (isWholeGrain(from) ? 1 : 0);
      atReference = POINTS_PER_PROTEIN * protein + WHOLE_GRAIN_POINTS * grain;
      spread = POINTS_PER_PROTEIN_SPREAD * Math.abs(protein) + WHOLE_GRAIN_SPREAD * Math.abs(grain);
    }
    Amount<Dimensionless> oldWater = formula.hydration().trueHydration();
    Amount<Dimensionless> oldAtReference =
        MoistureBasis.absorptionAt(oldWater, old.moisture(), REFERENCE_MOISTURE);
    Amount<Dimensionless> newWater =
        MoistureBasis.absorptionAt(
            oldAtReference.add(PERCENT.amount(atReference)), REFERENCE_MOISTURE, fresh.moisture());
    // a change at the reference moisture is diluted like a component
    Amount<Dimensionless> uncertainty =
        MoistureBasis.shareAt(PERCENT.amount(spread), REFERENCE_MOISTURE, fresh.moisture());
    return new Change(newWater.subtract(oldWater).in(PERCENT), uncertainty.in(PERCENT));
  }

  private static FlourSpecification specification(Ingredient flour) {
    return flour
        .flour()
        .orElseThrow(
            () ->
                new BakeryException(
                    Reason.MISSING,
                    "the protein of this flour is not known",
                    flour.name(),
                    "use a flour, or build one with Ingredient.builder(…).flour(…)"));
  }

  private static double protein14(FlourSpecification flour) {
    return MoistureBasis.shareAt(flour.protein(), flour.moisture(), REFERENCE_MOISTURE).in(PERCENT);
  }

  private static boolean isWholeGrain(Ingredient flour) {
    return flour.composition().fraction(Component.FIBRE) > WHOLE_GRAIN_FIBRE;
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
              "Exchange a part only, or add some strong flour",
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
    FlourSpecification old = specification(from);
    FlourSpecification fresh = specification(to);
    AmountFormat format = AmountFormat.metric();
    return Working.of(
        new WorkedLine(
            "P14",
            "P · (100 − 14) / (100 − M)",
            from.name()
                + " "
                + format.percent(PERCENT.amount(protein14(old)))
                + ", "
                + to.name()
                + " "
                + format.percent(PERCENT.amount(protein14(fresh))),
            "conservation of dry matter"),
        new WorkedLine(
            "Δ water",
            "1.25 · ΔP14, whole grain +7.5, then to each flour's own moisture",
            format.percent(waterChange) + " ± " + format.percent(uncertainty) + " of flour",
            Advice.COMMON_PRACTICE));
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
