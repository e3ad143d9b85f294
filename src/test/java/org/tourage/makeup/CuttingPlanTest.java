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
}
