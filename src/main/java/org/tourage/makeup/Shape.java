package org.tourage.makeup;

/** The outline of a piece. */
public enum Shape {
  /** Rectangles and squares, side by side. */
  RECTANGLE,
  /** Isosceles triangles, point up and point down in turn along a strip. */
  TRIANGLE
}
