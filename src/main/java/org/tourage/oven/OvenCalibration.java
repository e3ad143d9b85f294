package org.tourage.oven;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.PERCENT;
import static org.tourage.quantity.BakeryUnits.SECOND;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.BoundedLeastSquares;
import org.tourage.internal.Numbers;
import org.tourage.physics.Constituents;
import org.tourage.physics.Solid;
import org.tourage.quantity.Amount;
import org.tourage.quantity.BakeryUnits;
import org.tourage.quantity.Given;
import org.tourage.quantity.TemperatureDifference;

/**
 * Makes an oven model fit your oven: from readings of an oven thermometer, of a probe in a piece,
 * or of what pieces lose, the offset, the lag and the coefficient of convection are found by least
 * squares (Gauss and Newton, within bounds), with their uncertainty. Two or three readings at
 * different times are enough; what the readings do not tell stays near the start. Immutable.
 *
 * <pre>{@code
 * OvenCalibration.of(OvenModel.HOUSEHOLD)
 *     .air(profile, minutes(3), celsius(182)).air(profile, minutes(9), celsius(205))
 *     .core(piece, profile, minutes(12), celsius(80)).fit();
 * }</pre>
 *
 * @param start the oven to start from
 * @param readings what was read
 */
public record OvenCalibration(OvenModel start, List<Reading> readings) implements Serializable {
  private static final int ROUNDS = 25;
  private static final double SETTLED = 1e-6;

  /**
   * Standard uncertainties of a reading: an oven thermometer, a probe, a balance (common practice).
   */
  private static final double AIR_KELVIN = 4;

  private static final double CORE_KELVIN = 2;
  private static final double LOSS_POINTS = 0.5;

  /** What is known before any reading: standard deviations of offset (K), ln lag and ln h. */
  private static final double[] PRIOR = {20, 0.7, 0.5};

  private static final double[] LOW = {-60, Math.log(20), Math.log(2)};
  private static final double[] HIGH = {60, Math.log(2400), Math.log(80)};
  private static final double[] STEP = {0.5, 0.02, 0.02};

  /** What was read. */
  public enum Kind {
    /** The air of the oven, °C. */
    AIR,
    /** The core of a piece, °C. */
    CORE,
    /** What a piece has lost, percent. */
    LOSS
  }

