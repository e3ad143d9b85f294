package org.tourage.schedule;

import java.io.Serializable;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * Something that tasks share and give back: hands, a mixer, an oven by trays, a shelf. Its capacity
 * may change over time (shifts), and it may have settings that take time to change (an oven's
 * temperature).
 */
public final class Resource implements Serializable {
  private static final long serialVersionUID = 1L;
  private static final int MOST_OPENINGS = 1000;

  /**
   * A time for which there is some capacity.
   *
   * @param from when it begins, since the origin
   * @param to when it ends
   * @param capacity how much there is
   */
  public record Opening(Duration from, Duration to, int capacity) implements Serializable {
    /**
     * Checks what it is made of.
     *
     * @param from when it begins, since the origin
     * @param to when it ends
     * @param capacity how much there is
     */
    public Opening {
      int a = Seconds.of("the begin of an opening", from);
      int b = Seconds.of("the end of an opening", to);
      Seconds.amount("an opening needs some capacity", capacity);
      if (b <= a) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            "an opening ends before it begins",
            ClockText.at(from) + " to " + ClockText.at(to),
            "give the begin first");
      }
    }
  }

  /**
   * How long a change of setting takes.
   *
   * @param from the setting before
   * @param to the setting after
   * @param time how long it takes with nothing inside
   */
  public record Change(String from, String to, Duration time) implements Serializable {
    /**
     * Checks what it is made of.
     *
     * @param from the setting before
     * @param to the setting after
     * @param time how long it takes with nothing inside
     */
    public Change {
      from = Seconds.name("setting", from);
      to = Seconds.name("setting", to);
      Seconds.atLeastZero("the time of a change", time);
    }
  }

  private final String name;
  private final int capacity;
  private final List<Opening> openings;
  private final @Nullable Duration usualChange;
  private final List<Change> changes;
  private final boolean attended;

  private Resource(
      String name,
      int capacity,
      List<Opening> openings,
      @Nullable Duration usualChange,
      List<Change> changes,
      boolean attended) {
    this.name = name;
    this.capacity = capacity;
    this.openings = List.copyOf(openings);
    this.usualChange = usualChange;
    this.changes = List.copyOf(changes);
    this.attended = attended;
  }

  /**
   * A resource that is always there.
   *
   * @param name its name
   * @param capacity how much can be taken at once, 1 or more
   * @return the resource
   */
  public static Resource of(String name, int capacity) {
    return new Resource(
        Seconds.name("resource", name),
        Seconds.amount("a resource needs some capacity", capacity),
        List.of(),
        null,
        List.of(),
        false);
  }

  /**
   * The same, there only for a time; said again, for that time as well. Openings that overlap add
   * up, like shifts.
   *
   * @param from when it begins, since the origin
   * @param to when it ends
   * @param count how much there is then
   * @return the resource
   */
  public Resource open(Duration from, Duration to, int count) {
    List<Opening> more = new ArrayList<>(openings);
    more.add(new Opening(from, to, count));
    if (more.size() > MOST_OPENINGS) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no resource has so many openings",
          Integer.toString(more.size()),
          "give at most " + MOST_OPENINGS);
    }
    return new Resource(name, capacity, more, usualChange, changes, attended);
  }

  /**
   * The same with settings: needs of different settings do not overlap, and a change takes a time
   * in which nothing is inside. Any two needs keep the time of a change between them, whatever
   * comes in between: a change over a third setting is never quicker.
   *
   * @param time how long a change takes unless {@link #changing(String, String, Duration)} says so
   * @return the resource
   */
  public Resource changing(Duration time) {
    Seconds.atLeastZero("the time of a change", time);
    return new Resource(name, capacity, openings, time, changes, attended);
  }

  /**
   * The same with the time of one change.
   *
   * @param from the setting before
   * @param to the setting after
   * @param time how long it takes
   * @return the resource
   */
  public Resource changing(String from, String to, Duration time) {
    List<Change> more = new ArrayList<>(changes);
    more.removeIf(c -> c.from().equals(from) && c.to().equals(to));
    more.add(new Change(from, to, time));
    return new Resource(
        name,
        capacity,
        openings,
        usualChange == null ? Duration.ZERO : usualChange,
        more,
        attended);
  }

  /**
   * The same, as someone who is there from the first to the last use of a day: a schedule keeps
   * that time short where nothing more important is at stake.
   *
   * @return the resource
   */
  public Resource attending() {
    return new Resource(name, capacity, openings, usualChange, changes, true);
  }

  /**
   * Whether it is someone who is there from the first to the last use of a day.
   *
   * @return true if so
   */
  public boolean attended() {
    return attended;
  }

  /**
   * The name.
   *
   * @return the name
   */
  public String name() {
    return name;
  }

  /**
   * The capacity where no opening says otherwise.
   *
   * @return the capacity
   */
  public int capacity() {
    return capacity;
  }

  /**
   * The times at which it is there.
   *
   * @return the openings; none if it is always there
   */
  public List<Opening> openings() {
    return openings;
  }

  /** Whether it has settings. */
  boolean hasSettings() {
    return usualChange != null;
  }

  /**
   * How long it takes from one setting to another.
   *
   * @param from the setting before
   * @param to the setting after
   * @return the time; none if this resource has no settings
   */
  public Optional<Duration> change(String from, String to) {
    if (usualChange == null) {
      return Optional.empty();
    }
    for (Change change : changes) {
      if (change.from().equals(from) && change.to().equals(to)) {
        return Optional.of(change.time());
      }
    }
    return Optional.of(from.equals(to) ? Duration.ZERO : usualChange);
  }

  /**
   * The capacity at a time.
   *
   * @param time the time since the origin
   * @return how much there is
   */
  public int capacityAt(Duration time) {
    if (openings.isEmpty()) {
      return capacity;
    }
    int sum = 0;
    for (Opening opening : openings) {
      if (opening.from().compareTo(time) <= 0 && time.compareTo(opening.to()) < 0) {
        sum += opening.capacity();
      }
    }
    return sum;
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Resource that
        && name.equals(that.name)
        && capacity == that.capacity
        && openings.equals(that.openings)
        && Objects.equals(usualChange, that.usualChange)
        && changes.equals(that.changes)
        && attended == that.attended;
  }

  @Override
  public int hashCode() {
    return Objects.hash(name, capacity, openings, usualChange, changes, attended);
  }

  /** {@code oven, 4}. */
  @Override
  public String toString() {
    return name
        + ", "
        + capacity
        + (openings.isEmpty() ? "" : ", by " + openings.size() + " openings");
  }
}
