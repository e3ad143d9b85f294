package org.tourage.day;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * One part of a day's work: the result, or in one sentence why it is not there. A part that can't
 * be worked takes no other part down.
 *
 * @param <T> the type of the result
 */
public final class Part<T extends Serializable> implements Serializable {
  private static final long serialVersionUID = 1L;

  private final @Nullable T value;
  private final @Nullable BakeryException problem;

  private Part(@Nullable T value, @Nullable BakeryException problem) {
    this.value = value;
    this.problem = problem;
  }

  /**
   * A part that is there.
   *
   * @param value the result
   * @param <T> its type
   * @return the part
   */
  static <T extends Serializable> Part<T> of(T value) {
    return new Part<>(requireNonNull(value, "value"), null);
  }

  /**
   * A part that nobody asked for.
   *
   * @param what what would be there
   * @param remedy what asks for it
   * @param <T> the type that it would have
   * @return the empty part
   */
  static <T extends Serializable> Part<T> notAsked(String what, String remedy) {
    return new Part<>(null, new BakeryException(Reason.MISSING, what, "not asked for", remedy));
  }

  /**
   * A part as far as it can be worked.
   *
   * @param work what works it
   * @param <T> the type of the result
   * @return the result, or why it can't be had
   */
  static <T extends Serializable> Part<T> worked(Supplier<T> work) {
    try {
      return of(work.get());
    } catch (BakeryException impossible) {
      return new Part<>(null, impossible);
    }
  }

  /** What is worked from another part, or the problem of that part. */
  <U extends Serializable> Part<U> then(Function<T, U> next) {
    return value == null ? new Part<>(null, problem) : worked(() -> next.apply(value));
  }

  /**
   * Whether the result is there.
   *
   * @return whether
   */
  public boolean isThere() {
    return value != null;
  }

  /**
   * Whether it was asked for but could not be worked.
   *
   * @return whether the baker has to mend something
   */
  public boolean failed() {
    return problem != null && !problem.given().equals("not asked for");
  }

  /**
   * The result.
   *
   * @return the result
   * @throws BakeryException if it is not there; the message says why and what would bring it
   */
  public T get() {
    if (value == null) {
      throw requireNonNull(problem);
    }
    return value;
  }

  /**
   * The result, if it is there.
   *
   * @return the result or nothing
   */
  public Optional<T> found() {
    return Optional.ofNullable(value);
  }

  /**
   * Why it is not there.
   *
   * @return one sentence, empty if it is there
   */
  public Optional<BakeryException> problem() {
    return Optional.ofNullable(problem);
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Part<?> that
        && Objects.equals(value, that.value)
        && Objects.equals(problem, that.problem);
  }

  @Override
  public int hashCode() {
    return Objects.hash(value, problem);
  }

  /** The result, or why it is not there. */
  @Override
  public String toString() {
    return value == null ? String.valueOf(requireNonNull(problem).getMessage()) : value.toString();
  }
}
