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
import org.tourage.physics.TemperatureHistory;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.BakeryUnits;
import org.tourage.quantity.Given;
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
          7,
          16,
          0.9,
          TemperatureDifference.ofCelsiusDegrees(25),
          2500,
          15_000,
          5);

  /**
   * A deck oven of a bakery, hot through, heat from top and bottom, no fan: usual figures, common
   * practice. Its power and heat are those of one deck of about 1 m².
   */
  public static final OvenModel DECK =
      new OvenModel(
          TemperatureDifference.ZERO,
          SECOND.amount(600),
          7,
          16,
          0.9,
          TemperatureDifference.ofCelsiusDegrees(10),
          5000,
          120_000,
          6);

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
        offset,
        Given.time("the time", time),
        still,
        fan,
        emissivity,
        doorDrop,
        power,
        capacity,
        loss);
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
    double rise = profile.steps().get(0).setPoint().in(CELSIUS) - CELSIUS.measure("the room", room);
    double spare = power - loss * rise;
    return spare <= 0
        ? Optional.empty()
        : Optional.of(MINUTE.amount(Math.max(0, capacity / loss * Math.log(power / spare)) / 60));
  }

  /**
   * The same with another heating: of an oven of another size.
   *
   * @param watts its power, W, positive
   * @param joulesForKelvin heat to warm it by a kelvin, J/K, positive
   * @param wattsForKelvin heat that it loses, W/K, positive
   * @return the oven
   */
  public OvenModel withHeating(double watts, double joulesForKelvin, double wattsForKelvin) {
    return new OvenModel(
        offset, lag, still, fan, emissivity, doorDrop, watts, joulesForKelvin, wattsForKelvin);
  }

  /**
   * The energy that heats the oven up to the first set point of a profile.
   *
   * @param profile the profile
   * @param room the temperature of the room
   * @return the energy, without what it loses meanwhile
   */
  public Amount<Energy> heatingUp(OvenProfile profile, Quantity<Temperature> room) {
    double rise = profile.steps().get(0).setPoint().in(CELSIUS) - CELSIUS.measure("the room", room);
    return JOULE.amount(capacity * Math.max(0, rise)).to(BakeryUnits.KILOJOULE);
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
    double cold = CELSIUS.measure("the room", room);
    double first = profile.steps().get(0).setPoint().in(CELSIUS);
    double sum = capacity * Math.max(0, first - cold) + JOULE.measure("the load", load);
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
    OvenCourse course = new OvenCourse(this, profile);
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
