package org.tourage.quantity;

/** The physical kinds that the library knows by name. */
public enum Kind {
  /** Mass, kept in kilograms. */
  MASS("mass", "500 g", "kg"),
  /** Volume, kept in cubic metres. */
  VOLUME("volume", "1 1/2 cups", "m^3"),
  /** Length, kept in metres. */
  LENGTH("length", "24 in", "m"),
  /** Time, kept in seconds. */
  TIME("time", "1 h 30 min", "s"),
  /** A thermometer reading, kept in kelvins. */
  TEMPERATURE("temperature", "75 °F", "K"),
  /** A ratio, kept as a plain number. */
  RATIO("percentage", "62 %", ""),
  /** Energy, kept in joules. */
  ENERGY("energy", "12 kJ", "kg m^2 s^-2"),
  /** Density, kept in kilograms per cubic metre. */
  DENSITY("density", "1200 kg/m³", "kg m^-3"),
  /** Power, kept in watts. */
  POWER("power", "750 W", "kg m^2 s^-3"),
  /** Anything else, kept in the system unit of the units API. */
  OTHER("quantity", "1", "?");

  private final String label;
  private final String example;
  private final String base;

  Kind(String label, String example, String base) {
    this.base = base;
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

  String withArticle() {
    return ("aeiou".indexOf(label.charAt(0)) >= 0 ? "an " : "a ") + label;
  }

  /** The base units that a unit of this kind is made of. */
  String base() {
    return base;
  }

  /** The kind whose units are made of these base units. */
  static Kind ofBase(String base) {
    for (Kind kind : values()) {
      if (kind.base.equals(base)) {
        return kind;
      }
    }
    return OTHER;
  }
}
