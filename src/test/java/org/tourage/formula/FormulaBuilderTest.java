package org.tourage.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.percent;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.ArrayList;
import java.util.List;
import javax.measure.quantity.Dimensionless;
import org.junit.jupiter.api.Test;
import org.tourage.advice.BakeryException;
import org.tourage.ingredient.Ingredient;

class FormulaBuilderTest {
  @Test
  void aBuilderThatHasMadeItsFormulaTakesNoMore() {
    List<FormulaBuilder<Dimensionless>> kept = new ArrayList<>();
    Formula.byPercent(
        "kept",
        f -> {
          kept.add(f);
          f.line("bread flour", percent(100)).line("water", percent(60));
        });
    assertThatThrownBy(() -> kept.get(0).line("salt", percent(2)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("made already");
    assertThatThrownBy(() -> kept.get(0).takes("Poolish"))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("made already");
  }

  @Test
  void aStageThatIsMadeTakesNoMore() {
    List<FormulaBuilder.StageBuilder<Dimensionless>> kept = new ArrayList<>();
    assertThatThrownBy(
            () ->
                Formula.byPercent(
                    "kept",
                    f -> {
                      f.line("bread flour", percent(100)).line("water", percent(60));
                      f.soaker(
                          "Seeds",
                          s -> {
                            kept.add(s);
                            s.line("water", percent(10));
                          });
                      kept.get(0).line("salt", percent(2));
                    }))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("stage is made already");
  }

  @Test
  void theFlourOfAStageIsGivenOnce() {
    assertThatThrownBy(
            () ->
                Formula.byPercent(
                    "twice",
                    f ->
                        f.stage(
                            StageKind.FINAL_DOUGH,
                            "Dough",
                            s ->
                                s.line("bread flour", percent(100))
                                    .ofOwnFlour(percent(50))
                                    .ofOwnFlour(percent(100)))))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("given twice");
  }

  @Test
  void aStageWithoutLinesIsRefused() {
    assertThatThrownBy(
            () ->
                Formula.byPercent(
                    "empty", f -> f.line("bread flour", percent(100)).soaker("Seeds", s -> {})))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("Seeds");
  }

  @Test
  void anIngredientInTwoPortionsIsSummed() {
    Formula formula =
        Formula.byPercent(
            "second water",
            f ->
                f.line("bread flour", percent(100))
                    .line("water", percent(60))
                    .line("water", percent(15)));
    assertThat(formula.percent("water").in(PERCENT)).isCloseTo(75, within(1e-9));
    assertThat(formula.overall()).hasSize(2);
  }

  @Test
  @SuppressWarnings("NullAway") // nulls are what is tested
  void nullsAreNamed() {
    assertThatThrownBy(() -> Formula.byPercent("n", f -> f.line((Ingredient) null, percent(100))))
        .isInstanceOf(NullPointerException.class)
        .hasMessage("ingredient");
    assertThatThrownBy(() -> Formula.byPercent("n", f -> f.line("bread flour", null)))
        .isInstanceOf(NullPointerException.class)
        .hasMessage("amount");
    assertThatThrownBy(() -> Formula.byPercent("n", null))
        .isInstanceOf(NullPointerException.class)
        .hasMessage("content");
    assertThatThrownBy(() -> Formula.byPercent(null, f -> f.line("bread flour", percent(100))))
        .isInstanceOf(NullPointerException.class)
        .hasMessage("name");
  }
}
