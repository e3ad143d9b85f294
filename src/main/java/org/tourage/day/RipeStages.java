package org.tourage.day;

import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import java.util.List;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.tourage.fermentation.DoughBody;
import org.tourage.fermentation.DoughGas;
import org.tourage.fermentation.Rise;
import org.tourage.fermentation.RiseHistory;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.formula.Stage;
import org.tourage.formula.StageKind;
import org.tourage.label.KitchenCautions;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Amounts;

/** What stood before the dough was mixed: how warm each stage is, and how long it was warm. */
final class RipeStages {
  /** A preferment has little yeast; its own heat hardly counts. */
  private static final Amount<Dimensionless> LITTLE_YEAST = Amounts.percent(0.2);

  /** Food is held at or below this (FDA Food Code 2022, 3-501.16(A)(2)). */
  static final Amount<Temperature> HELD_COLD = CELSIUS.amount(5);

  private final Kitchen kitchen;
  private final Product product;
  private final Batch batch;
  private final DoughCourse course;

  RipeStages(Kitchen kitchen, Product product, Batch batch, DoughCourse course) {
    this.kitchen = kitchen;
    this.product = product;
    this.batch = batch;
    this.course = course;
  }

  /**
   * A stage as it goes into the next.
   *
   * @param start how warm it was stirred together
   * @param temperature how warm it goes in
   * @param warm how long it stood above 5 °C
   * @param warmest how warm it was at most
   */
  record Ripe(
      Amount<Temperature> start,
      Amount<Temperature> temperature,
      Amount<Time> warm,
      Amount<Temperature> warmest) {
    private static Ripe at(Amount<Temperature> temperature) {
      return new Ripe(temperature, temperature, MINUTE.amount(0), temperature);
    }

    private Ripe then(RiseHistory history) {
      Amount<Temperature> most = history.warmest();
      return new Ripe(
          start,
          history.end().mean(),
          warm.add(history.above(HELD_COLD)),
          most.compareTo(warmest) > 0 ? most : warmest);
    }
  }

  /** A stage after its own steps; one without steps stands in the room. */
  Ripe of(String stage) {
    Ripe now = Ripe.at(kitchen.room());
    List<Step> steps = product.procedure().steps();
    Form form = Form.BALL;
    for (Step step : steps) {
      if (step.action() instanceof Action.Mix mixing
          && mixing.target() != null
          && stage.equalsIgnoreCase(mixing.stage())) {
        now = Ripe.at(mixing.target());
      }
      if (step.action() instanceof Action.Ripen ripening
          && stage.equalsIgnoreCase(ripening.stage())) {
        form = step.form().orElse(kitchen.tub().orElse(form));
        Amount<Mass> mass = batch.wholeWeightOf(batch.formula().stage(stage));
        now = now.then(history(step, form, now.temperature(), mass));
      }
    }
    return now;
  }

  private RiseHistory history(Step step, Form form, Amount<Temperature> start, Amount<Mass> mass) {
    Formula formula = batch.formula();
    DoughBody body =
        DoughBody.of(
                form.solid(course.volume(mass, null, 1)), formula.constituents(StageKind::inDough))
            .covered(step.cover().orElse(kitchen.cover()));
    DoughGas gas = DoughGas.of(formula.constituents(StageKind::inDough), start);
    Rise rise = Rise.firstGuess(gas, product.rate(), LITTLE_YEAST);
    return RiseHistory.start(rise, start)
        .then(step.name(), body, step.place().temperature(kitchen), step.time().high());
  }

  /**
   * What the egg, milk or plant drink of a stage stood through before: its own hours and those of
   * the stage inside it that was warm for longest. Nothing where there is none of them in it.
   */
  private Ripe held(Stage stage, boolean itself) {
    boolean own =
        stage.lines().stream().anyMatch(l -> KitchenCautions.needsControl(l.ingredient()));
    Ripe before = null;
    for (String taken : stage.takes()) {
      Ripe inside = held(batch.formula().stage(taken), true);
      before = before == null || inside.warm().compareTo(before.warm()) > 0 ? inside : before;
    }
    boolean inside = before != null && before.warm().value() > 0;
    if (!itself || !(own || inside)) {
      return before == null ? Ripe.at(kitchen.room()) : before;
    }
    Ripe here = of(stage.name());
    if (before == null || !inside) {
      return here;
    }
    Amount<Temperature> warmest =
        before.warmest().compareTo(here.warmest()) > 0 ? before.warmest() : here.warmest();
    return new Ripe(before.start(), here.temperature(), before.warm().add(here.warm()), warmest);
  }

  /** What the perishable parts of the final dough stood through before its mix. */
  Ripe heldBefore() {
    return batch.formula().stages().stream()
        .filter(s -> s.kind() == StageKind.FINAL_DOUGH)
        .findFirst()
        .map(s -> held(s, false))
        .orElseGet(() -> Ripe.at(kitchen.room()));
  }
}
