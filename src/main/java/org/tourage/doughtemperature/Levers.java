package org.tourage.doughtemperature;

import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;
import org.tourage.quantity.Amount;

/**
 * Works levers out. The limits are those of a bakery's refrigerator (4 °C), freezer (−18 °C, only
 * for what does not freeze hard) and warm corner (common practice).
 */
record Levers(List<Lever> list, double together) {
  private static final double REFRIGERATOR = 4;
  private static final double FREEZER = -18;
  private static final double WARM_DRY = 35;
  private static final double WARM_DRINK = 38;
  private static final double WARM_FAT_OR_EGG = 25;
  private static final double WARM_WET = 30;
  private static final double WARM_BOWL = 40;

  /** Less mixing than this share leaves a dough undeveloped (common practice). */
  private static final double LEAST_MIXING = 0.5;

  /** A lever that moves the dough by less is none, K. */
  private static final double NOTHING = 0.2;

  /** The dough is where it is wanted within this, K. */
  static final double THERE = 0.05;

  /** A part and the temperatures that it can be brought to, °C. */
  record Movable(MixPart part, double low, double high, boolean perishable) {}

  static Movable movable(MixPart part, Ingredient ingredient, boolean wet) {
    double high = WARM_DRY;
    if (ingredient.is(Role.LIQUID)) {
      high = WARM_DRINK;
    } else if (ingredient.is(Role.FAT) || ingredient.is(Role.EGG)) {
      high = WARM_FAT_OR_EGG;
    } else if (wet) {
      high = WARM_WET;
    }
    return new Movable(part, wet ? REFRIGERATOR : FREEZER, high, wet);
  }

  static Movable movableStage(MixPart part) {
    return new Movable(part, REFRIGERATOR, WARM_WET, false);
  }

  static Movable movableBowl(MixPart bowl) {
    return new Movable(bowl, FREEZER, WARM_BOWL, false);
  }

  /**
   * The levers of a mix whose dough comes to another temperature than the wanted one.
   *
   * @param mixture the mix with all its heat
   * @param liquid the temperature that the free liquid has, °C
   * @param target the wanted dough, °C
   */
  static Levers of(StageMix mix, MixerHeat heat, Mixture mixture, double liquid, double target) {
    double reached = mixture.dough(liquid);
    double capacity = mixture.capacity();
    double missing = (target - reached) * capacity;
    List<Lever> found = new ArrayList<>();
    double together = reached;
    for (Movable movable : mix.movables()) {
      MixPart part = movable.part;
      double now = part.temperature().in(CELSIUS);
      double wanted = (part.heat() + missing) / part.capacity();
      // a frozen part can be thawed, a thawed one is not frozen
      double low = part.melting().value() > 0 ? 0 : movable.low;
      double to = Math.min(Math.max(wanted, low), movable.high);
      boolean rightWay = missing > 0 ? to > now : to < now;
      double by = (part.capacity() * to - part.heat()) / capacity;
      if (rightWay && Math.abs(by) >= NOTHING) {
        found.add(
            new Lever.Temper(
                part.name(),
                part.temperature(),
                CELSIUS.amount(to),
                CELSIUS.amount(reached + by),
                Math.abs(reached + by - target) <= THERE));
        double limit = missing > 0 ? movable.high : movable.low;
        together += (part.capacity() * limit - part.heat()) / capacity;
      }
    }
    Amount<Time> time = heat.time().orElse(null);
    double mechanical = heat.mechanical(mix);
    if (time != null && missing < 0 && mechanical > 0) {
      double share = Math.max(LEAST_MIXING, 1 + missing / mechanical);
      double by = (share - 1) * mechanical / capacity;
      if (Math.abs(by) >= NOTHING) {
        found.add(
            new Lever.Shorten(
                time,
                MINUTE.amount(time.in(MINUTE) * share),
                CELSIUS.amount(reached + by),
                Math.abs(reached + by - target) <= THERE));
        together -= (1 - LEAST_MIXING) * mechanical / capacity;
      }
    }
    found.sort(Comparator.comparingDouble(l -> miss(l.dough(), target)));
    return new Levers(List.copyOf(found), together);
  }

  private static double miss(Amount<Temperature> dough, double target) {
    return Math.abs(dough.in(CELSIUS) - target);
  }

  /** These levers after another that they come on top of. */
  Levers after(Lever first) {
    List<Lever> all = new ArrayList<>();
    all.add(first);
    all.addAll(list);
    return new Levers(List.copyOf(all), together);
  }

  /** Whether a perishable part is to be warmed. */
  static boolean warmsPerishables(StageMix mix, List<Lever> levers) {
    List<String> perishable =
        mix.movables().stream().filter(Movable::perishable).map(m -> m.part.name()).toList();
    for (Lever lever : levers) {
      if (lever instanceof Lever.Temper temper
          && temper.to().compareTo(temper.from()) > 0
          && perishable.contains(temper.what())) {
        return true;
      }
    }
    return false;
  }
}
