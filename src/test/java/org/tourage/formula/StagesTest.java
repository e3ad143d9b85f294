package org.tourage.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;

/** Stages by name: weighed lines, questions by stage and role, builds that take builds. */
class StagesTest {
  private static final Catalogue CATALOGUE = Catalogue.builtIn();
  private static final Ingredient FLOUR = CATALOGUE.require("bread flour");
  private static final Ingredient RYE = CATALOGUE.require("medium rye flour");
  private static final Ingredient WATER = CATALOGUE.require("water");

  private static Batch crescent() {
    return FormulaTest.crescent().forFlour(kilograms(1));
  }

  private static StageDraft<Mass> draft(String name, double flour, double water) {
    return StageDraft.<Mass>of(StageKind.PREFERMENT, name)
        .with(RYE, grams(flour))
        .with(WATER, grams(water));
  }

  @Test
  void eachLineOfABatchComesWithItsStageAndItsMass() {
    List<WeighedLine> lines = crescent().lines();
    assertThat(lines).hasSameSizeAs(crescent().formula().lines());
    assertThat(lines.get(0)).hasToString("Poolish: bread flour 200 g");
    assertThat(lines.get(0).kind()).isEqualTo(StageKind.PREFERMENT);
    assertThat(lines.get(0).ingredient()).isEqualTo(FLOUR);
    assertThat(lines).allSatisfy(line -> assertThat(line.toWeigh()).isEqualTo(line.mass()));
    assertThat(lines.stream().mapToDouble(l -> l.mass().in(GRAM)).sum())
        .isCloseTo(crescent().total().in(GRAM), within(1e-9));
    Batch rounded = crescent().rounded(grams(1));
    assertThat(rounded.lines()).extracting(WeighedLine::mass).isEqualTo(rounded.weights());
  }

  @Test
  void aFormulaAnswersByStageAndRole() {
    Formula formula = FormulaTest.crescent();
    assertThat(formula.has(Role.FAT)).isTrue();
    assertThat(formula.has(Role.FAT, StageKind::inDough)).isFalse();
    assertThat(formula.has(Role.EGG)).isFalse();
    assertThat(formula.has(FLOUR)).isTrue();
    Ingredient syrup = CATALOGUE.require("maple syrup");
    assertThat(formula.has(syrup)).isFalse();
    assertThat(formula.has(syrup, kind -> true)).isTrue();
    assertThat(formula.has(StageKind.ROLL_IN)).isTrue();
    assertThat(formula.percent(FLOUR, "Poolish")).isEqualTo(percent(20));
    assertThat(formula.percent(FLOUR, "Poolish", "Final dough")).isEqualTo(percent(100));
    assertThat(formula.percent(WATER, "Seeds")).isEqualTo(percent(4));
    assertThat(formula.percent(syrup, kind -> true)).isEqualTo(percent(3));
    assertThat(formula.percent(Role.FLOUR)).isEqualTo(percent(100));
    assertThat(formula.percent(Role.FAT, StageKind::inDough)).isEqualTo(percent(0));
    assertThatThrownBy(() -> formula.percent(FLOUR, "Biga"))
        .hasMessageContaining("no such stage")
        .hasMessageContaining("Poolish, Seeds");
  }

  @Test
  void aBatchAnswersByStageAndRole() {
    Batch batch = crescent();
    assertThat(batch.massOf(FLOUR, "Poolish")).isEqualTo(grams(200));
    assertThat(batch.massOf("bread flour", "Final dough")).isEqualTo(grams(800));
    assertThat(batch.massOf(FLOUR, "Seeds")).isEqualTo(grams(0));
    assertThat(batch.massOf(Role.FAT)).isEqualTo(grams(500));
    assertThat(batch.massOf(Role.FAT, StageKind::inDough)).isEqualTo(grams(0));
    assertThat(batch.massOf(Role.FLOUR, "Poolish")).isEqualTo(grams(200));
    assertThatThrownBy(() -> batch.massOf(FLOUR, "Biga")).hasMessageContaining("no such stage");
  }

  @Test
  void aStageOfAnotherFormulaIsRefusedRatherThanWeighedAsNothing() {
    Stage foreign =
        Batch.ofStages("x", List.of(draft("Poolish", 10, 10))).formula().stage("Poolish");
    assertThatThrownBy(() -> crescent().weightOf(foreign))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("not a stage of this formula");
  }

  @Test
  void aLineThatIsNotThereIsRefused() {
    int size = crescent().formula().lines().size();
    for (int index : new int[] {-1, size, Integer.MAX_VALUE}) {
      assertThatThrownBy(() -> crescent().weight(index))
          .isInstanceOf(BakeryException.class)
          .hasMessageContaining("line " + index)
          .hasMessageContaining("0 to " + (size - 1));
    }
    assertThatThrownBy(() -> crescent().rounded(grams(1)).weight(size))
        .isInstanceOf(BakeryException.class);
  }

