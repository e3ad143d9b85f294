package org.tourage.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.tourage.quantity.Amounts.*;

import javax.measure.quantity.Mass;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.tourage.advice.BakeryException;
import tech.units.indriya.unit.Units;

class ExactTextLaws {
  @Provide
  Arbitrary<BakeryUnit<?>> units() {
    return Arbitraries.of(BakeryUnits.all()).map(unit -> (BakeryUnit<?>) unit);
  }

  /** Every pattern of bits that is a finite number, extremes and subnormal numbers included. */
  @Provide
  Arbitrary<Double> numbers() {
    return Arbitraries.oneOf(
        Arbitraries.longs().map(Double::longBitsToDouble).filter(Double::isFinite),
        Arbitraries.doubles().between(-1e6, 1e6),
        Arbitraries.of(0.0, -0.0, 0.1, 1e280, -1e270, Double.MIN_VALUE, 1.0 / 3, 2e-3, 1e23));
  }

  @Property
  void everyAmountReadsBackToTheLastBit(
      @ForAll("numbers") double value, @ForAll("units") BakeryUnit<?> unit) {
    Amount<?> amount = amountOrSkip(value, unit);
    Amount<?> back = Amount.parse(amount.exactText());
    assertThat(Double.doubleToRawLongBits(back.value()))
        .as(amount.exactText())
        .isEqualTo(Double.doubleToRawLongBits(value));
    assertThat((Object) back.bakeryUnit()).isSameAs(unit);
    assertThat((Object) back).isEqualTo(amount);
  }

  private static Amount<?> amountOrSkip(double value, BakeryUnit<?> unit) {
    try {
      return unit.amount(value);
    } catch (BakeryException impossible) {
      Assume.that(false);
      throw impossible;
    }
  }

  @Property
  void everyDifferenceReadsBackToTheLastBit(@ForAll("numbers") double kelvins) {
    TemperatureDifference difference = celsiusDegrees(kelvins);
    TemperatureDifference back = TemperatureDifference.parse(difference.exactText());
    assertThat(back.celsiusDegrees()).isEqualTo(difference.celsiusDegrees());
  }

  @Example
  void theTextIsShortAndPlain() {
    assertThat(grams(0.1).exactText()).isEqualTo("0.1 g");
    assertThat(grams(1.0 / 3).exactText()).isEqualTo("0.3333333333333333 g");
    assertThat(celsius(-18).exactText()).isEqualTo("-18 °C");
    assertThat(fraction(0.5).exactText()).isEqualTo("0.5");
    assertThat(grams(1e279).exactText()).isEqualTo("1E+279 g");
    assertThat(celsiusDegrees(-8.5).exactText()).isEqualTo("a difference of -8.5 K");
    Amount<Mass> twoTonnes = BakeryUnit.from(Units.KILOGRAM.multiply(1000)).amount(2);
    assertThat(twoTonnes.exactText()).endsWith(" [× 1000 kg]");
    assertThat(Amount.parse(twoTonnes.exactText())).isEqualTo(twoTonnes);
    Amount<?> speed = metres(6).divide(minutes(2));
    assertThat(Amount.parse(speed.exactText())).isEqualTo(speed).hasToString(speed.toString());
    Amount<?> density = BakeryUnits.GRAM_PER_MILLILITRE.parse("1.25 g/mL");
    assertThat(density).isEqualTo(gramsPerMillilitre(1.25));
  }

  @Example
  void whatIsNoExactTextIsRefused() {
    for (String text :
        new String[] {
          "",
          "g",
          "1,5 g",
          "1 G",
          "1/2 cup",
          "2 Mg",
          " 1 g",
          "1 g ",
          "NaN g",
          "1 x [× 0 kg]",
          "1 x [× 1 firkin]",
          "1e999 g",
          "1E+999 g",
          "1 g [× 1]",
          "1".repeat(400) + " g"
        }) {
      assertThatThrownBy(() -> Amount.parse(text)).as(text).isInstanceOf(BakeryException.class);
    }
    assertThatThrownBy(() -> BakeryUnits.GRAM.parse("1 m"))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("must be a mass, not a length");
    assertThatThrownBy(() -> TemperatureDifference.parse("8 K"))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("difference");
    assertThatThrownBy(() -> Amount.parse("a difference of 8 K"))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> TemperatureDifference.parse("a difference of 8 g K"))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> mass("2 Mg")).isInstanceOf(BakeryException.class);
  }
}
