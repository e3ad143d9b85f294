package org.tourage.day;

import static org.tourage.quantity.BakeryUnits.CELSIUS;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javax.measure.quantity.Mass;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.formula.Stage;
import org.tourage.formula.StageKind;
import org.tourage.physics.Atmosphere;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;

/**
 * In which order steps can follow one another. What can't be is refused with the number of the
 * step; what is only unwise is advice.
 */
final class StepOrder {
  /** Below this a bath sets no skin on dough; common practice. */
  private static final double COOL_BATH_CELSIUS = 75;

  /** A wash takes 2 % to 5 % of the dough; common practice. */
  private static final double MOST_FINISH = 0.1;

  /** Water that boils has this temperature within so many kelvin, whatever the cook writes. */
  static final double BOILING_WITHIN = 0.5;

  /** What needs a dough that is mixed, and that nobody does to a dough in or after the oven. */
  private static final Set<Action> OF_RAW_DOUGH =
      Set.of(Action.Simple.BULK_RISE, Action.Simple.FOLD_IN_BOWL, Action.Simple.PROOF);

  private static final Set<Action> OF_MIXED_DOUGH =
      Set.of(Action.Simple.SHEET, Action.Simple.CUT, Action.Simple.DIVIDE, Action.Simple.SHAPE);

  private static final Set<Action> COLD =
      Set.of(Action.Simple.CHILL, Action.Simple.RETARD, Action.Simple.TEMPER);

  private StepOrder() {}

  /** Refuses what can't be, whatever the formula is. */
  static void check(List<Step> steps) {
    int mixes = (int) steps.stream().filter(s -> mixesDough(s.action())).count();
    boolean mixed = mixes == 0;
    boolean enclosed = false;
    boolean cut = false;
    boolean boiled = false;
    boolean baked = false;
    for (int i = 0; i < steps.size(); i++) {
      Action action = steps.get(i).action();
      boolean laminates = action instanceof Action.Enclose || action instanceof Action.Turn;
      boolean boils = action instanceof Action.Boil;
      boolean bakes = action instanceof Action.BakeOff;
      boolean raw = laminates || OF_RAW_DOUGH.contains(action);
      boolean worked = raw || OF_MIXED_DOUGH.contains(action);
      String wrong = null;
      String right = "";
      if (bakes && baked) {
        wrong = "it is baked twice";
        right = "write all set points and times into one bake";
      } else if (baked && (mixesDough(action) || raw || boils)) {
        wrong = "this can't come after the bake";
        right = "put it before the bake";
      } else if (mixesDough(action) && mixed && mixes > 0) {
        wrong = "the final dough is mixed twice";
        right = "name the stage that the other one mixes, or call what follows the mix work";
      } else if (!mixed && (worked || boils || bakes)) {
        wrong = "this can't come before the dough is mixed";
        right = "put it after the mix; a preferment ripens, it has no rise of the dough";
      } else if (action instanceof Action.Enclose && enclosed) {
        wrong = "the fat is locked in twice";
        right = "give one lock-in";
      } else if (action instanceof Action.Turn && !enclosed) {
        wrong = "a turn needs a lock-in before it";
        right = "lock in the fat first";
      } else if (laminates && cut) {
        wrong = "what is cut is not folded any more";
        right = "put it before the cut";
      } else if (boils && boiled) {
        wrong = "it is boiled twice";
        right = "give the whole time to one boil";
      } else if (boiled && !baked && (worked || COLD.contains(action))) {
        wrong = "this can't come between the boil and the oven";
        right = "put it before the boil, and bake what is boiled at once";
      }
      if (wrong != null) {
        throw refused(wrong, steps, i, right);
      }
      mixed |= mixesDough(action);
      enclosed |= action instanceof Action.Enclose;
      cut |= action == Action.Simple.CUT;
      boiled |= boils;
      baked |= bakes;
    }
  }

  /** Refuses a stage that the formula has not, and one that is ready only after it is needed. */
  static void check(List<Step> steps, Formula formula) {
    List<Stage> stages = formula.stages();
    List<Stage> before = new ArrayList<>();
    for (int i = 0; i < steps.size(); i++) {
      Action action = steps.get(i).action();
      String name = stageOf(action);
      if (name == null && !mixesDough(action)) {
        continue;
      }
      Optional<Stage> stage =
          stages.stream()
              .filter(
                  s ->
                      name == null
                          ? s.kind() == StageKind.FINAL_DOUGH
                          : s.name().equalsIgnoreCase(name))
              .findFirst();
      if (stage.isEmpty() && name != null) {
        throw BakeryException.unknownName(
            "the step \"" + steps.get(i).name() + "\" names no stage of the formula",
            name,
            stages.stream().map(Stage::name).toList());
      }
      if (stage.isEmpty()) {
        continue;
      }
      Stage here = stage.get();
      if (name != null && here.kind() == StageKind.FINAL_DOUGH) {
        throw refused(
            "the final dough is no part mix", steps, i, "mix the dough without naming a stage");
      }
      for (Stage earlier : before) {
        if (earlier.takes().stream().anyMatch(here.name()::equalsIgnoreCase)) {
          throw refused(
              here.name() + " has gone into " + earlier.name() + " before",
              steps,
              i,
              "put it before the step that mixes " + earlier.name());
        }
        if (action instanceof Action.Mix && earlier.equals(here)) {
          throw refused(
              here.name() + " is mixed after it has been mixed or has ripened",
              steps,
              i,
              "mix it once, before it ripens");
        }
      }
      before.add(here);
    }
  }

