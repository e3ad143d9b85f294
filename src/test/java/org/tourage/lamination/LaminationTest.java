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
import javax.measure.quantity.Length;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Extent;
import org.tourage.quantity.Fraction;
import org.tourage.reference.Checks;

class LaminationTest {
  private static final FoldSequence BOOK_LETTER =
      FoldSequence.lockIn(LockIn.HALF).fold(Fold.BOOK).fold(Fold.LETTER);

  private static BigInteger figure(String check) {
    return BigInteger.valueOf((long) Checks.row("other-rooms.csv", check).number("value"));
  }

  private static FoldSequence sequence(LockIn lockIn, Fold... folds) {
    return FoldSequence.of(lockIn, List.of(folds));
  }

  @Test
  void layerCountsAreThoseOfBandsFoldedByHandAndOfTheClassicalDoughs() {
    assertThat(BOOK_LETTER.fatLayers())
        .isEqualTo(figure("fat layers of half with book and letter"));
    assertThat(BOOK_LETTER.doughLayers())
        .isEqualTo(figure("dough layers of half with book and letter"));
    assertThat(BOOK_LETTER.doughLayersByMultiplication())
        .isEqualTo(figure("multiplied dough layers of half with book and letter"));
    FoldSequence letters = sequence(LockIn.HALF, Fold.LETTER, Fold.LETTER, Fold.LETTER);
    assertThat(letters.fatLayers()).isEqualTo(figure("fat layers of half with three letters"));
    assertThat(letters.doughLayers()).isEqualTo(figure("dough layers of half with three letters"));
    FoldSequence thirds = sequence(LockIn.THIRDS, Fold.BOOK, Fold.BOOK);
    assertThat(thirds.fatLayers()).isEqualTo(figure("fat layers of thirds with two books"));
    assertThat(thirds.doughLayers()).isEqualTo(figure("dough layers of thirds with two books"));
    assertThat(thirds.doughLayersByMultiplication())
        .isEqualTo(figure("multiplied dough layers of thirds with two books"));
    FoldSequence outside = sequence(LockIn.OUTSIDE, Fold.LETTER, Fold.BOOK);
    assertThat(outside.doughLayers())
        .isEqualTo(figure("dough layers of outside with letter and book"));
    assertThat(outside.fatLayers()).isEqualTo(figure("fat layers of outside with letter and book"));
    FoldSequence six =
        sequence(
            LockIn.ENVELOPE,
            Fold.LETTER,
            Fold.LETTER,
            Fold.LETTER,
            Fold.LETTER,
            Fold.LETTER,
            Fold.LETTER);
    assertThat(six.fatLayers()).isEqualTo(figure("fat layers of half with six letters"));
    assertThat(six.doughLayers()).isEqualTo(figure("dough layers of half with six letters"));
    assertThat(six.layers()).isEqualTo(BigInteger.valueOf(1459));
  }

