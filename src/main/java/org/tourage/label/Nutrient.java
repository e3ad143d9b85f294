package org.tourage.label;

import java.util.List;
import org.tourage.ingredient.Component;

/** What a nutrition label can print beside the energy. */
public enum Nutrient {
  /** Fat. */
  FAT("fat", "g", Component.FAT),
  /** Saturated fat. */
  SATURATES("saturates", "g", Component.SATURATED_FAT),
  /** Monounsaturated fat. */
  MONOUNSATURATES("monounsaturates", "g", Component.MONOUNSATURATED_FAT),
  /** Polyunsaturated fat. */
  POLYUNSATURATES("polyunsaturates", "g", Component.POLYUNSATURATED_FAT),
  /** Trans fat. */
  TRANS_FAT("trans fat", "g", Component.TRANS_FAT),
  /** Cholesterol. */
  CHOLESTEROL("cholesterol", "mg", Component.CHOLESTEROL),
  /** Carbohydrate without its fibre, as the European Union counts it. */
  CARBOHYDRATE("carbohydrate", "g", Component.CARBOHYDRATE),
  /** Carbohydrate with its fibre, as the United States count it. */
  TOTAL_CARBOHYDRATE("total carbohydrate", "g", Component.CARBOHYDRATE),
  /** Sugars. */
  SUGARS("sugars", "g", Component.SUGARS),
  /** Added sugars. */
  ADDED_SUGARS("added sugars", "g", Component.ADDED_SUGARS),
  /** Starch. */
  STARCH("starch", "g", Component.STARCH),
  /** Fibre. */
  FIBRE("fibre", "g", Component.FIBRE),
  /** Protein, by the nitrogen factor of the source. */
  PROTEIN("protein", "g", Component.PROTEIN),
  /**
   * Salt, which is all sodium × 2.5, that of leavening included (Regulation (EU) No 1169/2011,
   * Annex I).
   */
  SALT("salt", "g", Component.SODIUM),
  /** Sodium. */
  SODIUM("sodium", "mg", Component.SODIUM),
  /** Alcohol. */
  ALCOHOL("alcohol", "g", Component.ALCOHOL),
  /** Vitamin D. */
  VITAMIN_D("vitamin D", "µg", Component.VITAMIN_D),
  /** Calcium. */
  CALCIUM("calcium", "mg", Component.CALCIUM),
  /** Iron. */
  IRON("iron", "mg", Component.IRON),
  /** Potassium. */
  POTASSIUM("potassium", "mg", Component.POTASSIUM);

  private static final double SALT_FROM_SODIUM = 2.5;

  private final String word;
  private final String unit;
  private final Component component;

  Nutrient(String word, String unit, Component component) {
    this.word = word;
    this.unit = unit;
    this.component = component;
  }

  /**
   * What it is called.
   *
   * @return for example {@code saturates}
   */
  public String word() {
    return word;
  }

  /**
   * The unit that labels print.
   *
   * @return {@code g}, {@code mg} or {@code µg}
   */
  public String unit() {
    return unit;
  }

  /**
   * The part of an ingredient that it is counted from.
   *
   * @return the component
   */
  public Component component() {
    return component;
  }

  /**
   * The lines of a label in their order.
   *
   * @param scheme whose rules
   * @return for the European Union the seven of Article 30 with fibre, for the United States those
   *     of 21 CFR 101.9(c)
   */
  public static List<Nutrient> of(LabelScheme scheme) {
    return scheme == LabelScheme.EU
        ? List.of(FAT, SATURATES, CARBOHYDRATE, SUGARS, FIBRE, PROTEIN, SALT)
        : List.of(
            FAT,
            SATURATES,
            TRANS_FAT,
            CHOLESTEROL,
            SODIUM,
            TOTAL_CARBOHYDRATE,
            FIBRE,
            SUGARS,
            ADDED_SUGARS,
            PROTEIN,
            VITAMIN_D,
            CALCIUM,
            IRON,
            POTASSIUM);
  }

  /** How many of the label's unit a gram makes. */
  double unitsInGram() {
    return switch (unit) {
      case "mg" -> 1e3;
      case "µg" -> 1e6;
      default -> 1;
    };
  }

  /** Grams of the nutrient itself from grams of its component. */
  double gramsFromComponent() {
    return this == SALT ? SALT_FROM_SODIUM : 1;
  }
}
