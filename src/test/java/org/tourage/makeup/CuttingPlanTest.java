package org.tourage.makeup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.*;
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

class CuttingPlanTest {
  private static final Extent SHEET = extent("600 x 250 mm");

  @Test
  void trianglesAlternateAlongTheStrip() {
    CuttingPlan plan =
        CuttingPlan.ofSize(
            Shape.TRIANGLE, SHEET, millimetres(0), millimetres(100), millimetres(250));
    // 2 · 600 / 100 − 1
    assertThat(plan.pieces()).isEqualTo(11);
    assertThat(plan.strips()).isEqualTo(1);
    assertThat(plan).hasToString("11 triangles, base 100 mm, height 250 mm, in 1 strip of 11");
    assertThat(plan.outlines().get(0))
        .hasToString("[(0 mm, 0 mm), (100 mm, 0 mm), (50 mm, 250 mm)]");
    assertThat(plan.sheetYield().value()).isCloseTo(100 * 11 * 12_500 / 150_000.0, within(1e-9));
    assertThat(plan.cuts(AmountFormat.metric())).hasSize(2);
    assertThat(plan.working().toString()).contains("11 × 125 cm²");
  }

  @Test
  void theBetterOrientationIsTaken() {
    CuttingPlan plan =
        CuttingPlan.ofSize(
            Shape.RECTANGLE,
            extent("250 x 600 mm"),
            millimetres(0),
            millimetres(120),
            millimetres(250));
    assertThat(plan.pieces()).isEqualTo(5);
    assertThat(plan.sheet()).isEqualTo(SHEET);
    assertThat(plan.sheetYield()).isEqualTo(percent(100));
    assertThat(plan).hasToString("5 rectangles, 120 mm x 250 mm, in 1 strip of 5");
  }

  @Test
  void aNumberOfPiecesUsesTheWholeSheet() {
    CuttingPlan plan =
        CuttingPlan.forPieces(Shape.TRIANGLE, 24, extent("1000 x 500 mm"), millimetres(5), 2.2);
    assertThat(plan.pieces()).isEqualTo(24);
    assertThat(plan.strips()).isEqualTo(2);
    assertThat(plan.cuts(AmountFormat.metric()))
        .contains("trim 5 mm off each edge", "cut along at y = 250 mm");
    CuttingPlan squares =
        CuttingPlan.forPieces(Shape.RECTANGLE, 12, extent("40 x 30 cm"), millimetres(0), 1);
    assertThat(squares.base()).isEqualTo(millimetres(100));
    assertThat(squares.height()).isEqualTo(millimetres(100));
    assertThat(squares.cuts(AmountFormat.metric()))
        .contains("cut across every 100 mm, from x = 0 mm");
    assertThat(squares.advice()).isEmpty();
    assertThat(
            CuttingPlan.ofSize(
                    Shape.TRIANGLE, SHEET, millimetres(20), millimetres(150), millimetres(200))
                .advice())
        .extracting(Advice::code)
        .containsExactly("TRIM_HIGH");
  }

  @Test
  void whatDoesNotFitIsRefused() {
    assertThatThrownBy(
            () ->
                CuttingPlan.ofSize(
                    Shape.TRIANGLE, SHEET, millimetres(0), millimetres(700), millimetres(700)))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("not one piece");
    assertThatThrownBy(
            () ->
                CuttingPlan.ofSize(
                    Shape.RECTANGLE, SHEET, millimetres(125), millimetres(10), millimetres(10)))
        .hasMessageContaining("trim");
    assertThatThrownBy(
            () ->
                CuttingPlan.ofSize(
                    Shape.RECTANGLE, SHEET, millimetres(-1), millimetres(10), millimetres(10)))
        .hasMessageContaining("trim");
    assertThatThrownBy(() -> CuttingPlan.forPieces(Shape.RECTANGLE, 0, SHEET, millimetres(0), 1))
        .hasMessageContaining("0 pieces");
    assertThatThrownBy(() -> CuttingPlan.forPieces(Shape.RECTANGLE, 2, SHEET, millimetres(0), 0))
        .hasMessageContaining("height");
    assertThatThrownBy(
            () ->
                new CuttingPlan(
                    Shape.RECTANGLE,
                    SHEET,
                    millimetres(0),
                    3,
                    1,
                    millimetres(100),
                    millimetres(100)))
        .hasMessageContaining("do not fit");
  }

