package org.tourage.lamination;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.grams;
import static org.tourage.quantity.Amounts.kilogramsPerCubicMetre;
import static org.tourage.quantity.Amounts.millimetres;
import static org.tourage.quantity.Amounts.percent;
import static org.tourage.quantity.BakeryUnits.MILLIMETRE;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;

class RollersTest {
  private static final Rollers.Sheeter SHEETER =
      Rollers.Sheeter.of(millimetres(40), millimetres(2), millimetres(500), percent(33));

  private static LaminationPlan plan(FoldSequence sequence, LaminationPlan.Setup setup) {
    return LaminationPlan.of(
        sequence,
        grams(1000),
        grams(280),
        kilogramsPerCubicMetre(1200),
        kilogramsPerCubicMetre(940),
        setup);
  }

  @Property(tries = 400)
  void theSheeterNeverRollsOutsideItsGapsNorTakesMoreThanItMay(
      @ForAll @DoubleRange(min = 3, max = 90) double from,
      @ForAll @DoubleRange(min = 0.02, max = 1) double share,
      @ForAll @DoubleRange(min = 30, max = 60) double opening,
      @ForAll @DoubleRange(min = 0.5, max = 4) double least,
      @ForAll @DoubleRange(min = 10, max = 50) double reduction) {
    Rollers.Sheeter sheeter =
        Rollers.Sheeter.of(
            millimetres(opening), millimetres(least), millimetres(600), percent(reduction));
    RollingSchedule schedule =
        RollingSchedule.by(sheeter, millimetres(from), millimetres(from * share), millimetres(200));
    double before = from;
    int number = 1;
    for (RollingSchedule.Pass pass : schedule.passes()) {
      double gap = pass.gap().in(MILLIMETRE);
      assertThat(1 - gap / before).isLessThanOrEqualTo(reduction / 100 + 1e-9);
      if (pass.by() instanceof Rollers.Sheeter) {
        assertThat(before).isLessThanOrEqualTo(opening * (1 + 1e-9));
        assertThat(gap).isGreaterThanOrEqualTo(least * (1 - 1e-9));
      } else {
        assertThat(before > opening * (1 - 1e-9) || gap < least * (1 + 1e-9)).isTrue();
      }
      assertThat(gap * pass.length().in(MILLIMETRE)).isCloseTo(from * 200, within(1e-6 * from));
      assertThat(pass.number()).isEqualTo(number++);
      before = gap;
    }
    assertThat(before).isCloseTo(from * share, within(1e-9 * from));
    assertThat(
            schedule.advice().stream().map(Advice::code).toList().contains("PACKET_OVER_OPENING"))
        .isEqualTo(from > opening);
    assertThat(schedule.advice().stream().map(Advice::code).toList().contains("SHEET_UNDER_GAP"))
        .isEqualTo(from * share < least);
  }

  @Test
  void aPacketThickerThanTheOpeningStartsByPinAndIsSaid() {
    // a book of 12 mm is 48 mm thick, and the sheeter opens to 40 mm
    LaminationPlan plan =
        plan(
            FoldSequence.lockIn(LockIn.HALF).fold(Fold.BOOK).fold(Fold.BOOK),
            LaminationPlan.Setup.SMALL_BENCH
                .withFoldThickness(millimetres(12))
                .withRollers(SHEETER));
    RollingSchedule second = plan.rolling().get(1);
    assertThat(second.from()).isEqualTo(millimetres(48));
    assertThat(second.passes().get(0)).hasToString("pass 1 forth: pin to 40 mm");
    assertThat(second.passes().get(1).by()).isEqualTo(SHEETER);
    assertThat(plan.advice())
        .filteredOn(a -> a.code().equals("PACKET_OVER_OPENING"))
        .hasSize(2)
        .allSatisfy(a -> assertThat(a.text()).contains("48 mm", "40 mm"));
    assertThat(
            plan(
                    FoldSequence.lockIn(LockIn.HALF).fold(Fold.BOOK),
                    LaminationPlan.Setup.SMALL_BENCH.withRollers(SHEETER))
                .advice())
        .isNotEmpty()
        .extracting(Advice::code)
        .doesNotContain("PACKET_OVER_OPENING", "SHEET_UNDER_GAP");
  }

