package org.tourage.day;

import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.KILOGRAM;
import static org.tourage.quantity.BakeryUnits.KILOGRAM_PER_CUBIC_METRE;
import static org.tourage.quantity.BakeryUnits.LITRE;
import static org.tourage.quantity.BakeryUnits.METRE;

import java.util.ArrayList;
import java.util.List;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Volume;
import org.jspecify.annotations.Nullable;
import org.tourage.fermentation.Cover;
import org.tourage.fermentation.DoughBody;
import org.tourage.fermentation.DoughGas;
import org.tourage.fermentation.RiseHistory;
import org.tourage.formula.Formula;
import org.tourage.formula.StageKind;
import org.tourage.lamination.LaminationPlan;
import org.tourage.makeup.CuttingPlan;
import org.tourage.makeup.Shape;
import org.tourage.physics.ChoiOkos1986;
import org.tourage.physics.Constituents;
import org.tourage.physics.Solid;
import org.tourage.physics.TemperatureHistory;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Amounts;
import org.tourage.quantity.Extent;

/**
 * Which body the dough has in each step from the end of the mix to the oven: the whole dough in its
 * tub, the packet and the sheet as the lamination plan makes them, the piece as its mass makes it.
 */
final class DoughCourse {
  private static final Amount<Temperature> LAMINATING = CELSIUS.amount(15);

  /** What a light hand leaves of the gas in the bubbles; common practice. */
  private static final Amount<Dimensionless> GENTLY_KEPT = Amounts.percent(75);

  /** A box this many times as wide as it is high is a slab. */
  private static final double FLAT = 4;

  private static final Amount<Dimensionless> ALL_PRESSED = Amounts.percent(0);

  private final Kitchen kitchen;
  private final Procedure procedure;
  private final Formula formula;
  private final Scaled scaled;
  private final Constituents dough;

  /** Worked once: history, checks and oven all ask for them. */
  private @Nullable List<Leg> legs;

  DoughCourse(Kitchen kitchen, Procedure procedure, Scaled scaled) {
    this.kitchen = kitchen;
    this.procedure = procedure;
    this.scaled = scaled;
    this.formula = scaled.batch().formula();
    this.dough = formula.constituents(StageKind::inDough);
  }

  /** A step of the course: the step, the form and the body of the dough, the air about it. */
  record Leg(Step step, @Nullable Form form, DoughBody body, Place place) {}

  /** Where the dough is: whole, a laminated sheet, or pieces. */
  private enum State {
    WHOLE,
    SHEET,
    PIECE
  }

  /** The steps from the end of the mix to the oven, each with its body. */
  List<Leg> legs() {
    List<Leg> worked = legs;
    if (worked == null) {
      worked = List.copyOf(work());
      legs = worked;
    }
    return worked;
  }

  private List<Leg> work() {
    List<Leg> legs = new ArrayList<>();
    State state = State.WHOLE;
    Form form = kitchen.tub().orElse(Form.BALL);
    Amount<Length> thickness = null;
    Place place = Place.ROOM;
    int folded = 0;
    List<Step> steps = procedure.steps();
    for (int i = procedure.mixing() + 1; i < procedure.rising(); i++) {
      Step step = steps.get(i);
      Action action = step.action();
      if (StepOrder.stageOf(action) != null) {
        continue;
      }
      LaminationPlan plan = scaled.lamination().found().orElse(null);
      if (plan != null && action instanceof Action.Enclose) {
        state = State.SHEET;
        thickness = plan.steps().get(0).after().thickness();
      } else if (plan != null && action instanceof Action.Turn turn) {
        folded += turn.folds().size();
        // close the packet, then a rolling and a fold each
        thickness = plan.steps().get(2 * folded).after().thickness();
      } else if (plan != null && action == Action.Simple.SHEET) {
        thickness = plan.setup().finalThickness();
      } else if (action == Action.Simple.DIVIDE) {
        form = Form.BALL;
        state = State.PIECE;
      } else if (action == Action.Simple.CUT) {
        form = flatPiece();
        state = State.PIECE;
      }
      if (step.form().isPresent()) {
        form = step.form().get();
        boolean sheeted = state == State.SHEET && form instanceof Form.Slab;
        boolean pieces = action == Action.Simple.SHAPE || state == State.SHEET;
        state = pieces && !sheeted ? State.PIECE : state;
        if (sheeted && thickness != null && form instanceof Form.Slab slab) {
          Forms.free("sheet", "thickness", thickness.in(METRE), slab.thickness());
        }
      }
      Solid solid =
          switch (state) {
            case WHOLE -> form.solid(volume(scaled.doughMass(), null, 1));
            case SHEET -> Solid.slab(java.util.Objects.requireNonNull(thickness));
            case PIECE -> form.solid(pieceVolume(1));
          };
      boolean stays = action == Action.Simple.SHAPE_FAT && !step.hasPlace();
      place = stays ? place : step.place();
      Cover cover = step.cover().orElse(action.takesHands() ? Cover.NONE : kitchen.cover());
      legs.add(
          new Leg(
              step,
              state == State.SHEET ? null : form,
              DoughBody.of(simpler(solid), dough).covered(cover),
              place));
    }
    return legs;
  }

