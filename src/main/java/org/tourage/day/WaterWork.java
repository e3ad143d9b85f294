package org.tourage.day;

import java.util.Optional;
import javax.measure.quantity.Temperature;
import org.tourage.doughtemperature.StageMix;
import org.tourage.doughtemperature.WaterPlan;
import org.tourage.formula.Batch;
import org.tourage.quantity.Amount;

/**
 * Works the water of the final dough: what is ripe comes in whole, at the temperature that its own
 * steps left it; what stood cold comes in cold.
 */
final class WaterWork {
  private final Kitchen kitchen;
  private final Product product;
  private final Batch batch;
  private final RipeStages ripe;

  WaterWork(Kitchen kitchen, Product product, Batch batch, RipeStages ripe) {
    this.kitchen = kitchen;
    this.product = product;
    this.batch = batch;
    this.ripe = ripe;
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

  /**
   * How warm the dough gets where nobody wants a temperature: from its parts, water as it comes
   * from the tap and any other liquid as warm as the room, and the heat of the mixer.
   */
  Amount<Temperature> untempered() {
    if (product.procedure().mixing() < 0) {
      return kitchen.room();
    }
    StageMix mix = mix();
    Amount<Temperature> liquid = mix.freeLiquidIsWater() ? kitchen.tap() : kitchen.room();
    return mix.dough(liquid, kitchen.mixer().warming().heat(mix));
  }

  private StageMix mix() {
    StageMix mix = StageMix.of(batch, kitchen.flour(), kitchen.room());
    for (String taken : mix.stage().takes()) {
      mix = mix.withStage(taken, ripe.of(taken).temperature());
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
}
