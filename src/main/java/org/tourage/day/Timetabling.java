package org.tourage.day;

import static org.tourage.quantity.BakeryUnits.MINUTE;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.Advice;
import org.tourage.quantity.AmountFormat;

/** Puts the steps of a procedure on the clock: the loads of the oven, and heating it up. */
final class Timetabling {
  private Timetabling() {}

  static Timetable of(Order order, @Nullable Baking baking) {
    List<Timetable.Task> tasks = new ArrayList<>();
    int bakeAt = -1;
    List<Step> steps = order.product().procedure().steps();
    SideBySide sides = sides(order);
    int[] at = new int[steps.size() + 1];
    for (int i = 0; i < steps.size(); i++) {
      Step step = steps.get(i);
      at[i] = tasks.size();
      if (step.action() instanceof Action.BakeOff) {
        bakeAt = tasks.size();
        tasks.addAll(loads(step, baking));
      } else if (sides.inChain(i)) {
        tasks.add(task(step));
      }
    }
    at[steps.size()] = tasks.size();
    DayTime start = order.start();
    DayTime ready = order.ready();
    Timetable table =
        ready == null
            ? Timetable.startingAt(start == null ? Order.USUAL_START : start, tasks)
            : Timetable.endingAt(ready, tasks);
    List<Timetable.Entry> chain = table.entries();
    for (int i = 0; i < steps.size(); i++) {
      if (!sides.inChain(i)) {
        int next = at[sides.anchor(i)];
        DayTime end = next < chain.size() ? chain.get(next).start() : table.end();
        table = table.beside(task(steps.get(i)), end.plusMinutes(-sides.leadMinutes(i)));
      }
    }
    if (baking == null || baking.preheating() == null || bakeAt < 0) {
      return table;
    }
    if (baking.preheating().in(MINUTE) < 1) {
      return table;
    }
    return table.beside(
        Timetable.Task.of("heat the oven", baking.preheating()), chain.get(bakeAt).start());
  }

  private static SideBySide sides(Order order) {
    return SideBySide.of(order.product().procedure(), order.product().given().formula());
  }

  private static Timetable.Task task(Step step) {
    return new Timetable.Task(step.name(), step.time().high(), cue(step));
  }

  /** More loads than this are put on the clock in bundles: nobody reads a thousand lines. */
  private static final int MOST_LINES = 24;

  private static List<Timetable.Task> loads(Step step, @Nullable Baking baking) {
    if (baking == null || baking.loads().size() == 1) {
      return List.of(
          new Timetable.Task(
              step.name(), baking == null ? step.time().high() : baking.time(), cue(step)));
    }
    if (baking.loads().size() > MOST_LINES) {
      return bundles(step, baking);
    }
    List<Timetable.Task> tasks = new ArrayList<>();
    int number = 1;
    for (int pieces : baking.loads()) {
      tasks.add(
          new Timetable.Task(
              step.name()
                  + ", load "
                  + number++
                  + " of "
                  + baking.loads().size()
                  + ", "
                  + pieces
                  + (pieces == 1 ? " piece" : " pieces"),
              baking.time(),
              cue(step)));
    }
    return tasks;
  }

  private static List<Timetable.Task> bundles(Step step, Baking baking) {
    List<Timetable.Task> tasks = new ArrayList<>();
    int all = baking.loads().size();
    int together = (int) Math.floor(Step.LONGEST_MINUTES / baking.time().in(MINUTE));
    for (int from = 0; from < all; from += together) {
      int to = Math.min(all, from + together);
      int most = baking.loads().get(from);
      int last = baking.loads().get(to - 1);
      tasks.add(
          new Timetable.Task(
              step.name()
                  + ", loads "
                  + (from + 1)
                  + " to "
                  + to
                  + " of "
                  + all
                  + ", "
                  + most
                  + (most == 1 ? " piece" : " pieces")
                  + " each"
                  + (last == most ? "" : ", the last " + last),
              baking.time().multiply(to - from),
              cue(step)));
    }
    return tasks;
  }

  private static String cue(Step step) {
    String words = step.cue().words();
    if (step.time().low().compareTo(step.time().high()) == 0) {
      return words;
    }
    String look = "look from " + AmountFormat.metric().time(step.time().low()) + " on";
    return words.isEmpty() ? look : words + "; " + look;
  }

  /** A day that has to start before its first day says so. */
  static List<Advice> advice(Timetable table) {
    if (table.start().day() >= 1) {
      return List.of();
    }
    return List.of(
        Advice.of(
            "STARTS_BEFORE_DAY_1",
            "to be ready on " + table.end() + " the work starts on " + table.start(),
            "Set a later day, or shorten a step"));
  }

  /** When the final dough leaves the mixer. */
  static DayTime mixed(Order order, Timetable table) {
    int mixing = order.product().procedure().mixing();
    List<Timetable.Entry> chain = table.entries().stream().filter(e -> !e.beside()).toList();
    SideBySide sides = sides(order);
    int at = 0;
    for (int i = 0; i < mixing; i++) {
      at += sides.inChain(i) ? 1 : 0;
    }
    return mixing < 0 ? table.start() : chain.get(at).end();
  }
}
