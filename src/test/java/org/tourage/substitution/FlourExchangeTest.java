package org.tourage.substitution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.formula.Formula;
import org.tourage.formula.Preferment;
import org.tourage.ingredient.Allergen;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Component;
import org.tourage.ingredient.Composition;
import org.tourage.ingredient.FlourSpecification;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;
import org.tourage.reference.Checks;

class FlourExchangeTest {
  private static final Catalogue CATALOGUE = Catalogue.builtIn();
  private static final Ingredient BREAD = CATALOGUE.require("bread flour");

  private static Formula dough() {
    return Formula.byPercent(
        "dough",
        f ->
            f.line(BREAD, percent(100))
                .line("water", percent(50))
                .line("whole milk", percent(10))
                .line("salt", percent(2))
                .line("instant yeast", percent(1))
                .preferment(Preferment.poolish(percent(20)))
                .rollIn("butter", percent(50)));
  }

  @Test
  void moistureBasesAreThePublishedOnes() {
    assertThat(MoistureBasis.absorptionAt(percent(60), percent(12), percent(14)).in(PERCENT))
        .isCloseTo(
            Checks.row("other-rooms.csv", "absorption 60 at moisture 12 on the 14 basis")
                .number("value"),
            within(5e-5));
    assertThat(MoistureBasis.absorptionAt(percent(60), percent(14), percent(14)).in(PERCENT))
        .isCloseTo(
            Checks.row("other-rooms.csv", "absorption 60 at moisture 14 on the 14 basis")
                .number("value"),
            within(1e-12));
    assertThat(MoistureBasis.absorptionAt(percent(60), percent(14), percent(12)).in(PERCENT))
        .isCloseTo(
            Checks.row("other-rooms.csv", "absorption 60 on the 14 basis at moisture 12")
                .number("value"),
            within(5e-5));
    assertThat(MoistureBasis.shareAt(percent(12.5), percent(11.5), percent(14)).in(PERCENT))
        .isCloseTo(
            Checks.row("other-rooms.csv", "protein 12.5 at moisture 11.5 on the 14 basis")
                .number("value"),
            within(5e-5));
  }

  @Property
  void movingAMoistureBasisThereAndBackIsTheIdentity(
      @ForAll @DoubleRange(min = 40, max = 90) double a,
      @ForAll @DoubleRange(min = 8, max = 16) double m) {
    var absorption = MoistureBasis.absorptionAt(percent(a), percent(m), percent(14));
    assertThat(MoistureBasis.absorptionAt(absorption, percent(14), percent(m)).in(PERCENT))
        .isCloseTo(a, within(1e-9));
    var share = MoistureBasis.shareAt(percent(a), percent(m), percent(0));
    assertThat(MoistureBasis.shareAt(share, percent(0), percent(m)).in(PERCENT))
        .isCloseTo(a, within(1e-9));
    assertThatThrownBy(() -> MoistureBasis.shareAt(percent(a), percent(100), percent(14)))
        .hasMessageContaining("100 %");
  }

  @Test
  void aWeakerFlourTakesLessWater() {
    Ingredient weak = CATALOGUE.require("white wheat flour, 10 % protein");
    FlourExchange exchange = FlourExchange.of(dough(), CATALOGUE.require("bread flour"), weak);
    assertThat(exchange.waterChange().in(PERCENT)).isBetween(-3.0, 0.0);
    assertThat(exchange.after().percent(weak)).isEqualTo(percent(100));
    assertThat(exchange.after().percent("salt")).isEqualTo(percent(2));
    double before = dough().hydration().trueHydration().in(PERCENT);
    assertThat(exchange.after().hydration().trueHydration().in(PERCENT) - before)
        .isCloseTo(exchange.waterChange().in(PERCENT), within(1e-9));
    assertThat(exchange.toString())
        .startsWith("100 % of the bread flour becomes white wheat flour, 10 % protein: water -");
    assertThat(exchange.working().toString()).contains("P14");
    assertThat(exchange.after().percent("whole milk")).isEqualTo(percent(10));
  }

  @Provide
  Arbitrary<Ingredient> wheatFlours() {
    return Arbitraries.of(
        CATALOGUE.all().stream()
            .filter(i -> i.is(Role.FLOUR) && i.allergens().contains(Allergen.WHEAT))
            .toList());
  }

