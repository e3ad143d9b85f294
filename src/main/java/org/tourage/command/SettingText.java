package org.tourage.command;

import java.util.Arrays;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.measure.quantity.Temperature;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.day.Action;
import org.tourage.day.Balance;
import org.tourage.day.KitchenOven;
import org.tourage.day.Product;
import org.tourage.day.Warming;
import org.tourage.fermentation.ColdTail;
import org.tourage.fermentation.Cover;
import org.tourage.fermentation.RateModel;
import org.tourage.fermentation.Rosso1993;
import org.tourage.formula.PieceOrder;
import org.tourage.label.Money;
import org.tourage.lamination.Rollers;
import org.tourage.oven.DoughKind;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Amounts;
import org.tourage.quantity.BakeryUnit;
import org.tourage.quantity.Extent;
import org.tourage.quantity.HouseholdAmount;
import org.tourage.quantity.Kind;
import org.tourage.quantity.TemperatureDifference;
import org.tourage.sheet.SheetView;

/** Readers of the values of settings. */
final class SettingText {
  static final Function<String, Cover> COVER =
      Setting.word(
          Map.of(
              "none", Cover.NONE,
              "film", Cover.FILM,
              "tub", Cover.TUB,
              "bag", Cover.AIR_GAP));

  private static final Pattern RISE =
      Pattern.compile("(.+?)\\s+in\\s+(.+?)\\s+at\\s+(.+)", Pattern.CASE_INSENSITIVE);
  private static final Pattern OVEN =
      Pattern.compile(
          "up to ([^,]+), *(\\d{1,4}) trays? of ([^,]+?)(?:, *(stone))?", Pattern.CASE_INSENSITIVE);
  private static final Pattern PAST_MIX =
      Pattern.compile(
          "flour ([^,]+), *room ([^,]+), *water ([^,]+), *dough ([^,]+)", Pattern.CASE_INSENSITIVE);
  private static final Pattern SHEETER =
      Pattern.compile(
          "([^,]+?) to ([^,]+), *belt ([^,]+), *([^,]+?)(?: a pass)?", Pattern.CASE_INSENSITIVE);

  private SettingText() {}

  static String title(String text) {
    if (text.isBlank()) {
      throw new BakeryException(Reason.MISSING, "a text is missing", "nothing", "write some words");
    }
    return text;
  }

  static String name(String text) {
    return title(text);
  }

  static Amount<Temperature> doughTemperature(String text) {
    Amount<Temperature> target = Amounts.temperature(text);
    // the mix knows what a dough can be
    return Objects.requireNonNull(new Action.Mix(null, target).target());
  }

  static RateModel rate(String text) {
    // below about 9 °C the growth curve stops too soon
    return ColdTail.usual(Rosso1993.named(text));
  }

  static List<SheetView> views(String text) {
    Function<String, SheetView> word =
        Setting.word(
            Map.of(
                "bench", SheetView.BENCH,
                "label", SheetView.LABEL,
                "cost", SheetView.COST,
                "shopping", SheetView.SHOPPING,
                "scaling", SheetView.SCALING));
    List<SheetView> views =
        Arrays.stream(text.split(",", -1)).map(w -> word.apply(w.strip())).distinct().toList();
    return views;
  }

  static Currency currency(String text) {
    return Money.of("0", text.strip().toUpperCase(Locale.ROOT)).currency();
  }

  static int count(String text) {
    if (text.matches("[1-9]\\d{0,6}")) {
      int count = Integer.parseInt(text);
      if (count <= PieceOrder.MOST) {
        return count;
      }
    }
    throw new BakeryException(
        Reason.OUT_OF_RANGE,
        "not a number of pieces",
        "\"" + text + "\"",
        "give a whole number from 1 to " + PieceOrder.MOST);
  }

