package org.tourage.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;

import java.util.Arrays;
import java.util.List;
import org.assertj.core.data.Percentage;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.tourage.advice.BakeryException;
import org.tourage.physics.SolidConduction.LocalProcess;
import org.tourage.physics.SolidConduction.State;

class SolidConductionTest {
  private static final double HALF = 0.02;
  private static final double K = 0.4;
  private static final double RHO_C = 1100 * 2800.0;
  private static final double ALPHA = K / RHO_C;

  private static Solid body(int dimensions) {
    return switch (dimensions) {
      case 1 -> Solid.slab(metres(2 * HALF));
      case 2 -> Solid.roll(metres(2 * HALF));
      default -> Solid.ball(metres(2 * HALF));
    };
  }

  /** Excess of core and face over air at 0 °C, from 1 °C. */
  private static State cooled(Solid solid, double bi, double fo) {
    double seconds = fo * HALF * HALF / ALPHA;
    return new SolidConduction(solid, K, RHO_C, bi * K / HALF)
        .run(
            celsius(1),
            TemperatureHistory.ofHold(celsius(0), seconds(seconds)),
            LocalProcess.NONE,
            0,
            List.of(seconds(seconds)))
        .get(0);
  }

  @ParameterizedTest
  @CsvSource({"1,0.827781,0.398395", "2,0.619290,0.283828", "3,0.429792,0.190373"})
  void theSeriesOfThisTestGivesThePublishedCheckValuesAtBiot2Fourier03(
      int dimensions, double centre, double surface) {
    assertThat(Series.excess(dimensions, 2, 0.3, 0)).isCloseTo(centre, within(6e-7));
    assertThat(Series.excess(dimensions, 2, 0.3, 1)).isCloseTo(surface, within(6e-7));
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3})
  void slabCylinderAndSphereFollowTheSeriesWithinHalfAPercentOfTheValue(int dimensions) {
    for (double bi : new double[] {0.01, 0.1, 1, 10, 100}) {
      for (double fo : new double[] {0.01, 0.03, 0.1, 0.3, 1, 3}) {
        State state = cooled(body(dimensions), bi, fo);
        String at = dimensions + " dimensions, Bi " + bi + ", Fo " + fo;
        assertThat(state.core())
            .as(at)
            .isCloseTo(Series.excess(dimensions, bi, fo, 0), Percentage.withPercentage(0.5));
        assertThat(state.surface())
            .as(at)
            .isCloseTo(Series.excess(dimensions, bi, fo, 1), Percentage.withPercentage(0.5));
      }
    }
  }

  @Test
  void crossedBodiesAreTheProductsOfTheirAxes() {
    double bi = 2;
    for (double fo : new double[] {0.03, 0.3, 1}) {
      double slab = Series.excess(1, bi, fo, 0);
      Solid cube = Solid.box(metres(2 * HALF), metres(2 * HALF), metres(2 * HALF));
      assertThat(cooled(cube, bi, fo).core())
          .isCloseTo(slab * slab * slab, Percentage.withPercentage(0.5));
      assertThat(cooled(cube, bi, fo).surface())
          .isCloseTo(slab * slab * Series.excess(1, bi, fo, 1), Percentage.withPercentage(0.5));
      Solid tub = Solid.tub(metres(2 * HALF), metres(2 * HALF));
      assertThat(cooled(tub, bi, fo).core())
          .isCloseTo(slab * Series.excess(2, bi, fo, 0), Percentage.withPercentage(0.5));
    }
  }

  @ParameterizedTest
  @CsvSource({"0.3,0.01", "1,0.01", "3,0.01", "3,0.02", "10,0.02", "3,0.1", "10,0.3"})
  void cornerFaceAndMiddleOfABoxAndATubFollowTheProductOfTheSeriesWithin20Millikelvin(
      double bi, double fo) {
    // a jump of 21 K, as from the mixer to the refrigerator; the last point lies on all faces
    double slab = Series.excess(1, bi, fo, 0);
    double face = Series.excess(1, bi, fo, 1);
    double rim = Series.excess(2, bi, fo, 1);
    Solid cube = Solid.box(metres(2 * HALF), metres(2 * HALF), metres(2 * HALF));
    State box = cooled(cube, bi, fo);
    assertThat(21 * lastPoint(box)).isCloseTo(21 * cubed(face), within(0.02));
    assertThat(21 * box.core()).isCloseTo(21 * cubed(slab), within(0.02));
    assertThat(21 * box.surface()).isCloseTo(21 * slab * slab * face, within(0.02));
    State tub = cooled(Solid.tub(metres(2 * HALF), metres(2 * HALF)), bi, fo);
    assertThat(21 * lastPoint(tub)).isCloseTo(21 * face * rim, within(0.02));
    assertThat(21 * tub.core()).isCloseTo(21 * slab * Series.excess(2, bi, fo, 0), within(0.02));
  }

  private static double lastPoint(State state) {
    return state.temperatures().get(state.temperatures().size() - 1);
  }

  private static double cubed(double x) {
    return x * x * x;
  }

  @Test
  void airThatJumpsMidwayIsTheSumOfTwoSeries() {
    double bi = 3;
    double unit = HALF * HALF / ALPHA;
    State state =
        new SolidConduction(body(2), K, RHO_C, bi * K / HALF)
            .run(
                celsius(30),
                TemperatureHistory.ofHold(celsius(4), seconds(0.2 * unit))
                    .thenHold(celsius(20), seconds(0.3 * unit)),
                LocalProcess.NONE,
                0,
                List.of(seconds(0.5 * unit)))
            .get(0);
    double sum = 20 + 26 * Series.excess(2, bi, 0.5, 0) - 16 * Series.excess(2, bi, 0.3, 0);
    assertThat(state.core()).isCloseTo(sum, within(0.02));
  }

  @Test
  void airThatWarmsSteadilyGivesTheTextbookLagOfASmallBody() {
    // lumped body, T = a + b(t − τ) + (T0 − a + bτ)e^(−t/τ): T0 25, a 200, b 0.05 K/s, τ 600 s
    double h = 1e-3;
    double tau = RHO_C * HALF / h;
    State state =
        new SolidConduction(body(1), K, RHO_C, h)
            .run(
                celsius(25),
                TemperatureHistory.ofRamp(
                    celsius(200), celsius(200 + 0.05 * 900), seconds(1.5 * tau)),
                LocalProcess.NONE,
                0,
                List.of(seconds(1.5 * tau)))
            .get(0);
    assertThat(state.mean()).isCloseTo(182.646, within(0.01));
  }

  @Test
  void withoutExchangeTheHeatOfTheProcessStaysInTheBody() {
    State state =
        new SolidConduction(Solid.box(metres(0.1), metres(0.2), metres(0.3)), K, RHO_C, 0)
            .run(
                celsius(20),
                TemperatureHistory.ofHold(celsius(-20), hours(10)),
                celsius -> 1e-4 * Math.exp(0.05 * (celsius - 20)),
                2,
                List.of(hours(10)))
            .get(0);
    // the whole body follows dT/dt = 2e-4 e^(0.05 (T − 20)), so e^(−0.05 (T − 20)) = 1 − 1e-5 t
    double rise = -Math.log(1 - 1e-5 * 36000) / 0.05;
    assertThat(state.mean() - 20).isCloseTo(rise, within(2e-3));
    assertThat(state.core()).isCloseTo(state.surface(), within(1e-6));
    assertThat(2 * state.meanProgress()).isCloseTo(state.mean() - 20, within(1e-3));
  }

  /** The same physics on 80 shells of equal thickness, by an integrator for anything. */
  private static double[] byShells(int dimensions, double h, double hours, double heat) {
    int n = 80;
    double dx = HALF / n;
    double[] volume = new double[n];
    double[] conductance = new double[n];
    for (int i = 0; i < n; i++) {
      volume[i] = (Math.pow((i + 1) * dx, dimensions) - Math.pow(i * dx, dimensions)) / dimensions;
      double area = Math.pow((i + 1) * dx, dimensions - 1);
      conductance[i] = i < n - 1 ? area * K / dx : area / (1 / h + dx / (2 * K));
    }
    OrdinaryDifferentialEquation equation =
        new OrdinaryDifferentialEquation() {
          @Override
          public int getDimension() {
            return 2 * n;
          }

          @Override
          public double[] computeDerivatives(double t, double[] y) {
            double[] slope = new double[2 * n];
            for (int i = 0; i < n; i++) {
              double in = i > 0 ? conductance[i - 1] * (y[i - 1] - y[i]) : 0;
              in += conductance[i] * ((i < n - 1 ? y[i + 1] : 4) - y[i]);
              double rate = grow(y[i]);
              slope[i] = in / (RHO_C * volume[i]) + heat * rate;
              slope[n + i] = rate;
            }
            return slope;
          }
        };
    double[] start = new double[2 * n];
    Arrays.fill(start, 0, n, 26);
    double[] end =
        new DormandPrince853Integrator(1e-6, 3600, 1e-9, 1e-9)
            .integrate(equation, new ODEState(0, start), hours * 3600)
            .getPrimaryState();
    double mean = 0;
    double progress = 0;
    double all = 0;
    for (int i = 0; i < n; i++) {
      mean += volume[i] * end[i];
      progress += volume[i] * end[n + i];
      all += volume[i];
    }
    return new double[] {end[0], mean / all, progress / all};
  }

  private static double grow(double celsius) {
    return 1e-4 * Math.max(0, celsius - 2) * Math.max(0, celsius - 2) / 576;
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3})
  void heatAndProcessTogetherAgreeWithAFineGridUnderAGeneralIntegrator(int dimensions) {
    State state =
        new SolidConduction(body(dimensions), K, RHO_C, 12)
            .run(
                celsius(26),
                TemperatureHistory.ofHold(celsius(4), hours(3)),
                SolidConductionTest::grow,
                3,
                List.of(hours(3)))
            .get(0);
    double[] fine = byShells(dimensions, 12, 3, 3);
    assertThat(state.core()).isCloseTo(fine[0], within(0.005));
    assertThat(state.mean()).isCloseTo(fine[1], within(0.005));
    assertThat(state.meanProgress()).isCloseTo(fine[2], Percentage.withPercentage(0.05));
  }

  @Test
  void goingOnFromAStateIsAsIfItHadNotStopped() {
    SolidConduction body = new SolidConduction(body(2), K, RHO_C, 12);
    TemperatureHistory air =
        TemperatureHistory.ofHold(celsius(4), hours(1)).thenRamp(celsius(25), hours(2));
    State whole =
        body.run(celsius(26), air, SolidConductionTest::grow, 3, List.of(hours(3))).get(0);
    State first =
        body.run(
                celsius(26),
                TemperatureHistory.ofHold(celsius(4), hours(1)),
                SolidConductionTest::grow,
                3,
                List.of(hours(0), hours(1)))
            .get(1);
    State second =
        body.run(
                first,
                TemperatureHistory.ofRamp(celsius(4), celsius(25), hours(2)),
                SolidConductionTest::grow,
                3,
                List.of(hours(2)))
            .get(0);
    assertThat(second.mean()).isCloseTo(whole.mean(), within(0.01));
    assertThat(second.meanProgress())
        .isCloseTo(whole.meanProgress(), Percentage.withPercentage(0.1));
  }

  @Test
  void aCoverSlowsACoolingBody() {
    TemperatureHistory air = TemperatureHistory.ofHold(celsius(4), hours(1));
    double bare =
        new SolidConduction(body(3), K, RHO_C, 10)
            .run(celsius(26), air, LocalProcess.NONE, 0, List.of(hours(1)))
            .get(0)
            .core();
    double covered =
        new SolidConduction(body(3), K, RHO_C, 1 / (1 / 10.0 + 0.05))
            .run(celsius(26), air, LocalProcess.NONE, 0, List.of(hours(1)))
            .get(0)
            .core();
    assertThat(covered).isGreaterThan(bare + 0.5);
  }

  @Test
  void whatIsNoBodyIsRefused() {
    assertThatThrownBy(() -> new SolidConduction(body(1), 0, RHO_C, 8))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("W/(m·K)");
    assertThatThrownBy(() -> Solid.slab(millimetres(0)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("0 mm");
    assertThatThrownBy(
            () ->
                new Solid(
                    "hypercube", Solid.box(metres(1), metres(1), metres(1)).axes().subList(0, 0)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("hypercube");
    SolidConduction body = new SolidConduction(body(1), K, RHO_C, 8);
    TemperatureHistory air = TemperatureHistory.ofHold(celsius(4), hours(1));
    assertThatThrownBy(() -> body.run(celsius(20), air, LocalProcess.NONE, 0, List.of(hours(2))))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("2 h");
    State state = body.run(celsius(20), air, LocalProcess.NONE, 0, List.of(hours(1))).get(0);
    assertThatThrownBy(
            () ->
                new SolidConduction(Solid.tub(metres(1), metres(1)), K, RHO_C, 8)
                    .run(state, air, LocalProcess.NONE, 0, List.of(hours(1))))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("another kind of body");
  }

  @Test
  void aSolidKnowsItsSurfaceAndReadsWell() {
    assertThat(Solid.ball(metres(0.1)).surfaceByVolume()).isCloseTo(60, within(1e-12));
    assertThat(Solid.box(metres(1), metres(2), metres(4)).surfaceByVolume())
        .isCloseTo(2 + 1 + 0.5, within(1e-12));
    assertThat(Solid.tub(centimetres(20), centimetres(12)))
        .hasToString("tub 200 mm across, 120 mm high");
    assertThat(Solid.box(centimetres(30), centimetres(20), millimetres(40)))
        .hasToString("box 300 mm x 200 mm x 40 mm");
  }

  @Test
  void aHistoryReadsWellAndKnowsItsTemperatures() {
    TemperatureHistory history =
        TemperatureHistory.ofHold(celsius(24), hours(1))
            .thenRamp(celsius(4), hours(2))
            .thenHold(celsius(6), hours(12));
    assertThat(history)
        .hasToString(
            "24 °C (75 °F) for 1 h, then 24 °C (75 °F) to 4 °C (39 °F) within 2 h, then 6 °C (43 °F) for 12 h");
    assertThat(history.duration()).isEqualTo(hours(15));
    assertThat(history.at(hours(0))).isEqualTo(celsius(24));
    assertThat(history.at(hours(2))).isEqualTo(celsius(14));
    assertThat(history.at(hours(3))).isEqualTo(celsius(6));
    assertThat(history.at(hours(99))).isEqualTo(celsius(6));
    assertThatThrownBy(() -> history.at(hours(-1))).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> TemperatureHistory.ofHold(celsius(1), minutes(0)))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> new TemperatureHistory(List.of())).isInstanceOf(BakeryException.class);
  }
}
