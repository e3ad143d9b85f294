package org.tourage.sheet;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import org.tourage.advice.Advice;
import org.tourage.advice.Severity;
import org.tourage.doughtemperature.FactorRule;
import org.tourage.doughtemperature.HeatBalance;
import org.tourage.fermentation.RiseHistory;
import org.tourage.formula.Batch;
import org.tourage.formula.HouseholdRecipe;
import org.tourage.internal.Numbers;
import org.tourage.internal.TextTable;
import org.tourage.label.AllergenSummary;
import org.tourage.lamination.LaminationPlan;
import org.tourage.lamination.LaminationStep;
import org.tourage.lamination.RollingSchedule;
import org.tourage.makeup.CuttingPlan;
import org.tourage.oven.Bake;
import org.tourage.oven.OvenProfile;
import org.tourage.plan.Timetable;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.BakeryUnits;
import org.tourage.quantity.Extent;
import org.tourage.substitution.FlourExchange;
import org.tourage.substitution.Substitution;

/**
 * What hangs over the bench: everything that was worked out for one bake, as text. Parts that were
 * not given are left out. Nothing is calculated here.
 */
public final class BenchSheet implements Serializable {
  private static final long serialVersionUID = 1L;
  private static final int WIDTH = 96;
  private static final double JOULES_PER_KILOWATT_HOUR = 3.6e6;

  /** The title. */
  private final String title;

  /** The sections in order. */
  private final List<Section> sections;

  /** All advice. */
  private final List<Advice> advice;

  private record Section(String heading, List<String> lines) implements Serializable {}

  private BenchSheet(Builder builder) {
    this.title = builder.title;
    this.sections = List.copyOf(builder.sections);
    this.advice = List.copyOf(builder.advice);
  }

  /**
   * Starts a bench sheet.
   *
   * @param title the title
   * @param format how amounts are written
   * @return a builder
   */
  public static Builder builder(String title, AmountFormat format) {
    return new Builder(title, format);
  }

  /**
   * All advice of all parts, each once.
   *
   * @return the advice
   */
  public List<Advice> advice() {
    return advice;
  }

  /** The sheet as plain text. */
  @Override
  public String toString() {
    StringBuilder out = new StringBuilder();
    out.append(title).append('\n').append("=".repeat(title.length())).append('\n');
    int number = 1;
    for (Section section : sections) {
      out.append('\n').append(number++).append(". ").append(section.heading).append('\n');
      for (String line : section.lines) {
        out.append("   ").append(line).append('\n');
      }
    }
    appendAdvice(out, number++, "Safety", Set.of(Severity.SAFETY));
    appendAdvice(out, number, "Advice", Set.of(Severity.WARNING, Severity.NOTE));
    return out.toString();
  }

  private void appendAdvice(StringBuilder out, int number, String heading, Set<Severity> wanted) {
    List<Advice> some = advice.stream().filter(a -> wanted.contains(a.severity())).toList();
    if (!some.isEmpty()) {
      out.append('\n').append(number).append(". ").append(heading).append('\n');
      for (Advice one : some) {
        String mark = one.severity() == Severity.WARNING ? "! " : "- ";
        appendWrapped(out, mark + one.text() + ". " + one.remedy() + ". [" + one.source() + "]");
      }
    }
  }

  private static void appendWrapped(StringBuilder out, String text) {
    StringBuilder line = new StringBuilder("  ");
    for (String word : text.split(" ")) {
      if (line.length() + word.length() >= WIDTH) {
        out.append(line).append('\n');
        line = new StringBuilder("    ");
      }
      line.append(' ').append(word);
    }
    out.append(line).append('\n');
  }

  /** Collects the parts of a sheet; it is not safe for use by several threads. */
  public static final class Builder {
    private final String title;
    private final AmountFormat format;
    private final List<Section> sections = new ArrayList<>();
    private final Set<Advice> advice = new LinkedHashSet<>();

    private Builder(String title, AmountFormat format) {
      this.title = requireNonNull(title, "title");
      this.format = requireNonNull(format, "format");
    }

    private Builder section(String heading, List<String> lines) {
      sections.add(new Section(heading, lines));
      return this;
    }

    /**
     * Adds the recipe as it was given, weighed.
     *
     * @param recipe the recipe
     * @return this builder
     */
    public Builder recipe(HouseholdRecipe recipe) {
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
      advice.addAll(recipe.advice());
      return section("The recipe as given, and what it weighs", table.toString().lines().toList());
    }

