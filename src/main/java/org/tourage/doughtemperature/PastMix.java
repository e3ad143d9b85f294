package org.tourage.doughtemperature;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.KILOGRAM;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Given;
import org.tourage.quantity.TemperatureDifference;

/**
 * A mix of the past: what was read off the thermometer that day. The balance turns it into the heat
 * of the mixer, the wetting of the flour and what bowl and room took included, so that the same day
 * gives back the same water. Immutable.
 */
public final class PastMix implements Explained, Serializable {
  private static final long serialVersionUID = 1L;

  /** The stage with the temperatures of that day. */
  private final StageMix mix;

  /** The temperature of the free liquid; null where the stage has none. */
  private final @Nullable Amount<Temperature> water;

  /** The ice of 0 °C that was a part of the water. */
  private final Amount<Mass> ice;

  /** What the dough came out at. */
  private final Amount<Temperature> dough;

  /** The rise, worked out once. */
  private final TemperatureDifference rise;

  private PastMix(
      StageMix mix,
      @Nullable Amount<Temperature> water,
      Amount<Mass> ice,
      Amount<Temperature> dough) {
    this.mix = requireNonNull(mix, "mix");
    this.water = water;
    this.ice = ice;
    this.dough = Readings.within("a dough", dough, 0, 50);
    Mixture mixture = mix.mixture(0);
    double grown = mixture.extraFor(liquidCelsius(mixture), dough.in(CELSIUS)) / mixture.capacity();
    if (grown < -Readings.GREATEST_LOSS || grown > Readings.GREATEST_RISE) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "no mixer changes a dough by so much",
          Numbers.decimals(grown, 1) + " K from its parts to " + dough,
          "read the temperatures again; a mix gives -10 K to 25 K (-18 °F to 45 °F)");
    }
    this.rise = TemperatureDifference.ofCelsiusDegrees(grown);
  }

  /**
   * A mix with free liquid.
   *
   * @param mix the stage with the temperatures of that day
   * @param water the temperature of the free liquid, 0 °C to 55 °C
   * @param dough the temperature that the dough came out at, 0 °C to 50 °C
   * @return the past mix
   * @throws BakeryException if a temperature can't be, or the stage has no free liquid
   */
  public static PastMix of(StageMix mix, Quantity<Temperature> water, Quantity<Temperature> dough) {
    if (mix.freeLiquid().value() == 0) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "this stage has no free liquid",
          mix.toString(),
          "leave the temperature of the water out");
    }
    return new PastMix(
        mix,
        Readings.liquid("the water", water),
        KILOGRAM.amount(0),
        Given.temperature("the dough", dough));
  }

  /**
   * A mix without free liquid, such as an all-egg dough.
   *
   * @param mix the stage with the temperatures of that day
   * @param dough the temperature that the dough came out at, 0 °C to 50 °C
   * @return the past mix
   * @throws BakeryException if a temperature can't be, or the stage has free liquid
   */
  public static PastMix of(StageMix mix, Quantity<Temperature> dough) {
    if (mix.freeLiquid().value() > 0) {
      throw new BakeryException(
          Reason.MISSING,
          "the temperature of the free liquid is missing",
          mix.freeLiquidName(),
          "give what was poured in that day");
    }
    return new PastMix(mix, null, KILOGRAM.amount(0), Given.temperature("the dough", dough));
  }

  /**
   * A mix with ice of 0 °C as a part of its water.
   *
   * @param mix the stage with the temperatures of that day
   * @param water the temperature of the water beside the ice, 0 °C to 55 °C
   * @param ice the ice, at most the free water
   * @param dough the temperature that the dough came out at, 0 °C to 50 °C
   * @return the past mix
   * @throws BakeryException if a temperature can't be, or there was not so much water
   */
  public static PastMix iced(
      StageMix mix, Quantity<Temperature> water, Quantity<Mass> ice, Quantity<Temperature> dough) {
    Amount<Mass> given = Given.mass("the ice", ice);
    if (!mix.freeLiquidIsWater()
        || given.value() < 0
        || given.in(KILOGRAM) > mix.freeLiquid().in(KILOGRAM)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "this can't be the ice",
          given + " of " + mix.freeLiquid() + " " + mix.freeLiquidName(),
          "give at most the free water");
    }
    return new PastMix(
        mix, Readings.liquid("the water", water), given, Given.temperature("the dough", dough));
  }

  /**
   * The stage with the temperatures of that day.
   *
   * @return the mix
   */
  public StageMix mix() {
    return mix;
  }

  /**
   * The temperature of the free liquid that day; with ice, that of the water beside it.
   *
   * @return the temperature; empty where the stage has no free liquid
   */
  public Optional<Amount<Temperature>> water() {
    return Optional.ofNullable(water);
  }

  /**
   * The ice of that day.
   *
   * @return its mass, 0 kg where there was none
   */
  public Amount<Mass> ice() {
    return ice;
  }

  /**
   * What the dough came out at.
   *
   * @return the temperature
   */
  public Amount<Temperature> dough() {
    return dough;
  }

  /** The liquid that brings what water and ice brought, °C; 0 where there is none. */
  private double liquidCelsius(Mixture mixture) {
    if (water == null) {
      return 0;
    }
    double read = water.in(CELSIUS);
    return ice.value() == 0 ? read : mixture.iced(read, ice.in(KILOGRAM), 0);
  }

  /**
   * The rise of the whole dough, bowl included where it is counted, over its parts: mixing and
   * wetting less what was lost.
   *
   * @return (Σ m·c·(T_dough − T)) / Σ m·c; negative where more was lost than gained
   */
  public TemperatureDifference rise() {
    return rise;
  }

  /**
   * The friction of the factor rule for the same day.
   *
   * @return k · T_dough − ΣT_i − T_water; empty where there was no free liquid
   */
  public Optional<TemperatureDifference> friction() {
    if (water == null) {
      return Optional.empty();
    }
    double used = liquidCelsius(mix.mixture(0));
    return Optional.of(mix.factorRule(dough).frictionOfPastMix(CELSIUS.amount(used)));
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>();
    double wetting = MixerHeat.usualWettingKelvins(mix);
    double grown = rise().celsiusDegrees();
    if (grown < wetting) {
      advice.add(
          Advice.of(
              "PAST_MIX_COLD",
              "the past mix warmed its dough by "
                  + Numbers.decimals(grown, 1)
                  + " K, while the wetting of its flour alone gives about "
                  + Numbers.decimals(wetting, 1)
                  + " K",
              "Bowl or room took the rest; weigh the bowl and count it, and read the temperatures"
                  + " again"));
    }
    return advice;
  }

  @Override
  public Working working() {
    List<WorkedLine> lines = new ArrayList<>();
    lines.add(
        new WorkedLine(
            "rise",
            "Σ m·c·(T_dough − T) / Σ m·c, wetting of the flour and loss included",
            Numbers.decimals(rise().celsiusDegrees(), 2) + " K",
            "energy balance of the past mix"));
    friction()
        .ifPresent(
            f ->
                lines.add(
                    new WorkedLine(
                        "friction",
                        "k·T_dough − ΣT_i − T_water",
                        Numbers.decimals(f.celsiusDegrees(), 2) + " K",
                        Advice.COMMON_PRACTICE)));
    return new Working(lines);
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof PastMix that
        && mix.equals(that.mix)
        && Objects.equals(water, that.water)
        && ice.equals(that.ice)
        && dough.equals(that.dough);
  }

  @Override
  public int hashCode() {
    return Objects.hash(mix, water, ice, dough);
  }

  /** {@code Final dough of rolls, …, water at 14 °C (57 °F) gave dough at 25 °C (77 °F)}. */
  @Override
  public String toString() {
    AmountFormat format = AmountFormat.sideBySide();
    String liquid =
        water == null
            ? ""
            : ", "
                + (ice.value() > 0 ? format.mass(ice) + " ice and " : "")
                + mix.freeLiquidName()
                + " at "
                + format.temperature(water);
    return mix + liquid + " gave dough at " + format.temperature(dough);
  }
}
