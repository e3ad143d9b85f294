package org.tourage.doughtemperature;

import static org.tourage.quantity.BakeryUnits.JOULE;

import java.util.List;

/**
 * The arithmetic of the heat balance, in kg, J and °C: parts that are given, a liquid that may be
 * none, and heat from outside. All heats count from 0 °C.
 */
record Mixture(List<MixPart> parts, double liquid, double liquidSpecificHeat, double extra) {
  double liquidCapacity() {
    return liquid * liquidSpecificHeat;
  }

  double partsCapacity() {
    double sum = 0;
    for (MixPart part : parts) {
      sum += part.capacity();
    }
    return sum;
  }

  double capacity() {
    return liquidCapacity() + partsCapacity();
  }

  double heatOfParts() {
    double sum = 0;
    for (MixPart part : parts) {
      sum += part.heat();
    }
    return sum;
  }

  /** What the frozen parts take to thaw. */
  double melting() {
    double sum = 0;
    for (MixPart part : parts) {
      sum += part.melting().in(JOULE);
    }
    return sum;
  }

  /** The dough from liquid at a temperature. */
  double dough(double liquidCelsius) {
    return (extra + heatOfParts() + liquidCapacity() * liquidCelsius) / capacity();
  }

  /** The temperature that the liquid needs; below 0 °C a demand for cold on the same line. */
  double liquidFor(double dough) {
    double heat = extra + heatOfParts();
    return dough - (heat - partsCapacity() * dough) / liquidCapacity();
  }

  /** The liquid temperature that brings what liquid and ice together bring. */
  double iced(double tap, double ice, double iceCelsius) {
    double heat =
        (liquid - ice) * liquidSpecificHeat * tap
            + ice * (HeatBalance.ICE_SPECIFIC_HEAT * iceCelsius - HeatBalance.HEAT_OF_MELTING);
    return heat / liquidCapacity();
  }

  /**
   * Kilograms of ice that turn liquid at tap into liquid as it is needed; may exceed the liquid.
   */
  double ice(double tap, double needed, double iceCelsius) {
    double taken =
        liquidSpecificHeat * tap
            + HeatBalance.HEAT_OF_MELTING
            - HeatBalance.ICE_SPECIFIC_HEAT * iceCelsius;
    return liquidCapacity() * Math.max(0, tap - needed) / taken;
  }

  /** The measured heat from outside: what brings liquid at one temperature to the dough. */
  double extraFor(double liquidCelsius, double dough) {
    return capacity() * dough - heatOfParts() - liquidCapacity() * liquidCelsius;
  }

  Mixture withExtra(double joules) {
    return new Mixture(parts, liquid, liquidSpecificHeat, joules);
  }
}
