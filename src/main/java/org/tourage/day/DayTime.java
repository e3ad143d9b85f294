package org.tourage.day;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.time.LocalTime;
import java.time.format.DateTimeParseException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * A time of day on a numbered day. The clock has 24 hours every day; a change to or from summer
 * time in the night is for the baker to mind.
 *
 * @param day the day, 1 for the first; earlier days are 0 and below
 * @param time the time of day, to the minute
 */
public record DayTime(int day, LocalTime time) implements Comparable<DayTime>, Serializable {
  private static final long MINUTES_PER_DAY = 24L * 60;
  private static final int MOST_DAYS = 100_000;
  private static final Pattern TEXT =
      Pattern.compile("(?:day\\s*(\\d{1,3})\\s+)?(\\d{1,2}:\\d{2})", Pattern.CASE_INSENSITIVE);

  /**
   * Drops nothing: seconds are refused.
   *
   * @param day the day, 1 for the first; earlier days are 0 and below
   * @param time the time of day, to the minute
   */
  public DayTime {
    requireNonNull(time, "time");
    if (Math.abs((long) day) > MOST_DAYS) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE, "no timetable has so many days", "day " + day, "stay within 100000");
    }
    if (time.getSecond() != 0 || time.getNano() != 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a timetable goes by minutes",
          time.toString(),
          "leave the seconds out");
    }
  }

  /**
   * Reads {@code 14:30} (the first day) or {@code day 2 07:30}.
   *
   * @param text the text
   * @return the time
   * @throws BakeryException if the text can't be read
   */
  public static DayTime parse(String text) {
    requireNonNull(text, "text");
    Matcher matcher = TEXT.matcher(text.strip());
    try {
      if (matcher.matches()) {
        String clock = matcher.group(2).length() == 4 ? "0" + matcher.group(2) : matcher.group(2);
        int day = matcher.group(1) == null ? 1 : Integer.parseInt(matcher.group(1));
        if (day > 0) {
          return new DayTime(day, LocalTime.parse(clock));
        }
      }
    } catch (DateTimeParseException outOfRange) {
      // falls through to the one message
    }
    throw new BakeryException(
        Reason.UNREADABLE_TEXT,
        "not a time of day",
        "\"" + text + "\"",
        "write it like 14:30 or day 2 07:30");
  }

  long minutes() {
    return day * MINUTES_PER_DAY + time.toSecondOfDay() / 60;
  }

  /**
   * The time so many minutes later.
   *
   * @param minutes how many; negative for earlier
   * @return the time
   */
  public DayTime plusMinutes(long minutes) {
    long sum = minutes() + minutes;
    long day = Math.floorDiv(sum, MINUTES_PER_DAY);
    if (Math.abs(day) > MOST_DAYS) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE, "no timetable has so many days", "day " + day, "stay within 100000");
    }
    return new DayTime(
        (int) day, LocalTime.ofSecondOfDay(Math.floorMod(sum, MINUTES_PER_DAY) * 60));
  }

  @Override
  public int compareTo(DayTime other) {
    return Long.compare(minutes(), other.minutes());
  }

  /** {@code day 1 14:30}. */
  @Override
  public String toString() {
    return "day " + day + " " + time;
  }
}
