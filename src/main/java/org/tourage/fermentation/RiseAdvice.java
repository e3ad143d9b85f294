package org.tourage.fermentation;

import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import java.util.ArrayList;
import java.util.List;
import org.tourage.advice.Advice;
import org.tourage.fermentation.RiseHistory.Look;
import org.tourage.fermentation.RiseHistory.Stage;
import org.tourage.internal.Numbers;
import org.tourage.internal.TextTable;
import org.tourage.quantity.AmountFormat;

/** What is unwise about a {@link RiseHistory} or not known, and the history in lines. */
final class RiseAdvice {
  private static final double LONG_STAGE_MINUTES = 120;

  private RiseAdvice() {}

  static List<Advice> of(RiseHistory history) {
    List<Advice> advice = new ArrayList<>(history.rise().advice());
    overproofs(history, advice);
    Stage coldest = null;
    for (Stage stage : history.stages()) {
      boolean unsure = stage.end().mean().in(CELSIUS) < ColdTail.UNKNOWN_BELOW;
      // the night is meant, not a short step that follows it
      boolean longer =
          coldest == null || stage.air().duration().compareTo(coldest.air().duration()) > 0;
      coldest = unsure && stage.cold().matters() && longer ? stage : coldest;
      if (stage.end().surface().in(CELSIUS) < 0) {
        advice.add(
            Advice.of(
                "FREEZING",
                stage.name()
                    + " ends with the surface at "
                    + AmountFormat.sideBySide().temperature(stage.end().surface()),
                "Freezing is not in this model: it holds the temperature and harms the yeast"));
      }
    }
    if (coldest != null) {
      advice.add(
          ColdTail.unsure(
              "no gas rate of dough below 10 °C (50 °F) is published; "
                  + coldest.name()
                  + " may end anywhere from "
                  + Numbers.significant(coldest.cold().least(), 3)
                  + " to "
                  + Numbers.significant(coldest.cold().most(), 3)
                  + " times the volume ("
                  + Numbers.significant(coldest.cold().byGrowth(), 3)
                  + " by growth alone, "
                  + Numbers.significant(coldest.cold().slow(), 3)
                  + " to "
                  + Numbers.significant(coldest.cold().quick(), 3)
                  + " by factors of 3 to 2 for each 10 K)",
              "Mark the height of the dough in the evening and in the morning once: it sets the"
                  + " cold end",
              history.rise().model().source()));
    }
    return advice;
  }

  /** Each time that the gas of the dough grows beyond what it holds, once, until it is shaped. */
  private static void overproofs(RiseHistory history, List<Advice> advice) {
    double holds = history.rise().gas().holds();
    Look passed = null;
    String name = "";
    double began = 0;
    double most = 0;
    for (Stage stage : history.stages()) {
      if (stage.knockedBack() && passed != null) {
        advice.add(overproofed(name, holds, passed, began, most));
        passed = null;
      }
      for (Look look : stage.looks()) {
        if (look.growth() > holds && passed == null) {
          passed = look;
          name = stage.name();
          began = stage.looks().get(0).time().in(MINUTE);
          most = 0;
        }
      }
      most = Math.max(most, stage.end().growth());
    }
    if (passed != null) {
      advice.add(overproofed(name, holds, passed, began, most));
    }
  }

  private static Advice overproofed(
      String name, double holds, Look passed, double began, double most) {
    return overproofed(
        name
            + " passes "
            + Numbers.significant(holds, 3)
            + " times the volume within "
            + AmountFormat.metric().time(MINUTE.amount(passed.time().in(MINUTE) - began))
            + " and would end at "
            + Numbers.significant(most, 3)
            + " times if no gas escaped");
  }

  /** What is said of any dough that is to rise further than it holds. */
  static Advice overproofed(String text) {
    return Advice.of(
        "OVERPROOFED",
        text,
        "Beyond what the dough holds its gas escapes and it may collapse: end it earlier, keep it"
            + " colder, or take less yeast");
  }

  /** The end of each stage, and looks within the long ones. */
  static String table(RiseHistory history, AmountFormat format) {
    TextTable table = new TextTable(1);
    table.row("stage", "after", "air", "surface", "core", "volume");
    for (Stage stage : history.stages()) {
      int last = stage.looks().size() - 1;
      double minutes = stage.end().time().in(MINUTE) - stage.looks().get(0).time().in(MINUTE);
      int parts = minutes > LONG_STAGE_MINUTES && last >= 4 ? 4 : 1;
      for (int i = 1; i <= parts; i++) {
        Look look = stage.looks().get(last * i / parts);
        table.row(
            i == 1 ? stage.name() : "",
            AmountFormat.metric().time(look.time()),
            format.temperature(look.air()),
            format.temperature(look.surface()),
            format.temperature(look.core()),
            "× " + Numbers.fixed(look.growth(), 2));
      }
    }
    return table.toString();
  }
}
