package org.tourage.ingredient;

/** A part of an ingredient that has a mass. */
public enum Component {
  /** Water. */
  WATER,
  /** Protein. */
  PROTEIN,
  /** Fat. */
  FAT,
  /** Carbohydrate by difference: sugars, starch and fibre together. */
  CARBOHYDRATE,
  /** Sugars, a part of the carbohydrate. */
  SUGARS,
  /** Fibre, a part of the carbohydrate. */
  FIBRE,
  /** Ash, sodium and the other minerals together. */
  ASH,
  /** Sodium, a part of the ash. */
  SODIUM,
  /** Saturated fat, a part of the fat. */
  SATURATED_FAT;

  private static final int COUNT = values().length;

  static int count() {
    return COUNT;
  }
}
