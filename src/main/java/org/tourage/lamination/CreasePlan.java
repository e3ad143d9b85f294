package org.tourage.lamination;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Fraction;

/**
 * A fold with creases anywhere, crease by crease. Positions are exact fractions of the length of
 * the flat sheet, measured from its left end where it lay before the first crease. Where panels
 * overlap only in part the stack differs along the length; {@link #regions} reports it region by
 * region.
 *
 * <pre>{@code
 * // a book fold with the seam off centre
 * CreasePlan.flat()
 *     .left(Fraction.of(1, 8))     // left flap to the seam at 1/4
 *     .right(Fraction.of(5, 8))    // right flap to the same seam
 *     .right(Fraction.of(3, 8));   // close
 * }</pre>
 *
 * <p>Immutable and serialisable.
 */
public final class CreasePlan implements Serializable {
  private static final long serialVersionUID = 1L;

  /** More panels than this are refused. */
  private static final int MOST_PANELS = 1024;

  /** Part of the flat sheet that lies over an interval. */
  private record Panel(Fraction from, Fraction to, boolean turned) implements Serializable {}

  /**
   * A stretch of the folded sheet in which the stack is the same.
   *
   * @param from its left end, in lengths of the flat sheet
   * @param to its right end
   * @param panels how many panels lie over one another
   * @param layers the layers, touching faces as one
   */
  public record Region(Fraction from, Fraction to, int panels, LayerCount layers)
      implements Serializable {
    /**
     * Checks that nothing is missing.
     *
     * @param from its left end, in lengths of the flat sheet
     * @param to its right end
     * @param panels how many panels lie over one another
     * @param layers the layers, touching faces as one
     */
    public Region {
      requireNonNull(from, "from");
      requireNonNull(to, "to");
      requireNonNull(layers, "layers");
    }

    /** {@code 0 to 1/4: 4 panels, 12 fat layers, 13 dough layers}. */
    @Override
    public String toString() {
      return from + " to " + to + ": " + panels + " panels, " + layers;
    }
  }

  /** The panels, bottom to top. */
  private final List<Panel> panels;

  private CreasePlan(List<Panel> panels) {
    this.panels = List.copyOf(panels);
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof CreasePlan that && panels.equals(that.panels);
  }

  @Override
  public int hashCode() {
    return panels.hashCode();
  }

  /**
   * The flat sheet.
   *
   * @return a plan without creases
   */
  public static CreasePlan flat() {
    return new CreasePlan(List.of(new Panel(Fraction.ZERO, Fraction.ONE, false)));
  }

  /**
   * Folds what lies left of a crease over the rest.
   *
   * @param crease where, inside the folded sheet
   * @return the plan
   * @throws BakeryException if nothing lies on one side of the crease
   */
  public CreasePlan left(Fraction crease) {
    requireNonNull(crease, "crease");
    return fold(crease, true, true);
  }

  /**
   * Folds what lies right of a crease over the rest.
   *
   * @param crease where, inside the folded sheet
   * @return the plan
   * @throws BakeryException if nothing lies on one side of the crease
   */
  public CreasePlan right(Fraction crease) {
    requireNonNull(crease, "crease");
    return fold(crease, false, true);
  }

  /**
   * Folds what lies left of a crease under the rest.
   *
   * @param crease where, inside the folded sheet
   * @return the plan
   * @throws BakeryException if nothing lies on one side of the crease
   */
  public CreasePlan leftUnder(Fraction crease) {
    requireNonNull(crease, "crease");
    return fold(crease, true, false);
  }

  /**
   * Folds what lies right of a crease under the rest.
   *
   * @param crease where, inside the folded sheet
   * @return the plan
   * @throws BakeryException if nothing lies on one side of the crease
   */
  public CreasePlan rightUnder(Fraction crease) {
    requireNonNull(crease, "crease");
    return fold(crease, false, false);
  }

