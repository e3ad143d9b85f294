package org.tourage.day;

import static org.tourage.quantity.BakeryUnits.JOULE;
import static org.tourage.quantity.BakeryUnits.KILOGRAM;

import java.util.ArrayList;
import java.util.List;
import javax.measure.quantity.Energy;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.fermentation.RiseHistory;
import org.tourage.formula.Formula;
import org.tourage.formula.StageKind;
import org.tourage.ingredient.Role;
import org.tourage.makeup.TrayPlan;
import org.tourage.oven.Bake;
import org.tourage.oven.BakePiece;
import org.tourage.oven.DoughKind;
import org.tourage.oven.OvenProfile;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Amounts;
import org.tourage.quantity.Extent;

/** Works the oven: the piece as its history leaves it, the loads, the heat that they take. */
final class OvenWork {
  /** A proof that nobody described: common practice, nearly doubled. */
  private static final double USUAL_PROOF = 1.8;

  /** A batter or an unleavened dough as it is filled: hardly more than the air of its mixing. */
  private static final double UNPROOFED = 1.05;

  private static final double RICH_FAT = 0.08;
  private static final double RICH_SUGARS = 0.05;
  private static final double APART_MILLIMETRES = 20;

  private OvenWork() {}

  static Baking of(
      Kitchen kitchen,
      Product product,
      Scaled scaled,
      DoughCourse course,
      OvenProfile profile,
      @Nullable RiseHistory history) {
    Formula formula = scaled.batch().formula();
    double growth = growth(formula, history);
    Form form = course.lastForm();
    BakePiece piece =
        BakePiece.of(
                form.solid(course.filledVolume(growth)), formula.constituents(StageKind::isBaked))
            .atAltitude(kitchen.altitude())
            .withPorosity(course.porosity(growth))
            .from(history == null ? kitchen.room() : history.end().mean());
    DoughKind kind = product.kind().orElseGet(() -> kind(formula));
    Bake bake = Bake.of(piece, kitchen.oven().model(), profile, kind);
    List<Integer> loads = new ArrayList<>();
    int perTray = perTray(kitchen.oven(), form.footprint(course.filledVolume(growth)));
    int all = Math.max(1, scaled.pieces());
    int most = perTray * kitchen.oven().trays();
    for (int left = all; left > 0; left -= most) {
      loads.add(Math.min(left, most));
    }
    Amount<Energy> taken =
        JOULE.amount(bake.heatTaken() * scaled.piece().add(scaled.filling()).in(KILOGRAM) * all);
    return new Baking(
        bake,
        kitchen.oven(),
        perTray,
        loads,
        kitchen.oven().model().preheating(profile, kitchen.room()).orElse(null),
        kitchen.oven().model().energy(profile.stretched(loads.size()), kitchen.room(), taken));
  }

  private static double growth(Formula formula, @Nullable RiseHistory history) {
    if (history != null) {
      return history.end().growth();
    }
    boolean yeast =
        formula.prefermentedFlour().value() > 0
            || formula.lines().stream().anyMatch(l -> l.ingredient().is(Role.YEAST));
    return yeast ? USUAL_PROOF : UNPROOFED;
  }

  /** A rich dough has more than 8 % fat or 5 % sugars by flour; common practice. */
  static DoughKind kind(Formula formula) {
    double fat = 0;
    double sugars = 0;
    for (var line : formula.overall()) {
      double share = line.percent().value() / 100;
      fat += share * line.ingredient().composition().fraction(org.tourage.ingredient.Component.FAT);
      sugars += line.ingredient().is(Role.SUGAR) ? share : 0;
    }
    return fat > RICH_FAT || sugars > RICH_SUGARS ? DoughKind.RICH : DoughKind.LEAN;
  }

  private static int perTray(KitchenOven oven, Extent piece) {
    TrayPlan plan =
        TrayPlan.of(oven.tray(), piece, 1, Amounts.millimetres(APART_MILLIMETRES));
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
