package org.tourage.fermentation;

/**
 * What lies between the dough and the air. Resistance = thickness / conductivity, conductivities
 * from memory of F.P. Incropera and others, Fundamentals of Heat and Mass Transfer, appendix A.
 */
public enum Cover {
  /** Nothing. */
  NONE("uncovered", 0),
  /** Plastic film that lies on the dough: 15 µm of polyethylene, 0.33 W/(m·K). */
  FILM("under film", 15e-6 / 0.33),
  /** A plastic tub: 2 mm of polypropylene, 0.2 W/(m·K). */
  TUB("in a plastic tub", 2e-3 / 0.2),
  /**
   * A bag or box with a layer of still air of 5 mm, 0.025 W/(m·K), about the dough. Radiation goes
   * across it beside conduction: 4·ε·σ·T³ at 15 °C with ε = 1/(1/0.9 + 1/0.9 − 1), dough and
   * plastic both 0.9 (from memory of the same book), so that 0.106 m²·K/W are left of 0.2.
   */
  AIR_GAP("in a loose bag or box", 1 / (0.025 / 5e-3 + acrossTheGap()));

  private final String words;
  private final double resistance;

  Cover(String words, double resistance) {
    this.words = words;
    this.resistance = resistance;
  }

  /** W/(m²·K) by radiation between two near faces. */
  private static double acrossTheGap() {
    double kelvin = 288.15;
    double emissivity = 1 / (1 / 0.9 + 1 / 0.9 - 1);
    return 4 * emissivity * 5.670374419e-8 * kelvin * kelvin * kelvin;
  }

  /**
   * What it is in words.
   *
   * @return for example {@code under film}
   */
  public String words() {
    return words;
  }

  /**
   * How much it holds the heat back.
   *
   * @return m²·K/W
   */
  public double resistance() {
    return resistance;
  }
}
