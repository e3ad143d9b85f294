package org.tourage.day;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;

import java.io.Serializable;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Temperature;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.fermentation.Cover;
import org.tourage.lamination.Bench;
import org.tourage.lamination.Rollers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Amounts;
import org.tourage.quantity.Extent;
import org.tourage.quantity.Given;

/**
 * What stays the same from recipe to recipe: how warm the rooms are, what the balances show, which
 * bench, mixer and oven there are. What is not said has a usual value, and {@link #usual()} tells
 * which facts those are.
 *
 * <pre>{@code
 * Kitchen.named("Kestrel Lane").withRoom(celsius(21)).withTap(celsius(12));
 * }</pre>
 */
public final class Kitchen implements Serializable {
  private static final long serialVersionUID = 1L;

  /** A kitchen of which nothing is known: all facts have their usual values. */
  public static final Kitchen USUAL = new Kitchen("a usual kitchen", new EnumMap<>(Fact.class));

  /** What a kitchen can say about itself. The usual values are common practice. */
  public enum Fact {
    /** The temperature of the room. */
    ROOM("room", Amounts.celsius(22), -10, 50),
    /** The temperature of the tap water. */
    TAP("tap", Amounts.celsius(16), 0, 60),
    /** The temperature of the flour; the room's where it is not said. */
    FLOUR("flour temperature", null, -30, 50),
    /** The temperature of the refrigerator. */
    REFRIGERATOR("refrigerator", Amounts.celsius(4), -3, 15),
    /** The temperature of the freezer. */
    FREEZER("freezer", Amounts.celsius(-18), -60, -1),
    /** The temperature of the proofing cabinet. */
    PROOFER("proofer", Amounts.celsius(27), 15, 45),
    /** The altitude above the sea. */
    ALTITUDE("altitude", Amounts.metres(0), 0, 0),
    /** The balance for most ingredients. */
    BALANCE("balance", Balance.to(Amounts.grams(1)), 0, 0),
    /** The balance for small amounts. */
    FINE_BALANCE("fine balance", null, 0, 0),
    /** What the bench is made of. */
    BENCH("bench", Bench.WOOD, 0, 0),
    /** The size of the bench or the sheeter's belt. */
    BENCH_SIZE("bench size", null, 0, 0),
    /** The tub for a rising dough. */
    TUB("tub", null, 0, 0),
    /** What covers a resting dough. */
    COVER("cover", Cover.FILM, 0, 0),
    /** The mixer. */
    MIXER("mixer", Mixer.USUAL, 0, 0),
    /** The oven. */
    OVEN("oven", KitchenOven.HOUSEHOLD, 0, 0),
    /** The sheeter or the pin. */
    ROLLERS("rollers", null, 0, 0);

    private final String words;
    private final @Nullable Serializable usual;
    private final double least;
    private final double most;

    Fact(String words, @Nullable Serializable usual, double leastCelsius, double mostCelsius) {
      this.words = words;
      this.usual = usual;
      this.least = leastCelsius;
      this.most = mostCelsius;
    }

    /**
     * The fact in words.
     *
     * @return for example {@code fine balance}
     */
    public String words() {
      return words;
    }
  }

  private final String name;
  private final Map<Fact, Serializable> given;

