package org.tourage.command;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.measure.quantity.Length;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.day.Form;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Amounts;
import org.tourage.quantity.Extent;

/** Reads a form of dough: ball, roll 52 cm long, roll 45 mm across, disc 30 cm, tin 25 x 11 cm. */
final class FormText {
  private static final Pattern FORM = Pattern.compile("([a-z]+)\\s*(.*?)\\s*(long|across|)");

  private FormText() {}

  static Form parse(String text) {
    Matcher matcher = FORM.matcher(text.strip());
    String kind = matcher.matches() ? matcher.group(1).toLowerCase(Locale.ROOT) : "";
    String measure = matcher.matches() ? matcher.group(2) : "";
    String word = matcher.matches() ? matcher.group(3) : "";
    boolean bare = measure.isEmpty() && word.isEmpty();
    boolean plain = word.isEmpty() && !bare;
    if (kind.equals("ball") && (bare || word.isEmpty())) {
      return bare ? Form.BALL : Form.ball(length(measure));
    }
    if (kind.equals("roll")) {
      if (bare) {
        return new Form.Roll(null, null);
      }
      if (plain) {
        throw new BakeryException(
            Reason.UNREADABLE_TEXT,
            "a measure of a roll has two readings",
            "\"" + text + "\"",
            "write roll 52 cm long or roll 45 mm across");
      }
      return word.equals("long") ? Form.roll(length(measure)) : Form.rollAcross(length(measure));
    }
    if (plain) {
      switch (kind) {
        case "disc":
          return Form.disc(length(measure));
        case "slab", "sheet":
          return Form.slab(length(measure));
        case "rectangle":
          return Form.rectangle(Extent.parse(measure));
        case "tin":
          return tin(measure);
        case "mould", "mold", "cup":
          return Form.mould(length(measure));
        case "tub", "bowl":
          return Form.tub(length(measure));
        case "ring":
          return Form.ring(length(measure.replaceFirst("^(with )?hole (of )?", "")));
        case "coil":
          return Form.coil(length(measure));
        default:
      }
    }
    throw new BakeryException(
        Reason.UNREADABLE_TEXT,
        "not a form of dough",
        "\"" + text + "\"",
        "write ball, roll 52 cm long, roll 45 mm across, disc 30 cm, slab 20 mm, rectangle 30 x 20"
            + " cm, tin 25 x 11 cm, mould 7 cm, tub 30 cm, ring with hole 3 cm or coil 5 cm");
  }

  private static Form tin(String measure) {
    int last = measure.lastIndexOf('x');
    int first = measure.indexOf('x');
    if (first == last) {
      return Form.tin(Extent.parse(measure));
    }
    // three sides; a unit given once, at the end, holds for all
    Amount<Length> height = length(measure.substring(last + 1));
    String sides = measure.substring(0, last).strip();
    String unit = measure.substring(last + 1).replaceAll("[\\d./\\s½⅓⅔¼¾⅛⅜⅝⅞]", "");
    boolean hasUnit = sides.matches(".*[a-wyz\"]");
    return new Form.Tin(Extent.parse(hasUnit ? sides : sides + " " + unit), height);
  }

  private static Amount<Length> length(String text) {
    Amount<Length> length = Amounts.length(text);
    if (!(length.value() > 0)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE, "a form needs a measure", length.toString(), "give more than 0");
    }
    return length;
  }
}
