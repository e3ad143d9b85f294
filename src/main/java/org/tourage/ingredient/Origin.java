package org.tourage.ingredient;

/** Where an ingredient comes from. Plant origin says nothing about traces of allergens. */
public enum Origin {
  /** From plants (or yeast, salt and water). */
  PLANT,
  /** From animals. */
  ANIMAL,
  /** Usually from plants, but products differ: read the label in hand. */
  CHECK_LABEL
}
