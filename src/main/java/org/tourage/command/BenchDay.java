package org.tourage.command;

import static org.tourage.quantity.Amounts.celsius;
import static org.tourage.quantity.Amounts.grams;
import static org.tourage.quantity.Amounts.percent;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.KILOGRAM;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.doughtemperature.FactorRule;
import org.tourage.doughtemperature.HeatBalance;
import org.tourage.fermentation.ColdTail;
import org.tourage.fermentation.Cover;
import org.tourage.fermentation.DoughBody;
import org.tourage.fermentation.DoughGas;
import org.tourage.fermentation.OsmoticLoad;
import org.tourage.fermentation.RateModel;
import org.tourage.fermentation.Rise;
import org.tourage.fermentation.RiseHistory;
import org.tourage.fermentation.Rosso1993;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.formula.HouseholdRecipe;
import org.tourage.formula.Line;
import org.tourage.formula.PieceOrder;
import org.tourage.formula.StageKind;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;
import org.tourage.ingredient.YeastForm;
import org.tourage.label.AllergenSummary;
import org.tourage.label.KitchenCautions;
import org.tourage.lamination.Bench;
import org.tourage.lamination.FatCurve;
import org.tourage.lamination.Fold;
import org.tourage.lamination.FoldSequence;
import org.tourage.lamination.LaminationPlan;
import org.tourage.lamination.LockIn;
import org.tourage.lamination.SheetBody;
import org.tourage.makeup.CuttingPlan;
import org.tourage.makeup.Shape;
import org.tourage.oven.Bake;
import org.tourage.oven.BakePiece;
import org.tourage.oven.DoughKind;
import org.tourage.oven.OvenModel;
import org.tourage.oven.OvenProfile;
import org.tourage.oven.ThermalDeath;
import org.tourage.physics.Air;
import org.tourage.physics.ChoiOkos1986;
import org.tourage.physics.Constituents;
import org.tourage.physics.Solid;
import org.tourage.plan.DayTime;
import org.tourage.plan.Timetable;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Amounts;
import org.tourage.quantity.BakeryUnit;
import org.tourage.quantity.CupStandard;
import org.tourage.quantity.HouseholdAmount;
import org.tourage.quantity.Kind;
import org.tourage.quantity.TemperatureDifference;
import org.tourage.sheet.BenchSheet;
import org.tourage.substitution.FlourExchange;
import org.tourage.substitution.IngredientExchange;
import org.tourage.substitution.PlantBased;

/**
 * Works a recipe file through the rooms of the library and puts the results on a bench sheet:
 * recipe, flour on hand, formula, water, lamination, cutting, oven, timetable, cautions.
 *
 * <pre>{@code
 * BenchDay.work(RecipeFile.parse(text).with("pieces", "24"));
 * }</pre>
 */
public final class BenchDay {
  private static final Amount<Temperature> LAMINATING = celsius(15);
  private static final Amount<Temperature> WARMEST_RISE = celsius(60);
  private static final Pattern RISE =
      Pattern.compile(
          "(doubled|tripled|grown by half|[\\d./ ]+ times)\\s+in\\s+(.+?)\\s+at\\s+(.+)");
  private static final int MOST_ROUNDS = 60;
  private static final double SETTLED = 1e-12;

  private final RecipeFile file;

  private BenchDay(RecipeFile file) {
    this.file = file;
  }

  /**
   * Works a recipe file through.
   *
   * @param file the file
   * @return the bench sheet
   * @throws BakeryException if a line or a setting can't be read, or the figures contradict each
   *     other
   */
  public static BenchSheet work(RecipeFile file) {
    return new BenchDay(file).work();
  }

