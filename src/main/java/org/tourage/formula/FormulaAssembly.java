package org.tourage.formula;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;
import org.tourage.internal.Numbers;
import org.tourage.quantity.BakeryUnits;

/**
 * Makes a formula of what a builder has collected: works out how much of each stage goes into the
 * product, takes preferments and soakers out of the overall dough, and brings all to one total
 * flour. Every stage and line is looked at a fixed number of times.
 */
final class FormulaAssembly {
  /** Flour percentages must sum to 100 % within this share, which forgives printed thirds. */
  private static final double FLOUR_TOLERANCE = 5e-4;

  /** A remainder below this share of the flour is rounding, not a line. */
  private static final double NOTHING = 1e-12;

  /** Draws may sum to this much more than the whole, which forgives rounding. */
  private static final double ROUNDING = 1e-9;

  /** What a stage takes: an amount in the unit of the builder, or a share of the other stage. */
  record Draw(String stage, double amount, boolean ofStage) {
    static Draw all(String stage) {
      return new Draw(stage, 1, true);
    }
  }

  /** A stage while it is put together; its lines in the unit of the builder. */
  record Node(String name, StageKind kind, List<Line> lines, List<Draw> draws, boolean takenOut) {
    Node(String name, StageKind kind, boolean takenOut) {
      this(name, kind, new ArrayList<>(), new ArrayList<>(), takenOut);
    }
  }

  private final String name;
  private final boolean percent;
  private final List<Line> dough;
  private final List<Node> nodes = new ArrayList<>();
  private final List<Preferment> preferments;
  private final Node last;

  /** The share of each stage's making that goes into the product; by name. */
  private final Map<String, Double> used = new HashMap<>();

  FormulaAssembly(
      String name,
      boolean percent,
      List<Line> dough,
      List<Preferment> preferments,
      List<Node> soakers,
      List<Node> stages,
      List<Draw> doughDraws,
      List<Line> rollIn,
      List<Line> finish) {
    this.name = name;
    this.percent = percent;
    this.dough = dough;
    this.preferments = preferments;
    for (Preferment preferment : preferments) {
      String before = null;
      for (Preferment.Step step : preferment.steps()) {
        Node node = new Node(step.name(), StageKind.PREFERMENT, true);
        if (before != null) {
          node.draws.add(Draw.all(before));
        }
        nodes.add(node);
        before = step.name();
      }
    }
    nodes.addAll(soakers);
    nodes.addAll(stages);
    this.last = finalDough(doughDraws);
    addPart("Roll-in", StageKind.ROLL_IN, rollIn);
    addPart("Finish", StageKind.FINISH, finish);
  }

  private void addPart(String stage, StageKind kind, List<Line> lines) {
    if (!lines.isEmpty()) {
      nodes.add(new Node(stage, kind, lines, new ArrayList<>(), false));
    }
  }

  /** The stage that takes the rest of the overall dough, and every stage that no other takes. */
  private Node finalDough(List<Draw> doughDraws) {
    Set<String> alreadyTaken = new HashSet<>();
    for (Node node : nodes) {
      node.draws.forEach(draw -> alreadyTaken.add(draw.stage));
    }
    doughDraws.forEach(draw -> alreadyTaken.add(draw.stage));
    List<Draw> draws = new ArrayList<>(doughDraws);
    for (Node node : nodes) {
      boolean before = node.kind == StageKind.PREFERMENT || node.kind == StageKind.SOAKER;
      if (before && !alreadyTaken.contains(node.name)) {
        draws.add(Draw.all(node.name));
      }
    }
    for (Node node : nodes) {
      if (node.kind == StageKind.FINAL_DOUGH) {
        node.draws.addAll(draws);
        return node;
      }
    }
    Node made = new Node("Final dough", StageKind.FINAL_DOUGH, false);
    made.draws.addAll(draws);
    if (!dough.isEmpty() || !draws.isEmpty()) {
      nodes.add(made);
    }
    return made;
  }

