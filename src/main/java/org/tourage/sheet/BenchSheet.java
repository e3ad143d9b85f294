package org.tourage.sheet;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.measure.quantity.Temperature;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.day.BakeDay;
import org.tourage.day.Baking;
import org.tourage.day.Kitchen;
import org.tourage.day.Part;
import org.tourage.doughtemperature.WaterPlan;
import org.tourage.fermentation.RiseHistory;
import org.tourage.formula.Batch;
import org.tourage.formula.HouseholdRecipe;
import org.tourage.internal.Numbers;
import org.tourage.internal.TextTable;
import org.tourage.lamination.LaminationPlan;
import org.tourage.lamination.LaminationStep;
import org.tourage.lamination.RollingSchedule;
import org.tourage.lamination.Workability;
import org.tourage.makeup.CuttingPlan;
import org.tourage.oven.OvenProfile;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.BakeryUnits;
import org.tourage.quantity.Extent;
import org.tourage.substitution.Substitution;

/**
 * The bench sheet of a day as text: what is needed first stands first. It prints what the day has
 * worked, and calculates nothing.
 *
 * <pre>{@code
 * System.out.print(BenchSheet.of(day, AmountFormat.sideBySide()));
 * }</pre>
 */
public final class BenchSheet implements Serializable {
  private static final long serialVersionUID = 1L;

  /** Less ice than this is no ice: the water from the tap is let run. */
  private static final double TRIFLE = 0.03;

  private static final int MOST_NUMBERS = 12;
  private static final double JOULES_PER_KILOWATT_HOUR = 3.6e6;

  private final BakeDay day;
  private final AmountFormat format;

  private BenchSheet(BakeDay day, AmountFormat format) {
    this.day = requireNonNull(day, "day");
    this.format = requireNonNull(format, "format");
  }

  /**
   * The sheet of a day.
   *
   * @param day the day
   * @param format the units that are printed
   * @return the sheet
   */
  public static BenchSheet of(BakeDay day, AmountFormat format) {
    return new BenchSheet(day, format);
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof BenchSheet that && day.equals(that.day) && format.equals(that.format);
  }

  @Override
  public int hashCode() {
    return Objects.hash(day, format);
  }

  /** The whole sheet. */
  @Override
  public String toString() {
    SheetText text = new SheetText(day.plan().order().product().name());
    text.section("At a glance", glance());
    day.plan().order().product().recipe().ifPresent(r -> text.section("As given", recipe(r)));
    for (Substitution exchange : day.exchanges()) {
      text.section("Exchanged", exchange(exchange));
    }
    text.section("Weights", weights(day.batch()));
    text.section("Water", part(day.water(), this::water));
    text.section("Timetable", day.timetable().toString().lines().toList());
    text.section("Lamination", part(day.lamination(), this::lamination));
    text.section("On the bench", part(day.workability(), this::workability));
    text.section("Cutting plan", part(day.cutting(), this::cutting));
    text.section("Temperature and rise", part(day.rise(), this::rise));
    text.section("Oven", part(day.bake(), this::oven));
    text.section("Kitchen", kitchen(day.plan().kitchen()));
    text.advice("Safety", day.cautions());
    text.advice("Advice", day.advice());
    return text.toString();
  }

  private <T extends Serializable> List<String> part(
      Part<T> part, java.util.function.Function<T, List<String>> lines) {
    if (part.isThere()) {
      return lines.apply(part.get());
    }
    List<String> why = new ArrayList<>();
    if (part.failed()) {
      part.problem()
          .map(BakeryException::getMessage)
          .ifPresent(message -> SheetText.wrap(why, "not worked: " + message));
    }
    return why;
  }

  private List<String> glance() {
    TextTable table = new TextTable(1);
    if (day.pieces() > 0) {
      table.row("pieces", String.valueOf(day.pieces()));
      table.row("scaling weight, raw", format.mass(day.scalingWeight()));
      if (day.fillingWeight().value() > 0) {
        table.row("filling each", format.mass(day.fillingWeight()));
      }
    }
    table.row("dough", format.mass(day.batch().dough()));
    table.row("flour", format.mass(day.batch().flour()));
    unknownFlour().ifPresent(names -> table.row("unknown flour", names));
    day.water().found().ifPresent(w -> table.row("water", waterInShort(w)));
    table.row("start", day.timetable().start().toString());
    table.row("end", day.timetable().end().toString());
    return table.toString().lines().toList();
  }

  /** A flour of which nothing is known changes every baker's percentage. */
  private Optional<String> unknownFlour() {
    return day.batch().formula().lines().stream()
        .filter(l -> l.isFlour() && l.ingredient().composition().isUnknown())
        .map(l -> l.ingredient().name())
        .distinct()
        .reduce((a, b) -> a + ", " + b)
        .map(names -> names + ", counted as flour: all percentages rest on it");
  }