  private BenchSheet work() {
    AmountFormat format = format();
    HouseholdRecipe recipe =
        HouseholdRecipe.parse(title(), file.recipe(), Catalogue.builtIn(), cups());
    BenchSheet.Builder sheet = BenchSheet.builder(title(), format).recipe(recipe);
    Batch asGiven = recipe.batch();
    Batch wanted = asGiven;
    Optional<FlourExchange> exchange = exchange(asGiven.formula());
    if (exchange.isPresent()) {
      sheet.exchange(exchange.get());
      // the exchange keeps the flour
      wanted = exchange.get().after().forFlour(asGiven.flour());
    }
    wanted = onHand(sheet, wanted);
    Formula formula = wanted.formula();
    Scaled scaled = scale(wanted);
    Batch batch = scaled.batch.rounded(read(Setting.BALANCE, Amounts::mass, grams(1)));
    sheet.formula(batch, scaled.words);
    water(sheet, batch);
    if (scaled.lamination != null) {
      sheet.lamination(scaled.lamination);
      LaminationPlan plan = scaled.lamination;
      file.get(Setting.BENCH_SIZE)
          .ifPresent(text -> sheet.advice(plan.fitting(Amounts.extent(text))));
    }
    if (scaled.lamination != null && file.get(Setting.FAT_CURVE).isPresent()) {
      sheet.workability(onTheBench(scaled.lamination, formula));
    }
    if (scaled.cutting != null) {
      sheet.cutting(scaled.cutting, scaled.sheetMass);
    }
    RiseHistory history = file.get(Setting.RISE).isPresent() ? rise(formula) : null;
    if (file.get(Setting.OVEN).isPresent()) {
      bake(sheet, formula, batch.dough(), scaled.lamination, history);
    }
    if (!file.jobs().isEmpty()) {
      sheet.timetable(timetable());
    }
    if (history != null) {
      rise(sheet, formula, history);
    }
    sheet.allergens(AllergenSummary.of(formula)).advice(KitchenCautions.of(formula));
    if (scaled.cutting == null && file.get(Setting.CUT).isPresent()) {
      sheet.advice(
          List.of(
              Advice.note(
                  "NO_SHEET",
                  "there is no laminated sheet to cut",
                  "Give a [roll-in] stage, or divide the dough by weight",
                  Advice.COMMON_PRACTICE)));
    }
    return sheet.build();
  }

  /** What scaling settled. */
  private record Scaled(
      Batch batch,
      String words,
      @Nullable LaminationPlan lamination,
      @Nullable CuttingPlan cutting,
      Amount<Mass> sheetMass) {}

  /**
   * Scales to pieces. Where a sheet is cut, its trim and ends depend on its size, so the dough is
   * grown until the pieces that are cut have the mass that is wanted.
   */
  private Scaled scale(Batch given) {
    Formula formula = given.formula();
    Amount<Dimensionless> loss = read(Setting.PROCESS_LOSS, Amounts::percentage, percent(0));
    int pieces = file.get(Setting.PIECES).map(BenchDay::wholeNumber).orElse(0);
    Optional<Amount<Mass>> pieceMass = file.get(Setting.PIECE_MASS).map(Amounts::mass);
    boolean toPieces = pieces > 0 && pieceMass.isPresent();
    Batch batch = given;
    if (file.get(Setting.FLOUR).isPresent()) {
      batch = formula.forFlour(Amounts.mass(file.get(Setting.FLOUR).orElseThrow()));
      toPieces = false;
    } else if (toPieces) {
      batch = formula.forPieces(order(pieces, pieceMass.orElseThrow(), loss));
    } else if (pieceMass.isPresent()) {
      throw new BakeryException(
          Reason.MISSING,
          "the number of pieces is missing",
          "piece-mass " + pieceMass.get(),
          "set pieces too, for example pieces: 12");
    }
    boolean laminated = formula.stages().stream().anyMatch(s -> s.kind() == StageKind.ROLL_IN);
    if (!laminated) {
      return new Scaled(batch, words(batch, pieces, loss, toPieces), null, null, batch.dough());
    }
    Scaled scaled = laminate(batch, pieces, loss, toPieces);
    if (toPieces && scaled.cutting != null) {
      double rawPiece = order(pieces, pieceMass.orElseThrow(), percent(0)).dough().value() / pieces;
      for (int round = 0; round < MOST_ROUNDS; round++) {
        double cut = scaled.cutting.pieceMass(scaled.sheetMass).value();
        double correction = rawPiece / cut;
        if (Math.abs(correction - 1) < SETTLED) {
          break;
        }
        scaled = laminate(scaled.batch.times(correction), pieces, loss, true);
        if (scaled.cutting == null) {
          break;
        }
      }
    }
    return scaled;
  }

