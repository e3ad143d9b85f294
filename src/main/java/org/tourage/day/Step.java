package org.tourage.day;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.fermentation.Cover;
import org.tourage.internal.Lists;
import org.tourage.lamination.Fold;
import org.tourage.lamination.LockIn;
import org.tourage.oven.OvenProfile;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.AmountRange;
import org.tourage.quantity.Given;

/**
 * One step of a procedure: what is done, for how long, where the dough stands, what shape it has
 * from now on, and what the baker looks for.
 *
 * <pre>{@code
 * Step.proof(minutes(75)).in(Place.PROOFER).as(Form.BALL).until(Cue.growth("doubled", 2));
 * }</pre>
 */
public final class Step implements Serializable {
  private static final long serialVersionUID = 1L;
  static final double LONGEST_MINUTES = 60.0 * 24 * 60;

  private final Action action;
  private final String name;
  private final AmountRange<Time> time;
  private final @Nullable Place place;
  private final @Nullable Form form;
  private final @Nullable Cover cover;
  private final Cue cue;
  private final boolean gentle;

  private Step(
      Action action,
      String name,
      AmountRange<Time> time,
      @Nullable Place place,
      @Nullable Form form,
      @Nullable Cover cover,
      Cue cue,
      boolean gentle) {
    this.action = requireNonNull(action, "action");
    this.name = Names.check("a step", "name", name);
    this.time = requireNonNull(time, "time");
    this.place = place;
    this.form = form;
    this.cover = cover;
    this.cue = requireNonNull(cue, "cue");
    this.gentle = gentle;
    double high = time.high().in(MINUTE);
    if (!(high >= 0.5 && high <= LONGEST_MINUTES)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a step takes time",
          name + " for " + AmountFormat.metric().time(time.high()),
          "give half a minute up to 60 days");
    }
  }

  /**
   * A step of any action.
   *
   * @param action what is done
   * @param time how long
   * @return the step
   * @throws BakeryException if the time is under half a minute or above 60 days
   */
  public static Step of(Action action, Quantity<Time> time) {
    requireNonNull(action, "action");
    Amount<Time> amount = Given.time("the time", requireNonNull(time, "time"));
    return new Step(
        action,
        action.words(),
        new AmountRange<>(amount, amount),
        null,
        null,
        null,
        Cue.NONE,
        false);
  }

  /**
   * Mixes the final dough.
   *
   * @param time weighing and mixing
   * @return the step
   */
  public static Step mix(Quantity<Time> time) {
    return of(new Action.Mix(null, null), time);
  }

  /**
   * Mixes the final dough to a wanted temperature.
   *
   * @param time weighing and mixing
   * @param target the wanted temperature of the dough
   * @return the step
   */
  public static Step mix(Quantity<Time> time, Quantity<Temperature> target) {
    requireNonNull(target, "target");
    return of(new Action.Mix(null, Given.temperature("the target", target)), time);
  }

  /**
   * Mixes a part of the dough before the final mix: a preferment, a soaker, a build of a levain.
   *
   * @param stage its name in the formula
   * @param time weighing and mixing
   * @return the step; {@link #mixedTo} says how warm it is to be
   */
  public static Step mix(String stage, Quantity<Time> time) {
    return of(new Action.Mix(requireNonNull(stage, "stage"), null), time);
  }

  /**
   * Ripens a preferment, soaker or levain.
   *
   * @param stage its name in the formula
   * @param time how long
   * @return the step
   */
  public static Step ripen(String stage, Quantity<Time> time) {
    return of(new Action.Ripen(stage), time);
  }

  /**
   * A rest on the bench.
   *
   * @param time how long
   * @return the step
   */
  public static Step rest(Quantity<Time> time) {
    return of(Action.Simple.REST, time);
  }

  /**
   * The rise of the whole dough.
   *
   * @param time how long
   * @return the step
   */
  public static Step bulkRise(Quantity<Time> time) {
    return of(Action.Simple.BULK_RISE, time);
  }

  /**
   * A chill in the refrigerator.
   *
   * @param time how long
   * @return the step
   */
  public static Step chill(Quantity<Time> time) {
    return of(Action.Simple.CHILL, time).in(Place.REFRIGERATOR);
  }

  /**
   * A long rest in the refrigerator.
   *
   * @param time how long
   * @return the step
   */
  public static Step retard(Quantity<Time> time) {
    return of(Action.Simple.RETARD, time).in(Place.REFRIGERATOR);
  }

  /**
   * Encloses the fat.
   *
   * @param lockIn how
   * @param time how long
   * @return the step
   */
  public static Step enclose(LockIn lockIn, Quantity<Time> time) {
    return of(new Action.Enclose(lockIn), time);
  }

  /**
   * Rolls out and folds.
   *
   * @param time how long
   * @param folds the folds of this turn, in order
   * @return the step
   */
  public static Step turn(Quantity<Time> time, Fold... folds) {
    return of(new Action.Turn(Lists.copy(folds, "folds")), time);
  }

  /**
   * Rolls the sheet to its final thickness.
   *
   * @param time how long
   * @return the step
   */
  public static Step sheet(Quantity<Time> time) {
    return of(Action.Simple.SHEET, time);
  }

  /**
   * Cuts the sheet.
   *
   * @param time how long
   * @return the step
   */
  public static Step cut(Quantity<Time> time) {
    return of(Action.Simple.CUT, time);
  }

  /**
   * Divides by weight.
   *
   * @param time how long
   * @return the step
   */
  public static Step divide(Quantity<Time> time) {
    return of(Action.Simple.DIVIDE, time);
  }

  /**
   * Shapes the pieces.
   *
   * @param form what shape they get
   * @param time how long
   * @return the step
   */
  public static Step shape(Form form, Quantity<Time> time) {
    requireNonNull(form, "form");
    return of(Action.Simple.SHAPE, time).as(form);
  }

  /**
   * The last rise.
   *
   * @param time how long
   * @return the step
   */
  public static Step proof(Quantity<Time> time) {
    return of(Action.Simple.PROOF, time);
  }

  /**
   * Boils the pieces, at the temperature at which water boils in the kitchen.
   *
   * @param time how long each
   * @return the step
   */
  public static Step boil(Quantity<Time> time) {
    return of(new Action.Boil(null), time);
  }

  /**
   * Scalds the pieces in a bath of a stated temperature.
   *
   * @param water the temperature of the bath, not above boiling at the altitude of the kitchen
   * @param time how long each
   * @return the step
   */
  public static Step boil(Quantity<Temperature> water, Quantity<Time> time) {
    requireNonNull(water, "water");
    return of(new Action.Boil(Given.temperature("the water", water)), time);
  }

  /**
   * Bakes.
   *
   * @param profile the oven; its whole time is that of the step
   * @return the step
   */
  public static Step bake(OvenProfile profile) {
    return of(new Action.BakeOff(profile), profile.total());
  }

  /**
   * Cools.
   *
   * @param time how long
   * @return the step
   */
  public static Step cool(Quantity<Time> time) {
    return of(Action.Simple.COOL, time);
  }

  /**
   * Any other work.
   *
   * @param name what it is
   * @param time how long
   * @return the step
   */
  public static Step work(String name, Quantity<Time> time) {
    requireNonNull(name, "name");
    return of(Action.Simple.WORK, time).called(name);
  }

  /**
   * The step under another name.
   *
   * @param words its name on the timetable
   * @return the changed step
   */
  public Step called(String words) {
    return new Step(
        action, Names.check("a step", "words", words), time, place, form, cover, cue, gentle);
  }

  /**
   * The mix with a wanted temperature of the dough.
   *
   * @param target the temperature
   * @return the changed step
   * @throws BakeryException if the step mixes nothing
   */
  public Step mixedTo(Quantity<Temperature> target) {
    if (!(action instanceof Action.Mix mix)) {
      throw new BakeryException(
          Reason.INCONSISTENT, "only a mix has a dough temperature", name, "give it to the mix");
    }
    Action mixing = new Action.Mix(mix.stage(), Given.temperature("the target", target));
    return new Step(mixing, name, time, place, form, cover, cue, gentle);
  }

  /**
   * The step with the earliest time at which one looks; its own time is the latest.
   *
   * @param earliest not longer than the time of the step
   * @return the changed step
   * @throws BakeryException if it is longer
   */
  public Step lookingFrom(Quantity<Time> earliest) {
    Amount<Time> from = Given.time("the earliest", requireNonNull(earliest, "earliest"));
    if (!(from.in(MINUTE) >= 0)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "nobody looks before the step begins",
          name + " from " + AmountFormat.metric().time(from) + " on",
          "give 0 min up to the time of the step");
    }
    return new Step(
        action, name, new AmountRange<>(from, time.high()), place, form, cover, cue, gentle);
  }

  /**
   * The step in a place.
   *
   * @param where the place
   * @return the changed step
   */
  public Step in(Place where) {
    return new Step(action, name, time, requireNonNull(where, "where"), form, cover, cue, gentle);
  }

  /**
   * The step in air of a stated temperature.
   *
   * @param air the temperature
   * @return the changed step
   */
  public Step at(Quantity<Temperature> air) {
    requireNonNull(air, "air");
    return in(Place.air(air));
  }

  /**
   * The step from which on the dough has this form.
   *
   * @param shape the form
   * @return the changed step
   */
  public Step as(Form shape) {
    return new Step(action, name, time, place, requireNonNull(shape, "shape"), cover, cue, gentle);
  }

  /**
   * The step under a cover.
   *
   * @param with what covers the dough
   * @return the changed step
   */
  public Step covered(Cover with) {
    return new Step(action, name, time, place, form, requireNonNull(with, "with"), cue, gentle);
  }

  /**
   * The step with what the baker looks for.
   *
   * @param sign the cue
   * @return the changed step
   */
  public Step until(Cue sign) {
    requireNonNull(sign, "sign");
    return new Step(action, name, time, place, form, cover, sign, gentle);
  }

  /**
   * The step done with a light hand, so that the dough keeps most of its gas.
   *
   * @return the changed step
   */
  public Step gently() {
    return new Step(action, name, time, place, form, cover, cue, true);
  }

  /**
   * Whether it is done with a light hand.
   *
   * @return whether; a cut always is
   */
  public boolean isGentle() {
    return gentle || action == Action.Simple.CUT;
  }

  /**
   * What is done.
   *
   * @return the action
   */
  public Action action() {
    return action;
  }

  /**
   * What it is called on the timetable.
   *
   * @return the name
   */
  public String name() {
    return name;
  }

  /**
   * How long it takes; the latest time is planned.
   *
   * @return from the first look to the latest end
   */
  public AmountRange<Time> time() {
    return time;
  }

  /**
   * Where the dough stands; the room where nothing else is said.
   *
   * @return the place
   */
  public Place place() {
    return place == null ? Place.ROOM : place;
  }

  /**
   * Whether a place was said.
   *
   * @return whether
   */
  public boolean hasPlace() {
    return place != null;
  }

  /**
   * The form that the dough has from this step on.
   *
   * @return the form, empty to keep the one before
   */
  public Optional<Form> form() {
    return Optional.ofNullable(form);
  }

  /**
   * What covers the dough.
   *
   * @return the cover, empty for the usual one of the kitchen
   */
  public Optional<Cover> cover() {
    return Optional.ofNullable(cover);
  }

  /**
   * What the baker looks for.
   *
   * @return the cue
   */
  public Cue cue() {
    return cue;
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Step that
        && action.equals(that.action)
        && name.equals(that.name)
        && time.equals(that.time)
        && Objects.equals(place, that.place)
        && Objects.equals(form, that.form)
        && cover == that.cover
        && gentle == that.gentle
        && cue.equals(that.cue);
  }

  @Override
  public int hashCode() {
    return Objects.hash(action, name, time, place, form, cover, cue, gentle);
  }

  @Override
  public String toString() {
    String where = place == null ? "" : " in the " + place;
    String until = cue.words().isEmpty() ? "" : ", until " + cue;
    return name + ": " + AmountFormat.metric().time(time.high()) + where + until;
  }
}