  static double ratio(String text) {
    HouseholdAmount amount = HouseholdAmount.parse(text);
    double value = amount.low().doubleValue();
    boolean plain = amount.unit().isEmpty() && amount.countWord().isEmpty() && !amount.isRange();
    if (!plain || !(value >= 0.1 && value <= 20)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "not a ratio",
          "\"" + text + "\"",
          "give a plain number from 0.1 to 20");
    }
    return value;
  }

  static TemperatureDifference difference(String text) {
    HouseholdAmount amount = HouseholdAmount.parse(text, Kind.TEMPERATURE);
    double degrees = amount.low().doubleValue();
    BakeryUnit<?> unit = amount.unit().orElseThrow();
    if (amount.isRange()) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT, "not one difference", "\"" + text + "\"", "give one figure");
    }
    return unit.symbol().equals("°F")
        ? TemperatureDifference.ofFahrenheitDegrees(degrees)
        : TemperatureDifference.ofCelsiusDegrees(degrees);
  }

  static DoughKind doughKind(String text) {
    String wanted = text.strip().toUpperCase(Locale.ROOT).replace('-', '_').replace(' ', '_');
    for (DoughKind kind : DoughKind.values()) {
      if (kind.name().equals(wanted)) {
        return kind;
      }
    }
    throw new BakeryException(
        Reason.UNKNOWN_NAME,
        "no such kind of dough",
        "\"" + text + "\"",
        "use one of "
            + java.util.Arrays.stream(DoughKind.values())
                .map(k -> k.name().toLowerCase(Locale.ROOT).replace('_', '-'))
                .collect(java.util.stream.Collectors.joining(", ")));
  }

  /** A growth in words: doubled, tripled, grown by half, 1.8 times. */
  static double growth(String text) {
    String words = text.strip().toLowerCase(Locale.ROOT);
    double growth =
        switch (words) {
          case "doubled" -> 2;
          case "tripled" -> 3;
          case "grown by half" -> 1.5;
          case "grown by a quarter" -> 1.25;
          case "grown by three quarters" -> 1.75;
          default -> {
            if (!words.endsWith("times")) {
              yield Double.NaN;
            }
            HouseholdAmount amount =
                HouseholdAmount.parse(words.substring(0, words.length() - 5).strip());
            yield amount.unit().isPresent() ? Double.NaN : amount.low().doubleValue();
          }
        };
    if (!(growth > 1 && growth <= 10)) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT,
          "not a growth",
          "\"" + text + "\"",
          "write doubled, tripled, grown by half or 1.8 times");
    }
    return growth;
  }

  static Product.SeenRise rise(String text) {
    Matcher matcher = RISE.matcher(text.strip());
    if (!matcher.matches()) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT,
          "not a rise",
          "\"" + text + "\"",
          "write it like doubled in 95 min at 23 °C");
    }
    return new Product.SeenRise(
        growth(matcher.group(1)),
        Amounts.time(matcher.group(2)),
        Amounts.temperature(matcher.group(3)));
  }

  static Warming pastMix(String text) {
    Matcher matcher = PAST_MIX.matcher(text.strip());
    if (!matcher.matches()) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT,
          "not a past mix",
          "\"" + text + "\"",
          "write it like flour 20 °C, room 22 °C, water 14 °C, dough 25 °C");
    }
    return Warming.pastMix(
        Amounts.temperature(matcher.group(1)),
        Amounts.temperature(matcher.group(2)),
        Amounts.temperature(matcher.group(3)),
        Amounts.temperature(matcher.group(4)));
  }

  static Rollers sheeter(String text) {
    Matcher matcher = SHEETER.matcher(text.strip());
    if (!matcher.matches()) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT,
          "not a sheeter",
          "\"" + text + "\"",
          "write it like 1 mm to 45 mm, belt 60 cm, 30 % a pass");
    }
    return Rollers.Sheeter.of(
        Amounts.length(matcher.group(2)),
        Amounts.length(matcher.group(1)),
        Amounts.length(matcher.group(3)),
        Amounts.percentage(matcher.group(4)));
  }

  static Balance balance(String text) {
    int at = text.toLowerCase(Locale.ROOT).indexOf(" up to ");
    return at < 0
        ? Balance.to(Amounts.mass(text))
        : Balance.to(Amounts.mass(text.substring(0, at)))
            .upTo(Amounts.mass(text.substring(at + " up to ".length())));
  }

  static KitchenOven oven(String text) {
    Matcher matcher = OVEN.matcher(text.strip());
    if (!matcher.matches()) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT,
          "not an oven",
          "\"" + text + "\"",
          "write it like up to 300 °C, 4 trays of 60 x 40 cm, stone");
    }
    KitchenOven oven =
        KitchenOven.HOUSEHOLD
            .called("the oven")
            .withHighest(Amounts.temperature(matcher.group(1)))
            .withTrays(Integer.parseInt(matcher.group(2)), Extent.parse(matcher.group(3)));
    return matcher.group(4) == null ? oven : oven.onStone();
  }
}
