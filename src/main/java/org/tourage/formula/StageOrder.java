package org.tourage.formula;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * Which stage takes which, and an order in which every stage comes after all that it takes. Each
 * stage is looked at once, so that a chain of a thousand is worked as fast as a thousand stages
 * that know nothing of each other.
 */
final class StageOrder implements Serializable {
  private static final long serialVersionUID = 1L;

  /** The place of each stage by its name; only looked up, never walked. */
  private final HashMap<String, Integer> places;

  /** The places that each stage takes. */
  private final int[][] taken;

  /** The places, each after all that it takes. */
  private final int[] order;

  private StageOrder(HashMap<String, Integer> places, int[][] taken, int[] order) {
    this.places = places;
    this.taken = taken;
    this.order = order;
  }

  /**
   * Orders stages.
   *
   * @param names the names
   * @param takes for each stage the names that it takes
   * @throws BakeryException if two have one name, one takes what is not there or takes it twice, or
   *     stages take each other in a ring
   */
  static StageOrder of(List<String> names, List<List<String>> takes) {
    HashMap<String, Integer> places = new HashMap<>();
    for (int i = 0; i < names.size(); i++) {
      if (places.put(names.get(i), i) != null) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            "two stages have one name",
            "\"" + names.get(i) + "\"",
            "give each stage a name of its own");
      }
    }
    int[][] taken = new int[names.size()][];
    for (int i = 0; i < taken.length; i++) {
      taken[i] = places(names, i, takes.get(i), places);
    }
    return new StageOrder(places, taken, order(names, taken));
  }

  private static int[] places(
      List<String> names, int taker, List<String> takes, Map<String, Integer> places) {
    int[] found = new int[takes.size()];
    Set<String> before = new HashSet<>();
    for (int k = 0; k < found.length; k++) {
      Integer place = places.get(takes.get(k));
      if (place == null || !before.add(takes.get(k))) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            place == null ? "no such stage to take" : "a stage takes another twice",
            "\"" + names.get(taker) + "\" takes \"" + takes.get(k) + "\"",
            place == null
                ? "name an existing stage; there are " + String.join(", ", names)
                : "write it once");
      }
      found[k] = place;
    }
    return found;
  }

  private static int[] order(List<String> names, int[][] taken) {
    int n = taken.length;
    int[] open = new int[n];
    List<List<Integer>> takers = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      takers.add(new ArrayList<>());
    }
    for (int i = 0; i < n; i++) {
      open[i] = taken[i].length;
      for (int t : taken[i]) {
        takers.get(t).add(i);
      }
    }
    int[] order = new int[n];
    int done = 0;
    for (int i = 0; i < n; i++) {
      if (open[i] == 0) {
        order[done++] = i;
      }
    }
    for (int next = 0; next < done; next++) {
      for (int taker : takers.get(order[next])) {
        if (--open[taker] == 0) {
          order[done++] = taker;
        }
      }
    }
    if (done < n) {
      throw ring(names, taken, open);
    }
    return order;
  }

  /** Walks along stages that still wait until one comes again. */
  private static BakeryException ring(List<String> names, int[][] taken, int[] open) {
    int at = 0;
    while (open[at] == 0) {
      at++;
    }
    List<Integer> path = new ArrayList<>();
    boolean[] seen = new boolean[open.length];
    while (!seen[at]) {
      seen[at] = true;
      path.add(at);
      at = Arrays.stream(taken[at]).filter(t -> open[t] > 0).findFirst().orElseThrow();
    }
    List<Integer> ring = path.subList(path.indexOf(at), path.size());
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < ring.size() && i < 5; i++) {
      text.append('"').append(names.get(ring.get(i))).append("\" takes ");
    }
    text.append(ring.size() > 5 ? "… takes " : "").append('"').append(names.get(at)).append('"');
    return new BakeryException(
        Reason.INCONSISTENT,
        "stages take each other in a ring",
        text.toString(),
        "let one of them start without the others");
  }

  /** The place of a stage, or −1. */
  int place(String name) {
    return places.getOrDefault(name, -1);
  }

  int size() {
    return order.length;
  }

  /** The stage that is worked at a point of the order. */
  int at(int point) {
    return order[point];
  }

  /** What a stage takes; not to be changed. */
  int[] taken(int stage) {
    return taken[stage];
  }
}
