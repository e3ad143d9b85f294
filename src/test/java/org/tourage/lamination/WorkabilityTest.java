package org.tourage.lamination;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.MILLIMETRE;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.physics.Air;
import org.tourage.physics.Constituents;
import org.tourage.quantity.BakeryUnits;
import org.tourage.reference.Checks;

class WorkabilityTest {
  private static final FatCurve DAIRY = FatCurve.named("dairy butterfat");
  private static final Constituents DOUGH = new Constituents(0.40, 0.07, 0.03, 0.46, 0.02, 0.02);
  private static final Constituents BUTTER = new Constituents(0.165, 0.002, 0.807, 0.007, 0, 0.019);
  private static final LaminationPlan PLAN =
      LaminationPlan.of(
          FoldSequence.lockIn(LockIn.HALF).fold(Fold.BOOK).fold(Fold.LETTER),
          grams(1000),
          grams(280),
          kilogramsPerCubicMetre(1200),
          kilogramsPerCubicMetre(940),
          LaminationPlan.Setup.SMALL_BENCH);

  private static SheetBody sheet(double millimetres) {
    return SheetBody.of(PLAN, millimetres(millimetres), DOUGH, BUTTER, DAIRY);
  }

  @Test
  void fiveCurvesFourOfThemFromPlantsFallWithTheTemperature() {
    assertThat(FatCurve.all())
        .extracting(FatCurve::name)
        .containsExactly(
            "dairy butterfat", "palm oil", "coconut oil", "palm kernel oil", "cocoa butter");
    assertThat(FatCurve.all()).allSatisfy(c -> assertThat(c.source()).contains("from memory"));
    assertThat(DAIRY.window().low().in(CELSIUS)).isCloseTo(12.5, within(1e-9));
    // what bakers give dairy butter: about 13 to 18 °C, common practice
    assertThat(DAIRY.window().high().in(CELSIUS)).isBetween(18.0, 19.0);
    assertThat(DAIRY.solid(celsius(17.5))).isEqualTo(percent(28.75));
    assertThat(DAIRY.solid(celsius(-10))).isEqualTo(percent(60));
    assertThat(DAIRY.solid(celsius(60))).isEqualTo(percent(0));
    assertThat(DAIRY)
        .hasToString("dairy butterfat: can be rolled from 12.5 °C (55 °F) to 18.6 °C (65 °F)");
  }

  @Property
  void solidFatAndTemperatureAreInverse(@ForAll @DoubleRange(min = 0.5, max = 60) double percent) {
    assertThat(DAIRY.solid(DAIRY.temperatureAt(percent(percent))).value())
        .isCloseTo(percent, within(1e-9));
  }

  @Test
  void matchTellsHardSoftAndWarm() {
    assertThat(DAIRY.match(celsius(15), celsius(6))).isEmpty();
    assertThat(DAIRY.match(fahrenheit(40), celsius(6)))
        .extracting(Advice::code)
        .containsExactly("FAT_HARD");
    assertThat(DAIRY.match(celsius(22), celsius(21)))
        .extracting(Advice::code)
        .containsExactly("FAT_SOFT", "DOUGH_WARM");
    assertThat(DAIRY.match(celsius(22), celsius(6)).get(0).text())
        .contains("22 °C (72 °F)")
        .contains("16.6 % solid");
  }

