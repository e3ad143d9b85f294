package org.tourage.schedule;

import java.util.Arrays;

/** What is free of one store over time: steps that can be taken from and given back. */
final class Profile {
  private int[] time;
  private int[] free;
  private int size;

  Profile(Core.Store store) {
    size = store.time().length;
    time = Arrays.copyOf(store.time(), Math.max(16, 2 * size));
    free = Arrays.copyOf(store.capacity(), Math.max(16, 2 * size));
  }

  /** The step that holds the time. */
  private int step(int at) {
    int k = Arrays.binarySearch(time, 0, size, at);
    return k >= 0 ? k : -k - 2;
  }

  /** The first step at or after {@code from} and before {@code to} with too little, or -1. */
  private int lack(int from, int to, int amount) {
    for (int k = step(from); k < size && time[k] < to; k++) {
      if (free[k] < amount) {
        return k;
      }
    }
    return -1;
  }

  /** When the first lack in the span ends; {@link Integer#MIN_VALUE} if there is none. */
  int lackEnd(int from, int to, int amount) {
    int k = from < to ? lack(from, to, amount) : -1;
    if (k < 0) {
      return Integer.MIN_VALUE;
    }
    while (k + 1 < size && free[k + 1] < amount) {
      k++;
    }
    return k + 1 < size ? time[k + 1] : Core.NEVER;
  }

  /** When the first lack from there on begins, at the earliest {@code from}. */
  int lackStart(int from, int amount) {
    int k = lack(from, Core.NEVER, amount);
    return k < 0 ? Core.NEVER : Math.max(from, time[k]);
  }

  /** Whether more is taken than there is. */
  boolean isOverdrawn() {
    for (int k = 0; k < size; k++) {
      if (free[k] < 0) {
        return true;
      }
    }
    return false;
  }

  void take(int from, int to, int amount) {
    if (from >= to) {
      return;
    }
    int first = cut(from);
    int last = cut(to);
    for (int k = first; k < last; k++) {
      free[k] -= amount;
    }
  }

  private int cut(int at) {
    int k = step(at);
    if (time[k] == at) {
      return k;
    }
    if (size == time.length) {
      time = Arrays.copyOf(time, 2 * size);
      free = Arrays.copyOf(free, 2 * size);
    }
    System.arraycopy(time, k + 1, time, k + 2, size - k - 1);
    System.arraycopy(free, k + 1, free, k + 2, size - k - 1);
    time[k + 1] = at;
    free[k + 1] = free[k];
    size++;
    return k + 1;
  }
}
