package org.tourage.schedule;

import java.time.Duration;
import java.util.Objects;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/** Durations at the doors of this room: whole seconds, within a span that plans stay in. */
final class Seconds {
  private static final long MOST = Duration.ofDays(2000).toSeconds();

  private Seconds() {}

  static int of(String what, Duration value) {
    Objects.requireNonNull(value, what);
    if (value.getNano() != 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE, what + " goes by whole seconds", value.toString(), "round it");
    }
    if (value.getSeconds() < -MOST || value.getSeconds() > MOST) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          what + " is beyond every plan",
          value.toString(),
          "stay within 2000 days");
    }
    return (int) value.getSeconds();
  }

  static int atLeastZero(String what, Duration value) {
    int seconds = of(what, value);
    if (seconds < 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE, what + " is negative", value.toString(), "give 0 or more");
    }
    return seconds;
  }

  static String name(String what, String value) {
    Objects.requireNonNull(value, what);
    if (value.isBlank() || value.chars().anyMatch(Character::isISOControl)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          what + " has no name on one line",
          "\"" + value + "\"",
          "give it a name");
    }
    return value.strip();
  }

  static int amount(String what, int value) {
    if (value < 1 || value > 1_000_000) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE, what, Integer.toString(value), "give 1 to 1000000");
    }
    return value;
  }
}
