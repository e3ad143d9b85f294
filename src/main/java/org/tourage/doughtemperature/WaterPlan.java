package org.tourage.doughtemperature;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.JOULE;
import static org.tourage.quantity.BakeryUnits.KILOGRAM;

import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.Advice;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.ingredient.YeastForm;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Given;

/**
 * What to do about the free liquid of a stage so that its dough comes out at the wanted
 * temperature: a temperature of the liquid, ice, or levers. It never names a temperature that no
 * liquid can have: below 0 °C water becomes ice as far as there is enough of it, above 55 °C (131
 * °F) it is refused, and where nothing is free there are levers only.
 *
 * <p>Immutable; each {@code with} method returns a copy.
 */
public final class WaterPlan implements Explained, Serializable {
  private static final long serialVersionUID = 1L;

  /** Tap water within this of what is wanted is taken as it is, K. */
  private static final double AS_IT_COMES = 0.5;

  /** A dough without free liquid is taken as it is within this of what is wanted, K. */
  private static final double CLOSE = 1;

  /** What is to be done. */
  public enum Way {
    /** Nothing: tap water, or the dough without free liquid, is as it should be. */
    AS_IT_COMES,
    /** The liquid has a temperature; nothing is known of the tap, or the liquid is a drink. */
    TEMPER,
    /** Tap water is warmed. */
    WARM,
    /** Tap water is chilled, or a part of it is ice. */
    COOL,
    /** A part of the water is ice. */
    ICE,
    /** No liquid can do it: levers. */
    LEVERS
  }

  /** The stage and its temperatures. */
  private final StageMix mix;

  /** The wanted temperature of the dough. */
  private final Amount<Temperature> target;

  /** The heat of the mixer. */
  private final MixerHeat heat;

  /** The temperature of the tap water, if it is known. */
  private final @Nullable Amount<Temperature> tap;

  /** The temperature of the ice. */
  private final Amount<Temperature> iceTemperature;

  private final Way way;
  private final @Nullable Amount<Temperature> water;
  private final @Nullable IcedWater ice;
  private final List<Lever> levers;
  private final Amount<Temperature> dough;
  private final Amount<Temperature> best;

  private WaterPlan(
      StageMix mix,
      Amount<Temperature> target,
      MixerHeat heat,
      @Nullable Amount<Temperature> tap,
      Amount<Temperature> iceTemperature) {
    this.mix = requireNonNull(mix, "mix");
    this.target = Readings.within("a dough", target, 0, 50);
    this.heat = requireNonNull(heat, "heat");
    this.tap = tap == null ? null : Readings.liquid("tap water", tap);
    this.iceTemperature = Readings.ice(iceTemperature);
    Mixture mixture = mix.mixture(heat.energy(mix).in(JOULE) + heat.wetting(mix).in(JOULE));
    double goal = target.in(CELSIUS);
    double needed = mixture.liquid() == 0 ? 0 : mixture.liquidFor(goal);
    boolean liquidCan =
        mixture.liquid() > 0
            && needed >= Readings.COLDEST_LIQUID
            && needed <= Readings.WARMEST_LIQUID;
    this.water = liquidCan ? CELSIUS.amount(needed) : null;
    this.ice = ice(mixture, needed);
    this.way = way(mixture, goal);
    boolean wanted = way == Way.LEVERS || way == Way.ICE;
    double limit = limit(mixture, needed);
    Levers found =
        wanted ? levers(mixture, needed, limit, goal) : new Levers(List.of(), mixture.dough(limit));
    this.levers = found.list();
    boolean there = liquidCan || ice != null;
    this.dough = there ? target : CELSIUS.amount(mixture.dough(limit));
    this.best = there ? target : CELSIUS.amount(nearest(found, mixture.dough(limit), goal));
  }

  /**
   * The plan for a stage.
   *
   * @param mix the stage and its temperatures
   * @param target the wanted temperature of the dough, 0 °C to 50 °C
   * @param heat what the mixer gives
   * @return the plan, with ice of 0 °C, and without knowledge of the tap
   */
  public static WaterPlan of(StageMix mix, Quantity<Temperature> target, MixerHeat heat) {
    return new WaterPlan(
        mix, Given.temperature("the target", target), heat, null, CELSIUS.amount(0));
  }

