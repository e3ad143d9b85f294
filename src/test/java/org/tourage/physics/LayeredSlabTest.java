package org.tourage.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.celsius;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.tourage.advice.BakeryException;
import org.tourage.physics.LayeredSlab.Layer;
import org.tourage.physics.LayeredSlab.State;
import org.tourage.physics.LayeredSlab.Surface;

class LayeredSlabTest {
  private static final double HALF = 0.01;
  private static final double K = 0.4;
  private static final double RHO = 1100;
  private static final double C = 2800;
  private static final double ALPHA = K / (RHO * C);

  @Test
  void theSeriesOfThisTestGivesThePublishedCheckValues() {
    // Bi 2, Fo 0.3: 0.827781 in the middle, 0.398395 at the face
    assertThat(Series.excess(1, 2, 0.3, 0)).isCloseTo(0.827781, within(1e-6));
    assertThat(Series.excess(1, 2, 0.3, 1)).isCloseTo(0.398395, within(1e-6));
  }

  @ParameterizedTest
  @CsvSource({
    "0.1,0.02",
    "0.1,0.5",
    "0.1,3",
    "1,0.02",
    "1,0.2",
    "1,1",
    "1,3",
    "2,0.3",
    "10,0.02",
    "10,0.2",
    "10,1",
    "100,0.02",
    "100,0.2",
    "100,1"
  })
  void aWallCooledOnBothSidesFollowsTheSeriesWithinHalfAPercent(double bi, double fo) {
    double h = bi * K / HALF;
    LayeredSlab slab =
        new LayeredSlab(
            List.of(new Layer(2 * HALF, K, RHO, HeatContent.constant(C), 60)),
            new Surface(h, 0),
            new Surface(h, 0));
    State state = slab.run(List.of(celsius(20)), fo * HALF * HALF / ALPHA, s -> true);
    for (double x : new double[] {0, 1}) {
      double expected = Series.excess(1, bi, fo, x);
      double found = (x == 0 ? state.middle(0) : state.topFace(0)) / 20;
      // half a percent of the value itself, down to where a thousandth of a kelvin in 20 is left
      assertThat(found).isCloseTo(expected, within(Math.max(0.005 * expected, 5e-5)));
    }
    assertThat(state.bottomFace(0)).isCloseTo(state.topFace(0), within(1e-6));
  }

  @Test
  void anInsulatedFaceIsTheMiddleOfAWallTwiceAsThick() {
    double h = 20;
    LayeredSlab whole =
        new LayeredSlab(
            List.of(new Layer(2 * HALF, K, RHO, HeatContent.constant(C), 80)),
            new Surface(h, 25),
            new Surface(h, 25));
    LayeredSlab half =
        new LayeredSlab(
            List.of(new Layer(HALF, K, RHO, HeatContent.constant(C), 40)),
            Surface.INSULATED,
            new Surface(h, 25));
    double a = whole.run(List.of(celsius(4)), 900, s -> true).topFace(0);
    double b = half.run(List.of(celsius(4)), 900, s -> true).topFace(0);
    assertThat(a).isCloseTo(b, within(0.005 * 21));
  }

  @Test
  void twoThickBodiesInContactMeetAtTheMeanOfTheirEffusivities() {
    double k2 = 2.8;
    double rho2 = 2650;
    double c2 = 790;
    LayeredSlab slab =
        new LayeredSlab(
            List.of(
                new Layer(0.2, k2, rho2, HeatContent.constant(c2), 400),
                new Layer(0.1, K, RHO, HeatContent.constant(C), 400)),
            Surface.INSULATED,
            Surface.INSULATED);
    double e1 = Math.sqrt(k2 * rho2 * c2);
    double e2 = Math.sqrt(K * RHO * C);
    double expected = (e1 * 20 + e2 * 4) / (e1 + e2);
    State state = slab.run(List.of(celsius(20), celsius(4)), 60, s -> true);
    assertThat(state.topFace(0)).isCloseTo(expected, within(0.005 * 16));
    assertThat(state.bottomFace(1)).isCloseTo(state.topFace(0), within(1e-6));
  }

