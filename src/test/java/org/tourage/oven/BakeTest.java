package org.tourage.oven;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.KILOJOULE;
import static org.tourage.quantity.BakeryUnits.MINUTE;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.physics.Atmosphere;
import org.tourage.physics.Constituents;
import org.tourage.physics.DryingBody;
import org.tourage.physics.IapwsIf97Saturation;
import org.tourage.physics.Pores;
import org.tourage.physics.Solid;
import org.tourage.physics.TemperatureHistory;
import org.tourage.quantity.TemperatureDifference;
import org.tourage.reference.Checks;
import org.tourage.reference.Checks.Row;

class BakeTest {
  private static final Constituents LAMINATED =
      new Constituents(0.36, 0.06, 0.22, 0.33, 0.015, 0.015);
  private static final BakePiece PIECE = BakePiece.of(Solid.roll(millimetres(50)), LAMINATED);
  private static final OvenProfile TWO_STEPS =
      OvenProfile.of(celsius(200), minutes(10)).then(celsius(175), minutes(13));

  private static double published(String check) {
    return Checks.row("oven.csv", check).number("value");
  }

  private static Bake bake(BakePiece piece, OvenProfile profile) {
    return Bake.of(piece, OvenModel.HOUSEHOLD, profile, DoughKind.RICH);
  }

  @Test
  void aSmallLaminatedPieceUnderTwoStepsIsDoneNotBurntAndLosesAPlausibleShare() {
    for (double minutes : new double[] {12, 15}) {
      for (double diameter : new double[] {42, 50}) {
        Bake bake =
            bake(
                PIECE.shaped(Solid.roll(millimetres(diameter))),
                OvenProfile.of(celsius(200), minutes(10)).then(celsius(175), minutes(minutes)));
        assertThat(bake.isDone()).isTrue();
        assertThat(bake.end().surface().in(CELSIUS)).isBetween(120.0, 190.0);
        assertThat(bake.end().loss().in(PERCENT))
            .isBetween(
                published("window of a small laminated piece: loss low"),
                published("window of a small laminated piece: loss high"));
        assertThat(bake.advice()).extracting(Advice::code).containsExactly("BAKE_UNKNOWN");
        assertThat(Math.abs(bake.heatBalance())).isLessThan(1e-6);
        assertThat(Math.abs(bake.massBalance())).isLessThan(1e-6);
      }
    }
  }

  @Test
  void halvingGridAndStepOfABakeChangesItByLessThanHalfAPercent() {
    Bake normal = bake(PIECE, TWO_STEPS);
    Bake fine = Bake.of(PIECE, OvenModel.HOUSEHOLD, TWO_STEPS, DoughKind.RICH, 80, 600);
    assertThat(normal.end().core().in(CELSIUS))
        .isCloseTo(fine.end().core().in(CELSIUS), Percentage.withPercentage(0.5));
    assertThat(normal.end().surface().in(CELSIUS))
        .isCloseTo(fine.end().surface().in(CELSIUS), Percentage.withPercentage(0.5));
    assertThat(normal.end().loss().in(PERCENT))
        .isCloseTo(fine.end().loss().in(PERCENT), Percentage.withPercentage(0.5));
    assertThat(normal.heatTaken()).isCloseTo(fine.heatTaken(), Percentage.withPercentage(0.5));
  }

  @Test
  void theMeasuredReductionsOfTheBunChallengeLieBetweenTheTestedRangeAndTheExtrapolation() {
    // 218.3 °C oven, core near 100 °C from minute 8 on, more than 6 log measured after 9 min
    var core =
        TemperatureHistory.ofRamp(celsius(28), celsius(100), minutes(8))
            .thenHold(celsius(100), minutes(1));
    double measured =
        published("log reductions of salmonella in buns at 218.3 °C by 9 min, more than");
    ThermalDeath buns = ThermalDeath.named("salmonella in bun dough");
    double extrapolated =
        ThermalDeath.equivalent(core, buns.reference(), buns.z()).ratioTo(buns.decimal());
    assertThat(buns.logReductions(core)).isBetween(1.0, measured);
    assertThat(extrapolated).isGreaterThan(measured);
  }

