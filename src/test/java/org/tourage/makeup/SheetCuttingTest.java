package org.tourage.makeup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.extent;
import static org.tourage.quantity.Amounts.grams;
import static org.tourage.quantity.Amounts.inches;
import static org.tourage.quantity.Amounts.metres;
import static org.tourage.quantity.Amounts.micrometres;
import static org.tourage.quantity.Amounts.millimetres;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.MILLIMETRE;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Extent;

class SheetCuttingTest {
  private static final SheetCutting SHEET = SheetCutting.of(extent("600 x 250 mm"), millimetres(5));

  private static List<Cutting> everyWay(SheetCutting sheet) {
    return List.of(
        sheet.into(Shape.TRIANGLE, 12, 2.2),
        sheet.into(Shape.RIGHT_TRIANGLE, 12, 2),
        sheet.into(Shape.RECTANGLE, 12, 1),
        sheet.sized(Shape.TRIANGLE, millimetres(90), millimetres(120)),
        sheet.sized(Shape.RECTANGLE, millimetres(70), millimetres(110)),
        sheet.strips(inches(1)),
        sheet.rounds(millimetres(70)),
        sheet.mixed(extent("70 x 110 mm")));
  }

  @Test
  void everyWayOfCuttingIsReachedFromOneSheet() {
    assertThat(everyWay(SHEET))
        .allSatisfy(
            cutting -> {
              assertThat(cutting.pieces()).isBetween(1, cutting.upperBound());
              assertThat(cutting.sheetYield().value()).isBetween(40.0, 100.0);
              assertThat(cutting.cuts(AmountFormat.metric()).get(0))
                  .isEqualTo("trim 5 mm off each edge");
              assertThat(cutting.describe(AmountFormat.metric()))
                  .startsWith(cutting.pieces() + " ");
              assertThat(cutting.describe(AmountFormat.usCustomary())).contains(" in");
              assertThat(cutting.working().lines()).isNotEmpty();
            });
    assertThat(SHEET).hasToString("sheet 600 mm x 250 mm, trim 5 mm");
    assertThatThrownBy(() -> SheetCutting.of(extent("600 x 250 mm"), millimetres(125)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("trim");
  }

  @Property(tries = 100)
  void piecesAndTrimWeighTheSheetHoweverItIsCut(
      @ForAll @DoubleRange(min = 300, max = 1200) double length,
      @ForAll @DoubleRange(min = 250, max = 600) double width,
      @ForAll @DoubleRange(min = 0, max = 15) double trim) {
    SheetCutting sheet =
        SheetCutting.of(Extent.of(millimetres(length), millimetres(width)), millimetres(trim));
    for (Cutting cutting : everyWay(sheet)) {
      double total =
          cutting.pieces() * cutting.pieceMass(grams(1000)).in(GRAM)
              + cutting.trimMass(grams(1000)).in(GRAM);
      assertThat(total).as(cutting.toString()).isCloseTo(1000, within(1e-6));
      assertThat(cutting.trimMass(grams(1000)).in(GRAM)).isGreaterThan(-1e-6);
      assertThat(cutting.advice().stream().anyMatch(a -> a.code().equals("TRIM_HIGH")))
          .isEqualTo(cutting.sheetYield().value() < 85);
    }
  }

  @Test
  void theMixedPlanSaysWhereItIsParted() {
    MixedPlan plan =
        SheetCutting.of(extent("70 x 60 mm"), millimetres(0)).mixed(extent("30 x 20 mm"));
    assertThat(plan.pieces()).isEqualTo(7);
    assertThat(plan.cuts(AmountFormat.metric()))
        .hasSize(3)
        .first()
        .asString()
        .startsWith("part the sheet ");
    assertThat(plan.describe(AmountFormat.metric())).contains("part of them turned");
  }

  @Test
  void slendernessThatEqualStripsCanNotMeetIsSaid() {
    // 13 pieces share out to 1 strip or 13, and nothing between
    CuttingPlan plan = SHEET.into(Shape.TRIANGLE, 13, 1);
    assertThat(plan.advice())
        .filteredOn(a -> a.code().equals("SLENDERNESS_MISSED"))
        .singleElement()
        .satisfies(
            a -> {
              assertThat(a.text()).contains("and 1 was wanted");
              assertThat(a.remedy()).contains("mm (").contains("wide");
            });
    assertThat(SHEET.into(Shape.TRIANGLE, 13, plan.height().ratioTo(plan.base())).advice())
        .extracting(Advice::code)
        .doesNotContain("SLENDERNESS_MISSED");
    assertThat(SHEET.sized(Shape.TRIANGLE, millimetres(90), millimetres(200)).advice())
        .extracting(Advice::code)
        .doesNotContain("SLENDERNESS_MISSED");
  }

  /** The width that the advice names gives the slenderness in as many strips. */
  @Property(tries = 200)
  void theWidthThatIsAdvisedMeetsTheSlenderness(
      @ForAll Shape shape,
      @ForAll @IntRange(min = 1, max = 40) int pieces,
      @ForAll @DoubleRange(min = 0.5, max = 4) double wanted,
      @ForAll @DoubleRange(min = 0, max = 10) double trim) {
    CuttingPlan plan =
        SheetCutting.of(extent("900 x 300 mm"), millimetres(trim)).into(shape, pieces, wanted);
    double width = plan.widthFor(wanted).in(MILLIMETRE);
    CuttingPlan better =
        CuttingPlan.inStrips(
            shape,
            Extent.of(millimetres(900 * 300 / width), millimetres(width)),
            millimetres(trim),
            plan.strips(),
            plan.perStrip(),
            wanted);
    assertThat(better.slendernessMiss()).isLessThan(1e-6);
  }

  @Test
  void hostileNumbersAreRefusedWithTheLimit() {
    assertThatThrownBy(() -> SHEET.into(Shape.TRIANGLE, 999_999, 2))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("give up to 100000");
    assertThatThrownBy(() -> SHEET.sized(Shape.RECTANGLE, micrometres(1), micrometres(1)))
        .hasMessageContaining("give up to 100000");
    assertThatThrownBy(() -> SHEET.strips(micrometres(0.001)))
        .hasMessageContaining("give up to 100000");
    assertThatThrownBy(() -> SHEET.rounds(micrometres(1)))
        .hasMessageContaining("give up to 100000");
    assertThatThrownBy(() -> SHEET.mixed(Extent.of(micrometres(0.001), metres(0.2))))
        .hasMessageContaining("give up to 100000");
    assertThatThrownBy(() -> SHEET.sized(Shape.TRIANGLE, millimetres(0), millimetres(10)))
        .hasMessageContaining("positive lengths");
    assertThat(SHEET.into(Shape.TRIANGLE, 100_000, 2).cutLines()).hasSizeGreaterThan(100_000);
    assertThatThrownBy(
            () ->
                TrayPlan.of(
                    extent("60 x 40 cm"),
                    Extent.of(micrometres(1), micrometres(1)),
                    1,
                    millimetres(0)))
        .hasMessageContaining("give up to 100000");
  }

  @Test
  void aLoadIsWhatAllTraysOfTheOvenTake() {
    TrayPlan tray = TrayPlan.of(extent("60 x 40 cm"), extent("110 x 35 mm"), 3, millimetres(20));
    assertThat(tray.perTray()).isEqualTo(16);
    assertThat(tray.loads(0, 2)).isZero();
    assertThat(tray.loads(32, 2)).isEqualTo(1);
    assertThat(tray.loads(33, 2)).isEqualTo(2);
    assertThat(tray.perLoad(33, 2)).isEqualTo(17);
    assertThat(tray.loads(Integer.MAX_VALUE, Integer.MAX_VALUE)).isEqualTo(1);
    assertThat(tray.trays(Integer.MAX_VALUE)).isEqualTo(134_217_728);
    assertThatThrownBy(() -> tray.loads(12, 0)).hasMessageContaining("0 trays");
    assertThatThrownBy(() -> tray.trays(-1)).hasMessageContaining("-1 pieces");
  }

  @Property(tries = 200)
  void piecesOnATrayStandApartAsTheyAreToldAndFillIt(
      @ForAll @DoubleRange(min = 40, max = 180) double length,
      @ForAll @DoubleRange(min = 30, max = 90) double width,
      @ForAll @DoubleRange(min = 1, max = 4) double growth,
      @ForAll @DoubleRange(min = 0, max = 40) double gap) {
    TrayPlan tray =
        TrayPlan.of(
            extent("60 x 40 cm"),
            Extent.of(millimetres(length), millimetres(width)),
            growth,
            millimetres(gap));
    TrayPlan.Layout layout = tray.layout();
    assertThat(layout.alongLength() * layout.alongWidth()).isEqualTo(tray.perTray());
    assertThat(layout.grownApart().in(MILLIMETRE)).isGreaterThanOrEqualTo(gap - 1e-6);
    double stretch = Math.cbrt(growth) - 1;
    // grown pieces and the gaps between and beside them are the tray
    double lengthwise =
        layout.apartLengthwise().in(MILLIMETRE) - stretch * layout.piece().length().in(MILLIMETRE);
    double sum =
        layout.alongLength() * (1 + stretch) * layout.piece().length().in(MILLIMETRE)
            + (layout.alongLength() + 1) * lengthwise;
    assertThat(sum).isCloseTo(600, within(1e-6));
  }

  @Test
  void aCoilLiesOnTheTrayByItsWidthAndItsThickness() {
    Coil coil = Coil.of(millimetres(240), millimetres(4), millimetres(110));
    TrayPlan tray = TrayPlan.of(extent("60 x 40 cm"), coil, 3, millimetres(20));
    assertThat(tray.piece().length()).isEqualTo(millimetres(110));
    assertThat(tray.piece().width()).isEqualTo(coil.diameter());
    assertThat(tray.layout().toString()).contains(" by ").contains("when grown");
  }
}
