package org.tourage.command;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.measure.quantity.Mass;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Problem;
import org.tourage.command.RecipeFile.Value;
import org.tourage.day.DayPlan;
import org.tourage.day.DayPlan.SwapKind;
import org.tourage.day.Kitchen;
import org.tourage.day.MakeUp;
import org.tourage.day.Mixer;
import org.tourage.day.Order;
import org.tourage.day.Place;
import org.tourage.day.Procedure;
import org.tourage.day.Product;
import org.tourage.day.Step;
import org.tourage.day.Warming;
import org.tourage.formula.HouseholdRecipe;
import org.tourage.formula.PieceOrder;
import org.tourage.formula.StageKind;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Ingredient;
import org.tourage.lamination.LaminationPlan;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Amounts;

/** Makes a day's plan of a recipe file: reads each setting once and remembers which were used. */
final class PlanReader {
  private static final Pattern READING =
      Pattern.compile("-?\\d+([.,]\\d+)? ?°? ?[CF]\\b");

  private final RecipeFile file;
  private final List<Complaint> complaints;
  private final Set<String> used = new HashSet<>();
  private final Map<String, Object> values = new LinkedHashMap<>();

  PlanReader(RecipeFile file) {
    this.file = file;
    this.complaints = new ArrayList<>(file.complaints());
    for (Setting<?> setting : Settings.all()) {
      Value value = file.value(setting);
      if (value != null) {
        attempt(value.origin(), () -> values.put(setting.key(), setting.read(value.text())));
      }
    }
  }

  AmountFormat format() {
    refuse();
    return get(Settings.UNITS).orElseThrow();
  }

  DayPlan plan() {
    if (file.recipe().isEmpty()) {
      complain(
          Origin.line(file.name(), 0),
          new BakeryException(
              Reason.MISSING,
              "a recipe needs lines",
              "none",
              "write one like 500 g bread flour, under a heading like [dough]"));
    }
    refuse();
    Catalogue catalogue = OwnIngredients.of(file, complaints);
    HouseholdRecipe recipe = recipe(catalogue);
    refuse();
    Procedure procedure = procedure();
    Product product = product(requireNonNull(recipe), requireNonNull(procedure));
    DayPlan plan = DayPlan.of(kitchen(), order(product));
    plan = swap(plan, SwapKind.FLOUR, Settings.FLOUR_REPLACED, Settings.FLOUR_ON_HAND, catalogue);
    plan = swap(plan, SwapKind.FAT, Settings.FAT_REPLACED, Settings.FAT_ON_HAND, catalogue);
    plan =
        swap(plan, SwapKind.LIQUID, Settings.LIQUID_REPLACED, Settings.LIQUID_ON_HAND, catalogue);
    plan = get(Settings.PLANT_BASED).orElse(false) ? plan.fromPlants() : plan;
    get(Settings.UNITS);
    unused();
    refuse();
    return plan;
  }

  private void attempt(Origin origin, Runnable work) {
    try {
      work.run();
    } catch (BakeryException wrong) {
      complain(origin, wrong);
    }
  }

  private void complain(Origin origin, BakeryException wrong) {
    complaints.add(new Complaint(origin, wrong));
  }

  private void refuse() {
    if (!complaints.isEmpty()) {
      complaints.sort(Comparator.comparingInt(c -> c.origin().line()));
      throw new WrongInput(complaints);
    }
  }

  /** The value of a setting, or its default. Types are those of the table. */
  @SuppressWarnings("unchecked")
  private <T> Optional<T> get(Setting<T> setting) {
    used.add(setting.key());
    Object value = values.get(setting.key());
    return Optional.ofNullable(value == null ? setting.byDefault() : (T) value);
  }

  private boolean isSet(Setting<?> setting) {
    return file.value(setting) != null;
  }

  private Origin origin(Setting<?> setting) {
    Value value = file.value(setting);
    return value == null ? Origin.line(file.name(), 0) : value.origin();
  }

  private @Nullable HouseholdRecipe recipe(Catalogue catalogue) {
    try {
      return HouseholdRecipe.read(
          get(Settings.TITLE).orElseThrow(),
          file.recipe().stream()
              .map(line -> new HouseholdRecipe.Row(line.number(), line.text()))
              .toList(),
          catalogue,
          get(Settings.CUPS).orElseThrow());
    } catch (BakeryException wrong) {
      for (Problem problem : wrong.problems()) {
        complain(Origin.line(file.name(), problem.line()), problem.exception());
      }
      if (wrong.problems().isEmpty()) {
        complain(Origin.line(file.name(), file.recipe().get(0).number()), wrong);
      }
      return null;
    }
  }

