package org.tourage.makeup;

import static org.tourage.quantity.BakeryUnits.MILLIMETRE;

import java.util.ArrayList;
import java.util.List;
import org.tourage.makeup.CuttingPlan.Cut;
import org.tourage.makeup.CuttingPlan.Point;
import org.tourage.quantity.AmountFormat;

/** Where the pieces of a plan in strips lie, and where the knife goes; millimetres inside. */
final class StripGeometry {
  /** Forgives the rounding of sizes that fit exactly. */
  private static final double FIT = 1e-9;

  private final CuttingPlan plan;
  private final double edge;
  private final double base;
  private final double height;

  StripGeometry(CuttingPlan plan) {
    this.plan = plan;
    edge = plan.trim().in(MILLIMETRE);
    base = plan.base().in(MILLIMETRE);
    height = plan.height().in(MILLIMETRE);
  }

  List<List<Point>> outlines() {
    List<List<Point>> outlines = new ArrayList<>();
    for (int strip = 0; strip < plan.strips(); strip++) {
      double low = edge + strip * height;
      for (int i = 0; i < plan.perStrip(); i++) {
        outlines.add(outline(i, low, low + height));
      }
    }
    return outlines;
  }

  private List<Point> outline(int i, double low, double high) {
    return switch (plan.shape()) {
      case RECTANGLE -> {
        double left = edge + i * base;
        yield List.of(
            Point.of(left, low),
            Point.of(left + base, low),
            Point.of(left + base, high),
            Point.of(left, high));
      }
      case TRIANGLE -> {
        double left = edge + i * base / 2;
        boolean pointUp = i % 2 == 0;
        double baseY = pointUp ? low : high;
        double tipY = pointUp ? high : low;
        yield List.of(
            Point.of(left, baseY), Point.of(left + base, baseY), Point.of(left + base / 2, tipY));
      }
      case RIGHT_TRIANGLE -> {
        int pair = i / 2;
        double start = edge + pair * base;
        yield i % 2 == 0
            ? List.of(Point.of(start, low), Point.of(start + base, low), Point.of(start, high))
            : List.of(
                Point.of(start + base, low), Point.of(start + base, high), Point.of(start, high));
      }
    };
  }

  List<Cut> cutLines() {
    List<Cut> lines = new ArrayList<>();
    double length = plan.sheet().length().in(MILLIMETRE);
    double width = plan.sheet().width().in(MILLIMETRE);
    if (edge > 0) {
      lines.add(Cut.of(0, edge, length, edge));
      lines.add(Cut.of(0, width - edge, length, width - edge));
      lines.add(Cut.of(edge, edge, edge, width - edge));
      lines.add(Cut.of(length - edge, edge, length - edge, width - edge));
    }
    for (int strip = 1; strip <= plan.strips(); strip++) {
      double y = edge + strip * height;
      if (y < (width - edge) * (1 - FIT)) {
        lines.add(Cut.of(edge, y, length - edge, y));
      }
    }
    double end = (length - edge) * (1 - FIT);
    for (int strip = 0; strip < plan.strips(); strip++) {
      double low = edge + strip * height;
      for (int i = 0; i <= plan.perStrip(); i++) {
        across(lines, i, low, end);
      }
    }
    return lines;
  }

  private void across(List<Cut> lines, int i, double low, double end) {
    double high = low + height;
    switch (plan.shape()) {
      case RECTANGLE -> {
        double x = edge + i * base;
        if (i > 0 && x < end) {
          lines.add(Cut.of(x, low, x, high));
        }
      }
      case TRIANGLE -> {
        // slant i runs between mark i on one edge and the mark half a base further on the other
        double x = edge + i * base / 2;
        lines.add(
            i % 2 == 0 ? Cut.of(x, low, x + base / 2, high) : Cut.of(x, high, x + base / 2, low));
      }
      case RIGHT_TRIANGLE -> {
        int pair = i / 2;
        double x = edge + pair * base;
        if (i % 2 == 1) {
          lines.add(Cut.of(x + base, low, x, high));
        } else if (i > 0 && x < end) {
          lines.add(Cut.of(x, low, x, high));
        }
      }
    }
  }

  List<String> inWords(AmountFormat format) {
    List<String> cuts = new ArrayList<>();
    if (edge > 0) {
      cuts.add("trim " + format.length(plan.trim()) + " off each edge");
    }
    for (int strip = 1; strip < plan.strips(); strip++) {
      cuts.add("cut along at y = " + format.length(MILLIMETRE.amount(edge + strip * height)));
    }
    String every = format.length(plan.base());
    String first = format.length(plan.trim());
    switch (plan.shape()) {
      case RECTANGLE -> {
        if (plan.perStrip() > 1) {
          cuts.add("cut across every " + every + ", from x = " + first);
        }
      }
      case TRIANGLE -> {
        cuts.add(
            "mark one edge of each strip every "
                + every
                + " from x = "
                + first
                + ", the other edge every "
                + every
                + " from x = "
                + format.length(MILLIMETRE.amount(edge + base / 2)));
        cuts.add("cut from mark to mark, to and fro");
      }
      case RIGHT_TRIANGLE -> {
        cuts.add("cut across every " + every + ", from x = " + first);
        cuts.add("cut each rectangle from its lower right to its upper left corner");
      }
    }
    return cuts;
  }
}