  private PieceOrder order(int pieces, Amount<Mass> pieceMass, Quantity<Dimensionless> loss) {
    PieceOrder order =
        file.get(Setting.BAKE_LOSS)
            .map(text -> PieceOrder.baked(pieces, pieceMass, Amounts.percentage(text)))
            .orElseGet(() -> PieceOrder.raw(pieces, pieceMass));
    return order.withProcessLoss(loss);
  }

  private Scaled laminate(Batch batch, int pieces, Amount<Dimensionless> loss, boolean toPieces) {
    Formula formula = batch.formula();
    Amount<Mass> dough = batch.baseDough().multiply(1 - loss.in(FRACTION));
    LaminationPlan plan =
        LaminationPlan.of(
            sequence(),
            dough,
            batch.rollIn(),
            ChoiOkos1986.density(formula.constituents(StageKind::inDough), LAMINATING),
            ChoiOkos1986.density(formula.constituents(k -> k == StageKind.ROLL_IN), LAMINATING),
            setup());
    Amount<Mass> sheetMass = dough.add(batch.rollIn());
    CuttingPlan cutting =
        pieces == 0
            ? null
            : CuttingPlan.forPieces(
                shape(),
                pieces,
                plan.finalSheet(),
                read(Setting.TRIM, Amounts::length, Amounts.millimetres(5)),
                slenderness());
    return new Scaled(batch, words(batch, pieces, loss, toPieces), plan, cutting, sheetMass);
  }

  private String words(Batch batch, int pieces, Amount<Dimensionless> loss, boolean toPieces) {
    AmountFormat metric = AmountFormat.metric();
    if (pieces == 0) {
      return "the recipe at the size given";
    }
    String each =
        toPieces
            ? file.get(Setting.PIECE_MASS).orElseThrow()
                + file.get(Setting.BAKE_LOSS)
                    .map(text -> " baked, bake loss " + text)
                    .orElse(" raw")
            : "about " + metric.mass(batch.pieceMass(pieces, loss)) + " raw before trim";
    return pieces + " pieces of " + each + ", process loss " + metric.percent(loss);
  }

  private String title() {
    return file.get(Setting.TITLE).orElse("Bench sheet");
  }

  private AmountFormat format() {
    return choose(
        Setting.UNITS,
        "metric",
        word ->
            switch (word) {
              case "metric" -> AmountFormat.metric();
              case "us" -> AmountFormat.usCustomary();
              case "both" -> AmountFormat.sideBySide();
              default -> null;
            });
  }

  private CupStandard cups() {
    return choose(
        Setting.CUPS,
        "us",
        word ->
            switch (word) {
              case "us" -> CupStandard.US_CUSTOMARY;
              case "labelling" -> CupStandard.US_LABELLING;
              case "metric" -> CupStandard.METRIC;
              case "imperial" -> CupStandard.IMPERIAL;
              default -> null;
            });
  }

  private Shape shape() {
    return choose(
        Setting.CUT,
        "triangles",
        word ->
            switch (word) {
              case "triangles" -> Shape.TRIANGLE;
              case "right-triangles" -> Shape.RIGHT_TRIANGLE;
              case "rectangles" -> Shape.RECTANGLE;
              default -> null;
            });
  }

  private LockIn lockIn() {
    return choose(
        Setting.LOCK_IN,
        "half",
        word ->
            switch (word) {
              case "half" -> LockIn.HALF;
              case "thirds" -> LockIn.THIRDS;
              case "envelope" -> LockIn.ENVELOPE;
              case "outside" -> LockIn.OUTSIDE;
              default -> null;
            });
  }

  private FoldSequence sequence() {
    FoldSequence sequence = FoldSequence.lockIn(lockIn());
    String text = file.get(Setting.FOLDS).orElse("letter, letter, letter");
    for (String word : text.toLowerCase(Locale.ROOT).split(",")) {
      String fold = word.strip();
      sequence =
          sequence.fold(
              switch (fold) {
                case "half" -> Fold.HALF;
                case "letter" -> Fold.LETTER;
                case "book" -> Fold.BOOK;
                default -> zigzag(fold);
              });
    }
    return sequence;
  }

  private static Fold zigzag(String fold) {
    if (fold.matches("zigzag \\d{1,2}")) {
      return Fold.zigzag(Integer.parseInt(fold.substring("zigzag ".length())));
    }
    throw wrong(Setting.FOLDS, fold);
  }

