package org.tourage.command;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.measure.quantity.Length;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.physics.Solid;
import org.tourage.plan.Timetable;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.AmountRange;
import org.tourage.quantity.Amounts;
import org.tourage.quantity.BakeryUnits;

/**
 * A line of the timetable in a recipe file: the task, how warm the air about the dough is, and the
 * shape that the dough has from now on.
 *
 * @param task the task
 * @param air the temperature of the air, or of the oven; null for that of the room
 * @param shape the shape; null to keep the one before
 */
public record Job(Timetable.Task task, @Nullable Amount<Temperature> air, @Nullable Solid shape)
    implements Serializable {
  private static final Pattern LINE =
      Pattern.compile(
          "([^:]+):\\s*([^,]+?)(?:\\s+at\\s+([^,]+?))?(?:\\s+as\\s+([^,]+?))?\\s*(?:,\\s*(.*))?");
  private static final Pattern SIDE = Pattern.compile("(?<=[\\s\\d])[x×](?=[\\s\\d])");

  /**
   * Checks that there is a task.
   *
   * @param task the task
   * @param air the temperature of the air, or of the oven; null for that of the room
   * @param shape the shape; null to keep the one before
   */
  public Job {
    requireNonNull(task, "task");
  }

  /**
   * Reads a line: {@code retard: 13 h at 4 °C as slab 30 mm, until firm}. Of a range of times the
   * longer is planned. Shapes: slab thickness, roll diameter, ball diameter, tub diameter x height,
   * box length x width x height.
   *
   * @param line the line
   * @return the job
   * @throws BakeryException if it can't be read
   */
  public static Job parse(String line) {
    Matcher matcher = LINE.matcher(line);
    if (!matcher.matches()) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT,
          "not a task",
          "\"" + line + "\"",
          "write it like first rise: 1-2 hours at 24 °C as tub 20 x 12 cm, until doubled");
    }
    AmountRange<Time> range = Amounts.timeRange(matcher.group(2));
    String cue = matcher.group(5) == null ? "" : matcher.group(5);
    if (range.low().compareTo(range.high()) < 0) {
      String from = "look from " + AmountFormat.metric().time(range.low()) + " on";
      cue = cue.isEmpty() ? from : cue + "; " + from;
    }
    String air = matcher.group(3);
    String shape = matcher.group(4);
    return new Job(
        Timetable.Task.of(matcher.group(1).strip(), range.high().to(BakeryUnits.MINUTE)).until(cue),
        air == null ? null : Amounts.temperature(air),
        shape == null ? null : solid(shape));
  }

  private static Solid solid(String text) {
    String[] words = text.strip().split("\\s+", 2);
    List<String> sides = words.length < 2 ? List.of() : List.of(SIDE.split(words[1]));
    String kind = words[0].toLowerCase(Locale.ROOT);
    int wanted =
        switch (kind) {
          case "slab", "roll", "ball" -> 1;
          case "tub" -> 2;
          case "box" -> 3;
          default -> 0;
        };
    if (wanted == 0 || sides.size() != wanted) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT,
          "not a shape of dough",
          "\"" + text + "\"",
          "write slab 30 mm, roll 45 mm, ball 8 cm, tub 20 x 12 cm or box 30 x 20 x 4 cm");
    }
    // a unit given once, at the end, holds for all
    String last = sides.get(sides.size() - 1).strip();
    String unit = last.replaceAll("^[\\d./\\s½⅓⅔¼¾⅛⅜⅝⅞]+", "");
    List<Amount<Length>> lengths =
        sides.stream()
            .map(String::strip)
            .map(s -> s.matches(".*[a-zA-Z\"]") ? s : s + " " + unit)
            .map(Amounts::length)
            .toList();
    return switch (kind) {
      case "slab" -> Solid.slab(lengths.get(0));
      case "roll" -> Solid.roll(lengths.get(0));
      case "ball" -> Solid.ball(lengths.get(0));
      case "tub" -> Solid.tub(lengths.get(0), lengths.get(1));
      default -> Solid.box(lengths.get(0), lengths.get(1), lengths.get(2));
    };
  }

  Optional<Amount<Temperature>> airIfGiven() {
    return Optional.ofNullable(air);
  }

  Optional<Solid> shapeIfGiven() {
    return Optional.ofNullable(shape);
  }
}