  /** Refuses a bath that is hotter than water can be in this kitchen. */
  static void check(List<Step> steps, Kitchen kitchen) {
    for (int i = 0; i < steps.size(); i++) {
      if (steps.get(i).action() instanceof Action.Boil boil && boil.water() != null) {
        double most = Atmosphere.boiling(kitchen.altitude()).in(CELSIUS);
        if (boil.water().in(CELSIUS) > most + BOILING_WITHIN) {
          throw new BakeryException(
              Reason.OUT_OF_RANGE,
              "no bath is so hot: water boils at "
                  + AmountFormat.sideBySide().temperature(CELSIUS.amount(most))
                  + " at this altitude",
              number(steps, i) + " in " + AmountFormat.sideBySide().temperature(boil.water()),
              "leave the temperature out where the water boils");
        }
      }
    }
  }

  /** What is unwise. */
  static List<Advice> advice(Procedure procedure, Batch batch) {
    List<Advice> advice = new ArrayList<>();
    List<Step> steps = procedure.steps();
    Formula formula = batch.formula();
    Amount<Mass> finish = batch.total().subtract(batch.dough()).subtract(batch.filling());
    boolean before =
        steps.subList(0, procedure.baking()).stream()
            .anyMatch(s -> s.action() == Action.Simple.GLAZE);
    if (before && procedure.oven().isPresent() && finish.ratioTo(batch.dough()) > MOST_FINISH) {
      advice.add(
          Advice.of(
              "FINISH_HEAVY",
              "a finish of "
                  + AmountFormat.sideBySide().mass(finish)
                  + " is more than a wash; none of it is in the mass and the bake of the pieces",
              "Put what goes into the oven under filling, and leave what goes on afterwards"));
    }
    if (procedure.mixing() < 0) {
      advice.add(
          Advice.of(
              "NO_MIX",
              "no step mixes the dough: its rise is counted from the first step, and its water is"
                  + " not worked",
              "Give a step that mixes it, with the wanted temperature"));
    }
    boolean locksIn = steps.stream().anyMatch(s -> s.action() instanceof Action.Enclose);
    if (locksIn && !formula.has(StageKind.ROLL_IN)) {
      advice.add(
          Advice.of(
              "NO_ROLL_IN",
              "a step locks in fat, but the formula rolls none in",
              "Give a roll-in stage, or leave lock-in and turns out"));
    }
    for (int i = 0; i < steps.size(); i++) {
      Action action = steps.get(i).action();
      if (action == Action.Simple.COOL
          && i < procedure.baking()
          && procedure.baking() < steps.size()
          && procedure.boil().isEmpty()) {
        advice.add(
            Advice.of(
                "COOL_BEFORE_BAKE",
                number(steps, i) + " cools before the bake: it is worked as a rest in its place",
                "Put it after the bake, or write a rest or a chill"));
      }
      if (action instanceof Action.Boil boil
          && boil.water() != null
          && boil.water().in(CELSIUS) < COOL_BATH_CELSIUS) {
        advice.add(
            Advice.of(
                "BATH_COOL",
                number(steps, i)
                    + ": water of "
                    + AmountFormat.sideBySide().temperature(boil.water())
                    + " sets no skin on the dough",
                "Let it boil, or at least simmer; a cold dip in lye only colours"));
      }
    }
    return advice;
  }

  /** {@code step 3 "turn: 10 min"}. */
  private static String number(List<Step> steps, int i) {
    return "step " + (i + 1) + " \"" + steps.get(i) + "\"";
  }

  private static BakeryException refused(String problem, List<Step> steps, int i, String expected) {
    return new BakeryException(Reason.INCONSISTENT, problem, number(steps, i), expected);
  }

  private static boolean mixesDough(Action action) {
    return action instanceof Action.Mix mix && mix.stage() == null;
  }

  /** The stage that a step mixes or ripens; none for the final dough and all other steps. */
  static @Nullable String stageOf(Action action) {
    return action instanceof Action.Ripen ripening
        ? ripening.stage()
        : action instanceof Action.Mix mixing ? mixing.stage() : null;
  }
}
