package org.tourage.oven;

import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.SECOND;

import java.util.List;
import javax.measure.quantity.Temperature;
import org.tourage.physics.DryingBody;
import org.tourage.physics.GasBalance;
import org.tourage.physics.IapwsIf97Saturation;
import org.tourage.quantity.Amount;

/** The course of one bake; steps may be cut short while it goes on. */
final class OvenCourse implements DryingBody.Surroundings {
  /** Vapour pressure in an oven with a load, its vent closed, Pa: a usual figure. */
  private static final double CLOSED_VAPOUR = 8_000;

  /** Vapour pressure with the vent open, Pa: about that of the room, a usual figure. */
  private static final double VENTED_VAPOUR = 2_000;

  /** Vapour pressure in an oven just after a shot of steam, Pa: a usual figure. */
  private static final double STEAM_VAPOUR = 70_000;

  /** Ovens leak: steam falls to 1/e in this time, s (a usual figure). */
  private static final double STEAM_STAYS = 240;

  /** The crumb has set and its cells are open at this mean temperature: 71 to 81 °C, Bloksma. */
  private static final double SET_CELSIUS = 76;

  /** The water of a pan that boils gives its heat so fast, W/(m²·K): a usual figure. */
  private static final double BOILING_WATER = 1000;

  /** What comes in at the door is no colder than a room: a usual figure. */
  private static final double ROOM_CELSIUS = 20;

  private final OvenModel oven;
  private final BakePiece piece;
  private final DoughKind kind;
  private final List<OvenProfile.Step> steps;
  private final double[] begins;
  private final double[] from;
  private final GasBalance gas;
  private final double linear;
  private final double boil;
  private final double open;
  private final double covered;
  private double warmest;
  private double finished = Double.POSITIVE_INFINITY;
  private double lastSeconds;
  private double alive = 1;
  private double made;
  private double volume = 1;
  private boolean set;

  OvenCourse(OvenModel oven, OvenProfile profile) {
    this(oven, profile, OvenCalibration.anyPiece(), DoughKind.LEAN);
  }

  OvenCourse(OvenModel oven, OvenProfile profile, BakePiece piece, DoughKind kind) {
    this.oven = oven;
    this.piece = piece;
    this.kind = kind;
    this.steps = profile.steps();
    this.linear = 1 / piece.dimensions();
    this.gas = piece.gas();
    this.boil = piece.boiled().in(SECOND);
    this.warmest = piece.start().in(CELSIUS);
    double bottom = piece.bottom();
    open = piece.seat().openShare(bottom, piece.sides(), bottom);
    covered = piece.seat().coveredShare(piece.sides(), bottom);
    begins = new double[steps.size()];
    from = new double[steps.size()];
    // a first ramp starts where it says, the fall at the door included
    from[0] =
        steps.get(0).rampFrom() == null
            ? Math.max(
                target(0) - oven.doorDrop().celsiusDegrees(), Math.min(target(0), ROOM_CELSIUS))
            : rampStart(0);
    for (int i = 1; i < begins.length; i++) {
      begins[i] = begins[i - 1] + steps.get(i - 1).duration().in(SECOND);
      from[i] = oven(begins[i], i - 1);
    }
  }

  private double target(int i) {
    return steps.get(i).setPoint().in(CELSIUS) + oven.offset().celsiusDegrees();
  }

  /** Where the set point of a step starts to move. */
  private double rampStart(int i) {
    Amount<Temperature> said = steps.get(i).rampFrom();
    return said != null
        ? said.in(CELSIUS) + oven.offset().celsiusDegrees()
        : target(Math.max(0, i - 1));
  }

  int stepAt(double seconds) {
    int i = begins.length - 1;
    while (i > 0 && seconds < begins[i]) {
      i--;
    }
    return i;
  }

  /** What the oven has so long after the door closed. */
  double oven(double seconds) {
    return oven(seconds, stepAt(seconds));
  }

  /** T = a + b(t − τ) + (T0 − a + bτ)e^(−t/τ) while the set point moves, then towards it. */
  private double oven(double seconds, int i) {
    double t = seconds - begins[i];
    double tau = oven.lag().in(SECOND);
    double ramp = steps.get(i).ramp().in(SECOND);
    double now = from[i];
    if (ramp > 0) {
      double a = rampStart(i);
      double b = (target(i) - a) / ramp;
      double moving = Math.min(t, ramp);
      now = a + b * (moving - tau) + (now - a + b * tau) * Math.exp(-moving / tau);
      t -= moving;
    }
    return target(i) + (now - target(i)) * Math.exp(-t / tau);
  }