  @Test
  void steamWarmsThePieceSoonerAndALaterLossIsSmaller() {
    OvenProfile steamed =
        OvenProfile.of(new OvenProfile.Step(celsius(200), minutes(10)).withSteam())
            .then(celsius(175), minutes(13));
    Bake dry = bake(PIECE, TWO_STEPS);
    Bake wet = bake(PIECE, steamed);
    assertThat(wet.coreReaches(celsius(60)).orElseThrow())
        .isLessThan(dry.coreReaches(celsius(60)).orElseThrow());
    assertThat(wet.looks().stream().anyMatch(l -> l.gain().in(PERCENT) > 0.5)).isTrue();
    assertThat(wet.looks()).allSatisfy(l -> assertThat(l.loss().in(PERCENT)).isNotNegative());
    assertThat(wet.end().loss()).isLessThan(dry.end().loss());
    OvenProfile open =
        OvenProfile.of(new OvenProfile.Step(celsius(200), minutes(10)).vented())
            .then(new OvenProfile.Step(celsius(175), minutes(13)).vented());
    assertThat(bake(PIECE, open).end().loss()).isGreaterThan(dry.end().loss());
    assertThat(open.toString()).contains("for 10 min, vent open");
  }

  @Test
  void aFanBakesFasterAndTheFanSettingBringsItBack() {
    OvenProfile fan =
        OvenProfile.of(new OvenProfile.Step(celsius(200), minutes(10)).withFan())
            .then(new OvenProfile.Step(celsius(175), minutes(13)).withFan());
    double still = bake(PIECE, TWO_STEPS).end().loss().in(PERCENT);
    double same = bake(PIECE, fan).end().loss().in(PERCENT);
    double lower = bake(PIECE, TWO_STEPS.forFan()).end().loss().in(PERCENT);
    assertThat(same).isGreaterThan(still);
    assertThat(Math.abs(lower - still)).isLessThan(Math.abs(same - still));
    assertThat(TWO_STEPS.forFan().toString()).startsWith("180 °C (356 °F) for 10 min, fan");
    assertThat(TWO_STEPS.forFan().forFan()).isEqualTo(TWO_STEPS.forFan());
  }

  @Test
  void inAMountainTownTheCoreStaysCoolerAndMoreIsLost() {
    Bake low = bake(PIECE, TWO_STEPS);
    Bake high = bake(PIECE.atAltitude(metres(2500)), TWO_STEPS);
    assertThat(high.end().core()).isLessThan(low.end().core());
    assertThat(high.end().core().in(CELSIUS)).isLessThan(91.8);
    assertThat(high.end().loss()).isGreaterThan(low.end().loss());
  }

  @Test
  void aColdSetPointDoesNotMakeTheOvenColderThanTheRoomThatComesInAtTheDoor() {
    for (double set : new double[] {0, 15, 30, 44}) {
      double begins =
          OvenModel.HOUSEHOLD
              .follow(OvenProfile.of(celsius(set), minutes(10)))
              .legs()
              .get(0)
              .from()
              .in(CELSIUS);
      assertThat(begins).isEqualTo(Math.min(set, 20), within(1e-9));
    }
  }

  @Test
  void aCoreFarAboveWhatIsWantedIsAdvised() {
    Bake late = bake(PIECE, OvenProfile.of(celsius(250), minutes(45)));
    assertThat(late.advice())
        .filteredOn(a -> a.code().equals("CORE_HIGH"))
        .singleElement()
        .satisfies(a -> assertThat(a.text()).contains("it was done after"));
    Bake right = bake(PIECE, TWO_STEPS);
    assertThat(right.end().core()).isLessThan(right.wanted().high());
    assertThat(right.advice()).extracting(Advice::code).doesNotContain("CORE_HIGH");
  }

  @Test
  void aStepCanEndByCoreOrByLoss() {
    OvenProfile byCore =
        OvenProfile.of(new OvenProfile.Step(celsius(200), minutes(60)).untilCore(celsius(92)));
    Bake core = bake(PIECE, byCore);
    assertThat(core.end().core().in(CELSIUS)).isCloseTo(92, within(0.7));
    OvenProfile byLoss =
        OvenProfile.of(new OvenProfile.Step(celsius(210), minutes(30)).untilLoss(percent(6)))
            .then(celsius(170), minutes(5));
    Bake loss = bake(PIECE, byLoss);
    assertThat(loss.end().time().in(MINUTE)).isLessThan(25);
    assertThat(loss.end().loss().in(PERCENT)).isBetween(7.0, 13.0);
    assertThat(byCore.toString()).contains("at most 1 h, until the core has 92 °C");
    assertThat(byLoss.toString()).contains("until 6 % is lost");
  }

