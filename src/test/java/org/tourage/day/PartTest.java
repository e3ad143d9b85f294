package org.tourage.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.tourage.quantity.Amounts.*;

import org.junit.jupiter.api.Test;
import org.tourage.command.Main;
import org.tourage.formula.Levain;
import org.tourage.ingredient.Catalogue;

/** Parts of a day and levains are values. */
class PartTest {
  @Test
  void partsOfTheSameDayAreEqualWhetherTheyAreThereOrNot() {
    BakeDay one = BakeDay.of(Main.demo().plan());
    BakeDay two = BakeDay.of(Main.demo().plan());
    assertThat(one.water()).isEqualTo(two.water()).hasSameHashCodeAs(two.water());
    assertThat(Part.notAsked("x", "y")).isEqualTo(Part.notAsked("x", "y"));
    assertThat(Part.notAsked("x", "y")).isNotEqualTo(Part.notAsked("x", "z"));
    assertThat(one.water()).isNotEqualTo(one.rise());
  }

  @Test
  void levainsOfTheSameBuildsAreEqual() {
    assertThat(levain(100)).isEqualTo(levain(100)).hasSameHashCodeAs(levain(100));
    assertThat(levain(100)).isNotEqualTo(levain(80));
  }

  private static Levain levain(double hydration) {
    Catalogue catalogue = Catalogue.builtIn();
    return Levain.seed(
            "Mother",
            catalogue.require("bread flour"),
            catalogue.require("water"),
            grams(20),
            percent(100))
        .build("First", grams(120), percent(hydration));
  }
}
