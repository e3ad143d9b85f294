package org.tourage.ingredient;

import static org.assertj.core.api.Assertions.assertThat;
import static org.tourage.quantity.Amounts.percent;

import java.util.List;
import org.junit.jupiter.api.Test;

/** One's own version of an ingredient goes by every name that the ingredient had. */
class CatalogueAliasTest {
  private static Ingredient own(String id, double water) {
    return Ingredient.builder(id, "own " + id)
        .role(Role.FLOUR)
        .composition(Composition.builder().water(percent(water)).build())
        .build();
  }

  @Test
  void oneOfItsOwnKeepsTheNamesOfTheTable() {
    Ingredient mine = own("bread-flour", 11);
    Catalogue catalogue = Catalogue.builtIn().with(mine);
    for (String name : List.of("bread flour", "bread-flour", "strong flour", "own bread-flour")) {
      assertThat(catalogue.find(name)).as(name).containsSame(mine);
    }
    assertThat(Catalogue.builtIn().require("strong flour").name()).isEqualTo("bread flour");
  }

  @Test
  void aNewerVersionKeepsTheFurtherNamesOfTheOlder() {
    Ingredient older = own("mill-flour", 11);
    Ingredient newer = own("mill-flour", 14);
    Catalogue catalogue =
        Catalogue.builtIn().with(older, List.of("the white one", "sack 7")).with(newer);
    for (String name : List.of("mill-flour", "the white one", "sack 7")) {
      assertThat(catalogue.find(name)).as(name).containsSame(newer);
    }
    assertThat(catalogue.all().stream().filter(i -> i.id().equals("mill-flour")))
        .containsExactly(newer);
  }
}
