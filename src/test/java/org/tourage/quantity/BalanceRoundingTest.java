package org.tourage.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;

import java.util.List;
import javax.measure.quantity.Mass;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.reference.Checks;

class BalanceRoundingTest {
  @Test
  void thePublishedMethodGivesTheRemainingStepsToTheLargestRemainders() {
    BalanceRounding rounding =
        BalanceRounding.of(
            List.of(grams(597.6), grams(406.37), grams(11.95), grams(4.18)), grams(5));
    assertThat(rounding.rounded()).containsExactly(grams(600), grams(405), grams(10), grams(5));
    Checks.Row row =
        Checks.row("formula-figures.csv", "rounded total of 597.6 406.37 11.95 4.18 at 5 g");
    assertThat(rounding.total()).isEqualTo(grams(row.number("value")));
    assertThat(rounding.greatestError().value()).isCloseTo(100 * 0.82 / 4.18, within(1e-9));
    assertThat(rounding.working().lines()).hasSize(1);
    assertThat(rounding)
        .hasToString("[600 g, 405 g, 10 g, 5 g], total 1020 g, greatest error 19.6 %");
  }

  @Test
  void aPresentIngredientNeverBecomesNothingAndTheAdviceSaysSo() {
    BalanceRounding rounding =
        BalanceRounding.of(List.of(grams(999.8), grams(0.2), grams(0)), grams(1));
    assertThat(rounding.rounded()).containsExactly(grams(999), grams(1), grams(0));
    assertThat(rounding.advice()).extracting(Advice::code).containsExactly("BALANCE_TOO_COARSE");
    assertThat(rounding.advice().get(0).text())
        .contains("line 2")
        .contains("0.2 g")
        .contains("1 g");
  }

  @Test
  void amongEqualRemaindersTheEarlierLineGoesFirst() {
    BalanceRounding rounding =
        BalanceRounding.of(List.of(grams(1.5), grams(1.5), grams(1.5), grams(1.5)), grams(1));
    assertThat(rounding.rounded()).containsExactly(grams(2), grams(2), grams(1), grams(1));
  }

  @Test
  void fineBalancesGiveCleanNumbers() {
    BalanceRounding rounding = BalanceRounding.of(List.of(grams(0.3), ounces(1)), grams(0.1));
    assertThat(rounding.rounded().get(0).value()).isEqualTo(0.3);
    assertThat(rounding.rounded().get(1).value()).isEqualTo(28.3);
    assertThat(rounding.advice()).isEmpty();
  }

  @Test
  void whatCanNotBeWeighedIsRefused() {
    assertThatThrownBy(() -> BalanceRounding.of(List.of(grams(0.2), grams(0.3)), grams(1)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("0.5 g of 2 ingredients");
    assertThatThrownBy(() -> BalanceRounding.of(List.of(grams(-1)), grams(1)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("-1 g");
    assertThatThrownBy(() -> BalanceRounding.of(List.of(grams(1)), grams(0)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("resolution");
  }

  @Property
  void roundingConservesTheTotalToHalfAStepAndEachLineToOneStep(
      @ForAll @Size(min = 1, max = 14) List<@DoubleRange(min = 0, max = 3000) Double> masses,
      @ForAll @net.jqwik.api.constraints.IntRange(min = 0, max = 3) int which) {
    double step = new double[] {0.01, 0.1, 1, 5}[which];
    double total = masses.stream().mapToDouble(m -> m).sum();
    long present = masses.stream().filter(m -> m > 0).count();
    Assume.that(total / step > present + 1);
    List<Amount<Mass>> amounts = masses.stream().map(Amounts::grams).toList();
    BalanceRounding rounding = BalanceRounding.of(amounts, grams(step));
    assertThat(rounding.total().value()).isCloseTo(total, within(step * 0.5001));
    boolean tiny = masses.stream().anyMatch(m -> m > 0 && m < step);
    for (int i = 0; i < masses.size(); i++) {
      double after = rounding.rounded().get(i).value();
      assertThat(after / step).isCloseTo(Math.rint(after / step), within(1e-6));
      assertThat(after > 0).isEqualTo(masses.get(i) > 0);
      if (!tiny) {
        assertThat(after).isCloseTo(masses.get(i), within(step * 1.000001));
      }
    }
  }

  @Property
  void massesThatAreWholeStepsStayAsTheyAre(
      @ForAll @Size(min = 1, max = 12)
          List<@net.jqwik.api.constraints.IntRange(min = 0, max = 4000) Integer> tenths) {
    Assume.that(tenths.stream().anyMatch(t -> t > 0));
    List<Amount<Mass>> amounts = tenths.stream().map(t -> grams(t / 10.0)).toList();
    assertThat(BalanceRounding.of(amounts, grams(0.1)).rounded()).isEqualTo(amounts);
  }
}
