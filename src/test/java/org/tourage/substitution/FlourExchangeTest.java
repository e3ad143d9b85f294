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
import org.tourage.advice.BakeryException;
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
  void moistureBasesAreThoseOfConservedDryMatterAndWater() {
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
  void aMuchWeakerFlourTakesLessWater() {
    Ingredient weak = CATALOGUE.require("cake flour");
    FlourExchange exchange = FlourExchange.of(dough(), BREAD, weak);
    assertThat(exchange.settled()).isTrue();
    assertThat(exchange.heldBack().in(PERCENT)).isZero();
    assertThat(exchange.waterChange().in(PERCENT)).isBetween(-6.0, -4.0);
    assertThat(exchange.after().percent(weak)).isEqualTo(percent(100));
    assertThat(exchange.after().percent("salt")).isEqualTo(percent(2));
    double before = dough().hydration().trueHydration().in(PERCENT);
    assertThat(exchange.after().hydration().trueHydration().in(PERCENT) - before)
        .isCloseTo(exchange.waterChange().in(PERCENT), within(1e-9));
    assertThat(exchange.toString())
        .startsWith("100 % of the bread flour becomes cake flour: water -4.");
    assertThat(exchange.working().toString()).contains("P14", "both bags equally moist");
    assertThat(exchange.after().percent("whole milk")).isEqualTo(percent(10));
  }

  @Test
  void breadFlourToAllPurposeIsAboutTwoPointsLessAndTheSheetDoesNotPromiseThem() {
    for (String name : new String[] {"all-purpose flour", "all-purpose flour, unbleached"}) {
      FlourExchange exchange = FlourExchange.of(dough(), BREAD, CATALOGUE.require(name));
      // the averages of the table, 13.4 % and 11.9 % moist, once made a plus of it
      assertThat(exchange.waterChange().in(PERCENT)).isBetween(-2.6, -1.6);
      // two bags of a point of moisture each, two flours scattering by 1.9 points
      double least = Math.sqrt(2) * Math.hypot(1.7, 1.87);
      assertThat(exchange.uncertainty().in(PERCENT)).isBetween(least, least + 0.5);
      assertThat(exchange.settled()).isFalse();
      assertThat(exchange.after().percent("water")).isEqualTo(percent(50));
      assertThat(exchange.heldBack().in(PERCENT))
          .isCloseTo(-exchange.waterChange().in(PERCENT), within(1e-12));
      assertThat(exchange.toString())
          .contains("no change that can be told (± 3.")
          .contains("hold back a little water, 2.")
          .doesNotContain("+", "-2", "−");
      assertThat(exchange.advice()).extracting(Advice::code).contains("WATER_NOT_SETTLED");
    }
    FlourExchange back =
        FlourExchange.of(
            Formula.byPercent(
                "x",
                f ->
                    f.line("all-purpose flour", percent(80))
                        .line("water", percent(60))
                        .line("cake flour", percent(20))),
            CATALOGUE.require("all-purpose flour"),
            BREAD);
    // upwards a little is held back as well: a point of the flour exchanged
    assertThat(back.waterChange().in(PERCENT)).isPositive();
    assertThat(back.heldBack().in(PERCENT)).isCloseTo(0.8, within(1e-9));
  }

  @Property(tries = 200)
  void noSignIsShownThatIsNotSettledAndNoneIsTakenFromTwoAveragesOfMoisture(
      @ForAll("wheatFlours") Ingredient from,
      @ForAll("wheatFlours") Ingredient to,
      @ForAll @DoubleRange(min = 1, max = 100) double share) {
    Formula formula =
        Formula.byPercent(
            "x",
            f -> f.line(from, percent(100)).line("water", percent(62)).line("salt", percent(2)));
    FlourExchange exchange = FlourExchange.of(formula, from, to, percent(share));
    double moved = exchange.after().percent("water").in(PERCENT) - 62;
    double change = exchange.waterChange().in(PERCENT);
    if (Math.abs(change) > exchange.uncertainty().in(PERCENT)) {
      assertThat(Math.signum(moved)).isEqualTo(Math.signum(change));
    } else {
      assertThat(moved).isCloseTo(0, within(1e-12));
    }
    boolean grain = FlourFigures.isWholeGrain(from) == FlourFigures.isWholeGrain(to);
    if (grain && !from.equals(to)) {
      double protein = FlourFigures.protein(to) - FlourFigures.protein(from);
      assertThat(change).isCloseTo(1.25 * protein * share / 100, within(1e-9));
    }
  }

  @Test
  void theMoistureOfABagThatIsKnownCounts() {
    Ingredient dry = flour("dry", 11, 11);
    Ingredient moist = flour("moist", 11, 14);
    Formula formula =
        Formula.byPercent("x", f -> f.line(moist, percent(100)).line("water", percent(60)));
    // (A + 14)·89/86 − 11
    double held = formula.hydration().trueHydration().in(PERCENT);
    double water = (held + 14) * 89.0 / 86 - 11;
    FlourExchange exchange =
        FlourExchange.of(formula, moist, dry, percent(100), new ProteinSlope(), percent(0.2));
    assertThat(exchange.waterChange().in(PERCENT)).isCloseTo(water - held, within(1e-9));
    assertThat(exchange.settled()).isTrue();
    FlourExchange guessed = FlourExchange.of(formula, moist, dry);
    assertThat(guessed.waterChange()).isEqualTo(exchange.waterChange());
    assertThat(guessed.uncertainty().in(PERCENT))
        .isCloseTo(Math.hypot(exchange.uncertainty().in(PERCENT), 2.63), within(0.06));
    assertThatThrownBy(
            () ->
                FlourExchange.of(
                    formula, moist, dry, percent(100), new ProteinSlope(), percent(11)))
        .hasMessageContaining("11 %");
  }

  @Test
  void forAFlourThatIsNoWheatThereIsNoFigureAndTheReasonIsSaid() {
    for (String name :
        new String[] {
          "rye flour",
          "light rye flour",
          "dark rye flour",
          "oat flour",
          "barley flour",
          "rice flour",
          "buckwheat flour",
          "potato flour",
          "chickpea flour"
        }) {
      Ingredient other = CATALOGUE.require(name);
      assertThatThrownBy(() -> FlourExchange.of(dough(), BREAD, other, percent(20)))
          .as(name)
          .isInstanceOf(BakeryException.class)
          .hasMessageContaining("there is no figure for the water of this flour")
          .hasMessageContaining(other.name())
          .hasMessageContaining("measured absorption");
      assertThatThrownBy(() -> new ProteinSlope().estimate(other)).hasMessageContaining("of wheat");
      assertThatThrownBy(() -> new Farrand1969(28).estimate(other))
          .hasMessageContaining("of wheat");
      assertThatThrownBy(() -> new Bushuk1966(2).estimate(other)).hasMessageContaining("of wheat");
    }
    assertThatThrownBy(() -> FlourExchange.of(dough(), BREAD, CATALOGUE.require("rye flour")))
        .hasMessageContaining("pentosans");
    assertThatThrownBy(() -> FlourExchange.of(dough(), BREAD, CATALOGUE.require("cornstarch")))
        .isInstanceOf(BakeryException.class);
  }

  /** A figure of one's own for any flour. */
  private static AbsorptionModel own() {
    return f ->
        new AbsorptionModel.Estimate(percent(60), percent(1), "own trial", java.util.List.of());
  }

  @Test
  void glutenThatHoldsNoGasIsNamedForBarleyOatAndRye() {
    for (String name : new String[] {"barley flour", "oat flour", "rye flour"}) {
      FlourExchange exchange =
          FlourExchange.of(dough(), BREAD, CATALOGUE.require(name), percent(20), own());
      assertThat(exchange.advice())
          .as(name)
          .extracting(Advice::code)
          .contains("GLUTEN_HOLDS_NO_GAS")
          .doesNotContain("NO_GLUTEN");
      assertThat(exchange.advice().toString()).contains("not free of gluten");
    }
    assertThat(
            FlourExchange.of(dough(), BREAD, CATALOGUE.require("rice flour"), percent(20), own())
                .advice())
        .extracting(Advice::code)
        .contains("NO_GLUTEN")
        .doesNotContain("GLUTEN_HOLDS_NO_GAS");
  }

  @Provide
  Arbitrary<Ingredient> wheatFlours() {
    return Arbitraries.of(
        CATALOGUE.all().stream()
            .filter(i -> i.is(Role.FLOUR) && i.allergens().contains(Allergen.WHEAT))
            // triticale is half a rye
            .filter(i -> !i.allergens().contains(Allergen.RYE))
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
  void measuredAbsorptionsWinAndTheMoistureOfTheBagsRemains() {
    Ingredient a = flour("a", 60);
    Ingredient b = flour("b", 63);
    Formula formula =
        Formula.byPercent(
            "x", f -> f.line(a, percent(100)).line("water", percent(60)).line("salt", percent(2)));
    FlourExchange exchange = FlourExchange.of(formula, a, b);
    assertThat(exchange.waterChange().in(PERCENT)).isCloseTo(3, within(1e-9));
    double repeated = 0.0055 * Math.hypot(60, 63);
    assertThat(exchange.uncertainty().in(PERCENT))
        .isCloseTo(Math.hypot(Math.sqrt(2) * 160 / 86, repeated), within(1e-9));
  }

  private static Ingredient flour(String id, double absorption) {
    return flour(
        id,
        11,
        14,
        FlourSpecification.of(percent(11), percent(14)).withAbsorption(percent(absorption)));
  }

  private static Ingredient flour(String id, double protein, double moisture) {
    return flour(
        id,
        protein,
        moisture,
        FlourSpecification.of(percent(protein * (100 - moisture) / 86), percent(moisture)));
  }

  private static Ingredient flour(
      String id, double protein, double moisture, FlourSpecification figures) {
    return Ingredient.builder(id, "flour " + id)
        .role(Role.FLOUR)
        .allergens(Allergen.WHEAT)
        .composition(
            Composition.builder()
                .water(percent(moisture))
                .with(Component.PROTEIN, percent(protein))
                .build())
        .flour(figures)
        .build();
  }

  @Test
  void whatIsUnwiseIsAdvisedAndWhatCanNotBeIsRefused() {
    assertThat(FlourExchange.of(dough(), BREAD, CATALOGUE.require("cake flour")).advice())
        .extracting(Advice::code)
        .contains("FLOUR_WEAK");
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