  private List<String> recipe(HouseholdRecipe recipe) {
    TextTable table = new TextTable(1);
    for (HouseholdRecipe.Item item : recipe.items()) {
      boolean exact = item.weighed().spread().value() == 0;
      table.row(
          item.text(),
          format.mass(item.weighed().mass()),
          exact
              ? ""
              : format.mass(item.weighed().range().low())
                  + " to "
                  + format.mass(item.weighed().range().high()));
    }
    return table.toString().lines().toList();
  }

  private List<String> exchange(Substitution exchange) {
    List<String> lines = new ArrayList<>(exchange.toString().lines().toList());
    lines.addAll(exchange.comparison().lines().toList());
    return lines;
  }

  private List<String> weights(Batch batch) {
    List<String> lines = new ArrayList<>(batch.table(format).lines().skip(1).toList());
    lines.add(batch.formula().hydration().toString());
    batch
        .rounding()
        .ifPresent(
            r ->
                lines.add(
                    "rounded to "
                        + r.steps().stream()
                            .distinct()
                            .sorted()
                            .map(Amount::toString)
                            .collect(Collectors.joining(" and "))
                        + ", total kept; greatest error of a line "
                        + format.percent(r.greatestError())));
    return lines;
  }

  private String waterInShort(WaterPlan plan) {
    String mass = format.mass(plan.mix().freeLiquid()) + " " + plan.mix().freeLiquidName();
    return plan.ice()
        .filter(
            ice -> plan.water().isEmpty() || ice.ice().ratioTo(plan.mix().freeLiquid()) > TRIFLE)
        .map(
            ice ->
                format.mass(ice.ice())
                    + " ice and "
                    + format.mass(ice.water())
                    + " water at "
                    + temperature(ice.waterTemperature()))
        .or(() -> plan.water().map(t -> mass + " at " + temperature(t)))
        .orElse(
            plan.way() == WaterPlan.Way.AS_IT_COMES
                ? "nothing to temper: the dough comes right as it is"
                : plan.mix().freeLiquid().value() == 0
                    ? "no free water: see the levers"
                    : "no water does it alone: see the levers");
  }

  private List<String> water(WaterPlan plan) {
    List<String> lines = new ArrayList<>();
    lines.add(waterInShort(plan) + ", for dough at " + temperature(plan.dough()));
    plan.tap()
        .filter(tap -> plan.mix().freeLiquidIsWater())
        .ifPresent(tap -> lines.add("tap water " + temperature(tap)));
    plan.mix()
        .readyStages()
        .forEach(r -> lines.add(r.name() + " goes in whole at " + temperature(r.temperature())));
    plan.mix()
        .ingredients()
        .forEach(
            r ->
                lines.add(
                    plan.mix().batch().formula().ingredient(r.name()).name()
                        + " goes in at "
                        + temperature(r.temperature())));
    lines.add("mixer: " + plan.heat());
    plan.rule()
        .ifPresent(
            rule ->
                lines.add(
                    "factor rule beside it: "
                        + rule
                        + ", "
                        + rule.working().lines().get(0).numbers()));
    plan.comparison().filter(c -> c.differs()).ifPresent(c -> SheetText.wrap(lines, c.toString()));
    for (int i = 0; i < plan.levers().size(); i++) {
      // the other levers come on top of the liquid at its limit
      boolean onTop = i > 0 && plan.mix().freeLiquid().value() > 0;
      lines.add((onTop ? "lever, with that: " : "lever: ") + plan.levers().get(i));
    }
    return lines;
  }

  private List<String> workability(Workability bench) {
    return bench.toString().lines().toList();
  }

  private List<String> lamination(LaminationPlan plan) {
    List<String> lines = new ArrayList<>();
    boolean outside = plan.sequence().lockIn().fatOutside();
    lines.add(plan.sequence().toString());
    lines.add(plan.sequence().lockIn().words());
    lines.add(
        (outside ? "dough block " : "fat block ")
            + extent(plan.block())
            + ", "
            + format.length(plan.blockThickness())
            + " thick");
    lines.add(
        (outside ? "fat sheet " : "dough sheet ")
            + extent(plan.sheet())
            + ", "
            + format.length(plan.sheetThickness())
            + " thick");
    lines.add(
        "fat is "
            + format.percent(plan.fatByDough())
            + " of the dough, "
            + format.percent(plan.fatByVolume())
            + " of the volume");
    TextTable table = new TextTable(1);
    table.row(
        "step", "length x width", "thick", "fat layers", "each fat layer", "each dough layer");
    for (LaminationStep step : plan.steps()) {
      LaminationStep.Sheet after = step.after();
      table.row(
          step.action(),
          extent(after.extent()),
          format.length(after.thickness()),
          after.fatLayers().toString(),
          format.length(after.fatLayer()),
          format.length(after.doughLayer()));
    }
    lines.addAll(table.toString().lines().toList());
    int number = 1;
    for (RollingSchedule schedule : plan.rolling()) {
      lines.add(
          "rolling "
              + number++
              + ", to and fro: from "
              + format.length(schedule.from())
              + schedule.passes().stream()
                  .map(p -> " → " + format.length(p.gap()))
                  .collect(Collectors.joining()));
    }
    lines.add(
        "turn by 90° after each fold; rest cold 20 to 30 min between turns (common practice)");
    return lines;
  }

