package org.tourage.schedule;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * Tasks, the resources that they share, and the links between them.
 *
 * <pre>{@code
 * SchedulingProblem problem = SchedulingProblem.builder()
 *     .resource(Resource.of("hands", 1))
 *     .resource(Resource.of("oven", 4).changing(Duration.ofMinutes(10)))
 *     .task(Task.of("prove", Duration.ofMinutes(90)))
 *     .task(Task.of("bake", Duration.ofMinutes(18))
 *         .needing(Need.of("oven", 2).at("200 °C")).due(Duration.ofHours(7)))
 *     .link(Link.endToStart("prove", "bake").atMost(Duration.ofMinutes(10)))
 *     .build();
 * }</pre>
 */
public final class SchedulingProblem implements Serializable {
  private static final long serialVersionUID = 1L;
  private static final int MOST_TASKS = 50_000;

  private final List<Resource> resources;
  private final List<Task> tasks;
  private final List<Link> links;
  private final HashMap<String, Task> byName = new HashMap<>();
  private final HashMap<String, Link> endings = new HashMap<>();

  private SchedulingProblem(List<Resource> resources, List<Task> tasks, List<Link> links) {
    this.resources = List.copyOf(resources);
    this.tasks = List.copyOf(tasks);
    this.links = List.copyOf(links);
    tasks.forEach(t -> byName.put(t.name(), t));
    links.forEach(l -> endings.putIfAbsent(l.first(), l));
  }

  /** Collects a problem. It can be built once. */
  public static final class Builder {
    private final Map<String, Resource> resources = new LinkedHashMap<>();
    private final Map<String, Task> tasks = new LinkedHashMap<>();
    private final List<Link> links = new ArrayList<>();
    private boolean built;

    private Builder() {}

    /**
     * Adds a resource.
     *
     * @param resource the resource
     * @return this
     * @throws BakeryException if there is one of that name
     */
    public Builder resource(Resource resource) {
      open();
      Objects.requireNonNull(resource, "resource");
      once("resource", resource.name(), resources.putIfAbsent(resource.name(), resource));
      return this;
    }

    /**
     * Adds a task.
     *
     * @param task the task
     * @return this
     * @throws BakeryException if there is one of that name
     */
    public Builder task(Task task) {
      open();
      Objects.requireNonNull(task, "task");
      once("task", task.name(), tasks.putIfAbsent(task.name(), task));
      return this;
    }

    /**
     * Adds a link. Several links between two tasks all hold.
     *
     * @param link the link
     * @return this
     */
    public Builder link(Link link) {
      open();
      links.add(Objects.requireNonNull(link, "link"));
      return this;
    }

    /**
     * The problem.
     *
     * @return the problem
     * @throws BakeryException if a name is not known, if more is needed than there is, if a setting
     *     is named where there are none or none where there are, or if a stretching task has not
     *     one follower
     */
    public SchedulingProblem build() {
      open();
      if (tasks.isEmpty()) {
        throw new BakeryException(
            Reason.MISSING, "a problem without tasks", "none", "add at least one task");
      }
      if (tasks.size() > MOST_TASKS) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "too many tasks",
            Integer.toString(tasks.size()),
            "give at most " + MOST_TASKS);
      }
      for (Task task : tasks.values()) {
        task.needs().forEach(need -> check(task.name(), need));
        if (task.stretches()) {
          follower(task);
        }
      }
      for (Link link : links) {
        for (String name : List.of(link.first(), link.then())) {
          if (!tasks.containsKey(name)) {
            throw BakeryException.unknownName("no such task", name, tasks.keySet());
          }
        }
        for (Need need : link.kept()) {
          check(link.toString(), need);
        }
      }
      built = true;
      return new SchedulingProblem(
          List.copyOf(resources.values()), List.copyOf(tasks.values()), links);
    }

    private void follower(Task task) {
      if (task.needs().stream().anyMatch(need -> !need.enter().isEmpty())) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            "a task that stretches can't hold a setting",
            task.toString(),
            "give it one duration, or need something without settings");
      }
      List<Link> after = links.stream().filter(l -> l.first().equals(task.name())).toList();
      boolean one =
          after.size() == 1
              && after.get(0).from() == Link.From.END
              && after.get(0).least().isZero()
              && after.get(0).most().isEmpty()
              && after.get(0).kept().isEmpty();
      if (!one) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            "a task that stretches lasts until the one task that follows it",
            "\"" + task.name() + "\" has " + after,
            "give it one plain endToStart link");
      }
    }

    private void check(String who, Need need) {
      Resource resource = resources.get(need.resource());
      if (resource == null) {
        throw BakeryException.unknownName(
            "no such resource for \"" + who + "\"", need.resource(), resources.keySet());
      }
      int most = new Calendar(resource).most();
      if (need.amount() > most) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            "\"" + who + "\" needs more of " + resource.name() + " than there ever is",
            need.amount() + " of " + most,
            "split the task, or give the resource more");
      }
      boolean settings = resource.hasSettings();
      if (settings == need.enter().isEmpty()) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            settings
                ? "\"" + who + "\" names no setting of " + resource.name()
                : "\"" + who + "\" names a setting, and " + resource.name() + " has none",
            need.toString(),
            settings ? "say Need.at(setting)" : "say Resource.changing(time), or leave it out");
      }
    }

    private void open() {
      if (built) {
        throw new BakeryException(
            Reason.INCONSISTENT, "this builder was used", "build()", "begin a new one");
      }
    }

    private static void once(String what, String name, @Nullable Object known) {
      if (known != null) {
        throw new BakeryException(
            Reason.INCONSISTENT, "two of one name", what + " \"" + name + "\"", "name them apart");
      }
    }
  }

  /**
   * Begins a problem.
   *
   * @return an empty builder
   */
  public static Builder builder() {
    return new Builder();
  }

  /**
   * The resources.
   *
   * @return the resources in the order in which they were added
   */
  public List<Resource> resources() {
    return resources;
  }

  /**
   * The tasks.
   *
   * @return the tasks in the order in which they were added
   */
  public List<Task> tasks() {
    return tasks;
  }

  /**
   * The links.
   *
   * @return the links in the order in which they were added
   */
  public List<Link> links() {
    return links;
  }

  /**
   * A task by its name.
   *
   * @param name the name
   * @return the task, if there is one
   */
  public Optional<Task> find(String name) {
    return Optional.ofNullable(byName.get(Objects.requireNonNull(name, "name")));
  }

  /** The first task of a link. */
  Task first(Link link) {
    return Objects.requireNonNull(byName.get(link.first()), link.first());
  }

  /** The link to the one task that ends a stretching task. */
  @Nullable Link ending(Task task) {
    return task.stretches() ? endings.get(task.name()) : null;
  }

  Core core() {
    return new CoreOf(this).core();
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof SchedulingProblem that
        && resources.equals(that.resources)
        && tasks.equals(that.tasks)
        && links.equals(that.links);
  }

  @Override
  public int hashCode() {
    return Objects.hash(resources, tasks, links);
  }

  /** {@code 12 tasks, 3 resources, 11 links}. */
  @Override
  public String toString() {
    return tasks.size() + " tasks, " + resources.size() + " resources, " + links.size() + " links";
  }
}
