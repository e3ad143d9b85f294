package org.tourage.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.day.Action;
import org.tourage.day.Cue;
import org.tourage.day.Place;
import org.tourage.day.Step;
import org.tourage.lamination.Fold;
import org.tourage.lamination.LockIn;
import org.tourage.quantity.AmountRange;
import org.tourage.quantity.Amounts;

/**
 * Reads a step: {@code retard overnight: 12-14 h in the refrigerator as slab 30 mm, until firm}.
 * The first words say what is done; all words before the colon are its name.
 */
final class StepText {
  private static final Pattern BODY =
      Pattern.compile(
          "([^,]+?)(?:\\s+at\\s+([^,]+?)|\\s+in\\s+(?:the\\s+)?([a-z]+))?"
              + "(?:\\s+as\\s+(?:an?\\s+)?([^,]+?))?(?:\\s+under\\s+([a-z]+))?"
              + "\\s*(?:,\\s*(?:until\\s+)?(.*))?");

  /** How a line goes on that mixes the dough itself: mix the dough, mix and knead, mix slowly. */
  private static final Pattern NO_STAGE =
      Pattern.compile(
          "(the|and|by|on|in|at|with|for|to|until|all|everything|slowly|fast|well|again)\\b|(final"
              + " )?(dough|batter)$");

  private static final Pattern GENTLY =
      Pattern.compile("\\b(gently|lightly|loosely)\\b", Pattern.CASE_INSENSITIVE);
  private static final int LONGEST = 400;

  /** What the first words of a step can be. */
  private enum Verb {
    MIX("mix"),
    RIPEN("ripen"),
    REST("rest"),
    BULK_RISE("bulk rise", "first rise", "second rise", "rise"),
    FOLD_IN_BOWL("stretch and fold", "fold in the bowl", "fold in the tub"),
    CHILL("chill"),
    RETARD("retard"),
    TEMPER("temper"),
    SHAPE_FAT("shape the fat", "shape fat"),
    ENCLOSE("lock in"),
    TURN("turn"),
    SHEET("roll the sheet", "sheet"),
    CUT("cut"),
    DIVIDE("divide", "scale", "deposit"),
    SHAPE("shape", "round", "pan", "fill"),
    PROOF("proof"),
    BOIL("boil"),
    GLAZE("glaze", "score", "brush", "top", "dip", "dimple"),
    BAKE("bake"),
    COOL("cool"),
    WORK("work");

    private final List<String> words;

    Verb(String... words) {
      this.words = List.of(words);
    }
  }

  private StepText() {}

