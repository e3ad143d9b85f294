package org.tourage.house;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.tourage.quantity.Amount;

/** The build runs the tests twice and says on which path; this test makes sure that it is true. */
class PathTest {
  @Test
  void theLibraryIsANamedModuleOnTheModulePathOnly() {
    String path = System.getProperty("tourage.path", "module");
    assertThat(Amount.class.getModule().isNamed()).isEqualTo(path.equals("module"));
  }
}
