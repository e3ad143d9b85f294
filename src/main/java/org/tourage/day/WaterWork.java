package org.tourage.day;

import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import org.tourage.doughtemperature.StageMix;
import org.tourage.doughtemperature.WaterPlan;
import org.tourage.fermentation.DoughBody;
import org.tourage.fermentation.DoughGas;
import org.tourage.fermentation.Rise;
import org.tourage.fermentation.RiseHistory;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.formula.StageKind;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Amounts;

/**
 * Works the water of the final dough: what is ripe comes in whole, at the temperature that its own
 * steps left it; what stood cold comes in cold.
 */
final class WaterWork {
  /** A preferment has little yeast; its own heat hardly counts. */
  private static final Amount<Dimensionless> LITTLE_YEAST = Amounts.percent(0.2);

  private final Kitchen kitchen;
  private final Product product;
  private final Batch batch;
  private final DoughCourse course;

  WaterWork(Kitchen kitchen, Product product, Batch batch, DoughCourse course) {
    this.kitchen = kitchen;
    this.product = product;
    this.batch = batch;
    this.course = course;
  }

  Part<WaterPlan> work() {
    Optional<Amount<Temperature>> target = target(product.procedure());
    if (target.isEmpty()) {
      return Part.notAsked("no dough temperature is wanted", "set one for the mix");
    }
    return Part.worked(
        () -> {
          StageMix mix = mix();
          return mix.water(target.get(), kitchen.mixer().warming().heat(mix))
              .withTap(kitchen.tap());
        });
  }

  /** The dough temperature that is wanted of the final dough. */
  static Optional<Amount<Temperature>> target(Procedure procedure) {
    int mixing = procedure.mixing();
    return mixing >= 0 && procedure.steps().get(mixing).action() instanceof Action.Mix mix
        ? Optional.ofNullable(mix.target())
        : Optional.empty();
  }

  private StageMix mix() {
    StageMix mix = StageMix.of(batch, kitchen.flour(), kitchen.room());
    for (String taken : mix.stage().takes()) {
      mix = mix.withStage(taken, ripe(taken));
    }
    for (Product.PartAt part : product.temperatures()) {
      boolean here =
          mix.stage().lines().stream().anyMatch(l -> l.ingredient().equals(part.ingredient()));
      if (here && !part.ingredient().id().equals("water")) {
        mix = mix.withIngredient(part.ingredient(), part.place().temperature(kitchen));
      }
    }
    return mix;
  }

  /** How warm a stage is after its own steps; one without steps stands in the room. */
  private Amount<Temperature> ripe(String stage) {
    Amount<Temperature> now = kitchen.room();
    List<Step> steps = product.procedure().steps();
    Form form = Form.BALL;
    for (Step step : steps) {
      if (step.action() instanceof Action.Mix mixing
          && mixing.target() != null
          && stage.equalsIgnoreCase(mixing.stage())) {
        now = mixing.target();
      }
      if (step.action() instanceof Action.Ripen ripening
          && stage.equalsIgnoreCase(ripening.stage())) {
        form = step.form().orElse(kitchen.tub().orElse(form));
        now = after(step, form, now, batch.wholeWeightOf(batch.formula().stage(stage)));
      }
    }
    return now;
  }

  private Amount<Temperature> after(
      Step step, Form form, Amount<Temperature> start, Amount<Mass> mass) {
    Formula formula = batch.formula();
    DoughBody body =
        DoughBody.of(
                form.solid(course.volume(mass, null, 1)), formula.constituents(StageKind::inDough))
            .covered(step.cover().orElse(kitchen.cover()));
    DoughGas gas = DoughGas.of(formula.constituents(StageKind::inDough), start);
    Rise rise = Rise.firstGuess(gas, product.rate(), LITTLE_YEAST);
    return RiseHistory.start(rise, start)
        .then(step.name(), body, step.place().temperature(kitchen), step.time().high())
        .end()
        .mean();
  }
}
