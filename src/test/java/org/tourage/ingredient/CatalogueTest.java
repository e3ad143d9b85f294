package org.tourage.ingredient;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.GRAM;
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
import org.tourage.quantity.CupStandard;
import org.tourage.quantity.HouseholdAmount;

class CatalogueTest {
  private final Catalogue catalogue = Catalogue.builtIn();

  @Test
  void holdsAtLeast45IngredientsWithPlantFatsAndDrinks() {
    assertThat(catalogue.all()).hasSizeGreaterThanOrEqualTo(45);
    assertThat(catalogue.all())
        .filteredOn(i -> i.is(Role.FAT) && i.origin() != Origin.ANIMAL)
        .hasSizeGreaterThan(10);
    assertThat(catalogue.all())
        .filteredOn(i -> i.is(Role.LIQUID) && i.origin() == Origin.PLANT)
        .hasSizeGreaterThan(6);
    assertThat(catalogue.all())
        .allSatisfy(i -> assertThat(i.composition().source(Component.WATER)).isPresent());
  }

  @Test
  void findsByIdByNameByAliasAndWithoutRegardToSpelling() {
    Ingredient flour = catalogue.require("bread-flour");
    for (String name :
        new String[] {
          "bread flour",
          "Bread Flour",
          "BREAD-FLOUR",
          "strong flour",
          "bread flours",
          " bread  flour "
        }) {
      assertThat(catalogue.find(name)).as(name).contains(flour);
    }
    assertThat(catalogue.require("eggs")).isEqualTo(catalogue.require("egg-whole"));
    assertThat(catalogue.require("water")).hasToString("water");
  }

  @Test
  void everyIngredientIsFoundUnderItsOwnNameAndId() {
    assertThat(catalogue.all())
        .allSatisfy(
            i -> {
              assertThat(catalogue.find(i.name())).contains(i);
              assertThat(catalogue.find(i.id())).contains(i);
            });
  }

  @Test
  void anUnknownNameGivesNearMatches() {
    assertThat(catalogue.find("bred flour")).isEmpty();
    assertThat(catalogue.near("bred flour")).contains("bread flour");
    assertThat(catalogue.near("allmond milk")).contains("almond drink, unsweetened");
    assertThatThrownBy(() -> catalogue.require("instnat yeast"))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("\"instnat yeast\"")
        .hasMessageContaining("did you mean instant yeast")
        .extracting(e -> ((BakeryException) e).reason())
        .isEqualTo(BakeryException.Reason.UNKNOWN_NAME);
  }

  private static Ingredient house() {
    return Ingredient.builder("bread-flour", "house flour")
        .role(Role.FLOUR)
        .origin(Origin.PLANT)
        .allergens(Allergen.WHEAT)
        .allergensToCheck(Allergen.SOY)
        .composition(
            Composition.builder()
                .water(percent(14))
                .protein(percent(12.2))
                .ash(percent(0.55))
                .build())
        .portion("1 cup", grams(130))
        .portion("1 sack", kilograms(25))
        .build();
  }

  @Test
  void oneOfOnesOwnTakesPrecedenceAndLeavesTheOtherCatalogueAlone() {
    Catalogue mine = catalogue.with(house());
    assertThat(mine.require("house flour").name()).isEqualTo("house flour");
    assertThat(mine.require("bread-flour").name()).isEqualTo("house flour");
    assertThat(catalogue.find("house flour")).isEmpty();
    assertThat(mine.all()).hasSameSizeAs(catalogue.all());
    assertThat(house().flour().orElseThrow())
        .hasToString("protein 12.2 %, moisture 14 %, ash 0.55 %");
    assertThat(house().weigh("2 cups").mass()).isEqualTo(grams(260));
    assertThat(house().weighPieces(HouseholdAmount.parse("2"), "sack").mass())
        .isEqualTo(kilograms(50));
    assertThat(house().allergens()).containsExactly(Allergen.WHEAT);
    assertThat(house().allergensToCheck()).containsExactly(Allergen.SOY);
    assertThat(house().roles()).containsExactly(Role.FLOUR);
    assertThat(house().portions()).hasSize(2);
    assertThat(house()).isEqualTo(house()).isNotEqualTo(catalogue.require("bread-flour"));
    assertThat(house().sameIdAs(catalogue.require("bread-flour"))).isTrue();
    assertThat(house().sameIdAs(catalogue.require("cake flour"))).isFalse();
  }

