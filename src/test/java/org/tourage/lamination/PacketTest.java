package org.tourage.lamination;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.grams;
import static org.tourage.quantity.Amounts.kilograms;
import static org.tourage.quantity.Amounts.kilogramsPerCubicMetre;
import static org.tourage.quantity.Amounts.millimetres;
import static org.tourage.quantity.Amounts.percent;
import static org.tourage.quantity.BakeryUnits.MILLIMETRE;

import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.Severity;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.quantity.Extent;
import org.tourage.quantity.Fraction;

class PacketTest {
  private static final FoldSequence ENVELOPE =
      FoldSequence.lockIn(LockIn.ENVELOPE).fold(Fold.LETTER).fold(Fold.LETTER);

  /** Invented for the tests: puff dough, and the same the other way round. */
  private static final Batch PUFF =
      Formula.byPercent(
              "puff",
              f ->
                  f.flour("bread flour", percent(100))
                      .line("water", percent(54))
                      .line("salt", percent(2))
                      .rollIn("butter", percent(80)))
          .forFlour(kilograms(1));

  private static final Batch INVERTED =
      Formula.byPercent(
              "inverted puff",
              f ->
                  f.flour("bread flour", percent(70))
                      .line("water", percent(40))
                      .line("salt", percent(2))
                      .stage(
                          org.tourage.formula.StageKind.ROLL_IN,
                          "Fat",
                          s -> s.line("butter", percent(75)).line("bread flour", percent(30))))
          .forFlour(kilograms(1));

  private static LaminationPlan plan(
      FoldSequence sequence, double dough, double fat, LaminationPlan.Setup setup) {
    return LaminationPlan.of(
        sequence,
        grams(dough),
        grams(fat),
        kilogramsPerCubicMetre(1200),
        kilogramsPerCubicMetre(940),
        setup);
  }

  @Property(tries = 200)
  void theEnvelopeIsASquareOfTheDoughsVolumeWhoseCornersMeetOverTheBlock(
      @ForAll @DoubleRange(min = 200, max = 20_000) double dough,
      @ForAll @DoubleRange(min = 50, max = 5000) double fat,
      @ForAll @DoubleRange(min = 5, max = 15) double thick) {
    LaminationPlan.Setup setup =
        LaminationPlan.Setup.SMALL_BENCH
            .withFatThickness(millimetres(thick))
            .withFoldThickness(millimetres(4));
    LaminationPlan plan = plan(ENVELOPE, dough, fat, setup);
    Extent sheet = plan.sheet();
    assertThat(sheet.length()).isEqualTo(sheet.width());
    double side = sheet.length().in(MILLIMETRE);
    assertThat(side * side * plan.sheetThickness().in(MILLIMETRE))
        .isCloseTo(dough / 1.2e-3, within(dough));
    // folded to the middle the corners make a square on the diagonal: the packet
    Extent packet = plan.steps().get(0).extent();
    assertThat(packet.length()).isEqualTo(packet.width());
    assertThat(packet.width().in(MILLIMETRE)).isCloseTo(side / Math.sqrt(2), within(1e-6));
    assertThat(plan.block().width().in(MILLIMETRE))
        .isCloseTo(packet.width().in(MILLIMETRE) - 20, within(1e-6));
    assertThat(plan.blockThickness()).isEqualTo(millimetres(thick));
    assertThat(plan.working().toString()).contains("√2 ×");
  }

  @Test
  void thatTheEnvelopeTakesAnotherWidthIsSaid() {
    // 280 g of fat, 10 mm thick, are a square of 172.6 mm
    LaminationPlan plan = plan(ENVELOPE, 1000, 280, LaminationPlan.Setup.SMALL_BENCH);
    assertThat(plan.advice())
        .filteredOn(a -> a.code().equals("ENVELOPE_SQUARE"))
        .singleElement()
        .satisfies(a -> assertThat(a.text()).contains("a square of 193 mm", "not 200 mm"));
    assertThat(
            plan(
                    ENVELOPE,
                    1000,
                    280,
                    LaminationPlan.Setup.SMALL_BENCH.withPacketWidth(millimetres(192.6)))
                .advice())
        .extracting(Advice::code)
        .doesNotContain("ENVELOPE_SQUARE");
  }

