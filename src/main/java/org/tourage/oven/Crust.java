package org.tourage.oven;

/**
 * Starch and colour while a piece bakes.
 *
 * <p>Starch: dα/dt = k·(1 − α), k = 2.8e18·exp(−138 000/(R·T)) 1/s at the coldest place (B. Zanoni,
 * A. Schiraldi and R. Simonetta, J. Food Eng. 24 (1995) 25, constants from memory). Sugar and fat
 * raise the temperature at which it sets: some kelvin by the kind of dough.
 *
 * <p>Colour: dΔE/dt = k·(52 − ΔE), k = 42 000·exp(−64 151/(R·T)) 1/s at the temperature of the
 * crust (B. Zanoni, C. Peri and D. Bruno, LWT 28 (1995) 604–609), fitted from 140 to 250 °C on
 * dried crumb of lean bread; 52 is burnt. An index, no promise: sugar, milk and egg wash brown
 * sooner.
 */
final class Crust {
  /** From here on a crust nears burnt: a choice of ours, four fifths of the way. */
  static final double DARK = 42;

  static final String SOURCE = "B. Zanoni, C. Peri and D. Bruno, LWT 28 (1995) 604-609";

  private static final double GAS_CONSTANT = 8.314462618;
  private static final double KELVIN = 273.15;
  private static final double STARCH_RATE = 2.8e18;
  private static final double STARCH_ENERGY = 138_000;
  private static final double COLOUR_RATE = 42_000;
  private static final double COLOUR_ENERGY = 64_151;
  private static final double BURNT = 52;

  private final double later;
  private double seconds;
  private double raw = 1;
  private double pale = 1;

  Crust(DoughKind kind) {
    this.later = kind.starchLater();
  }

  private static double rate(double factor, double energy, double celsius) {
    return factor * StrictMath.exp(-energy / (GAS_CONSTANT * (celsius + KELVIN)));
  }

  /** Goes on to a time with the temperatures that it has now. */
  void follow(double now, double coldest, double surface) {
    double dt = now - seconds;
    seconds = now;
    raw *= StrictMath.exp(-rate(STARCH_RATE, STARCH_ENERGY, coldest - later) * dt);
    pale *= StrictMath.exp(-rate(COLOUR_RATE, COLOUR_ENERGY, surface) * dt);
  }

  double starch() {
    return 1 - raw;
  }

  double colour() {
    return BURNT * (1 - pale);
  }
}
