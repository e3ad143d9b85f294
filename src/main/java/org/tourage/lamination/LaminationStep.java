package org.tourage.lamination;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.math.BigInteger;
import javax.measure.quantity.Length;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Extent;

/**
 * A step of a lamination and what it leaves on the bench. A plan closes the packet, then rolls and
 * folds in turn, and rolls the final sheet at the end. After each fold the sheet is turned by 90°:
 * what a rolling finds before it lies the other way than what the fold left.
 */
public sealed interface LaminationStep extends Serializable
    permits LaminationStep.Closing,
        LaminationStep.Rolling,
        LaminationStep.Folding,
        LaminationStep.FinalRolling {

  /**
   * A packet or a sheet as it lies on the bench.
   *
   * @param extent length, along which it is rolled, and width
   * @param thickness its thickness
   * @param fatLayers distinct fat layers
   * @param fatLayer thickness of a fat layer inside the stack
   * @param doughLayer thickness of a dough layer inside the stack, two faces fused where faces
   *     touched
   */
  record Sheet(
      Extent extent,
      Amount<Length> thickness,
      BigInteger fatLayers,
      Amount<Length> fatLayer,
      Amount<Length> doughLayer)
      implements Serializable {

    /**
     * Checks that nothing is null.
     *
     * @param extent length, along which it is rolled, and width
     * @param thickness its thickness
     * @param fatLayers distinct fat layers
     * @param fatLayer thickness of a fat layer inside the stack
     * @param doughLayer thickness of a dough layer inside the stack, two faces fused where faces
     *     touched
     */
    public Sheet {
      requireNonNull(extent, "extent");
      requireNonNull(thickness, "thickness");
      requireNonNull(fatLayers, "fatLayers");
      requireNonNull(fatLayer, "fatLayer");
      requireNonNull(doughLayer, "doughLayer");
    }

    Sheet turned() {
      return new Sheet(
          new Extent(/* length= */ extent.width(), /* width= */ extent.length()),
          thickness,
          fatLayers,
          fatLayer,
          doughLayer);
    }

    /** {@code 200 mm x 190 mm, 24 mm thick, 12 fat layers of 527 µm}. */
    @Override
    public String toString() {
      AmountFormat format = AmountFormat.metric();
      return format.length(extent.length())
          + " x "
          + format.length(extent.width())
          + ", "
          + format.length(thickness)
          + " thick, "
          + fatLayers
          + " fat layers of "
          + format.length(fatLayer);
    }
  }

  /**
   * The packet is closed.
   *
   * @param lockIn how
   * @param after the closed packet
   */
  record Closing(LockIn lockIn, Sheet after) implements LaminationStep {
    /**
     * Checks that nothing is missing.
     *
     * @param lockIn how
     * @param after the closed packet
     */
    public Closing {
      requireNonNull(lockIn, "lockIn");
      requireNonNull(after, "after");
    }

    @Override
    public String action() {
      return "close the packet";
    }

    /** {@code close the packet: 200 mm x 190 mm, …}. */
    @Override
    public String toString() {
      return action() + ": " + after;
    }
  }

  /**
   * The packet is rolled out for a fold, along its length only.
   *
   * @param before what is rolled, as it lies
   * @param after the sheet
   * @param schedule the passes
   */
  record Rolling(Sheet before, Sheet after, RollingSchedule schedule) implements LaminationStep {
    /**
     * Checks that nothing is missing.
     *
     * @param before what is rolled, as it lies
     * @param after the sheet
     * @param schedule the passes
     */
    public Rolling {
      requireNonNull(before, "before");
      requireNonNull(after, "after");
      requireNonNull(schedule, "schedule");
    }

    @Override
    public String action() {
      return "roll out";
    }

    /** {@code roll out: 720 mm x 200 mm, …}. */
    @Override
    public String toString() {
      return action() + ": " + after;
    }
  }

  /**
   * The sheet is folded.
   *
   * @param before the sheet
   * @param after the folded packet, before it is turned
   * @param fold the fold
   */
  record Folding(Sheet before, Sheet after, Fold fold) implements LaminationStep {
    /**
     * Checks that nothing is missing.
     *
     * @param before the sheet
     * @param after the folded packet, before it is turned
     * @param fold the fold
     */
    public Folding {
      requireNonNull(before, "before");
      requireNonNull(after, "after");
      requireNonNull(fold, "fold");
    }

    @Override
    public String action() {
      return fold.name();
    }

    /** {@code letter fold: 240 mm x 200 mm, …}. */
    @Override
    public String toString() {
      return action() + ": " + after;
    }
  }

  /**
   * The last packet is rolled to the final sheet, to the width that is wanted.
   *
   * @param before what is rolled, as it lies
   * @param after the final sheet
   * @param schedule the passes, gentler than the others
   */
  record FinalRolling(Sheet before, Sheet after, RollingSchedule schedule)
      implements LaminationStep {
    /**
     * Checks that nothing is missing.
     *
     * @param before what is rolled, as it lies
     * @param after the final sheet
     * @param schedule the passes, gentler than the others
     */
    public FinalRolling {
      requireNonNull(before, "before");
      requireNonNull(after, "after");
      requireNonNull(schedule, "schedule");
    }

    @Override
    public String action() {
      return "roll to the final sheet";
    }

    /** {@code roll to the final sheet: 1131 mm x 250 mm, …}. */
    @Override
    public String toString() {
      return action() + ": " + after;
    }
  }

  /**
   * What is done, in a few words.
   *
   * @return for example {@code letter fold}
   */
  String action();

  /**
   * What lies on the bench afterwards.
   *
   * @return the packet or the sheet
   */
  Sheet after();

  /**
   * Length and width afterwards.
   *
   * @return the extent
   */
  default Extent extent() {
    return after().extent();
  }

  /**
   * Thickness afterwards.
   *
   * @return the thickness
   */
  default Amount<Length> thickness() {
    return after().thickness();
  }

  /**
   * Distinct fat layers afterwards.
   *
   * @return the count, exact
   */
  default BigInteger fatLayers() {
    return after().fatLayers();
  }

  /**
   * Thickness of a fat layer inside the stack afterwards.
   *
   * @return the thickness
   */
  default Amount<Length> fatLayer() {
    return after().fatLayer();
  }

  /**
   * Thickness of a dough layer inside the stack afterwards.
   *
   * @return the thickness, two faces fused where faces touched
   */
  default Amount<Length> doughLayer() {
    return after().doughLayer();
  }
}