  static Step parse(String line) {
    int colon = line.indexOf(':');
    if (colon < 1 || line.length() > LONGEST) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT,
          "not a step",
          "\"" + (line.length() > LONGEST ? line.substring(0, LONGEST) + "…" : line) + "\"",
          "write it like retard overnight: 12 h in the refrigerator, until firm");
    }
    String name = line.substring(0, colon).strip();
    String body = line.substring(colon + 1).strip();
    String lower = name.toLowerCase(Locale.ROOT).replace(',', ' ');
    Verb verb = null;
    String found = "";
    for (Verb candidate : Verb.values()) {
      for (String words : candidate.words) {
        boolean starts = lower.equals(words) || lower.startsWith(words + " ");
        if (starts && words.length() > found.length()) {
          verb = candidate;
          found = words;
        }
      }
    }
    if (verb == null) {
      throw new BakeryException(
          Reason.UNKNOWN_NAME,
          "no step begins with these words",
          "\"" + name + "\"",
          "begin with mix, ripen NAME, rest, bulk rise, stretch and fold, chill, retard, temper,"
              + " shape the fat, lock in HOW, turn FOLDS, roll the sheet, cut, divide, shape, proof,"
              + " boil, glaze, bake, cool, or work for anything else");
    }
    // a tin that is filled shapes the dough, a piece that is filled keeps its gas
    boolean piece = found.equals("fill") && !body.contains(" as ");
    verb = piece ? Verb.GLAZE : verb;
    String rest = name.substring(found.length()).replaceFirst("^[,\\s]+", "").strip();
    if (verb == Verb.BAKE) {
      return bake(name, body);
    }
    return frame(action(verb, rest), shown(verb, name, rest), body);
  }

  private static String shown(Verb verb, String name, String rest) {
    return verb == Verb.WORK && !rest.isEmpty() ? rest : name;
  }

  private static Step bake(String name, String body) {
    int until = body.toLowerCase(Locale.ROOT).indexOf(", until ");
    String profile = until < 0 ? body : body.substring(0, until);
    Step step = Step.bake(OvenText.profile(profile)).called(name);
    return until < 0 ? step : step.until(Cue.of(body.substring(until + ", until ".length())));
  }

  private static Action action(Verb verb, String rest) {
    return switch (verb) {
      case MIX -> new Action.Mix(stage(rest), null);
      case RIPEN -> {
        if (rest.isEmpty()) {
          throw new BakeryException(
              Reason.MISSING,
              "a stage that ripens has a name",
              "\"ripen\"",
              "write ripen Poolish: 14 h");
        }
        yield new Action.Ripen(rest);
      }
      case ENCLOSE -> new Action.Enclose(lockIn(rest));
      case TURN -> new Action.Turn(folds(rest));
      case BOIL -> new Action.Boil(null);
      case REST -> Action.Simple.REST;
      case BULK_RISE -> Action.Simple.BULK_RISE;
      case FOLD_IN_BOWL -> Action.Simple.FOLD_IN_BOWL;
      case CHILL -> Action.Simple.CHILL;
      case RETARD -> Action.Simple.RETARD;
      case TEMPER -> Action.Simple.TEMPER;
      case SHAPE_FAT -> Action.Simple.SHAPE_FAT;
      case SHEET -> Action.Simple.SHEET;
      case CUT -> Action.Simple.CUT;
      case DIVIDE -> Action.Simple.DIVIDE;
      case SHAPE -> Action.Simple.SHAPE;
      case PROOF -> Action.Simple.PROOF;
      case GLAZE -> Action.Simple.GLAZE;
      case COOL -> Action.Simple.COOL;
      case WORK, BAKE -> Action.Simple.WORK;
    };
  }

  /** "mix the dough" is the final dough; "mix Poolish" is that stage. */
  private static @Nullable String stage(String rest) {
    String lower = rest.toLowerCase(Locale.ROOT);
    boolean dough = lower.isEmpty() || NO_STAGE.matcher(lower).lookingAt();
    return dough ? null : rest;
  }

  private static final Map<String, LockIn> LOCK_INS =
      Map.of(
          "half", LockIn.HALF,
          "halves", LockIn.HALF,
          "thirds", LockIn.THIRDS,
          "envelope", LockIn.ENVELOPE,
          "outside", LockIn.OUTSIDE);

  private static LockIn lockIn(String rest) {
    for (String word : rest.toLowerCase(Locale.ROOT).split("\\s+")) {
      LockIn lockIn = LOCK_INS.get(word);
      if (lockIn != null) {
        return lockIn;
      }
    }
    throw new BakeryException(
        Reason.UNKNOWN_NAME,
        "no such lock-in",
        "\"" + rest + "\"",
        "write lock in by halves, by thirds, as envelope or outside");
  }

  private static List<Fold> folds(String rest) {
    List<Fold> folds = new ArrayList<>();
    String[] words = rest.toLowerCase(Locale.ROOT).replace(",", " ").strip().split("\\s+");
    for (int i = 0; i < words.length; i++) {
      switch (words[i]) {
        case "half" -> folds.add(Fold.HALF);
        case "letter", "single" -> folds.add(Fold.LETTER);
        case "book", "double" -> folds.add(Fold.BOOK);
        case "and", "fold", "folds" -> {}
        case "zigzag" -> {
          if (i + 1 == words.length || !words[i + 1].matches("\\d{1,2}")) {
            throw noFold(rest);
          }
          folds.add(Fold.zigzag(Integer.parseInt(words[++i])));
        }
        default -> throw noFold(rest);
      }
    }
    if (folds.isEmpty()) {
      throw noFold(rest);
    }
    return folds;
  }

  private static BakeryException noFold(String rest) {
    return new BakeryException(
        Reason.UNKNOWN_NAME,
        "no such fold",
        "\"" + rest + "\"",
        "write turn letter, turn book, turn half or turn zigzag 5");
  }

  private static Step frame(Action action, String name, String body) {
    Matcher matcher = BODY.matcher(body);
    if (!matcher.matches()) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT,
          "the time of the step can't be read",
          "\"" + body + "\"",
          "write it like 12-14 h in the refrigerator as slab 30 mm, until firm");
    }
    AmountRange<Time> range = Amounts.timeRange(matcher.group(1));
    String bath = action instanceof Action.Boil ? matcher.group(2) : null;
    Action done = bath == null ? action : new Action.Boil(Amounts.temperature(bath));
    Step step = Step.of(done, range.high()).called(name);
    step = GENTLY.matcher(name).find() ? step.gently() : step;
    if (range.low().compareTo(range.high()) < 0) {
      step = step.lookingFrom(range.low());
    }
    if (action == Action.Simple.CHILL || action == Action.Simple.RETARD) {
      step = step.in(Place.REFRIGERATOR);
    }
    String air = bath == null ? matcher.group(2) : null;
    step = with(step, air, text -> Place.air(Amounts.temperature(text)), Step::in);
    step = with(step, matcher.group(3), StepText::place, Step::in);
    step = with(step, matcher.group(4), FormText::parse, Step::as);
    step = with(step, matcher.group(5), SettingText.COVER, Step::covered);
    return with(step, matcher.group(6), StepText::cue, Step::until);
  }

  private static <T> Step with(
      Step step,
      @Nullable String text,
      Function<String, T> reader,
      java.util.function.BiFunction<Step, T, Step> put) {
    return text == null ? step : put.apply(step, reader.apply(text));
  }

  private static Place place(String word) {
    for (Place.Named place : Place.Named.values()) {
      if (place.word().equalsIgnoreCase(word)) {
        return place;
      }
    }
    throw new BakeryException(
        Reason.UNKNOWN_NAME,
        "no such place",
        "\"" + word + "\"",
        "write in the room, refrigerator, freezer or proofer, or at 26 °C");
  }

  private static Cue cue(String words) {
    String lower = words.toLowerCase(Locale.ROOT);
    for (String growth :
        List.of(
            "doubled",
            "tripled",
            "grown by half",
            "grown by a quarter",
            "grown by three quarters")) {
      if (lower.startsWith(growth)) {
        return Cue.growth(words, SettingText.growth(growth));
      }
    }
    return Cue.of(words);
  }
}
