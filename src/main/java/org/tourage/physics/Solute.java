package org.tourage.physics;

/** What is dissolved in the water of a dough, a crumb or a filling. */
public enum Solute {
  /** Sucrose: 342.30 g/mol, K 6.47 in {@link Norrish1966} (from memory). */
  SUCROSE(342.30),
  /**
   * Glucose: 180.16 g/mol, K 2.25 in {@link Norrish1966} (from memory). Fructose and invert sugar
   * are taken as glucose.
   */
  GLUCOSE(180.16),
  /** Sodium chloride: 58.44 g/mol, by {@link Pitzer1973}. */
  SODIUM_CHLORIDE(58.44),
  /** Potassium chloride: 74.55 g/mol, by {@link Pitzer1973}. */
  POTASSIUM_CHLORIDE(74.55);

  private final double gramsPerMole;

  Solute(double gramsPerMole) {
    this.gramsPerMole = gramsPerMole;
  }

  double gramsPerMole() {
    return gramsPerMole;
  }

  /** What it is called. */
  String word() {
    return name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
  }
}
