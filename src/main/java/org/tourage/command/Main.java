package org.tourage.command;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.TextTable;

/**
 * The main command: reads a recipe file and prints the bench sheet. Without a file it works the
 * demo of an invented pastry school. Wrong input gives a line for each complaint on the error
 * stream and exit code 2.
 */
public final class Main {
  private static final String DEMO = "demo.recipe";
  private static final String DEMO_KITCHEN = "demo.kitchen";
  private static final int WRONG_INPUT = 2;
  private static final long LARGEST_FILE = 64L * 1024 * 1024;

  private Main() {}

  /**
   * Runs the command and ends the virtual machine with its exit code.
   *
   * @param args a recipe file, {@code --kitchen FILE}, settings like {@code --pieces 24}, or {@code
   *     --help}
   */
  public static void main(String[] args) {
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    PrintStream err = new PrintStream(System.err, true, StandardCharsets.UTF_8);
    int code = run(args, out, err);
    if (code != 0) {
      System.exit(code);
    }
  }

  /**
   * Runs the command.
   *
   * @param args a recipe file, {@code --kitchen FILE}, settings like {@code --pieces 24}, or {@code
   *     --help}
   * @param out where the bench sheet goes
   * @param err where complaints go
   * @return 0, or 2 for wrong input
   */
  public static int run(String[] args, PrintStream out, PrintStream err) {
    List<String> words = List.of(args);
    if (words.contains("--help") || words.contains("-h")) {
      out.println(help());
      return 0;
    }
    try {
      RecipeFile file = read(words);
      out.print(file.text());
      return 0;
    } catch (WrongInput wrong) {
      wrong.complaints().forEach(c -> err.println("tourage: " + c));
      return WRONG_INPUT;
    } catch (BakeryException wrong) {
      err.println("tourage: " + Objects.toString(wrong.getMessage()).replaceAll("\\s+", " "));
      return WRONG_INPUT;
    }
  }

  /**
   * The demo recipe of the invented pastry school, in its kitchen.
   *
   * @return the recipe file
   */
  public static RecipeFile demo() {
    return RecipeFile.parse(DEMO, resource(DEMO)).withKitchen(DEMO_KITCHEN, resource(DEMO_KITCHEN));
  }

  private static String resource(String name) {
    try (InputStream in = Objects.requireNonNull(Main.class.getResourceAsStream(name), name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static RecipeFile read(List<String> args) {
    List<String[]> settings = new ArrayList<>();
    String path = null;
    String kitchen = null;
    String catalogue = null;
    for (int i = 0; i < args.size(); i++) {
      String arg = args.get(i);
      if (!arg.startsWith("-")) {
        if (path != null) {
          throw new BakeryException(
              Reason.INCONSISTENT, "more than one recipe file", "\"" + arg + "\"", "give one file");
        }
        path = arg;
        continue;
      }
      int equals = arg.indexOf('=');
      String key = (equals > 0 ? arg.substring(0, equals) : arg).replaceFirst("^--?", "");
      if (equals < 0 && i + 1 == args.size()) {
        throw new BakeryException(Reason.MISSING, "a setting needs a value", arg, "see --help");
      }
      String value = equals > 0 ? arg.substring(equals + 1) : args.get(++i);
      if (key.equals("kitchen")) {
        kitchen = value;
      } else if (key.equals("catalogue")) {
        catalogue = value;
      } else {
        settings.add(new String[] {key, value});
      }
    }
    RecipeFile file = path == null ? demo() : RecipeFile.parse(name(path), text(path));
    if (kitchen != null) {
      file = file.withKitchen(name(kitchen), text(kitchen));
    }
    if (catalogue != null) {
      file = file.withCatalogue(name(catalogue), text(catalogue));
    }
    for (String[] setting : settings) {
      file = file.with(setting[0], setting[1]);
    }
    return file;
  }

  private static String name(String path) {
    int slash = Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\'));
    return path.substring(slash + 1);
  }

  private static String text(String path) {
    try {
      Path file = Path.of(path);
      if (Files.isRegularFile(file) && Files.size(file) > LARGEST_FILE) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE, "no recipe is so long", path, "give a file of at most 64 MB");
      }
      return Files.readString(file);
    } catch (IOException | InvalidPathException e) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT, "can't read the file", path, "give a text file in UTF-8");
    }
  }

  private static String help() {
    TextTable table = new TextTable(4);
    table.heading("Prints the bench sheet of a recipe file; without a file, of the demo recipe.");
    table.heading("");
    table.heading("usage: [FILE] [--kitchen FILE] [--catalogue FILE] [--SETTING VALUE]...");
    table.heading("");
    table.row("  setting", "for example", "default", "what it does");
    for (Setting<?> setting : Settings.all()) {
      table.row("  --" + setting.key(), setting.example(), setting.usual(), setting.help());
    }
    table.heading("");
    table.heading(
        "A file holds the same settings as lines (pieces: 12), then recipe lines under the");
    table.heading(
        "headings [dough], [preferment NAME], [soaker NAME], [roll-in], [finish], and steps under");
    table.heading(
        "[steps], for example  retard: 13 h in the refrigerator as slab 30 mm, until firm");
    table.heading(
        "A kitchen file holds the settings of a kitchen, a catalogue file [ingredient NAME] and [prices].");
    table.heading("docs/recipe-files.md says more.");
    table.heading("Wrong input gives a line for each complaint and exit code 2.");
    return table.toString();
  }
}
