package org.tourage.day;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.doughtemperature.WaterPlan;
import org.tourage.fermentation.DoughGas;
import org.tourage.fermentation.OsmoticLoad;
import org.tourage.fermentation.Rise;
import org.tourage.fermentation.RiseHistory;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.formula.Line;
import org.tourage.formula.StageKind;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Origin;
import org.tourage.ingredient.Role;
import org.tourage.ingredient.YeastForm;
import org.tourage.label.AllergenSummary;
import org.tourage.label.KitchenCautions;
import org.tourage.lamination.FatCurve;
import org.tourage.lamination.Workability;
import org.tourage.oven.DoughKind;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Amounts;
import org.tourage.substitution.Exchange;
import org.tourage.substitution.Exchanges;
import org.tourage.substitution.PlantBased;
import org.tourage.substitution.Substitution;

/** Works a plan through, part by part. */
final class DayWork {
  /** So little yeast that a dough without leavening keeps its volume. */
  private static final Amount<Dimensionless> NOTHING_RISES = Amounts.percent(1e-9);

  private final DayPlan plan;
  private final Kitchen kitchen;
  private final Product product;
  private final Set<Advice> advice = new LinkedHashSet<>();

  DayWork(DayPlan plan) {
    this.plan = plan;
    this.kitchen = plan.kitchen();
    this.product = plan.order().product();
  }

  /** What the work gives. */
  record Results(
      Batch batch,
      Scaled scaled,
      List<Substitution> exchanges,
      Amount<Mass> trim,
      Part<WaterPlan> water,
      Part<Workability> workability,
      Part<RiseHistory> rise,
      Part<Baking> bake,
      boolean ferments,
      Timetable timetable,
      List<Advice> advice)
      implements Serializable {}

  Results work() {
    product.recipe().ifPresent(r -> advice.addAll(r.advice()));
    List<Substitution> exchanges = new ArrayList<>();
    Batch wanted = exchange(product.given(), exchanges::add);
    Formula formula = wanted.formula();
    Scaling scaling = new Scaling(kitchen, plan.order());
    Scaled scaled = scaling.scale(wanted);
    advice.addAll(scaling.advice());
    Batch batch = rounded(scaled.batch());
    boolean puff = product.procedure().folds().isPresent() && !ferments(formula);
    DoughKind kind = product.kind().orElseGet(() -> OvenWork.kind(formula));
    boolean wet = kind == DoughKind.BATTER || kind == DoughKind.GLUTEN_FREE;
    batch.advice().stream()
        .filter(a -> !puff || !a.code().equals("NO_LEAVENING"))
        .filter(a -> !wet || !a.code().equals("HYDRATION_UNUSUAL"))
        .forEach(advice::add);
    DoughCourse course = new DoughCourse(kitchen, product.procedure(), scaled);
    RipeStages ripe = new RipeStages(kitchen, product, batch, course);
    WaterWork waterWork = new WaterWork(kitchen, product, batch, ripe);
    Part<WaterPlan> water = waterWork.work();
    water.found().ifPresent(w -> advice.addAll(w.advice()));
    Part<Workability> workability = workability(scaled, batch);
    Part<RiseHistory> rise =
        Part.worked(() -> rise(formula, water, waterWork)).then(course::history);
    Part<Baking> bake =
        product
            .procedure()
            .oven()
            .map(
                profile ->
                    Part.worked(
                        () ->
                            new OvenWork(
                                    kitchen, product, scaled, course, rise.found().orElse(null))
                                .of(profile)))
            .orElseGet(() -> Part.notAsked("nothing is baked", "give a step that bakes"));
    Timetable timetable = Timetabling.of(plan.order(), bake.found().orElse(null));
    advice.addAll(Timetabling.advice(timetable));
    collect(formula, scaled, course, rise, bake);
    warmHold(formula, ripe, rise);
    return new Results(
        batch,
        scaled,
        List.copyOf(exchanges),
        scaled.trim(),
        water,
        workability,
        rise,
        bake,
        ferments(formula),
        timetable,
        List.copyOf(advice));
  }

  /** Weighed on the balances of the kitchen: a gram of yeast on the fine one. */
  private Batch rounded(Batch exact) {
    Amount<Mass> step = kitchen.balance().step();
    return kitchen
        .fineBalance()
        .map(fine -> exact.rounded(step, fine.step(), fine.most().orElse(exact.total())))
        .orElseGet(() -> exact.rounded(step));
  }

  private void collect(
      Formula formula,
      Scaled scaled,
      DoughCourse course,
      Part<RiseHistory> rise,
      Part<Baking> bake) {
    scaled
        .lamination()
        .found()
        .ifPresent(
            p -> {
              advice.addAll(p.advice());
              kitchen.benchSize().ifPresent(size -> advice.addAll(p.fitting(size)));
            });
    scaled.cutting().found().ifPresent(c -> advice.addAll(c.advice()));
    rise.found()
        .ifPresent(
            r -> {
              if (ferments(formula)) {
                advice.addAll(r.advice());
                advice.addAll(OsmoticLoad.of(formula).advice());
              }
              advice.addAll(DayChecks.of(course.legs(), r, fat()));
            });
    bake.found()
        .ifPresent(
            b -> {
              advice.addAll(b.advice());
              product.kill().ifPresent(k -> advice.addAll(k.advice(b.bake().coreHistory())));
            });
    boolean plants = plan.plantBased() || standsForDairy(formula);
    AllergenSummary.of(formula).advice().stream()
        .filter(a -> plants || !a.code().equals("PLANT_BASED_IS_NO_CLAIM"))
        .forEach(advice::add);
    advice.addAll(KitchenCautions.of(formula));
    advice.addAll(StepOrder.advice(product.procedure(), scaled.batch()));
    if (product.procedure().boil().isPresent()) {
      advice.add(KitchenCautions.kettle());
    }
    product.procedure().steps().stream()
        .map(step -> KitchenCautions.lye(step.name()))
        .filter(caution -> !caution.isEmpty())
        .limit(1)
        .forEach(advice::addAll);
    if (scaled.trim().value() > 0) {
      advice.add(KitchenCautions.trim());
    }
  }

