package org.tourage.schedule;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.chocosolver.solver.Model;
import org.chocosolver.solver.Solver;
import org.chocosolver.solver.search.strategy.Search;
import org.chocosolver.solver.variables.IntVar;
import org.jspecify.annotations.Nullable;

/** A problem as constraints over whole starts. The only class that knows the solver. */
final class ConstraintModel {
  private final Core core;
  private final Goal goal;
  private final int @Nullable [] known;
  private final Model model = new Model("schedule");
  private final int first;
  private final int last;
  private final IntVar[] start;

  /** What the solver found: starts that are better than what was known, or null; and if all. */
  record Found(int @Nullable [] starts, boolean complete) {}

  ConstraintModel(Core core, Goal goal, int @Nullable [] known) {
    this.core = core;
    this.goal = goal;
    this.known = known;
    int[][] windows = Generation.windows(core);
    last = last(core, goal, known);
    int least = Core.NEVER;
    for (int r : core.release) {
      least = Math.min(least, r);
    }
    first = least;
    start = new IntVar[core.size];
    for (int i = 0; i < core.size; i++) {
      int low = windows == null ? first : windows[0][i];
      int high = Math.min(windows == null ? last : windows[1][i], last - core.length[i]);
      start[i] = model.intVar("s" + i, low, Math.max(low, high), true);
    }
  }

  /** By when everything is done: what has no due time may end later than in what is known. */
  private static int last(Core core, Goal goal, int @Nullable [] known) {
    if (goal == Goal.EARLIEST_END && known != null) {
      return core.end(known);
    }
    int due = 0;
    for (int d : core.due) {
      due = d < Core.NEVER ? Math.max(due, d) : due;
    }
    return Math.min(Core.NEVER - 1, due + org.tourage.schedule.Search.horizon(core));
  }

  /** Whether the solver's whole numbers are wide enough for the sums of a problem. */
  static boolean isWideEnough(Core core, Goal goal, int @Nullable [] known) {
    long span = (long) last(core, goal, known) + 1;
    long sums = goal == Goal.JUST_IN_TIME ? core.size : 1;
    return span * sums < IntVar.MAX_INT_BOUND;
  }

  Found solve(Duration limit) {
    links();
    for (int s = 0; s < core.stores.length; s++) {
      capacity(s);
      settings(s);
    }
    return goal == Goal.EARLIEST_END ? earliest(limit) : justInTime(limit);
  }

  private void links() {
    for (int[] link : core.links()) {
      model.arithm(start[link[1]], "-", start[link[0]], ">=", link[2]).post();
    }
  }

  private void capacity(int s) {
    Core.Store store = core.stores[s];
    List<org.chocosolver.solver.variables.Task> tasks = new ArrayList<>();
    List<IntVar> heights = new ArrayList<>();
    for (int i = 0; i < core.size; i++) {
      for (Core.Use use : core.uses[i]) {
        if (use.store() == s) {
          IntVar from = model.intView(1, start[i], use.from());
          tasks.add(model.taskVar(from, use.to() - use.from()));
          heights.add(model.intVar(use.amount()));
        }
      }
    }
    for (Core.Hold hold : core.held()) {
      if (hold.store() == s) {
        IntVar from = model.intView(1, start[hold.before()], core.length[hold.before()]);
        IntVar time = model.intVar("h" + tasks.size(), 0, last - first, true);
        tasks.add(model.taskVar(from, time, start[hold.after()]));
        heights.add(model.intVar(hold.amount()));
      }
    }
    // where there is less than at most, the rest is taken
    for (int k = 0; k < store.time().length; k++) {
      int from = Math.max(first, store.time()[k]);
      int to = k + 1 < store.time().length ? Math.min(last, store.time()[k + 1]) : last;
      int missing = store.most() - store.capacity()[k];
      if (missing > 0 && to > from) {
        tasks.add(model.taskVar(model.intVar(from), to - from));
        heights.add(model.intVar(missing));
      }
    }
    if (!tasks.isEmpty()) {
      model
          .cumulative(
              tasks.toArray(new org.chocosolver.solver.variables.Task[0]),
              heights.toArray(new IntVar[0]),
              model.intVar(store.most()))
          .post();
    }
  }