  /** Melts between 10 and 20 °C. */
  record Melting() implements HeatContent {
    private static final double LATENT = 40_000;

    @Override
    public double heat(double celsius) {
      return C * celsius + LATENT * Math.min(1, Math.max(0, (celsius - 10) / 10));
    }

    @Override
    public double slope(double celsius) {
      return C + (celsius > 10 && celsius < 20 ? LATENT / 10 : 0);
    }
  }

  private static double minutesToMelt(int cells) {
    LayeredSlab slab =
        new LayeredSlab(
            List.of(new Layer(0.02, K, RHO, new Melting(), cells)),
            Surface.INSULATED,
            new Surface(12, 24));
    return slab.run(List.of(celsius(4)), 1e5, s -> s.coldest(0) < 18).seconds() / 60;
  }

  @Test
  void meltingAgreesWithAFineGridWithinHalfAPercentAndDelaysTheWarming() {
    double fine = minutesToMelt(320);
    assertThat(minutesToMelt(40)).isCloseTo(fine, within(0.005 * fine));
    LayeredSlab dry =
        new LayeredSlab(
            List.of(new Layer(0.02, K, RHO, HeatContent.constant(C), 40)),
            Surface.INSULATED,
            new Surface(12, 24));
    assertThat(dry.run(List.of(celsius(4)), 1e5, s -> s.coldest(0) < 18).seconds() / 60)
        .isLessThan(0.8 * fine);
  }

  @Test
  void heatIsConservedBetweenInsulatedFaces() {
    LayeredSlab slab =
        new LayeredSlab(
            List.of(
                new Layer(0.02, K, RHO, new Melting(), 40),
                new Layer(0.02, 15, 7900, HeatContent.constant(477), 20)),
            Surface.INSULATED,
            Surface.INSULATED);
    double[] first = {Double.NaN};
    State state =
        slab.run(
            List.of(celsius(4), celsius(30)),
            3000,
            s -> {
              first[0] = Double.isNaN(first[0]) ? s.heat() : first[0];
              return true;
            });
    assertThat(state.heat()).isCloseTo(first[0], within(1e-7 * Math.abs(first[0])));
    assertThat(state.mean(0)).isBetween(4.0, 30.0);
    assertThat(state.toString()).startsWith("after ");
  }

  @Test
  void aSlabAtRestStopsByItself() {
    LayeredSlab slab =
        new LayeredSlab(
            List.of(new Layer(0.002, K, RHO, HeatContent.constant(C), 10)),
            new Surface(50, 20),
            new Surface(50, 20));
    State state = slab.run(List.of(celsius(4)), 1e9, s -> true);
    assertThat(state.seconds()).isLessThan(1e6);
    assertThat(state.middle(0)).isCloseTo(20, within(0.01));
    assertThat(state.warmest(0)).isCloseTo(20, within(0.01));
  }

  @Test
  void impossibleSlabsAreRefused() {
    Layer layer = new Layer(0.01, K, RHO, HeatContent.constant(C), 4);
    assertThatThrownBy(() -> new Layer(0, K, RHO, HeatContent.constant(C), 4))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("0.0 m");
    assertThatThrownBy(() -> new Surface(-1, 20)).hasMessageContaining("-1.0 W");
    assertThatThrownBy(() -> new LayeredSlab(List.of(), Surface.INSULATED, Surface.INSULATED))
        .hasMessageContaining("needs a layer");
    LayeredSlab slab =
        new LayeredSlab(List.of(layer), Surface.INSULATED, Surface.of(10, celsius(20)));
    assertThatThrownBy(() -> slab.run(List.of(), 10, s -> true))
        .hasMessageContaining("0 temperatures for 1 layers");
  }
}
