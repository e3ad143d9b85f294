package org.tourage.doughtemperature;

import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.KILOGRAM;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import org.tourage.advice.BakeryException;
import org.tourage.formula.Line;
import org.tourage.formula.Stage;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;
import org.tourage.ingredient.YeastForm;
import org.tourage.physics.ChoiOkos1986;
import org.tourage.physics.Constituents;
import org.tourage.quantity.Amount;

/** Sorts what goes into a stage: free liquid, lines, stages that come in whole, bowl. */
record StageParts(StageMix mix) {
  /** From this share of water on a liquid counts as water, not as a drink. */
  private static final double WATER_SHARE = 0.99;

  /** Up to this share the water of a food is bound and does not freeze in a freezer. */
  private static final double BOUND_WATER = 0.25;

  /** Specific heat of steel, J/(kg·K): common handbook value (from memory). */
  private static final double STEEL_SPECIFIC_HEAT = 480;

  /** A line of a stage with its mass. */
  record Weighed(Line line, Amount<Mass> mass) {}

  /** The lines of a stage that have a mass. */
  private List<Weighed> lines(Stage wanted) {
    List<Weighed> weighed = new ArrayList<>();
    int index = 0;
    for (Stage stage : mix.batch().formula().stages()) {
      for (Line line : stage.lines()) {
        int place = index++;
        // the name is unique, and quicker to compare than the lines
        if (stage.name().equals(wanted.name())) {
          Amount<Mass> mass = mix.batch().weight(place);
          if (mass.value() > 0) {
            weighed.add(new Weighed(line, mass));
          }
        }
      }
    }
    return weighed;
  }

  /** The lines of a stage and of all that it takes. */
  private List<Weighed> wholeLines(Stage stage) {
    List<Weighed> weighed = new ArrayList<>(lines(stage));
    for (String name : stage.takes()) {
      weighed.addAll(wholeLines(mix.batch().formula().stage(name)));
    }
    return weighed;
  }

  private static double specificHeat(Constituents food) {
    return ChoiOkos1986.specificHeat(food, CELSIUS.amount(20));
  }

  private List<Weighed> free() {
    List<Weighed> drinks = new ArrayList<>();
    for (Weighed weighed : lines(mix.stage())) {
      Ingredient ingredient = weighed.line().ingredient();
      if (ingredient.is(Role.LIQUID) && mix.ofIngredient(ingredient).isEmpty()) {
        drinks.add(weighed);
      }
    }
    List<Weighed> water = drinks.stream().filter(w -> isWater(w.line().ingredient())).toList();
    return water.isEmpty() ? drinks : water;
  }

  /** Water, as against milk and other drinks. */
  static boolean isWater(Ingredient ingredient) {
    Constituents food = ingredient.composition().constituents();
    return ingredient.is(Role.LIQUID) && food.water() / food.sum() >= WATER_SHARE;
  }

  /** Checks that what has a stated temperature goes into the stage. */
  static void check(
      Stage stage, List<StageMix.Reading> readyStages, List<StageMix.Reading> ingredients) {
    for (StageMix.Reading reading : readyStages) {
      if (!stage.takes().contains(reading.name())) {
        throw BakeryException.unknownName(
            "no such stage goes into " + stage.name(), reading.name(), stage.takes());
      }
    }
    for (StageMix.Reading reading : ingredients) {
      checkIngredient(stage, reading);
    }
  }

  private static void checkIngredient(Stage stage, StageMix.Reading reading) {
    for (Line line : stage.lines()) {
      if (line.ingredient().id().equals(reading.name())) {
        if (StageParts.isWater(line.ingredient())) {
          Readings.liquid("water", reading.temperature());
        }
        return;
      }
    }
    throw BakeryException.unknownName(
        "nothing of it is weighed into " + stage.name(),
        reading.name(),
        stage.lines().stream().map(l -> l.ingredient().name()).toList());
  }

  double freeKilograms() {
    double sum = 0;
    for (Weighed weighed : free()) {
      sum += weighed.mass().in(KILOGRAM);
    }
    return sum;
  }

