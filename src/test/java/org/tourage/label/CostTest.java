package org.tourage.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.GRAM;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.io.Serializable;
import java.math.BigDecimal;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import javax.measure.quantity.Mass;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.tourage.advice.BakeryException;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;
import org.tourage.quantity.Amount;

/** Prices of the invented pastry school Kestrel Lane. */
class CostTest {
  private static final Currency EUR = Currency.getInstance("EUR");
  private static final Ingredient FLOUR = named("bread flour");
  private static final Ingredient APPLE = named("peeled apple");
  private static final Ingredient BUTTER = named("unsalted butter");

  private static Ingredient named(String name) {
    return Catalogue.builtIn().require(name);
  }

  private static Batch turnovers() {
    return Formula.byWeight(
        "apple turnovers",
        f ->
            f.line(FLOUR, grams(1000))
                .line("water", grams(500))
                .line(BUTTER, grams(500))
                .line(APPLE, grams(780)));
  }

  private static PriceList prices() {
    return PriceList.in(EUR)
        .with(FLOUR, Money.of("20.00", "EUR"), kilograms(25))
        .with(FLOUR, Money.of("1.20", "EUR"), kilograms(1))
        .with(BUTTER, Money.of("2.29", "EUR"), grams(250))
        .with(APPLE, Money.of("2.00", "EUR"), kilograms(1))
        .withYield(APPLE, percent(78));
  }

  private static PriceList withWater() {
    return prices().with(named("water"), Money.of("0", "EUR"), kilograms(1));
  }

  @Test
  void aBatchCostsItsIngredientsWithTheirTrim() {
    Cost cost = Cost.of(turnovers(), withWater());
    // 1 kg of flour 0.80, 500 g of butter 4.58, 1 kg of apples 2.00
    assertThat(cost.total().orElseThrow()).hasToString("7.38 EUR");
    assertThat(cost.perPiece(12).orElseThrow()).hasToString("0.62 EUR");
    assertThat(cost.shareOf(Money.of("36.90", "EUR")).orElseThrow().value())
        .isCloseTo(20, within(1e-9));
    assertThat(cost.items())
        .filteredOn(i -> i.ingredient().equals(APPLE))
        .allSatisfy(i -> assertThat(i.bought().in(GRAM)).isCloseTo(1000, within(1e-9)));
    assertThat(cost.toString()).contains("total").contains("7.38 EUR");
  }

  @Test
  void aMissingPriceIsNamedAndNeverNought() {
    Cost cost = Cost.of(turnovers(), prices());
    assertThat(cost.total()).isEmpty();
    assertThat(cost.perPiece(4)).isEmpty();
    assertThat(cost.shareOf(Money.of("10", "EUR"))).isEmpty();
    assertThat(cost.missing()).containsExactly(named("water"));
    assertThat(cost.advice().get(0).text()).isEqualTo("no price of water");
    assertThat(cost.known()).hasToString("7.38 EUR");
    assertThat(cost.toString()).contains("no price").contains("total without [water]");
    assertThat(Cost.of(turnovers(), withWater()).advice()).isEmpty();
  }

  @Test
  void energyAndWorkCount() {
    Cost cost =
        Cost.of(turnovers(), withWater())
            .withEnergy(kilojoules(9000), Money.of("0.30", "EUR"))
            .withWork(minutes(45), Money.of("24", "EUR"));
    assertThat(cost.total().orElseThrow()).hasToString("26.13 EUR");
    assertThat(cost.others()).extracting(Cost.Other::name).containsExactly("energy", "work");
    assertThatThrownBy(() -> cost.withWork(minutes(-1), Money.of("24", "EUR")))
        .isInstanceOf(BakeryException.class);
  }

