package org.tourage.schedule;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Complete search for the earliest end of a small problem: where the earliest starts overload a
 * resource, one of a least set that is too much has to come before another; each such order is
 * tried with what links then imply, and ruled out for the next (after B. De Reyck, W. Herroelen, A
 * branch-and-bound procedure for the resource-constrained project scheduling problem with
 * generalized precedence relations, European Journal of Operational Research 111 (1998) 152-174,
 * from memory; here by pairs). Bounded by a count of nodes, so that it gives the same everywhere.
 */
final class Branching {
  /** Something that takes of a store, from an offset to a start to an offset to a start. */
  private record Part(
      int first,
      int firstOffset,
      int last,
      int lastOffset,
      int store,
      int amount,
      int enter,
      int leave,
      boolean hold) {
    int begin(int[] low) {
      return low[first] + firstOffset;
    }

    int end(int[] low) {
      return low[last] + lastOffset;
    }
  }

  /** One way out of a conflict: links to add, or a bound of one start. */
  private record Way(int[][] links, int task, int low, int high, int bound) {}

  private final Core core;
  private final List<List<Part>> parts = new ArrayList<>();
  private final int[][] more;
  private final int[][] moreLag;
  private final int[] moreCount;
  private final int[][] back;
  private final int[][] backLag;
  private final int[] backCount;
  private final int[] queue;
  private final boolean[] queued;
  private int nodes;
  private int best;
  private int @Nullable [] bestStarts;
  private boolean complete = true;

  private Branching(Core core, int best, int nodes) {
    this.core = core;
    this.best = best;
    this.nodes = nodes;
    int n = core.size;
    more = new int[n][8];
    moreLag = new int[n][8];
    moreCount = new int[n];
    back = new int[n][8];
    backLag = new int[n][8];
    backCount = new int[n];
    queue = new int[n + 1];
    queued = new boolean[n];
    for (int s = 0; s < core.stores.length; s++) {
      parts.add(new ArrayList<>());
    }
    for (int i = 0; i < n; i++) {
      for (Core.Use u : core.uses[i]) {
        parts
            .get(u.store())
            .add(
                new Part(
                    i, u.from(), i, u.to(), u.store(), u.amount(), u.enter(), u.leave(), false));
      }
      for (Core.Hold h : core.holds[i]) {
        if (h.before() == i) {
          parts
              .get(h.store())
              .add(new Part(i, core.length[i], h.after(), 0, h.store(), h.amount(), -1, -1, true));
        }
      }
    }
  }

  /**
   * What the search came to: starts earlier than what was known, or null; and whether it is all.
   */
  record Found(int @Nullable [] starts, boolean complete) {}

  /**
   * Searches for an end before {@code before}.
   *
   * @param nodes the most nodes
   */
  static Found earliest(Core core, int before, int nodes) {
    Branching b = new Branching(core, before, nodes);
    int[][] windows = Generation.windows(core);
    if (windows == null) {
      return new Found(null, true);
    }
    b.search(windows[0], windows[1]);
    return new Found(b.bestStarts, b.complete);
  }

  private void search(int[] low, int[] high) {
    if (core.end(low) >= best) {
      return;
    }
    if (nodes-- <= 0) {
      complete = false;
      return;
    }
    List<Way> ways = ways(low, high);
    if (ways == null) {
      best = core.end(low);
      bestStarts = low.clone();
      return;
    }
    ways.sort(Comparator.comparingInt(Way::bound));
    int added = 0;
    int[][] undo = new int[ways.size()][];
    int[] lows = low;
    int[] highs = high;
    for (Way way : ways) {
      for (int[] link : way.links) {
        add(link);
      }
      int[] l = lows.clone();
      int[] h = highs.clone();
      if (narrow(l, h, way)) {
        search(l, h);
      }
      for (int k = way.links.length - 1; k >= 0; k--) {
        drop(way.links[k]);
      }
      if (nodes <= 0) {
        complete = false;
        break;
      }
      // what was searched needs no second visit: the contrary holds for the rest
      if (way.links.length == 1) {
        int[] link = way.links[0];
        int[] contrary = {link[1], link[0], 1 - link[2]};
        add(contrary);
        undo[added++] = contrary;
        lows = lows.clone();
        highs = highs.clone();
        if (!spread(lows, highs, link[0], link[1])) {
          break;
        }
      }
    }
    while (added > 0) {
      drop(undo[--added]);
    }
  }