  @Test
  void oneOfOnesOwnIsWelcomeAndNonsenseIsRefused() {
    FatCurve own =
        FatCurve.of(
            "block from the data sheet",
            Map.of(10.0, 55.0, 20.0, 32.0, 30.0, 12.0, 40.0, 0.0),
            90_000,
            "supplier");
    assertThat(own.window().contains(celsius(18))).isTrue();
    assertThat(own).isNotEqualTo(DAIRY).isEqualTo(own).hasSameHashCodeAs(own);
    assertThatThrownBy(() -> FatCurve.of("x", Map.of(10.0, 5.0), 0, "s"))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> FatCurve.of("x", Map.of(10.0, 5.0, 20.0, 7.0), 0, "s"))
        .hasMessageContaining("must fall");
    assertThatThrownBy(() -> FatCurve.named("brand x")).hasMessageContaining("dairy butterfat");
    assertThatThrownBy(() -> DAIRY.temperatureAt(percent(90))).hasMessageContaining("90 %");
    assertThatThrownBy(() -> new Air(celsius(20), 0)).hasMessageContaining("0.0 W");
    assertThatThrownBy(() -> sheet(0)).hasMessageContaining("0 mm");
    assertThat(Air.moved(celsius(4))).hasToString("air at 4 °C (39 °F)");
  }

  private static double minutes(SheetBody body, Bench bench, double start, double room) {
    return body.untilTooSoft(celsius(start), bench, Air.still(celsius(room)))
        .orElseThrow()
        .in(MINUTE);
  }

  @Test
  void aSheetStaysWorkableForAPlausibleTime() {
    // a 20 mm packet from the refrigerator in a room of 22 °C: tens of minutes
    assertThat(minutes(sheet(20), Bench.WOOD, 5, 22)).isBetween(15.0, 180.0);
    assertThat(minutes(sheet(4), Bench.RACK, 5, 22)).isBetween(3.0, 40.0);
  }

  @Test
  void thickerSheetsCoolerRoomsAndPoorConductorsGiveMoreTime() {
    assertThat(minutes(sheet(20), Bench.WOOD, 5, 22))
        .isGreaterThan(minutes(sheet(10), Bench.WOOD, 5, 22));
    assertThat(minutes(sheet(10), Bench.WOOD, 5, 22))
        .isGreaterThan(minutes(sheet(10), Bench.WOOD, 5, 26));
    assertThat(minutes(sheet(10), Bench.WOOD, 5, 22))
        .isGreaterThan(minutes(sheet(10), Bench.WOOD, 10, 22));
    assertThat(minutes(sheet(10), Bench.WOOD, 5, 24))
        .isGreaterThan(minutes(sheet(10), Bench.STONE, 5, 24));
  }

  @Property(tries = 30)
  void warmingTimeFallsWithTheRoom(
      @ForAll @DoubleRange(min = 20, max = 30) double room,
      @ForAll @DoubleRange(min = 0.5, max = 5) double more) {
    assertThat(minutes(sheet(8), Bench.STEEL, 6, room))
        .isGreaterThan(minutes(sheet(8), Bench.STEEL, 6, room + more));
  }

  @Test
  void aCoolRoomNeverSoftensAndAWarmSheetIsTooSoftAtOnce() {
    assertThat(sheet(8).untilTooSoft(celsius(5), Bench.WOOD, Air.still(celsius(16)))).isEmpty();
    assertThat(sheet(8).untilTooSoft(celsius(21), Bench.WOOD, Air.still(celsius(22))))
        .contains(MINUTE.amount(0));
    assertThat(sheet(8).untilChilled(celsius(20), celsius(3), Bench.RACK, Air.still(celsius(4))))
        .isEmpty();
  }

  @Test
  void chillingAndTemperingReachTheirTemperature() {
    double still =
        sheet(20)
            .untilChilled(celsius(20), celsius(8), Bench.RACK, Air.still(celsius(4)))
            .orElseThrow()
            .in(MINUTE);
    double moved =
        sheet(20)
            .untilChilled(celsius(20), celsius(8), Bench.RACK, Air.moved(celsius(4)))
            .orElseThrow()
            .in(MINUTE);
    assertThat(moved).isBetween(10.0, still);
    double freezer =
        sheet(20)
            .untilChilled(celsius(20), celsius(8), Bench.RACK, Air.still(celsius(-18)))
            .orElseThrow()
            .in(MINUTE);
    assertThat(freezer).isLessThan(still);
    double tempered =
        sheet(10)
            .untilTempered(celsius(4), Bench.WOOD, Air.still(celsius(20)))
            .orElseThrow()
            .in(MINUTE);
    assertThat(tempered).isBetween(5.0, 240.0);
    double soft =
        sheet(10)
            .untilTooSoft(celsius(4), Bench.WOOD, Air.still(celsius(20)))
            .orElseThrow()
            .in(MINUTE);
    assertThat(soft).isGreaterThan(tempered);
  }

  @Test
  void theAnswerForALumpIsTheExponential() {
    // thin and without melting the sheet is a lump: T = T∞ + (T0 − T∞) e^(−2ht/ρcL)
    SheetBody lump = new SheetBody(millimetres(2), 5, 1100, 2800, 0, DAIRY);
    double limit = DAIRY.window().high().in(CELSIUS);
    double expected = 1100 * 2800 * 0.002 / (2 * 8) * Math.log((25 - 5) / (25 - limit)) / 60;
    double found =
        lump.untilTooSoft(celsius(5), Bench.RACK, Air.still(celsius(25))).orElseThrow().in(MINUTE);
    assertThat(found).isCloseTo(expected, within(0.005 * expected));
  }

  @Test
  void theGaugeScheduleIsTheWorkedOne() {
    RollingSchedule schedule =
        RollingSchedule.of(millimetres(30), millimetres(4), 1.5, millimetres(200));
    List<RollingSchedule.Pass> passes = schedule.passes();
    double[] worked = {20.050, 13.400, 8.955, 5.985, 4};
    assertThat(passes).hasSize(5);
    for (int i = 0; i < 5; i++) {
      assertThat(passes.get(i).gap().in(MILLIMETRE)).isCloseTo(worked[i], within(1e-3));
      assertThat(passes.get(i).gap().in(MILLIMETRE) * passes.get(i).length().in(MILLIMETRE))
          .isCloseTo(6000, within(1e-6));
    }
    assertThat(passes.get(0)).hasToString("pass 1 forth: gap 20 mm");
    assertThat(passes.get(1).forth()).isFalse();
    assertThat(schedule.strain()).isCloseTo(Math.log(7.5), within(1e-12));
    assertThat(schedule).hasToString("30 mm → 20 mm → 13.4 mm → 8.96 mm → 5.99 mm → 4 mm");
    assertThat(schedule.working().toString()).contains("= 5");
    assertThat(schedule.advice()).extracting(Advice::code).containsExactly("REST_BETWEEN");
    assertThat(RollingSchedule.of(millimetres(32), millimetres(4), 2, millimetres(100)).passes())
        .hasSize(3);
    assertThat(RollingSchedule.of(inches(1), inches(1), 2, inches(4)).passes()).isEmpty();
    assertThatThrownBy(() -> RollingSchedule.of(millimetres(3), millimetres(4), 2, millimetres(1)))
        .hasMessageContaining("thinner");
    assertThatThrownBy(() -> RollingSchedule.of(millimetres(5), millimetres(4), 1, millimetres(1)))
        .hasMessageContaining("limit 1.0");
  }

  @Property
  void noPassTakesMoreThanTheLimit(
      @ForAll @DoubleRange(min = 5, max = 60) double from,
      @ForAll @DoubleRange(min = 1, max = 5) double to,
      @ForAll @DoubleRange(min = 1.1, max = 3) double limit) {
    double before = from;
    for (RollingSchedule.Pass pass :
        RollingSchedule.of(millimetres(from), millimetres(to), limit, millimetres(100)).passes()) {
      assertThat(before / pass.gap().in(MILLIMETRE)).isLessThanOrEqualTo(limit * (1 + 1e-9));
      before = pass.gap().in(MILLIMETRE);
    }
    assertThat(before).isCloseTo(to, within(1e-9));
  }

  @Test
  void whatDoesNotFitTheBenchIsAdvised() {
    assertThat(PLAN.fitting(extent("200 x 60 cm"))).isEmpty();
    assertThat(PLAN.fitting(extent("60 x 60 cm")))
        .extracting(Advice::code)
        .containsOnly("SHEET_TOO_LONG");
    assertThat(PLAN.fitting(extent("200 x 22 cm")))
        .extracting(Advice::code)
        .containsOnly("SHEET_TOO_WIDE");
    assertThat(PLAN.fitting(extent("40 x 24 in")).get(0).text()).contains("1016 mm (40 in)");
    LaminationPlan thin =
        LaminationPlan.of(
            PLAN.sequence().fold(Fold.BOOK).fold(Fold.LETTER),
            grams(1000),
            grams(280),
            PLAN.doughDensity(),
            PLAN.fatDensity(),
            LaminationPlan.Setup.SMALL_BENCH.withFinalSheet(millimetres(0.5), millimetres(400)));
    assertThat(thin.advice()).extracting(Advice::code).contains("FAT_LAYER_FINE");
    assertThat(LaminationPlan.fatOfDough(percent(28), kilograms(1))).isEqualTo(grams(280));
    assertThat(LaminationPlan.fatOfFlour(percent(50), ounces(10))).isEqualTo(ounces(5));
  }

  @Test
  void strainIsSharedByTheTwoDirections() {
    LaminationPlan.Strain strain = PLAN.strain();
    assertThat(strain.first() + strain.across())
        .isCloseTo(Math.log(PLAN.totalReduction()), within(1e-9));
    assertThat(strain.across()).isCloseTo(Math.log(4), within(1e-9));
  }

  @Test
  void rollingNeverMakesASheetThicker() {
    LaminationPlan.Setup thick =
        LaminationPlan.Setup.SMALL_BENCH.withFinalSheet(millimetres(25), millimetres(250));
    assertThatThrownBy(
            () ->
                LaminationPlan.of(
                    PLAN.sequence(),
                    PLAN.dough(),
                    PLAN.fat(),
                    PLAN.doughDensity(),
                    PLAN.fatDensity(),
                    thick))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("24 mm after the letter fold, wanted 25 mm");
  }

  @Test
  void aPlanRollsOnceForEachFoldAndOnceAtTheEnd() {
    assertThat(PLAN.rolling()).hasSize(3);
    assertThat(PLAN.rolling().get(2).limit()).isEqualTo(RollingSchedule.GENTLE_LIMIT);
    double product = PLAN.steps().get(0).thickness().in(MILLIMETRE) / 8 * (32.0 / 8) * (24.0 / 4);
    assertThat(PLAN.totalReduction()).isCloseTo(product, within(1e-6));
    RollingSchedule second = PLAN.rolling().get(1);
    // after the book fold the sheet was turned: the packet's width of 200 mm is rolled
    assertThat(second.length()).isEqualTo(millimetres(200));
  }

  @Test
  void theProofOfDairyButterEndsWhereBakersStopAndOtherFatsBeforeTheyRun() {
    FatCurve butter = FatCurve.named("dairy butterfat");
    assertThat(butter.proofLimit().in(BakeryUnits.CELSIUS))
        .isBetween(
            Checks.row("fermentation.csv", "proof limit of dairy butterfat low").number("value"),
            Checks.row("fermentation.csv", "proof limit of dairy butterfat high").number("value"));
    assertThat(FatCurve.named("coconut oil").proofLimit()).isLessThan(butter.proofLimit());
    assertThat(butter.proof(celsius(26))).isEmpty();
    assertThat(butter.proof(celsius(32))).extracting(Advice::code).containsExactly("PROOF_WARM");
  }

  @Test
  void cocoaButterIsNoRollInFatAndOtherFatsSayThatTheirWindowIsATransfer() {
    FatCurve cocoa = FatCurve.named("cocoa butter");
    assertThat(cocoa.canBeRolledIn()).isFalse();
    assertThat(cocoa.rollIn()).extracting(Advice::code).containsExactly("NO_ROLL_IN_FAT");
    assertThat(cocoa.match(celsius(25), celsius(10)))
        .extracting(Advice::code)
        .containsExactly("NO_ROLL_IN_FAT");
    assertThatThrownBy(cocoa::window)
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("cocoa butter");
    assertThat(cocoa).hasToString("cocoa butter: no roll-in fat");
    assertThat(FatCurve.named("coconut oil").rollIn())
        .extracting(Advice::code)
        .containsExactly("FAT_WINDOW_TRANSFER");
    assertThat(DAIRY.rollIn()).isEmpty();
  }

  @Test
  void heatsOfMeltingAreThoseThatWereMeasured() {
    // printed: 80.8 J/g (1998), 105 ± 11 J/g (2019), 157 J/g (2009, p. 668)
    assertThat(DAIRY.fusion()).isEqualTo(80_800);
    assertThat(FatCurve.named("coconut oil").fusion()).isBetween(94_000.0, 116_000.0);
    assertThat(FatCurve.named("cocoa butter").fusion()).isEqualTo(157_000);
    assertThat(DAIRY.source()).contains("heat of melting", "Milchwissenschaft 53 (1998) 77");
  }
}
