package org.tourage.formula;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javax.measure.quantity.Mass;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Problem;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Filling;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;
import org.tourage.ingredient.Weighed;
import org.tourage.internal.VisibleText;
import org.tourage.quantity.CupStandard;
import org.tourage.quantity.HouseholdAmount;
import org.tourage.quantity.Kind;

/**
 * Reads the lines of a household recipe, each once. A line that can't be read becomes a problem
 * with its number, and the reading goes on. Not safe for use by several threads.
 */
final class RecipeReader {
  /** No line of a recipe is longer. */
  private static final int MAX_LINE = 1000;

  private static final int MAX_STAGE_NAME = 100;

  /** So many bad lines are told; then something other than a recipe is being read. */
  private static final int MAX_PROBLEMS = 50;

  /** Two masses of one line may differ by this share: what is printed in ounces is rounded. */
  private static final double SAME_MASS = 0.05;

  /** Where a recipe does not say, all its flours are filled by this hand. */
  private static final Filling HAND = Filling.SPOONED;

  /** So many different lines and names are remembered in one reading. */
  private static final int REMEMBERED = 10_000;

  /** No recipe has more lines that differ; what has is another text. */
  private static final int MOST_DIFFERENT = 200_000;

  private static final String AS_FLOUR = "as flour";
  private static final Map<String, StageKind> STAGES =
      Map.of(
          "dough", StageKind.FINAL_DOUGH,
          "preferment", StageKind.PREFERMENT,
          "soaker", StageKind.SOAKER,
          "roll-in", StageKind.ROLL_IN,
          "filling", StageKind.FILLING,
          "finish", StageKind.FINISH);
  private static final Map<String, Filling> FILLINGS = fillings();

  private final Catalogue catalogue;
  private final CupStandard cups;
  private final boolean keepsUnknown;
  private final List<HouseholdRecipe.Item> items = new ArrayList<>();
  private final List<HouseholdRecipe.Draw> draws = new ArrayList<>();
  private final List<Problem> problems = new ArrayList<>();

  /** The stages by their name in lower case, in the order of the text. */
  private final Map<String, Heading> headings = new LinkedHashMap<>();

  /** What the names of this recipe turned out to be; most names come again. */
  private final Map<String, Found> known = new HashMap<>();

  private Heading stage = new Heading(StageKind.FINAL_DOUGH, "Final dough");

  RecipeReader(Catalogue catalogue, CupStandard cups, boolean keepsUnknown) {
    this.catalogue = requireNonNull(catalogue, "catalogue");
    this.cups = requireNonNull(cups, "cups");
    this.keepsUnknown = keepsUnknown;
  }

  /** Lines that came before, for the text that repeats itself; bounded. */
  private final Map<String, HouseholdRecipe.Item> before = new HashMap<>();

  private int different;

  private record Heading(StageKind kind, String name) {}

  private record Found(
      Ingredient ingredient, @Nullable Filling filling, @Nullable String piece, String note) {}

  private static Map<String, Filling> fillings() {
    Map<String, Filling> map = new HashMap<>();
    for (Filling filling : Filling.values()) {
      map.put(filling.word(), filling);
    }
    return map;
  }

  HouseholdRecipe read(String name, List<HouseholdRecipe.Row> rows) {
    for (HouseholdRecipe.Row row : rows) {
      String text = row.text().strip();
      if (text.startsWith("[")) {
        try {
          remember(heading(text));
        } catch (BakeryException later) {
          // told when the line is read
        }
      }
    }
    for (HouseholdRecipe.Row row : rows) {
      try {
        line(row.number(), row.text());
      } catch (BakeryException refused) {
        problems.add(new Problem(row.number(), VisibleText.of(row.text().strip()), refused));
      }
      if (problems.size() == MAX_PROBLEMS || different > MOST_DIFFERENT) {
        break;
      }
    }
    checkDraws();
    if (!problems.isEmpty()) {
      throw BakeryException.of(problems);
    }
    return new HouseholdRecipe(name, items, draws);
  }

