package org.tourage.substitution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.formula.Formula;
import org.tourage.formula.Totals;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.FlourSpecification;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;
import org.tourage.substitution.FlourBlend.Part;

class FlourBlendTest {
  private static final Catalogue CATALOGUE = Catalogue.builtIn();
  private static final Ingredient CAKE = CATALOGUE.require("cake flour");
  private static final Ingredient STRONG = CATALOGUE.require("white wheat flour, 15 % protein");
  private static final Ingredient BREAD = CATALOGUE.require("bread flour");
  private static final Ingredient GLUTEN = CATALOGUE.require("vital wheat gluten");
  private static final Ingredient WHOLE = CATALOGUE.require("whole-wheat flour");

  private static double share(FlourBlend.Result result, Ingredient flour) {
    return result.share(flour).in(PERCENT);
  }

  @Test
  void twoFloursAndATargetHaveTheAnswerOfTheSquareWithTheirMoistures() {
    FlourBlend.Result blend =
        FlourBlend.of(CAKE, STRONG).to(FlourProperty.PROTEIN, percent(11)).cheapest();
    assertThat(blend.reached(FlourProperty.PROTEIN).in(PERCENT)).isCloseTo(11, within(1e-9));
    // by hand: dry matter 87.49 and 87.15, protein at 14 % 8.0604 and 15.1276
    double cake = 8.20 * 86 / 87.49;
    double strong = 15.33 * 86 / 87.15;
    double x = 87.49 * (11 - cake);
    double y = 87.15 * (strong - 11);
    assertThat(share(blend, STRONG)).isCloseTo(100 * x / (x + y), within(1e-9));
    assertThat(blend.toString()).contains("cake flour", "protein 11 % at 14 % moisture");
  }

  @Test
  void theCheapestBlendWithGlutenIsFound() {
    FlourBlend blend =
        FlourBlend.of(
                Part.of(CAKE).costing(0.8),
                Part.of(STRONG).costing(1.6),
                Part.of(BREAD).costing(1.0),
                Part.of(GLUTEN).costing(6).between(percent(0), percent(3)))
            .to(FlourProperty.PROTEIN, percent(12.5));
    FlourBlend.Result result = blend.cheapest();
    assertThat(result.reached(FlourProperty.PROTEIN).in(PERCENT)).isCloseTo(12.5, within(1e-9));
    // with one target two flours are enough
    assertThat(result.shares().values().stream().filter(s -> s.in(PERCENT) > 1e-9)).hasSize(2);
    assertThat(result.cost()).isLessThan(1.2);
  }

