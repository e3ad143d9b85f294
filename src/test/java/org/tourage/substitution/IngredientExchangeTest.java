package org.tourage.substitution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
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
import org.tourage.formula.Line;
import org.tourage.formula.Preferment;
import org.tourage.formula.Totals;
import org.tourage.ingredient.Allergen;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Origin;
import org.tourage.ingredient.Role;

class IngredientExchangeTest {
  private static final Catalogue CATALOGUE = Catalogue.builtIn();

  private static Ingredient the(String name) {
    return CATALOGUE.require(name);
  }

  private static Formula brioche() {
    return Formula.byPercent(
        "rich dough",
        f ->
            f.line("bread flour", percent(100))
                .line("water", percent(20))
                .line("whole milk", percent(25))
                .line("whole egg", percent(15))
                .line("sugar", percent(12))
                .line("unsalted butter", percent(15))
                .line("canola oil", percent(3))
                .line("salt", percent(2))
                .line("fresh yeast", percent(4))
                .preferment(Preferment.poolish(percent(15)))
                .rollIn("unsalted butter", percent(40)));
  }

  @Test
  void milkForSoyDrinkKeepsWaterFatAndSugarsAndTellsTheAllergens() {
    IngredientExchange exchange =
        IngredientExchange.of(brioche(), the("whole milk"), the("almond drink, unsweetened"));
    Totals before = Totals.of(exchange.before());
    Totals after = Totals.of(exchange.after());
    assertThat(after.water().in(PERCENT)).isCloseTo(before.water().in(PERCENT), within(1e-9));
    assertThat(after.fat().in(PERCENT)).isCloseTo(before.fat().in(PERCENT), within(1e-9));
    assertThat(after.sugars().in(PERCENT)).isCloseTo(before.sugars().in(PERCENT), within(1e-9));
    assertThat(exchange.allergensEntered()).containsExactly(Allergen.ALMOND);
    // butter still brings milk
    assertThat(exchange.allergensLeft()).isEmpty();
    assertThat(exchange.advice()).extracting(Advice::code).containsExactly("ALLERGEN_ENTERS");
    assertThat(exchange.comparison()).contains("true hydration", "before", "after", "protein");
    assertThat(exchange.toString())
        .startsWith(
            "whole milk becomes almond drink, unsweetened, × 0.908; kept: water, fat, sugars");
    assertThat(exchange.working().toString()).contains("water kept", "granulated sugar");
  }

  @Test
  void theSaltFollowsASaltedButter() {
    IngredientExchange exchange =
        IngredientExchange.of(brioche(), the("unsalted butter"), the("salted butter"));
    assertThat(exchange.after().percent("salt").in(PERCENT)).isLessThan(2);
    assertThat(Totals.of(exchange.after()).salt().in(PERCENT))
        .isCloseTo(Totals.of(brioche()).salt().in(PERCENT), within(1e-9));
    assertThat(exchange.ratio()).isCloseTo(1, within(1e-9));
  }

  @Test
  void aLeanerBlockInTheRollInKeepsItsFatAndLeavesTheWaterOfTheDough() {
    Formula plain =
        Formula.byPercent(
            "plain",
            f ->
                f.line("bread flour", percent(100))
                    .line("water", percent(55))
                    .line("salt", percent(2))
                    .rollIn("unsalted butter", percent(50)));
    IngredientExchange exchange =
        IngredientExchange.of(
            plain, the("unsalted butter"), the("plant-based pastry block, 75 % fat"));
    assertThat(exchange.after().percent("water").in(PERCENT)).isCloseTo(55, within(1e-9));
    assertThat(exchange.ratio()).isCloseTo(81.11 / 75, within(1e-9));
    assertThat(exchange.advice())
        .extracting(Advice::code)
        .contains("ROLL_IN_LEAN", "ALLERGEN_LEAVES", "ALLERGEN_CHECK");
    assertThat(exchange.advice().toString()).contains("not a claim of allergen-free");
    assertThatThrownBy(() -> IngredientExchange.of(plain, the("unsalted butter"), the("olive oil")))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("an oil can't be laminated");
    assertThatThrownBy(() -> IngredientExchange.of(plain, the("unsalted butter"), the("water")))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("water for unsalted butter");
  }