  @Test
  void aFormulaIsMadeOfPlainPartsInPercentOrInMasses() {
    Batch masses =
        Batch.ofStages(
            "rye",
            List.of(
                draft("First", 50, 50),
                draft("Second", 150, 120).taking("First"),
                StageDraft.<Mass>of(StageKind.FINAL_DOUGH, "Dough")
                    .with(FLOUR, grams(300))
                    .with(WATER, grams(180))));
    Formula percents =
        Formula.ofStages(
            "rye",
            List.of(
                StageDraft.<Dimensionless>of(StageKind.PREFERMENT, "First")
                    .with(RYE, percent(10))
                    .with(WATER, percent(10)),
                StageDraft.<Dimensionless>of(StageKind.PREFERMENT, "Second")
                    .taking("First")
                    .with(RYE, percent(30))
                    .with(WATER, percent(24)),
                StageDraft.<Dimensionless>of(StageKind.FINAL_DOUGH, "Dough")
                    .with(FLOUR, percent(60))
                    .with(WATER, percent(36))));
    assertThat(masses.flour()).isEqualTo(grams(500));
    assertThat(masses.formula()).isEqualTo(percents);
    assertThat(percents.stage("Dough").takes()).containsExactly("Second");
    assertThat(percents.prefermentedFlour()).isEqualTo(percent(40));
    assertThat(masses.wholeWeightOf(percents.stage("Dough"))).isEqualTo(grams(850));
    assertThat(draft("Second", 1, 2).taking("First").taking("Mother", grams(5)))
        .hasToString("Second: all of First, 5 g of Mother, 1 g medium rye flour, 2 g water");
  }

  private static Batch keptBack() {
    // 200 g first, of which 150 g go on and 50 g are the mother of the next day
    return Batch.ofStages(
        "kept back",
        List.of(
            draft("First", 100, 100),
            draft("Second", 200, 150).taking("First", grams(150)),
            StageDraft.<Mass>of(StageKind.FINAL_DOUGH, "Dough")
                .taking("Second")
                .with(FLOUR, grams(225))
                .with(WATER, grams(100))));
  }

  @Test
  void aBuildThatTakesAPartLeavesTheRestOutOfTheFormula() {
    Batch batch = keptBack();
    Formula formula = batch.formula();
    assertThat(batch.flour()).isEqualTo(grams(75 + 200 + 225));
    assertThat(formula.percent(WATER)).isEqualTo(percent((75 + 150 + 100) / 5.0));
    Stage first = formula.stage("First");
    assertThat(batch.wholeWeightOf(first)).isEqualTo(grams(150));
    assertThat(batch.madeOf(first)).isEqualTo(grams(200));
    assertThat(batch.wholeWeightOf(formula.stage("Second"))).isEqualTo(grams(500));
    assertThat(batch.lines().get(0).mass()).isEqualTo(grams(75));
    assertThat(batch.lines().get(0).toWeigh()).isEqualTo(grams(100));
    assertThat(batch.times(2).madeOf(first)).isEqualTo(grams(400));
    assertThat(batch.toString().replaceAll(" +", " "))
        .contains(
            "First\n medium rye flour 20.0 100 g\n water 20.0 100 g\n = first 200 g\n of it kept back 50 g")
        .contains("Second\n of First 150 g\n")
        .contains("Dough\n all of Second 500 g\n");
  }

  @Test
  void whatIsKeptBackOfALaterBuildIsKeptBackOfTheEarlierToo() {
    Batch batch =
        Batch.ofStages(
            "twice",
            List.of(
                draft("First", 50, 50),
                draft("Second", 100, 100).taking("First", grams(80)),
                StageDraft.<Mass>of(StageKind.FINAL_DOUGH, "Dough")
                    .takingShare("Second", percent(50))
                    .with(FLOUR, grams(300))));
    Stage first = batch.formula().stage("First");
    // 80 of 100 g, of which half goes on
    assertThat(batch.wholeWeightOf(first)).isEqualTo(grams(40));
    assertThat(batch.madeOf(first)).isEqualTo(grams(100));
    assertThat(batch.wholeWeightOf(batch.formula().stage("Second"))).isEqualTo(grams(140));
    assertThat(batch.flour()).isEqualTo(grams(20 + 50 + 300));
  }

