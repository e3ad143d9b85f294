package org.tourage.substitution;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.FRACTION;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.formula.Formula;
import org.tourage.formula.Line;
import org.tourage.formula.Stage;
import org.tourage.formula.StageKind;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;
import org.tourage.ingredient.YeastForm;
import org.tourage.internal.LinearEquations;

/**
 * How much of the new ingredient comes for the old one, and which lines take up the difference of
 * what is to be kept.
 *
 * @param ratio how much of the new one stands for one of the old
 * @param takers the line, or what is added, that takes up the difference of each component
 * @param changes by how much each taker changes, in shares of the total flour
 * @param failed what can't be kept, if something can't
 * @param reason why not
 */
record Balance(
    double ratio,
    Map<Conserved, Taker> takers,
    Map<Conserved, Double> changes,
    @Nullable Conserved failed,
    String reason) {

  /** A line of the formula, or, with index −1, an ingredient that is added to it. */
  record Taker(int index, @Nullable Ingredient ingredient, double has) {
    double content(Conserved component) {
      return ingredient == null ? 0 : component.of(ingredient);
    }
  }

  private static Balance failing(Conserved component, Taker taker) {
    return new Balance(
        1,
        Map.of(),
        Map.of(),
        component,
        taker.ingredient == null
            ? "no line of the formula can take it up"
            : "the formula has too little " + taker.ingredient.name() + " to give");
  }

  /** What leads: how much of the new one there is follows from it. */
  static Optional<Conserved> lead(Ingredient from, Ingredient to) {
    if (from.is(Role.FAT)) {
      return Optional.of(Conserved.FAT);
    } else if (from.is(Role.SUGAR) && to.is(Role.SUGAR)) {
      return Optional.of(Conserved.SUGARS);
    } else if (from.is(Role.YEAST)) {
      return Optional.empty();
    }
    boolean wet = Conserved.WATER.of(from) > 0.1 && Conserved.WATER.of(to) > 0.1;
    return wet ? Optional.of(Conserved.WATER) : Optional.empty();
  }

  /**
   * Balances one exchange.
   *
   * @param going whether an ingredient goes, in this exchange or in another at once
   */
  static Balance of(
      Formula formula, Exchange exchange, Set<Conserved> wanted, Predicate<Ingredient> going) {
    Ingredient from = exchange.from();
    Ingredient to = exchange.to();
    double inPiece = held(formula, from, StageKind::inPiece);
    double inDough = held(formula, from, StageKind::inDough);
    if (inPiece == 0) {
      // what is on the piece only is exchanged by itself; the dough stays as it is
      return new Balance(given(from, to), Map.of(), Map.of(), null, "");
    }
    Optional<Conserved> lead = lead(from, to);
    List<Conserved> kept = new ArrayList<>(wanted);
    boolean leads = lead.isPresent() && kept.contains(lead.get());
    Map<Conserved, Taker> takers = new EnumMap<>(Conserved.class);
    for (Conserved component : kept) {
      if (!leads || component != lead.get()) {
        takers.put(component, taker(formula, component, i -> going.test(i) || i.equals(to)));
      }
    }
    List<Conserved> taken = new ArrayList<>(takers.keySet());
    // unknown: how much of the new one for the old, then each taker; without a lead it is given
    int n = kept.size() + (leads ? 0 : 1);
    double[][] matrix = new double[n][n + 1];
    for (int row = 0; row < kept.size(); row++) {
      Conserved component = kept.get(row);
      // the water of the layers is no water of the dough, unless the fat is in the layers only
      boolean dough = component == Conserved.WATER && inDough > 0;
      double old = exchange.part() * (dough ? inDough : inPiece);
      matrix[row][0] = old * component.of(to);
      for (int h = 0; h < taken.size(); h++) {
        matrix[row][h + 1] = requireNonNull(takers.get(taken.get(h))).content(component);
      }
      matrix[row][n] = old * component.of(from);
    }
    if (!leads) {
      matrix[n - 1][0] = 1;
      matrix[n - 1][n] = given(from, to);
    }
    double[] x = LinearEquations.solve(matrix);
    Map<Conserved, Double> changes = new EnumMap<>(Conserved.class);
    for (int h = 0; h < taken.size(); h++) {
      Taker taker = requireNonNull(takers.get(taken.get(h)));
      double change = x[h + 1];
      if (Double.isNaN(change) || taker.has + change < -LineChanges.NOTHING) {
        return failing(taken.get(h), taker);
      } else if (Math.abs(change) > LineChanges.NOTHING && taker.ingredient != null) {
        changes.put(taken.get(h), change);
      }
    }
    if (!(x[0] > 0)) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "no amount of the new one keeps what is to be kept",
          to.name() + " for " + from.name(),
          "keep less");
    }
    return new Balance(x[0], takers, changes, null, "");
  }

  private static double held(Formula formula, Ingredient wanted, Predicate<StageKind> where) {
    double sum = 0;
    for (Stage stage : formula.stages()) {
      for (Line line : stage.lines()) {
        boolean it = where.test(stage.kind()) && line.ingredient().equals(wanted);
        sum += it ? line.percent().in(FRACTION) : 0;
      }
    }
    return sum;
  }

  /** How much of the new one for one of the old where the leading component is not kept. */
  private static double given(Ingredient from, Ingredient to) {
    if (from.is(Role.YEAST)) {
      return YeastForm.of(to).orElseThrow().perFresh()
          / YeastForm.of(from).orElseThrow().perFresh();
    }
    return lead(from, to).map(c -> c.of(from) / c.of(to)).filter(Double::isFinite).orElse(1.0);
  }

  private static Taker taker(Formula formula, Conserved component, Predicate<Ingredient> excluded) {
    BalancingLine found = BalancingLine.find(formula, component, excluded.negate()).orElse(null);
    if (found != null) {
      Line line = found.line();
      return new Taker(found.index(), line.ingredient(), line.percent().in(FRACTION));
    }
    // nothing there: water, sugar and salt can be added, fat can't be guessed
    String id =
        switch (component) {
          case WATER -> "water";
          case SUGARS -> "granulated-sugar";
          case SALT -> "salt";
          case FAT -> "";
        };
    Ingredient added = id.isEmpty() ? null : Catalogue.builtIn().require(id);
    return new Taker(-1, added == null || excluded.test(added) ? null : added, 0);
  }

  /** Does the exchange to the lines of the formula. */
  void applyTo(LineChanges lines, Exchange exchange) {
    lines.exchange(exchange, ratio);
    changes.forEach(
        (component, change) -> {
          Taker taker = takers.get(component);
          if (taker != null && taker.index >= 0) {
            lines.change(taker.index, change);
          } else if (taker != null && taker.ingredient != null) {
            lines.add(taker.ingredient, change);
          }
        });
  }
}
