package org.tourage.lamination;

import static org.tourage.quantity.BakeryUnits.METRE;
import static org.tourage.quantity.BakeryUnits.MILLIMETRE;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import javax.measure.quantity.Length;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.Advice;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Extent;

/** What is unwise about a plan. */
final class LaminationAdvice {
  private static final String LAYERS =
      "S.P. Cauvain and L.S. Young, Baked Products, 2006 (from memory)";
  private static final int YEASTED_LAYERS_LOW = 12;
  private static final int YEASTED_LAYERS_HIGH = 50;

  /** Beyond this a yeasted dough is no longer laminated to the eye: common practice. */
  private static final int YEASTED_LAYERS_MOST = 400;

  private static final int PUFF_LAYERS_LOW = 100;
  private static final int PUFF_LAYERS_HIGH = 730;
  private static final int CLASSICAL_TURNS = 6;

  /** Metres: 200 fat layers in 1.0 mm, the thin end of a published design space. */
  private static final double THINNEST_STUDIED = 1.0e-3 / 200;

  /**
   * Metres: 729 fat layers (730 in the inverted way) in 2 mm, the thin end of classical puff dough
   * (common practice).
   */
  private static final double THINNEST_CLASSICAL = 2.0e-3 / 731;

  /** A plate of fat is thinner or thicker than hands can lay it: common practice. */
  private static final Amount<Length> FAT_THIN = MILLIMETRE.amount(4);

  private static final Amount<Length> FAT_THICK = MILLIMETRE.amount(15);

  /** A plate that is larger than a baker's sheet pan is not lifted in one piece. */
  private static final Amount<Length> FAT_LONG = MILLIMETRE.amount(600);

  private static final Amount<Length> FOLD_THIN = MILLIMETRE.amount(6);
  private static final Amount<Length> FOLD_THICK = MILLIMETRE.amount(15);

  private final LaminationPlan plan;
  private final AmountFormat format = AmountFormat.sideBySide();
  private final List<Advice> advice = new ArrayList<>();

  LaminationAdvice(LaminationPlan plan) {
    this.plan = plan;
  }

  List<Advice> all() {
    rollIn();
    layers();
    fatSheet();
    folding();
    plan.rolling().forEach(schedule -> advice.addAll(schedule.advice()));
    // a pin rolls a sheet that is wider than its barrel in two tracks
    if (plan.setup().rollers() instanceof Rollers.Sheeter sheeter) {
      advice.addAll(fitting(plan.steps(), null, sheeter.width()));
    }
    return advice;
  }

  private void rollIn() {
    boolean inverted = plan.sequence().lockIn().fatOutside();
    // puff: 50 to 100 % of the flour in a dough of 50 to 60 % water; inverted with flour in the fat
    double low = plan.kind() != LaminatedDough.PUFF ? 20 : inverted ? 50 : 30;
    double high = plan.kind() != LaminatedDough.PUFF ? 35 : inverted ? 120 : 65;
    double percent = plan.fatByDough().value();
    if (percent < low || percent > high) {
      advice.add(
          Advice.of(
              "ROLL_IN_UNUSUAL",
              "the roll-in is "
                  + AmountFormat.metric().percent(plan.fatByDough())
                  + " of the dough",
              switch (plan.kind()) {
                case YEASTED -> "Yeasted laminated dough usually has 20 % to 35 %";
                case PUFF ->
                    inverted
                        ? "Inverted puff dough usually has 50 % to 120 %, flour in the fat included"
                        : "Puff dough usually has 30 % to 65 %";
                case UNSAID ->
                    "Yeasted laminated dough usually has 20 % to 35 %; puff dough has more";
              }));
    }
  }

  /** Six single turns: the classical puff dough. */
  private boolean classical() {
    List<Fold> folds = plan.sequence().folds();
    return plan.kind() != LaminatedDough.YEASTED
        && plan.sequence().lockIn().fatBands() <= 2
        && folds.size() == CLASSICAL_TURNS
        && folds.stream().allMatch(f -> f.panels() == Fold.LETTER.panels());
  }

  private void layers() {
    BigInteger layers = plan.sequence().fatLayers();
    double pitch = plan.setup().finalThickness().in(METRE) / layers.doubleValue();
    boolean classical = classical();
    int most = plan.kind() == LaminatedDough.YEASTED ? YEASTED_LAYERS_MOST : PUFF_LAYERS_HIGH;
    if (classical) {
      advice.add(
          Advice.of(
              "FAT_LAYERS_CLASSICAL",
              layers + " fat layers by six single turns: the classical puff dough",
              "Nothing to change; rest it cold after every second turn"));
    } else if (layers.compareTo(BigInteger.valueOf(most)) > 0) {
      advice.add(
          Advice.of(
              "FAT_LAYERS_MANY",
              layers + " fat layers are more than the dough keeps apart",
              plan.kind() == LaminatedDough.YEASTED
                  ? "Leave out a fold; yeasted laminated dough usually has 12 to 50, and beyond"
                      + " some hundreds it bakes like a rich bread"
                  : "Leave out a fold; lift falls beyond about 730 fat layers",
              plan.kind() == LaminatedDough.YEASTED ? Advice.COMMON_PRACTICE : LAYERS));
    } else {
      unusual(layers);
    }
    if (pitch < THINNEST_CLASSICAL || pitch < THINNEST_STUDIED && !classical) {
      String text =
          "fat and dough layer together are "
              + AmountFormat.metric().length(METRE.amount(pitch))
              + " thick";
      String remedy =
          "Leave out a fold or leave the sheet thicker; 5 µm (200 fat layers in 1.0 mm) is the"
              + " thinnest studied";
      boolean mild = pitch >= THINNEST_CLASSICAL && plan.kind() != LaminatedDough.YEASTED;
      advice.add(Advice.of(mild ? "FAT_LAYER_FINE" : "FAT_LAYER_THIN", text, remedy));
    }
  }

