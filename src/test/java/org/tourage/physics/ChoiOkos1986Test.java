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

  private static double published(String check) {
    return Checks.row("other-rooms.csv", check).number("value");
  }

  @Test
  void specificHeatAndConductivityAreThePublishedOnes() {
    assertThat(ChoiOkos1986.specificHeat(WATER, celsius(20)))
        .isCloseTo(published("specific heat of water at 20 degC"), within(10.0));
    assertThat(ChoiOkos1986.conductivity(WATER, celsius(20)))
        .isCloseTo(published("conductivity of water at 20 degC"), within(0.01));
    Constituents flour = new Constituents(.14, .12, .015, .69, .03, .005);
    double ofFlour = ChoiOkos1986.specificHeat(flour, celsius(20));
    assertThat(ofFlour)
        .isCloseTo(published("specific heat of the model for a flour at 20 degC"), within(0.005));
    // the model is known to run 7 to 12 % high on flour
    assertThat(ofFlour)
        .isBetween(
            published("specific heat of flour 0-100 degC low"),
            1.12 * published("specific heat of flour 0-100 degC high"));
    Constituents milk = new Constituents(.8813, .0315, .0325, .048, 0, .0067);
    assertThat(ChoiOkos1986.specificHeat(milk, celsius(20)))
        .isCloseTo(published("specific heat of whole milk"), within(0.02 * 3850));
    Constituents oil = new Constituents(0, 0, 1, 0, 0, 0);
    assertThat(ChoiOkos1986.specificHeat(oil, celsius(20)))
        .isCloseTo(published("specific heat of olive oil at 20 degC"), within(10.0));
  }

  @Property
  void conductivityIsPositiveEverywhere(@ForAll @DoubleRange(min = 0, max = 150) double celsius) {
    Constituents food = new Constituents(0.4, 0.1, 0.2, 0.2, 0.05, 0.05);
    assertThat(ChoiOkos1986.conductivity(food, celsius(celsius))).isBetween(0.1, 0.7);
    assertThat(ChoiOkos1986.specificHeat(food, celsius(celsius))).isBetween(1500.0, 4300.0);
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
