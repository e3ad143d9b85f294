package org.tourage.day;

import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.JOULE;
import static org.tourage.quantity.BakeryUnits.KELVIN;
import static org.tourage.quantity.BakeryUnits.KILOGRAM;
import static org.tourage.quantity.BakeryUnits.LITRE;

import java.util.ArrayList;
import java.util.List;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Volume;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.fermentation.GasState;
import org.tourage.fermentation.RiseHistory;
import org.tourage.formula.Formula;
import org.tourage.formula.Line;
import org.tourage.formula.StageKind;
import org.tourage.ingredient.Allergen;
import org.tourage.ingredient.Component;
import org.tourage.ingredient.Role;
import org.tourage.makeup.TrayPlan;
import org.tourage.oven.Bake;
import org.tourage.oven.BakePiece;
import org.tourage.oven.DoughKind;
import org.tourage.oven.OvenModel;
import org.tourage.oven.OvenProfile;
import org.tourage.oven.OvenRise;
import org.tourage.oven.Seat;
import org.tourage.physics.Atmosphere;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Amounts;
import org.tourage.quantity.Extent;

/** Works the oven: the piece as its history leaves it, the loads, the heat that they take. */
final class OvenWork {
  /** A proof that nobody described: common practice, nearly doubled. */
  private static final double USUAL_PROOF = 1.8;

  /** An unleavened dough: hardly more than the air of its mixing. */
  private static final double UNPROOFED = 1.05;

  /** A batter as it is filled weighs 0.85 to 0.95 g/mL; common practice. */
  private static final double BEATEN = 1.25;

  /** How far the dough of a piece springs where its own gas does not tell; common practice. */
  private static final double LAMINATED_SPRING = 2;

  private static final double PUFF_SPRING = 8;
  private static final double BATTER_SPRING = 1.9;

  /** What neighbours shade of the sides; common practice, as the models of the oven say. */
  private static final double ON_A_TRAY = 0.2;

  private static final double IN_A_RING = 0.4;
  private static final double TOUCHING = 0.7;

  /** A mould of dark steel, as cups for muffins are. */
  private static final double DARK_METAL = 0.8;

  private static final double RICH_FAT = 0.08;
  private static final double RICH_SUGARS = 0.05;
  private static final double MOSTLY = 0.5;
  private static final double APART_MILLIMETRES = 20;
  private static final double GAS_CONSTANT = 8.314462618;

  private final Kitchen kitchen;
  private final Product product;
  private final Scaled scaled;
  private final DoughCourse course;
  private final Formula formula;
  private final @Nullable RiseHistory history;
  private final Amount<Temperature> mixed;

  OvenWork(
      Kitchen kitchen,
      Product product,
      Scaled scaled,
      DoughCourse course,
      @Nullable RiseHistory history) {
    this.kitchen = kitchen;
    this.product = product;
    this.scaled = scaled;
    this.course = course;
    this.formula = scaled.batch().formula();
    // a dough that goes straight from the mixer into the oven has no history
    this.history = history == null || history.stages().isEmpty() ? null : history;
    this.mixed = history == null ? kitchen.room() : history.start();
  }

  Baking of(OvenProfile profile) {
    double growth = growth();
    Form form = course.lastForm();
    Amount<Volume> volume = course.filledVolume(growth);
    DoughKind kind = product.kind().orElseGet(() -> kind(formula));
    int perTray = perTray(form.footprint(volume));
    int all = Math.max(1, scaled.pieces());
    BakePiece piece =
        BakePiece.of(form.inOven(volume), formula.constituents(StageKind::isBaked))
            .atAltitude(kitchen.altitude())
            .withPorosity(course.porosity(growth))
            .from(history == null ? mixed : history.end().mean())
            .on(seat(form, Math.min(all, perTray)))
            .withRise(spring(kind, volume));
    Step boil = product.procedure().boil().orElse(null);
    Bake bake =
        Bake.of(boil == null ? piece : boiled(piece, boil), kitchen.oven().model(), profile, kind);
    List<Integer> loads = new ArrayList<>();
    int most = perTray * kitchen.oven().trays();
    for (int left = all; left > 0; left -= most) {
      loads.add(Math.min(left, most));
    }
    double kilograms = scaled.piece().add(scaled.filling()).in(KILOGRAM) * all;
    Amount<Energy> taken = JOULE.amount(bake.heatTaken() * kilograms);
    OvenModel model = kitchen.oven().sized();
    return new Baking(
        bake,
        kitchen.oven(),
        perTray,
        loads,
        model.preheating(profile, kitchen.room()).orElse(null),
        model.energy(profile.stretched(loads.size()), kitchen.room(), taken));
  }

  /** Out of its bath; what is within half a kelvin of boiling boils. */
  private static BakePiece boiled(BakePiece piece, Step boil) {
    BakePiece wet = piece.boiledFor(boil.time().high());
    return boil.action() instanceof Action.Boil bath
            && bath.water() != null
            && bath.water().in(CELSIUS) < piece.boiling().in(CELSIUS) - StepOrder.BOILING_WITHIN
        ? wet.inBath(bath.water())
        : wet;
  }

