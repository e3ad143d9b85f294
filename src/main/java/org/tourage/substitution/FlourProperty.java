package org.tourage.substitution;

import static org.tourage.quantity.BakeryUnits.PERCENT;

import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.ingredient.Component;
import org.tourage.ingredient.FlourSpecification;
import org.tourage.ingredient.Ingredient;

/** What a blend of flours can be made to have, on the basis of 14 % moisture. */
public enum FlourProperty {
  /** Protein. */
  PROTEIN("protein"),
  /** Ash. */
  ASH("ash"),
  /** Absorption, measured where it is known, else by {@link ProteinSlope}. */
  ABSORPTION("absorption");

  private final String word;

  FlourProperty(String word) {
    this.word = word;
  }

  /**
   * What it is called.
   *
   * @return for example {@code protein}
   */
  public String word() {
    return word;
  }

  /** Percent at 14 % moisture. */
  double of(Ingredient flour) {
    return switch (this) {
      case PROTEIN -> at14(flour, protein(flour));
      case ASH -> at14(flour, ash(flour));
      case ABSORPTION ->
          flour.flour().flatMap(FlourSpecification::absorption).isPresent()
              ? new MeasuredAbsorption().estimate(flour).absorption().in(PERCENT)
              : new ProteinSlope().estimate(flour).absorption().in(PERCENT);
    };
  }

  private static double at14(Ingredient flour, double asIs) {
    return asIs * 86 / dry(flour);
  }

  /** 100 less the moisture in percent. */
  static double dry(Ingredient flour) {
    return 100
        - flour
            .flour()
            .map(f -> f.moisture().in(PERCENT))
            .orElse(100 * flour.composition().fraction(Component.WATER));
  }

  private static double protein(Ingredient flour) {
    return flour
        .flour()
        .map(f -> f.protein().in(PERCENT))
        .orElse(100 * flour.composition().fraction(Component.PROTEIN));
  }

  private static double ash(Ingredient flour) {
    return flour
        .flour()
        .flatMap(FlourSpecification::ash)
        .or(() -> flour.composition().share(Component.ASH))
        .orElseThrow(
            () ->
                new BakeryException(
                    Reason.MISSING,
                    "the ash of this flour is not known",
                    flour.name(),
                    "give it with FlourSpecification.withAsh(…)"))
        .in(PERCENT);
  }
}