  /**
   * States the temperature of the tap water.
   *
   * @param temperature its temperature, 0 °C to 55 °C
   * @return the plan
   * @throws org.tourage.advice.BakeryException if no tap gives that
   */
  public WaterPlan withTap(Quantity<Temperature> temperature) {
    return new WaterPlan(
        mix, target, heat, Given.temperature("the temperature", temperature), iceTemperature);
  }

  /**
   * States the temperature of the ice.
   *
   * @param temperature its temperature, −40 °C to 0 °C
   * @return the plan
   */
  public WaterPlan withIce(Quantity<Temperature> temperature) {
    return new WaterPlan(mix, target, heat, tap, Given.temperature("the temperature", temperature));
  }

  /** The liquid as it comes: water from the tap if that is known, otherwise as warm as the room. */
  private double poured() {
    double unknown = Math.min(Math.max(mix.room().in(CELSIUS), 0), Readings.WARMEST_LIQUID);
    return tap == null ? unknown : tap.in(CELSIUS);
  }

  private @Nullable IcedWater ice(Mixture mixture, double needed) {
    boolean useful = needed < 0 || (tap != null && needed < tap.in(CELSIUS));
    if (!mix.freeLiquidIsWater() || !useful) {
      return null;
    }
    double kilograms = mixture.ice(poured(), needed, iceTemperature.in(CELSIUS));
    if (kilograms > mixture.liquid()) {
      return null;
    }
    return new IcedWater(
        KILOGRAM.amount(kilograms).to(GRAM),
        iceTemperature,
        KILOGRAM.amount(mixture.liquid() - kilograms).to(GRAM),
        CELSIUS.amount(poured()));
  }

  private Way way(Mixture mixture, double goal) {
    if (mixture.liquid() == 0) {
      return Math.abs(mixture.dough(0) - goal) <= CLOSE ? Way.AS_IT_COMES : Way.LEVERS;
    } else if (water == null) {
      return ice == null ? Way.LEVERS : Way.ICE;
    } else if (tap == null || !mix.freeLiquidIsWater()) {
      return Way.TEMPER;
    }
    double warmer = water.in(CELSIUS) - tap.in(CELSIUS);
    if (Math.abs(warmer) <= AS_IT_COMES) {
      return Way.AS_IT_COMES;
    }
    return warmer > 0 ? Way.WARM : Way.COOL;
  }

  /** The temperature of the liquid at its limit, °C; on the line of liquid water for all ice. */
  private double limit(Mixture mixture, double needed) {
    if (mixture.liquid() == 0) {
      return 0;
    } else if (needed > Readings.WARMEST_LIQUID) {
      double warmest = Readings.WARMEST_LIQUID;
      for (YeastForm form : mix.yeasts()) {
        warmest = Math.min(warmest, form.water().high().in(CELSIUS));
      }
      return warmest;
    }
    boolean allIce = needed < 0 && mix.freeLiquidIsWater() && ice == null;
    return allIce
        ? mixture.iced(poured(), mixture.liquid(), iceTemperature.in(CELSIUS))
        : Readings.COLDEST_LIQUID;
  }

  private Levers levers(Mixture mixture, double needed, double limit, double goal) {
    Levers found = Levers.of(mix, heat, mixture, limit, goal);
    if (mixture.liquid() == 0) {
      return found;
    }
    Amount<Temperature> reached = CELSIUS.amount(mixture.dough(limit));
    String name = mix.freeLiquidName();
    if (limit < 0) {
      Lever all =
          new Lever.AllIce(name, KILOGRAM.amount(mixture.liquid()).to(GRAM), reached, false);
      return found.after(all);
    }
    return found.after(
        new Lever.Temper(name, CELSIUS.amount(poured()), CELSIUS.amount(limit), reached, false));
  }

  /** What the dough can be brought to with all levers together. */
  private static double nearest(Levers found, double reached, double goal) {
    boolean enough = reached < goal ? found.together() >= goal : found.together() <= goal;
    return enough ? goal : found.together();
  }

  /**
   * The stage and its temperatures.
   *
   * @return the mix
   */
  public StageMix mix() {
    return mix;
  }

  /**
   * The wanted temperature of the dough.
   *
   * @return the temperature
   */
  public Amount<Temperature> target() {
    return target;
  }

  /**
   * The heat of the mixer.
   *
   * @return the heat
   */
  public MixerHeat heat() {
    return heat;
  }

  /**
   * The temperature of the tap water.
   *
   * @return the temperature, if it was stated
   */
  public Optional<Amount<Temperature>> tap() {
    return Optional.ofNullable(tap);
  }