  private LaminationPlan.Setup setup() {
    LaminationPlan.Setup bench = LaminationPlan.Setup.SMALL_BENCH;
    Amount<Length> thickness =
        read(Setting.SHEET_THICKNESS, Amounts::length, bench.finalThickness());
    Amount<Length> width = read(Setting.SHEET_WIDTH, Amounts::length, bench.finalWidth());
    return bench
        .withPacketWidth(read(Setting.PACKET_WIDTH, Amounts::length, bench.packetWidth()))
        .withFinalSheet(thickness, width);
  }

  /** How long packet and sheet stay workable, and how long the packet chills. */
  private List<String> onTheBench(LaminationPlan plan, Formula formula) {
    FatCurve curve = FatCurve.named(file.get(Setting.FAT_CURVE).orElseThrow());
    Constituents dough = formula.constituents(StageKind::inDough);
    Constituents fat = formula.constituents(k -> k == StageKind.ROLL_IN);
    Amount<Temperature> cold = read(Setting.REFRIGERATOR, Amounts::temperature, celsius(4));
    Amount<Temperature> room = read(Setting.ROOM, Amounts::temperature, celsius(22));
    Bench bench = bench();
    AmountFormat format = AmountFormat.sideBySide();
    List<String> lines = new ArrayList<>();
    lines.add(curve.toString());
    List<LaminationPlan.Step> steps = plan.steps();
    LaminationPlan.Step packet = steps.get(steps.size() - 2);
    LaminationPlan.Step last = steps.get(steps.size() - 1);
    for (LaminationPlan.Step step : List.of(packet, last)) {
      SheetBody body = SheetBody.of(plan, step.thickness(), dough, fat, curve);
      lines.add(
          step.action()
              + ", "
              + AmountFormat.metric().length(step.thickness())
              + " thick, from "
              + format.temperature(cold)
              + " in a room of "
              + format.temperature(room)
              + " on "
              + bench.name().toLowerCase(Locale.ROOT)
              + ": can be rolled after "
              + minutes(body.untilTempered(cold, bench, Air.still(room)))
              + ", too soft after "
              + minutes(body.untilTooSoft(cold, bench, Air.still(room))));
    }
    SheetBody body = SheetBody.of(plan, packet.thickness(), dough, fat, curve);
    Amount<Temperature> wanted = curve.window().low();
    lines.add(
        "the folded packet, warmed to "
            + format.temperature(curve.window().high())
            + ", is back at "
            + format.temperature(wanted)
            + " in a refrigerator of "
            + format.temperature(cold)
            + " after "
            + minutes(
                body.untilChilled(curve.window().high(), wanted, Bench.RACK, Air.still(cold))));
    return lines;
  }

  private static String minutes(Optional<Amount<Time>> time) {
    return time.map(AmountFormat.metric()::time).orElse("never");
  }

  private Bench bench() {
    return choose(
        Setting.BENCH,
        "wood",
        word ->
            switch (word) {
              case "wood" -> Bench.WOOD;
              case "steel" -> Bench.STEEL;
              case "stone" -> Bench.STONE;
              case "rack" -> Bench.RACK;
              default -> null;
            });
  }

  private double slenderness() {
    String text = file.get(Setting.SLENDERNESS).orElse(Setting.SLENDERNESS.example());
    HouseholdAmount amount = HouseholdAmount.parse(text);
    if (amount.unit().isPresent() || amount.countWord().isPresent() || amount.isRange()) {
      throw wrong(Setting.SLENDERNESS, text);
    }
    return amount.low().doubleValue();
  }

  private Optional<FlourExchange> exchange(Formula formula) {
    return file.get(Setting.FLOUR_ON_HAND)
        .map(
            name -> {
              Ingredient to = Catalogue.builtIn().require(name);
              Ingredient from =
                  file.get(Setting.FLOUR_REPLACED)
                      .map(Catalogue.builtIn()::require)
                      .orElseGet(() -> firstFlour(formula));
              return FlourExchange.of(formula, from, to);
            });
  }