  @Test
  void theSequenceExplainsItself() {
    assertThat(BOOK_LETTER)
        .hasToString("lock-in half, book fold, letter fold: 12 fat layers, 13 dough layers");
    assertThat(BOOK_LETTER.working().toString())
        .contains("1 × 4 × 3 = 12")
        .contains("24 − 11 = 13");
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

  private static final List<LockIn> LOCK_INS =
      List.of(
          LockIn.HALF,
          LockIn.THIRDS,
          LockIn.ENVELOPE,
          LockIn.OUTSIDE,
          LockIn.blocks(3),
          LockIn.of("open", Band.DOUGH, Band.FAT),
          LockIn.of("upside down", Band.FAT, Band.DOUGH, Band.FAT, Band.DOUGH));

  private static final List<Fold> FOLDS =
      List.of(
          Fold.HALF,
          Fold.LETTER,
          Fold.BOOK,
          Fold.zigzag(3),
          Fold.zigzag(5),
          Fold.rolled(4),
          Fold.GATE);

  /** Bands as letters, folded panel by panel as hands do it: shares nothing with the library. */
  private static String foldByHand(String stack, Fold fold) {
    String turned = new StringBuilder(stack).reverse().toString();
    String folded = stack;
    for (int i = 1; i < fold.panels(); i++) {
      if (fold.style() == Fold.Style.ZIGZAG) {
        folded += i % 2 == 1 ? turned : stack;
      } else {
        // each further panel turns all that was folded over onto itself
        folded = stack + new StringBuilder(folded).reverse();
      }
    }
    return folded.replaceAll("D+", "D").replaceAll("F+", "F");
  }

  private static String letters(LockIn lockIn) {
    StringBuilder letters = new StringBuilder();
    lockIn.bands().forEach(b -> letters.append(b.name().charAt(0)));
    return letters.toString();
  }

  private static void check(FoldSequence sequence, String byHand) {
    LayerCount count = sequence.count();
    assertThat(count.fat().longValueExact())
        .as(sequence.toString())
        .isEqualTo(byHand.chars().filter(c -> c == 'F').count());
    assertThat(count.dough().longValueExact())
        .as(sequence.toString())
        .isEqualTo(byHand.chars().filter(c -> c == 'D').count());
    assertThat(count.bottom().name().charAt(0)).isEqualTo(byHand.charAt(0));
    assertThat(count.top().name().charAt(0)).isEqualTo(byHand.charAt(byHand.length() - 1));
  }

  private static void everySequence(FoldSequence sequence, String byHand, int left) {
    check(sequence, byHand);
    for (int panels = 2; left > 0 && panels <= 5; panels++) {
      Fold fold = panels == 3 ? Fold.LETTER : Fold.zigzag(panels);
      everySequence(sequence.fold(fold), foldByHand(byHand, fold), left - 1);
    }
  }

  @Test
  void everySequenceOfUpToFiveFoldsInTwoToFiveAgreesWithFoldingByHand() {
    for (LockIn lockIn : LOCK_INS) {
      everySequence(FoldSequence.lockIn(lockIn), letters(lockIn), 5);
    }
  }

  @Provide
  Arbitrary<LockIn> lockIns() {
    return Arbitraries.of(LOCK_INS);
  }

  @Provide
  Arbitrary<List<Fold>> folds() {
    return Arbitraries.of(FOLDS).list().ofMaxSize(5);
  }

  @Property(tries = 300)
  void theClosedFormTheStackAndFoldingByHandAgree(
      @ForAll("lockIns") LockIn lockIn, @ForAll("folds") List<Fold> folds) {
    String byHand = letters(lockIn);
    for (Fold fold : folds) {
      byHand = foldByHand(byHand, fold);
    }
    FoldSequence sequence = FoldSequence.of(lockIn, folds);
    check(sequence, byHand);
    LayerStack stack = sequence.stack(0.3);
    assertThat(stack.size()).isEqualTo(byHand.length());
    assertThat(stack.count(Band.FAT)).isEqualTo(sequence.fatLayers().intValueExact());
    double sum = 0;
    double fat = 0;
    for (int i = 0; i < stack.size(); i++) {
      sum += stack.share(i);
      fat += stack.band(i) == Band.FAT ? stack.share(i) : 0;
    }
    assertThat(sum).isCloseTo(1, within(1e-9));
    assertThat(fat).isCloseTo(0.3, within(1e-9));
    assertThat(stack.reversed().reversed()).isEqualTo(stack).hasSameHashCodeAs(stack);
  }

  @Test
  void theTwoKindsOfFoldDifferOnlyWhereTheFacesAreUnlike() {
    FoldSequence open = FoldSequence.lockIn(LockIn.of("open", Band.DOUGH, Band.FAT));
    LayerCount zigzag = open.fold(Fold.zigzag(7)).count();
    LayerCount inward = open.fold(Fold.rolled(7)).count();
    assertThat(zigzag).hasToString("4 fat layers, 4 dough layers");
    assertThat(inward).hasToString("6 fat layers, 7 dough layers");
    assertThat(open.advice()).extracting(Advice::code).containsExactly("UNLIKE_FACES");
    assertThat(open.fold(Fold.rolled(7)).working().toString()).contains("7 − 1 = 6");
    FoldSequence half = FoldSequence.lockIn(LockIn.HALF);
    assertThat(half.fold(Fold.rolled(7)).count()).isEqualTo(half.fold(Fold.zigzag(7)).count());
  }

  @Test
  void countsNeverOverflow() {
    FoldSequence sequence = FoldSequence.lockIn(LockIn.HALF);
    for (int i = 0; i < 60; i++) {
      sequence = sequence.fold(Fold.LETTER);
    }
    assertThat(sequence.fatLayers()).isEqualTo(BigInteger.valueOf(3).pow(60));
    assertThat(sequence.doughLayers()).isEqualTo(BigInteger.valueOf(3).pow(60).add(BigInteger.ONE));
    assertThat(sequence.multiplier()).isEqualTo(BigInteger.valueOf(3).pow(60));
    assertThat(sequence.counts()).hasSize(61);
    FoldSequence long60 = sequence;
    assertThatThrownBy(() -> long60.stack(0.3)).hasMessageContaining("too many bands");
    assertThatThrownBy(() -> LayerStack.of(LockIn.HALF, 1.2)).hasMessageContaining("1.2");
    assertThatThrownBy(() -> LockIn.of("none", Band.DOUGH)).hasMessageContaining("no packet");
    assertThatThrownBy(() -> LockIn.of("twice", Band.DOUGH, Band.FAT, Band.FAT))
        .hasMessageContaining("in turn");
    assertThatThrownBy(() -> LockIn.blocks(0)).hasMessageContaining("no packet");
    assertThat(FoldSequence.lockIn(LockIn.HALF).fold(Fold.BOOK).stack(0.25))
        .hasToString("9 bands: DFDFDFDFD");
  }

  @Test
  void innerDoughLayersAreTwiceTheOuterOnes() {
    LayerStack stack =
        FoldSequence.lockIn(LockIn.HALF).fold(Fold.LETTER).fold(Fold.BOOK).stack(0.25);
    assertThat(stack.share(0) * 2).isCloseTo(stack.share(2), within(1e-12));
    assertThat(stack.share(1)).isCloseTo(0.25 / 12, within(1e-12));
    assertThat(stack.bottom()).isEqualTo(Band.DOUGH);
    assertThat(stack.top()).isEqualTo(Band.DOUGH);
  }

  private static final LayerCount PACKET = LayerCount.of(LockIn.HALF);

  @Test
  void creasesAtEqualPanelsAreTheNamedFolds() {
    CreasePlan letter = CreasePlan.flat().right(Fraction.of(2, 3)).left(Fraction.of(1, 3));
    assertThat(letter.regions(PACKET)).hasSize(1);
    assertThat(letter.regions(PACKET).get(0).layers())
        .isEqualTo(FoldSequence.lockIn(LockIn.HALF).fold(Fold.LETTER).count());
    assertThat(letter.meanPanels()).isEqualTo(Fraction.of(3));
    CreasePlan book =
        CreasePlan.flat().left(Fraction.of(1, 4)).right(Fraction.of(3, 4)).right(Fraction.of(1, 2));
    assertThat(book.regions(PACKET).get(0).layers())
        .isEqualTo(FoldSequence.lockIn(LockIn.HALF).fold(Fold.BOOK).count());
    LockIn open = LockIn.of("open", Band.DOUGH, Band.FAT);
    CreasePlan zigzag = CreasePlan.flat().right(Fraction.of(2, 3)).leftUnder(Fraction.of(1, 3));
    assertThat(zigzag.regions(LayerCount.of(open)).get(0).layers().layers())
        .isEqualTo(FoldSequence.lockIn(open).fold(Fold.zigzag(3)).layers());
    assertThat(letter.regions(LayerCount.of(open)).get(0).layers())
        .isEqualTo(FoldSequence.lockIn(open).fold(Fold.LETTER).count());
  }

  @Test
  void aSeamOffCentreStillHasFourPanelsEverywhere() {
    CreasePlan book =
        CreasePlan.flat().left(Fraction.of(1, 8)).right(Fraction.of(5, 8)).right(Fraction.of(3, 8));
    assertThat(book.length()).isEqualTo(Fraction.of(1, 4));
    assertThat(book.regions(PACKET)).allSatisfy(r -> assertThat(r.panels()).isEqualTo(4));
    assertThat(book.regions(PACKET).get(0).layers().fat()).isEqualTo(BigInteger.valueOf(4));
  }

  @Test
  void panelsThatOverlapInPartAreReportedRegionByRegion() {
    CreasePlan part = CreasePlan.flat().right(Fraction.of(3, 5)).left(Fraction.of(1, 5));
    List<CreasePlan.Region> regions = part.regions(PACKET);
    assertThat(regions).hasSize(2);
    assertThat(regions.get(0)).hasToString("1/5 to 2/5: 3 panels, 3 fat layers, 4 dough layers");
    assertThat(regions.get(1)).hasToString("2/5 to 3/5: 2 panels, 2 fat layers, 3 dough layers");
    assertThat(part.meanPanels()).isEqualTo(Fraction.of(5, 2));
    assertThat(part).hasToString("1/5 to 2/5: 3 panels; 2/5 to 3/5: 2 panels");
    assertThatThrownBy(() -> CreasePlan.flat().left(Fraction.ZERO))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("nothing to fold");
    assertThat(
            CreasePlan.flat().rightUnder(Fraction.of(1, 2)).regions(PACKET).get(0).layers().fat())
        .isEqualTo(BigInteger.valueOf(2));
  }

  @Property(tries = 300)
  void foldingNeverLosesSheet(
      @ForAll @Size(min = 1, max = 4) List<@IntRange(min = 1, max = 15) Integer> creases,
      @ForAll boolean left) {
    CreasePlan plan = CreasePlan.flat();
    Fraction low = Fraction.ZERO;
    Fraction high = Fraction.ONE;
    for (int sixteenths : creases) {
      Fraction crease = low.plus(high.minus(low).times(Fraction.of(sixteenths, 16)));
      plan = left ? plan.left(crease) : plan.right(crease);
      List<CreasePlan.Region> regions = plan.regions(PACKET);
      low = regions.get(0).from();
      high = regions.get(regions.size() - 1).to();
    }
    Fraction area = Fraction.ZERO;
    for (CreasePlan.Region region : plan.regions(PACKET)) {
      area = area.plus(region.to().minus(region.from()).times(Fraction.of(region.panels())));
      // with dough on both faces there is one dough layer more, wherever panels lie
      assertThat(region.layers().dough()).isEqualTo(region.layers().fat().add(BigInteger.ONE));
    }
    assertThat(area).isEqualTo(Fraction.ONE);
  }

  @Test
  void theSearchFindsTheFewestTurnsAndNothingElse() {
    List<FoldSearch.Found> found = FoldSearch.reach(LockIn.HALF, 12, 27, 3);
    assertThat(found.get(0).sequence().folds()).containsExactly(Fold.BOOK, Fold.BOOK);
    assertThat(found.get(0).reason()).isEqualTo("2 turns, the fewest, one kind of fold");
    assertThat(found)
        .allSatisfy(f -> assertThat(f.sequence().fatLayers().intValueExact()).isBetween(12, 27));
    assertThat(found.stream().map(f -> f.sequence().fatLayers().intValueExact()).distinct())
        .containsExactlyInAnyOrder(16, 12, 27, 18, 24);
    assertThat(FoldSearch.reach(LockIn.HALF, 5, 5, 4)).isEmpty();
    assertThat(FoldSearch.reach(LockIn.THIRDS, 24, 24, 2).get(0).toString())
        .contains("book fold, letter fold: 24 fat layers")
        .contains("2 turns");
    assertThatThrownBy(() -> FoldSearch.reach(LockIn.HALF, 9, 3, 2))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> FoldSearch.reach(LockIn.of("open", Band.DOUGH, Band.FAT), 1, 3, 2))
        .hasMessageContaining("unlike faces");
  }

