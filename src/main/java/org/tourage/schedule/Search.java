package org.tourage.schedule;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import java.util.function.IntToLongFunction;
import java.util.function.IntUnaryOperator;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Bounded improvement over generated schedules: many orders, each justified to the right and to the
 * left (V. Valls, F. Ballestín, S. Quintanilla, Justification and RCPSP: a technique that pays,
 * European Journal of Operational Research 165 (2005) 375-386, from memory), the best ones blended
 * to new orders; small problems then by {@link Branching}. The counts are fixed, so that the answer
 * is the same everywhere.
 */
final class Search {
  private static final int KEPT = 8;
  private static final long SEED = 20_011L;

  /** What a search found: starts if any, a bound of the end, and whether nothing better can be. */
  record Found(int @Nullable [] starts, long bound, boolean proven, int generated) {}

  private final Core core;
  private final Core mirror;
  private final int[] none;
  private final int repairs;
  private final Random random = new Random(SEED);
  private int generated;

  Search(Core core) {
    this.core = core;
    this.mirror = core.mirrored();
    none = new int[core.size];
    Arrays.fill(none, -Core.NEVER);
    repairs = 50 + 30 * core.size;
  }

  /** A time by which everything could be done, one after another. */
  static int horizon(Core core) {
    long sum = 0;
    for (int i = 0; i < core.size; i++) {
      sum += core.length[i];
      sum += Math.max(0, core.release[i]);
      for (int lag : core.toLag[i]) {
        sum += Math.max(0, lag);
      }
    }
    for (Core.Store store : core.stores) {
      sum += Math.max(0, store.time()[store.time().length - 1]);
      if (store.change() != null) {
        sum +=
            (long) core.size
                * Arrays.stream(store.change()).flatMapToInt(Arrays::stream).max().orElse(0);
      }
    }
    return (int) Math.min(sum + 1, Core.NEVER - 1);
  }

  /** The earliest end that links alone, or the work of one resource alone, allow. */
  static int bound(Core core, int[] low) {
    int bound = core.end(low);
    for (int s = 0; s < core.stores.length; s++) {
      Core.Store store = core.stores[s];
      long work = 0;
      int first = Core.NEVER;
      int tail = Core.NEVER;
      for (int i = 0; i < core.size; i++) {
        for (Core.Use use : core.uses[i]) {
          if (use.store() == s && use.to() > use.from()) {
            work += (long) use.amount() * (use.to() - use.from());
            first = Math.min(first, low[i] + use.from());
            tail = Math.min(tail, core.length[i] - use.to());
          }
        }
      }
      if (work > 0 && store.most() > 0) {
        long end = first + -Math.floorDiv(-work, store.most()) + tail;
        bound = (int) Math.max(bound, Math.min(end, Core.NEVER));
      }
    }
    return bound;
  }

  /** Everything as early as can be, the last end first of all. */
  Found earliest(int passes, int nodes) {
    int[][] windows = Generation.windows(core);
    if (windows == null) {
      return new Found(null, Core.NEVER, true, 0);
    }
    int bound = bound(core, windows[0]);
    int[][] turned = Generation.windows(mirror);
    List<int[]> pool = new ArrayList<>();
    for (int k = 0; k < passes; k++) {
      int[] order = k == 0 || turned == null ? order(windows[0]) : next(pool, k, turned);
      int[] starts = improve(generate(core, order, none));
      if (starts != null) {
        keep(pool, starts);
        if (core.end(pool.get(0)) <= bound) {
          return new Found(pool.get(0), bound, true, generated);
        }
      }
    }
    int @Nullable [] best = pool.isEmpty() ? null : pool.get(0);
    int before = best == null ? horizon(core) : core.end(best);
    if (nodes > 0) {
      Branching.Found found = Branching.earliest(core, before, nodes);
      if (found.starts() != null) {
        best = found.starts();
      }
      if (found.complete()) {
        return new Found(best, best == null ? Core.NEVER : core.end(best), true, generated);
      }
    }
    return new Found(best, bound, false, generated);
  }

