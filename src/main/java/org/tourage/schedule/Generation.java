package org.tourage.schedule;

import java.util.Arrays;
import java.util.BitSet;
import org.jspecify.annotations.Nullable;

/**
 * Serial generation of a schedule from an order of the tasks: each as early as links, resources and
 * calendars let it. Where a greatest lag can't be kept, what it was reckoned from is taken out
 * again and put later (K. Neumann, C. Schwindt, J. Zimmermann, Project Scheduling with Time Windows
 * and Scarce Resources, 2nd ed., Springer 2003, section 2.6, from memory; here only the tasks that
 * are linked to it are taken out).
 */
final class Generation {
  private final Core core;
  private final Profile[] profiles;
  private final @Nullable Loads[] loads;
  private final int[] floor;
  private final int[] low;
  private final int[] high;
  private final int[] highBy;
  private final int[] start;
  private final boolean[] placed;
  private final int[] waiting;
  private final int[] queue;
  private final boolean[] queued;

  /** Set by a fit that fails: the task that has to come later, and by how much. */
  private int culprit;

  private int delay;

  private Generation(Core core, int[] floor) {
    this.core = core;
    int n = core.size;
    profiles = new Profile[core.stores.length];
    loads = new Loads[core.stores.length];
    for (int s = 0; s < profiles.length; s++) {
      profiles[s] = new Profile(core.stores[s]);
      int[][] change = core.stores[s].change();
      loads[s] = change == null ? null : new Loads(change);
    }
    this.floor = new int[n];
    for (int i = 0; i < n; i++) {
      this.floor[i] = Math.max(core.release[i], floor[i]);
    }
    low = new int[n];
    high = new int[n];
    highBy = new int[n];
    start = new int[n];
    placed = new boolean[n];
    waiting = new int[n];
    queue = new int[n + 1];
    queued = new boolean[n];
  }

  /**
   * A schedule.
   *
   * @param order the tasks, the first to be placed first
   * @param floor no task starts before that
   * @param repairs how many times a task may be taken out again
   * @return the starts, or null if it did not come off
   */
  static int @Nullable [] of(Core core, int[] order, int[] floor, int repairs) {
    Generation g = new Generation(core, floor);
    return g.bounds() && g.run(order, repairs) ? g.start : null;
  }

  /** The earliest and latest starts by links alone, or null if the links contradict each other. */
  static int @Nullable [][] windows(Core core) {
    int[] none = new int[core.size];
    Arrays.fill(none, -Core.NEVER);
    return windows(core, none);
  }

  static int @Nullable [][] windows(Core core, int[] floor) {
    Generation g = new Generation(core, floor);
    return g.bounds() ? new int[][] {g.low, g.high} : null;
  }

  private boolean bounds() {
    for (int[] group : core.members) {
      if (!bounds(group)) {
        return false;
      }
    }
    return true;
  }

  private boolean run(int[] order, int repairs) {
    int n = core.size;
    int[] rank = new int[n];
    for (int k = 0; k < n; k++) {
      rank[order[k]] = k;
    }
    BitSet ready = new BitSet(n);
    for (int i = 0; i < n; i++) {
      for (int lag : core.fromLag[i]) {
        waiting[i] += lag > 0 ? 1 : 0;
      }
      if (waiting[i] == 0) {
        ready.set(rank[i]);
      }
    }
    int left = repairs;
    for (int count = 0; count < n; ) {
      int at = ready.nextSetBit(0);
      if (at < 0) {
        return false;
      }
      int i = order[at];
      if (fit(i)) {
        place(i);
        ready.clear(at);
        freed(i, -1, rank, ready);
        count++;
      } else {
        int before = count;
        count -= takeOut(rank, ready);
        left -= 1;
        if (count == before || left < 0) {
          return false;
        }
      }
    }
    // what two tasks keep at once is seen by neither alone
    return Arrays.stream(profiles).noneMatch(Profile::isOverdrawn);
  }

  /** Takes out what has to come later, and what that drags along; says how many were taken. */
  private int takeOut(int[] rank, BitSet ready) {
    int taken = 0;
    int late = culprit;
    int by = delay;
    while (late >= 0) {
      int from = start[late];
      floor[late] = from + by;
      int[] group = core.members[core.group[late]];
      for (int j : group) {
        if (placed[j] && start[j] >= from) {
          remove(j);
          freed(j, 1, rank, ready);
          taken++;
        }
      }
      for (int j : group) {
        ready.set(rank[j], !placed[j] && waiting[j] == 0);
      }
      if (bounds(group)) {
        return taken;
      }
      // what was put before it is now too early: it has to come later as well
      int first = late;
      late = -1;
      for (int j : group) {
        if (!placed[j] && floor[j] > high[j] && (late < 0 || j == first)) {
          late = j;
        }
      }
      by = late < 0 ? 0 : floor[late] - high[late];
      while (late >= 0 && !placed[late]) {
        late = highBy[late];
      }
    }
    return 0;
  }

