package org.tourage.oven;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.MILLIMETRE;
import static org.tourage.quantity.BakeryUnits.MINUTE;
import static org.tourage.quantity.BakeryUnits.PERCENT;
import static org.tourage.quantity.BakeryUnits.SECOND;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
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
import org.tourage.physics.TemperatureHistory;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;

/**
 * What happens in a piece while it bakes: convection and radiation from the oven, steam that
 * condenses on the cold piece, conduction, water that leaves the surface, a front of boiling water
 * that moves inward and leaves a dry crust behind, and the growth of the piece. The physics is that
 * of {@link DryingBody}; the front model follows B. Zanoni, C. Peri and S. Pierucci, J. Food Eng.
 * 19 (1993) 389 and 23 (1994) 321. Heat and mass balances come with the result.
 *
 * <p>What it can't know: the colour of the crust (no kinetic was at hand that holds for pastry),
 * the heat of the tray, neighbours on the tray, fat that runs, the layers of a laminated piece.
 * Intense heat browns a piece that is unbaked inside (E. Purlis, J. Food Eng. 103 (2011) 92): look
 * at the core.
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

  private static final double BURNT_CELSIUS = 190;
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
   * @param loss the share of the mass lost; negative where more condensed than left
   * @param crust how deep the dry crust is
   */
  public record Look(
      Amount<Time> time,
      Amount<Temperature> oven,
      Amount<Temperature> surface,
      Amount<Temperature> core,
      Amount<Temperature> mean,
      Amount<Dimensionless> loss,
      Amount<Length> crust)
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
    double start = piece.start().in(CELSIUS);
    OvenModel.Course course =
        new OvenModel.Course(oven, profile, piece.spring(), piece.dimensions(), start);
    double total = profile.total().in(SECOND);
    List<Look> looks = new ArrayList<>();
    double[] next = {0};
    DryingBody.Run run =
        new DryingBody(piece.dimensions(), piece.half(), piece.material(), cells, steps)
            .run(
                start,
                total,
                course,
                r -> {
                  boolean on =
                      course.goOn(r.seconds(), r.core(), 100 * r.loss())
                          && r.seconds() < course.end() * (1 - 1e-12);
                  if (r.seconds() >= next[0] || !on) {
                    looks.add(look(r, course));
                    next[0] = r.seconds() + LOOK_SECONDS;
                  }
                  return on;
                });
    return new Bake(
        piece, oven, profile, kind, looks, run.heatTaken(), run.heatBalance(), run.massBalance());
  }

  private static Look look(DryingBody.Run run, OvenModel.Course course) {
    return new Look(
        MINUTE.amount(run.seconds() / 60),
        CELSIUS.amount(course.celsius(run.seconds())),
        CELSIUS.amount(run.surface()),
        CELSIUS.amount(run.core()),
        CELSIUS.amount(run.mean()),
        PERCENT.amount(100 * run.loss()),
        MILLIMETRE.amount(1000 * run.crust()));
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
    double wanted = CELSIUS.measure(core);
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
   * Whether it is done: the core has come to what its kind of dough wants, and its starch has set.
   *
   * @return true if it is
   */
  public boolean isDone() {
    return end().core.compareTo(kind.core().low()) >= 0;
  }

  /**
   * The temperature of the core in time, for {@link ThermalDeath}. The core is the slowest point.
   *
   * @return the history
   */
  public TemperatureHistory coreHistory() {
    List<TemperatureHistory.Leg> legs = new ArrayList<>();
    for (int i = 1; i < looks.size(); i++) {
      double minutes = looks.get(i).time.in(MINUTE) - looks.get(i - 1).time.in(MINUTE);
      legs.add(
          new TemperatureHistory.Leg(
              MINUTE.amount(minutes), looks.get(i - 1).core, looks.get(i).core));
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
            + " dough "
            + both.temperature(kind.core().low())
            + " to "
            + both.temperature(kind.core().high());
    String set =
        coreReaches(DoughKind.starchSet())
            .map(t -> "starch set to the middle after " + AmountFormat.metric().time(t))
            .orElse("the starch of the middle has not set");
    return (isDone() ? "done: " : "not done: ") + core + "; " + set;
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>();
    AmountFormat both = AmountFormat.sideBySide();
    if (!isDone()) {
      advice.add(
          Advice.warning(
              "NOT_DONE",
              doneness(),
              "Bake longer, lower the oven if the crust is dark, or make smaller pieces",
              Advice.COMMON_PRACTICE));
    }
    double surface = end().surface.in(CELSIUS);
    if (surface > BURNT_CELSIUS || surface < PALE_CELSIUS) {
      advice.add(
          Advice.note(
              surface > BURNT_CELSIUS ? "CRUST_HOT" : "CRUST_PALE",
              "the crust ends at " + both.temperature(end().surface),
              surface > BURNT_CELSIUS
                  ? "Above about 190 °C (374 °F) crusts burn soon: lower the last step"
                  : "Below about 120 °C (248 °F) crusts hardly brown: raise the last step",
              Advice.COMMON_PRACTICE));
    }
    double loss = end().loss.in(PERCENT);
    if (loss < LOSS_LOW_PERCENT || loss > LOSS_HIGH_PERCENT) {
      advice.add(
          Advice.note(
              "LOSS_UNUSUAL",
              "the piece loses " + AmountFormat.metric().percent(end().loss) + " of its mass",
              "Small pieces usually lose 8 % to 20 %; weigh one before and after",
              Advice.COMMON_PRACTICE));
    }
    advice.add(
        Advice.note(
            "BAKE_UNKNOWN",
            "the model knows no colour, no tray and no neighbours on it",
            "Trust your eye for the crust and a probe for the core",
            "limits of the model"));
    advice.addAll(profile.advice());
    return advice;
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
                + Numbers.significant(m.wetConductivity(), 3)
                + ", crust "
                + Numbers.significant(m.dryConductivity(), 3)
                + " W/(m·K)",
            "Choi and Okos 1986; J. Food Eng. 26 (1995) 497-510"),
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
    table.row("after", "oven", "crust", "core", "lost", "crust depth");
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
            AmountFormat.metric().length(look.crust));
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
