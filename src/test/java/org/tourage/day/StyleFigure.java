package org.tourage.day;

import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.HOUR;
import static org.tourage.quantity.BakeryUnits.METRE;
import static org.tourage.quantity.BakeryUnits.MILLIMETRE;
import static org.tourage.quantity.BakeryUnits.MINUTE;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.List;
import java.util.function.Predicate;
import org.tourage.formula.Formula;
import org.tourage.formula.Line;
import org.tourage.formula.StageKind;
import org.tourage.ingredient.Role;
import org.tourage.lamination.LaminationPlan;
import org.tourage.oven.Bake;
import org.tourage.oven.OvenProfile;
import org.tourage.physics.Atmosphere;
import org.tourage.quantity.Amounts;

/** The figures that the windows of the styles speak of, taken from a day. */
final class StyleFigure {
  private static final double SECONDS = 60;
  private static final double HUNDRED = 100;

  private StyleFigure() {}

  static double of(BakeDay day, String figure) {
    Formula formula = day.batch().formula();
    return switch (figure) {
      case "piece" -> day.scalingWeight().add(day.fillingWeight()).in(GRAM);
      case "dough of the piece" -> day.scalingWeight().in(GRAM);
      case "first set point" -> oven(day).get(0).setPoint().in(CELSIUS);
      case "last set point" -> oven(day).get(oven(day).size() - 1).setPoint().in(CELSIUS);
      case "oven steps" -> oven(day).size();
      case "steam" -> oven(day).stream().filter(s -> s.damp() == OvenProfile.Damp.STEAM).count();
      case "bake" -> day.bake().get().time().in(MINUTE);
      case "core" -> end(day).core().in(CELSIUS);
      case "loss" -> end(day).loss().in(PERCENT);
      case "core of 93 °C" ->
          day.bake()
              .get()
              .bake()
              .coreReaches(Amounts.celsius(93))
              .map(t -> HUNDRED * t.in(MINUTE) / day.bake().get().time().in(MINUTE))
              .orElse(Double.POSITIVE_INFINITY);
      case "core below boiling" ->
          Atmosphere.boiling(day.plan().kitchen().altitude()).in(CELSIUS)
              - end(day).core().in(CELSIUS);
      case "done" -> day.bake().get().bake().isDone() ? 1 : 0;
      case "altitude" -> day.plan().kitchen().altitude().in(METRE);
      case "roll length" -> roll(day);
      case "disc" -> forms(day, Form.Disc.class).get(0).diameter().in(MILLIMETRE) / 10;
      case "tin" -> forms(day, Form.Tin.class).stream().distinct().count();
      case "ring" -> forms(day, Form.Ring.class).stream().distinct().count();
      case "coil" -> forms(day, Form.Coil.class).stream().distinct().count();
      case "boil" -> step(day, a -> a instanceof Action.Boil).time().high().in(MINUTE) * SECONDS;
      case "cold hours" -> step(day, a -> a == Action.Simple.RETARD).time().high().in(HOUR);
      case "stages" -> formula.stages().stream().filter(s -> s.kind().inDough()).count();
      default -> recipe(day, formula, figure);
    };
  }

  private static double recipe(BakeDay day, Formula formula, String figure) {
    return switch (figure) {
      case "water" -> share(formula, l -> l.ingredient().id().equals("water"));
      case "salt" -> share(formula, l -> l.ingredient().is(Role.SALT));
      case "yeast" -> formula.percent(Role.YEAST).in(PERCENT);
      case "fat" -> formula.percent(Role.FAT, StageKind::inDough).in(PERCENT);
      case "liquid" ->
          formula.percent(Role.LIQUID).in(PERCENT) + formula.percent(Role.EGG).in(PERCENT);
      case "baking powder" -> share(formula, l -> l.ingredient().name().endsWith("baking powder"));
      case "baking soda" -> share(formula, l -> l.ingredient().name().equals("baking soda"));
      case "rye" -> share(formula, l -> l.isFlour() && l.ingredient().name().contains("rye"));
      case "starch of the flour base" ->
          share(formula, l -> l.isFlour() && l.ingredient().is(Role.STARCH));
      case "fermented flour" -> formula.prefermentedFlour().in(PERCENT);
      case "tempered water" ->
          formula
              .percent(formula.ingredient("water"), day.water().get().mix().stageName())
              .in(PERCENT);
      case "ripe stages that are not tempered" -> day.water().get().mix().readyStages().size();
      case "levers" -> day.water().get().levers().size();
      case "yeast of the poolish" -> day.batch().massOf("instant yeast", "Poolish").in(GRAM);
      case "yeast of the poolish, weighed by needed" -> {
        double needed =
            formula.percent(formula.ingredient("instant yeast"), "Poolish").in(PERCENT)
                / HUNDRED
                * day.batch().flour().in(GRAM);
        yield day.batch().massOf("instant yeast", "Poolish").in(GRAM) / needed;
      }
      default -> sheet(day, formula, figure);
    };
  }

