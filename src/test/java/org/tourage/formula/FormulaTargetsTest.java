package org.tourage.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.quantity.BakeryUnits;

class FormulaTargetsTest {
  private static Batch start() {
    return Formula.byPercent(
            "class dough",
            f ->
                f.line("bread flour", percent(100))
                    .line("water", percent(40))
                    .line("whole milk", percent(20))
                    .line("sugar", percent(10))
                    .line("salted butter", percent(10))
                    .line("salt", percent(1.8))
                    .line("instant yeast", percent(1))
                    .preferment(Preferment.poolish(percent(20))))
        .forFlour(grams(1000));
  }

  private static FormulaTargets free() {
    return FormulaTargets.of(start())
        .move("bread flour")
        .move("water")
        .move("sugar")
        .move("salted butter")
        .move("salt")
        .move("Poolish", "bread flour", grams(0), grams(2000))
        .move("Poolish", "water", grams(0), grams(2000));
  }

  @Property(tries = 200)
  void whatCanBeMetIsMet(
      @ForAll @DoubleRange(min = 55, max = 75) double hydration,
      @ForAll @DoubleRange(min = 1.7, max = 2.4) double salt,
      @ForAll @DoubleRange(min = 6, max = 15) double sugar,
      @ForAll @DoubleRange(min = 6, max = 15) double fat,
      @ForAll @DoubleRange(min = 5, max = 40) double prefermented,
      @ForAll @DoubleRange(min = 800, max = 3000) double dough) {
    TargetSolution solution =
        free()
            .hydration(percent(hydration))
            .salt(percent(salt))
            .sugars(percent(sugar))
            .fat(percent(fat))
            .prefermentedFlour(percent(prefermented))
            .dough(grams(dough))
            .solve();
    assertThat(solution.missed()).isEmpty();
    assertThat(solution.met()).isTrue();
    Formula found = solution.batch().formula();
    assertThat(found.hydration().trueHydration().in(PERCENT)).isCloseTo(hydration, within(1e-4));
    Totals totals = Totals.of(found);
    assertThat(totals.salt().in(PERCENT)).isCloseTo(salt, within(1e-4));
    assertThat(totals.sugars().in(PERCENT)).isCloseTo(sugar, within(1e-4));
    assertThat(totals.fat().in(PERCENT)).isCloseTo(fat, within(1e-4));
    assertThat(found.prefermentedFlour().in(PERCENT)).isCloseTo(prefermented, within(1e-4));
    assertThat(solution.batch().dough().in(GRAM)).isCloseTo(dough, within(1e-2));
  }

  @Test
  void ofManyAnswersTheOneNearestToTheStartIsTaken() {
    TargetSolution same = free().hydration(start().formula().hydration().trueHydration()).solve();
    assertThat(same.batch().weightOf("sugar").in(GRAM)).isCloseTo(100, within(1e-3));
    assertThat(same.batch().weightOf("salt").in(GRAM)).isCloseTo(18, within(1e-3));
  }

  @Test
  void targetsThatConflictAreNamedAndNeverCalledSolved() {
    TargetSolution solution =
        FormulaTargets.of(start())
            .move("water", grams(0), grams(800))
            .hydration(percent(80))
            .dough(kilograms(1.7))
            .solve();
    assertThat(solution.met()).isFalse();
    assertThat(solution.missed()).hasSize(2);
    assertThat(solution.missed().get(0).conflicts()).containsExactly("dough");
    assertThat(solution.missed().get(1).conflicts()).containsExactly("hydration");
    assertThat(solution.toString()).contains("hydration 80 % not met", "it conflicts with dough");
    assertThat(solution.advice()).extracting(Advice::code).containsOnly("TARGET_MISSED");
    TargetSolution bound =
        FormulaTargets.of(start())
            .move("water", grams(0), grams(300))
            .hydration(percent(80))
            .solve();
    assertThat(bound.missed().get(0).toString()).contains("the bounds stand in the way");
    assertThat(bound.batch().formula().stage("Final dough").lines().toString()).contains("water");
  }