  private double growth() {
    if (history != null) {
      return kind(formula) == DoughKind.BATTER
          ? Math.max(BEATEN, history.end().growth())
          : history.end().growth();
    }
    if (kind(formula) == DoughKind.BATTER) {
      return BEATEN;
    }
    return formula.has(StageKind.PREFERMENT) || formula.has(Role.YEAST) ? USUAL_PROOF : UNPROOFED;
  }

  private Seat seat(Form form, int together) {
    Seat seat =
        form.inTin()
            ? form instanceof Form.Mould ? Seat.TIN.withEmissivity(DARK_METAL) : Seat.TIN
            : kitchen.oven().stone() ? Seat.STONE : Seat.SHEET;
    double shaded =
        form.inTin()
            ? 0
            : form.amongNeighbours()
                ? TOUCHING
                : form instanceof Form.Ring ? IN_A_RING : together > 1 ? ON_A_TRAY : 0;
    return shaded == 0 ? seat : seat.withNeighbours(Amounts.fraction(shaded));
  }

  /** By its gas where yeast raised it; by a figure of the trade where steam or powder will. */
  private OvenRise spring(DoughKind kind, Amount<Volume> volume) {
    if (scaled.lamination().isThere() || kind == DoughKind.BATTER) {
      double dough =
          kind == DoughKind.PUFF
              ? PUFF_SPRING
              : kind == DoughKind.BATTER ? BATTER_SPRING : LAMINATED_SPRING;
      // a filling does not spring
      double share = course.pieceVolume(growth()).in(LITRE) / volume.in(LITRE);
      return OvenRise.fixed(1 + (dough - 1) * share);
    }
    if (history == null) {
      return OvenRise.PROOFED;
    }
    GasState gas = history.gas();
    double kelvin = gas.temperature().in(KELVIN);
    double pressure = Atmosphere.pressure(kitchen.altitude());
    double doughKilograms =
        scaled.piece().in(KILOGRAM) * (1 - scaled.batch().rollIn().ratioTo(scaled.batch().dough()));
    double perHour =
        3600
            * gas.rate()
            * GAS_CONSTANT
            * kelvin
            / pressure
            * doughKilograms
            / (volume.in(LITRE) / 1000);
    double full = gas.gas().dissolved(MUCH_GAS, gas.temperature());
    return new OvenRise(0, Math.min(1, gas.dissolved() / full), Math.min(5, perHour));
  }

  /** More carbon dioxide than any dough has, mol/kg: what is dissolved then is all that can be. */
  private static final double MUCH_GAS = 1;

  /** The kind of a formula: by its leavening, its roll-in, its flour, its fat and its sugar. */
  static DoughKind kind(Formula formula) {
    boolean yeast = formula.has(Role.YEAST) || formula.has(StageKind.PREFERMENT);
    if (formula.has(StageKind.ROLL_IN)) {
      return yeast ? DoughKind.LAMINATED : DoughKind.PUFF;
    }
    if (!yeast && formula.has(Role.LEAVENING)) {
      return DoughKind.BATTER;
    }
    double fat = 0;
    double sugars = 0;
    double rye = 0;
    boolean gluten = false;
    for (Line line : formula.overall()) {
      double share = line.percent().value() / 100;
      fat += share * line.ingredient().composition().fraction(Component.FAT);
      sugars += line.ingredient().is(Role.SUGAR) ? share : 0;
      if (line.isFlour()) {
        rye += line.ingredient().allergens().contains(Allergen.RYE) ? share : 0;
        gluten |= line.ingredient().allergens().stream().anyMatch(GLUTEN::contains);
      }
    }
    if (!gluten) {
      return DoughKind.GLUTEN_FREE;
    }
    if (rye >= MOSTLY) {
      return DoughKind.RYE;
    }
    return fat > RICH_FAT || sugars > RICH_SUGARS ? DoughKind.RICH : DoughKind.LEAN;
  }

  private static final List<Allergen> GLUTEN =
      List.of(Allergen.WHEAT, Allergen.RYE, Allergen.BARLEY, Allergen.OAT);

  private int perTray(Extent piece) {
    KitchenOven oven = kitchen.oven();
    TrayPlan plan = TrayPlan.of(oven.tray(), piece, 1, Amounts.millimetres(APART_MILLIMETRES));
    TrayPlan close = TrayPlan.of(oven.tray(), piece, 1, Amounts.millimetres(0));
    int pieces = Math.max(plan.perTray(), Math.min(1, close.perTray()));
    if (pieces == 0) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "not one piece fits the tray of " + oven.name(),
          piece + " on " + oven.tray(),
          "give a larger tray, or make smaller pieces");
    }
    return pieces;
  }
}