  /** The milk of a soaker has stood before it gets into the dough, and stands on in it. */
  private void warmHold(Formula formula, RipeStages ripe, Part<RiseHistory> rise) {
    RipeStages.Ripe before = ripe.heldBefore();
    boolean stood = before.warm().value() > 0;
    rise.found()
        .ifPresentOrElse(
            r -> {
              Amount<Temperature> warmest =
                  stood && before.warmest().compareTo(r.warmest()) > 0
                      ? before.warmest()
                      : r.warmest();
              advice.addAll(
                  KitchenCautions.warmHold(
                      formula,
                      before.warm().add(r.above(RipeStages.HELD_COLD)),
                      stood ? before.start() : r.start(),
                      warmest));
            },
            () -> {
              if (stood) {
                advice.addAll(KitchenCautions.warmHold(formula, before.warm()));
              }
            });
  }

  /** Whether something in it is sold in place of butter or milk. */
  private static boolean standsForDairy(Formula formula) {
    return formula.lines().stream()
        .map(Line::ingredient)
        .anyMatch(
            i ->
                (i.is(Role.FAT) && i.origin() == Origin.CHECK_LABEL)
                    || (i.is(Role.LIQUID) && i.id().contains("drink")));
  }

  /** All that is swapped goes at once, then what is of animals; each keeps the flour. */
  private Batch exchange(Batch given, Consumer<Substitution> made) {
    Formula formula = given.formula();
    Exchanges swaps =
        Exchanges.of(formula, plan.swaps().stream().map(s -> wanted(formula, s)).toList());
    swaps.parts().forEach(made);
    advice.addAll(swaps.advice());
    Formula now = swaps.after();
    if (plan.plantBased()) {
      PlantBased next = PlantBased.of(now);
      made.accept(next);
      advice.addAll(next.advice());
      now = next.after();
    }
    return now.forFlour(given.flour());
  }

  private static Exchange wanted(Formula formula, DayPlan.Swap swap) {
    Role role =
        switch (swap.kind()) {
          case FLOUR -> Role.FLOUR;
          case FAT -> Role.FAT;
          case LIQUID -> Role.LIQUID;
        };
    return Exchange.of(swap.named().orElseGet(() -> first(formula, role, swap.to())), swap.to());
  }

  private static Ingredient first(Formula formula, Role role, Ingredient to) {
    return formula.lines().stream()
        .filter(l -> role == Role.FLOUR ? l.isFlour() : l.ingredient().is(role))
        .map(Line::ingredient)
        .filter(i -> !i.id().equals("water"))
        .findFirst()
        .orElseThrow(
            () ->
                new BakeryException(
                    Reason.MISSING,
                    "the recipe has nothing that could be replaced",
                    "by " + to.name(),
                    "name what is to go"));
  }

  private Optional<FatCurve> fat() {
    return product.makeUp() instanceof MakeUp.FromSheet sheet ? sheet.fat() : Optional.empty();
  }

  /** The rise before its first stage: as it was seen, or as the trade guesses from the yeast. */
  private RiseHistory rise(Formula formula, Part<WaterPlan> water, WaterWork waterWork) {
    Amount<Temperature> mixed =
        water
            .found()
            .map(WaterPlan::dough)
            .or(() -> WaterWork.target(product.procedure()))
            .orElseGet(waterWork::untempered);
    DoughGas gas =
        DoughGas.of(formula.constituents(StageKind::inDough), mixed).atAltitude(kitchen.altitude());
    Rise rise =
        product
            .seenRise()
            .map(s -> Rise.observed(gas, product.rate(), s.growth(), s.time(), s.temperature()))
            .orElseGet(() -> Rise.firstGuess(gas, product.rate(), leavening(formula)));
    return RiseHistory.start(rise, mixed);
  }

  private Part<Workability> workability(Scaled scaled, Batch batch) {
    Optional<FatCurve> curve = fat();
    if (curve.isEmpty()) {
      return Part.notAsked(
          "nothing is said of the time on the bench",
          "give the solid-fat curve of the roll-in fat");
    }
    Part<Workability> workability =
        scaled
            .lamination()
            .then(
                p ->
                    Workability.of(
                        p,
                        batch,
                        curve.get(),
                        kitchen.refrigerator(),
                        kitchen.room(),
                        kitchen.bench()));
    workability.found().ifPresent(w -> advice.addAll(w.advice()));
    return workability;
  }

  /** Yeast counted as fresh yeast; next to nothing where nothing raises the dough. */
  private static Amount<Dimensionless> leavening(Formula formula) {
    double percent = 0;
    for (Line line : formula.overall()) {
      double share = line.percent().value();
      percent += YeastForm.of(line.ingredient()).map(form -> share / form.perFresh()).orElse(0.0);
    }
    if (percent > 0) {
      return Amounts.percent(percent);
    }
    if (formula.has(StageKind.PREFERMENT)) {
      throw new BakeryException(
          Reason.MISSING,
          "the rise is not worked",
          "the dough rises by its levain alone, and no rise was seen",
          "say what you saw, for example rise: doubled in 4 h at 25 °C");
    }
    return NOTHING_RISES;
  }

  /** Whether anything ferments in the dough. */
  private boolean ferments(Formula formula) {
    return product.seenRise().isPresent()
        || formula.has(StageKind.PREFERMENT)
        || formula.has(Role.YEAST);
  }
}
