package org.tourage.command;

import java.util.Optional;
import java.util.function.BiFunction;
import org.tourage.day.Kitchen;
import org.tourage.day.Mixer;
import org.tourage.day.Warming;

/** Makes the kitchen of what a file sets. */
final class KitchenReader {
  private final GivenValues given;

  KitchenReader(GivenValues given) {
    this.given = given;
  }

  Kitchen kitchen() {
    Kitchen[] kitchen = {Kitchen.named(given.get(KitchenSettings.KITCHEN).orElseThrow())};
    kitchen(kitchen, KitchenSettings.ROOM, Kitchen::withRoom);
    kitchen(kitchen, KitchenSettings.TAP, Kitchen::withTap);
    kitchen(kitchen, KitchenSettings.FLOUR_TEMPERATURE, Kitchen::withFlour);
    kitchen(kitchen, KitchenSettings.REFRIGERATOR, Kitchen::withRefrigerator);
    kitchen(kitchen, KitchenSettings.FREEZER, Kitchen::withFreezer);
    kitchen(kitchen, KitchenSettings.PROOFER, Kitchen::withProofer);
    kitchen(kitchen, KitchenSettings.ALTITUDE, Kitchen::atAltitude);
    kitchen(kitchen, KitchenSettings.BALANCE, Kitchen::withBalance);
    kitchen(kitchen, KitchenSettings.FINE_BALANCE, Kitchen::withFineBalance);
    kitchen(kitchen, KitchenSettings.BENCH, Kitchen::withBench);
    kitchen(kitchen, KitchenSettings.BENCH_SIZE, Kitchen::withBenchSize);
    kitchen(kitchen, KitchenSettings.TUB, Kitchen::withTub);
    kitchen(kitchen, KitchenSettings.COVER, Kitchen::withCover);
    kitchen(kitchen, KitchenSettings.OVEN, Kitchen::withOven);
    kitchen(
        kitchen,
        KitchenSettings.MIXER_RISE,
        (k, rise) -> k.withMixer(new Mixer("the mixer", Warming.rise(rise))));
    kitchen(
        kitchen,
        KitchenSettings.FRICTION,
        (k, friction) -> k.withMixer(new Mixer("the mixer", Warming.friction(friction))));
    kitchen(
        kitchen, KitchenSettings.PAST_MIX, (k, past) -> k.withMixer(new Mixer("the mixer", past)));
    kitchen(kitchen, KitchenSettings.SHEETER, Kitchen::withRollers);
    return kitchen[0];
  }

  /** Only what was set is given to the kitchen, so that it knows what is usual. */
  private <T> void kitchen(
      Kitchen[] kitchen, Setting<T> setting, BiFunction<Kitchen, T, Kitchen> put) {
    Optional<T> value = given.get(setting);
    if (given.isSet(setting) && value.isPresent()) {
      given.attempt(given.origin(setting), () -> kitchen[0] = put.apply(kitchen[0], value.get()));
    }
  }
}