  private @Nullable Procedure procedure() {
    List<Step> steps = new ArrayList<>();
    boolean mixes = false;
    for (Step step : file.steps()) {
      boolean mix =
          step.action() instanceof org.tourage.day.Action.Mix mixing && mixing.stage() == null;
      mixes |= mix;
      steps.add(
          mix && isSet(Settings.DOUGH_TEMPERATURE)
              ? step.mixedTo(get(Settings.DOUGH_TEMPERATURE).orElseThrow())
              : step);
    }
    if (steps.isEmpty()) {
      steps.add(Step.mix(Amounts.minutes(20)));
      mixes = true;
      if (isSet(Settings.DOUGH_TEMPERATURE)) {
        steps.set(0, steps.get(0).mixedTo(get(Settings.DOUGH_TEMPERATURE).orElseThrow()));
      }
    }
    Origin first =
        Origin.line(file.name(), file.stepLines().isEmpty() ? 0 : file.stepLines().get(0).number());
    if (!mixes && isSet(Settings.DOUGH_TEMPERATURE)) {
      complain(
          origin(Settings.DOUGH_TEMPERATURE),
          new BakeryException(
              Reason.INCONSISTENT,
              "a dough temperature needs a mix",
              "no step mixes the dough",
              "add a step like mix the dough: 20 min"));
    }
    try {
      return new Procedure(steps);
    } catch (BakeryException wrong) {
      complain(first, wrong);
      refuse();
      return null;
    }
  }

  private Product product(HouseholdRecipe recipe, Procedure procedure) {
    Product product =
        Product.of(recipe, procedure).fermenting(get(Settings.RATE_MODEL).orElseThrow());
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
    return rolledIn ? product.madeUp(sheet()) : product;
  }

