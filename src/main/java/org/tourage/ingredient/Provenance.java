package org.tourage.ingredient;

import java.util.Locale;

/** How far a figure can be traced. */
public enum Provenance {
  /** Read in the publication that the source names. */
  FETCHED,
  /** A rule of the trade. */
  COMMON_PRACTICE,
  /** Recalled; the publication was not seen. */
  FROM_MEMORY,
  /** Given by the user, for example read from a label. */
  USER;

  static Provenance of(String word) {
    return valueOf(word.toUpperCase(Locale.ROOT).replace(' ', '_'));
  }
}
