package org.tourage.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.tourage.quantity.Amounts.*;

import java.util.Map;
import java.util.function.Function;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.junit.jupiter.api.Test;
import org.tourage.advice.BakeryException;
import tech.units.indriya.quantity.Quantities;
import tech.units.indriya.unit.Units;

class GivenTest {
  @SuppressWarnings("unchecked")
  private static <T> T cast(Object any) {
    return (T) any;
  }

  @SuppressWarnings("NullAway") // what a caller without a checker may pass
  private static Quantity<Mass> nothing() {
    return null;
  }

  @Test
  void theMessageHasTheNameOfTheDoorBothKindsAndAnExample() {
    assertThatThrownBy(() -> Given.mass("the flour", cast(metres(3))))
        .isInstanceOf(BakeryException.class)
        .hasMessage("the flour must be a mass, not a length: 3 m; give it like 500 g");
    assertThatThrownBy(() -> Given.mass("the flour", cast(joules(3))))
        .hasMessageContaining("not an energy");
    assertThatThrownBy(() -> Given.mass("the flour", nothing()))
        .isInstanceOf(NullPointerException.class)
        .hasMessage("the flour");
  }

  @Test
  void everyKindTakesItsOwnAndNoOther() {
    Map<Kind, Function<Quantity<?>, Amount<?>>> doors =
        Map.of(
            Kind.MASS, q -> Given.mass("it", cast(q)),
            Kind.VOLUME, q -> Given.volume("it", cast(q)),
            Kind.LENGTH, q -> Given.length("it", cast(q)),
            Kind.TIME, q -> Given.time("it", cast(q)),
            Kind.TEMPERATURE, q -> Given.temperature("it", cast(q)),
            Kind.RATIO, q -> Given.ratio("it", cast(q)),
            Kind.ENERGY, q -> Given.energy("it", cast(q)),
            Kind.DENSITY, q -> Given.density("it", cast(q)),
            Kind.POWER, q -> Given.power("it", cast(q)));
    Map<Kind, Amount<?>> amounts =
        Map.of(
            Kind.MASS, grams(1),
            Kind.VOLUME, cups(1),
            Kind.LENGTH, inches(1),
            Kind.TIME, hours(1),
            Kind.TEMPERATURE, celsius(1),
            Kind.RATIO, percent(1),
            Kind.ENERGY, kilojoules(1),
            Kind.DENSITY, gramsPerMillilitre(1),
            Kind.POWER, watts(1));
    doors.forEach(
        (wanted, door) ->
            amounts.forEach(
                (kind, amount) -> {
                  if (kind == wanted) {
                    assertThat((Object) door.apply(amount)).isSameAs(amount);
                  } else {
                    assertThatThrownBy(() -> door.apply(amount))
                        .as("%s for %s", kind, wanted)
                        .isInstanceOf(BakeryException.class);
                  }
                }));
  }

  @Test
  void anotherImplementationIsReadToo() {
    Quantity<Mass> foreign = Quantities.getQuantity(500, Units.GRAM);
    assertThat(Given.mass("the flour", foreign)).isEqualTo(grams(500)).hasToString("500 g");
  }
}
