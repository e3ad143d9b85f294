package org.tourage.substitution;

import org.tourage.ingredient.Component;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;

/** What an exchange can keep. */
public enum Conserved {
  /** Water. */
  WATER("water"),
  /** Fat. */
  FAT("fat"),
  /** Sugars. */
  SUGARS("sugars"),
  /** Salt, counted as sodium × 2.5 (Regulation (EU) No 1169/2011, Annex I). */
  SALT("salt");

  private final String word;

  Conserved(String word) {
    this.word = word;
  }

  /**
   * What it is called.
   *
   * @return for example {@code water}
   */
  public String word() {
    return word;
  }

  double of(Ingredient ingredient) {
    return switch (this) {
      case WATER -> ingredient.composition().fraction(Component.WATER);
      case FAT -> ingredient.composition().fraction(Component.FAT);
      case SUGARS -> ingredient.composition().fraction(Component.SUGARS);
      case SALT -> ingredient.saltFraction();
    };
  }

  /** Whether it is known how much of it an ingredient holds. */
  boolean isKnownOf(Ingredient ingredient) {
    return switch (this) {
      case WATER -> ingredient.composition().share(Component.WATER).isPresent();
      case FAT -> ingredient.composition().share(Component.FAT).isPresent();
      case SUGARS -> ingredient.composition().share(Component.SUGARS).isPresent();
      case SALT ->
          ingredient.is(Role.LEAVENING)
              || ingredient.composition().share(Component.SODIUM).isPresent();
    };
  }

  /** The role of the line that takes up a difference. */
  Role balancing() {
    return switch (this) {
      case WATER -> Role.LIQUID;
      case FAT -> Role.FAT;
      case SUGARS -> Role.SUGAR;
      case SALT -> Role.SALT;
    };
  }
}
