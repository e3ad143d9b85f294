package org.tourage.command;

import java.util.Currency;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.command.FileParts.Priced;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Ingredient;
import org.tourage.label.Money;
import org.tourage.label.PriceList;
import org.tourage.quantity.Amounts;
import org.tourage.sheet.CounterSheet;

/** Reads the lines under {@code [prices]}: packages, yields, what is on hand, energy and work. */
final class PriceReader {
  private static final Pattern MONEY = Pattern.compile("(\\d+(?:\\.\\d+)?)(?:\\s+([A-Za-z]{3}))?");
  private static final String EXAMPLE =
      "write it like bread flour: 25 kg for 20.00 EUR, apples: yield 78 %, butter: on hand 500 g,"
          + " energy: 0.30 EUR, work: 40 min at 18.00 EUR or piece: sells for 1.20 EUR";

  private final GivenValues given;
  private final Catalogue catalogue;
  private @Nullable PriceList prices;
  private CounterSheet sheet;

  private PriceReader(GivenValues given, Catalogue catalogue, CounterSheet sheet) {
    this.given = given;
    this.catalogue = catalogue;
    this.sheet = sheet;
  }

  /** The sheet with the prices of the file; what can't be read is complained of, line by line. */
  static CounterSheet of(GivenValues given, Catalogue catalogue, CounterSheet sheet) {
    PriceReader reader = new PriceReader(given, catalogue, sheet);
    for (Priced line : given.file().prices()) {
      given.attempt(line.origin(), () -> reader.line(line.text()));
    }
    given.refuse();
    return reader.prices == null ? reader.sheet : reader.sheet.priced(reader.prices);
  }

  private void line(String text) {
    int colon = text.indexOf(':');
    if (colon <= 0) {
      throw unreadable(text);
    }
    String key = text.substring(0, colon).strip();
    String value = text.substring(colon + 1).strip();
    String lower = value.toLowerCase(Locale.ROOT);
    int at = lower.indexOf(" at ");
    int forMoney = lower.indexOf(" for ");
    if (key.equalsIgnoreCase("energy")) {
      sheet = sheet.withEnergy(money(value));
    } else if (key.equalsIgnoreCase("work") && at > 0) {
      sheet = sheet.withWork(Amounts.time(value.substring(0, at)), money(value.substring(at + 4)));
    } else if (key.equalsIgnoreCase("piece") && lower.startsWith("sells for ")) {
      sheet = sheet.sellingFor(money(value.substring("sells for ".length())));
    } else if (lower.startsWith("yield ")) {
      prices = list().withYield(ingredient(key), Amounts.percentage(value.substring(6)));
    } else if (lower.startsWith("on hand ")) {
      sheet = sheet.onHand(ingredient(key), Amounts.mass(value.substring("on hand ".length())));
    } else if (forMoney > 0) {
      Money price = money(value.substring(forMoney + 5));
      prices =
          list().with(ingredient(key), price, Amounts.mass(value.substring(0, forMoney).strip()));
    } else {
      throw unreadable(text);
    }
  }

  /** An unknown thing of the recipe can have a price too. */
  private Ingredient ingredient(String name) {
    Optional<Ingredient> known = catalogue.find(name);
    Ingredient unknown = Ingredient.unknown(name);
    boolean inRecipe =
        given.file().recipe().stream()
            .anyMatch(
                l -> l.text().toLowerCase(Locale.ROOT).contains(name.toLowerCase(Locale.ROOT)));
    return known.isPresent() || !inRecipe ? catalogue.require(name) : unknown;
  }

  private PriceList list() {
    if (prices == null) {
      prices = PriceList.in(currency());
    }
    return prices;
  }

  private Currency currency() {
    return given
        .get(Settings.CURRENCY)
        .orElseThrow(
            () ->
                new BakeryException(
                    Reason.MISSING,
                    "prices are in a currency",
                    "no currency is set",
                    "set currency, for example currency: EUR"));
  }

  private Money money(String text) {
    Matcher matcher = MONEY.matcher(text.strip());
    if (!matcher.matches()) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT,
          "not an amount of money",
          "\"" + text.strip() + "\"",
          "write it like 1.29 EUR");
    }
    String code = matcher.group(2);
    Money money =
        Money.of(
            matcher.group(1),
            code == null ? currency().getCurrencyCode() : code.toUpperCase(Locale.ROOT));
    return Money.zero(currency()).plus(money);
  }

  private static BakeryException unreadable(String text) {
    return new BakeryException(
        Reason.UNREADABLE_TEXT, "not a line of prices", "\"" + text + "\"", EXAMPLE);
  }
}