  /** Fat, liquid and all of animals, one after another; each keeps the flour. */
  private Batch onHand(BenchSheet.Builder sheet, Batch given) {
    Formula now = given.formula();
    if (file.get(Setting.FAT_ON_HAND).isPresent()) {
      Ingredient from = replaced(now, Setting.FAT_REPLACED, Role.FAT);
      IngredientExchange exchange =
          IngredientExchange.of(now, from, required(Setting.FAT_ON_HAND, BenchDay::ingredient));
      sheet.exchange("Fat on hand", exchange);
      now = exchange.after();
    }
    if (file.get(Setting.LIQUID_ON_HAND).isPresent()) {
      Ingredient from = replaced(now, Setting.LIQUID_REPLACED, Role.LIQUID);
      IngredientExchange exchange =
          IngredientExchange.of(now, from, required(Setting.LIQUID_ON_HAND, BenchDay::ingredient));
      sheet.exchange("Liquid on hand", exchange);
      now = exchange.after();
    }
    boolean plants =
        choose(
            Setting.PLANT_BASED,
            "no",
            word ->
                switch (word) {
                  case "yes" -> Boolean.TRUE;
                  case "no" -> Boolean.FALSE;
                  default -> null;
                });
    if (plants) {
      PlantBased change = PlantBased.of(now);
      sheet.exchange("Plant-based (no claim of allergen-free)", change);
      now = change.after();
    }
    return now.forFlour(given.flour());
  }

  private static Ingredient ingredient(String name) {
    return Catalogue.builtIn().require(name);
  }

  /** The ingredient that a setting names, or the first of a role that is not plain water. */
  private Ingredient replaced(Formula formula, Setting setting, Role role) {
    return file.get(setting)
        .map(BenchDay::ingredient)
        .orElseGet(
            () ->
                formula.lines().stream()
                    .map(Line::ingredient)
                    .filter(i -> i.is(role) && !i.id().equals("water"))
                    .findFirst()
                    .orElseThrow(
                        () ->
                            new BakeryException(
                                Reason.MISSING,
                                "the recipe has nothing to be replaced",
                                setting.key(),
                                "name what is to go, for example "
                                    + setting.key()
                                    + ": "
                                    + setting.example())));
  }

  private static Ingredient firstFlour(Formula formula) {
    return formula.overall().stream().filter(Line::isFlour).findFirst().orElseThrow().ingredient();
  }

  private void water(BenchSheet.Builder sheet, Batch batch) {
    boolean wanted = file.get(Setting.DOUGH_TEMPERATURE).isPresent();
    if (!wanted) {
      return;
    }
    FactorRule rule =
        FactorRule.target(read(Setting.DOUGH_TEMPERATURE, Amounts::temperature, LAMINATING))
            .flour(required(Setting.FLOUR_TEMPERATURE, Amounts::temperature))
            .room(required(Setting.ROOM, Amounts::temperature))
            .friction(required(Setting.FRICTION, BenchDay::difference));
    // a friction of k factors is k times the rise that the mixer makes
    TemperatureDifference rise = rule.friction().times(1.0 / (rule.factors().size() + 1));
    HeatBalance balance =
        HeatBalance.of(batch, rule.target(), rule.factors().get(0).temperature()).mixing(rise);
    for (Line line : batch.formula().lines()) {
      YeastForm.of(line.ingredient())
          .filter(form -> form != YeastForm.INSTANT)
          .ifPresent(form -> sheet.advice(balance.suits(form)).advice(foamTest(form)));
    }
    Optional<Amount<Temperature>> tap = file.get(Setting.TAP).map(Amounts::temperature);
    if (tap.isPresent()) {
      sheet.water(balance, rule, tap.get(), balance.ice(tap.get(), celsius(0)));
    } else {
      sheet.water(balance, rule);
    }
  }

  private static List<Advice> foamTest(YeastForm form) {
    return List.of(
        Advice.note(
            "YEAST_TEST",
            "to see that the " + form.label() + " is alive, " + form.foamTest(),
            "Yeast that does not foam will not raise the dough",
            Advice.COMMON_PRACTICE));
  }

