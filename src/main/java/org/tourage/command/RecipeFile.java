package org.tourage.command;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
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

/**
 * A recipe file: settings ({@code pieces: 12}), recipe lines under their headings as {@link
 * org.tourage.formula.HouseholdRecipe} reads them, and under the heading {@code [timetable]} the
 * tasks in order, as {@link Job} reads them ({@code first rise: 1-2 hours, until doubled}).
 *
 * @param settings what the file sets
 * @param recipe the recipe lines
 * @param jobs the lines of the timetable
 */
public record RecipeFile(Map<Setting, String> settings, List<String> recipe, List<Job> jobs)
    implements Serializable {
  private static final Pattern SETTING = Pattern.compile("([a-zA-Z-]+)\\s*:\\s*(.*)");
  private static final String TIMETABLE = "[timetable]";

  /**
   * Copies the collections.
   *
   * @param settings what the file sets
   * @param recipe the recipe lines
   * @param jobs the lines of the timetable
   */
  public RecipeFile {
    settings = settings.isEmpty() ? Map.of() : Collections.unmodifiableMap(new EnumMap<>(settings));
    recipe = List.copyOf(recipe);
    jobs = List.copyOf(jobs);
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
    List<Job> jobs = new ArrayList<>();
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
        jobs.add(Job.parse(line));
      } else if (setting.matches()) {
        settings.put(setting(setting.group(1)), setting.group(2).strip());
      } else {
        recipe.add(line);
      }
    }
    return new RecipeFile(settings, recipe, jobs);
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

  /**
   * The tasks of the timetable.
   *
   * @return the tasks in order
   */
  public List<Timetable.Task> tasks() {
    return jobs.stream().map(Job::task).toList();
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
    return new RecipeFile(changed, recipe, jobs);
  }

  Optional<String> get(Setting setting) {
    return Optional.ofNullable(settings.get(setting));
  }
}