  /** Where an ingredient stood; a temperature that nothing would use is complained of. */
  private @Nullable Place place(HouseholdRecipe.Item item) {
    Matcher reading = READING.matcher(item.note());
    if (!reading.find()) {
      return coldness(item.note());
    }
    boolean water = item.weighed().ingredient().id().equals("water");
    if (water || item.kind() != StageKind.FINAL_DOUGH) {
      complain(
          Origin.line(file.name(), lineOf(item)),
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
    return file.recipe().stream()
        .filter(line -> line.text().strip().equals(item.text()))
        .mapToInt(RecipeFile.Numbered::number)
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

  private MakeUp sheet() {
    LaminationPlan.Setup setup = LaminationPlan.Setup.SMALL_BENCH;
    setup = get(Settings.FAT_THICKNESS).map(setup::withFatThickness).orElse(setup);
    setup = get(Settings.FOLD_THICKNESS).map(setup::withFoldThickness).orElse(setup);
    setup =
        setup
            .withPacketWidth(get(Settings.PACKET_WIDTH).orElse(setup.packetWidth()))
            .withFinalSheet(
                get(Settings.SHEET_THICKNESS).orElse(setup.finalThickness()),
                get(Settings.SHEET_WIDTH).orElse(setup.finalWidth()));
    MakeUp.FromSheet sheet =
        MakeUp.sheet(setup)
            .trimmed(get(Settings.TRIM).orElseThrow())
            .slender(get(Settings.SLENDERNESS).orElseThrow());
    sheet = get(Settings.CUT).map(sheet::cutInto).orElse(sheet);
    return get(Settings.FAT_CURVE).map(sheet::withFat).orElse(sheet);
  }

  private <T> Product with(
      Product product, Setting<T> setting, BiFunction<Product, T, Product> put) {
    return get(setting).map(value -> put.apply(product, value)).orElse(product);
  }

  private Kitchen kitchen() {
    Kitchen[] kitchen = {Kitchen.named(get(Settings.KITCHEN).orElseThrow())};
    kitchen(kitchen, Settings.ROOM, Kitchen::withRoom);
    kitchen(kitchen, Settings.TAP, Kitchen::withTap);
    kitchen(kitchen, Settings.FLOUR_TEMPERATURE, Kitchen::withFlour);
    kitchen(kitchen, Settings.REFRIGERATOR, Kitchen::withRefrigerator);
    kitchen(kitchen, Settings.FREEZER, Kitchen::withFreezer);
    kitchen(kitchen, Settings.PROOFER, Kitchen::withProofer);
    kitchen(kitchen, Settings.ALTITUDE, Kitchen::atAltitude);
    kitchen(kitchen, Settings.BALANCE, Kitchen::withBalance);
    kitchen(kitchen, Settings.FINE_BALANCE, Kitchen::withFineBalance);
    kitchen(kitchen, Settings.BENCH, Kitchen::withBench);
    kitchen(kitchen, Settings.BENCH_SIZE, Kitchen::withBenchSize);
    kitchen(kitchen, Settings.TUB, Kitchen::withTub);
    kitchen(kitchen, Settings.COVER, Kitchen::withCover);
    kitchen(kitchen, Settings.OVEN, Kitchen::withOven);
    kitchen(
        kitchen,
        Settings.MIXER_RISE,
        (k, rise) -> k.withMixer(new Mixer("the mixer", Warming.rise(rise))));
    kitchen(
        kitchen,
        Settings.FRICTION,
        (k, friction) -> k.withMixer(new Mixer("the mixer", Warming.friction(friction))));
    kitchen(kitchen, Settings.PAST_MIX, (k, past) -> k.withMixer(new Mixer("the mixer", past)));
    kitchen(kitchen, Settings.SHEETER, Kitchen::withRollers);
    return kitchen[0];
  }

  /** Only what was set is given to the kitchen, so that it knows what is usual. */
  private <T> void kitchen(
      Kitchen[] kitchen, Setting<T> setting, BiFunction<Kitchen, T, Kitchen> put) {
    Optional<T> value = get(setting);
    if (isSet(setting) && value.isPresent()) {
      attempt(origin(setting), () -> kitchen[0] = put.apply(kitchen[0], value.get()));
    }
  }

  private Order order(Product product) {
    Order order = sized(product);
    Optional<org.tourage.day.DayTime> start = get(Settings.START);
    Optional<org.tourage.day.DayTime> ready = get(Settings.READY);
    if (start.isPresent() && ready.isPresent()) {
      complain(
          origin(Settings.READY),
          new BakeryException(
              Reason.INCONSISTENT,
              "a day starts or ends at a time",
              "start and ready are both set",
              "keep one of both"));
    }
    order = start.map(order::startingAt).orElse(order);
    return ready.map(order::readyAt).orElse(order);
  }

  private Order sized(Product product) {
    Optional<Integer> pieces = get(Settings.PIECES);
    Optional<Amount<Mass>> mass = get(Settings.PIECE_MASS);
    Optional<Amount<Mass>> flour = get(Settings.FLOUR);
    if (mass.isPresent() && pieces.isEmpty()) {
      complain(
          origin(Settings.PIECE_MASS),
          new BakeryException(
              Reason.MISSING,
              "the number of pieces is missing",
              "piece-mass " + mass.get(),
              "set pieces too, for example pieces: 12"));
    }
    if (mass.isPresent() && flour.isPresent()) {
      complain(
          origin(Settings.FLOUR),
          new BakeryException(
              Reason.INCONSISTENT,
              "the size is given twice",
              "flour and piece-mass",
              "keep one of both"));
    }
    refuse();
    Supplier<Order> order =
        () -> {
          if (flour.isPresent()) {
            return new Order(
                product,
                new Order.OfFlour(flour.get(), pieces.orElse(0)),
                Amounts.percent(0),
                null,
                null);
          }
          if (mass.isPresent()) {
            PieceOrder one =
                get(Settings.BAKE_LOSS)
                    .map(loss -> PieceOrder.baked(pieces.orElseThrow(), mass.get(), loss))
                    .orElseGet(() -> PieceOrder.raw(pieces.orElseThrow(), mass.get()));
            return Order.pieces(product, one);
          }
          return pieces.map(n -> Order.parted(product, n)).orElseGet(() -> Order.asGiven(product));
        };
    try {
      return order.get().losing(get(Settings.PROCESS_LOSS).orElseThrow());
    } catch (BakeryException wrong) {
      complain(origin(isSet(Settings.PIECE_MASS) ? Settings.PIECE_MASS : Settings.FLOUR), wrong);
      refuse();
      throw wrong;
    }
  }

  private DayPlan swap(
      DayPlan plan,
      SwapKind kind,
      Setting<String> replaced,
      Setting<String> onHand,
      Catalogue catalogue) {
    Optional<String> to = get(onHand);
    if (to.isEmpty()) {
      return plan;
    }
    Optional<Ingredient> from = get(replaced).flatMap(name -> find(catalogue, name, replaced));
    return find(catalogue, to.get(), onHand)
        .map(i -> plan.with(new DayPlan.Swap(kind, from.orElse(null), i)))
        .orElse(plan);
  }

  private Optional<Ingredient> find(Catalogue catalogue, String name, Setting<?> setting) {
    try {
      return Optional.of(catalogue.require(name));
    } catch (BakeryException unknown) {
      complain(origin(setting), unknown);
      return Optional.empty();
    }
  }

  private void unused() {
    file.own()
        .forEach(
            (key, value) -> {
              if (!used.contains(key)) {
                complain(
                    value.origin(),
                    new BakeryException(
                        Reason.INCONSISTENT,
                        "nothing uses this setting",
                        "\"" + key + ": " + value.text() + "\"",
                        "leave it out, or add what it belongs to (a sheet needs [roll-in], what is"
                            + " replaced needs what is on hand)"));
              }
            });
  }
}
