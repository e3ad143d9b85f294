package org.tourage.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Percentage;
import org.hipparchus.special.Erf;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.tourage.advice.BakeryException;
import org.tourage.physics.DryingBody.Material;
import org.tourage.physics.DryingBody.Run;
import org.tourage.physics.DryingBody.Surroundings;

class DryingBodyTest {
  private static final double HALF = 0.02;
  private static final Material DRY = new Material(300, 0, 2800, 0.2, 0.2, 100);
  private static final double ALPHA = 0.2 / (300 * 2800.0);

  /** Air of one temperature. */
  record Still(double air, double h, double epsilon, double vapour) implements Surroundings {
    @Override
    public double celsius(double seconds) {
      return air;
    }

    @Override
    public double convection(double seconds) {
      return h;
    }

    @Override
    public double emissivity() {
      return epsilon;
    }

    @Override
    public double vapour(double seconds) {
      return vapour;
    }
  }

  /** From 1 °C in air of 0 °C: the excess as a share of the first. */
  private static Run cooled(int dimensions, double bi, double fo, int cells, int steps) {
    return new DryingBody(dimensions, HALF, DRY, cells, steps)
        .run(1, fo * HALF * HALF / ALPHA, new Still(0, bi * 0.2 / HALF, 0, -1), r -> true);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3})
  void withoutWaterSlabCylinderAndSphereFollowTheSeriesWithinAFifthOfAPercent(int dimensions) {
    for (double bi : new double[] {0.1, 1, 10, 100}) {
      for (double fo : new double[] {0.02, 0.1, 0.3, 1, 3}) {
        Run run = cooled(dimensions, bi, fo, 120, 600);
        String at = dimensions + " dimensions, Bi " + bi + ", Fo " + fo;
        double core = Series.excess(dimensions, bi, fo, 0);
        double face = Series.excess(dimensions, bi, fo, 1);
        // of the first excess everywhere, and of the value itself down to a hundredth of it
        assertThat(run.core()).as(at).isCloseTo(core, within(0.002 * Math.max(core, 0.01)));
        assertThat(run.surface()).as(at).isCloseTo(face, within(0.002 * Math.max(face, 0.01)));
      }
    }
  }

  @Test
  void theErrorFallsWithTheSquareOfTheGrid() {
    double exact = Series.excess(3, 5, 0.2, 0);
    double coarse = Math.abs(cooled(3, 5, 0.2, 10, 4000).core() - exact);
    double middle = Math.abs(cooled(3, 5, 0.2, 20, 4000).core() - exact);
    // the cells are stretched alike, so halving is not exact: the order lies near 2
    double order = Math.log(coarse / middle) / Math.log(2);
    assertThat(order).isBetween(1.5, 2.8);
  }

  @Test
  void theErrorFallsWithTheSquareOfTheStep() {
    // against the same grid with very small steps, so that only time counts
    double fine = cooled(1, 5, 0.5, 40, 6400).core();
    double coarse = Math.abs(cooled(1, 5, 0.5, 40, 25).core() - fine);
    double middle = Math.abs(cooled(1, 5, 0.5, 40, 50).core() - fine);
    double small = Math.abs(cooled(1, 5, 0.5, 40, 100).core() - fine);
    assertThat(Math.log(coarse / middle) / Math.log(2)).isBetween(1.6, 2.6);
    assertThat(Math.log(middle / small) / Math.log(2)).isBetween(1.6, 2.6);
  }

  @Test
  void aBoilingFrontFollowsNeumannsSolutionWithinOnePercent() {
    // dry part: k 0.1, ρ 300, c 1500; 0.4 kg of water in each kg; surface held 80 K above boiling
    double w = 0.4;
    double dryHeat = 1500;
    double k = 0.1;
    double latent = DryingBody.latent(100);
    Material wet = new Material(300, w, dryHeat, k, k, 100);
    double stefan = dryHeat * 80 / (w * latent);
    double lambda = 0;
    for (double low = 1e-6, high = 3; high - low > 1e-13; ) {
      lambda = (low + high) / 2;
      double value =
          Math.sqrt(Math.PI) * lambda * Math.exp(lambda * lambda) * Erf.erf(lambda) - stefan;
      if (value > 0) {
        high = lambda;
      } else {
        low = lambda;
      }
    }
    double alpha = k / (300 * dryHeat);
    for (double seconds : new double[] {300, 1200, 3600}) {
      double front = 2 * lambda * Math.sqrt(alpha * seconds);
      Run run =
          new DryingBody(1, 0.03, wet, 80, 800)
              .run(100, seconds, new Still(180, 1e6, 0, -1), r -> true);
      assertThat(run.loss() / w * 0.03).isCloseTo(front, Percentage.withPercentage(1));
      assertThat(run.crust()).isCloseTo(front, Percentage.withPercentage(3));
    }
  }

  private static final Material DOUGH = new Material(290, 0.36, 1250, 0.38, 0.07, 100);

  private static Run baked(int dimensions, int cells, int steps, double vapour) {
    return new DryingBody(dimensions, 0.022, DOUGH, cells, steps)
        .run(26, 1500, new Still(190, 18, 0.9, vapour), r -> true);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3})
  void heatAndMassBalancesCloseToAMillionth(int dimensions) {
    for (double vapour : new double[] {-1, 2000, 60_000}) {
      Run run = baked(dimensions, 40, 300, vapour);
      assertThat(Math.abs(run.heatBalance())).isLessThan(1e-6);
      assertThat(Math.abs(run.massBalance())).isLessThan(1e-9);
      assertThat(run.loss()).isBetween(0.02, 0.36);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3})
  void halvingGridAndStepChangesTheResultByLessThanHalfAPercent(int dimensions) {
    Run normal = baked(dimensions, 40, 300, 2000);
    Run fine = baked(dimensions, 80, 600, 2000);
    assertThat(normal.core()).isCloseTo(fine.core(), Percentage.withPercentage(0.5));
    assertThat(normal.surface()).isCloseTo(fine.surface(), Percentage.withPercentage(0.5));
    assertThat(normal.loss()).isCloseTo(fine.loss(), Percentage.withPercentage(0.5));
  }

  @Test
  void steamCondensesOnAColdPieceAndWarmsIt() {
    double[] early = {0, 0};
    for (int i = 0; i < 2; i++) {
      double vapour = i == 0 ? 2000 : 70_000;
      early[i] =
          new DryingBody(2, 0.022, DOUGH, 40, 300)
              .run(26, 60, new Still(200, 15, 0.9, vapour), r -> true)
              .mean();
    }
    assertThat(early[1]).isGreaterThan(early[0] + 1);
    Run steamed =
        new DryingBody(2, 0.022, DOUGH, 40, 300)
            .run(26, 60, new Still(200, 15, 0.9, 70_000), r -> true);
    assertThat(steamed.condensed()).isBetween(0.001, 0.05);
  }

  @Test
  void wetCrumbNeverPassesTheBoilingPointAndTheCrustDoes() {
    Run run = baked(2, 40, 300, 2000);
    assertThat(run.core()).isLessThanOrEqualTo(100);
    assertThat(run.surface()).isBetween(110.0, 190.0);
    assertThat(run.crust()).isBetween(0.001, 0.012);
    assertThat(run.heatTaken()).isPositive();
  }

  @Test
  void whatCanNotBeBakedIsRefused() {
    assertThatThrownBy(() -> new Material(300, 1.2, 1500, 0.2, 0.1, 100))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> new DryingBody(4, HALF, DRY, 40, 300))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(
            () ->
                new DryingBody(1, HALF, DRY, 40, 300)
                    .run(120, 60, new Still(1, 1, 0, -1), r -> true))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("100.0 °C");
  }
}
