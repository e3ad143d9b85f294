package org.tourage.doughtemperature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.CELSIUS;

import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;

class FrictionLogTest {
  private static final FrictionLog LOG =
      FrictionLog.EMPTY
          .withRise("spiral", "slow", minutes(4), celsiusDegrees(5), 3)
          .withRise("spiral", "slow", minutes(8), celsiusDegrees(7), 3)
          .withRise("spiral", "fast", minutes(5), celsiusDegrees(9), 3);

  @Test
  void theLineThroughPastMixesHasAnInterceptForTheWetting() {
    // 3 K of wetting and half a kelvin a minute
    FrictionLog.Estimate slow = LOG.estimate("spiral", "slow", minutes(6));
    assertThat(slow.rise().celsiusDegrees()).isCloseTo(6, within(1e-12));
    assertThat(slow.intercept().celsiusDegrees()).isCloseTo(3, within(1e-12));
    assertThat(slow.perMinute().celsiusDegrees()).isCloseTo(0.5, within(1e-12));
    assertThat(slow.advice()).isEmpty();
    // through nothing the line would say 11 K for 12 minutes
    assertThat(LOG.estimate("spiral", "slow", minutes(12)).rise().celsiusDegrees())
        .isCloseTo(9, within(1e-12));
  }

  @Test
  void riseAndFrictionAreTwoFigures() {
    FrictionLog.Estimate slow = LOG.estimate("spiral", "slow", minutes(6));
    assertThat(slow.friction().celsiusDegrees()).isCloseTo(18, within(1e-12));
    assertThat(slow)
        .hasToString("rise 6 K ± 0 K in the mixer, friction 18 K of the factor rule, from 2 mixes");
    FrictionLog byRule =
        FrictionLog.EMPTY.withFriction("spiral", "slow", minutes(6), celsiusDegrees(18), 3);
    FrictionLog.Estimate same = byRule.estimate("spiral", "slow", minutes(6));
    assertThat(same.rise().celsiusDegrees()).isCloseTo(6, within(1e-12));
    assertThat(same.friction().celsiusDegrees()).isCloseTo(18, within(1e-12));
  }

  @Test
  void theUncertaintyIsThatOfTheLine() {
    FrictionLog log = LOG.withRise("spiral", "slow", minutes(12), celsiusDegrees(12), 3);
    FrictionLog.Estimate mid = log.estimate("spiral", "slow", minutes(8));
    // rises 5, 7, 12 at 4, 8, 12 min: mean 8, slope 0.875; misses 0.5, −1, 0.5
    assertThat(mid.rise().celsiusDegrees()).isCloseTo(8, within(1e-12));
    assertThat(mid.scatter().celsiusDegrees()).isCloseTo(StrictMath.sqrt(1.5), within(1e-12));
    assertThat(mid.uncertainty().celsiusDegrees())
        .isCloseTo(StrictMath.sqrt(1.5 / 3), within(1e-12));
    FrictionLog.Estimate late = log.estimate("spiral", "slow", minutes(12));
    assertThat(late.uncertainty().celsiusDegrees())
        .isCloseTo(StrictMath.sqrt(1.5 * (1.0 / 3 + 16.0 / 32)), within(1e-12));
    assertThat(log.estimate("spiral", "slow", minutes(30)).advice())
        .extracting(Advice::code)
        .containsExactly("FAR_FROM_PAST_MIXES");
  }