  /**
   * Least late; then as late as can be; then the least presence and the fewest changes. The bound
   * is that of the lateness.
   */
  Found justInTime(int passes) {
    int[][] windows = Generation.windows(core);
    if (windows == null) {
      return new Found(null, Core.NEVER, true, 0);
    }
    Worth worth = new Worth(core);
    int last = 0;
    long bound = 0;
    for (int i = 0; i < core.size; i++) {
      int end = windows[0][i] + core.length[i];
      last = Math.max(last, core.due[i] < Core.NEVER ? Math.max(end, core.due[i]) : end);
      bound += Math.max(0, end - core.due[i]);
    }
    int[] floor = new int[core.size];
    for (int i = 0; i < floor.length; i++) {
      floor[i] = core.due[i] < Core.NEVER ? -core.due[i] : -last;
    }
    Core free = core.unreleased().mirrored();
    int[][] turned = Generation.windows(free, floor);
    List<int[]> pool = new ArrayList<>();
    for (int k = 0; turned != null && k < passes; k++) {
      int[] order =
          k == 0 ? order(turned[0]) : k == 1 ? byGroup(i -> turned[0][i]) : blend(pool, turned);
      int[] best = onTime(free, order, floor, last);
      if (best != null) {
        keep(pool, best, Comparator.comparing(worth::of, Arrays::compare));
      }
    }
    if (pool.isEmpty()) {
      // no due time could be aimed at: what is there at all, as late as can be
      Found any = earliest(Math.min(passes, 10), core.size <= 40 ? 2000 : 0);
      if (any.starts() == null) {
        return new Found(null, Core.NEVER, any.proven(), generated);
      }
      pool.add(any.starts());
    }
    long[] value = worth.of(pool.get(0));
    return new Found(pool.get(0), bound, value[0] == bound && value[1] == 0, generated);
  }

  private int @Nullable [] onTime(Core free, int[] order, int[] floor, int last) {
    int[] turned = generate(free, order, floor);
    if (turned == null) {
      return null;
    }
    int[] starts = free.mirrored(turned);
    boolean fits = true;
    for (int i = 0; i < core.size; i++) {
      fits &= starts[i] >= core.release[i];
    }
    if (fits) {
      return starts;
    }
    int[] forward = generate(core, order(starts), none);
    if (forward == null) {
      return null;
    }
    int end = Math.max(last, core.end(forward));
    int[] right =
        late(
            forward,
            i ->
                core.due[i] < Core.NEVER
                    ? Math.max(core.due[i], forward[i] + core.length[i])
                    : end);
    return right == null ? forward : right;
  }

  /** One linked group after another, the one that is wanted last first. */
  private int[] byGroup(IntToLongFunction low) {
    long[] first = new long[core.members.length];
    for (int g = 0; g < first.length; g++) {
      first[g] = Arrays.stream(core.members[g]).mapToLong(low).min().orElse(0);
    }
    return IntStream.range(0, core.size)
        .boxed()
        .sorted(
            Comparator.comparingLong((Integer i) -> first[core.group[i]])
                .thenComparingInt(i -> core.group[i])
                .thenComparingLong(low::applyAsLong))
        .mapToInt(Integer::intValue)
        .toArray();
  }

  /** Mirrored starts in which one product has changed places with one near it. */
  private long[] swapped(int[] starts) {
    long[] key = new long[core.size];
    Integer[] groups = new Integer[core.members.length];
    int[] end = new int[groups.length];
    for (int g = 0; g < groups.length; g++) {
      groups[g] = g;
      end[g] = Arrays.stream(core.members[g]).map(i -> starts[i] + core.length[i]).max().orElse(0);
    }
    Arrays.sort(groups, Comparator.comparingInt(g -> -end[g]));
    int[] place = new int[groups.length];
    for (int swap = 0; swap < 2; swap++) {
      int one = random.nextInt(groups.length);
      int other = Math.min(groups.length - 1, one + 1 + random.nextInt(3));
      Integer g = groups[one];
      groups[one] = groups[other];
      groups[other] = g;
    }
    for (int k = 0; k < groups.length; k++) {
      place[groups[k]] = k;
    }
    // the place of the product decides, within it the time
    long span = 2L * (core.end(starts) - Arrays.stream(starts).min().orElse(0) + 1);
    for (int i = 0; i < key.length; i++) {
      key[i] = place[core.group[i]] * span - starts[i];
    }
    return key;
  }