  @Test
  void aStageCanGoIntoTwoOthersInParts() {
    Batch batch =
        Batch.ofStages(
            "old dough and sour",
            List.of(
                draft("Mother", 60, 40),
                draft("Sour", 100, 100).taking("Mother", grams(30)),
                StageDraft.<Mass>of(StageKind.FINAL_DOUGH, "Dough")
                    .taking("Sour")
                    .taking("Mother", grams(70))
                    .with(FLOUR, grams(340))));
    assertThat(batch.flour()).isEqualTo(grams(500));
    assertThat(batch.dough()).isEqualTo(grams(640));
    assertThat(batch.formula().stage("Dough").taken().get(1)).hasToString("70 % of Mother");
    assertThat(batch.wholeWeightOf(batch.formula().stage("Dough"))).isEqualTo(grams(640));
    assertThat(batch.toString()).contains("of Mother");
  }

  private static void refused(String words, StageDraft<?>... drafts) {
    @SuppressWarnings("unchecked")
    List<StageDraft<Mass>> list = (List<StageDraft<Mass>>) (List<?>) Arrays.asList(drafts);
    assertThatThrownBy(() -> Batch.ofStages("x", list))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining(words)
        .extracting(e -> ((BakeryException) e).reason())
        .isEqualTo(Reason.INCONSISTENT);
  }

  @Test
  void stagesInARingAreRefusedWithTheRing() {
    refused(
        "\"First\" takes \"Second\" takes \"First\"",
        draft("First", 10, 10).taking("Second"),
        draft("Second", 10, 10).taking("First"));
    assertThatThrownBy(() -> draft("First", 10, 10).taking("First"))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("no stage takes itself: \"First\"");
    StageDraft<?>[] long1 = new StageDraft<?>[20_000];
    for (int i = 0; i < long1.length; i++) {
      long1[i] = draft("s" + i, 1, 1).taking("s" + (i + 1) % long1.length);
    }
    refused("takes … takes", long1);
  }

  @Test
  void noMoreOfAStageIsTakenThanThereIs() {
    refused(
        "250 g wanted, 200 g made",
        draft("First", 100, 100),
        draft("Second", 10, 10).taking("First", grams(250)));
    refused(
        "more of \"First\" is taken",
        draft("First", 100, 100),
        draft("Second", 10, 10).taking("First"),
        draft("Third", 10, 10).taking("First", grams(1)));
    refused("no such stage to take", draft("First", 100, 100).taking("Zero"));
    refused(
        "twice",
        draft("First", 100, 100),
        draft("Second", 10, 10).taking("First", grams(5)).taking("First", grams(5)));
    refused("two stages have one name", draft("First", 1, 1), draft("First", 1, 1));
    assertThatThrownBy(() -> draft("Second", 1, 1).taking("First", grams(0)))
        .hasMessageContaining("that much of \"First\" can't be taken: 0 g");
    assertThatThrownBy(() -> draft("Second", 1, 1).takingShare("First", percent(101)))
        .hasMessageContaining("101 %");
    assertThatThrownBy(() -> draft(" ", 1, 1)).hasMessageContaining("needs a name");
  }

  @Test
  void aPartOfWhatIsTakenOutOfTheOverallDoughIsRefused() {
    assertThatThrownBy(
            () ->
                Formula.byPercent(
                    "x",
                    f ->
                        f.line(FLOUR, percent(100))
                            .line("water", percent(60))
                            .preferment(Preferment.poolish(percent(30)))
                            .takes("Poolish", percent(20))))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("goes on whole");
  }

  @Test
  void aLevainIsBuiltByMassAndHydration() {
    Levain levain =
        Levain.seed("Mother", RYE, WATER, grams(20), percent(100))
            .build("First", grams(120), percent(100))
            .build("Second", grams(100), grams(600), percent(80));
    assertThat(levain.flour().in(GRAM)).isCloseTo(600 / 1.8, within(1e-9));
    assertThat(levain.mass()).isEqualTo(grams(600));
    assertThat(levain)
        .hasToString("Mother 20 g at 100 %, First 120 g at 100 %, Second 600 g at 80 %");
    Batch batch =
        Formula.byWeight(
            "rye",
            f -> {
              levain.stages().forEach(f::stage);
              f.line(FLOUR, grams(1000 - 600 / 1.8)).line(WATER, grams(400));
            });
    assertThat(batch.flour()).isEqualTo(kilograms(1));
    Formula formula = batch.formula();
    assertThat(formula.stage("Second").takes()).containsExactly("First");
    assertThat(formula.stage("Final dough").takes()).containsExactly("Second");
    // fresh flour: 600/1.8 − 50, fresh water: 600·0.8/1.8 − 50
    assertThat(batch.massOf(RYE, "Second").in(GRAM)).isCloseTo(600 / 1.8 - 50, within(1e-9));
    assertThat(batch.massOf(WATER, "Second").in(GRAM)).isCloseTo(480 / 1.8 - 50, within(1e-9));
    assertThat(batch.wholeWeightOf(formula.stage("Second"))).isEqualTo(grams(600));
    assertThat(batch.madeOf(formula.stage("First"))).isEqualTo(grams(120));
    assertThat(batch.madeOf(formula.stage("Mother"))).isEqualTo(grams(20));
    assertThat(formula.prefermentedFlour().in(PERCENT)).isCloseTo(100 / 3.0, within(1e-9));
  }

