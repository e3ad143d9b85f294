package org.tourage.oven;

import static org.assertj.core.api.Assertions.assertThat;
import static org.tourage.quantity.BakeryUnits.CELSIUS;

import org.junit.jupiter.api.Test;
import org.tourage.reference.Checks;

class DoughKindReferenceTest {
  @Test
  void aRichDoughIsDoneFromTheCoreOfTheTrade() {
    assertThat(DoughKind.RICH.core().low().in(CELSIUS))
        .isEqualTo(Checks.row("oven.csv", "core of rich dough low").number("value"));
  }
}
