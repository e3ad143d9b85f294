package org.tourage.makeup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tourage.quantity.Amounts.grams;
import static org.tourage.quantity.Amounts.millimetres;
import static org.tourage.quantity.BakeryUnits.GRAM;

import java.util.function.DoubleFunction;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Extent;

class SheetForPiecesLaws {
  /** Grams for each cubic millimetre of a laminated dough. */
  private static final double DENSITY = 1.13e-3;

  /** A recipe of so many grams, rolled to one width and thickness: the length follows. */
  private static DoubleFunction<WeighedSheet> rolled(
      double recipeGrams, double width, double thickness) {
    return scale -> {
      double mass = scale * recipeGrams;
      double length = mass / (DENSITY * width * thickness);
      return WeighedSheet.of(Extent.of(millimetres(length), millimetres(width)), grams(mass));
    };
  }

  /** The same where the sheet is only ever rolled to whole centimetres, rounded up. */
  private static DoubleFunction<WeighedSheet> inSteps(
      double recipeGrams, double width, double thickness, double step) {
    return scale -> {
      double length = scale * recipeGrams / (DENSITY * width * thickness);
      double whole = Math.ceil(length / step) * step;
      return WeighedSheet.of(
          Extent.of(millimetres(whole), millimetres(width)),
          grams(whole * DENSITY * width * thickness));
    };
  }

  @Example
  void twelvePiecesOf50GramsFromASheetOf30CentimetresWeigh50Grams() {
    for (double thickness = 2; thickness <= 8; thickness += 0.25) {
      for (double slenderness = 1; slenderness <= 3; slenderness += 0.25) {
        SheetForPieces found =
            SheetForPieces.find(
                Shape.TRIANGLE,
                12,
                grams(50),
                millimetres(5),
                slenderness,
                rolled(900, 300, thickness));
        assertThat(found.settled()).isTrue();
        assertThat(found.plan().pieces()).isEqualTo(12);
        assertThat(found.cut().in(GRAM)).isCloseTo(50, within(1e-6));
      }
    }
  }

  @Property(tries = 2000)
  void thePieceThatIsCutWeighsWhatWasPromised(
      @ForAll Shape shape,
      @ForAll @IntRange(min = 1, max = 240) int pieces,
      @ForAll @DoubleRange(min = 15, max = 900) double mass,
      @ForAll @DoubleRange(min = 100, max = 800) double width,
      @ForAll @DoubleRange(min = 1.5, max = 12) double thickness,
      @ForAll @DoubleRange(min = 0, max = 25) double trim,
      @ForAll @DoubleRange(min = 0.3, max = 5) double slenderness,
      @ForAll @DoubleRange(min = 5, max = 50_000) double recipe) {
    SheetForPieces found =
        SheetForPieces.find(
            shape,
            pieces,
            grams(mass),
            millimetres(trim),
            slenderness,
            rolled(recipe, width, thickness));
    assertThat(found.settled()).isTrue();
    assertThat(found.cut().in(GRAM)).isCloseTo(mass, within(1e-6 * mass));
    assertThat(found.plan().pieceMass(found.sheet().mass())).isEqualTo(found.cut());
    assertThat(found.plan().pieces()).isEqualTo(pieces);
    assertThat(found.sheet().mass().in(GRAM)).isCloseTo(found.scale() * recipe, within(1e-6));
    assertThat(found.plan().sheet()).isEqualTo(found.sheet().extent());
    assertThat(found.advice()).extracting(Advice::code).doesNotContain("SHEET_NOT_SETTLED");
  }

  /** No layout that comes out right has pieces nearer to the slenderness that is wanted. */
  @Property(tries = 200)
  void noOtherEqualStripsComeNearerToTheSlenderness(
      @ForAll Shape shape,
      @ForAll @IntRange(min = 1, max = 60) int pieces,
      @ForAll @DoubleRange(min = 200, max = 600) double width,
      @ForAll @DoubleRange(min = 0.5, max = 4) double slenderness) {
    DoubleFunction<WeighedSheet> sheet = rolled(1000, width, 4);
    SheetForPieces found =
        SheetForPieces.find(shape, pieces, grams(60), millimetres(0), slenderness, sheet);
    for (int strips : CuttingPlan.equalStrips(pieces)) {
      // without trim the piece's mass is the sheet's over what the strip uses
      double share = shape.fill() / shape.usedLength(pieces / strips, 1) / strips;
      WeighedSheet other = sheet.apply(60 / share / 1000);
      CuttingPlan plan =
          CuttingPlan.inStrips(
              shape, other.extent(), millimetres(0), strips, pieces / strips, slenderness);
      assertThat(plan.pieceMass(other.mass()).in(GRAM)).isCloseTo(60, within(1e-6));
      assertThat(found.plan().slendernessMiss()).isLessThanOrEqualTo(plan.slendernessMiss() + 1e-9);
    }
  }

