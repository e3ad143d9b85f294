package org.tourage.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.GRAM;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.formula.StageKind;
import org.tourage.ingredient.Allergen;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;

class NutritionLaws {
  private static final List<Ingredient> ALL = new ArrayList<>(Catalogue.builtIn().all());
  private static final List<Ingredient> FLOURS =
      ALL.stream().filter(i -> i.is(Role.FLOUR)).toList();

  /** A dough with every kind of stage, a glaze and a dusting, of anything in the catalogue. */
  @Provide
  Arbitrary<Batch> batches() {
    return Combinators.combine(
            Arbitraries.of(FLOURS),
            Arbitraries.of(ALL).list().ofSize(7),
            Arbitraries.doubles().between(1, 400).list().ofSize(7))
        .as(
            (flour, others, masses) ->
                Formula.byWeight(
                    "any",
                    f ->
                        f.line(flour, grams(500))
                            .line("water", grams(300))
                            .line(others.get(0), grams(masses.get(0)))
                            .stage(
                                StageKind.SOAKER,
                                "Soaker",
                                s -> s.line(others.get(1), grams(masses.get(1))))
                            .stage(
                                StageKind.PREFERMENT,
                                "Sponge",
                                s ->
                                    s.line(flour, grams(100))
                                        .line(others.get(4), grams(masses.get(4))))
                            .stage(
                                StageKind.FILLING,
                                "Filling",
                                s -> s.line(others.get(5), grams(masses.get(5))))
                            .rollIn(others.get(2), grams(masses.get(2)))
                            // glaze and dusting
                            .finish(others.get(3), grams(masses.get(3)))
                            .finish(others.get(6), grams(masses.get(6)))));
  }

  private static double atLeast(NutritionFacts facts, Nutrient nutrient) {
    return facts.figure(nutrient).atLeast().in(GRAM);
  }

  @Property(tries = 100)
  void nutrientsAreLinearInTheBatch(
      @ForAll("batches") Batch batch, @ForAll @DoubleRange(min = 0.1, max = 20) double factor) {
    NutritionFacts one = Nutrition.of(batch).whole();
    NutritionFacts many = Nutrition.of(batch.times(factor)).whole();
    for (Nutrient nutrient : Nutrient.values()) {
      double expected = factor * atLeast(one, nutrient);
      assertThat(atLeast(many, nutrient)).isCloseTo(expected, within(1e-9 * (1 + expected)));
      assertThat(many.figure(nutrient).unknownIn()).isEqualTo(one.figure(nutrient).unknownIn());
    }
  }

  @Property(tries = 100)
  void aPieceTimesThePiecesIsTheBatch(
      @ForAll("batches") Batch batch, @ForAll @IntRange(min = 1, max = 500) int pieces) {
    Nutrition nutrition = Nutrition.of(batch);
    NutritionFacts piece = nutrition.perPiece(pieces);
    for (Nutrient nutrient : Nutrient.values()) {
      double whole = atLeast(nutrition.whole(), nutrient);
      assertThat(pieces * atLeast(piece, nutrient)).isCloseTo(whole, within(1e-9 * (1 + whole)));
    }
    assertThat(pieces * piece.mass().in(GRAM)).isCloseTo(nutrition.mass().in(GRAM), within(1e-6));
  }

  @Property(tries = 100)
  void losingWaterChangesNoNutrientButItsConcentration(
      @ForAll("batches") Batch batch, @ForAll @DoubleRange(min = 0, max = 299) double lost) {
    Nutrition raw = Nutrition.of(batch);
    Nutrition baked = raw.withWaterLost(grams(lost));
    double denser = raw.mass().in(GRAM) / baked.mass().in(GRAM);
    for (Nutrient nutrient : Nutrient.values()) {
      double whole = atLeast(raw.whole(), nutrient);
      assertThat(atLeast(baked.whole(), nutrient)).isCloseTo(whole, within(1e-9 * (1 + whole)));
      double before = atLeast(raw.per100Grams(), nutrient);
      assertThat(atLeast(baked.per100Grams(), nutrient))
          .isCloseTo(denser * before, within(1e-9 * (1 + before)));
    }
  }

  @Property(tries = 100)
  void theAllergensOfAProductAreTheUnionOverAllStagesAndTheFinishAndEachIsMarked(
      @ForAll("batches") Batch batch, @ForAll LabelScheme scheme) {
    Set<Allergen> union = EnumSet.noneOf(Allergen.class);
    batch.formula().lines().forEach(l -> union.addAll(l.ingredient().allergens()));
    union.removeIf(
        a -> (scheme == LabelScheme.EU ? a.europeanUnion() : a.unitedStates()).isEmpty());
    IngredientList list = IngredientList.of(batch, scheme);
    assertThat(list.allergens()).isEqualTo(union);
    Set<Allergen> marked = EnumSet.noneOf(Allergen.class);
    MarkedText text = list.text();
    for (MarkedText.Span span : text.spans()) {
      marked.add(span.allergen());
      assertThat(text.text().substring(span.start(), span.end()))
          .startsWithIgnoringCase(span.allergen().word());
    }
    assertThat(marked).isEqualTo(union);
    assertThat(list.contains().isPresent()).isEqualTo(!union.isEmpty());
  }

  @Property(tries = 100)
  void theListIsInDescendingOrderAndEveryIngredientIsOnItOnce(@ForAll("batches") Batch batch) {
    List<IngredientList.Entry> entries = IngredientList.of(batch, LabelScheme.US).entries();
    assertThat(entries).extracting(e -> -e.counted().in(GRAM)).isSorted();
    assertThat(entries).extracting(IngredientList.Entry::ingredient).doesNotHaveDuplicates();
    assertThat(entries.stream().mapToDouble(e -> e.mixed().in(GRAM)).sum())
        .isCloseTo(batch.total().in(GRAM), within(1e-6));
  }
}
