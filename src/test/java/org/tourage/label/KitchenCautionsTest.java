package org.tourage.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.tourage.quantity.Amounts.*;

import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.advice.Severity;
import org.tourage.formula.Formula;
import org.tourage.reference.Checks;

class KitchenCautionsTest {
  private static Formula with(String liquid) {
    return Formula.byPercent(
        "dough", f -> f.line("bread flour", percent(100)).line(liquid, percent(60)));
  }

  @Test
  void milkAndEggAreHeldAsColdAsTheModelCodeSays() {
    double celsius = Checks.row("fermentation.csv", "cold holding").number("value");
    Formula formula =
        Formula.byPercent(
            "custard dough",
            f -> f.line("bread flour", percent(100)).line("whole milk", percent(60)));
    assertThat(KitchenCautions.of(formula).toString())
        .contains("Hold them at " + (int) celsius + " °C (41 °F) or below");
  }

  @Test
  void milkAndPlantDrinkInTheWarmForLongAreToldWithTheSectionsOfTheCode() {
    double hours = Checks.row("fermentation.csv", "time as control").number("value");
    for (String liquid : new String[] {"whole milk", "unsweetened soy drink"}) {
      Advice late = KitchenCautions.warmHold(with(liquid), hours(hours + 1)).get(0);
      assertThat(late.severity()).isEqualTo(Severity.SAFETY);
      assertThat(late.source()).contains("3-501.16(A)", "3-501.19(B)");
      assertThat(late.remedy()).contains("local authority");
      Advice soon = KitchenCautions.warmHold(with(liquid), hours(hours)).get(0);
      assertThat(soon.severity()).isEqualTo(Severity.NOTE);
    }
  }

  @Test
  void waterNeedsNoSuchCaution() {
    assertThat(KitchenCautions.warmHold(with("water"), hours(20))).isEmpty();
  }

  @Test
  void cheeseAndYoghurtAreKeptColdAsMilkIs() {
    Formula filled =
        Formula.byPercent(
            "filled",
            f ->
                f.line("bread flour", percent(100))
                    .line("water", percent(60))
                    .line("cream cheese", percent(20)));
    assertThat(KitchenCautions.of(filled)).extracting(Advice::code).contains("COLD_HOLDING");
    assertThat(KitchenCautions.warmHold(filled, hours(5)))
        .extracting(Advice::code)
        .containsExactly("WARM_HOLD");
  }
}