  private String extent(Extent extent) {
    return format.length(extent.length()) + " x " + format.length(extent.width());
  }

  private List<String> cutting(CuttingPlan plan) {
    List<String> lines = new ArrayList<>();
    lines.add(
        "sheet "
            + extent(plan.sheet())
            + ", trim "
            + format.length(plan.trim())
            + " off each edge");
    lines.add(plan.describe(format));
    lines.addAll(plan.cuts(format));
    lines.add("corners of the first pieces: " + plan.outlines().get(0));
    if (plan.pieces() > 1) {
      lines.add("                             " + plan.outlines().get(1));
    }
    lines.add(
        "each piece "
            + format.mass(day.scalingWeight())
            + ", trim and ends "
            + format.mass(day.trim())
            + ", yield "
            + format.percent(plan.sheetYield()));
    return lines;
  }

  private List<String> rise(RiseHistory history) {
    List<String> lines = new ArrayList<>();
    if (history.stages().isEmpty()) {
      return lines;
    }
    if (day.ferments()) {
      lines.add(
          (history.rise().seen() ? "seen: " : "first guess by the yeast: ")
              + history.rise()
              + (day.batch().rollIn().value() > 0
                  ? "; volumes are those of the dough without roll-in"
                  : ""));
    } else {
      lines.add("nothing ferments in this dough: what counts is its temperature");
    }
    lines.addAll(history.table(format).lines().toList());
    if (day.ferments()) {
      for (double growth : List.of(1.5, 2.0)) {
        day.reaches(growth)
            .ifPresent(
                at -> lines.add("grown " + growth + " times since it got its last shape on " + at));
      }
    }
    return lines;
  }

  private List<String> oven(Baking baking) {
    List<String> lines = new ArrayList<>();
    int number = 1;
    for (OvenProfile.Step step : baking.bake().profile().steps()) {
      lines.add("step " + number++ + ": " + step);
    }
    lines.add(
        "total "
            + format.time(baking.bake().profile().total())
            + (baking.bake().profile().steps().stream()
                    .allMatch(s -> s.mode() == OvenProfile.Mode.FAN)
                ? ""
                : "; a fan oven 15 to 25 K (27 to 45 °F) lower (common practice)"));
    lines.add(loads(baking));
    Optional<Amount<javax.measure.quantity.Time>> heating = baking.heatingUp();
    lines.add(
        baking.kitchenOven()
            + " heats up in "
            + heating.map(format::time).orElse("no time at all: its power is not enough")
            + "; with all loads it takes about "
            + Numbers.decimals(baking.energy().in(BakeryUnits.JOULE) / JOULES_PER_KILOWATT_HOUR, 1)
            + " kWh");
    lines.add("inside " + baking.bake().piece() + ":");
    lines.addAll(baking.bake().table(format).lines().toList());
    lines.add(baking.bake().doneness());
    return lines;
  }

  private static String loads(Baking baking) {
    int trays = baking.kitchenOven().trays();
    String where = baking.kitchenOven().stone() ? "a place on the stone" : "a tray";
    String fits =
        baking.perTray() + (baking.perTray() == 1 ? " piece fits " : " pieces fit ") + where + "; ";
    if (baking.loads().size() == 1) {
      int pieces = baking.loads().get(0);
      int used = (pieces + baking.perTray() - 1) / baking.perTray();
      return fits
          + "one load of "
          + pieces
          + (pieces == 1 ? " piece" : " pieces")
          + " on "
          + used
          + (used == 1 ? " tray" : " trays");
    }
    return fits
        + baking.loads().size()
        + " loads of "
        + numbers(baking.loads())
        + (trays == 1 ? " on one tray" : " on " + trays + " trays");
  }

  /** All of a few numbers; of many, that of the first and that of the last. */
  private static String numbers(List<Integer> loads) {
    return loads.size() <= MOST_NUMBERS
        ? loads.stream().map(String::valueOf).collect(Collectors.joining(", "))
        : loads.get(0) + ", the last of " + loads.get(loads.size() - 1);
  }

  private List<String> kitchen(Kitchen kitchen) {
    List<String> lines = new ArrayList<>();
    SheetText.wrap(
        lines,
        kitchen.name()
            + ": room "
            + temperature(kitchen.room())
            + ", flour "
            + temperature(kitchen.flour())
            + ", tap "
            + temperature(kitchen.tap())
            + ", refrigerator "
            + temperature(kitchen.refrigerator()));
    if (!kitchen.usual().isEmpty()) {
      SheetText.wrap(
          lines,
          "usual values were taken for "
              + kitchen.usual().stream()
                  .map(Kitchen.Fact::words)
                  .collect(Collectors.joining(", ")));
    }
    return lines;
  }

  private String temperature(Amount<Temperature> value) {
    return format.temperature(value);
  }
}
