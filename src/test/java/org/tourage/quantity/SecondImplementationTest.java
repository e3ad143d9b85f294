package org.tourage.quantity;

import static org.apache.sis.measure.Quantities.create;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.tourage.quantity.Amounts.*;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import org.apache.sis.measure.Units;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.tourage.advice.BakeryException;

/**
 * Another implementation of the units API, that of Apache SIS, is read as right as the usual one.
 */
class SecondImplementationTest {
  /** On the module path the other implementation is a module that ours does not know. */
  @BeforeAll
  static void itCanBeRead() throws ClassNotFoundException {
    Class<?> theirs = Class.forName("org.apache.sis.measure.Units");
    SecondImplementationTest.class.getModule().addReads(theirs.getModule());
  }

  @SuppressWarnings("unchecked")
  private static <T> T cast(Object any) {
    return (T) any;
  }

  @Test
  void aReadingIsAReading() {
    Quantity<Temperature> warm = create(24, Units.CELSIUS);
    assertThat(Amount.from(warm)).isEqualTo(celsius(24)).hasToString("24 °C");
    assertThat(Amount.from(create(75, Units.FAHRENHEIT)).bakeryUnit())
        .isSameAs(BakeryUnits.FAHRENHEIT);
    assertThatThrownBy(() -> Amount.from(warm).add(warm)).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> celsius(1).add(warm)).isInstanceOf(BakeryException.class);
    assertThat(TemperatureDifference.between(celsius(20), warm)).isEqualTo(celsiusDegrees(4));
    Quantity<Temperature> tooCold = create(-500, Units.CELSIUS);
    assertThatThrownBy(() -> Amount.from(tooCold))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("absolute zero");
  }

  @Test
  void everyKindIsKnownByItsDimension() {
    assertThat(Amount.from(create(1, Units.KILOGRAM))).isEqualTo(kilograms(1));
    assertThat(kilograms(1).isEquivalentTo(create(1000, Units.GRAM))).isTrue();
    assertThat(BakeryUnit.from(Units.GRAM)).isSameAs(BakeryUnits.GRAM);
    assertThat((Object) BakeryUnit.from(Units.GRAM.multiply(453.59237)))
        .isSameAs(BakeryUnits.POUND);
    assertThat(BakeryUnit.from(Units.LITRE)).isSameAs(BakeryUnits.LITRE);
    assertThat(BakeryUnit.from(Units.INCH)).isSameAs(BakeryUnits.INCH);
    assertThat(BakeryUnit.from(Units.HOUR)).isSameAs(BakeryUnits.HOUR);
    assertThat(BakeryUnit.from(Units.PERCENT)).isSameAs(BakeryUnits.PERCENT);
    assertThat(BakeryUnit.from(Units.JOULE)).isSameAs(BakeryUnits.JOULE);
    assertThat(BakeryUnit.from(Units.WATT)).isSameAs(BakeryUnits.WATT);
    assertThat((Object) BakeryUnit.from(Units.KILOGRAM.divide(Units.CUBIC_METRE)))
        .isSameAs(BakeryUnits.KILOGRAM_PER_CUBIC_METRE);
  }

  @Test
  void anotherKindIsRefused() {
    Quantity<Mass> metres = cast(create(3, Units.METRE));
    assertThatThrownBy(() -> grams(1).add(metres))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("must be a mass, not a length: 3 m");
    assertThatThrownBy(() -> Given.mass("the flour", metres))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("the flour");
    assertThatThrownBy(
            () -> kilograms(1).to(SecondImplementationTest.<Unit<Mass>>cast(Units.METRE)))
        .isInstanceOf(BakeryException.class);
  }

  @Test
  void itsAmountsAddMultiplyAndTravelAsOurs() throws Exception {
    assertThat(grams(1).add(create(1, Units.KILOGRAM))).hasToString("1001 g");
    assertThat(grams(1).to(Units.KILOGRAM)).isEqualTo(grams(1));
    Amount<?> kilometres = Amount.from(create(3, Units.KILOMETRE));
    assertThat(kilometres).hasToString("3 km").isEqualTo(metres(3000));
    assertThat(metres(2).multiply(create(3, Units.KILOMETRE)))
        .isEqualTo(metres(6000).multiply(metres(1)));
    assertThat(create(3, Units.KILOMETRE).getUnit()).isEqualTo(kilometres.getUnit());
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
      out.writeObject(kilometres);
    }
    assertThat(bytes.toString(java.nio.charset.StandardCharsets.ISO_8859_1))
        .doesNotContain("apache");
    try (ObjectInputStream in =
        new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
      assertThat(in.readObject()).isEqualTo(kilometres).hasToString("3 km");
    }
    assertThat(Amount.parse(kilometres.exactText())).isEqualTo(kilometres).hasToString("3 km");
  }

  @Test
  void theStoreOfUnitsStaysBounded() {
    for (int i = 1; i < 5 * BakeryUnit.MOST_KEPT; i++) {
      BakeryUnit.from(Units.METRE.multiply(i));
      assertThat(BakeryUnit.kept()).isLessThanOrEqualTo(BakeryUnit.MOST_KEPT + 8);
    }
    assertThat(BakeryUnit.from(Units.METRE)).isSameAs(BakeryUnits.METRE);
  }
}
