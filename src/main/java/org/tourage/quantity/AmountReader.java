package org.tourage.quantity;

import static java.util.Objects.requireNonNull;

import java.math.BigInteger;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/** Reads household amounts, left to right, and refuses whatever could be read in two ways. */
final class AmountReader {
  /** Longer texts are no amounts; the bound keeps numbers finite. */
  private static final int MAX_LENGTH = 200;

  private static final int MAX_WORDS = 3;

  private static final Pattern SYMBOL = Pattern.compile("[°º˚] ?[cCfF]|℃|℉|%|\"|″");
  private static final Pattern RANGE = Pattern.compile(" *[-–—] *| +to +");
  private static final Pattern JOINER = Pattern.compile(" *\\+ *| +(?:plus|and) +| *");

  private final NumberReader in;
  private final Kind kind;
  private final CupStandard cups;
  private boolean unitOptional;

  AmountReader(String text, Kind kind, CupStandard cups) {
    this.in =
        new NumberReader(
            text,
            kind == Kind.OTHER
                ? "write it like 3 1/2 cups, 500 g or 2 packets"
                : "write it like " + kind.example());
    this.kind = kind;
    this.cups = requireNonNull(cups, "cups");
  }

  private record Term(Fraction number, @Nullable BakeryUnit<?> unit, @Nullable String countWord) {}

  /** Lets a length go without a unit; the caller supplies one. */
  AmountReader unitOptional() {
    unitOptional = true;
    return this;
  }