  private static double area(List<CuttingPlan.Point> outline) {
    double twice = 0;
    for (int i = 0; i < outline.size(); i++) {
      CuttingPlan.Point a = outline.get(i);
      CuttingPlan.Point b = outline.get((i + 1) % outline.size());
      twice +=
          a.x().in(MILLIMETRE) * b.y().in(MILLIMETRE) - b.x().in(MILLIMETRE) * a.y().in(MILLIMETRE);
    }
    return Math.abs(twice) / 2;
  }

  @Property(tries = 400)
  void piecesStayOnTheSheetAndMassesSumToTheSheet(
      @ForAll Shape shape,
      @ForAll @IntRange(min = 1, max = 60) int pieces,
      @ForAll @DoubleRange(min = 200, max = 2000) double length,
      @ForAll @DoubleRange(min = 100, max = 800) double width,
      @ForAll @DoubleRange(min = 0, max = 20) double trim) {
    CuttingPlan plan =
        CuttingPlan.forPieces(
            shape,
            pieces,
            Extent.of(millimetres(length), millimetres(width)),
            millimetres(trim),
            2);
    assertThat(plan.outlines()).hasSize(pieces);
    double areas = 0;
    for (List<CuttingPlan.Point> outline : plan.outlines()) {
      areas += area(outline);
      for (CuttingPlan.Point p : outline) {
        assertThat(p.x().in(MILLIMETRE)).isBetween(trim - 1e-6, length - trim + 1e-6);
        assertThat(p.y().in(MILLIMETRE)).isBetween(trim - 1e-6, width - trim + 1e-6);
      }
    }
    double pieceArea = area(plan.outlines().get(0));
    assertThat(areas).isCloseTo(pieces * pieceArea, within(1e-6 * areas));
    double total =
        plan.pieceMass(grams(1000)).in(GRAM) * pieces + plan.trimMass(grams(1000)).in(GRAM);
    assertThat(total).isCloseTo(1000, within(1e-9 * 1000));
    assertThat(plan.pieceMass(grams(1000)).in(GRAM))
        .isCloseTo(1000 * pieceArea / (length * width), within(1e-6));
  }

  /** Pieces share edges at most: centres of gravity of others never lie inside one. */
  @Property(tries = 100)
  void piecesNeverOverlap(@ForAll Shape shape, @ForAll @IntRange(min = 2, max = 30) int pieces) {
    CuttingPlan plan = CuttingPlan.forPieces(shape, pieces, SHEET, millimetres(5), 2);
    List<List<CuttingPlan.Point>> outlines = plan.outlines();
    for (int i = 0; i < outlines.size(); i++) {
      for (int j = 0; j < outlines.size(); j++) {
        if (i != j) {
          assertThat(inside(outlines.get(i), outlines.get(j))).isFalse();
        }
      }
    }
  }

  private static boolean inside(List<CuttingPlan.Point> outline, List<CuttingPlan.Point> other) {
    double x = other.stream().mapToDouble(p -> p.x().in(MILLIMETRE)).average().orElseThrow();
    double y = other.stream().mapToDouble(p -> p.y().in(MILLIMETRE)).average().orElseThrow();
    int positive = 0;
    for (int k = 0; k < outline.size(); k++) {
      CuttingPlan.Point a = outline.get(k);
      CuttingPlan.Point b = outline.get((k + 1) % outline.size());
      double ax = a.x().in(MILLIMETRE);
      double ay = a.y().in(MILLIMETRE);
      double cross =
          (b.x().in(MILLIMETRE) - ax) * (y - ay) - (b.y().in(MILLIMETRE) - ay) * (x - ax);
      positive += cross > 0 ? 1 : 0;
    }
    return positive == 0 || positive == outline.size();
  }

  @Test
  void rightTrianglesPairUpToRectangles() {
    CuttingPlan plan =
        CuttingPlan.forPieces(Shape.RIGHT_TRIANGLE, 12, extent("60 x 30 cm"), millimetres(0), 3);
    assertThat(plan)
        .hasToString("12 right triangles, base 100 mm, height 300 mm, in 1 strip of 12");
    assertThat(plan.sheetYield()).isEqualTo(percent(100));
    assertThat(plan.cuts(AmountFormat.metric())).hasSize(2);
    assertThat(plan.upperBound()).isEqualTo(12);
    assertThat(
            CuttingPlan.ofSize(
                    Shape.RIGHT_TRIANGLE, SHEET, millimetres(0), millimetres(100), millimetres(125))
                .pieces())
        .isEqualTo(24);
  }

