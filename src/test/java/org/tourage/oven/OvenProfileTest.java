package org.tourage.oven;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.CELSIUS;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;

class OvenProfileTest {
  @Test
  void stepsAddUpAndReadInBothUnits() {
    OvenProfile profile =
        OvenProfile.of(fahrenheit(410), minutes(9)).then(celsius(185), seconds(810));
    assertThat(profile.total()).isEqualTo(minutes(22.5));
    assertThat(profile)
        .hasToString("210 °C (410 °F) for 9 min, then 185 °C (365 °F) for 14 min; 23 min in all");
    assertThat(profile.working().toString()).contains("9 min + 14 min");
    assertThat(profile.advice()).isEmpty();
  }

  @Test
  void unusualSettingsAreAdvisedAndImpossibleOnesRefused() {
    assertThat(OvenProfile.of(celsius(90), minutes(10)).advice())
        .extracting(Advice::code)
        .containsExactly("OVEN_COOL");
    assertThat(OvenProfile.of(celsius(310), minutes(10)).advice())
        .extracting(Advice::code)
        .containsExactly("OVEN_HOT");
    assertThat(OvenProfile.of(celsius(450), seconds(90)).advice()).isEmpty();
    assertThatThrownBy(() -> OvenProfile.of(celsius(510), minutes(10)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("510 °C (950 °F)");
    assertThatThrownBy(() -> OvenProfile.of(celsius(200), minutes(0)))
        .hasMessageContaining("needs time");
    assertThatThrownBy(() -> new OvenProfile(List.of())).hasMessageContaining("needs a step");
  }

  @Test
  void aFirstRampStartsWhereItSays() {
    OvenProfile.Step step = new OvenProfile.Step(celsius(200), minutes(20));
    OvenProfile cold = OvenProfile.of(step.ramped(celsius(25), minutes(15)));
    assertThat(cold.toString()).contains("from 25 °C", "reached within 15 min");
    OvenModel quick = OvenModel.HOUSEHOLD.withLag(seconds(1));
    assertThat(quick.follow(cold).at(seconds(0)).in(CELSIUS)).isCloseTo(25, within(1e-9));
    assertThat(quick.follow(cold).at(minutes(7.5)).in(CELSIUS)).isCloseTo(112.5, within(0.5));
    assertThatThrownBy(() -> OvenProfile.of(step.ramped(minutes(15))))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("starts nowhere");
    assertThat(cold.usesFan()).isFalse();
    assertThat(cold.forFan().usesFan()).isTrue();
  }
}
