package org.tourage.quantity;

import static java.util.Map.entry;

import java.math.BigInteger;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/** Reads household amounts, left to right, and refuses whatever could be read in two ways. */
final class AmountReader {
  /** Longer texts are no amounts; the bound keeps numbers finite. */
  private static final int MAX_LENGTH = 200;

  private static final int MAX_DIGITS = 15;
  private static final int MAX_WORDS = 3;

  private static final Map<Character, Fraction> VULGAR =
      Map.ofEntries(
          entry('¼', Fraction.of(1, 4)),
          entry('½', Fraction.of(1, 2)),
          entry('¾', Fraction.of(3, 4)),
          entry('⅐', Fraction.of(1, 7)),
          entry('⅑', Fraction.of(1, 9)),
          entry('⅒', Fraction.of(1, 10)),
          entry('⅓', Fraction.of(1, 3)),
          entry('⅔', Fraction.of(2, 3)),
          entry('⅕', Fraction.of(1, 5)),
          entry('⅖', Fraction.of(2, 5)),
          entry('⅗', Fraction.of(3, 5)),
          entry('⅘', Fraction.of(4, 5)),
          entry('⅙', Fraction.of(1, 6)),
          entry('⅚', Fraction.of(5, 6)),
          entry('⅛', Fraction.of(1, 8)),
          entry('⅜', Fraction.of(3, 8)),
          entry('⅝', Fraction.of(5, 8)),
          entry('⅞', Fraction.of(7, 8)));

  /** Words that need no kitchen; keys are lower case without full stops. */
  private static final Map<String, BakeryUnit<?>> PLAIN_UNITS = plainUnits();

  /** Words whose size depends on the kitchen, by their canonical word. */
  private static final Map<String, String> CUP_WORDS = cupWords();

  private static final Map<String, String> COUNT_WORDS = countWords();

  private static final Map<String, CupStandard> KITCHENS =
      Map.of(
          "us", CupStandard.US_CUSTOMARY,
          "labelling", CupStandard.US_LABELLING,
          "metric", CupStandard.METRIC,
          "imperial", CupStandard.IMPERIAL,
          "imp", CupStandard.IMPERIAL,
          "uk", CupStandard.IMPERIAL);

  private static final Pattern WORD = Pattern.compile("\\p{L}+");
  private static final Pattern SYMBOL = Pattern.compile("°\\s?[cCfF]|℃|℉|%|\"|″");
  private static final Pattern RANGE = Pattern.compile("\\s*[-–—]\\s*|\\s+to\\s+");
  private static final Pattern JOINER = Pattern.compile("\\s*\\+\\s*|\\s+(?:plus|and)\\s+|\\s*");

  private final String text;
  private final Kind kind;
  private final CupStandard cups;
  private boolean unitOptional;
  private int pos;

  AmountReader(String text, Kind kind, CupStandard cups) {
    this.text = java.util.Objects.requireNonNull(text, "text");
    this.kind = kind;
    this.cups = java.util.Objects.requireNonNull(cups, "cups");
  }

  private record Term(Fraction number, @Nullable BakeryUnit<?> unit, @Nullable String countWord) {}

  /** Lets a length go without a unit; the caller supplies one. */
  AmountReader unitOptional() {
    unitOptional = true;
    return this;
  }

  HouseholdAmount readAll() {
    unitOptional |= kind == Kind.OTHER;
    HouseholdAmount amount = read();
    skipSpace();
    if (pos < text.length()) {
      throw error("unexpected text", pos, example());
    }
    return amount;
  }

  HouseholdAmount readFront() {
    unitOptional = true;
    return read();
  }

