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
 * That one task follows another, how long it waits at least and at most, and what is kept
 * meanwhile: proved pieces wait ten minutes for the oven and no longer, and stand in the proofer
 * until then.
 */
public final class Link implements Serializable {
  private static final long serialVersionUID = 1L;

  /** From where the wait counts. */
  public enum From {
    /** From the end of the first task. */
    END,
    /** From the start of the first task. */
    START
  }

  private final String first;
  private final String then;
  private final From from;
  private final int least;
  private final @Nullable Integer most;
  private final List<Need> kept;

  private Link(
      String first, String then, From from, int least, @Nullable Integer most, List<Need> kept) {
    this.first = first;
    this.then = then;
    this.from = from;
    this.least = least;
    this.most = most;
    this.kept = List.copyOf(kept);
  }

  /**
   * A task begins when another has ended, or later.
   *
   * @param first the name of the first
   * @param then the name of the one that follows
   * @return the link
   */
  public static Link endToStart(String first, String then) {
    return link(first, then, From.END);
  }

  /**
   * A task begins when another has begun, or later.
   *
   * @param first the name of the first
   * @param then the name of the one that follows
   * @return the link
   */
  public static Link startToStart(String first, String then) {
    return link(first, then, From.START);
  }

  private static Link link(String first, String then, From from) {
    String a = Seconds.name("the first task of a link", first);
    String b = Seconds.name("the second task of a link", then);
    if (a.equals(b)) {
      throw new BakeryException(
          Reason.INCONSISTENT, "a task can't follow itself", "\"" + a + "\"", "link two tasks");
    }
    return new Link(a, b, from, 0, null, List.of());
  }

  /**
   * The same with a least wait.
   *
   * @param wait the wait; negative if the second may begin so much before
   * @return the link
   * @throws BakeryException if it is above the greatest wait
   */
  public Link atLeast(Duration wait) {
    return new Link(first, then, from, Seconds.of("the least wait", wait), most, kept).checked();
  }

  /**
   * The same with a greatest wait.
   *
   * @param wait the wait
   * @return the link
   * @throws BakeryException if it is below the least wait
   */
  public Link atMost(Duration wait) {
    return new Link(first, then, from, least, Seconds.of("the greatest wait", wait), kept)
        .checked();
  }

  /**
   * The same, with something kept from the end of the first task until the second begins.
   *
   * @param resource the name of the resource
   * @param amount how much of its capacity
   * @return the link
   * @throws BakeryException if the wait counts from the start of the first task
   */
  public Link keeping(String resource, int amount) {
    if (from != From.END) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "nothing can be kept over a wait that counts from a start",
          toString(),
          "use endToStart");
    }
    List<Need> more = new ArrayList<>(kept);
    more.add(Need.of(resource, amount));
    return new Link(first, then, from, least, most, more).checked();
  }

  private Link checked() {
    if (most != null && most < least) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "the greatest wait is below the least",
          ClockText.length(Duration.ofSeconds(most))
              + " and "
              + ClockText.length(Duration.ofSeconds(least)),
          "give a greatest wait of the least or more");
    }
    if (!kept.isEmpty() && least < 0) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "nothing can be kept over a wait that may be negative",
          ClockText.length(Duration.ofSeconds(least)),
          "give a least wait of 0 or more");
    }
    return this;
  }

  /**
   * The task that comes first.
   *
   * @return its name
   */
  public String first() {
    return first;
  }

  /**
   * The task that follows.
   *
   * @return its name
   */
  public String then() {
    return then;
  }

  /**
   * From where the wait counts.
   *
   * @return the start or the end of the first task
   */
  public From from() {
    return from;
  }

  /**
   * The least wait.
   *
   * @return the wait
   */
  public Duration least() {
    return Duration.ofSeconds(least);
  }

  /**
   * The greatest wait.
   *
   * @return the wait, if there is a greatest
   */
  public Optional<Duration> most() {
    return Optional.ofNullable(most).map(Duration::ofSeconds);
  }

  /**
   * What is kept meanwhile.
   *
   * @return the needs
   */
  public List<Need> kept() {
    return kept;
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Link that
        && first.equals(that.first)
        && then.equals(that.then)
        && from == that.from
        && least == that.least
        && Objects.equals(most, that.most)
        && kept.equals(that.kept);
  }

  @Override
  public int hashCode() {
    return Objects.hash(first, then, from, least, most, kept);
  }

  /** {@code bake follows prove after 0 min, at most 10 min, keeping 1 of proofer}. */
  @Override
  public String toString() {
    StringBuilder text =
        new StringBuilder(then)
            .append(" follows ")
            .append(from == From.START ? "the start of " : "")
            .append(first)
            .append(" after ")
            .append(ClockText.length(least()));
    most().ifPresent(wait -> text.append(", at most ").append(ClockText.length(wait)));
    kept.forEach(need -> text.append(", keeping ").append(need));
    return text.toString();
  }
}
