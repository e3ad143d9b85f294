package org.tourage.oven;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.MILLIMETRE;
import static org.tourage.quantity.BakeryUnits.MINUTE;
import static org.tourage.quantity.BakeryUnits.PERCENT;
import static org.tourage.quantity.BakeryUnits.SECOND;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.tourage.advice.Advice;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.internal.Numbers;
import org.tourage.internal.TextTable;
import org.tourage.physics.DryingBody;
import org.tourage.physics.Pores;
import org.tourage.physics.TemperatureHistory;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.AmountRange;

/**
 * What happens in a piece while it bakes: convection and radiation from the oven, heat from a
 * sheet, a stone or a tin, steam that condenses on the cold piece, conduction with evaporation and
 * condensation in the cells of the crumb, a front of evaporating water that moves inward and leaves
 * a dry crust behind, the growth of the piece by its gas, its starch and its colour. The physics is
 * that of {@link DryingBody}; the front model follows B. Zanoni, C. Peri and S. Pierucci, J. Food
 * Eng. 19 (1993) 389 and 23 (1994) 321. Heat and mass balances come with the result.
 *
 * <p>What it can't know: the colour of anything but lean bread, the heat that a cold tray takes,
 * fat that runs, the layers of a laminated piece, wet toppings. Intense heat browns a piece that is
 * unbaked inside (E. Purlis, J. Food Eng. 103 (2011) 92): look at the core.
 *
 * @param piece the piece
 * @param oven the oven
 * @param profile what it was set to
 * @param kind when it is done
 * @param looks looks at the piece, the first at the start
 * @param heatTaken heat that went into the piece, J for each kg at the start
 * @param heatBalance how far the heat balance is from closing, 0 but for rounding
 * @param massBalance how far the mass balance is from closing, 0 but for rounding
 */
