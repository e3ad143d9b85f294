package org.tourage.fermentation;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.SECOND;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.internal.Numbers;
import org.tourage.physics.TemperatureHistory;
import org.tourage.quantity.AmountFormat;

/**
 * A night in the refrigerator that was seen: the volume of the dough in the evening and in the
 * morning. It sets the cold end of the rate, the factor below 10 °C for which the history of that
 * night ends at the volume that was seen, heat and dissolved gas included.
 *
 * <pre>{@code
 * ColdNight night = ColdNight.seen(rise, body, celsius(24), 1.2, celsius(4), hours(12), 1.7);
 * night.factor(); // for each 10 K
 * night.rise();   // the rise with the cold end of this dough
 * }</pre>
 *
 * @param before the rise as it was seen in the warm
 * @param body the dough as it stood
 * @param evening how many times its volume after mixing it had when it went in
 * @param morning how many times its volume after mixing it had in the morning
 * @param factor by how much 10 K divide the rate below 10 °C
 * @param history the night with this factor
 */
public record ColdNight(
    Rise before, DoughBody body, double evening, double morning, double factor, RiseHistory history)
    implements Explained, Serializable {
  private static final double LEAST_FACTOR = 1.01;
  private static final double MOST_FACTOR = 1000;
  private static final double USUAL_LEAST = 2;
  private static final double USUAL_MOST = 3;

  /** What the factors 2 and 3 must be apart in volume for a look to tell them from one another. */
  private static final double LEAST_TOLD = 0.05;

  private static final int HALVINGS = 40;

  /**
   * Checks that the parts are there.
   *
   * @param before the rise as it was seen in the warm
   * @param body the dough as it stood
   * @param evening how many times its volume after mixing it had when it went in
   * @param morning how many times its volume after mixing it had in the morning
   * @param factor by how much 10 K divide the rate below 10 °C
   * @param history the night with this factor
   */
  public ColdNight {
    requireNonNull(before, "before");
    requireNonNull(body, "body");
    requireNonNull(history, "history");
    if (!(factor > 1) || Double.isInfinite(factor) || !(evening > 0) || !(morning > 0)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no night was like this",
          "factor " + factor + ", evening " + evening + ", morning " + morning,
          "let ColdNight.seen work it");
    }
  }

  /**
   * A night in air of one temperature.
   *
   * @param rise the rise as it was seen in the warm, at 10 °C or above
   * @param body the dough as it stood
   * @param dough its temperature when it went in
   * @param evening how many times its volume after mixing it had when it went in
   * @param air the temperature of the refrigerator
   * @param time how long it stood
   * @param morning how many times its volume after mixing it had in the morning, still cold
   * @return the night
   * @throws BakeryException if no cold end leads to that morning; it says which volumes would do
   */
  public static ColdNight seen(
      Rise rise,
      DoughBody body,
      Quantity<Temperature> dough,
      double evening,
      Quantity<Temperature> air,
      Quantity<Time> time,
      double morning) {
    return seen(rise, body, dough, evening, TemperatureHistory.ofHold(air, time), morning);
  }

  /**
   * A night in air of changing temperature.
   *
   * @param rise the rise as it was seen in the warm, at 10 °C or above
   * @param body the dough as it stood
   * @param dough its temperature when it went in
   * @param evening how many times its volume after mixing it had when it went in
   * @param air the temperature of the air
   * @param morning how many times its volume after mixing it had in the morning, still cold
   * @return the night
   * @throws BakeryException if no cold end leads to that morning; it says which volumes would do
   */
  public static ColdNight seen(
      Rise rise,
      DoughBody body,
      Quantity<Temperature> dough,
      double evening,
      TemperatureHistory air,
      double morning) {
    if (rise.temperature().in(CELSIUS) < ColdTail.UNKNOWN_BELOW) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "a night sets the cold end of a rise that was seen in the warm",
          "seen at " + AmountFormat.sideBySide().temperature(rise.temperature()),
          "give a rise that was seen at 10 °C (50 °F) or above");
    }
    double most = night(rise, body, dough, evening, air, LEAST_FACTOR).end().growth();
    double least = night(rise, body, dough, evening, air, MOST_FACTOR).end().growth();
    if (!(morning > least) || !(morning < most)) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "no cold end of the rate leads from this evening to this morning",
          Numbers.significant(evening, 4)
              + " times the volume in the evening, "
              + (Double.isNaN(morning) ? "nothing" : Numbers.significant(morning, 4))
              + " in the morning",
          "by the warm rise alone it would have "
              + Numbers.significant(least, 4)
              + ", as quick as at 10 °C all night "
              + Numbers.significant(most, 4)
              + ": look at the temperatures, the shape and the yeast");
    }
    double low = StrictMath.log(LEAST_FACTOR);
    double high = StrictMath.log(MOST_FACTOR);
    for (int i = 0; i < HALVINGS && high - low > 1e-4; i++) {
      double middle = (low + high) / 2;
      double factor = StrictMath.exp(middle);
      if (night(rise, body, dough, evening, air, factor).end().growth() > morning) {
        low = middle;
      } else {
        high = middle;
      }
    }
    double factor = StrictMath.exp((low + high) / 2);
    return new ColdNight(
        rise, body, evening, morning, factor, night(rise, body, dough, evening, air, factor));
  }

  private static RiseHistory night(
      Rise rise,
      DoughBody body,
      Quantity<Temperature> dough,
      double evening,
      TemperatureHistory air,
      double factor) {
    return RiseHistory.startGrown(rise.withModel(tail(rise, factor)), dough, evening)
        .then("night", body, air);
  }

  private static RateModel tail(Rise rise, double factor) {
    return new ColdTail(
        ColdTail.withoutTail(rise.model()), CELSIUS.amount(ColdTail.UNKNOWN_BELOW), factor, true);
  }

  /**
   * The rise with the cold end of this dough, for the nights to come.
   *
   * @return the rise
   */
  public Rise rise() {
    return before.withModel(tail(before, factor));
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>();
    if (factor < USUAL_LEAST || factor > USUAL_MOST) {
      advice.add(
          Advice.of(
              "COLD_FACTOR_UNUSUAL",
              "the night gives a factor of "
                  + Numbers.significant(factor, 3)
                  + " for each 10 K below 10 °C (50 °F), where 2 to 3 is usual",
              "Look at a second night, with a thermometer in the dough"));
    }
    double quick = again(USUAL_LEAST);
    double slow = again(USUAL_MOST);
    if (quick - slow < LEAST_TOLD) {
      advice.add(
          Advice.of(
              "COLD_NOT_TOLD",
              "a factor of 2 or of 3 would have made a difference of only "
                  + Numbers.decimals(quick - slow, 3)
                  + " of the first volume: most of the rise came before the dough was cold",
              "Let the dough be cold for longer, or chill it quicker, and look again"));
    }
    return advice;
  }

  private double again(double other) {
    return night(before, body, history.start(), evening, history.stages().get(0).air(), other)
        .end()
        .growth();
  }

  @Override
  public Working working() {
    return Working.of(
        new WorkedLine(
            "factor",
            "the history of the night ends at the volume of the morning",
            Numbers.significant(evening, 4)
                + " to "
                + Numbers.significant(morning, 4)
                + " times the volume in "
                + AmountFormat.metric()
                    .time(SECOND.amount(history.stages().get(0).air().duration().in(SECOND)))
                + ": rate divided by "
                + Numbers.significant(factor, 4)
                + " for each 10 K below 10 °C",
            before.model().source()));
  }

  /** {@code a night from 1.2 to 1.7 times the volume: by 2.3 for each 10 K below 10 °C (50 °F)}. */
  @Override
  public String toString() {
    return "a night from "
        + Numbers.significant(evening, 3)
        + " to "
        + Numbers.significant(morning, 3)
        + " times the volume: by "
        + Numbers.significant(factor, 3)
        + " for each 10 K below 10 °C (50 °F)";
  }
}