  @Test
  void blockAndFoldingThicknessCanBeSet() {
    LaminationPlan.Setup setup =
        LaminationPlan.Setup.SMALL_BENCH
            .withFatThickness(millimetres(12))
            .withFoldThickness(millimetres(10))
            .withMargin(millimetres(0));
    LaminationPlan plan = plan(FoldSequence.lockIn(LockIn.HALF).fold(Fold.BOOK), 1000, 280, setup);
    assertThat(plan.blockThickness()).isEqualTo(millimetres(12));
    assertThat(plan.steps().get(1).thickness()).isEqualTo(millimetres(10));
    assertThat(plan.steps().get(2).thickness()).isEqualTo(millimetres(40));
    assertThat(plan.block().width()).isEqualTo(millimetres(200));
  }

  @Test
  void fatThatHandsCanNotLayIsSaid() {
    FoldSequence turns = FoldSequence.lockIn(LockIn.HALF).fold(Fold.BOOK).fold(Fold.LETTER);
    LaminationPlan.Setup bench = LaminationPlan.Setup.SMALL_BENCH;
    assertThat(plan(turns, 1000, 280, bench.withFatThickness(millimetres(3))).advice())
        .extracting(Advice::code)
        .contains("FAT_PLATE_THIN");
    assertThat(plan(turns, 1000, 280, bench.withFatThickness(millimetres(20))).advice())
        .extracting(Advice::code)
        .contains("FAT_PLATE_THICK");
    assertThat(plan(turns, 10_000, 2800, bench).advice())
        .extracting(Advice::code)
        .contains("FAT_PLATE_LARGE");
    assertThat(plan(turns, 1000, 280, bench.withFoldThickness(millimetres(4))).advice())
        .extracting(Advice::code)
        .contains("FOLD_THICKNESS_UNUSUAL");
  }

