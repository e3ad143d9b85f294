package org.tourage.substitution;

import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.tourage.advice.Advice;
import org.tourage.formula.StageKind;
import org.tourage.ingredient.Allergen;
import org.tourage.ingredient.Ingredient;
import org.tourage.quantity.AmountFormat;

/** What is unwise about an exchange of flours. */
final class FlourAdvice {
  private static final double WEAK_PROTEIN = 9;
  private static final double WEAKER_POINTS = 1;
  private static final double NEARLY_ALL = 0.75;

  private FlourAdvice() {}

  static List<Advice> of(FlourExchange exchange) {
    List<Advice> advice = new ArrayList<>();
    boolean any = exchange.share().value() > 0 && !exchange.from().equals(exchange.to());
    if (any) {
      gluten(exchange.to()).ifPresent(advice::add);
      kind(exchange.from(), exchange.to()).ifPresent(advice::add);
      weak(exchange).ifPresent(advice::add);
      water(exchange).ifPresent(advice::add);
    }
    return advice;
  }

  /** Barley, oat and rye have gluten that holds no gas; the rest without wheat has none. */
  private static Optional<Advice> gluten(Ingredient to) {
    if (to.allergens().contains(Allergen.WHEAT)) {
      return Optional.empty();
    }
    boolean related =
        to.allergens().stream()
            .anyMatch(a -> a == Allergen.RYE || a == Allergen.BARLEY || a == Allergen.OAT);
    return Optional.of(
        related
            ? Advice.of(
                "GLUTEN_HOLDS_NO_GAS",
                to.name()
                    + " counts as a cereal with gluten, but it makes no film that holds gas: a dough"
                    + " of it alone rises little and can't be rolled thin",
                "Exchange at most a quarter, or use a recipe made for it; it is not free of gluten")
            : Advice.of(
                "NO_GLUTEN",
                to.name()
                    + " has no gluten: a dough of it alone holds no gas and can't be rolled thin",
                "Exchange at most a quarter, or use a recipe made for it with a binder; it is no"
                    + " claim of gluten-free"));
  }

  private static Optional<Advice> kind(Ingredient from, Ingredient to) {
    if (to.allergens().contains(Allergen.RYE)) {
      return Optional.of(
          Advice.of(
              "RYE",
              to.name() + " thickens by its pentosans, not by gluten",
              "Mix gently, expect a stickier dough and a shorter rise; above a third of rye work"
                  + " with sourdough"));
    }
    if (FlourFigures.isWholeGrain(to) && !FlourFigures.isWholeGrain(from)) {
      return Optional.of(
          Advice.of(
              "WHOLE_GRAIN",
              to.name() + " takes its water slowly, and its bran cuts the gluten",
              "Rest it wet before mixing, mix less, and expect a shorter fermentation tolerance"));
    }
    boolean wheats = FlourFigures.isWheat(from) && FlourFigures.isWheat(to);
    return wheats && FlourFigures.protein(from) - FlourFigures.protein(to) > WEAKER_POINTS
        ? Optional.of(
            Advice.of(
                "FLOUR_WEAKER",
                to.name() + " is weaker than " + from.name(),
                "Mix for less time and let it rise for less"))
        : Optional.empty();
  }

  private static Optional<Advice> weak(FlourExchange exchange) {
    Ingredient to = exchange.to();
    double protein = FlourFigures.specification(to).protein().in(PERCENT);
    if (protein >= WEAK_PROTEIN || !FlourFigures.isWheat(to)) {
      return Optional.empty();
    }
    boolean rolledIn =
        exchange.after().stages().stream().anyMatch(s -> s.kind() == StageKind.ROLL_IN);
    return Optional.of(
        Advice.of(
            "FLOUR_WEAK",
            to.name()
                + " has "
                + AmountFormat.metric().percent(PERCENT.amount(protein))
                + " protein"
                + (rolledIn ? ", too little to be rolled thin without tearing" : ""),
            rolledIn && exchange.share().in(FRACTION) > NEARLY_ALL
                ? "This can't work as a laminated dough: exchange at most a half, or add gluten"
                : "Exchange a part only, or add some strong flour"));
  }

  private static Optional<Advice> water(FlourExchange exchange) {
    AmountFormat format = AmountFormat.metric();
    if (!exchange.settled()) {
      return Optional.of(
          Advice.of(
              "WATER_NOT_SETTLED",
              "no change of the water can be told: the moisture of the bags and the scatter between"
                  + " flours leave "
                  + format.percent(exchange.uncertainty())
                  + " of flour open either way",
              "Weigh the water as before, hold back a little of it ("
                  + format.percent(exchange.heldBack())
                  + " of flour) and add it by feel; a mill's absorption of both flours tells more",
              exchange.source()));
    }
    return exchange.uncertainty().in(PERCENT) > 2
        ? Optional.of(
            Advice.of(
                "WATER_UNCERTAIN",
                "the water correction may be off by "
                    + format.percent(exchange.uncertainty())
                    + " of flour",
                "Hold part of the water back and add it by feel",
                exchange.source()))
        : Optional.empty();
  }
}
