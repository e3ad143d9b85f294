package org.tourage.command;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.plan.Timetable;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.AmountRange;
import org.tourage.quantity.Amounts;
import org.tourage.quantity.BakeryUnits;

/**
 * A recipe file: settings ({@code pieces: 12}), recipe lines under their headings as {@link
 * org.tourage.formula.HouseholdRecipe} reads them, and under the heading {@code [timetable]} the
 * tasks in order ({@code first rise: 1-2 hours, until doubled}). Of a range of times the longer is
 * planned.
 *
 * @param settings what the file sets
 * @param recipe the recipe lines
 * @param tasks the tasks
 */
public record RecipeFile(
    Map<Setting, String> settings, List<String> recipe, List<Timetable.Task> tasks)
    implements Serializable {
  private static final Pattern SETTING = Pattern.compile("([a-zA-Z-]+)\\s*:\\s*(.*)");
  private static final Pattern TASK = Pattern.compile("([^:]+):\\s*([^,]+)(?:,\\s*(.*))?");
  private static final String TIMETABLE = "[timetable]";

  /**
   * Copies the collections.
   *
   * @param settings what the file sets
   * @param recipe the recipe lines
   * @param tasks the tasks
   */
  public RecipeFile {
    settings =
        settings.isEmpty()
            ? Map.of()
            : java.util.Collections.unmodifiableMap(new EnumMap<>(settings));
    recipe = List.copyOf(recipe);
    tasks = List.copyOf(tasks);
  }

  /**
   * Reads a recipe file.
   *
   * @param text its text
   * @return the file
   * @throws BakeryException if a line can't be read; the message names the line. Recipe lines are
   *     read later
   */
  public static RecipeFile parse(String text) {
    Map<Setting, String> settings = new EnumMap<>(Setting.class);
    List<String> recipe = new ArrayList<>();
    List<Timetable.Task> tasks = new ArrayList<>();
    boolean inTimetable = false;
    for (String raw : requireNonNull(text, "text").split("\\R")) {
      String line = raw.strip();
      if (line.isEmpty() || line.startsWith("#")) {
        continue;
      }
      Matcher setting = SETTING.matcher(line);
      if (line.startsWith("[")) {
        inTimetable = line.equalsIgnoreCase(TIMETABLE);
        if (!inTimetable) {
          recipe.add(line);
        }
      } else if (inTimetable) {
        tasks.add(task(line));
      } else if (setting.matches()) {
        settings.put(setting(setting.group(1)), setting.group(2).strip());
      } else {
        recipe.add(line);
      }
    }
    return new RecipeFile(settings, recipe, tasks);
  }

  private static Setting setting(String word) {
    return Setting.find(word)
        .orElseThrow(
            () ->
                new BakeryException(
                    Reason.UNKNOWN_NAME,
                    "no such setting",
                    "\"" + word + "\"",
                    "use one of "
                        + Arrays.stream(Setting.values())
                            .map(Setting::key)
                            .collect(Collectors.joining(", "))));
  }

  private static Timetable.Task task(String line) {
    Matcher matcher = TASK.matcher(line);
    if (!matcher.matches()) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT,
          "not a task",
          "\"" + line + "\"",
          "write it like first rise: 1-2 hours, until doubled");
    }
    AmountRange<javax.measure.quantity.Time> range = Amounts.timeRange(matcher.group(2));
    String cue = matcher.group(3) == null ? "" : matcher.group(3);
    if (range.low().compareTo(range.high()) < 0) {
      String from = "look from " + AmountFormat.metric().time(range.low()) + " on";
      cue = cue.isEmpty() ? from : cue + "; " + from;
    }
    return Timetable.Task.of(matcher.group(1).strip(), range.high().to(BakeryUnits.MINUTE))
        .until(cue);
  }

  /**
   * The file with another setting.
   *
   * @param key the setting's word, for example {@code pieces}
   * @param value its value
   * @return the changed file
   * @throws BakeryException if there is no such setting
   */
  public RecipeFile with(String key, String value) {
    Map<Setting, String> changed = new EnumMap<>(Setting.class);
    changed.putAll(settings);
    changed.put(setting(key), requireNonNull(value, "value").strip());
    return new RecipeFile(changed, recipe, tasks);
  }

  Optional<String> get(Setting setting) {
    return Optional.ofNullable(settings.get(setting));
  }
}
