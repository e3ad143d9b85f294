package org.tourage.lamination;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.celsius;
import static org.tourage.quantity.Amounts.extent;
import static org.tourage.quantity.Amounts.grams;
import static org.tourage.quantity.Amounts.kilograms;
import static org.tourage.quantity.Amounts.millimetres;
import static org.tourage.quantity.Amounts.percent;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.io.Serializable;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.formula.StageKind;
import org.tourage.makeup.Shape;
import org.tourage.makeup.SheetCutting;
import org.tourage.makeup.SheetForPieces;
import org.tourage.makeup.WeighedSheet;
import org.tourage.physics.Air;
import org.tourage.physics.ChoiOkos1986;

class BatchPlanTest {
  private static final FoldSequence TURNS =
      FoldSequence.lockIn(LockIn.HALF).fold(Fold.BOOK).fold(Fold.LETTER);

  /** Invented for the tests. */
  static final Batch CRESCENTS =
      Formula.byPercent(
              "crescents",
              f ->
                  f.flour("bread flour", percent(100))
                      .line("water", percent(54))
                      .line("yeast-compressed", percent(4))
                      .line("salt", percent(2))
                      .rollIn("butter", percent(45)))
          .forFlour(kilograms(1));

  @Test
  void theBatchBringsItsOwnMassesAndDensities() {
    LaminationPlan plan = LaminationPlan.of(CRESCENTS, TURNS, LaminationPlan.Setup.SMALL_BENCH);
    assertThat(plan.dough()).isEqualTo(grams(1600));
    assertThat(plan.fat()).isEqualTo(grams(450));
    assertThat(plan.mass()).isEqualTo(grams(2050));
    assertThat(plan.doughDensity())
        .isEqualTo(
            ChoiOkos1986.density(
                CRESCENTS.formula().constituents(StageKind::inDough), celsius(15)));
    LaminationPlan lossy =
        LaminationPlan.of(CRESCENTS, percent(2), TURNS, LaminationPlan.Setup.SMALL_BENCH);
    assertThat(lossy.dough()).isEqualTo(grams(1568));
    assertThat(lossy.fat()).isEqualTo(grams(450));
    assertThatThrownBy(
            () ->
                LaminationPlan.of(CRESCENTS, percent(100), TURNS, LaminationPlan.Setup.SMALL_BENCH))
        .hasMessageContaining("100 %");
    Batch lean =
        Formula.byPercent(
                "lean", f -> f.flour("bread flour", percent(100)).line("water", percent(60)))
            .forFlour(kilograms(1));
    assertThatThrownBy(() -> LaminationPlan.of(lean, TURNS, LaminationPlan.Setup.SMALL_BENCH))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("no fat to be rolled in");
  }

  @Test
  void theSheetBodyOfABatchIsThatOfItsParts() {
    LaminationPlan plan = LaminationPlan.of(CRESCENTS, TURNS, LaminationPlan.Setup.SMALL_BENCH);
    FatCurve butter = FatCurve.named("dairy butterfat");
    assertThat(SheetBody.of(plan, millimetres(8), CRESCENTS, butter))
        .isEqualTo(
            SheetBody.of(
                plan,
                millimetres(8),
                CRESCENTS.formula().constituents(StageKind::inDough),
                CRESCENTS.formula().constituents(k -> k == StageKind.ROLL_IN),
                butter));
  }

  @Test
  void theBatchIsScaledUntilTheCutPiecesWeighWhatIsWanted() {
    LaminationPlan.Setup setup =
        LaminationPlan.Setup.SMALL_BENCH.withFinalSheet(millimetres(4), millimetres(300));
    SheetForPieces found =
        SheetForPieces.find(
            Shape.TRIANGLE,
            12,
            grams(50),
            millimetres(5),
            2,
            scale -> {
              LaminationPlan plan = LaminationPlan.of(CRESCENTS.times(scale), TURNS, setup);
              return WeighedSheet.of(plan.finalSheet(), plan.mass());
            });
    assertThat(found.settled()).isTrue();
    assertThat(found.cut().in(GRAM)).isCloseTo(50, within(1e-6));
    assertThat(CRESCENTS.times(found.scale()).dough().in(GRAM))
        .isCloseTo(found.sheet().mass().in(GRAM), within(1e-6));
  }