  /** Looks whether the step ends; false when the last one has. Seconds since the door closed. */
  boolean goOn(double seconds, double core, double lossPercent) {
    int step = stepAt(seconds);
    boolean ended =
        switch (steps.get(step).end()) {
          case TIME -> false;
          case CORE -> core >= steps.get(step).endValue();
          case LOSS -> lossPercent >= steps.get(step).endValue();
        };
    if (!ended) {
      return seconds < finished;
    }
    if (step == begins.length - 1) {
      finished = seconds;
      return false;
    }
    double earlier = begins[step + 1] - seconds;
    for (int i = step + 1; i < begins.length; i++) {
      begins[i] -= earlier;
    }
    for (int i = step + 1; i < begins.length; i++) {
      from[i] = oven(begins[i], i - 1);
    }
    return true;
  }

  /** Seconds from when the door closes to the end of the last step as it stands now. */
  double end() {
    return Math.min(
        finished, begins[begins.length - 1] + steps.get(begins.length - 1).duration().in(SECOND));
  }

  /** Seconds in the bath before the oven. */
  double boil() {
    return boil;
  }

  private boolean inWater(double seconds) {
    return seconds < boil;
  }

  @Override
  public double celsius(double seconds) {
    return inWater(seconds) ? piece.bathTemperature().in(CELSIUS) : oven(seconds - boil);
  }

  @Override
  public double convection(double seconds) {
    if (inWater(seconds)) {
      return BOILING_WATER;
    }
    return air(seconds);
  }

  private double air(double seconds) {
    return steps.get(stepAt(seconds - boil)).mode() == OvenProfile.Mode.FAN
        ? oven.fan()
        : oven.still();
  }

  @Override
  public double emissivity() {
    return oven.emissivity();
  }

  @Override
  public double openShare() {
    return open;
  }

  @Override
  public double coveredConvection(double seconds) {
    if (inWater(seconds)) {
      return BOILING_WATER;
    }
    if (piece.seat().kind() == Seat.Kind.STONE) {
      double store = Seat.STONE_EFFUSIVITY / Math.sqrt(Math.PI * Math.max(1, seconds - boil));
      return Math.max(store, Seat.STONE_THROUGH);
    }
    return covered * air(seconds);
  }

  @Override
  public double coveredEmissivity() {
    return piece.seat().kind() == Seat.Kind.STONE ? 0 : covered * piece.seat().emissivity();
  }

  @Override
  public double coveredContact() {
    return 1 / piece.seat().contact();
  }

  @Override
  public double vapour(double seconds) {
    if (inWater(seconds)) {
      return -1;
    }
    double since = seconds - boil;
    OvenProfile.Step step = steps.get(stepAt(since));
    double wanted =
        switch (step.damp()) {
          case CLOSED -> CLOSED_VAPOUR;
          case STEAM ->
              CLOSED_VAPOUR
                  + (STEAM_VAPOUR - CLOSED_VAPOUR)
                      * StrictMath.exp(-(since - begins[stepAt(since)]) / STEAM_STAYS);
          case VENTED -> VENTED_VAPOUR;
        };
    // no air holds more than its dew
    double air = oven(since);
    return air >= 100
        ? wanted
        : Math.min(wanted, IapwsIf97Saturation.pressure(CELSIUS.amount(Math.max(0, air))));
  }

  /** Volume grows with the mean temperature until the crumb has set. */
  @Override
  public double growth(double seconds, double mean) {
    double dt = seconds - lastSeconds;
    lastSeconds = seconds;
    if (!set) {
      warmest = Math.max(warmest, Math.min(mean, SET_CELSIUS));
      double start = piece.start().in(CELSIUS);
      if (piece.rise().balanced()) {
        alive *= StrictMath.exp(-GasBalance.dying(mean) * dt);
        made += alive * gas.making(mean) * dt;
        volume = Math.max(volume, 1 + kind.holds() * (gas.volume(warmest, made) - 1));
      } else {
        double way = (warmest - start) / (SET_CELSIUS - start);
        volume = 1 + (piece.rise().times() - 1) * Math.max(0, Math.min(1, way));
      }
      set = warmest >= SET_CELSIUS;
    }
    return StrictMath.pow(volume, linear);
  }

  /** How many times its volume the piece has grown. */
  double volume() {
    return volume;
  }

  /** The share of the yeast that lives. */
  double alive() {
    return alive;
  }
}
