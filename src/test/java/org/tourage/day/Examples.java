package org.tourage.day;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.tourage.command.RecipeFile;

/** The recipes and kitchens of docs/examples, each worked once. */
final class Examples {
  static final Path FOLDER = Path.of("docs", "examples");
  private static final Pattern KITCHEN = Pattern.compile("--kitchen docs/examples/(\\S+)");
  private static final Map<String, BakeDay> DAYS = new ConcurrentHashMap<>();

  private Examples() {}

  /** The names of the recipes, without their ending. */
  static List<String> names() {
    try (Stream<Path> files = Files.list(FOLDER)) {
      return files
          .map(p -> p.getFileName().toString())
          .filter(n -> n.endsWith(".txt"))
          .map(n -> n.substring(0, n.length() - ".txt".length()))
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static String text(String file) {
    try {
      return Files.readString(FOLDER.resolve(file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The kitchen that the recipe's comment names; that of the school if it names none. */
  static String kitchen(String recipe) {
    Matcher matcher = KITCHEN.matcher(text(recipe + ".txt"));
    return matcher.find() ? matcher.group(1) : "school.kitchen";
  }

  static BakeDay day(String recipe) {
    return DAYS.computeIfAbsent(
        recipe,
        name -> {
          String kitchen = kitchen(name);
          return BakeDay.of(
              RecipeFile.parse(name + ".txt", text(name + ".txt"))
                  .withKitchen(kitchen, text(kitchen))
                  .plan());
        });
  }
}