  private static Workability onTheBench(double cold, double room) {
    return Workability.of(
        LaminationPlan.of(CRESCENTS, TURNS, LaminationPlan.Setup.SMALL_BENCH),
        CRESCENTS,
        FatCurve.named("dairy butterfat"),
        celsius(cold),
        celsius(room),
        Bench.WOOD);
  }

  @Test
  void workabilityIsTypedAndAgreesWithTheSheetBody() {
    Workability work = onTheBench(4, 21);
    LaminationPlan plan = LaminationPlan.of(CRESCENTS, TURNS, LaminationPlan.Setup.SMALL_BENCH);
    assertThat(work.packet().step()).isInstanceOf(LaminationStep.Folding.class);
    assertThat(work.packet().thickness()).isEqualTo(millimetres(24));
    assertThat(work.sheet().step()).isInstanceOf(LaminationStep.FinalRolling.class);
    SheetBody body =
        SheetBody.of(plan, millimetres(24), CRESCENTS, FatCurve.named("dairy butterfat"));
    assertThat(work.packet().canBeRolledAfter())
        .isEqualTo(body.untilTempered(celsius(4), Bench.WOOD, Air.still(celsius(21))));
    assertThat(work.packet().tooSoftAfter())
        .isEqualTo(body.untilTooSoft(celsius(4), Bench.WOOD, Air.still(celsius(21))));
    assertThat(work.packet().workableFor().orElseThrow().in(MINUTE))
        .isCloseTo(
            work.packet().tooSoftAfter().orElseThrow().in(MINUTE)
                - work.packet().canBeRolledAfter().orElseThrow().in(MINUTE),
            within(1e-9));
    assertThat(work.chilledBackAfter()).isPresent();
    assertThat(work.toString()).contains("24 mm thick: can be rolled after");
    assertThat(work.working().lines()).hasSize(3);
    assertThat(work).isEqualTo(onTheBench(4, 21)).hasSameHashCodeAs(onTheBench(4, 21));
  }

  @Test
  void aRoomOrARefrigeratorThatDoesNotSuitTheFatIsSaid() {
    assertThat(onTheBench(4, 11).advice())
        .extracting(Advice::code)
        .containsExactly("ROOM_COLD_FOR_FAT");
    assertThat(onTheBench(4, 11).packet().canBeRolledAfter()).isEmpty();
    assertThat(onTheBench(4, 11).packet().workableFor()).isEmpty();
    assertThat(onTheBench(13, 21).advice())
        .extracting(Advice::code)
        .containsExactly("CHILL_NOT_REACHED");
    assertThat(onTheBench(4, 35).advice()).extracting(Advice::code).contains("BENCH_TIME_SHORT");
  }

  @Test
  void everyResultTravelsAndComesBackEqual() throws Exception {
    LaminationPlan plan = LaminationPlan.of(CRESCENTS, TURNS, LaminationPlan.Setup.SHOP);
    SheetCutting sheet = SheetCutting.of(plan.finalSheet(), millimetres(5));
    List<Serializable> results =
        List.of(
            TURNS,
            plan,
            plan.steps().get(1),
            plan.rolling().get(0),
            Rollers.PIN,
            onTheBench(4, 21),
            onTheBench(4, 11),
            sheet,
            sheet.mixed(extent("80 x 110 mm")),
            sheet.rounds(millimetres(70)),
            sheet.into(Shape.TRIANGLE, 12, 2),
            SheetForPieces.find(
                Shape.RECTANGLE,
                6,
                grams(60),
                millimetres(5),
                1,
                scale -> WeighedSheet.of(extent("500 x 300 mm"), grams(700 * scale))));
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
}