  @Test
  void aCeilingOnTheCostIsKept() {
    TargetSolution cheap =
        free()
            .costAtMost(2, Map.of("salted butter", 10.0, "bread flour", 1.0))
            .dough(kilograms(2))
            .solve();
    assertThat(cheap.met()).isTrue();
    double cost =
        10 * cheap.batch().weightOf("salted butter").in(GRAM) / 1000
            + cheap.batch().flour().in(GRAM) / 1000;
    assertThat(cost).isLessThanOrEqualTo(2 + 1e-6);
    assertThat(cheap.working().toString()).contains("cost", "at most");
    TargetSolution dear =
        FormulaTargets.of(start())
            .move("salted butter")
            .fat(percent(30))
            .costAtMost(2, Map.of("salted butter", 10.0, "bread flour", 1.0))
            .solve();
    assertThat(dear.met()).isFalse();
    assertThat(dear.missed()).allSatisfy(m -> assertThat(m.conflicts()).hasSize(1));
  }

  @Test
  void theSensitivityIsTheSlope() {
    TargetSolution solution = free().hydration(percent(65)).salt(percent(2)).solve();
    double byWater = solution.sensitivity("hydration", "water");
    double flour = solution.batch().flour().in(GRAM);
    assertThat(byWater).isCloseTo(0.9998 / flour, within(1e-9));
    // more flour lowers a share that is kept by weight
    assertThat(solution.sensitivity("salt", "bread flour")).isCloseTo(-0.02 / flour, within(1e-6));
    assertThat(solution.sensitivities())
        .contains("10 g more of", "water (Final dough)", "hydration");
    assertThatThrownBy(() -> solution.sensitivity("colour", "water"))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("[hydration, salt]");
    assertThatThrownBy(() -> solution.sensitivity("salt", "instant yeast"))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("move");
  }

  @Test
  void anInoculationIsATargetOfItsStage() {
    Batch levain =
        Formula.byPercent(
                "levain bread",
                f ->
                    f.line("bread flour", percent(100))
                        .line("water", percent(70))
                        .line("salt", percent(2))
                        .preferment(Preferment.poolish(percent(20)).withName("Levain")))
            .forFlour(grams(1000));
    TargetSolution solution =
        FormulaTargets.of(levain)
            .move("bread flour")
            .move("water")
            .inoculation("Final dough", percent(40))
            .hydration(percent(70))
            .solve();
    assertThat(solution.met()).isTrue();
    Batch found = solution.batch();
    double flour =
        found.flour().in(GRAM) * (1 - found.formula().prefermentedFlour().in(PERCENT) / 100);
    assertThat(400 / flour).isCloseTo(0.40, within(1e-6));
    assertThatThrownBy(() -> FormulaTargets.of(levain).inoculation("Levain", percent(20)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("Levain");
  }

  @Test
  void piecesAreATargetAndWhatMakesNoSenseIsRefused() {
    TargetSolution solution = free().pieces(PieceOrder.raw(24, grams(80))).salt(percent(2)).solve();
    assertThat(solution.batch().dough().in(GRAM)).isCloseTo(1920, within(1e-3));
    assertThatThrownBy(() -> FormulaTargets.of(start()).move("honey"))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> FormulaTargets.of(start()).move("water", grams(10), grams(5)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("10 g to 5 g");
    assertThatThrownBy(() -> FormulaTargets.of(start()).move("Poolish", "salt", grams(0), grams(5)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("salt");
    assertThatThrownBy(() -> FormulaTargets.of(start()).move("water").solve())
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("nothing is wanted");
    assertThatThrownBy(() -> FormulaTargets.of(start()).hydration(percent(65)).solve())
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("no line may move");
    assertThatThrownBy(() -> free().hydration(percent(-1))).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> free().costAtMost(1, Map.of("salt", -1.0)))
        .isInstanceOf(BakeryException.class);
  }

  @Property(tries = 50)
  void theUnitNeverMatters(@ForAll @DoubleRange(min = 800, max = 3000) double grams) {
    TargetSolution metric = free().dough(grams(grams)).salt(percent(2)).solve();
    TargetSolution us =
        free().dough(grams(grams).to(BakeryUnits.POUND)).salt(fraction(0.02)).solve();
    assertThat(us.batch().weightOf("salt").in(GRAM))
        .isCloseTo(metric.batch().weightOf("salt").in(GRAM), within(1e-6));
  }
}