  /** A piece as it is cut: as thick as its sheet, and of its area. */
  private Form flatPiece() {
    CuttingPlan plan = scaled.cutting().found().orElse(null);
    if (plan == null) {
      return Form.BALL;
    }
    // triangles cover half of base times height
    double share = plan.shape() == Shape.RECTANGLE ? 1 : 0.5;
    return Form.rectangle(Extent.of(plan.base().multiply(share), plan.height()));
  }

  /** The form of the piece that goes into the oven. */
  Form lastForm() {
    List<Leg> legs = legs();
    for (int i = legs.size() - 1; i >= 0; i--) {
      Form form = legs.get(i).form();
      if (form != null) {
        return form;
      }
      if (scaled.lamination().isThere()) {
        return Form.slab(scaled.lamination().get().setup().finalThickness());
      }
    }
    return Form.BALL;
  }

  /** The volume of one raw piece whose dough has grown so far. */
  Amount<Volume> pieceVolume(double growth) {
    Amount<Mass> piece = scaled.piece();
    double fat = scaled.batch().rollIn().ratioTo(scaled.batch().dough());
    return volume(piece.multiply(1 - fat), fat == 0 ? null : piece.multiply(fat), growth);
  }

  /** The volume of one piece with its filling, as it goes into the oven. */
  Amount<Volume> filledVolume(double growth) {
    Amount<Volume> dough = pieceVolume(growth);
    if (scaled.filling().value() == 0) {
      return dough;
    }
    Constituents filling = formula.constituents(kind -> kind == StageKind.FILLING);
    return dough.add(
        LITRE.amount(
            1000
                * scaled.filling().in(KILOGRAM)
                / ChoiOkos1986.density(filling, LAMINATING).in(KILOGRAM_PER_CUBIC_METRE)));
  }

  /** The volume of one piece without any gas. */
  Amount<Volume> solidPiece() {
    return pieceVolume(1 - DoughGas.USUAL_AIR);
  }

  Amount<Volume> volume(Amount<Mass> mass, @Nullable Amount<Mass> fat, double growth) {
    double cubic =
        mass.in(KILOGRAM)
            / ChoiOkos1986.density(dough, LAMINATING).in(KILOGRAM_PER_CUBIC_METRE)
            * growth
            / (1 - DoughGas.USUAL_AIR);
    if (fat != null) {
      Constituents rollIn = formula.constituents(kind -> kind == StageKind.ROLL_IN);
      cubic +=
          fat.in(KILOGRAM) / ChoiOkos1986.density(rollIn, LAMINATING).in(KILOGRAM_PER_CUBIC_METRE);
    }
    return LITRE.amount(1000 * cubic);
  }

  /** The history of the rise over these steps. */
  RiseHistory history(RiseHistory start) {
    RiseHistory history = start;
    for (Leg leg : legs()) {
      TemperatureHistory air =
          TemperatureHistory.ofHold(leg.place().temperature(kitchen), leg.step().time().high());
      String name = leg.step().name();
      boolean gentle = leg.step().isGentle();
      history =
          gentle || presses(leg.step().action())
              ? history.then(name, leg.body(), air, gentle ? GENTLY_KEPT : ALL_PRESSED)
              : history.then(name, leg.body(), air);
    }
    return history;
  }

  /**
   * The heat of a rise goes through the nearest faces. A flat box is a slab to it, any other box a
   * tub of the same base and height: three directions would take the day ten times as long and
   * change no temperature that a hand could feel.
   */
  private static Solid simpler(Solid solid) {
    List<Solid.Axis> axes = solid.axes();
    if (axes.size() < 3) {
      return solid;
    }
    double height = axes.get(2).half().in(METRE);
    double length = axes.get(0).half().in(METRE);
    double width = axes.get(1).half().in(METRE);
    if (height * FLAT < Math.min(length, width)) {
      return Solid.slab(axes.get(2).half().multiply(2));
    }
    double across = 2 * Math.sqrt(4 * length * width / Math.PI);
    return Solid.tub(Forms.millimetres(across), axes.get(2).half().multiply(2));
  }

  /** Shaping presses the gas out even where the form stays the same. */
  private static boolean presses(Action action) {
    return action == Action.Simple.SHAPE
        || action == Action.Simple.DIVIDE
        || action == Action.Simple.SHEET
        || action instanceof Action.Turn
        || action instanceof Action.Enclose;
  }

  /** The share of gas in a piece whose dough has grown so far. */
  Amount<Dimensionless> porosity(double growth) {
    double gas = pieceVolume(growth).in(LITRE) - solidPiece().in(LITRE);
    return Amounts.fraction(Math.max(0, gas / filledVolume(growth).in(LITRE))).to(FRACTION);
  }
}
