package org.tourage.ingredient;

import java.util.List;

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
  SATURATED_FAT,
  /** Alcohol (ethanol). */
  ALCOHOL,
  /** Starch, a part of the carbohydrate. */
  STARCH,
  /** Sucrose, a part of the sugars. */
  SUCROSE,
  /** Glucose, a part of the sugars. */
  GLUCOSE,
  /** Fructose, a part of the sugars. */
  FRUCTOSE,
  /** Lactose, a part of the sugars. */
  LACTOSE,
  /** Maltose, a part of the sugars. */
  MALTOSE,
  /** Added sugars, a part of the sugars, as 21 CFR 101.9(c)(6)(iii) counts them. */
  ADDED_SUGARS,
  /** Monounsaturated fat, a part of the fat. */
  MONOUNSATURATED_FAT,
  /** Polyunsaturated fat, a part of the fat. */
  POLYUNSATURATED_FAT,
  /** Trans fat, a part of the fat. */
  TRANS_FAT,
  /** Cholesterol. */
  CHOLESTEROL,
  /** Potassium, a part of the ash. */
  POTASSIUM,
  /** Calcium, a part of the ash. */
  CALCIUM,
  /** Iron, a part of the ash. */
  IRON,
  /** Vitamin D. */
  VITAMIN_D;

  /** What an ingredient is made of; all other components are parts of these. */
  static final List<Component> MAIN = List.of(WATER, PROTEIN, FAT, CARBOHYDRATE, ASH, ALCOHOL);

  private static final int COUNT = values().length;

  static int count() {
    return COUNT;
  }
}
