package org.tourage.ingredient;

/** What an ingredient does in a dough. Only {@link #FLOUR} counts as flour in baker's percent. */
public enum Role {
  /** Wheat and other flours and meals. */
  FLOUR,
  /** Whole grains. */
  GRAIN,
  /** Malt flours. */
  MALT,
  /** Gluten and other protein powders. */
  PROTEIN,
  /** Starches. */
  STARCH,
  /** Sugars, syrups and honey. */
  SUGAR,
  /** Butter, margarine, shortening and oils. */
  FAT,
  /** Water, milk, plant drinks, juice and cream. */
  LIQUID,
  /** Milk powders. */
  DAIRY_SOLIDS,
  /** Eggs and their parts. */
  EGG,
  /** Baker's yeast in any form. */
  YEAST,
  /** Salt. */
  SALT,
  /** Chemical leavening. */
  LEAVENING,
  /** Cocoa, spices and the like. */
  FLAVOUR,
  /** Nuts, seeds, fruit and chocolate. */
  INCLUSION,
  /** Yoghurt, cheese, sour cream and other dairy that is not poured. */
  DAIRY,
  /** Gelatine, agar, pectin, gums and husks. */
  THICKENER,
  /** Nuts and their pastes; beside another role. */
  NUT,
  /** Seeds and their pastes; beside another role. */
  SEED,
  /** Fruit, fresh, dried or preserved; beside another role. */
  FRUIT,
  /** Vegetables; beside another role. */
  VEGETABLE,
  /** Cocoa and chocolate; beside another role. */
  CHOCOLATE,
  /** Spices and extracts; beside another role. */
  SPICE
}
