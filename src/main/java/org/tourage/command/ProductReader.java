package org.tourage.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.BiFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.day.MakeUp;
import org.tourage.day.Place;
import org.tourage.day.Procedure;
import org.tourage.day.Product;
import org.tourage.day.Step;
import org.tourage.formula.HouseholdRecipe;
import org.tourage.formula.StageKind;
import org.tourage.lamination.LaminationPlan;
import org.tourage.quantity.Amounts;

/** Makes the product of a file: its steps, its make-up, what is known of its dough. */
final class ProductReader {
  private static final Pattern READING = Pattern.compile("-?\\d+([.,]\\d+)? ?°? ?[CF]\\b");

  private static final Pattern STEP = Pattern.compile("step (\\d+) ");

  private final GivenValues given;

  ProductReader(GivenValues given) {
    this.given = given;
  }

  Product product(HouseholdRecipe recipe, Procedure procedure) {
    Product product =
        of(recipe, procedure).fermenting(given.get(Settings.RATE_MODEL).orElseThrow());
    product = with(product, Settings.DOUGH_KIND, Product::ofKind);
    product =
        with(
            product,
            Settings.RISE,
            (p, seen) -> p.seen(seen.growth(), seen.time(), seen.temperature()));
    product = with(product, Settings.LETHALITY, Product::killing);
    for (HouseholdRecipe.Item item : recipe.items()) {
      Place place = place(item);
      if (place != null) {
        product = product.with(item.weighed().ingredient(), place);
      }
    }
    boolean rolledIn = recipe.items().stream().anyMatch(i -> i.kind() == StageKind.ROLL_IN);
    return rolledIn ? product.madeUp(sheet(procedure)) : product;
  }

  @Nullable Procedure procedure() {
    List<Step> steps = new ArrayList<>();
    boolean mixes = false;
    for (Step step : given.file().steps()) {
      boolean mix =
          step.action() instanceof org.tourage.day.Action.Mix mixing && mixing.stage() == null;
      mixes |= mix;
      steps.add(
          mix && given.isSet(Settings.DOUGH_TEMPERATURE)
              ? step.mixedTo(given.get(Settings.DOUGH_TEMPERATURE).orElseThrow())
              : step);
    }
    if (steps.isEmpty()) {
      steps.add(Step.mix(Amounts.minutes(20)));
      mixes = true;
      if (given.isSet(Settings.DOUGH_TEMPERATURE)) {
        steps.set(0, steps.get(0).mixedTo(given.get(Settings.DOUGH_TEMPERATURE).orElseThrow()));
      }
    }
    if (!mixes && given.isSet(Settings.DOUGH_TEMPERATURE)) {
      given.complain(
          given.origin(Settings.DOUGH_TEMPERATURE),
          new BakeryException(
              Reason.INCONSISTENT,
              "a dough temperature needs a mix",
              "no step mixes the dough",
              "add a step like mix the dough: 20 min"));
    }
    try {
      return new Procedure(steps);
    } catch (BakeryException wrong) {
      given.complain(origin(wrong), wrong);
      given.refuse();
      return null;
    }
  }

  /** The product, or the complaint about the step that names no stage of the recipe. */
  private Product of(HouseholdRecipe recipe, Procedure procedure) {
    try {
      return Product.of(recipe, procedure);
    } catch (BakeryException wrong) {
      given.complain(origin(wrong), wrong);
      given.refuse();
      throw wrong;
    }
  }

  /** The line of the step that was refused: by its number, or by its name. */
  private Origin origin(BakeryException wrong) {
    List<FileParts.Numbered> lines = given.file().stepLines();
    Matcher number = STEP.matcher(wrong.given());
    int line =
        number.lookingAt() && Integer.parseInt(number.group(1)) <= lines.size()
            ? lines.get(Integer.parseInt(number.group(1)) - 1).number()
            : lines.stream()
                .filter(l -> String.valueOf(wrong.getMessage()).contains("\"" + name(l) + "\""))
                .mapToInt(FileParts.Numbered::number)
                .findFirst()
                .orElse(lines.isEmpty() ? 0 : lines.get(0).number());
    return Origin.line(given.file().name(), line);
  }

  private static String name(FileParts.Numbered line) {
    return line.text().substring(0, Math.max(0, line.text().indexOf(':'))).strip();
  }

  /** Where an ingredient stood; a temperature that nothing would use is complained of. */
  private @Nullable Place place(HouseholdRecipe.Item item) {
    Matcher reading = READING.matcher(item.note());
    if (!reading.find()) {
      return coldness(item.note());
    }
    boolean water = item.weighed().ingredient().id().equals("water");
    if (water || item.kind() != StageKind.FINAL_DOUGH) {
      given.complain(
          Origin.line(given.file().name(), lineOf(item)),
          new BakeryException(
              Reason.INCONSISTENT,
              water
                  ? "the temperature of the water is what is worked out"
                  : "nothing uses the temperature of what goes into this stage",
              "\"" + item.text() + "\"",
              "leave it out, and set dough-temperature for the final dough"));
      return null;
    }
    return Place.air(Amounts.temperature(reading.group()));
  }

  private int lineOf(HouseholdRecipe.Item item) {
    return given.file().recipe().stream()
        .filter(line -> line.text().strip().equals(item.text()))
        .mapToInt(FileParts.Numbered::number)
        .findFirst()
        .orElse(0);
  }

  /** {@code 3 eggs, cold}: a note of the recipe that says where an ingredient stood. */
  private static @Nullable Place coldness(String note) {
    String words = note.toLowerCase(Locale.ROOT);
    if (words.matches(".*\\b(cold|chilled|from the refrigerator)\\b.*")) {
      return Place.REFRIGERATOR;
    }
    return words.matches(".*\\b(frozen|from the freezer)\\b.*") ? Place.FREEZER : null;
  }

  private MakeUp sheet(Procedure procedure) {
    LaminationPlan.Setup setup =
        procedure
            .folds()
            .map(folds -> LaminationPlan.Setup.SMALL_BENCH.suiting(folds.lockIn()))
            .orElse(LaminationPlan.Setup.SMALL_BENCH);
    setup = given.get(Settings.FAT_THICKNESS).map(setup::withFatThickness).orElse(setup);
    setup = given.get(Settings.FOLD_THICKNESS).map(setup::withFoldThickness).orElse(setup);
    setup =
        setup
            .withPacketWidth(given.get(Settings.PACKET_WIDTH).orElse(setup.packetWidth()))
            .withFinalSheet(
                given.get(Settings.SHEET_THICKNESS).orElse(setup.finalThickness()),
                given.get(Settings.SHEET_WIDTH).orElse(setup.finalWidth()));
    MakeUp.FromSheet sheet =
        MakeUp.sheet(setup)
            .trimmed(given.get(Settings.TRIM).orElseThrow())
            .slender(given.get(Settings.SLENDERNESS).orElseThrow());
    sheet = given.get(Settings.CUT).map(sheet::cutInto).orElse(sheet);
    return given.get(Settings.FAT_CURVE).map(sheet::withFat).orElse(sheet);
  }

  private <T> Product with(
      Product product, Setting<T> setting, BiFunction<Product, T, Product> put) {
    return given.get(setting).map(value -> put.apply(product, value)).orElse(product);
  }
}