  @Property(tries = 500)
  void aSheetThatJumpsGivesTheMassOrBothFigures(
      @ForAll Shape shape,
      @ForAll @IntRange(min = 1, max = 48) int pieces,
      @ForAll @DoubleRange(min = 15, max = 150) double mass,
      @ForAll @DoubleRange(min = 150, max = 600) double width,
      @ForAll @DoubleRange(min = 10, max = 300) double step) {
    SheetForPieces found =
        SheetForPieces.find(
            shape, pieces, grams(mass), millimetres(5), 2, inSteps(1000, width, 4, step));
    double off = Math.abs(found.cut().in(GRAM) - mass);
    if (found.settled()) {
      assertThat(off).isLessThanOrEqualTo(1);
      assertThat(found.advice()).extracting(Advice::code).doesNotContain("SHEET_NOT_SETTLED");
    } else {
      assertThat(found.advice())
          .filteredOn(a -> a.code().equals("SHEET_NOT_SETTLED"))
          .singleElement()
          .satisfies(
              a ->
                  assertThat(a.text())
                      .contains(
                          org.tourage.quantity.AmountFormat.sideBySide().mass(grams(mass)),
                          org.tourage.quantity.AmountFormat.sideBySide().mass(found.cut())));
      assertThat(found.toString()).contains("are wanted");
    }
    assertThat(found.promised()).isEqualTo(grams(mass));
  }

  @Example
  void scalesThatTheRecipeRefusesAreLeftOut() {
    DoubleFunction<WeighedSheet> free = rolled(1000, 300, 4);
    DoubleFunction<WeighedSheet> fussy =
        scale -> {
          if (scale < 0.4 || scale > 3) {
            throw new BakeryException(Reason.OUT_OF_RANGE, "not so", scale + "", "0.4 to 3");
          }
          return free.apply(scale);
        };
    assertThat(
            SheetForPieces.find(Shape.TRIANGLE, 12, grams(60), millimetres(5), 2, fussy).settled())
        .isTrue();
    SheetForPieces tooMany =
        SheetForPieces.find(Shape.TRIANGLE, 60, grams(90), millimetres(5), 2, fussy);
    assertThat(tooMany.settled()).isFalse();
    assertThat(tooMany.advice()).extracting(Advice::code).contains("SHEET_NOT_SETTLED");
    assertThat(tooMany.scale()).isBetween(2.9, 3.0);
    assertThatThrownBy(
            () ->
                SheetForPieces.find(
                    Shape.TRIANGLE,
                    6,
                    grams(60),
                    millimetres(5),
                    2,
                    scale -> {
                      throw new BakeryException(Reason.MISSING, "no fat", "none", "some");
                    }))
        .hasMessageContaining("no fat");
  }

  @Example
  void ordersThatMakeNoSenseAreRefused() {
    DoubleFunction<WeighedSheet> sheet = rolled(1000, 300, 4);
    assertThatThrownBy(
            () -> SheetForPieces.find(Shape.TRIANGLE, 0, grams(60), millimetres(5), 2, sheet))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("0 pieces");
    assertThatThrownBy(
            () -> SheetForPieces.find(Shape.TRIANGLE, 999_999, grams(60), millimetres(5), 2, sheet))
        .hasMessageContaining("give up to 100000");
    assertThatThrownBy(
            () -> SheetForPieces.find(Shape.TRIANGLE, 6, grams(0), millimetres(5), 2, sheet))
        .hasMessageContaining("0 g");
    assertThatThrownBy(
            () -> SheetForPieces.find(Shape.TRIANGLE, 6, grams(9), millimetres(5), 0, sheet))
        .hasMessageContaining("height 0.0");
  }
}
