package org.tourage.oven;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.tourage.quantity.Amounts.*;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;

class OvenProfileTest {
  @Test
  void stepsAddUpAndReadInBothUnits() {
    OvenProfile profile =
        OvenProfile.step(fahrenheit(400), minutes(10)).then(celsius(175), seconds(810));
    assertThat(profile.total()).isEqualTo(minutes(23.5));
    assertThat(profile)
        .hasToString("204 °C (400 °F) for 10 min, then 175 °C (347 °F) for 14 min; 24 min in all");
    assertThat(profile.working().toString()).contains("10 min + 14 min");
    assertThat(profile.advice()).isEmpty();
  }

  @Test
  void unusualSettingsAreAdvisedAndImpossibleOnesRefused() {
    assertThat(OvenProfile.step(celsius(90), minutes(10)).advice())
        .extracting(Advice::code)
        .containsExactly("OVEN_COOL");
    assertThat(OvenProfile.step(celsius(300), minutes(10)).advice())
        .extracting(Advice::code)
        .containsExactly("OVEN_HOT");
    assertThatThrownBy(() -> OvenProfile.step(celsius(400), minutes(10)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("400 °C (752 °F)");
    assertThatThrownBy(() -> OvenProfile.step(celsius(200), minutes(0)))
        .hasMessageContaining("needs time");
    assertThatThrownBy(() -> new OvenProfile(List.of())).hasMessageContaining("needs a step");
  }
}
