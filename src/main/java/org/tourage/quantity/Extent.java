package org.tourage.quantity;

import java.io.Serializable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * The length and the width of a rectangle. Which is which matters: a sheet is folded and rolled
 * along its length.
 *
 * @param length along, positive
 * @param width across, positive
 */
public record Extent(Amount<Length> length, Amount<Length> width) implements Serializable {
  private static final Pattern TIMES =
      Pattern.compile("(?<=[\\s\\d\"a-zA-Z½⅓⅔¼¾⅛⅜⅝⅞])[x×](?=[\\s\\d.½⅓⅔¼¾⅛⅜⅝⅞])");

  /**
   * Checks that both are positive.
   *
   * @param length along, positive
   * @param width across, positive
   */
  public Extent {
    checkPositive(length, "length");
    checkPositive(width, "width");
  }

  private static void checkPositive(Amount<Length> side, String name) {
    if (side.value() <= 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "the " + name + " must be positive",
          side.toString(),
          "give it in mm, cm or in");
    }
  }

  /**
   * An extent of any two lengths.
   *
   * @param length along, positive
   * @param width across, positive
   * @return the extent
   */
  public static Extent of(Quantity<Length> length, Quantity<Length> width) {
    return new Extent(Given.length("the length", length), Given.length("the width", width));
  }

  /**
   * Reads {@code 24 x 9 in}, {@code 24 in x 9 in}, {@code 60×23 cm}. A unit given once holds for
   * both.
   *
   * @param text the text
   * @return the extent
   * @throws BakeryException if the text can't be read as one
   */
  public static Extent parse(String text) {
    Matcher times = TIMES.matcher(text);
    if (!times.find()) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT,
          "can't find the x between length and width",
          "\"" + text + "\"",
          "write it like 24 x 9 in");
    }
    String left = text.substring(0, times.start());
    String right = text.substring(times.end());
    if (TIMES.matcher(right).find()) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT,
          "more than two sides",
          "\"" + text + "\"",
          "write it like 24 x 9 in");
    }
    HouseholdAmount across = HouseholdAmount.parse(right, Kind.LENGTH);
    Amount<Length> width = across.amount();
    HouseholdAmount along = HouseholdAmount.parseWithDefault(left, width.bakeryUnit());
    return new Extent(along.amount(), width);
  }

  /** {@code 24 in x 9 in}. */
  @Override
  public String toString() {
    return length + " x " + width;
  }
}
