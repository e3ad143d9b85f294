package org.tourage.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Volume;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import tech.units.indriya.quantity.Quantities;

class AmountLaws {
  static final List<BakeryUnit<Mass>> MASSES =
      List.of(
          BakeryUnits.GRAM,
          BakeryUnits.KILOGRAM,
          BakeryUnits.MILLIGRAM,
          BakeryUnits.OUNCE,
          BakeryUnits.POUND);
  static final List<BakeryUnit<Volume>> VOLUMES =
      List.of(
          BakeryUnits.MILLILITRE,
          BakeryUnits.LITRE,
          BakeryUnits.CUP,
          BakeryUnits.TABLESPOON,
          BakeryUnits.TEASPOON,
          BakeryUnits.FLUID_OUNCE,
          BakeryUnits.PINT,
          BakeryUnits.IMPERIAL_PINT,
          BakeryUnits.METRIC_CUP,
          BakeryUnits.LABELLING_CUP);
  static final List<BakeryUnit<Temperature>> TEMPERATURES =
      List.of(BakeryUnits.CELSIUS, BakeryUnits.FAHRENHEIT, BakeryUnits.KELVIN);

  @Provide
  Arbitrary<BakeryUnit<Mass>> massUnits() {
    return Arbitraries.of(MASSES);
  }

  @Provide
  Arbitrary<BakeryUnit<Volume>> volumeUnits() {
    return Arbitraries.of(VOLUMES);
  }

  @Provide
  Arbitrary<BakeryUnit<Temperature>> temperatureUnits() {
    return Arbitraries.of(TEMPERATURES);
  }

  @Property
  void massConversionsRoundTrip(
      @ForAll @DoubleRange(min = -1e9, max = 1e9) double value,
      @ForAll("massUnits") BakeryUnit<Mass> from,
      @ForAll("massUnits") BakeryUnit<Mass> to) {
    assertThat(from.amount(value).to(to).in(from))
        .isCloseTo(value, within(Math.abs(value) * 1e-14));
  }

  @Property
  void volumeConversionsRoundTrip(
      @ForAll @DoubleRange(min = 0, max = 1e9) double value,
      @ForAll("volumeUnits") BakeryUnit<Volume> from,
      @ForAll("volumeUnits") BakeryUnit<Volume> to) {
    assertThat(from.amount(value).to(to).in(from)).isCloseTo(value, within(value * 1e-14));
  }

  @Property
  void readingsRoundTripThroughAnyScale(
      @ForAll @DoubleRange(min = -200, max = 1000) double celsius,
      @ForAll("temperatureUnits") BakeryUnit<Temperature> through) {
    Amount<Temperature> reading = BakeryUnits.CELSIUS.amount(celsius);
    assertThat(reading.to(through).in(BakeryUnits.CELSIUS)).isCloseTo(celsius, within(1e-11));
  }

  @Property
  void conversionAgreesWithTheStockImplementation(
      @ForAll @DoubleRange(min = 0.001, max = 1e6) @Scale(6) double value,
      @ForAll("volumeUnits") BakeryUnit<Volume> from,
      @ForAll("volumeUnits") BakeryUnit<Volume> to) {
    Quantity<Volume> foreign = Quantities.getQuantity(value, from.unit());
    double expected = foreign.to(to.unit()).getValue().doubleValue();
    assertThat(to.measure(foreign)).isCloseTo(expected, within(expected * 1e-13));
    assertThat(from.amount(value).in(to)).isCloseTo(expected, within(expected * 1e-13));
  }

  @Property
  void equalityHashAndOrderAgree(
      @ForAll @DoubleRange(min = -1000, max = 1000) double a,
      @ForAll @DoubleRange(min = -1e-8, max = 1e-8) @Scale(14) double relative,
      @ForAll("massUnits") BakeryUnit<Mass> unit) {
    Amount<Mass> left = BakeryUnits.GRAM.amount(a);
    Amount<Mass> right = BakeryUnits.GRAM.amount(a * (1 + relative)).to(unit);
    int order = left.compareTo(right);
    assertThat(left.equals(right)).isEqualTo(order == 0);
    assertThat(right.compareTo(left)).isEqualTo(-order);
    if (order == 0) {
      assertThat(left).hasSameHashCodeAs(right);
    }
  }

  @Property
  void decimalsThatAKitchenTypesAreEqualInEveryUnit(
      @ForAll @net.jqwik.api.constraints.IntRange(min = 1, max = 99_999_999) int tenths) {
    assertThat(BakeryUnits.GRAM.amount(tenths / 10.0))
        .isEqualTo(BakeryUnits.KILOGRAM.amount(tenths / 10_000.0))
        .isEqualTo(BakeryUnits.MILLIGRAM.amount(tenths * 100.0));
  }

  @Property
  void orderIsTransitiveNearTies(
      @ForAll @DoubleRange(min = 1, max = 2) double a,
      @ForAll @net.jqwik.api.constraints.IntRange(min = 0, max = 20_000) int step1,
      @ForAll @net.jqwik.api.constraints.IntRange(min = 0, max = 20_000) int step2) {
    Amount<Mass> x = BakeryUnits.KILOGRAM.amount(a);
    Amount<Mass> y = BakeryUnits.KILOGRAM.amount(a + step1 * Math.ulp(a));
    Amount<Mass> z = BakeryUnits.KILOGRAM.amount(a + (step1 + step2) * Math.ulp(a));
    assertThat(x.compareTo(y)).isLessThanOrEqualTo(0);
    assertThat(y.compareTo(z)).isLessThanOrEqualTo(0);
    assertThat(x.compareTo(z)).isEqualTo(Math.min(x.compareTo(y), y.compareTo(z)) < 0 ? -1 : 0);
  }

  @Property
  void additionIsCommutativeAndUndone(
      @ForAll @DoubleRange(min = 0, max = 1e6) double a,
      @ForAll @DoubleRange(min = 0, max = 1e6) double b,
      @ForAll("massUnits") BakeryUnit<Mass> unit) {
    Amount<Mass> x = BakeryUnits.GRAM.amount(a);
    Amount<Mass> y = BakeryUnits.GRAM.amount(b).to(unit);
    assertThat(x.add(y).isCloseTo(y.add(x), 1e-12)).isTrue();
    assertThat(x.add(y).subtract(y).in(BakeryUnits.GRAM)).isCloseTo(a, within(1e-9 * (1 + a + b)));
  }
}
