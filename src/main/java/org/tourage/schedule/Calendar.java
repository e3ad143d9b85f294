package org.tourage.schedule;

import java.util.TreeMap;

/** The capacity of a resource over time, as steps. */
final class Calendar {
  final int[] time;
  final int[] capacity;

  Calendar(Resource resource) {
    if (resource.openings().isEmpty()) {
      time = new int[] {-Core.NEVER};
      capacity = new int[] {resource.capacity()};
      return;
    }
    TreeMap<Integer, Integer> change = new TreeMap<>();
    change.put(-Core.NEVER, 0);
    for (Resource.Opening opening : resource.openings()) {
      change.merge((int) opening.from().toSeconds(), opening.capacity(), Integer::sum);
      change.merge((int) opening.to().toSeconds(), -opening.capacity(), Integer::sum);
    }
    time = new int[change.size()];
    capacity = new int[change.size()];
    int k = 0;
    int sum = 0;
    for (var step : change.entrySet()) {
      sum += step.getValue();
      time[k] = step.getKey();
      capacity[k++] = sum;
    }
  }

  int most() {
    int most = 0;
    for (int c : capacity) {
      most = Math.max(most, c);
    }
    return most;
  }
}
