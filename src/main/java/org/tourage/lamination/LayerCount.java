package org.tourage.lamination;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.math.BigInteger;

/**
 * How many layers a stack has, exactly: touching faces of one kind are one layer.
 *
 * @param fat distinct layers of fat
 * @param dough distinct layers of dough
 * @param fatByMultiplication bands of fat times panels, touching faces counted twice
 * @param doughByMultiplication bands of dough times panels, touching faces counted twice
 * @param bottom the bottom face
 * @param top the top face
 */
public record LayerCount(
    BigInteger fat,
    BigInteger dough,
    BigInteger fatByMultiplication,
    BigInteger doughByMultiplication,
    Band bottom,
    Band top)
    implements Serializable {

  /**
   * Checks that nothing is null.
   *
   * @param fat distinct layers of fat
   * @param dough distinct layers of dough
   * @param fatByMultiplication bands of fat times panels, touching faces counted twice
   * @param doughByMultiplication bands of dough times panels, touching faces counted twice
   * @param bottom the bottom face
   * @param top the top face
   */
  public LayerCount {
    requireNonNull(fat, "fat");
    requireNonNull(dough, "dough");
    requireNonNull(fatByMultiplication, "fatByMultiplication");
    requireNonNull(doughByMultiplication, "doughByMultiplication");
    requireNonNull(bottom, "bottom");
    requireNonNull(top, "top");
  }

  /**
   * The count of a closed packet before any fold.
   *
   * @param lockIn how the fat is enclosed
   * @return the count
   */
  public static LayerCount of(LockIn lockIn) {
    requireNonNull(lockIn, "lockIn");
    return new Counter(lockIn).count();
  }

  /**
   * All distinct layers.
   *
   * @return fat and dough together
   */
  public BigInteger layers() {
    return fat.add(dough);
  }

  /** {@code 12 fat layers, 13 dough layers}. */
  @Override
  public String toString() {
    return fat + " fat layers, " + dough + " dough layers";
  }

  /**
   * Folds counts in machine words while they fit, so that a billion layers cost no more than a
   * dozen; the state moves to big integers before it could overflow.
   */
  static final class Counter {
    /** Twelve panels more still fit into a long. */
    private static final long SAFE = Long.MAX_VALUE / 16;

    private long fat;
    private long dough;
    private long fatProduct;
    private long doughProduct;
    private BigInteger[] big = new BigInteger[0];
    private Band bottom;
    private Band top;

    Counter(LockIn lockIn) {
      fat = lockIn.fatBands();
      dough = lockIn.doughBands();
      fatProduct = fat;
      doughProduct = dough;
      bottom = lockIn.bands().get(0);
      top = lockIn.bands().get(lockIn.bands().size() - 1);
    }

    Counter fold(Fold fold) {
      int n = fold.panels();
      int fusedFat = fused(fold, Band.FAT);
      int fusedDough = fused(fold, Band.DOUGH);
      if (big.length == 0 && Math.max(fatProduct, doughProduct) > SAFE) {
        big =
            new BigInteger[] {
              BigInteger.valueOf(fat),
              BigInteger.valueOf(dough),
              BigInteger.valueOf(fatProduct),
              BigInteger.valueOf(doughProduct)
            };
      }
      if (big.length == 0) {
        fat = fat * n - fusedFat;
        dough = dough * n - fusedDough;
        fatProduct *= n;
        doughProduct *= n;
      } else {
        BigInteger panels = BigInteger.valueOf(n);
        big[0] = big[0].multiply(panels).subtract(BigInteger.valueOf(fusedFat));
        big[1] = big[1].multiply(panels).subtract(BigInteger.valueOf(fusedDough));
        big[2] = big[2].multiply(panels);
        big[3] = big[3].multiply(panels);
      }
      top = fold.turnsTopDown() ? bottom : top;
      return this;
    }

    /** Contacts at which two faces of this kind become one layer. */
    private int fused(Fold fold, Band kind) {
      boolean topIs = top == kind;
      boolean bottomIs = bottom == kind;
      return (topIs ? fold.topOnTop() : 0)
          + (bottomIs ? fold.bottomOnBottom() : 0)
          + (topIs && bottomIs ? fold.topOnBottom() : 0);
    }

    LayerCount count() {
      return big.length == 0
          ? new LayerCount(
              BigInteger.valueOf(fat),
              BigInteger.valueOf(dough),
              BigInteger.valueOf(fatProduct),
              BigInteger.valueOf(doughProduct),
              bottom,
              top)
          : new LayerCount(big[0], big[1], big[2], big[3], bottom, top);
    }
  }
}