    /**
     * Adds a flour exchange.
     *
     * @param exchange the exchange
     * @return this builder
     */
    public Builder exchange(FlourExchange exchange) {
      advice.addAll(exchange.advice());
      List<String> lines = new ArrayList<>();
      lines.add(exchange.toString());
      lines.add("before: " + exchange.before().hydration());
      lines.add("after:  " + exchange.after().hydration());
      lines.addAll(exchange.comparison().lines().toList());
      return section("Flour on hand", lines);
    }

    /**
     * Adds another exchange.
     *
     * @param heading what is exchanged
     * @param exchange the exchange
     * @return this builder
     */
    public Builder exchange(String heading, Substitution exchange) {
      advice.addAll(exchange.advice());
      List<String> lines = new ArrayList<>(exchange.toString().lines().toList());
      lines.addAll(exchange.comparison().lines().toList());
      return section(heading, lines);
    }

    /**
     * Adds the weighed formula.
     *
     * @param batch the batch
     * @param pieces a line that says what it is for, for example the number of pieces
     * @return this builder
     */
    public Builder formula(Batch batch, String pieces) {
      List<String> lines = new ArrayList<>();
      lines.add(pieces);
      lines.addAll(batch.table(format).lines().skip(1).toList());
      lines.add(batch.formula().hydration().toString());
      batch
          .rounding()
          .ifPresent(
              r ->
                  lines.add(
                      "rounded to "
                          + r.resolution()
                          + ", total kept; greatest error of a line "
                          + AmountFormat.metric().percent(r.greatestError())));
      advice.addAll(batch.advice());
      return section("Formula", lines);
    }

    /**
     * Adds the water temperature by heat balance, with the factor rule beside it.
     *
     * @param balance the heat balance
     * @param rule the factor rule
     * @return this builder
     */
    public Builder water(HeatBalance balance, FactorRule rule) {
      return section("Water", waterLines(balance, rule));
    }

    /**
     * Adds the water temperature by heat balance, with the factor rule beside it, and the ice.
     *
     * @param balance the heat balance
     * @param rule the factor rule
     * @param tap the temperature of the tap water
     * @param ice the ice by heat balance, a part of the liquid
     * @return this builder
     */
    public Builder water(
        HeatBalance balance, FactorRule rule, Amount<Temperature> tap, Amount<Mass> ice) {
      List<String> lines = waterLines(balance, rule);
      lines.add(
          ice.value() > 0
              ? format.mass(ice)
                  + " ice and "
                  + format.mass(balance.liquid().to(BakeryUnits.GRAM).subtract(ice))
                  + " liquid at "
                  + AmountFormat.sideBySide().temperature(tap)
              : "no ice needed: tap water of "
                  + AmountFormat.sideBySide().temperature(tap)
                  + " is to be warmed");
      return section("Water", lines);
    }

    private List<String> waterLines(HeatBalance balance, FactorRule rule) {
      List<String> lines = new ArrayList<>();
      lines.add(balance.toString());
      lines.add("factor rule beside it: " + rule + ", " + rule.working().lines().get(0).numbers());
      advice.addAll(balance.advice());
      advice.addAll(balance.compare(rule));
      return lines;
    }

    /**
     * Adds the lamination.
     *
     * @param plan the plan
     * @return this builder
     */
    public Builder lamination(LaminationPlan plan) {
      List<String> lines = new ArrayList<>();
      String core = plan.sequence().lockIn().fatOutside() ? "dough block" : "fat block";
      String cover = plan.sequence().lockIn().fatOutside() ? "fat sheet" : "dough sheet";
      lines.add(plan.sequence().toString());
      lines.add(plan.sequence().lockIn().words());
      lines.add(
          core
              + " "
              + extent(plan.block())
              + ", "
              + format.length(plan.blockThickness())
              + " thick");
      lines.add(
          cover
              + " "
              + extent(plan.sheet())
              + ", "
              + format.length(plan.sheetThickness())
              + " thick");
      lines.add(
          "fat is "
              + AmountFormat.metric().percent(plan.fatByDough())
              + " of the dough, "
              + AmountFormat.metric().percent(plan.fatByVolume())
              + " of the volume");
      TextTable table = new TextTable(1);
      table.row(
          "step", "length x width", "thick", "fat layers", "each fat layer", "each dough layer");
      for (LaminationStep step : plan.steps()) {
        table.row(
            step.action(),
            extent(step.extent()),
            format.length(step.thickness()),
            step.fatLayers().toString(),
            AmountFormat.metric().length(step.fatLayer()),
            AmountFormat.metric().length(step.doughLayer()));
      }
      lines.addAll(table.toString().lines().toList());
      int number = 1;
      for (RollingSchedule schedule : plan.rolling()) {
        String gaps =
            schedule.passes().stream()
                .map(p -> format.length(p.gap()))
                .collect(Collectors.joining(" → "));
        lines.add(
            "rolling "
                + number++
                + ", to and fro: from "
                + format.length(schedule.from())
                + " → "
                + gaps);
      }
      lines.add(
          "turn by 90° after each fold; rest cold 20 to 30 min between turns (common practice)");
      advice.addAll(plan.advice());
      return section("Lamination", lines);
    }