  @Test
  void whatIsTooWideForTheBeltOrTooThinForTheGapIsSaid() {
    FoldSequence turns = FoldSequence.lockIn(LockIn.HALF).fold(Fold.BOOK).fold(Fold.LETTER);
    assertThat(
            plan(
                    turns,
                    LaminationPlan.Setup.SMALL_BENCH
                        .withFinalSheet(millimetres(1.5), millimetres(550))
                        .withRollers(SHEETER))
                .advice())
        .extracting(Advice::code)
        .contains("SHEET_TOO_WIDE", "SHEET_UNDER_GAP");
    assertThat(plan(turns, LaminationPlan.Setup.SHOP).advice())
        .extracting(Advice::code)
        .doesNotContain("PACKET_OVER_OPENING", "SHEET_TOO_WIDE");
  }

  @Test
  void thePassesAfterTheLastFoldAreGentler() {
    LaminationPlan plan =
        plan(
            FoldSequence.lockIn(LockIn.HALF).fold(Fold.LETTER),
            LaminationPlan.Setup.SMALL_BENCH.withRollers(Rollers.PASTRY_SHEETER));
    assertThat(plan.rolling()).extracting(RollingSchedule::limit).containsExactly(2.0, 1.5);
    assertThat(
            plan(
                    FoldSequence.lockIn(LockIn.HALF).fold(Fold.LETTER),
                    LaminationPlan.Setup.SMALL_BENCH.withRollers(
                        Rollers.Sheeter.of(
                            millimetres(45), millimetres(1), millimetres(600), percent(25))))
                .rolling())
        .allSatisfy(s -> assertThat(s.limit()).isCloseTo(4 / 3.0, within(1e-12)));
  }

  @Test
  void rollersThatCanNotRollAreRefusedAndTheOthersReadWell() {
    assertThat(Rollers.PASTRY_SHEETER).hasToString("sheeter, 1 mm to 45 mm, belt 600 mm");
    assertThat(Rollers.PIN).hasToString("pin of 450 mm");
    assertThatThrownBy(
            () -> Rollers.Sheeter.of(millimetres(2), millimetres(2), millimetres(600), percent(50)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("opening 2 mm");
    assertThatThrownBy(() -> Rollers.Pin.of(millimetres(0), millimetres(2), percent(50)))
        .hasMessageContaining("width 0 mm");
    assertThatThrownBy(() -> Rollers.Pin.of(millimetres(450), millimetres(2), percent(100)))
        .hasMessageContaining("reduction 100 %");
  }

  @Test
  void everyStepIsTypedAndKnowsWhatItFound() {
    LaminationPlan plan =
        plan(
            FoldSequence.lockIn(LockIn.HALF).fold(Fold.BOOK).fold(Fold.LETTER),
            LaminationPlan.Setup.SMALL_BENCH);
    List<LaminationStep> steps = plan.steps();
    assertThat(steps)
        .hasExactlyElementsOfTypes(
            LaminationStep.Closing.class,
            LaminationStep.Rolling.class,
            LaminationStep.Folding.class,
            LaminationStep.Rolling.class,
            LaminationStep.Folding.class,
            LaminationStep.FinalRolling.class);
    LaminationStep.Folding book = (LaminationStep.Folding) steps.get(2);
    LaminationStep.Rolling next = (LaminationStep.Rolling) steps.get(3);
    assertThat(book.fold()).isEqualTo(Fold.BOOK);
    assertThat(book.before()).isEqualTo(steps.get(1).after());
    // turned by 90°
    assertThat(next.before().extent().length()).isEqualTo(book.after().extent().width());
    assertThat(next.before().thickness()).isEqualTo(millimetres(32));
    assertThat(next.schedule().from()).isEqualTo(millimetres(32));
    assertThat(next.schedule().to()).isEqualTo(millimetres(8));
    assertThat(next.after().extent().width()).isEqualTo(next.before().extent().width());
    assertThat(steps.get(4)).asString().startsWith("letter fold: ").contains("12 fat layers of");
  }
}