  HouseholdAmount readAll() {
    if (in.text.length() > MAX_LENGTH) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT,
          "too long for an amount",
          in.text.length() + " characters",
          "give at most " + MAX_LENGTH);
    }
    unitOptional |= kind == Kind.OTHER;
    HouseholdAmount amount = read();
    in.skipSpace();
    if (in.pos < in.text.length()) {
      throw in.error("unexpected text", in.pos);
    }
    return amount;
  }

  HouseholdAmount readFront() {
    unitOptional |= kind == Kind.OTHER;
    return read();
  }

  private HouseholdAmount read() {
    int start = in.pos;
    Term first = readSum();
    Term second = null;
    int rangeEnd = lookingAt(RANGE, in.pos);
    if (rangeEnd >= 0 && in.startsNumber(rangeEnd)) {
      boolean tight = in.text.startsWith("-", in.pos) && rangeEnd == in.pos + 1;
      in.pos = rangeEnd;
      second = readSum();
      refuseMixedLook(tight, first, second, rangeEnd);
    }
    Term last = second == null ? first : second;
    checkKind(last, start);
    checkEnds(first, second, start);
    Fraction low = first.number;
    if (second != null && first.unit != null && first.unit != second.unit) {
      low = convert(first.number, first.unit, requireNonNull(second.unit));
    }
    if (second != null && low.compareTo(second.number) >= 0) {
      throw in.error("the range does not go up", start, "put the smaller number first");
    }
    AmountLimits.check(in.text, low, last.number, last.unit);
    return new HouseholdAmount(in.text, low, last.number, last.unit, last.countWord, in.pos);
  }

  /** Where a pattern that begins here ends, or −1. */
  private int lookingAt(Pattern pattern, int from) {
    Matcher matcher = pattern.matcher(in.text).region(from, in.text.length());
    return matcher.lookingAt() ? matcher.end() : -1;
  }

  private void refuseMixedLook(boolean tight, Term first, Term second, int at) {
    boolean mixedLook =
        tight
            && first.unit == null
            && first.number.denominator().equals(BigInteger.ONE)
            && second.number.compareTo(Fraction.ONE) < 0;
    if (mixedLook) {
      throw in.error(
          "a mixed number or a range?",
          at,
          "write "
              + first.number
              + " "
              + second.number
              + " for a mixed number, or a range with the smaller number first");
    }
  }

  private void checkKind(Term last, int start) {
    if (last.countWord != null && kind != Kind.OTHER) {
      throw in.error(last.countWord + "s are counted, and a " + kind.label() + " is wanted", start);
    }
    if (last.unit == null && last.countWord == null && !unitOptional) {
      throw in.error("a unit is missing", in.pos);
    }
    if (last.unit != null && kind != Kind.OTHER && last.unit.kind() != kind) {
      throw in.error(
          "a " + last.unit.kind().label() + " where a " + kind.label() + " is wanted", start);
    }
  }

  private void checkEnds(Term first, @Nullable Term second, int start) {
    if (second == null) {
      return;
    }
    boolean countsOtherThings =
        first.countWord != null
            && (second.unit != null || !first.countWord.equals(second.countWord));
    if (countsOtherThings) {
      throw in.error("the ends of the range count different things", start);
    }
    boolean otherKind =
        first.unit != null
            && first.unit != second.unit
            && (second.unit == null || first.unit.kind() != second.unit.kind());
    if (otherKind) {
      throw in.error("the ends of the range have different kinds of unit", start);
    }
  }

  /** One or more numbers with falling units of one kind, such as 1 h 30 min. */
  private Term readSum() {
    Term sum = readTerm();
    while (sum.unit != null && !isTemperature(sum.unit)) {
      int joinerEnd = lookingAt(JOINER, in.pos);
      if (joinerEnd < 0 || !in.startsNumber(joinerEnd)) {
        break;
      }
      int back = in.pos;
      boolean blank = in.text.substring(in.pos, joinerEnd).isBlank();
      in.pos = joinerEnd;
      Term next = readTerm();
      boolean mayBelongToName = kind == Kind.OTHER && blank;
      if (mayBelongToName && (next.unit == null || next.unit.kind() != sum.unit.kind())) {
        // as in "1 cup 2% milk": the second number belongs to the rest of the line
        in.pos = back;
        break;
      }
      if (next.unit == null) {
        throw in.error("a unit is missing", in.pos);
      }
      boolean falls =
          next.unit.kind() == sum.unit.kind() && factor(next.unit).compareTo(factor(sum.unit)) < 0;
      if (!falls) {
        throw in.error(
            "units that are added up must be of one kind, the larger first",
            joinerEnd,
            "write it like 1 h 30 min or 1 cup + 2 tbsp");
      }
      sum = new Term(convert(sum.number, sum.unit, next.unit).plus(next.number), next.unit, null);
    }
    return sum;
  }

  private static boolean isTemperature(BakeryUnit<?> unit) {
    return unit.kind() == Kind.TEMPERATURE;
  }

  private static Fraction factor(BakeryUnit<?> unit) {
    return unit.exactFactor().orElseThrow();
  }

  private Fraction convert(Fraction number, BakeryUnit<?> from, BakeryUnit<?> to) {
    if (isTemperature(from)) {
      throw in.error(
          "the ends of a range of temperatures must have one unit",
          in.pos,
          "write it like 20-22 °C");
    }
    return number.times(factor(from)).over(factor(to));
  }

  private Term readTerm() {
    in.skipSpace();
    int start = in.pos;
    Fraction number = in.readNumber();
    int afterNumber = in.pos;
    in.skipSpace();
    int symbolEnd = isSymbolStart() ? lookingAt(SYMBOL, in.pos) : -1;
    if (symbolEnd >= 0) {
      BakeryUnit<?> unit = symbolUnit(in.text.charAt(symbolEnd - 1));
      in.pos = symbolEnd;
      return check(new Term(number, unit, null), start);
    }
    Term word = readWordUnit(number);
    if (word != null) {
      return check(word, start);
    }
    in.pos = afterNumber;
    return check(new Term(number, null, null), start);
  }

  private boolean isSymbolStart() {
    return in.pos < in.text.length() && "°º˚℃℉%\"″".indexOf(in.text.charAt(in.pos)) >= 0;
  }

  private Term check(Term term, int start) {
    boolean signed = start < in.text.length() && NumberReader.isMinus(in.text.charAt(start));
    if (signed && (term.unit == null || !isTemperature(term.unit))) {
      throw in.error("an amount can't be negative", start, "leave the minus sign out");
    }
    in.refuseThousands(isWeighedInThousands(term.unit));
    return term;
  }

  /** Units of which a thousand is an everyday amount and a thousandth is none. */
  private static boolean isWeighedInThousands(@Nullable BakeryUnit<?> unit) {
    return unit == null
        || unit == BakeryUnits.GRAM
        || unit == BakeryUnits.MILLIGRAM
        || unit == BakeryUnits.MILLILITRE
        || unit == BakeryUnits.MILLIMETRE
        || unit == BakeryUnits.MICROMETRE;
  }

  private static BakeryUnit<?> symbolUnit(char last) {
    return switch (last) {
      case 'c', 'C', '℃' -> BakeryUnits.CELSIUS;
      case 'f', 'F', '℉' -> BakeryUnits.FAHRENHEIT;
      case '%' -> BakeryUnits.PERCENT;
      default -> BakeryUnits.INCH;
    };
  }

  /** Tries three words, then two, then one, so that "fl oz" is not read as an ounce. */
  private @Nullable Term readWordUnit(Fraction number) {
    int[] ends = new int[MAX_WORDS + 1];
    String[] joined = new String[MAX_WORDS + 1];
    int words = 0;
    int at = in.pos;
    while (words < MAX_WORDS) {
      int end = at;
      while (end < in.text.length() && Character.isLetter(in.text.charAt(end))) {
        end++;
      }
      if (end == at) {
        break;
      }
      String word = in.text.substring(at, end);
      at = end;
      if (at < in.text.length() && in.text.charAt(at) == '.') {
        at++;
      }
      words++;
      ends[words] = at;
      joined[words] = words == 1 ? word : joined[words - 1] + " " + word;
      while (at < in.text.length() && in.text.charAt(at) == ' ') {
        at++;
      }
    }
    if (words > 0) {
      refuseAmbiguous(joined[1]);
    }
    for (int n = words; n > 0; n--) {
      Term term = wordTerm(number, joined[n]);
      if (term != null) {
        refusePointBeforeNumber(ends[n]);
        in.pos = ends[n];
        return term;
      }
    }
    if (words > 0 && kind != Kind.OTHER) {
      throw in.error("not a unit of " + kind.label(), in.pos);
    }
    return null;
  }

  private void refusePointBeforeNumber(int end) {
    boolean both = in.text.charAt(end - 1) == '.' && end < in.text.length() && in.startsNumber(end);
    if (both) {
      throw in.error(
          "the end of an abbreviation or a decimal point?",
          end - 1,
          "write 2 lb 25 oz or 2 lb 0.25 oz");
    }
  }

  private @Nullable Term wordTerm(Fraction number, String words) {
    String key = words.toLowerCase(Locale.ROOT);
    BakeryUnit<?> letter = key.length() == 1 ? letterUnit(key) : null;
    if (letter != null) {
      return new Term(number, letter, null);
    }
    BakeryUnit<?> plain = UnitWords.PLAIN.get(key);
    if (plain != null) {
      return new Term(number, plain, null);
    }
    int space = key.indexOf(' ');
    CupStandard kitchen = space < 0 ? null : UnitWords.KITCHENS.get(key.substring(0, space));
    String cupWord = UnitWords.CUPS.get(kitchen == null ? key : key.substring(space + 1));
    if (cupWord != null) {
      return new Term(number, cupUnit(cupWord, kitchen == null ? cups : kitchen), null);
    }
    String count = UnitWords.COUNTS.get(key);
    return count == null ? null : new Term(number, null, count);
  }

  /** A letter that means one thing only where the kind is known. */
  private @Nullable BakeryUnit<?> letterUnit(String key) {
    return switch (kind) {
      case TEMPERATURE ->
          key.equals("c") ? BakeryUnits.CELSIUS : key.equals("f") ? BakeryUnits.FAHRENHEIT : null;
      case TIME -> key.equals("m") ? BakeryUnits.MINUTE : null;
      case LENGTH -> key.equals("m") ? BakeryUnits.METRE : null;
      default -> null;
    };
  }

  private void refuseAmbiguous(String word) {
    boolean single = word.length() == 1;
    if (single && (word.equals("T") || word.equals("t"))) {
      throw in.error("tablespoon or teaspoon?", in.pos, "write tbsp or tsp");
    }
    if (single && kind != Kind.TEMPERATURE && "cCfF".contains(word)) {
      throw in.error("one letter can mean several things here", in.pos, "write cup, °C or °F");
    }
    if (single && kind != Kind.TIME && kind != Kind.LENGTH && word.equalsIgnoreCase("m")) {
      throw in.error("metres or minutes?", in.pos, "write cm, mm or min");
    }
    if (word.equalsIgnoreCase("mg") && !word.equals("mg")) {
      throw in.error(
          "milligrams are written mg, and " + word + " can mean a million grams",
          in.pos,
          "write mg, g or kg");
    }
  }

  private BakeryUnit<?> cupUnit(String word, CupStandard kitchen) {
    BakeryUnit<?> unit = UnitWords.cup(word, kitchen);
    if (unit == null) {
      throw in.error(
          "the "
              + kitchen.name().toLowerCase(Locale.ROOT).replace('_', ' ')
              + " kitchen has no one size for "
              + word,
          in.pos,
          "give it in mL or g, or name the kitchen, for example US " + word);
    }
    return unit;
  }
}