    private String extent(Extent extent) {
      return format.length(extent.length()) + " x " + format.length(extent.width());
    }

    /**
     * Adds how long the sheet may lie and must chill.
     *
     * @param lines the answers in words
     * @return this builder
     */
    public Builder workability(List<String> lines) {
      return section("On the bench", List.copyOf(lines));
    }

    /**
     * Adds the cutting plan.
     *
     * @param plan the plan
     * @param sheetMass the mass of the whole sheet
     * @return this builder
     */
    public Builder cutting(CuttingPlan plan, Amount<Mass> sheetMass) {
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
              + format.mass(plan.pieceMass(sheetMass))
              + ", trim and ends "
              + format.mass(plan.trimMass(sheetMass))
              + ", yield "
              + AmountFormat.metric().percent(plan.sheetYield()));
      advice.addAll(plan.advice());
      return section("Cutting plan", lines);
    }

    /**
     * Adds the oven.
     *
     * @param profile the profile
     * @return this builder
     */
    public Builder oven(OvenProfile profile) {
      List<String> lines = ovenLines(profile);
      lines.add("to see inside, give the last shape of the piece in the timetable, as roll 45 mm");
      advice.addAll(profile.advice());
      return section("Oven", lines);
    }

    /**
     * Adds the oven and what happens in the piece.
     *
     * @param bake the bake
     * @param room the temperature of the room, for the heating up
     * @param energy what the oven takes for it, heating up included
     * @return this builder
     */
    public Builder bake(Bake bake, Amount<Temperature> room, Amount<Energy> energy) {
      List<String> lines = ovenLines(bake.profile());
      lines.add(
          "heating up takes about "
              + bake.oven()
                  .preheating(bake.profile(), room)
                  .map(AmountFormat.metric()::time)
                  .orElse("for ever: the power is not enough")
              + " in a small household oven; with the bake it takes about "
              + Numbers.decimals(energy.in(BakeryUnits.JOULE) / JOULES_PER_KILOWATT_HOUR, 1)
              + " kWh");
      lines.add("inside " + bake.piece() + ":");
      lines.addAll(bake.table(format).lines().toList());
      lines.add(bake.doneness());
      lines.add("not known: colour, tray, neighbours on the tray, fat that runs, layers");
      advice.addAll(bake.advice());
      return section("Oven", lines);
    }

    private static List<String> ovenLines(OvenProfile profile) {
      List<String> lines = new ArrayList<>();
      int number = 1;
      for (OvenProfile.Step step : profile.steps()) {
        lines.add("step " + number++ + ": " + step);
      }
      lines.add(
          "total "
              + AmountFormat.metric().time(profile.total())
              + "; a fan oven 15 to 25 K (27 to 45 °F) lower (common practice)");
      return lines;
    }

    /**
     * Adds the timetable.
     *
     * @param timetable the timetable
     * @return this builder
     */
    public Builder timetable(Timetable timetable) {
      return section("Timetable", timetable.toString().lines().toList());
    }

    /**
     * Adds how warm the dough is and how far it has risen at the end of each task.
     *
     * @param history the history
     * @return this builder
     */
    public Builder rise(RiseHistory history) {
      List<String> lines = new ArrayList<>();
      lines.add("seen: " + history.rise() + "; volumes are those of the dough without roll-in");
      lines.addAll(history.table(format).lines().toList());
      for (double growth : List.of(1.5, 2.0)) {
        history
            .reached(growth)
            .ifPresent(
                time ->
                    lines.add(
                        "in its last shape it has "
                            + growth
                            + " times the volume "
                            + AmountFormat.metric().time(time)
                            + " after the start of the table"));
      }
      advice.addAll(history.advice());
      return section("Temperature and rise", lines);
    }

    /**
     * Adds the allergens.
     *
     * @param summary the summary
     * @return this builder
     */
    public Builder allergens(AllergenSummary summary) {
      advice.addAll(summary.advice());
      return this;
    }

    /**
     * Adds advice that belongs to no part.
     *
     * @param more the advice
     * @return this builder
     */
    public Builder advice(List<Advice> more) {
      advice.addAll(more);
      return this;
    }

    /**
     * Makes the sheet.
     *
     * @return the sheet
     */
    public BenchSheet build() {
      return new BenchSheet(this);
    }
  }
}
