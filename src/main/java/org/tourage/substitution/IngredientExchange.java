package org.tourage.substitution;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
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
import org.tourage.formula.Stage;
import org.tourage.formula.StageKind;
import org.tourage.formula.Totals;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Component;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;
import org.tourage.ingredient.YeastForm;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Given;

/**
 * One ingredient of a formula replaced by another, flours apart ({@link FlourExchange}): a fat by
 * its fat, a sugar or syrup by its sugars, yeast by its form, anything else by its water. What else
 * is to be kept is balanced by lines of the formula: water by the wettest liquid, sugars by the
 * sweetest sugar, salt by the salt, fat by the fattest fat; where there is no such line, water,
 * sugar or salt is added. A fat of the roll-in keeps fat and salt, not water: the water of the
 * layers is no water of the dough.
 *
 * <p>Sugars that the table does not know are counted as none. Immutable.
 *
 * @param before the formula before
 * @param from what goes
 * @param to what comes
 * @param share the part that is exchanged
 * @param after the formula after
 * @param ratio how much of the new one stands for one of the old
 * @param conserved what was kept
 * @param lost what was to be kept and could not be, and why
 */
public record IngredientExchange(
    Formula before,
    Ingredient from,
    Ingredient to,
    Amount<Dimensionless> share,
    Formula after,
    double ratio,
    Set<Conserved> conserved,
    Map<Conserved, String> lost)
    implements Substitution {
  private static final double NOTHING = 1e-12;
  private static final double OIL_SATURATED = 0.20;
  private static final double OIL_WATER = 0.01;
  private static final double LEAN_BLOCK = 0.78;

  /** Sweetness by mass, sucrose 1, of what is used in place of sugar (from memory). */
  private static final Map<String, Double> SWEETNESS =
      Map.of(
          "granulated-sugar", 1.0,
          "honey", 1.0,
          "agave-syrup", 1.1,
          "maple-syrup", 0.6,
          "molasses", 0.6,
          "malt-syrup", 0.35,
          "corn-syrup-light", 0.4,
          "brown-sugar", 0.97);

  /** Syrups with invert or reducing sugars, which brown sooner (common practice). */
  private static final Set<String> BROWNING =
      Set.of("honey", "agave-syrup", "molasses", "malt-syrup", "corn-syrup-light");

  /**
   * Copies the collections.
   *
   * @param before the formula before
   * @param from what goes
   * @param to what comes
   * @param share the part that is exchanged
   * @param after the formula after
   * @param ratio how much of the new one stands for one of the old
   * @param conserved what was kept
   * @param lost what was to be kept and could not be, and why
   */
  public IngredientExchange {
    requireNonNull(before, "before");
    requireNonNull(from, "from");
    requireNonNull(to, "to");
    requireNonNull(share, "share");
    requireNonNull(after, "after");
    conserved = Collections.unmodifiableSet(new LinkedHashSet<>(conserved));
    lost = Collections.unmodifiableMap(new LinkedHashMap<>(lost));
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
    return of(formula, from, to, PERCENT.amount(100), usual(formula, from));
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
    double part = FRACTION.measure("the share", share);
    check(formula, from, to, part);
    Set<Conserved> wanted = keep.isEmpty() ? EnumSet.noneOf(Conserved.class) : EnumSet.copyOf(keep);
    Map<Conserved, String> lost = new EnumMap<>(Conserved.class);
    if (from.equals(to) || part == 0) {
      return new IngredientExchange(
          formula, from, to, Given.ratio("the share", share), formula, 1, wanted, lost);
    }
    Plan plan = plan(formula, from, to, part, wanted);
    while (plan.failed != null) {
      lost.put(plan.failed, plan.reason);
      wanted.remove(plan.failed);
      plan = plan(formula, from, to, part, wanted);
    }
    Plan settled = plan;
    boolean[] added = {false};
    Stage host = host(formula);
    Formula after =
        formula
            .replace(
                (stage, line) -> {
                  List<Formula.Part> parts = new ArrayList<>();
                  boolean old = line.ingredient().equals(from);
                  double kept = line.percent().in(FRACTION) * (old ? 1 - part : 1);
                  kept += settled.change(stage, line);
                  if (kept > NOTHING) {
                    parts.add(new Formula.Part(line.ingredient(), PERCENT.amount(100 * kept)));
                  }
                  if (old) {
                    double amount = line.percent().in(FRACTION) * part * settled.ratio;
                    parts.add(new Formula.Part(to, PERCENT.amount(100 * amount)));
                  }
                  if (stage.equals(host) && !added[0]) {
                    added[0] = true;
                    settled.additions.forEach(
                        (ingredient, amount) ->
                            parts.add(new Formula.Part(ingredient, PERCENT.amount(100 * amount))));
                  }
                  return parts;
                })
            .formula();
    return new IngredientExchange(
        formula, from, to, Given.ratio("the share", share), after, settled.ratio, wanted, lost);
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

  private static void check(Formula formula, Ingredient from, Ingredient to, double part) {
    if (!(part >= 0) || part > 1) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "this part of an ingredient can't be exchanged",
          PERCENT.amount(100 * part).toString(),
          "give 0 % to 100 %");
    }
    boolean held = formula.lines().stream().anyMatch(l -> l.ingredient().equals(from));
    if (!held) {
      throw new BakeryException(
          Reason.UNKNOWN_NAME,
          "the formula has none of what is to be replaced",
          from.name(),
          "name one of its ingredients");
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

  /** A fat without water with little saturated fat is liquid in the kitchen. */
  private static boolean isOil(Ingredient fat) {
    return fat.is(Role.FAT)
        && fat.composition().fraction(Component.WATER) < OIL_WATER
        && fat.composition().fraction(Component.SATURATED_FAT) < OIL_SATURATED;
  }

  private static Stage host(Formula formula) {
    return formula.stages().stream()
        .filter(s -> s.kind() == StageKind.FINAL_DOUGH && !s.lines().isEmpty())
        .findFirst()
        .orElse(formula.stages().get(0));
  }

  /** How the exchange is to be balanced, or what can't be kept. */
  private record Plan(
      double ratio,
      Map<Stage, Map<Line, Double>> changes,
      Map<Ingredient, Double> additions,
      @Nullable Conserved failed,
      String reason) {
    double change(Stage stage, Line line) {
      return changes.getOrDefault(stage, Map.of()).getOrDefault(line, 0.0);
    }
  }

  private static Optional<Conserved> lead(Ingredient from, Ingredient to) {
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

  private static Plan plan(
      Formula formula, Ingredient from, Ingredient to, double part, Set<Conserved> wanted) {
    double inPiece = held(formula, from, StageKind::inPiece);
    double inDough = held(formula, from, StageKind::inDough);
    if (inPiece == 0) {
      // what is on the piece only is exchanged by itself; the dough stays as it is
      return new Plan(given(from, to), Map.of(), Map.of(), null, "");
    }
    Optional<Conserved> lead = lead(from, to);
    List<Conserved> kept = new ArrayList<>(wanted);
    boolean leads = lead.isPresent() && kept.contains(lead.get());
    List<Helper> helpers = new ArrayList<>();
    for (Conserved component : kept) {
      if (leads && component == lead.get()) {
        continue;
      }
      helpers.add(helper(formula, from, to, component));
    }
    // unknown: how much of the new one for the old, then each helper; without a lead it is given
    int n = kept.size() + (leads ? 0 : 1);
    double[][] matrix = new double[n][n + 1];
    for (int row = 0; row < kept.size(); row++) {
      Conserved component = kept.get(row);
      // the water of the layers is no water of the dough, unless the fat is in the layers only
      boolean dough = component == Conserved.WATER && inDough > 0;
      double old = part * (dough ? inDough : inPiece);
      matrix[row][0] = old * component.of(to);
      for (int h = 0; h < helpers.size(); h++) {
        matrix[row][h + 1] = helpers.get(h).content(component);
      }
      matrix[row][n] = old * component.of(from);
    }
    if (!leads) {
      matrix[n - 1][0] = 1;
      matrix[n - 1][n] = given(from, to);
    }
    double[] x = gauss(matrix);
    Map<Stage, Map<Line, Double>> changes = new LinkedHashMap<>();
    Map<Ingredient, Double> additions = new LinkedHashMap<>();
    for (int h = 0; h < helpers.size(); h++) {
      Helper helper = helpers.get(h);
      double change = x[h + 1];
      double left = helper.has + change;
      if (Double.isNaN(change) || left < -NOTHING) {
        return new Plan(
            1,
            Map.of(),
            Map.of(),
            helper.component,
            helper.ingredient == null
                ? "no line of the formula can take it up"
                : "the formula has too little " + helper.ingredient.name() + " to give");
      } else if (Math.abs(change) > NOTHING && helper.line != null && helper.stage != null) {
        changes
            .computeIfAbsent(helper.stage, s -> new LinkedHashMap<>())
            .merge(helper.line, change, Double::sum);
      } else if (Math.abs(change) > NOTHING && helper.ingredient != null) {
        additions.merge(helper.ingredient, change, Double::sum);
      }
    }
    if (!(x[0] > 0)) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "no amount of the new one keeps what is to be kept",
          to.name() + " for " + from.name(),
          "keep less");
    }
    return new Plan(x[0], changes, additions, null, "");
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

  /** A line that takes up the difference of one component. */
  private record Helper(
      Conserved component,
      @Nullable Stage stage,
      @Nullable Line line,
      @Nullable Ingredient ingredient,
      double has) {
    double content(Conserved other) {
      return ingredient == null ? 0 : other.of(ingredient);
    }
  }

  private static Helper helper(
      Formula formula, Ingredient from, Ingredient to, Conserved component) {
    BalancingLine found =
        BalancingLine.find(formula, component, i -> !i.equals(from) && !i.equals(to)).orElse(null);
    if (found != null) {
      Line line = found.line();
      return new Helper(
          component, found.stage(), line, line.ingredient(), line.percent().in(FRACTION));
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
    boolean itself = added != null && (added.equals(from) || added.equals(to));
    return new Helper(component, null, null, itself ? null : added, 0);
  }

  /** Elimination with pivots; NaN where a column is of no use. */
  private static double[] gauss(double[][] m) {
    int n = m.length;
    int[] rowOf = new int[n];
    Arrays.fill(rowOf, -1);
    boolean[] used = new boolean[n];
    for (int c = 0; c < n; c++) {
      int pivot = -1;
      for (int r = 0; r < n; r++) {
        boolean larger = pivot < 0 || Math.abs(m[r][c]) > Math.abs(m[pivot][c]);
        pivot = !used[r] && Math.abs(m[r][c]) > NOTHING && larger ? r : pivot;
      }
      if (pivot < 0) {
        continue;
      }
      used[pivot] = true;
      rowOf[c] = pivot;
      for (int r = 0; r < n; r++) {
        double factor = r == pivot ? 0 : m[r][c] / m[pivot][c];
        for (int k = c; k <= n && factor != 0; k++) {
          m[r][k] -= factor * m[pivot][k];
        }
      }
    }
    double[] x = new double[n];
    for (int c = 0; c < n; c++) {
      // a helper without content is needed only if an equation is left over
      x[c] = rowOf[c] < 0 ? leftOver(m, used) : m[rowOf[c]][n] / m[rowOf[c]][c];
    }
    return x;
  }

  private static double leftOver(double[][] m, boolean[] used) {
    for (int r = 0; r < m.length; r++) {
      if (!used[r] && Math.abs(m[r][m.length]) > NOTHING) {
        return Double.NaN;
      }
    }
    return 0;
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>();
    lost.forEach(
        (component, reason) ->
            advice.add(
                Advice.warning(
                    "NOT_CONSERVED",
                    "the " + component.word() + " could not be kept: " + reason,
                    "See the comparison, and correct by hand",
                    "conservation of mass")));
    double protein =
        Totals.of(after).protein().in(PERCENT) - Totals.of(before).protein().in(PERCENT);
    if (from.is(Role.EGG) && !to.is(Role.EGG)) {
      advice.add(
          Advice.warning(
              "EGG_GONE",
              "the binding, lift and colour of egg are not replaced, and the protein changes by "
                  + Numbers.decimals(protein, 1)
                  + " % of flour",
              "Expect a paler, less tender crumb; try a small dough first",
              Advice.COMMON_PRACTICE));
    }
    if (to.is(Role.SUGAR)) {
      sweetness(advice);
    }
    boolean rolledIn =
        after.stages().stream()
            .filter(s -> s.kind() == StageKind.ROLL_IN)
            .flatMap(s -> s.lines().stream())
            .anyMatch(l -> l.ingredient().equals(to));
    if (rolledIn && Conserved.FAT.of(to) < LEAN_BLOCK) {
      advice.add(
          Advice.note(
              "ROLL_IN_LEAN",
              to.name()
                  + " has "
                  + AmountFormat.metric().percent(PERCENT.amount(100 * Conserved.FAT.of(to)))
                  + " fat: more of it is rolled in, and more of its water turns to steam",
              "Keep it colder, roll gently, and look up its solid-fat curve before you set the bench time",
              Advice.COMMON_PRACTICE));
    }
    advice.addAll(AllergenChange.advice(before, after));
    return advice;
  }

  private void sweetness(List<Advice> advice) {
    Double old = SWEETNESS.get(from.id());
    Double fresh = SWEETNESS.get(to.id());
    if (old != null && fresh != null && !from.equals(to)) {
      advice.add(
          Advice.note(
              "SWEETNESS",
              to.name()
                  + " is about "
                  + fresh
                  + " times as sweet as sugar by mass, "
                  + from.name()
                  + " about "
                  + old
                  + "; the exchange makes it "
                  + Numbers.decimals(100 * (ratio * fresh / old - 1), 0)
                  + " % sweeter (a minus for less)",
              "Taste decides; a table can't know it",
              "common sweetness tables (from memory)"));
    }
    if (BROWNING.contains(to.id()) && !BROWNING.contains(from.id())) {
      advice.add(
          Advice.note(
              "BROWNS_SOONER",
              to.name() + " browns sooner than sugar and keeps the crumb moist",
              "Lower the oven by 10 to 15 K (18 to 27 °F) and look earlier",
              Advice.COMMON_PRACTICE));
    }
  }

  @Override
  public Working working() {
    List<WorkedLine> lines = new ArrayList<>();
    lines.add(
        new WorkedLine(
            to.name() + " for 1 of " + from.name(),
            lead(from, to).map(c -> c.word() + " kept").orElse("by form or mass"),
            Numbers.significant(ratio, 4),
            from.is(Role.YEAST) ? "J. Hamelman, Bread, 2004" : "composition of the two"));
    for (Line line : after.overall()) {
      double was =
          before.overall().stream()
              .filter(l -> l.ingredient().equals(line.ingredient()))
              .mapToDouble(l -> l.percent().in(PERCENT))
              .sum();
      double is = line.percent().in(PERCENT);
      if (!line.ingredient().equals(to) && Math.abs(is - was) > 1e-9) {
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
    String part = share.in(FRACTION) == 1 ? "" : AmountFormat.metric().percent(share) + " of the ";
    return part
        + from.name()
        + " becomes "
        + to.name()
        + ", × "
        + Numbers.significant(ratio, 3)
        + "; kept: "
        + conserved.stream().map(Conserved::word).collect(Collectors.joining(", "))
        + (lost.isEmpty()
            ? ""
            : "; not kept: "
                + lost.keySet().stream().map(Conserved::word).collect(Collectors.joining(", ")));
  }
}