public record Bake(
    BakePiece piece,
    OvenModel oven,
    OvenProfile profile,
    DoughKind kind,
    List<Look> looks,
    double heatTaken,
    double heatBalance,
    double massBalance)
    implements Explained, Serializable {
  private static final int CELLS = 40;
  private static final int STEPS = 300;

  /** A look is kept about every so many seconds. */
  private static final double LOOK_SECONDS = 15;

  /** Starch is cooked from here: B. Zanoni and others, J. Food Eng. 24 (1995) 25 (from memory). */
  private static final double COOKED = 0.98;

  /** The kinetics of starch were measured over minutes; a shorter bake is judged by its core. */
  private static final double FLASH_MINUTES = 3;

  /** A core so far above what is wanted has dried or is drying: a usual figure. */
  private static final double FAR_ABOVE_KELVIN = 1;

  private static final double PALE_CELSIUS = 120;
  private static final double LOSS_LOW_PERCENT = 5;
  private static final double LOSS_HIGH_PERCENT = 25;

  /**
   * A look at the piece.
   *
   * @param time since it went in
   * @param oven what the oven really has
   * @param surface the temperature of the crust
   * @param core the temperature in the middle
   * @param mean the mean temperature
   * @param loss the share of the mass lost; 0 while more water condensed on it than left
   * @param gain the share of the mass gained while more water condensed on it than left, else 0
   * @param crust how deep the dry crust is
   * @param below the temperature of what covers it: sheet, stone or tin; the crust's on a grid
   * @param starch how far the starch of the coldest place is cooked, 0 to 1
   * @param colour the colour index of the open crust, 0 raw to 52 burnt, see {@link Crust}
   * @param volume how many times the volume at the start
   * @param step the number of the step of the profile, the first is 1
   */
  public record Look(
      Amount<Time> time,
      Amount<Temperature> oven,
      Amount<Temperature> surface,
      Amount<Temperature> core,
      Amount<Temperature> mean,
      Amount<Dimensionless> loss,
      Amount<Dimensionless> gain,
      Amount<Length> crust,
      Amount<Temperature> below,
      double starch,
      double colour,
      double volume,
      int step)
      implements Serializable {}

  /**
   * Copies the list.
   *
   * @param piece the piece
   * @param oven the oven
   * @param profile what it was set to
   * @param kind when it is done
   * @param looks looks at the piece, the first at the start
   * @param heatTaken heat that went into the piece, J for each kg at the start
   * @param heatBalance how far the heat balance is from closing
   * @param massBalance how far the mass balance is from closing
   */
  public Bake {
    requireNonNull(piece, "piece");
    requireNonNull(oven, "oven");
    requireNonNull(profile, "profile");
    requireNonNull(kind, "kind");
    looks = List.copyOf(looks);
  }

  /**
   * Bakes on the default grid of 40 cells and 300 steps.
   *
   * @param piece the piece
   * @param oven the oven
   * @param profile what it is set to
   * @param kind when it is done
   * @return the bake
   */
  public static Bake of(BakePiece piece, OvenModel oven, OvenProfile profile, DoughKind kind) {
    return of(piece, oven, profile, kind, CELLS, STEPS);
  }

  /**
   * Bakes on a grid of one's own.
   *
   * @param piece the piece
   * @param oven the oven
   * @param profile what it is set to
   * @param kind when it is done
   * @param cells how many cells, at least 8
   * @param steps how many full steps for the whole time, at least 20
   * @return the bake
   */
  public static Bake of(
      BakePiece piece, OvenModel oven, OvenProfile profile, DoughKind kind, int cells, int steps) {
    OvenCourse course = new OvenCourse(oven, profile, piece, kind);
    double boil = course.boil();
    List<Look> looks = new ArrayList<>();
    Crust crust = new Crust(kind);
    double[] next = {0};
    DryingBody.Run run =
        new DryingBody(
                piece.dimensions(),
                piece.half(),
                piece.material(),
                cells,
                steps,
                piece.seat().covered(piece.bottom(), piece.sides()))
            .run(
                piece.start().in(CELSIUS),
                boil + profile.total().in(SECOND),
                course,
                r -> {
                  double since = r.seconds() - boil;
                  if (since < 0) {
                    return true;
                  }
                  crust.follow(since, r.coldest(), r.surface());
                  boolean on =
                      course.goOn(since, r.core(), 100 * r.loss())
                          && since < course.end() * (1 - 1e-12);
                  if (since >= next[0] || !on) {
                    looks.add(look(r, course, crust));
                    next[0] = since + LOOK_SECONDS;
                  }
                  return on;
                });
    return new Bake(
        piece, oven, profile, kind, looks, run.heatTaken(), run.heatBalance(), run.massBalance());
  }

  private static Look look(DryingBody.Run run, OvenCourse course, Crust crust) {
    double since = run.seconds() - course.boil();
    return new Look(
        MINUTE.amount(since / 60),
        CELSIUS.amount(course.oven(since)),
        CELSIUS.amount(run.surface()),
        CELSIUS.amount(run.core()),
        CELSIUS.amount(run.mean()),
        PERCENT.amount(Math.max(0, 100 * run.loss())),
        PERCENT.amount(Math.max(0, -100 * run.loss())),
        MILLIMETRE.amount(1000 * run.crust()),
        CELSIUS.amount(run.underside()),
        crust.starch(),
        crust.colour(),
        course.volume(),
        1 + course.stepAt(since * (1 - 1e-12)));
  }

  /**
   * The look at the end.
   *
   * @return the last look
   */
  public Look end() {
    return looks.get(looks.size() - 1);
  }

  /**
   * When the core first has a temperature.
   *
   * @param core the temperature
   * @return the time, between looks on a straight line; empty if it never has it
   */
  public Optional<Amount<Time>> coreReaches(Quantity<Temperature> core) {
    double wanted = CELSIUS.measure("the core", core);
    for (int i = 0; i < looks.size(); i++) {
      double now = looks.get(i).core.in(CELSIUS);
      if (now >= wanted) {
        if (i == 0) {
          return Optional.of(looks.get(0).time);
        }
        double before = looks.get(i - 1).core.in(CELSIUS);
        double from = looks.get(i - 1).time.in(MINUTE);
        double part = (wanted - before) / (now - before);
        return Optional.of(MINUTE.amount(from + part * (looks.get(i).time.in(MINUTE) - from)));
      }
    }
    return Optional.empty();
  }

  /**
   * Whether it is done: the core has come to what its kind of dough wants at this altitude, and the
   * starch of the coldest place is cooked to 98 %.
   *
   * @return true if it is
   */
  public boolean isDone() {
    return isDone(end());
  }

  private boolean isDone(Look look) {
    boolean cooked = look.starch >= COOKED || profile.total().in(MINUTE) < FLASH_MINUTES;
    return look.core.compareTo(wanted().low()) >= 0 && cooked;
  }

  /**
   * When it is done.
   *
   * @return the first look at which it is; empty if it never is
   */
  public Optional<Amount<Time>> doneAfter() {
    return looks.stream().filter(this::isDone).findFirst().map(Look::time);
  }

  /**
   * The core that is wanted: that of the kind of dough, no higher than water lets it be here.
   *
   * @return the range
   */
  public AmountRange<Temperature> wanted() {
    return kind.core(piece.boiling());
  }

  /**
   * What a step of the profile does to the colour.
   *
   * @param step the number of the step, the first is 1
   * @param setPoint what it was set to
   * @param colour by how much the colour index rose in it
   */
  public record Browning(int step, Amount<Temperature> setPoint, double colour)
      implements Serializable {
    /** {@code step 2, 175 °C (347 °F): colour index + 12}. */
    @Override
    public String toString() {
      return "step "
          + step
          + ", "
          + AmountFormat.sideBySide().temperature(setPoint)
          + ": colour index + "
          + Numbers.decimals(colour, 0);
    }
  }

  /**
   * Which step makes it brown.
   *
   * @return each step that was run, the one that browns most first
   */
  public List<Browning> browning() {
    double[] rose = new double[profile.steps().size()];
    for (int i = 1; i < looks.size(); i++) {
      rose[looks.get(i).step - 1] += looks.get(i).colour - looks.get(i - 1).colour;
    }
    List<Browning> steps = new ArrayList<>();
    for (int i = 0; i < end().step; i++) {
      steps.add(new Browning(i + 1, profile.steps().get(i).setPoint(), rose[i]));
    }
    steps.sort(Comparator.comparingDouble(Browning::colour).reversed());
    return List.copyOf(steps);
  }

  /**
   * The temperature of the crust in time.
   *
   * @return the history
   */
  public TemperatureHistory crustHistory() {
    return history(Look::surface);
  }

  /**
   * The temperature of the core in time, for {@link ThermalDeath}. The core is the slowest point.
   *
   * @return the history
   */
  public TemperatureHistory coreHistory() {
    return history(Look::core);
  }

  private TemperatureHistory history(Function<Look, Amount<Temperature>> what) {
    List<TemperatureHistory.Leg> legs = new ArrayList<>();
    for (int i = 1; i < looks.size(); i++) {
      double minutes = looks.get(i).time.in(MINUTE) - looks.get(i - 1).time.in(MINUTE);
      legs.add(
          new TemperatureHistory.Leg(
              MINUTE.amount(minutes), what.apply(looks.get(i - 1)), what.apply(looks.get(i))));
    }
    return new TemperatureHistory(legs);
  }

  /**
   * One line that says whether it is done and why.
   *
   * @return the line
   */
  public String doneness() {
    AmountFormat both = AmountFormat.sideBySide();
    String core =
        "core "
            + both.temperature(end().core)
            + ", wanted for a "
            + kind.word()
            + (kind == DoughKind.BATTER ? " " : " dough ")
            + both.temperature(wanted().low())
            + " to "
            + both.temperature(wanted().high());
    String set =
        looks.stream()
            .filter(l -> l.starch >= COOKED)
            .findFirst()
            .map(l -> "starch set to the middle after " + AmountFormat.metric().time(l.time))
            .orElse(
                profile.total().in(MINUTE) < FLASH_MINUTES
                    ? "how far the starch is in so short a bake is not known"
                    : "the starch of the middle has not set");
    return (isDone() ? "done: " : "not done: ") + core + "; " + set;
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>();
    AmountFormat both = AmountFormat.sideBySide();
    if (!isDone()) {
      advice.add(
          Advice.of(
              "NOT_DONE",
              doneness(),
              "Bake longer, lower the oven if the crust is dark, or make smaller pieces"));
    }
    if (end().core.in(CELSIUS) > wanted().high().in(CELSIUS) + FAR_ABOVE_KELVIN) {
      advice.add(
          Advice.of(
              "CORE_HIGH",
              "the core ends at "
                  + both.temperature(end().core)
                  + ", above the "
                  + both.temperature(wanted().high())
                  + " that are wanted"
                  + doneAfter()
                      .map(t -> "; it was done after " + AmountFormat.metric().time(t))
                      .orElse(""),
              "It dries from here on: take it out sooner"));
    }
    double surface = end().surface.in(CELSIUS);
    boolean hot = end().colour > Crust.DARK;
    if (hot || surface < PALE_CELSIUS) {
      advice.add(
          Advice.of(
              hot ? "CRUST_HOT" : "CRUST_PALE",
              "the crust ends at "
                  + both.temperature(end().surface)
                  + ", colour index "
                  + Numbers.decimals(end().colour, 0)
                  + " of 52",
              hot
                  ? "It nears burnt; most of it comes from "
                      + browning().get(0)
                      + ": lower that step"
                  : "Below about 120 °C (248 °F) crusts hardly brown: raise the last step"));
    }
    double loss = end().loss.in(PERCENT);
    if (loss < LOSS_LOW_PERCENT || loss > LOSS_HIGH_PERCENT) {
      advice.add(
          Advice.of(
              "LOSS_UNUSUAL",
              "the piece loses " + AmountFormat.metric().percent(end().loss) + " of its mass",
              "Small pieces usually lose 8 % to 20 %; weigh one before and after"));
    }
    advice.add(
        Advice.of(
            "BAKE_UNKNOWN",
            "the colour index is that of lean bread: sugar, milk and egg wash brown sooner; fat that"
                + " runs and layers are not in the model",
            "Trust your eye for the crust and a probe for the core"));
    advice.addAll(profile.advice());
    return advice;
  }

  private static double crumb(DryingBody.Material m, double celsius) {
    return Pores.mixed(m.wetConductivity(), m.pores().cell(celsius), m.pores().share());
  }

  @Override
  public Working working() {
    DryingBody.Material m = piece.material();
    return Working.of(
        new WorkedLine(
            "piece",
            "half thickness, density, conductivities",
            Numbers.significant(1000 * piece.half(), 3)
                + " mm, "
                + Numbers.significant(m.density(), 3)
                + " kg/m³, crumb "
                + Numbers.significant(crumb(m, 25), 2)
                + " at 25 °C, "
                + Numbers.significant(crumb(m, 80), 2)
                + " at 80 °C, crust "
                + Numbers.significant(m.dryConductivity(), 2)
                + " W/(m·K)",
            "Choi and Okos 1986; evaporation in the cells; J. Food Eng. 26 (1995) 497-510"),
        new WorkedLine(
            "seat",
            "shares of the surface",
            piece.seat()
                + ": "
                + Numbers.decimals(100 * piece.seat().covered(piece.bottom(), piece.sides()), 0)
                + " % covered",
            "shape"),
        new WorkedLine(
            "spring",
            piece.rise().balanced() ? "gas balance, held in part" : "given",
            "× " + Numbers.significant(end().volume, 3),
            piece.rise().balanced()
                ? "Carroll and others 1991; Channaiah and others 2016"
                : "given"),
        new WorkedLine(
            "boiling",
            "at the pressure of the air",
            AmountFormat.sideBySide().temperature(piece.boiling()),
            "IAPWS R7-97(2012); ISO 2533:1975"),
        new WorkedLine(
            "heat taken",
            "Σ flux · surface · time",
            Numbers.significant(heatTaken / 1000, 4) + " kJ for each kg of dough",
            "heat balance closes to " + String.format(Locale.ROOT, "%.0e", heatBalance)),
        new WorkedLine(
            "loss",
            "water that left / mass at the start",
            AmountFormat.metric().percent(end().loss),
            "mass balance closes to " + String.format(Locale.ROOT, "%.0e", massBalance)));
  }

  /**
   * The bake as a table.
   *
   * @param format how temperatures are written
   * @return the table, eight rows or so
   */
  public String table(AmountFormat format) {
    TextTable table = new TextTable(1);
    table.row("after", "oven", "crust", "core", "lost", "crust depth", "colour");
    double total = end().time.in(MINUTE);
    double next = 0;
    for (int i = 0; i < looks.size(); i++) {
      Look look = looks.get(i);
      boolean last = i == looks.size() - 1;
      if (look.time.in(MINUTE) >= next - 1e-9 || last) {
        table.row(
            AmountFormat.metric().time(look.time),
            format.temperature(look.oven),
            format.temperature(look.surface),
            format.temperature(look.core),
            AmountFormat.metric().percent(look.loss),
            AmountFormat.metric().length(look.crust),
            Numbers.decimals(look.colour, 0));
        next += total / 8;
      }
    }
    return table.toString();
  }

  /** The table and whether it is done. */
  @Override
  public String toString() {
    return table(AmountFormat.sideBySide()) + "\n" + doneness();
  }
}
