package org.tourage.makeup;

/** The outline of a piece. */
public enum Shape {
  /** Rectangles and squares, side by side. */
  RECTANGLE,
  /** Isosceles triangles, point up and point down in turn along a strip. */
  TRIANGLE,
  /** Right triangles, two to a rectangle along a strip. */
  RIGHT_TRIANGLE;

  /** Length of a strip that so many pieces with this base need. */
  double usedLength(int pieces, double base) {
    return switch (this) {
      case RECTANGLE -> pieces * base;
      case TRIANGLE -> (pieces + 1) * base / 2;
      case RIGHT_TRIANGLE -> {
        int pairs = (pieces + 1) / 2;
        yield pairs * base;
      }
    };
  }

  /** How many pieces with this base a strip of this length gives. */
  int perStrip(double length, double base) {
    int bases = fit(length / base);
    return switch (this) {
      case RECTANGLE -> bases;
      case TRIANGLE -> Math.max(0, fit(2 * length / base) - 1);
      case RIGHT_TRIANGLE -> 2 * bases;
    };
  }

  /** The base of so many pieces that use the whole strip. */
  double baseFor(int pieces, double length) {
    return length / usedLength(pieces, 1);
  }

  /** The part of base times height that a piece covers. */
  double fill() {
    return this == RECTANGLE ? 1 : 0.5;
  }

  /** Whole pieces; forgives the rounding of sizes that fit exactly. */
  static int fit(double ratio) {
    return (int) Math.floor(ratio * (1 + 1e-9));
  }
}
