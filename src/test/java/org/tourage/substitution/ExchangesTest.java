package org.tourage.substitution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.percent;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.tourage.advice.BakeryException;
import org.tourage.formula.Formula;
import org.tourage.formula.Line;
import org.tourage.formula.Totals;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Ingredient;

class ExchangesTest {
  private static final Ingredient BREAD = the("bread flour");
  private static final Ingredient CAKE = the("cake flour");
  private static final Ingredient WHOLE = the("whole-wheat flour");
  private static final Ingredient MILK = the("whole milk");
  private static final Ingredient OAT = the("oat drink");
  private static final Ingredient BUTTER = the("unsalted butter");
  private static final Ingredient BLOCK = the("margarine-80-unsalted");

  private static Ingredient the(String name) {
    return Catalogue.builtIn().require(name);
  }

  private static Formula dough() {
    return Formula.byPercent(
        "school bun",
        f ->
            f.line(BREAD, percent(80))
                .line(CAKE, percent(20))
                .line("water", percent(40))
                .line(MILK, percent(30))
                .line(BUTTER, percent(12))
                .line("sugar", percent(10))
                .line("salt", percent(2)));
  }

  private static void same(Formula one, Formula other) {
    assertThat(one.overall()).hasSameSizeAs(other.overall());
    for (Line line : one.overall()) {
      assertThat(other.percent(line.ingredient()).in(PERCENT))
          .as(line.toString())
          .isCloseTo(line.percent().in(PERCENT), within(1e-9));
    }
  }

  @Test
  void theOrderOfExchangesHasNoMeaning() {
    List<Exchange> wanted =
        new ArrayList<>(
            List.of(
                Exchange.of(BREAD, WHOLE),
                Exchange.of(MILK, OAT),
                Exchange.of(BUTTER, BLOCK),
                Exchange.of(CAKE, BREAD, percent(50))));
    Formula first = Exchanges.of(dough(), wanted).after();
    for (int turn = 0; turn < wanted.size(); turn++) {
      Collections.rotate(wanted, 1);
      same(Exchanges.of(dough(), wanted).after(), first);
    }
    Collections.reverse(wanted);
    same(Exchanges.of(dough(), wanted).after(), first);
  }

  @Test
  void twoFloursCanChangePlaces() {
    Exchanges swap =
        Exchanges.of(dough(), List.of(Exchange.of(BREAD, CAKE), Exchange.of(CAKE, BREAD)));
    assertThat(swap.after().percent(CAKE).in(PERCENT)).isCloseTo(80, within(1e-9));
    assertThat(swap.after().percent(BREAD).in(PERCENT)).isCloseTo(20, within(1e-9));
    assertThat(swap.parts()).hasSize(2);
    Exchanges back = swap.then(List.of(Exchange.of(BREAD, CAKE), Exchange.of(CAKE, BREAD)));
    assertThat(back.after().percent(BREAD).in(PERCENT)).isCloseTo(80, within(1e-9));
    assertThat(back.before()).isEqualTo(dough());
    assertThat(back.parts()).hasSize(4);
  }

  @Test
  void theWaterOfSeveralFloursIsTheSumOfWhatEachIsSettledToTake() {
    Exchanges both =
        Exchanges.of(dough(), List.of(Exchange.of(BREAD, WHOLE), Exchange.of(CAKE, WHOLE)));
    double sum = 0;
    for (Substitution part : both.parts()) {
      FlourExchange flour = (FlourExchange) part;
      sum += flour.settled() ? flour.waterChange().in(PERCENT) : 0;
    }
    assertThat(sum).isGreaterThan(3);
    assertThat(Totals.of(both.after()).water().in(PERCENT) - Totals.of(dough()).water().in(PERCENT))
        .isCloseTo(sum, within(1e-9));
  }

  @Property(tries = 60)
  void waterFatAndSaltAreKeptByAllTogether(
      @ForAll @DoubleRange(min = 0, max = 100) double milk,
      @ForAll @DoubleRange(min = 0, max = 100) double fat) {
    Exchanges made =
        Exchanges.of(
            dough(),
            List.of(
                Exchange.of(MILK, the("skim milk"), percent(milk)),
                Exchange.of(BUTTER, BLOCK, percent(fat))));
    Totals was = Totals.of(made.before());
    Totals is = Totals.of(made.after());
    assertThat(is.water().in(PERCENT)).isCloseTo(was.water().in(PERCENT), within(1e-9));
    for (Substitution part : made.parts()) {
      if (((IngredientExchange) part).lost().containsKey(Conserved.FAT)) {
        return;
      }
    }
    // the milk's fat has only the butter to come from, which goes itself where any of it does
    assertThat(is.fat().in(PERCENT)).isCloseTo(was.fat().in(PERCENT), within(1e-9));
  }

  @Test
  void whatHasTooLittleForAllGivesNoneAndSaysSo() {
    Ingredient salted = the("salted butter");
    Formula lean =
        Formula.byPercent(
            "lean",
            f ->
                f.line("bread flour", percent(100))
                    .line("water", percent(55))
                    .line("salt", percent(0.25))
                    .line(BUTTER, percent(10))
                    .line("lard", percent(10)));
    Exchanges made =
        Exchanges.of(lean, List.of(Exchange.of(BUTTER, salted), Exchange.of(the("lard"), salted)));
    for (Substitution part : made.parts()) {
      assertThat(((IngredientExchange) part).lost()).containsKey(Conserved.SALT);
    }
    assertThat(made.after().percent("salt").in(PERCENT)).isCloseTo(0.25, within(1e-9));
  }

  @Test
  void moreThanAllOfAnIngredientDoesNotGo() {
    assertThatThrownBy(
            () ->
                Exchanges.of(
                    dough(),
                    List.of(
                        Exchange.of(BREAD, WHOLE, percent(60)),
                        Exchange.of(BREAD, CAKE, percent(60)))))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("more than all");
    assertThat(Exchanges.of(dough(), List.of()).after()).isEqualTo(dough());
    Formula plants = Exchanges.of(dough(), List.of()).thenPlantBased().after();
    assertThat(plants).isEqualTo(PlantBased.of(dough()).after());
  }
}
