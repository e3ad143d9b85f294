package org.tourage.quantity;

import static java.util.Map.entry;
import static java.util.Objects.requireNonNull;

import java.math.BigInteger;
import java.util.Map;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.VisibleText;

/** A place in a text, and the numbers that are read there. */
final class NumberReader {
  private static final int MAX_DIGITS = 15;

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

  /** The text, every kind of space in it a plain one. */
  final String text;

  /** The place of the next character. */
  int pos;

  /** What to write instead, for messages. */
  private final String example;

  /** Where the last number began if its point could stand for thousands; otherwise −1. */
  private int thousands;

  /** Whether the last number with such a point ended in a nought. */
  private boolean noughtAtEnd;

  NumberReader(String text, String example) {
    this.text = plainSpaces(requireNonNull(text, "text"));
    this.example = example;
    this.thousands = -1;
  }

  /** A tab, a no-break space, a thin one: each becomes a plain space, so that places stay. */
  private static String plainSpaces(String text) {
    StringBuilder plain = null;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      boolean odd = c == '\t' || (c != ' ' && Character.getType(c) == Character.SPACE_SEPARATOR);
      if (odd) {
        plain = plain == null ? new StringBuilder(text) : plain;
        plain.setCharAt(i, ' ');
      }
    }
    return plain == null ? text : plain.toString();
  }

  Fraction readNumber() {
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
        throw error("the number goes on in a way that can't be read", pos, example);
      }
    }
    return negative ? number.negate() : number;
  }

  /**
   * Refuses the last number if its point could stand for thousands: one to three digits, the first
   * no nought, a point, and exactly three digits, if the last of these is a nought (nobody writes
   * 1.500 for 1.5), or if the unit is one of which a thousand is common and a thousandth is not.
   */
  void refuseThousands(boolean commonInThousands) {
    int start = thousands;
    thousands = -1;
    if (start >= 0 && (noughtAtEnd || commonInThousands)) {
      throw error(
          "a point before three digits can mean a decimal point or thousands",
          start,
          "write 1500 or 1.5");
    }
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
        throw error("a digit is missing after the point", point, example);
      }
      refuseFractionAfterDecimal();
      boolean groups = whole.length() >= 1 && whole.length() <= 3 && whole.charAt(0) != '0';
      if (groups && decimals.length() == 3) {
        thousands = digitsStart;
        noughtAtEnd = decimals.charAt(2) == '0';
      }
      return Fraction.ofDecimal((whole.isEmpty() ? "0" : whole) + "." + decimals);
    }
    if (whole.isEmpty()) {
      throw error("a number is missing", start, example);
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
      throw error("the number goes on in a way that can't be read", pos, example);
    }
    return requireNonNull(fraction);
  }

  private void refuseFractionAfterDecimal() {
    int ahead = pos;
    while (ahead < text.length() && text.charAt(ahead) == ' ') {
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

  boolean startsNumber(int at) {
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

  static boolean isMinus(char c) {
    return c == '-' || c == '−';
  }

  private static boolean isSlash(char c) {
    return c == '/' || c == '⁄';
  }

  void skipSpace() {
    while (pos < text.length() && text.charAt(pos) == ' ') {
      pos++;
    }
  }

  BakeryException error(String problem, int at) {
    return error(problem, at, example);
  }

  BakeryException error(String problem, int at, String expected) {
    String found =
        at < text.length() ? " (\"" + VisibleText.of(text.substring(at)) + "\")" : " (its end)";
    return new BakeryException(
        Reason.UNREADABLE_TEXT,
        problem,
        "\"" + VisibleText.of(text) + "\" at character " + (at + 1) + found,
        expected);
  }
}
