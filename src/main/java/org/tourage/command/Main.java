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
 * demo of an invented pastry school. Wrong input gives one line on the error stream and exit code
 * 2.
 */
public final class Main {
  private static final String DEMO = "demo.recipe";
  private static final int WRONG_INPUT = 2;

  private Main() {}

  /**
   * Runs the command and ends the virtual machine with its exit code.
   *
   * @param args a recipe file, settings like {@code --pieces 24}, or {@code --help}
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
   * @param args a recipe file, settings like {@code --pieces 24}, or {@code --help}
   * @param out where the bench sheet goes
   * @param err where an error goes
   * @return 0, or 2 for wrong input
   */
  public static int run(String[] args, PrintStream out, PrintStream err) {
    try {
      if (List.of(args).contains("--help")) {
        out.println(help());
        return 0;
      }
      out.print(BenchDay.work(read(args)));
      return 0;
    } catch (BakeryException wrong) {
      err.println("tourage: " + Objects.toString(wrong.getMessage()).replaceAll("\\s+", " "));
      return WRONG_INPUT;
    }
  }

  /**
   * The demo recipe of the invented pastry school.
   *
   * @return the recipe file
   */
  public static RecipeFile demo() {
    try (InputStream in = Objects.requireNonNull(Main.class.getResourceAsStream(DEMO), DEMO)) {
      return RecipeFile.parse(new String(in.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static RecipeFile read(String[] args) {
    List<String[]> settings = new ArrayList<>();
    String path = null;
    for (int i = 0; i < args.length; i++) {
      String arg = args[i];
      if (!arg.startsWith("--")) {
        if (path != null) {
          throw new BakeryException(
              Reason.INCONSISTENT, "more than one recipe file", "\"" + arg + "\"", "give one file");
        }
        path = arg;
        continue;
      }
      int equals = arg.indexOf('=');
      if (equals > 0) {
        settings.add(new String[] {arg.substring(2, equals), arg.substring(equals + 1)});
      } else if (i + 1 < args.length) {
        settings.add(new String[] {arg.substring(2), args[++i]});
      } else {
        throw new BakeryException(Reason.MISSING, "a setting needs a value", arg, "see --help");
      }
    }
    RecipeFile file = path == null ? demo() : readFile(path);
    for (String[] setting : settings) {
      file = file.with(setting[0], setting[1]);
    }
    return file;
  }

  private static RecipeFile readFile(String path) {
    try {
      return RecipeFile.parse(Files.readString(Path.of(path)));
    } catch (IOException | InvalidPathException e) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT, "can't read the recipe file", path, "give a text file in UTF-8");
    }
  }

  private static String help() {
    TextTable table = new TextTable(3);
    table.heading("Prints the bench sheet of a recipe file; without a file, of the demo recipe.");
    table.heading("");
    table.heading("usage: [FILE] [--SETTING VALUE]...");
    table.heading("");
    for (Setting setting : Setting.values()) {
      table.row("  --" + setting.key(), setting.example(), setting.help());
    }
    table.heading("");
    table.heading(
        "A file holds the same settings as lines (pieces: 12), then recipe lines under the");
    table.heading(
        "headings [dough], [preferment NAME], [soaker NAME], [roll-in], [finish], and tasks");
    table.heading(
        "under [timetable], for example  retard: 13 h at 4 °C as slab 30 mm, until firm  (as slab,");
    table.heading("roll, ball, tub or box). Wrong input gives one line and exit code 2.");
    return table.toString();
  }
}
