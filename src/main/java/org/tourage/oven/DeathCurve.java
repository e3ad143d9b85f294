package org.tourage.oven;

import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import java.util.List;
import org.tourage.oven.ThermalDeath.Tested;

/**
 * D by temperature: log D on straight lines between the tested temperatures, constant above them.
 *
 * @param table the measured pairs, rising in temperature
 */
record DeathCurve(List<Tested> table) {

  private Tested last() {
    return table.get(table.size() - 1);
  }

  /**
   * The log reductions of a stretch between two temperatures, exact; cooler than tested is none.
   */
  double reductions(double from, double to, double duration) {
    return from == to ? held(from, duration) : ramped(from, to, duration);
  }

  /** D in minutes at a temperature that is not below the lowest tested one. */
  double minutes(double celsius) {
    for (int i = 1; i < table.size(); i++) {
      double high = table.get(i).at().in(CELSIUS);
      if (celsius <= high) {
        double low = table.get(i - 1).at().in(CELSIUS);
        double part = (celsius - low) / (high - low);
        double slow = StrictMath.log10(table.get(i - 1).decimal().in(MINUTE));
        double fast = StrictMath.log10(table.get(i).decimal().in(MINUTE));
        // the ends are what was measured, to the last bit
        return celsius == high
            ? table.get(i).decimal().in(MINUTE)
            : celsius == low
                ? table.get(i - 1).decimal().in(MINUTE)
                : StrictMath.pow(10, slow + part * (fast - slow));
      }
    }
    return last().decimal().in(MINUTE);
  }

  private double held(double celsius, double duration) {
    return celsius < table.get(0).at().in(CELSIUS) ? 0 : duration / minutes(celsius);
  }

  /** A ramp: the parts between tested temperatures, and the part above them. */
  private double ramped(double from, double to, double duration) {
    double bottom = Math.min(from, to);
    double top = Math.max(from, to);
    double perKelvin = duration / (top - bottom);
    double sum = 0;
    for (int i = 1; i < table.size(); i++) {
      double low = Math.max(bottom, table.get(i - 1).at().in(CELSIUS));
      double high = Math.min(top, table.get(i).at().in(CELSIUS));
      if (low < high) {
        sum += perKelvin * (high - low) * mean(1 / minutes(low), 1 / minutes(high));
      }
    }
    double above = top - Math.max(bottom, last().at().in(CELSIUS));
    return above > 0 ? sum + perKelvin * above / last().decimal().in(MINUTE) : sum;
  }

  /** The exact mean of a rate that runs exponentially from one end to the other. */
  static double mean(double from, double to) {
    double steep = StrictMath.log(to / from);
    // its series where the ends are close
    return Math.abs(steep) < 1e-6 ? (from + to) / 2 : (to - from) / steep;
  }

  /** The line of least squares of log D, with the standard uncertainty of its slope. */
  record Line(double slope, double uncertainty) {
    static Line through(List<Tested> pairs) {
      int n = pairs.size();
      double meanX = 0;
      double meanY = 0;
      for (Tested pair : pairs) {
        meanX += pair.at().in(CELSIUS) / n;
        meanY += StrictMath.log10(pair.decimal().in(MINUTE)) / n;
      }
      double xx = 0;
      double xy = 0;
      double yy = 0;
      for (Tested pair : pairs) {
        double x = pair.at().in(CELSIUS) - meanX;
        double y = StrictMath.log10(pair.decimal().in(MINUTE)) - meanY;
        xx += x * x;
        xy += x * y;
        yy += y * y;
      }
      double slope = xx > 0 ? xy / xx : 0;
      double scatter = Math.max(0, yy - slope * xy);
      return new Line(slope, n > 2 && xx > 0 ? Math.sqrt(scatter / (n - 2) / xx) : 0);
    }
  }
}