  private static double sheet(BakeDay day, Formula formula, String figure) {
    LaminationPlan plan = day.lamination().get();
    return switch (figure) {
      case "fat layers" -> plan.sequence().fatLayers().doubleValue();
      case "sheet" -> plan.setup().finalThickness().in(MILLIMETRE);
      case "length by base" ->
          day.cutting().get().height().in(MILLIMETRE) / day.cutting().get().base().in(MILLIMETRE);
      case "fat plate" -> plan.blockThickness().in(MILLIMETRE);
      // where the fat lies outside, the dough is the block and the fat is the sheet
      case "fat sheet" -> plan.sheetThickness().in(MILLIMETRE);
      case "flour by fat of the roll-in" -> {
        Predicate<StageKind> rollIn = kind -> kind == StageKind.ROLL_IN;
        yield HUNDRED
            * formula.percent(Role.FLOUR, rollIn).in(PERCENT)
            / formula.percent(Role.FAT, rollIn).in(PERCENT);
      }
      case "largest reduction of a pass" ->
          plan.rolling().stream()
              .flatMapToDouble(
                  r ->
                      reductions(r.from().in(MILLIMETRE), gaps(r)).stream()
                          .mapToDouble(Double::doubleValue))
              .max()
              .orElseThrow();
      case "folded at" -> plan.setup().foldThickness().in(MILLIMETRE);
      case "thickest under the rollers" ->
          plan.rolling().stream().mapToDouble(r -> r.from().in(MILLIMETRE)).max().orElseThrow();
      default -> throw new AssertionError("no figure \"" + figure + "\"");
    };
  }

  private static List<Double> gaps(org.tourage.lamination.RollingSchedule rolling) {
    return rolling.passes().stream().map(p -> p.gap().in(MILLIMETRE)).toList();
  }

  private static List<Double> reductions(double from, List<Double> gaps) {
    List<Double> reductions = new java.util.ArrayList<>();
    double before = from;
    for (double gap : gaps) {
      reductions.add(HUNDRED * (1 - gap / before));
      before = gap;
    }
    return reductions;
  }

  private static double share(Formula formula, Predicate<Line> wanted) {
    return formula.overall().stream()
        .filter(wanted)
        .mapToDouble(l -> l.percent().in(PERCENT))
        .sum();
  }

  private static List<OvenProfile.Step> oven(BakeDay day) {
    return day.bake().get().bake().profile().steps();
  }

  private static Bake.Look end(BakeDay day) {
    return day.bake().get().bake().end();
  }

  /** The length of the last roll, cm. */
  private static double roll(BakeDay day) {
    List<Form.Roll> rolls = forms(day, Form.Roll.class);
    Form.Roll last = rolls.get(rolls.size() - 1);
    return java.util.Objects.requireNonNull(last.length()).in(MILLIMETRE) / 10;
  }

  private static <F extends Form> List<F> forms(BakeDay day, Class<F> kind) {
    return day.plan().order().product().procedure().steps().stream()
        .flatMap(s -> s.form().stream())
        .filter(kind::isInstance)
        .map(kind::cast)
        .toList();
  }

  private static Step step(BakeDay day, Predicate<Action> wanted) {
    return day.plan().order().product().procedure().steps().stream()
        .filter(s -> wanted.test(s.action()))
        .findFirst()
        .orElseThrow();
  }
}