  private CreasePlan fold(Fraction crease, boolean leftMoves, boolean over) {
    List<Panel> still = new ArrayList<>();
    List<Panel> moved = new ArrayList<>();
    for (Panel panel : panels) {
      List<Panel> leftList = leftMoves ? moved : still;
      List<Panel> rightList = leftMoves ? still : moved;
      if (panel.from.compareTo(crease) < 0) {
        leftList.add(new Panel(panel.from, min(panel.to, crease), panel.turned));
      }
      if (panel.to.compareTo(crease) > 0) {
        rightList.add(new Panel(max(panel.from, crease), panel.to, panel.turned));
      }
    }
    if (moved.isEmpty() || still.isEmpty()) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "there is nothing to fold at this crease",
          "crease at " + crease + " of a sheet from " + from() + " to " + to(),
          "put the crease inside the folded sheet");
    }
    List<Panel> mirrored = new ArrayList<>();
    Fraction twice = crease.plus(crease);
    for (int i = moved.size() - 1; i >= 0; i--) {
      Panel panel = moved.get(i);
      mirrored.add(new Panel(twice.minus(panel.to), twice.minus(panel.from), !panel.turned));
    }
    if (still.size() + mirrored.size() > MOST_PANELS) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "too many panels to follow one by one",
          still.size() + mirrored.size() + " panels",
          "fold into up to " + MOST_PANELS);
    }
    List<Panel> result = new ArrayList<>(over ? still : mirrored);
    result.addAll(over ? mirrored : still);
    return new CreasePlan(result);
  }

  private static Fraction min(Fraction a, Fraction b) {
    return a.compareTo(b) <= 0 ? a : b;
  }

  private static Fraction max(Fraction a, Fraction b) {
    return a.compareTo(b) >= 0 ? a : b;
  }

  private Fraction from() {
    return panels.stream().map(Panel::from).reduce(CreasePlan::min).orElseThrow();
  }

  private Fraction to() {
    return panels.stream().map(Panel::to).reduce(CreasePlan::max).orElseThrow();
  }

  /**
   * The length of the folded sheet, in lengths of the flat one.
   *
   * @return the length, exact
   */
  public Fraction length() {
    return to().minus(from());
  }

  /**
   * The mean number of panels over one another: what the fold multiplies the thickness by.
   *
   * @return one over the length, exact
   */
  public Fraction meanPanels() {
    return Fraction.ONE.over(length());
  }

  /**
   * The layers region by region, left to right.
   *
   * @param sheet the layers of the sheet before it is folded
   * @return the regions
   */
  public List<Region> regions(LayerCount sheet) {
    requireNonNull(sheet, "sheet");
    TreeSet<Fraction> ends = new TreeSet<>();
    for (Panel panel : panels) {
      ends.add(panel.from);
      ends.add(panel.to);
    }
    List<Fraction> cuts = new ArrayList<>(ends);
    List<Region> regions = new ArrayList<>();
    for (int i = 1; i < cuts.size(); i++) {
      Fraction a = cuts.get(i - 1);
      Fraction b = cuts.get(i);
      List<Panel> here =
          panels.stream()
              .filter(p -> p.from.compareTo(a) <= 0 && p.to.compareTo(b) >= 0)
              .collect(Collectors.toList());
      regions.add(new Region(a, b, here.size(), pile(here, sheet)));
    }
    return regions;
  }

  private static LayerCount pile(List<Panel> here, LayerCount sheet) {
    long fusedFat = 0;
    long fusedDough = 0;
    for (int i = 1; i < here.size(); i++) {
      Band below = here.get(i - 1).turned ? sheet.bottom() : sheet.top();
      Band above = here.get(i).turned ? sheet.top() : sheet.bottom();
      fusedFat += below == above && below == Band.FAT ? 1 : 0;
      fusedDough += below == above && below == Band.DOUGH ? 1 : 0;
    }
    BigInteger n = BigInteger.valueOf(here.size());
    Panel first = here.get(0);
    Panel last = here.get(here.size() - 1);
    return new LayerCount(
        sheet.fat().multiply(n).subtract(BigInteger.valueOf(fusedFat)),
        sheet.dough().multiply(n).subtract(BigInteger.valueOf(fusedDough)),
        sheet.fatByMultiplication().multiply(n),
        sheet.doughByMultiplication().multiply(n),
        first.turned ? sheet.top() : sheet.bottom(),
        last.turned ? sheet.bottom() : sheet.top());
  }

  /** The panels over one another along the length. */
  @Override
  public String toString() {
    return regions(LayerCount.of(LockIn.HALF)).stream()
        .map(r -> r.from() + " to " + r.to() + ": " + r.panels() + " panels")
        .collect(Collectors.joining("; "));
  }
}