  private void settings(int s) {
    int[][] change = core.stores[s].change();
    if (change == null) {
      return;
    }
    record At(int task, Core.Use use) {}
    List<At> all = new ArrayList<>();
    for (int i = 0; i < core.size; i++) {
      for (Core.Use use : core.uses[i]) {
        if (use.store() == s) {
          all.add(new At(i, use));
        }
      }
    }
    for (int a = 0; a < all.size(); a++) {
      for (int b = a + 1; b < all.size(); b++) {
        Core.Use p = all.get(a).use;
        Core.Use q = all.get(b).use;
        IntVar x = start[all.get(a).task];
        IntVar y = start[all.get(b).task];
        boolean one = p.enter() == q.enter() && p.leave() == q.leave();
        if (one && p.enter() == p.leave()) {
          continue;
        }
        var before =
            model.arithm(y, "-", x, ">=", p.to() + change[p.leave()][q.enter()] - q.from());
        var after = model.arithm(x, "-", y, ">=", q.to() + change[q.leave()][p.enter()] - p.from());
        if (one && p.to() - p.from() == q.to() - q.from()) {
          model.or(before, after, model.arithm(x, "-", y, "=", q.from() - p.from())).post();
        } else {
          model.or(before, after).post();
        }
      }
    }
  }

  private Found earliest(Duration limit) {
    IntVar end = model.intVar("end", first, known == null ? last : last - 1, true);
    for (int i = 0; i < core.size; i++) {
      model.arithm(end, "-", start[i], ">=", core.length[i]).post();
    }
    Solver solver = model.getSolver();
    solver.setSearch(
        Search.lastConflict(Search.domOverWDegSearch(start)), Search.inputOrderLBSearch(end));
    return best(solver, end, limit);
  }

  private Found justInTime(Duration limit) {
    List<IntVar> lates = new ArrayList<>();
    List<IntVar> earlies = new ArrayList<>();
    for (int i = 0; i < core.size; i++) {
      if (core.due[i] < Core.NEVER) {
        int on = core.due[i] - core.length[i];
        IntVar late = model.intVar("late" + i, 0, Math.max(0, last - on), true);
        IntVar early = model.intVar("early" + i, 0, Math.max(0, on - first), true);
        model.arithm(start[i], "-", late, "<=", on).post();
        model.sum(new IntVar[] {start[i], early}, ">=", on).post();
        lates.add(late);
        earlies.add(early);
      }
    }
    IntVar late = total("late", lates);
    IntVar early = total("early", earlies);
    Solver solver = model.getSolver();
    solver.setSearch(
        Search.lastConflict(
            Search.intVarSearch(
                new org.chocosolver.solver.search.strategy.selectors.variables.DomOverWDeg<>(
                    start, 0),
                new org.chocosolver.solver.search.strategy.selectors.values.IntDomainMax(),
                start)),
        Search.inputOrderLBSearch(late, early));
    // the lateness decides first; within it the earliness
    if (known != null) {
      long[] worth = new Worth(core).of(known);
      model.arithm(late, "<=", (int) worth[0]).post();
      if (worth[0] == 0) {
        model.arithm(early, "<", (int) Math.min(worth[1], Core.NEVER)).post();
        return best(solver, early, limit);
      }
    }
    Found least = best(solver, late, limit.dividedBy(2));
    int[] starts = least.starts() == null ? known : least.starts();
    if (starts == null || !least.complete()) {
      return least;
    }
    long[] worth = new Worth(core).of(starts);
    ConstraintModel second = new ConstraintModel(core, goal, starts);
    Found fresh = worth[0] == 0 ? second.solve(limit.dividedBy(2)) : least;
    return fresh.starts() == null ? new Found(least.starts(), fresh.complete()) : fresh;
  }

  private IntVar total(String name, List<IntVar> parts) {
    int most = parts.stream().mapToInt(IntVar::getUB).reduce(0, ConstraintModel::capped);
    IntVar sum = model.intVar(name, 0, most, true);
    model.sum(parts.toArray(new IntVar[0]), "=", sum).post();
    return sum;
  }

  private static int capped(int a, int b) {
    return (int) Math.min(Core.NEVER, (long) a + b);
  }

  private Found best(Solver solver, IntVar objective, Duration limit) {
    model.setObjective(Model.MINIMIZE, objective);
    solver.limitTime(limit.toMillis());
    int[] found = null;
    while (solver.solve()) {
      found = new int[core.size];
      for (int i = 0; i < found.length; i++) {
        found[i] = start[i].getValue();
      }
    }
    return new Found(found, !solver.isStopCriterionMet());
  }
}