  @Property(tries = 100)
  void aFlourForItselfChangesNothing(@ForAll @DoubleRange(min = 0, max = 100) double share) {
    FlourExchange exchange = FlourExchange.of(dough(), BREAD, BREAD, percent(share));
    assertThat(exchange.waterChange().in(PERCENT)).isCloseTo(0, within(1e-12));
    assertThat(exchange.after().percent(BREAD).in(PERCENT)).isCloseTo(100, within(1e-9));
    assertThat(exchange.after().percent("water").in(PERCENT)).isCloseTo(50, within(1e-9));
  }

  @Property(tries = 100)
  void thereAndBackReturnsTheFormula(@ForAll("wheatFlours") Ingredient to) {
    FlourExchange there = FlourExchange.of(dough(), BREAD, to);
    FlourExchange back = FlourExchange.of(there.after(), to, BREAD);
    assertThat(back.after().percent("water").in(PERCENT)).isCloseTo(50, within(1e-9));
    assertThat(back.after().percent(BREAD).in(PERCENT)).isCloseTo(100, within(1e-9));
  }

  @Property(tries = 100)
  void theChangeIsProportionalToTheShareExchanged(
      @ForAll("wheatFlours") Ingredient to, @ForAll @DoubleRange(min = 1, max = 100) double share) {
    double whole = FlourExchange.of(dough(), BREAD, to).waterChange().in(PERCENT);
    assertThat(FlourExchange.of(dough(), BREAD, to, percent(share)).waterChange().in(PERCENT))
        .isCloseTo(whole * share / 100, within(1e-9));
  }

  @Test
  void measuredAbsorptionsWinAndLeaveNoUncertainty() {
    Ingredient a = flour("a", 60);
    Ingredient b = flour("b", 63);
    Formula formula =
        Formula.byPercent(
            "x", f -> f.line(a, percent(100)).line("water", percent(60)).line("salt", percent(2)));
    FlourExchange exchange = FlourExchange.of(formula, a, b);
    assertThat(exchange.waterChange().in(PERCENT)).isCloseTo(3, within(1e-9));
    assertThat(exchange.uncertainty().in(PERCENT)).isZero();
  }

  private static Ingredient flour(String id, double absorption) {
    return Ingredient.builder(id, "flour " + id)
        .role(Role.FLOUR)
        .allergens(Allergen.WHEAT)
        .composition(
            Composition.builder().water(percent(14)).with(Component.PROTEIN, percent(11)).build())
        .flour(FlourSpecification.of(percent(11), percent(14)).withAbsorption(percent(absorption)))
        .build();
  }

  @Test
  void whatIsUnwiseIsAdvisedAndWhatCanNotBeIsRefused() {
    assertThat(FlourExchange.of(dough(), BREAD, CATALOGUE.require("cake flour")).advice())
        .extracting(Advice::code)
        .contains("FLOUR_WEAK");
    assertThat(FlourExchange.of(dough(), BREAD, CATALOGUE.require("rye flour")).advice())
        .extracting(Advice::code)
        .contains("NOT_WHEAT");
    FlourExchange whole = FlourExchange.of(dough(), BREAD, CATALOGUE.require("whole-wheat flour"));
    assertThat(whole.waterChange().in(PERCENT)).isGreaterThan(5);
    assertThat(whole.advice()).extracting(Advice::code).contains("WATER_UNCERTAIN");
    assertThatThrownBy(() -> FlourExchange.of(dough(), CATALOGUE.require("cake flour"), BREAD))
        .hasMessageContaining("none of the flour");
    assertThatThrownBy(() -> FlourExchange.of(dough(), BREAD, CATALOGUE.require("salt")))
        .hasMessageContaining("not known");
    assertThatThrownBy(() -> FlourExchange.of(dough(), BREAD, BREAD, percent(120)))
        .hasMessageContaining("120 %");
    Formula dry = Formula.byPercent("dry", f -> f.line(BREAD, percent(100)));
    assertThatThrownBy(() -> FlourExchange.of(dry, BREAD, CATALOGUE.require("cake flour")))
        .hasMessageContaining("no liquid");
    Formula stiff =
        Formula.byPercent(
            "stiff",
            f -> f.line(BREAD, percent(100)).line("water", percent(1)).line("egg", percent(50)));
    assertThatThrownBy(() -> FlourExchange.of(stiff, BREAD, CATALOGUE.require("cake flour")))
        .hasMessageContaining("not enough water");
  }
}
