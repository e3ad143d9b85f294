package org.tourage.schedule;

import java.util.TreeMap;

/**
 * What a schedule is worth where due times count: seconds late, seconds early, seconds of presence,
 * changes of setting; the first difference decides, less is better.
 */
final class Worth {
  private static final int DAY = 86_400;
  private final Core core;

  Worth(Core core) {
    this.core = core;
  }

  long[] of(int[] starts) {
    long late = 0;
    long early = 0;
    for (int i = 0; i < core.size; i++) {
      if (core.due[i] < Core.NEVER) {
        long over = (long) starts[i] + core.length[i] - core.due[i];
        late += Math.max(0, over);
        early += Math.max(0, -over);
      }
    }
    long presence = 0;
    long changes = 0;
    for (int s = 0; s < core.stores.length; s++) {
      if (core.stores[s].attended()) {
        presence += presence(starts, s);
      }
      if (core.stores[s].change() != null) {
        changes += changes(starts, s);
      }
    }
    return new long[] {late, early, presence, changes};
  }

  /** From the first to the last use of each day. */
  private long presence(int[] starts, int store) {
    TreeMap<Integer, int[]> days = new TreeMap<>();
    for (int i = 0; i < core.size; i++) {
      for (Core.Use use : core.uses[i]) {
        if (use.store() == store) {
          int from = starts[i] + use.from();
          int to = starts[i] + use.to();
          for (int day = Math.floorDiv(from, DAY); day * DAY < to; day++) {
            int[] span = days.computeIfAbsent(day, d -> new int[] {Core.NEVER, -Core.NEVER});
            span[0] = Math.min(span[0], Math.max(from, day * DAY));
            span[1] = Math.max(span[1], Math.min(to, (day + 1) * DAY));
          }
        }
      }
    }
    return days.values().stream().mapToLong(span -> span[1] - span[0]).sum();
  }

  private long changes(int[] starts, int store) {
    TreeMap<Integer, int[]> loads = new TreeMap<>();
    for (int i = 0; i < core.size; i++) {
      for (Core.Use use : core.uses[i]) {
        if (use.store() == store) {
          loads.put(starts[i] + use.from(), new int[] {use.enter(), use.leave()});
        }
      }
    }
    int[][] row = loads.values().toArray(new int[0][]);
    long changes = 0;
    for (int k = 1; k < row.length; k++) {
      changes += row[k - 1][1] == row[k][0] ? 0 : 1;
    }
    return changes;
  }
}
