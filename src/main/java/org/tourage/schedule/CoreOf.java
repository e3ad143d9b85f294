package org.tourage.schedule;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Turns a problem into whole numbers. */
final class CoreOf {
  private final SchedulingProblem problem;
  private final Map<String, Integer> taskIndex = new HashMap<>();
  private final Map<String, Integer> storeIndex = new HashMap<>();
  private final Map<String, Integer> settingIndex = new HashMap<>();
  private final List<String> settings = new ArrayList<>();
  private final List<int[]> links = new ArrayList<>();
  private final List<Core.Hold> holds = new ArrayList<>();

  CoreOf(SchedulingProblem problem) {
    this.problem = problem;
    problem.tasks().forEach(t -> taskIndex.put(t.name(), taskIndex.size()));
    problem.resources().forEach(r -> storeIndex.put(r.name(), storeIndex.size()));
  }

  Core core() {
    List<Task> tasks = problem.tasks();
    int n = tasks.size();
    int[] length = new int[n];
    int[] release = new int[n];
    int[] latest = new int[n];
    int[] due = new int[n];
    Core.Use[][] uses = new Core.Use[n][];
    for (int i = 0; i < n; i++) {
      Task task = tasks.get(i);
      int p = (int) task.least().toSeconds();
      length[i] = p;
      release[i] = task.release().map(t -> (int) t.toSeconds()).orElse(0);
      latest[i] = task.deadline().map(t -> (int) t.toSeconds() - p).orElse(Core.NEVER);
      due[i] = task.due().map(t -> (int) t.toSeconds()).orElse(Core.NEVER);
      uses[i] =
          task.needs().stream()
              .map(need -> use(need, p))
              .filter(use -> use.from() < use.to())
              .toArray(Core.Use[]::new);
      Link ending = problem.ending(task);
      if (ending != null) {
        stretch(task, i, index(taskIndex, ending.then()));
      }
    }
    problem.links().forEach(l -> link(l, length));
    Core.Store[] stores = problem.resources().stream().map(this::store).toArray(Core.Store[]::new);
    return new Core(length, release, latest, due, links, uses, holds, stores);
  }

  private void stretch(Task task, int i, int follower) {
    links.add(new int[] {follower, i, -(int) task.greatest().toSeconds()});
    for (Need need : task.needs()) {
      if (need.part() == Need.Part.WHOLE) {
        holds.add(new Core.Hold(i, follower, index(storeIndex, need.resource()), need.amount()));
      }
    }
  }

  private Core.Use use(Need need, int p) {
    int time = (int) need.length().toSeconds();
    int from = need.part() == Need.Part.END ? p - time : 0;
    int to = need.part() == Need.Part.START ? time : p;
    return new Core.Use(
        index(storeIndex, need.resource()),
        need.amount(),
        from,
        to,
        setting(need.enter()),
        setting(need.leave()));
  }

  private static int index(Map<String, Integer> names, String name) {
    return Objects.requireNonNull(names.get(name), name);
  }

  private int setting(String name) {
    if (name.isEmpty()) {
      return -1;
    }
    return settingIndex.computeIfAbsent(
        name,
        k -> {
          settings.add(k);
          return settings.size() - 1;
        });
  }

  private void link(Link link, int[] length) {
    int i = index(taskIndex, link.first());
    int j = index(taskIndex, link.then());
    int base = link.from() == Link.From.END ? length[i] : 0;
    links.add(new int[] {i, j, base + (int) link.least().toSeconds()});
    link.most().ifPresent(most -> links.add(new int[] {j, i, -base - (int) most.toSeconds()}));
    for (Need need : link.kept()) {
      holds.add(new Core.Hold(i, j, index(storeIndex, need.resource()), need.amount()));
    }
  }

  private Core.Store store(Resource resource) {
    Calendar calendar = new Calendar(resource);
    int @Nullable [][] change = null;
    if (resource.hasSettings()) {
      int k = settings.size();
      change = new int[k][k];
      for (int a = 0; a < k; a++) {
        for (int b = 0; b < k; b++) {
          change[a][b] =
              (int) resource.change(settings.get(a), settings.get(b)).orElseThrow().toSeconds();
        }
      }
    }
    return new Core.Store(calendar.time, calendar.capacity, change, resource.attended());
  }
}