  @Test
  void moneyOfTwoCurrenciesHasNoSumAndWhatCanNotBeIsRefused() {
    assertThatThrownBy(() -> Money.of("1", "EUR").plus(Money.of("1", "USD")))
        .hasMessageContaining("two currencies");
    assertThatThrownBy(() -> prices().with(FLOUR, Money.of("1", "USD"), kilograms(1)))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> Money.of("1,20", "EUR")).hasMessageContaining("1.29");
    assertThatThrownBy(() -> Money.of("1", "XXXX")).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> prices().withYield(APPLE, percent(0)))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> prices().with(FLOUR, Money.of("1", "EUR"), grams(0)))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> Money.of("1", "EUR").dividedBy(0)).isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> Cost.of(turnovers(), withWater()).shareOf(Money.of("0", "EUR")))
        .isInstanceOf(BakeryException.class);
    assertThat(Money.of("1.005", "EUR")).hasToString("1.01 EUR");
    assertThat(Money.of("100.5", "JPY")).hasToString("101 JPY");
    assertThat(Money.of("2", "EUR").times(BigDecimal.TEN)).isEqualTo(Money.of("20", "EUR"));
  }

  @Property(tries = 50)
  void theCostIsLinearInTheBatchAndPiecesMakeItUp(
      @ForAll @DoubleRange(min = 0.1, max = 50) double factor,
      @ForAll @IntRange(min = 1, max = 300) int pieces) {
    Cost one = Cost.of(turnovers(), withWater());
    Cost many = Cost.of(turnovers().times(factor), withWater());
    double total = many.total().orElseThrow().amount().doubleValue();
    assertThat(total)
        .isCloseTo(factor * one.total().orElseThrow().amount().doubleValue(), within(1e-9 * total));
    assertThat(pieces * many.perPiece(pieces).orElseThrow().amount().doubleValue())
        .isCloseTo(total, within(1e-9 * total));
  }

  @Test
  void theShoppingListTakesWhatIsOnHandAndWholePackages() {
    ShoppingList list =
        ShoppingList.of(
            List.of(turnovers(), turnovers().times(2)),
            prices(),
            Map.of(FLOUR, kilograms(1), BUTTER, kilograms(2)));
    assertThat(list.items())
        .extracting(ShoppingList.Item::ingredient)
        .containsExactly(FLOUR, BUTTER, APPLE);
    ShoppingList.Item flour = list.items().get(0);
    assertThat(flour.needed()).isEqualTo(kilograms(3));
    assertThat(flour.toBuy()).isEqualTo(kilograms(2));
    assertThat(flour.kind()).isEqualTo(Role.FLOUR);
    assertThat(flour.toCarry().orElseThrow().count()).isEqualTo(2);
    assertThat(flour.toCarry().orElseThrow().pack().mass()).isEqualTo(kilograms(1));
    ShoppingList.Item butter = list.items().get(1);
    assertThat(butter.toBuy().value()).isZero();
    assertThat(butter.toCarry()).isEmpty();
    ShoppingList.Item apple = list.items().get(2);
    assertThat(apple.toBuy().in(GRAM)).isCloseTo(3000, within(1e-6));
    assertThat(apple.toCarry().orElseThrow().count()).isEqualTo(3);
    assertThat(list.price().orElseThrow()).hasToString("8.40 EUR");
    assertThat(list.toString())
        .contains("flour:")
        .contains("2 x 1000 g")
        .contains("cups")
        .doesNotContain("water")
        .doesNotContain("butter");
  }

  @Test
  void thePackageThatIsCheapestForWhatIsMissingIsTaken() {
    ShoppingList list = ShoppingList.of(List.of(turnovers().times(22)), prices(), Map.of());
    ShoppingList.Packs packs = list.items().get(0).toCarry().orElseThrow();
    assertThat(packs.pack().mass()).isEqualTo(kilograms(25));
    assertThat(packs.count()).isEqualTo(1);
    assertThat(packs.over()).isEqualTo(kilograms(3));
    assertThat(packs.price()).hasToString("20.00 EUR");
  }

  @Test
  void whatHasNoPackageIsListedWithoutOneAndTheSumSaysSo() {
    ShoppingList list = ShoppingList.of(List.of(turnovers()), PriceList.in(EUR), Map.of());
    assertThat(list.items()).allSatisfy(i -> assertThat(i.toCarry()).isEmpty());
    assertThat(list.price()).isEmpty();
    assertThatThrownBy(() -> ShoppingList.of(List.of(), prices(), Map.of()))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(
            () -> ShoppingList.of(List.of(turnovers()), prices(), Map.of(FLOUR, grams(-1))))
        .isInstanceOf(BakeryException.class);
  }

  @Test
  void everyResultOfTheLabelTravelsThroughAStreamUnchanged() throws Exception {
    List<Serializable> results =
        List.of(
            prices(),
            Cost.of(turnovers(), withWater()),
            ShoppingList.of(List.of(turnovers()), prices(), Map.of()),
            ScalingSheet.of(turnovers().formula(), List.of(kilograms(1))),
            Nutrition.of(turnovers()).withWaterLost(grams(100)).withUptake(BUTTER, grams(5)),
            Nutrition.of(turnovers()).per100Grams(),
            IngredientList.of(turnovers(), LabelScheme.EU)
                .emphasising(APPLE)
                .compound(BUTTER, "cream", "cultures")
                .withWaterLost(grams(100)));
    for (Serializable result : results) {
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
        out.writeObject(result);
      }
      try (ObjectInputStream in =
          new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
        Object copy = in.readObject();
        assertThat(copy).isEqualTo(result).hasSameHashCodeAs(result);
        assertThat(copy.toString()).isEqualTo(result.toString());
      }
    }
  }

  @Test
  void oneRecipeStandsAtFiveSizes() {
    Formula formula = turnovers().formula();
    ScalingSheet sheet =
        ScalingSheet.of(
            formula,
            List.of(kilograms(1), kilograms(2), kilograms(3.5), kilograms(5), kilograms(10)));
    assertThat(sheet.batches()).hasSize(5);
    assertThat(sheet.batches().get(3).dough()).isEqualTo(kilograms(5));
    String[] lines = sheet.rounded(grams(1)).toString().split("\n");
    assertThat(lines[0]).isEqualTo("apple turnovers");
    assertThat(lines[1].trim().split("\\s{2,}")).hasSize(6);
    assertThat(lines).hasSize(3 + 4);
    assertThatThrownBy(
            () ->
                new ScalingSheet(
                    List.of(turnovers(), Formula.byWeight("x", f -> f.line(FLOUR, grams(100))))))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> new ScalingSheet(List.of())).isInstanceOf(BakeryException.class);
  }

  @Test
  void eggsAreBoughtInEggsAndACupOfFlourSaysHowItIsFilled() {
    Batch batch =
        Formula.byWeight(
            "enriched",
            f ->
                f.line("bread flour", grams(807))
                    .line("water", grams(300))
                    .line("egg", grams(101)));
    String list =
        ShoppingList.of(
                List.of(batch),
                PriceList.in(Currency.getInstance("EUR")),
                Map.<Ingredient, Amount<Mass>>of())
            .toString();
    // 101 g are two eggs of 50 g and a little more; 807 g are 6.83 spooned cups of 118.1 g
    assertThat(list).containsPattern("whole egg +101 g +3 large");
    assertThat(list).containsPattern("bread flour +807 g +6 3/4 cups, spooned");
  }
}
