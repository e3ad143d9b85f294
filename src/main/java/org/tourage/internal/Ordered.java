package org.tourage.internal;

import static java.util.Objects.requireNonNull;

import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;

/**
 * Copies of collections for values: they can't be changed, have no null in them, and keep the order
 * in which they were given, so that what is printed is the same in every run of the machine. {@code
 * Set.copyOf} and {@code Map.copyOf} shuffle with a salt of the run.
 */
public final class Ordered {
  private Ordered() {}

  /**
   * A copy of a set.
   *
   * @param <T> what is in it
   * @param given the elements, in the order to keep
   * @return the copy
   */
  public static <T> Set<T> set(Collection<? extends T> given) {
    given.forEach(element -> requireNonNull(element, "element"));
    return Collections.unmodifiableSet(new LinkedHashSet<>(given));
  }

  /**
   * A copy of a map.
   *
   * @param <K> the keys
   * @param <V> the values
   * @param given the entries, in the order to keep
   * @return the copy
   */
  public static <K, V> Map<K, V> map(Map<? extends K, ? extends V> given) {
    given.forEach(
        (key, value) -> {
          requireNonNull(key, "key");
          requireNonNull(value, "value");
        });
    return Collections.unmodifiableMap(new LinkedHashMap<>(given));
  }
}
