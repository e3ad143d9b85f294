package org.tourage.schedule;

import java.time.Duration;
import java.util.Locale;

/** Times of this room as text: {@code 1 h 30 min}, {@code day 1 06:30}. */
final class ClockText {
  private ClockText() {}

  static String length(Duration time) {
    long s = Math.abs(time.toSeconds());
    StringBuilder text = new StringBuilder(time.isNegative() ? "-" : "");
    part(text, s / 3600, "h");
    part(text, s / 60 % 60, "min");
    part(text, s % 60, "s");
    return s == 0 ? "0 min" : text.toString().strip();
  }

  private static void part(StringBuilder text, long count, String unit) {
    if (count > 0) {
      text.append(text.length() > 1 ? " " : "").append(count).append(' ').append(unit);
    }
  }

  /** A time since the origin; the origin is midnight before day 1. */
  static String at(Duration time) {
    long s = time.toSeconds();
    long day = Math.floorDiv(s, 86_400L);
    long rest = Math.floorMod(s, 86_400L);
    String clock =
        String.format(Locale.ROOT, "day %d %02d:%02d", day + 1, rest / 3600, rest / 60 % 60);
    return rest % 60 == 0 ? clock : clock + String.format(Locale.ROOT, ":%02d", rest % 60);
  }
}