  private int[] blend(List<int[]> pool, int[][] turned) {
    int[] low = turned[0];
    double spread = spread(i -> low[i]);
    double noise = 0.02 + 0.2 * random.nextDouble();
    int[] a = pool.isEmpty() ? core.mirrored(low) : pool.get(random.nextInt(pool.size()));
    int[] b = pool.isEmpty() ? core.mirrored(low) : pool.get(random.nextInt(pool.size()));
    double share = random.nextDouble();
    double[] shift = new double[core.members.length];
    for (int g = 0; g < shift.length; g++) {
      shift[g] = noise * spread * (random.nextDouble() - 0.5);
    }
    if (random.nextInt(3) > 0 && core.members.length > 1) {
      long[] key = swapped(pool.isEmpty() ? a : pool.get(0));
      return byGroup(i -> key[i]);
    }
    boolean together = random.nextBoolean();
    double[] key = new double[core.size];
    for (int i = 0; i < key.length; i++) {
      double at = share * a[i] + (1 - share) * b[i] + core.length[i];
      double own = together ? shift[core.group[i]] : noise * spread * (random.nextDouble() - 0.5);
      key[i] = -at + own;
    }
    return order(i -> key[i]);
  }

  private int[] next(List<int[]> pool, int k, int[][] turned) {
    // the tail behind each task: what starts last may wait
    IntToDoubleFunction tail = i -> -(double) turned[0][i];
    double noise = k < 4 ? k * 0.1 : 0.05 + 0.25 * random.nextDouble();
    IntToDoubleFunction base = tail;
    double spread = spread(tail);
    if (pool.size() > 1 && random.nextInt(4) > 0) {
      int[] a = pool.get(random.nextInt(pool.size()));
      int[] b = pool.get(random.nextInt(pool.size()));
      double share = random.nextDouble();
      base = i -> share * a[i] + (1 - share) * b[i];
      spread = core.end(a);
    }
    double[] key = new double[core.size];
    for (int i = 0; i < key.length; i++) {
      key[i] = base.applyAsDouble(i) + noise * spread * (random.nextDouble() - 0.5);
    }
    return order(i -> key[i]);
  }

  private double spread(IntToDoubleFunction key) {
    return Math.max(
        1,
        IntStream.range(0, core.size).mapToDouble(key).max().orElse(0)
            - IntStream.range(0, core.size).mapToDouble(key).min().orElse(0));
  }

  private void keep(List<int[]> pool, int[] starts) {
    keep(pool, starts, Comparator.comparingInt(core::end));
  }

  private void keep(List<int[]> pool, int[] starts, Comparator<int[]> better) {
    for (int[] known : pool) {
      if (Arrays.equals(known, starts)) {
        return;
      }
    }
    pool.add(starts);
    pool.sort(better);
    if (pool.size() > KEPT) {
      pool.remove(KEPT);
    }
  }

  /** Justifies to the right and to the left as long as that helps. */
  private int @Nullable [] improve(int @Nullable [] starts) {
    if (starts == null) {
      return null;
    }
    int[] best = starts;
    boolean better = true;
    while (better) {
      better = false;
      int end = core.end(best);
      int[] right = late(best, i -> end);
      if (right != null) {
        int[] left = generate(core, order(right), none);
        if (left != null && core.end(left) < end) {
          best = left;
          better = true;
        }
      }
    }
    return best;
  }

  /** Everything as late as can be before the given ends, in the order of the given ends. */
  private int @Nullable [] late(int[] starts, IntUnaryOperator until) {
    int[] floor = new int[core.size];
    for (int i = 0; i < floor.length; i++) {
      int end = until.applyAsInt(i);
      floor[i] = end >= Core.NEVER ? -Core.NEVER : -end;
    }
    int[] turned = generate(mirror, order(core.mirrored(starts)), floor);
    return turned == null ? null : mirror.mirrored(turned);
  }

  private int @Nullable [] generate(Core side, int[] order, int[] floor) {
    generated++;
    return Generation.of(side, order, floor, repairs);
  }

  private int[] order(int[] key) {
    return order(i -> key[i]);
  }

  private int[] order(IntToDoubleFunction key) {
    return IntStream.range(0, core.size)
        .boxed()
        .sorted(Comparator.comparingDouble(key::applyAsDouble))
        .mapToInt(Integer::intValue)
        .toArray();
  }
}