  private boolean narrow(int[] low, int[] high, Way way) {
    if (way.task >= 0) {
      low[way.task] = Math.max(low[way.task], way.low);
      high[way.task] = Math.min(high[way.task], way.high);
      return low[way.task] <= high[way.task] && spread(low, high, way.task, way.task);
    }
    for (int[] link : way.links) {
      if (!spread(low, high, link[0], link[1])) {
        return false;
      }
    }
    return true;
  }

  /** The ways out of the first conflict of the earliest starts; null if there is none. */
  private @Nullable List<Way> ways(int[] low, int[] high) {
    int at = Integer.MAX_VALUE;
    List<Part> conflict = List.of();
    for (int s = 0; s < core.stores.length; s++) {
      Core.Store store = core.stores[s];
      List<Part> all = parts.get(s);
      for (Part p : all) {
        int begin = p.begin(low);
        int end = p.end(low);
        if (begin >= end) {
          continue;
        }
        for (int t : times(store, begin, end)) {
          if (t >= at) {
            continue;
          }
          int sum = 0;
          List<Part> active = new ArrayList<>();
          for (Part q : all) {
            if (q.begin(low) <= t && t < q.end(low)) {
              sum += q.amount;
              active.add(q);
            }
          }
          if (sum > capacity(store, t)) {
            at = t;
            conflict = least(active, sum, capacity(store, t));
          }
        }
      }
      if (store.change() != null) {
        for (int i = 0; i < all.size(); i++) {
          for (int j = i + 1; j < all.size(); j++) {
            Part p = all.get(i);
            Part q = all.get(j);
            int t = Math.max(p.begin(low), q.begin(low));
            if (t < at && quarrel(store, p, q, low)) {
              at = t;
              conflict = List.of(p, q);
            }
          }
        }
      }
    }
    return conflict.isEmpty() ? null : ways(conflict, at, low, high);
  }

  private static int[] times(Core.Store store, int begin, int end) {
    int[] inside = Arrays.stream(store.time()).filter(t -> t > begin && t < end).toArray();
    int[] all = Arrays.copyOf(inside, inside.length + 1);
    all[inside.length] = begin;
    return all;
  }

  private static int segment(Core.Store store, int t) {
    int k = Arrays.binarySearch(store.time(), t);
    return k >= 0 ? k : -k - 2;
  }

  private static int capacity(Core.Store store, int t) {
    return store.capacity()[segment(store, t)];
  }

  private static boolean quarrel(Core.Store store, Part p, Part q, int[] low) {
    int[][] change = store.change();
    if (change == null || together(p, q, low)) {
      return false;
    }
    return q.begin(low) < p.end(low) + change[p.leave][q.enter]
        && p.begin(low) < q.end(low) + change[q.leave][p.enter];
  }

  private static boolean together(Part p, Part q, int[] low) {
    return p.enter == q.enter
        && p.leave == q.leave
        && (p.enter == p.leave || p.begin(low) == q.begin(low) && p.end(low) == q.end(low));
  }

  private static List<Part> least(List<Part> active, int sum, int capacity) {
    List<Part> kept = new ArrayList<>(active);
    int rest = sum;
    kept.sort(Comparator.comparingInt((Part p) -> p.amount));
    for (int k = 0; k < kept.size(); ) {
      int amount = kept.get(k).amount;
      if (rest - amount > capacity) {
        rest -= amount;
        kept.remove(k);
      } else {
        k++;
      }
    }
    return kept;
  }