  @Test
  void invertedFatIsADoughOfItsOwnOfAThicknessThatHandsCanLay() {
    FoldSequence turns =
        FoldSequence.lockIn(LockIn.OUTSIDE).fold(Fold.BOOK).fold(Fold.LETTER).fold(Fold.BOOK);
    LaminationPlan plan =
        LaminationPlan.of(
            INVERTED, turns, LaminationPlan.Setup.SMALL_BENCH.suiting(LockIn.OUTSIDE));
    // the fat is the sheet: twice as long as the packet, 6 mm thick, as wide as the packet
    assertThat(plan.sheetThickness()).isEqualTo(millimetres(6));
    assertThat(plan.sheet().width()).isEqualTo(millimetres(200));
    double packet = plan.steps().get(0).extent().length().in(MILLIMETRE);
    assertThat(plan.sheet().length().in(MILLIMETRE)).isCloseTo(2 * packet, within(1e-6));
    assertThat(plan.block().length().in(MILLIMETRE)).isCloseTo(packet - 20, within(1e-6));
    assertThat(plan.blockThickness().in(MILLIMETRE)).isBetween(8.0, 25.0);
    assertThat(plan.kind()).isEqualTo(LaminatedDough.PUFF);
    assertThat(plan.advice())
        .extracting(Advice::code)
        .doesNotContain("FAT_PLATE_THIN", "FAT_PLATE_THICK", "ROLL_IN_UNUSUAL");
    assertThat(plan.fat()).isEqualTo(grams(1050));
    assertThatThrownBy(
            () -> plan(turns, 1000, 30, LaminationPlan.Setup.SMALL_BENCH.suiting(LockIn.OUTSIDE)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("too small to enclose");
  }

  private static FoldSequence six(LockIn lockIn) {
    FoldSequence sequence = FoldSequence.lockIn(lockIn);
    for (int i = 0; i < 6; i++) {
      sequence = sequence.fold(Fold.LETTER);
    }
    return sequence;
  }

  @Test
  void sixSingleTurnsAreNotedAndNotScolded() {
    for (double thickness = 2; thickness <= 4; thickness += 0.5) {
      LaminationPlan.Setup setup =
          LaminationPlan.Setup.SMALL_BENCH.withFinalSheet(millimetres(thickness), millimetres(300));
      for (LockIn lockIn : List.of(LockIn.HALF, LockIn.ENVELOPE, LockIn.OUTSIDE)) {
        LaminationPlan plan =
            LaminationPlan.of(
                lockIn.fatOutside() ? INVERTED : PUFF, six(lockIn), setup.suiting(lockIn));
        assertThat(plan.advice())
            .filteredOn(a -> a.code().startsWith("FAT_LAYER"))
            .singleElement()
            .satisfies(
                a -> {
                  assertThat(a.severity()).isEqualTo(Severity.NOTE);
                  assertThat(a.text()).contains("classical puff dough");
                });
      }
      // of masses alone the kind is not said, and the classical dough is known by its turns
      assertThat(plan(six(LockIn.HALF), 1000, 500, setup).advice())
          .extracting(Advice::code)
          .contains("FAT_LAYERS_CLASSICAL")
          .doesNotContain(
              "FAT_LAYER_THIN", "FAT_LAYER_FINE", "FAT_LAYERS_MANY", "FAT_LAYERS_UNUSUAL");
    }
  }

  @Test
  void manyLayersAreAdvisedByWhatIsBaked() {
    FoldSequence books =
        FoldSequence.of(LockIn.HALF, Fold.BOOK, Fold.BOOK, Fold.BOOK, Fold.LETTER, Fold.LETTER);
    assertThat(books.fatLayers()).isEqualTo(576);
    LaminationPlan.Setup setup =
        LaminationPlan.Setup.SMALL_BENCH.withFinalSheet(millimetres(4), millimetres(300));
    LaminationPlan puff = LaminationPlan.of(PUFF, books, setup);
    assertThat(puff.advice())
        .extracting(Advice::code)
        .doesNotContain(
            "FAT_LAYERS_MANY", "FAT_LAYERS_UNUSUAL", "FAT_LAYER_THIN", "FAT_LAYER_FINE");
    assertThat(LaminationPlan.of(BatchPlanTest.CRESCENTS, books, setup).advice())
        .filteredOn(a -> a.code().equals("FAT_LAYERS_MANY"))
        .singleElement()
        .satisfies(
            a -> {
              assertThat(a.severity()).isEqualTo(Severity.WARNING);
              assertThat(a.remedy()).contains("12 to 50");
            });
    assertThat(puff.withKind(LaminatedDough.YEASTED).advice())
        .extracting(Advice::code)
        .contains("FAT_LAYERS_MANY");
    assertThat(LaminationPlan.of(PUFF, books.fold(Fold.LETTER), setup).advice())
        .extracting(Advice::code)
        .contains("FAT_LAYERS_MANY");
    assertThat(LaminationPlan.of(BatchPlanTest.CRESCENTS, six(LockIn.HALF), setup).advice())
        .extracting(Advice::code)
        .contains("FAT_LAYERS_MANY");
  }

  private record Piece(Band band, double share) {}

  private static List<Piece> reversed(List<Piece> stack) {
    List<Piece> turned = new ArrayList<>();
    stack.forEach(p -> turned.add(0, p));
    return turned;
  }

  /** Rolls as hands do: what is folded so far is turned over onto the next panel. */
  private static List<Piece> rolledByHand(LayerStack sheet, int panels) {
    List<Piece> panel = new ArrayList<>();
    for (int i = 0; i < sheet.size(); i++) {
      panel.add(new Piece(sheet.band(i), sheet.share(i) / panels));
    }
    List<Piece> rolled = new ArrayList<>(panel);
    for (int i = 1; i < panels; i++) {
      List<Piece> next = new ArrayList<>(panel);
      next.addAll(reversed(rolled));
      rolled = next;
    }
    List<Piece> fused = new ArrayList<>();
    for (Piece piece : rolled) {
      Piece last = fused.isEmpty() ? null : fused.get(fused.size() - 1);
      if (last != null && last.band() == piece.band()) {
        fused.set(fused.size() - 1, new Piece(piece.band(), last.share() + piece.share()));
      } else {
        fused.add(piece);
      }
    }
    return fused;
  }

  @Property(tries = 100)
  void aRolledStackIsTheOneThatRealRollingGives(
      @ForAll @IntRange(min = 2, max = 12) int panels,
      @ForAll @IntRange(min = 0, max = 2) int which,
      @ForAll @DoubleRange(min = 0.05, max = 0.6) double fat) {
    LockIn lockIn =
        List.of(
                LockIn.of("open", Band.DOUGH, Band.FAT),
                LockIn.of("upside down", Band.FAT, Band.DOUGH, Band.FAT, Band.DOUGH),
                LockIn.HALF)
            .get(which);
    LayerStack sheet = LayerStack.of(lockIn, fat).fold(Fold.rolled(3));
    List<Piece> byHand = rolledByHand(sheet, panels);
    LayerStack rolled = sheet.fold(Fold.rolled(panels));
    assertThat(rolled.size()).isEqualTo(byHand.size());
    for (int i = 0; i < byHand.size(); i++) {
      assertThat(rolled.band(i)).isEqualTo(byHand.get(i).band());
      assertThat(rolled.share(i)).isCloseTo(byHand.get(i).share(), within(1e-12));
    }
  }

  @Test
  void theStartOfASequenceCanNotBeCalledOnAChainOfFolds() throws Exception {
    // a static method of an interface has no receiver: turns.lockIn(…) does not compile
    assertThat(FoldSequence.class.isInterface()).isTrue();
    assertThat(
            Modifier.isStatic(FoldSequence.class.getMethod("lockIn", LockIn.class).getModifiers()))
        .isTrue();
    for (var method : FoldSequence.class.getMethods()) {
      boolean step = !Modifier.isStatic(method.getModifiers()) && method.getParameterCount() > 0;
      assertThat(step && List.of("lockIn", "of").contains(method.getName())).isFalse();
    }
  }

  @Test
  void placesThatAStackDoesNotHaveAreNamed() {
    LayerStack stack = FoldSequence.lockIn(LockIn.HALF).fold(Fold.BOOK).stack(0.25);
    for (int index : new int[] {-1, 9, Integer.MAX_VALUE}) {
      assertThatThrownBy(() -> stack.share(index))
          .isInstanceOf(BakeryException.class)
          .hasMessageContaining("band " + index + " of 9");
      assertThatThrownBy(() -> stack.band(index)).isInstanceOf(BakeryException.class);
    }
  }

  @Test
  void countsWithoutMeasureAreRefusedWithTheLimit() {
    assertThatThrownBy(() -> LockIn.blocks(100_000_000))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("1 to 500");
    assertThatThrownBy(() -> LockIn.blocks(Integer.MIN_VALUE)).hasMessageContaining("1 to 500");
    FoldSequence halvings = FoldSequence.lockIn(LockIn.HALF);
    CreasePlan creases = CreasePlan.flat();
    for (int i = 1; i <= 24; i++) {
      halvings = halvings.fold(Fold.HALF);
    }
    FoldSequence many = halvings;
    assertThat(many.fatLayers()).isEqualTo(1 << 24);
    assertThatThrownBy(() -> many.stack(0.25)).hasMessageContaining("up to 2000000");
    for (int i = 1; i <= 10; i++) {
      creases = creases.left(Fraction.of((1 << i) - 1, 1 << i));
    }
    CreasePlan folded = creases;
    assertThatThrownBy(() -> folded.left(Fraction.of(2047, 2048)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("up to 1024");
    FoldSequence hundred = FoldSequence.lockIn(LockIn.HALF);
    for (int i = 0; i < 100; i++) {
      hundred = hundred.fold(Fold.BOOK);
    }
    FoldSequence tooMany = hundred;
    assertThatThrownBy(() -> plan(tooMany, 1000, 280, LaminationPlan.Setup.SMALL_BENCH))
        .hasMessageContaining("100 folds");
  }
}