  @Test
  void stripsRunOverTheWholeLength() {
    CuttingPlan plan = CuttingPlan.strips(SHEET, millimetres(5), inches(1));
    assertThat(plan.pieces()).isEqualTo(9);
    assertThat(plan.base()).isEqualTo(millimetres(590));
    assertThatThrownBy(() -> CuttingPlan.strips(SHEET, millimetres(5), metres(1)))
        .isInstanceOf(BakeryException.class);
  }

  @Test
  void severalNumbersCanBeComparedOnOneSheet() {
    List<CuttingPlan> options =
        CuttingPlan.options(Shape.TRIANGLE, SHEET, millimetres(5), 2, 6, 8, 12);
    assertThat(options).extracting(CuttingPlan::pieces).containsExactly(6, 8, 12);
    assertThat(options.get(0).pieceMass(grams(900)).value())
        .isGreaterThan(options.get(2).pieceMass(grams(900)).value());
  }

  @Property(tries = 300)
  void theSheetForAPieceMassGivesThatMass(
      @ForAll Shape shape,
      @ForAll @IntRange(min = 1, max = 40) int pieces,
      @ForAll @DoubleRange(min = 20, max = 200) double mass,
      @ForAll @DoubleRange(min = 2, max = 8) double thickness,
      @ForAll @DoubleRange(min = 100, max = 600) double width) {
    CuttingPlan plan =
        CuttingPlan.sheetFor(
            shape,
            pieces,
            grams(mass),
            millimetres(thickness),
            kilogramsPerCubicMetre(1150),
            millimetres(width),
            millimetres(5),
            2);
    double volume =
        plan.sheet().length().in(MILLIMETRE)
            * plan.sheet().width().in(MILLIMETRE)
            * thickness
            * 1e-9;
    assertThat(plan.pieces()).isEqualTo(pieces);
    assertThat(plan.pieceMass(kilograms(volume * 1150)).in(GRAM))
        .isCloseTo(mass, within(mass * 1e-9));
    assertThat(plan.pieces()).isLessThanOrEqualTo(plan.upperBound());
  }

  @Test
  void aSheetForNothingIsRefused() {
    assertThatThrownBy(
            () ->
                CuttingPlan.sheetFor(
                    Shape.RECTANGLE,
                    3,
                    grams(0),
                    millimetres(4),
                    kilogramsPerCubicMetre(1150),
                    millimetres(200),
                    millimetres(5),
                    2))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("3 pieces of 0 g");
  }

  @Test
  void nestedRowsBeatSquareRowsWhereTheSheetIsWideEnough() {
    RoundPlan plan = RoundPlan.of(extent("60 x 40 cm"), millimetres(0), millimetres(80));
    // square rows give 7 x 5 = 35; nested rows across give 5 + 4 + 5 + 4 + 5 + 4 + 5 + 4
    assertThat(plan.pieces()).isEqualTo(36);
    RoundPlan many = RoundPlan.of(extent("60 x 40 cm"), millimetres(0), millimetres(40));
    assertThat(many.nested()).isTrue();
    assertThat(many.pieces()).isGreaterThan(150);
    assertThat(plan.toString()).contains("36 rounds of 80 mm, nested rows");
    assertThatThrownBy(() -> RoundPlan.of(extent("60 x 40 cm"), millimetres(0), millimetres(401)))
        .hasMessageContaining("not one round");
    assertThatThrownBy(() -> RoundPlan.of(extent("60 x 40 cm"), millimetres(-1), millimetres(40)))
        .isInstanceOf(BakeryException.class);
  }

