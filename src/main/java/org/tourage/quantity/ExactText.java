package org.tourage.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.VisibleText;

/** Amounts as text that loses no bit. */
final class ExactText {
  private static final String NUMBER = "-?[0-9]+(?:\\.[0-9]+)?(?:E[+-]?[0-9]{1,3})?";
  private static final Pattern TEXT =
      Pattern.compile(
          "(?<value>%1$s)(?: (?<symbol>.*?))?(?: \\[× (?<factor>%1$s)(?: \\+ (?<offset>%1$s))? (?<base>[^\\[\\]]+)])?"
              .formatted(NUMBER));

  /** How the base of a plain number is written. */
  private static final String NONE = "1";

  private static final int LONGEST = 300;

  private ExactText() {}

  static String of(double value, BakeryUnit<?> unit) {
    StringBuilder text = new StringBuilder(number(value));
    if (!unit.symbol().isEmpty()) {
      text.append(' ').append(unit.symbol());
    }
    if (unit.exactFactor().isEmpty()) {
      text.append(" [× ").append(number(unit.factor()));
      if (unit.offset() != 0) {
        text.append(" + ").append(number(unit.offset()));
      }
      text.append(' ').append(unit.base().isEmpty() ? NONE : unit.base()).append(']');
    }
    return text.toString();
  }

  /**
   * The fewest digits that read back as the same double. {@link Double#toString} is not used:
   * before Java 19 it may write a digit more than needed.
   */
  static String number(double value) {
    if (value == 0) {
      return 1 / value < 0 ? "-0" : "0";
    }
    BigDecimal exact = new BigDecimal(value);
    for (int digits = 1; digits < 17; digits++) {
      BigDecimal shorter = exact.round(new MathContext(digits));
      if (shorter.doubleValue() == value) {
        return plain(shorter);
      }
    }
    return plain(exact.round(new MathContext(17)));
  }

  private static String plain(BigDecimal value) {
    BigDecimal stripped = value.stripTrailingZeros();
    boolean everyday = stripped.scale() <= 20 && stripped.precision() - stripped.scale() <= 20;
    return everyday ? stripped.toPlainString() : stripped.toString();
  }

  static Amount<?> read(String text) {
    Matcher match = text.length() > LONGEST ? null : TEXT.matcher(text);
    if (match == null || !match.matches()) {
      throw unreadable(text, "not the exact text of an amount");
    }
    double value = Double.parseDouble(match.group("value"));
    String symbol = match.group("symbol") == null ? "" : match.group("symbol");
    return amount(value, match.group("factor") == null ? own(text, symbol) : other(match, text));
  }

  static double readNumber(String text) {
    if (text.length() > LONGEST || !text.matches(NUMBER)) {
      throw unreadable(text, "not an exact number");
    }
    return Double.parseDouble(text);
  }

  private static Amount<?> amount(double value, BakeryUnit<?> unit) {
    return unit.amount(value);
  }

  private static BakeryUnit<?> own(String text, String symbol) {
    BakeryUnit<?> unit = BakeryUnits.find(symbol);
    if (unit == null) {
      throw unreadable(text, "no such unit");
    }
    return unit;
  }

  private static BakeryUnit<?> other(Matcher match, String text) {
    String base = match.group("base").equals(NONE) ? "" : match.group("base");
    @Nullable String symbol = match.group("symbol");
    @Nullable String offset = match.group("offset");
    double factor = Double.parseDouble(match.group("factor"));
    if (!UnitObjects.isSi(base) || factor == 0 || !Double.isFinite(factor)) {
      throw unreadable(text, "not made of units of the SI");
    }
    return BakeryUnit.ofFigures(
        symbol == null ? "" : symbol,
        base,
        factor,
        offset == null ? 0 : Double.parseDouble(offset));
  }

  static BakeryException unreadable(String text, String problem) {
    return new BakeryException(
        Reason.UNREADABLE_TEXT,
        problem,
        "\"" + VisibleText.of(text) + "\"",
        "give what exactText() wrote, such as 0.1 kg");
  }
}
