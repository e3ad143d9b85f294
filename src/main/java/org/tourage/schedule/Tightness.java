package org.tourage.schedule;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** What holds the tasks of a schedule where they are. */
final class Tightness {
  private final Core core;
  private final int[] start;

  Tightness(Core core, int[] start) {
    this.core = core;
    this.start = start;
  }

  /** Seconds that one task could begin later, all else as it is, without anything broken. */
  int slack(int i) {
    long slack = Core.NEVER;
    for (int k = 0; k < core.to[i].length; k++) {
      slack = Math.min(slack, (long) start[core.to[i][k]] - core.toLag[i][k] - start[i]);
    }
    slack = Math.min(slack, (long) core.latest[i] - start[i]);
    int end = start[i] + core.length[i];
    slack =
        Math.min(
            slack, (long) core.due[i] < Core.NEVER ? Math.max(0, core.due[i] - end) : Core.NEVER);
    for (int s = 0; s < core.stores.length; s++) {
      slack = Math.min(slack, room(i, s));
    }
    return (int) Math.max(0, slack);
  }

  private long room(int i, int s) {
    Profile free = new Profile(core.stores[s]);
    for (int j = 0; j < core.size; j++) {
      // its own needs move along, and what is kept after it grows shorter
      if (j == i) {
        continue;
      }
      for (Core.Use use : core.uses[j]) {
        if (use.store() == s) {
          free.take(start[j] + use.from(), start[j] + use.to(), use.amount());
        }
      }
      for (Core.Hold hold : core.holds[j]) {
        if (hold.store() == s && hold.before() == j && hold.after() != i) {
          free.take(start[j] + core.length[j], start[hold.after()], hold.amount());
        }
      }
    }
    long room = Core.NEVER;
    for (Core.Use use : core.uses[i]) {
      if (use.store() == s) {
        int lack = free.lackStart(start[i] + use.from(), use.amount());
        room = Math.min(room, (long) lack - start[i] - use.to());
        room = Math.min(room, settings(i, use));
      }
    }
    for (Core.Hold hold : core.holds[i]) {
      if (hold.store() == s && hold.after() == i) {
        int from = start[hold.before()] + core.length[hold.before()];
        room = Math.min(room, (long) free.lackStart(from, hold.amount()) - start[i]);
      }
    }
    return room;
  }

  private long settings(int i, Core.Use use) {
    int[][] change = core.stores[use.store()].change();
    long room = Core.NEVER;
    if (change == null) {
      return room;
    }
    for (int j = 0; j < core.size; j++) {
      for (Core.Use other : core.uses[j]) {
        if (j == i || other.store() != use.store()) {
          continue;
        }
        boolean one = other.enter() == use.enter() && other.leave() == use.leave();
        if (one && use.enter() == use.leave()) {
          continue;
        }
        int from = start[j] + other.from();
        if (one
            && from == start[i] + use.from()
            && other.to() - other.from() == use.to() - use.from()) {
          return 0;
        }
        if (from >= start[i] + use.to()) {
          room =
              Math.min(
                  room, (long) from - change[use.leave()][other.enter()] - start[i] - use.to());
        }
      }
    }
    return room;
  }

  /** The tasks that follow each other without a gap up to the one that ends last, first to last. */
  List<Integer> chain() {
    int last = 0;
    for (int i = 1; i < core.size; i++) {
      if (start[i] + core.length[i] > start[last] + core.length[last]) {
        last = i;
      }
    }
    List<Integer> chain = new ArrayList<>();
    for (int at = last; at >= 0 && !chain.contains(at); at = before(at)) {
      chain.add(at);
    }
    Collections.reverse(chain);
    return chain;
  }

  /** What a task waits for: a link that is tight, or another that gives back what it takes. */
  private int before(int i) {
    if (start[i] <= core.release[i]) {
      return -1;
    }
    for (int k = 0; k < core.from[i].length; k++) {
      int j = core.from[i][k];
      if (core.fromLag[i][k] >= 0
          && start[j] < start[i]
          && start[j] + core.fromLag[i][k] == start[i]) {
        return j;
      }
    }
    for (int j = 0; j < core.size; j++) {
      if (j != i && start[j] < start[i] && hands(j, i)) {
        return j;
      }
    }
    return -1;
  }

  private boolean hands(int j, int i) {
    for (Core.Use mine : core.uses[i]) {
      for (Core.Use other : core.uses[j]) {
        if (mine.store() == other.store()) {
          int[][] change = core.stores[mine.store()].change();
          int wait = change == null ? 0 : change[other.leave()][mine.enter()];
          if (start[j] + other.to() + wait == start[i] + mine.from()) {
            return true;
          }
        }
      }
    }
    return false;
  }
}