  @Test
  void aBuildThatCannotHoldWhatItTakesIsRefusedWithTheFigures() {
    Levain seed = Levain.seed("Mother", RYE, WATER, grams(100), percent(100));
    assertThatThrownBy(() -> seed.build("First", grams(120), percent(10)))
        .hasMessageContaining("100 g at 100 % into 120 g at 10 %");
    assertThatThrownBy(() -> seed.build("First", grams(101), grams(500), percent(100)))
        .hasMessageContaining("there are 100 g of it");
    assertThatThrownBy(() -> seed.build("First", grams(0), percent(100)))
        .isInstanceOf(BakeryException.class);
    assertThatThrownBy(() -> seed.build("First", grams(500), percent(-1)))
        .hasMessageContaining("-1 %");
  }

  @Test
  void otherFloursCanFeedALaterBuild() {
    List<StageDraft<Mass>> stages =
        Levain.seed("Mother", RYE, WATER, grams(50), percent(50))
            .withFlour(FLOUR)
            .withLiquid(CATALOGUE.require("whole milk"))
            .build("Sweet", grams(200), percent(50))
            .stages();
    assertThat(stages.get(1).parts())
        .extracting(p -> p.ingredient().name())
        .containsExactly("bread flour", "whole milk");
    assertThat(stages.get(0).parts().get(0).ingredient()).isEqualTo(RYE);
  }

  @Test
  void aStarchCountsAsFlourInAnyStageWhereItIsDeclared() {
    Batch batch =
        Formula.byWeight(
            "gluten-free",
            f ->
                f.stage(
                        StageKind.SOAKER,
                        "Gel",
                        s -> s.flour("cornstarch", grams(50)).line("water", grams(200)))
                    .line("rice flour", grams(450)));
    assertThat(batch.flour()).isEqualTo(grams(500));
    assertThat(
            Batch.ofStages(
                    "x",
                    List.of(
                        StageDraft.<Mass>of(StageKind.FINAL_DOUGH, "d")
                            .withFlour(CATALOGUE.require("cornstarch"), grams(20))))
                .flour())
        .isEqualTo(grams(20));
  }

  @Test
  void aThousandStagesAndAThousandFeedingsPrintAtOnce() {
    List<StageDraft<Mass>> chain = new ArrayList<>();
    for (int i = 0; i < 1000; i++) {
      StageDraft<Mass> draft = draft("Build " + i, 10, 10);
      chain.add(i == 0 ? draft : draft.taking("Build " + (i - 1)));
    }
    Feeding[] feedings = new Feeding[1000];
    Arrays.fill(feedings, Feeding.parts(1, 4, 4));
    Assertions.assertTimeout(
        Duration.ofSeconds(5),
        () -> {
          Batch batch = Batch.ofStages("chain", chain);
          assertThat(batch.toString()).contains("all of Build 998").contains("= build 999");
          assertThat(batch.wholeWeightOf(batch.formula().stage("Build 999")))
              .isEqualTo(kilograms(20));
          Batch fed =
              Formula.byPercent(
                      "fed",
                      f ->
                          f.line(FLOUR, percent(100))
                              .line(WATER, percent(60))
                              .preferment(Preferment.levain(percent(20), percent(100), feedings)))
                  .forFlour(kilograms(1));
          assertThat(fed.toString()).contains("all of Levain build 999");
          Stage last = fed.formula().stage("Levain build 1000");
          assertThat(fed.wholeWeightOf(last).in(GRAM)).isCloseTo(400, within(1e-6));
        });
  }

  @Test
  void aHundredThousandLinesAreWorkedInOnePass() {
    List<StageDraft.Part<Mass>> parts = new ArrayList<>();
    for (int i = 0; i < 100_000; i++) {
      Ingredient own =
          Ingredient.builder("own-" + i, "own " + i)
              .role(Role.FLOUR)
              .composition(FLOUR.composition())
              .build();
      parts.add(new StageDraft.Part<>(own, grams(1), true));
    }
    StageDraft<Mass> dough = new StageDraft<>("Dough", StageKind.FINAL_DOUGH, parts, List.of());
    Assertions.assertTimeout(
        Duration.ofSeconds(10),
        () -> {
          Batch batch = Batch.ofStages("many", List.of(dough));
          assertThat(batch.lines()).hasSize(100_000);
          assertThat(batch.formula().overall()).hasSize(100_000);
          assertThat(batch.weightOf(batch.formula().stage("Dough"))).isEqualTo(kilograms(100));
          assertThat(batch.rounded(grams(1)).toString()).contains("own 99999");
        });
  }
}
