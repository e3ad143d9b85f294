package org.tourage.formula;

import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.GRAM;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.tourage.ingredient.Role;
import org.tourage.internal.Numbers;

/** A batch as the text of a household recipe that reads back as the same batch. */
final class RecipeText {
  private static final int DIGITS = 12;
  private static final double WHOLE = 1 - 1e-12;

  private RecipeText() {}

  static List<String> of(Batch batch) {
    List<String> text = new ArrayList<>();
    for (Stage stage : batch.formula().stages()) {
      text.add(heading(stage));
      for (Take take : stage.taken()) {
        text.add(draw(batch, stage, take));
      }
      for (WeighedLine line : batch.lines()) {
        if (line.stage().equals(stage.name())) {
          boolean said = line.line().isFlour() && !line.ingredient().is(Role.FLOUR);
          text.add(
              grams(line.toWeigh().in(GRAM))
                  + " g "
                  + line.ingredient().id()
                  + (said ? ", as flour" : ""));
        }
      }
    }
    return text;
  }

  private static String heading(Stage stage) {
    String kind =
        stage.kind() == StageKind.FINAL_DOUGH
            ? "dough"
            : stage.kind().name().toLowerCase(Locale.ROOT).replace('_', '-');
    boolean usual = stage.name().equals(HouseholdRecipe.usualName(stage.kind()));
    return "[" + kind + (usual ? "" : " " + stage.name()) + "]";
  }

  private static String draw(Batch batch, Stage stage, Take take) {
    Stage from = batch.formula().stage(take.stage());
    boolean all =
        take.share().in(FRACTION) > WHOLE
            && from.made().in(FRACTION) <= 1
            && stage.made().in(FRACTION) <= 1;
    double drawn =
        batch.wholeWeightOf(from).in(GRAM) * take.share().in(FRACTION) * stage.made().in(FRACTION);
    return (all ? "all" : grams(drawn) + " g") + " of " + take.stage();
  }

  private static String grams(double grams) {
    return Numbers.significant(grams, DIGITS);
  }
}
