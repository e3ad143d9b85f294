package org.tourage.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import javax.measure.MetricPrefix;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Volume;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.tourage.advice.BakeryException;
import tech.units.indriya.quantity.Quantities;
import tech.units.indriya.unit.Units;

class AmountTest {
  @Test
  void theSameMassInTwoUnitsIsEqualWithEqualHashAndOrder() {
    assertThat(grams(1000)).isEqualTo(kilograms(1)).hasSameHashCodeAs(kilograms(1));
    assertThat(ounces(1)).isEqualTo(grams(28.349523125)).isEqualByComparingTo(grams(28.349523125));
    assertThat(grams(1.1)).isEqualTo(kilograms(0.0011));
    assertThat(grams(1)).isNotEqualTo(grams(1.000001)).isLessThan(grams(1.000001));
    assertThat(grams(0.0)).isEqualTo(grams(-0.0)).hasSameHashCodeAs(grams(-0.0));
  }

  @Test
  void differentKindsAreNeverEqual() {
    assertThat(grams(1)).isNotEqualTo(millilitres(1));
    assertThat((Object) grams(1)).isNotEqualTo("1 g");
    assertThat(percent(100)).isEqualTo(fraction(1));
  }

  @Test
  void closenessIsANamedMethod() {
    assertThat(grams(100).isCloseTo(grams(100.0001), 1e-5)).isTrue();
    assertThat(grams(100).isCloseTo(grams(100.1), 1e-5)).isFalse();
    assertThat(grams(100).isCloseTo(kilograms(0.1005), grams(0.6))).isTrue();
    assertThat(grams(100).isCloseTo(kilograms(0.1005), grams(0.4))).isFalse();
    assertThatThrownBy(() -> celsius(1).isCloseTo(celsius(1), 1e-5))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> celsius(1).isCloseTo(celsius(1), celsius(1)))
        .isInstanceOf(BakeryException.class);
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void numbersThatAreNotFiniteAreRefused(double value) {
    assertThatThrownBy(() -> grams(value))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("finite")
        .hasMessageContaining(" g");
    assertThatThrownBy(() -> grams(1).multiply(value)).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> celsiusDegrees(value)).isInstanceOf(BakeryException.class);
  }

  @Test
  void overflowAndDivisionByNothingAreRefused() {
    assertThatThrownBy(() -> grams(1e308).multiply(10)).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> grams(1).divide(0)).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> grams(1).ratioTo(grams(0)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("1 g of 0 g");
  }

  @Test
  void arithmeticKeepsTheUnitOfTheLeft() {
    assertThat(grams(500).add(kilograms(1))).hasToString("1500 g");
    assertThat(kilograms(1).subtract(grams(250))).hasToString("0.75 kg");
    assertThat(grams(5).multiply(3)).hasToString("15 g");
    assertThat(grams(5).multiply((Number) 3)).hasToString("15 g");
    assertThat(grams(15).divide((Number) 3)).hasToString("5 g");
    assertThat(grams(5).negate().value()).isEqualTo(-5);
    assertThat(grams(1).ratioTo(kilograms(1))).isEqualTo(0.001);
  }

  @Test
  void productsAndQuotientsOfQuantitiesHaveDerivedUnits() {
    Amount<?> square = metres(2).multiply(centimetres(50));
    assertThat(square.asType(javax.measure.quantity.Area.class))
        .isEqualTo(Amount.from(Quantities.getQuantity(1, Units.SQUARE_METRE)));
    Amount<?> speed = metres(6).divide(seconds(2));
    assertThat(speed.asType(javax.measure.quantity.Speed.class))
        .isEqualTo(Amount.from(Quantities.getQuantity(3, Units.METRE_PER_SECOND)))
        .isNotEqualTo(square);
    Amount<?> rate = seconds(4).inverse();
    assertThat(rate.value()).isEqualTo(0.25);
  }

  @Test
  void temperatureReadingsConvertButDoNotAddUp() {
    assertThat(fahrenheit(400).in(BakeryUnits.CELSIUS)).isCloseTo(204.4444444444, within(1e-9));
    assertThat(fahrenheit(32)).isEqualTo(celsius(0)).isEqualTo(kelvin(273.15));
    assertThat(celsius(20)).isLessThan(fahrenheit(70));
    assertThatThrownBy(() -> celsius(20).add(celsius(4)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("TemperatureDifference")
        .extracting(e -> ((BakeryException) e).reason())
        .isEqualTo(BakeryException.Reason.MEANINGLESS);
    assertThatThrownBy(() -> celsius(20).subtract(celsius(4))).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> celsius(20).multiply(2)).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> celsius(20).divide(2)).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> celsius(20).negate()).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> celsius(20).inverse()).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> celsius(20).multiply(grams(1))).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> grams(1).multiply(celsius(20))).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> celsius(20).divide(grams(1))).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> grams(1).divide(celsius(20))).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> celsius(20).ratioTo(celsius(10))).isInstanceOf(BakeryException.class);
  }

  @Test
  void nothingIsColderThanAbsoluteZero() {
    assertThatThrownBy(() -> celsius(-274))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("-274 °C");
    assertThat(fahrenheit(-459.67).in(BakeryUnits.KELVIN)).isCloseTo(0, within(1e-9));
  }

  @Test
  void anyImplementationIsWelcomeAsInput() {
    Quantity<Mass> foreign = Quantities.getQuantity(500, Units.GRAM);
    assertThat(BakeryUnits.GRAM.measure(foreign)).isEqualTo(500);
    assertThat(Amount.from(foreign)).isEqualTo(grams(500));
    assertThat(grams(1).add(foreign)).isEqualTo(grams(501));
    assertThat(grams(500).isEquivalentTo(foreign)).isTrue();
    Quantity<Temperature> oven = Quantities.getQuantity(177, Units.CELSIUS);
    assertThat(Amount.from(oven)).isEqualTo(celsius(177));
    Quantity<Volume> milk = Quantities.getQuantity(250, MetricPrefix.MILLI(Units.LITRE));
    assertThat(Amount.from(milk)).isEqualTo(metricCups(1));
    Quantity<Length> side = Quantities.getQuantity(61, MetricPrefix.CENTI(Units.METRE));
    assertThat(Amount.from(side)).isEqualTo(centimetres(61));
    assertThat(Amount.from(Quantities.getQuantity(90, Units.MINUTE))).isEqualTo(hours(1.5));
    assertThat(Amount.from(Quantities.getQuantity(62, Units.PERCENT))).isEqualTo(percent(62));
    assertThat(Amount.from(Quantities.getQuantity(3, Units.JOULE))).isEqualTo(joules(3));
    assertThat(Amount.from(Quantities.getQuantity(3, Units.WATT))).isEqualTo(watts(3));
  }

  @Test
  void aRelativeTemperatureOfAnotherImplementationIsNoReading() {
    Quantity<Temperature> rise = Quantities.getQuantity(8, Units.CELSIUS, Quantity.Scale.RELATIVE);
    assertThatThrownBy(() -> Amount.from(rise))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("TemperatureDifference");
  }

  @Test
  void theUnitsApiSeesTheSameAmount() {
    assertThat(ounces(1).getUnit().getConverterTo(Units.GRAM).convert(1.0))
        .isCloseTo(28.349523125, within(1e-12));
    assertThat(fahrenheit(1).getUnit().getConverterTo(Units.KELVIN).convert(212.0))
        .isCloseTo(373.15, within(1e-9));
    assertThat(celsius(1).getUnit().getConverterTo(Units.KELVIN).convert(100.0))
        .isCloseTo(373.15, within(1e-9));
    assertThat(grams(500).to(Units.KILOGRAM)).hasToString("0.5 kg");
    assertThat(grams(500).toSystemUnit()).isEqualTo(grams(500));
    assertThat(grams(500).getScale()).isEqualTo(Quantity.Scale.ABSOLUTE);
    assertThat(grams(500).getValue()).isEqualTo(500.0);
    assertThat(grams(500).asType(Mass.class)).isEqualTo(grams(500));
    assertThatThrownBy(() -> grams(500).asType(Length.class))
        .isInstanceOf(ClassCastException.class);
    assertThat(
            percent(50)
                .getUnit()
                .getConverterTo(
                    percent(1)
                        .getUnit()
                        .getSystemUnit()
                        .asType(javax.measure.quantity.Dimensionless.class))
                .convert(50.0))
        .isCloseTo(0.5, within(1e-12));
  }

  @Test
  void textForPeopleHasAtMostSixDigitsAndNoLocale() {
    assertThat(fahrenheit(350).to(BakeryUnits.CELSIUS)).hasToString("176.667 °C");
    assertThat(grams(0.00012)).hasToString("0.00012 g");
    assertThat(fraction(0.5)).hasToString("0.5");
    assertThat(grams(1234567.8)).hasToString("1234570 g");
  }

  @Test
  @SuppressWarnings("unchecked")
  void amountsTravelBySerialisation() throws Exception {
    for (Amount<?> amount :
        new Amount<?>[] {
          grams(5),
          fahrenheit(70),
          cups(2),
          percent(3),
          Amount.from(Quantities.getQuantity(2, Units.SQUARE_METRE))
        }) {
      Amount<?> copy = roundTrip(amount);
      assertThat(copy).isEqualTo(amount).hasToString(amount.toString());
    }
    assertThat(roundTrip(cups(2)).bakeryUnit()).isSameAs(BakeryUnits.CUP);
  }

  @SuppressWarnings("unchecked")
  private static <T> T roundTrip(T value) throws Exception {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
      out.writeObject(value);
    }
    try (ObjectInputStream in =
        new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
      return (T) in.readObject();
    }
  }

  @Test
  void densityIsAQuantityOfItsOwn() {
    assertThat(gramsPerMillilitre(0.94)).isEqualTo(kilogramsPerCubicMetre(940));
    Amount<?> quotient = kilograms(1.2).divide(litres(1));
    assertThat(quotient.asType(Density.class)).isEqualTo(gramsPerMillilitre(1.2));
  }

  @Test
  void unitsTellTheirKindAndSymbol() {
    assertThat(BakeryUnits.CUP.kind()).isEqualTo(Kind.VOLUME);
    assertThat(BakeryUnits.CUP.symbol()).isEqualTo("cup");
    assertThat(BakeryUnits.CUP).hasToString("cup");
    assertThat(BakeryUnits.CELSIUS.offset()).isEqualTo(273.15);
    assertThatThrownBy(() -> BakeryUnits.bySymbol("firkin"))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("firkin");
    assertThat(BakeryUnit.from(BakeryUnits.CUP.unit())).isSameAs(BakeryUnits.CUP);
    assertThat(BakeryUnit.from(Units.METRE)).isSameAs(BakeryUnits.METRE);
    assertThat(BakeryUnit.from(MetricPrefix.KILO(Units.METRE)).exactFactor()).isEmpty();
  }
}