  /** The rise over the tasks from the first shape of the dough on, up to the oven. */
  private RiseHistory rise(Formula formula) {
    Amount<Temperature> mixed = required(Setting.DOUGH_TEMPERATURE, Amounts::temperature);
    Amount<Temperature> room = required(Setting.ROOM, Amounts::temperature);
    Constituents dough = formula.constituents(StageKind::inDough);
    DoughGas gas =
        DoughGas.of(dough, mixed)
            .atAltitude(read(Setting.ALTITUDE, Amounts::length, Amounts.metres(0)));
    RateModel model =
        ColdTail.usual(
            Rosso1993.named(file.get(Setting.RATE_MODEL).orElse(Setting.RATE_MODEL.example())));
    RiseHistory history = RiseHistory.start(seen(gas, model), mixed);
    DoughBody body = null;
    for (Job job : beforeTheOven()) {
      Amount<Temperature> air = job.airIfGiven().orElse(room);
      if (job.shape() != null) {
        body = DoughBody.of(job.shape(), dough).covered(cover());
      }
      if (body != null) {
        history = history.then(job.task().name(), body, air, job.task().duration());
      }
    }
    if (history.stages().isEmpty()) {
      throw new BakeryException(
          Reason.MISSING,
          "the history of the rise needs a shape of the dough",
          "no task of the timetable has one",
          "write for example first rest: 1 h at 22 °C as slab 30 mm");
    }
    return history;
  }

  private List<Job> beforeTheOven() {
    return file.jobs().stream()
        .takeWhile(job -> job.airIfGiven().filter(air -> air.compareTo(WARMEST_RISE) > 0).isEmpty())
        .toList();
  }

  private void rise(BenchSheet.Builder sheet, Formula formula, RiseHistory history) {
    sheet.rise(history);
    file.get(Setting.FAT_CURVE)
        .map(FatCurve::named)
        .ifPresent(
            curve ->
                history.stages().forEach(stage -> sheet.advice(curve.proof(stage.end().air()))));
    sheet
        .advice(OsmoticLoad.of(formula).advice())
        .advice(KitchenCautions.warmHold(formula, history.above(celsius(5))));
  }

  /** The profile, and where the shape of the piece is known, what happens in it. */
  private void bake(
      BenchSheet.Builder sheet,
      Formula formula,
      Amount<Mass> dough,
      @Nullable LaminationPlan plan,
      @Nullable RiseHistory history) {
    OvenProfile profile = oven(file.get(Setting.OVEN).orElseThrow());
    Solid shape = null;
    for (Job job : beforeTheOven()) {
      shape = job.shapeIfGiven().orElse(shape);
    }
    if (shape == null) {
      sheet.oven(profile);
      return;
    }
    Constituents whole = formula.constituents(StageKind::inPiece);
    BakePiece piece =
        BakePiece.of(shape, whole)
            .atAltitude(read(Setting.ALTITUDE, Amounts::length, Amounts.metres(0)));
    if (history != null) {
      piece = proofed(piece, plan, history);
    }
    DoughKind kind =
        choose(
            Setting.DOUGH_KIND,
            "rich",
            word ->
                switch (word) {
                  case "lean" -> DoughKind.LEAN;
                  case "rich" -> DoughKind.RICH;
                  default -> null;
                });
    Bake bake = Bake.of(piece, OvenModel.HOUSEHOLD, profile, kind);
    Amount<Temperature> room = read(Setting.ROOM, Amounts::temperature, celsius(22));
    Amount<Energy> load = Amounts.joules(bake.heatTaken() * dough.in(KILOGRAM));
    sheet.bake(bake, room, bake.oven().energy(profile, room, load));
    file.get(Setting.LETHALITY)
        .map(ThermalDeath::named)
        .ifPresent(death -> sheet.advice(death.advice(bake.coreHistory())));
  }

  /** The piece as its history leaves it: grown, with its gas, as warm as it is. */
  private static BakePiece proofed(
      BakePiece piece, @Nullable LaminationPlan plan, RiseHistory history) {
    double dough = plan == null ? 1 : 1 - plan.fatByVolume().in(FRACTION);
    double before = gas(history.lastShape().get(0).looks().get(0).growth(), dough);
    double after = gas(history.end().growth(), dough);
    return piece
        .shaped(piece.solid().grown(Math.cbrt((1 + after) / (1 + before))))
        .withPorosity(Amounts.fraction(after / (1 + after)))
        .from(history.end().mean());
  }

  /** Gas by the volume of the piece without gas. */
  private static double gas(double growth, double doughShare) {
    return doughShare * Math.max(0, growth / (1 - DoughGas.USUAL_AIR) - 1);
  }

