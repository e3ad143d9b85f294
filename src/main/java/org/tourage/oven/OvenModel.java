package org.tourage.oven;

import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.JOULE;
import static org.tourage.quantity.BakeryUnits.MINUTE;
import static org.tourage.quantity.BakeryUnits.SECOND;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Numbers;
import org.tourage.physics.DryingBody;
import org.tourage.physics.IapwsIf97Saturation;
import org.tourage.physics.TemperatureHistory;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.BakeryUnits;
import org.tourage.quantity.TemperatureDifference;

/**
 * What an oven really does with its set points: it is off by some kelvin, it follows with a lag,
 * and it cools when the door opens for the load. Its air and walls have one temperature. A small
 * household oven is about as in {@link #HOUSEHOLD} (usual figures, common practice); calibrate
 * yours with {@link OvenCalibration}. In a tunnel oven for cake, coefficients of 20 to 48 W/(m²·K)
 * were measured, 75 to 80 % of it by radiation (O.D. Baik and others, J. Food Sci. 64 (1999) 688).
 *
 * @param offset how much hotter it is than its set point
 * @param lag the time constant with which it follows, positive
 * @param still coefficient of convection in still air, W/(m²·K), positive
 * @param fan coefficient of convection with the fan, W/(m²·K), positive
 * @param emissivity between walls and piece, 0 to 1
 * @param doorDrop how far it cools when the door opens for the load
 * @param power of its heating, W, positive
 * @param capacity heat to warm it by a kelvin, J/K, positive
 * @param loss heat that it loses, W/K, positive
 */
