package org.tourage.lamination;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.METRE;
import static org.tourage.quantity.BakeryUnits.MICROMETRE;
import static org.tourage.quantity.BakeryUnits.MILLIMETRE;

import java.math.BigInteger;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.reference.Checks;

class LaminationTest {
  private static final FoldSequence BOOK_LETTER =
      FoldSequence.lockIn(LockIn.HALF).fold(Fold.BOOK).fold(Fold.LETTER);

  private static BigInteger published(String check) {
    return BigInteger.valueOf((long) Checks.row("other-rooms.csv", check).number("value"));
  }

  private static FoldSequence sequence(LockIn lockIn, Fold... folds) {
    return new FoldSequence(lockIn, List.of(folds));
  }

  @Test
  void layerCountsAreThePublishedOnes() {
    assertThat(BOOK_LETTER.fatLayers())
        .isEqualTo(published("fat layers of half with book and letter"));
    assertThat(BOOK_LETTER.doughLayers())
        .isEqualTo(published("dough layers of half with book and letter"));
    assertThat(BOOK_LETTER.doughLayersByMultiplication())
        .isEqualTo(published("multiplied dough layers of half with book and letter"));
    FoldSequence letters = sequence(LockIn.HALF, Fold.LETTER, Fold.LETTER, Fold.LETTER);
    assertThat(letters.fatLayers()).isEqualTo(published("fat layers of half with three letters"));
    assertThat(letters.doughLayers())
        .isEqualTo(published("dough layers of half with three letters"));
    FoldSequence thirds = sequence(LockIn.THIRDS, Fold.BOOK, Fold.BOOK);
    assertThat(thirds.fatLayers()).isEqualTo(published("fat layers of thirds with two books"));
    assertThat(thirds.doughLayers()).isEqualTo(published("dough layers of thirds with two books"));
    assertThat(thirds.doughLayersByMultiplication())
        .isEqualTo(published("multiplied dough layers of thirds with two books"));
    FoldSequence outside = sequence(LockIn.OUTSIDE, Fold.LETTER, Fold.BOOK);
    assertThat(outside.doughLayers())
        .isEqualTo(published("dough layers of outside with letter and book"));
    assertThat(outside.fatLayers())
        .isEqualTo(published("fat layers of outside with letter and book"));
    FoldSequence six =
        sequence(
            LockIn.ENVELOPE,
            Fold.LETTER,
            Fold.LETTER,
            Fold.LETTER,
            Fold.LETTER,
            Fold.LETTER,
            Fold.LETTER);
    assertThat(six.fatLayers()).isEqualTo(published("fat layers of half with six letters"));
    assertThat(six.doughLayers()).isEqualTo(published("dough layers of half with six letters"));
    assertThat(six.layers()).isEqualTo(BigInteger.valueOf(1459));
  }

  @Test
  void theSequenceExplainsItself() {
    assertThat(BOOK_LETTER)
        .hasToString("lock-in half, book fold, letter fold: 12 fat layers, 13 dough layers");
    assertThat(BOOK_LETTER.working().toString()).contains("1 × 4 × 3 = 12").contains("12 + 1 = 13");
    assertThat(FoldSequence.lockIn(LockIn.OUTSIDE).working().toString())
        .contains("dough layers")
        .contains("1 × 1 = 1");
    assertThat(BOOK_LETTER.advice()).isEmpty();
    assertThat(Fold.zigzag(5)).hasToString("zig-zag in 5");
    assertThatThrownBy(() -> Fold.zigzag(1))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("1 panels");
    assertThatThrownBy(() -> Fold.zigzag(13)).isInstanceOf(BakeryException.class);
  }

  /** A stack of bands, folded panel by panel: shares nothing with the closed form. */
  private static String foldByHand(String stack, int panels) {
    StringBuilder folded = new StringBuilder();
    String reversed = new StringBuilder(stack).reverse().toString();
    for (int i = 0; i < panels; i++) {
      folded.append(i % 2 == 0 ? stack : reversed);
    }
    return folded.toString().replaceAll("D+", "D").replaceAll("F+", "F");
  }

  @Provide
  Arbitrary<List<Fold>> folds() {
    return Arbitraries.of(Fold.HALF, Fold.LETTER, Fold.BOOK, Fold.zigzag(5)).list().ofMaxSize(5);
  }

  @Property(tries = 400)
  void theClosedFormAgreesWithAStackFoldedByHand(
      @ForAll LockIn lockIn, @ForAll("folds") List<Fold> folds) {
    String stack =
        switch (lockIn) {
          case THIRDS -> "DFDFD";
          case OUTSIDE -> "FDF";
          case HALF, ENVELOPE -> "DFD";
        };
    for (Fold fold : folds) {
      stack = foldByHand(stack, fold.panels());
    }
    FoldSequence sequence = new FoldSequence(lockIn, folds);
    assertThat(sequence.fatLayers())
        .isEqualTo(BigInteger.valueOf(stack.chars().filter(c -> c == 'F').count()));
    assertThat(sequence.doughLayers())
        .isEqualTo(BigInteger.valueOf(stack.chars().filter(c -> c == 'D').count()));
  }

  private static LaminationPlan plan(FoldSequence sequence, double dough, double fat) {
    return LaminationPlan.of(
        sequence,
        grams(dough),
        grams(fat),
        kilogramsPerCubicMetre(1200),
        kilogramsPerCubicMetre(920),
        LaminationPlan.Setup.SMALL_BENCH);
  }