  @Property(tries = 200)
  void roundsNeverOverlapNorLeaveTheSheetNorBeatTheBound(
      @ForAll @DoubleRange(min = 100, max = 900) double length,
      @ForAll @DoubleRange(min = 100, max = 600) double width,
      @ForAll @DoubleRange(min = 30, max = 90) double diameter,
      @ForAll boolean nested) {
    RoundPlan plan =
        new RoundPlan(
            Extent.of(millimetres(length), millimetres(width)),
            millimetres(3),
            millimetres(diameter),
            nested);
    List<CuttingPlan.Point> centres = plan.centres();
    assertThat(centres).hasSize(plan.pieces());
    assertThat(plan.pieces()).isBetween(1, plan.upperBound());
    for (int i = 0; i < centres.size(); i++) {
      double x = centres.get(i).x().in(MILLIMETRE);
      double y = centres.get(i).y().in(MILLIMETRE);
      assertThat(x).isBetween(3 + diameter / 2 - 1e-6, length - 3 - diameter / 2 + 1e-6);
      assertThat(y).isBetween(3 + diameter / 2 - 1e-6, width - 3 - diameter / 2 + 1e-6);
      for (int j = 0; j < i; j++) {
        double dx = x - centres.get(j).x().in(MILLIMETRE);
        double dy = y - centres.get(j).y().in(MILLIMETRE);
        assertThat(Math.hypot(dx, dy)).isGreaterThanOrEqualTo(diameter * (1 - 1e-9));
      }
    }
    double total =
        plan.pieceMass(grams(1000)).value() * plan.pieces() + plan.trimMass(grams(1000)).value();
    assertThat(total).isCloseTo(1000, within(1e-6));
    assertThat(plan.sheetYield().value()).isLessThan(90.7);
  }

  @Test
  void oneMorePartingCanGiveOneMorePiece() {
    // straight cuts give 3; only a pinwheel, which no knife cuts from edge to edge, gives 4
    MixedPlan plan = MixedPlan.of(extent("50 x 50 mm"), millimetres(0), extent("30 x 20 mm"));
    assertThat(plan.pieces()).isEqualTo(3);
    MixedPlan better = MixedPlan.of(extent("50 x 30 mm"), millimetres(0), extent("30 x 20 mm"));
    assertThat(better.pieces()).isEqualTo(2);
    assertThat(better.upperBound()).isEqualTo(2);
    MixedPlan mixed = MixedPlan.of(extent("70 x 60 mm"), millimetres(0), extent("30 x 20 mm"));
    assertThat(mixed.pieces()).isEqualTo(7);
    assertThat(mixed.upperBound()).isEqualTo(7);
    assertThat(mixed.toString()).startsWith("7 pieces: ");
    assertThatThrownBy(
            () -> MixedPlan.of(extent("10 x 10 mm"), millimetres(0), extent("30 x 20 mm")))
        .hasMessageContaining("not one piece");
  }

  @Property(tries = 300)
  void partedPlansStayOnTheSheetAndBeatPlainRows(
      @ForAll @DoubleRange(min = 100, max = 600) double length,
      @ForAll @DoubleRange(min = 100, max = 600) double width,
      @ForAll @DoubleRange(min = 20, max = 90) double a,
      @ForAll @DoubleRange(min = 20, max = 90) double b) {
    Extent sheet = Extent.of(millimetres(length), millimetres(width));
    MixedPlan plan = MixedPlan.of(sheet, millimetres(2), Extent.of(millimetres(a), millimetres(b)));
    assertThat(plan.pieces())
        .isBetween(
            CuttingPlan.ofSize(
                    Shape.RECTANGLE, sheet, millimetres(2), millimetres(a), millimetres(b))
                .pieces(),
            plan.upperBound());
    double[][] boxes = new double[plan.parts().size()][];
    for (int i = 0; i < boxes.length; i++) {
      MixedPlan.Part p = plan.parts().get(i);
      double x = p.corner().x().in(MILLIMETRE);
      double y = p.corner().y().in(MILLIMETRE);
      boxes[i] =
          new double[] {
            x,
            y,
            x + p.alongLength() * p.piece().length().in(MILLIMETRE),
            y + p.alongWidth() * p.piece().width().in(MILLIMETRE)
          };
      assertThat(boxes[i][2]).isLessThanOrEqualTo(length - 2 + 1e-6);
      assertThat(boxes[i][3]).isLessThanOrEqualTo(width - 2 + 1e-6);
    }
    if (boxes.length == 2) {
      boolean apart = boxes[1][0] >= boxes[0][2] - 1e-6 || boxes[1][1] >= boxes[0][3] - 1e-6;
      assertThat(apart).isTrue();
    }
  }

