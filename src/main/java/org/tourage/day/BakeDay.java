package org.tourage.day;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import java.io.Serializable;
import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Mass;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.Advice;
import org.tourage.advice.Explained;
import org.tourage.advice.Severity;
import org.tourage.advice.Working;
import org.tourage.doughtemperature.WaterPlan;
import org.tourage.fermentation.RiseHistory;
import org.tourage.formula.Batch;
import org.tourage.lamination.LaminationPlan;
import org.tourage.lamination.Workability;
import org.tourage.makeup.CuttingPlan;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.substitution.Substitution;

/**
 * A day, worked through: the weights, the water, the lamination, the cuts, the rise, the oven and
 * the timetable of one order in one kitchen. All results are there at once; what can't be worked
 * says why in its place.
 *
 * <pre>{@code
 * BakeDay day = BakeDay.of(DayPlan.of(Kitchen.USUAL, Order.pieces(product, 24, grams(80))));
 * day.scalingWeight();
 * }</pre>
 */
public final class BakeDay implements Explained, Serializable {
  private static final long serialVersionUID = 1L;

  private final DayPlan plan;
  private final DayWork.Results results;

  private BakeDay(DayPlan plan) {
    this.plan = requireNonNull(plan, "plan");
    this.results = new DayWork(plan).work();
  }

  /**
   * Works a day through.
   *
   * @param plan the kitchen, the order and what is on hand
   * @return the day
   * @throws org.tourage.advice.BakeryException if the formula, an exchange or the size makes no
   *     sense; what is only a part of the day says so in its part
   */
  public static BakeDay of(DayPlan plan) {
    return new BakeDay(plan);
  }

  /**
   * What was to be worked.
   *
   * @return the plan
   */
  public DayPlan plan() {
    return plan;
  }

  /**
   * The weights, rounded to the balances of the kitchen.
   *
   * @return the batch
   */
  public Batch batch() {
    return results.batch();
  }

  /**
   * The raw mass of the dough of one piece, fat of the lamination included: what the pieces are
   * scaled or cut to.
   *
   * @return the mass; that of the whole dough if it is not parted
   */
  public Amount<Mass> scalingWeight() {
    return results.scaled().piece();
  }

  /**
   * The filling or topping of one piece.
   *
   * @return the mass, 0 g without one
   */
  public Amount<Mass> fillingWeight() {
    return results.scaled().filling();
  }

  /**
   * What is left of a sheet when the pieces are cut.
   *
   * @return trim and ends, 0 g where no sheet is cut
   */
  public Amount<Mass> trim() {
    return results.trim();
  }

  /**
   * How many pieces there are.
   *
   * @return the number, 0 if the dough is not parted
   */
  public int pieces() {
    return results.scaled().pieces();
  }

  /**
   * What was exchanged, one after another.
   *
   * @return the exchanges
   */
  public List<Substitution> exchanges() {
    return results.exchanges();
  }

  /**
   * The lamination.
   *
   * @return the plan, or why there is none
   */
  public Part<LaminationPlan> lamination() {
    return results.scaled().lamination();
  }

  /**
   * The water of the final dough.
   *
   * @return its temperature, the ice, or the levers; or why it is not worked
   */
  public Part<WaterPlan> water() {
    return results.water();
  }

  /**
   * How long packet and sheet can be rolled.
   *
   * @return the times, or why there are none
   */
  public Part<Workability> workability() {
    return results.workability();
  }

  /**
   * The cuts.
   *
   * @return the plan, or why there is none
   */
  public Part<CuttingPlan> cutting() {
    return results.scaled().cutting();
  }

  /**
   * Temperature and rise of the dough from the end of the mix to the oven.
   *
   * @return the history, or why there is none
   */
  public Part<RiseHistory> rise() {
    return results.rise();
  }

  /**
   * Whether anything ferments in the dough.
   *
   * @return false for a dough or batter without yeast or levain, whose history is of its
   *     temperature only
   */
  public boolean ferments() {
    return results.ferments();
  }

  /**
   * When the dough has grown so many times since it got its last shape.
   *
   * @param growth volume by volume, above 1 up to 10
   * @return the time on the clock, empty if it does not get there or the rise is not worked
   * @throws org.tourage.advice.BakeryException if nobody watches for such a growth
   */
  public Optional<DayTime> reaches(double growth) {
    Cue.growth("reaches", growth);
    return rise()
        .found()
        .filter(history -> !history.stages().isEmpty())
        .flatMap(
            history -> history.reached(growth * history.lastShape().get(0).looks().get(0).growth()))
        .map(
            time ->
                Timetabling.mixed(plan.order(), timetable())
                    .plusMinutes(Math.round(time.in(MINUTE))));
  }

  /**
   * The bake.
   *
   * @return what happens in the oven, or why that is not known
   */
  public Part<Baking> bake() {
    return results.bake();
  }

  /**
   * When each step starts and ends.
   *
   * @return the timetable
   */
  public Timetable timetable() {
    return results.timetable();
  }

  /**
   * What can hurt somebody.
   *
   * @return the safety advice
   */
  public List<Advice> cautions() {
    return results.advice().stream().filter(a -> a.severity() == Severity.SAFETY).toList();
  }

  @Override
  public List<Advice> advice() {
    return results.advice().stream().filter(a -> a.severity() != Severity.SAFETY).toList();
  }

  /** The worked solutions of all parts that are there, in the order of the day. */
  @Override
  public Working working() {
    Working lines = batch().working();
    for (Substitution exchange : exchanges()) {
      lines = lines.then(exchange.working());
    }
    for (Part<? extends Serializable> part :
        List.of(water(), lamination(), workability(), cutting(), rise(), bake())) {
      if (part.found().orElse(null) instanceof Explained explained) {
        lines = lines.then(explained.working());
      }
    }
    return lines;
  }

  /** Days are equal if their plans are: the same plan always gives the same day. */
  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof BakeDay that && plan.equals(that.plan);
  }

  @Override
  public int hashCode() {
    return plan.hashCode();
  }

  /** {@code Harbour rolls: 24 pieces of 85 g raw, 2.04 kg of dough, day 1 08:00 to 12:30}. */
  @Override
  public String toString() {
    AmountFormat format = AmountFormat.metric();
    String pieces =
        pieces() == 0 ? "" : pieces() + " pieces of " + format.mass(scalingWeight()) + " raw, ";
    return plan.order().product().name()
        + ": "
        + pieces
        + format.mass(batch().dough())
        + " of dough, "
        + timetable().start()
        + " to "
        + timetable().end();
  }
}