  @Test
  void layerThicknessesAreTheWorkedOnes() {
    LaminationPlan plan =
        plan(sequence(LockIn.HALF, Fold.LETTER, Fold.LETTER, Fold.LETTER), 1000, 250);
    LaminationPlan.Step last = plan.steps().get(plan.steps().size() - 1);
    assertThat(last.fatLayer().in(MICROMETRE))
        .isCloseTo(
            Checks.row(
                    "other-rooms.csv",
                    "fat layer at 4 mm of 1000 g dough 1200 kg/m3 and 250 g fat 920 kg/m3 in 27")
                .number("value"),
            within(5e-4));
    assertThat(last.doughLayer().in(MICROMETRE))
        .isCloseTo(
            Checks.row("other-rooms.csv", "inner dough layer of the same").number("value"),
            within(5e-4));
  }

  @Property(tries = 400)
  void everyStepConservesTheVolume(
      @ForAll LockIn lockIn,
      @ForAll("folds") @Size(max = 4) List<Fold> folds,
      @ForAll @DoubleRange(min = 200, max = 20_000) double dough,
      @ForAll @DoubleRange(min = 50, max = 5000) double fat) {
    LaminationPlan plan = plan(new FoldSequence(lockIn, folds), dough, fat);
    double volume = dough / 1200 / 1000 + fat / 920 / 1000;
    for (LaminationPlan.Step step : plan.steps()) {
      double v =
          step.extent().length().in(METRE)
              * step.extent().width().in(METRE)
              * step.thickness().in(METRE);
      assertThat(v).isCloseTo(volume, within(volume * 1e-9));
      double fatBands =
          lockIn.fatOutside() ? step.fatLayers().doubleValue() - 1 : step.fatLayers().doubleValue();
      if (!folds.isEmpty() && !step.action().equals("close the packet")) {
        assertThat(step.fatLayer().in(METRE) * fatBands)
            .isLessThanOrEqualTo(step.thickness().in(METRE));
      }
    }
    double area = plan.sheet().length().in(METRE) * plan.sheet().width().in(METRE);
    double sheet = area * plan.sheetThickness().in(METRE) * (lockIn == LockIn.ENVELOPE ? 0.5 : 1);
    double block = plan.block().length().in(METRE) * plan.block().width().in(METRE) * 0.010;
    assertThat(sheet + block).isCloseTo(volume, within(volume * 1e-9));
  }

  @Test
  void inchesAndMillimetresGiveTheSamePlan() {
    LaminationPlan.Setup metric =
        LaminationPlan.Setup.SMALL_BENCH
            .withPacketWidth(millimetres(203.2))
            .withFinalSheet(millimetres(5.08), millimetres(254));
    LaminationPlan.Setup inch =
        LaminationPlan.Setup.SMALL_BENCH
            .withPacketWidth(inches(8))
            .withFinalSheet(inches(0.2), inches(10));
    LaminationPlan a =
        LaminationPlan.of(
            BOOK_LETTER,
            grams(1000),
            grams(300),
            kilogramsPerCubicMetre(1200),
            kilogramsPerCubicMetre(920),
            metric);
    LaminationPlan b =
        LaminationPlan.of(
            BOOK_LETTER,
            kilograms(1),
            ounces(300 / 28.349523125),
            kilogramsPerCubicMetre(1200),
            kilogramsPerCubicMetre(920),
            inch);
    for (int i = 0; i < a.steps().size(); i++) {
      assertThat(
              a.steps()
                  .get(i)
                  .extent()
                  .length()
                  .isCloseTo(b.steps().get(i).extent().length(), 1e-9))
          .isTrue();
      assertThat(a.steps().get(i).fatLayer().isCloseTo(b.steps().get(i).fatLayer(), 1e-9)).isTrue();
    }
  }

  @Test
  void whatIsUnwiseIsAdvisedAndWhatCanNotBeIsRefused() {
    assertThat(plan(BOOK_LETTER, 1000, 280).advice()).isEmpty();
    assertThat(plan(BOOK_LETTER, 1000, 500).advice())
        .extracting(Advice::code)
        .containsExactly("ROLL_IN_UNUSUAL");
    assertThat(plan(FoldSequence.lockIn(LockIn.HALF), 1000, 280).advice())
        .extracting(Advice::code)
        .containsExactly("FAT_LAYERS_UNUSUAL");
    FoldSequence many = BOOK_LETTER.fold(Fold.BOOK).fold(Fold.BOOK).fold(Fold.BOOK);
    assertThat(plan(many, 1000, 280).advice())
        .extracting(Advice::code)
        .containsExactly("FAT_LAYERS_MANY");
    assertThatThrownBy(() -> plan(BOOK_LETTER, 0, 280)).hasMessageContaining("0 g of dough");
    assertThatThrownBy(
            () ->
                LaminationPlan.of(
                    BOOK_LETTER,
                    grams(1),
                    grams(1),
                    kilogramsPerCubicMetre(0),
                    kilogramsPerCubicMetre(920),
                    LaminationPlan.Setup.SMALL_BENCH))
        .hasMessageContaining("density");
    assertThatThrownBy(() -> LaminationPlan.Setup.SMALL_BENCH.withPacketWidth(millimetres(20)))
        .hasMessageContaining("margin");
    assertThatThrownBy(
            () -> LaminationPlan.Setup.SMALL_BENCH.withFinalSheet(millimetres(0), millimetres(20)))
        .hasMessageContaining("final thickness");
    LaminationPlan plan = plan(BOOK_LETTER, 1000, 280);
    assertThat(plan.toString()).contains("roll to the final sheet").contains("12 fat layers of");
    assertThat(plan.working().toString()).contains("cm³").contains("conservation of volume");
    assertThat(plan.finalSheet().width()).isEqualTo(millimetres(250));
    assertThat(plan.fatByDough()).isEqualTo(percent(28));
    assertThat(plan.block().width().in(MILLIMETRE)).isCloseTo(180, within(1e-9));
    assertThat(LockIn.HALF.words()).contains("half");
  }
}