  private void freed(int i, int step, int[] rank, BitSet ready) {
    int[] to = core.to[i];
    for (int k = 0; k < to.length; k++) {
      if (core.toLag[i][k] > 0) {
        int j = to[k];
        waiting[j] += step;
        if (step < 0 && waiting[j] == 0 && !placed[j]) {
          ready.set(rank[j]);
        }
      }
    }
  }

  /** Finds the start of a task; on failure names the culprit. */
  private boolean fit(int i) {
    int at = low[i];
    int limit = high[i];
    int limitBy = highBy[i];
    for (Core.Hold hold : core.holds[i]) {
      if (hold.after() == i && placed[hold.before()]) {
        int end = start[hold.before()] + core.length[hold.before()];
        int until = profiles[hold.store()].lackStart(end, hold.amount());
        if (until < limit) {
          limit = until;
          limitBy = hold.before();
        }
      }
    }
    at = settle(i, at, limit);
    if (at <= limit && at < Core.NEVER / 2) {
      start[i] = at;
      return true;
    }
    culprit = at < Core.NEVER / 2 ? limitBy : -1;
    while (culprit >= 0 && !placed[culprit]) {
      culprit = highBy[culprit];
    }
    delay = at - limit;
    return false;
  }

  private int settle(int i, int from, int limit) {
    int at = from;
    boolean moved = true;
    while (moved && at <= limit && at < Core.NEVER / 2) {
      moved = false;
      for (Core.Use use : core.uses[i]) {
        int free = profiles[use.store()].lackEnd(at + use.from(), at + use.to(), use.amount());
        if (free > Integer.MIN_VALUE) {
          at = free - use.from();
          moved = true;
        }
        Loads standing = loads[use.store()];
        if (standing != null) {
          int clear = standing.clear(use, at);
          moved |= clear > at;
          at = clear;
        }
      }
      for (Core.Hold hold : core.holds[i]) {
        if (hold.before() == i && placed[hold.after()]) {
          int end = at + core.length[i];
          int free = profiles[hold.store()].lackEnd(end, start[hold.after()], hold.amount());
          if (free > Integer.MIN_VALUE) {
            at = free - core.length[i];
            moved = true;
          }
        }
      }
    }
    return at;
  }

  private void place(int i) {
    placed[i] = true;
    take(i, 1);
    low[i] = start[i];
    high[i] = start[i];
    highBy[i] = i;
    int[] one = {i};
    carry(one, true);
    carry(one, false);
  }

  private void remove(int i) {
    take(i, -1);
    placed[i] = false;
  }

  private void take(int i, int sign) {
    for (Core.Use use : core.uses[i]) {
      profiles[use.store()].take(start[i] + use.from(), start[i] + use.to(), sign * use.amount());
      Loads standing = loads[use.store()];
      if (standing != null) {
        if (sign > 0) {
          standing.put(i, use, start[i]);
        } else {
          standing.remove(i);
        }
      }
    }
    for (Core.Hold hold : core.holds[i]) {
      if (placed[hold.before()] && placed[hold.after()]) {
        int end = start[hold.before()] + core.length[hold.before()];
        profiles[hold.store()].take(end, start[hold.after()], sign * hold.amount());
      }
    }
  }

  /** Reckons the windows of a group anew; false if they contradict each other. */
  private boolean bounds(int[] group) {
    for (int i : group) {
      low[i] = placed[i] ? start[i] : floor[i];
      high[i] = placed[i] ? start[i] : core.latest[i];
      highBy[i] = placed[i] ? i : -1;
    }
    // the latest first: they are wanted even where the two contradict each other
    boolean fits = carry(group, false) & carry(group, true);
    for (int i : group) {
      fits &= low[i] <= high[i];
    }
    return fits;
  }

  /** Carries the windows of some tasks of a group on; false if they chase each other in a ring. */
  private boolean carry(int[] tasks, boolean forward) {
    int[] group = core.members[core.group[tasks[0]]];
    // a task is raised by chains of at most all others
    long left = (long) group.length * (group.length + 2);
    int head = 0;
    int count = 0;
    for (int i : tasks) {
      queue[count++] = i;
      queued[i] = true;
    }
    while (count > 0) {
      if (left-- == 0) {
        for (int i : group) {
          queued[i] = false;
        }
        return false;
      }
      int i = queue[head];
      head = (head + 1) % queue.length;
      count--;
      queued[i] = false;
      int[] next = forward ? core.to[i] : core.from[i];
      int[] lags = forward ? core.toLag[i] : core.fromLag[i];
      for (int k = 0; k < next.length; k++) {
        int j = next[k];
        if ((forward ? raise(i, j, lags[k]) : lower(i, j, lags[k])) && !queued[j]) {
          queue[(head + count++) % queue.length] = j;
          queued[j] = true;
        }
      }
    }
    return true;
  }

  private boolean raise(int i, int j, int lag) {
    if (low[i] <= -Core.NEVER || low[i] + lag <= low[j]) {
      return false;
    }
    low[j] = low[i] + lag;
    return true;
  }

  private boolean lower(int i, int j, int lag) {
    if (high[i] >= Core.NEVER || high[i] - lag >= high[j]) {
      return false;
    }
    high[j] = high[i] - lag;
    highBy[j] = i;
    return true;
  }
}