  /**
   * What is to be done.
   *
   * @return the way
   */
  public Way way() {
    return way;
  }

  /**
   * The temperature that the free liquid needs.
   *
   * @return 0 °C to 55 °C; empty where no liquid can do it, or none is free
   */
  public Optional<Amount<Temperature>> water() {
    return Optional.ofNullable(water);
  }

  /**
   * The free water as water and ice, where ice is of use and there is enough water for it. Without
   * a stated tap the water beside the ice is as warm as the room.
   *
   * @return the ice and the water
   */
  public Optional<IcedWater> ice() {
    return Optional.ofNullable(ice);
  }

  /**
   * What else can be done, where water alone can't do it or only as ice. Where there is free
   * liquid, the first lever is that liquid at its limit (as warm as the yeast bears, as cold as 0
   * °C, or all ice), and each of the others comes on top of it; they stand in the order of what
   * they reach.
   *
   * @return the levers; none where a liquid can do it
   */
  public List<Lever> levers() {
    return levers;
  }

  /**
   * What the dough comes to with the liquid alone, or as it is without free liquid.
   *
   * @return the wanted temperature, or the nearest that the liquid at its limit gives
   */
  public Amount<Temperature> dough() {
    return dough;
  }

  /**
   * What the dough can be brought to with all levers at once.
   *
   * @return the wanted temperature, or the nearest that can be had
   */
  public Amount<Temperature> best() {
    return best;
  }

  /**
   * The heat balance behind it. Its water temperature may lie where no liquid can: that is the
   * demand for cold or warmth.
   *
   * @return the balance; empty where there is no free liquid
   */
  public Optional<HeatBalance> balance() {
    return mix.freeLiquid().value() == 0
        ? Optional.empty()
        : Optional.of(mix.balance(target, heat));
  }

  /**
   * The factor rule beside it.
   *
   * @return the rule with flour, room and each preferment; empty where there is no free liquid
   */
  public Optional<FactorRule> rule() {
    return mix.freeLiquid().value() == 0
        ? Optional.empty()
        : Optional.of(mix.factorRule(target, heat));
  }

  /**
   * The factor rule and the balance side by side.
   *
   * @return the comparison; empty where neither liquid nor ice can do it
   */
  public Optional<RuleComparison> comparison() {
    return water == null && ice == null
        ? Optional.empty()
        : Optional.of(
            RuleComparison.of(mix.factorRule(target, heat), mix.balance(target, heat), mix, heat));
  }

  @Override
  public List<Advice> advice() {
    return WaterAdvice.of(this);
  }

  @Override
  public Working working() {
    Working working = heat.working(mix);
    Optional<HeatBalance> balance = balance();
    if (balance.isPresent() && water != null) {
      working = working.then(balance.get().working());
    } else {
      Mixture mixture = mix.mixture(heat.energy(mix).in(JOULE) + heat.wetting(mix).in(JOULE));
      working =
          working.then(
              Working.of(
                  new WorkedLine(
                      "T_dough",
                      "(Σ m·c·T + mixing + hydration − thawing) / Σ m·c, liquid at its limit",
                      Numbers.decimals(mixture.capacity() / 1000, 2)
                          + " kJ/K: "
                          + AmountFormat.sideBySide().temperature(dough),
                      "energy balance")));
    }
    return rule().map(FactorRule::working).map(working::then).orElse(working);
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof WaterPlan that
        && mix.equals(that.mix)
        && target.equals(that.target)
        && heat.equals(that.heat)
        && Objects.equals(tap, that.tap)
        && iceTemperature.equals(that.iceTemperature);
  }

  @Override
  public int hashCode() {
    return Objects.hash(mix, target, heat, tap, iceTemperature);
  }

  /** {@code 150 g water at 12 °C (54 °F) for dough at 24 °C (75 °F)}. */
  @Override
  public String toString() {
    AmountFormat format = AmountFormat.sideBySide();
    String wanted = " for dough at " + format.temperature(target);
    String liquid = AmountFormat.metric().mass(mix.freeLiquid()) + " " + mix.freeLiquidName();
    if (water != null) {
      return liquid + " at " + format.temperature(water) + wanted;
    } else if (ice != null) {
      return ice + wanted;
    } else if (levers.isEmpty()) {
      return "no free liquid, dough at " + format.temperature(dough) + " as it comes";
    }
    return levers.get(0) + "; wanted " + format.temperature(target);
  }
}
