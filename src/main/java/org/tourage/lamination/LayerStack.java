package org.tourage.lamination;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.math.BigInteger;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * The explicit stack of bands from the bottom up, dough and fat in turn, each with its share of the
 * thickness of the sheet. Bands that touch fuse. Immutable and serialisable.
 */
public final class LayerStack implements Serializable {
  private static final long serialVersionUID = 1L;

  /** A stack longer than this is counted, not built. */
  static final int MOST_BANDS = 2_000_000;

  /** Shares of the thickness, bottom to top; they sum to 1. */
  private final double[] shares;

  /** What the lowest band is; the others follow in turn. */
  private final Band bottom;

  private LayerStack(double[] shares, Band bottom) {
    this.shares = shares;
    this.bottom = bottom;
  }

  /**
   * The stack of a closed packet, with all bands of a kind alike.
   *
   * @param lockIn how the fat is enclosed
   * @param fatByVolume the share of fat in the volume, above 0 and below 1
   * @return the stack
   */
  public static LayerStack of(LockIn lockIn, double fatByVolume) {
    if (!(fatByVolume > 0 && fatByVolume < 1)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "the share of fat in the volume can't be",
          String.valueOf(fatByVolume),
          "give more than 0 and less than 1");
    }
    double[] shares = new double[lockIn.bands().size()];
    for (int i = 0; i < shares.length; i++) {
      shares[i] =
          lockIn.bands().get(i) == Band.FAT
              ? fatByVolume / lockIn.fatBands()
              : (1 - fatByVolume) / lockIn.doughBands();
    }
    return new LayerStack(shares, lockIn.bands().get(0));
  }

  /**
   * Folds the stack.
   *
   * @param fold the fold
   * @return the stack of all panels, its shares summing to 1 again
   * @throws BakeryException if there would be more bands than a stack can hold
   */
  public LayerStack fold(Fold fold) {
    requireNonNull(fold, "fold");
    LayerStack[] panels = new LayerStack[fold.panels()];
    LayerStack reversed = reversed();
    for (int i = 0; i < panels.length; i++) {
      panels[i] = fold.turned(i) ? reversed : this;
    }
    return pile(panels);
  }

  /** Piles stacks up, first at the bottom, and brings the thickness to 1 again. */
  static LayerStack pile(LayerStack... panels) {
    long most = 0;
    for (LayerStack panel : panels) {
      most += panel.shares.length;
    }
    checkSize(BigInteger.valueOf(most));
    double[] shares = new double[(int) most];
    int used = 0;
    Band last = panels[0].bottom;
    for (LayerStack panel : panels) {
      int from = 0;
      boolean touches = used > 0 && panel.bottom == last;
      if (touches) {
        shares[used - 1] += panel.shares[0] / panels.length;
        from = 1;
      }
      for (int i = from; i < panel.shares.length; i++) {
        shares[used++] = panel.shares[i] / panels.length;
      }
      last = panel.top();
    }
    return new LayerStack(Arrays.copyOf(shares, used), panels[0].bottom);
  }

  static void checkSize(BigInteger bands) {
    if (bands.compareTo(BigInteger.valueOf(MOST_BANDS)) > 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "too many bands to build one by one",
          bands + " bands",
          "build up to " + MOST_BANDS + "; FoldSequence.count() counts without a limit");
    }
  }

  private void checkIndex(int index) {
    if (index < 0 || index >= shares.length) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "the stack has no such band",
          "band " + index + " of " + shares.length,
          "count from 0, the lowest, to " + (shares.length - 1));
    }
  }

  /**
   * The stack upside down.
   *
   * @return the stack
   */
  public LayerStack reversed() {
    double[] turned = new double[shares.length];
    for (int i = 0; i < turned.length; i++) {
      turned[i] = shares[shares.length - 1 - i];
    }
    return new LayerStack(turned, top());
  }

  /**
   * How many bands there are.
   *
   * @return the number
   */
  public int size() {
    return shares.length;
  }

  /**
   * What a band is made of.
   *
   * @param index its place from the bottom, from 0
   * @return the kind
   * @throws BakeryException if there is no such band
   */
  public Band band(int index) {
    checkIndex(index);
    Band other = bottom == Band.FAT ? Band.DOUGH : Band.FAT;
    return index % 2 == 0 ? bottom : other;
  }

  /**
   * The share of a band in the thickness.
   *
   * @param index its place from the bottom, from 0
   * @return the share, above 0
   * @throws BakeryException if there is no such band
   */
  public double share(int index) {
    checkIndex(index);
    return shares[index];
  }

  /**
   * How many bands of a kind there are.
   *
   * @param kind the kind
   * @return the number
   */
  public int count(Band kind) {
    requireNonNull(kind, "kind");
    return kind == bottom ? (shares.length + 1) / 2 : shares.length / 2;
  }

  /**
   * The bottom face.
   *
   * @return the kind
   */
  public Band bottom() {
    return bottom;
  }

  /**
   * The top face.
   *
   * @return the kind
   */
  public Band top() {
    return band(shares.length - 1);
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof LayerStack that
        && bottom == that.bottom
        && Arrays.equals(shares, that.shares);
  }

  @Override
  public int hashCode() {
    return 31 * bottom.name().hashCode() + Arrays.hashCode(shares);
  }

  /** {@code 25 bands: DFDFD…}. */
  @Override
  public String toString() {
    StringBuilder out = new StringBuilder(shares.length + " bands: ");
    for (int i = 0; i < Math.min(shares.length, 60); i++) {
      out.append(band(i).name().charAt(0));
    }
    return shares.length > 60 ? out + "…" : out.toString();
  }
}