  @Property(tries = 200)
  void aCoilKeepsTheAreaOfItsCrossSection(
      @ForAll @DoubleRange(min = 50, max = 400) double length,
      @ForAll @DoubleRange(min = 2, max = 10) double thickness,
      @ForAll @DoubleRange(min = 0, max = 30) double core) {
    Coil coil =
        Coil.of(millimetres(length), millimetres(thickness), millimetres(100))
            .around(millimetres(core));
    double outer = coil.diameter().in(MILLIMETRE) / 2;
    assertThat(Math.PI * (outer * outer - core * core / 4))
        .isCloseTo(length * thickness, within(1e-6 * length * thickness));
    assertThat(coil.turns() * thickness).isCloseTo(outer - core / 2, within(1e-9 * (1 + outer)));
  }

  @Test
  void coilsAndTraysReadWell() {
    Coil coil = Coil.of(millimetres(240), millimetres(4), millimetres(110));
    assertThat(coil).hasToString("coil of 4.4 turns, 35 mm thick, 110 mm wide");
    assertThat(coil.working().toString()).contains("240 mm long");
    assertThatThrownBy(() -> Coil.of(millimetres(0), millimetres(4), millimetres(110)))
        .isInstanceOf(BakeryException.class);
    TrayPlan tray = TrayPlan.of(extent("60 x 40 cm"), extent("110 x 35 mm"), 3, millimetres(20));
    // grown 158.6 x 50.5 mm: 8 by 2 turned, 3 by 5 straight
    assertThat(tray.perTray()).isEqualTo(16);
    assertThat(tray).hasToString("16 on a tray, 8 by 2, 20 mm apart when grown");
    assertThat(tray.trays(24)).isEqualTo(2);
    assertThat(tray.trays(0)).isZero();
    TrayPlan small = TrayPlan.of(extent("10 x 10 cm"), extent("110 x 35 mm"), 3, millimetres(20));
    assertThat(small.perTray()).isZero();
    assertThatThrownBy(() -> small.trays(3)).hasMessageContaining("not one piece");
    assertThatThrownBy(
            () -> TrayPlan.of(extent("10 x 10 cm"), extent("1 x 1 cm"), 0.5, millimetres(2)))
        .hasMessageContaining("0.5 times");
  }

  /** Every edge of every piece lies on a cut or on the edge of the trimmed sheet. */
  @Property(tries = 150)
  void theCutsFreeEveryPiece(
      @ForAll Shape shape,
      @ForAll @IntRange(min = 1, max = 20) int pieces,
      @ForAll boolean trimmed) {
    CuttingPlan plan = CuttingPlan.forPieces(shape, pieces, SHEET, millimetres(trimmed ? 5 : 0), 2);
    for (List<CuttingPlan.Point> outline : plan.outlines()) {
      for (int i = 0; i < outline.size(); i++) {
        CuttingPlan.Point a = outline.get(i);
        CuttingPlan.Point b = outline.get((i + 1) % outline.size());
        double x = (a.x().in(MILLIMETRE) + b.x().in(MILLIMETRE)) / 2;
        double y = (a.y().in(MILLIMETRE) + b.y().in(MILLIMETRE)) / 2;
        boolean rim = x < 1e-6 || y < 1e-6 || x > 600 - 1e-6 || y > 250 - 1e-6;
        boolean cut = plan.cutLines().stream().anyMatch(c -> onCut(c, x, y));
        assertThat(rim || cut).as("%s edge at %s, %s", plan, x, y).isTrue();
      }
    }
  }

  private static boolean onCut(CuttingPlan.Cut cut, double x, double y) {
    double x1 = cut.from().x().in(MILLIMETRE);
    double y1 = cut.from().y().in(MILLIMETRE);
    double x2 = cut.to().x().in(MILLIMETRE);
    double y2 = cut.to().y().in(MILLIMETRE);
    double way = Math.hypot(x - x1, y - y1) + Math.hypot(x - x2, y - y2);
    return Math.abs(way - Math.hypot(x2 - x1, y2 - y1)) < 1e-6;
  }

  @Test
  void cutsReadWell() {
    CuttingPlan plan = CuttingPlan.forPieces(Shape.RECTANGLE, 4, SHEET, millimetres(5), 1);
    assertThat(plan.cutLines().get(0)).hasToString("(0 mm, 5 mm) to (600 mm, 5 mm)");
    // four for the trim, three across
    assertThat(plan.cutLines()).hasSize(plan.strips() == 1 ? 7 : 8);
  }
}
