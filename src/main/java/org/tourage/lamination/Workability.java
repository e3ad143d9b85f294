package org.tourage.lamination;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.Advice;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.formula.Batch;
import org.tourage.physics.Air;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.AmountRange;
import org.tourage.quantity.Given;

/**
 * How long the packet and the final sheet of a plan can be worked when they come from the
 * refrigerator, and how long the packet must go back. Every answer may be "never": the room may be
 * too cold for the fat, or so cool that it never softens.
 *
 * <pre>{@code
 * Workability.of(plan, batch, FatCurve.named("dairy butterfat"), celsius(4), celsius(21), Bench.WOOD);
 * }</pre>
 *
 * <p>Immutable and serialisable.
 */
public final class Workability implements Explained, Serializable {
  private static final long serialVersionUID = 1L;

  /** Less than this between too hard and too soft is hard to work in: common practice. */
  private static final double SHORT_MINUTES = 5;

  /** The curve of the fat. */
  private final FatCurve curve;

  /** The refrigerator. */
  private final Amount<Temperature> cold;

  /** The room. */
  private final Amount<Temperature> room;

  /** What it lies on. */
  private final Bench bench;

  /** The last packet and the final sheet. */
  private final List<Lying> lying;

  /** How long the packet chills back. */
  private final @Nullable Amount<Time> chilled;

  private Workability(
      FatCurve curve,
      Amount<Temperature> cold,
      Amount<Temperature> room,
      Bench bench,
      List<Lying> lying,
      @Nullable Amount<Time> chilled) {
    this.curve = curve;
    this.cold = cold;
    this.room = room;
    this.bench = bench;
    this.lying = List.copyOf(lying);
    this.chilled = chilled;
  }

  /**
   * Works it out.
   *
   * @param plan the plan
   * @param batch the batch that it was made for
   * @param curve the curve of the roll-in fat
   * @param cold the refrigerator, from which packet and sheet come and to which the packet goes
   *     back
   * @param room the air over the bench
   * @param bench what packet and sheet lie on, as warm as the room
   * @return the answers
   * @throws org.tourage.advice.BakeryException if the batch has no roll-in
   */
  public static Workability of(
      LaminationPlan plan,
      Batch batch,
      FatCurve curve,
      Quantity<Temperature> cold,
      Quantity<Temperature> room,
      Bench bench) {
    requireNonNull(plan, "plan");
    requireNonNull(batch, "batch");
    requireNonNull(curve, "curve");
    requireNonNull(cold, "cold");
    requireNonNull(room, "room");
    requireNonNull(bench, "bench");
    Amount<Temperature> start = Given.temperature("the cold", cold);
    Air air = Air.still(room);
    List<LaminationStep> steps = plan.steps();
    List<Lying> lying = new ArrayList<>();
    for (LaminationStep step : steps.subList(steps.size() - 2, steps.size())) {
      SheetBody body = SheetBody.of(plan, step.thickness(), batch, curve);
      SheetBody.OnBench times = body.onBench(start, bench, air);
      lying.add(new Lying(step, times.tempered().orElse(null), times.tooSoft().orElse(null)));
    }
    AmountRange<Temperature> window = curve.window();
    Amount<Time> chilled =
        SheetBody.of(plan, lying.get(0).thickness(), batch, curve)
            .untilChilled(window.high(), window.low(), Bench.RACK, Air.still(start))
            .orElse(null);
    return new Workability(
        curve, start, Given.temperature("the room", room), bench, lying, chilled);
  }

  /** A packet or a sheet on the bench, straight from the refrigerator. */
  public static final class Lying implements Serializable {
    private static final long serialVersionUID = 1L;

    /** What left it. */
    private final LaminationStep step;

    /** When all of it has come into the window of the fat. */
    private final @Nullable Amount<Time> rolled;

    /** When some of it leaves the window. */
    private final @Nullable Amount<Time> soft;

    private Lying(LaminationStep step, @Nullable Amount<Time> rolled, @Nullable Amount<Time> soft) {
      this.step = step;
      this.rolled = rolled;
      this.soft = soft;
    }

    /**
     * The step that left it on the bench.
     *
     * @return the last fold (or the closing of the packet), or the final rolling
     */
    public LaminationStep step() {
      return step;
    }

    /**
     * How thick it lies.
     *
     * @return the thickness
     */
    public Amount<Length> thickness() {
      return step.thickness();
    }

    /**
     * How long it must lie until it can be rolled.
     *
     * @return the time; empty if it never comes into the window of the fat
     */
    public Optional<Amount<Time>> canBeRolledAfter() {
      return Optional.ofNullable(rolled);
    }

    /**
     * How long it may lie until it is too soft.
     *
     * @return the time; empty if it never is
     */
    public Optional<Amount<Time>> tooSoftAfter() {
      return Optional.ofNullable(soft);
    }

