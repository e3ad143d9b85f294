package org.tourage.command;

import static java.util.Objects.requireNonNull;

import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * One setting of a recipe or kitchen file: its key, how it is read, its default and its help, all
 * in one place. {@link Settings} has the table.
 *
 * @param <T> the type of its value
 */
public final class Setting<T> {
  private final String key;
  private final Function<String, T> reader;
  private final String usual;
  private final String example;
  private final String help;

  private Setting(
      String key, Function<String, T> reader, String usual, String example, String help) {
    this.key = key;
    this.reader = reader;
    this.usual = usual;
    this.example = example;
    this.help = help;
  }

  /** A setting without a default. */
  static <T> Setting<T> of(String key, Function<String, T> reader, String example, String help) {
    return new Setting<>(key, reader, "", example, help);
  }

  /** The same setting with a default, written as one would write it. */
  Setting<T> usually(String value) {
    return new Setting<>(key, reader, value, example, help);
  }

  /**
   * The word that sets it, in a file and, after two hyphens, on the command line.
   *
   * @return for example {@code piece-mass}
   */
  public String key() {
    return key;
  }

  /**
   * An example of a value.
   *
   * @return the example
   */
  public String example() {
    return example;
  }

  /**
   * What it does.
   *
   * @return one line
   */
  public String help() {
    return help;
  }

  /**
   * The default, as one would write it.
   *
   * @return the text, empty if there is none
   */
  public String usual() {
    return usual;
  }

  /**
   * Reads a value.
   *
   * @param text the text
   * @return the value
   * @throws BakeryException if it can't be read; the message names the key and an example
   */
  T read(String text) {
    try {
      return requireNonNull(reader.apply(text), key);
    } catch (BakeryException wrong) {
      throw new BakeryException(
          wrong.reason(),
          key,
          requireNonNull(wrong.getMessage()),
          "for example " + key + ": " + example);
    }
  }

  /** The default value, null if there is none. */
  @Nullable T byDefault() {
    return usual.isEmpty() ? null : read(usual);
  }

  /** A reader of one of these words. */
  static <T> Function<String, T> word(java.util.Map<String, T> words) {
    return text -> {
      T value = words.get(text.strip().toLowerCase(java.util.Locale.ROOT));
      if (value == null) {
        throw new BakeryException(
            Reason.UNKNOWN_NAME,
            "no such word",
            "\"" + text + "\"",
            "use one of " + String.join(", ", new java.util.TreeSet<>(words.keySet())));
      }
      return value;
    };
  }

  @Override
  public String toString() {
    return key;
  }
}
