package org.tourage.fermentation;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Csv;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.AmountRange;
import org.tourage.quantity.Given;

/**
 * A rate by temperature that goes through printed marks: none at the ends, a quarter, a half, the
 * best. Between the marks runs a cubic curve that never turns back (F.N. Fritsch and R.E. Carlson,
 * SIAM J. Numer. Anal. 17 (1980) 238, from memory). The marks of sourdough fall much more steeply
 * above the best temperature than {@link Rosso1993} can, so this is the model for them.
 *
 * @param name what it is the rate of
 * @param marks three marks or more, temperatures rising; the first and the last have a share of 0,
 *     one has 1
 * @param source where they come from
 */
public record RateMarks(String name, List<Mark> marks, String source) implements RateModel {
  private static final String TABLE = "/org/tourage/ingredient/growth-marks.csv";
  private static final int FEWEST = 3;

  /**
   * A mark.
   *
   * @param temperature the temperature
   * @param share of the best rate, 0 to 1
   */
  public record Mark(Amount<Temperature> temperature, double share)
      implements java.io.Serializable {
    /**
     * Checks the share.
     *
     * @param temperature the temperature
     * @param share of the best rate, 0 to 1
     */
    public Mark {
      requireNonNull(temperature, "temperature");
      if (!(share >= 0) || share > 1) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "this is no share of the best rate",
            share + " at " + temperature,
            "give 0 to 1");
      }
    }

    /**
     * A mark of any quantity.
     *
     * @param temperature the temperature
     * @param share of the best rate, 0 to 1
     * @return the mark
     */
    public static Mark of(Quantity<Temperature> temperature, double share) {
      return new Mark(
          Given.temperature("the temperature", requireNonNull(temperature, "temperature")), share);
    }
  }

  /**
   * Checks that the marks rise to one best and fall again.
   *
   * @param name what it is the rate of
   * @param marks three marks or more, temperatures rising; the first and the last have a share of
   *     0, one has 1
   * @param source where they come from
   */
  public RateMarks {
    requireNonNull(marks, "marks");
    requireNonNull(name, "name");
    requireNonNull(source, "source");
    marks = List.copyOf(marks);
    boolean fits = marks.size() >= FEWEST;
    boolean falling = false;
    for (int i = 1; fits && i < marks.size(); i++) {
      Mark before = marks.get(i - 1);
      Mark now = marks.get(i);
      falling |= before.share == 1;
      fits =
          before.temperature.compareTo(now.temperature) < 0
              && (falling ? now.share < before.share : now.share > before.share);
    }
    if (!fits || !falling || marks.get(0).share > 0 || marks.get(marks.size() - 1).share > 0) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "these marks are no curve with one summit",
          marks.toString(),
          "give rising temperatures, shares from 0 up to 1 and down to 0");
    }
  }

  /**
   * The curves of the library.
   *
   * @return bacteria and yeast of sourdough
   */
  public static List<RateMarks> all() {
    Map<String, List<Map<String, String>>> rows = new LinkedHashMap<>();
    for (Map<String, String> row : Csv.table(RateMarks.class, TABLE)) {
      rows.computeIfAbsent(Csv.field(row, "name"), n -> new ArrayList<>()).add(row);
    }
    List<RateMarks> curves = new ArrayList<>();
    rows.forEach(
        (name, list) ->
            curves.add(
                new RateMarks(
                    name,
                    list.stream()
                        .map(
                            row ->
                                Mark.of(
                                    CELSIUS.amount(Double.parseDouble(Csv.field(row, "celsius"))),
                                    Double.parseDouble(Csv.field(row, "share"))))
                        .toList(),
                    Csv.field(list.get(0), "source")
                        + " ("
                        + Csv.field(list.get(0), "provenance")
                        + ")")));
    return curves;
  }

  /**
   * A curve of the library.
   *
   * @param name its name, for example {@code sourdough bacteria}
   * @return the curve
   * @throws BakeryException if there is none of that name
   */
  public static RateMarks named(String name) {
    return RateTable.named(name, all(), "no rate marks of that name");
  }

  /**
   * The best temperature.
   *
   * @return where the share is 1
   */
  public Amount<Temperature> optimum() {
    return marks.get(best()).temperature;
  }

  private int best() {
    int best = 0;
    while (marks.get(best).share < 1) {
      best++;
    }
    return best;
  }

  private double celsius(int i) {
    return marks.get(i).temperature.in(CELSIUS);
  }

  @Override
  public double rate(double celsius) {
    RateModel.known(celsius);
    int last = marks.size() - 1;
    if (celsius <= celsius(0) || celsius >= celsius(last)) {
      return 0;
    }
    int i = 0;
    while (celsius(i + 1) < celsius) {
      i++;
    }
    double width = celsius(i + 1) - celsius(i);
    double s = (celsius - celsius(i)) / width;
    double from = marks.get(i).share;
    double to = marks.get(i + 1).share;
    return from * (1 + 2 * s) * (1 - s) * (1 - s)
        + to * s * s * (3 - 2 * s)
        + width * s * (1 - s) * ((1 - s) * slope(i) - s * slope(i + 1));
  }

  /**
   * The slope at a mark: the weighted harmonic mean of its two sides, 0 at the best, the side at
   * the ends.
   */
  private double slope(int i) {
    int last = marks.size() - 1;
    if (i == 0 || i == last) {
      return i == 0 ? side(0) : side(last - 1);
    }
    double left = side(i - 1);
    double right = side(i);
    if (left * right <= 0) {
      return 0;
    }
    double first = 2 * (celsius(i + 1) - celsius(i)) + celsius(i) - celsius(i - 1);
    double second = celsius(i + 1) - celsius(i) + 2 * (celsius(i) - celsius(i - 1));
    return (first + second) / (first / left + second / right);
  }

  private double side(int i) {
    return (marks.get(i + 1).share - marks.get(i).share) / (celsius(i + 1) - celsius(i));
  }

  @Override
  public AmountRange<Temperature> range() {
    return new AmountRange<>(marks.get(1).temperature, marks.get(marks.size() - 2).temperature);
  }

  @Override
  public List<Double> corners() {
    return marks.stream().map(m -> m.temperature.in(CELSIUS)).toList();
  }

  /** {@code sourdough yeast: best at 28 °C (82 °F), 0 of it at 8 °C (46 °F), 0.25 of it at …}. */
  @Override
  public String toString() {
    AmountFormat format = AmountFormat.sideBySide();
    StringBuilder text =
        new StringBuilder(name).append(": best at ").append(format.temperature(optimum()));
    for (Mark mark : marks) {
      if (mark.share < 1) {
        text.append(", ")
            .append(Numbers.significant(mark.share, 3))
            .append(" of it at ")
            .append(format.temperature(mark.temperature));
      }
    }
    return text.toString();
  }
}