  /**
   * A reading.
   *
   * @param kind what was read
   * @param piece the piece; for a reading of the air any piece
   * @param profile what the oven was set to
   * @param time since the door closed
   * @param value °C or percent
   */
  public record Reading(
      Kind kind, BakePiece piece, OvenProfile profile, Amount<Time> time, double value)
      implements Serializable {
    /**
     * Checks the time.
     *
     * @param kind what was read
     * @param piece the piece
     * @param profile what the oven was set to
     * @param time since the door closed
     * @param value °C or percent
     */
    public Reading {
      requireNonNull(kind, "kind");
      requireNonNull(piece, "piece");
      requireNonNull(profile, "profile");
      if (time.value() <= 0 || time.compareTo(profile.total()) > 0 || !Double.isFinite(value)) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "no reading can be from this time",
            value + " after " + time,
            "give a time within the profile, " + profile.total());
      }
    }

    private double uncertainty() {
      return switch (kind) {
        case AIR -> AIR_KELVIN;
        case CORE -> CORE_KELVIN;
        case LOSS -> LOSS_POINTS;
      };
    }
  }

  /**
   * What was found.
   *
   * @param oven the calibrated oven
   * @param offsetUncertainty standard uncertainty of its offset
   * @param lagUncertainty standard uncertainty of its lag as a share
   * @param convectionUncertainty standard uncertainty of its coefficient as a share
   * @param misses how far each reading is from the model, in its unit
   */
  public record Result(
      OvenModel oven,
      TemperatureDifference offsetUncertainty,
      double lagUncertainty,
      double convectionUncertainty,
      List<Double> misses)
      implements Serializable {
    /**
     * Copies the list.
     *
     * @param oven the calibrated oven
     * @param offsetUncertainty standard uncertainty of its offset
     * @param lagUncertainty standard uncertainty of its lag as a share
     * @param convectionUncertainty standard uncertainty of its coefficient as a share
     * @param misses how far each reading is from the model, in its unit
     */
    public Result {
      misses = List.copyOf(misses);
    }

    /**
     * What is unsure about it.
     *
     * @return advice where the readings say little about a figure
     */
    public List<Advice> advice() {
      List<Advice> advice = new ArrayList<>();
      if (lagUncertainty > 0.4 || convectionUncertainty > 0.3) {
        advice.add(
            Advice.of(
                "CALIBRATION_WEAK",
                "the readings say little about "
                    + (lagUncertainty > 0.4 ? "the lag" : "the convection"),
                "Add a reading "
                    + (lagUncertainty > 0.4
                        ? "of the air soon after a change of the set point"
                        : "of a core or of a weight loss")));
      }
      return advice;
    }

    /** {@code oven 12 K below its set point, …; ± 3 K, lag ± 20 %, convection ± 12 %}. */
    @Override
    public String toString() {
      return oven
          + "; ± "
          + Numbers.decimals(offsetUncertainty.celsiusDegrees(), 1)
          + " K, lag ± "
          + Numbers.decimals(100 * lagUncertainty, 0)
          + " %, convection ± "
          + Numbers.decimals(100 * convectionUncertainty, 0)
          + " %";
    }
  }

  /**
   * Copies the list.
   *
   * @param start the oven to start from
   * @param readings what was read
   */
  public OvenCalibration {
    requireNonNull(start, "start");
    readings = List.copyOf(readings);
  }

  /**
   * Starts from an oven, without readings yet.
   *
   * @param oven the oven
   * @return the calibration
   */
  public static OvenCalibration of(OvenModel oven) {
    return new OvenCalibration(oven, List.of());
  }

  /** For what needs a piece and does not look at it. */
  static BakePiece anyPiece() {
    return BakePiece.of(
        Solid.slab(BakeryUnits.MILLIMETRE.amount(30)),
        new Constituents(0.4, 0.08, 0.02, 0.47, 0.02, 0.01));
  }

  private OvenCalibration with(Reading reading) {
    List<Reading> more = new ArrayList<>(readings);
    more.add(reading);
    return new OvenCalibration(start, more);
  }

  /**
   * Adds a reading of an oven thermometer.
   *
   * @param profile what the oven was set to
   * @param time since the door closed
   * @param reading the temperature
   * @return the calibration
   */
  public OvenCalibration air(
      OvenProfile profile, Quantity<Time> time, Quantity<Temperature> reading) {
    return with(
        new Reading(
            Kind.AIR,
            anyPiece(),
            profile,
            Given.time("the time", time),
            CELSIUS.measure("the reading", reading)));
  }

  /**
   * Adds a reading of a probe in the middle of a piece.
   *
   * @param piece the piece
   * @param profile what the oven was set to
   * @param time since the door closed
   * @param reading the temperature
   * @return the calibration
   */
  public OvenCalibration core(
      BakePiece piece, OvenProfile profile, Quantity<Time> time, Quantity<Temperature> reading) {
    return with(
        new Reading(
            Kind.CORE,
            piece,
            profile,
            Given.time("the time", time),
            CELSIUS.measure("the reading", reading)));
  }

  /**
   * Adds what a piece had lost.
   *
   * @param piece the piece
   * @param profile what the oven was set to
   * @param time since the door closed
   * @param loss the share of its mass
   * @return the calibration
   */
  public OvenCalibration loss(
      BakePiece piece, OvenProfile profile, Quantity<Time> time, Quantity<Dimensionless> loss) {
    return with(
        new Reading(
            Kind.LOSS,
            piece,
            profile,
            Given.time("the time", time),
            PERCENT.measure("the loss", loss)));
  }

  private OvenModel oven(double[] p) {
    double h = Math.exp(p[2]);
    return start
        .withOffset(TemperatureDifference.ofCelsiusDegrees(p[0]))
        .withLag(SECOND.amount(Math.exp(p[1])))
        .withConvection(h, start.fan() * h / start.still());
  }

  private static double model(OvenModel oven, Reading reading) {
    double seconds = reading.time.in(SECOND);
    if (reading.kind == Kind.AIR) {
      return new OvenCourse(oven, reading.profile).oven(seconds);
    }
    Bake bake =
        Bake.of(reading.piece, oven, cut(reading.profile, reading.time), DoughKind.RICH, 24, 150);
    return reading.kind == Kind.CORE
        ? bake.end().core().in(CELSIUS)
        : bake.end().loss().in(PERCENT);
  }

  /** The first part of a profile. */
  private static OvenProfile cut(OvenProfile profile, Amount<Time> time) {
    double left = time.in(SECOND) / 60;
    List<OvenProfile.Step> steps = new ArrayList<>();
    for (OvenProfile.Step step : profile.steps()) {
      double minutes = Math.min(left, step.duration().in(SECOND) / 60);
      if (minutes > 1e-9) {
        boolean ramped = step.ramp().in(SECOND) / 60 > minutes;
        // a ramp that is cut short is followed to where it came
        steps.add(ramped ? step : step.lasting(minutes));
        left -= minutes;
      }
    }
    return new OvenProfile(steps);
  }

  /**
   * Fits.
   *
   * @return the calibrated oven with its uncertainty
   * @throws BakeryException if there is no reading
   */
  public Result fit() {
    if (readings.isEmpty()) {
      throw new BakeryException(
          Reason.MISSING, "nothing was read", "no reading", "add at least one, better three");
    }
    double[] prior = {
      start.offset().celsiusDegrees(), Math.log(start.lag().in(SECOND)), Math.log(start.still())
    };
    double[] p = prior.clone();
    int n = readings.size();
    double[][] a = new double[n + 3][3];
    for (int round = 0; round < ROUNDS; round++) {
      double[] at = values(p);
      double[][] slopes = new double[n][3];
      for (int j = 0; j < 3; j++) {
        double[] moved = p.clone();
        double step = p[j] + STEP[j] > HIGH[j] ? -STEP[j] : STEP[j];
        moved[j] += step;
        double[] there = values(moved);
        for (int i = 0; i < n; i++) {
          slopes[i][j] = (there[i] - at[i]) / step;
        }
      }
      double[] b = new double[n + 3];
      for (int i = 0; i < n; i++) {
        double u = readings.get(i).uncertainty();
        b[i] = (readings.get(i).value - at[i]) / u;
        for (int j = 0; j < 3; j++) {
          a[i][j] = slopes[i][j] / u;
          b[i] += a[i][j] * p[j];
        }
      }
      for (int j = 0; j < 3; j++) {
        Arrays.fill(a[n + j], 0);
        a[n + j][j] = 1 / PRIOR[j];
        b[n + j] = prior[j] / PRIOR[j];
      }
      double[] next = BoundedLeastSquares.solve(a, b, LOW, HIGH, p);
      double change = 0;
      for (int j = 0; j < 3; j++) {
        change = Math.max(change, Math.abs(next[j] - p[j]) / PRIOR[j]);
      }
      p = next;
      if (change < SETTLED) {
        break;
      }
    }
    double[] at = values(p);
    List<Double> misses = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      misses.add(readings.get(i).value - at[i]);
    }
    double[] u = uncertainties(a);
    return new Result(oven(p), TemperatureDifference.ofCelsiusDegrees(u[0]), u[1], u[2], misses);
  }

  private double[] values(double[] p) {
    OvenModel oven = oven(p);
    return readings.stream().mapToDouble(r -> model(oven, r)).toArray();
  }

  /** The roots of the diagonal of (AᵀA)⁻¹, by the least squares of the unit vectors. */
  private static double[] uncertainties(double[][] a) {
    double[] free = {Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY};
    double[] open = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
    double[] squares = new double[3];
    for (int i = 0; i < a.length; i++) {
      double[] unit = new double[a.length];
      unit[i] = 1;
      // column i of the pseudo-inverse; the sum of the squares of its rows is the covariance
      double[] x = BoundedLeastSquares.solve(a, unit, free, open, new double[3]);
      for (int j = 0; j < 3; j++) {
        squares[j] += x[j] * x[j];
      }
    }
    return new double[] {Math.sqrt(squares[0]), Math.sqrt(squares[1]), Math.sqrt(squares[2])};
  }
}
