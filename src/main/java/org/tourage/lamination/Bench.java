package org.tourage.lamination;

/**
 * What the sheet lies on. Figures of F.P. Incropera and others, Fundamentals of Heat and Mass
 * Transfer, tables A.1 and A.3 (from memory); thicknesses are usual ones.
 */
public enum Bench {
  /** Hardwood, 40 mm. */
  WOOD(0.16, 720, 1255, 0.040),
  /** Stainless steel sheet, 2 mm, air below. */
  STEEL(14.9, 7900, 477, 0.002),
  /** Granite or marble, 30 mm. */
  STONE(2.79, 2630, 775, 0.030),
  /** A rack or a thin tray: air on both sides. */
  RACK(0, 0, 0, 0);

  private final double conductivity;
  private final double density;
  private final double specificHeat;
  private final double thickness;

  Bench(double conductivity, double density, double specificHeat, double thickness) {
    this.conductivity = conductivity;
    this.density = density;
    this.specificHeat = specificHeat;
    this.thickness = thickness;
  }

  double conductivity() {
    return conductivity;
  }

  double density() {
    return density;
  }

  double specificHeat() {
    return specificHeat;
  }

  double thickness() {
    return thickness;
  }
}
