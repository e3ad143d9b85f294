package org.tourage.oven;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.MINUTE;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Temperature;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Given;

/**
 * Proposes profiles that step down once, for a wanted core, loss of mass and crust: a bounded
 * search over first set points of 180 to 240 °C, second ones of 140 °C up to the first less 10 K,
 * and first times of 5 to 15 min; the second step ends when the loss is reached. The proposals are
 * ranked by how far crust and core are from what is wanted. They are a start for a trial bake, no
 * more.
 *
 * @param piece the piece
 * @param oven the oven
 * @param kind when it is done; the core must come to its range
 * @param loss the wanted loss of mass
 * @param crust the wanted temperature of the crust at the end
 */
public record StepDown(
    BakePiece piece,
    OvenModel oven,
    DoughKind kind,
    Amount<Dimensionless> loss,
    Amount<Temperature> crust)
    implements Serializable {
  private static final double[] FIRST_CELSIUS = {180, 190, 200, 210, 220, 230, 240};
  private static final double LOWEST_CELSIUS = 140;
  private static final double STEP_CELSIUS = 10;
  private static final double[] FIRST_MINUTES = {5, 8, 10, 12, 15};
  private static final double LONGEST_MINUTES = 90;
  private static final int PROPOSALS = 3;

  /** A kelvin of the core counts as two of the crust. */
  private static final double CORE_WEIGHT = 2;

  /**
   * Checks the wishes.
   *
   * @param piece the piece
   * @param oven the oven
   * @param kind when it is done
   * @param loss the wanted loss of mass
   * @param crust the wanted temperature of the crust at the end
   */
  public StepDown {
    requireNonNull(piece, "piece");
    requireNonNull(oven, "oven");
    requireNonNull(kind, "kind");
    double percent = loss.in(PERCENT);
    double celsius = crust.in(CELSIUS);
    if (!(percent > 0) || percent > 40 || celsius < 90 || celsius > 230) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no bake ends so",
          "loss " + loss + ", crust " + crust,
          "give a loss above 0 % and up to 40 %, and a crust of 90 °C to 230 °C");
    }
  }

  /**
   * The search for any quantities.
   *
   * @param piece the piece
   * @param oven the oven
   * @param kind when it is done
   * @param loss the wanted loss of mass
   * @param crust the wanted temperature of the crust at the end
   * @return the search
   */
  public static StepDown of(
      BakePiece piece,
      OvenModel oven,
      DoughKind kind,
      Quantity<Dimensionless> loss,
      Quantity<Temperature> crust) {
    return new StepDown(
        piece, oven, kind, Given.ratio("the loss", loss), Given.temperature("the crust", crust));
  }

  /**
   * Searches.
   *
   * @return up to three bakes that are done and have lost what was wanted, the best first
   * @throws BakeryException if none of the profiles does so within 90 min
   */
  public List<Bake> proposals() {
    List<Bake> found = new ArrayList<>();
    @Nullable Bake nearest = null;
    for (double first : FIRST_CELSIUS) {
      for (double second = LOWEST_CELSIUS; second <= first - STEP_CELSIUS; second += STEP_CELSIUS) {
        for (double minutes : FIRST_MINUTES) {
          OvenProfile profile =
              OvenProfile.of(CELSIUS.amount(first), MINUTE.amount(minutes))
                  .then(
                      new OvenProfile.Step(
                              CELSIUS.amount(second), MINUTE.amount(LONGEST_MINUTES - minutes))
                          .untilLoss(loss));
          Bake bake = Bake.of(piece, oven, profile, kind, 24, 300);
          boolean reached = bake.end().loss().in(PERCENT) >= loss.in(PERCENT);
          boolean stepped = bake.end().time().in(MINUTE) > minutes + 1;
          if (reached && stepped && bake.isDone()) {
            found.add(bake);
          } else if (nearest == null || lacks(bake) < lacks(nearest)) {
            nearest = bake;
          }
        }
      }
    }
    if (found.isEmpty()) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "no profile within the bounds gives this",
          "loss " + loss + ", a " + kind.word() + " dough done, within 90 min",
          "nearest: "
              + (nearest == null ? "none" : nearest.profile() + " ends with " + nearest.doneness())
              + (nearest == null ? "" : ", loss " + nearest.end().loss())
              + "; ask for more loss, or make the piece thinner");
    }
    return found.stream()
        .sorted(Comparator.comparingDouble(this::miss))
        .limit(PROPOSALS)
        .map(this::settled)
        .toList();
  }

  /** How far it is from what is wanted: points of loss and kelvins of the core. */
  private double lacks(Bake bake) {
    return Math.max(0, loss.in(PERCENT) - bake.end().loss().in(PERCENT))
        + Math.max(0, bake.wanted().low().in(CELSIUS) - bake.end().core().in(CELSIUS));
  }

  private double miss(Bake bake) {
    double core = bake.end().core().in(CELSIUS);
    double outside =
        Math.max(0, kind.core(piece.boiling()).low().in(CELSIUS) - core)
            + Math.max(0, core - piece.boiling().in(CELSIUS));
    return Math.abs(bake.end().surface().in(CELSIUS) - crust.in(CELSIUS)) + CORE_WEIGHT * outside;
  }

  /** The profile with its second time to the minute, on the default grid. */
  private Bake settled(Bake bake) {
    List<OvenProfile.Step> steps = bake.profile().steps();
    double first = steps.get(0).duration().in(MINUTE);
    double second = Math.max(1, Math.round(bake.end().time().in(MINUTE) - first));
    return Bake.of(
        piece,
        oven,
        OvenProfile.of(steps.get(0).setPoint(), steps.get(0).duration())
            .then(steps.get(1).setPoint(), MINUTE.amount(second)),
        kind);
  }
}