public record OvenModel(
    TemperatureDifference offset,
    Amount<Time> lag,
    double still,
    double fan,
    double emissivity,
    TemperatureDifference doorDrop,
    double power,
    double capacity,
    double loss)
    implements Serializable {
  /** A small household oven: usual figures, common practice. */
  public static final OvenModel HOUSEHOLD =
      new OvenModel(
          TemperatureDifference.ZERO,
          SECOND.amount(240),
          9,
          22,
          0.9,
          TemperatureDifference.ofCelsiusDegrees(25),
          2500,
          15_000,
          5);

  /** Vapour pressure in an oven with a load, its vent closed, Pa: a usual figure. */
  private static final double CLOSED_VAPOUR = 8_000;

  /** Vapour pressure with the vent open, Pa: about that of the room, a usual figure. */
  private static final double VENTED_VAPOUR = 2_000;

  /** Vapour pressure in an oven with steam, Pa: a usual figure. */
  private static final double STEAM_VAPOUR = 70_000;

  /** The volume has set at this mean temperature: common practice, 70 to 80 °C. */
  private static final double SET_CELSIUS = 75;

  /**
   * Checks the figures.
   *
   * @param offset how much hotter it is than its set point
   * @param lag the time constant with which it follows, positive
   * @param still coefficient of convection in still air, W/(m²·K), positive
   * @param fan coefficient of convection with the fan, W/(m²·K), positive
   * @param emissivity between walls and piece, 0 to 1
   * @param doorDrop how far it cools when the door opens for the load
   * @param power of its heating, W, positive
   * @param capacity heat to warm it by a kelvin, J/K, positive
   * @param loss heat that it loses, W/K, positive
   */
  public OvenModel {
    boolean air = still > 0 && fan > 0 && emissivity >= 0 && emissivity <= 1;
    boolean heat = power > 0 && capacity > 0 && loss > 0;
    boolean fits = air && heat && lag.value() > 0 && doorDrop.celsiusDegrees() >= 0;
    if (!fits || Double.isInfinite(still + fan + power + capacity + loss)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no oven is like this",
          "lag " + lag + ", " + still + " and " + fan + " W/(m²·K), emissivity " + emissivity,
          "give positive figures and an emissivity from 0 to 1");
    }
  }

  /**
   * The same with another offset.
   *
   * @param hotter how much hotter it is than its set point
   * @return the oven
   */
  public OvenModel withOffset(TemperatureDifference hotter) {
    return new OvenModel(hotter, lag, still, fan, emissivity, doorDrop, power, capacity, loss);
  }

  /**
   * The same with another lag.
   *
   * @param time the time constant
   * @return the oven
   */
  public OvenModel withLag(Quantity<Time> time) {
    return new OvenModel(
        offset, Amount.from(time), still, fan, emissivity, doorDrop, power, capacity, loss);
  }

  /**
   * The same with other coefficients of convection.
   *
   * @param stillAir W/(m²·K)
   * @param withFan W/(m²·K)
   * @return the oven
   */
  public OvenModel withConvection(double stillAir, double withFan) {
    return new OvenModel(
        offset, lag, stillAir, withFan, emissivity, doorDrop, power, capacity, loss);
  }

  /**
   * The same with another fall when the door opens.
   *
   * @param fall how far it cools
   * @return the oven
   */
  public OvenModel withDoorDrop(TemperatureDifference fall) {
    return new OvenModel(offset, lag, still, fan, emissivity, fall, power, capacity, loss);
  }

  /**
   * How long it heats from a room to the first set point of a profile, at full power: C·ln(P/(P −
   * U·ΔT))/U.
   *
   * @param profile the profile
   * @param room the temperature of the room
   * @return the time in minutes; empty if its power is not enough
   */
  public Optional<Amount<Time>> preheating(OvenProfile profile, Quantity<Temperature> room) {
    double rise = profile.steps().get(0).setPoint().in(CELSIUS) - CELSIUS.measure(room);
    double spare = power - loss * rise;
    return spare <= 0
        ? Optional.empty()
        : Optional.of(MINUTE.amount(Math.max(0, capacity / loss * Math.log(power / spare)) / 60));
  }

  /**
   * The energy of a bake: heating up, what the oven loses, and what the load takes.
   *
   * @param profile the profile
   * @param room the temperature of the room
   * @param load what all pieces take
   * @return the energy
   */
  public Amount<Energy> energy(
      OvenProfile profile, Quantity<Temperature> room, Quantity<Energy> load) {
    double cold = CELSIUS.measure(room);
    double first = profile.steps().get(0).setPoint().in(CELSIUS);
    double sum = capacity * Math.max(0, first - cold) + JOULE.measure(load);
    for (OvenProfile.Step step : profile.steps()) {
      sum += loss * Math.max(0, step.setPoint().in(CELSIUS) - cold) * step.duration().in(SECOND);
    }
    return JOULE.amount(sum).to(BakeryUnits.KILOJOULE);
  }

  /**
   * What the oven really does between the set points, from when the door has closed on the load;
   * the steps take their full time.
   *
   * @param profile the profile
   * @return the temperature of air and walls, as stretches of 15 s
   */
  public TemperatureHistory follow(OvenProfile profile) {
    Course course = new Course(this, profile);
    double end = profile.total().in(SECOND);
    int parts = (int) Math.max(1, Math.ceil(end / 15));
    List<TemperatureHistory.Leg> legs = new ArrayList<>();
    for (int i = 0; i < parts; i++) {
      legs.add(
          new TemperatureHistory.Leg(
              SECOND.amount(end / parts),
              CELSIUS.amount(course.celsius(end * i / parts)),
              CELSIUS.amount(course.celsius(end * (i + 1) / parts))));
    }
    return new TemperatureHistory(legs);
  }

  /** The course of one bake; steps may be cut short while it goes on. */
  static final class Course implements DryingBody.Surroundings {
    private final OvenModel oven;
    private final List<OvenProfile.Step> steps;
    private final double[] begins;
    private final double[] from;
    private final double spring;
    private final double startMean;
    private final double linear;
    private double warmest = Double.NEGATIVE_INFINITY;
    private double finished = Double.POSITIVE_INFINITY;

    Course(OvenModel oven, OvenProfile profile) {
      this(oven, profile, 1, 1, 20);
    }

    Course(OvenModel oven, OvenProfile profile, double spring, int dimensions, double startMean) {
      this.oven = oven;
      this.steps = profile.steps();
      this.spring = spring;
      this.startMean = startMean;
      this.linear = 1.0 / dimensions;
      begins = new double[steps.size()];
      from = new double[steps.size()];
      from[0] = target(0) - oven.doorDrop.celsiusDegrees();
      for (int i = 1; i < begins.length; i++) {
        begins[i] = begins[i - 1] + steps.get(i - 1).duration().in(SECOND);
        from[i] = celsius(begins[i], i - 1);
      }
    }

    private double target(int i) {
      return steps.get(i).setPoint().in(CELSIUS) + oven.offset.celsiusDegrees();
    }

    private int stepAt(double seconds) {
      int i = begins.length - 1;
      while (i > 0 && seconds < begins[i]) {
        i--;
      }
      return i;
    }

    @Override
    public double celsius(double seconds) {
      return celsius(seconds, stepAt(seconds));
    }

    /** T = a + b(t − τ) + (T0 − a + bτ)e^(−t/τ) while the set point moves, then towards it. */
    private double celsius(double seconds, int i) {
      double t = seconds - begins[i];
      double tau = oven.lag.in(SECOND);
      double ramp = steps.get(i).ramp().in(SECOND);
      double now = from[i];
      if (ramp > 0) {
        double a = i > 0 ? target(i - 1) : from[0];
        double b = (target(i) - a) / ramp;
        double moving = Math.min(t, ramp);
        now = a + b * (moving - tau) + (now - a + b * tau) * Math.exp(-moving / tau);
        t -= moving;
      }
      return target(i) + (now - target(i)) * Math.exp(-t / tau);
    }

    /** Looks whether the step ends; false when the last one has. */
    boolean goOn(double seconds, double core, double lossPercent) {
      int step = stepAt(seconds);
      boolean ended =
          switch (steps.get(step).end()) {
            case TIME -> false;
            case CORE -> core >= steps.get(step).endValue();
            case LOSS -> lossPercent >= steps.get(step).endValue();
          };
      if (!ended) {
        return seconds < finished;
      }
      if (step == begins.length - 1) {
        finished = seconds;
        return false;
      }
      double earlier = begins[step + 1] - seconds;
      for (int i = step + 1; i < begins.length; i++) {
        begins[i] -= earlier;
      }
      for (int i = step + 1; i < begins.length; i++) {
        from[i] = celsius(begins[i], i - 1);
      }
      return true;
    }

    /** Seconds from the start to the end of the last step as it stands now. */
    double end() {
      return Math.min(
          finished, begins[begins.length - 1] + steps.get(begins.length - 1).duration().in(SECOND));
    }

    @Override
    public double convection(double seconds) {
      return steps.get(stepAt(seconds)).mode() == OvenProfile.Mode.FAN ? oven.fan : oven.still;
    }

    @Override
    public double emissivity() {
      return oven.emissivity;
    }

    @Override
    public double vapour(double seconds) {
      double wanted =
          switch (steps.get(stepAt(seconds)).damp()) {
            case CLOSED -> CLOSED_VAPOUR;
            case STEAM -> STEAM_VAPOUR;
            case VENTED -> VENTED_VAPOUR;
          };
      // no air holds more than its dew
      double air = celsius(seconds);
      return air >= 100
          ? wanted
          : Math.min(wanted, IapwsIf97Saturation.pressure(CELSIUS.amount(Math.max(0, air))));
    }

    /** Volume grows along a straight line with the mean temperature until it has set. */
    @Override
    public double growth(double seconds, double mean) {
      warmest = Math.max(warmest, Math.min(mean, SET_CELSIUS));
      double way = (warmest - startMean) / (SET_CELSIUS - startMean);
      return Math.pow(1 + (spring - 1) * Math.max(0, Math.min(1, way)), linear);
    }
  }

  /** {@code oven 12 K below its set point, lag 4 min, 9 W/(m²·K) still, 22 with fan}. */
  @Override
  public String toString() {
    double kelvin = offset.celsiusDegrees();
    return "oven "
        + (kelvin == 0
            ? "at its set point"
            : Numbers.decimals(Math.abs(kelvin), 1)
                + " K "
                + (kelvin < 0 ? "below" : "above")
                + " its set point")
        + ", lag "
        + AmountFormat.metric().time(lag)
        + ", "
        + Numbers.significant(still, 3)
        + " W/(m²·K) still, "
        + Numbers.significant(fan, 3)
        + " with fan";
  }
}