  @Test
  void anOvenFollowsItsSetPointsWithALag() {
    OvenModel oven = OvenModel.HOUSEHOLD.withLag(seconds(600)).withDoorDrop(celsiusDegrees(0));
    OvenProfile ramp =
        OvenProfile.of(celsius(200), minutes(1))
            .then(new OvenProfile.Step(celsius(245), minutes(15)).ramped(minutes(15)));
    // the textbook case, shifted to start at the set point of the step before
    double expected = 200 + 0.05 * (900 - 600) + 0.05 * 600 * Math.exp(-1.5);
    assertThat(oven.follow(ramp).at(minutes(16)).in(CELSIUS)).isCloseTo(expected, within(0.02));
    assertThat(ramp.toString()).contains("reached within 15 min");
    // held: T = a + (T0 − a)e^(−t/τ)
    OvenModel cold = oven.withDoorDrop(celsiusDegrees(175));
    OvenProfile held = OvenProfile.of(celsius(200), minutes(15));
    assertThat(cold.follow(held).at(minutes(15)).in(CELSIUS))
        .isCloseTo(200 - 175 * Math.exp(-1.5), within(1e-6));
    // and from 25 °C while the set point climbs: a first step of a blink sets where the ramp begins
    OvenProfile climbing =
        OvenProfile.of(celsius(200), seconds(1e-6))
            .then(new OvenProfile.Step(celsius(245), minutes(15)).ramped(minutes(15)));
    assertThat(cold.follow(climbing).at(climbing.total()).in(CELSIUS))
        .isCloseTo(
            published("oven lag: 25 to a ramp 200 + 0.05 t, tau 600, at 900 s"), within(5e-4));
  }

  @Test
  void preheatingAndEnergyAddUp() {
    OvenModel oven = OvenModel.HOUSEHOLD;
    double minutes = oven.preheating(TWO_STEPS, celsius(22)).orElseThrow().in(MINUTE);
    // C ln(P/(P − U ΔT))/U
    assertThat(minutes)
        .isCloseTo(15_000 / 5.0 * Math.log(2500 / (2500 - 5 * 178.0)) / 60, within(1e-9));
    double kilojoules = oven.energy(TWO_STEPS, celsius(22), kilojoules(500)).in(KILOJOULE);
    assertThat(kilojoules).isCloseTo(15 * 178 + 500 + 5e-3 * (178 * 600 + 153 * 780), within(1e-9));
    assertThat(oven.preheating(OvenProfile.of(celsius(340), minutes(10)), celsius(-240))).isEmpty();
  }

  @Test
  void aBiggerPieceTakesLongerThanItsThicknessAndLessThanItsSquare() {
    Bake small = bake(PIECE, TWO_STEPS);
    Resize resize = Resize.of(small, PIECE.shaped(Solid.roll(millimetres(75))));
    assertThat(resize.factor()).isBetween(1.5, 2.25);
    assertThat(resize.power()).isBetween(1.0, 2.0);
    assertThat(resize.bySquareLaw()).isCloseTo(2.25, within(1e-9));
    assertThat(resize.after().isDone()).isTrue();
    assertThat(resize.working().toString()).contains("square law", "bake model");
    assertThat(resize.toString()).contains("the time follows the thickness to the power 1.");
    // 3.375 times the mass is one and a half times the thickness
    Resize heavy = Resize.of(small, PIECE.massTimes(3.375));
    assertThat(heavy.bySquareLaw()).isCloseTo(2.25, within(1e-9));
    assertThat(heavy.factor()).isCloseTo(resize.factor(), within(1e-9));
    // back again gives the old times
    Resize back = Resize.of(resize.after(), PIECE);
    assertThat(back.factor() * resize.factor()).isCloseTo(1, Percentage.withPercentage(2));
    assertThat(Resize.of(small, PIECE).factor()).isCloseTo(1, Percentage.withPercentage(1));
    assertThatThrownBy(
            () -> Resize.of(bake(PIECE, OvenProfile.of(celsius(200), minutes(4))), PIECE))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("not done");
  }

