package org.tourage.schedule;

import java.io.Serializable;
import java.time.Duration;
import java.util.Objects;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * What a task needs of a resource: an amount of its capacity, all the time or only at the start or
 * at the end, and perhaps a setting. An oven of four trays is needed with 2 at {@code 220 °C}; a
 * pair of hands for the first two minutes.
 *
 * @param resource the name of the resource
 * @param amount how much of its capacity, 1 or more
 * @param part when it is needed
 * @param length how long at the start or at the end; zero for all the time
 * @param enter the setting at the start; empty for a resource without settings
 * @param leave the setting at the end
 */
public record Need(
    String resource, int amount, Part part, Duration length, String enter, String leave)
    implements Serializable {

  /** When in the task the resource is needed. */
  public enum Part {
    /** From start to end. */
    WHOLE,
    /** For some time from the start. */
    START,
    /** For some time before the end. */
    END
  }

  /**
   * Checks what it is made of.
   *
   * @param resource the name of the resource
   * @param amount how much of its capacity, 1 or more
   * @param part when it is needed
   * @param length how long at the start or at the end; zero for all the time
   * @param enter the setting at the start; empty for a resource without settings
   * @param leave the setting at the end
   * @throws BakeryException if the amount is none, or the length does not belong to the part
   */
  public Need {
    resource = Seconds.name("resource", resource);
    Seconds.amount("so much of \"" + resource + "\" can't be needed", amount);
    Objects.requireNonNull(part, "part");
    Objects.requireNonNull(enter, "enter");
    Objects.requireNonNull(leave, "leave");
    int seconds = Seconds.atLeastZero("the length of a need", length);
    if ((part == Part.WHOLE) != (seconds == 0)) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "a need at the start or at the end has a length, one for all the time has none",
          length.toString(),
          "use first(length), last(length) or neither");
    }
    if (enter.isBlank() != leave.isBlank()) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "a setting at one end only",
          "\"" + enter + "\" to \"" + leave + "\"",
          "name both or none");
    }
  }

  /**
   * A need for all the time of the task.
   *
   * @param resource the name of the resource
   * @param amount how much of its capacity
   * @return the need
   */
  public static Need of(String resource, int amount) {
    return new Need(resource, amount, Part.WHOLE, Duration.ZERO, "", "");
  }

  /**
   * The same for the first part of the task only.
   *
   * @param time how long
   * @return the need
   */
  public Need first(Duration time) {
    return new Need(resource, amount, Part.START, time, enter, leave);
  }

  /**
   * The same for the last part of the task only.
   *
   * @param time how long
   * @return the need
   */
  public Need last(Duration time) {
    return new Need(resource, amount, Part.END, time, enter, leave);
  }

  /**
   * The same at a setting. Needs of one setting share the resource.
   *
   * @param setting the setting, for example {@code 220 °C}
   * @return the need
   */
  public Need at(String setting) {
    String name = Seconds.name("setting", setting);
    return new Need(resource, amount, part, length, name, name);
  }

  /**
   * The same with a setting that steps on the way. Such needs share only from start to end.
   *
   * @param first the setting at the start
   * @param last the setting at the end
   * @return the need
   */
  public Need stepping(String first, String last) {
    return new Need(
        resource,
        amount,
        part,
        length,
        Seconds.name("setting", first),
        Seconds.name("setting", last));
  }

  /** {@code 2 of oven at 220 °C}. */
  @Override
  public String toString() {
    String when =
        switch (part) {
          case WHOLE -> "";
          case START -> " for the first " + ClockText.length(length);
          case END -> " for the last " + ClockText.length(length);
        };
    String setting =
        enter.isEmpty()
            ? ""
            : enter.equals(leave) ? " at " + enter : " from " + enter + " to " + leave;
    return amount + " of " + resource + when + setting;
  }
}
