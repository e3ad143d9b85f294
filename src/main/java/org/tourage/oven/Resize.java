package org.tourage.oven;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Time;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;

/**
 * The profile for a piece of another size: the times of the old profile stretched by one factor, so
 * that the core of the new piece comes to what the old one had at the same part of its bake. The
 * simple rules stand beside it: time grows with the square of the thickness where conduction rules,
 * and with the thickness where the surface does; real pieces lie between (common practice).
 *
 * @param before the bake of the old piece
 * @param after the bake of the new piece with the new profile
 * @param factor by how much the times were stretched
 */
public record Resize(Bake before, Bake after, double factor) implements Explained, Serializable {
  private static final double LEAST = 0.05;
  private static final double MOST = 30;
  private static final int HALVINGS = 40;
  private static final double NEAR = 1e-4;

  /**
   * Checks that nothing is null.
   *
   * @param before the bake of the old piece
   * @param after the bake of the new piece with the new profile
   * @param factor by how much the times were stretched
   */
  public Resize {
    requireNonNull(before, "before");
    requireNonNull(after, "after");
  }

  /**
   * Finds the profile for another piece in the same oven.
   *
   * @param before the bake of the old piece; it must be done
   * @param piece the new piece
   * @return the new bake and its profile
   * @throws BakeryException if the old piece is not done, or no stretch gets the new one done
   */
  public static Resize of(Bake before, BakePiece piece) {
    Amount<Time> reached =
        before
            .coreReaches(before.wanted().low())
            .orElseThrow(
                () ->
                    new BakeryException(
                        Reason.INCONSISTENT,
                        "the old piece is not done, so there is nothing to go by",
                        before.doneness(),
                        "give a bake that is done"));
    double part = reached.ratioTo(before.end().time());
    double low = LEAST;
    double high = LEAST;
    // a wide search first: a longer bake brings the core further at the same part of its time
    while (late(before, piece, high, part)) {
      low = high;
      high *= 1.6;
      if (high > MOST) {
        Bake longest = bake(before, piece, low);
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "these set points never get the new piece done",
            piece.toString(),
            "raise the set points, or make the piece thinner; nearest: "
                + longest.profile().total()
                + " with "
                + longest.doneness());
      }
    }
    for (int i = 0; i < HALVINGS && high / low > 1 + NEAR; i++) {
      double middle = Math.sqrt(low * high);
      if (late(before, piece, middle, part)) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return new Resize(before, bake(before, piece, high), high);
  }

  private static Bake bake(Bake before, BakePiece piece, double factor) {
    return Bake.of(piece, before.oven(), before.profile().stretched(factor), before.kind());
  }

  /** Whether the core comes later than at the same part of the bake. */
  private static boolean late(Bake before, BakePiece piece, double factor, double part) {
    Bake bake = bake(before, piece, factor);
    Optional<Amount<Time>> reached = bake.coreReaches(bake.wanted().low());
    return reached.map(t -> t.ratioTo(bake.end().time()) > part).orElse(true);
  }

  /**
   * The new profile.
   *
   * @return the old set points for the new times
   */
  public OvenProfile profile() {
    return after.profile();
  }

  /**
   * The factor by the square law.
   *
   * @return the square of the ratio of the thicknesses
   */
  public double bySquareLaw() {
    double ratio = after.piece().half() / before.piece().half();
    return ratio * ratio;
  }

  /**
   * The power of the thickness that the time really follows.
   *
   * @return between 1 and 2 for usual pieces; NaN for equal thicknesses
   */
  public double power() {
    return Math.log(factor) / Math.log(after.piece().half() / before.piece().half());
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>(after.advice());
    double surface = after.end().surface().in(CELSIUS) - before.end().surface().in(CELSIUS);
    if (surface > 10) {
      advice.add(
          Advice.of(
              "CRUST_HOTTER",
              "the crust ends " + Numbers.decimals(surface, 0) + " K hotter than before",
              "Lower the last step by about as much and bake a little longer"));
    }
    return advice;
  }

  @Override
  public Working working() {
    AmountFormat format = AmountFormat.metric();
    return Working.of(
        new WorkedLine(
            "time",
            "core at the same part of the bake",
            format.time(before.end().time())
                + " × "
                + Numbers.significant(factor, 3)
                + " = "
                + format.time(after.end().time()),
            "bake model"),
        new WorkedLine(
            "square law",
            "(thickness ratio)²",
            format.time(before.end().time())
                + " × "
                + Numbers.significant(bySquareLaw(), 3)
                + " = "
                + format.time(MINUTE.amount(before.end().time().in(MINUTE) * bySquareLaw())),
            Advice.COMMON_PRACTICE));
  }

  /** {@code times × 1.6 (square law × 1.96); the time follows the thickness to the power 1.4}. */
  @Override
  public String toString() {
    return "times × "
        + Numbers.significant(factor, 3)
        + " (square law × "
        + Numbers.significant(bySquareLaw(), 3)
        + "): "
        + profile()
        + (Double.isFinite(power())
            ? "; the time follows the thickness to the power " + Numbers.decimals(power(), 2)
            : "");
  }
}