  FormulaBuilder.Built build() {
    // preferments, soakers, final dough, roll-in, finish; otherwise as given
    nodes.sort(Comparator.comparing(Node::kind));
    List<List<String>> takes = new ArrayList<>();
    for (Node node : nodes) {
      takes.add(node.draws.stream().map(Draw::stage).toList());
    }
    StageOrder order = StageOrder.of(nodes.stream().map(Node::name).toList(), takes);
    double[][] fractions = fractions(order);
    double[] share = used(order, fractions);
    double flour = dough.stream().filter(Line::isFlour).mapToDouble(Line::share).sum();
    for (int i = 0; i < share.length; i++) {
      Node node = nodes.get(i);
      used.put(node.name, share[i]);
      if (node.takenOut && share[i] != 1) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            "what is taken out of the overall dough goes into it whole",
            Numbers.significant(share[i] * 100, 5) + " % of \"" + node.name + "\" would",
            "take all of the stages that it goes into, or write it as a stage of its own");
      }
      if (!node.takenOut && node.kind.inPiece()) {
        flour += share[i] * flour(node.lines);
      }
    }
    checkFlour(flour);
    double scale = percent ? 1 : flour;
    Map<String, List<Line>> lines = lines(scale);
    List<Stage> result = new ArrayList<>();
    for (int i = 0; i < share.length; i++) {
      Node node = nodes.get(i);
      List<Take> taken = new ArrayList<>();
      for (int k = 0; k < fractions[i].length; k++) {
        int from = order.taken(i)[k];
        double part = Math.min(1, fractions[i][k] * share[i] / share[from]);
        taken.add(new Take(nodes.get(from).name, BakeryUnits.PERCENT.amount(part * 100)));
      }
      result.add(
          new Stage(
              node.name,
              node.kind,
              lines.getOrDefault(node.name, List.of()),
              taken,
              share[i] == 1 ? Stage.WHOLE : BakeryUnits.PERCENT.amount(100 / share[i])));
    }
    return new FormulaBuilder.Built(new Formula(name, result), scale);
  }

  private static double flour(List<Line> lines) {
    double sum = 0;
    for (Line line : lines) {
      sum += line.isFlour() ? line.share() : 0;
    }
    return sum;
  }

  /** What each stage takes of others, as shares of what is made of them. */
  private double[][] fractions(StageOrder order) {
    int n = nodes.size();
    double[][] fractions = new double[n][];
    double[] whole = new double[n];
    double[] given = new double[n];
    for (int point = 0; point < n; point++) {
      int i = order.at(point);
      Node node = nodes.get(i);
      // how much of the overall dough is taken out shows only when the flour is known
      double mass = node.takenOut || node == last ? Double.NaN : 0;
      for (Line line : node.lines) {
        mass += line.share();
      }
      fractions[i] = new double[node.draws.size()];
      for (int k = 0; k < node.draws.size(); k++) {
        Draw draw = node.draws.get(k);
        int from = order.taken(i)[k];
        double fraction = draw.ofStage ? draw.amount : draw.amount / whole[from];
        boolean unknown = nodes.get(from).takenOut && draw.amount != 1;
        if (unknown || Double.isNaN(fraction)) {
          throw new BakeryException(
              Reason.INCONSISTENT,
              "what is taken out of the overall dough goes on whole",
              "\"" + node.name + "\" takes a part of \"" + draw.stage + "\"",
              "take all of it, or write it as a stage of its own");
        }
        given[from] += fraction;
        if (!(given[from] <= 1 + ROUNDING)) {
          throw tooMuch(draw, whole[from], given[from]);
        }
        fractions[i][k] = Math.min(1, fraction);
        mass += fraction * whole[from];
      }
      whole[i] = mass;
    }
    return fractions;
  }

  private BakeryException tooMuch(Draw draw, double whole, double given) {
    String wanted =
        Double.isNaN(whole)
            ? Numbers.significant(given * 100, 5) + " % of it"
            : words(given * whole) + " wanted, " + words(whole) + " made";
    return new BakeryException(
        Reason.INCONSISTENT,
        "more of \"" + draw.stage + "\" is taken than there is",
        Double.isFinite(given) ? wanted : "it is empty",
        "a stage can be taken once as a whole, or in parts that sum to it; make more of it or take"
            + " less");
  }

  private String words(double value) {
    return percent
        ? Numbers.significant(value * 100, 5) + " % of the flour"
        : Numbers.significant(value, 5) + " g";
  }

  /** What of each stage goes into the product, from the last stages back to the first. */
  private static double[] used(StageOrder order, double[][] fractions) {
    int n = order.size();
    double[] share = new double[n];
    boolean[] taken = new boolean[n];
    for (int point = n - 1; point >= 0; point--) {
      int i = order.at(point);
      share[i] = taken[i] ? Math.abs(share[i] - 1) < ROUNDING ? 1 : share[i] : 1;
      for (int k = 0; k < fractions[i].length; k++) {
        int from = order.taken(i)[k];
        taken[from] = true;
        share[from] += fractions[i][k] * share[i];
      }
    }
    return share;
  }

  private void checkFlour(double flour) {
    if (!(flour > 0)) {
      throw new BakeryException(
          Reason.MISSING,
          "baker's percent needs flour",
          "\"" + name + "\" has none",
          "add a flour, or add a line with flour(…) so that it counts as one");
    }
    if (percent && !(Math.abs(flour - 1) <= FLOUR_TOLERANCE)) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "the flours must sum to 100 %",
          Numbers.significant(flour * 100, 6) + " %",
          "all flour of all stages together is 100 %; use Formula.byWeight for masses");
    }
  }

  /** The lines of each stage as shares of the total flour. */
  private Map<String, List<Line>> lines(double scale) {
    Remaining remaining = new Remaining(scaled(dough, 1 / scale));
    Map<String, List<Line>> result = new LinkedHashMap<>();
    for (Preferment preferment : preferments) {
      takePreferment(preferment, remaining, result);
    }
    for (Node node : nodes) {
      if (!result.containsKey(node.name)) {
        double usedShare = java.util.Objects.requireNonNull(used.get(node.name));
        List<Line> lines = scaled(node.lines, usedShare / scale);
        if (node.takenOut) {
          for (Line line : lines) {
            remaining.take(line.ingredient(), line.share(), node.name);
          }
        }
        result.put(node.name, lines);
      }
    }
    List<Line> rest = new ArrayList<>(result.getOrDefault(last.name, List.of()));
    rest.addAll(remaining.rest());
    result.put(last.name, rest);
    return result;
  }

  private static List<Line> scaled(List<Line> lines, double factor) {
    List<Line> result = new ArrayList<>();
    for (Line line : lines) {
      result.add(factor == 1 ? line : line.withShare(line.share() * factor));
    }
    return result;
  }

  private static void takePreferment(
      Preferment preferment, Remaining remaining, Map<String, List<Line>> result) {
    for (Preferment.Step step : preferment.steps()) {
      List<Line> lines = new ArrayList<>();
      Ingredient flour = remaining.choose(preferment.flour(), Role.FLOUR, step.name());
      lines.add(remaining.take(flour, step.flour(), step.name()));
      if (step.liquid() > 0) {
        Ingredient liquid = remaining.choose(preferment.liquid(), Role.LIQUID, step.name());
        lines.add(remaining.take(liquid, step.liquid(), step.name()));
      }
      if (step.yeast() > 0) {
        Ingredient yeast = remaining.choose(null, Role.YEAST, step.name());
        lines.add(remaining.take(yeast, step.yeast(), step.name()));
      }
      result.put(step.name(), lines);
    }
  }

  /** What is left of the overall dough. */
  private static final class Remaining {
    private final List<Line> lines;

    /** The places of each ingredient, so that a thousand builds don't walk all lines. */
    private final Map<Ingredient, List<Integer>> places = new HashMap<>();

    Remaining(List<Line> lines) {
      this.lines = lines;
      for (int i = 0; i < lines.size(); i++) {
        places.computeIfAbsent(lines.get(i).ingredient(), k -> new ArrayList<>()).add(i);
      }
    }

    Ingredient choose(@Nullable Ingredient wanted, Role role, String stage) {
      if (wanted != null) {
        return wanted;
      }
      for (Line line : lines) {
        if (role == Role.FLOUR ? line.isFlour() : line.ingredient().is(role)) {
          return line.ingredient();
        }
      }
      throw new BakeryException(
          Reason.MISSING,
          stage + " has nothing to take",
          "no " + role.name().toLowerCase(Locale.ROOT) + " in the overall dough",
          "add it with line(…)");
    }

    /** Moves part of the overall dough into a stage. */
    Line take(Ingredient ingredient, double share, String stage) {
      double left = share;
      boolean flour = ingredient.is(Role.FLOUR);
      for (int i : places.getOrDefault(ingredient, List.of())) {
        Line line = lines.get(i);
        flour = line.isFlour();
        double moved = Math.min(left, line.share());
        lines.set(i, line.withShare(line.share() - moved));
        left -= moved;
      }
      if (left > NOTHING * 100) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            stage + " takes more " + ingredient.name() + " than the overall dough has left",
            Numbers.significant(share * 100, 5)
                + " % wanted, "
                + Numbers.significant((share - left) * 100, 5)
                + " % left",
            "make the stage smaller or drier, or raise the overall percentage");
      }
      return new Line(ingredient, share, flour);
    }

    List<Line> rest() {
      return lines.stream().filter(line -> line.share() > NOTHING).toList();
    }
  }
}