  @Test
  void honeyForSugarTakesWaterOutAndTellsSweetnessAndBrowning() {
    IngredientExchange exchange = IngredientExchange.of(brioche(), the("sugar"), the("honey"));
    assertThat(exchange.after().percent("water").in(PERCENT)).isLessThan(20);
    assertThat(exchange.advice()).extracting(Advice::code).contains("SWEETNESS", "BROWNS_SOONER");
    assertThat(exchange.conserved()).containsExactly(Conserved.WATER, Conserved.SUGARS);
  }

  @Test
  void whatTheFormulaCanNotGiveIsSaid() {
    Formula dry =
        Formula.byPercent(
            "stiff",
            f ->
                f.line("bread flour", percent(100))
                    .line("water", percent(5))
                    .line("whole egg", percent(45))
                    .line("sugar", percent(40)));
    IngredientExchange exchange = IngredientExchange.of(dry, the("sugar"), the("maple syrup"));
    assertThat(exchange.lost()).containsOnlyKeys(Conserved.WATER);
    assertThat(exchange.advice()).extracting(Advice::code).contains("NOT_CONSERVED");
    assertThat(exchange.toString()).endsWith("not kept: water");
    assertThat(Totals.of(exchange.after()).sugars().in(PERCENT))
        .isCloseTo(Totals.of(dry).sugars().in(PERCENT), within(1e-9));
  }

  @Test
  void whereALineIsMissingWaterSugarAndSaltAreAddedAndFatIsNot() {
    Formula lean =
        Formula.byPercent(
            "lean",
            f ->
                f.line("bread flour", percent(100))
                    .line("whole milk", percent(70))
                    .line("salted butter", percent(20)));
    IngredientExchange butter =
        IngredientExchange.of(lean, the("salted butter"), the("unsalted butter"));
    assertThat(butter.after().percent("salt").in(PERCENT)).isGreaterThan(0.2);
    IngredientExchange milk = IngredientExchange.of(lean, the("whole milk"), the("water"));
    assertThat(milk.after().percent("granulated sugar").in(PERCENT)).isGreaterThan(3);
    assertThat(milk.lost()).isEmpty();
    Formula noFat =
        Formula.byPercent(
            "no fat", f -> f.line("bread flour", percent(100)).line("whole milk", percent(70)));
    assertThat(IngredientExchange.of(noFat, the("whole milk"), the("water")).lost())
        .containsOnlyKeys(Conserved.FAT);
  }

  @Test
  void yeastIsExchangedByItsFormAndTheWaterOfFreshYeastStays() {
    IngredientExchange exchange =
        IngredientExchange.of(brioche(), the("fresh yeast"), the("instant yeast"));
    assertThat(exchange.after().percent("instant yeast").in(PERCENT)).isCloseTo(1.32, within(1e-9));
    assertThat(exchange.after().percent("water").in(PERCENT)).isGreaterThan(22);
    assertThat(exchange.working().toString()).contains("Hamelman");
  }

