package org.tourage.fermentation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.tourage.reference.Checks;

/** The heat of fermentation against the enthalpies of formation as they were seen. */
class EnthalpiesReferenceTest {
  private static double formation(String substance) {
    return Checks.rows("enthalpies.csv")
        .filter(r -> r.text("substance").equals(substance))
        .findFirst()
        .orElseThrow()
        .number("value");
  }

  @Test
  void theHeatOfFermentationIsWhatGlucoseLosesOnItsWayToEthanolAndGas() {
    double kilojoules =
        2 * formation("ethanol") + 2 * formation("carbon dioxide gas") - formation("glucose");
    assertThat(-2 * RiseHistory.HEAT_OF_FERMENTATION / 1000).isCloseTo(kilojoules, within(0.05));
  }
}