  private Heading remember(Heading heading) {
    Heading first = headings.putIfAbsent(heading.name.toLowerCase(Locale.ROOT), heading);
    if (first != null && first.kind != heading.kind) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "two stages have one name",
          "\"" + heading.name + "\"",
          "give each stage a name of its own");
    }
    return first == null ? heading : first;
  }

  private void line(int number, String raw) {
    String text = raw.strip();
    if (text.isEmpty() || text.startsWith("#")) {
      return;
    }
    checkCharacters(text);
    if (text.startsWith("[")) {
      stage = remember(heading(text));
    } else {
      HouseholdRecipe.Item same = before.get(text);
      if (same == null) {
        different++;
        if (different > MOST_DIFFERENT) {
          throw new BakeryException(
              Reason.OUT_OF_RANGE,
              "no recipe has so many lines",
              "more than " + MOST_DIFFERENT + " different lines",
              "give the text of one recipe");
        }
        entry(number, text);
      } else {
        items.add(same.at(number, stage.kind, stage.name));
      }
    }
  }

  private static void checkCharacters(String text) {
    if (text.length() > MAX_LINE) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT,
          "too long for a line of a recipe",
          text.length() + " characters",
          "give at most " + MAX_LINE);
    }
    for (int i = 0; i < text.length(); i++) {
      if (VisibleText.isHidden(text.charAt(i))) {
        throw new BakeryException(
            Reason.UNREADABLE_TEXT,
            "a character that can't be seen",
            "\"" + VisibleText.of(text) + "\" at character " + (i + 1),
            "take it out");
      }
    }
  }

  private static Heading heading(String text) {
    String inner = text.endsWith("]") ? text.substring(1, text.length() - 1).strip() : "";
    if (inner.isEmpty() || inner.indexOf('[') >= 0 || inner.indexOf(']') >= 0) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT,
          "not a heading",
          "\"" + VisibleText.of(text) + "\"",
          "write it like [dough] or [preferment Poolish] and nothing behind it");
    }
    int end = 0;
    while (end < inner.length() && !Character.isWhitespace(inner.charAt(end))) {
      end++;
    }
    StageKind kind = STAGES.get(inner.substring(0, end).toLowerCase(Locale.ROOT));
    String given = inner.substring(end).strip();
    if (kind == null || given.length() > MAX_STAGE_NAME) {
      throw new BakeryException(
          kind == null ? Reason.UNKNOWN_NAME : Reason.UNREADABLE_TEXT,
          kind == null ? "no such stage" : "the name of a stage is too long",
          "\"" + VisibleText.of(text) + "\"",
          kind == null
              ? "use [dough], [preferment Name], [soaker Name], [roll-in], [filling] or [finish]"
              : "give at most " + MAX_STAGE_NAME + " characters");
    }
    return new Heading(kind, given.isEmpty() ? HouseholdRecipe.usualName(kind) : given);
  }

  private void entry(int number, String text) {
    if (text.regionMatches(true, 0, "all of ", 0, 7)) {
      String from = text.substring(7).strip();
      Heading heading = headings.get(from.toLowerCase(Locale.ROOT));
      if (heading == null) {
        throw new BakeryException(
            Reason.UNKNOWN_NAME,
            "no such stage to take",
            "\"" + from + "\"",
            "write its heading, for example [preferment " + from + "]");
      }
      addDraw(number, text, new StageDraft.Draw<>(heading.name, null, PERCENT.amount(100)));
      return;
    }
    HouseholdAmount measure = HouseholdAmount.parseFront(text, cups);
    StringBuilder note = new StringBuilder();
    String rest = measure.rest();
    HouseholdAmount inBrackets = null;
    for (int open = rest.indexOf('('); open >= 0; open = rest.indexOf('(')) {
      int close = rest.indexOf(')', open);
      if (close < 0) {
        throw new BakeryException(
            Reason.UNREADABLE_TEXT,
            "a bracket is not closed",
            "\"" + text + "\"",
            "write it like 2 sticks (226 g) butter");
      }
      String inside = rest.substring(open + 1, close).strip();
      Optional<HouseholdAmount> mass = mass(inside);
      if (mass.isPresent()) {
        HouseholdAmount before = measure.kind() == Kind.MASS ? measure : inBrackets;
        inBrackets = sameMass(before, mass.get(), text);
      } else {
        note.append(note.length() == 0 ? "" : ", ").append(inside);
      }
      String tail = rest.substring(close + 1);
      String head = rest.substring(0, open).strip();
      rest = (head + (tail.startsWith(",") ? "" : " ") + tail.strip()).strip();
    }
    boolean of = rest.startsWith("of ");
    String name = of ? rest.substring(3).strip() : rest;
    boolean flour = false;
    if (name.toLowerCase(Locale.ROOT).contains(AS_FLOUR)) {
      String without = withoutAsFlour(name);
      flour = !without.equals(name);
      name = without;
    }
    if (name.isEmpty()) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT,
          "an ingredient is missing",
          "\"" + text + "\"",
          "write it like 500 g bread flour");
    }
    HouseholdAmount amount = inBrackets == null ? measure : inBrackets;
    Heading from = headings.get(name.toLowerCase(Locale.ROOT));
    if (from != null && !from.equals(stage)) {
      boolean both = catalogue.find(name).isPresent();
      if (both && of) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            "a stage and an ingredient have one name",
            "\"" + text + "\"",
            "give the stage another name, or leave out \"of\" for the ingredient");
      }
      if (!both) {
        addDraw(number, text, draw(amount, from.name, text));
        return;
      }
    }
    Found found = known.get(name);
    if (found == null) {
      found = find(name, amount);
      // what is unknown is kept where it is weighed, and nowhere else
      if (known.size() < REMEMBERED && !found.ingredient.composition().isUnknown()) {
        known.put(name, found);
      }
    }
    note.append(note.length() == 0 || found.note.isEmpty() ? "" : ", ").append(found.note);
    HouseholdRecipe.Item item =
        new HouseholdRecipe.Item(
            number,
            text,
            stage.kind,
            stage.name,
            weigh(amount, inBrackets != null, found),
            flour || found.ingredient.is(Role.FLOUR) || isFlourByName(found.ingredient),
            note.toString());
    items.add(item);
    // a name that is also a stage's is read by the stage that it stands in
    if (from == null && before.size() < REMEMBERED) {
      before.put(text, item);
    }
  }

  private Optional<HouseholdAmount> mass(String text) {
    boolean number = !text.isEmpty() && !Character.isLetter(text.charAt(0));
    if (!number) {
      return Optional.empty();
    }
    try {
      HouseholdAmount amount = HouseholdAmount.parse(text, cups);
      return amount.kind() == Kind.MASS ? Optional.of(amount) : Optional.empty();
    } catch (BakeryException noAmount) {
      return Optional.empty();
    }
  }

  /** A mass in brackets wins over a measure; over another mass only if the two agree. */
  private static HouseholdAmount sameMass(
      @Nullable HouseholdAmount before, HouseholdAmount mass, String text) {
    if (before == null) {
      return mass;
    }
    double low = before.rangeTo(GRAM).low().value();
    double high = before.rangeTo(GRAM).high().value();
    double wanted = mass.rangeTo(GRAM).low().value();
    if (wanted < low * (1 - SAME_MASS) || wanted > high * (1 + SAME_MASS)) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "two masses that are not the same",
          "\"" + text + "\"",
          "give one of them");
    }
    return mass;
  }

  /** Takes the words "as flour" out of what follows the commas. */
  private static String withoutAsFlour(String name) {
    StringBuilder kept = new StringBuilder();
    for (String part : name.split(",", -1)) {
      boolean first = kept.length() == 0;
      if (first || !part.strip().equalsIgnoreCase(AS_FLOUR)) {
        kept.append(first ? "" : ",").append(part);
      }
    }
    return kept.toString().strip();
  }

  private void addDraw(int number, String text, StageDraft.Draw<Mass> draw) {
    draws.add(new HouseholdRecipe.Draw(number, text, stage.kind, stage.name, draw));
  }

  private static StageDraft.Draw<Mass> draw(HouseholdAmount amount, String from, String text) {
    boolean known = amount.kind() == Kind.MASS || amount.kind() == Kind.RATIO;
    if (!known || amount.isRange()) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT,
          "how much of \"" + from + "\"?",
          "\"" + text + "\"",
          "write 100 g of " + from + ", 40 % of " + from + " or all of " + from);
    }
    return amount.kind() == Kind.MASS
        ? new StageDraft.Draw<>(from, amount.to(GRAM), null)
        : new StageDraft.Draw<>(from, null, FRACTION.amount(amount.to(FRACTION).value()));
  }

  /** A stage that is taken must have been written. */
  private void checkDraws() {
    if (draws.isEmpty()) {
      return;
    }
    Set<String> withLines = new HashSet<>();
    items.forEach(item -> withLines.add(item.stage()));
    draws.forEach(draw -> withLines.add(draw.stage()));
    for (HouseholdRecipe.Draw draw : draws) {
      String from = draw.draw().stage();
      boolean written = withLines.contains(from);
      if (!written && problems.size() < MAX_PROBLEMS) {
        problems.add(
            new Problem(
                draw.line(),
                draw.text(),
                new BakeryException(
                    Reason.MISSING,
                    "a stage that is taken has no lines",
                    "\"" + from + "\"",
                    "write its lines under its heading")));
      }
    }
  }

  /** An unknown thing that calls itself a flour is counted as one; the advice says so. */
  private static boolean isFlourByName(Ingredient ingredient) {
    return ingredient.composition().isUnknown()
        && ingredient.name().toLowerCase(Locale.ROOT).endsWith("flour");
  }

  /** Looks up the longest name; what is left is a filling, a size or a note. */
  private Found find(String rest, HouseholdAmount amount) {
    String name = rest;
    String note = "";
    Optional<Ingredient> ingredient = catalogue.find(name);
    while (ingredient.isEmpty() && name.lastIndexOf(',') > 0) {
      int comma = name.lastIndexOf(',');
      String tail = name.substring(comma + 1).strip();
      note = note.isEmpty() ? tail : tail + ", " + note;
      name = name.substring(0, comma).strip();
      ingredient = catalogue.find(name);
    }
    Filling filling = filling(note);
    if (ingredient.isPresent()) {
      return new Found(ingredient.get(), filling, null, filling == null ? note : "");
    }
    int space = name.indexOf(' ');
    if (space > 0) {
      String first = name.substring(0, space);
      ingredient = catalogue.find(name.substring(space + 1));
      Filling word = filling(first);
      if (ingredient.isPresent() && word != null) {
        return new Found(ingredient.get(), word, null, note);
      }
      if (ingredient.isPresent() && ingredient.get().hasPiece(first)) {
        return new Found(ingredient.get(), filling, first, note);
      }
    }
    boolean weighed = amount.kind() == Kind.MASS && hasLetter(name);
    Optional<String> meant = keepsUnknown && weighed ? catalogue.mistyped(name) : Optional.empty();
    if (keepsUnknown && weighed && meant.isEmpty()) {
      return new Found(Ingredient.unknown(name), null, null, note);
    }
    throw new BakeryException(
        Reason.UNKNOWN_NAME,
        "no such ingredient",
        "\"" + VisibleText.of(name) + "\"",
        meant.isPresent()
            ? "did you mean " + meant.get() + "? If not, add it as an ingredient of your own"
            : catalogue.hint(name) + (keepsUnknown ? "; or weigh it, then its mass counts" : ""));
  }

  private static boolean hasLetter(String name) {
    return name.chars().anyMatch(Character::isLetter);
  }

  private static @Nullable Filling filling(String word) {
    return FILLINGS.get(word.toLowerCase(Locale.ROOT));
  }

  /** A mass in brackets is what it is, whatever is counted; all else must fit the size. */
  private static Weighed weigh(HouseholdAmount measure, boolean inBrackets, Found found) {
    if (found.piece != null && !inBrackets) {
      return found.ingredient.weighPieces(measure, found.piece);
    }
    return found.filling != null
        ? found.ingredient.weigh(measure, found.filling)
        : found.ingredient.weighByHand(measure, HAND);
  }
}
