package org.tourage.ingredient;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The allergens of two legal lists: in the United States section 201(qq) of the Federal Food, Drug,
 * and Cosmetic Act (FALCPA 2004, with sesame by the FASTER Act of 2021); in the European Union
 * Annex II of Regulation (EU) No 1169/2011. Exceptions of either list are not kept here. Coconut
 * and chestnut are on neither list; some local rules ask for them.
 */
public enum Allergen {
  /** Wheat, spelt and khorasan included. */
  WHEAT("wheat", "wheat", "cereals containing gluten", 1),
  /** Rye. */
  RYE("rye", null, "cereals containing gluten", 1),
  /** Barley. */
  BARLEY("barley", null, "cereals containing gluten", 1),
  /** Oats. */
  OAT("oats", null, "cereals containing gluten", 1),
  /** Crustaceans. */
  CRUSTACEANS("crustaceans", "Crustacean shellfish", "crustaceans", 2),
  /** Eggs. */
  EGG("egg", "eggs", "eggs", 3),
  /** Fish. */
  FISH("fish", "fish", "fish", 4),
  /** Peanuts. */
  PEANUT("peanuts", "peanuts", "peanuts", 5),
  /** Soybeans. */
  SOY("soy", "soybeans", "soybeans", 6),
  /** Milk, lactose included. */
  MILK("milk", "milk", "milk", 7),
  /** Almonds. */
  ALMOND("almond", "tree nuts", "nuts", 8),
  /** Hazelnuts. */
  HAZELNUT("hazelnut", "tree nuts", "nuts", 8),
  /** Walnuts. */
  WALNUT("walnut", "tree nuts", "nuts", 8),
  /** Cashews. */
  CASHEW("cashew", "tree nuts", "nuts", 8),
  /** Pecans. */
  PECAN("pecan", "tree nuts", "nuts", 8),
  /** Brazil nuts. */
  BRAZIL_NUT("Brazil nut", "tree nuts", "nuts", 8),
  /** Pistachios. */
  PISTACHIO("pistachio", "tree nuts", "nuts", 8),
  /** Macadamias. */
  MACADAMIA("macadamia", "tree nuts", "nuts", 8),
  /** Celery. */
  CELERY("celery", null, "celery", 9),
  /** Mustard. */
  MUSTARD("mustard", null, "mustard", 10),
  /** Sesame. */
  SESAME("sesame", "sesame", "sesame", 11),
  /** Sulphur dioxide and sulphites above 10 mg/kg. */
  SULPHITES("sulphites", null, "sulphur dioxide and sulphites", 12),
  /** Lupin. */
  LUPIN("lupin", null, "lupin", 13),
  /** Molluscs. */
  MOLLUSCS("molluscs", null, "molluscs", 14),
  /** Coconut, on neither list. */
  COCONUT("coconut", null, null, 0),
  /** Pine nuts, a tree nut in the United States only. */
  PINE_NUT("pine nut", "tree nuts", null, 0),
  /** Chestnuts, on neither list. */
  CHESTNUT("chestnut", null, null, 0);

  private final String word;
  private final @Nullable String us;
  private final @Nullable String eu;
  private final int annexPoint;

  Allergen(String word, @Nullable String us, @Nullable String eu, int annexPoint) {
    this.word = word;
    this.us = us;
    this.eu = eu;
    this.annexPoint = annexPoint;
  }

  /**
   * The allergen in one word.
   *
   * @return for example {@code almond}
   */
  public String word() {
    return word;
  }

  /**
   * Its group on the list of the United States.
   *
   * @return for example {@code tree nuts}; empty if it is not on the list
   */
  public Optional<String> unitedStates() {
    return Optional.ofNullable(us);
  }

  /**
   * Its group on the list of the European Union.
   *
   * @return for example {@code nuts}; empty if it is not on the list
   */
  public Optional<String> europeanUnion() {
    return Optional.ofNullable(eu);
  }

  /**
   * Its point in Annex II of Regulation (EU) No 1169/2011.
   *
   * @return 1 to 14, or 0 if it is not on the list
   */
  public int annexPoint() {
    return annexPoint;
  }
}
