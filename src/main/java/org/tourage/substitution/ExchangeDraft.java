package org.tourage.substitution;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.formula.Formula;
import org.tourage.formula.StageKind;
import org.tourage.ingredient.Component;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;

/** An exchange while it is worked out, by itself or with others at once. */
final class ExchangeDraft {
  private static final double OIL_SATURATED = 0.20;
  private static final double OIL_WATER = 0.01;

  private final Formula formula;
  private final Exchange wanted;
  private final Predicate<Ingredient> going;
  private final Set<Conserved> keep = EnumSet.noneOf(Conserved.class);
  private final Map<Conserved, String> lost = new EnumMap<>(Conserved.class);
  private Balance balance;

  ExchangeDraft(
      Formula formula, Exchange wanted, Set<Conserved> keep, Predicate<Ingredient> going) {
    check(formula, wanted.from(), wanted.to());
    this.formula = formula;
    this.wanted = wanted;
    this.going = going;
    this.keep.addAll(keep);
    this.balance = settled();
  }

  static ExchangeDraft usual(Formula formula, Exchange wanted, Predicate<Ingredient> going) {
    return new ExchangeDraft(formula, wanted, usual(formula, wanted.from()), going);
  }

  private boolean changesNothing() {
    return wanted.from().equals(wanted.to()) || wanted.part() == 0;
  }

  private Balance settled() {
    if (changesNothing()) {
      return new Balance(1, Map.of(), Map.of(), null, "");
    }
    for (Ingredient one : List.of(wanted.from(), wanted.to())) {
      for (Conserved component : Conserved.values()) {
        if (keep.contains(component) && !component.isKnownOf(one)) {
          keep.remove(component);
          lost.put(component, "it is not known of " + one.name());
        }
      }
    }
    Balance next = Balance.of(formula, wanted, keep, going);
    for (Conserved failed = next.failed(); failed != null; failed = next.failed()) {
      lost.put(failed, next.reason());
      keep.remove(failed);
      next = Balance.of(formula, wanted, keep, going);
    }
    return next;
  }

  void applyTo(LineChanges lines) {
    if (!changesNothing()) {
      balance.applyTo(lines, wanted);
    }
  }

  /** Gives up what a line would have to give that has not enough for all. */
  boolean giveUp(int line) {
    boolean gaveUp = false;
    for (Map.Entry<Conserved, Balance.Taker> entry : balance.takers().entrySet()) {
      Ingredient taker = entry.getValue().ingredient();
      if (entry.getValue().index() == line && taker != null) {
        keep.remove(entry.getKey());
        lost.put(
            entry.getKey(),
            "the formula has too little " + taker.name() + " to give for all exchanges at once");
        gaveUp = true;
      }
    }
    if (gaveUp) {
      balance = settled();
    }
    return gaveUp;
  }

  IngredientExchange result() {
    LineChanges lines = new LineChanges(formula);
    applyTo(lines);
    Formula after = changesNothing() ? formula : lines.formula();
    return new IngredientExchange(formula, wanted, after, balance.ratio(), keep, lost);
  }

  private static Set<Conserved> usual(Formula formula, Ingredient from) {
    if (from.is(Role.FAT)) {
      boolean inDough =
          formula.stages().stream()
              .filter(s -> s.kind().inDough())
              .flatMap(s -> s.lines().stream())
              .anyMatch(l -> l.ingredient().equals(from));
      return inDough
          ? EnumSet.of(Conserved.FAT, Conserved.WATER, Conserved.SALT)
          : EnumSet.of(Conserved.FAT, Conserved.SALT);
    } else if (from.is(Role.SUGAR)) {
      return EnumSet.of(Conserved.SUGARS, Conserved.WATER);
    } else if (from.is(Role.YEAST) || from.is(Role.SALT)) {
      return EnumSet.of(Conserved.WATER);
    }
    return EnumSet.of(Conserved.WATER, Conserved.FAT, Conserved.SUGARS);
  }

  private static void check(Formula formula, Ingredient from, Ingredient to) {
    boolean held = formula.lines().stream().anyMatch(l -> l.ingredient().equals(from));
    if (!held) {
      throw notHeld(formula, from, "what is");
    }
    if (from.is(Role.FLOUR) || to.is(Role.FLOUR)) {
      throw new BakeryException(
          Reason.MEANINGLESS,
          "a flour is exchanged for a flour",
          from.name() + " for " + to.name(),
          "use FlourExchange for two flours");
    }
    boolean oneIsSpecial =
        from.is(Role.FAT) != to.is(Role.FAT)
            || from.is(Role.YEAST) != to.is(Role.YEAST)
            || from.is(Role.SALT) != to.is(Role.SALT)
            || from.is(Role.LEAVENING) != to.is(Role.LEAVENING);
    if (oneIsSpecial) {
      throw new BakeryException(
          Reason.MEANINGLESS,
          "this can't take the place of that",
          to.name() + " for " + from.name(),
          "exchange a fat for a fat, a yeast for a yeast, and so on");
    }
    boolean rolledIn =
        formula.stages().stream()
            .filter(s -> s.kind() == StageKind.ROLL_IN)
            .flatMap(s -> s.lines().stream())
            .anyMatch(l -> l.ingredient().equals(from));
    if (rolledIn && isOil(to)) {
      throw new BakeryException(
          Reason.MEANINGLESS,
          "an oil can't be laminated",
          to.name(),
          "roll in a fat that is plastic when cold: butter, a pastry block, or a hard plant fat");
    }
  }

  /** The formula lacks what is to go, or has something else of that id. */
  static BakeryException notHeld(Formula formula, Ingredient from, String what) {
    boolean other = formula.lines().stream().anyMatch(l -> l.ingredient().sameIdAs(from));
    return new BakeryException(
        Reason.UNKNOWN_NAME,
        "the formula has none of " + what + " to be replaced",
        from.name() + (other ? ", but one of that id with another content" : ""),
        other ? "take formula.ingredient(\"" + from.id() + "\")" : "name one of its ingredients");
  }

  /** A fat without water with little saturated fat is liquid in the kitchen. */
  private static boolean isOil(Ingredient fat) {
    return fat.is(Role.FAT)
        && fat.composition().fraction(Component.WATER) < OIL_WATER
        && fat.composition().fraction(Component.SATURATED_FAT) < OIL_SATURATED;
  }
}
