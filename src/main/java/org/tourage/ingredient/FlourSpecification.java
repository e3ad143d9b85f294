package org.tourage.ingredient;

import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Given;

/**
 * What a miller prints about a flour, all on the flour as it is unless said otherwise. Protein is
 * what matters most; the rest may be unknown.
 */
public final class FlourSpecification implements Serializable {
  private static final long serialVersionUID = 1L;
  private static final double HIGHEST_MOISTURE = 20;

  /** Protein of the flour as it is. */
  private final Amount<Dimensionless> protein;

  /** Moisture of the flour as it is. */
  private final Amount<Dimensionless> moisture;

  /** Ash of the flour as it is. */
  private final @Nullable Amount<Dimensionless> ash;

  /** Damaged starch of the flour as it is. */
  private final @Nullable Amount<Dimensionless> damagedStarch;

  /** Measured farinograph absorption on the 14 % moisture basis. */
  private final @Nullable Amount<Dimensionless> absorption;

  private FlourSpecification(
      Amount<Dimensionless> protein,
      Amount<Dimensionless> moisture,
      @Nullable Amount<Dimensionless> ash,
      @Nullable Amount<Dimensionless> damagedStarch,
      @Nullable Amount<Dimensionless> absorption) {
    this.protein = protein;
    this.moisture = moisture;
    this.ash = ash;
    this.damagedStarch = damagedStarch;
    this.absorption = absorption;
  }

  /**
   * A flour of known protein and moisture.
   *
   * @param protein protein of the flour as it is, 0 to 100 %
   * @param moisture moisture of the flour as it is, 0 to 20 %
   * @return the specification
   * @throws BakeryException if a share can't be
   */
  public static FlourSpecification of(
      Quantity<Dimensionless> protein, Quantity<Dimensionless> moisture) {
    check("protein", protein, 100);
    check("moisture", moisture, HIGHEST_MOISTURE);
    return new FlourSpecification(
        Given.ratio("the protein", protein),
        Given.ratio("the moisture", moisture),
        null,
        null,
        null);
  }

  private static void check(String name, Quantity<Dimensionless> share, double highest) {
    double percent = PERCENT.measure("the share", share);
    if (percent < 0 || percent > highest) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no flour has this " + name,
          Given.ratio("the share", share).to(PERCENT).toString(),
          "give 0 % to " + (int) highest + " %");
    }
  }

  /**
   * The same with ash.
   *
   * @param share ash of the flour as it is, 0 to 10 %
   * @return the specification
   */
  public FlourSpecification withAsh(Quantity<Dimensionless> share) {
    check("ash", share, 10);
    return new FlourSpecification(
        protein, moisture, Given.ratio("the share", share), damagedStarch, absorption);
  }

  /**
   * The same with damaged starch.
   *
   * @param share damaged starch of the flour as it is, 0 to 30 %
   * @return the specification
   */
  public FlourSpecification withDamagedStarch(Quantity<Dimensionless> share) {
    check("damaged starch", share, 30);
    return new FlourSpecification(
        protein, moisture, ash, Given.ratio("the share", share), absorption);
  }

  /**
   * The same with a measured absorption.
   *
   * @param share farinograph absorption at 500 units on the 14 % moisture basis, 0 to 150 %
   * @return the specification
   */
  public FlourSpecification withAbsorption(Quantity<Dimensionless> share) {
    check("absorption", share, 150);
    return new FlourSpecification(
        protein, moisture, ash, damagedStarch, Given.ratio("the share", share));
  }

  /**
   * Protein of the flour as it is.
   *
   * @return the share
   */
  public Amount<Dimensionless> protein() {
    return protein;
  }

  /**
   * Moisture of the flour as it is.
   *
   * @return the share
   */
  public Amount<Dimensionless> moisture() {
    return moisture;
  }

  /**
   * Ash of the flour as it is.
   *
   * @return the share, if known
   */
  public Optional<Amount<Dimensionless>> ash() {
    return Optional.ofNullable(ash);
  }

  /**
   * Damaged starch of the flour as it is.
   *
   * @return the share, if known
   */
  public Optional<Amount<Dimensionless>> damagedStarch() {
    return Optional.ofNullable(damagedStarch);
  }

  /**
   * Measured farinograph absorption on the 14 % moisture basis.
   *
   * @return the share, if known
   */
  public Optional<Amount<Dimensionless>> absorption() {
    return Optional.ofNullable(absorption);
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof FlourSpecification that
        && protein.equals(that.protein)
        && moisture.equals(that.moisture)
        && Objects.equals(ash, that.ash)
        && Objects.equals(damagedStarch, that.damagedStarch)
        && Objects.equals(absorption, that.absorption);
  }

  @Override
  public int hashCode() {
    return Objects.hash(protein, moisture, ash, damagedStarch, absorption);
  }

  /** {@code protein 12 %, moisture 13.4 %} and what else is known. */
  @Override
  public String toString() {
    return "protein "
        + protein
        + ", moisture "
        + moisture
        + (ash == null ? "" : ", ash " + ash)
        + (damagedStarch == null ? "" : ", damaged starch " + damagedStarch)
        + (absorption == null ? "" : ", absorption " + absorption + " at 14 % moisture");
  }
}