  String freeName() {
    return free().stream()
        .map(w -> w.line().ingredient().name())
        .distinct()
        .collect(Collectors.joining(" and "));
  }

  boolean freeIsWater() {
    List<Weighed> free = free();
    return !free.isEmpty() && isWater(free.get(0).line().ingredient());
  }

  /** The parts with the temperatures that they can be brought to. */
  List<Levers.Movable> movables() {
    List<Levers.Movable> parts = new ArrayList<>();
    List<Weighed> free = free();
    for (Weighed weighed : lines(mix.stage())) {
      if (!free.contains(weighed)) {
        Ingredient ingredient = weighed.line().ingredient();
        Constituents food = ingredient.composition().constituents();
        Amount<Temperature> temperature =
            mix.ofIngredient(ingredient)
                .orElse(weighed.line().isFlour() ? mix.flour() : mix.room());
        parts.add(
            Levers.movable(
                part(ingredient.name(), weighed.mass(), temperature, food, freezes(ingredient)),
                ingredient,
                freezes(ingredient)));
      }
    }
    for (String name : mix.stage().takes()) {
      List<Weighed> whole = wholeLines(mix.batch().formula().stage(name));
      Amount<Mass> mass = mix.batch().wholeWeightOf(mix.batch().formula().stage(name));
      if (mass.value() > 0) {
        MixPart part = part(name, mass, mix.ofStage(name), constituents(whole), true);
        parts.add(Levers.movableStage(part));
      }
    }
    if (mix.bowl().value() > 0) {
      parts.add(
          Levers.movableBowl(MixPart.of("bowl", mix.bowl(), mix.room(), STEEL_SPECIFIC_HEAT)));
    }
    return parts;
  }

  private static MixPart part(
      String name,
      Amount<Mass> mass,
      Amount<Temperature> temperature,
      Constituents food,
      boolean freezes) {
    return freezes && temperature.in(CELSIUS) < 0
        ? MixPart.frozen(name, mass, temperature, food)
        : MixPart.of(name, mass, temperature, specificHeat(food));
  }

  private static boolean freezes(Ingredient ingredient) {
    Constituents food = ingredient.composition().constituents();
    boolean wet = food.water() / food.sum() > BOUND_WATER && !ingredient.is(Role.SUGAR);
    return wet || ingredient.is(Role.FAT);
  }

  private static Constituents constituents(List<Weighed> lines) {
    double[] sum = new double[6];
    for (Weighed weighed : lines) {
      double mass = weighed.mass().in(KILOGRAM);
      Constituents food = weighed.line().ingredient().composition().constituents();
      // fractions that do not sum to 1 are scaled, as for a single ingredient
      double scale = mass / food.sum();
      sum[0] += scale * food.water();
      sum[1] += scale * food.protein();
      sum[2] += scale * food.fat();
      sum[3] += scale * food.carbohydrate();
      sum[4] += scale * food.fibre();
      sum[5] += scale * food.ash();
    }
    return new Constituents(sum[0], sum[1], sum[2], sum[3], sum[4], sum[5]);
  }

  Mixture mixture(double extraJoules) {
    double liquid = 0;
    double capacity = 0;
    for (Weighed weighed : free()) {
      double mass = weighed.mass().in(KILOGRAM);
      liquid += mass;
      capacity += mass * specificHeat(weighed.line().ingredient().composition().constituents());
    }
    return new Mixture(
        movables().stream().map(Levers.Movable::part).toList(),
        liquid,
        liquid == 0 ? HeatBalance.WATER_SPECIFIC_HEAT : capacity / liquid,
        extraJoules);
  }

  /** The flour that is wetted in this mix: that of ready stages is wet. */
  double dryFlourKilograms() {
    double sum = 0;
    for (Weighed weighed : lines(mix.stage())) {
      sum += weighed.line().isFlour() ? weighed.mass().in(KILOGRAM) : 0;
    }
    return sum;
  }

  List<YeastForm> yeasts() {
    return lines(mix.stage()).stream()
        .flatMap(w -> YeastForm.of(w.line().ingredient()).stream())
        .distinct()
        .toList();
  }
}