  private Rise seen(DoughGas gas, RateModel model) {
    String text = file.get(Setting.RISE).orElseThrow();
    Matcher matcher = RISE.matcher(text.strip().toLowerCase(Locale.ROOT));
    if (!matcher.matches()) {
      throw wrong(Setting.RISE, text);
    }
    String word = matcher.group(1);
    double growth =
        switch (word) {
          case "doubled" -> 2;
          case "tripled" -> 3;
          case "grown by half" -> 1.5;
          default -> HouseholdAmount.parse(word.replace("times", "").strip()).low().doubleValue();
        };
    return Rise.observed(
        gas,
        model,
        growth,
        Amounts.time(matcher.group(2)),
        Amounts.temperature(matcher.group(3).toUpperCase(Locale.ROOT)));
  }

  private Cover cover() {
    return choose(
        Setting.COVER,
        "film",
        word ->
            switch (word) {
              case "none" -> Cover.NONE;
              case "film" -> Cover.FILM;
              case "tub" -> Cover.TUB;
              case "bag" -> Cover.AIR_GAP;
              default -> null;
            });
  }

  private static TemperatureDifference difference(String text) {
    HouseholdAmount amount = HouseholdAmount.parse(text, Kind.TEMPERATURE);
    double degrees = amount.low().doubleValue();
    BakeryUnit<?> unit = amount.unit().orElseThrow();
    return unit.symbol().equals("°F")
        ? TemperatureDifference.ofFahrenheitDegrees(degrees)
        : TemperatureDifference.ofCelsiusDegrees(degrees);
  }

  private static OvenProfile oven(String text) {
    List<OvenProfile.Step> steps = new ArrayList<>();
    for (String step : text.split(",")) {
      HouseholdAmount setPoint = HouseholdAmount.parseFront(step.strip(), CupStandard.US_CUSTOMARY);
      if (setPoint.kind() != Kind.TEMPERATURE || setPoint.rest().isEmpty()) {
        throw wrong(Setting.OVEN, step.strip());
      }
      String rest = setPoint.rest().toLowerCase(Locale.ROOT);
      boolean fan = rest.contains("fan");
      boolean steam = rest.contains("steam");
      boolean vent = rest.contains("vent");
      String time = rest.replaceAll("\\b(with|and|fan|steam|vent|open)\\b", "").strip();
      OvenProfile.Step one =
          new OvenProfile.Step(Amounts.temperature(setPoint.text()), Amounts.time(time));
      one = fan ? one.withFan() : one;
      steps.add(steam ? one.withSteam() : vent ? one.vented() : one);
    }
    return new OvenProfile(steps);
  }

  private Timetable timetable() {
    return file.get(Setting.READY)
        .map(text -> Timetable.endingAt(DayTime.parse(text), file.tasks()))
        .orElseGet(
            () ->
                Timetable.startingAt(
                    DayTime.parse(file.get(Setting.START).orElse(Setting.START.example())),
                    file.tasks()));
  }

  private static int wholeNumber(String text) {
    if (!text.matches("[1-9]\\d{0,5}")) {
      throw wrong(Setting.PIECES, text);
    }
    return Integer.parseInt(text);
  }

  private <T> T read(Setting setting, Function<String, T> reader, T otherwise) {
    return file.get(setting).map(reader).orElse(otherwise);
  }

  private <T> T required(Setting setting, Function<String, T> reader) {
    return file.get(setting)
        .map(reader)
        .orElseThrow(
            () ->
                new BakeryException(
                    Reason.MISSING,
                    "the water temperature needs one more setting",
                    setting.key(),
                    "set it, for example " + setting.key() + ": " + setting.example()));
  }

  private <T> T choose(Setting setting, String otherwise, Function<String, @Nullable T> reader) {
    String word = file.get(setting).orElse(otherwise);
    T value = reader.apply(word.toLowerCase(Locale.ROOT));
    if (value == null) {
      throw wrong(setting, word);
    }
    return value;
  }

  private static BakeryException wrong(Setting setting, String text) {
    return new BakeryException(
        Reason.UNREADABLE_TEXT,
        "can't read " + setting.key(),
        "\"" + text + "\"",
        setting.help() + "; for example " + setting.key() + ": " + setting.example());
  }
}
