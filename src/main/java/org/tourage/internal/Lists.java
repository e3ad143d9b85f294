package org.tourage.internal;

import static java.util.Objects.requireNonNull;

import java.util.List;

/** Copies of lists that name what is missing. */
public final class Lists {
  private Lists() {}

  /** The list as it can't be changed; a null in it is refused as {@code steps[2]}. */
  public static <T> List<T> copy(List<? extends T> list, String name) {
    requireNonNull(list, name);
    int i = 0;
    for (T element : list) {
      requireNonNull(element, name + "[" + i++ + "]");
    }
    return List.copyOf(list);
  }

  /** The same of an array. */
  public static <T> List<T> copy(T[] array, String name) {
    requireNonNull(array, name);
    return copy(java.util.Arrays.asList(array), name);
  }
}
