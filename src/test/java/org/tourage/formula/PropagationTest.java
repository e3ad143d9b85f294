package org.tourage.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.tourage.advice.BakeryException;
import org.tourage.formula.Propagation.Input;

class PropagationTest {
  private static final HouseholdRecipe SCOOPED =
      HouseholdRecipe.of(
          "class dough",
          "4 cups bread flour",
          "1 1/3 cups water",
          "1 1/2 tsp salt",
          "1 packet instant yeast");

  private static Propagation hydration(HouseholdRecipe recipe) {
    return recipe.propagation(
        "true hydration", "%", b -> b.formula().hydration().trueHydration().in(PERCENT));
  }

  @Test
  void theScoopedCupMattersMostAndWeighingTakesTheDoubtAway() {
    Propagation.Linear scooped = hydration(SCOOPED).linear();
    assertThat(scooped.contributions().get(0).input()).isEqualTo("4 cups bread flour");
    assertThat(scooped.share("4 cups bread flour")).isGreaterThan(0.8);
    assertThat(scooped.expanded()).isGreaterThan(5);
    assertThat(scooped.toString())
        .contains("true hydration", "±", "4 cups bread flour matters most");
    Propagation.Linear weighed =
        hydration(
                HouseholdRecipe.of(
                    "class dough",
                    "549 g bread flour",
                    "315 g water",
                    "9 g salt",
                    "7 g instant yeast"))
            .linear();
    assertThat(weighed.standard()).isZero();
    assertThat(weighed.toString()).endsWith("± 0 %");
    assertThat(scooped.working().toString()).contains("of the variance", "JCGM 100:2008");
    assertThat(hydration(SCOOPED).toString()).contains("4 cups bread flour");
  }

  @Test
  void theLawOfPropagationAgreesWithALargeSamplingRunWithinTwoPercent() {
    HouseholdRecipe spooned =
        HouseholdRecipe.of(
            "class dough",
            "4 cups bread flour, spooned",
            "1 1/3 cups water",
            "1/4 cup sugar",
            "1 1/2 tsp salt");
    Propagation.Linear linear = hydration(spooned).linear();
    Propagation.Sampled sampled = hydration(spooned).sampled(60_000, 20261125);
    assertThat(linear.standard()).isCloseTo(sampled.standard(), Percentage.withPercentage(2));
    assertThat(sampled.low()).isLessThan(sampled.value());
    assertThat(sampled.high()).isGreaterThan(sampled.value());
    assertThat(sampled.toString()).contains("95 % of 60000 samples");
  }

  @Property(tries = 60)
  void forASumTheVariancesAdd(
      @ForAll @DoubleRange(min = 0.1, max = 5) double a,
      @ForAll @DoubleRange(min = 0.1, max = 5) double b) {
    Propagation sum =
        new Propagation(
            "sum",
            "g",
            List.of(Input.normal("a", 10, a), Input.within("b", 20, b)),
            x -> 2 * x[0] - x[1]);
    double expected = Math.sqrt(4 * a * a + b * b / 3);
    assertThat(sum.linear().standard()).isCloseTo(expected, within(1e-7 * expected));
    assertThat(sum.linear().share("a") + sum.linear().share("b")).isCloseTo(1, within(1e-9));
  }

  @Test
  void theSameSeedGivesTheSameAnswerAndABentModelIsSeenBySampling() {
    Propagation square =
        new Propagation("square", "", List.of(Input.normal("x", 0, 1)), x -> x[0] * x[0]);
    assertThat(square.linear().standard()).isCloseTo(0, within(1e-9));
    Propagation.Sampled one = square.sampled(100_000, 7);
    assertThat(one).isEqualTo(square.sampled(100_000, 7));
    // chi-squared of one degree: mean 1, standard deviation √2
    assertThat(one.mean()).isCloseTo(1, within(0.02));
    assertThat(one.standard()).isCloseTo(Math.sqrt(2), within(0.05));
  }

  @Test
  void proteinPrintedOnABagIsAnInputLikeAnyOther() {
    Propagation protein =
        new Propagation(
            "water for another flour",
            "points",
            List.of(
                Input.within("protein on the bag, %", 12, 0.5),
                Input.normal("points each", 1.25, 0.15)),
            x -> x[1] * (x[0] - 10.3));
    assertThat(protein.linear().value()).isCloseTo(2.125, within(1e-9));
    assertThat(protein.linear().standard())
        .isCloseTo(Math.hypot(1.25 * 0.5 / Math.sqrt(3), 1.7 * 0.15), within(1e-6));
  }

  @Test
  void whatIsNoInputIsRefused() {
    assertThatThrownBy(() -> Input.between("cup", 500, 100, 200))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("cup");
    assertThatThrownBy(() -> new Propagation("x", "", List.of(), v -> 0))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> hydration(SCOOPED).sampled(5, 1)).isInstanceOf(BakeryException.class);
  }
}