  @Test
  void ingredientsThatCanNotBeAreRefused() {
    assertThatThrownBy(() -> Ingredient.builder("", "x")).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> Ingredient.builder("x", "x").build())
        .hasMessageContaining("role and a composition");
    assertThatThrownBy(() -> Ingredient.builder("x", "x").portion("1 cup", grams(0)))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> Ingredient.builder("x", "x").portion("1", grams(5)))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> Ingredient.builder("x", "x").portion("1 g", grams(5)))
        .isInstanceOf(BakeryException.class);
  }

  @Test
  void compositionsThatCanNotBeAreRefused() {
    assertThatThrownBy(() -> Composition.builder().build()).hasMessageContaining("water");
    assertThatThrownBy(() -> Composition.builder().water(percent(-1))).hasMessageContaining("-1 %");
    assertThatThrownBy(() -> Composition.builder().water(percent(101)))
        .hasMessageContaining("101 %");
    assertThatThrownBy(() -> Composition.builder().water(percent(60)).fat(percent(50)).build())
        .hasMessageContaining("110 %");
    assertThatThrownBy(
            () ->
                Composition.builder()
                    .water(percent(10))
                    .carbohydrate(percent(5))
                    .with(Component.SUGARS, percent(9))
                    .build())
        .hasMessageContaining("sugars");
    assertThatThrownBy(
            () ->
                Composition.builder()
                    .water(percent(10))
                    .fat(percent(5))
                    .with(Component.SATURATED_FAT, percent(9))
                    .build())
        .hasMessageContaining("saturated");
    assertThatThrownBy(
            () ->
                Composition.builder()
                    .water(percent(80))
                    .with(Component.SODIUM, percent(40))
                    .build())
        .hasMessageContaining("sodium");
  }

  @Test
  void aFigureCanHaveASourceOfItsOwnAndAnUnknownOneIsNotZero() {
    Source label = new Source("label in hand", Provenance.USER);
    Composition composition =
        Composition.builder()
            .water(percent(20))
            .with(Component.FAT, percent(75), label)
            .source(new Source("table", Provenance.FROM_MEMORY))
            .build();
    assertThat(composition.source(Component.FAT)).contains(label);
    assertThat(composition.source(Component.WATER).orElseThrow())
        .hasToString("table (from memory)");
    assertThat(composition.share(Component.PROTEIN)).isEmpty();
    assertThat(composition.source(Component.PROTEIN)).isEmpty();
    assertThat(composition.fraction(Component.PROTEIN)).isZero();
    assertThat(composition.unaccounted().in(PERCENT)).isCloseTo(5, within(1e-9));
    assertThat(composition).hasToString("water 20 %, fat 75 %");
    assertThat(composition)
        .isNotEqualTo(house().composition())
        .isEqualTo(composition)
        .hasSameHashCodeAs(composition);
    assertThat(composition.constituents().fat()).isCloseTo(0.75, within(1e-12));
    assertThat(catalogue.require("baking soda").composition().unaccounted().in(PERCENT))
        .isCloseTo(62.9, within(0.01));
  }

  @Test
  void flourSpecificationsRefuseWhatNoFlourHas() {
    FlourSpecification flour = FlourSpecification.of(percent(12), percent(13.5));
    assertThat(flour.withAbsorption(percent(60)).absorption()).contains(percent(60));
    assertThat(flour.withDamagedStarch(percent(7)).damagedStarch()).contains(percent(7));
    assertThat(flour.ash()).isEmpty();
    assertThat(
            flour
                .withDamagedStarch(percent(7))
                .withAbsorption(percent(60))
                .withAsh(percent(1))
                .toString())
        .isEqualTo(
            "protein 12 %, moisture 13.5 %, ash 1 %, damaged starch 7 %, absorption 60 % at 14 % moisture");
    assertThatThrownBy(() -> FlourSpecification.of(percent(12), percent(30)))
        .hasMessageContaining("30 %");
    assertThatThrownBy(() -> flour.withAbsorption(percent(160)))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> flour.withDamagedStarch(percent(31)))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> flour.withAsh(percent(-1))).isInstanceOf(BakeryException.class);
  }

  @Test
  void aCupOfFlourComesWithItsSpread() {
    Ingredient flour = catalogue.require("all-purpose flour");
    Weighed any = flour.weigh("1 cup");
    assertThat(any.mass()).isEqualTo(grams(125));
    assertThat(any.range().low()).isEqualTo(grams(110));
    assertThat(any.range().high()).isEqualTo(grams(156.25));
    assertThat(any.advice()).extracting(Advice::code).containsExactly("MEASURE_SPREAD");
    assertThat(any).hasToString("1 cup all-purpose flour = 125 g (110 g to 156 g)");
    Weighed scooped = flour.weigh("1 cup", Filling.SCOOPED);
    assertThat(scooped.mass()).isEqualTo(grams(145));
    assertThat(scooped.source().provenance()).isEqualTo(Provenance.COMMON_PRACTICE);
    assertThat(flour.weigh("1 cup", Filling.SIFTED).mass()).isEqualTo(grams(115));
    Weighed weighed = flour.weigh("500 g");
    assertThat(weighed.spread()).isEqualTo(percent(0));
    assertThat(weighed.advice()).isEmpty();
    assertThat(weighed).hasToString("500 g all-purpose flour = 500 g");
    assertThat(weighed.working().toString()).contains("500 g");
  }

  @Test
  void countsAndSizesAreWeighed() {
    Ingredient egg = catalogue.require("egg");
    assertThat(egg.weigh("2").mass()).isEqualTo(grams(100));
    assertThat(egg.weighPieces(HouseholdAmount.parse("2"), "medium").mass()).isEqualTo(grams(88));
    assertThat(catalogue.require("butter").weigh("2 sticks").mass()).isEqualTo(grams(226));
    assertThat(catalogue.require("instant yeast").weigh("2-3 packets").mass())
        .isEqualTo(grams(17.5));
    assertThatThrownBy(() -> catalogue.require("water").weigh("2 sticks"))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("stick of water");
    assertThatThrownBy(() -> catalogue.require("water").weigh("1 cup", Filling.SIFTED))
        .hasMessageContaining("not measured sifted");
    assertThatThrownBy(() -> catalogue.require("water").weigh("2 h"))
        .hasMessageContaining("can't be measured by time");
    Ingredient bare =
        Ingredient.builder("x", "powder")
            .role(Role.FLAVOUR)
            .composition(Composition.builder().water(percent(5)).build())
            .build();
    assertThatThrownBy(() -> bare.weigh("1 cup")).hasMessageContaining("no volume of powder");
  }

  @Test
  void allergensAreOnTheirLegalLists() {
    assertThat(Allergen.ALMOND.unitedStates()).contains("tree nuts");
    assertThat(Allergen.ALMOND.europeanUnion()).contains("nuts");
    assertThat(Allergen.RYE.unitedStates()).isEmpty();
    assertThat(Allergen.COCONUT.annexPoint()).isZero();
    assertThat(Allergen.values())
        .filteredOn(a -> a.annexPoint() > 0)
        .extracting(Allergen::annexPoint)
        .contains(1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14);
    assertThat(catalogue.require("almond drink").allergens()).containsExactly(Allergen.ALMOND);
    assertThat(catalogue.require("margarine").allergensToCheck()).contains(Allergen.MILK);
  }

  @Provide
  Arbitrary<Ingredient> measured() {
    return Arbitraries.of(
        catalogue.all().stream()
            .filter(i -> i.portions().stream().anyMatch(Portion::isVolume))
            .toList());
  }

  @Property(tries = 300)
  void theUnitOfAVolumeNeverChangesTheMass(
      @ForAll("measured") Ingredient ingredient,
      @ForAll @DoubleRange(min = 0.25, max = 20) double cups) {
    double quarters = Math.round(cups * 4);
    String inCups = (int) quarters + "/4 cup";
    String inSpoons = (int) (quarters * 12) + " tsp";
    double a =
        ingredient.weigh(HouseholdAmount.parse(inCups, CupStandard.US_CUSTOMARY)).mass().in(GRAM);
    double b =
        ingredient.weigh(HouseholdAmount.parse(inSpoons, CupStandard.US_CUSTOMARY)).mass().in(GRAM);
    assertThat(a).isCloseTo(b, within(a * 1e-12));
  }

  @Property(tries = 200)
  void massLiesWithinItsRange(
      @ForAll("measured") Ingredient ingredient,
      @ForAll @DoubleRange(min = 0.25, max = 20) double cups) {
    Weighed weighed =
        ingredient.weigh(HouseholdAmount.parse(Math.round(cups * 100) / 100.0 + " cups"));
    assertThat(weighed.range().contains(weighed.mass())).isTrue();
  }
}