  @Test
  void mixesOfOneLengthLeaveTheWettingToTheFlour() {
    FrictionLog.Estimate same = LOG.estimate("spiral", "fast", minutes(5));
    assertThat(same.rise().celsiusDegrees()).isCloseTo(9, within(1e-12));
    assertThat(same.advice()).extracting(Advice::code).containsExactly("ONE_MIX");
    FrictionLog.Estimate longer = LOG.estimate("spiral", "fast", minutes(10));
    double wetting = 15_000 / 1.6 / 2750;
    assertThat(longer.intercept().celsiusDegrees()).isCloseTo(wetting, within(1e-12));
    assertThat(longer.rise().celsiusDegrees()).isCloseTo(2 * 9 - wetting, within(1e-12));
    assertThat(longer.friction().celsiusDegrees()).isCloseTo(3 * (2 * 9 - wetting), within(1e-12));
    assertThat(longer.advice())
        .extracting(Advice::code)
        .containsExactly("ONE_MIX", "ONE_MIXING_TIME");
    // less than the wetting: the mixer gives nothing that grows
    FrictionLog gentle = FrictionLog.EMPTY.withRise("hand", "-", minutes(5), celsiusDegrees(1), 3);
    assertThat(gentle.estimate("hand", "-", minutes(10)).rise().celsiusDegrees())
        .isCloseTo(1, within(1e-12));
  }

  @Test
  void mixesThatDisagreeOrFallAreTold() {
    FrictionLog wild =
        LOG.withRise("spiral", "slow", minutes(8), celsiusDegrees(14), 3)
            .withRise("spiral", "slow", minutes(12), celsiusDegrees(9), 3);
    assertThat(wild.estimate("spiral", "slow", minutes(8)).advice())
        .extracting(Advice::code)
        .containsExactly("MIXES_DISAGREE");
    FrictionLog falling =
        FrictionLog.EMPTY
            .withRise("spiral", "slow", minutes(4), celsiusDegrees(8), 3)
            .withRise("spiral", "slow", minutes(8), celsiusDegrees(7), 3);
    assertThat(falling.estimate("spiral", "slow", minutes(6)).advice())
        .extracting(Advice::code)
        .containsExactly("FRICTION_FALLS");
  }

  @Test
  void aPastMixBringsItsOwnTwoFiguresAndGivesItsWaterBack() {
    Batch batch =
        Formula.byPercent(
                "straight dough",
                f -> f.line("bread flour", percent(100)).line("water", percent(65)))
            .forFlour(kilograms(2));
    StageMix day = StageMix.of(batch, celsius(20), celsius(22));
    FrictionLog log =
        FrictionLog.EMPTY.with(
            "spiral", "fast", minutes(8), PastMix.of(day, celsius(14), celsius(25)));
    FrictionLog.Estimate estimate = log.estimate("spiral", "fast", minutes(8));
    assertThat(estimate.friction().celsiusDegrees()).isCloseTo(19, within(1e-9));
    assertThat(estimate.rise().celsiusDegrees()).isBetween(8.0, 9.0);
    WaterPlan plan = day.water(celsius(25), estimate.heat());
    assertThat(plan.water().orElseThrow().in(CELSIUS)).isCloseTo(14, within(1e-9));
    assertThat(plan.rule().orElseThrow().water().in(CELSIUS)).isCloseTo(14, within(1e-9));
  }

  @Test
  void whatCanNotBeAMixIsRefusedWithItsRange() {
    assertThatThrownBy(() -> LOG.estimate("planetary", "slow", minutes(3)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("no past mix")
        .hasMessageContaining("a rise of 6 °C")
        .hasMessageContaining("a friction of 18 °C");
    assertThatThrownBy(() -> LOG.withRise("spiral", "slow", minutes(0), celsiusDegrees(1), 3))
        .hasMessageContaining("takes time");
    assertThatThrownBy(() -> LOG.estimate("spiral", "slow", minutes(0)))
        .hasMessageContaining("takes time");
    assertThatThrownBy(() -> LOG.withRise("spiral", "slow", minutes(5), celsiusDegrees(40), 3))
        .hasMessageContaining("40 °C")
        .hasMessageContaining("0 °C to 25 °C");
    assertThatThrownBy(() -> LOG.withFriction("spiral", "slow", minutes(5), celsiusDegrees(-3), 3))
        .hasMessageContaining("-3 °C");
    assertThatThrownBy(() -> LOG.withFriction("spiral", "slow", minutes(5), celsiusDegrees(3), 1))
        .hasMessageContaining("2 to 12");
  }
}