  @Test
  void eggGoneIsSaidAndWrongPairsAreRefused() {
    IngredientExchange exchange =
        IngredientExchange.of(brioche(), the("whole egg"), the("soy drink, unsweetened"));
    assertThat(exchange.advice()).extracting(Advice::code).contains("EGG_GONE", "ALLERGEN_ENTERS");
    assertThat(exchange.allergensLeft()).containsExactly(Allergen.EGG);
    assertThatThrownBy(() -> IngredientExchange.of(brioche(), the("honey"), the("sugar")))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("honey");
    assertThatThrownBy(() -> IngredientExchange.of(brioche(), the("bread flour"), the("sugar")))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("FlourExchange");
    assertThatThrownBy(
            () ->
                IngredientExchange.of(
                    brioche(),
                    the("sugar"),
                    the("honey"),
                    percent(120),
                    EnumSet.of(Conserved.WATER)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("120 %");
  }

  @Test
  void aWholeFormulaBecomesPlantBasedInOneCall() {
    PlantBased plants = PlantBased.of(brioche());
    assertThat(plants.after().overall())
        .allSatisfy(line -> assertThat(line.ingredient().origin()).isNotEqualTo(Origin.ANIMAL));
    assertThat(plants.exchanges()).hasSize(3);
    assertThat(plants.allergensLeft()).contains(Allergen.MILK, Allergen.EGG);
    assertThat(plants.allergensEntered()).contains(Allergen.SOY);
    assertThat(plants.advice()).extracting(Advice::code).contains("ALLERGEN_CHECK", "EGG_GONE");
    assertThat(plants.advice().toString())
        .contains("plant-based is not a claim of allergen-free, nor of free of milk allergen");
    assertThat(plants.comparison()).contains("protein");
    assertThat(plants.toString()).contains("whole milk becomes soy drink");
    assertThat(plants.working().lines()).hasSizeGreaterThan(3);
    PlantBased chosen =
        PlantBased.of(
            brioche(),
            Map.of(
                the("whole milk"), the("oat drink"),
                the("unsalted butter"), the("plant-based pastry block, 75 % fat")));
    assertThat(chosen.allergensEntered()).contains(Allergen.OAT);
    assertThat(PlantBased.of(chosen.after())).hasToString("nothing of animals in rich dough");
    Formula powder =
        Formula.byPercent(
            "powder",
            f ->
                f.line("bread flour", percent(100))
                    .line("water", percent(60))
                    .line("skimmed milk powder", percent(4)));
    assertThatThrownBy(() -> PlantBased.of(powder))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("skimmed milk powder");
  }

  @Provide
  Arbitrary<List<Ingredient>> pairs() {
    List<Ingredient> liquids =
        CATALOGUE.all().stream().filter(i -> i.is(Role.LIQUID) && !i.id().equals("water")).toList();
    return Arbitraries.of(liquids).list().ofSize(2).uniqueElements();
  }

  @Provide
  Arbitrary<List<Ingredient>> fats() {
    return Arbitraries.of(
            CATALOGUE.all().stream()
                .filter(i -> i.is(Role.FAT) && !i.name().equals("canola oil"))
                .toList())
        .list()
        .ofSize(2)
        .uniqueElements();
  }

  private static Formula with(Ingredient ingredient, double share) {
    return Formula.byPercent(
        "dough",
        f ->
            f.line("bread flour", percent(100))
                .line("water", percent(40))
                .line(ingredient, percent(share))
                .line("sugar", percent(12))
                .line("canola oil", percent(25))
                .line("salt", percent(2)));
  }

  @Property
  void liquidsKeepWhatTheySayAndReturnToTheFormula(
      @ForAll("pairs") List<Ingredient> pair,
      @ForAll @DoubleRange(min = 5, max = 30) double share) {
    thereAndBack(pair, share);
  }

  @Property
  void fatsKeepWhatTheySayAndReturnToTheFormula(
      @ForAll("fats") List<Ingredient> pair, @ForAll @DoubleRange(min = 5, max = 20) double share) {
    thereAndBack(pair, share);
  }

  private static void thereAndBack(List<Ingredient> pair, double share) {
    Formula before = with(pair.get(0), share);
    IngredientExchange there = IngredientExchange.of(before, pair.get(0), pair.get(1));
    Totals was = Totals.of(before);
    Totals is = Totals.of(there.after());
    for (Conserved kept : there.conserved()) {
      double difference =
          switch (kept) {
            case WATER -> is.water().in(PERCENT) - was.water().in(PERCENT);
            case FAT -> is.fat().in(PERCENT) - was.fat().in(PERCENT);
            case SUGARS -> is.sugars().in(PERCENT) - was.sugars().in(PERCENT);
            case SALT -> is.salt().in(PERCENT) - was.salt().in(PERCENT);
          };
      assertThat(difference).as(there.toString()).isCloseTo(0, within(1e-9));
    }
    if (there.lost().isEmpty()) {
      IngredientExchange back =
          IngredientExchange.of(
              there.after(), pair.get(1), pair.get(0), percent(100), there.conserved());
      assertThat(back.lost()).isEmpty();
      for (Line line : before.overall()) {
        assertThat(back.after().percent(line.ingredient()).in(PERCENT))
            .as(line.ingredient().name())
            .isCloseTo(line.percent().in(PERCENT), within(1e-9));
      }
    }
  }

  @Property(tries = 50)
  void anIngredientForItselfChangesNothing(
      @ForAll("pairs") List<Ingredient> pair,
      @ForAll @DoubleRange(min = 0, max = 100) double part) {
    Formula formula = with(pair.get(0), 20);
    IngredientExchange exchange =
        IngredientExchange.of(
            formula, pair.get(0), pair.get(0), percent(part), EnumSet.allOf(Conserved.class));
    assertThat(exchange.after()).isEqualTo(formula);
  }

  @Property(tries = 100)
  void aPartAndThenTheRestIsTheWhole(@ForAll @DoubleRange(min = 1, max = 99) double part) {
    Ingredient milk = the("whole milk");
    Ingredient soy = the("soy drink");
    Formula formula = with(milk, 25);
    EnumSet<Conserved> keep = EnumSet.of(Conserved.WATER, Conserved.FAT);
    Formula whole = IngredientExchange.of(formula, milk, soy, percent(100), keep).after();
    Formula some = IngredientExchange.of(formula, milk, soy, percent(part), keep).after();
    Formula rest = IngredientExchange.of(some, milk, soy, percent(100), keep).after();
    for (Line line : whole.overall()) {
      assertThat(rest.percent(line.ingredient()).in(PERCENT))
          .isCloseTo(line.percent().in(PERCENT), within(1e-9));
    }
  }

  @Property(tries = 100)
  void theUnitOfTheShareNeverMatters(@ForAll @DoubleRange(min = 0, max = 100) double part) {
    Formula formula = with(the("whole milk"), 25);
    EnumSet<Conserved> keep = EnumSet.of(Conserved.WATER, Conserved.SUGARS);
    Formula percent =
        IngredientExchange.of(formula, the("whole milk"), the("oat drink"), percent(part), keep)
            .after();
    Formula fraction =
        IngredientExchange.of(
                formula, the("whole milk"), the("oat drink"), fraction(part / 100), keep)
            .after();
    for (Line line : percent.overall()) {
      assertThat(fraction.percent(line.ingredient()).in(PERCENT))
          .isCloseTo(line.percent().in(PERCENT), within(1e-9));
    }
  }

  @Test
  void theFinishAndTheRollInDoNotMoveTheWaterOfTheDough() {
    Formula glazed =
        Formula.byPercent(
            "glazed",
            f ->
                f.line("bread flour", percent(100))
                    .line("water", percent(40))
                    .line("whole milk", percent(15))
                    .line("unsalted butter", percent(8))
                    .line("sugar", percent(10))
                    .line("canola oil", percent(2))
                    .rollIn("unsalted butter", percent(50))
                    .finish("whole milk", percent(6)));
    IngredientExchange milk =
        IngredientExchange.of(glazed, the("whole milk"), the("almond drink, unsweetened"));
    assertThat(Totals.of(milk.after()).water().in(PERCENT))
        .isCloseTo(Totals.of(glazed).water().in(PERCENT), within(1e-9));
    assertThat(Totals.of(milk.after()).fat().in(PERCENT))
        .isCloseTo(Totals.of(glazed).fat().in(PERCENT), within(1e-9));
    IngredientExchange fat =
        IngredientExchange.of(
            glazed, the("unsalted butter"), the("plant-based pastry block, 75 % fat"));
    assertThat(Totals.of(fat.after()).water().in(PERCENT))
        .isCloseTo(Totals.of(glazed).water().in(PERCENT), within(1e-9));
    assertThat(Totals.of(fat.after()).fat().in(PERCENT))
        .isCloseTo(Totals.of(glazed).fat().in(PERCENT), within(1e-9));
    Formula onTop =
        Formula.byPercent(
            "on top",
            f ->
                f.line("bread flour", percent(100))
                    .line("water", percent(60))
                    .finish("whole milk", percent(6)));
    IngredientExchange top =
        IngredientExchange.of(onTop, the("whole milk"), the("soy drink, unsweetened"));
    assertThat(top.after().percent("water").in(PERCENT)).isCloseTo(60, within(1e-12));
    assertThat(top.ratio()).isCloseTo(88.13 / 93.14, within(1e-9));
  }

  @Test
  void theFinalDoughTakesUpTheDifferenceAndThePoolishStaysAsItIs() {
    IngredientExchange sugar = IngredientExchange.of(brioche(), the("sugar"), the("honey"));
    assertThat(sugar.after().stage("Poolish")).isEqualTo(brioche().stage("Poolish"));
    assertThat(sugar.after().stage("Final dough")).isNotEqualTo(brioche().stage("Final dough"));
    FlourExchange flour =
        FlourExchange.of(brioche(), the("bread flour"), the("cake flour"), percent(40));
    Line before =
        brioche().stage("Poolish").lines().stream()
            .filter(l -> l.ingredient().equals(the("water")))
            .findFirst()
            .orElseThrow();
    assertThat(flour.after().stage("Poolish").lines()).contains(before);
  }
}