  @Test
  void anOvenIsFoundAgainFromItsReadings() {
    OvenModel mine =
        OvenModel.HOUSEHOLD
            .withOffset(celsiusDegrees(-12))
            .withLag(seconds(400))
            .withConvection(13, 13 * 22 / 9.0);
    var air = mine.follow(TWO_STEPS);
    Bake half = Bake.of(PIECE, mine, OvenProfile.of(celsius(200), minutes(9)), DoughKind.RICH);
    Bake whole = Bake.of(PIECE, mine, TWO_STEPS, DoughKind.RICH);
    OvenCalibration.Result found =
        OvenCalibration.of(OvenModel.HOUSEHOLD)
            .air(TWO_STEPS, minutes(2), air.at(minutes(2)))
            .air(TWO_STEPS, minutes(9), air.at(minutes(9)))
            .air(TWO_STEPS, minutes(22), air.at(minutes(22)))
            .core(PIECE, TWO_STEPS, minutes(9), half.end().core())
            .loss(PIECE, TWO_STEPS, minutes(23), whole.end().loss())
            .fit();
    assertThat(found.oven().offset().celsiusDegrees())
        .isCloseTo(-12, within(2 * found.offsetUncertainty().celsiusDegrees()));
    assertThat(Math.log(found.oven().lag().in(MINUTE) * 60 / 400))
        .isCloseTo(0, within(2 * found.lagUncertainty()));
    assertThat(Math.log(found.oven().still() / 13))
        .isCloseTo(0, within(2 * found.convectionUncertainty()));
    assertThat(found.misses()).allSatisfy(m -> assertThat(Math.abs(m)).isLessThan(3));
    assertThat(found.offsetUncertainty().celsiusDegrees()).isBetween(0.5, 6.0);
    assertThat(found.toString()).contains("K, lag ±");
    OvenCalibration.Result little =
        OvenCalibration.of(OvenModel.HOUSEHOLD).air(TWO_STEPS, minutes(9), celsius(190)).fit();
    assertThat(little.advice()).extracting(Advice::code).containsExactly("CALIBRATION_WEAK");
    assertThat(little.lagUncertainty()).isGreaterThan(found.lagUncertainty());
    assertThatThrownBy(() -> OvenCalibration.of(OvenModel.HOUSEHOLD).fit())
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(
            () -> OvenCalibration.of(OvenModel.HOUSEHOLD).air(TWO_STEPS, hours(2), celsius(190)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("within the profile");
  }

  @Test
  void stepDownProfilesGiveTheLossAndTheCrustThatAreWanted() {
    List<Bake> proposals =
        StepDown.of(PIECE, OvenModel.HOUSEHOLD, DoughKind.RICH, percent(12), celsius(140))
            .proposals();
    assertThat(proposals).isNotEmpty().hasSizeLessThanOrEqualTo(3);
    assertThat(proposals)
        .allSatisfy(
            bake -> {
              assertThat(bake.isDone()).isTrue();
              assertThat(bake.end().loss().in(PERCENT)).isCloseTo(12, within(0.8));
              assertThat(bake.end().surface().in(CELSIUS)).isCloseTo(140, within(6.0));
              assertThat(bake.profile().steps()).hasSize(2);
            });
    assertThatThrownBy(
            () ->
                StepDown.of(
                        PIECE.shaped(Solid.ball(millimetres(200))),
                        OvenModel.HOUSEHOLD,
                        DoughKind.RICH,
                        percent(1),
                        celsius(140))
                    .proposals())
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("no profile within the bounds");
    assertThatThrownBy(
            () ->
                StepDown.of(PIECE, OvenModel.HOUSEHOLD, DoughKind.RICH, percent(60), celsius(140)))
        .isInstanceOf(BakeryException.class);
  }

  @Property(tries = 25)
  void moreTimeMeansMoreLossAndNoCoolerCore(
      @ForAll @DoubleRange(min = 5, max = 25) double minutes,
      @ForAll @DoubleRange(min = 1, max = 10) double more) {
    Bake one = bake(PIECE, OvenProfile.of(celsius(190), minutes(minutes)));
    Bake two = bake(PIECE, OvenProfile.of(celsius(190), minutes(minutes + more)));
    assertThat(two.end().loss()).isGreaterThan(one.end().loss());
    assertThat(two.end().core().in(CELSIUS)).isGreaterThan(one.end().core().in(CELSIUS) - 0.05);
  }

  @Property(tries = 25)
  void aHotterOvenBakesSooner(@ForAll @DoubleRange(min = 150, max = 220) double celsius) {
    Bake one = bake(PIECE, OvenProfile.of(celsius(celsius), minutes(40)));
    Bake two = bake(PIECE, OvenProfile.of(celsius(celsius + 15), minutes(40)));
    assertThat(two.coreReaches(celsius(85)).orElseThrow())
        .isLessThan(one.coreReaches(celsius(85)).orElseThrow());
  }

  @Test
  void aBakeThatIsNotDoneSaysSoAndWhatItDoesNotKnow() {
    Bake raw = bake(PIECE, OvenProfile.of(celsius(200), minutes(6)));
    assertThat(raw.isDone()).isFalse();
    assertThat(raw.advice())
        .extracting(Advice::code)
        .contains("NOT_DONE", "CRUST_PALE", "LOSS_UNUSUAL", "BAKE_UNKNOWN");
    assertThat(raw.doneness()).startsWith("not done: core").contains("has not set");
    Bake done = bake(PIECE, TWO_STEPS);
    assertThat(done.toString()).contains("crust depth", "done: core");
    assertThat(done.working().toString()).contains("heat balance closes to", "kJ for each kg");
    Bake hot = bake(PIECE, OvenProfile.of(celsius(250), minutes(45)));
    assertThat(hot.advice()).extracting(Advice::code).contains("CRUST_HOT");
  }

  @Test
  void theOvensEffectiveCoefficientLiesWhereItWasMeasured() {
    // εσ(T1 + T2)(T1² + T2²) between walls of 200 °C and a crust of 100 °C, and the convection
    double hot = 473.15;
    double cool = 373.15;
    double radiation =
        OvenModel.HOUSEHOLD.emissivity()
            * 5.670374419e-8
            * (hot + cool)
            * (hot * hot + cool * cool);
    assertThat(radiation + OvenModel.HOUSEHOLD.still())
        .isBetween(published("effective coefficient low"), published("effective coefficient high"));
  }

  @Test
  void crustHasThePublishedDiffusivityAndCrumbMeetsItsOwnWhileItWarms() {
    Constituents bread = new Constituents(0.45, 0.08, 0.01, 0.43, 0.015, 0.015);
    var m =
        BakePiece.of(Solid.roll(millimetres(60)), bread).withPorosity(fraction(0.70)).material();
    double crust = published("crust diffusivity at porosity 70");
    assertThat(m.dryConductivity() / (m.density() * m.dryHeat()))
        .isCloseTo(crust, Percentage.withPercentage(0.01));
    // one set: conductivity over this crumb's own density and heat, from 60 to 80 °C
    double wetHeat = m.dryHeat() + m.water() * DryingBody.WATER_HEAT;
    double cool = crumb(m, 60) / (m.density() * wetHeat);
    double warm = crumb(m, 80) / (m.density() * wetHeat);
    assertThat(published("crumb diffusivity at porosity 70")).isBetween(cool, warm);
    // evaporation and condensation carry more of the heat than the rest of the cell at 60 °C
    assertThat(m.pores().cell(60)).isGreaterThan(2 * 0.028);
  }

  private static double crumb(DryingBody.Material m, double celsius) {
    return Pores.mixed(m.wetConductivity(), m.pores().cell(celsius), m.pores().share());
  }

  static java.util.stream.Stream<Row> altitudes() {
    return Checks.rows("oven.csv")
        .filter(
            r ->
                List.of("air pressure by altitude", "saturation pressure", "boiling by altitude")
                    .contains(r.text("check")));
  }

  @ParameterizedTest
  @MethodSource("altitudes")
  void boilingByAltitudeIsThePublishedOneWithinATenthOfAKelvin(Row row) {
    double a = row.number("a");
    double value = row.number("value");
    switch (row.text("check")) {
      case "air pressure by altitude" -> {
        assertThat(Atmosphere.pressure(metres(a)))
            .isCloseTo(value, Percentage.withPercentage(0.02));
        assertThat(Atmosphere.boiling(metres(a)).in(CELSIUS))
            .isCloseTo(IapwsIf97Saturation.boiling(value).in(CELSIUS), within(0.1));
      }
      case "saturation pressure" ->
          assertThat(IapwsIf97Saturation.boiling(1000 * value).in(CELSIUS))
              .isCloseTo(a, within(0.01));
      default ->
          assertThat(Atmosphere.boiling(metres(a)).in(CELSIUS)).isCloseTo(value, within(0.1));
    }
  }

  @Test
  void whatIsNoPieceAndNoOvenIsRefused() {
    assertThatThrownBy(() -> PIECE.withPorosity(fraction(0.99)))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> PIECE.withSpring(13)).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> OvenModel.HOUSEHOLD.withConvection(0, 10))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("W/(m²·K)");
    assertThatThrownBy(() -> OvenModel.HOUSEHOLD.withLag(seconds(0)))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> new OvenProfile.Step(celsius(200), minutes(5)).ramped(minutes(6)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("ramp 6 min");
    assertThat(PIECE.from(celsius(20)).withSpring(1.1))
        .hasToString("roll 50 mm across on a baking sheet, 60 % gas, from 20 °C (68 °F)");
    assertThat(OvenModel.HOUSEHOLD.withOffset(TemperatureDifference.ofCelsiusDegrees(5)).toString())
        .contains("lag 4 min", "7 W/(m²·K) still");
  }

  @Property(tries = 60)
  void balancesCloseForAnyPieceInAnyOven(
      @ForAll @DoubleRange(min = 8, max = 200) double millimetres,
      @ForAll @DoubleRange(min = 0.2, max = 0.8) double porosity,
      @ForAll @DoubleRange(min = 1, max = 2.5) double spring,
      @ForAll @DoubleRange(min = 80, max = 300) double set,
      @ForAll @DoubleRange(min = 3, max = 40) double still,
      @ForAll @DoubleRange(min = 0.5, max = 120) double minutes,
      @ForAll boolean steam,
      @ForAll @IntRange(min = 0, max = 2) int kind) {
    Solid solid =
        switch (kind) {
          case 0 -> Solid.slab(millimetres(millimetres));
          case 1 -> Solid.roll(millimetres(millimetres));
          default -> Solid.ball(millimetres(millimetres));
        };
    OvenProfile.Step step = new OvenProfile.Step(celsius(set), minutes(minutes));
    OvenProfile profile =
        OvenProfile.of(steam ? step.withSteam() : step)
            .then(new OvenProfile.Step(celsius(set - 60), minutes(minutes)).withFan());
    Bake bake =
        Bake.of(
            BakePiece.of(solid, LAMINATED).withPorosity(fraction(porosity)).withSpring(spring),
            OvenModel.HOUSEHOLD.withConvection(still, 2 * still),
            profile,
            DoughKind.RICH);
    assertThat(Math.abs(bake.heatBalance())).isLessThan(1e-6);
    assertThat(Math.abs(bake.massBalance())).isLessThan(1e-9);
    assertThat(bake.end().time().in(MINUTE)).isCloseTo(2 * minutes, within(1e-6));
    assertThat(bake.end().loss().in(PERCENT)).isBetween(-30.0, 34.0);
    assertThat(bake.end().core().in(CELSIUS)).isBetween(20.0, Math.max(101, set + 1));
    assertThat(bake.end().surface().in(CELSIUS)).isLessThan(Math.max(105, set + 1));
  }

  @Test
  void inTheMountainsResizeAndStepDownFindABakeAndWhatIsOutOfReachNamesTheNearest() {
    for (double altitude : new double[] {0, 2240, 3500}) {
      BakePiece piece = PIECE.atAltitude(metres(altitude));
      OvenProfile longer =
          OvenProfile.of(celsius(210), minutes(10)).then(celsius(190), minutes(16));
      Bake small = Bake.of(piece, OvenModel.HOUSEHOLD, longer, DoughKind.LEAN);
      assertThat(small.isDone()).as(small.doneness()).isTrue();
      Resize resize = Resize.of(small, piece.massTimes(2));
      assertThat(resize.after().isDone()).as(resize.toString()).isTrue();
      assertThat(resize.factor()).isGreaterThan(1);
      List<Bake> down =
          StepDown.of(piece, OvenModel.HOUSEHOLD, DoughKind.LEAN, percent(13), celsius(140))
              .proposals();
      assertThat(down).isNotEmpty().allSatisfy(b -> assertThat(b.isDone()).isTrue());
    }
    assertThat(DoughKind.LEAN.core(celsius(92.5)).low().in(CELSIUS)).isCloseTo(88.5, within(1e-9));
    assertThat(DoughKind.LEAN.core(celsius(92.5)).high().in(CELSIUS)).isCloseTo(90.5, within(1e-9));
    assertThatThrownBy(
            () ->
                StepDown.of(
                        PIECE.shaped(Solid.ball(millimetres(200))),
                        OvenModel.HOUSEHOLD,
                        DoughKind.LEAN,
                        percent(1),
                        celsius(140))
                    .proposals())
        .hasMessageContaining("nearest:");
  }

  @Test
  void theStepThatMakesItBrownIsNamed() {
    Bake bake =
        bake(PIECE, OvenProfile.of(celsius(160), minutes(15)).then(celsius(230), minutes(12)));
    assertThat(bake.browning().get(0).step()).isEqualTo(2);
    assertThat(bake.browning().get(0).toString()).startsWith("step 2, 230 °C (446 °F): colour");
    assertThat(bake.browning().stream().mapToDouble(Bake.Browning::colour).sum())
        .isCloseTo(bake.end().colour(), within(1e-9));
    assertThat(bake.crustHistory().at(minutes(27)).in(CELSIUS))
        .isCloseTo(bake.end().surface().in(CELSIUS), within(1e-6));
  }

  @Test
  void aBoiledPieceComesHotIntoTheOvenAndStoneBakesSoonerThanASheetAndTinsSlowerWithNeighbours() {
    BakePiece bagel = PIECE.shaped(Solid.roll(millimetres(34)));
    OvenProfile profile = OvenProfile.of(celsius(225), minutes(15));
    Bake plain = bake(bagel, profile);
    Bake boiled = bake(bagel.boiledFor(seconds(45)), profile);
    assertThat(boiled.looks().get(0).surface().in(CELSIUS)).isGreaterThan(80);
    assertThat(boiled.coreReaches(celsius(80)).orElseThrow())
        .isLessThan(plain.coreReaches(celsius(80)).orElseThrow());
    assertThat(boiled.end().time()).isEqualTo(plain.end().time());
    Bake stone = bake(bagel.on(Seat.STONE), profile);
    assertThat(stone.coreReaches(celsius(80)).orElseThrow())
        .isLessThan(plain.coreReaches(celsius(80)).orElseThrow());
    Bake alone = bake(bagel.on(Seat.TIN), profile);
    Bake strapped = bake(bagel.on(Seat.TIN.withNeighbours(percent(60))), profile);
    assertThat(strapped.coreReaches(celsius(80)).orElseThrow())
        .isGreaterThan(alone.coreReaches(celsius(80)).orElseThrow());
    assertThatThrownBy(() -> bagel.boiledFor(minutes(10))).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> Seat.TIN.withContact(0)).isInstanceOf(BakeryException.class);
  }

  @Test
  void theSpringFollowsTheGasAndTheKindOfDough() {
    Bake full = bake(PIECE, TWO_STEPS);
    Bake flat = bake(PIECE.withRise(OvenRise.gas(percent(0), percent(0))), TWO_STEPS);
    assertThat(full.end().volume()).isGreaterThan(flat.end().volume());
    assertThat(flat.end().volume()).isBetween(1.1, 1.5);
    Bake rye = Bake.of(PIECE, OvenModel.HOUSEHOLD, TWO_STEPS, DoughKind.RYE);
    assertThat(rye.end().volume()).isLessThan(full.end().volume());
    assertThat(bake(PIECE.withSpring(1.3), TWO_STEPS).end().volume())
        .isCloseTo(1.3, Percentage.withPercentage(0.5));
  }
}
