package org.tourage.schedule;

import java.util.Arrays;

/**
 * What stands in a store with settings: loads of one setting share, others need a change between.
 */
final class Loads {
  private static final int ROW = 5;
  private final int[][] change;
  private int[] rows = new int[8 * ROW];
  private int size;

  Loads(int[][] change) {
    this.change = change;
  }

  /** The earliest start not before {@code from} that no load stands against. */
  int clear(Core.Use use, int from) {
    int at = from;
    boolean moved = true;
    while (moved) {
      moved = false;
      for (int k = 0; k < size * ROW; k += ROW) {
        int start = at + use.from();
        int end = at + use.to();
        if (shares(k, use, start, end)) {
          continue;
        }
        int after = rows[k + 2] + change[rows[k + 4]][use.enter()];
        if (start < after && rows[k + 1] < end + change[use.leave()][rows[k + 3]]) {
          at = after - use.from();
          moved = true;
        }
      }
    }
    return at;
  }

  /** Loads of one unchanging setting share; a stepped setting is shared from start to end. */
  private boolean shares(int k, Core.Use use, int start, int end) {
    return rows[k + 3] == use.enter()
        && rows[k + 4] == use.leave()
        && (use.enter() == use.leave() || rows[k + 1] == start && rows[k + 2] == end);
  }

  void put(int task, Core.Use use, int at) {
    if ((size + 1) * ROW > rows.length) {
      rows = Arrays.copyOf(rows, 2 * rows.length);
    }
    int k = size++ * ROW;
    rows[k] = task;
    rows[k + 1] = at + use.from();
    rows[k + 2] = at + use.to();
    rows[k + 3] = use.enter();
    rows[k + 4] = use.leave();
  }

  void remove(int task) {
    int kept = 0;
    for (int k = 0; k < size; k++) {
      if (rows[k * ROW] != task) {
        System.arraycopy(rows, k * ROW, rows, kept++ * ROW, ROW);
      }
    }
    size = kept;
  }
}