  private static LaminationPlan plan(FoldSequence sequence, double dough, double fat) {
    return LaminationPlan.of(
        sequence,
        grams(dough),
        grams(fat),
        kilogramsPerCubicMetre(1200),
        kilogramsPerCubicMetre(920),
        LaminationPlan.Setup.SMALL_BENCH.suiting(sequence.lockIn()));
  }

  @Test
  void layerThicknessesAreTheWorkedOnes() {
    LaminationPlan plan =
        plan(sequence(LockIn.HALF, Fold.LETTER, Fold.LETTER, Fold.LETTER), 1000, 250);
    LaminationStep last = plan.steps().get(plan.steps().size() - 1);
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
      @ForAll("lockIns") LockIn lockIn,
      @ForAll("folds") @Size(max = 4) List<Fold> folds,
      @ForAll @DoubleRange(min = 200, max = 20_000) double dough,
      @ForAll @DoubleRange(min = 50, max = 5000) double fat) {
    LaminationPlan plan = plan(FoldSequence.of(lockIn, folds), dough, fat);
    double volume = dough / 1200 / 1000 + fat / 920 / 1000;
    for (LaminationStep step : plan.steps()) {
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
    double sheet = volume(plan.sheet(), plan.sheetThickness());
    double block = volume(plan.block(), plan.blockThickness());
    assertThat(lockIn.fatOutside() ? block : sheet)
        .as("the dough of %s", lockIn)
        .isCloseTo(dough / 1200 / 1000, within(volume * 1e-9));
    assertThat(lockIn.fatOutside() ? sheet : block)
        .as("the fat of %s", lockIn)
        .isCloseTo(fat / 920 / 1000, within(volume * 1e-9));
    assertThat(lockIn.fatOutside() ? plan.sheetThickness() : plan.blockThickness())
        .isEqualTo(plan.setup().fatThickness());
  }

  private static double volume(Extent extent, Amount<Length> thickness) {
    return extent.length().in(METRE) * extent.width().in(METRE) * thickness.in(METRE);
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
    // one rolling from 30 mm to 4 mm wants a rest
    assertThat(plan(FoldSequence.lockIn(LockIn.HALF), 1000, 280).advice())
        .extracting(Advice::code)
        .containsExactly("FAT_LAYERS_UNUSUAL", "REST_BETWEEN");
    // after a book the last rolling goes from 32 mm to 4 mm
    FoldSequence many = BOOK_LETTER.fold(Fold.BOOK).fold(Fold.BOOK).fold(Fold.BOOK);
    assertThat(plan(many, 1000, 280).advice())
        .extracting(Advice::code)
        .containsExactly("FAT_LAYERS_MANY", "REST_BETWEEN");
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