    /**
     * How long it can be worked.
     *
     * @return the time between the two, 0 min if it is too soft outside before it can be rolled
     *     inside; empty if it can never be rolled or never becomes too soft
     */
    public Optional<Amount<Time>> workableFor() {
      return rolled == null || soft == null
          ? Optional.empty()
          : Optional.of(MINUTE.amount(Math.max(0, soft.in(MINUTE) - rolled.in(MINUTE))));
    }

    @Override
    public boolean equals(@Nullable Object other) {
      return other instanceof Lying that
          && step.equals(that.step)
          && Objects.equals(rolled, that.rolled)
          && Objects.equals(soft, that.soft);
    }

    @Override
    public int hashCode() {
      return Objects.hash(step, rolled, soft);
    }

    /** {@code letter fold, 24 mm thick: can be rolled after 38 min, too soft after 1 h 20 min}. */
    @Override
    public String toString() {
      return step.action()
          + ", "
          + AmountFormat.metric().length(thickness())
          + " thick: can be rolled after "
          + words(rolled)
          + ", too soft after "
          + words(soft);
    }
  }

  private static String words(@Nullable Amount<Time> time) {
    return time == null ? "never in this room" : AmountFormat.metric().time(time);
  }

  /**
   * The last packet before the final rolling.
   *
   * @return how long it can be worked
   */
  public Lying packet() {
    return lying.get(0);
  }

  /**
   * The final sheet.
   *
   * @return how long it can be worked
   */
  public Lying sheet() {
    return lying.get(1);
  }

  /**
   * How long the packet, warmed to the warm end of the window of its fat, must lie in the
   * refrigerator, air on both sides, until its warmest tenth is back at the cold end.
   *
   * @return the time; empty if the refrigerator is not cold enough
   */
  public Optional<Amount<Time>> chilledBackAfter() {
    return Optional.ofNullable(chilled);
  }

  /**
   * The curve of the fat.
   *
   * @return the curve
   */
  public FatCurve curve() {
    return curve;
  }

  /**
   * The refrigerator.
   *
   * @return its temperature
   */
  public Amount<Temperature> cold() {
    return cold;
  }

  /**
   * The room.
   *
   * @return its temperature
   */
  public Amount<Temperature> room() {
    return room;
  }

  /**
   * What packet and sheet lie on.
   *
   * @return the bench
   */
  public Bench bench() {
    return bench;
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>();
    AmountFormat format = AmountFormat.sideBySide();
    AmountRange<Temperature> window = curve.window();
    String range = format.temperature(window.low()) + " to " + format.temperature(window.high());
    if (room.compareTo(window.low()) < 0) {
      advice.add(
          Advice.of(
              "ROOM_COLD_FOR_FAT",
              "in a room of "
                  + format.temperature(room)
                  + " the "
                  + curve.name()
                  + " never softens enough to be rolled",
              "Temper packet and fat elsewhere to " + range,
              curve.source()));
    }
    for (Lying body : lying) {
      Optional<Amount<Time>> workable = body.workableFor();
      if (workable.isPresent() && workable.get().in(MINUTE) < SHORT_MINUTES) {
        advice.add(
            Advice.of(
                "BENCH_TIME_SHORT",
                body.step().action()
                    + ": between too hard and too soft lie "
                    + AmountFormat.metric().time(workable.get())
                    + " on the bench in a room of "
                    + format.temperature(room),
                "Take it from a refrigerator nearer to "
                    + format.temperature(window.low())
                    + ", or work in a cooler room",
                curve.source()));
      }
    }
    if (chilled == null) {
      advice.add(
          Advice.of(
              "CHILL_NOT_REACHED",
              "a refrigerator of "
                  + format.temperature(cold)
                  + " does not bring the packet back to "
                  + format.temperature(window.low()),
              "Chill it colder than "
                  + format.temperature(CELSIUS.amount(window.low().in(CELSIUS) - 2)),
              curve.source()));
    }
    return advice;
  }

  @Override
  public Working working() {
    List<WorkedLine> lines = new ArrayList<>();
    for (Lying body : lying) {
      lines.add(
          new WorkedLine(
              body.step().action(),
              "from " + cold + " at " + room + " on " + bench.name().toLowerCase(Locale.ROOT),
              words(body.rolled) + " to " + words(body.soft),
              "one-dimensional conduction with melting fat"));
    }
    lines.add(
        new WorkedLine(
            "chill back",
            "from " + curve.window().high() + " to " + curve.window().low() + " at " + cold,
            words(chilled),
            "one-dimensional conduction with melting fat"));
    return new Working(lines);
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Workability that
        && curve.equals(that.curve)
        && cold.equals(that.cold)
        && room.equals(that.room)
        && bench == that.bench
        && lying.equals(that.lying)
        && Objects.equals(chilled, that.chilled);
  }

  @Override
  public int hashCode() {
    return Objects.hash(curve, cold, room, bench.name(), lying, chilled);
  }

  /** The two answers and the chill, a line each. */
  @Override
  public String toString() {
    return packet() + "\n" + sheet() + "\nchilled back after " + words(chilled);
  }
}
