package org.tourage.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.tourage.quantity.Amounts.*;

import javax.measure.MetricPrefix;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import tech.units.indriya.quantity.Quantities;
import tech.units.indriya.unit.Units;

/** A cast can talk the compiler out of a kind, but not the library. */
class KindsAreCheckedTest {
  /** What unchecked casts of a caller come to. */
  @SuppressWarnings("unchecked")
  private static <T> T cast(Object any) {
    return (T) any;
  }

  private static final Quantity<Mass> METRES_AS_MASS = cast(metres(3));
  private static final Quantity<Mass> FOREIGN_METRES_AS_MASS =
      cast(Quantities.getQuantity(3, Units.METRE));

  private static void assertRefused(ThrowingCallable call, String... words) {
    assertThatThrownBy(call)
        .isInstanceOf(BakeryException.class)
        .hasMessageContainingAll(words)
        .extracting(e -> ((BakeryException) e).reason())
        .isEqualTo(Reason.MEANINGLESS);
  }

  @Test
  void aLengthIsNeverMeasuredAsAMass() {
    assertRefused(
        () -> BakeryUnits.KILOGRAM.measure(METRES_AS_MASS), "must be a mass, not a length", "3 m");
    assertRefused(() -> BakeryUnits.KILOGRAM.measure(FOREIGN_METRES_AS_MASS), "3 m", "500 g");
  }

  @Test
  void arithmeticAndComparisonRefuseAnotherKind() {
    assertRefused(() -> grams(1).add(METRES_AS_MASS), "a mass");
    assertRefused(() -> grams(1).subtract(FOREIGN_METRES_AS_MASS), "a mass");
    assertRefused(() -> grams(1).ratioTo(METRES_AS_MASS), "a mass");
    assertRefused(() -> grams(1).isCloseTo(METRES_AS_MASS, 0.1), "a mass");
    assertRefused(() -> grams(1).isCloseTo(grams(1), METRES_AS_MASS), "a mass");
    assertRefused(() -> grams(1).compareTo(cast(metres(3))), "a mass");
    assertRefused(() -> grams(1).isEquivalentTo(METRES_AS_MASS), "a mass");
    assertRefused(() -> new AmountRange<>(grams(1), cast(metres(3))), "a mass");
  }

  @Test
  void aMassIsNeverConvertedToAnotherKind() {
    Unit<Mass> metre = cast(Units.METRE);
    BakeryUnit<Mass> ourMetre = cast(BakeryUnits.METRE);
    assertRefused(() -> grams(1).to(metre), "must be a length, not a mass");
    assertRefused(() -> grams(1).to(ourMetre), "must be a length, not a mass");
    assertRefused(() -> grams(1).in(ourMetre), "must be a length, not a mass");
  }

  @Test
  void derivedQuantitiesOfDifferentDimensionAreKeptApart() {
    Amount<?> area = metres(1).multiply(metres(1));
    Amount<?> speed = metres(1).divide(seconds(1));
    assertThat(area).isNotEqualTo(speed);
    assertRefused(() -> area.compareTo(cast(speed)), "in m^2");
    assertRefused(() -> grams(1).add(cast(area)), "a mass");
  }

  @Test
  void aTimeIsNeverATemperatureAndADifferenceNeverAReading() {
    Quantity<Temperature> time = cast(minutes(3));
    assertRefused(() -> TemperatureDifference.between(celsius(20), time), "the end must be");
    assertRefused(() -> celsiusDegrees(3).above(time), "the reading must be a temperature");
    Quantity<Temperature> rise = Quantities.getQuantity(8, Units.KELVIN, Quantity.Scale.RELATIVE);
    assertRefused(() -> celsiusDegrees(3).above(rise), "TemperatureDifference");
  }

  @Test
  void aForeignUnitOfTheSizeOfOneOfOursIsOurs() {
    assertThat(BakeryUnit.from(Units.METRE)).isSameAs(BakeryUnits.METRE);
    assertThat(BakeryUnit.from(Units.CELSIUS)).isSameAs(BakeryUnits.CELSIUS);
    assertThat(BakeryUnit.from(MetricPrefix.MILLI(Units.LITRE))).isSameAs(BakeryUnits.MILLILITRE);
    assertThat(Amount.from(Quantities.getQuantity(24, Units.CELSIUS))).hasToString("24 °C");
  }

  @Test
  void whatIsPrintedDoesNotDependOnWhatWasCalledBefore() {
    Quantity<Mass> hundred = Quantities.getQuantity(2, Units.GRAM.multiply(100));
    Quantity<Mass> hecto = Quantities.getQuantity(2, MetricPrefix.HECTO(Units.GRAM));
    String first = Amount.from(hecto).toString();
    assertThat(Amount.from(hundred)).isEqualTo(Amount.from(hecto));
    assertThat(Amount.from(hecto)).hasToString(first).hasToString("2 hg");
    // a unit object of ours of 15 mL stays what it is, one of another implementation is metric
    Unit<javax.measure.quantity.Volume> fifteen = MetricPrefix.MILLI(Units.LITRE).multiply(15);
    BakeryUnits.LABELLING_TABLESPOON.unit();
    assertThat(BakeryUnit.from(fifteen)).isSameAs(BakeryUnits.METRIC_TABLESPOON);
    assertThat(BakeryUnit.from(BakeryUnits.LABELLING_TABLESPOON.unit()))
        .isSameAs(BakeryUnits.LABELLING_TABLESPOON);
  }
}