  private Kitchen(String name, Map<Fact, Serializable> given) {
    this.name = Names.check("a kitchen", "name", name);
    this.given = Collections.unmodifiableMap(given);
    if (given.get(Fact.FINE_BALANCE) instanceof Balance fine
        && fine.step().compareTo(balance().step()) > 0) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "the fine balance is coarser than the other",
          "steps of " + fine.step() + " beside " + balance().step(),
          "give the finer one as the fine balance");
    }
  }

  /**
   * A kitchen with usual values.
   *
   * @param name what it is called
   * @return the kitchen
   */
  public static Kitchen named(String name) {
    return new Kitchen(name, new EnumMap<>(Fact.class));
  }

  private Kitchen with(Fact fact, Serializable value) {
    EnumMap<Fact, Serializable> more = new EnumMap<>(Fact.class);
    more.putAll(given);
    more.put(fact, requireNonNull(value, fact.words));
    return new Kitchen(name, more);
  }

  private Kitchen with(Fact fact, Quantity<Temperature> value) {
    Amount<Temperature> reading = Given.temperature("the value", value);
    double celsius = reading.in(CELSIUS);
    if (!(celsius >= fact.least && celsius <= fact.most)) {
      AmountFormat format = AmountFormat.sideBySide();
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no kitchen has such a temperature of its " + fact.words,
          format.temperature(reading),
          "give "
              + format.temperature(Amounts.celsius(fact.least))
              + " to "
              + format.temperature(Amounts.celsius(fact.most)));
    }
    return with(fact, (Serializable) reading);
  }

  @SuppressWarnings("unchecked")
  private <T> Optional<T> look(Fact fact) {
    // each fact is set by one method and read by one method of the same type
    Serializable value = given.getOrDefault(fact, fact.usual);
    return Optional.ofNullable((T) value);
  }

  private <T> T get(Fact fact) {
    return this.<T>look(fact).orElseThrow();
  }

  /**
   * The facts that were not given.
   *
   * @return those with their usual values, or without one
   */
  public List<Fact> usual() {
    return Arrays.stream(Fact.values()).filter(f -> !given.containsKey(f)).toList();
  }

  /**
   * What it is called.
   *
   * @return the name
   */
  public String name() {
    return name;
  }

  /**
   * The kitchen with another room temperature.
   *
   * @param value −10 °C to 50 °C
   * @return the changed kitchen
   */
  public Kitchen withRoom(Quantity<Temperature> value) {
    requireNonNull(value, "value");
    return with(Fact.ROOM, value);
  }

  /**
   * The kitchen with another temperature of the tap water.
   *
   * @param value 0 °C to 60 °C
   * @return the changed kitchen
   */
  public Kitchen withTap(Quantity<Temperature> value) {
    requireNonNull(value, "value");
    return with(Fact.TAP, value);
  }

  /**
   * The kitchen with flour of this temperature.
   *
   * @param value −30 °C to 50 °C
   * @return the changed kitchen
   */
  public Kitchen withFlour(Quantity<Temperature> value) {
    requireNonNull(value, "value");
    return with(Fact.FLOUR, value);
  }

  /**
   * The kitchen with another temperature of the refrigerator.
   *
   * @param value −3 °C to 15 °C
   * @return the changed kitchen
   */
  public Kitchen withRefrigerator(Quantity<Temperature> value) {
    requireNonNull(value, "value");
    return with(Fact.REFRIGERATOR, value);
  }

  /**
   * The kitchen with another temperature of the freezer.
   *
   * @param value −60 °C to −1 °C
   * @return the changed kitchen
   */
  public Kitchen withFreezer(Quantity<Temperature> value) {
    requireNonNull(value, "value");
    return with(Fact.FREEZER, value);
  }

  /**
   * The kitchen with another temperature of the proofing cabinet.
   *
   * @param value 15 °C to 45 °C
   * @return the changed kitchen
   */
  public Kitchen withProofer(Quantity<Temperature> value) {
    requireNonNull(value, "value");
    return with(Fact.PROOFER, value);
  }

  /**
   * The kitchen at another altitude.
   *
   * @param value above the sea, within the range of {@link org.tourage.physics.Atmosphere}
   * @return the changed kitchen
   */
  public Kitchen atAltitude(Quantity<Length> value) {
    requireNonNull(value, "value");
    Amount<Length> altitude = Given.length("the value", value);
    org.tourage.physics.Atmosphere.pressure(altitude);
    return with(Fact.ALTITUDE, (Serializable) altitude);
  }

  /**
   * The kitchen with another balance.
   *
   * @param value the balance for most ingredients
   * @return the changed kitchen
   */
  public Kitchen withBalance(Balance value) {
    requireNonNull(value, "value");
    return with(Fact.BALANCE, value);
  }

  /**
   * The kitchen with a balance for small amounts.
   *
   * @param value the fine balance
   * @return the changed kitchen
   */
  public Kitchen withFineBalance(Balance value) {
    requireNonNull(value, "value");
    return with(Fact.FINE_BALANCE, value);
  }

  /**
   * The kitchen with another bench.
   *
   * @param value what it is made of
   * @return the changed kitchen
   */
  public Kitchen withBench(Bench value) {
    requireNonNull(value, "value");
    return with(Fact.BENCH, value);
  }

  /**
   * The kitchen with a bench or belt of this size.
   *
   * @param value length and width
   * @return the changed kitchen
   */
  public Kitchen withBenchSize(Extent value) {
    requireNonNull(value, "value");
    return with(Fact.BENCH_SIZE, (Serializable) value);
  }

  /**
   * The kitchen with a tub for rising dough.
   *
   * @param diameter inside
   * @return the changed kitchen
   */
  public Kitchen withTub(Quantity<Length> diameter) {
    requireNonNull(diameter, "diameter");
    return with(Fact.TUB, (Serializable) Form.tub(diameter));
  }

  /**
   * The kitchen with another usual cover.
   *
   * @param value what covers a resting dough
   * @return the changed kitchen
   */
  public Kitchen withCover(Cover value) {
    requireNonNull(value, "value");
    return with(Fact.COVER, value);
  }

  /**
   * The kitchen with another mixer.
   *
   * @param value the mixer
   * @return the changed kitchen
   */
  public Kitchen withMixer(Mixer value) {
    requireNonNull(value, "value");
    return with(Fact.MIXER, value);
  }

  /**
   * The kitchen with another oven.
   *
   * @param value the oven
   * @return the changed kitchen
   */
  public Kitchen withOven(KitchenOven value) {
    requireNonNull(value, "value");
    return with(Fact.OVEN, value);
  }

  /**
   * The kitchen with a sheeter or a pin.
   *
   * @param value what dough is rolled with
   * @return the changed kitchen
   */
  public Kitchen withRollers(Rollers value) {
    requireNonNull(value, "value");
    return with(Fact.ROLLERS, value);
  }

  /**
   * What dough is rolled with.
   *
   * @return the sheeter or the pin, if it was said
   */
  public Optional<Rollers> rollers() {
    return look(Fact.ROLLERS);
  }

  /**
   * The temperature of the room.
   *
   * @return the temperature
   */
  public Amount<Temperature> room() {
    return get(Fact.ROOM);
  }

  /**
   * The temperature of the tap water.
   *
   * @return the temperature
   */
  public Amount<Temperature> tap() {
    return get(Fact.TAP);
  }

  /**
   * The temperature of the flour.
   *
   * @return the temperature; that of the room where nothing was said
   */
  public Amount<Temperature> flour() {
    return this.<Amount<Temperature>>look(Fact.FLOUR).orElseGet(this::room);
  }

  /**
   * The temperature of the refrigerator.
   *
   * @return the temperature
   */
  public Amount<Temperature> refrigerator() {
    return get(Fact.REFRIGERATOR);
  }

  /**
   * The temperature of the freezer.
   *
   * @return the temperature
   */
  public Amount<Temperature> freezer() {
    return get(Fact.FREEZER);
  }

  /**
   * The temperature of the proofing cabinet.
   *
   * @return the temperature
   */
  public Amount<Temperature> proofer() {
    return get(Fact.PROOFER);
  }

  /**
   * The altitude.
   *
   * @return above the sea
   */
  public Amount<Length> altitude() {
    return get(Fact.ALTITUDE);
  }

  /**
   * The balance for most ingredients.
   *
   * @return the balance
   */
  public Balance balance() {
    return get(Fact.BALANCE);
  }

  /**
   * The balance for small amounts.
   *
   * @return the fine balance, if there is one
   */
  public Optional<Balance> fineBalance() {
    return look(Fact.FINE_BALANCE);
  }

  /**
   * The bench.
   *
   * @return what it is made of
   */
  public Bench bench() {
    return get(Fact.BENCH);
  }

  /**
   * The size of the bench or belt.
   *
   * @return length and width, if said
   */
  public Optional<Extent> benchSize() {
    return look(Fact.BENCH_SIZE);
  }

  /**
   * The tub for rising dough.
   *
   * @return the tub, if there is one
   */
  public Optional<Form> tub() {
    return look(Fact.TUB);
  }

  /**
   * What covers a resting dough.
   *
   * @return the cover
   */
  public Cover cover() {
    return get(Fact.COVER);
  }

  /**
   * The mixer.
   *
   * @return the mixer
   */
  public Mixer mixer() {
    return get(Fact.MIXER);
  }

  /**
   * The oven.
   *
   * @return the oven
   */
  public KitchenOven oven() {
    return get(Fact.OVEN);
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Kitchen that && name.equals(that.name) && given.equals(that.given);
  }

  @Override
  public int hashCode() {
    return 31 * name.hashCode() + given.keySet().size();
  }

  /** The name and what was given. */
  @Override
  public String toString() {
    return name
        + given.entrySet().stream()
            .map(e -> "; " + e.getKey().words + " " + e.getValue())
            .collect(Collectors.joining());
  }
}
