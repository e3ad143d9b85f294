package org.tourage.quantity;

/** The physical kinds that the library knows by name. */
public enum Kind {
  /** Mass, kept in kilograms. */
  MASS("mass", "500 g"),
  /** Volume, kept in cubic metres. */
  VOLUME("volume", "1 1/2 cups"),
  /** Length, kept in metres. */
  LENGTH("length", "24 in"),
  /** Time, kept in seconds. */
  TIME("time", "1 h 30 min"),
  /** A thermometer reading, kept in kelvins. */
  TEMPERATURE("temperature", "75 °F"),
  /** A ratio, kept as a plain number. */
  RATIO("percentage", "62 %"),
  /** Energy, kept in joules. */
  ENERGY("energy", "12 kJ"),
  /** Density, kept in kilograms per cubic metre. */
  DENSITY("density", "1200 kg/m³"),
  /** Power, kept in watts. */
  POWER("power", "750 W"),
  /** Anything else, kept in the system unit of the units API. */
  OTHER("quantity", "1");

  private final String label;
  private final String example;

  Kind(String label, String example) {
    this.label = label;
    this.example = example;
  }

  /**
   * The kind in words.
   *
   * @return for example {@code mass}
   */
  public String label() {
    return label;
  }

  String example() {
    return example;
  }
}