  @Test
  void targetsThatCanNotBeMetSayWhichBoundFailsAndTheClosestBlendIsOffered() {
    FlourBlend low =
        FlourBlend.of(Part.of(CAKE), Part.of(BREAD).between(percent(0), percent(50)))
            .to(FlourProperty.PROTEIN, percent(11.5));
    assertThatThrownBy(low::cheapest)
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("protein: 11.5 %")
        .hasMessageContaining("these parts reach 8.06 % to 9.97 %");
    assertThat(share(low.closest(), BREAD)).isCloseTo(50, within(1e-6));
    FlourBlend both =
        FlourBlend.of(CAKE, STRONG)
            .to(FlourProperty.PROTEIN, percent(11))
            .to(FlourProperty.ASH, percent(0.40));
    assertThatThrownBy(both::cheapest)
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("give up protein or ash");
    FlourBlend bounds =
        FlourBlend.of(
            Part.of(CAKE).between(percent(0), percent(30)),
            Part.of(BREAD).between(percent(0), percent(30)));
    assertThatThrownBy(bounds::cheapest)
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("greatest to 60 %");
    assertThatThrownBy(bounds::closest).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> FlourBlend.of(CAKE)).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> Part.of(CAKE).costing(-1)).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> FlourBlend.square(percent(9), percent(12), percent(13)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("13 %");
  }

  @Test
  void anAbsorptionCanBeBlendedToo() {
    FlourBlend.Result result =
        FlourBlend.of(BREAD, WHOLE).to(FlourProperty.ABSORPTION, percent(62)).cheapest();
    assertThat(share(result, WHOLE)).isBetween(10.0, 60.0);
  }

  @Property
  void aBlendLiesBetweenItsPartsAndReachesItsTarget(
      @ForAll @DoubleRange(min = 0, max = 1) double at) {
    double low = FlourProperty.PROTEIN.of(CAKE);
    double high = FlourProperty.PROTEIN.of(GLUTEN);
    double target = low + at * (high - low);
    FlourBlend.Result result =
        FlourBlend.of(CAKE, BREAD, GLUTEN).to(FlourProperty.PROTEIN, percent(target)).cheapest();
    assertThat(result.reached(FlourProperty.PROTEIN).in(PERCENT)).isCloseTo(target, within(1e-8));
    assertThat(result.shares().values().stream().mapToDouble(s -> s.in(PERCENT)).sum())
        .isCloseTo(100, within(1e-9));
    assertThat(result.shares().values())
        .allSatisfy(s -> assertThat(s.in(PERCENT)).isBetween(-1e-9, 100 + 1e-9));
  }

  @Test
  void eachAbsorptionModelSaysWhatItNeedsAndHowSureItIs() {
    assertThatThrownBy(() -> new MeasuredAbsorption().estimate(BREAD))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("withAbsorption");
    assertThatThrownBy(() -> new Bushuk1966(1.5).estimate(BREAD))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("withDamagedStarch");
    assertThatThrownBy(() -> new Farrand1969(200)).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> new Bushuk1966(-1)).isInstanceOf(BakeryException.class);
    assertThat(new Farrand1969(25).estimate(BREAD).advice())
        .extracting(Advice::code)
        .containsExactly("NOT_CONFIRMED");
    Ingredient milled =
        Ingredient.builder("milled", "milled flour")
            .role(Role.FLOUR)
            .allergens(org.tourage.ingredient.Allergen.WHEAT)
            .composition(BREAD.composition())
            .flour(FlourSpecification.of(percent(12), percent(13)).withDamagedStarch(percent(7)))
            .build();
    AbsorptionModel.Estimate little = new Bushuk1966(1.5).estimate(milled);
    AbsorptionModel.Estimate more = new Bushuk1966(2.5).estimate(milled);
    assertThat(little.advice()).extracting(Advice::code).containsExactly("DIFFERENCES_ONLY");
    assertThat(more.absorption().in(PERCENT) - little.absorption().in(PERCENT))
        .isCloseTo(15, within(1e-9));
    assertThat(new ProteinSlope().estimate(WHOLE).absorption())
        .isGreaterThan(new ProteinSlope().estimate(BREAD).absorption());
  }

  private static Formula laminated() {
    return Formula.byPercent(
        "laminated",
        f ->
            f.line(BREAD, percent(100))
                .line("water", percent(50))
                .line("milk", percent(8))
                .line("salt", percent(2))
                .rollIn("butter", percent(50)));
  }

  @Test
  void theWaterCanBeKeptAndTheFlourChangedInstead() {
    FlourExchange exchange = FlourExchange.of(laminated(), BREAD, CAKE);
    Formula.Changed household = exchange.keepingTheWater();
    // as stiff as with the water corrected
    assertThat(household.formula().hydration().trueHydration().in(PERCENT))
        .isCloseTo(exchange.after().hydration().trueHydration().in(PERCENT), within(1e-9));
    // the weaker flour takes less water, so there is a little more of it
    assertThat(household.flour().in(PERCENT)).isGreaterThan(100);
    // and the water itself has not moved
    assertThat(
            household.formula().percent("water").in(PERCENT) * household.flour().in(PERCENT) / 100)
        .isCloseTo(50, within(1e-9));
    assertThat(Totals.of(household.formula()).fat().in(PERCENT)).isLessThan(45);
    assertThat(exchange.comparison()).contains("or keep the water: 10", "of the flour, dough 10");
    assertThat(exchange.advice()).extracting(Advice::code).contains("FLOUR_WEAK", "FLOUR_WEAKER");
    assertThat(exchange.advice().toString()).contains("This can't work as a laminated dough");
  }

  @Test
  void swapsThatNeedAnotherHandSaySo() {
    assertThat(codes("light rye flour")).contains("RYE");
    assertThat(codes("whole-wheat flour")).contains("WHOLE_GRAIN");
  }

  private static List<String> codes(String flour) {
    AbsorptionModel own =
        f -> new AbsorptionModel.Estimate(percent(60), percent(1), "own trial", List.of());
    return FlourExchange.of(laminated(), BREAD, CATALOGUE.require(flour), percent(100), own)
        .advice()
        .stream()
        .map(Advice::code)
        .toList();
  }

  @Test
  void theWaterByAnotherModelIsItsDifference() {
    FlourExchange exchange =
        FlourExchange.of(laminated(), BREAD, CAKE, percent(100), new ProteinSlope());
    FlourExchange rule = FlourExchange.of(laminated(), BREAD, CAKE);
    assertThat(exchange.waterChange().in(PERCENT))
        .isCloseTo(rule.waterChange().in(PERCENT), within(1e-9));
    assertThat(exchange.uncertainty()).isEqualTo(rule.uncertainty());
    FlourExchange other =
        FlourExchange.of(
            laminated(),
            BREAD,
            CAKE,
            percent(100),
            f ->
                new AbsorptionModel.Estimate(
                    percent(f.equals(CAKE) ? 52 : 60), percent(1), "own trial", List.of()));
    assertThat(other.waterChange().in(PERCENT)).isCloseTo(-8, within(1e-9));
    assertThat(other.working().toString()).contains("difference of the absorptions", "own trial");
  }

  private static Ingredient wheat(double protein, double fibre) {
    return Ingredient.builder("w", "wheat")
        .role(Role.FLOUR)
        .allergens(org.tourage.ingredient.Allergen.WHEAT)
        .composition(
            org.tourage.ingredient.Composition.builder()
                .water(percent(14))
                .protein(percent(protein))
                .carbohydrate(percent(70))
                .with(org.tourage.ingredient.Component.FIBRE, percent(fibre))
                .with(org.tourage.ingredient.Component.SUGARS, percent(1))
                .build())
        .flour(FlourSpecification.of(percent(protein), percent(14)).withDamagedStarch(percent(7)))
        .build();
  }

  @Test
  void theLineByProteinAndItsUncertaintyAreWhatTheirRuleSays() {
    ProteinSlope line = new ProteinSlope();
    // through 12.7 % and 59.45 %; between flours a quarter of 7.5, slope 0.25 either way
    AbsorptionModel.Estimate middle = line.estimate(wheat(12.7, 2));
    assertThat(middle.absorption().in(PERCENT)).isCloseTo(59.45, within(1e-9));
    assertThat(middle.uncertainty().in(PERCENT)).isCloseTo(7.5 / 4, within(1e-9));
    assertThat(middle.advice()).isEmpty();
    AbsorptionModel.Estimate strong = line.estimate(wheat(14.7, 2));
    assertThat(strong.absorption().in(PERCENT)).isCloseTo(59.45 + 2.5, within(1e-9));
    assertThat(strong.uncertainty().in(PERCENT))
        .isCloseTo(Math.hypot(1.875, 2 * 0.25 / Math.sqrt(3)), within(1e-9));
    AbsorptionModel.Estimate whole = line.estimate(wheat(12.7, 10));
    assertThat(whole.absorption().in(PERCENT)).isCloseTo(59.45 + 7.5, within(1e-9));
    assertThat(whole.uncertainty().in(PERCENT))
        .isCloseTo(Math.hypot(1.875, 2.5 / Math.sqrt(3)), within(1e-9));
    assertThat(line.estimate(wheat(15.5, 2)).advice())
        .extracting(Advice::code)
        .containsExactly("OUTSIDE_RANGE");
  }

  @Test
  void theWaterOfThePartsIsSummedByHand() {
    // starch 70 − 2 − 1 = 67, of it 7 damaged; at 14 % moisture nothing moves
    double expected = 0.44 * 60 + 2.00 * 7 + 2.15 * 12 + 15 * 1.5 - 14;
    assertThat(new Bushuk1966(1.5).estimate(wheat(12, 2)).absorption().in(PERCENT))
        .isCloseTo(expected, within(1e-9));
    assertThatThrownBy(() -> new Bushuk1966(16)).isInstanceOf(BakeryException.class);
  }
}
