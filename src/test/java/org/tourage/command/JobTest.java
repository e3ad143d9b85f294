package org.tourage.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.tourage.quantity.Amounts.*;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.physics.Solid;
import org.tourage.sheet.BenchSheet;

class JobTest {
  @Test
  void aLineSaysTheTaskTheAirAndTheShape() {
    Job job = Job.parse("retard overnight: 12-13 h at 39 °F as slab 30 mm, until firm");
    assertThat(job.task().name()).isEqualTo("retard overnight");
    assertThat(job.task().duration()).isEqualTo(hours(13));
    assertThat(job.task().cue()).isEqualTo("until firm; look from 12 h on");
    assertThat(job.air()).isEqualTo(fahrenheit(39));
    assertThat(job.shape()).isEqualTo(Solid.slab(millimetres(30)));
    Job plain = Job.parse("mix: 10 min");
    assertThat(plain.air()).isNull();
    assertThat(plain.shape()).isNull();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "roll 45 mm | roll 45 mm across",
        "ball 8 cm | ball 80 mm across",
        "tub 20 x 12 cm | tub 200 mm across, 120 mm high",
        "tub 8 in x 12 cm | tub 203 mm across, 120 mm high",
        "box 30 x 20 x 4 cm | box 300 mm x 200 mm x 40 mm",
        "slab 1 1/2 in | slab 38.1 mm thick"
      })
  void shapesAreReadWithAUnitOnceOrForEach(String text, String solid) {
    assertThat(Job.parse("rest: 1 h as " + text).shape()).hasToString(solid);
  }

  @ParameterizedTest
  @CsvSource({
    "rest 1 h",
    "rest: 1 h as loaf 20 cm",
    "rest: 1 h as tub 20 cm",
    "rest: 1 h as slab",
    "rest: 1 h at 20 mm"
  })
  void whatCanNotBeReadIsRefused(String line) {
    assertThatThrownBy(() -> Job.parse(line)).isInstanceOf(BakeryException.class);
  }

  @Test
  void theBenchSheetShowsTheTwoDayHistoryAndItsCautions() {
    BenchSheet sheet = BenchDay.work(Main.demo());
    assertThat(sheet.toString())
        .contains("Temperature and rise", "retard overnight", "core", "× 1.")
        .contains("in its last shape it has 1.5 times the volume");
    assertThat(sheet.advice()).extracting(Advice::code).contains("WARM_HOLD", "SUGAR_HIGH");
    BenchSheet warm =
        BenchDay.work(
            Main.demo().with("fat-curve", "coconut oil").with("rise", "3 times in 4 h at 75 °F"));
    assertThat(warm.advice()).extracting(Advice::code).contains("PROOF_WARM");
    assertThat(warm.toString()).contains("3 times the volume in 4 h at 23.9 °C (75 °F)");
  }

  @Test
  void theHistoryFollowsCoverAltitudeAndModel() {
    String film = BenchDay.work(Main.demo()).toString();
    for (String cover : new String[] {"tub", "bag"}) {
      assertThat(BenchDay.work(Main.demo().with("cover", cover)).toString()).isNotEqualTo(film);
    }
    assertThat(BenchDay.work(Main.demo().with("altitude", "1600 m")).toString()).isNotEqualTo(film);
    assertThat(BenchDay.work(Main.demo().with("rate-model", "baker's yeast, growth")).toString())
        .isNotEqualTo(film);
    assertThat(BenchDay.work(Main.demo().with("rise", "tripled in 4 h at 24 °C")).toString())
        .contains("3 times the volume");
    assertThat(
            BenchDay.work(Main.demo().with("rise", "grown by half in 90 min at 24 °C")).toString())
        .contains("1.5 times the volume in 1 h 30 min");
  }

  @Test
  void aRiseThatCanNotBeReadOrHasNoShapeIsRefused() {
    assertThatThrownBy(() -> BenchDay.work(Main.demo().with("rise", "soon")))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("doubled in 95 min at 23 °C");
    RecipeFile bare =
        RecipeFile.parse(
            """
            rise: doubled in 95 min at 23 °C
            dough-temperature: 24 °C
            flour-temperature: 20 °C
            room: 22 °C
            friction: 9 °C
            [dough]
            500 g bread flour
            300 g water
            10 g active dry yeast
            [timetable]
            rest: 1 h
            """);
    assertThatThrownBy(() -> BenchDay.work(bare))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("as slab 30 mm");
  }

  @Test
  void activeDryYeastGetsItsWaterAndItsFoamingTest() {
    RecipeFile file =
        RecipeFile.parse(
            """
            dough-temperature: 24 °C
            flour-temperature: 20 °C
            room: 22 °C
            friction: 9 °C
            [dough]
            500 g bread flour
            300 g water
            10 g active dry yeast
            """);
    BenchSheet sheet = BenchDay.work(file);
    assertThat(sheet.advice()).extracting(Advice::code).contains("WATER_COLD", "YEAST_TEST");
    assertThat(sheet.toString()).contains("foams to a thick cap", "38 °C (100 °F) to 43 °C");
  }

  @Test
  void fatLiquidAndAllOfAnimalsOnHandAreExchangedWithBeforeAndAfter() {
    RecipeFile buns =
        RecipeFile.parse(
            """
            [dough]
            500 g bread flour
            100 g water
            200 g whole milk
            60 g unsalted butter
            40 g sugar
            9 g salt
            6 g instant yeast
            """);
    String sheet =
        BenchDay.work(buns.with("fat-on-hand", "salted butter").with("liquid-on-hand", "oat drink"))
            .toString();
    assertThat(sheet)
        .contains("Fat on hand", "unsalted butter becomes salted butter, × 1")
        .contains("Liquid on hand", "whole milk becomes oat drink")
        .contains("before", "after", "change");
    BenchSheet plants = BenchDay.work(buns.with("plant-based", "yes"));
    assertThat(plants.toString())
        .contains("Plant-based (no claim of allergen-free)", "becomes soy drink");
    assertThat(plants.advice()).extracting(Advice::code).contains("ALLERGEN_LEAVES");
    assertThat(
            BenchDay.work(buns.with("fat-on-hand", "salted butter").with("fat-replaced", "butter"))
                .toString())
        .contains("Fat on hand");
    assertThatThrownBy(() -> BenchDay.work(buns.with("plant-based", "maybe")))
        .isInstanceOf(BakeryException.class);
    RecipeFile lean = RecipeFile.parse("[dough]\n500 g bread flour\n300 g water\n");
    assertThatThrownBy(() -> BenchDay.work(lean.with("fat-on-hand", "butter")))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("fat-replaced");
  }

  @Test
  void theOvenShowsWhatHappensInThePieceAndWhatItCanNotKnow() {
    BenchSheet sheet = BenchDay.work(Main.demo());
    assertThat(sheet.toString())
        .contains("crust depth", "done: core", "heating up takes about")
        .contains("not known: colour, tray, neighbours");
    assertThat(sheet.advice()).extracting(Advice::code).contains("BAKE_UNKNOWN");
    BenchSheet lethal =
        BenchDay.work(
            Main.demo()
                .with("lethality", "salmonella in bun dough")
                .with("oven", "400 °F 10 min with steam, 330 °F 13 min fan and vent open")
                .with("altitude", "2000 m"));
    assertThat(lethal.advice()).extracting(Advice::code).contains("NO_VALIDATION");
    assertThat(lethal.toString()).contains("for 10 min, with steam", "for 13 min, fan, vent open");
    BenchSheet raw =
        BenchDay.work(Main.demo().with("oven", "400 °F 4 min").with("dough-kind", "lean"));
    assertThat(raw.advice()).extracting(Advice::code).contains("NOT_DONE");
    assertThat(raw.toString()).contains("not done: core").contains("for a lean dough");
    RecipeFile plain =
        RecipeFile.parse("oven: 400 °F 30 min\n[dough]\n500 g bread flour\n300 g water\n");
    assertThat(BenchDay.work(plain).toString()).contains("to see inside, give the last shape");
  }
}
