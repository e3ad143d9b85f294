package org.tourage.oven;

import static org.assertj.core.api.Assertions.assertThat;
import static org.tourage.quantity.Amounts.celsius;
import static org.tourage.quantity.Amounts.fraction;
import static org.tourage.quantity.Amounts.metres;
import static org.tourage.quantity.Amounts.millimetres;
import static org.tourage.quantity.Amounts.minutes;
import static org.tourage.quantity.Amounts.seconds;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.MINUTE;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.tourage.physics.Atmosphere;
import org.tourage.physics.Constituents;
import org.tourage.physics.Solid;

class BakeLaws {
  private static final Constituents LEAN = new Constituents(0.46, 0.07, 0.01, 0.43, 0.015, 0.015);

  private static Seat seat(int i) {
    return switch (i) {
      case 0 -> Seat.GRID;
      case 1 -> Seat.SHEET.withNeighbours(fraction(0.4));
      case 2 -> Seat.STONE;
      default -> Seat.TIN;
    };
  }

  private static BakePiece loaf(double height, int seat) {
    return BakePiece.of(
            Solid.box(millimetres(3 * height), millimetres(1.5 * height), millimetres(height)),
            LEAN)
        .on(seat(seat));
  }

  @Property(tries = 30)
  void theCoreIsNeverHotterThanBoilingAtItsAltitudeWhileItIsMoist(
      @ForAll @DoubleRange(min = 0, max = 3500) double altitude,
      @ForAll @DoubleRange(min = 30, max = 120) double height,
      @ForAll @DoubleRange(min = 160, max = 260) double set,
      @ForAll @IntRange(min = 0, max = 3) int seat) {
    Bake bake =
        Bake.of(
            loaf(height, seat).atAltitude(metres(altitude)),
            OvenModel.DECK,
            OvenProfile.of(celsius(set), minutes(35)),
            DoughKind.LEAN);
    double boils = Atmosphere.boiling(metres(altitude)).in(CELSIUS);
    assertThat(bake.looks())
        .allSatisfy(
            l -> {
              if (l.loss().in(PERCENT) < 35) {
                assertThat(l.core().in(CELSIUS)).isLessThanOrEqualTo(boils + 1e-9);
              }
            });
  }

  @Property(tries = 20)
  void aLargerPieceIsNeverDoneSooner(
      @ForAll @DoubleRange(min = 25, max = 80) double height,
      @ForAll @DoubleRange(min = 1.02, max = 1.6) double longer,
      @ForAll @IntRange(min = 0, max = 3) int seat) {
    OvenProfile profile = OvenProfile.of(celsius(220), minutes(60));
    Bake small = Bake.of(loaf(height, seat), OvenModel.DECK, profile, DoughKind.LEAN);
    Bake large = Bake.of(loaf(height * longer, seat), OvenModel.DECK, profile, DoughKind.LEAN);
    double first = small.doneAfter().map(t -> t.in(MINUTE)).orElse(Double.MAX_VALUE);
    double second = large.doneAfter().map(t -> t.in(MINUTE)).orElse(Double.MAX_VALUE);
    // looks are a quarter of a minute apart
    assertThat(second).isGreaterThanOrEqualTo(first - 0.26);
  }

  @Property(tries = 20)
  void moreSteamNeverDriesFasterAtTheStart(
      @ForAll @DoubleRange(min = 25, max = 90) double height,
      @ForAll @DoubleRange(min = 180, max = 250) double set,
      @ForAll @DoubleRange(min = 0.5, max = 4) double time,
      @ForAll @IntRange(min = 0, max = 3) int seat) {
    OvenProfile.Step step = new OvenProfile.Step(celsius(set), minutes(time));
    double before = Double.POSITIVE_INFINITY;
    for (OvenProfile.Step damp : new OvenProfile.Step[] {step.vented(), step, step.withSteam()}) {
      Bake.Look end =
          Bake.of(loaf(height, seat), OvenModel.DECK, OvenProfile.of(damp), DoughKind.LEAN).end();
      double lost = end.loss().in(PERCENT) - end.gain().in(PERCENT);
      assertThat(lost).isLessThanOrEqualTo(before + 1e-9);
      before = lost;
    }
  }

  @Property(tries = 30)
  void heatAndMassCloseOnAnySeatBoiledOrNot(
      @ForAll @DoubleRange(min = 8, max = 150) double height,
      @ForAll @DoubleRange(min = 120, max = 480) double set,
      @ForAll @DoubleRange(min = 1, max = 60) double time,
      @ForAll @DoubleRange(min = 0, max = 90) double boil,
      @ForAll @DoubleRange(min = 0, max = 3500) double altitude,
      @ForAll @IntRange(min = 0, max = 4) int kind,
      @ForAll @IntRange(min = 0, max = 3) int seat) {
    Bake bake =
        Bake.of(
            loaf(height, seat).atAltitude(metres(altitude)).boiledFor(seconds(boil)),
            OvenModel.DECK,
            OvenProfile.of(new OvenProfile.Step(celsius(set), minutes(time)).withSteam()),
            DoughKind.values()[kind]);
    assertThat(Math.abs(bake.heatBalance())).isLessThan(1e-6);
    assertThat(Math.abs(bake.massBalance())).isLessThan(1e-9);
    assertThat(bake.end().starch()).isBetween(0.0, 1.0);
    assertThat(bake.end().colour()).isBetween(0.0, 52.0);
    assertThat(bake.end().volume()).isBetween(1.0, 3.0);
    assertThat(bake.end().loss().in(PERCENT)).isBetween(0.0, 44.0);
  }
}
