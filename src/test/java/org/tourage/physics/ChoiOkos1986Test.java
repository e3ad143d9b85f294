package org.tourage.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.tourage.advice.BakeryException;
import org.tourage.reference.Checks;

class ChoiOkos1986Test {
  private static final Constituents WATER = new Constituents(1, 0, 0, 0, 0, 0);
  private static final Constituents BUTTER =
      new Constituents(0.1794, 0.0085, 0.8111, 0.0006, 0, 0.0009);

  @Test
  void waterHasThePublishedDensity() {
    double published = Checks.row("other-rooms.csv", "density of water at 20 degC").number("value");
    // the model is within 0.3 % of water between 0 and 100 °C
    assertThat(ChoiOkos1986.density(WATER, celsius(20)).value()).isCloseTo(published, within(3.0));
  }

  @Test
  void butterIsALittleLighterThanWater() {
    assertThat(ChoiOkos1986.density(BUTTER, celsius(15)).value()).isBetween(910.0, 960.0);
  }

  @Property
  void aMixtureLiesBetweenItsParts(
      @ForAll @DoubleRange(min = 0.01, max = 0.99) double water,
      @ForAll @DoubleRange(min = 0, max = 100) double celsius) {
    double mix =
        ChoiOkos1986.density(new Constituents(water, 0, 1 - water, 0, 0, 0), celsius(celsius))
            .value();
    double fat = ChoiOkos1986.density(new Constituents(0, 0, 1, 0, 0, 0), celsius(celsius)).value();
    assertThat(mix).isBetween(fat, ChoiOkos1986.density(WATER, celsius(celsius)).value());
  }

  @Property
  void onlyTheProportionsMatter(@ForAll @DoubleRange(min = 0.1, max = 10) double scale) {
    Constituents more =
        new Constituents(
            0.4 * scale, 0.1 * scale, 0.1 * scale, 0.3 * scale, 0.05 * scale, 0.05 * scale);
    Constituents once = new Constituents(0.4, 0.1, 0.1, 0.3, 0.05, 0.05);
    assertThat(ChoiOkos1986.density(more, celsius(20)).value())
        .isCloseTo(ChoiOkos1986.density(once, celsius(20)).value(), within(1e-9));
  }

  @Test
  void temperaturesOutsideTheModelAndImpossibleFoodsAreRefused() {
    assertThatThrownBy(() -> ChoiOkos1986.density(WATER, celsius(-5)).value())
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("-5 °C");
    assertThatThrownBy(() -> ChoiOkos1986.density(WATER, celsius(151)).value())
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> new Constituents(0, 0, 0, 0, 0, 0))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> new Constituents(1, -0.1, 0, 0, 0, 0))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> new Constituents(Double.NaN, 0, 0, 0, 0, 0))
        .isInstanceOf(BakeryException.class);
  }
}
