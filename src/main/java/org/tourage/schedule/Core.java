package org.tourage.schedule;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A problem in whole numbers: tasks by index, times in seconds. A link is {@code start(to) >=
 * start(from) + lag}; a negative lag is a greatest lag the other way round. Seen in a mirror, with
 * time running backward, it is a problem of the same kind; so one generation serves both
 * directions.
 */
final class Core {
  /** Beyond every time of a problem; twice of it is still an {@code int}. */
  static final int NEVER = 1 << 29;

  /** What a task takes of a store from {@code from} to {@code to} after its start. */
  record Use(int store, int amount, int from, int to, int enter, int leave) {
    Use mirrored(int length) {
      return new Use(store, amount, length - to, length - from, leave, enter);
    }
  }

  /** What is taken of a store from the end of one task to the start of another. */
  record Hold(int before, int after, int store, int amount) {}

  /**
   * What there is of a resource: {@code capacity[k]} from {@code time[k]} on, and for a resource
   * with settings the seconds that it takes from one setting to another.
   */
  record Store(int[] time, int[] capacity, int @Nullable [][] change, boolean attended) {
    Store mirrored() {
      int k = time.length;
      int[] t = new int[k];
      int[] c = new int[k];
      t[0] = -NEVER;
      for (int i = 0; i < k; i++) {
        c[i] = capacity[k - 1 - i];
        if (i > 0) {
          t[i] = -time[k - i];
        }
      }
      int[][] turned = change;
      if (change != null) {
        turned = new int[change.length][change.length];
        for (int i = 0; i < turned.length; i++) {
          for (int j = 0; j < turned.length; j++) {
            turned[i][j] = change[j][i];
          }
        }
      }
      return new Store(t, c, turned, attended);
    }

    int most() {
      return Arrays.stream(capacity).max().orElse(0);
    }
  }

  final int size;
  final int[] length;
  final int[] release;
  final int[] latest;
  final int[] due;
  final int[][] to;
  final int[][] toLag;
  final int[][] from;
  final int[][] fromLag;
  final Use[][] uses;
  final Hold[][] holds;
  final Store[] stores;

  /** The linked group of each task, and the tasks of each group. */
  final int[] group;

  final int[][] members;

  /**
   * A core.
   *
   * @param links rows of from, to, lag
   */
  Core(
      int[] length,
      int[] release,
      int[] latest,
      int[] due,
      List<int[]> links,
      Use[][] uses,
      List<Hold> held,
      Store[] stores) {
    this.size = length.length;
    this.length = length;
    this.release = release;
    this.latest = latest;
    this.due = due;
    this.uses = uses;
    this.stores = stores;
    int[][][] out = adjacency(links, 0, 1);
    to = out[0];
    toLag = out[1];
    int[][][] in = adjacency(links, 1, 0);
    from = in[0];
    fromLag = in[1];
    List<List<Hold>> by = new ArrayList<>();
    for (int i = 0; i < size; i++) {
      by.add(new ArrayList<>());
    }
    for (Hold hold : held) {
      by.get(hold.before()).add(hold);
      by.get(hold.after()).add(hold);
    }
    holds = by.stream().map(l -> l.toArray(new Hold[0])).toArray(Hold[][]::new);
    group = new int[size];
    members = groups();
  }

  private int[][][] adjacency(List<int[]> links, int key, int value) {
    int[] count = new int[size];
    for (int[] link : links) {
      count[link[key]]++;
    }
    int[][] ends = new int[size][];
    int[][] lags = new int[size][];
    for (int i = 0; i < size; i++) {
      ends[i] = new int[count[i]];
      lags[i] = new int[count[i]];
    }
    Arrays.fill(count, 0);
    for (int[] link : links) {
      int i = link[key];
      ends[i][count[i]] = link[value];
      lags[i][count[i]++] = link[2];
    }
    return new int[][][] {ends, lags};
  }

  private int[][] groups() {
    Arrays.fill(group, -1);
    List<int[]> all = new ArrayList<>();
    int[] queue = new int[size];
    for (int first = 0; first < size; first++) {
      if (group[first] >= 0) {
        continue;
      }
      int head = 0;
      int tail = 0;
      queue[tail++] = first;
      group[first] = all.size();
      while (head < tail) {
        int i = queue[head++];
        for (int[] side : List.of(to[i], from[i])) {
          for (int j : side) {
            if (group[j] < 0) {
              group[j] = all.size();
              queue[tail++] = j;
            }
          }
        }
      }
      int[] sorted = Arrays.copyOf(queue, tail);
      Arrays.sort(sorted);
      all.add(sorted);
    }
    return all.toArray(new int[0][]);
  }

  List<int[]> links() {
    List<int[]> links = new ArrayList<>();
    for (int i = 0; i < size; i++) {
      for (int k = 0; k < to[i].length; k++) {
        links.add(new int[] {i, to[i][k], toLag[i][k]});
      }
    }
    return links;
  }

  /** What is held, each once. */
  List<Hold> held() {
    List<Hold> held = new ArrayList<>();
    for (int i = 0; i < size; i++) {
      for (Hold hold : holds[i]) {
        if (hold.before() == i) {
          held.add(hold);
        }
      }
    }
    return held;
  }

  /** The same with time running backward: a start there is minus an end here. */
  Core mirrored() {
    int[] r = new int[size];
    int[] l = new int[size];
    Use[][] u = new Use[size][];
    for (int i = 0; i < size; i++) {
      int p = length[i];
      r[i] = latest[i] >= NEVER ? -NEVER : -(latest[i] + p);
      l[i] = release[i] <= -NEVER ? NEVER : -(release[i] + p);
      u[i] = Arrays.stream(uses[i]).map(use -> use.mirrored(p)).toArray(Use[]::new);
    }
    List<int[]> turned = new ArrayList<>();
    for (int[] link : links()) {
      turned.add(new int[] {link[1], link[0], link[2] + length[link[1]] - length[link[0]]});
    }
    List<Hold> held =
        held().stream().map(h -> new Hold(h.after(), h.before(), h.store(), h.amount())).toList();
    Store[] s = Arrays.stream(stores).map(Store::mirrored).toArray(Store[]::new);
    int[] none = new int[size];
    Arrays.fill(none, NEVER);
    return new Core(length, r, l, none, turned, u, held, s);
  }

  int[] mirrored(int[] starts) {
    int[] turned = new int[size];
    for (int i = 0; i < size; i++) {
      turned[i] = -(starts[i] + length[i]);
    }
    return turned;
  }

  /** The same without releases. */
  Core unreleased() {
    int[] none = new int[size];
    Arrays.fill(none, -NEVER);
    return new Core(length, none, latest, due, links(), uses, held(), stores);
  }

  int end(int[] starts) {
    int end = -NEVER;
    for (int i = 0; i < size; i++) {
      end = Math.max(end, starts[i] + length[i]);
    }
    return end;
  }
}
