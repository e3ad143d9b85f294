package org.tourage.day;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * What the baker looks for at the end of a step. Where it is a growth of the dough, the day checks
 * it against the history of the rise.
 */
public final class Cue implements Serializable {
  private static final long serialVersionUID = 1L;
  private static final double MOST = 10;

  /** No cue: the clock decides. */
  public static final Cue NONE = new Cue("", null);

  private final String words;
  private final @Nullable Double growth;

  private Cue(String words, @Nullable Double growth) {
    this.words = requireNonNull(words, "words");
    this.growth = growth;
  }

  /**
   * A cue in words.
   *
   * @param words for example {@code as firm as the fat}
   * @return the cue
   */
  public static Cue of(String words) {
    return new Cue(words, null);
  }

  /**
   * A growth of the dough since it got its shape.
   *
   * @param words the baker's words, for example {@code doubled}
   * @param times its volume by the volume at the start of that shape, above 1 up to 10
   * @return the cue
   * @throws BakeryException if the growth is outside its range
   */
  public static Cue growth(String words, double times) {
    if (!(times > 1 && times <= MOST)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no dough is watched for such a growth",
          times + " times the volume",
          "give more than 1, up to 10");
    }
    return new Cue(words, times);
  }

  /**
   * The words.
   *
   * @return the words, empty where the clock decides
   */
  public String words() {
    return words;
  }

  /**
   * The growth that is waited for.
   *
   * @return volume by volume, empty where the cue is another
   */
  public Optional<Double> growth() {
    return Optional.ofNullable(growth);
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Cue that && words.equals(that.words) && growth().equals(that.growth());
  }

  @Override
  public int hashCode() {
    return words.hashCode();
  }

  @Override
  public String toString() {
    return words;
  }
}