  private HouseholdAmount read() {
    if (text.length() > MAX_LENGTH) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT,
          "too long for an amount",
          text.length() + " characters",
          "give at most " + MAX_LENGTH);
    }
    int start = pos;
    Term first = readSum();
    Matcher range = RANGE.matcher(text).region(pos, text.length());
    Term second = null;
    if (range.lookingAt() && startsNumber(range.end())) {
      boolean tight = range.group().equals("-");
      pos = range.end();
      int secondStart = pos;
      second = readSum();
      boolean mixedLook =
          tight
              && first.unit == null
              && first.number.denominator().equals(BigInteger.ONE)
              && second.number.compareTo(Fraction.ONE) < 0;
      if (mixedLook) {
        throw error(
            "a mixed number or a range?",
            secondStart,
            "write "
                + first.number
                + " "
                + second.number
                + " for a mixed number, or a range with the smaller number first");
      }
    }
    Term last = second == null ? first : second;
    if (last.unit == null && last.countWord == null && !unitOptional) {
      throw error("a unit is missing", pos, example());
    }
    if (last.unit != null && kind != Kind.OTHER && last.unit.kind() != kind) {
      throw error(
          "a " + last.unit.kind().label() + " where a " + kind.label() + " is wanted",
          start,
          example());
    }
    boolean countsOtherThings =
        second != null
            && first.countWord != null
            && (second.unit != null || !first.countWord.equals(second.countWord));
    if (countsOtherThings) {
      throw error("the ends of the range count different things", start, example());
    }
    Fraction low = first.number;
    if (second != null && first.unit != null && first.unit != second.unit) {
      if (second.unit == null || first.unit.kind() != second.unit.kind()) {
        throw error("the ends of the range have different kinds of unit", start, example());
      }
      low = convert(first.number, first.unit, second.unit);
    }
    if (second != null && low.compareTo(second.number) >= 0) {
      throw error("the range does not go up", start, "put the smaller number first");
    }
    return new HouseholdAmount(text, low, last.number, last.unit, last.countWord, pos);
  }

  /** One or more numbers with falling units of one kind, such as 1 h 30 min. */
  private Term readSum() {
    Term sum = readTerm();
    while (sum.unit != null && !isTemperature(sum.unit)) {
      Matcher joiner = JOINER.matcher(text).region(pos, text.length());
      if (!joiner.lookingAt() || !startsNumber(joiner.end())) {
        break;
      }
      int back = pos;
      pos = joiner.end();
      int start = pos;
      Term next = readTerm();
      boolean mayBelongToName = kind == Kind.OTHER && joiner.group().isBlank();
      if (mayBelongToName && (next.unit == null || next.unit.kind() != sum.unit.kind())) {
        // as in "1 cup 2% milk": the second number belongs to the rest of the line
        pos = back;
        break;
      }
      if (next.unit == null) {
        throw error("a unit is missing", pos, example());
      }
      boolean falls =
          next.unit.kind() == sum.unit.kind() && factor(next.unit).compareTo(factor(sum.unit)) < 0;
      if (!falls) {
        throw error(
            "units that are added up must be of one kind, the larger first",
            start,
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
      throw error(
          "the ends of a range of temperatures must have one unit", pos, "write it like 20-22 °C");
    }
    return number.times(factor(from)).over(factor(to));
  }

  private Term readTerm() {
    skipSpace();
    int start = pos;
    Fraction number = readNumber();
    int afterNumber = pos;
    skipSpace();
    Matcher symbol = SYMBOL.matcher(text).region(pos, text.length());
    if (symbol.lookingAt()) {
      BakeryUnit<?> unit = symbolUnit(symbol.group());
      pos = symbol.end();
      return checkSign(new Term(number, unit, null), start);
    }
    Term word = readWordUnit(number);
    if (word != null) {
      return checkSign(word, start);
    }
    pos = afterNumber;
    return checkSign(new Term(number, null, null), start);
  }

  private Term checkSign(Term term, int start) {
    boolean signed = start < text.length() && isMinus(text.charAt(start));
    if (signed && (term.unit == null || !isTemperature(term.unit))) {
      throw error("an amount can't be negative", start, "leave the minus sign out");
    }
    return term;
  }

  private static BakeryUnit<?> symbolUnit(String symbol) {
    return switch (symbol.charAt(symbol.length() - 1)) {
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
    StringBuilder soFar = new StringBuilder();
    int at = pos;
    while (words < MAX_WORDS) {
      Matcher word = WORD.matcher(text).region(at, text.length());
      if (!word.lookingAt()) {
        break;
      }
      soFar.append(words == 0 ? "" : " ").append(word.group());
      at = word.end();
      if (at < text.length() && text.charAt(at) == '.') {
        at++;
      }
      words++;
      ends[words] = at;
      joined[words] = soFar.toString();
      while (at < text.length() && text.charAt(at) == ' ') {
        at++;
      }
    }
    if (words > 0) {
      refuseAmbiguous(joined[1]);
    }
    for (int n = words; n > 0; n--) {
      Term term = wordTerm(number, joined[n]);
      if (term != null) {
        pos = ends[n];
        return term;
      }
    }
    if (words > 0 && kind != Kind.OTHER) {
      throw error("not a unit of " + kind.label(), pos, example());
    }
    return null;
  }

  private @Nullable Term wordTerm(Fraction number, String words) {
    String key = words.toLowerCase(Locale.ROOT);
    if (kind == Kind.TEMPERATURE && (key.equals("c") || key.equals("f"))) {
      return new Term(number, key.equals("c") ? BakeryUnits.CELSIUS : BakeryUnits.FAHRENHEIT, null);
    }
    if (kind == Kind.TIME && key.equals("m")) {
      return new Term(number, BakeryUnits.MINUTE, null);
    }
    if (kind == Kind.LENGTH && key.equals("m")) {
      return new Term(number, BakeryUnits.METRE, null);
    }
    BakeryUnit<?> plain = PLAIN_UNITS.get(key);
    if (plain != null) {
      return new Term(number, plain, null);
    }
    int space = key.indexOf(' ');
    CupStandard kitchen = space < 0 ? null : KITCHENS.get(key.substring(0, space));
    String cupWord = CUP_WORDS.get(kitchen == null ? key : key.substring(space + 1));
    if (cupWord != null) {
      return new Term(number, cupUnit(cupWord, kitchen == null ? cups : kitchen), null);
    }
    String count = COUNT_WORDS.get(key);
    return count == null ? null : new Term(number, null, count);
  }

  private void refuseAmbiguous(String word) {
    boolean single = word.length() == 1;
    if (single && (word.equals("T") || word.equals("t"))) {
      throw error("tablespoon or teaspoon?", pos, "write tbsp or tsp");
    }
    if (single && kind != Kind.TEMPERATURE && "cCfF".contains(word)) {
      throw error("one letter can mean several things here", pos, "write cup, °C or °F");
    }
    if (single && kind != Kind.TIME && kind != Kind.LENGTH && word.equalsIgnoreCase("m")) {
      throw error("metres or minutes?", pos, "write cm, mm or min");
    }
  }

  private BakeryUnit<?> cupUnit(String word, CupStandard kitchen) {
    BakeryUnit<?> unit =
        switch (kitchen) {
          case US_CUSTOMARY ->
              switch (word) {
                case "cup" -> BakeryUnits.CUP;
                case "tbsp" -> BakeryUnits.TABLESPOON;
                case "tsp" -> BakeryUnits.TEASPOON;
                case "fl oz" -> BakeryUnits.FLUID_OUNCE;
                case "pint" -> BakeryUnits.PINT;
                case "quart" -> BakeryUnits.QUART;
                default -> BakeryUnits.GALLON;
              };
          case US_LABELLING ->
              switch (word) {
                case "cup" -> BakeryUnits.LABELLING_CUP;
                case "tbsp" -> BakeryUnits.LABELLING_TABLESPOON;
                case "tsp" -> BakeryUnits.LABELLING_TEASPOON;
                case "fl oz" -> BakeryUnits.LABELLING_FLUID_OUNCE;
                default -> null;
              };
          case METRIC ->
              switch (word) {
                case "cup" -> BakeryUnits.METRIC_CUP;
                case "tbsp" -> BakeryUnits.METRIC_TABLESPOON;
                case "tsp" -> BakeryUnits.METRIC_TEASPOON;
                default -> null;
              };
          case IMPERIAL ->
              switch (word) {
                case "cup" -> BakeryUnits.IMPERIAL_CUP;
                case "fl oz" -> BakeryUnits.IMPERIAL_FLUID_OUNCE;
                case "pint" -> BakeryUnits.IMPERIAL_PINT;
                case "quart" -> BakeryUnits.IMPERIAL_QUART;
                case "gallon" -> BakeryUnits.IMPERIAL_GALLON;
                default -> null;
              };
        };
    if (unit == null) {
      throw error(
          "the "
              + kitchen.name().toLowerCase(Locale.ROOT).replace('_', ' ')
              + " kitchen has no one size for "
              + word,
          pos,
          "give it in mL or g, or name the kitchen, for example US " + word);
    }
    return unit;
  }

  private Fraction readNumber() {
    int start = pos;
    boolean negative = false;
    if (pos < text.length() && isMinus(text.charAt(pos))) {
      negative = true;
      pos++;
    }
    Fraction number = readUnsigned(start);
    if (pos < text.length()) {
      char next = text.charAt(pos);
      if (next == ',' && startsNumber(pos + 1)) {
        throw error(
            "a comma can mean a decimal point or thousands",
            pos,
            "write 1500 or 1.5 without commas");
      }
      boolean lastComma = next == ',' && pos + 1 == text.length();
      if (next == '.' || lastComma || isSlash(next) || next == ':') {
        throw error("the number goes on in a way that can't be read", pos, example());
      }
    }
    return negative ? number.negate() : number;
  }

  private Fraction readUnsigned(int start) {
    if (pos < text.length() && VULGAR.containsKey(text.charAt(pos))) {
      return readVulgar();
    }
    int digitsStart = pos;
    String whole = readDigits();
    if (pos < text.length() && text.charAt(pos) == '.') {
      int point = pos;
      pos++;
      String decimals = readDigits();
      if (decimals.isEmpty()) {
        throw error("a digit is missing after the point", point, example());
      }
      refuseFractionAfterDecimal();
      return Fraction.ofDecimal((whole.isEmpty() ? "0" : whole) + "." + decimals);
    }
    if (whole.isEmpty()) {
      throw error("a number is missing", start, example());
    }
    int afterWhole = pos;
    Fraction value = Fraction.ofDecimal(whole);
    skipSpace();
    if (pos < text.length() && VULGAR.containsKey(text.charAt(pos))) {
      return value.plus(readVulgar());
    }
    if (pos < text.length() && isSlash(text.charAt(pos))) {
      pos = digitsStart;
      return readSlashFraction(false);
    }
    // is a fraction next, as in 3 1/2?
    int numeratorStart = pos;
    String numerator = readDigits();
    if (!numerator.isEmpty() && afterWhole < numeratorStart) {
      skipSpace();
      if (pos < text.length() && isSlash(text.charAt(pos))) {
        pos = numeratorStart;
        return value.plus(readSlashFraction(true));
      }
      throw error("two numbers in a row", numeratorStart, "write 1500 without spaces, or 3 1/2");
    }
    pos = afterWhole;
    return value;
  }

  private Fraction readSlashFraction(boolean proper) {
    int start = pos;
    String numerator = readDigits();
    skipSpace();
    pos++;
    skipSpace();
    int denominatorStart = pos;
    String denominator = readDigits();
    if (denominator.isEmpty()) {
      throw error("a number is missing below the line", denominatorStart, "write it like 1/2");
    }
    if (new BigInteger(denominator).signum() == 0) {
      throw error("a fraction can't have 0 below the line", denominatorStart, "write it like 1/2");
    }
    Fraction fraction = new Fraction(new BigInteger(numerator), new BigInteger(denominator));
    if (proper && fraction.compareTo(Fraction.ONE) >= 0) {
      throw error(
          "the fraction of a mixed number must be less than one", start, "write it like 3 1/2");
    }
    return fraction;
  }

  private Fraction readVulgar() {
    Fraction fraction = VULGAR.get(text.charAt(pos));
    pos++;
    if (pos < text.length() && startsNumber(pos)) {
      throw error("the number goes on in a way that can't be read", pos, example());
    }
    return java.util.Objects.requireNonNull(fraction);
  }

  private void refuseFractionAfterDecimal() {
    int ahead = pos;
    while (ahead < text.length() && isSpace(text.charAt(ahead))) {
      ahead++;
    }
    if (ahead < text.length()
        && (VULGAR.containsKey(text.charAt(ahead)) || isDigit(text.charAt(ahead)))) {
      throw error("a decimal and another number together", ahead, "write 3.5 or 3 1/2");
    }
  }

  private String readDigits() {
    int start = pos;
    while (pos < text.length() && isDigit(text.charAt(pos))) {
      pos++;
    }
    if (pos - start > MAX_DIGITS) {
      throw error("too many digits", start, "give at most " + MAX_DIGITS);
    }
    return text.substring(start, pos);
  }

  private boolean startsNumber(int at) {
    if (at >= text.length()) {
      return false;
    }
    char c = text.charAt(at);
    boolean point = c == '.' && at + 1 < text.length() && isDigit(text.charAt(at + 1));
    return isDigit(c) || VULGAR.containsKey(c) || point;
  }

  /** Only 0 to 9: digits of other scripts are refused rather than guessed. */
  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  private static boolean isMinus(char c) {
    return c == '-' || c == '−';
  }

  private static boolean isSlash(char c) {
    return c == '/' || c == '⁄';
  }

  private static boolean isSpace(char c) {
    return c == ' ' || c == '\t' || c == '\u00a0' || c == '\u2009' || c == '\u202f';
  }

  private void skipSpace() {
    while (pos < text.length() && isSpace(text.charAt(pos))) {
      pos++;
    }
  }

  private String example() {
    return kind == Kind.OTHER
        ? "write it like 3 1/2 cups, 500 g or 2 packets"
        : "write it like " + kind.example();
  }

  private BakeryException error(String problem, int at, String expected) {
    String found = at < text.length() ? " (\"" + text.substring(at) + "\")" : " (its end)";
    return new BakeryException(
        Reason.UNREADABLE_TEXT,
        problem,
        "\"" + text + "\" at character " + (at + 1) + found,
        expected);
  }

  private static Map<String, BakeryUnit<?>> plainUnits() {
    Map<String, BakeryUnit<?>> map = new HashMap<>();
    words(map, BakeryUnits.GRAM, "g gram grams gramme grammes");
    words(map, BakeryUnits.KILOGRAM, "kg kilogram kilograms kilo kilos");
    words(map, BakeryUnits.MILLIGRAM, "mg milligram milligrams");
    words(map, BakeryUnits.OUNCE, "oz ounce ounces");
    words(map, BakeryUnits.POUND, "lb lbs pound pounds");
    words(map, BakeryUnits.MILLILITRE, "ml millilitre millilitres milliliter milliliters");
    words(map, BakeryUnits.LITRE, "l litre litres liter liters");
    words(map, BakeryUnits.MICROMETRE, "µm μm micrometre micrometres micrometer micrometers");
    words(map, BakeryUnits.MILLIMETRE, "mm millimetre millimetres millimeter millimeters");
    words(map, BakeryUnits.CENTIMETRE, "cm centimetre centimetres centimeter centimeters");
    words(map, BakeryUnits.METRE, "metre metres meter meters");
    words(map, BakeryUnits.INCH, "in inch inches");
    words(map, BakeryUnits.SECOND, "s sec secs second seconds");
    words(map, BakeryUnits.MINUTE, "min mins minute minutes");
    words(map, BakeryUnits.HOUR, "h hr hrs hour hours");
    words(map, BakeryUnits.DAY, "d day days");
    words(map, BakeryUnits.KELVIN, "k kelvin kelvins");
    words(map, BakeryUnits.CELSIUS, "celsius");
    words(map, BakeryUnits.FAHRENHEIT, "fahrenheit");
    words(map, BakeryUnits.PERCENT, "percent");
    words(map, BakeryUnits.JOULE, "j joule joules");
    words(map, BakeryUnits.KILOJOULE, "kj kilojoule kilojoules");
    words(map, BakeryUnits.KILOCALORIE, "kcal kilocalorie kilocalories");
    words(map, BakeryUnits.WATT, "w watt watts");
    map.put("degrees celsius", BakeryUnits.CELSIUS);
    map.put("degrees fahrenheit", BakeryUnits.FAHRENHEIT);
    return map;
  }

  private static void words(Map<String, BakeryUnit<?>> map, BakeryUnit<?> unit, String words) {
    for (String word : words.split(" ")) {
      map.put(word, unit);
    }
  }

  private static Map<String, String> cupWords() {
    Map<String, String> map = new LinkedHashMap<>();
    canonical(map, "cup", "cup,cups");
    canonical(map, "tbsp", "tbsp,tbsps,tbs,tablespoon,tablespoons");
    canonical(map, "tsp", "tsp,tsps,teaspoon,teaspoons");
    canonical(map, "fl oz", "fl oz,fluid ounce,fluid ounces,fluid oz");
    canonical(map, "pint", "pint,pints,pt");
    canonical(map, "quart", "quart,quarts,qt");
    canonical(map, "gallon", "gallon,gallons,gal");
    return map;
  }

  private static Map<String, String> countWords() {
    Map<String, String> map = new LinkedHashMap<>();
    canonical(map, "packet", "packet,packets,sachet,sachets,envelope,envelopes");
    canonical(map, "stick", "stick,sticks");
    canonical(map, "cake", "cake,cakes");
    canonical(map, "block", "block,blocks");
    canonical(map, "piece", "piece,pieces");
    canonical(map, "pat", "pat,pats");
    canonical(map, "dash", "dash,dashes");
    canonical(map, "bar", "bar,bars");
    return map;
  }

  private static void canonical(Map<String, String> map, String word, String forms) {
    for (String form : forms.split(",")) {
      map.put(form, word);
    }
  }
}