  private List<Way> ways(List<Part> conflict, int at, int[] low, int[] high) {
    List<Way> ways = new ArrayList<>();
    Core.Store store = core.stores[conflict.get(0).store];
    for (Part p : conflict) {
      for (Part q : conflict) {
        if (p != q) {
          int wait = 0;
          int[][] change = store.change();
          if (change != null && !(p.enter == q.enter && p.leave == q.leave && p.enter == p.leave)) {
            wait = change[p.leave][q.enter];
          }
          consider(
              ways,
              low,
              high,
              new int[][] {{p.last, q.first, p.lastOffset + wait - q.firstOffset}},
              -1,
              0,
              0);
        }
      }
      if (p.hold) {
        consider(ways, low, high, new int[][] {{p.last, p.first, -core.length[p.first]}}, -1, 0, 0);
      }
      int k = segment(store, at);
      if (store.capacity()[k] < store.most()) {
        int next = k + 1 < store.time().length ? store.time()[k + 1] : Core.NEVER;
        consider(ways, low, high, new int[0][], p.first, next - p.firstOffset, Core.NEVER);
        consider(
            ways, low, high, new int[0][], p.last, -Core.NEVER, store.time()[k] - p.lastOffset);
      }
    }
    if (conflict.size() == 2) {
      Part p = conflict.get(0);
      Part q = conflict.get(1);
      boolean one =
          p.enter == q.enter
              && p.leave == q.leave
              && p.end(low) - p.begin(low) == q.end(low) - q.begin(low);
      if (p.enter >= 0 && p.enter != p.leave && one) {
        int lag = p.firstOffset - q.firstOffset;
        consider(
            ways,
            low,
            high,
            new int[][] {{p.first, q.first, lag}, {q.first, p.first, -lag}},
            -1,
            0,
            0);
      }
    }
    return ways;
  }

  private void consider(
      List<Way> ways, int[] low, int[] high, int[][] links, int task, int least, int most) {
    for (int[] link : links) {
      if (link[0] == link[1]) {
        return;
      }
    }
    Way way = new Way(links, task, least, most, 0);
    for (int[] link : links) {
      add(link);
    }
    int[] l = low.clone();
    int[] h = high.clone();
    if (narrow(l, h, way) && core.end(l) < best) {
      ways.add(new Way(links, task, least, most, core.end(l)));
    }
    for (int k = links.length - 1; k >= 0; k--) {
      drop(links[k]);
    }
  }

  private void add(int[] link) {
    push(more, moreLag, moreCount, link[0], link[1], link[2]);
    push(back, backLag, backCount, link[1], link[0], link[2]);
  }

  private static void push(int[][] ends, int[][] lags, int[] count, int i, int j, int lag) {
    if (count[i] == ends[i].length) {
      ends[i] = Arrays.copyOf(ends[i], 2 * count[i]);
      lags[i] = Arrays.copyOf(lags[i], 2 * count[i]);
    }
    ends[i][count[i]] = j;
    lags[i][count[i]++] = lag;
  }

  private void drop(int[] link) {
    moreCount[link[0]]--;
    backCount[link[1]]--;
  }

  /** Carries new links on; false if the windows contradict each other. */
  private boolean spread(int[] low, int[] high, int first, int second) {
    return flow(low, high, first, second, true) && flow(low, high, second, first, false);
  }

  private boolean flow(int[] low, int[] high, int first, int second, boolean forward) {
    int head = 0;
    int count = 1;
    queue[0] = first;
    queued[first] = true;
    if (second != first) {
      queue[count++] = second;
      queued[second] = true;
    }
    boolean fits = true;
    while (count > 0) {
      int i = queue[head];
      head = (head + 1) % queue.length;
      count--;
      queued[i] = false;
      if (!fits) {
        continue;
      }
      int[] next = forward ? core.to[i] : core.from[i];
      int[] lags = forward ? core.toLag[i] : core.fromLag[i];
      int[] next2 = forward ? more[i] : back[i];
      int[] lags2 = forward ? moreLag[i] : backLag[i];
      int extra = forward ? moreCount[i] : backCount[i];
      for (int k = 0; k < next.length + extra && fits; k++) {
        int j = k < next.length ? next[k] : next2[k - next.length];
        int lag = k < next.length ? lags[k] : lags2[k - next.length];
        boolean moved = false;
        if (forward) {
          if (low[i] + lag > low[j]) {
            low[j] = low[i] + lag;
            moved = true;
          }
        } else if (high[i] < Core.NEVER && high[i] - lag < high[j]) {
          high[j] = high[i] - lag;
          moved = true;
        }
        if (moved) {
          // ends too late to be better, or outside its window: no need to go on
          fits = low[j] <= high[j] && low[j] + core.length[j] < best;
          if (!queued[j]) {
            queue[(head + count++) % queue.length] = j;
            queued[j] = true;
          }
        }
      }
    }
    return fits;
  }
}