  private void unusual(BigInteger layers) {
    boolean puff = plan.kind() == LaminatedDough.PUFF;
    boolean few =
        layers.compareTo(BigInteger.valueOf(puff ? PUFF_LAYERS_LOW : YEASTED_LAYERS_LOW)) < 0;
    boolean many = !puff && layers.compareTo(BigInteger.valueOf(YEASTED_LAYERS_HIGH)) > 0;
    if (few || many) {
      advice.add(
          Advice.of(
              "FAT_LAYERS_UNUSUAL",
              layers + " fat layers",
              switch (plan.kind()) {
                case YEASTED -> "Yeasted laminated dough usually has 12 to 50";
                case PUFF -> "Puff dough usually has 100 to 730";
                case UNSAID ->
                    "Yeasted laminated dough usually has 12 to 50; puff dough 100 to 730";
              }));
    }
  }

  private void fatSheet() {
    boolean inverted = plan.sequence().lockIn().fatOutside();
    String what = inverted ? "the sheet of fat around the dough" : "the block of fat";
    Amount<Length> thickness = plan.setup().fatThickness();
    if (thickness.compareTo(FAT_THIN) < 0) {
      advice.add(
          Advice.of(
              "FAT_PLATE_THIN",
              what
                  + " is "
                  + format.length(thickness)
                  + " thick: it warms in the hand and tears when it is lifted",
              "Shape it to "
                  + (inverted ? "5 to 8 mm" : "8 to 15 mm")
                  + ", which makes the packet smaller and thicker"));
    } else if (thickness.compareTo(FAT_THICK) > 0) {
      advice.add(
          Advice.of(
              "FAT_PLATE_THICK",
              what
                  + " is "
                  + format.length(thickness)
                  + " thick: it does not roll along with the dough",
              "Shape it to " + (inverted ? "5 to 8 mm" : "8 to 15 mm")));
    }
    Extent plate = inverted ? plan.sheet() : plan.block();
    Amount<Length> longest =
        plate.length().compareTo(plate.width()) > 0 ? plate.length() : plate.width();
    if (longest.compareTo(FAT_LONG) > 0) {
      advice.add(
          Advice.of(
              "FAT_PLATE_LARGE",
              what + " is " + format.length(longest) + " long",
              "Shape it in two plates, or take a wider packet: one longer than a tray breaks when"
                  + " it is lifted"));
    }
  }

  private void folding() {
    Amount<Length> thickness = plan.setup().foldThickness();
    if (!plan.sequence().folds().isEmpty()
        && (thickness.compareTo(FOLD_THIN) < 0 || thickness.compareTo(FOLD_THICK) > 0)) {
      advice.add(
          Advice.of(
              "FOLD_THICKNESS_UNUSUAL",
              "the sheet is folded at " + format.length(thickness),
              "A book is folded at 10 to 15 mm in a small shop, at 6 to 10 mm on a home bench"));
    }
    if (plan.sequence().lockIn().diamond()) {
      Amount<Length> side = plan.steps().get(0).extent().width();
      if (!side.isCloseTo(plan.setup().packetWidth(), MILLIMETRE.amount(1))) {
        advice.add(
            Advice.of(
                "ENVELOPE_SQUARE",
                "the packet of the envelope is a square of "
                    + format.length(side)
                    + ", not "
                    + format.length(plan.setup().packetWidth())
                    + " wide",
                "Shape the fat thinner for a larger packet, thicker for a smaller one"));
      }
    }
  }

  /** What is too long (where there is a limit) or too wide. */
  static List<Advice> fitting(
      List<LaminationStep> steps, @Nullable Amount<Length> longest, Amount<Length> widest) {
    List<Advice> advice = new ArrayList<>();
    AmountFormat format = AmountFormat.sideBySide();
    for (LaminationStep step : steps) {
      boolean tooLong = longest != null && step.extent().length().compareTo(longest) > 0;
      boolean tooWide = step.extent().width().compareTo(widest) > 0;
      if (tooLong || tooWide) {
        Amount<Length> side = tooLong ? step.extent().length() : step.extent().width();
        Amount<Length> room = longest != null && tooLong ? longest : widest;
        advice.add(
            Advice.of(
                tooLong ? "SHEET_TOO_LONG" : "SHEET_TOO_WIDE",
                step.action()
                    + " leaves a sheet "
                    + format.length(side)
                    + (tooLong ? " long" : " wide")
                    + " on "
                    + format.length(room),
                "Work it in two halves, or roll it less thin before the fold"));
      }
    }
    return advice;
  }
}
