package org.tourage.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.DAY;
import static org.tourage.quantity.BakeryUnits.FRACTION;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.advice.Severity;
import org.tourage.formula.Formula;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Ingredient;
import org.tourage.label.Keeping.Part;
import org.tourage.quantity.AmountRange;
import org.tourage.reference.Checks;

class KeepingTest {
  private static double figure(String check) {
    return Checks.row("keeping.csv", check).number("value");
  }

  private static Ingredient the(String name) {
    return Catalogue.builtIn().require(name);
  }

  private static Formula muffins(double sugar) {
    return Formula.byPercent(
        "muffins",
        f ->
            f.line("all-purpose flour", percent(100))
                .line("sugar", percent(sugar))
                .line("egg", percent(40))
                .line("whole milk", percent(60))
                .line("canola oil", percent(35))
                .line("salt", percent(1)));
  }

  @Test
  void aUsualMuffinHasTheMeasuredWaterActivityOfMuffins() {
    Keeping keeping = Keeping.ofCrumb(muffins(60), percent(12));
    double measured = figure("water activity of muffin crumb at the end of the bake");
    assertThat(keeping.waterActivity().contains(fraction(measured))).isTrue();
    // wide enough to be true, narrow enough to be of use
    assertThat(
            keeping.waterActivity().high().in(FRACTION)
                - keeping.waterActivity().low().in(FRACTION))
        .isBetween(0.02, 0.12);
    assertThat(keeping.perishable()).isTrue();
    assertThat(keeping.toString())
        .startsWith("crumb of muffins: water activity 0.8")
        .endsWith("at 21 °C (70 °F); an estimate, no shelf-life study");
  }

  @Test
  void leanBreadLiesWithinWhatBreadHasAndNoDaysArePromised() {
    Formula bread =
        Formula.byPercent(
            "bread",
            f ->
                f.line("bread flour", percent(100))
                    .line("water", percent(62))
                    .line("salt", percent(2))
                    .line("instant yeast", percent(1)));
    Keeping keeping = Keeping.ofCrumb(bread, percent(12));
    assertThat(keeping.waterActivity().low().in(FRACTION))
        .isGreaterThan(figure("water activity of bread crumb low"));
    assertThat(keeping.waterActivity().low().in(FRACTION))
        .isLessThan(figure("water activity of bread crumb high"));
    assertThat(keeping.waterActivity().high().in(FRACTION))
        .isBetween(figure("water activity of bread crumb high"), 1.0);
    assertThat(keeping.mouldFree().low().in(DAY)).isZero();
    assertThat(keeping.mouldFree().high().in(DAY)).isCloseTo(4.17, within(0.01));
    assertThat(keeping.advice())
        .extracting(Advice::code)
        .contains("NO_SHELF_LIFE_STUDY", "WETTER_THAN_OBSERVED")
        .doesNotContain("HOLD_COLD");
    assertThat(keeping.working().toString()).contains("0.081", "0 to 4.2 days at 21 °C");
  }

  @Property(tries = 100)
  void moreSugarOrALongerBakeNeverMouldsSooner(
      @ForAll @DoubleRange(min = 0, max = 60) double sugar,
      @ForAll @DoubleRange(min = 5, max = 13) double loss) {
    Keeping here = Keeping.ofCrumb(muffins(sugar), percent(loss));
    Keeping sweeter = Keeping.ofCrumb(muffins(sugar + 10), percent(loss));
    Keeping drier = Keeping.ofCrumb(muffins(sugar), percent(loss + 1));
    for (Keeping other : new Keeping[] {sweeter, drier}) {
      assertThat(other.waterActivity().high()).isLessThan(here.waterActivity().high());
      assertThat(other.mouldFree().low()).isGreaterThanOrEqualTo(here.mouldFree().low());
      assertThat(other.mouldFree().high()).isGreaterThanOrEqualTo(here.mouldFree().high());
    }
  }

  @Test
  void aFillingHasItsOwnAndWhatHoldsEggOrMilkIsKeptCold() {
    // invented by the Kestrel Lane school: a syrup of 50 % sucrose, worked by hand
    Keeping syrup =
        Keeping.ofFilling(
            "syrup",
            percent(0),
            Part.of(the("sugar"), grams(100)),
            Part.of(the("water"), grams(100)));
    double moles = 99.8 / 342.30;
    double water = 100 / 18.015;
    double x = moles / (moles + water);
    assertThat(syrup.waterActivity().high().in(FRACTION))
        .isCloseTo((1 - x) * Math.exp(-6.47 * x * x) + 0.01, within(5e-4));
    assertThat(syrup.perishable()).isFalse();
    Keeping cream =
        Keeping.ofFilling(
            "pastry cream",
            percent(10),
            Part.of(the("whole milk"), grams(500)),
            Part.of(the("egg yolk"), grams(100)),
            Part.of(the("sugar"), grams(100)));
    assertThat(cream.advice())
        .filteredOn(a -> a.code().equals("HOLD_COLD"))
        .singleElement()
        .satisfies(a -> assertThat(a.severity()).isEqualTo(Severity.SAFETY))
        .satisfies(a -> assertThat(a.remedy()).contains("5 °C (41 °F)"));
    // honey counts as glucose, so it binds more than its mass of sucrose
    Keeping honey =
        Keeping.ofFilling(
            "honey and water",
            percent(0),
            Part.of(the("honey"), grams(100)),
            Part.of(the("water"), grams(80)));
    Keeping sucrose =
        Keeping.ofFilling(
            "sugar and water",
            percent(0),
            Part.of(the("sugar"), grams(82.1)),
            Part.of(the("water"), grams(97)));
    assertThat(honey.waterActivity().high()).isLessThan(sucrose.waterActivity().high());
  }

  @Test
  void aMeasuredFigureIsBetterAndDrierThanObservedSaysSo() {
    Keeping cake =
        Keeping.measured("fruit cake", new AmountRange<>(fraction(0.70), fraction(0.80)), false);
    assertThat(cake.mouldFree().low().in(DAY)).isCloseTo(26.9, within(0.1));
    assertThat(cake.mouldFree().high().in(DAY)).isCloseTo(82.4, within(0.1));
    assertThat(cake.keptAt(celsius(27)).mouldFree().low().in(DAY)).isLessThan(26.9);
    assertThat(cake.advice())
        .extracting(Advice::code)
        .containsExactly("NO_SHELF_LIFE_STUDY", "DRIER_THAN_OBSERVED");
    assertThatThrownBy(() -> cake.keptAt(celsius(5))).hasMessageContaining("5 °C");
    assertThatThrownBy(() -> Keeping.ofCrumb(muffins(60), percent(35)))
        .hasMessageContaining("Keeping.measured");
    assertThatThrownBy(() -> Keeping.ofCrumb(muffins(60), percent(-1)))
        .hasMessageContaining("Keeping.measured");
    assertThatThrownBy(() -> Part.of(the("sugar"), grams(-1))).hasMessageContaining("-1 g");
    assertThatThrownBy(
            () -> Keeping.measured("x", new AmountRange<>(fraction(0.5), fraction(1.1)), false))
        .hasMessageContaining("water activity");
  }
}
